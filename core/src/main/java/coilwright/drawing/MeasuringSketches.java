package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Small drawings of no armature in particular that show what to measure and where. Sizes bear letters, the same in every
 * sketch.
 */
public final class MeasuringSketches {
    private static final double WORDS = 2.6;
    private static final double LETTER = 3;
    private static final double ARROW = 1.6;

    /** Height of the lip and of the shoulder of a slot as sketched. */
    private static final double TIP = 6;
    /** Half the width of the opening. */
    private static final double OPENING = 3.2;

    private final Canvas canvas = new Canvas();
    private final Palette palette;

    /** Shapes of slot that a sketch can show. */
    public enum Slot {
        /** Parallel walls and a flat floor. */
        RECTANGULAR,
        /** Walls that lean together towards the floor. */
        PARALLEL_TOOTH,
        /** Parallel walls and a round floor. */
        ROUND_BOTTOM,
        /** A body under tooth tips. */
        SEMI_CLOSED;

        /** Whether its walls lean together towards the floor. */
        private boolean leans() {
            return this == PARALLEL_TOOTH || this == SEMI_CLOSED;
        }
    }

    private MeasuringSketches(Palette palette) {
        this.palette = palette;
    }

    /**
     * {@return how the throw of a coil is counted: from slot 1 to the slot of its other side, both counted}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing coilThrow(Palette palette) {
        return new MeasuringSketches(palette).drawCoilThrow();
    }

    /**
     * {@return where leads land: bars counted from the one in line with slot 1}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing leadThrow(Palette palette) {
        return new MeasuringSketches(palette).drawLeadThrow();
    }

    /**
     * {@return what slot 1 is in line with: the middle of a bar, or the mica between two}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing alignment(Palette palette) {
        return new MeasuringSketches(palette).drawAlignment();
    }

    /**
     * {@return section of a slot with its sizes: a to k and r}
     *
     * @param shape form of the slot
     * @param palette colours, or black, white and grey
     */
    public static Drawing slot(Slot shape, Palette palette) {
        return new MeasuringSketches(palette).drawSlot(shape);
    }

    /**
     * {@return core, end turns, commutator and shaft from the side with their sizes: A to H}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing core(Palette palette) {
        return new MeasuringSketches(palette).drawCore();
    }

    /**
     * {@return where the micrometer goes: v over the bare copper, w over the covering}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing micrometer(Palette palette) {
        return new MeasuringSketches(palette).drawMicrometer();
    }

    /**
     * {@return bars and mica in section: m thickness of the mica, n undercut}
     *
     * @param palette colours, or black, white and grey
     */
    public static Drawing mica(Palette palette) {
        return new MeasuringSketches(palette).drawMica();
    }

    private Drawing page(String title, String description, double width, double height) {
        return canvas.page(title, description, width, height, palette);
    }

    private Drawing drawCoilThrow() {
        double pitch = 11;
        canvas.rect(1, 20, 7 * pitch + 2, 13, Role.CORE);
        for (int slot = 1; slot <= 7; slot++) {
            double x = 2 + pitch * (slot - 0.5);
            canvas.rect(x - 2.6, 20, 5.2, 9, Role.OPENING);
            boolean counted = slot <= 5;
            canvas.add(Canvas.text(
                    x, 37.4, Integer.toString(slot), LETTER, counted, Anchor.MIDDLE, counted ? Role.LABEL : Role.NOTE));
        }
        double left = 2 + pitch * 0.5;
        double right = 2 + pitch * 4.5;
        double middle = (left + right) / 2;
        polyline(Role.COIL_TOP, left, 23, left, 15, middle, 7, middle, 4);
        polyline(Role.COIL_BOTTOM, right, 27, right, 15, middle, 7);
        canvas.add(new Shape.Circle(new Point(left, 23), 0.9, List.of(Role.COIL_TOP)));
        canvas.add(new Shape.Circle(new Point(right, 27), 0.9, List.of(Role.COIL_BOTTOM)));
        acrossUnder(left, right, 41, "");
        note(1, 47.5, "Coil throw 1–5: count both slots, slot 1 and the other.");
        note(1, 51.2, "Solid: side at the top of its slot. Dashed: at the floor.");
        return page(
                "Counting the coil throw",
                "Seven slots side by side. One coil side lies at the top of slot 1, the other at the floor of slot 5.",
                84,
                53);
    }

