package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.CoilState;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the pairs of one run should read on the sound armature, and on it with some alterations. */
final class RunModel {
    /** Rounding leaves less than this of what two joints between the same bars show of each other. */
    private static final double SAME_BARS = 1e-10;

    private final SoundNetwork sound;
    private final TestRun run;
    private final int n;
    private final int[] from;
    private final int[] to;
    private final boolean[] floats;
    private final boolean quick;
    /** Potentials of the bars while reading i is taken; one row for all where the set-up does not change. */
    private final double[][] potentials;
    /** Voltage of each coil while reading i is taken; empty where the coils have none. */
    private final double[][] coilVolts;
    /** The same potentials, bar by bar: those of one bar lie side by side, since alterations run over readings. */
    private final double[][] byBar;
    /** The same voltages, coil by coil. */
    private final double[][] byCoil;
    /** What each reading shows, with its sign, before anything is altered. */
    private final double[] unaltered;

    private final Map<Integer, Integer> coilIndex;
    private final double[] expected;

    RunModel(SoundNetwork sound, TestRun run) {
        this.sound = sound;
        this.run = run;
        n = run.readings().size();
        from = run.readings().stream().mapToInt(PairReading::from).toArray();
        to = run.readings().stream().mapToInt(PairReading::to).toArray();
        coilIndex = new LinkedHashMap<>();
        int index = 0;
        for (Coil c : sound.armature().winding().coils()) {
            coilIndex.put(c.number(), index++);
        }
        BenchTest test = run.test();
        quick = test instanceof BenchTest.Drop || test instanceof BenchTest.Resistance || test.relative();
        floats = floating();
        if (test instanceof BenchTest.Drop drop) {
            potentials = new double[][] {fed(drop.in(), drop.out(), drop.amperes())};
            coilVolts = new double[0][];
        } else if (test instanceof BenchTest.Resistance) {
            potentials = new double[n][];
            for (int i = 0; i < n; i++) {
                potentials[i] = fed(from[i], to[i], 1);
            }
            coilVolts = new double[0][];
        } else if (test instanceof BenchTest.GrowlerWalked walked) {
            potentials = new double[][] {growler(walked.growler(), walked.angle())};
            coilVolts = new double[][] {volts(walked.growler(), walked.angle())};
        } else if (test instanceof BenchTest.GrowlerTurned turned) {
            potentials = new double[n][];
            coilVolts = new double[n][];
            Armature a = sound.armature().winding().armature();
            for (int i = 0; i < n; i++) {
                double angle = turned.clockDegrees() - GrowlerMeter.middle(a, from[i], to[i]);
                potentials[i] = growler(turned.growler(), angle);
                coilVolts[i] = volts(turned.growler(), angle);
            }
        } else {
            potentials = new double[0][];
            coilVolts = new double[0][];
        }
        byBar = transposed(potentials);
        byCoil = transposed(coilVolts);
        unaltered = differences();
        expected = quick ? predict(List.of()).orElseThrow() : slow(sound.armature());
    }

    /** The same run on a network with two bars linked that were in different parts. */
    RunModel(RunModel apart, SoundNetwork linked, Alteration link) {
        sound = linked;
        run = apart.run;
        n = apart.n;
        from = apart.from;
        to = apart.to;
        coilVolts = apart.coilVolts;
        coilIndex = apart.coilIndex;
        quick = apart.quick;
        floats = floating();
        potentials = new double[apart.potentials.length][];
        for (int i = 0; i < potentials.length; i++) {
            if (run.test() instanceof BenchTest.Drop drop) {
                potentials[i] = fed(drop.in(), drop.out(), drop.amperes());
            } else if (run.test() instanceof BenchTest.Resistance) {
                potentials[i] = fed(from[i], to[i], 1);
            } else {
                double[] v = apart.potentials[i].clone();
                double lift = v[link.from()] - v[link.to()];
                if (link.coil() > 0) {
                    lift -= link.drive() / link.conductance() * apart.coil(i, link.coil());
                }
                for (int bar = 1; bar <= sound.bars(); bar++) {
                    v[bar] += apart.sound.joined(bar, link.to()) ? lift : 0;
                }
                potentials[i] = v;
            }
        }
        byBar = transposed(potentials);
        byCoil = apart.byCoil;
        unaltered = differences();
        expected = quick ? predict(List.of()).orElseThrow() : apart.expected;
    }

    private static double[][] transposed(double[][] rows) {
        int columns = rows.length == 0 ? 0 : rows[0].length;
        double[][] out = new double[columns][rows.length];
        for (int i = 0; i < rows.length; i++) {
            for (int c = 0; c < columns; c++) {
                out[c][i] = rows[i][c];
            }
        }
        return out;
    }

