package coilwright.lesson;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerBlade;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.Procedures;
import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.circuit.CurrentPath;
import coilwright.circuit.Step;
import coilwright.circuit.WindingGraph;
import coilwright.drawing.Drawing;
import coilwright.drawing.Highlight;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Finding;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The rules of winding one after the other, each explained on a small invented armature. */
public final class Walk {
    private static final WindingSpec.Regular LAP = WindingSpec.lap(1, Direction.PROGRESSIVE);
    private static final WindingSpec.Regular WAVE = WindingSpec.wave(1, Direction.PROGRESSIVE);
    private static final Armature TWO_POLES = Armature.of(8, 8, 2);
    private static final Armature WAVE_CORE = Armature.of(7, 7, 4);

    private Walk() {}

    /** {@return all chapters in order} */
    public static List<Chapter> chapters() {
        return List.of(
                coil(),
                coilThrow(),
                lap(),
                wave(),
                direction(),
                feasible(),
                deadCoil(),
                plex(),
                reEntrancy(),
                equalizers(),
                brushes(),
                growler());
    }

    private static Chapter chapter(String title, Chapter.Step... steps) {
        return new Chapter(title, List.of(), List.of(steps));
    }

    private static Chapter.Step words(String words) {
        return new Chapter.Step(words, Optional.empty());
    }

    private static Chapter.Step shown(String words, Drawing drawing) {
        return new Chapter.Step(words, Optional.of(drawing));
    }

    private static Chapter coil() {
        Winding w = Winding.build(TWO_POLES, LAP);
        Coil c = w.coil(1);
        return chapter(
                "What a coil is",
                words("The armature of this chapter has " + Made.core(TWO_POLES)
                        + ". Look at its commutator end: slots, bars and"
                        + " coils count clockwise from 1, and slot 1 stands in line with bar 1. The drawings roll it out"
                        + " flat, back end above, commutator below."),
                shown(
                        "A coil is a loop of one turn or many. One side lies at the top of a slot, next to the air gap (drawn"
                                + " solid), the other at the floor of another slot (dashed). Its two leads go to two"
                                + " bars. Coil 1, so called after the slot of its top side, lies in slots "
                                + sides(c) + ", its leads on bars " + bars(c) + ".",
                        Pictures.firstCoils(w, List.of(1))),
                shown(
                        "The next coil lies one slot further: coil 2 in slots " + sides(w.coil(2))
                                + ". Where a slot holds a"
                                + " top side of one coil and a bottom side of another, it has two layers, and is full: "
                                + TWO_POLES.slots() + " slots take " + w.coils().size() + " coils.",
                        Pictures.firstCoils(w, List.of(1, 2))));
    }

    private static Chapter coilThrow() {
        Winding full = Winding.build(TWO_POLES, LAP);
        Winding chorded = Winding.build(TWO_POLES, LAP.withSpan(CoilSpan.ofThrow(3)));
        return chapter(
                "The throw",
                shown(
                        "A coil gives most when one side stands under a north pole while the other stands under a south pole:"
                                + " it spans a pole pitch, slots over poles = 8/2 = "
                                + Figures.number(TWO_POLES.polePitchSlots())
                                + " slots. The trade counts the first slot as"
                                + " 1: coil throw " + thrown(full) + ".",
                        Pictures.firstCoils(full, List.of(1))),
                shown(
                        "Where the pole pitch is not whole, round it down. A slot less than a pole pitch saves copper at the"
                                + " ends and loses little: with throw " + thrown(chorded) + ", "
                                + finding(chorded, "throw-against-pole-pitch") + ".",
                        Pictures.firstCoils(chorded, List.of(1))),
                words(
                        "Longer than a pole pitch by a slot or more costs copper and gains nothing; shorter than two thirds"
                                + " loses voltage."));
    }

