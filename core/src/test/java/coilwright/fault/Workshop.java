package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;

/** Makes armatures, faults and noisy readings for tests of the diagnosis. */
final class Workshop {
    private final Random random;

    Workshop(long seed) {
        random = new Random(seed);
    }

    Random random() {
        return random;
    }

    /** A lap or wave winding of some 5 to a number of bars. */
    Winding winding(int mostBars, boolean simplexOnly) {
        while (true) {
            int slots = 5 + random.nextInt(20);
            int poles = 2 * (1 + random.nextInt(3));
            int sides = 1 + random.nextInt(2);
            int plex = simplexOnly || random.nextInt(5) > 0 ? 1 : 2;
            Direction direction = random.nextBoolean() ? Direction.PROGRESSIVE : Direction.RETROGRESSIVE;
            boolean lap = random.nextBoolean();
            if (slots * sides > mostBars || slots < 2 * poles) {
                continue;
            }
            try {
                return Winding.build(
                        Armature.of(slots, slots * sides, poles),
                        lap ? WindingSpec.lap(plex, direction) : WindingSpec.wave(plex, direction));
            } catch (ImpossibleWindingException e) {
                // Drawn numbers that make no winding: draw again.
            }
        }
    }

    /** Kinds of single fault, in the order in which {@link #fault} numbers them. */
    static final int KINDS = 12;

    Optional<Fault> fault(Winding w, int kind) {
        List<Coil> live = w.liveCoils();
        Coil coil = live.get(random.nextInt(live.size()));
        int c = coil.number();
        int bar = 1 + random.nextInt(w.armature().bars());
        int next = w.armature().wrapBar(bar + 1);
        return switch (kind) {
            case 0 -> Optional.of(new Fault.OpenCoil(c));
            case 1 -> Optional.of(new Fault.ShortedCoil(c));
            case 2 -> Optional.of(new Fault.ShortedTurns(c, 0.25 + 0.5 * random.nextDouble()));
            case 3 -> Optional.of(new Fault.HighResistance(c, 0.4 + 3 * random.nextDouble()));
            case 4 -> Optional.of(new Fault.BarShort(bar, next));
            case 5 -> Optional.of(new Fault.CrossedLeads(bar, next, Fault.Leads.BOTH));
            case 6 -> Optional.of(new Fault.CrossedLeads(bar, next, Fault.Leads.TOP));
            case 7 -> Optional.of(new Fault.ReversedCoil(c));
            case 8 ->
                Optional.of(new Fault.WrongBar(
                        c, true, w.armature().wrapBar(coil.topBar().getAsInt() + (random.nextBoolean() ? 1 : -1))));
            case 9 ->
                Optional.of(new Fault.WrongTurns(
                        c, random.nextBoolean() ? 0.6 + 0.2 * random.nextDouble() : 1.2 + 0.25 * random.nextDouble()));
            case 10 ->
                w.coils().stream()
                        .filter(o -> o.number() != c
                                && o.bottom().slot() == coil.top().slot())
                        .findFirst()
                        .map(o -> new Fault.SlotShort(
                                c, 0.15 + 0.7 * random.nextDouble(), o.number(), 0.15 + 0.7 * random.nextDouble()));
            default -> Optional.of(new Fault.Ground(new Point.Inside(c, 0.2 + 0.6 * random.nextDouble())));
        };
    }

