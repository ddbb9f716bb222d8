package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.CoilState;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
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

    private final Map<Integer, Integer> coilIndex = new LinkedHashMap<>();
    private final double[] expected;

    RunModel(SoundNetwork sound, TestRun run) {
        this.sound = sound;
        this.run = run;
        n = run.readings().size();
        from = run.readings().stream().mapToInt(PairReading::from).toArray();
        to = run.readings().stream().mapToInt(PairReading::to).toArray();
        int index = 0;
        for (Coil c : sound.armature().winding().coils()) {
            coilIndex.put(c.number(), index++);
        }
        BenchTest test = run.test();
        floats = new boolean[n];
        quick = test instanceof BenchTest.Drop
                || test instanceof BenchTest.Resistance
                || test instanceof BenchTest.GrowlerWalked
                || test instanceof BenchTest.GrowlerTurned;
        if (quick) {
            for (int i = 0; i < n; i++) {
                floats[i] = !sound.joined(from[i], to[i]);
            }
        }
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
        expected = quick ? predict(List.of()).orElseThrow() : slow(sound.armature());
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
     * Readings of a test to the shaft with the shaft joined to one place, from the sound network alone. One ampere
     * drawn at a share f along a coil is drawn as 1 − f at its top bar and f at its bottom bar, with a further drop of
     * f(1 − f) times the coil's resistance at the place itself. Empty where this is no such test, or the place lies in
     * a coil that carries no current.
     */
    Optional<double[]> grounded(Point place) {
        BenchTest test = run.test();
        if (!(test instanceof BenchTest.Ground) && !(test instanceof BenchTest.GroundWalk)) {
            return Optional.empty();
        }
        int top;
        int bottom;
        double along = 0;
        double ohms = 0;
        if (place instanceof Point.Bar bar) {
            top = bar.number();
            bottom = top;
        } else if (place instanceof Point.Inside inside
                && sound.armature().coil(inside.coil()).connected()
                && !sound.armature().coil(inside.coil()).open()) {
            CoilState c = sound.armature().coil(inside.coil());
            top = c.topBar().getAsInt();
            bottom = c.bottomBar().getAsInt();
            along = inside.fraction();
            ohms = c.ohms() * along * (1 - along);
        } else {
            return Optional.empty();
        }
        double[] walk = test instanceof BenchTest.GroundWalk w ? fed(w.in(), w.out(), w.amperes()) : new double[0];
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            int bar = Math.max(from[i], to[i]);
            boolean reachable = sound.joined(bar, top);
            if (walk.length > 0) {
                double v = reachable ? walk[bar] - (1 - along) * walk[top] - along * walk[bottom] : 0;
                out[i] = to[i] == BenchTest.SHAFT ? v : -v;
            } else {
                out[i] = !reachable
                        ? Double.POSITIVE_INFINITY
                        : drawn(bar, top, bottom, along, bar)
                                - (1 - along) * drawn(bar, top, bottom, along, top)
                                - along * drawn(bar, top, bottom, along, bottom)
                                + ohms;
            }
        }
        return Optional.of(out);
    }

    private double drawn(int in, int top, int bottom, double along, int read) {
        return sound.transfer(in, read)
                - (1 - along) * sound.transfer(top, read)
                - along * sound.transfer(bottom, read);
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
        int r = alterations.size();
        int[] a = new int[r];
        int[] b = new int[r];
        double[] g = new double[r];
        for (int j = 0; j < r; j++) {
            Alteration alt = alterations.get(j);
            a[j] = alt.from();
            b[j] = alt.to();
            g[j] = alt.conductance();
            if (a[j] != b[j] && !sound.joined(a[j], b[j])) {
                return Optional.empty();
            }
        }
        double[][] m = new double[r][r];
        for (int j = 0; j < r; j++) {
            boolean infinite = Double.isInfinite(g[j]);
            for (int k = 0; k < r; k++) {
                double mutual = a[j] == b[j] || a[k] == b[k] ? 0 : sound.mutual(a[j], b[j], a[k], b[k]);
                m[j][k] = (infinite ? mutual : g[j] * mutual) + (!infinite && j == k ? 1 : 0);
            }
        }
        double[][] inverse = r == 0 ? m : SmallMatrix.inverse(m);
        if (inverse.length != r) {
            return Optional.empty();
        }
        boolean resistance = run.test() instanceof BenchTest.Resistance;
        double[] out = new double[n];
        double[] rhs = new double[r];
        double[] s = new double[r];
        boolean made = false;
        boolean still = potentials.length == 1 && coilVolts.length <= 1;
        for (int i = 0; i < n; i++) {
            if (floats[i] || alone.contains(from[i]) || alone.contains(to[i])) {
                out[i] = resistance ? Double.POSITIVE_INFINITY : 0;
                continue;
            }
            double[] v = bars(i);
            if (!still || !made) {
                made = true;
                for (int j = 0; j < r; j++) {
                    double across = v[a[j]] - v[b[j]];
                    Alteration alt = alterations.get(j);
                    rhs[j] = Double.isInfinite(g[j]) ? across : g[j] * across - alt.drive() * coil(i, alt.coil());
                }
                for (int j = 0; j < r; j++) {
                    double sum = 0;
                    for (int k = 0; k < r; k++) {
                        sum += inverse[j][k] * rhs[k];
                    }
                    s[j] = sum;
                }
            }
            double y = v[from[i]] - v[to[i]];
            for (int j = 0; j < r; j++) {
                if (a[j] != b[j]) {
                    y -= seen(i, a[j], b[j]) * s[j];
                }
            }
            out[i] = y;
        }
        if (!run.test().signed()) {
            for (int i = 0; i < n; i++) {
                out[i] = Math.abs(out[i]);
            }
        }
        return Optional.of(out);
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

    /** Whether one state of the network serves all readings of the run. */
    boolean oneState() {
        return quick && potentials.length == 1;
    }

    /** Signed readings of the sound armature. */
    double[] signedExpected() {
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            if (!floats[i]) {
                out[i] = bars(i)[from[i]] - bars(i)[to[i]];
            }
        }
        return out;
    }

    static double conductance(CoilState c) {
        return 1 / (c.ohms() + c.jointOhms());
    }
}
