package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.CoilState;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Weighs every single fault, and every pair of the main kinds, against the readings. */
final class Diagnoser {
    /** Error of a reading expected before any is taken, and how many readings that expectation is worth. */
    private static final double USUAL_NOISE = 0.015;

    private static final double USUAL_WORTH = 4;
    /** Explanations this many times less likely than the best are let go. */
    private static final double LEAST_ODDS = 1e-6;

    private static final double SAME = 1e-6;
    private static final int MOST_PAIRS = 40;
    private static final int SLOT_SHORT_BARS = 250;
    private static final double SURE_SOUND = 0.70;
    private static final double SURE_FAULT = 0.05;

    private final BenchArmature armature;
    private final List<TestRun> runs;
    private final SoundNetwork sound;
    private final List<RunModel> models = new ArrayList<>();
    private final List<Evidence> evidence = new ArrayList<>();
    private final int readings;
    private final boolean grounds;
    private double nothingLikelihood;

    Diagnoser(BenchArmature armature, List<TestRun> runs) {
        this.armature = armature;
        this.runs = runs;
        readings = runs.stream().mapToInt(r -> r.readings().size()).sum();
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
        sound = new SoundNetwork(armature);
        for (TestRun run : runs) {
            models.add(new RunModel(sound, run));
            evidence.add(new Evidence(run.readings()));
        }
        grounds = runs.stream()
                .anyMatch(r -> r.test() instanceof BenchTest.Ground || r.test() instanceof BenchTest.GroundWalk);
    }

