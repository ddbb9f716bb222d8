package coilwright.cli;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.DropTest;
import coilwright.bench.FeedBars;
import coilwright.bench.GroundTest;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.ProbePairs;
import coilwright.bench.ResistanceTest;
import coilwright.bench.Supply;
import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.FaultText;
import coilwright.job.Job;
import coilwright.job.Quantity;
import coilwright.job.TestKind;
import coilwright.job.Visible;
import coilwright.sheet.BenchPage;
import coilwright.sheet.TestSheet;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Asks the bench for what one set-up should read. */
final class Prober {
    private final Job job;
    private final ProbeOptions options;
    private final TestKind test;
    private final BenchArmature sound;
    private final BenchArmature armature;
    private final Winding winding;
    private final Armature core;
    private final List<FeedBars> feeds;
    private final Supply supply;
    private final Optional<BrushGear> gear;
    private final double clock;

    /**
     * Sets the test up.
     *
     * @throws coilwright.winding.ImpossibleWindingException when the job cannot be wound
     * @throws IllegalArgumentException when a value is out of range
     */
    Prober(Job job, ProbeOptions options) {
        this.job = job;
        this.options = options;
        this.test = options.test();
        this.sound = options.temperature().isPresent()
                ? job.benchArmature(
                        Given.amount("--temperature", options.temperature().get(), Quantity.Kind.TEMPERATURE, "degC"))
                : job.benchArmature();
        this.winding = sound.winding();
        this.core = winding.armature();
        this.armature = FaultText.in(sound, options.faults());
        this.gear = options.brushes()
                ? Optional.of(BrushGear.at(
                        winding, options.angle(), options.brushWidth().orElse(BrushGear.leastWidth(winding))))
                : Optional.empty();
        this.feeds = test.fed() && gear.isEmpty() ? feeds() : List.of();
        this.supply = options.volts().isPresent()
                ? new Supply.Voltage(Given.amount("--volts", options.volts().get(), Quantity.Kind.VOLTAGE, "V"))
                : new Supply.Current(Given.amount("--amps", options.amps().orElse("1"), Quantity.Kind.CURRENT, "A"));
        this.clock = test == TestKind.GROWLER_TURNED ? clock() : 0;
    }

    private List<FeedBars> feeds() {
        if (options.feed().isEmpty()) {
            return FeedBars.advised(winding, !sound.bonds().isEmpty());
        }
        BenchTest.Pair pair = Given.bars("--feed", options.feed().get(), core.bars());
        return List.of(new FeedBars(pair.from(), pair.to(), "as given"));
    }

    private double clock() {
        return options.clock()
                .orElseGet(() -> GrowlerMeter.of(sound, job.growler()).bestClock());
    }

    /** Everything that should be read, and what to know of it. */
    Probe probe() {
        List<PairReading> readings = scaled(read(pairs(), feeds.stream().findFirst()));
        List<Probe.CircuitWalk> circuits = circuits();
        return new Probe(
                job,
                armature,
                test,
                setUp(),
                feeds,
                test.procedure(winding, feeds, clock),
                notes(readings, circuits.size()),
                readings,
                circuits,
                test == TestKind.GROWLER ? OptionalDouble.of(options.angle()) : OptionalDouble.empty(),
                best(readings, circuits),
                options.known().isEmpty(),
                gear.isPresent() && test == TestKind.RESISTANCE
                        ? OptionalDouble.of(brushOhms())
                        : OptionalDouble.empty(),
                options.faults().stream()
                        .map(f -> FaultText.parse(f, winding).words())
                        .toList());
    }

    /**
     * The test sheet of a sound armature.
     *
     * @throws UsageException where the set-up is one that no sheet is made for
     */
    DrawingPages sheet() {
        return TestSheet.of(job, sound, usualTest(), new TestSheet.Options(knownGood(), Palette.COLOUR));
    }

