/**
 * The winding as a graph of bars (vertices) and coils (edges): closed circuits, parallel paths between brushes,
 * bars at one potential, and which coils lie between two bars. Nothing here is ever {@code null}.
 */
package coilwright.circuit;
