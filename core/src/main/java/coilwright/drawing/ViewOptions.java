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
     * @param title of the job; may be empty
     * @param coil number of the coil for the lead-throw card; the first highlighted or the first live coil where empty
     * @param rotorAngle of slot 1's centre line, degrees clockwise from straight up, where pole 1 has its centre
     * @param brushWidth bars, over 0, at most K/P; the least width for the winding where empty
     * @param highlight what to draw heavily
     * @param palette colours
     * @param format one page or A4
     * @param bench what the growler view needs besides
     * @throws IllegalArgumentException when the rotor angle is no number
     */
    public ViewOptions {
        if (!Double.isFinite(rotorAngle)) {
            throw new IllegalArgumentException("rotor angle is " + rotorAngle + ", but must be a number of degrees");
        }
    }

    /**
     * All but the growler, which is the usual one.
     *
     * @param title one line
     * @param coil coil of the lead-throw card
     * @param rotorAngle of slot 1's centre line from the centre of pole 1, degrees clockwise
     * @param brushWidth in bars; empty for the usual
     * @param highlight what to draw heavily
     * @param palette colours, or black, white and grey
     * @param format one page or A4
     */
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

    /**
     * {@return a title and the usual rest: one page, in colour, slot 1 under pole 1}
     *
     * @param title one line
     */
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

    /**
     * {@return the same with a coil for the lead-throw card}
     *
     * @param number its number, from 1
     */
    public ViewOptions withCoil(int number) {
        return new ViewOptions(
                title, OptionalInt.of(number), rotorAngle, brushWidth, highlight, palette, format, bench);
    }

    /**
     * {@return the same at another rotor position}
     *
     * @param degrees of slot 1's centre line from the centre of pole 1, clockwise
     */
    public ViewOptions withRotorAngle(double degrees) {
        return new ViewOptions(title, coil, degrees, brushWidth, highlight, palette, format, bench);
    }

    /**
     * {@return the same with brushes of a width}
     *
     * @param bars over 0
     */
    public ViewOptions withBrushWidth(double bars) {
        return new ViewOptions(title, coil, rotorAngle, OptionalDouble.of(bars), highlight, palette, format, bench);
    }

    /**
     * {@return the same with other things drawn heavily}
     *
     * @param other what to draw heavily
     */
    public ViewOptions withHighlight(Highlight other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, other, palette, format, bench);
    }

    /**
     * {@return the same in other colours}
     *
     * @param other the palette
     */
    public ViewOptions withPalette(Palette other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, other, format, bench);
    }

    /**
     * {@return the same on other pages}
     *
     * @param other one page or A4
     */
    public ViewOptions withFormat(PageFormat other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, palette, other, bench);
    }

    /**
     * {@return the same on another growler}
     *
     * @param other the growler and what touches the armature
     */
    public ViewOptions withBench(GrowlerBench other) {
        return new ViewOptions(title, coil, rotorAngle, brushWidth, highlight, palette, format, other);
    }
}
