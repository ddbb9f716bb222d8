package coilwright.rewind;

import coilwright.rewind.HighPotential.Applied;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Voltage;
import coilwright.rewind.HighPotential.Work;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Acceptance of a finished winding: what was measured against every limit and voltage shipped, what is still to do, and
 * what would be acceptable there. Which limits and which scheme hold is the user's choice; what decides unless something
 * else is chosen is told with every answer.
 *
 * @param given what was measured and chosen
 * @param voltages of the high-potential test by every scheme; empty where the machine is not known well enough
 * @param checks in the order of the work
 */
public record Acceptance(Given given, List<Voltage> voltages, List<Check> checks) {
    /** Largest rated voltage taken, V. */
    public static final double MOST_VOLTS = 20_000;

    /** Largest rated output taken, W. */
    public static final double MOST_WATTS = 100e6;

    /** Largest insulation resistance taken, MΩ. */
    public static final double MOST_MOHM = 1e8;

    /** The insulation minimum that decides unless another is chosen. */
    public static final String USUAL_INSULATION = "ir-ieee43-2013";

    /** The evenness that decides unless another is chosen. */
    public static final String USUAL_EVENNESS = "evenness-limit";

    /**
     * Readings from bar to bar, each over what a sound winding reads there, so that all should be alike.
     *
     * @param test word of the test
     * @param pairs bars of each reading, as in "3-4"
     * @param ratios reading over expected, in any one unit
     * @param open pairs at which the meter was off its scale
     */
    public record Walk(String test, List<String> pairs, List<Double> ratios, List<String> open) {
        /**
         * Copies the lists.
         *
         * @param test word of the test
         * @param pairs bars of each reading, as in "3-4"
         * @param ratios reading over expected, in any one unit
         * @param open pairs at which the meter was off its scale
         */
        public Walk {
            pairs = List.copyOf(pairs);
            ratios = List.copyOf(ratios);
            open = List.copyOf(open);
        }

        /**
         * {@return how even they are; empty where nothing but open pairs was read}
         *
         * @throws IllegalArgumentException when every reading is nothing
         */
        public Optional<Evenness> evenness() {
            return ratios.isEmpty() ? Optional.empty() : Optional.of(Evenness.of(ratios));
        }
    }

    /**
     * What was measured and chosen.
     *
     * @param kind of machine
     * @param volts rated
     * @param watts rated output
     * @param wattsNote where the output comes from if it was not given; may be empty
     * @param work state of the winding
     * @param insulation test of the insulation
     * @param temperatureNoted whether the temperature of the winding was noted then
     * @param insulationVolts that it was measured with
     * @param highPotential the high-potential test
     * @param walks readings from bar to bar
     * @param missing pairs of neighbouring bars that no walk reads; empty where there is no walk
     * @param polarityRight whether it turns, or its output is, the right way round
     * @param reversed pairs at which a compass swung the wrong way or not at all
     * @param rise temperature rise
     * @param chosen limits that hold
     * @param scheme of the high-potential test that holds; empty for any
     */
    public record Given(
            Optional<MachineKind> kind,
            OptionalDouble volts,
            OptionalDouble watts,
            String wattsNote,
            Work work,
            Optional<InsulationTest> insulation,
            boolean temperatureNoted,
            OptionalDouble insulationVolts,
            Optional<Applied> highPotential,
            List<Walk> walks,
            List<String> missing,
            Optional<Boolean> polarityRight,
            List<String> reversed,
            Optional<TemperatureRise> rise,
            List<Limit> chosen,
            Optional<String> scheme) {
        /**
         * Copies the lists and checks the ranges.
         *
         * @param kind of machine
         * @param volts rated
         * @param watts rated output
         * @param wattsNote where the output comes from if it was not given; may be empty
         * @param work state of the winding
         * @param insulation test of the insulation
         * @param temperatureNoted whether the temperature of the winding was noted then
         * @param insulationVolts that it was measured with
         * @param highPotential the high-potential test
         * @param walks readings from bar to bar
         * @param missing pairs of neighbouring bars that no walk reads; empty where there is no walk
         * @param polarityRight whether it turns, or its output is, the right way round
         * @param reversed pairs at which a compass swung the wrong way or not at all
         * @param rise temperature rise
         * @param chosen limits that hold
         * @param scheme of the high-potential test that holds; empty for any
         * @throws IllegalArgumentException when a value is out of range or a limit is on something else
         */
        public Given {
            Objects.requireNonNull(work, "work");
            walks = List.copyOf(walks);
            missing = List.copyOf(missing);
            reversed = List.copyOf(reversed);
            chosen = List.copyOf(chosen);
            volts.ifPresent(
                    v -> Require.most("rated voltage", Require.positive("rated voltage", v, "V"), MOST_VOLTS, "V"));
            watts.ifPresent(
                    w -> Require.most("rated output", Require.positive("rated output", w, "W"), MOST_WATTS, "W"));
            insulation.ifPresent(i -> {
                Require.most("insulation resistance", i.oneMinuteMohm(), MOST_MOHM, "Mohm");
                i.tenMinuteMohm().ifPresent(r -> Require.most("insulation resistance", r, MOST_MOHM, "Mohm"));
            });
            insulationVolts.ifPresent(v -> Require.most("insulation test voltage", v, MOST_VOLTS, "V"));
            highPotential.ifPresent(a -> Require.most("test voltage", a.volts(), 10 * MOST_VOLTS, "V"));
            for (Limit l : chosen) {
                if (!AcceptanceChecks.quantities().contains(l.quantity())) {
                    throw new IllegalArgumentException(
                            "limit " + l.id() + " is on " + l.quantity().replace('-', ' ')
                                    + ", which an acceptance does not judge: choose one of "
                                    + judgeable().stream().map(Limit::id).collect(Collectors.joining(", ")));
                }
            }
        }

        /**
         * {@return whether a scheme decides: the one chosen by a part of its name, or any where none is chosen}
         *
         * @param voltage what a scheme asks
         */
        public boolean decides(Voltage voltage) {
            return scheme.map(s -> voltage.scheme().toLowerCase(Locale.ROOT).contains(s.toLowerCase(Locale.ROOT)))
                    .orElse(true);
        }
    }

