package coilwright.drawing;

import coilwright.winding.Winding;

/** Drawings of a winding with something laid over it: connections as found, or a coil cut out. */
public final class OverlayDrawings {
    private OverlayDrawings() {}

    /**
     * {@return the leads as planned and as found, over one another} What agrees is drawn in thin grey lines; what was
     * planned and not found is dashed and ends in a ring; what was found instead is solid and heavy and ends in a dot.
     * Slots, bars and coils bear the numbers of the list.
     *
     * @param view {@link DrawingView#DEVELOPED} or {@link DrawingView#ROUND}
     * @param plan the winding as it should be
     * @param comparison what was planned and what was found
     * @param options what to draw and how
     * @throws IllegalArgumentException when the view is another one
     */
    public static DrawingPages connections(DrawingView view, Winding plan, Comparison comparison, ViewOptions options) {
        return draw(view, new ConnectionOverlay(plan, comparison).lay(), options);
    }

    /**
     * {@return a winding with a coil cut out: its leads lifted, the bars joined by a jumper, the coil cut through where
     * that is part of it} An emergency measure, and marked as one.
     *
     * @param view {@link DrawingView#DEVELOPED} or {@link DrawingView#ROUND}
     * @param winding the winding
     * @param cutOut leads lifted and bars joined
     * @param options what to draw and how
     * @throws IllegalArgumentException when the view is another one, or a coil or bar does not exist
     */
    public static DrawingPages cutOut(DrawingView view, Winding winding, CutOut cutOut, ViewOptions options) {
        return draw(view, CutOutOverlay.lay(winding, cutOut), options);
    }

    /**
     * {@return the view of a name, of those that something can be laid over}
     *
     * @param word as files and commands have it
     * @throws IllegalArgumentException when there is none
     */
    public static DrawingView viewNamed(String word) {
        return check(DrawingView.named(word));
    }

    private static DrawingView check(DrawingView view) {
        if (view != DrawingView.DEVELOPED && view != DrawingView.ROUND) {
            throw new IllegalArgumentException("the view is \"" + view.word()
                    + "\", but this is drawn in two views alone: choose " + DrawingView.DEVELOPED.word() + " or "
                    + DrawingView.ROUND.word());
        }
        return view;
    }

    private static DrawingPages draw(DrawingView view, Overlay overlay, ViewOptions options) {
        return check(view) == DrawingView.DEVELOPED
                ? DevelopedLayout.pages(overlay, options)
                : RoundLayout.pages(overlay, options);
    }
}
