package coilwright.cli;

import coilwright.job.TestKind;
import coilwright.job.Visible;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import picocli.CommandLine.Option;

/** How a test is set up. */
final class ProbeOptions {
    @Option(
            names = "--test",
            paramLabel = "TEST",
            required = true,
            description =
                    "drop, growler (probes walked), growler-turned (probes held still), growler-blade, resistance, "
                            + "ground, ground-walk or polarity.")
    private String test;

    @Option(
            names = "--feed",
            paramLabel = "A,B",
            description = "Bars where current enters and leaves; where the trade feeds this winding unless given.")
    private Optional<String> feed = Optional.empty();

    @Option(names = "--amps", paramLabel = "I", description = "Current fed: 2, 2 A, 500 mA; 1 A unless given.")
    private Optional<String> amps = Optional.empty();

    @Option(names = "--volts", paramLabel = "V", description = "Voltage fed, instead of --amps.")
    private Optional<String> volts = Optional.empty();

    @Option(
            names = "--brushes",
            description = "Feed through the brushes, armature at --angle; with resistance, also from brush to brush.")
    private boolean brushes;

    @Option(names = "--brush-width", paramLabel = "BARS", description = "Width of a brush in bars.")
    private Optional<Double> brushWidth = Optional.empty();

    @Option(
            names = "--angle",
            paramLabel = "DEG",
            description = "Where slot 1 stands, degrees clockwise from straight up; 0 unless given.")
    private Optional<Double> angle = Optional.empty();

    @Option(
            names = "--clock",
            paramLabel = "DEG",
            description = "Where the probes are held while the armature is turned; where they read most unless given.")
    private Optional<Double> clock = Optional.empty();

    @Option(names = "--pair", paramLabel = "A,B", description = "This pair alone.")
    private Optional<String> pair = Optional.empty();

    @Option(names = "--step", paramLabel = "N", description = "Pairs N bars apart; 1 unless given.")
    private Optional<Integer> step = Optional.empty();

    @Option(
            names = "--temperature",
            paramLabel = "C",
            description = "Of the winding, °C; the coil resistance of the job is taken to be given at 20 °C.")
    private Optional<String> temperature = Optional.empty();

    @Option(
            names = "--known",
            paramLabel = "A,B=VALUE",
            description = "What the growler's meter read on a pair known to be good, to scale all others by.")
    private Optional<String> known = Optional.empty();

    @Option(
            names = "--fault",
            paramLabel = "KIND:…",
            description = "Put a fault in first, such as open-coil:3 or bar-short:4,5; may be repeated.")
    private List<String> faults = new ArrayList<>();

    @Option(
            names = "--short",
            paramLabel = "KIND:…",
            description = "With growler-blade: look at this short, such as shorted-coil:3; may be repeated.")
    private List<String> shorts = new ArrayList<>();

    /** A test with its usual set-up. */
    static ProbeOptions usual(String test) {
        ProbeOptions usual = new ProbeOptions();
        usual.test = test;
        return usual;
    }

    /** Whether it is the blade, which has no readings. */
    boolean blade() {
        if (!test.equals(ProbeBlade.WORD)) {
            return false;
        }
        refuse("--feed", feed.isPresent());
        refuse("--amps", amps.isPresent());
        refuse("--volts", volts.isPresent());
        refuse("--brushes", brushes);
        refuse("--angle", angle.isPresent());
        refuse("--clock", clock.isPresent());
        refuse("--pair", pair.isPresent());
        refuse("--step", step.isPresent());
        refuse("--temperature", temperature.isPresent());
        refuse("--known", known.isPresent());
        return true;
    }

    /** The test, options that it has no use for refused. */
    TestKind test() {
        TestKind kind = TestKind.of(test)
                .orElseThrow(() ->
                        new UsageException("--test is \"" + Visible.cut(test) + "\", but must be one of " + words()));
        refuse("--feed", feed.isPresent() && !kind.fed());
        refuse("--amps", amps.isPresent() && !kind.fed());
        refuse("--volts", volts.isPresent() && !kind.fed());
        refuse("--brushes", brushes && kind != TestKind.DROP && kind != TestKind.RESISTANCE);
        refuse("--angle", angle.isPresent() && kind != TestKind.GROWLER && !brushes);
        refuse("--clock", clock.isPresent() && kind != TestKind.GROWLER_TURNED);
        refuse("--step", step.isPresent() && kind.ownPairs());
        refuse("--temperature", temperature.isPresent() && (kind.growler() || kind == TestKind.POLARITY));
        refuse("--known", known.isPresent() && !kind.growler());
        refuse("--short", !shorts.isEmpty());
        if (amps.isPresent() && volts.isPresent()) {
            throw new UsageException("--amps and --volts were both given: a supply holds one of them steady");
        }
        if (brushes && feed.isPresent()) {
            throw new UsageException("--brushes and --feed were both given: feed at bars or through the brushes");
        }
        if (brushWidth.isPresent() && !brushes) {
            throw new UsageException("--brush-width is used with --brushes only");
        }
        if (pair.isPresent() && step.isPresent()) {
            throw new UsageException("--pair and --step were both given: ask for one pair or for all so far apart");
        }
        return kind;
    }

    private static String words() {
        return String.join(
                ", ",
                Stream.concat(Stream.of(TestKind.values()).map(TestKind::word), Stream.of(ProbeBlade.WORD))
                        .toList());
    }

    private void refuse(String option, boolean given) {
        if (given) {
            throw new UsageException(option + " is not used with --test " + test + ": leave it out");
        }
    }

    Optional<String> feed() {
        return feed;
    }

    Optional<String> amps() {
        return amps;
    }

    Optional<String> volts() {
        return volts;
    }

    boolean brushes() {
        return brushes;
    }

    OptionalDouble brushWidth() {
        return Given.number(brushWidth);
    }

    double angle() {
        return angle.orElse(0.0);
    }

    OptionalDouble clock() {
        return Given.number(clock);
    }

    Optional<String> pair() {
        return pair;
    }

    OptionalInt step() {
        return step.isPresent() ? OptionalInt.of(step.get()) : OptionalInt.empty();
    }

    Optional<String> temperature() {
        return temperature;
    }

    Optional<String> known() {
        return known;
    }

    List<String> faults() {
        return List.copyOf(faults);
    }

    /** The shorts that a blade is to feel, however they were given. */
    List<String> shorts() {
        return Stream.concat(shorts.stream(), faults.stream()).toList();
    }
}
