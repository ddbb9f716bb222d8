/**
 * Resistive networks: nodes, resistances and sources; node voltages and branch currents; and what becomes of them when
 * a few branches change.
 *
 * <p>Units are ohms, volts and amperes throughout. Nodes, branches and feeds are numbered from zero in the order in
 * which they were added. The package knows nothing of windings.
 *
 * <p>Three things are exact by construction and never approximated by a very large or a very small resistance:
 *
 * <ul>
 *   <li>a branch of zero ohms (a <em>link</em>) makes one node of its two ends;
 *   <li>a branch of infinite ohms (an <em>open</em>) is left out;
 *   <li>parts that no branch joins are solved each by itself, and no voltage is given between them.
 * </ul>
 *
 * <p>Nothing in this package is ever {@code null}: absence is an {@code Optional} or an empty list. Everything public
 * is immutable and may be shared between threads, except {@link Trial} and {@link Network.Builder}.
 */
package coilwright.network;
