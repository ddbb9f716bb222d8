/**
 * Kinds of fault, what a faulty winding reads, and the way back: from readings to the faults that explain them, and
 * the next probe to take. Nothing here is ever {@code null}.
 */
package coilwright.fault;