    private static Chapter lap() {
        Winding w = Winding.build(TWO_POLES, LAP);
        List<Chapter.Step> steps = new ArrayList<>();
        steps.add(
                words("In a lap winding the end of each coil comes back to the bar beside its beginning: the commutator"
                        + " pitch is " + Figures.signed(commutator(w)) + ". On the armature of " + Made.core(TWO_POLES)
                        + " with coil throw " + thrown(w) + ":"));
        steps.addAll(closing(w, 4));
        steps.add(words("The back pitch Yb = 2 × " + w.pitches().orElseThrow().backSpan() + " + 1 = "
                + w.pitches().orElseThrow().back() + " conductors and the front pitch "
                + w.pitches().orElseThrow().front()
                + " differ by 2: one bar. There are as many parallel paths as poles,"
                + " here " + w.parallelPaths().orElseThrow() + "."));
        return new Chapter("The lap winding", List.of(), steps);
    }

    /** Coil by coil along the circuit, each drawn with those before it, then the last one. */
    private static List<Chapter.Step> closing(Winding w, int singly) {
        List<Step> circuit = WindingGraph.of(w).circuits().get(0).steps();
        List<Chapter.Step> out = new ArrayList<>();
        List<Integer> laid = new ArrayList<>();
        for (int i = 0; i < circuit.size(); i++) {
            Step s = circuit.get(i);
            laid.add(s.coil().number());
            if (i < singly) {
                out.add(shown(passed(i + 1, s), Pictures.firstCoils(w, laid)));
            }
        }
        Step last = circuit.get(circuit.size() - 1);
        String between = circuit.size() - singly > 1
                ? "So it goes on, coil by coil: " + order(circuit.subList(singly, circuit.size() - 1)) + ". "
                : "";
        out.add(shown(
                between + passed(circuit.size(), last) + " Bar " + last.toBar()
                        + " is where the first coil began: the winding closes after " + circuit.size()
                        + " coils, and every bar has one top and one bottom lead.",
                Pictures.developed(w, List.of(last.coil().number()), false)));
        return out;
    }

    private static String order(List<Step> steps) {
        return steps.stream()
                .map(s -> "coil " + s.coil().number() + " to bar " + s.toBar())
                .collect(Collectors.joining(", "));
    }

    private static String passed(int place, Step s) {
        return "Coil no. " + place + " of the walk: coil " + s.coil().number() + " leads from bar " + s.fromBar()
                + " through slots " + sides(s.coil()) + " to bar " + s.toBar() + ".";
    }

    private static Chapter wave() {
        Winding w = Winding.build(WAVE_CORE, WAVE);
        List<Chapter.Step> steps = new ArrayList<>();
        int p = WAVE_CORE.polePairs();
        steps.add(words(
                "In a wave winding the end of each coil goes on to a bar about two pole pitches away, and the next coil"
                        + " lies under the next pair of poles. On " + Made.core(WAVE_CORE) + " the commutator pitch is"
                        + " (bars + 1) over pole pairs = (" + WAVE_CORE.bars() + " + 1)/" + p + " = " + commutator(w)
                        + ":"));
        steps.addAll(closing(w, 3));
        steps.add(
                words("After " + p + " coils, once round, it has come to the bar beside the first: bar 1 + " + p + " × "
                        + commutator(w) + " = " + (1 + p * commutator(w)) + ", that is bar "
                        + WAVE_CORE.wrapBar(1 + p * commutator(w)) + ". Between two neighbouring bars lie " + p
                        + " coils in series. There are two parallel paths, whatever the number of poles."));
        return new Chapter("The wave winding", List.of(), steps);
    }