    /** Faults of every kind at every place, their sizes at random; joints are bad against a coil's resistance. */
    List<Fault> everywhere(BenchArmature sound) {
        Winding w = sound.winding();
        List<Fault> out = new ArrayList<>();
        for (Coil coil : w.liveCoils()) {
            int c = coil.number();
            out.add(new Fault.OpenCoil(c));
            out.add(new Fault.ShortedCoil(c));
            out.add(new Fault.ShortedTurns(c, 0.25 + 0.5 * random.nextDouble()));
            out.add(new Fault.HighResistance(c, sound.soundOhms() * (0.4 + 3 * random.nextDouble())));
            out.add(new Fault.ReversedCoil(c));
            for (int off : new int[] {-1, 1}) {
                out.add(new Fault.WrongBar(
                        c, true, w.armature().wrapBar(coil.topBar().getAsInt() + off)));
                out.add(new Fault.WrongBar(
                        c, false, w.armature().wrapBar(coil.bottomBar().getAsInt() + off)));
            }
            out.add(new Fault.WrongTurns(
                    c, random.nextBoolean() ? 0.6 + 0.2 * random.nextDouble() : 1.2 + 0.25 * random.nextDouble()));
            out.add(new Fault.Ground(new Point.Inside(c, 0.2 + 0.6 * random.nextDouble())));
            for (Coil o : w.liveCoils()) {
                if (o.number() != c && o.bottom().slot() == coil.top().slot()) {
                    out.add(new Fault.SlotShort(
                            c, 0.15 + 0.7 * random.nextDouble(), o.number(), 0.15 + 0.7 * random.nextDouble()));
                }
            }
        }
        for (int bar = 1; bar <= w.armature().bars(); bar++) {
            int next = w.armature().wrapBar(bar + 1);
            out.add(new Fault.BarShort(bar, next));
            for (Fault.Leads leads : Fault.Leads.values()) {
                out.add(new Fault.CrossedLeads(bar, next, leads));
            }
            out.add(new Fault.Ground(Point.bar(bar)));
        }
        return out;
    }

    static BenchArmature with(BenchArmature sound, List<Fault> faults) {
        return Fault.all(sound, faults);
    }

    /** The tests of a thorough afternoon at the bench: drop, resistance, growler and ground. */
    static List<BenchTest> tests(BenchArmature sound) {
        List<BenchTest> out = new ArrayList<>();
        FeedBars.advised(sound.winding(), !sound.bonds().isEmpty())
                .forEach(f -> out.add(new BenchTest.Drop(f.in(), f.out(), 1)));
        if (FeedBars.advised(sound.winding(), false).size() > 1) {
            out.add(new BenchTest.Resistance());
        }
        out.add(new BenchTest.GrowlerTurned(
                Growler.USUAL, GrowlerMeter.of(sound, Growler.USUAL).bestClock()));
        out.add(new BenchTest.Ground());
        return out;
    }

    /**
     * Whether readings can tell faults from a sound armature, and two faults from each of them alone: all tests together
     * and the scale of each apart, they differ by more than three standard errors.
     */
    static boolean shown(BenchArmature sound, List<Fault> faults, List<BenchTest> tests, double noise) {
        BenchArmature faulty = with(sound, faults);
        return differ(faulty, sound, tests, noise)
                && (faults.size() == 1 || faults.stream().allMatch(f -> differ(faulty, f.in(sound), tests, noise)));
    }

    private static boolean differ(BenchArmature read, BenchArmature other, List<BenchTest> tests, double noise) {
        double squares = 0;
        for (BenchTest t : tests) {
            squares += new Evidence(t.readWalk(read)).apart(values(t, other), values(t, read), 1);
        }
        return Math.sqrt(squares) > Report.APART * noise;
    }

    private static double[] values(BenchTest test, BenchArmature armature) {
        return test.readWalk(armature).stream().mapToDouble(PairReading::value).toArray();
    }

    /** Readings of a faulty armature, each run with a scale of its own, each reading off by some noise. */
    List<TestRun> runs(BenchArmature sound, List<Fault> faults, List<BenchTest> tests, double noise) {
        BenchArmature faulty = with(sound, faults);
        List<TestRun> out = new ArrayList<>();
        for (BenchTest test : tests) {
            double gain = test.ohms() ? 1 : Math.exp(random.nextGaussian());
            List<PairReading> readings = new ArrayList<>();
            for (PairReading r : test.readWalk(faulty)) {
                readings.add(new PairReading(r.from(), r.to(), gain * r.value() * (1 + noise * random.nextGaussian())));
            }
            out.add(new TestRun(test, readings));
        }
        return out;
    }

    /** Whether an explanation names these faults: the same kinds in the same places, sizes apart. */
    static boolean names(Diagnosis.Explanation explanation, List<Fault> faults) {
        Set<String> wanted = keys(faults);
        return keys(explanation.faults()).equals(wanted)
                || explanation.sameReadings().stream().anyMatch(f -> keys(f).equals(wanted));
    }

    private static Set<String> keys(List<Fault> faults) {
        Set<String> out = new TreeSet<>();
        for (Fault f : faults) {
            String leads = f instanceof Fault.CrossedLeads c ? c.leads().word() : "";
            out.add(f.kind() + new TreeSet<>(f.coils()) + f.bars() + leads);
        }
        return out;
    }
}
