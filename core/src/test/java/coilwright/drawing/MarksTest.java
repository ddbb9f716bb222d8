package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.KeptText;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import coilwright.fault.ConnectionCheck;
import coilwright.rewind.Conductor;
import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotShape;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Small drawings mark by mark, each looked at on paper when it was set down. Other tests say what must hold of every
 * drawing; these hold every line and word of some. Where a change of a drawing is meant, {@link #main} writes the files
 * anew: look at the pictures then, and at what differs.
 */
class MarksTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Winding MICA = Winding.build(
            new Armature(6, 12, 2, SlotAlignment.MICA),
            WindingSpec.lap(1, Direction.RETROGRESSIVE).withLeadOffset(2));
    private static final Winding FROG =
            Winding.build(Armature.of(4, 8, 2), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));

    /** A drawing, and what was seen in it. */
    private record Look(String seen, DrawingPages pages) {
        Look(String seen, Drawing page) {
            this(seen, DrawingPages.of(page));
        }
    }

    private static Map<String, Supplier<Look>> all() {
        Map<String, Supplier<Look>> out = new LinkedHashMap<>();
        sketches(out);
        charts(out);
        sections(out);
        views(out);
        overlays(out);
        renumbered(out);
        bench(out);
        crowded(out);
        return out;
    }

    private static void sketches(Map<String, Supplier<Look>> out) {
        Palette p = Palette.COLOUR;
        out.put(
                "sketch-coil-throw",
                () -> new Look(
                        "a coil from the solid side in slot 1 to the dashed side at the floor of slot 5: four slots on",
                        MeasuringSketches.coilThrow(p)));
        out.put(
                "sketch-lead-throw",
                () -> new Look(
                        "the lead ends on bar 4, three bars clockwise of bar 1 under slot 1",
                        MeasuringSketches.leadThrow(p)));
        out.put(
                "sketch-alignment",
                () -> new Look(
                        "the centre line of slot 1 meets bar 1 at the left and the mica before bar 1 at the right",
                        MeasuringSketches.alignment(p)));
        out.put(
                "sketch-core",
                () -> new Look(
                        "each letter stands at an arrow as long as what its words name; H spans the end turns, B the teeth",
                        MeasuringSketches.core(p)));
        out.put(
                "sketch-micrometer",
                () -> new Look(
                        "v closes on the bare wire, w on the circle of the covering around it",
                        MeasuringSketches.micrometer(p)));
        out.put(
                "sketch-mica",
                () -> new Look("m between two bars, n from the bars down to the mica", MeasuringSketches.mica(p)));
        out.put(
                "sketch-slot-rectangular",
                () -> new Look(
                        "straight walls, no e, no r", MeasuringSketches.slot(MeasuringSketches.Slot.RECTANGULAR, p)));
        out.put(
                "sketch-slot-parallel-tooth",
                () -> new Look(
                        "walls that lean inwards, e at the floor, r at a corner",
                        MeasuringSketches.slot(MeasuringSketches.Slot.PARALLEL_TOOTH, p)));
        out.put(
                "sketch-slot-round-bottom",
                () -> new Look(
                        "a half circle as floor, no r",
                        MeasuringSketches.slot(MeasuringSketches.Slot.ROUND_BOTTOM, p)));
        out.put(
                "sketch-slot-semi-closed",
                () -> new Look(
                        "a over the opening, b the lip, c the shoulder, f from the shoulder down",
                        MeasuringSketches.slot(MeasuringSketches.Slot.SEMI_CLOSED, p)));
    }

    private static void charts(Map<String, Supplier<Look>> out) {
        RunOut oval = TraceChartTest.readings(
                16, b -> b == 5 ? Double.NaN : 0.1 * Math.cos(2 * Math.PI * (b - 3) / 16) + (b == 12 ? 0.06 : 0));
        for (TruingCut.Centring centring : TruingCut.Centring.values()) {
            TruingCut cut = TruingCut.plan(oval, centring, 40, 0.01, OptionalDouble.of(38));
            boolean recentred = centring == TruingCut.Centring.RECENTRED;
            out.put(
                    "trace-" + (recentred ? "recentred" : "as-read"),
                    () -> new Look(
                            recentred
                                    ? "the tool follows the dashed circle, 10 µm under the lowest bar 13"
                                    : "the tool runs straight, 10 µm under the lowest bar 11; bar 5 is not read, 12 boxed",
                            TraceChart.pages(new TraceChart.Data("Oval", oval, Optional.of(cut)), Palette.COLOUR)));
        }
        out.put(
                "trace-begun",
                () -> new Look(
                        "10, 20, 30, 40 µm about their mean of 25, no circle",
                        TraceChart.begun(
                                "",
                                TraceChartTest.readings(12, b -> b < 5 ? 0.01 * b : Double.NaN),
                                Palette.MONOCHROME)));
        double open = Double.POSITIVE_INFINITY;
        out.put(
                "readings",
                () -> new Look(
                        "bars up to 40 and 80, down to −60, dots at 41.5 and (3–2 turned round) 12, crosses at 40 and 11, ∞ twice",
                        ReadingsChart.pages(
                                new ReadingsChart.Data(
                                        "Drop",
                                        "mV",
                                        true,
                                        List.of(
                                                new PairReading(1, 2, 40),
                                                new PairReading(2, 3, 80),
                                                new PairReading(3, 4, -60),
                                                new PairReading(4, 0, open),
                                                new PairReading(5, 1, 0)),
                                        List.of(
                                                new PairReading(1, 2, 41.5),
                                                new PairReading(3, 2, -12),
                                                new PairReading(3, 4, open),
                                                new PairReading(4, 0, 30)),
                                        List.of(
                                                new PairReading(1, 2, 40),
                                                new PairReading(2, 3, 11),
                                                new PairReading(4, 0, open))),
                                Palette.COLOUR)));
    }

    private static void sections(Map<String, Supplier<Look>> out) {
        out.put(
                "section-round-wire",
                () -> new Look(
                        "9 and 10 have room, 8 and 8 lie there; separator between, wedge under the opening",
                        SlotSection.of(
                                new SlotSection.Data(
                                        "Round",
                                        new SlotShape.SemiClosed(2.5, 0.8, 1, 8, 5.5, 16, 1),
                                        new SlotInsulation(0.25, 0.3, 1.2),
                                        SlotSectionTest.wire(1.9, 2, 1),
                                        8),
                                Palette.COLOUR)));
        out.put(
                "section-strip",
                () -> new Look(
                        "three strips of 1.5 mm fit beside one another in 5.4 mm; all ten stand on the separator or the floor",
                        SlotSection.of(
                                new SlotSection.Data(
                                        "",
                                        new SlotShape.Rectangular(6, 20),
                                        new SlotInsulation(0.3, 0.4, 1),
                                        new Conductor.Strip(4, 1.5, 0.2, 0.1),
                                        5),
                                Palette.MONOCHROME)));
        out.put(
                "section-too-full",
                () -> new Look(
                        "six and six of 9 a layer lie there, walls lean inwards by 1 mm a side",
                        SlotSection.of(
                                new SlotSection.Data(
                                        "Full",
                                        new SlotShape.ParallelTooth(6, 4, 12, 0.5),
                                        SlotInsulation.NONE,
                                        SlotSectionTest.wire(1.88, 1.9, 1),
                                        9),
                                Palette.COLOUR)));
    }

    private static void views(Map<String, Supplier<Look>> out) {
        ViewOptions plain = ViewOptions.of("Small");
        out.put(
                "developed-lap",
                () -> new Look(
                        "coil 1 from slot 1 to slot 4 and from bar 1 to bar 2, brushes of three bars' distance",
                        DrawingView.DEVELOPED.draw(LAP, plain)));
        out.put(
                "developed-mica",
                () -> new Look(
                        "coil 4, slot 3 and bar 7 heavy; brushes of one and a half bars, poles 20° to the left",
                        DrawingView.DEVELOPED.draw(
                                MICA,
                                ViewOptions.of("")
                                        .withRotorAngle(20)
                                        .withBrushWidth(1.5)
                                        .withPalette(Palette.MONOCHROME)
                                        .withHighlight(new Highlight(Set.of(4), Set.of(7), Set.of(3))))));
        out.put(
                "developed-frog-leg",
                () -> new Look(
                        "two coils of each set a slot, numbers of the second above those of the first",
                        DrawingView.DEVELOPED.draw(FROG, plain)));
        out.put(
                "round-lap",
                () -> new Look(
                        "coil 1 from slot 1 to slot 4, its leads on bars 1 and 2, four brushes 90° apart",
                        DrawingView.ROUND.draw(LAP, plain)));
        out.put(
                "round-mica",
                () -> new Look(
                        "the whole turned by 20° clockwise under still poles; coil 4, slot 3 and bar 7 heavy",
                        DrawingView.ROUND.draw(
                                MICA,
                                ViewOptions.of("")
                                        .withRotorAngle(20)
                                        .withBrushWidth(1.5)
                                        .withHighlight(new Highlight(Set.of(4), Set.of(7), Set.of(3))))));
        out.put(
                "round-frog-leg",
                () -> new Look(
                        "two coils of each set a slot, the second with double lines",
                        DrawingView.ROUND.draw(FROG, plain)));
        out.put(
                "round-broken",
                () -> new Look(
                        "ends in the air at coils 6 and 11, coil 9 on one bar, coil 10 in one slot",
                        DrawingView.ROUND.draw(SampleWindings.broken(), plain)));
        out.put(
                "developed-broken",
                () -> new Look(
                        "the same rolled out; coil 3 leans the other way",
                        DrawingView.DEVELOPED.draw(SampleWindings.broken(), plain)));
        out.put("coil-lap", () -> new Look("throw 1–4, leads 0 and 1 bar right", DrawingView.COIL.draw(LAP, plain)));
        out.put(
                "coil-mica",
                () -> new Look(
                        "slot 2 is in line with the mica after bar 2, so bars 5 and 4 are 2½ and 1½ right",
                        DrawingView.COIL.draw(MICA, plain.withCoil(3))));
        out.put(
                "coil-left",
                () -> new Look(
                        "leads 6 and 5 bars to the left, their words pushed to the edge",
                        DrawingView.COIL.draw(
                                Winding.build(
                                        Armature.of(8, 24, 2),
                                        WindingSpec.lap(1, Direction.PROGRESSIVE)
                                                .withLeadOffset(-7)),
                                plain.withCoil(5))));
        out.put(
                "coil-dead",
                () -> new Look(
                        "both leads end in the air",
                        DrawingView.COIL.draw(
                                SampleWindings.broken(), ViewOptions.of("").withCoil(11))));
        out.put(
                "paths-lap",
                () -> new Look(
                        "four paths of one coil, eight coils under brushes",
                        DrawingView.PATHS.draw(LAP, plain.withBrushWidth(1.5))));
        out.put(
                "paths-broken",
                () -> new Look(
                        "coils on no path, a dead one and one with a single lead by themselves",
                        DrawingView.PATHS.draw(SampleWindings.broken(), ViewOptions.of(""))));
        out.put(
                "growler-lap",
                () -> new Look(
                        "probes on bars 4 and 5, where coil 4 of slots 4 and 7 takes the right face's flux",
                        DrawingView.GROWLER.draw(LAP, plain)));
        out.put(
                "growler-mica",
                () -> new Look(
                        "slot 1 at 35°; probes where they were put, arc of 35° at the top",
                        DrawingView.GROWLER.draw(
                                MICA,
                                ViewOptions.of("")
                                        .withRotorAngle(35)
                                        .withHighlight(new Highlight(Set.of(4), Set.of(7), Set.of(3)))
                                        .withBench(GrowlerBench.usual().withProbes(2, 5)))));
    }

    private static void overlays(Map<String, Supplier<Look>> out) {
        List<ListedCoil> found = new ArrayList<>(LAP.asListed().coils());
        found.set(2, ListedCoil.of(3, 3, 6, 8, 4));
        found.set(6, ListedCoil.of(7, 6, 10, 7, 8));
        found.set(8, ListedCoil.of(9, 9, 12, 10, 9));
        found.remove(10);
        found.add(ListedCoil.of(2, 2, 5, 6, 7));
        Comparison comparison = OverlayDrawingsTest.comparison(LAP, found, false);
        ViewOptions plain = ViewOptions.of("Found");
        for (DrawingView view : List.of(DrawingView.DEVELOPED, DrawingView.ROUND)) {
            out.put(
                    "found-" + view.word(),
                    () -> new Look(
                            "coil 3 from bar 8, 7 from slot 6, 9 changed over; coil 11 planned only, coil 2 found twice",
                            OverlayDrawings.connections(view, LAP, comparison, plain)));
            out.put(
                    "cut-out-" + view.word(),
                    () -> new Look(
                            "coil 5 cut, both leads lifted, bars 5 and 6 joined, coil 8 idle",
                            OverlayDrawings.cutOut(view, LAP, new CutOut(5, true, List.of(8), List.of(5, 6)), plain)));
        }
    }

    /** Lists in numbers of their own, of a winding with a dead coil. */
    private static void renumbered(Map<String, Supplier<Look>> out) {
        Winding w = Winding.build(
                Armature.of(12, 11, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(6)));
        List<ListedCoil> other = Winding.build(
                        w.armature(),
                        WindingSpec.lap(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(6)))
                .asListed()
                .coils();
        var way = new ConnectionCheck.Alignment(4, 6, true, false, 0);
        for (boolean wrongWay : new boolean[] {false, true}) {
            List<ListedCoil> found = new ArrayList<>();
            for (ListedCoil c : wrongWay ? other : w.asListed().coils()) {
                found.add(new ListedCoil(
                        13 - c.coil(),
                        way.slot(w.armature(), c.topSlot()),
                        way.slot(w.armature(), c.bottomSlot()),
                        bar(w, way, c.topBar()),
                        bar(w, way, c.bottomBar())));
            }
            found.set(1, new ListedCoil(11, 3, 12, OptionalInt.of(5), OptionalInt.of(9)));
            found.set(9, ListedCoil.of(40, 7, 4, 11, 8));
            found.add(found.get(7));
            found.remove(3);
            for (DrawingView view : List.of(DrawingView.DEVELOPED, DrawingView.ROUND)) {
                out.put(
                        "renumbered-" + view.word() + (wrongWay ? "-wrong-way" : ""),
                        () -> new Look(
                                "the plan under the list's numbers, which run back from slot 4 and bar 6; the lines that"
                                        + " differ, one twice, one only planned",
                                OverlayDrawings.connections(
                                        view, w, OverlayDrawingsTest.comparison(w, found, true), ViewOptions.of(""))));
            }
        }
    }

    private static OptionalInt bar(Winding w, ConnectionCheck.Alignment way, OptionalInt bar) {
        return bar.isPresent() ? OptionalInt.of(way.bar(w.armature(), bar.getAsInt())) : bar;
    }

    private static void bench(Map<String, Supplier<Look>> out) {
        ViewOptions plain = ViewOptions.of("");
        out.put("bench-growler", () -> new Look("the same without words", BenchPicture.growler(LAP, plain, 25)));
        out.put("bench-blade", () -> new Look("the blade over slot 1, no probes", BenchPicture.blade(LAP, plain, 25)));
        out.put(
                "bench-drop",
                () -> new Look(
                        "current in at bar 1 and out at bar 4, meter on 2 and 3, compass at slot 7",
                        BenchPicture.touched(
                                LAP,
                                new BenchPicture.Touches(
                                        Optional.of(new BenchTest.Pair(1, 4)),
                                        Optional.of(new BenchTest.Pair(2, 3)),
                                        "mV",
                                        OptionalInt.of(7)),
                                Palette.COLOUR,
                                25)));
        out.put(
                "bench-growler-wide",
                () -> new Look(
                        "faces that reach up beside the armature; probes on bars 3 and 11",
                        BenchPicture.growler(
                                LAP,
                                plain.withRotorAngle(75)
                                        .withBench(GrowlerBench.of(new Growler(120, 60))
                                                .withProbes(3, 11)),
                                20)));
        out.put(
                "bench-crowded",
                () -> new Look(
                        "the two ends of the feed pushed apart on neighbouring bars, the leads over the top",
                        BenchPicture.touched(
                                lap24(),
                                new BenchPicture.Touches(
                                        Optional.of(new BenchTest.Pair(6, 5)),
                                        Optional.of(new BenchTest.Pair(22, 3)),
                                        "V",
                                        OptionalInt.of(12)),
                                Palette.COLOUR,
                                20)));
        out.put(
                "bench-ground",
                () -> new Look(
                        "one probe on bar 5, the other on the shaft",
                        BenchPicture.touched(
                                MICA,
                                new BenchPicture.Touches(
                                        Optional.empty(),
                                        Optional.of(new BenchTest.Pair(5, BenchTest.SHAFT)),
                                        "MΩ",
                                        OptionalInt.empty()),
                                Palette.MONOCHROME,
                                25)));
    }

    /** Crowded drawings: which numbers find room, and where. */
    private static void crowded(Map<String, Supplier<Look>> out) {
        Winding six = Winding.build(Armature.of(54, 162, 6), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Winding lap = lap24();
        ViewOptions plain = ViewOptions.of("Crowded");
        ViewOptions a4 = plain.withFormat(PageFormat.A4).withHighlight(new Highlight(Set.of(50), Set.of(7), Set.of(3)));
        out.put(
                "numbers-round",
                () -> new Look(
                        "every fifth bar, every second coil, and those drawn heavily",
                        DrawingView.ROUND.draw(six, a4)));
        out.put(
                "numbers-developed",
                () -> new Look("slots 1 to 54 over pages that lap over", DrawingView.DEVELOPED.draw(six, a4)));
        out.put(
                "numbers-coil",
                () -> new Look(
                        "the coil's own slots and bars, and others where there is room",
                        DrawingView.COIL.draw(six, plain.withCoil(80))));
        out.put(
                "numbers-growler",
                () -> new Look(
                        "every fifth bar, every slot", DrawingView.GROWLER.draw(six, plain.withRotorAngle(200))));
        RunOut long1 = TraceChartTest.readings(
                650, b -> b % 97 == 5 ? Double.NaN : 0.05 * Math.sin(b / 9.0) + (b == 333 ? 0.2 : 0));
        out.put(
                "numbers-trace",
                () -> new Look(
                        "four strips on two pages, bars by fives, 333 the highest",
                        TraceChart.pages(new TraceChart.Data("Long", long1, Optional.empty()), Palette.COLOUR)));
        out.put(
                "numbers-paths",
                () -> new Look(
                        "two paths of 44 coils over four rows each, five coils under brushes",
                        DrawingView.PATHS.draw(
                                Winding.build(Armature.of(31, 93, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)),
                                plain.withFormat(PageFormat.A4).withHighlight(Highlight.ofCoils(5)))));
        Winding twelve = Winding.build(Armature.of(36, 36, 12), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (PageFormat format : PageFormat.values()) {
            out.put(
                    "numbers-paths-" + format.name().toLowerCase(Locale.ROOT),
                    () -> new Look(
                            "twelve paths of three coils; ten of them on the first sheet of A4",
                            DrawingView.PATHS.draw(
                                    twelve, plain.withFormat(format).withHighlight(Highlight.ofCoils(5)))));
        }
        Winding fewLong = Winding.build(Armature.of(61, 61, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        out.put(
                "numbers-paths-wide",
                () -> new Look(
                        "two paths of 28 coils, a row each, five coils under brushes",
                        DrawingView.PATHS.draw(fewLong, plain)));
        List<ListedCoil> found = new ArrayList<>();
        for (ListedCoil c : lap.asListed().coils()) {
            found.add(ListedCoil.of(
                    c.coil(),
                    c.topSlot(),
                    c.bottomSlot(),
                    1 + c.topBar().getAsInt() * 5 % 24,
                    c.bottomBar().getAsInt()));
        }
        out.put(
                "numbers-found",
                () -> new Look(
                        "a tag for every lead that has room within the bars, how many have none beside",
                        OverlayDrawings.connections(
                                DrawingView.ROUND, lap, OverlayDrawingsTest.comparison(lap, found, false), plain)));
    }

    private static Winding lap24() {
        return Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.RETROGRESSIVE));
    }

    private static List<String> texts(Look look) {
        List<String> out = new ArrayList<>();
        look.pages().pages().forEach(p -> out.addAll(Marks.texts(p)));
        return out;
    }

    private static List<String> told(String name, Look look) {
        return name.startsWith("numbers-") ? texts(look) : marks(look);
    }

    private static List<String> marks(Look look) {
        List<String> out = new ArrayList<>();
        look.pages().pages().forEach(p -> out.addAll(Marks.of(p)));
        return out;
    }

    static Stream<String> names() {
        return all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyMarkIsWhereItWasSeen(String name) {
        assertThat(told(name, all().get(name).get()))
                .containsExactlyElementsOf(KeptText.lines(MarksTest.class, "/coilwright/drawing/" + name + ".txt"));
    }

    /** Writes the files, and with a second word the pictures, into folders. */
    public static void main(String[] args) throws IOException {
        for (Map.Entry<String, Supplier<Look>> e : all().entrySet()) {
            Files.write(
                    Path.of(args[0], e.getKey() + ".txt"),
                    told(e.getKey(), e.getValue().get()));
            if (args.length > 1) {
                int n = 0;
                for (Drawing page : e.getValue().get().pages().pages()) {
                    n++;
                    Files.write(
                            Path.of(args[1], e.getKey() + "-" + n + ".png"),
                            coilwright.drawing.export.PngExport.png(page, 90));
                }
            }
        }
    }
}
