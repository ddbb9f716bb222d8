/**
 * The rewind by numbers: wire, coil and slot geometry, resistance, the change to another voltage, speed, wire or
 * winding, and what the finished armature is accepted by.
 *
 * <p>Lengths are millimetres, areas square millimetres, resistances ohms and temperatures degrees Celsius unless a name
 * says otherwise. {@link coilwright.rewind.Quantities} reads and writes other units at the edge. Nothing in this package
 * is ever {@code null}: absence is an {@code Optional} or an empty list. Published values are data with a
 * {@link coilwright.rewind.Source} beside them.
 */
package coilwright.rewind;
