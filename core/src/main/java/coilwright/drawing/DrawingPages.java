package coilwright.drawing;

import java.util.List;

/**
 * The pages of one view.
 *
 * @param pages in order, at least one
 */
public record DrawingPages(List<Drawing> pages) {
    /**
     * Copies the list.
     *
     * @param pages in order, at least one
     * @throws IllegalArgumentException when there is no page
     */
    public DrawingPages {
        pages = List.copyOf(pages);
        if (pages.isEmpty()) {
            throw new IllegalArgumentException("a view has no pages, but needs one");
        }
    }

    /**
     * {@return one page}
     *
     * @param drawing the page
     */
    public static DrawingPages of(Drawing drawing) {
        return new DrawingPages(List.of(drawing));
    }

    /** {@return the first page} */
    public Drawing first() {
        return pages.get(0);
    }
}
