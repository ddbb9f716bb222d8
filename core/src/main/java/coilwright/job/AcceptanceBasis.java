package coilwright.job;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.rewind.Acceptance;
import coilwright.rewind.HighPotential;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Work;
import coilwright.rewind.Limit;
import coilwright.rewind.TemperatureRise;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Puts together what a job tells of a finished winding for its {@link Acceptance}. */
public final class AcceptanceBasis {
    /** A sound reading smaller than this part of the largest tells nothing of its pair. */
    private static final double NOTHING = 1e-9;

    private AcceptanceBasis() {}

    /**
     * Values that stand in place of the job's, and choices.
     *
     * @param kind of machine
     * @param volts rated
     * @param power rated output
     * @param work state of the winding
     * @param insulationOneMinute insulation resistance after one minute
     * @param insulationTenMinutes the same after ten minutes
     * @param temperature of the winding when it was measured
     * @param coldResistance at that temperature, between the same points as the hot one
     * @param hotResistance at the end of a run under load
     * @param ambient temperature of the air then
     * @param limits that hold, by name
     * @param scheme of the high-potential test that holds
     */
    public record Options(
            Optional<MachineKind> kind,
            Optional<Quantity> volts,
            Optional<Quantity> power,
            Work work,
            Optional<Quantity> insulationOneMinute,
            Optional<Quantity> insulationTenMinutes,
            Optional<Quantity> temperature,
            Optional<Quantity> coldResistance,
            Optional<Quantity> hotResistance,
            Optional<Quantity> ambient,
            List<String> limits,
            Optional<String> scheme) {
        /** {@return nothing in place of the job's; a rewound winding} */
        public static Options none() {
            return new Options(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Work.REWOUND,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    Optional.empty());
        }

        /**
         * Copies the list.
         *
         * @param kind of machine
         * @param volts rated
         * @param power rated output
         * @param work state of the winding
         * @param insulationOneMinute insulation resistance after one minute
         * @param insulationTenMinutes the same after ten minutes
         * @param temperature of the winding when it was measured
         * @param coldResistance at that temperature, between the same points as the hot one
         * @param hotResistance at the end of a run under load
         * @param ambient temperature of the air then
         * @param limits that hold, by name
         * @param scheme of the high-potential test that holds
         */
        public Options {
            limits = List.copyOf(limits);
        }
    }

    /**
     * {@return what was measured and chosen} The winding is judged as it was to be wound, by the job's plan where it has
     * one.
     *
     * @param found what the armature is
     * @param options what is chosen; the rated voltage goes before that of the plan, and that before the old one
     * @throws coilwright.winding.ImpossibleWindingException when a plan or readings of the new winding are given and the
     *     job's winding cannot be wound
     * @throws IllegalArgumentException when values do not go together, or there is no limit of a name
     */
    public static Acceptance.Given of(Job found, Options options) {
        Job job = RewindBasis.wound(found);
        Optional<Rating> rating = job.particulars().rating();
        Optional<AsRewound> done = job.particulars().asRewound();
        Optional<MachineKind> kind = options.kind().or(() -> rating.flatMap(Rating::kind));
        OptionalDouble volts = Quantity.in(
                "V",
                options.volts()
                        .or(() -> job.particulars().plan().flatMap(Plan::volts))
                        .or(() -> rating.flatMap(Rating::volts)));
        OptionalDouble watts = Quantity.in("W", options.power().or(() -> rating.flatMap(Rating::power)));
        OptionalDouble amps = Quantity.in("A", rating.flatMap(Rating::current));
        String note = "";
        if (watts.isEmpty()
                && kind.equals(Optional.of(MachineKind.DC_GENERATOR))
                && volts.isPresent()
                && amps.isPresent()) {
            watts = OptionalDouble.of(amps.getAsDouble() * volts.getAsDouble());
            note = "the output is taken as rated voltage times rated current";
        }
        List<ReadingSet> sets = sets(job, ReadingSet.Stage.AS_REWOUND);
        Measured measured = measured(done.flatMap(AsRewound::measured), options);
        return new Acceptance.Given(
                kind,
                volts,
                watts,
                note,
                options.work(),
                measured.insulationTest(),
                measured.temperature().isPresent(),
                Quantity.in("V", measured.testVolts()),
                done.flatMap(AsRewound::highPotential).map(AcceptanceBasis::applied),
                walks(job, ReadingSet.Stage.AS_REWOUND),
                missing(job, sets),
                done.flatMap(AsRewound::polarity).map(p -> p == AsRewound.Polarity.RIGHT),
                reversed(job),
                rise(measured, options),
                options.limits().stream().map(Limit::of).toList(),
                options.scheme());
    }

