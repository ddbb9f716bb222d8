/**
 * The winding on paper: armature, winding kinds, coils, pitches, the rules of the trade and the search for windings
 * that fit a core.
 *
 * <p>Nothing in this package is ever {@code null}: absence is an {@code Optional} or an empty list. Everything counts
 * from one and clockwise, seen from the commutator end. A coil bears the number of the position of its top side.
 */
package coilwright.winding;
