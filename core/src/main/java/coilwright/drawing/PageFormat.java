package coilwright.drawing;

/** How a view is put on pages. */
public enum PageFormat {
    /** One page, as large as it takes for every number to be read: for the screen. */
    SINGLE,
    /** Pages of A4: for print. */
    A4
}
