package coilwright.drawing;

import coilwright.winding.Winding;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** The ways to look at a winding. */
public enum DrawingView {
    /** Rolled out flat: slots, coil sides, end connections, bars, brushes and poles. */
    DEVELOPED,
    /** Seen from the commutator end. */
    ROUND,
    /** One coil alone with its coil throw and lead throw. */
    COIL,
    /** Each parallel path in order from brush to brush. */
    PATHS,
    /** The armature in the growler, with the probes where they read most. */
    GROWLER;

    /** {@return the word for it on the command line} */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * {@return the view of a name}
     *
     * @param word as files and commands have it
     * @throws IllegalArgumentException when there is none, naming those there are
     */
    public static DrawingView named(String word) {
        return Arrays.stream(values())
                .filter(v -> v.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no view \"" + word + "\": the views are "
                        + Arrays.stream(values()).map(DrawingView::word).collect(Collectors.joining(", "))));
    }

    /**
     * Draws a winding.
     *
     * @param winding the winding
     * @param options what to draw and how
     * @return its pages
     * @throws IllegalArgumentException when an option does not suit the winding
     */
    public DrawingPages draw(Winding winding, ViewOptions options) {
        return switch (this) {
            case DEVELOPED -> DevelopedLayout.pages(Overlay.none(winding), options);
            case ROUND -> RoundLayout.pages(Overlay.none(winding), options);
            case COIL -> CoilCardLayout.pages(winding, options);
            case PATHS -> PathsLayout.pages(winding, options);
            case GROWLER -> GrowlerLayout.pages(winding, options);
        };
    }
}
