package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.CoilState;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Weighs every single fault, and every pair of the main kinds, against the readings. */
final class Diagnoser {
    private static final int COARSE = 8;
    private static final int FINE = 24;
    private static final double[] SLOT_SHORT_PLACES = {0.1, 0.3, 0.5, 0.7, 0.9};
    private static final int MOST_SLOT_SHORTS_FINE = 6;

    private final BenchArmature armature;
    private final List<TestRun> runs;
    private final Weigher weigher;
    private final boolean grounds;

    Diagnoser(BenchArmature armature, List<TestRun> runs) {
        this.armature = armature;
        this.runs = runs;
        int readings = runs.stream().mapToInt(r -> r.readings().size()).sum();
        if (readings < 3) {
            throw new IllegalArgumentException(
                    "there are " + readings + " readings, but a diagnosis needs at least 3: read more pairs");
        }
        check();
        if (runs.stream().flatMap(r -> r.readings().stream()).allMatch(r -> r.value() == 0)) {
            throw new IllegalArgumentException(
                    "every reading is 0: see that the supply is on, the feed touches the bars and"
                            + " the meter's range is right, and read again");
        }
        weigher = new Weigher(armature, runs);
        grounds = runs.stream().anyMatch(Diagnoser::toShaft);
    }

    static boolean toShaft(TestRun run) {
        return run.test() instanceof BenchTest.Ground || run.test() instanceof BenchTest.GroundWalk;
    }

    private void check() {
        int bars = armature.winding().armature().bars();
        for (TestRun run : runs) {
            boolean toShaft = toShaft(run);
            for (PairReading r : run.readings()) {
                int least = toShaft ? 0 : 1;
                if (r.from() < least || r.to() < least || r.from() > bars || r.to() > bars || r.from() == r.to()) {
                    throw new IllegalArgumentException("a reading lies between " + r.from() + " and " + r.to()
                            + ", but bars run from 1 to " + bars + (toShaft ? " and the shaft" : ""));
                }
                if (Double.isNaN(r.value())) {
                    throw new IllegalArgumentException(
                            "the reading between " + r.from() + " and " + r.to() + " is not a number");
                }
            }
        }
    }

    Diagnosis diagnose() {
        List<Weighed> all = new ArrayList<>();
        Weighed nothing = weigher.weigh(List.of(), Math.log(Priors.SOUND), 0);
        var report = new Report(armature, runs, weigher, nothing);
        all.add(nothing);
        Map<String, Boolean> seen = new LinkedHashMap<>();
        List<Candidate> candidates = candidates();
        List<Weighed> weighed = candidates.parallelStream()
                .map(c -> c.sized() ? best(c) : weigher.weigh(List.of(c.fault().apply(0)), Math.log(c.prior()), 0))
                .toList();
        all.addAll(weighed);
        for (int i = 0; i < candidates.size(); i++) {
            Candidate c = candidates.get(i);
            Weighed w = weighed.get(i);
            boolean shown = seen.getOrDefault(c.kind(), false);
            seen.put(c.kind(), shown || !report.same(w, nothing));
        }
        List<Weighed> slotShorts = slotShorts();
        if (!slotShorts.isEmpty()) {
            seen.put("slot-short", slotShorts.stream().anyMatch(w -> !report.same(w, nothing)));
        }
        all.addAll(slotShorts);
        Weighed best =
                all.stream().max(Comparator.comparingDouble(Weighed::logWeight)).orElseThrow();
        all.addAll(new PairSearch(armature, weigher, places(), best).search(groundShown()));
        List<String> unseen = new ArrayList<>();
        seen.forEach((kind, shown) -> {
            if (!shown) {
                unseen.add(kind);
            }
        });
        if (!grounds) {
            unseen.add("ground");
        }
        return report.of(all, unseen);
    }

    /** Whether a reading to the shaft shows that something is joined to it. */
    private boolean groundShown() {
        return runs.stream()
                .filter(Diagnoser::toShaft)
                .flatMap(r -> r.readings().stream())
                .anyMatch(r -> r.value() != 0 && !Double.isInfinite(r.value()));
    }

    // ---- candidates -------------------------------------------------------------------------------------------------

    private List<Coil> live() {
        return live(armature);
    }

