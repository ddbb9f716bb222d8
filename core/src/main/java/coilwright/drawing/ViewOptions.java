package coilwright.drawing;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a view shows and how.
 *
 * @param title of the job; may be empty
 * @param coil number of the coil for the lead-throw card; the first highlighted or the first live coil where empty
 * @param rotorAngle of slot 1's centre line, degrees clockwise from straight up, where pole 1 has its centre
 * @param brushWidth bars, over 0, at most K/P; the least width for the winding where empty
 * @param highlight what to draw heavily
 * @param palette colours
 * @param format one page or A4
 * @param bench what the growler view needs besides
 */
public record ViewOptions(
        String title,
        OptionalInt coil,
        double rotorAngle,
        OptionalDouble brushWidth,
        Highlight highlight,
        Palette palette,
        PageFormat format,
        GrowlerBench bench) {
    /**
     * Checks the angle.
     *
     * @throws IllegalArgumentException when the rotor angle is no number
     */
    public ViewOptions {
        if (!Double.isFinite(rotorAngle)) {
            throw new IllegalArgumentException("rotor angle is " + rotorAngle + ", but must be a number of degrees");
        }
    }

    /** All but the growler, which is the usual one. */
    public ViewOptions(
            String title,
            OptionalInt coil,
            double rotorAngle,
            OptionalDouble brushWidth,
            Highlight highlight,
            Palette palette,
            PageFormat format) {
        this(title, coil, rotorAngle, brushWidth, highlight, palette, format, GrowlerBench.usual());
    }

    /** A title and the usual rest: one page, in colour, slot 1 under pole 1. */
    public static ViewOptions of(String title) {
        return new ViewOptions(
                title,
                OptionalInt.empty(),
                0,
                OptionalDouble.empty(),
                Highlight.none(),
                Palette.COLOUR,
                PageFormat.SINGLE);
    }

    /** The same with a coil for the lead-throw card. */
    public ViewOptions withCoil(int number) {
        return new ViewOptions(
                title, OptionalInt.of(number), rotorAngle, brushWidth, highlight, palette, format, bench);
    }

    /** The same at another rotor position. */
    public ViewOptions withRotorAngle(double degrees) {
        return new ViewOptions(title, coil, degrees, brushWidth, highlight, palette, format, bench);
    }

    /** The same with brushes of a width. */
    public ViewOptions withBrushWidth(double bars) {
        return new ViewOptions(title, coil, rotorAngle, OptionalDouble.of(bars), highlight, palette, format, bench);
    }

    /** The same with other things drawn heavily. */
    public ViewOptions withHighlight(Highlight other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, other, palette, format, bench);
    }

    /** The same in other colours. */
    public ViewOptions withPalette(Palette other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, other, format, bench);
    }

    /** The same on other pages. */
    public ViewOptions withFormat(PageFormat other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, palette, other, bench);
    }

    /** The same on another growler. */
    public ViewOptions withBench(GrowlerBench other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, palette, format, other);
    }
}
