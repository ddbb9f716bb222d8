/**
 * The commutator: run-out round the bars, truing and undercutting. Lengths are millimetres. Uses the JDK alone.
 *
 * <p>A <em>total indicator reading</em> (TIR) is the whole swing of a dial gauge over one turn: highest less lowest
 * reading. It is a difference of radii: a cut that takes off the whole TIR at the high side takes twice that off the
 * diameter there. A commutator that is round but off centre by e swings the gauge by 2·e.
 *
 * <p>Nothing in this package is ever {@code null}: absence is an {@code Optional} or an empty list.
 */
package coilwright.commutator;
