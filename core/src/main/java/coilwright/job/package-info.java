/**
 * Job files and connection lists, in and out.
 *
 * <p>Nothing in this package is ever {@code null}: absence is an {@code Optional} or an empty list. Readers are strict
 * and report every problem they can find at once, each with file, line and field; they never guess.
 */
package coilwright.job;
