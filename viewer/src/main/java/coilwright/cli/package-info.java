/**
 * The command line. It reads options, asks the library and prints; it holds no rule and no formula.
 *
 * <p>Commands give answers on standard output and complaints on standard error, and leave with 0 when done, 1 when done
 * and the answer is no, 2 on bad input or usage.
 */
package coilwright.cli;