    /**
     * The usual walk of a sound armature, for a bench page.
     *
     * @throws UsageException where the set-up is one that no sheet is made for
     */
    BenchPage.Walk walk() {
        return new BenchPage.Walk(sound, usualTest(), knownGood());
    }

    private BenchTest usualTest() {
        if (gear.isPresent() || options.volts().isPresent()) {
            throw new UsageException("a sheet is made for a feed at bars with steady current: give --feed and --amps");
        }
        if (options.pair().isPresent()
                || options.step().isPresent()
                || !options.faults().isEmpty()) {
            throw new UsageException(
                    "a sheet lists the usual walk of a sound armature: leave --pair, --step and --fault out");
        }
        return benchTest();
    }

    /** The test fed with steady current at the first feed, where it is fed at all. */
    private BenchTest benchTest() {
        return switch (test) {
            case DROP -> new BenchTest.Drop(feed().in(), feed().out(), amperes());
            case GROUND_WALK -> new BenchTest.GroundWalk(feed().in(), feed().out(), amperes());
            case GROWLER -> new BenchTest.GrowlerWalked(job.growler(), options.angle());
            case GROWLER_TURNED -> new BenchTest.GrowlerTurned(job.growler(), clock);
            case RESISTANCE -> new BenchTest.Resistance();
            case GROUND -> new BenchTest.Ground();
            case POLARITY -> new BenchTest.Polarity();
        };
    }

    private double amperes() {
        // Which pairs are walked does not depend on it.
        return supply instanceof Supply.Current c ? c.amperes() : 1;
    }

    private Optional<PairReading> knownGood() {
        return known().map(k -> new PairReading(k.pair().from(), k.pair().to(), k.value()));
    }

    private FeedBars feed() {
        return feeds.stream()
                .findFirst()
                .orElseThrow(() -> new UsageException("no coil has both leads on bars, so there is nothing to feed"));
    }

    private List<BenchTest.Pair> pairs() {
        if (options.pair().isPresent()) {
            return List.of(onePair(options.pair().get()));
        }
        return test.ownPairs()
                ? benchTest().walk(winding)
                : ProbePairs.apart(core, options.step().orElse(1));
    }

    private BenchTest.Pair onePair(String text) {
        if (!test.toShaft()) {
            return Given.bars("--pair", text, core.bars());
        }
        BenchTest.Pair pair = Given.pair("--pair", text, core.bars());
        if (pair.from() != BenchTest.SHAFT && pair.to() != BenchTest.SHAFT) {
            throw new UsageException("--pair is \"" + Visible.cut(text) + "\", but a " + test.word()
                    + " test is read between a bar and the shaft: " + pair.from() + ",shaft");
        }
        return pair;
    }

    private List<Probe.CircuitWalk> circuits() {
        boolean asked = options.pair().isPresent() || options.step().isPresent();
        if (asked || test.ownPairs()) {
            return List.of();
        }
        List<List<Integer>> parts = ProbePairs.circuits(winding);
        List<Probe.CircuitWalk> out = new ArrayList<>();
        for (List<Integer> bars : parts.size() > 1 ? parts : List.<List<Integer>>of()) {
            Optional<FeedBars> feed = feeds.stream()
                    .filter(f -> bars.contains(f.in()) && bars.contains(f.out()))
                    .findFirst();
            Optional<FeedBars> used = feed.or(() -> feeds.stream().findFirst());
            out.add(new Probe.CircuitWalk(out.size() + 1, feed, scaled(read(ProbePairs.neighbours(bars), used))));
        }
        return out;
    }