    /** Coils with both leads on bars. */
    static List<Coil> live(BenchArmature armature) {
        return armature.winding().liveCoils().stream()
                .filter(c -> armature.coil(c.number()).connected())
                .toList();
    }

    private List<Candidate> candidates() {
        List<Candidate> out = new ArrayList<>();
        List<Coil> live = live();
        double m = Math.max(1, live.size());
        int bars = armature.winding().armature().bars();
        for (Coil c : live) {
            int n = c.number();
            out.addAll(onCoil(n, m));
            out.add(Candidate.fixed(new Fault.ReversedCoil(n), Priors.REVERSED / m));
            // On few bars, two to one side is where one or two to the other side is.
            for (int off : bars > 4 ? new int[] {-2, -1, 1, 2} : bars > 2 ? new int[] {-1, 1} : new int[0]) {
                int top = armature.winding().armature().wrapBar(c.topBar().getAsInt() + off);
                int bottom = armature.winding().armature().wrapBar(c.bottomBar().getAsInt() + off);
                double prior = Priors.WRONG_BAR / (Math.abs(off) == 1 ? 6 : 12) / m;
                out.add(Candidate.fixed(new Fault.WrongBar(n, true, top), prior));
                out.add(Candidate.fixed(new Fault.WrongBar(n, false, bottom), prior));
            }
            if (grounds) {
                out.add(Candidate.groundedCoil(n, Priors.GROUND / 2 / m));
            }
        }
        for (int bar = 1; bar <= bars; bar++) {
            int next = armature.winding().armature().wrapBar(bar + 1);
            if (bar == next || (bars == 2 && bar == 2)) {
                continue;
            }
            out.add(Candidate.fixed(new Fault.BarShort(bar, next), Priors.BAR_SHORT / bars));
            for (Fault.Leads leads : Fault.Leads.values()) {
                out.add(Candidate.fixed(new Fault.CrossedLeads(bar, next, leads), Priors.CROSSED / 3 / bars));
            }
            if (grounds) {
                out.add(Candidate.fixed(new Fault.Ground(Point.bar(bar)), Priors.GROUND / 2 / bars));
            }
        }
        return out;
    }

    private List<Candidate> onCoil(int n, double m) {
        CoilState c = armature.coil(n);
        List<Candidate> out = new ArrayList<>();
        out.add(Candidate.fixed(new Fault.OpenCoil(n), Priors.OPEN / m));
        if (!c.topBar().equals(c.bottomBar())) {
            out.add(Candidate.fixed(new Fault.ShortedCoil(n), Priors.SHORTED_COIL / m));
        }
        out.add(Candidate.shortedTurns(n, Priors.SHORTED_TURNS / m));
        out.add(Candidate.highResistance(n, armature.soundOhms(), Priors.HIGH_RESISTANCE / m));
        out.add(Candidate.fewTurns(n, Priors.WRONG_TURNS / 2 / m));
        out.add(Candidate.manyTurns(n, Priors.WRONG_TURNS / 2 / m));
        return out;
    }

    /** Two coils, the first with its top side in the slot where the second has its bottom side. */
    private record Touching(int first, int second) {}

