package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * The winding seen from the commutator end, in millimetres and degrees. A small winding fills a circle of 96 mm about
 * (106, 105) round a middle of 14 mm; its bands are 6.5 for the brushes, 8.5 bars, 19 leads, 14.5 core, 19 back ends,
 * 6 numbers and 5.5 poles, 79 mm at full size. Coil n lies in slots n and n + 3 and goes from bar n to bar n + 1.
 */
class RoundLayoutTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Point MIDDLE = new Point(106, 105);
    private static final double SCALE = 82.0 / 79;
    private static final double BAR_IN = 14 + 6.5 * SCALE;
    private static final double BAR_OUT = BAR_IN + 8.5 * SCALE;
    private static final double CORE_IN = BAR_OUT + 19 * SCALE;
    private static final double CORE_OUT = CORE_IN + 14.5 * SCALE;
    private static final double APEX = CORE_OUT + 19 * SCALE;
    private static final double POLE_IN = APEX + 6 * SCALE;
    /** What 5 mm at the mouth of the slots are, degrees. */
    private static final double LAYER = Math.toDegrees(5 / CORE_IN);

    private static Drawing page(Winding w, ViewOptions options) {
        return DrawingView.ROUND.draw(w, options).first();
    }

    private static final Drawing PAGE = page(LAP, ViewOptions.of("Mill"));

    private static void near(double is, double should) {
        assertThat(is).isCloseTo(should, within(1e-6));
    }

    private static void near(Point p, double radius, double degrees) {
        Point q = Point.polar(MIDDLE.x(), MIDDLE.y(), radius, degrees);
        near(p.x(), q.x());
        near(p.y(), q.y());
    }

    private static List<Shape.Group> groups(Drawing page, Element.Kind kind) {
        return page.shapes().stream()
                .filter(s -> s instanceof Shape.Group g
                        && g.element().filter(e -> e.kind() == kind).isPresent())
                .map(s -> (Shape.Group) s)
                .toList();
    }

    private static Shape.Group group(Drawing page, Element.Kind kind, int number) {
        return groups(page, kind).stream()
                .filter(g -> g.element().orElseThrow().number() == number)
                .findFirst()
                .orElseThrow();
    }

    private static <T extends Shape> List<T> of(List<Shape> shapes, Class<T> type) {
        return shapes.stream().filter(type::isInstance).map(type::cast).toList();
    }

    private static List<Shape.Text> texts(Drawing page, String words) {
        return page.texts().stream().filter(t -> t.text().equals(words)).toList();
    }

    /** The middle of a number, from the foot of its text. */
    private static Point middle(Shape.Text t) {
        return new Point(t.at().x(), t.at().y() - 0.36 * t.size());
    }

    // ---- iron, bars, poles, brushes ---------------------------------------------------------------------------------

    @Test
    void bandsFollowOneAnother() {
        List<Shape.Circle> circles = of(PAGE.shapes(), Shape.Circle.class);
        assertThat(circles).hasSize(3);
        assertThat(circles).allMatch(c -> c.middle().equals(MIDDLE));
        near(circles.get(0).radius(), CORE_OUT);
        near(circles.get(1).radius(), CORE_IN);
        // The shaft keeps clear of the brushes.
        near(circles.get(2).radius(), Math.min(6, BAR_IN - 6.5 * SCALE - 3));
        near(PAGE.width(), 297);
        near(PAGE.height(), 210);
    }

    @Test
    void slotsAndBarsStandOnTheirAngles() {
        for (double rotor : new double[] {0, 25}) {
            Drawing page = page(LAP, ViewOptions.of("").withRotorAngle(rotor));
            // Two sides 5 mm apart and 4 mm for their dots.
            double wide = LAYER + Math.toDegrees(4 / CORE_IN);
            double radius = CORE_OUT - SCALE * (2.2 + 8.1 / 2);
            for (int n = 1; n <= 12; n++) {
                double at = rotor + (n - 1) * 30;
                Shape.Group slot = group(page, Element.Kind.SLOT, n);
                var room = (Shape.Sector) slot.shapes().get(0);
                near(room.inner(), CORE_IN + 1.6 * SCALE);
                near(room.outer(), CORE_OUT);
                near(room.from(), at - wide / 2);
                near(room.sweep(), wide);
                var number = (Shape.Text) slot.shapes().get(2);
                assertThat(number.text()).isEqualTo(Integer.toString(n));
                near(middle(number), radius, at);
                var plate = (Shape.Rect) slot.shapes().get(1);
                double w = TextWidths.em(number.text(), true) * 2.9 + 0.7;
                near(plate.width(), w);
                near(plate.height(), 1.2 * 2.9);
                near(new Point(plate.x() + w / 2, plate.y() + 0.6 * 2.9), radius, at);
                Shape.Group bar = group(page, Element.Kind.BAR, n);
                var copper = (Shape.Sector) bar.shapes().get(0);
                near(copper.inner(), BAR_IN);
                near(copper.outer(), BAR_OUT);
                near(copper.from(), at - 13.5);
                near(copper.sweep(), 27);
                near(middle((Shape.Text) bar.shapes().get(1)), (BAR_IN + BAR_OUT) / 2, at);
                assertThat(bar.roles()).containsExactly(Role.BAR);
            }
            for (int j = 1; j <= 4; j++) {
                Shape.Group pole = group(page, Element.Kind.POLE, j);
                var shoe = (Shape.Sector) pole.shapes().get(0);
                boolean north = j % 2 == 1;
                assertThat(shoe.roles()).containsExactly(north ? Role.NORTH : Role.SOUTH);
                assertThat(pole.title()).isEqualTo("Pole " + j + (north ? ", north" : ", south"));
                near(shoe.inner(), POLE_IN);
                near(shoe.outer(), 96);
                near(shoe.from(), (j - 1) * 90 - 0.36 * 90);
                near(shoe.sweep(), 0.72 * 90);
                var letter = (Shape.Text) pole.shapes().get(1);
                assertThat(letter.text()).isEqualTo(north ? "N" : "S");
                near(middle(letter), (POLE_IN + 96) / 2, (j - 1) * 90);
                near(letter.size(), 4 * SCALE);
            }
        }
    }

    @Test
    void brushesStandWithinTheirBars() {
        double[] at = {330, 60, 150, 240};
        for (int j = 1; j <= 4; j++) {
            Shape.Group brush = group(PAGE, Element.Kind.BRUSH, j);
            var block = (Shape.Sector) brush.shapes().get(0);
            near(block.outer(), BAR_IN - 0.5 * SCALE);
            near(block.inner(), BAR_IN - 5.6 * SCALE);
            near(block.from(), at[j - 1] - 15);
            near(block.sweep(), 30);
            var sign = (Shape.Text) brush.shapes().get(1);
            assertThat(sign.text()).isEqualTo(j % 2 == 1 ? "+" : "−");
            near(middle(sign), BAR_IN - 3.05 * SCALE, at[j - 1]);
            near(sign.size(), 3.6 * SCALE);
        }
        assertThat(group(PAGE, Element.Kind.BRUSH, 1).title()).isEqualTo("Brush 1 +, on bars [12]");
        // A brush too narrow for its sign has it within, towards the shaft.
        Drawing narrow = page(LAP, ViewOptions.of("").withBrushWidth(0.2));
        Shape.Group brush = group(narrow, Element.Kind.BRUSH, 2);
        assertThat(brush.shapes()).hasSize(1);
        near(((Shape.Sector) brush.shapes().get(0)).sweep(), 6);
        near(middle(texts(narrow, "−").get(0)), BAR_IN - 5.6 * SCALE - 2, 60);
        near(texts(narrow, "−").get(0).size(), 3);
    }

    // ---- coils ------------------------------------------------------------------------------------------------------

    private static Shape.Curve curve(Shape.Group coil, Role role) {
        return of(coil.shapes(), Shape.Curve.class).stream()
                .filter(c -> c.roles().equals(List.of(role)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aCoilRunsFromItsFarEndThroughItsSlotToItsBar() {
        for (int n : new int[] {1, 5, 11}) {
            double slot = (n - 1) * 30;
            Shape.Group coil = group(PAGE, Element.Kind.COIL, n);
            for (boolean top : new boolean[] {true, false}) {
                Shape.Curve c = curve(coil, top ? Role.COIL_TOP : Role.COIL_BOTTOM);
                double side = top ? slot - LAYER / 2 : slot + 90 + LAYER / 2;
                double lead = top ? slot - 0.155 * 30 : slot + 30 + 0.155 * 30;
                near(c.start(), APEX, slot + 45);
                List<Point> ends = c.pieces().stream().map(Shape.Cubic::end).toList();
                // To the foot of the end connection in steps of 30° at most.
                near(ends.get(0), (APEX + CORE_OUT + 1.2 * SCALE) / 2, (slot + 45 + side) / 2);
                near(ends.get(1), CORE_OUT + 1.2 * SCALE, side);
                near(ends.get(2), CORE_OUT - SCALE * (top ? 2.2 : 10.3), side);
                near(ends.get(3), CORE_IN - 0.8 * SCALE, side);
                int last = ends.size() - 1;
                near(ends.get(last), BAR_OUT, lead);
                near(ends.get(last - 1), BAR_OUT + 1.4 * SCALE, lead);
                assertThat(ends).hasSize(top ? 6 : 7);
            }
            List<Shape.Circle> dots = of(coil.shapes(), Shape.Circle.class);
            assertThat(dots).hasSize(2).allMatch(d -> d.radius() == 1.1);
            near(dots.get(0).middle(), CORE_OUT - 2.2 * SCALE, slot - LAYER / 2);
            near(dots.get(1).middle(), CORE_OUT - 10.3 * SCALE, slot + 90 + LAYER / 2);
            assertThat(dots.get(0).roles()).containsExactly(Role.COIL_TOP);
            Shape.Text number = of(coil.shapes(), Shape.Text.class).get(0);
            assertThat(number.text()).isEqualTo(Integer.toString(n));
            near(middle(number), APEX + 0.55 * 2.9 + 0.6, slot + 45);
            assertThat(coil.roles()).containsExactly(Role.COIL);
        }
    }

    /** Where radius grows evenly with angle, the curve keeps to it between its ends too. */
    @Test
    void curvesAreSpirals() {
        Shape.Curve c = curve(group(PAGE, Element.Kind.COIL, 4), Role.COIL_BOTTOM);
        Point from = c.start();
        for (Shape.Cubic q : c.pieces()) {
            double r1 = MIDDLE.distance(from);
            double r2 = MIDDLE.distance(q.end());
            double a1 = angle(from);
            double turn = Ring.shortWay(a1, angle(q.end()));
            for (double t : new double[] {0.25, 0.5, 0.75}) {
                double u = 1 - t;
                Point p = new Point(
                        u * u * u * from.x()
                                + 3 * u * u * t * q.first().x()
                                + 3 * u * t * t * q.second().x()
                                + t * t * t * q.end().x(),
                        u * u * u * from.y()
                                + 3 * u * u * t * q.first().y()
                                + 3 * u * t * t * q.second().y()
                                + t * t * t * q.end().y());
                Point wanted = Point.polar(MIDDLE.x(), MIDDLE.y(), r1 + t * (r2 - r1), a1 + t * turn);
                assertThat(p.distance(wanted)).isLessThan(0.08);
            }
            from = q.end();
        }
    }

    private static double angle(Point p) {
        return Math.toDegrees(Math.atan2(p.x() - MIDDLE.x(), MIDDLE.y() - p.y()));
    }

    @Test
    void shorterCoilsStandOutLess() {
        Winding w = Winding.build(
                Armature.of(12, 12, 2),
                new WindingSpec.Listed(List.of(
                        ListedCoil.of(1, 1, 6, 1, 2), ListedCoil.of(2, 2, 4, 2, 3), ListedCoil.of(3, 7, 7, 3, 4))));
        Drawing page = page(w, ViewOptions.of(""));
        double longest = 150 + LAYER;
        Point one = curve(group(page, Element.Kind.COIL, 1), Role.COIL_TOP).start();
        near(MIDDLE.distance(one), APEX);
        Point two = curve(group(page, Element.Kind.COIL, 2), Role.COIL_TOP).start();
        near(MIDDLE.distance(two), CORE_OUT + 19 * SCALE * (60 + LAYER) / longest);
        // At least 0.16 of the way out.
        Point three = curve(group(page, Element.Kind.COIL, 3), Role.COIL_TOP).start();
        near(MIDDLE.distance(three), CORE_OUT + 19 * SCALE * 0.16);
    }

    @Test
    void leadsOnNoBarEndInACap() {
        Winding w = SampleWindings.broken();
        Drawing page = page(w, ViewOptions.of(""));
        Shape.Group coil = group(page, Element.Kind.COIL, 6);
        Shape.Line cap = of(coil.shapes(), Shape.Line.class).get(0);
        assertThat(cap.roles()).containsExactly(Role.CAP);
        Shape.Curve bottom = curve(coil, Role.COIL_BOTTOM);
        Point end = bottom.pieces().get(bottom.pieces().size() - 1).end();
        near(MIDDLE.distance(end), CORE_IN - 6 * SCALE);
        // As wide as 1.3 mm to either side.
        assertThat(cap.from().distance(end)).isCloseTo(1.3 * SCALE, within(0.01));
        assertThat(cap.to().distance(end)).isCloseTo(1.3 * SCALE, within(0.01));
        near(MIDDLE.distance(cap.from()), CORE_IN - 6 * SCALE);
        Shape.Group dead = group(page, Element.Kind.COIL, 11);
        Shape.Curve top = curve(dead, Role.COIL_TOP);
        near(MIDDLE.distance(top.pieces().get(top.pieces().size() - 1).end()), CORE_IN - 3.5 * SCALE);
        assertThat(of(dead.shapes(), Shape.Text.class).get(0).text()).isEqualTo("(11)");
        assertThat(dead.roles()).contains(Role.DEAD);
    }

    @Test
    void whatIsMarkedIsPaintedLast() {
        Drawing page = page(LAP, ViewOptions.of("").withHighlight(new Highlight(Set.of(3), Set.of(5), Set.of(7))));
        assertThat(groups(page, Element.Kind.COIL).get(11).element()).contains(Element.coil(3));
        assertThat(group(page, Element.Kind.COIL, 3).roles()).contains(Role.HIGHLIGHT);
        assertThat(group(page, Element.Kind.BAR, 5).roles()).contains(Role.HIGHLIGHT);
        assertThat(of(group(page, Element.Kind.BAR, 5).shapes(), Shape.Text.class)
                        .get(0)
                        .bold())
                .isTrue();
        assertThat(group(page, Element.Kind.SLOT, 7).roles()).contains(Role.HIGHLIGHT);
        assertThat(of(group(page, Element.Kind.SLOT, 6).shapes(), Shape.Text.class)
                        .get(0)
                        .bold())
                .isFalse();
        // A white band for each of its two curves.
        assertThat(of(group(page, Element.Kind.COIL, 3).shapes(), Shape.Curve.class).stream()
                        .filter(c -> c.roles().contains(Role.HALO)))
                .hasSize(2);
    }

    // ---- crowded rings ----------------------------------------------------------------------------------------------

    private static List<Integer> numbersShown(Drawing page, Element.Kind kind) {
        List<Integer> out = new ArrayList<>();
        for (Shape.Group g : groups(page, kind)) {
            if (!of(g.shapes(), Shape.Text.class).isEmpty()) {
                out.add(g.element().orElseThrow().number());
            }
        }
        return out;
    }

    @Test
    void numbersAreThinnedWhereTheyFindNoRoom() {
        Winding w = SampleWindings.bars400();
        Drawing page = page(w, ViewOptions.of("").withFormat(PageFormat.A4));
        // Slots: 3.6 mm from one to the next, numbers and a margin take some 6 mm: every second, 2 too near to 1.
        List<Integer> slots = numbersShown(page, Element.Kind.SLOT);
        assertThat(slots).startsWith(1, 4, 6).doesNotContain(2, 3, 5);
        assertThat(slots.get(slots.size() - 1)).isLessThanOrEqualTo(98);
        // Bars less than 0.7 mm apart: one of ten, not too near to bar 1, and over the copper.
        assertThat(numbersShown(page, Element.Kind.BAR)).isEmpty();
        TreeSet<Integer> bars = new TreeSet<>();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Text t && t.text().matches("\\d+")) {
                bars.add(Integer.parseInt(t.text()));
            }
        }
        assertThat(bars).contains(1, 10, 20, 200, 390).doesNotContain(5, 15, 395, 400);
        assertThat(group(page, Element.Kind.BAR, 7).roles()).contains(Role.FINE);
        near(
                of(group(page, Element.Kind.BAR, 7).shapes(), Shape.Sector.class)
                        .get(0)
                        .sweep(),
                0.8 * 0.9);
        assertThat(group(page, Element.Kind.COIL, 7).roles()).contains(Role.FINE);
    }

    @Test
    void stepsOfNumbersAreThoseOfARuler() {
        assertThat(Ring.every(3, 3)).isEqualTo(1);
        assertThat(Ring.every(3.01, 3)).isEqualTo(2);
        assertThat(Ring.every(6.01, 3)).isEqualTo(5);
        assertThat(Ring.every(15.1, 3)).isEqualTo(10);
        assertThat(Ring.every(600, 3)).isEqualTo(200);
        assertThat(Ring.every(601, 3)).isEqualTo(500);
    }

    @Test
    void theShortWayIsClockwiseWhereBothAreEqual() {
        near(Ring.shortWay(10, 190), 180);
        near(Ring.shortWay(10, 191), -179);
        near(Ring.shortWay(350, 10), 20);
        near(Ring.shortWay(10, 350), -20);
        near(Ring.shortWay(0, 720), 0);
    }

    /** With a sheet of any size, every number has its room: the tightest ring sets the size of the middle. */
    @Test
    void theMiddleGrowsWithTheNumbers() {
        double font = 2.9;
        double three = TextWidths.em("000", false) * font;
        Winding bars = Winding.build(Armature.of(60, 360, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        near(
                Ring.roomyCore(bars, font),
                Math.max(
                        (three + 1) * 360 / (2 * Math.PI) - 6.5 - 4.25,
                        Math.max(
                                0.95 * 2 * 360 / 0.84 / (2 * Math.PI) - 34,
                                (three + 0.7) * 360 / 0.84 / (2 * Math.PI) - 79 + 11.5)));
        // One coil a slot: slots and bars alike, so that the bars, further in, decide.
        double two = TextWidths.em("00", false) * font;
        Winding slots = Winding.build(Armature.of(99, 99, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        near(Ring.roomyCore(slots, font), (two + 1) * 99 / (2 * Math.PI) - 6.5 - 4.25);
        Winding sides = SampleWindings.all().get("frog-leg");
        assertThat(Ring.roomyCore(sides, font))
                .isGreaterThanOrEqualTo(0.95 * 4 * sides.positions() / 0.84 / (2 * Math.PI) - 34 - 1e-9);
        near(Ring.fullRadius(30), 109);
    }

    // ---- the panel --------------------------------------------------------------------------------------------------

    private static Map<String, Point> panel(Drawing page) {
        Map<String, Point> out = new LinkedHashMap<>();
        page.texts().stream().filter(t -> t.anchor() == Shape.Anchor.START).forEach(t -> out.put(t.text(), t.at()));
        return out;
    }

    @Test
    void wordsStandBesideTheRing() {
        Map<String, Point> words = panel(PAGE);
        double y = 17;
        assertThat(words).containsEntry("Mill", new Point(210, y));
        y += 1.35 * 5 + 1;
        near(words.get("Round diagram, seen from the commutator end").y(), y);
        y += 1.35 * 2.9 + 1.5;
        for (String line : List.of(
                "12 slots",
                "12 bars",
                "4 poles",
                "slot 1 in line with bar 1",
                "simplex lap, progressive",
                "coil throw 1–4",
                "commutator pitch +1",
                "4 parallel paths")) {
            assertThat(words).containsKey(line);
            near(words.get(line).x(), 210);
            near(words.get(line).y(), y);
            y += 1.35 * 2.9;
        }
        y += 3;
        near(words.get("Brushes, clockwise from straight up").y(), y);
        y += 4.2;
        for (String line : List.of(
                "+ brush 1 at 330° on bar 12",
                "− brush 2 at 60° on bar 3",
                "+ brush 3 at 150° on bar 6",
                "− brush 4 at 240° on bar 9")) {
            near(words.get(line).y(), y);
            y += 1.35 * 2.9;
        }
        near(words.get("top side (dot), lead and back").x(), 221);
        near(words.get("top side (dot), lead and back").y(), 166);
        near(words.get("bottom side (ring), lead and back").y(), 170.6);
        List<String> last = List.copyOf(words.keySet());
        near(
                words.get(last.get(last.size() - 1)).y(),
                175.2 + 1.35 * 2.6 * (last.size() - 1 - last.indexOf("bottom side (ring), lead and back") - 1));
        assertThat(last.get(last.size() - 1)).isEqualTo("Slot 1 at 0°, clockwise from straight up.");
        assertThat(PAGE.description())
                .startsWith("Round winding diagram, seen from the commutator end. 12 slots · 12 bars");
        assertThat(page(LAP, ViewOptions.of("")).title()).isEqualTo("Round winding diagram");
    }

    @Test
    void thePanelTellsWhatElseThereIs() {
        String frog = String.join(
                " ",
                panel(page(SampleWindings.all().get("frog-leg"), ViewOptions.of("")))
                        .keySet());
        assertThat(frog).contains("the same of the wave coils");
        assertThat(String.join(" ", panel(PAGE).keySet()))
                .doesNotContain("the same of the wave coils")
                .doesNotContain("Short cross line");
        String dead = String.join(
                " ",
                panel(page(SampleWindings.deadCoil(), ViewOptions.of("").withRotorAngle(7.5)))
                        .keySet());
        assertThat(dead).contains("Short cross line: a lead on no bar.").contains("Slot 1 at 7½°");
        // Two bars and more under a brush.
        Winding wide = Winding.build(Armature.of(12, 24, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<String> two = List.copyOf(
                panel(page(wide, ViewOptions.of("").withBrushWidth(1).withRotorAngle(7.5)))
                        .keySet());
        assertThat(two).anyMatch(t -> t.matches(". brush 1 at .* on bars \\d+ and \\d+"));
        List<String> more = List.copyOf(
                panel(page(wide, ViewOptions.of("").withBrushWidth(4))).keySet());
        assertThat(more).anyMatch(t -> t.matches(". brush 1 at .* on bars \\d+ to \\d+"));
        // Twenty brushes are more than there is room for beside a small ring.
        Winding many = Winding.build(Armature.of(80, 80, 40), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<String> lines = List.copyOf(panel(page(many, ViewOptions.of(""))).keySet());
        long told = lines.stream().filter(t -> t.contains(" brush ")).count();
        assertThat(lines).contains("and " + (40 - told) + " more");
        assertThat(told).isGreaterThan(10);
    }

    // ---- overlays ---------------------------------------------------------------------------------------------------

    private static Drawing cut(int coil, Integer... bridge) {
        return OverlayDrawings.cutOut(
                        DrawingView.ROUND,
                        LAP,
                        new CutOut(coil, true, List.of(), List.of(bridge)),
                        ViewOptions.of("Mill"))
                .first();
    }

    @Test
    void theJumperLiesWithinTheBars() {
        for (int[] ends : new int[][] {{4, 6}, {12, 2}, {2, 12}}) {
            Drawing page = cut(4, ends[0], ends[1]);
            Shape.Group g = page.shapes().stream()
                    .filter(s -> s instanceof Shape.Group && s.roles().contains(Role.BRIDGE))
                    .map(s -> (Shape.Group) s)
                    .findFirst()
                    .orElseThrow();
            assertThat(g.title()).isEqualTo("bridge " + ends[0] + "–" + ends[1]);
            double from = (ends[0] - 1) * 30;
            double way = ends[0] == 2 ? -60 : 60;
            var arc = (Shape.Arc) g.shapes().get(1);
            near(arc.radius(), BAR_IN - 3 * SCALE);
            near(arc.from(), from);
            near(arc.sweep(), way);
            var in = (Shape.Line) g.shapes().get(0);
            near(in.from(), BAR_IN + SCALE, from);
            near(in.to(), BAR_IN - 3 * SCALE, from);
            var out = (Shape.Line) g.shapes().get(2);
            near(out.from(), BAR_IN - 3 * SCALE, from + way);
            near(out.to(), BAR_IN + SCALE, from + way);
            near(((Shape.Circle) g.shapes().get(3)).middle(), BAR_IN + SCALE, from);
            near(((Shape.Circle) g.shapes().get(4)).middle(), BAR_IN + SCALE, from + way);
            // Its words stand between the shaft and the bars.
            Shape.Text words = texts(page, "bridge " + ends[0] + "–" + ends[1]).get(0);
            Box b = words.bounds();
            for (double x : new double[] {b.left(), b.right()}) {
                for (double y : new double[] {b.top(), b.bottom()}) {
                    assertThat(MIDDLE.distance(new Point(x, y))).isLessThan(BAR_IN);
                }
            }
        }
    }

    @Test
    void liftedLeadsAndTheSaw() {
        Drawing page = cut(4);
        Shape.Group coil = page.shapes().stream()
                .filter(s -> s instanceof Shape.Group && s.roles().contains(Role.LIFTED))
                .map(s -> (Shape.Group) s)
                .findFirst()
                .orElseThrow();
        List<Shape.Line> cross = of(coil.shapes(), Shape.Line.class).stream()
                .filter(l -> l.roles().equals(List.of(Role.LIFTED)))
                .toList();
        assertThat(cross).hasSize(4);
        // Half way from the slot's mouth to the bar, and as far along as the lead has turned by then.
        double start = CORE_IN - 0.8 * SCALE;
        double r = (start + BAR_OUT) / 2;
        double side = 90 - LAYER / 2;
        double end = 90 - 0.155 * 30;
        double at = side + (end - side) * (start - r) / (start - BAR_OUT - 1.4 * SCALE);
        near(
                new Point(
                        (cross.get(0).from().x() + cross.get(0).to().x()) / 2,
                        (cross.get(0).from().y() + cross.get(0).to().y()) / 2),
                r,
                at);
        List<Shape.Circle> rings = of(coil.shapes(), Shape.Circle.class).stream()
                .filter(c -> c.roles().contains(Role.PLANNED_LEAD))
                .toList();
        assertThat(rings).hasSize(2).allMatch(c -> Math.abs(c.radius() - 0.7) < 1e-9);
        near(rings.get(0).middle(), BAR_OUT, end);
        assertThat(texts(page, "lift")).hasSize(2);
        assertThat(texts(page, "4 cut")).hasSize(1);
        assertThat(texts(page, "lift"))
                .allMatch(t -> middle(t).distance(MIDDLE) > BAR_OUT && middle(t).distance(MIDDLE) < CORE_IN);
        List<Shape.Line> saw = of(page.shapes(), Shape.Line.class).stream()
                .filter(l -> l.roles().equals(List.of(Role.LIFTED)) && l.from().x() < 205)
                .toList();
        assertThat(saw).hasSize(2);
        double half = Math.toDegrees(1.2 / APEX);
        near(saw.get(0).from(), APEX - 1.8, 135 - half);
        near(saw.get(0).to(), APEX + 1.8, 135 - half);
        near(saw.get(1).from(), APEX - 1.8, 135 + half);
        Shape.Sector gap = of(page.shapes(), Shape.Sector.class).stream()
                .filter(s -> s.roles().contains(Role.PLATE))
                .findFirst()
                .orElseThrow();
        near(gap.inner(), APEX - 1.2);
        near(gap.outer(), APEX + 1.2);
        near(gap.from(), 135 - half);
        near(gap.sweep(), 2 * half);
        double word = middle(texts(page, "4 cut").get(0)).distance(MIDDLE);
        assertThat(word).isBetween(CORE_OUT + 1, 92.0);
        assertThat(middle(texts(page, "4 cut").get(0)).distance(Point.polar(MIDDLE.x(), MIDDLE.y(), APEX, 135)))
                .isBetween(4.9, 14.1);
        // No brushes, no tags.
        assertThat(groups(page, Element.Kind.BRUSH)).isEmpty();
        assertThat(texts(page, "4t")).isEmpty();
    }

    private static Drawing connections(ListedCoil... instead) {
        List<ListedCoil> rows = new ArrayList<>(LAP.asListed().coils());
        for (ListedCoil c : instead) {
            rows.set(c.coil() - 1, c);
        }
        return OverlayDrawings.connections(
                        DrawingView.ROUND,
                        LAP,
                        OverlayDrawingsTest.comparison(LAP, rows, false),
                        ViewOptions.of("Mill"))
                .first();
    }

    @Test
    void tagsStandInwardsOfTheirBars() {
        Drawing page = connections(ListedCoil.of(3, 3, 6, 4, 3));
        List<Shape.Line> leaders = of(page.shapes(), Shape.Line.class).stream()
                .filter(l -> l.roles().equals(List.of(Role.LEADER)))
                .toList();
        assertThat(leaders).hasSize(4);
        Shape.Text first = page.texts().stream()
                .filter(t -> t.text().equals("3t") && t.at().x() < 205)
                .findFirst()
                .orElseThrow();
        for (Shape.Line l : leaders) {
            double at = Math.round(angle(l.from()));
            assertThat(at).isIn(60.0, 90.0);
            near(l.from(), BAR_IN, at);
        }
        // The first lies as near to its bar as the ring allows, its words between ring and shaft.
        Shape.Line own = leaders.get(0);
        double w = TextWidths.em("3t", false) * 2.2 + 2;
        near(first.at().x(), own.to().x() - w / 2 + 2);
        near(first.at().y(), own.to().y() + 0.36 * 2.2);
        assertThat(first.bold()).isFalse();
        Shape.Circle dot = of(page.shapes(), Shape.Circle.class).stream()
                .filter(c -> c.radius() == 0.7)
                .findFirst()
                .orElseThrow();
        near(dot.middle().x(), own.to().x() - w / 2 + 0.7);
        near(dot.middle().y(), own.to().y());
        Shape.Rect plate = of(page.shapes(), Shape.Rect.class).stream()
                .filter(r -> r.roles().equals(List.of(Role.PLATE)))
                .findFirst()
                .orElseThrow();
        near(plate.width(), w + 0.6);
        near(plate.height(), 2.8);
        near(plate.x() + plate.width() / 2, own.to().x());
        near(plate.y() + 1.4, own.to().y());
        assertThat(MIDDLE.distance(own.to())).isLessThan(BAR_IN - 1.5).isGreaterThan(8);
        assertThat(String.join(" ", panel(page).keySet())).contains("3t, 3b: top, bottom lead of coil 3. Slot 1 at 0°");
    }

    @Test
    void theOverlaysPanel() {
        Drawing page = cut(4, 4, 5);
        Map<String, Point> words = panel(page);
        double y = 17;
        assertThat(words).containsEntry("Mill", new Point(210, 17));
        y += 1.35 * 5 + 1;
        near(words.get("Round diagram, seen from the commutator end").y(), y);
        y += 1.35 * 2.9 + 1.5;
        near(words.get("Emergency repair: coil 4 cut out").y(), y);
        y += 1.35 * 2.9 + 1.5;
        List<String> order = List.copyOf(words.keySet());
        int caution = order.indexOf("Emergency repair: coil 4 cut out") + 1;
        assertThat(order.get(caution)).startsWith("EMERGENCY MEASURE");
        near(words.get(order.get(caution)).y(), y);
        int lines = 0;
        while (!order.get(caution + lines).startsWith("coil 4: lift")) {
            lines++;
        }
        y += lines * 1.35 * 2.9 + 1.5;
        near(words.get(order.get(caution + lines)).y(), y);
        near(words.get("faulty coil; ×: lead lifted and insulated").y(), 170);
        near(words.get("where the lead was (ring)").y(), 174.6);
        near(words.get("jumper").y(), 179.2);
        near(words.get("unchanged").y(), 183.8);
        assertThat(order.get(order.size() - 1)).isEqualTo("Slot 1 at 0°, clockwise from straight up.");
        near(words.get(order.get(order.size() - 1)).y(), 188.4);
        assertThat(page.description()).startsWith("Emergency repair: coil 4 cut out. Round winding diagram,");
    }

    @Test
    void moreNotesThanThereIsRoomForAreCounted() {
        List<ListedCoil> instead = new ArrayList<>();
        for (int n = 1; n <= 12; n += 1) {
            int other = n % 2 == 1 ? n + 5 : n + 7;
            instead.add(
                    ListedCoil.of(n, (n + 3) % 12 + 1, (n + 4) % 12 + 1, (other - 1) % 12 + 1, (other + 2) % 12 + 1));
        }
        Drawing page = connections(instead.toArray(ListedCoil[]::new));
        List<String> lines = List.copyOf(panel(page).keySet());
        long told = lines.stream().filter(t -> t.matches("coil \\d+, .*")).count();
        assertThat(told).isBetween(5L, 11L);
        assertThat(lines).contains("and " + (12 - told) + " more");
        assertThat(panel(page).get("and " + (12 - told) + " more").y()).isBetween(154.0, 170.0);
    }
}
