package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.fault.ConnectionCheck;
import coilwright.fault.EmergencyRepair;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class OverlayDrawingsTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Map<String, Winding> ALL = SampleWindings.all();

    @Provide
    Arbitrary<String> names() {
        return Arbitraries.of(
                ALL.keySet().stream().filter(n -> !n.equals("400 bars")).toList());
    }

    @Provide
    Arbitrary<DrawingView> views() {
        return Arbitraries.of(DrawingView.DEVELOPED, DrawingView.ROUND);
    }

    private static List<ListedCoil> rows(Winding w) {
        return new ArrayList<>(w.asListed().coils());
    }

    static Comparison comparison(Winding plan, List<ListedCoil> found, boolean free) {
        ConnectionCheck.Result r = free ? ConnectionCheck.free(plan, found) : ConnectionCheck.of(plan, found);
        return new Comparison(
                found,
                r.differences().stream()
                        .map(d -> new Comparison.Difference(
                                d.coil(),
                                d.kind().word(),
                                d.expected(),
                                d.found(),
                                d.kind() == ConnectionCheck.Kind.DOUBLED))
                        .toList(),
                r.whole().map(w -> w.kind().word()),
                r.alignment().map(ConnectionCheck.Alignment::counting));
    }

    private static void sound(DrawingPages pages) {
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
            Set<String> ids = new LinkedHashSet<>();
            for (Shape.Group g : groups(page)) {
                g.id().ifPresent(id ->
                        assertThat(ids.add(id)).as("id %s once", id).isTrue());
            }
        }
    }

    private static List<Shape.Group> groups(Drawing page) {
        return page.shapes().stream()
                .filter(Shape.Group.class::isInstance)
                .map(Shape.Group.class::cast)
                .toList();
    }

    /** Any list of mistakes: lines lost, doubled, moved to other slots and bars, also to some that do not exist. */
    private static List<ListedCoil> spoilt(Winding w, Random random) {
        int bars = w.armature().bars();
        int slots = w.armature().slots();
        List<ListedCoil> rows = rows(w);
        int mistakes = random.nextInt(8);
        for (int i = 0; i < mistakes && !rows.isEmpty(); i++) {
            int at = random.nextInt(rows.size());
            ListedCoil c = rows.get(at);
            OptionalInt bar = OptionalInt.of(1 + random.nextInt(bars));
            switch (random.nextInt(9)) {
                case 0 -> rows.remove(at);
                case 1 -> rows.add(c);
                case 2 -> rows.set(at, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), bar, c.bottomBar()));
                case 3 ->
                    rows.set(at, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.bottomBar(), c.topBar()));
                case 4 ->
                    rows.set(
                            at,
                            new ListedCoil(
                                    c.coil(), c.topSlot(), 1 + random.nextInt(slots), c.topBar(), c.bottomBar()));
                case 5 -> rows.set(at, ListedCoil.dead(c.coil(), c.topSlot(), c.bottomSlot()));
                case 6 ->
                    rows.set(
                            at,
                            new ListedCoil(
                                    c.coil(), c.topSlot(), c.bottomSlot(), c.topBar(), OptionalInt.of(bars + 3)));
                case 7 -> rows.set(at, new ListedCoil(c.coil(), slots + 2, c.bottomSlot(), c.topBar(), c.bottomBar()));
                default ->
                    rows.add(new ListedCoil(
                            w.coils().get(w.coils().size() - 1).number() + 1 + i, 1, 2, bar, OptionalInt.empty()));
            }
        }
        if (random.nextInt(4) == 0) {
            rows.replaceAll(c -> new ListedCoil(
                    c.coil(), c.topSlot(), c.bottomSlot(), moved(w, c.topBar(), 2), moved(w, c.bottomBar(), 2)));
        }
        Collections.shuffle(rows, random);
        return rows;
    }

    private static OptionalInt moved(Winding w, OptionalInt bar, int by) {
        return bar.isPresent() ? OptionalInt.of(w.armature().wrapBar(bar.getAsInt() + by)) : bar;
    }

    /** The list as another person counts: from another slot and bar, the other way round. */
    private static List<ListedCoil> recounted(Winding w, List<ListedCoil> rows, int slot, int bar, boolean mirrored) {
        int sign = mirrored ? -1 : 1;
        return rows.stream()
                .map(c -> new ListedCoil(
                        c.coil(),
                        w.armature().wrapSlot(slot + sign * (c.topSlot() - 1)),
                        w.armature().wrapSlot(slot + sign * (c.bottomSlot() - 1)),
                        recounted(w, c.topBar(), bar, sign),
                        recounted(w, c.bottomBar(), bar, sign)))
                .toList();
    }

    private static OptionalInt recounted(Winding w, OptionalInt at, int bar, int sign) {
        return at.isPresent() ? OptionalInt.of(w.armature().wrapBar(bar + sign * (at.getAsInt() - 1))) : at;
    }

    @Property(tries = 50)
    void anyDifferencesAreDrawnLegibly(
            @ForAll("names") String name,
            @ForAll("views") DrawingView view,
            @ForAll PageFormat format,
            @ForAll Palette palette,
            @ForAll boolean free,
            @ForAll Random random) {
        Winding plan = ALL.get(name);
        List<ListedCoil> found = spoilt(plan, random);
        if (free) {
            found = recounted(plan, found, 1 + random.nextInt(5), 1 + random.nextInt(5), random.nextBoolean());
        }
        Comparison comparison = comparison(plan, found, free);
        ViewOptions options = ViewOptions.of("Any").withFormat(format).withPalette(palette);
        DrawingPages pages = OverlayDrawings.connections(view, plan, comparison, options);
        sound(pages);
        assertThat(OverlayDrawings.connections(view, plan, comparison, options)).isEqualTo(pages);
        // Every coil that differs is drawn or told to lie nowhere, and every line of the list is somewhere.
        Set<Integer> drawn = new TreeSet<>();
        for (Drawing page : pages.pages()) {
            for (Shape.Group g : groups(page)) {
                if (g.element().filter(e -> e.kind() == Element.Kind.COIL).isPresent()) {
                    drawn.add(g.element().get().number());
                }
            }
        }
        for (ListedCoil c : found) {
            boolean exists = c.topSlot() <= plan.armature().slots()
                    && c.bottomSlot() <= plan.armature().slots();
            if (exists) {
                assertThat(drawn).contains(c.coil());
            }
        }
    }

    @Example
    void fourHundredBarsConnectedTheOtherWayAreStillLegible() {
        Winding plan = ALL.get("400 bars");
        List<ListedCoil> found = rows(Winding.build(plan.armature(), WindingSpec.lap(1, Direction.RETROGRESSIVE)));
        for (DrawingView view : List.of(DrawingView.DEVELOPED, DrawingView.ROUND)) {
            for (PageFormat format : PageFormat.values()) {
                DrawingPages pages = OverlayDrawings.connections(
                        view,
                        plan,
                        comparison(plan, found, false),
                        ViewOptions.of("").withFormat(format));
                sound(pages);
                assertThat(words(pages.first())).contains("differ as a whole").contains("wrong-direction");
            }
        }
    }

    /** Ends of leads of a role, as the bars they are drawn on. */
    private static Map<Integer, List<Integer>> ends(Drawing page, Role role) {
        Map<Integer, Box> bars = new TreeMap<>();
        for (Shape.Group g : groups(page)) {
            g.element()
                    .filter(e -> e.kind() == Element.Kind.BAR)
                    .ifPresent(
                            e -> bars.putIfAbsent(e.number(), g.shapes().get(0).bounds()));
        }
        Map<Integer, List<Integer>> out = new TreeMap<>();
        for (Shape.Group g : groups(page)) {
            if (g.element().filter(e -> e.kind() == Element.Kind.COIL).isEmpty()) {
                continue;
            }
            for (Shape s : g.shapes()) {
                if (s instanceof Shape.Circle c && c.roles().contains(role)) {
                    Point p = c.middle();
                    bars.forEach((n, box) -> {
                        if (box.grown(0.01).holds(new Box(p.x(), p.y(), p.x(), p.y()))) {
                            out.computeIfAbsent(g.element().get().number(), x -> new ArrayList<>())
                                    .add(n);
                        }
                    });
                }
            }
        }
        return out;
    }

    private static String words(Drawing page) {
        return String.join(" ", page.texts().stream().map(Shape.Text::text).toList());
    }

    private static Drawing developed(List<ListedCoil> found) {
        return OverlayDrawings.connections(
                        DrawingView.DEVELOPED, LAP, comparison(LAP, found, false), ViewOptions.of("Mill"))
                .first();
    }

    @Example
    void leadsAsPlannedAndAsFoundEndOnTheirBars() {
        List<ListedCoil> rows = rows(LAP);
        rows.set(2, ListedCoil.of(3, 3, 6, 4, 3));
        rows.set(8, ListedCoil.of(9, 9, 12, 9, 12));
        Drawing page = developed(rows);
        assertThat(ends(page, Role.PLANNED_LEAD)).isEqualTo(Map.of(3, List.of(3, 4), 9, List.of(10)));
        assertThat(ends(page, Role.FOUND_LEAD)).isEqualTo(Map.of(3, List.of(4, 3), 9, List.of(12)));
        assertThat(page.texts())
                .extracting(Shape.Text::text)
                .contains("3t", "3b", "9b", "planned, not found (ring)", "found instead (dot)");
        // As many tags as leads: two a lead that differs.
        assertThat(page.texts().stream().filter(t -> t.text().equals("3t"))).hasSize(2);
        for (Shape.Group g : groups(page)) {
            if (g.element().filter(e -> e.kind() == Element.Kind.COIL).isPresent()) {
                int n = g.element().get().number();
                assertThat(g.roles().contains(Role.QUIET)).isEqualTo(n != 3 && n != 9);
            }
        }
    }

    @Example
    void missingDoubledAndMisplacedCoilsAreDrawnWhereTheyBelongAndWhereTheyLie() {
        List<ListedCoil> rows = rows(LAP);
        rows.set(10, ListedCoil.of(11, 11, 3, 11, 12));
        rows.add(ListedCoil.of(2, 2, 5, 2, 3));
        rows.remove(4);
        Drawing page = developed(rows);
        Map<Integer, List<Role>> looks = new TreeMap<>();
        for (Shape.Group g : groups(page)) {
            if (g.element().filter(e -> e.kind() == Element.Kind.COIL).isPresent()) {
                looks.computeIfAbsent(g.element().get().number(), n -> new ArrayList<>())
                        .add(g.roles().get(g.roles().size() - 1));
            }
        }
        assertThat(looks.get(5)).containsExactly(Role.PLANNED_SIDE);
        assertThat(looks.get(2)).containsExactly(Role.QUIET, Role.FOUND_SIDE);
        assertThat(looks.get(11)).containsExactlyInAnyOrder(Role.PLANNED_SIDE, Role.FOUND_SIDE);
        assertThat(ends(page, Role.PLANNED_LEAD)).isEqualTo(Map.of(5, List.of(5, 6), 11, List.of(11, 12)));
        assertThat(ends(page, Role.FOUND_LEAD)).isEqualTo(Map.of(2, List.of(2, 3), 11, List.of(11, 12)));
        assertThat(words(page))
                .contains("coil 5, missing")
                .contains("coil 11, wrong-slot: bottom side in slot 3, not slot 2");
    }

    @Example
    void theListsOwnNumbersStandInTheDrawingAndTheCaptionTellsHowTheyLie() {
        List<ListedCoil> rows = rows(LAP);
        rows.set(2, ListedCoil.of(3, 3, 6, 4, 3));
        List<ListedCoil> found = recounted(LAP, rows, 4, 9, true);
        Comparison comparison = comparison(LAP, found, true);
        Drawing page = OverlayDrawings.connections(DrawingView.DEVELOPED, LAP, comparison, ViewOptions.of("Mill"))
                .first();
        ListedCoil third = found.get(2);
        assertThat(ends(page, Role.FOUND_LEAD))
                .isEqualTo(Map.of(
                        3, List.of(third.topBar().getAsInt(), third.bottomBar().getAsInt())));
        assertThat(words(page)).contains("counter-clockwise").contains("seen from inside");
        long quiet = groups(page).stream()
                .filter(g -> g.roles().contains(Role.QUIET))
                .count();
        assertThat(quiet).isEqualTo(11);
    }

    @Example
    void aWholeWindingOnOtherBarsHasEveryLeadTwice() {
        List<ListedCoil> rows = rows(LAP);
        rows.replaceAll(c -> new ListedCoil(
                c.coil(), c.topSlot(), c.bottomSlot(), moved(LAP, c.topBar(), 2), moved(LAP, c.bottomBar(), 2)));
        Drawing page = developed(rows);
        Map<Integer, List<Integer>> planned = ends(page, Role.PLANNED_LEAD);
        Map<Integer, List<Integer>> found = ends(page, Role.FOUND_LEAD);
        for (Coil c : LAP.coils()) {
            int top = c.topBar().getAsInt();
            int bottom = c.bottomBar().getAsInt();
            assertThat(planned.get(c.number())).containsExactly(top, bottom);
            assertThat(found.get(c.number()))
                    .containsExactly(
                            LAP.armature().wrapBar(top + 2), LAP.armature().wrapBar(bottom + 2));
        }
    }

    /** Several coils of a slot: each shifted coil has the place of its neighbour, and yet is not it. */
    @Example
    void aShiftedWindingOfSeveralCoilsInASlotIsNotTakenForItsNeighbours() {
        Winding plan = Winding.build(Armature.of(12, 36, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<ListedCoil> rows = rows(plan);
        rows.replaceAll(c -> new ListedCoil(
                c.coil(), c.topSlot(), c.bottomSlot(), moved(plan, c.topBar(), 1), moved(plan, c.bottomBar(), 1)));
        Drawing page = OverlayDrawings.connections(
                        DrawingView.DEVELOPED, plan, comparison(plan, rows, false), ViewOptions.of("Mill"))
                .first();
        assertThat(ends(page, Role.FOUND_LEAD)).hasSize(36);
        assertThat(ends(page, Role.PLANNED_LEAD)).containsEntry(2, List.of(2, 3));
    }

    @Example
    void theSameListIsAllQuiet() {
        Drawing page = developed(rows(LAP));
        assertThat(ends(page, Role.PLANNED_LEAD)).isEmpty();
        assertThat(ends(page, Role.FOUND_LEAD)).isEmpty();
        assertThat(page.texts()).extracting(Shape.Text::text).contains("the connections are as planned");
    }

    @Property(tries = 40)
    void anyCoilIsCutOutLegibly(
            @ForAll("names") String name,
            @ForAll("views") DrawingView view,
            @ForAll PageFormat format,
            @ForAll boolean cut,
            @ForAll Random random) {
        Winding w = ALL.get(name);
        List<Coil> live = w.coils();
        Coil c = live.get(random.nextInt(live.size()));
        int bars = w.armature().bars();
        int first = 1 + random.nextInt(bars);
        List<Integer> bridge = random.nextBoolean()
                ? List.of()
                : List.of(first, w.armature().wrapBar(first + 1 + random.nextInt(bars - 1)));
        var cutOut = new CutOut(c.number(), cut, List.of(live.get(0).number()), bridge);
        DrawingPages pages = OverlayDrawings.cutOut(
                view, w, cutOut, ViewOptions.of("Any").withFormat(format).withRotorAngle(random.nextInt(360)));
        sound(pages);
        List<String> words = new ArrayList<>();
        pages.pages().forEach(p -> p.texts().forEach(t -> words.add(t.text())));
        assertThat(words).anyMatch(t -> t.startsWith("EMERGENCY MEASURE"));
        if (!bridge.isEmpty()) {
            assertThat(words).contains("bridge " + bridge.get(0) + "–" + bridge.get(1));
        }
        long leads = List.of(c.topBar(), c.bottomBar()).stream()
                .filter(OptionalInt::isPresent)
                .count();
        assertThat(words.stream().filter("lift"::equals).count()).isGreaterThanOrEqualTo(leads);
        assertThat(words.stream().anyMatch(t -> t.endsWith("cut"))).isEqualTo(cut);
    }

    @Example
    void theJumperJoinsItsBars() {
        var plan = EmergencyRepair.of(LAP, 4, EmergencyRepair.Trouble.SHORTED);
        assertThat(plan.best().bridge()).containsExactly(4, 5);
        var cutOut = new CutOut(4, true, plan.best().lost(), plan.best().bridge());
        Drawing page = OverlayDrawings.cutOut(DrawingView.DEVELOPED, LAP, cutOut, ViewOptions.of("Mill"))
                .first();
        Shape.Group jumper = groups(page).stream()
                .filter(g -> g.roles().contains(Role.BRIDGE))
                .findFirst()
                .orElseThrow();
        List<Integer> joined = new ArrayList<>();
        for (Shape s : jumper.shapes()) {
            if (s instanceof Shape.Circle c) {
                joined.add(page.nearest(c.middle(), 0)
                        .filter(e -> e.kind() == Element.Kind.BAR)
                        .orElseThrow()
                        .number());
            }
        }
        assertThat(jumper.element()).hasValue(Element.bar(4));
        assertThat(joined).hasSize(2);
        assertThat(ends(page, Role.PLANNED_LEAD)).isEqualTo(Map.of(4, List.of(4, 5)));
    }

    @Example
    void whatDoesNotExistIsRefused() {
        var all = new CutOut(4, false, List.of(), List.of(4, 13));
        assertThatThrownBy(() -> OverlayDrawings.cutOut(DrawingView.ROUND, LAP, all, ViewOptions.of("")))
                .hasMessage("there is no bar 13: bars run from 1 to 12");
        assertThatThrownBy(() -> OverlayDrawings.cutOut(
                        DrawingView.ROUND, LAP, new CutOut(40, false, List.of(), List.of()), ViewOptions.of("")))
                .hasMessageContaining("there is no coil 40");
        assertThatThrownBy(() -> new CutOut(1, false, List.of(), List.of(1))).hasMessageContaining("must join two");
        var none = new Comparison(rows(LAP), List.of(), Optional.empty(), Optional.empty());
        assertThatThrownBy(() -> OverlayDrawings.connections(DrawingView.PATHS, LAP, none, ViewOptions.of("")))
                .hasMessageContaining("choose developed or round");
    }
}