    /** What the meter shows, unscaled. */
    private List<PairReading> read(List<BenchTest.Pair> pairs, Optional<FeedBars> feed) {
        List<PairReading> raw = switch (test) {
            case DROP -> {
                DropTest drop = drop(feed);
                yield pairs.stream().map(p -> drop.between(p.from(), p.to())).toList();
            }
            case GROUND_WALK -> {
                FeedBars f = feed.orElseGet(this::feed);
                List<Double> volts = GroundTest.walk(armature, f.in(), f.out(), supply);
                yield pairs.stream()
                        .map(p -> new PairReading(
                                p.from(),
                                p.to(),
                                p.to() == BenchTest.SHAFT ? volts.get(p.from() - 1) : 0 - volts.get(p.to() - 1)))
                        .toList();
            }
            case GROWLER, GROWLER_TURNED, RESISTANCE, GROUND, POLARITY ->
                benchTest().read(armature, pairs);
        };
        return ProbePairs.withoutRounding(raw);
    }

    private DropTest drop(Optional<FeedBars> feed) {
        if (gear.isPresent()) {
            return DropTest.throughBrushes(armature, gear.get(), supply);
        }
        FeedBars f = feed.orElseGet(this::feed);
        return DropTest.at(armature, f.in(), f.out(), supply);
    }

    private record Known(BenchTest.Pair pair, double value) {}

    private Optional<Known> known() {
        if (options.known().isEmpty()) {
            return Optional.empty();
        }
        String text = options.known().get();
        int equals = text.indexOf('=');
        if (equals < 0) {
            throw new UsageException(
                    "--known is \"" + Visible.cut(text) + "\", but must be a pair and its reading such as 1,2=0.35");
        }
        return Optional.of(new Known(
                Given.bars("--known", text.substring(0, equals), core.bars()),
                Given.amount("--known", text.substring(equals + 1), Quantity.Kind.VOLTAGE, "V")));
    }

    /** What the known-good pair should read relatively. */
    private double relative(Known known) {
        return benchTest().read(sound, List.of(known.pair())).get(0).value();
    }

    private List<PairReading> scaled(List<PairReading> readings) {
        Optional<Known> known = known();
        return known.isEmpty()
                ? readings
                : GrowlerMeter.scaled(readings, known.get().value(), relative(known.get()));
    }

    private List<GrowlerMeter.Placed> best(List<PairReading> readings, List<Probe.CircuitWalk> circuits) {
        if (!test.growler()) {
            return List.of();
        }
        List<PairReading> all = new ArrayList<>(readings);
        if (all.stream().noneMatch(r -> r.value() > 0)) {
            circuits.forEach(c -> all.addAll(c.readings()));
        }
        List<GrowlerMeter.Placed> placed = test == TestKind.GROWLER
                ? ProbePairs.placed(core, all, options.angle())
                : all.stream().map(r -> new GrowlerMeter.Placed(r, clock)).toList();
        return ProbePairs.best(placed);
    }

    /** Every pair where a probe should see a reading. */
    List<PairReading> where(String wanted, double tolerance) {
        boolean ohms = test.ohms();
        double value = Given.amount(
                "--reading", wanted, ohms ? Quantity.Kind.RESISTANCE : Quantity.Kind.VOLTAGE, ohms ? "ohm" : "V");
        return switch (test) {
            case DROP -> drop(feeds.stream().findFirst()).where(value, tolerance);
            case GROWLER -> {
                Optional<Known> known = known();
                double relative = known.isEmpty()
                        ? value
                        : value * relative(known.get()) / known.get().value();
                yield scaled(GrowlerMeter.of(armature, job.growler()).where(options.angle(), relative, tolerance));
            }
            case RESISTANCE -> ResistanceTest.of(armature).where(value, tolerance);
            case GROWLER_TURNED, GROUND, GROUND_WALK, POLARITY ->
                ProbePairs.near(scaled(read(pairs(), feeds.stream().findFirst())), value, tolerance);
        };
    }

    private double brushOhms() {
        DropTest fed = DropTest.throughBrushes(armature, gear.orElseThrow(), new Supply.Current(1));
        return fed.between(brushBar(true), brushBar(false)).value();
    }