    private Drawing drawLeadThrow() {
        double pitch = 10;
        double slot = 30;
        canvas.rect(12, 2, 36, 10, Role.CORE);
        canvas.rect(slot - 2.6, 2, 5.2, 8, Role.OPENING);
        canvas.add(Canvas.text(slot, 5.4, "1", LETTER, true, Anchor.MIDDLE, Role.LABEL));
        note(49.5, 6, "slot 1");
        int[] bars = {16, 17, 1, 2, 3, 4, 5};
        for (int i = 0; i < bars.length; i++) {
            double x = slot + (i - 2) * pitch;
            canvas.add(bar(x - pitch / 2 + 0.4, 26, pitch - 0.8, 8));
            canvas.add(Canvas.text(x, 31.2, Integer.toString(bars[i]), WORDS, bars[i] == 1, Anchor.MIDDLE, Role.LABEL));
        }
        canvas.line(slot, 10.5, slot, 25.5, Role.GUIDE);
        polyline(Role.COIL_TOP, slot + 1.6, 7.6, slot + 1.6, 13, slot + 3 * pitch, 22, slot + 3 * pitch, 26);
        acrossUnder(slot, slot + 3 * pitch, 38, "");
        note(1, 44.5, "Lead throw: count from bar 1, in line with slot 1, to the");
        note(1, 48.2, "bar that the lead lands on. Here bar 4, clockwise: +3.");
        return page(
                "Counting the lead throw",
                "Slot 1 above bars 16 to 5; a dashed centre line runs from the slot to bar 1, the lead to bar 4.",
                87,
                50);
    }

    private Drawing drawAlignment() {
        for (int k = 0; k < 2; k++) {
            double middle = 21 + 42 * k;
            canvas.rect(middle - 14, 2, 28, 9, Role.CORE);
            canvas.rect(middle - 2.6, 2, 5.2, 7, Role.OPENING);
            canvas.add(Canvas.text(middle, 6.4, "1", LETTER, true, Anchor.MIDDLE, Role.LABEL));
            int bars = 3 + k;
            for (int i = 0; i < bars; i++) {
                double x = middle + (i - bars / 2.0) * 9;
                canvas.add(bar(x + 0.4, 19, 8.2, 8));
                int number = i - (k == 0 ? 1 : 2) + 1;
                if (number == 1) {
                    canvas.add(Canvas.text(x + 4.5, 24.4, "1", LETTER, true, Anchor.MIDDLE, Role.LABEL));
                }
            }
            canvas.line(middle, 9.5, middle, 29, Role.GUIDE);
            canvas.text(middle, 33, k == 0 ? "in line with bar" : "in line with mica", WORDS, Anchor.MIDDLE, Role.NOTE);
        }
        note(1, 38.5, "Lay a rule along the shaft over the middle of slot 1.");
        return page(
                "What slot 1 is in line with",
                "Left: the centre line of slot 1 meets the middle of bar 1. Right: it meets the mica before bar 1.",
                84,
                40);
    }

    private Drawing drawSlot(Slot shape) {
        double middle = 38;
        double top = 16;
        double floor = 56;
        double upper = shape.leans() ? 12 : 10;
        double lower = shape.leans() ? 7.5 : 10;
        double body = shape == Slot.SEMI_CLOSED ? top + 2 * TIP : top;
        canvas.rect(12, top, 52, 48, Role.CORE);
        canvas.add(new Shape.Polyline(inside(shape, middle, top, body, floor, upper, lower, 0), true, opening()));
        canvas.add(
                new Shape.Polyline(inside(shape, middle, top, body, floor, upper, lower, 0), true, List.of(Role.SLOT)));
        canvas.add(new Shape.Polyline(
                inside(shape, middle, Math.max(top, body - 1), body, floor - 1.4, upper - 1.4, lower - 1.4, 1),
                true,
                List.of(Role.COIL_BOTTOM)));
        double half = (body + 6 + floor) / 2;
        double wide = width(shape, half, body, floor, upper, lower) - 1.4;
        canvas.line(middle - wide, half, middle + wide, half, Role.WIRE);
        double wedge = width(shape, body + 5, body, floor, upper, lower) - 1.4;
        canvas.line(middle - wedge, body + 5, middle + wedge, body + 5, Role.WIRE);
        letter(middle, body + 3.9, "k");
        letter(middle, half - 0.9, "h");
        if (shape == Slot.SEMI_CLOSED) {
            above(middle, OPENING, top - 3.5, top, "a");
            down(68, top, top + TIP, "b", 66);
            down(68, top + TIP, body, "c", middle + 3.6);
            canvas.line(middle + upper + 0.4, body, 69, body, Role.LEADER);
        }
        above(middle, upper, shape == Slot.SEMI_CLOSED ? top - 9.5 : top - 3.5, body, "d");
        if (shape.leans()) {
            acrossUnder(middle - lower, middle + lower, 67, "e");
            canvas.line(middle - lower, floor + 0.4, middle - lower, 68, Role.LEADER);
            canvas.line(middle + lower, floor + 0.4, middle + lower, 68, Role.LEADER);
            pointer(middle + lower - 0.6, floor - 0.6, 60, 62, "r");
        }
        down(8, body, floor, "f", middle - upper);
        canvas.line(7, floor, middle - lower, floor, Role.LEADER);
        pointer(middle - width(shape, 40, body, floor, upper, lower) + 0.7, 40, 16, 34, "g");
        double y = 8;
        for (String line : legend(shape)) {
            note(78, y, line);
            y += 4.4;
        }
        return page(
                "Section of a slot",
                "Section of a slot with letters at its sizes: " + String.join("; ", legend(shape)) + ".",
                132,
                73);
    }

