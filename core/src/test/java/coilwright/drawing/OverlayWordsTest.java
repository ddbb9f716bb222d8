package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.drawing.Overlay.Lead;
import coilwright.drawing.Overlay.Mark;
import coilwright.winding.Armature;
import coilwright.winding.Counting;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is laid over a winding: which coil is drawn how, what stands beside it, and where. Coil n: slots n, n + 3; bars n, n + 1. */
class OverlayWordsTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    private static List<ListedCoil> rows(ListedCoil... instead) {
        List<ListedCoil> rows = new ArrayList<>(LAP.asListed().coils());
        for (ListedCoil c : instead) {
            rows.set(c.coil() - 1, c);
        }
        return rows;
    }

    private static Overlay lay(List<ListedCoil> found) {
        return new ConnectionOverlay(LAP, OverlayDrawingsTest.comparison(LAP, found, false)).lay();
    }

    private static Overlay.Words words(Overlay o) {
        return o.words().orElseThrow();
    }

    private static List<Mark> marks(Overlay o, int number) {
        return o.marks().values().stream().filter(m -> m.number() == number).toList();
    }

    private static Lead lead(int bar, Role role) {
        return new Lead(bar == 0 ? OptionalInt.empty() : OptionalInt.of(bar), role);
    }

    // ---- connections ------------------------------------------------------------------------------------------------

    @Test
    void aCoilAsPlannedIsQuiet() {
        Overlay o = lay(rows());
        assertThat(o.winding()).isEqualTo(LAP);
        Mark m = marks(o, 4).get(0);
        assertThat(m.look()).isEqualTo(Role.QUIET);
        assertThat(m.title()).isEqualTo("Coil 4: as planned, slots 4–7, top lead on bar 4, bottom lead on bar 5");
        assertThat(m.top()).containsExactly(lead(4, Role.COIL));
        assertThat(m.bottom()).containsExactly(lead(5, Role.COIL));
        assertThat(words(o).what()).isEqualTo("Connections as found, over the plan: no coil differs");
        assertThat(words(o).notes()).containsExactly("the connections are as planned");
        assertThat(words(o).mirrored()).isFalse();
        assertThat(words(o).name()).isEqualTo("Connections as found");
        assertThat(words(o).legend())
                .extracting(Overlay.Sample::words)
                .containsExactly(
                        "found as planned",
                        "coil whose leads differ",
                        "planned, not found (ring)",
                        "found instead (dot)");
    }

    @Test
    void leadsOnOtherBarsAreDrawnTwice() {
        Overlay o = lay(rows(ListedCoil.of(3, 3, 6, 8, 4)));
        assertThat(o.winding()).isEqualTo(LAP);
        Mark m = marks(o, 3).get(0);
        assertThat(m.look()).isEqualTo(Role.CHANGED);
        assertThat(m.top()).containsExactly(lead(3, Role.PLANNED_LEAD), lead(8, Role.FOUND_LEAD));
        assertThat(m.bottom()).containsExactly(lead(4, Role.COIL));
        assertThat(m.title())
                .isEqualTo(
                        "Coil 3: planned in slots 3–6, top lead on bar 3, bottom lead on bar 4; found in slots 3–6, top"
                                + " lead on bar 8, bottom lead on bar 4 (shifted-bar)");
        assertThat(words(o).what()).endsWith(": 1 coil differs");
        assertThat(words(o).notes()).containsExactly("coil 3, shifted-bar: top lead on bar 8, not bar 3");
    }

    @Test
    void aCoilInOtherSlotsIsDrawnInBothPlaces() {
        Overlay o = lay(rows(ListedCoil.of(3, 2, 7, 3, 4), ListedCoil.of(9, 9, 12, 10, 9)));
        List<Mark> three = marks(o, 3);
        assertThat(three).extracting(Mark::look).containsExactly(Role.FOUND_SIDE, Role.PLANNED_SIDE);
        assertThat(three).extracting(Mark::prefix).containsExactly("", "planned-13-");
        assertThat(three.get(0).top()).containsExactly(lead(3, Role.FOUND_LEAD));
        assertThat(three.get(1).bottom()).containsExactly(lead(4, Role.PLANNED_LEAD));
        assertThat(o.winding().coil(3).top().slot()).isEqualTo(2);
        assertThat(o.winding().coil(3).bottom().slot()).isEqualTo(7);
        assertThat(o.winding().coil(13).top().slot()).isEqualTo(3);
        assertThat(o.winding().coil(13).bottom().slot()).isEqualTo(6);
        assertThat(words(o).what()).endsWith(": 2 coils differ");
        assertThat(words(o).notes())
                .containsExactly(
                        "coil 3, wrong-slot: top side in slot 2, not slot 3, bottom side in slot 7, not slot 6",
                        "coil 9, reversed-coil: top lead on bar 10, not bar 9, bottom lead on bar 9, not bar 10");
    }

    @Test
    void missingAndExtraCoilsStandByThemselves() {
        List<ListedCoil> found = rows();
        found.remove(4);
        found.add(ListedCoil.of(2, 2, 5, 6, 7));
        Overlay o = lay(found);
        Mark missing = marks(o, 5).get(0);
        assertThat(missing.look()).isEqualTo(Role.PLANNED_SIDE);
        assertThat(missing.prefix()).isEmpty();
        assertThat(missing.title())
                .isEqualTo("Coil 5: planned in slots 5–8, top lead on bar 5, bottom lead on bar 6 (missing)");
        List<Mark> two = marks(o, 2);
        assertThat(two).extracting(Mark::look).containsExactly(Role.QUIET, Role.FOUND_SIDE);
        assertThat(two.get(1).prefix()).isEqualTo("extra-13-");
        assertThat(two.get(1).title())
                .isEqualTo("Coil 2: found in slots 2–5, top lead on bar 6, bottom lead on bar 7 (doubled)");
        assertThat(words(o).notes()).contains("coil 5, missing").anyMatch(n -> n.startsWith("coil 2, doubled"));
    }

    @Test
    void whatLiesNowhereIsToldAndNotDrawn() {
        Overlay o = lay(rows(ListedCoil.of(3, 14, 6, 3, 4), ListedCoil.of(7, 7, 10, 7, 15)));
        assertThat(words(o).notes())
                .contains(
                        "coil 3 as found is not drawn: there is no slot 14",
                        "a lead of coil 7 is drawn on no bar: there is no bar 15");
        assertThat(marks(o, 3)).extracting(Mark::look).containsExactly(Role.PLANNED_SIDE);
        Mark seven = marks(o, 7).get(0);
        assertThat(seven.bottom()).containsExactly(lead(8, Role.PLANNED_LEAD), lead(0, Role.FOUND_LEAD));
        // The last slot and bar are there.
        Overlay last = lay(rows(ListedCoil.of(3, 12, 6, 3, 12)));
        assertThat(words(last).notes()).noneMatch(n -> n.contains("there is no"));
    }

    @Test
    void aWholeWindingThatDiffersIsToldOnce() {
        List<ListedCoil> further = new ArrayList<>();
        for (ListedCoil c : LAP.asListed().coils()) {
            further.add(
                    ListedCoil.of(c.coil(), c.topSlot(), c.bottomSlot(), c.coil() % 12 + 1, (c.coil() + 1) % 12 + 1));
        }
        Overlay o = lay(further);
        assertThat(words(o).what()).isEqualTo("Connections as found, over the plan: differ as a whole");
        assertThat(words(o).notes()).containsExactly("the whole winding: shifted-bar");
        for (int n = 1; n <= 12; n++) {
            Mark m = marks(o, n).get(0);
            assertThat(m.look()).isEqualTo(Role.CHANGED);
            assertThat(m.top()).containsExactly(lead(n, Role.PLANNED_LEAD), lead(n % 12 + 1, Role.FOUND_LEAD));
            assertThat(m.title()).endsWith(" (shifted-bar)");
        }
    }

    /** The list calls the plan's slot 1 slot 4 and its bar 1 bar 9, counts the other way, and numbers its coils anyhow. */
    @Test
    void freeNumbersAreTheListsOwn() {
        List<ListedCoil> found = new ArrayList<>();
        for (ListedCoil c : LAP.asListed().coils()) {
            int n = c.coil();
            found.add(ListedCoil.of(
                    13 - n,
                    LAP.armature().wrapSlot(4 - (c.topSlot() - 1)),
                    LAP.armature().wrapSlot(4 - (c.bottomSlot() - 1)),
                    LAP.armature().wrapBar(9 - (c.topBar().getAsInt() - 1)),
                    LAP.armature().wrapBar(9 - (c.bottomBar().getAsInt() - 1))));
        }
        Comparison same = OverlayDrawingsTest.comparison(LAP, found, true);
        Overlay o = new ConnectionOverlay(LAP, same).lay();
        Counting n = same.numbering().orElseThrow();
        assertThat(n.mirrored()).isTrue();
        assertThat(words(o).what())
                .isEqualTo("Connections as found, over the plan: no coil differs; numbers are the list's own, counted"
                        + " counter-clockwise or from the back end, its slot " + n.slotOfOne()
                        + " the plan's slot 1, its bar " + n.barOfOne() + " the plan's bar 1");
        assertThat(words(o).mirrored()).isTrue();
        assertThat(o.marks().values()).hasSize(12).allMatch(m -> m.look() == Role.QUIET);
        // A line that takes no planned coil's place is put to the one most like it.
        ListedCoil was = found.get(2);
        found.set(
                2,
                ListedCoil.of(
                        was.coil(),
                        was.topSlot(),
                        was.bottomSlot(),
                        was.topBar().getAsInt(),
                        1 + was.bottomBar().getAsInt() % 12));
        Overlay one = new ConnectionOverlay(LAP, OverlayDrawingsTest.comparison(LAP, found, true)).lay();
        Mark changed = marks(one, was.coil()).get(0);
        assertThat(changed.look()).isEqualTo(Role.CHANGED);
        assertThat(changed.bottom())
                .containsExactly(
                        new Lead(was.bottomBar(), Role.PLANNED_LEAD),
                        lead(1 + was.bottomBar().getAsInt() % 12, Role.FOUND_LEAD));
    }

    /** Free numbers, and the whole on other bars: each line is put to the coil of its slots. */
    @Test
    void linesOfAWholeThatDiffersArePutToTheLikestCoil() {
        List<ListedCoil> lines = new ArrayList<>();
        for (ListedCoil c : LAP.asListed().coils()) {
            lines.add(ListedCoil.of(
                    c.coil(),
                    c.topSlot(),
                    c.bottomSlot(),
                    c.bottomBar().getAsInt(),
                    c.topBar().getAsInt()));
        }
        var comparison =
                new Comparison(lines, List.of(), Optional.of("reversed coil"), Optional.of(new Counting(1, 1, false)));
        Overlay o = new ConnectionOverlay(LAP, comparison).lay();
        for (int n = 1; n <= 12; n++) {
            Mark m = marks(o, n).get(0);
            assertThat(m.look()).isEqualTo(Role.CHANGED);
            assertThat(m.top()).containsExactly(lead(n, Role.PLANNED_LEAD), lead(n % 12 + 1, Role.FOUND_LEAD));
        }
    }

    // ---- a coil cut out ---------------------------------------------------------------------------------------------

    @Test
    void aCoilCutOutIsLiftedAndTheOthersAreQuietOrIdle() {
        Overlay o = CutOutOverlay.lay(LAP, new CutOut(4, true, List.of(4, 7), List.of(4, 5)));
        Mark four = marks(o, 4).get(0);
        assertThat(four.look()).isEqualTo(Role.LIFTED);
        assertThat(four.cut()).isTrue();
        assertThat(four.top()).containsExactly(lead(4, Role.LIFTED));
        assertThat(four.bottom()).containsExactly(lead(5, Role.LIFTED));
        assertThat(four.title()).isEqualTo("Coil 4: slots 4–7, top lead on bar 4, bottom lead on bar 5; cut out");
        Mark seven = marks(o, 7).get(0);
        assertThat(seven.look()).isEqualTo(Role.IDLE);
        assertThat(seven.cut()).isFalse();
        assertThat(seven.title()).endsWith("; carries nothing");
        Mark one = marks(o, 1).get(0);
        assertThat(one.look()).isEqualTo(Role.QUIET);
        assertThat(one.title()).isEqualTo("Coil 1: slots 1–4, top lead on bar 1, bottom lead on bar 2");
        assertThat(one.top()).containsExactly(lead(1, Role.COIL));
        assertThat(words(o).notes())
                .containsExactly(
                        "coil 4: lift the top lead from bar 4 and the bottom lead from bar 5, insulate both",
                        "cut coil 4 through at the back end, insulate the ends",
                        "join bars 4 and 5 by a jumper");
        assertThat(words(o).legend())
                .extracting(Overlay.Sample::role)
                .containsExactly(Role.LIFTED, Role.PLANNED_LEAD, Role.BRIDGE, Role.IDLE, Role.QUIET);
        assertThat(words(o).caution()).startsWith("EMERGENCY MEASURE");
        assertThat(words(o).name()).isEqualTo("Coil 4 cut out");
        Overlay plain = CutOutOverlay.lay(LAP, new CutOut(4, false, List.of(), List.of()));
        assertThat(words(plain).notes()).endsWith("join no bars").hasSize(2);
        assertThat(words(plain).legend())
                .extracting(Overlay.Sample::role)
                .containsExactly(Role.LIFTED, Role.PLANNED_LEAD, Role.QUIET);
        assertThat(marks(plain, 4).get(0).cut()).isFalse();
        assertThatThrownBy(() -> CutOutOverlay.lay(LAP, new CutOut(4, true, List.of(13), List.of())))
                .hasMessageContaining("there is no coil 13");
        for (int bar : new int[] {0, 13}) {
            assertThatThrownBy(() -> CutOutOverlay.lay(LAP, new CutOut(4, true, List.of(), List.of(4, bar))))
                    .hasMessage("there is no bar " + bar + ": bars run from 1 to 12");
        }
    }

    @Test
    void aDeadCoilHasNoLeadsToLift() {
        Winding w = SampleWindings.deadCoil();
        Overlay o = CutOutOverlay.lay(w, new CutOut(32, false, List.of(), List.of()));
        Mark m = marks(o, 32).get(0);
        assertThat(m.top()).containsExactly(lead(0, Role.COIL));
        assertThat(m.bottom()).containsExactly(lead(0, Role.COIL));
        assertThat(words(o).notes().get(0))
                .isEqualTo("coil 32: lift the top lead from no bar and the bottom lead from no bar, insulate both");
    }

    // ---- the overlay itself -----------------------------------------------------------------------------------------

    @Test
    void whatStandsOutIsPaintedLastTheHeaviestOnTop() {
        Overlay o = lay(rows(ListedCoil.of(3, 2, 7, 3, 4), ListedCoil.of(9, 9, 12, 10, 9)));
        assertThat(o.inFront().stream().map(o::look)).containsExactly(Role.CHANGED, Role.PLANNED_SIDE, Role.FOUND_SIDE);
        assertThat(o.winding().coils().stream().filter(o::front)).hasSize(3);
        Overlay cut = CutOutOverlay.lay(LAP, new CutOut(4, true, List.of(7), List.of()));
        assertThat(cut.inFront().stream().map(cut::look)).containsExactly(Role.IDLE, Role.LIFTED);
        assertThat(Overlay.none(LAP).inFront()).isEmpty();
        assertThat(Overlay.none(LAP).plain()).isTrue();
        assertThat(cut.plain()).isFalse();
    }

    @Test
    void numbersAndLabelsAreThoseShown() {
        Overlay o = lay(rows(ListedCoil.of(3, 2, 7, 3, 4)));
        assertThat(o.number(o.winding().coil(13))).isEqualTo(3);
        assertThat(o.label(o.winding().coil(13))).isEqualTo("3");
        // 12 is the largest shown, although 13 is the largest in the winding drawn.
        assertThat(o.lastNumber()).isEqualTo(12);
        assertThat(Overlay.none(LAP).lastNumber()).isEqualTo(12);
        Winding dead = SampleWindings.deadCoil();
        Overlay none = Overlay.none(dead);
        assertThat(none.label(dead.coil(32))).isEqualTo("(32)");
        assertThat(none.label(dead.coil(31))).isEqualTo("31");
        Winding broken = SampleWindings.broken();
        // One lead on a bar is no dead coil.
        assertThat(Overlay.none(broken).label(broken.coil(6))).isEqualTo("6");
    }

    @Test
    void heavyLinesAreThoseOfWhatIsFoundOrLifted() {
        Overlay o = lay(rows(ListedCoil.of(3, 2, 7, 3, 4), ListedCoil.of(9, 9, 12, 10, 9)));
        var top = line(Role.COIL_TOP);
        var bottom = line(Role.COIL_BOTTOM);
        assertThat(o.heavy(o.winding().coil(3), top)).isTrue();
        assertThat(o.heavy(o.winding().coil(3), bottom)).isTrue();
        assertThat(o.heavy(o.winding().coil(13), top)).isFalse();
        assertThat(o.heavy(o.winding().coil(9), bottom)).isFalse();
        assertThat(o.heavy(o.winding().coil(9), line(Role.FOUND_LEAD))).isTrue();
        assertThat(o.heavy(o.winding().coil(9), line(Role.LIFTED))).isTrue();
        assertThat(o.heavy(o.winding().coil(3), line(Role.CAP))).isFalse();
        Overlay cut = CutOutOverlay.lay(LAP, new CutOut(4, true, List.of(7), List.of()));
        assertThat(cut.heavy(LAP.coil(4), top)).isTrue();
        assertThat(cut.heavy(LAP.coil(7), top)).isFalse();
    }

    private static Shape line(Role role) {
        return new Shape.Line(new Point(0, 0), new Point(1, 1), List.of(role));
    }

    @Test
    void fewAreThreeOrASixthOfAll() {
        for (int changed = 2; changed <= 5; changed++) {
            List<ListedCoil> found = rows();
            for (int i = 0; i < changed; i++) {
                int n = 2 * i + 1;
                found.set(n - 1, ListedCoil.of(n, n, n + 3 > 12 ? n - 9 : n + 3, n + 1, n));
            }
            assertThat(lay(found).few()).as("%d of 12", changed).isEqualTo(changed <= 3);
        }
        Winding large = Winding.build(Armature.of(30, 30, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (int idle = 3; idle <= 6; idle++) {
            List<Integer> numbers = Stream.iterate(2, n -> n + 1).limit(idle).toList();
            Overlay o = CutOutOverlay.lay(large, new CutOut(1, false, numbers, List.of()));
            assertThat(o.few()).isEqualTo(idle + 1 <= 5);
        }
    }

    @Test
    void rolesOfLeads() {
        assertThat(Overlay.line(lead(1, Role.LIFTED), true)).isEqualTo(Role.PLANNED_LEAD);
        assertThat(Overlay.line(lead(1, Role.COIL), true)).isEqualTo(Role.COIL_TOP);
        assertThat(Overlay.line(lead(1, Role.COIL), false)).isEqualTo(Role.COIL_BOTTOM);
        assertThat(Overlay.line(lead(1, Role.FOUND_LEAD), false)).isEqualTo(Role.FOUND_LEAD);
        assertThat(OverlayDrawings.viewNamed("round")).isEqualTo(DrawingView.ROUND);
        assertThatThrownBy(() -> OverlayDrawings.viewNamed("paths"))
                .hasMessage("the view is \"paths\", but this is drawn in two views alone: choose developed or round");
    }

    // ---- in the rolled-out drawing: slots and bars 22 mm apart, the first at 27.5 mm
    // ---------------------------------

    private static Drawing developed(List<ListedCoil> found) {
        return OverlayDrawings.connections(
                        DrawingView.DEVELOPED,
                        LAP,
                        OverlayDrawingsTest.comparison(LAP, found, false),
                        ViewOptions.of("Mill"))
                .first();
    }

    private static double bar(int number) {
        return 27.5 + (number - 1) * 22;
    }

    private static List<Shape.Text> texts(Drawing page, String words) {
        return page.texts().stream().filter(t -> t.text().equals(words)).toList();
    }

    private static void near(double is, double should) {
        assertThat(is).isCloseTo(should, within(1e-6));
    }

    @Test
    void tagsStandUnderTheBarsOfTheLeads() {
        Drawing page = developed(rows(ListedCoil.of(3, 3, 6, 4, 3)));
        // Planned on bars 3 and 4, found on 4 and 3: two tags under each.
        assertThat(texts(page, "3t")).hasSize(2);
        double wide = TextWidths.em("3t", false) * 2.2 + 2;
        List<Shape.Text> all = Stream.concat(texts(page, "3t").stream(), texts(page, "3b").stream())
                .toList();
        for (int n : new int[] {3, 4}) {
            List<Shape.Text> here = all.stream()
                    .filter(t -> Math.abs(t.at().x() - bar(n)) < 11)
                    .sorted(java.util.Comparator.comparingDouble(t -> t.at().y()))
                    .toList();
            assertThat(here).hasSize(2);
            near(here.get(0).at().y(), 162 + 2.4 + 0.36 * 2.2);
            near(here.get(1).at().y() - here.get(0).at().y(), 3.1);
            for (Shape.Text t : here) {
                double w = TextWidths.em(t.text(), t.bold()) * 2.2 + 2;
                near(t.at().x(), bar(n) - w / 2 + 2);
                assertThat(t.bold()).isEqualTo(t.roles().contains(Role.FOUND_LEAD));
            }
        }
        assertThat(wide).isGreaterThan(2);
        List<Shape.Line> leaders = page.shapes().stream()
                .filter(s -> s instanceof Shape.Line && s.roles().contains(Role.LEADER))
                .map(s -> (Shape.Line) s)
                .toList();
        assertThat(leaders)
                .hasSize(4)
                .allMatch(l -> l.from().y() == 162 && l.from().x() == l.to().x());
        assertThat(leaders.stream()
                        .map(l -> l.to().y() - 162)
                        .distinct()
                        .sorted()
                        .toList())
                .satisfies(y -> {
                    near(y.get(0), 2.4);
                    near(y.get(1), 5.5);
                });
        // A ring or dot before each word, as where the lead meets the bar.
        List<Shape.Circle> dots = page.shapes().stream()
                .filter(s -> s instanceof Shape.Circle c && c.middle().y() > 162)
                .map(s -> (Shape.Circle) s)
                .toList();
        assertThat(dots).hasSize(4).allMatch(c -> c.radius() == 0.7);
        for (Shape.Text t : all) {
            assertThat(dots)
                    .anyMatch(c -> Math.abs(c.middle().x() - (t.at().x() - 1.3)) < 1e-6
                            && Math.abs(c.middle().y() - (t.at().y() - 0.36 * 2.2)) < 1e-6
                            && c.roles().equals(t.roles()));
        }
        assertThat(texts(page, "3t, 3b: top, bottom lead of coil 3 · at the sides: where the coil goes on"))
                .hasSize(1);
        assertThat(page.title()).isEqualTo("Mill");
        assertThat(page.description()).startsWith("Connections as found, over the plan: 1 coil differs. Developed");
    }

    @Test
    void tagsThatFindNoRoomAreCounted() {
        // Leads of eight coils found on bar 6, which has six rows of tags: its own two, unchanged, have none.
        List<ListedCoil> found = rows();
        for (int n : new int[] {1, 2, 3, 7, 8, 9, 10, 11}) {
            ListedCoil c = found.get(n - 1);
            found.set(
                    n - 1,
                    ListedCoil.of(
                            n, c.topSlot(), c.bottomSlot(), 6, c.bottomBar().getAsInt()));
        }
        Drawing page = developed(found);
        long under = page.texts().stream()
                .filter(t -> t.text().endsWith("t") && Math.abs(t.at().x() - bar(6)) < 5 && t.at().y() > 162)
                .count();
        assertThat(under).isEqualTo(6);
        assertThat(page.texts().stream().map(Shape.Text::text))
                .anyMatch(t -> t.startsWith("3t, 3b: top, bottom lead of coil 3 (2 left out)"));
    }

    private static Drawing cut(int coil, Integer... bridge) {
        return OverlayDrawings.cutOut(
                        DrawingView.DEVELOPED,
                        LAP,
                        new CutOut(coil, true, List.of(), List.of(bridge)),
                        ViewOptions.of("Mill"))
                .first();
    }

    private static Shape.Group jumper(Drawing page) {
        return page.shapes().stream()
                .filter(s -> s instanceof Shape.Group && s.roles().contains(Role.BRIDGE))
                .map(s -> (Shape.Group) s)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theJumperRunsBeneathTheBars() {
        Shape.Group g = jumper(cut(4, 4, 6));
        assertThat(g.id()).contains("bridge-bar-4");
        assertThat(g.title()).isEqualTo("bridge 4–6");
        var line = (Shape.Polyline) g.shapes().get(0);
        assertThat(line.points())
                .containsExactly(
                        new Point(bar(4), 161), new Point(bar(4), 168), new Point(bar(6), 168), new Point(bar(6), 161));
        assertThat(g.shapes().subList(1, 3))
                .containsExactly(
                        new Shape.Circle(new Point(bar(4), 161), 1.1, List.of(Role.BRIDGE)),
                        new Shape.Circle(new Point(bar(6), 161), 1.1, List.of(Role.BRIDGE)));
        Drawing page = cut(4, 4, 6);
        Shape.Text words = texts(page, "bridge 4–6").get(0);
        near(words.at().x(), bar(5));
        near(words.at().y(), 172 + 0.36 * 3.2);
        // Named from the later bar, it is the same jumper.
        var back = (Shape.Polyline) jumper(cut(4, 6, 4)).shapes().get(0);
        assertThat(back.points()).isEqualTo(line.points());
    }

    @Test
    void theJumperGoesTheShortWayOverTheEnd() {
        Drawing page = cut(4, 12, 2);
        Shape.Group g = jumper(page);
        List<Shape.Polyline> lines = g.shapes().stream()
                .filter(Shape.Polyline.class::isInstance)
                .map(s -> (Shape.Polyline) s)
                .toList();
        assertThat(lines).hasSize(2);
        assertThat(lines.get(0).points())
                .containsExactly(new Point(16.5, 168), new Point(bar(2), 168), new Point(bar(2), 161));
        assertThat(lines.get(1).points())
                .containsExactly(new Point(bar(12), 161), new Point(bar(12), 168), new Point(280.5, 168));
        assertThat(g.shapes().stream().filter(Shape.Circle.class::isInstance)).hasSize(2);
        assertThat(texts(page, "bridge 12–2")).hasSize(2);
        near(texts(page, "bridge 12–2").get(0).at().x(), (16.5 + bar(2)) / 2);
    }

    @Test
    void liftedLeadsEndInACrossHalfWay() {
        Drawing page = cut(4, 4, 5);
        Shape.Group coil = page.shapes().stream()
                .filter(s -> s instanceof Shape.Group && s.roles().contains(Role.LIFTED))
                .map(s -> (Shape.Group) s)
                .findFirst()
                .orElseThrow();
        List<Shape.Line> cross = coil.shapes().stream()
                .filter(s -> s instanceof Shape.Line && s.roles().equals(List.of(Role.LIFTED)))
                .map(s -> (Shape.Line) s)
                .toList();
        assertThat(cross).hasSize(4);
        // The top lead runs from 2.75 mm before the middle of the slot to 3.41 mm before that of the bar.
        double x = bar(4) - (2.75 + 3.41) / 2;
        double y = (116 + 150) / 2.0;
        near((cross.get(0).from().x() + cross.get(0).to().x()) / 2, x);
        near((cross.get(0).from().y() + cross.get(0).to().y()) / 2, y);
        near(cross.get(0).to().x() - cross.get(0).from().x(), 3);
        near(cross.get(0).to().y() - cross.get(0).from().y(), 3);
        near(cross.get(1).to().y() - cross.get(1).from().y(), -3);
        near(cross.get(1).to().x() - cross.get(1).from().x(), 3);
        List<Shape.Polyline> left = coil.shapes().stream()
                .filter(s -> s instanceof Shape.Polyline && s.roles().equals(List.of(Role.LIFTED)))
                .map(s -> (Shape.Polyline) s)
                .toList();
        assertThat(left.get(0).points()).hasSize(2);
        near(left.get(0).points().get(0).x(), bar(4) - 2.75);
        near(left.get(0).points().get(1).x(), x);
        List<Shape.Text> lift = texts(page, "lift");
        assertThat(lift).hasSize(2);
        near(lift.get(0).at().x(), x + 5.4);
        near(lift.get(0).at().y(), y + 0.36 * 2.9);
        // Where the lead was stands a ring, and no tag.
        assertThat(coil.shapes().stream()
                        .filter(s -> s.roles().contains(Role.PLANNED_LEAD) && s instanceof Shape.Circle))
                .hasSize(2);
        assertThat(texts(page, "4t")).isEmpty();
    }

    @Test
    void theSawStandsAtTheFarEnd() {
        Drawing page = cut(4, 4, 5);
        double x = bar(4) - 2.75 + 71.5 / 2;
        List<Shape.Line> saw = page.shapes().stream()
                .filter(s -> s instanceof Shape.Line l
                        && s.roles().contains(Role.LIFTED)
                        && l.from().y() < 100)
                .map(s -> (Shape.Line) s)
                .toList();
        assertThat(saw).hasSize(2);
        near(saw.get(0).from().x(), x - 1.1);
        near(saw.get(1).from().x(), x + 1.1);
        near(saw.get(0).from().y(), 35.4);
        near(saw.get(0).to().y(), 38.6);
        near(saw.get(0).to().x(), x - 1.1);
        Shape.Text word = texts(page, "cut").get(0);
        near(word.at().x(), x);
        near(word.at().y(), 41 + 0.36 * 2.9);
        assertThat(page.shapes())
                .contains(new Shape.Rect(saw.get(0).from().x(), 35 - 0.4, 2.2, 3, 0, List.of(Role.PLATE)));
    }

    @Test
    void cautionAndNotesStandUnderTheLegend() {
        Drawing page = cut(4, 4, 5);
        Shape.Text caution = page.texts().stream()
                .filter(t -> t.roles().contains(Role.CAUTION))
                .findFirst()
                .orElseThrow();
        assertThat(caution.text()).isEqualTo("EMERGENCY MEASURE: rewind the armature as soon as it can be spared");
        assertThat(caution.at()).isEqualTo(new Point(10, 194.4));
        assertThat(caution.bold()).isTrue();
        Shape.Text note = page.texts().stream()
                .filter(t -> t.text().startsWith("coil 4: lift the top lead"))
                .findFirst()
                .orElseThrow();
        near(note.at().y(), 194.4 + 1.35 * 2.9);
        assertThat(note.text())
                .contains(" · cut coil 4 through at the back end, insulate the ends · join bars 4 and 5 by");
        Shape.Text first =
                texts(page, "faulty coil; ×: lead lifted and insulated").get(0);
        assertThat(first.at()).isEqualTo(new Point(21, 190));
        Drawing plain = developed(rows());
        near(texts(plain, "the connections are as planned").get(0).at().y(), 194.4);
        assertThat(texts(plain, "N")).hasSize(3);
        assertThat(plain.shapes().stream()
                        .filter(s -> s instanceof Shape.Group g
                                && g.element()
                                        .filter(e -> e.kind() == Element.Kind.BRUSH)
                                        .isPresent()))
                .isEmpty();
    }
}