    private int brushBar(boolean positive) {
        return gear.orElseThrow().brushes().stream()
                .filter(b -> b.positive() == positive)
                .findFirst()
                .orElseThrow()
                .bars()
                .get(0);
    }

    private String setUp() {
        String fed = supply instanceof Supply.Voltage v ? number(v.volts()) + " V" : number(amperes()) + " A";
        return switch (test) {
            case DROP ->
                gear.map(g -> fed + " through the brushes: " + brushes(g))
                        .orElseGet(() -> fed + " in at bar " + feed().in() + " and out at bar " + feed().out());
            case GROUND_WALK ->
                fed + " in at bar " + feed().in() + " and out at bar "
                        + feeds.get(0).out() + ", meter from bar to shaft";
            case GROWLER, GROWLER_TURNED, RESISTANCE, GROUND, POLARITY ->
                benchTest().setUp();
        };
    }

    private static String brushes(BrushGear gear) {
        List<Integer> plus = new ArrayList<>();
        List<Integer> minus = new ArrayList<>();
        for (Brush b : gear.brushes()) {
            (b.positive() ? plus : minus).addAll(b.bars());
        }
        return "+ on bars " + join(plus) + "; - on bars " + join(minus);
    }

    private static String join(List<Integer> bars) {
        return String.join(", ", bars.stream().map(String::valueOf).toList());
    }

    private static String number(double x) {
        String text = String.format(Locale.ROOT, "%.6f", x);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private List<String> notes(List<PairReading> readings, int circuits) {
        List<String> out = new ArrayList<>();
        if (test == TestKind.DROP && readings.stream().anyMatch(r -> Double.isInfinite(r.value()))) {
            out.add("Nothing joins the places where current goes in and comes out, so none flows: feed two bars of one"
                    + " circuit.");
        }
        boolean growler = test.growler();
        boolean needsOhms = test == TestKind.RESISTANCE || (test.fed() && supply instanceof Supply.Current);
        if (needsOhms && job.coilResistance().isEmpty()) {
            out.add("The job does not give the resistance of a coil: readings are for 1 ohm a coil.");
        }
        if (options.temperature().isPresent() && job.coilResistance().isPresent()) {
            out.add("Resistance of a coil brought from " + number(Job.COLD) + " °C to "
                    + options.temperature().get() + (options.temperature().get().matches(".*[A-Za-z].*") ? "" : " °C")
                    + ".");
        }
        if (growler && options.known().isEmpty()) {
            out.add(
                    "Readings are relative: 1 is one whole face's flux through one coil. --known scales them to a meter.");
        }
        int u = winding.sidesPerSlot();
        if (growler && u > 1) {
            out.add(u + " coils share each slot and lie in the same flux, so readings repeat in groups of " + u
                    + " bars with a step from group to group. That pattern is the slots, not a fault.");
        }
        if (circuits > 1) {
            out.add("The winding makes " + circuits + " circuits that nothing joins: between bars of different circuits"
                    + " a meter shows nothing. Walk each circuit by itself.");
        }
        if (!job.equalizers().isEmpty()) {
            out.add("Equalizers join bars of one potential: a fault shows weaker, and on other pairs too.");
        }
        if (test == TestKind.GROUND_WALK) {
            out.addAll(zeroPlaces());
        }
        return out;
    }

    private List<String> zeroPlaces() {
        FeedBars f = feeds.get(0);
        List<GroundTest.ZeroPlace> places = GroundTest.zeroPlaces(GroundTest.walk(armature, f.in(), f.out(), supply));
        if (places.isEmpty()) {
            return List.of("Nothing joins the winding to the shaft: every bar reads nothing.");
        }
        List<String> words = places.stream()
                .map(z -> z.from() == z.to() ? "bar " + z.from() : "between bars " + z.from() + " and " + z.to())
                .toList();
        return List.of("The walk reads nothing at: " + String.join("; ", words)
                + ". Move the feed: the place that stays is the ground, the others are phantoms.");
    }
}