    /** A width over the section, its leaders drawn down to where it is. */
    private void above(double middle, double half, double y, double place, String letter) {
        across(middle - half, middle + half, y, letter);
        canvas.line(middle - half, y - 1, middle - half, place - 0.4, Role.LEADER);
        canvas.line(middle + half, y - 1, middle + half, place - 0.4, Role.LEADER);
    }

    private static List<String> legend(Slot shape) {
        List<String> out = new ArrayList<>();
        boolean leans = shape.leans();
        if (shape == Slot.SEMI_CLOSED) {
            out.add("a  opening");
            out.add("b  height of the lip");
            out.add("c  height of the shoulder");
        }
        out.add(leans ? "d  width of the body at its top" : "d  width");
        if (leans) {
            out.add("e  width at the floor");
        }
        out.add(shape == Slot.SEMI_CLOSED ? "f  depth, shoulder to floor" : "f  depth, surface to floor");
        if (leans) {
            out.add("r  radius of the corners");
        }
        out.add("g  liner, thickness");
        out.add("h  separator, thickness");
        out.add("k  wedge, height");
        return out;
    }

    private static List<Role> opening() {
        return List.of(Role.OPENING);
    }

    /** Half the width of the body at a height. */
    private static double width(Slot shape, double y, double body, double floor, double upper, double lower) {
        double share = Math.max(0, Math.min(1, (y - body) / (floor - body)));
        return shape.leans() ? upper + (lower - upper) * share : upper;
    }

    /** Outline from the opening round the floor. */
    private static List<Point> inside(
            Slot shape, double middle, double top, double body, double floor, double upper, double lower, double tips) {
        List<Point> out = new ArrayList<>();
        if (shape == Slot.SEMI_CLOSED && tips == 0) {
            out.add(new Point(middle - OPENING, top));
            out.add(new Point(middle - OPENING, top + TIP));
        }
        out.add(new Point(middle - upper, body));
        if (shape == Slot.ROUND_BOTTOM) {
            for (int a = 180; a >= 0; a -= 12) {
                double t = Math.toRadians(a);
                out.add(new Point(middle + upper * Math.cos(t), floor - upper + upper * Math.sin(t)));
            }
        } else if (shape == Slot.RECTANGULAR) {
            out.add(new Point(middle - upper, floor));
            out.add(new Point(middle + upper, floor));
        } else {
            out.add(new Point(middle - lower - 0.2, floor - 2));
            out.add(new Point(middle - lower + 1.8, floor));
            out.add(new Point(middle + lower - 1.8, floor));
            out.add(new Point(middle + lower + 0.2, floor - 2));
        }
        out.add(new Point(middle + upper, body));
        if (shape == Slot.SEMI_CLOSED && tips == 0) {
            out.add(new Point(middle + OPENING, top + TIP));
            out.add(new Point(middle + OPENING, top));
        }
        return out;
    }