    private static Chapter direction() {
        Winding lap = Winding.build(TWO_POLES, LAP);
        Winding lapBack = Winding.build(TWO_POLES, WindingSpec.lap(1, Direction.RETROGRESSIVE));
        Winding waveBack = Winding.build(WAVE_CORE, WindingSpec.wave(1, Direction.RETROGRESSIVE));
        Winding wave = Winding.build(WAVE_CORE, WAVE);
        return chapter(
                "Progressive and retrogressive",
                shown(
                        "A lap winding is progressive when a coil ends one bar beyond its beginning: coil 1 from bar 1 to bar "
                                + lap.coil(1).bottomBar().getAsInt() + ".",
                        Pictures.firstCoils(lap, List.of(1))),
                shown(
                        "It is retrogressive when it ends one bar before: commutator pitch "
                                + Figures.signed(commutator(lapBack)) + ", from bar 1 to bar "
                                + lapBack.coil(1).bottomBar().getAsInt()
                                + ". The two leads cross, and the machine turns the other way for the same current.",
                        Pictures.firstCoils(lapBack, List.of(1))),
                shown(
                        "A wave winding counts once round: progressive when it comes to the bar beyond the first. With pitch "
                                + commutator(wave) + ": bars 1, " + round(wave) + ".",
                        Pictures.firstCoils(wave, firstRound(wave))),
                shown(
                        "Retrogressive when it comes to the bar before. With pitch (" + WAVE_CORE.bars() + " − 1)/"
                                + WAVE_CORE.polePairs() + " = " + commutator(waveBack) + ": bars 1, " + round(waveBack)
                                + ".",
                        Pictures.firstCoils(waveBack, firstRound(waveBack))));
    }

    private static List<Step> once(Winding w) {
        return WindingGraph.of(w)
                .circuits()
                .get(0)
                .steps()
                .subList(0, w.armature().polePairs());
    }

    private static String round(Winding w) {
        return once(w).stream().map(s -> Integer.toString(s.toBar())).collect(Collectors.joining(", "));
    }

    private static List<Integer> firstRound(Winding w) {
        return once(w).stream().map(s -> s.coil().number()).toList();
    }

    private static Chapter feasible() {
        Armature even = Armature.of(8, 8, 4);
        List<Finding> broken = Rules.blocking(even, WAVE);
        Winding stuck = Winding.build(
                even,
                new WindingSpec.Listed(List.of(
                        coilwright.winding.ListedCoil.of(1, 1, 3, 1, 5),
                        coilwright.winding.ListedCoil.of(5, 5, 7, 5, 1))));
        return chapter(
                "When a wave can be wound",
                words(
                        "A wave must not come back to its first bar before it has met them all, but to the bar beside it: pole"
                                + " pairs times commutator pitch must be bars + 1 or bars − 1. So (bars ± 1) over pole pairs must"
                                + " be a whole number."),
                shown(
                        "On " + Made.core(even)
                                + " it is not: (8 + 1)/2 = 4.5, (8 − 1)/2 = 3.5. Try pitch 4: from bar 1"
                                + " through coil 1 to bar 5, through coil 5 to bar 9, that is bar 1. It closes after two"
                                + " coils and leaves the others out.",
                        Pictures.developed(stuck, List.of(5), false)),
                words("As the rule has it: " + broken.get(0).message() + "."),
                words(
                        "On 4 poles the number of bars must be odd, on 6 poles a multiple of 3 and 1 more or 1 less, and so on."
                                + " A lap winding closes with any number of bars."));
    }

    private static Chapter deadCoil() {
        Armature a = Armature.of(8, 15, 4);
        WindingSpec.Regular spec = WAVE.withDeadCoils(List.of(16));
        Winding w = Winding.build(a, spec);
        return chapter(
                "The dead coil",
                words(
                        "With two coil sides per slot and layer, 8 slots hold 16 coils. On 4 poles 16 bars cannot be stepped,"
                                + " (16 ± 1)/2 is not whole; 15 bars can: (15 + 1)/2 = " + commutator(w)
                                + ". One coil then has no bar."),
                shown(
                        "It is wound all the same, for balance: " + finding(w, "dead-coil-use")
                                + ". The live coils count on past it as if it were not there.",
                        Pictures.developed(w, List.of(16), false)));
    }

