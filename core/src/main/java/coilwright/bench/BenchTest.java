package coilwright.bench;

import coilwright.winding.Armature;
import coilwright.winding.CoilSet;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A test with its set-up: what every pair of probes should read on an armature. The shaft counts as bar
 * {@value #SHAFT} where a probe touches it.
 */
public sealed interface BenchTest {
    /** Stands for the shaft in a pair. */
    int SHAFT = 0;

    /** Where two probes go. */
    record Pair(int from, int to) {
        @Override
        public String toString() {
            return name(from) + "-" + name(to);
        }

        /** {@return the pair for print, with a dash between: 1–2} */
        public String dashed() {
            return name(from) + "–" + name(to);
        }

        private static String name(int bar) {
            return bar == SHAFT ? "shaft" : Integer.toString(bar);
        }
    }

    /** {@return the word for the test in commands and files} */
    String word();

    /** {@return whether readings have a sign that means something} */
    default boolean signed() {
        return false;
    }

    /** {@return whether readings come in ohms; else in volts, or relative to volts} */
    default boolean ohms() {
        return false;
    }

    /** {@return whether readings are relative, to one whole face's flux through one coil: those of a growler's meter} */
    default boolean relative() {
        return false;
    }

    /**
     * {@return the pairs of the usual walk, in order}
     *
     * @param winding the winding
     */
    default List<Pair> walk(Winding winding) {
        return neighbours(winding);
    }

    /**
     * {@return what a meter reads on each pair, in the order asked; infinite ohms where nothing joins the two}
     *
     * @param armature the armature as it is on the bench
     * @param pairs the pairs, from the first probe to the second
     */
    List<PairReading> read(BenchArmature armature, List<Pair> pairs);

    /** {@return the set-up in words} */
    String setUp();

    /**
     * {@return the usual walk on an armature}
     *
     * @param armature the armature as it is on the bench
     */
    default List<PairReading> readWalk(BenchArmature armature) {
        return read(armature, walk(armature.winding()));
    }

    /** Neighbouring bars; where the winding makes several circuits, neighbours within each circuit. */
    private static List<Pair> neighbours(Winding winding) {
        Armature a = winding.armature();
        int step = stepWithinCircuit(winding);
        List<Pair> out = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            out.add(new Pair(bar, a.wrapBar(bar + step)));
        }
        return out;
    }

    /** Where there are several circuits, also every two bars side by side: nothing may join them. */
    private static List<Pair> withNextBars(Winding winding) {
        List<Pair> out = new ArrayList<>(neighbours(winding));
        if (stepWithinCircuit(winding) > 1) {
            Armature a = winding.armature();
            for (int bar = 1; bar <= a.bars(); bar++) {
                out.add(new Pair(bar, a.wrapBar(bar + 1)));
            }
        }
        return out;
    }

    /**
     * {@return how many bars on the next bar of the same circuit stands: 1, or as many as there are circuits that no
     * coil joins}
     *
     * @param winding the winding
     */
    static int stepWithinCircuit(Winding winding) {
        if (winding.type() == WindingType.LISTED) {
            return 1;
        }
        int step = winding.armature().bars();
        for (CoilSet set : winding.sets()) {
            step = set.pitches().orElseThrow().closures(step);
        }
        return step;
    }

    private static List<Pair> toShaft(Winding winding) {
        List<Pair> out = new ArrayList<>();
        for (int bar = 1; bar <= winding.armature().bars(); bar++) {
            out.add(new Pair(bar, SHAFT));
        }
        return out;
    }

    /**
     * Drop test fed at two bars.
     *
     * @param in bar where current enters
     * @param out bar where it leaves
     * @param amperes feed current, over 0
     */
    record Drop(int in, int out, double amperes) implements BenchTest {
        @Override
        public String word() {
            return "drop";
        }

        @Override
        public boolean signed() {
            return true;
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            DropTest test = DropTest.at(armature, in, out, new Supply.Current(amperes));
            return pairs.stream().map(p -> test.between(p.from(), p.to())).toList();
        }

        @Override
        public String setUp() {
            return "direct current in at bar " + in + " and out at bar " + out;
        }
    }

    /**
     * Growler with a meter walked round a still armature.
     *
     * @param growler its faces
     * @param angle of slot 1's centre line, degrees
     */
    record GrowlerWalked(Growler growler, double angle) implements BenchTest {
        @Override
        public String word() {
            return "growler";
        }

        @Override
        public boolean relative() {
            return true;
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            return GrowlerMeter.of(armature, growler).walked(angle, pairs);
        }

        @Override
        public String setUp() {
            return String.format(
                    Locale.ROOT, "armature still in the growler, slot 1 at %.1f° clockwise from straight up", angle);
        }
    }

    /**
     * Growler with a meter held still, the armature turned a bar at a time.
     *
     * @param growler its faces
     * @param clockDegrees place of the probes
     */
    record GrowlerTurned(Growler growler, double clockDegrees) implements BenchTest {
        @Override
        public String word() {
            return "growler-turned";
        }

        @Override
        public boolean relative() {
            return true;
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            return GrowlerMeter.of(armature, growler).turned(clockDegrees, pairs);
        }

        @Override
        public String setUp() {
            return String.format(
                    Locale.ROOT,
                    "growler on, probes held at %.1f° clockwise from straight up, armature turned bar by bar",
                    clockDegrees);
        }
    }

    /** Resistance between bars with nothing else connected. */
    record Resistance() implements BenchTest {
        @Override
        public String word() {
            return "resistance";
        }

        @Override
        public boolean ohms() {
            return true;
        }

        @Override
        public List<Pair> walk(Winding winding) {
            return withNextBars(winding);
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            ResistanceTest test = ResistanceTest.of(armature);
            return pairs.stream()
                    .map(p -> new PairReading(
                            p.from(), p.to(), test.between(p.from(), p.to()).orElse(Double.POSITIVE_INFINITY)))
                    .toList();
        }

        @Override
        public String setUp() {
            return "low-resistance ohmmeter from bar to bar, nothing else connected";
        }
    }

    /** Ohmmeter or lamp from each bar to the shaft. */
    record Ground() implements BenchTest {
        @Override
        public String word() {
            return "ground";
        }

        @Override
        public boolean ohms() {
            return true;
        }

        @Override
        public List<Pair> walk(Winding winding) {
            return toShaft(winding);
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            List<Double> ohms = GroundTest.barToShaft(armature);
            return pairs.stream()
                    .map(p -> new PairReading(p.from(), p.to(), ohms.get(Math.max(p.from(), p.to()) - 1)))
                    .toList();
        }

        @Override
        public String setUp() {
            return "ohmmeter from each bar to the bare shaft";
        }
    }

    /**
     * Direct current fed to two bars, millivoltmeter from each bar to the shaft.
     *
     * @param in bar where current enters
     * @param out bar where it leaves
     * @param amperes feed current, over 0
     */
    record GroundWalk(int in, int out, double amperes) implements BenchTest {
        @Override
        public String word() {
            return "ground-walk";
        }

        @Override
        public boolean signed() {
            return true;
        }

        @Override
        public List<Pair> walk(Winding winding) {
            return toShaft(winding);
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            List<Double> volts = GroundTest.walk(armature, in, out, new Supply.Current(amperes));
            return pairs.stream()
                    .map(p -> new PairReading(
                            p.from(), p.to(), p.to() == SHAFT ? volts.get(p.from() - 1) : 0 - volts.get(p.to() - 1)))
                    .toList();
        }

        @Override
        public String setUp() {
            return "direct current in at bar " + in + " and out at bar " + out + ", millivoltmeter from bar to shaft";
        }
    }

    /** Compass over each coil's top side while its own two bars are fed. */
    record Polarity() implements BenchTest {
        @Override
        public String word() {
            return "polarity";
        }

        @Override
        public boolean signed() {
            return true;
        }

        @Override
        public List<Pair> walk(Winding winding) {
            return winding.liveCoils().stream()
                    .map(c -> new Pair(c.topBar().getAsInt(), c.bottomBar().getAsInt()))
                    .toList();
        }

        @Override
        public List<PairReading> read(BenchArmature armature, List<Pair> pairs) {
            List<PolarityTest.Sense> senses = PolarityTest.senses(armature);
            List<PairReading> out = new ArrayList<>();
            for (Pair p : pairs) {
                double sense = senses.stream()
                        .filter(s -> s.in() == p.from() && s.out() == p.to())
                        .mapToDouble(PolarityTest.Sense::sense)
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("no coil should lie from bar " + p.from()
                                + " to bar " + p.to() + ": the compass is held over a coil fed at its own bars"));
                out.add(new PairReading(p.from(), p.to(), Math.signum(sense)));
            }
            return out;
        }

        @Override
        public String setUp() {
            return "compass over the slot of each coil's top side, its own two bars fed with direct current";
        }
    }
}
