package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * The rolled-out winding in millimetres. The sheet in most of these tests holds 12 slots of 22 mm, 264 mm in all; the
 * middle of slot 1, and of bar 1, stands at 27.5 mm. Coil n lies in slots n and n + 3 and goes from bar n to bar n + 1.
 */
class DevelopedLayoutTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final double PITCH = 22;
    private static final double FIRST = 27.5;
    private static final double AROUND = 264;

    private static Drawing page(Winding w, ViewOptions options) {
        return DrawingView.DEVELOPED.draw(w, options).first();
    }

    private static final Drawing PAGE = page(LAP, ViewOptions.of("Mill"));

    private static void near(double is, double should) {
        assertThat(is).isCloseTo(should, within(1e-6));
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

    private static List<Shape.Polyline> lines(Drawing page, int coil, Role role) {
        return group(page, Element.Kind.COIL, coil).shapes().stream()
                .filter(s -> s instanceof Shape.Polyline && s.roles().equals(List.of(role)))
                .map(s -> (Shape.Polyline) s)
                .toList();
    }

    private static void runs(Shape.Polyline line, double... xy) {
        assertThat(line.closed()).isFalse();
        assertThat(line.points()).hasSize(xy.length / 2);
        for (int i = 0; i < xy.length / 2; i++) {
            near(line.points().get(i).x(), xy[2 * i]);
            near(line.points().get(i).y(), xy[2 * i + 1]);
        }
    }

    private static Shape.Text text(Drawing page, String words) {
        List<Shape.Text> found =
                page.texts().stream().filter(t -> t.text().equals(words)).toList();
        assertThat(found).as(words).hasSize(1);
        return found.get(0);
    }

    // ---- iron, bars, poles ------------------------------------------------------------------------------------------

    @Test
    void slotsAndBarsStandOnePitchApart() {
        List<Shape.Group> slots = groups(PAGE, Element.Kind.SLOT);
        List<Shape.Group> bars = groups(PAGE, Element.Kind.BAR);
        assertThat(slots).hasSize(12);
        assertThat(bars).hasSize(12);
        for (int i = 0; i < 12; i++) {
            double x = FIRST + i * PITCH;
            var room = (Shape.Rect) slots.get(i).shapes().get(0);
            // Two sides 5.5 mm apart and 4 mm for their lines.
            near(room.width(), 9.5);
            near(room.x(), x - 4.75);
            near(room.y(), 85);
            near(room.height(), 28);
            var plate = (Shape.Rect) slots.get(i).shapes().get(1);
            double wide = TextWidths.em(Integer.toString(i + 1), true) * 3.2 + 1;
            near(plate.width(), wide);
            near(plate.x(), x - wide / 2);
            near(plate.y(), 99 - 0.68 * 3.2);
            near(plate.height(), 1.36 * 3.2);
            var number = (Shape.Text) slots.get(i).shapes().get(2);
            assertThat(number.text()).isEqualTo(Integer.toString(i + 1));
            near(number.at().x(), x);
            near(number.at().y(), 99 + 0.36 * 3.2);
            assertThat(slots.get(i).title()).isEqualTo("Slot " + (i + 1));
            var bar = (Shape.Rect) bars.get(i).shapes().get(0);
            near(bar.width(), 0.9 * PITCH);
            near(bar.x(), x - 0.45 * PITCH);
            near(bar.y(), 153);
            near(bar.height(), 9);
            var of = (Shape.Text) bars.get(i).shapes().get(1);
            near(of.at().x(), x);
            near(of.at().y(), 157.5 + 0.36 * 3.2);
            near(of.size(), 3.2);
            assertThat(bars.get(i).title()).isEqualTo("Bar " + (i + 1));
        }
        Shape.Rect core = PAGE.shapes().stream()
                .filter(s -> s.roles().contains(Role.CORE))
                .map(s -> (Shape.Rect) s)
                .findFirst()
                .orElseThrow();
        assertThat(core).isEqualTo(new Shape.Rect(16.5, 85, 264, 28, 0, List.of(Role.CORE)));
        List<Shape.Rect> openings = PAGE.shapes().stream()
                .filter(s -> s.roles().contains(Role.OPENING))
                .map(s -> (Shape.Rect) s)
                .toList();
        assertThat(openings).hasSize(12);
        near(openings.get(3).x(), FIRST + 3 * PITCH - 4.75);
        near(openings.get(3).width(), 9.5);
        near(openings.get(3).height(), 28);
    }

    /** In line with the mica, bar 1 stands half a bar on; two coil sides share the slot's 86 %. */
    @Test
    void twoBarsASlotAtTheMica() {
        Winding w =
                Winding.build(new Armature(12, 24, 2, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Drawing page = page(w, ViewOptions.of(""));
        // Half a slot stands out at the sides: 264 mm over 12.5 slots.
        double pitch = 264 / 12.5;
        var slots = groups(page, Element.Kind.SLOT);
        var bars = groups(page, Element.Kind.BAR);
        double one = slots.get(0).shapes().get(0).bounds().left() + 0.43 * pitch;
        near(slots.get(0).shapes().get(0).bounds().width(), 0.86 * pitch);
        near(slots.get(1).shapes().get(0).bounds().left() + 0.43 * pitch - one, pitch);
        Box bar = bars.get(0).shapes().get(0).bounds();
        near((bar.left() + bar.right()) / 2 - one, pitch / 4);
        // The page is filled from margin to margin by slot 1's tooth and the last bar's edge.
        near(one - pitch / 2, 16.5);
        Box last = bars.get(23).shapes().get(0).bounds();
        near(last.right() + 0.05 * pitch / 2, 297 - 16.5);
        // Sides of a slot: two positions of 0.43 of the pitch, the layers apart by 0.84 of one over 1.6.
        double position = 0.43 * pitch;
        double gap = Math.min(position * 0.84 / 1.6, 5.5);
        Shape.Polyline top = lines(page, 1, Role.COIL_TOP).get(0);
        near(top.points().get(top.points().size() - 1).x(), one - position / 2 - gap / 2);
        Shape.Polyline second = lines(page, 2, Role.COIL_TOP).get(0);
        near(second.points().get(second.points().size() - 1).x(), one + position / 2 - gap / 2);
        Shape.Polyline bottom = lines(page, 1, Role.COIL_BOTTOM).get(0);
        near(bottom.points().get(bottom.points().size() - 1).x(), one + 6 * pitch - position / 2 + gap / 2);
    }

    @Test
    void polesCoverTheirArcsWhereTheRotorTurnsThem() {
        for (double rotor : new double[] {0, 30, -45}) {
            Drawing page = page(LAP, ViewOptions.of("").withRotorAngle(rotor));
            for (int j = 1; j <= 4; j++) {
                Shape.Group pole = group(page, Element.Kind.POLE, j);
                boolean north = j % 2 == 1;
                assertThat(pole.title()).isEqualTo("Pole " + j + (north ? ", north" : ", south"));
                double centre = (j - 1) * 66 - rotor / 360 * AROUND;
                double arc = 0.72 * 66;
                double seen = 0;
                for (Shape s : pole.shapes()) {
                    var r = (Shape.Rect) s;
                    assertThat(r.roles()).containsExactly(north ? Role.NORTH : Role.SOUTH);
                    near(r.y(), 77.5);
                    near(r.height(), 6);
                    seen += r.width();
                    // Its edges are the pole's, but for whole turns, or the page's.
                    double left = r.x() - FIRST - (centre - arc / 2);
                    double right = r.x() + r.width() - FIRST - (centre + arc / 2);
                    boolean fromEdge = Math.abs(r.x() - 16.5) < 1e-6;
                    boolean toEdge = Math.abs(r.x() + r.width() - 280.5) < 1e-6;
                    assertThat(fromEdge || Math.abs(left - AROUND * Math.rint(left / AROUND)) < 1e-6)
                            .isTrue();
                    assertThat(toEdge || Math.abs(right - AROUND * Math.rint(right / AROUND)) < 1e-6)
                            .isTrue();
                }
                near(seen, arc);
            }
        }
        // Letters in the middle of what is seen of a pole: pole 1 is parted by the ends of the sheet.
        List<Shape.Text> letters = PAGE.texts().stream()
                .filter(t -> t.text().equals("N") || t.text().equals("S"))
                .toList();
        assertThat(letters).extracting(Shape.Text::text).containsExactly("N", "N", "S", "N", "S");
        double half = 0.72 * 33;
        near(letters.get(0).at().x(), (16.5 + FIRST + half) / 2);
        near(letters.get(1).at().x(), (280.5 + FIRST + AROUND - half) / 2);
        near(letters.get(2).at().x(), FIRST + 66);
        near(letters.get(0).at().y(), 80.5 + 0.36 * 3.6);
        Shape.Rect plate = PAGE.shapes().stream()
                .filter(s -> s instanceof Shape.Rect r && r.roles().contains(Role.PLATE) && r.width() == 4)
                .map(s -> (Shape.Rect) s)
                .skip(2)
                .findFirst()
                .orElseThrow();
        near(plate.x(), FIRST + 66 - 2);
        near(plate.y(), 80.5 - 2.3);
        near(plate.height(), 4.6);
    }

    // ---- coils ------------------------------------------------------------------------------------------------------

    /** The top side 2.75 mm to the left of its slot's middle, the bottom side as far to the right of its own. */
    @Test
    void aCoilRunsFromBarToBar() {
        double apex = FIRST - 2.75 + 71.5 / 2;
        List<Shape.Polyline> top = lines(PAGE, 1, Role.COIL_TOP);
        assertThat(top).hasSize(2);
        runs(top.get(0), apex, 35, FIRST - 2.75, 76, FIRST - 2.75, 116);
        // Top leads meet their bar 0.155 of a bar before its middle, bottom leads as far behind.
        runs(top.get(1), FIRST - 2.75, 116, FIRST - 0.155 * PITCH, 150, FIRST - 0.155 * PITCH, 153);
        List<Shape.Polyline> bottom = lines(PAGE, 1, Role.COIL_BOTTOM);
        assertThat(bottom).hasSize(2);
        double side = FIRST + 66 + 2.75;
        runs(bottom.get(0), apex, 35, side, 76, side, 116);
        runs(bottom.get(1), side, 116, FIRST + 1.155 * PITCH, 150, FIRST + 1.155 * PITCH, 153);
        Shape.Group coil = group(PAGE, Element.Kind.COIL, 1);
        assertThat(coil.roles()).containsExactly(Role.COIL);
        assertThat(coil.title()).isEqualTo("Coil 1: slots 1–4, top lead on bar 1, bottom lead on bar 2");
        Shape.Text label = (Shape.Text) coil.shapes().stream()
                .filter(Shape.Text.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertThat(label.text()).isEqualTo("1");
        near(label.at().x(), apex);
        near(label.at().y(), 33.8);
        assertThat(label.bold()).isFalse();
    }

    /** 22 mm beyond its top side's end of the page: at 22/35.75 of the way down from the far end. */
    @Test
    void coilsGoOnAtTheOtherSideAtTheSameHeight() {
        double y = 35 + 22 / 35.75 * 41;
        double side = FIRST + 9 * PITCH - 2.75;
        double apex = side + 35.75;
        runs(lines(PAGE, 10, Role.COIL_TOP).get(0), apex, 35, side, 76, side, 116);
        List<Shape.Polyline> bottom = lines(PAGE, 10, Role.COIL_BOTTOM);
        assertThat(bottom).hasSize(4);
        runs(bottom.get(0), 16.5, y, FIRST + 2.75, 76, FIRST + 2.75, 116);
        runs(bottom.get(1), apex, 35, 280.5, y);
        // Coil 12: its far end lies beyond the page, so that its top side goes out and its bottom side comes in.
        List<Shape.Polyline> top12 = lines(PAGE, 12, Role.COIL_TOP);
        double side12 = FIRST + 11 * PITCH - 2.75;
        assertThat(top12).hasSize(3);
        double apex12 = side12 + 35.75 - AROUND;
        runs(top12.get(0), apex12, 35, 16.5, y);
        runs(top12.get(1), 280.5, y, side12, 76, side12, 116);
        runs(
                lines(PAGE, 12, Role.COIL_BOTTOM).get(0),
                apex12,
                35,
                FIRST + 2 * PITCH + 2.75,
                76,
                FIRST + 2 * PITCH + 2.75,
                116);
        // Each is labelled once, at the far end within the page.
        for (int n : new int[] {10, 12}) {
            assertThat(group(PAGE, Element.Kind.COIL, n).shapes().stream().filter(Shape.Text.class::isInstance))
                    .hasSize(1);
        }
    }

    /** Of each coil the whole is drawn, in pieces or not. */
    @Test
    void nothingOfACoilIsLost() {
        for (int n = 1; n <= 12; n++) {
            for (Role role : List.of(Role.COIL_TOP, Role.COIL_BOTTOM)) {
                double across = 0;
                double down = 0;
                for (Shape.Polyline p : lines(PAGE, n, role)) {
                    for (int i = 1; i < p.points().size(); i++) {
                        across += Math.abs(
                                p.points().get(i).x() - p.points().get(i - 1).x());
                        down += p.points().get(i).y() - p.points().get(i - 1).y();
                    }
                }
                // To the far end half the span, and from the side to the lead's end: −0.66 to 0, and 3.25 slots to
                // 1.155.
                double lead = role == Role.COIL_TOP ? 3.41 - 2.75 : 66 + 2.75 - 22 - 3.41;
                near(across, 35.75 + lead);
                near(down, 153 - 35);
            }
        }
    }

    /** Numbers of what goes on at the other side, as they stand at one side of the page, from above. */
    private static Map<Double, String> sideNumbers(Drawing page, boolean left) {
        Map<Double, String> out = new TreeMap<>();
        List<Shape> all = page.shapes();
        for (int i = 1; i < all.size(); i++) {
            if (all.get(i - 1).roles().contains(Role.LEADER) && all.get(i) instanceof Shape.Text t) {
                if (t.anchor() == (left ? Shape.Anchor.END : Shape.Anchor.START)) {
                    out.put(t.at().y(), t.text());
                }
            }
        }
        return out;
    }

    @Test
    void numbersAtTheSidesTellWhereACoilGoesOn() {
        Map<Double, String> left = sideNumbers(PAGE, true);
        Map<Double, String> right = sideNumbers(PAGE, false);
        // Behind, coils 10 and 12 cross the edge at one height; below, the leads of coil 11 to bar 12 and of 12 to bar
        // 1.
        assertThat(left.values()).containsExactlyElementsOf(right.values());
        assertThat(List.copyOf(left.values()).subList(0, 2)).containsExactlyInAnyOrder("10", "12");
        List<Double> heights = new ArrayList<>(left.keySet());
        double cut = 35 + 22 / 35.75 * 41;
        // The two are moved apart by a step of their size.
        near(heights.get(0) - 0.36 * 2.2, cut);
        near(heights.get(1) - heights.get(0), 2.2 * 1.04);
        Shape.Text first = PAGE.texts().stream()
                .filter(t -> t.anchor() == Shape.Anchor.END && t.at().y() == heights.get(0))
                .findFirst()
                .orElseThrow();
        near(first.at().x(), 16.5 - 2.6);
        near(first.size(), 2.2);
        int at = PAGE.shapes().indexOf(first);
        var leader = (Shape.Polyline) PAGE.shapes().get(at - 1);
        runs(leader, 16.5, cut, 16.5 - 2.2, cut, 16.5 - 2.3, cut);
    }

    @Test
    void leadsOverTheEdgeGoOnAtTheOtherSide() {
        // The bottom lead of coil 11, from slot 2 back to bar 12.
        double side = FIRST + PITCH + 2.75;
        double end = FIRST - 0.845 * PITCH;
        double y = 116 + 34 * (side - 16.5) / (side - end);
        List<Shape.Polyline> all = lines(PAGE, 11, Role.COIL_BOTTOM);
        Shape.Polyline out = all.get(1);
        runs(out, side, 116, 16.5, y);
        runs(all.get(2), 280.5, y, end + AROUND, 150, end + AROUND, 153);
        assertThat(sideNumbers(PAGE, true)).containsValue("11");
        assertThat(sideNumbers(PAGE, false)).containsValue("11");
        assertThat(sideNumbers(PAGE, true).keySet()).anyMatch(h -> Math.abs(h - 0.36 * 2.2 - y) < 1e-6);
    }

    @Test
    void deadCoilsEndInShortCrossLinesWithinTheCore() {
        Winding w = SampleWindings.deadCoil();
        Drawing page = page(w, ViewOptions.of(""));
        Shape.Group dead = group(page, Element.Kind.COIL, 32);
        List<Shape.Line> caps = dead.shapes().stream()
                .filter(s -> s.roles().contains(Role.CAP))
                .map(s -> (Shape.Line) s)
                .toList();
        assertThat(caps).hasSize(2);
        // Thirty-one slots of two sides leave less than 7 mm a side: the core ends at 103 mm, leads begin 3 mm below.
        near(caps.get(0).from().y(), 106 + 5);
        near(caps.get(1).from().y(), 106 + 8);
        for (Shape.Line cap : caps) {
            near(cap.to().y(), cap.from().y());
            double middle = (cap.from().x() + cap.to().x()) / 2;
            boolean met = dead.shapes().stream()
                    .anyMatch(s -> s instanceof Shape.Polyline p
                            && p.points().size() == 2
                            && Math.abs(p.points().get(0).x() - middle) < 1e-6
                            && Math.abs(p.points().get(0).y() - 106) < 1e-6
                            && Math.abs(p.points().get(1).y() - cap.from().y()) < 1e-6);
            assertThat(met).isTrue();
            assertThat(cap.to().x() - cap.from().x()).isBetween(0.5, 2.8);
        }
        assertThat(dead.roles()).contains(Role.DEAD, Role.DENSE);
        assertThat(dead.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()))
                .containsExactly("(32)");
    }

    // ---- brushes and words ------------------------------------------------------------------------------------------

    /** 30° before the pole centres: at 330°, 60°, 150° and 240° of 264 mm. */
    @Test
    void brushesStandOnTheirBarsAndHangOnTheirWires() {
        double[] at = {242, 44, 110, 176};
        for (int j = 1; j <= 4; j++) {
            Shape.Group brush = group(PAGE, Element.Kind.BRUSH, j);
            double x = FIRST + at[j - 1];
            boolean plus = j % 2 == 1;
            assertThat(brush.shapes()).hasSize(4);
            assertThat(brush.shapes().get(0)).isInstanceOfSatisfying(Shape.Rect.class, r -> {
                near(r.x(), x - 11);
                near(r.width(), PITCH);
                near(r.y(), 162.6);
                near(r.height(), 5.4);
            });
            double bus = plus ? 173 : 178;
            var wire = (Shape.Line) brush.shapes().get(1);
            near(wire.from().x(), x);
            near(wire.from().y(), 168);
            near(wire.to().y(), bus);
            var dot = (Shape.Circle) brush.shapes().get(2);
            near(dot.middle().x(), x);
            near(dot.middle().y(), bus);
            var sign = (Shape.Text) brush.shapes().get(3);
            assertThat(sign.text()).isEqualTo(plus ? "+" : "−");
            near(sign.at().x(), x);
            near(sign.at().y(), 165.3 + 0.36 * 4);
            near(sign.size(), 4);
            int bar = 1 + (int) (at[j - 1] / PITCH);
            assertThat(brush.title()).isEqualTo("Brush " + j + " " + (plus ? "+" : "−") + ", on bars [" + bar + "]");
        }
        List<Shape.Line> wires = PAGE.shapes().stream()
                .filter(s -> s instanceof Shape.Line && s.roles().contains(Role.WIRE))
                .map(s -> (Shape.Line) s)
                .toList();
        // From 6 mm before the sheet to the last brush of the sign.
        assertThat(wires)
                .containsExactly(
                        new Shape.Line(new Point(10.5, 173), new Point(FIRST + 242, 173), List.of(Role.WIRE)),
                        new Shape.Line(new Point(10.5, 178), new Point(FIRST + 176, 178), List.of(Role.WIRE)));
        List<Shape.Text> signs = PAGE.texts().stream()
                .filter(t -> (t.text().equals("+") || t.text().equals("−")) && t.at().x() < 10)
                .toList();
        assertThat(signs).extracting(Shape.Text::text).containsExactly("+", "−");
        near(signs.get(0).at().x(), 7.9);
        near(signs.get(1).at().y(), 178 + 0.36 * 4);
    }

    @Test
    void aBrushOverTheEndIsDrawnAtBothSides() {
        // 330° against a rotor at −15°: 345° on the sheet, 253 mm, half of it beyond the last bar.
        Drawing page = page(LAP, ViewOptions.of("").withRotorAngle(-15));
        Shape.Group brush = group(page, Element.Kind.BRUSH, 1);
        List<Shape.Rect> parts = brush.shapes().stream()
                .filter(Shape.Rect.class::isInstance)
                .map(s -> (Shape.Rect) s)
                .toList();
        assertThat(parts).hasSize(2);
        near(parts.get(0).x(), 16.5);
        near(parts.get(0).width(), 11);
        near(parts.get(1).x(), FIRST + 242);
        near(parts.get(1).width(), 11);
    }

    @Test
    void theWordsTellWhatIsSeen() {
        assertThat(text(PAGE, "Mill").roles()).contains(Role.TITLE);
        Shape.Text counts = text(
                PAGE,
                "12 slots · 12 bars · 4 poles · slot 1 in line with bar 1 · simplex lap, progressive · coil throw 1–4 ·"
                        + " commutator pitch +1 · 4 parallel paths");
        near(counts.at().y(), 20.6);
        near(
                text(
                                PAGE,
                                "Developed winding: slots 1 to 12, seen from outside, back end above, commutator end"
                                        + " below")
                        .at()
                        .y(),
                25);
        String first = "coil side at the top of its slot, and its lead";
        String second = "coil side at the slot floor";
        near(text(PAGE, first).at().x(), 21);
        near(text(PAGE, first).at().y(), 190);
        double next = 21 + TextWidths.em(first, false) * 2.6 + 5;
        near(text(PAGE, second).at().x(), next + 11);
        near(
                text(PAGE, "numbers above: coils; on the core: slots").at().x(),
                next + 11 + TextWidths.em(second, false) * 2.6 + 5);
        Shape.Text sides = text(
                PAGE,
                "numbers at the sides: the coil goes on at the other side · brushes 30° left of the pole centres");
        near(sides.at().x(), 10);
        near(sides.at().y(), 194.4);
        assertThat(PAGE.title()).isEqualTo("Mill");
        assertThat(PAGE.description())
                .isEqualTo(
                        "Developed winding diagram. 12 slots · 12 bars · 4 poles · slot 1 in line with bar 1. simplex"
                                + " lap, progressive · coil throw 1–4 · commutator pitch +1 · 4 parallel paths.");
        assertThat(page(LAP, ViewOptions.of("")).title()).isEqualTo("Developed winding");
    }

    private static String lastLine(Winding w) {
        return page(w, ViewOptions.of("")).texts().stream()
                .map(Shape.Text::text)
                .filter(t -> t.startsWith("numbers at the sides:"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theLastLineTellsWhatElseThereIs() {
        assertThat(lastLine(SampleWindings.deadCoil())).contains("· (number): dead coil, leads cut and insulated ·");
        Winding off = Winding.build(
                Armature.of(3, 3, 2),
                new WindingSpec.Listed(List.of(
                        ListedCoil.of(1, 1, 2, 1, 2),
                        ListedCoil.of(2, 2, 3, 2, 3),
                        new ListedCoil(3, 3, 1, OptionalInt.of(3), OptionalInt.empty()))));
        assertThat(lastLine(off))
                .contains("· short cross line: a lead on no bar")
                .doesNotContain("(number)");
        assertThat(lastLine(LAP)).doesNotContain("short cross line");
        // Full pitch on 2 poles with no lead throw: the coil's middle a quarter round, the bars' at half a bar.
        Winding right = Winding.build(
                Armature.of(12, 12, 2),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(4));
        assertThat(lastLine(right)).endsWith("· brushes 45° right of the pole centres");
        Winding line = Winding.build(
                new Armature(12, 12, 2, SlotAlignment.BAR),
                WindingSpec.lap(2, Direction.PROGRESSIVE).withLeadOffset(2));
        assertThat(lastLine(line)).endsWith("· brushes in line with the pole centres");
        Winding none = Winding.build(
                Armature.of(4, 4, 2),
                new WindingSpec.Listed(List.of(ListedCoil.dead(1, 1, 3), ListedCoil.dead(2, 2, 4))));
        assertThat(lastLine(none)).doesNotContain("brushes");
        assertThat(groups(page(none, ViewOptions.of("")), Element.Kind.BRUSH)).isEmpty();
        Drawing frog = page(SampleWindings.all().get("frog-leg"), ViewOptions.of(""));
        text(frog, "the same of the wave coils");
    }

    @Test
    void whatIsMarkedStandsOut() {
        Drawing page = page(LAP, ViewOptions.of("").withHighlight(new Highlight(Set.of(3), Set.of(5), Set.of(7))));
        Map<Element.Kind, List<Integer>> marked = new LinkedHashMap<>();
        for (Element.Kind kind : List.of(Element.Kind.COIL, Element.Kind.BAR, Element.Kind.SLOT)) {
            marked.put(
                    kind,
                    groups(page, kind).stream()
                            .filter(g -> g.roles().contains(Role.HIGHLIGHT))
                            .map(g -> g.element().orElseThrow().number())
                            .toList());
        }
        assertThat(marked.get(Element.Kind.COIL)).containsExactly(3);
        assertThat(marked.get(Element.Kind.BAR)).containsExactly(5);
        assertThat(marked.get(Element.Kind.SLOT)).containsExactly(7);
        // A white band beneath each of its lines.
        Shape.Group coil = group(page, Element.Kind.COIL, 3);
        List<List<Point>> bands = coil.shapes().stream()
                .filter(s -> s.roles().contains(Role.HALO))
                .map(s -> ((Shape.Polyline) s).points())
                .toList();
        List<List<Point>> own = coil.shapes().stream()
                .filter(s -> s instanceof Shape.Polyline && !s.roles().contains(Role.HALO))
                .map(s -> ((Shape.Polyline) s).points())
                .toList();
        assertThat(bands).isEqualTo(own).hasSize(4);
        assertThat(coil.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).bold()))
                .containsExactly(true);
        assertThat(groups(page, Element.Kind.COIL).get(11)).isEqualTo(coil);
    }

    // ---- pages ------------------------------------------------------------------------------------------------------

    @Test
    void aLongWindingIsSharedOutOverPages() {
        Winding w = SampleWindings.bars400();
        List<Drawing> pages = DrawingView.DEVELOPED
                .draw(w, ViewOptions.of("").withFormat(PageFormat.A4))
                .pages();
        int next = 1;
        List<Integer> shares = new ArrayList<>();
        double pitch = 0;
        for (int i = 0; i < pages.size(); i++) {
            Drawing page = pages.get(i);
            near(page.width(), 297);
            List<Shape.Group> slots = groups(page, Element.Kind.SLOT);
            assertThat(slots.get(0).element().orElseThrow().number()).isEqualTo(next);
            next += slots.size();
            shares.add(slots.size());
            double first = middle(slots.get(0));
            double last = middle(slots.get(slots.size() - 1));
            double here = (last - first) / (slots.size() - 1);
            assertThat(pitch == 0 || Math.abs(pitch - here) < 1e-9).isTrue();
            pitch = here;
            Shape.Text foot = text(page, "sheet " + (i + 1) + " of " + pages.size());
            near(foot.at().x(), 287);
            near(foot.at().y(), 200);
            assertThat(foot.anchor()).isEqualTo(Shape.Anchor.END);
            assertThat(page.texts().stream().map(Shape.Text::text))
                    .contains("Developed winding, sheet " + (i + 1) + " of " + pages.size() + ": slots "
                            + (next - slots.size()) + " to " + (next - 1)
                            + ", seen from outside, back end above, commutator end below")
                    .anyMatch(t -> t.startsWith(
                            "numbers at the sides: the coil goes on at the same number on the next sheet"));
            // In line with bars: four bars a slot, the first standing half over the page's edge.
            List<Shape.Group> bars = groups(page, Element.Kind.BAR);
            assertThat(bars).hasSize(4 * slots.size() + 1);
            int bar = 4 * (next - slots.size() - 1) - 1;
            for (int b = 0; b < bars.size(); b++) {
                assertThat(bars.get(b).element().orElseThrow().number()).isEqualTo(1 + Math.floorMod(bar - 1 + b, 400));
                near(middle(bars.get(b)), first - pitch / 2 + b * pitch / 4);
            }
            // Both sides are left the same room, what stands out included.
            near(
                    bars.get(0).bounds().left()
                            - 0.05 * pitch / 4
                            + bars.get(bars.size() - 1).bounds().right()
                            + 0.05 * pitch / 4,
                    297);
        }
        assertThat(next).isEqualTo(101);
        int most = shares.get(0);
        assertThat(shares.subList(0, shares.size() - 1)).allMatch(n -> n == most);
        assertThat(shares.get(shares.size() - 1)).isLessThanOrEqualTo(most);
        assertThat(pages.size()).isEqualTo((100 + most - 1) / most);
    }

    private static double middle(Shape.Group g) {
        Box b = g.shapes().get(0).bounds();
        return (b.left() + b.right()) / 2;
    }

    @Test
    void onOneSheetALongWindingTakesTheWidthItNeeds() {
        Drawing page = page(SampleWindings.bars400(), ViewOptions.of(""));
        List<Shape.Group> slots = groups(page, Element.Kind.SLOT);
        double pitch = middle(slots.get(1)) - middle(slots.get(0));
        // A label of three figures and 0.8 mm for each of four sides, in 86 % of the slot.
        double label = TextWidths.em("000", false) * 2.2 + 0.8;
        double bar = (TextWidths.em("000", false) * 2.2 + 1.1) * 4;
        near(pitch, Math.max(4 * label / 0.86, bar));
        // Bar 1 in line with slot 1, the last bar stands out by half a slot less half a bar.
        near(page.width(), (100 + (1 - 0.25) / 2) * pitch + 33);
    }

    @Test
    void everyPieceThatIsCutIsNumberedOnBothPages() {
        Winding w = Winding.build(Armature.of(60, 60, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<Drawing> pages = DrawingView.DEVELOPED
                .draw(w, ViewOptions.of("").withFormat(PageFormat.A4))
                .pages();
        assertThat(pages).hasSizeGreaterThan(1);
        for (int i = 0; i < pages.size(); i++) {
            Set<String> out = Set.copyOf(sideNumbers(pages.get(i), false).values());
            Set<String> in = Set.copyOf(
                    sideNumbers(pages.get((i + 1) % pages.size()), true).values());
            assertThat(in).isEqualTo(out).hasSizeGreaterThan(10);
        }
    }

    // ---- helpers ----------------------------------------------------------------------------------------------------

    @Test
    void clippingKeepsTheEndsApart() {
        List<Point> chain = List.of(new Point(0, 0), new Point(0, 10), new Point(20, 30));
        // All within.
        Chain.Piece whole = Chain.clip(chain, -1, 21).get(0);
        assertThat(whole.points()).isEqualTo(chain);
        assertThat(whole.start()).isTrue();
        assertThat(whole.end()).isTrue();
        assertThat(whole.cutLeft()).isFalse();
        assertThat(whole.cutRight()).isFalse();
        // On the very edge counts as within.
        assertThat(Chain.clip(chain, 0, 20).get(0).points()).isEqualTo(chain);
        // The upright part lies outside: what is left begins at the cut.
        Chain.Piece part = Chain.clip(chain, 5, 30).get(0);
        assertThat(part.points()).containsExactly(new Point(5, 15), new Point(20, 30));
        assertThat(part.start()).isFalse();
        assertThat(part.end()).isTrue();
        assertThat(part.cutLeft()).isTrue();
        assertThat(part.leftY()).isEqualTo(15);
        assertThat(part.cutRight()).isFalse();
        // Backwards: going out at the left is a cut there.
        List<Point> back = List.of(new Point(20, 30), new Point(0, 10));
        Chain.Piece gone = Chain.clip(back, 5, 15).get(0);
        assertThat(gone.cutLeft()).isTrue();
        assertThat(gone.leftY()).isEqualTo(15);
        assertThat(gone.cutRight()).isTrue();
        assertThat(gone.rightY()).isEqualTo(25);
        assertThat(Chain.clip(chain, -9, -1)).isEmpty();
        assertThat(Chain.clip(List.of(new Point(3, 0), new Point(3, 9)), 4, 5)).isEmpty();
        // Out and in again: two pieces, each with the cut that is its own.
        List<Chain.Piece> two = Chain.clip(List.of(new Point(0, 0), new Point(20, 20), new Point(0, 40)), -1, 10);
        assertThat(two).hasSize(2);
        assertThat(two.get(0).start()).isTrue();
        assertThat(two.get(0).end()).isFalse();
        assertThat(two.get(0).rightY()).isEqualTo(10);
        assertThat(two.get(1).start()).isFalse();
        assertThat(two.get(1).end()).isTrue();
        assertThat(two.get(1).rightY()).isEqualTo(30);
        assertThat(two.get(1).cutLeft()).isFalse();
    }

    @Test
    void leadsOnOneBarShareItsMiddle() {
        var overlay = Overlay.none(SampleWindings.broken());
        var leads = new Leads(overlay);
        Winding w = SampleWindings.broken();
        // Bar 5 holds the top leads of coils 4 and 5, and no bottom lead; bar 2 that of coil 2 and the bottom of coil
        // 1.
        near(leads.offset(w.coil(4), true, 0), -0.155);
        near(leads.offset(w.coil(5), true, 0), 0.155);
        near(leads.offset(w.coil(2), true, 0), -0.155);
        near(leads.offset(w.coil(1), false, 0), 0.155);
        // Bar 9 holds three: the top and the bottom lead of coil 9, and the bottom lead of coil 8.
        near(leads.offset(w.coil(9), true, 0), 0.62 * (0.5 / 3 - 0.5));
        near(leads.offset(w.coil(8), false, 0), 0);
        near(leads.offset(w.coil(9), false, 0), 0.62 * (2.5 / 3 - 0.5));
        // A lead alone stands where the first of two would.
        near(leads.offset(w.coil(12), true, 0), -0.155);
    }
}
