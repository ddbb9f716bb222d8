package coilwright.drawing;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Winding;
import java.util.Optional;

/** The winding seen from the commutator end, with a panel of words beside it. */
final class RoundLayout {
    private static final double PANEL = 77;

    private RoundLayout() {}

    static DrawingPages pages(Overlay overlay, ViewOptions options) {
        Winding winding = overlay.winding();
        double font = 2.9;
        double core = Math.max(14, Ring.roomyCore(winding, font));
        double radius = Ring.fullRadius(core);
        double most = Canvas.SHORT / 2 - 9;
        if (radius > most && options.format() == PageFormat.A4) {
            font = Canvas.SMALL + 0.1;
            double bars = winding.armature().bars();
            core = Math.max(14, Math.min(34, bars / 3));
            radius = most;
        } else if (radius <= most) {
            radius = most;
        }
        double height = Math.max(Canvas.SHORT, 2 * radius + 18);
        double width = Math.max(Canvas.LONG, 2 * radius + PANEL + 2 * Canvas.BORDER + 8);
        var canvas = new Canvas();
        var ring = new Ring(overlay, options, new Point(Canvas.BORDER + radius, height / 2), core, radius, font, false);
        ring.paint(canvas, "", Optional.empty());
        String name = overlay.words().map(Overlay.Words::name).orElse("Round winding diagram");
        String title = options.title().isEmpty() ? name : options.title();
        double left = width - Canvas.BORDER - PANEL;
        if (overlay.words().isPresent()) {
            overlayPanel(canvas, overlay.words().get(), options, title, left, height, ring.tagsLeftOut());
        } else {
            panel(canvas, winding, options, title, left, height);
        }
        String what = overlay.words().map(w -> w.what() + ". ").orElse("");
        return DrawingPages.of(canvas.page(
                title,
                what + "Round winding diagram, seen from the commutator end. " + Caption.counts(winding.armature())
                        + ". " + Caption.kind(winding) + ".",
                width,
                height,
                options.palette()));
    }

    private static void panel(
            Canvas canvas, Winding winding, ViewOptions options, String title, double x, double height) {
        double y = canvas.lines(x, 17, title, 5, true, PANEL, 3, Role.TITLE) + 1;
        y = canvas.lines(x, y, "Round diagram, seen from the commutator end", 2.9, false, PANEL, 2, Role.NOTE) + 1.5;
        for (String part : (Caption.counts(winding.armature()) + " · " + Caption.kind(winding)).split(" · ")) {
            y = canvas.lines(x, y, part, 2.9, false, PANEL, 2, Role.NOTE);
        }
        y += 3;
        Optional<BrushGear> gear = Caption.brushes(winding, options);
        if (gear.isPresent()) {
            brushes(canvas, gear.get(), x, y, height);
        }
        legend(canvas, winding, options, x, height - 44);
    }

    private static void brushes(Canvas canvas, BrushGear gear, double x, double top, double height) {
        canvas.add(Canvas.text(x, top, "Brushes, clockwise from straight up", 2.9, true, Anchor.START, Role.NOTE));
        double y = top + 4.2;
        int left = gear.brushes().size();
        for (Brush b : gear.brushes()) {
            if (y > height - 62 && left > 1) {
                canvas.lines(x, y, "and " + left + " more", 2.9, false, PANEL, 1, Role.NOTE);
                return;
            }
            left--;
            String bars = b.bars().size() == 1
                    ? "bar " + b.bars().get(0)
                    : "bars " + b.bars().get(0)
                            + (b.bars().size() == 2 ? " and " : " to ")
                            + b.bars().get(b.bars().size() - 1);
            y = canvas.lines(
                    x,
                    y,
                    b.sign() + " brush " + b.number() + " at " + Caption.degrees(b.angle()) + " on " + bars,
                    2.9,
                    false,
                    PANEL,
                    1,
                    Role.NOTE);
        }
    }

    private static void legend(Canvas canvas, Winding winding, ViewOptions options, double x, double top) {
        double y = top;
        canvas.sample(x, y, "top side (dot), lead and back", Role.COIL_TOP);
        canvas.sample(x, y + 4.6, "bottom side (ring), lead and back", Role.COIL_BOTTOM);
        y += 9.2;
        if (winding.sets().size() > 1) {
            canvas.sample(x, y, "the same of the wave coils", Role.SECOND_SET);
            y += 4.6;
        }
        y = canvas.lines(
                x,
                y,
                "From the middle out: brushes, bars, leads, slots, back end folded outwards with the numbers of the"
                        + " coils, poles.",
                2.6,
                false,
                PANEL,
                3,
                Role.LEGEND);
        if (winding.coils().stream().anyMatch(c -> !c.isLive())) {
            y = canvas.lines(
                    x,
                    y,
                    "Short cross line: a lead on no bar. (number): dead coil, leads cut and insulated.",
                    2.6,
                    false,
                    PANEL,
                    2,
                    Role.LEGEND);
        }
        canvas.lines(
                x,
                y,
                "Slot 1 at " + Caption.degrees(options.rotorAngle()) + ", clockwise from straight up.",
                2.6,
                false,
                PANEL,
                1,
                Role.LEGEND);
    }

    private static void overlayPanel(
            Canvas canvas,
            Overlay.Words words,
            ViewOptions options,
            String title,
            double x,
            double height,
            int tagsLeftOut) {
        double y = canvas.lines(x, 17, title, 5, true, PANEL, 3, Role.TITLE) + 1;
        y = canvas.lines(
                        x,
                        y,
                        "Round diagram, seen from the " + (words.mirrored() ? "back" : "commutator") + " end",
                        2.9,
                        false,
                        PANEL,
                        2,
                        Role.NOTE)
                + 1.5;
        y = canvas.lines(x, y, words.what(), 2.9, true, PANEL, 6, Role.NOTE) + 1.5;
        if (!words.caution().isEmpty()) {
            y = canvas.lines(x, y, words.caution(), 2.9, true, PANEL, 3, Role.CAUTION) + 1.5;
        }
        double bottom = height - 40;
        for (int i = 0; i < words.notes().size(); i++) {
            int left = words.notes().size() - i;
            if (y > bottom - 16 && left > 1) {
                canvas.lines(x, y, "and " + left + " more", 2.9, false, PANEL, 1, Role.NOTE);
                break;
            }
            y = canvas.lines(x, y, words.notes().get(i), 2.9, false, PANEL, 4, Role.NOTE);
        }
        y = bottom;
        for (Overlay.Sample s : words.legend()) {
            canvas.sample(x, y, s.words(), s.role());
            y += 4.6;
        }
        String more = words.legend().stream().anyMatch(s -> s.role() == Role.FOUND_LEAD)
                ? "3t, 3b: top, bottom lead of coil 3."
                        + (tagsLeftOut == 0 ? "" : " " + tagsLeftOut + " such labels left out.")
                : "";
        String text = more + " Slot 1 at " + Caption.degrees(options.rotorAngle()) + ", clockwise from straight up.";
        canvas.lines(x, y, text, 2.6, false, PANEL, 3, Role.LEGEND);
    }
}