    private static Chapter plex() {
        Armature a = Armature.of(10, 10, 2);
        Winding w = Winding.build(a, WindingSpec.lap(2, Direction.PROGRESSIVE));
        List<Integer> first = WindingGraph.of(w).circuits().get(0).steps().stream()
                .map(s -> s.coil().number())
                .toList();
        return chapter(
                "Plex",
                shown(
                        "A duplex lap winding steps two bars at a time. On " + Made.core(a) + ", commutator pitch "
                                + Figures.signed(commutator(w)) + ", the walk from bar 1 takes coils "
                                + Figures.list(first) + " and closes: half of the winding.",
                        Pictures.firstCoils(w, first)),
                shown(
                        "A second winding of the same kind lies between. Both are fed by brushes at least two bars wide: "
                                + finding(w, "brush-width") + ". There are poles × plex = 2 × 2 = "
                                + w.parallelPaths().orElseThrow() + " parallel paths.",
                        Pictures.developed(w, first, true)),
                words(
                        "Triplex steps three bars, and so on. A wave of plex m has the pitch (bars ± m) over pole pairs and 2 × m"
                                + " paths."));
    }

    private static Chapter reEntrancy() {
        Armature a = Armature.of(9, 9, 2);
        Winding w = Winding.build(a, WindingSpec.lap(2, Direction.PROGRESSIVE));
        List<Step> circuit = WindingGraph.of(w).circuits().get(0).steps();
        List<Integer> half =
                circuit.subList(0, 5).stream().map(s -> s.coil().number()).toList();
        return chapter(
                "Re-entrancy",
                words(
                        "How many closed circuits there are is the greatest number that divides both bars and commutator pitch:"
                                + " with 10 bars and pitch 2 it is 2, doubly re-entrant, as in the chapter before."),
                shown(
                        "With " + Made.core(a) + " and the same pitch it is 1: " + finding(w, "re-entrancy")
                                + ". The walk takes coils " + Figures.list(half) + " once round and comes to bar "
                                + circuit.get(4).toBar() + ", not to bar 1;",
                        Pictures.firstCoils(w, half)),
                shown(
                        "it goes round once more, through the coils between, before it closes. On the bench one circuit or two"
                                + " makes the difference: in the first all bars are joined, in the second every other bar"
                                + " reads open.",
                        Pictures.developed(w, half, false)));
    }

    private static Chapter equalizers() {
        Armature a = Armature.of(12, 12, 4);
        Winding w = Winding.build(a, LAP);
        List<List<Integer>> rings = WindingGraph.of(w).equipotentialBars();
        List<Integer> first = rings.get(0);
        return chapter(
                "Equalizers",
                words(
                        "In a lap winding each path lies under its own pair of poles. If the air gap is not the same everywhere, the"
                                + " paths differ in voltage, and current goes round through the brushes."),
                shown(
                        "On " + Made.core(a) + " bars two pole pitches apart, bars over pole pairs = 12/2 = "
                                + w.equalizerPitch().orElseThrow() + ", should stand at one potential: bars "
                                + Figures.list(first) + ", marked, and so on, " + rings.size()
                                + " pairs. Rings behind the commutator join them, and the current goes that way.",
                        Pictures.developed(w, new Highlight(Set.of(), new TreeSet<>(first), Set.of()), false)),
                words("As the rule has it: " + finding(w, "equalizers")
                        + ". A simplex wave has but two paths, which pass under all"
                        + " poles alike, and needs none."));
    }

    private static Chapter brushes() {
        Armature a = Armature.of(12, 12, 4);
        Winding w = Winding.build(a, LAP);
        BrushGear gear = BrushGear.at(w, 0, 1);
        Coil c = w.coil(1);
        String places = gear.brushes().stream()
                .map(b -> b.sign() + " at " + Figures.degrees(b.angle()))
                .collect(Collectors.joining(", "));
        CurrentPath path = gear.paths().get(0);
        Winding wave = Winding.build(WAVE_CORE, WAVE);
        return chapter(
                "Brushes",
                words(
                        "A brush shorts a coil whenever it touches both its bars. That does no harm while the coil's sides stand"
                                + " between the poles, its middle under the centre of a pole. So: bring a coil's middle under a"
                                + " pole centre, and put the brush on the middle between its two bars."),
                shown(
                        "On " + Made.core(a) + " coil 1 lies in slots " + sides(c) + ", its middle at "
                                + Figures.degrees(a.slotCentre(c.top().slot())
                                        + w.pitches().orElseThrow().meanThrow() / 2 * a.slotAngle())
                                + "; its bars " + bars(c) + " have their middle at "
                                + Figures.degrees(a.barAngle() / 2) + ". The brushes therefore stand "
                                + Figures.degrees(Math.abs(gear.neutral().fromPoleCentre()))
                                + (gear.neutral().fromPoleCentre() < 0 ? " before" : " beyond")
                                + " the pole centres: " + places + ".",
                        Pictures.developed(w, List.of(1), true)),
                words(
                        "A lap winding has a brush for every pole, + and − in turn, and as many paths. Path 1 here: coils "
                                + Figures.list(path.steps().stream()
                                        .map(s -> s.coil().number())
                                        .toList())
                                + " from brush " + brush(gear, path.fromBrush()) + " to brush "
                                + brush(gear, path.toBrush())
                                + "."),
                shown(
                        "A wave winding, here " + Made.core(WAVE_CORE)
                                + ", joins the coils under all poles of one kind, so two brushes are the least that will"
                                + " do; more share the current.",
                        Pictures.developed(wave, List.of(), true)));
    }

