package coilwright.sheet;

import coilwright.KeptText;
import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.PairReading;
import coilwright.job.AsFound;
import coilwright.job.AsRewound;
import coilwright.job.BadInputException;
import coilwright.job.Banding;
import coilwright.job.CommutatorSizes;
import coilwright.job.HighPotentialDone;
import coilwright.job.InsulationState;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Measured;
import coilwright.job.Particulars;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.Rating;
import coilwright.job.ReadingSet;
import coilwright.job.RunOutEntry;
import coilwright.job.TakenReading;
import coilwright.job.TestKind;
import coilwright.job.WireChoice;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.InsulationBuild;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;

/** Made-up jobs for documents. */
final class RecordJobs {
    /** Titles and notes that try to be more than text. */
    static final List<String> HOSTILE = List.of(
            "<script>alert(1)</script>",
            "</style><img src=x onerror=alert(1)>",
            "\"' onload=\"x\" &amp; &#60;b&#62; ]]> -->",
            "א ב 🧲 مرحبا \u200f abc \u200e x",
            "}body{display:none}",
            "javascript:alert(1)",
            "a".repeat(180),
            "word ".repeat(30).strip());

    private final Random random;

    private RecordJobs(long seed) {
        this.random = new Random(seed);
    }

    /** The job with every section. */
    static Job full() {
        try {
            return JobReader.parse("full-job.yaml", KeptText.of(RecordJobs.class, "full-job.yaml"));
        } catch (BadInputException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A job of which no more than the winding is known. */
    static Job bare() {
        return Job.of("Bare", new Armature(3, 3, 2, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    /** A job with sections as they fall. */
    static Job random(long seed) {
        return new RecordJobs(seed).job();
    }

    private Job job() {
        Job job = switch (random.nextInt(5)) {
            case 0 -> bare();
            case 1 -> Job.of(text(), Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.RETROGRESSIVE));
            case 2 -> Job.of(text(), Armature.of(24, 48, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
            case 3 -> Job.of(text(), Armature.of(21, 63, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
            default -> Job.of(text(), Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.RETROGRESSIVE));
        };
        if (random.nextBoolean()) {
            job = job.withTurns(1 + random.nextInt(200));
        }
        List<ReadingSet> sets = new ArrayList<>();
        for (ReadingSet.Stage stage : ReadingSet.Stage.values()) {
            if (random.nextBoolean()) {
                sets.add(readings(job, stage));
            }
        }
        return job.withReadings(sets).withParticulars(particulars(job.armature().bars()));
    }

    private ReadingSet readings(Job job, ReadingSet.Stage stage) {
        BenchArmature armature = job.benchArmature();
        FeedBars feed = FeedBars.advised(armature.winding(), false).get(0);
        boolean drop = random.nextBoolean();
        BenchTest test = drop ? new BenchTest.Drop(feed.in(), feed.out(), 2) : new BenchTest.Resistance();
        List<TakenReading> taken = new ArrayList<>();
        for (PairReading r : test.readWalk(armature)) {
            taken.add(
                    Double.isInfinite(r.value()) || random.nextInt(30) == 0
                            ? new TakenReading(r.from(), r.to(), new TakenReading.Gap())
                            : TakenReading.of(r.from(), r.to(), String.format(Locale.ROOT, "%.4f", r.value() * 1000)));
        }
        return new ReadingSet(
                Optional.of(LocalDate.of(2021, 7, 12)),
                drop ? TestKind.DROP : TestKind.RESISTANCE,
                drop
                        ? Optional.of(new ReadingSet.GivenFeed(feed.in(), feed.out(), new BigDecimal(2)))
                        : Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(drop ? "mV" : "mohm"),
                random.nextBoolean() ? Optional.of(text()) : Optional.empty(),
                random.nextBoolean() ? Optional.of(q("21 °C", Quantity.Kind.TEMPERATURE)) : Optional.empty(),
                taken,
                stage);
    }

    private Particulars particulars(int bars) {
        return new Particulars(
                maybe(() -> new Rating(
                        maybe(() -> MachineKind.DC_MOTOR),
                        maybe(() -> q("110 V", Quantity.Kind.VOLTAGE)),
                        maybe(() -> q("2.5 kA", Quantity.Kind.CURRENT)),
                        maybe(() -> q("3 hp", Quantity.Kind.POWER)),
                        maybe(() -> q("1500 rpm", Quantity.Kind.SPEED)),
                        maybe(this::text))),
                maybe(() -> WireChoice.of("18 AWG", InsulationBuild.NEMA_HEAVY)),
                random.nextBoolean() ? full().particulars().core() : Optional.empty(),
                maybe(() -> new CommutatorSizes(
                        maybe(() -> q("48 mm", Quantity.Kind.LENGTH)),
                        maybe(() -> q("1.75 in", Quantity.Kind.LENGTH)),
                        maybe(() -> q("30 thou", Quantity.Kind.LENGTH)),
                        maybe(() -> q("0 mm", Quantity.Kind.LENGTH)),
                        maybe(() -> q("8 mm", Quantity.Kind.LENGTH)),
                        runOut(bars))),
                maybe(() -> new AsFound(
                        maybe(() -> LocalDate.of(2021, 7, 12)),
                        maybe(this::text),
                        maybe(this::measured),
                        random.nextBoolean()
                                ? List.of(new InsulationState(
                                        text(), InsulationState.Verdict.TOUCH_UP, maybe(this::text)))
                                : List.of(),
                        maybe(this::banding))),
                maybe(() -> random.nextBoolean()
                        ? Plan.same()
                        : new Plan(
                                maybe(() -> q("220 V", Quantity.Kind.VOLTAGE)),
                                Optional.empty(),
                                OptionalInt.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                OptionalInt.empty(),
                                Optional.empty())),
                maybe(() -> new AsRewound(
                        maybe(() -> LocalDate.of(2021, 8, 2)),
                        maybe(this::text),
                        random.nextBoolean() ? OptionalInt.of(7) : OptionalInt.empty(),
                        maybe(() -> WireChoice.of("0.85 mm", InsulationBuild.IEC_GRADE_2)),
                        maybe(() -> q("280 g", Quantity.Kind.MASS)),
                        maybe(this::measured),
                        maybe(() -> new HighPotentialDone(
                                q("1 kV", Quantity.Kind.VOLTAGE),
                                maybe(() -> HighPotentialDone.Current.DC),
                                OptionalInt.empty(),
                                HighPotentialDone.Result.FAILED)),
                        maybe(() -> AsRewound.Polarity.REVERSED),
                        maybe(this::banding),
                        maybe(this::text))),
                random.nextBoolean() ? List.of(text(), text()) : List.of());
    }

    private List<RunOutEntry> runOut(int bars) {
        List<RunOutEntry> out = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            if (random.nextInt(3) > 0) {
                out.add(new RunOutEntry(bar, q("0.0" + random.nextInt(10) + " mm", Quantity.Kind.LENGTH)));
            }
        }
        return out;
    }

    private Banding banding() {
        return new Banding(
                Banding.Material.STEEL_WIRE,
                OptionalInt.of(3),
                OptionalInt.empty(),
                maybe(() -> q("0.8 mm", Quantity.Kind.LENGTH)),
                maybe(() -> q("0.5 in", Quantity.Kind.LENGTH)),
                maybe(this::text));
    }

    private Measured measured() {
        Optional<Quantity> one = maybe(() -> q("120 Mohm", Quantity.Kind.RESISTANCE));
        return new Measured(
                maybe(() -> q("86 °F", Quantity.Kind.TEMPERATURE)),
                maybe(() -> q("81 mohm", Quantity.Kind.RESISTANCE)),
                maybe(() -> q("0.35 ohm", Quantity.Kind.RESISTANCE)),
                one,
                one.isPresent() ? maybe(() -> q("300 Mohm", Quantity.Kind.RESISTANCE)) : Optional.empty(),
                maybe(() -> q("500 V", Quantity.Kind.VOLTAGE)));
    }

    private <T> Optional<T> maybe(java.util.function.Supplier<T> value) {
        return random.nextInt(3) > 0 ? Optional.of(value.get()) : Optional.empty();
    }

    private String text() {
        return HOSTILE.get(random.nextInt(HOSTILE.size()));
    }

    private static Quantity q(String text, Quantity.Kind kind) {
        return Quantity.parse(text, kind);
    }
}
