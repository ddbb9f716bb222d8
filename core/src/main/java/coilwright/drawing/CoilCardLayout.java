package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * One coil alone, as a rewinder notes it: coil throw, and each lead in bars from the centre line of the slot that holds
 * the top side, which the card counts as slot 1.
 */
final class CoilCardLayout {
    private static final double LEFT = 152;
    private static final double RIGHT = Canvas.LONG - Canvas.BORDER;

    private CoilCardLayout() {}

    static DrawingPages pages(Winding winding, ViewOptions options) {
        Coil coil = chosen(winding, options);
        var canvas = new Canvas();
        String title =
                options.title().isEmpty() ? "Coil " + coil.number() : options.title() + ", coil " + coil.number();
        canvas.heading(
                title,
                Caption.counts(winding.armature()) + " · " + Caption.kind(winding),
                "Coil and lead throw, as noted from the armature",
                Canvas.LONG);
        double font = 2.6;
        double core = Math.max(12, Math.min(22, winding.armature().bars() / 4.0));
        new Ring(Overlay.none(winding), options, new Point(Canvas.BORDER + 70, 110), core, 70, font, true)
                .paint(canvas, "end-", Optional.of(Set.of(coil.number())));
        canvas.text(Canvas.BORDER + 70, 188, "seen from the commutator end", 2.6, Anchor.MIDDLE, Role.LEGEND);
        new Strip(winding, coil, options).paint(canvas);
        words(canvas, winding, coil);
        double x = canvas.sample(Canvas.BORDER, 200, "top side and its lead", Role.COIL_TOP);
        canvas.sample(x, 200, "bottom side and its lead", Role.COIL_BOTTOM);
        return DrawingPages.of(canvas.page(
                title, String.join(" ", lines(winding, coil)), Canvas.LONG, Canvas.SHORT, options.palette()));
    }

    private static Coil chosen(Winding winding, ViewOptions options) {
        if (options.coil().isPresent()) {
            return winding.coil(options.coil().getAsInt());
        }
        return options.highlight().coils().stream()
                .filter(winding::hasCoil)
                .map(winding::coil)
                .findFirst()
                .or(() -> winding.liveCoils().stream().findFirst())
                .orElse(winding.coils().get(0));
    }

    /**
     * Bars from the centre line of the top side's slot to the middle of a lead's bar, positive to the right; each lead
     * goes the short way from its own slot.
     */
    static double leadThrow(Winding winding, Coil coil, boolean top) {
        double d = reach(winding, coil, top) / winding.armature().barAngle();
        return Math.abs(d) < 1e-9 ? 0 : d;
    }

    /** The same in degrees. */
    private static double reach(Winding winding, Coil coil, boolean top) {
        Armature a = winding.armature();
        double bar = a.barCentre((top ? coil.topBar() : coil.bottomBar()).getAsInt());
        double centre = a.slotCentre(coil.top().slot());
        if (top) {
            return Ring.shortWay(centre, bar);
        }
        double side = Ring.shortWay(centre, a.slotCentre(coil.bottom().slot()));
        double reach = side + Ring.shortWay(a.slotCentre(coil.bottom().slot()), bar);
        double low = Math.min(0, side);
        double high = Math.max(0, side);
        if (coil.topBar().isPresent()) {
            double other = reach(winding, coil, true);
            low = Math.min(low, other);
            high = Math.max(high, other);
        }
        // Two leads that would go past one another round the shaft: the bottom one goes the shorter other way.
        double best = reach;
        double most = 360 - 2 * a.barAngle();
        for (double turn : new double[] {-360, 360}) {
            double spread = Math.max(high, best) - Math.min(low, best);
            double other = Math.max(high, reach + turn) - Math.min(low, reach + turn);
            if (spread > most && other < spread) {
                best = reach + turn;
            }
        }
        return best;
    }

    static int slotsSpanned(Winding winding, Coil coil) {
        int s = winding.armature().slots();
        return Math.floorMod(coil.bottom().slot() - coil.top().slot(), s);
    }

    private static void words(Canvas canvas, Winding winding, Coil coil) {
        double y = 139;
        List<String> lines = lines(winding, coil);
        for (int i = 0; i < lines.size(); i++) {
            boolean main = i == 1 || i == 3 || i == 4;
            y = canvas.lines(LEFT, y, lines.get(i), main ? 3.6 : 2.9, main, RIGHT - LEFT, 3, Role.NOTE) + 1;
        }
    }

