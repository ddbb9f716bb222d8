/**
 * Writing files so that none is ever half written or lost. Uses the JDK alone.
 *
 * <p>Nothing in this package is ever {@code null}: absence is an {@code Optional} or an empty list.
 */
package coilwright.file;