    private static String brush(BrushGear gear, int number) {
        Brush b = gear.brushes().get(number - 1);
        return number + " (" + b.sign() + ")";
    }

    private static Chapter growler() {
        Winding w = Winding.build(TWO_POLES, LAP);
        BenchArmature sound = BenchArmature.sound(w, 1);
        BenchArmature shorted = new Fault.ShortedCoil(3).in(sound);
        var test = new BenchTest.GrowlerWalked(Growler.USUAL, 0);
        List<PairReading> read = test.readWalk(sound);
        List<GrowlerMeter.Placed> best = GrowlerMeter.of(sound, Growler.USUAL).best(0);
        List<Integer> felt = GrowlerBlade.slots(shorted, Growler.USUAL);
        Coil bad = w.coil(3);
        PairReading first = best.get(0).reading();
        return new Chapter(
                "The growler",
                Procedures.growlerMeterWalked(w).cautions(),
                List.of(
                        shown(
                                "A growler is an alternating magnet. Its flux goes into the armature through one face and out"
                                        + " through the other, and every coil that encloses some of it has a voltage. Here an armature of "
                                        + Made.core(TWO_POLES)
                                        + " stands with slot 1 straight up; the meter is on bars "
                                        + first.from() + " and " + first.to() + ".",
                                Pictures.growler(w, 0, first.pair(), true)),
                        words("The coil between bars 1 and 2 has its sides at " + Figures.degrees(0) + " and "
                                + Figures.degrees(4 * TWO_POLES.slotAngle())
                                + ". Walked round from bar to bar, with 1 for the whole flux of one face, the meter reads "
                                + read.stream()
                                        .map(r -> r.from() + "–" + r.to() + ": " + Figures.fixed(r.value(), 2))
                                        .collect(Collectors.joining(", "))
                                + ". A sound armature reads differently by place: compare with the sheet, or hold the"
                                + " probes still and turn the armature, so that every pair reads alike."),
                        words("If coil 3, in slots " + sides(bad) + " and on bars " + bars(bad)
                                + ", is shorted, that pair reads nothing, and a current goes round in the coil: a steel blade"
                                + " hums over slots " + Figures.list(felt)
                                + ", those of its two sides, when they stand between the faces."),
                        words(
                                "An open coil lets no current go round, so the blade lies still; the drop test finds it: all the"
                                        + " feed's voltage stands across its two bars.")));
    }

    private static String sides(Coil c) {
        return c.top().slot() + " and " + c.bottom().slot();
    }

    private static String bars(Coil c) {
        return c.topBar().getAsInt() + " and " + c.bottomBar().getAsInt();
    }

    private static int commutator(Winding w) {
        return w.pitches().orElseThrow().commutator();
    }

    private static String thrown(Winding w) {
        return w.pitches().orElseThrow().coilThrow();
    }

    private static String finding(Winding w, String rule) {
        return Rules.check(w).stream()
                .filter(f -> f.rule().equals(rule))
                .map(Finding::message)
                .findFirst()
                .orElseThrow();
    }
}