    /** The card in words. */
    static List<String> lines(Winding winding, Coil coil) {
        Armature a = winding.armature();
        int slot = coil.top().slot();
        int spanned = slotsSpanned(winding, coil);
        List<String> out = new ArrayList<>();
        out.add("Counted from slot " + slot + (slot == 1 ? "" : " as slot 1") + ", which holds the top side of coil "
                + coil.number() + ".");
        out.add("Coil throw 1–" + (1 + spanned) + ": top side in slot " + slot + ", bottom side in slot "
                + coil.bottom().slot() + ".");
        out.add("The centre line of slot " + slot + " runs through " + centreLine(a, slot) + ".");
        out.add("Top lead: " + lead(winding, coil, true) + ".");
        out.add("Bottom lead: " + lead(winding, coil, false) + ".");
        out.add("Right is clockwise, seen from the commutator end with the slot up.");
        return out;
    }

    private static String centreLine(Armature a, int slot) {
        double bars = (a.slotCentre(slot) - a.barCentre(1)) / a.barAngle();
        double below = Math.floor(bars + 1e-9);
        double part = bars - below;
        int bar = a.wrapBar((int) below + 1);
        if (part < 1e-6) {
            return "the middle of bar " + bar;
        }
        if (Math.abs(part - 0.5) < 1e-6) {
            return "the mica between bars " + bar + " and " + a.wrapBar(bar + 1);
        }
        return part < 0.5
                ? "bar " + bar + ", " + Caption.number(part) + " bar right of its middle"
                : "bar " + a.wrapBar(bar + 1) + ", " + Caption.number(1 - part) + " bar left of its middle";
    }

    private static String lead(Winding winding, Coil coil, boolean top) {
        OptionalInt bar = top ? coil.topBar() : coil.bottomBar();
        if (bar.isEmpty()) {
            return "on no bar; cut and insulated";
        }
        double d = leadThrow(winding, coil, top);
        return "bar " + bar.getAsInt() + ", " + bars(d);
    }

    static String bars(double d) {
        double size = Math.abs(d);
        if (size < 0.005) {
            return "on the centre line";
        }
        return Caption.number(size) + (size <= 1 ? " bar " : " bars ") + (d > 0 ? "right" : "left")
                + " of the centre line";
    }

    /** The part of the circumference that the coil and its leads reach, rolled out flat. */
    private static final class Strip {
        private static final double APEX = 40;
        private static final double BEND = 58;
        private static final double CORE_TOP = 62;
        private static final double CORE_BOTTOM = 80;
        private static final double LEAD_START = 83;
        private static final double LEAD_END = 104;
        private static final double BAR_TOP = 107;
        private static final double BAR_BOTTOM = 114.5;
        private static final double RULER = 119;

        private final Winding winding;
        private final Armature a;
        private final Coil coil;
        private final ViewOptions options;
        private final double top;
        private final double bottom;
        private final double from;
        private final double to;
        private final double scale;

        /** All x in degrees from the centre line of the top side's slot. */
        Strip(Winding winding, Coil coil, ViewOptions options) {
            this.winding = winding;
            this.a = winding.armature();
            this.coil = coil;
            this.options = options;
            this.top = 0;
            double centre = a.slotCentre(coil.top().slot());
            this.bottom = Ring.shortWay(centre, a.slotCentre(coil.bottom().slot()));
            double low = Math.min(0, bottom);
            double high = Math.max(0, bottom);
            for (boolean isTop : new boolean[] {true, false}) {
                if ((isTop ? coil.topBar() : coil.bottomBar()).isPresent()) {
                    low = Math.min(low, reach(winding, coil, isTop));
                    high = Math.max(high, reach(winding, coil, isTop));
                }
            }
            double pad = Math.max(0.8 * a.slotAngle(), 1.2 * a.barAngle());
            double width = Math.min(high - low + 2 * pad, 360);
            double middle = (low + high) / 2;
            this.from = middle - width / 2;
            this.to = middle + width / 2;
            this.scale = Math.min((RIGHT - LEFT) / width, 16 / Math.min(a.slotAngle(), a.barAngle()));
        }

        private double x(double degrees) {
            return (LEFT + RIGHT) / 2 + (degrees - (from + to) / 2) * scale;
        }