    private Drawing drawCore() {
        double axis = 46;
        canvas.add(new Shape.Rect(8, axis - 5, 138, 10, 1, List.of(Role.SHAFT)));
        canvas.line(4, axis, 150, axis, Role.GUIDE);
        for (int i = 0; i < 6; i++) {
            canvas.add(bar(20, axis - 15 + i * 5, 24, 5));
        }
        canvas.add(bar(44, axis - 18, 3, 36));
        endTurns(50, axis, 14);
        canvas.rect(64, axis - 24, 46, 48, Role.CORE);
        canvas.add(new Shape.Polyline(
                List.of(
                        new Point(64, axis - 24),
                        new Point(110, axis - 24),
                        new Point(110, axis + 24),
                        new Point(64, axis + 24)),
                true,
                List.of(Role.SLOT)));
        for (int i = 1; i < 8; i++) {
            canvas.line(64, axis - 24 + i * 6, 110, axis - 24 + i * 6, Role.LEADER);
        }
        endTurns(110, axis, 16);
        canvas.text(87, axis - 8.2, "core", WORDS, Anchor.MIDDLE, Role.NOTE);
        double below = axis + 31;
        acrossUnder(64, 110, below, "A");
        acrossUnder(50, 64, below, "D");
        acrossUnder(110, 126, below, "E");
        acrossUnder(20, 44, below, "G");
        for (double x : new double[] {20, 44}) {
            canvas.line(x, axis + 15.4, x, below + 1, Role.LEADER);
        }
        for (double x : new double[] {50, 126}) {
            canvas.line(x, axis + 18.4, x, below + 1, Role.LEADER);
        }
        for (double x : new double[] {64, 110}) {
            canvas.line(x, axis + 24.4, x, below + 1, Role.LEADER);
        }
        down(13, axis - 15, axis + 15, "F", 20);
        canvas.line(12, axis + 15, 20, axis + 15, Role.LEADER);
        down(131, axis - 22, axis + 22, "H", 122);
        canvas.line(122, axis + 22, 132, axis + 22, Role.LEADER);
        down(154, axis - 24, axis + 24, "B", 110);
        canvas.line(110, axis + 24, 155, axis + 24, Role.LEADER);
        down(141, axis - 5, axis + 5, "C", 141);
        canvas.text(32, axis - 21.5, "commutator", WORDS, Anchor.MIDDLE, Role.NOTE);
        canvas.text(32, 8, "commutator end", WORDS, Anchor.MIDDLE, Role.NOTE);
        canvas.text(118, 8, "back end", WORDS, Anchor.MIDDLE, Role.NOTE);
        canvas.text(87, 8, "end turns", WORDS, Anchor.MIDDLE, Role.NOTE);
        canvas.line(80, 9, 58, axis - 19, Role.LEADER);
        canvas.line(94, 9, 116, axis - 19, Role.LEADER);
        note(4, 88, "A length of the core · B diameter over the teeth · C shaft and its insulation at the end turns");
        note(
                4,
                92,
                "D, E overhang of the end turns from the core's end faces · F commutator diameter · G its brush track");
        note(4, 96, "H diameter over the end turns");
        return page(
                "Armature from the side",
                "Armature from the side with letters: A core length, B core diameter, C shaft, D and E overhang, F"
                        + " commutator diameter, G brush track, H diameter over the end turns.",
                160,
                98);
    }

    private void endTurns(double x, double axis, double wide) {
        canvas.add(new Shape.Rect(x, axis - 22, wide - 4, 44, 3, List.of(Role.COIL_TOP)));
        canvas.add(new Shape.Rect(x + 4, axis - 18, wide - 4, 36, 3, List.of(Role.COIL_BOTTOM)));
    }

    private Drawing drawMicrometer() {
        gauge(30, "v", 3.4, 3.4);
        gauge(112, "w", 3.4, 5);
        canvas.text(30, 44, "v: bare copper", WORDS, Anchor.MIDDLE, Role.NOTE);
        canvas.text(112, 44, "w: over the covering", WORDS, Anchor.MIDDLE, Role.NOTE);
        note(1, 49.5, "On a straight piece away from bends, in three places and turned by a quarter; note the mean.");
        note(1, 53.3, "Take the covering off without taking copper: char or dissolve it, then wipe. Never scrape.");
        return page(
                "Where the micrometer goes",
                "Left: the micrometer closes on the bare wire. Right: on the wire with its covering.",
                150,
                55);
    }