    private void check() {
        int bars = armature.winding().armature().bars();
        for (TestRun run : runs) {
            boolean toShaft = run.test() instanceof BenchTest.Ground || run.test() instanceof BenchTest.GroundWalk;
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

    /** One explanation being weighed. */
    private static final class Weighed {
        final List<Fault> faults;
        final double logWeight;
        final double[][] predicted;
        final List<Evidence.Fit> fits;
        double mass;

        Weighed(List<Fault> faults, double logWeight, double[][] predicted, List<Evidence.Fit> fits) {
            this.faults = faults;
            this.logWeight = logWeight;
            this.predicted = predicted;
            this.fits = fits;
        }
    }

    Diagnosis diagnose() {
        List<Weighed> all = new ArrayList<>();
        Weighed nothing = weigh(List.of(), Math.log(Priors.SOUND), 0);
        nothingLikelihood = nothing.logWeight - Math.log(Priors.SOUND) - 0.5 * Math.log(readings);
        all.add(nothing);
        Map<String, Integer> seen = new LinkedHashMap<>();
        for (Candidate c : candidates()) {
            Weighed w = best(c);
            all.add(w);
            seen.merge(c.kind(), same(w, nothing) ? 0 : 1, Integer::sum);
        }
        double best = all.stream().mapToDouble(w -> w.logWeight).max().orElseThrow();
        all.addAll(pairs(best, List.copyOf(all)));
        return report(all, nothing, seen);
    }

    // ---- candidates -------------------------------------------------------------------------------------------------

    private List<Candidate> candidates() {
        List<Candidate> out = new ArrayList<>();
        List<Coil> live = armature.winding().liveCoils().stream()
                .filter(c -> armature.coil(c.number()).connected())
                .toList();
        double m = Math.max(1, live.size());
        int bars = armature.winding().armature().bars();
        for (Coil c : live) {
            int n = c.number();
            out.addAll(onCoil(n, m));
            out.add(Candidate.fixed(new Fault.ReversedCoil(n), Priors.REVERSED / m));
            for (int off : new int[] {-2, -1, 1, 2}) {
                int top = armature.winding().armature().wrapBar(c.topBar().getAsInt() + off);
                int bottom = armature.winding().armature().wrapBar(c.bottomBar().getAsInt() + off);
                double prior = Priors.WRONG_BAR / (Math.abs(off) == 1 ? 6 : 12) / m;
                if (bars > 4) {
                    out.add(Candidate.fixed(new Fault.WrongBar(n, true, top), prior));
                    out.add(Candidate.fixed(new Fault.WrongBar(n, false, bottom), prior));
                }
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
        if (bars <= SLOT_SHORT_BARS) {
            out.addAll(slotShorts(live));
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

    private List<Candidate> slotShorts(List<Coil> live) {
        List<int[]> touching = new ArrayList<>();
        Map<Integer, List<Integer>> bottoms = new LinkedHashMap<>();
        for (Coil c : live) {
            bottoms.computeIfAbsent(c.bottom().slot(), x -> new ArrayList<>()).add(c.number());
        }
        for (Coil c : live) {
            for (int other : bottoms.getOrDefault(c.top().slot(), List.of())) {
                if (other != c.number()) {
                    touching.add(new int[] {c.number(), other});
                }
            }
        }
        List<Candidate> out = new ArrayList<>();
        double[] alongs = {0.1, 0.3, 0.5, 0.7, 0.9};
        for (int[] t : touching) {
            for (double along : alongs) {
                out.add(Candidate.slotShort(t[0], along, t[1], Priors.SLOT_SHORT / touching.size() / alongs.length));
            }
        }
        return out;
    }

    // ---- weighing ---------------------------------------------------------------------------------------------------

    private double[][] predict(List<Fault> faults) {
        double[][] out = new double[models.size()][];
        Optional<Candidate.Altered> alterations = Candidate.alterations(armature, faults);
        boolean far = faults.isEmpty() || alterations.isPresent();
        for (int r = 0; r < out.length; r++) {
            RunModel model = models.get(r);
            if (faults.isEmpty()) {
                out[r] = model.expected();
                continue;
            }
            if (model.quick() && far) {
                Optional<double[]> quick = model.predict(
                        alterations.orElseThrow().list(),
                        alterations.orElseThrow().alone());
                if (quick.isPresent()) {
                    out[r] = quick.get();
                    continue;
                }
            }
            if (faults.size() == 1 && faults.get(0) instanceof Fault.Ground ground) {
                Optional<double[]> grounded = model.grounded(ground.place());
                if (grounded.isPresent()) {
                    out[r] = grounded.get();
                    continue;
                }
            }
            out[r] = model.quick() || touches(model, faults) ? model.slow(faulty(faults)) : model.expected();
        }
        return out;
    }

    /** Whether a test to the shaft or with the compass sees these faults at all. */
    private boolean touches(RunModel model, List<Fault> faults) {
        boolean ground = faults.stream().anyMatch(Fault.Ground.class::isInstance);
        if (model.run().test() instanceof BenchTest.Polarity) {
            return faults.stream()
                    .anyMatch(f -> f instanceof Fault.ReversedCoil
                            || f instanceof Fault.CrossedLeads
                            || f instanceof Fault.WrongBar
                            || f instanceof Fault.OpenCoil
                            || f instanceof Fault.ShortedCoil
                            || f instanceof Fault.BarShort);
        }
        return ground;
    }

    private BenchArmature faulty(List<Fault> faults) {
        BenchArmature out = armature;
        for (Fault f : faults) {
            out = f.in(out);
        }
        return out;
    }

    private Weighed weigh(List<Fault> faults, double logPrior, int sizes) {
        double[][] predicted = predict(faults);
        List<Evidence.Fit> plain = new ArrayList<>();
        List<Evidence.Fit> robust = new ArrayList<>();
        for (int r = 0; r < predicted.length; r++) {
            Evidence e = evidence.get(r);
            plain.add(e.fit(predicted[r]));
            robust.add(e.fitWithoutWorst(predicted[r]));
        }
        double logSizes = -sizes * 0.5 * Math.log(readings);
        double a = logLikelihood(plain);
        double b = logLikelihood(robust);
        return b > a
                ? new Weighed(faults, logPrior + logSizes + b, predicted, robust)
                : new Weighed(faults, logPrior + logSizes + a, predicted, plain);
    }

    /** Student's t: normal errors whose size is not known but expected to be about {@value #USUAL_NOISE}. */
    private double logLikelihood(List<Evidence.Fit> fits) {
        double squares = USUAL_WORTH * USUAL_NOISE * USUAL_NOISE;
        int count = 0;
        double slips = 0;
        for (Evidence.Fit f : fits) {
            squares += f.squares();
            count += f.count();
            if (f.slip() >= 0) {
                double spread = f.likeSlip() ? 1 : 20;
                slips += Math.log(Priors.SLIP / 2 / readings / spread);
            }
        }
        return t(count, squares) + slips;
    }

    private static double t(int count, double squares) {
        double half = (count + USUAL_WORTH) / 2;
        return logGamma(half) - count / 2.0 * Math.log(Math.PI) - half * Math.log(squares);
    }

    /** Stirling's series, good to 1e-10 over 2. */
    private static double logGamma(double x) {
        double shift = 0;
        double y = x;
        while (y < 8) {
            shift -= Math.log(y);
            y++;
        }
        double r = 1 / (y * y);
        return shift
                + (y - 0.5) * Math.log(y)
                - y
                + 0.5 * Math.log(2 * Math.PI)
                + (1 / 12.0 - r * (1 / 360.0 - r * (1 / 1260.0 - r / 1680.0))) / y;
    }

    /** The best size of a candidate: a coarse look over its range, then a golden section. */
    private Weighed best(Candidate c) {
        double logPrior = Math.log(c.prior());
        if (!c.sized()) {
            return weigh(List.of(c.fault().apply(0)), logPrior, 0);
        }
        int steps = 4;
        Weighed best = null;
        int at = 0;
        for (int i = 0; i <= steps; i++) {
            Weighed w = weigh(List.of(c.fault().apply((double) i / steps)), logPrior, 1);
            if (best == null || w.logWeight > best.logWeight) {
                best = w;
                at = i;
            }
        }
        double low = Math.max(0, (at - 1.0) / steps);
        double high = Math.min(1, (at + 1.0) / steps);
        // No size on the way does better than no fault at all: no finer look.
        if (best.logWeight - logPrior < nothingLikelihood + 0.5) {
            return best;
        }
        Weighed fine =
                Golden.best(low, high, 26, x -> weigh(List.of(c.fault().apply(x)), logPrior, 1), w -> w.logWeight);
        return fine.logWeight > best.logWeight ? fine : best;
    }

    // ---- pairs of faults --------------------------------------------------------------------------------------------

    /** Two bars with the candidates that act between them. */
    private record Place(int from, int to, List<Candidate> candidates) {}

    private List<Place> places() {
        Map<String, List<Candidate>> by = new LinkedHashMap<>();
        Map<String, int[]> bars = new LinkedHashMap<>();
        List<Coil> live = armature.winding().liveCoils();
        double m = Math.max(1, live.size());
        for (Coil c : live) {
            CoilState state = armature.coil(c.number());
            if (state.connected() && !state.topBar().equals(state.bottomBar())) {
                int a = state.topBar().getAsInt();
                int b = state.bottomBar().getAsInt();
                String key = Math.min(a, b) + "-" + Math.max(a, b);
                bars.putIfAbsent(key, new int[] {a, b});
                List<Candidate> list = by.computeIfAbsent(key, x -> new ArrayList<>());
                onCoil(c.number(), m).stream()
                        .filter(x -> !x.kind().equals("wrong-turns"))
                        .forEach(list::add);
            }
        }
        int k = armature.winding().armature().bars();
        for (int bar = 1; bar <= k && k > 2; bar++) {
            int next = armature.winding().armature().wrapBar(bar + 1);
            String key = Math.min(bar, next) + "-" + Math.max(bar, next);
            bars.putIfAbsent(key, new int[] {bar, next});
            by.computeIfAbsent(key, x -> new ArrayList<>())
                    .add(Candidate.fixed(new Fault.BarShort(bar, next), Priors.BAR_SHORT / k));
        }
        List<Place> out = new ArrayList<>();
        by.forEach((key, list) -> out.add(new Place(bars.get(key)[0], bars.get(key)[1], list)));
        return out;
    }

    private List<Weighed> pairs(double bestSoFar, List<Weighed> singles) {
        List<Place> places = places();
        PairScreen screen = PairScreen.of(
                models,
                evidence,
                places.stream().map(p -> new int[] {p.from(), p.to()}).toList());
        if (screen.empty() && unexplained(singles).isEmpty()) {
            return List.of();
        }
        double most = Math.log(Priors.SECOND * 0.1 * 0.1 / places.size() / places.size());
        double base = USUAL_WORTH * USUAL_NOISE * USUAL_NOISE;
        // No pair can weigh more than with squares as small as the screen allows.
        double needed = bestSoFar - most + Math.log(1e-3);
        int count = readings;
        double half = (count + USUAL_WORTH) / 2;
        double limit = Math.exp((logGamma(half) - count / 2.0 * Math.log(Math.PI) - needed) / half) - base;
        List<Rough> rough = new ArrayList<>();
        double best = bestSoFar;
        for (PairScreen.Hit hit : screen.best(limit, MOST_PAIRS)) {
            if (most + t(count, base + hit.squares()) < best + Math.log(1e-3)) {
                break;
            }
            for (Candidate a : places.get(hit.first()).candidates()) {
                for (Candidate b : places.get(hit.second()).candidates()) {
                    Rough r = rough(a, b, PAIR_SIZES, PAIR_SIZES);
                    rough.add(r);
                    best = Math.max(best, r.weighed().logWeight);
                }
            }
        }
        for (Weighed single : unexplained(singles)) {
            addBeside(single, places, rough);
        }
        rough.sort(Comparator.comparingDouble((Rough r) -> -r.weighed().logWeight));
        List<Weighed> out = new ArrayList<>();
        int finer = 0;
        for (Rough r : rough) {
            boolean look = r.sized() && finer < MOST_FINE;
            finer += look ? 1 : 0;
            out.add(look ? refine(r) : r.weighed());
        }
        out.sort(Comparator.comparingDouble((Weighed w) -> -w.logWeight));
        for (Weighed w : List.copyOf(out.subList(0, Math.min(2, out.size())))) {
            out.addAll(likes(w, places));
        }
        return out;
    }

    private static final double[] PAIR_SIZES = {0.03, 0.2, 0.4, 0.6, 0.85};
    private static final int MOST_FINE = 12;
    private static final int MOST_BESIDE = 4;
    /** A single fault that leaves more than this relative error is not alone. */
    private static final double TOO_MUCH = 0.025;

    /** Two candidates at the best of a few sizes. */
    private record Rough(Candidate a, Candidate b, double x, double y, Weighed weighed) {
        boolean sized() {
            return a.sized() || b.sized();
        }
    }

    private Weighed weigh(Candidate a, double x, Candidate b, double y) {
        return weigh(
                List.of(a.fault().apply(x), b.fault().apply(y)),
                Math.log(Priors.SECOND * a.prior() * b.prior()),
                (a.sized() ? 1 : 0) + (b.sized() ? 1 : 0));
    }

    private Rough rough(Candidate a, Candidate b, double[] sizesOfA, double[] sizesOfB) {
        double[] none = {0};
        Rough best = null;
        for (double x : a.sized() ? sizesOfA : none) {
            for (double y : b.sized() ? sizesOfB : none) {
                Weighed w = weigh(a, x, b, y);
                if (best == null || w.logWeight > best.weighed().logWeight) {
                    best = new Rough(a, b, x, y, w);
                }
            }
        }
        return best;
    }

    /** The likeliest single faults of the main kinds, where the likeliest leaves more error than a meter makes. */
    private List<Weighed> unexplained(List<Weighed> singles) {
        List<Weighed> sorted = singles.stream()
                .filter(w -> w.faults.size() == 1)
                .sorted(Comparator.comparingDouble((Weighed w) -> -w.logWeight))
                .toList();
        if (sorted.isEmpty() || noise(sorted.get(0)) < TOO_MUCH) {
            return List.of();
        }
        return sorted.stream()
                .filter(w -> w.faults.get(0) instanceof Fault.OpenCoil
                        || w.faults.get(0) instanceof Fault.ShortedCoil
                        || w.faults.get(0) instanceof Fault.ShortedTurns
                        || w.faults.get(0) instanceof Fault.HighResistance
                        || w.faults.get(0) instanceof Fault.BarShort)
                .limit(MOST_BESIDE)
                .toList();
    }

    /** Every second fault beside a first, for runs that the screen does not see. */
    private void addBeside(Weighed single, List<Place> places, List<Rough> rough) {
        Fault first = single.faults.get(0);
        for (Place own : places) {
            for (Candidate a : own.candidates()) {
                boolean it = a.kind().equals(first.kind())
                        && a.fault().apply(0.5).coils().equals(first.coils())
                        && a.fault().apply(0.5).bars().equals(first.bars());
                if (!it) {
                    continue;
                }
                for (Place place : places) {
                    for (Candidate b : place.equals(own) ? List.<Candidate>of() : place.candidates()) {
                        rough.add(rough(a, b, PAIR_SIZES, PAIR_SIZES));
                    }
                }
            }
        }
    }

    private Weighed refine(Rough r) {
        double[] x = {r.x(), r.y()};
        Weighed top = r.weighed();
        double reach = 0.25;
        for (int round = 0; round < 5; round++) {
            for (int side = 0; side < 2; side++) {
                if (!(side == 0 ? r.a() : r.b()).sized()) {
                    continue;
                }
                int s = side;
                double[] here = x.clone();
                double[] found = new double[1];
                Weighed w = Golden.best(
                        Math.max(0, x[s] - reach),
                        Math.min(1, x[s] + reach),
                        14,
                        v -> weigh(r.a(), s == 0 ? v : here[0], r.b(), s == 1 ? v : here[1]),
                        q -> q.logWeight,
                        found);
                if (w.logWeight > top.logWeight) {
                    top = w;
                    x[s] = found[0];
                }
            }
            reach /= 2.5;
        }
        return top;
    }

    /** The same pair with one or both faults of fixed size told by their like between the same two bars. */
    private List<Weighed> likes(Weighed pair, List<Place> places) {
        List<Weighed> out = new ArrayList<>();
        for (Candidate a : at(pair.faults.get(0), places)) {
            for (Candidate b : at(pair.faults.get(1), places)) {
                Fault first = a.sized() ? pair.faults.get(0) : a.fault().apply(0);
                Fault second = b.sized() ? pair.faults.get(1) : b.fault().apply(0);
                List<Fault> faults = List.of(first, second);
                if (!faults.equals(pair.faults)) {
                    int sizes = (a.sized() ? 1 : 0) + (b.sized() ? 1 : 0);
                    out.add(weigh(faults, Math.log(Priors.SECOND * a.prior() * b.prior()), sizes));
                }
            }
        }
        return out;
    }

    private static List<Candidate> at(Fault fault, List<Place> places) {
        for (Place p : places) {
            boolean here = p.candidates().stream().anyMatch(c -> {
                Fault f = c.fault().apply(0.5);
                return f.kind().equals(fault.kind())
                        && f.coils().equals(fault.coils())
                        && f.bars().equals(fault.bars());
            });
            if (here) {
                return p.candidates().stream()
                        .filter(c -> !c.sized() || c.kind().equals(fault.kind()))
                        .toList();
            }
        }
        return List.of();
    }

    // ---- report -----------------------------------------------------------------------------------------------------

    /** Whether two explanations read the same in every run, but for a run's scale, which is not known. */
    private boolean same(Weighed a, Weighed b) {
        for (int r = 0; r < a.predicted.length; r++) {
            if (!proportional(a.predicted[r], b.predicted[r])) {
                return false;
            }
        }
        return true;
    }

    static boolean proportional(double[] x, double[] y) {
        double xx = 0;
        double xy = 0;
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            if (Double.isInfinite(x[i]) || Double.isInfinite(y[i])) {
                if (x[i] != y[i]) {
                    return false;
                }
            } else {
                xx += x[i] * x[i];
                xy += x[i] * y[i];
                most = Math.max(most, Math.abs(y[i]));
            }
        }
        if (xx == 0 || most == 0) {
            return xx == 0 && most == 0;
        }
        double scale = xy / xx;
        if (scale <= 0) {
            return false;
        }
        double slack = SAME * Math.max(most, 1e-300);
        for (int i = 0; i < x.length; i++) {
            if (!Double.isInfinite(x[i]) && Math.abs(scale * x[i] - y[i]) > slack) {
                return false;
            }
        }
        return true;
    }

    private Diagnosis report(List<Weighed> all, Weighed nothing, Map<String, Integer> seen) {
        double best = all.stream().mapToDouble(w -> w.logWeight).max().orElseThrow();
        List<Weighed> kept = new ArrayList<>();
        double total = 0;
        for (Weighed w : all) {
            w.mass = Math.exp(w.logWeight - best);
            total += w.mass;
            if (w.mass >= LEAST_ODDS) {
                kept.add(w);
            }
        }
        kept.sort(Comparator.comparingDouble((Weighed w) -> -w.mass));
        List<List<Weighed>> groups = new ArrayList<>();
        List<Weighed> soundGroup = new ArrayList<>(List.of(nothing));
        for (Weighed w : kept) {
            if (w == nothing) {
                continue;
            }
            if (same(w, nothing)) {
                soundGroup.add(w);
                continue;
            }
            Optional<List<Weighed>> home =
                    groups.stream().filter(g -> same(w, g.get(0))).findFirst();
            if (home.isPresent()) {
                home.get().add(w);
            } else {
                groups.add(new ArrayList<>(List.of(w)));
            }
        }
        double sum = total;
        double soundProbability = soundGroup.stream().mapToDouble(w -> w.mass).sum() / sum;
        groups.sort(Comparator.comparingDouble(
                g -> -g.stream().mapToDouble(w -> w.mass).sum()));
        List<Diagnosis.Explanation> ranked = new ArrayList<>();
        for (List<Weighed> g : groups) {
            double p = g.stream().mapToDouble(w -> w.mass).sum() / sum;
            ranked.add(new Diagnosis.Explanation(g.get(0).faults, p, distinct(g), because(g.get(0), nothing)));
        }
        boolean soundFirst =
                ranked.isEmpty() || soundProbability >= ranked.get(0).probability();
        Weighed likeliest = soundFirst ? nothing : groups.get(0).get(0);
        List<String> unseen = seen.entrySet().stream()
                .filter(e -> e.getValue() == 0)
                .map(Map.Entry::getKey)
                .toList();
        Set<String> blind = new LinkedHashSet<>(unseen);
        if (!grounds) {
            blind.add("ground");
        }
        Diagnosis.Verdict verdict = soundProbability >= SURE_SOUND
                ? Diagnosis.Verdict.SOUND
                : soundProbability <= SURE_FAULT ? Diagnosis.Verdict.FAULTY : Diagnosis.Verdict.UNCLEAR;
        return new Diagnosis(
                armature,
                runs,
                verdict,
                soundProbability,
                ranked,
                List.copyOf(blind),
                suspects(likeliest),
                noise(likeliest),
                likeliest.fits.stream().map(Evidence.Fit::gain).toList(),
                likeliest.faults);
    }

    private static List<List<Fault>> distinct(List<Weighed> group) {
        Set<List<Fault>> out = new LinkedHashSet<>();
        group.stream().skip(1).forEach(w -> out.add(w.faults));
        out.remove(group.get(0).faults);
        return List.copyOf(out);
    }

    private double noise(Weighed w) {
        double squares = 0;
        int count = 0;
        for (Evidence.Fit f : w.fits) {
            squares += f.squares();
            count += f.count();
        }
        return Math.sqrt(squares / Math.max(1, count - models.size()));
    }

    private List<Diagnosis.Because> because(Weighed w, Weighed nothing) {
        record Scored(double score, Diagnosis.Because because) {}
        List<Scored> scored = new ArrayList<>();
        for (int r = 0; r < models.size(); r++) {
            Evidence e = evidence.get(r);
            double gain = w.fits.get(r).gain();
            for (int i = 0; i < e.size(); i++) {
                if (w.fits.get(r).slip() == i) {
                    continue;
                }
                double gainBySound = e.square(nothing.predicted[r], gain, i) - e.square(w.predicted[r], gain, i);
                scored.add(new Scored(
                        gainBySound,
                        new Diagnosis.Because(
                                runs.get(r).test(),
                                runs.get(r).readings().get(i),
                                nothing.predicted[r][i] * gain,
                                w.predicted[r][i] * gain)));
            }
        }
        return scored.stream()
                .filter(s -> s.score() > 0)
                .sorted(Comparator.comparingDouble((Scored s) -> -s.score()))
                .limit(3)
                .map(Scored::because)
                .toList();
    }

    private List<Diagnosis.Suspect> suspects(Weighed w) {
        List<Diagnosis.Suspect> out = new ArrayList<>();
        for (int r = 0; r < models.size(); r++) {
            Evidence e = evidence.get(r);
            Evidence.Fit fit = w.fits.get(r);
            double[] squares = new double[e.size()];
            for (int i = 0; i < squares.length; i++) {
                squares[i] = e.square(w.predicted[r], fit.gain(), i);
            }
            double[] sorted = squares.clone();
            Arrays.sort(sorted);
            double usual = Math.max(sorted[sorted.length / 2], USUAL_NOISE * USUAL_NOISE);
            for (int i = 0; i < squares.length; i++) {
                if (i == fit.slip() || squares[i] > 64 * usual) {
                    PairReading reading = runs.get(r).readings().get(i);
                    double should = w.predicted[r][i] * fit.gain();
                    out.add(new Diagnosis.Suspect(runs.get(r).test(), reading, should, advice(reading, should)));
                }
            }
        }
        return out;
    }

    private static String advice(PairReading reading, double should) {
        double ratio = reading.value() / should;
        String again = "; read this pair again";
        for (double slip : new double[] {10, 100, 1000}) {
            if (Math.abs(ratio / slip - 1) < 0.15) {
                return "about " + (int) slip + " times too much: a decimal point or a meter range?" + again;
            }
            if (Math.abs(ratio * slip - 1) < 0.15) {
                return "about " + (int) slip + " times too little: a decimal point or a meter range?" + again;
            }
        }
        if (Math.abs(ratio + 1) < 0.15) {
            return "the wrong sign: probes changed over?" + again;
        }
        return "it fits no fault that explains the others" + again;
    }
}