        /** Brings an angle into the strip by whole turns. */
        private double within(double degrees) {
            return from + Math.floorMod(Math.round((degrees - from) * 1e6), 360_000_000L) / 1e6;
        }

        private double bar(int bar) {
            return within(a.barCentre(bar) - a.slotCentre(coil.top().slot()));
        }

        private double slot(int slot) {
            return within(a.slotCentre(slot) - a.slotCentre(coil.top().slot()));
        }

        void paint(Canvas canvas) {
            double font = 2.6;
            canvas.rect(x(from), CORE_TOP, x(to) - x(from), CORE_BOTTOM - CORE_TOP, Role.CORE);
            double slotWidth = Math.min(0.66 * a.slotAngle() * scale, 9);
            List<Integer> slots = new ArrayList<>();
            for (int slot = 1; slot <= a.slots(); slot++) {
                double d = slot(slot);
                if (x(d) - slotWidth / 2 >= x(from) && x(d) + slotWidth / 2 <= x(to)) {
                    slots.add(slot);
                }
            }
            for (int slot : slots) {
                double d = slot(slot);
                canvas.rect(x(d) - slotWidth / 2, CORE_TOP, slotWidth, CORE_BOTTOM - CORE_TOP, Role.OPENING);
            }
            canvas.line(x(0), APEX - 3, x(0), RULER + 8, Role.GUIDE);
            bars(canvas, font);
            List<Shape> parts = new ArrayList<>();
            double gap = Math.min(slotWidth * 0.5, 4) / 2;
            double xt = x(top) - gap;
            double xb = x(bottom) + gap;
            half(parts, true, xt, (xt + xb) / 2, coil.topBar());
            half(parts, false, xb, (xt + xb) / 2, coil.bottomBar());
            parts.add(Canvas.text(
                    (xt + xb) / 2,
                    APEX - 1.3,
                    "coil " + coil.number(),
                    3,
                    true,
                    Anchor.MIDDLE,
                    Role.LABEL,
                    Role.COIL_TOP));
            canvas.coil(
                    Overlay.none(winding),
                    coil,
                    "strip-",
                    parts,
                    Role.COIL,
                    options.highlight().coils().contains(coil.number()));
            var wanted = new TreeSet<>(Set.of(coil.top().slot(), coil.bottom().slot()));
            var taken = new Occupied();
            slots.sort(Comparator.comparing((Integer s) -> !wanted.contains(s)).thenComparing(s -> s));
            for (int slot : slots) {
                double d = slot(slot);
                boolean own = wanted.contains(slot);
                Shape.Text t = Canvas.centred(
                        x(d), (CORE_TOP + CORE_BOTTOM) / 2, Integer.toString(slot), font, own, Role.LABEL);
                List<Shape> group = new ArrayList<>();
                group.add(new Shape.Rect(
                        x(d) - slotWidth / 2, CORE_TOP, slotWidth, CORE_BOTTOM - CORE_TOP, 0, List.of()));
                if (taken.take(t.bounds().grown(0.4))) {
                    if (own) {
                        Box b = t.bounds();
                        group.add(new Shape.Rect(
                                b.left() - 0.5,
                                t.at().y() - 0.86 * font - 0.1,
                                b.width() + 1,
                                font,
                                0.5,
                                List.of(Role.PLATE)));
                    }
                    group.add(t);
                }
                boolean marked = options.highlight().slots().contains(slot);
                canvas.group("strip-", Element.slot(slot), "Slot " + slot, Canvas.roles(Role.SLOT, marked), group);
            }
            ruler(canvas);
        }