    private void gauge(double x, String letter, double copper, double over) {
        double y = 13;
        canvas.add(new Shape.Arc(new Point(x, y), 22, 90, 180, List.of(Role.WIRE)));
        canvas.add(new Shape.Arc(new Point(x, y), 17, 90, 180, List.of(Role.WIRE)));
        canvas.add(new Shape.Rect(x - 22, y - 2, 22 - over, 4, 0, List.of(Role.INSTRUMENT)));
        canvas.add(new Shape.Rect(x + over, y - 2, 22 - over, 4, 0, List.of(Role.INSTRUMENT)));
        canvas.add(new Shape.Rect(x + 22, y - 3.5, 14, 7, 0.5, List.of(Role.INSTRUMENT)));
        if (over > copper) {
            canvas.add(new Shape.Circle(new Point(x, y), over, List.of(Role.COIL_BOTTOM)));
            canvas.add(new Shape.Circle(new Point(x, y), over, List.of(Role.INSTRUMENT)));
        }
        canvas.add(new Shape.Circle(new Point(x, y), copper, List.of(Role.BAR)));
        canvas.line(x - over, y - over - 4.5, x - over, y - 2.2, Role.LEADER);
        canvas.line(x + over, y - over - 4.5, x + over, y - 2.2, Role.LEADER);
        across(x - over, x + over, y - over - 3.5, letter);
    }

    private Drawing drawMica() {
        for (int i = 0; i < 3; i++) {
            canvas.add(bar(4 + i * 22, 14, 18, 24));
        }
        for (int i = 0; i < 2; i++) {
            canvas.rect(22 + i * 22, 20, 4, 18, Role.HEAD);
            canvas.add(new Shape.Rect(22 + i * 22, 20, 4, 18, 0, List.of(Role.SLOT)));
        }
        across(44, 48, 9, "m");
        canvas.line(44, 8, 44, 19.6, Role.LEADER);
        canvas.line(48, 8, 48, 19.6, Role.LEADER);
        down(72, 14, 20, "n", 66.4);
        canvas.line(48.4, 20, 73, 20, Role.LEADER);
        note(1, 44.5, "m thickness of the mica · n undercut: mica under the bars");
        return page(
                "Bars and mica in section",
                "Three bars in section with mica between them, lower than the bars: m its thickness, n the undercut.",
                80,
                46);
    }

    private static Shape bar(double x, double y, double width, double height) {
        return new Shape.Group(
                Optional.empty(),
                Optional.empty(),
                "",
                List.of(Role.BAR),
                List.of(new Shape.Rect(x, y, width, height, 0, List.of())));
    }

    private void polyline(Role role, double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new Point(xy[i], xy[i + 1]));
        }
        canvas.add(new Shape.Polyline(points, false, List.of(role)));
    }

    private void note(double x, double y, String words) {
        canvas.text(x, y, words, WORDS, Anchor.START, Role.NOTE);
    }

    private void letter(double x, double y, String letter) {
        if (!letter.isEmpty()) {
            canvas.add(Canvas.text(x, y, letter, LETTER, true, Anchor.MIDDLE, Role.LABEL));
        }
    }

    /** A size across with its letter above; arrows from outside where it is narrow. */
    private void across(double from, double to, double y, String letter) {
        arrows(from, to, y);
        letter((from + to) / 2, y - 1.2, letter);
    }

    /** A size across with its letter beneath. */
    private void acrossUnder(double from, double to, double y, String letter) {
        arrows(from, to, y);
        letter((from + to) / 2, y + 3.6, letter);
    }

    private void arrows(double from, double to, double y) {
        boolean narrow = to - from < 5;
        double out = narrow ? 4 : 0;
        if (narrow) {
            canvas.line(from - out, y, from, y, Role.AXIS);
            canvas.line(to, y, to + out, y, Role.AXIS);
        } else {
            canvas.line(from, y, to, y, Role.AXIS);
        }
        double turn = narrow ? -1 : 1;
        for (double side : new double[] {-0.7, 0.7}) {
            canvas.line(from, y, from + turn * ARROW, y + side, Role.AXIS);
            canvas.line(to, y, to - turn * ARROW, y + side, Role.AXIS);
        }
    }

    /** A size from top to bottom, its letter at the right, with a thin line from what it measures at the top. */
    private void down(double x, double from, double to, String letter, double edge) {
        canvas.line(x, from, x, to, Role.AXIS);
        for (double side : new double[] {-0.7, 0.7}) {
            canvas.line(x, from, x + side, from + ARROW, Role.AXIS);
            canvas.line(x, to, x + side, to - ARROW, Role.AXIS);
        }
        if (edge != x) {
            canvas.line(Math.min(edge, x - 1), from, Math.max(edge, x + 1), from, Role.LEADER);
        }
        letter(x + 2.6, (from + to) / 2 + 1, letter);
    }

    /** A letter that a thin line joins to a place. */
    private void pointer(double x, double y, double letterX, double letterY, String letter) {
        canvas.line(x, y, letterX + (x > letterX ? 1.6 : -1.6), letterY - 1, Role.LEADER);
        letter(letterX, letterY, letter);
    }
}