    /** Coils that touch in a slot, every two that share one: a coarse look at where along them, then a finer one. */
    private List<Weighed> slotShorts() {
        List<Coil> live = live();
        Map<Integer, List<Integer>> bottoms = new LinkedHashMap<>();
        for (Coil c : live) {
            bottoms.computeIfAbsent(c.bottom().slot(), x -> new ArrayList<>()).add(c.number());
        }
        List<Touching> touching = new ArrayList<>();
        for (Coil c : live) {
            for (int other : bottoms.getOrDefault(c.top().slot(), List.of())) {
                if (other != c.number()) {
                    touching.add(new Touching(c.number(), other));
                }
            }
        }
        double logPrior = Math.log(Priors.SLOT_SHORT / Math.max(1, touching.size()));
        record Found(Touching coils, TwoSizes.Rough rough) {}
        List<Found> found = touching.parallelStream()
                .map(coils -> new Found(
                        coils,
                        TwoSizes.coarse(
                                SLOT_SHORT_PLACES, SLOT_SHORT_PLACES, (x, y) -> slotShort(coils, x, y, logPrior))))
                .sorted(Comparator.comparingDouble(
                        (Found f) -> -f.rough().weighed().logWeight()))
                .toList();
        List<Weighed> out = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            Found f = found.get(i);
            out.add(
                    i < MOST_SLOT_SHORTS_FINE
                            ? TwoSizes.fine(f.rough(), true, true, (x, y) -> slotShort(f.coils(), x, y, logPrior))
                            : f.rough().weighed());
        }
        return out;
    }

    private Weighed slotShort(Touching coils, double x, double y, double logPrior) {
        var fault = new Fault.SlotShort(coils.first(), Candidate.along(x), coils.second(), Candidate.along(y));
        return weigher.weigh(List.of(fault), logPrior, 2);
    }

    /** The best size of a candidate: a coarse look over its range, then a golden section. */
    private Weighed best(Candidate c) {
        double logPrior = Math.log(c.prior());
        if (c.kind().equals("ground") && !groundShown()) {
            return weigher.weigh(List.of(c.fault().apply(0.5)), logPrior, 1);
        }
        return Weigher.bestSize(worth -> best(c, logPrior, worth));
    }

    private Weighed best(Candidate c, double logPrior, ToDoubleFunction<Weighed> worth) {
        Weighed best = null;
        int at = 0;
        for (int i = 0; i <= COARSE; i++) {
            Weighed w = weigher.weigh(List.of(c.fault().apply((double) i / COARSE)), logPrior, 1);
            if (best == null || worth.applyAsDouble(w) > worth.applyAsDouble(best)) {
                best = w;
                at = i;
            }
        }
        Weighed fine = Golden.best(
                Math.max(0, (at - 1.0) / COARSE),
                Math.min(1, (at + 1.0) / COARSE),
                FINE,
                x -> weigher.weigh(List.of(c.fault().apply(x)), logPrior, 1),
                worth);
        return worth.applyAsDouble(fine) > worth.applyAsDouble(best) ? fine : best;
    }

    /** Every two bars that a coil or a mica segment lies between, with the main kinds of fault there. */
    private List<Place> places() {
        Map<List<Integer>, List<Place.Mode>> modes = new LinkedHashMap<>();
        Map<List<Integer>, List<Candidate>> shorts = new LinkedHashMap<>();
        List<Coil> live = live();
        double m = Math.max(1, live.size());
        for (Coil c : live) {
            CoilState state = armature.coil(c.number());
            if (!state.topBar().equals(state.bottomBar())) {
                List<Integer> bars =
                        ordered(state.topBar().getAsInt(), state.bottomBar().getAsInt());
                List<Candidate> breaks = new ArrayList<>();
                for (Candidate x : onCoil(c.number(), m)) {
                    switch (x.kind()) {
                        case "open-coil", "high-resistance" -> breaks.add(x);
                        case "shorted-coil", "shorted-turns" ->
                            shorts.computeIfAbsent(bars, b -> new ArrayList<>()).add(x);
                        default -> {
                            // A wrong number of turns is no main kind.
                        }
                    }
                }
                modes.computeIfAbsent(bars, b -> new ArrayList<>()).add(new Place.Mode(c.number(), breaks));
            }
        }
        int k = armature.winding().armature().bars();
        for (int bar = 1; bar <= k && k > 2; bar++) {
            int next = armature.winding().armature().wrapBar(bar + 1);
            // Bars of different circuits are looked at by themselves.
            if (weigher.sound().joined(bar, next)) {
                shorts.computeIfAbsent(ordered(bar, next), b -> new ArrayList<>())
                        .add(Candidate.fixed(new Fault.BarShort(bar, next), Priors.BAR_SHORT / k));
            }
        }
        shorts.forEach((bars, list) ->
                modes.computeIfAbsent(bars, b -> new ArrayList<>()).add(0, new Place.Mode(0, list)));
        List<Place> out = new ArrayList<>();
        modes.forEach((bars, list) -> out.add(new Place(bars.get(0), bars.get(1), list)));
        return out;
    }

    private static List<Integer> ordered(int a, int b) {
        return List.of(Math.min(a, b), Math.max(a, b));
    }
}