        private void bars(Canvas canvas, double font) {
            double w = a.barAngle() * scale;
            Set<Integer> wanted = new TreeSet<>();
            coil.topBar().ifPresent(wanted::add);
            coil.bottomBar().ifPresent(wanted::add);
            List<Shape> late = new ArrayList<>();
            List<Integer> shown = new ArrayList<>();
            for (int bar = 1; bar <= a.bars(); bar++) {
                double d = bar(bar);
                if (wanted.contains(bar)
                        || (d - a.barAngle() / 2 >= from - 1e-9 && d + a.barAngle() / 2 <= to + 1e-9)) {
                    shown.add(bar);
                }
            }
            shown.sort(Comparator.comparing((Integer b) -> !wanted.contains(b)).thenComparing(b -> b));
            double widest = TextWidths.em("0".repeat(Integer.toString(a.bars()).length()), true) * font;
            int step = Ring.every(widest + 0.5, w);
            boolean crowded = wanted.size() == 2
                    && Math.abs(reach(winding, coil, true) - reach(winding, coil, false)) * scale < widest + 0.5;
            var taken = new Occupied();
            for (int bar : shown) {
                double x = x(bar(bar));
                boolean own = wanted.contains(bar);
                double y = (BAR_TOP + BAR_BOTTOM) / 2;
                if (own && crowded) {
                    y += bar == coil.topBar().getAsInt() ? -1.7 : 1.7;
                }
                Shape.Text t = Canvas.centred(x, y, Integer.toString(bar), font, own, Role.LABEL);
                List<Shape> parts = new ArrayList<>();
                parts.add(new Shape.Rect(x - 0.45 * w, BAR_TOP, 0.9 * w, BAR_BOTTOM - BAR_TOP, 0, List.of()));
                boolean label = own || (bar % step == 0 && taken.take(t.bounds().grown(0.5)));
                if (own) {
                    taken.insist(new Box(t.bounds().left(), BAR_TOP, t.bounds().right(), BAR_BOTTOM).grown(0.5));
                }
                boolean marked = options.highlight().bars().contains(bar);
                boolean inside = t.width() < 0.9 * w;
                if (label && inside) {
                    parts.add(t);
                }
                canvas.group("strip-", Element.bar(bar), "Bar " + bar, Canvas.roles(Role.BAR, marked), parts);
                if (label && !inside) {
                    Box b = t.bounds();
                    late.add(new Shape.Rect(
                            b.left() - 0.3, y - 0.55 * font, b.width() + 0.6, 1.1 * font, 0.4, List.of(Role.PLATE)));
                    late.add(t);
                }
            }
            late.forEach(canvas::add);
        }

        private void half(List<Shape> parts, boolean isTop, double x, double apex, OptionalInt bar) {
            List<Role> roles = List.of(isTop ? Role.COIL_TOP : Role.COIL_BOTTOM);
            List<Point> chain =
                    new ArrayList<>(List.of(new Point(apex, APEX), new Point(x, BEND), new Point(x, LEAD_START)));
            if (bar.isPresent()) {
                double foot = x(reach(winding, coil, isTop)) + (isTop ? -0.2 : 0.2) * a.barAngle() * scale;
                chain.add(new Point(foot, LEAD_END));
                chain.add(new Point(foot, BAR_TOP));
                parts.add(new Shape.Polyline(chain, false, roles));
            } else {
                chain.add(new Point(x, LEAD_START + 6));
                parts.add(new Shape.Polyline(chain, false, roles));
                parts.add(new Shape.Line(
                        new Point(x - 1.4, LEAD_START + 6), new Point(x + 1.4, LEAD_START + 6), List.of(Role.CAP)));
            }
        }

        /** Each lead's distance from the centre line, drawn beneath the bars. */
        private void ruler(Canvas canvas) {
            double y = RULER;
            for (boolean isTop : new boolean[] {true, false}) {
                if ((isTop ? coil.topBar() : coil.bottomBar()).isEmpty()) {
                    continue;
                }
                double d = leadThrow(winding, coil, isTop);
                double end = x(reach(winding, coil, isTop));
                String words = (isTop ? "top lead " : "bottom lead ")
                        + (Math.abs(d) < 0.005 ? "0" : Caption.number(Math.abs(d)) + (d > 0 ? " right" : " left"));
                if (Math.abs(end - x(0)) > 0.2) {
                    canvas.line(x(0), y, end, y, Role.WIRE);
                    double tip = Math.signum(end - x(0));
                    if (Math.abs(end - x(0)) > 1.5) {
                        canvas.line(end, y, end - 1.2 * tip, y - 0.8, Role.WIRE);
                        canvas.line(end, y, end - 1.2 * tip, y + 0.8, Role.WIRE);
                    }
                }
                boolean right = d >= 0;
                double at = end + (right ? 1.4 : -1.4);
                double w = TextWidths.em(words, false) * 2.6;
                if (at + w > RIGHT && right) {
                    at = RIGHT - w;
                }
                if (!right && at - w < LEFT) {
                    at = LEFT + w;
                }
                boolean moved = at != end + (right ? 1.4 : -1.4);
                canvas.text(at, moved ? y - 1.5 : y + 0.9, words, 2.6, right ? Anchor.START : Anchor.END, Role.LABEL);
                y += 6;
            }
        }
    }
}