    /** How one check stands. */
    public enum Status {
        /** As it should be. */
        PASSED,
        /** Not as it should be. */
        FAILED,
        /** Not measured yet, or not so that it counts. */
        TO_DO,
        /** Not asked for, or nothing chosen that decides. */
        NOT_JUDGED;

        /** {@return the word in files and scripts} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * A limit in a check.
     *
     * @param limit with its source
     * @param value measured, in its unit; empty where there is none
     * @param pass whether it is kept; empty where there is no value
     * @param chosen whether it decides
     */
    public record Line(Limit limit, OptionalDouble value, Optional<Boolean> pass, boolean chosen) {
        /** {@return the value with its unit, empty where there is none} */
        public String found() {
            return value.isEmpty() ? "" : limit.shown(value.getAsDouble());
        }

        /** {@return "passes", "fails" or nothing} */
        public String word() {
            return pass.map(p -> p ? "passes" : "fails").orElse("");
        }
    }

    /**
     * One check.
     *
     * @param id short name
     * @param title in words
     * @param status how it stands
     * @param found what was measured
     * @param wanted what would be acceptable, and what to do
     * @param lines every limit on it
     * @param fields names of what is written down when it is measured
     */
    public record Check(
            String id,
            String title,
            Status status,
            List<String> found,
            List<String> wanted,
            List<Line> lines,
            List<String> fields) {
        /**
         * Copies the lists.
         *
         * @param id short name
         * @param title in words
         * @param status how it stands
         * @param found what was measured
         * @param wanted what would be acceptable, and what to do
         * @param lines every limit on it
         * @param fields names of what is written down when it is measured
         */
        public Check {
            found = List.copyOf(found);
            wanted = List.copyOf(wanted);
            lines = List.copyOf(lines);
            fields = List.copyOf(fields);
        }
    }

    /** How it ended. */
    public enum Verdict {
        /** Every check passed. */
        ACCEPTED("accepted"),
        /** A check failed. */
        NOT_ACCEPTED("not accepted"),
        /** Nothing failed, but something is still to do. */
        INCOMPLETE("incomplete");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }

        /** {@return the word in files and scripts} */
        public String word() {
            return word;
        }
    }

    /**
     * Copies the lists.
     *
     * @param given what was measured and chosen
     * @param voltages of the high-potential test by every scheme; empty where the machine is not known well enough
     * @param checks in the order of the work
     */
    public Acceptance {
        voltages = List.copyOf(voltages);
        checks = List.copyOf(checks);
    }

    /** {@return the limits that an acceptance can be judged by, in order} */
    public static List<Limit> judgeable() {
        return Limit.all().stream()
                .filter(l -> AcceptanceChecks.quantities().contains(l.quantity()))
                .toList();
    }

