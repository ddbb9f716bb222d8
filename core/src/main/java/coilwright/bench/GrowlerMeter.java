package coilwright.bench;

import coilwright.network.Solution;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A meter between two bars while the armature lies in a growler. Readings are unsigned and relative: 1 is one whole
 * face's flux through one sound coil; {@link #scaled} turns them into volts from one known-good reading.
 */
public final class GrowlerMeter {
    private final BenchArmature armature;
    private final Growler growler;

    private GrowlerMeter(BenchArmature armature, Growler growler) {
        this.armature = armature;
        this.growler = growler;
    }

    /**
     * {@return an armature in a growler}
     *
     * @param armature the armature as it is on the bench
     * @param growler faces of the growler
     */
    public static GrowlerMeter of(BenchArmature armature, Growler growler) {
        return new GrowlerMeter(armature, growler);
    }

    /**
     * A pair of bars and where the middle between them stands.
     *
     * @param reading the pair
     * @param clockDegrees clockwise from straight up, 0 to under 360
     */
    public record Placed(PairReading reading, double clockDegrees) {}

    /**
     * {@return potentials of bars 1..K with the armature at rest, relative; bar 1 is 0} Not a number where nothing
     * joins a bar to bar 1.
     *
     * @param angle of slot 1's centre line, degrees
     */
    public List<Double> potentials(double angle) {
        checkAngle("armature angle", angle);
        Armature a = armature.winding().armature();
        BenchNetwork net = BenchNetwork.of(
                armature, c -> growler.coilVolts(a, armature.winding().coil(c.coil()), angle));
        return Potentials.ofBars(net, net.network().solve(), 1);
    }

    /**
     * As {@link #potentials}, but every bar against the first bar that anything joins it to.
     *
     * @param angle of slot 1's centre line, degrees clockwise from straight up
     * @return one potential a bar, 1..K
     */
    public List<Double> groundedPotentials(double angle) {
        return atRest(angle).volts();
    }

    /** The armature at rest; the first bar of each part joined together stands for it. */
    private record AtRest(List<Double> volts, List<Integer> parts) {
        double between(int from, int to) {
            return parts.get(from - 1).equals(parts.get(to - 1)) ? Potentials.difference(volts, from, to) : 0;
        }
    }

