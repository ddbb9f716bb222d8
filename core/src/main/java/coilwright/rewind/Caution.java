package coilwright.rewind;

/**
 * Something else that a change touches.
 *
 * @param id short name, such as {@code field}
 * @param text what, and what to do
 * @param source why it is so
 */
public record Caution(String id, String text, Source source) {}