    /**
     * Judges a winding.
     *
     * @param given what was measured and chosen
     * @return every check, with what is still to do
     * @throws IllegalArgumentException when a walk reads nothing at all, or no scheme has the name that was chosen
     */
    public static Acceptance of(Given given) {
        List<Voltage> voltages = given.kind().isEmpty()
                        || given.volts().isEmpty()
                        || given.watts().isEmpty()
                ? List.of()
                : HighPotential.voltages(
                        given.kind().get(),
                        given.volts().getAsDouble(),
                        given.watts().getAsDouble(),
                        given.work());
        return new Acceptance(given, voltages, new AcceptanceChecks(given, voltages).all());
    }

    /** {@return how it ended} */
    public Verdict verdict() {
        if (checks.stream().anyMatch(c -> c.status() == Status.FAILED)) {
            return Verdict.NOT_ACCEPTED;
        }
        return toDo().isEmpty() ? Verdict.ACCEPTED : Verdict.INCOMPLETE;
    }

    /** {@return the checks still to do, in order} */
    public List<Check> toDo() {
        return checks.stream().filter(c -> c.status() == Status.TO_DO).toList();
    }

    /** {@return the verdict in a sentence} */
    public String verdictText() {
        return switch (verdict()) {
            case ACCEPTED -> "ACCEPTED by the limits that decide.";
            case NOT_ACCEPTED -> "NOT ACCEPTED: " + titles(Status.FAILED) + ".";
            case INCOMPLETE -> "INCOMPLETE: nothing failed, but still to do: " + titles(Status.TO_DO) + ".";
        };
    }

    private String titles(Status status) {
        return checks.stream()
                .filter(c -> c.status() == status)
                .map(c -> c.id().replace('-', ' '))
                .collect(Collectors.joining(", "));
    }

    /** {@return where editions and schemes say different things, in words} */
    public List<String> conflicts() {
        List<String> out = new ArrayList<>();
        for (String quantity : AcceptanceChecks.quantities()) {
            Limit.conflicts(quantity)
                    .forEach((applies, limits) -> out.add("Sources differ on " + quantity.replace('-', ' ') + ", "
                            + applies + ": "
                            + limits.stream()
                                    .map(l -> l.words() + " by " + l.source().cite())
                                    .collect(Collectors.joining("; "))));
        }
        if (HighPotential.conflicting(voltages)) {
            out.add("Schemes differ on the high-potential test: "
                    + voltages.stream()
                            .map(v -> v.scheme() + " " + (v.acLow().isEmpty() ? "not over " : "")
                                    + Format.number(v.acHigh()) + " V AC")
                            .collect(Collectors.joining(", "))
                    + ".");
        }
        return List.copyOf(out);
    }

    /** {@return the machine in words} */
    public Map<String, String> facts() {
        Map<String, String> out = new LinkedHashMap<>();
        out.put(
                "Kind of machine",
                given.kind().map(k -> k.key().replace('-', ' ')).orElse("not given"));
        out.put(
                "Rated voltage",
                given.volts().isPresent() ? Format.number(given.volts().getAsDouble()) + " V" : "not given");
        out.put(
                "Rated output",
                given.watts().isPresent() ? Format.number(given.watts().getAsDouble()) + " W" : "not given");
        out.put("State of the winding", given.work().key().replace('-', ' '));
        return out;
    }

    /**
     * {@return what a meter must read by the deciding minima of insulation resistance together, by the winding's
     * temperature; empty where none of those that decide is corrected, or one goes by a rated voltage not given}
     */
    public Map<String, String> leastReadings() {
        Map<String, String> out = new LinkedHashMap<>();
        List<Limit> limits = checks.get(0).lines().stream()
                .filter(Line::chosen)
                .map(Line::limit)
                .filter(InsulationTest::isCorrected)
                .toList();
        if (limits.isEmpty() || limits.stream().anyMatch(l -> InsulationTest.lacksVoltage(l, given.volts()))) {
            return out;
        }
        for (int celsius = 10; celsius <= 60; celsius += 10) {
            double t = celsius;
            double most = limits.stream()
                    .mapToDouble(l -> InsulationTest.leastReading(l, t))
                    .max()
                    .getAsDouble();
            out.put(celsius + " °C", Format.number(most) + " Mohm");
        }
        return out;
    }

    /** {@return what to mind, the tests of insulation resistance and high potential together} */
    public static List<Caution> cautions() {
        List<Caution> out = new ArrayList<>(InsulationTest.cautions());
        out.addAll(HighPotential.cautions());
        return List.copyOf(out);
    }
}
