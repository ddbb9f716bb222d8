/**
 * Drawings as PNG and PDF. The only package that needs the Java 2D classes; loaded when a picture or print is asked
 * for. Nothing here is ever {@code null}.
 */
package coilwright.drawing.export;
