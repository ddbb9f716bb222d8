/**
 * Printable documents: A4 pages built of headings, paragraphs, steps, tables and drawings. A sheet becomes
 * {@link coilwright.drawing.DrawingPages}, which the drawing room writes as PDF or SVG. Nothing here is ever {@code
 * null}.
 */
package coilwright.sheet;