    /** Which pairs of a test between bars nothing joins. */
    private boolean[] floating() {
        boolean[] out = new boolean[n];
        for (int i = 0; i < n && quick; i++) {
            out[i] = !sound.joined(from[i], to[i]);
        }
        return out;
    }

    /** What is read where nothing joins the probes. */
    private double nothing() {
        return run.test() instanceof BenchTest.Resistance ? Double.POSITIVE_INFINITY : 0;
    }

    private double[] differences() {
        double[] out = new double[n];
        for (int i = 0; i < n && quick; i++) {
            if (!floats[i]) {
                out[i] = bars(i)[from[i]] - bars(i)[to[i]];
            }
        }
        return out;
    }

    private double[] fed(int in, int out, double amperes) {
        double[] v = new double[sound.bars() + 1];
        if (sound.joined(in, out)) {
            for (int bar = 1; bar <= sound.bars(); bar++) {
                v[bar] = amperes * (sound.transfer(in, bar) - sound.transfer(out, bar));
            }
        }
        return v;
    }

    private double[] growler(Growler growler, double angle) {
        List<Double> list = GrowlerMeter.of(sound.armature(), growler).groundedPotentials(angle);
        double[] v = new double[sound.bars() + 1];
        for (int bar = 1; bar <= sound.bars(); bar++) {
            v[bar] = list.get(bar - 1);
        }
        return v;
    }

    private double[] volts(Growler growler, double angle) {
        Armature a = sound.armature().winding().armature();
        return sound.armature().winding().coils().stream()
                .mapToDouble(c -> growler.coilVolts(a, c, angle)
                        * sound.armature().coil(c.number()).turns())
                .toArray();
    }

    TestRun run() {
        return run;
    }

    int size() {
        return n;
    }

    /** Readings of the sound armature. */
    double[] expected() {
        return expected.clone();
    }

    /** Readings with a fault, the long way: a new network solved from the beginning. */
    double[] slow(BenchArmature faulty) {
        return run.test().read(faulty, run.pairs()).stream()
                .mapToDouble(PairReading::value)
                .toArray();
    }