    private static Measured measured(Optional<Measured> noted, Options options) {
        return new Measured(
                options.temperature().or(() -> noted.flatMap(Measured::temperature)),
                noted.flatMap(Measured::coilResistance),
                options.coldResistance().or(() -> noted.flatMap(Measured::brushToBrush)),
                options.insulationOneMinute().or(() -> noted.flatMap(Measured::insulationOneMinute)),
                options.insulationTenMinutes().or(() -> noted.flatMap(Measured::insulationTenMinutes)),
                noted.flatMap(Measured::testVolts));
    }

    private static HighPotential.Applied applied(HighPotentialDone done) {
        return new HighPotential.Applied(
                done.volts().in("V"),
                done.current().map(c -> c == HighPotentialDone.Current.DC),
                done.seconds(),
                done.result() == HighPotentialDone.Result.PASSED);
    }

    private static Optional<TemperatureRise> rise(Measured measured, Options options) {
        if (options.hotResistance().isEmpty()) {
            return Optional.empty();
        }
        if (options.ambient().isEmpty()) {
            throw new IllegalArgumentException("a hot resistance is given without the ambient temperature: give both");
        }
        if (measured.brushToBrush().isEmpty() || measured.temperature().isEmpty()) {
            throw new IllegalArgumentException("a hot resistance is given, but the cold one and its temperature are not"
                    + " both known: give them, or write asRewound.measured.brushToBrush and temperature");
        }
        return Optional.of(TemperatureRise.of(
                measured.brushToBrush().get().in("ohm"),
                measured.celsius(),
                options.hotResistance().get().in("ohm"),
                options.ambient().get().in("°C")));
    }

    /**
     * {@return readings from bar to bar of the old winding or the new one, the last of each test and feed}
     *
     * @param job what the armature is
     * @param stage the old winding or the new one
     * @throws coilwright.winding.ImpossibleWindingException when there are such and the job's winding cannot be wound
     */
    public static List<Acceptance.Walk> walks(Job job, ReadingSet.Stage stage) {
        return sets(job, stage).stream().map(s -> walk(job, s)).toList();
    }

    private static List<ReadingSet> sets(Job job, ReadingSet.Stage stage) {
        Map<List<Object>, ReadingSet> last = new LinkedHashMap<>();
        job.readings().stream()
                .filter(s -> s.stage() == stage)
                .filter(s -> s.test() == TestKind.RESISTANCE || s.test() == TestKind.DROP)
                .forEach(s -> last.put(
                        List.of(
                                s.test(),
                                s.feed().map(f -> List.of(f.in(), f.out())).orElse(List.of())),
                        s));
        return List.copyOf(last.values());
    }

    /** Neighbours in one circuit that no set reads. */
    private static List<String> missing(Job job, List<ReadingSet> sets) {
        if (sets.isEmpty()) {
            return List.of();
        }
        Set<Set<Integer>> read = new HashSet<>();
        for (ReadingSet set : sets) {
            set.run(job.growler()).pairs().forEach(p -> read.add(Set.of(p.from(), p.to())));
        }
        return new BenchTest.Resistance()
                .readWalk(job.benchArmature()).stream()
                        .filter(w -> Double.isFinite(w.value()) && !read.contains(Set.of(w.from(), w.to())))
                        .map(w -> w.pair().toString())
                        .toList();
    }

    /** Signs are left out: they tell which way the current went, not how even the winding is. */
    private static Acceptance.Walk walk(Job job, ReadingSet set) {
        BenchArmature sound = job.benchArmature();
        TestRun run = set.run(job.growler());
        List<PairReading> expected = run.test().read(sound, run.pairs());
        double most = PairReading.largest(run.test().readWalk(sound));
        List<String> pairs = new ArrayList<>();
        List<Double> ratios = new ArrayList<>();
        List<String> open = new ArrayList<>();
        for (int i = 0; i < expected.size(); i++) {
            double sane = Math.abs(expected.get(i).value());
            double read = Math.abs(run.readings().get(i).value());
            String pair = run.pairs().get(i).toString();
            if (Double.isInfinite(sane) || sane <= NOTHING * most) {
                continue;
            }
            if (Double.isInfinite(read)) {
                open.add(pair);
            } else {
                pairs.add(pair);
                ratios.add(read / sane);
            }
        }
        return new Acceptance.Walk(set.test().word(), pairs, ratios, open);
    }

    private static List<String> reversed(Job job) {
        return job.readings().stream()
                .filter(s -> s.stage() == ReadingSet.Stage.AS_REWOUND && s.test() == TestKind.POLARITY)
                .reduce((earlier, later) -> later)
                .map(set -> set.run(job.growler()).readings().stream()
                        .filter(r -> !(r.value() > 0))
                        .map(r -> r.pair().toString())
                        .toList())
                .orElse(List.of());
    }
}
