/**
 * The tests a person does on the bench: where the probes go and what they should read. Nothing here is ever
 * {@code null}. Angles are bench angles: clockwise from straight up, looking at the commutator end, degrees.
 */
package coilwright.bench;
