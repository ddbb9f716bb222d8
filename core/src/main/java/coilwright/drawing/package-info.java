/**
 * Drawings of a winding. A layout turns a winding into a {@link coilwright.drawing.Drawing}: an immutable list of
 * shapes in millimetres on a page, each with its role and the coil, bar or slot it shows. {@code SvgWriter} writes the
 * list; pictures and print go through {@code coilwright.drawing.export}, which is loaded only when asked for.
 *
 * <p>Nothing in this package is ever {@code null}. Angles are degrees clockwise from straight up, seen from the
 * commutator end; x runs to the right and y down.
 */
package coilwright.drawing;
