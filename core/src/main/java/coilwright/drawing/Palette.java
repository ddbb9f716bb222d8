package coilwright.drawing;

/** The colours of a drawing. Every colour stands beside a dash, weight or letter that says the same. */
public enum Palette {
    /** Colours that hold for colour-blind eyes. */
    COLOUR,
    /** Black, white and grey. */
    MONOCHROME
}