    private AtRest atRest(double angle) {
        checkAngle("armature angle", angle);
        Armature a = armature.winding().armature();
        BenchNetwork net = BenchNetwork.of(
                armature, c -> growler.coilVolts(a, armature.winding().coil(c.coil()), angle));
        Solution solution = net.network().solve();
        List<Double> volts = new ArrayList<>();
        List<Integer> parts = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            volts.add(solution.voltage(BenchNetwork.node(bar)));
            parts.add(solution.reference(BenchNetwork.node(bar)));
        }
        return new AtRest(volts, parts);
    }

    private static void checkAngle(String what, double angle) {
        if (!Double.isFinite(angle) || Math.abs(angle) > 1e6) {
            throw new IllegalArgumentException(what + " is " + angle + ", but must be a number of degrees");
        }
    }

    /**
     * {@return the probes walked round a still armature: pairs 1-2, 2-3, … K-1}
     *
     * @param angle of slot 1's centre line, degrees
     */
    public List<PairReading> walked(double angle) {
        Armature a = armature.winding().armature();
        List<BenchTest.Pair> pairs = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            pairs.add(new BenchTest.Pair(bar, a.wrapBar(bar + 1)));
        }
        return walked(angle, pairs);
    }

    /**
     * As {@link #walked(double)}, for pairs of choice.
     *
     * @param angle of slot 1's centre line, degrees clockwise from straight up
     * @param pairs the pairs, from the first probe to the second
     * @return one reading a pair, in the order asked
     */
    public List<PairReading> walked(double angle, List<BenchTest.Pair> pairs) {
        AtRest rest = atRest(angle);
        return pairs.stream()
                .map(p -> new PairReading(p.from(), p.to(), Math.abs(rest.between(p.from(), p.to()))))
                .toList();
    }

    /**
     * {@return the armature turned under probes held still: for each pair in turn, the armature stands so that the
     * middle between its bars is at the probes}
     *
     * @param clockDegrees place of the probes, clockwise from straight up
     */
    public List<PairReading> turned(double clockDegrees) {
        var test = new BenchTest.GrowlerTurned(growler, clockDegrees);
        return turned(clockDegrees, test.walk(armature.winding()));
    }

    /**
     * As {@link #turned(double)}, for pairs of choice.
     *
     * @param clockDegrees where the probes are held, clockwise from straight up
     * @param pairs the pairs, from the first probe to the second
     * @return one reading a pair, in the order asked
     */
    public List<PairReading> turned(double clockDegrees, List<BenchTest.Pair> pairs) {
        checkAngle("probe position", clockDegrees);
        Armature a = armature.winding().armature();
        var response = new PairResponse(armature);
        List<PairReading> out = new ArrayList<>();
        for (BenchTest.Pair p : pairs) {
            double angle = clockDegrees - middle(a, p.from(), p.to());
            double volts = response.volts(
                    p.from(),
                    p.to(),
                    c -> growler.coilVolts(a, armature.winding().coil(c), angle));
            out.add(new PairReading(p.from(), p.to(), Math.abs(volts)));
        }
        return out;
    }

    /**
     * {@return the pairs of the usual walk that read most, within a millionth, and where each stands}
     *
     * @param angle of slot 1's centre line, degrees clockwise from straight up
     */
    public List<Placed> best(double angle) {
        List<PairReading> all = new BenchTest.GrowlerWalked(growler, angle).readWalk(armature);
        return ProbePairs.best(ProbePairs.placed(armature.winding().armature(), all, angle));
    }

    /**
     * {@return the place for probes held still where a sound winding reads most, the mean over all pairs as the
     * armature turns, to within half a degree; the middle of the first stretch of equals}
     */
    public double bestClock() {
        Armature a = armature.winding().armature();
        var response = new PairResponse(BenchArmature.sound(armature.winding(), armature.soundOhms()));
        double[] sum = new double[720];
        int step = BenchTest.stepWithinCircuit(armature.winding());
        for (int bar = 1; bar <= unlike(armature.winding()); bar++) {
            int next = a.wrapBar(bar + step);
            var weights = response.weights(bar, next);
            for (int i = 0; i < sum.length; i++) {
                double angle = i * 0.5 - middle(a, bar, next);
                sum[i] += Math.abs(weights.volts(
                        c -> growler.coilVolts(a, armature.winding().coil(c), angle)));
            }
        }
        int best = 0;
        for (int i = 1; i < sum.length; i++) {
            if (sum[i] > sum[best] + 1e-9) {
                best = i;
            }
        }
        int last = best;
        while (last + 1 < best + sum.length && sum[(last + 1) % sum.length] >= sum[best] - 1e-9) {
            last++;
        }
        // A stretch that holds straight up begins before it.
        int first = best;
        while (best == 0 && first - 1 > last - sum.length && sum[first - 1 + sum.length] >= sum[best] - 1e-9) {
            first--;
        }
        return Math.floorMod(Math.floorDiv(first + last, 2), sum.length) * 0.5;
    }

    /** How many bars there are until all repeats: those of one slot, but all where a list or dead coils break the order. */
    private static int unlike(Winding winding) {
        boolean repeats =
                winding.type() != WindingType.LISTED && winding.deadCoils().isEmpty();
        return repeats ? winding.sidesPerSlot() : winding.armature().bars();
    }

    /**
     * {@return every pair of bars between which the meter reads a value within a relative tolerance}
     *
     * @param angle of slot 1's centre line, degrees clockwise from straight up
     * @param value the reading looked for, relative
     * @param tolerance share of the value, 0 to 1
     */
    public List<PairReading> where(double angle, double value, double tolerance) {
        AtRest rest = atRest(angle);
        return Potentials.where(
                rest.volts().size(), rest::between, Potentials.scale(rest.volts()), value, tolerance, false);
    }

    /**
     * {@return readings in the meter's own unit, from one reading on a pair known to be good}
     *
     * @param readings the readings
     * @param known reading of the good pair in the meter's unit, over 0
     * @param relative what the same pair reads relatively, over 0
     */
    public static List<PairReading> scaled(List<PairReading> readings, double known, double relative) {
        if (!(known > 0) || !(relative > 0)) {
            throw new IllegalArgumentException("the known-good reading is " + known + " where " + relative
                    + " is expected: choose a pair on which the meter moves");
        }
        return readings.stream()
                .map(r -> new PairReading(r.from(), r.to(), r.value() * known / relative))
                .sorted(Comparator.comparingInt(PairReading::from))
                .toList();
    }

    /**
     * {@return middle between two bars from slot 1's centre line, degrees, on the shorter way round}
     *
     * @param a core and commutator
     * @param from one bar
     * @param to the other bar
     */
    public static double middle(Armature a, int from, int to) {
        double first = a.barCentre(from);
        double step = a.barCentre(to) - first;
        step -= 360 * Math.floor(step / 360 + 0.5);
        return first + step / 2;
    }

    static double clock(Armature a, int from, int to, double angle) {
        double d = middle(a, from, to) + angle;
        double turn = d - 360 * Math.floor(d / 360);
        return turn >= 360 - 1e-9 ? 0 : turn;
    }
}