    /**
     * Readings with two places joined, each a bar or along a coil, from the sound network alone; empty where this is a
     * test to the shaft or with the compass, or fed between two parts that the joint makes one.
     */
    Optional<double[]> joined(Tap p, Tap q) {
        boolean onePart = sound.joined(p.top(), q.top());
        boolean resistance = run.test() instanceof BenchTest.Resistance;
        if (!quick || (run.test() instanceof BenchTest.Drop drop && !onePart && !sound.joined(drop.in(), drop.out()))) {
            return Optional.empty();
        }
        double[] tp = sound.transfer(p);
        double[] tq = sound.transfer(q);
        double loop = loop(p, tp, q, tq);
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double[] v = bars(i);
            int x = from[i];
            int y = to[i];
            if (!floats[i]) {
                double s = onePart && loop > 0 ? (p.of(v) - q.of(v)) / loop : 0;
                out[i] = v[x] - v[y] - s * (tp[x] - tp[y] - tq[x] + tq[y]);
                continue;
            }
            boolean forth = !onePart && sound.joined(x, p.top()) && sound.joined(y, q.top());
            boolean back = !onePart && sound.joined(y, p.top()) && sound.joined(x, q.top());
            if (!forth && !back) {
                out[i] = nothing();
            } else if (resistance) {
                out[i] = toPlace(forth ? x : y, p, tp) + toPlace(forth ? y : x, q, tq);
            } else {
                out[i] = forth ? v[x] - p.of(v) + q.of(v) - v[y] : v[x] - q.of(v) + p.of(v) - v[y];
            }
        }
        return Optional.of(run.test().signed() ? out : unsigned(out));
    }

    /** Ohms round the loop that a joint between two places closes. */
    private static double loop(Tap p, double[] tp, Tap q, double[] tq) {
        double loop = p.of(tp) + p.common(p) + q.of(tq) + q.common(q) - 2 * (q.of(tp) + p.common(q));
        return loop > 1e-12 * (p.of(tp) + q.of(tq) + p.ohms() + q.ohms()) ? loop : 0;
    }

    /** Ohms from a bar to a place of its part. */
    private double toPlace(int bar, Tap p, double[] tp) {
        return sound.transfer(bar, bar) - 2 * tp[bar] + p.of(tp) + p.common(p);
    }

    /** Readings of a test to the shaft with the shaft joined to one place. Empty where this is no such test. */
    Optional<double[]> grounded(Tap place) {
        return grounded(place, place);
    }

    /** Readings of a test to the shaft with the shaft joined to two places. Empty where this is no such test. */
    Optional<double[]> grounded(Tap p, Tap q) {
        BenchTest test = run.test();
        boolean walk = test instanceof BenchTest.GroundWalk;
        if (!walk && !(test instanceof BenchTest.Ground)) {
            return Optional.empty();
        }
        boolean onePart = sound.joined(p.top(), q.top());
        if (test instanceof BenchTest.GroundWalk w && !onePart && !sound.joined(w.in(), w.out())) {
            return Optional.empty();
        }
        double[] tp = sound.transfer(p);
        double[] tq = sound.transfer(q);
        double loop = onePart && !p.equals(q) ? loop(p, tp, q, tq) : 0;
        double[] v = test instanceof BenchTest.GroundWalk w ? fed(w.in(), w.out(), w.amperes()) : new double[0];
        double s = walk && loop > 0 ? (p.of(v) - q.of(v)) / loop : 0;
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            int bar = Math.max(from[i], to[i]);
            boolean byP = sound.joined(bar, p.top());
            if (!byP && !sound.joined(bar, q.top())) {
                out[i] = walk ? 0 : Double.POSITIVE_INFINITY;
                continue;
            }
            Tap near = byP ? p : q;
            double seen = loop > 0 ? tp[bar] - tq[bar] - p.of(tp) - p.common(p) + p.of(tq) + p.common(q) : 0;
            if (walk) {
                double volts = v[bar] - near.of(v) - s * seen;
                out[i] = to[i] == BenchTest.SHAFT ? volts : -volts;
            } else {
                out[i] = toPlace(bar, near, byP ? tp : tq) - (loop > 0 ? seen * seen / loop : 0);
            }
        }
        return Optional.of(out);
    }

    private static double[] unsigned(double[] values) {
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.abs(values[i]);
        }
        return values;
    }

    /** Whether alterations between bars tell all that this test sees. */
    boolean quick() {
        return quick;
    }

    private double[] bars(int reading) {
        return potentials[potentials.length == 1 ? 0 : reading];
    }

    private double coil(int reading, int number) {
        if (coilVolts.length == 0 || number == 0) {
            return 0;
        }
        return coilVolts[coilVolts.length == 1 ? 0 : reading][coilIndex.get(number)];
    }

    /** Volts on reading i per ampere drawn from bar a and put back at bar b. */
    private double seen(int reading, int a, int b) {
        return sound.mutual(a, b, from[reading], to[reading]);
    }

    /**
     * Readings under alterations, from the sound network alone; empty where they join or part what the sound winding
     * keeps apart or together, so that the long way must be gone.
     */
    Optional<double[]> predict(List<Alteration> alterations) {
        return predict(alterations, Set.of());
    }

    /** As {@link #predict(List)}, with bars that stand alone and read nothing. */
    Optional<double[]> predict(List<Alteration> alterations, Set<Integer> alone) {
        if (!alone.isEmpty() && feeds(alone)) {
            return Optional.empty();
        }
        if (!alterations.stream().allMatch(alt -> alt.from() == alt.to() || sound.joined(alt.from(), alt.to()))) {
            return Optional.empty();
        }
        int r = alterations.size();
        double[][] inverse = r == 0 ? new double[0][] : SmallMatrix.inverse(system(alterations));
        if (inverse.length != r) {
            if (sameJoints(alterations)) {
                return predict(alterations.subList(0, 1), alone);
            }
            return twoOpen(alterations) ? parted(alterations, alone) : Optional.empty();
        }
        double[] out = unaltered.clone();
        alter(out, alterations, inverse);
        double nothing = nothing();
        for (int i = 0; i < n; i++) {
            if (floats[i] || (!alone.isEmpty() && (alone.contains(from[i]) || alone.contains(to[i])))) {
                out[i] = nothing;
            }
        }
        return Optional.of(run.test().signed() ? out : unsigned(out));
    }

    /** What the alterations drive through one another: 1 + G M, and M alone in the row of bars joined. */
    private double[][] system(List<Alteration> alterations) {
        int r = alterations.size();
        double[][] m = new double[r][r];
        for (int j = 0; j < r; j++) {
            Alteration a = alterations.get(j);
            boolean joined = Double.isInfinite(a.conductance());
            for (int k = 0; k < r; k++) {
                Alteration b = alterations.get(k);
                double mutual =
                        a.from() == a.to() || b.from() == b.to() ? 0 : sound.mutual(a.from(), a.to(), b.from(), b.to());
                m[j][k] = (joined ? mutual : a.conductance() * mutual) + (!joined && j == k ? 1 : 0);
            }
        }
        return m;
    }

    /** Takes from the readings what the currents through the alterations make. */
    private void alter(double[] readings, List<Alteration> alterations, double[][] inverse) {
        List<double[]> pushes = alterations.stream().map(this::push).toList();
        boolean still = potentials.length == 1;
        for (int j = 0; j < inverse.length; j++) {
            double[] s = new double[potentials.length];
            for (int k = 0; k < inverse.length; k++) {
                double share = inverse[j][k];
                double[] push = pushes.get(k);
                for (int i = 0; i < s.length; i++) {
                    s[i] += share * push[i];
                }
            }
            double[] put = sound.transfer(alterations.get(j).from());
            double[] taken = sound.transfer(alterations.get(j).to());
            for (int i = 0; i < n; i++) {
                int x = from[i];
                int y = to[i];
                readings[i] -= s[still ? 0 : i] * (put[x] - put[y] - taken[x] + taken[y]);
            }
        }
    }

    /** Whether there are two joints between the same bars, or between bars that equalizers make the same. */
    private boolean sameJoints(List<Alteration> alterations) {
        if (alterations.size() != 2
                || !alterations.stream().allMatch(a -> Double.isInfinite(a.conductance()) && a.from() != a.to())) {
            return false;
        }
        Alteration p = alterations.get(0);
        Alteration q = alterations.get(1);
        double pp = sound.mutual(p.from(), p.to(), p.from(), p.to());
        double qq = sound.mutual(q.from(), q.to(), q.from(), q.to());
        double pq = Math.abs(sound.mutual(p.from(), p.to(), q.from(), q.to()));
        return pp > 0 && Math.abs(pp - pq) < SAME_BARS * pp && Math.abs(qq - pq) < SAME_BARS * qq;
    }

    private boolean twoOpen(List<Alteration> alterations) {
        return alterations.size() == 2
                && alterations.get(0).coil() != alterations.get(1).coil()
                && alterations.stream().allMatch(this::opens);
    }

    private boolean opens(Alteration a) {
        return a.coil() > 0 && a.conductance() == -conductance(sound.armature().coil(a.coil()));
    }

    /**
     * Readings with two coils open that leave the armature in two parts. The second is then all that holds the parts
     * together and carries no current, so that it may stay in place; between the parts nothing is read.
     */
    private Optional<double[]> parted(List<Alteration> opened, Set<Integer> alone) {
        if (sound.openings().isEmpty()) {
            return Optional.empty();
        }
        int[] parts = openings()
                .without(opened.get(0).coil())
                .partsWithout(opened.get(1).coil());
        if (run.test() instanceof BenchTest.Drop d && parts[d.in()] != parts[d.out()]) {
            return Optional.empty();
        }
        Optional<double[]> held = predict(opened.subList(0, 1), alone);
        double nothing = nothing();
        for (int i = 0; i < n && held.isPresent(); i++) {
            if (across(i, parts)) {
                held.get()[i] = nothing;
            }
        }
        return held;
    }

    /** What an alteration drives through itself in each state of the run, before the others have a say. */
    private double[] push(Alteration alt) {
        double g = alt.conductance();
        double[] at = byBar[alt.from()];
        double[] over = byBar[alt.to()];
        double[] coil = byCoil.length == 0 || alt.coil() == 0 ? null : byCoil[coilIndex.get(alt.coil())];
        double[] out = new double[potentials.length];
        for (int i = 0; i < out.length; i++) {
            double across = at[i] - over[i];
            if (Double.isInfinite(g)) {
                out[i] = across;
            } else {
                out[i] = coil == null ? g * across : g * across - alt.drive() * coil[coil.length == 1 ? 0 : i];
            }
        }
        return out;
    }

    private boolean feeds(Set<Integer> alone) {
        return run.test() instanceof BenchTest.Drop d && (alone.contains(d.in()) || alone.contains(d.out()));
    }

    /** Vector of what reading i shows of one ampere through a pair, for screening. */
    double[] pattern(int a, int b) {
        double[] out = new double[n];
        if (a == b || !sound.joined(a, b)) {
            return out;
        }
        for (int i = 0; i < n; i++) {
            if (!floats[i]) {
                out[i] = seen(i, a, b);
            }
        }
        return out;
    }

    /** Volts that drive current between two bars while each reading is taken, a coil's own voltage left out. */
    double[] push(int a, int b, int coil) {
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double[] v = bars(i);
            out[i] = v[a] - v[b] - coil(i, coil);
        }
        return out;
    }

    /** The parts that the bars fall into once coils are open. */
    Openings openings() {
        return sound.openings().orElseThrow();
    }

    /** Whether a reading between bars lies between two parts. */
    boolean across(int reading, int[] parts) {
        return parts[from[reading]] != parts[to[reading]];
    }

    /** Whether nothing joins the two bars of a reading between bars. */
    boolean floats(int reading) {
        return floats[reading];
    }

    /** Whether one state of the network serves all readings of the run. */
    boolean oneState() {
        return quick && potentials.length == 1;
    }

    /** Signed readings of the sound armature. */
    double[] signedExpected() {
        return unaltered.clone();
    }

    static double conductance(CoilState c) {
        return 1 / (c.ohms() + c.jointOhms());
    }
}
