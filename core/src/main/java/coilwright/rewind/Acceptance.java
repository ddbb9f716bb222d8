package coilwright.rewind;

import coilwright.rewind.HighPotential.Applied;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Outcome;
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

    private static final List<String> INSULATION =
            List.of("insulation-resistance", "insulation-resistance-plus-kv", "insulation-resistance-cold");
    private static final List<String> INDEX = List.of("polarization-index");
    private static final List<String> EVEN = List.of("bar-to-bar", "bar-to-bar-high", "bar-to-bar-low");
    private static final List<String> RISE = List.of("temperature-rise");

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
                if (!judgedQuantities().contains(l.quantity())) {
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
            return value.isEmpty()
                    ? ""
                    : Format.number(value.getAsDouble())
                            + (limit.unit().isEmpty() ? "" : " " + limit.unit().replace("percent", "%"));
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

    private static List<String> judgedQuantities() {
        List<String> out = new ArrayList<>(INSULATION);
        out.addAll(INDEX);
        out.addAll(EVEN);
        out.addAll(RISE);
        return out;
    }

    /** {@return the limits that an acceptance can be judged by, in order} */
    public static List<Limit> judgeable() {
        return Limit.all().stream()
                .filter(l -> judgedQuantities().contains(l.quantity()))
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
        checkScheme(given, voltages);
        List<Check> checks = new ArrayList<>();
        checks.add(insulation(given));
        checks.add(index(given));
        checks.add(highPotential(given, voltages));
        checks.add(barToBar(given));
        checks.add(polarity(given));
        checks.add(rise(given));
        return new Acceptance(given, voltages, checks);
    }

    private static void checkScheme(Given given, List<Voltage> voltages) {
        if (given.scheme().isPresent()
                && !voltages.isEmpty()
                && voltages.stream().noneMatch(given::decides)) {
            throw new IllegalArgumentException("no scheme of the high-potential test for "
                    + given.work().key() + " is called \"" + given.scheme().get() + "\": choose one of "
                    + voltages.stream().map(Voltage::scheme).collect(Collectors.joining(", ")));
        }
    }

    /** The limits of a group that decide: the chosen, else the usual. */
    private static List<Limit> deciding(Given given, List<String> group, Optional<String> usual) {
        List<Limit> chosen = given.chosen().stream()
                .filter(l -> group.contains(l.quantity()))
                .toList();
        return chosen.isEmpty() ? usual.map(Limit::of).map(List::of).orElse(List.of()) : chosen;
    }

    private static List<Line> lines(
            Given given, List<String> group, List<Limit> deciding, List<AcceptanceVerdict> verdicts) {
        List<Line> out = new ArrayList<>();
        for (Limit l : Limit.all()) {
            if (!group.contains(l.quantity())) {
                continue;
            }
            boolean chosen = deciding.contains(l);
            List<AcceptanceVerdict> of =
                    verdicts.stream().filter(v -> v.limit().id().equals(l.id())).toList();
            if (of.isEmpty()) {
                out.add(new Line(byVolts(l, given), OptionalDouble.empty(), Optional.empty(), chosen));
            }
            of.forEach(v -> out.add(new Line(v.limit(), OptionalDouble.of(v.value()), Optional.of(v.pass()), chosen)));
        }
        return out;
    }

    private static Limit byVolts(Limit l, Given given) {
        return l.quantity().equals("insulation-resistance-plus-kv")
                        && given.volts().isPresent()
                ? l.raisedBy(given.volts().getAsDouble() / 1000)
                : l;
    }

    private static List<Limit> decidingOf(List<Line> lines) {
        return lines.stream().filter(Line::chosen).map(Line::limit).distinct().toList();
    }

    private static Status status(List<Line> lines) {
        List<Line> deciding = lines.stream().filter(Line::chosen).toList();
        if (deciding.stream().anyMatch(l -> l.pass().filter(p -> !p).isPresent())) {
            return Status.FAILED;
        }
        if (deciding.stream().anyMatch(l -> l.pass().isEmpty())) {
            return Status.TO_DO;
        }
        return deciding.isEmpty() ? Status.NOT_JUDGED : Status.PASSED;
    }

    private static String cited(Limit l) {
        return l.words().strip().replace("percent", "%") + ", " + l.applies() + "; "
                + l.source().cite();
    }

    private static Check insulation(Given given) {
        List<Limit> deciding = deciding(given, INSULATION, Optional.of(USUAL_INSULATION));
        List<Line> lines = lines(
                given,
                INSULATION,
                deciding,
                given.insulation().map(i -> i.verdicts(given.volts())).orElse(List.of()));
        List<String> found = new ArrayList<>();
        given.insulation().ifPresent(i -> {
            found.add(Format.number(i.oneMinuteMohm()) + " Mohm after 1 minute at " + Format.number(i.celsius())
                    + " °C, which is " + Format.number(i.correctedMohm()) + " Mohm at 40 °C"
                    + (given.insulationVolts().isPresent()
                            ? "; measured with "
                                    + Format.number(given.insulationVolts().getAsDouble()) + " V"
                            : ""));
            if (!given.temperatureNoted()) {
                found.add("the temperature was not noted and is taken as " + Format.number(i.celsius())
                        + " °C: ten degrees halve or double the value, so measure it");
            }
        });
        List<String> wanted = new ArrayList<>();
        for (Limit l : decidingOf(lines)) {
            wanted.add(cited(l)
                    + (InsulationTest.isCorrected(l)
                            ? "; at 40 °C, halving for each 10 °C more (IEEE 43, form from memory, for thermoplastic"
                                    + " insulation)"
                            : "; as read"));
        }
        Limit volts = Limit.of("ir-test-volts");
        if (given.insulation().isEmpty()) {
            wanted.add("measure with " + Format.number(volts.low().orElseThrow()) + " " + volts.unit() + ", "
                    + volts.applies() + " (" + volts.source().cite() + "), all bars tied together, core earthed");
        }
        return new Check(
                "insulation-resistance",
                "Insulation resistance, winding to core",
                status(lines),
                found,
                wanted,
                lines,
                List.of("After 1 min", "Winding °C", "Test volts"));
    }

    private static Check index(Given given) {
        List<Limit> deciding = deciding(given, INDEX, Optional.empty());
        List<Line> lines = lines(
                given,
                INDEX,
                deciding,
                given.insulation().map(i -> i.verdicts(given.volts())).orElse(List.of()));
        List<String> found = new ArrayList<>();
        Optional<String> doubt = given.insulation().flatMap(InsulationTest::indexDoubt);
        given.insulation()
                .map(InsulationTest::polarizationIndex)
                .filter(OptionalDouble::isPresent)
                .ifPresent(pi -> found.add(Format.number(pi.getAsDouble()) + ", ten minutes over one"));
        doubt.ifPresent(found::add);
        boolean says = given.insulation()
                .map(i -> Limit.of("pi-meaningful").admits(i.oneMinuteMohm()))
                .orElse(true);
        Status status = status(lines);
        List<String> wanted = new ArrayList<>();
        decidingOf(lines).forEach(l -> wanted.add(cited(l)));
        if (deciding.isEmpty()) {
            wanted.add("decides only where a limit on it is chosen by the class of the insulation; it may not apply to"
                    + " small random windings");
        }
        return new Check(
                "polarization-index",
                "Polarization index",
                says || status == Status.TO_DO ? status : Status.NOT_JUDGED,
                found,
                wanted,
                lines,
                List.of("After 10 min", "Index"));
    }

    private static Check highPotential(Given given, List<Voltage> voltages) {
        List<String> found = new ArrayList<>();
        List<String> wanted = new ArrayList<>();
        given.highPotential().ifPresent(a -> found.add(a.text()));
        for (Voltage v : voltages) {
            wanted.add(v.text()
                    + notes(v)
                    + given.highPotential()
                            .flatMap(a -> a.against(v))
                            .map(o -> "; the test done was " + words(o, v))
                            .orElse(""));
        }
        if (HighPotential.conflicting(voltages)) {
            wanted.add("the schemes ask for different voltages: agree with the customer which holds, and choose it");
        }
        if (voltages.isEmpty()) {
            wanted.add("not known yet which voltage: " + missing(given));
        }
        if (!given.wattsNote().isEmpty()) {
            wanted.add(given.wattsNote());
        }
        return new Check(
                "high-potential",
                "High-potential test, winding to core, " + given.work().key().replace('-', ' '),
                given.highPotential()
                        .map(a -> status(given, a, voltages, found))
                        .orElse(Status.TO_DO),
                found,
                wanted,
                List.of(),
                List.of("Volts", "AC or DC", "Seconds"));
    }

    private static String notes(Voltage v) {
        return (v.ruleNote().isEmpty() ? "" : "; " + v.ruleNote())
                + (v.factorNote().isEmpty() ? "" : "; " + v.factorNote());
    }

    private static String words(Outcome outcome, Voltage v) {
        return switch (outcome) {
            case UNDER -> v.acLow().isEmpty() ? "under this most; the scheme names no least" : "under it";
            case KEPT -> "as this asks";
            case OVER -> "over it";
        };
    }

    private static String missing(Given given) {
        List<String> out = new ArrayList<>();
        if (given.kind().isEmpty()) {
            out.add("the kind of machine");
        }
        if (given.volts().isEmpty()) {
            out.add("the rated voltage");
        }
        if (given.watts().isEmpty()) {
            out.add("the rated output");
        }
        return "give " + String.join(", ", out);
    }

    private static Status status(Given given, Applied a, List<Voltage> voltages, List<String> found) {
        if (!a.passed()) {
            return Status.FAILED;
        }
        if (a.direct().isEmpty()) {
            found.add("it is not noted whether the voltage was alternating or direct: the test does not count");
            return Status.TO_DO;
        }
        if (a.seconds().isPresent() && a.seconds().getAsInt() < HighPotential.SECONDS) {
            found.add("held " + a.seconds().getAsInt() + " s, but " + HighPotential.SECONDS
                    + " s are asked: the test does not count");
            return Status.TO_DO;
        }
        if (a.seconds().isEmpty()) {
            found.add("it is not noted how long the voltage was held; " + HighPotential.SECONDS + " s are asked");
        }
        if (voltages.isEmpty()) {
            return Status.TO_DO;
        }
        boolean enough = voltages.stream()
                .filter(given::decides)
                .anyMatch(v -> a.against(v).orElseThrow() != Outcome.UNDER);
        if (!enough) {
            found.add("less than "
                    + given.scheme().map(s -> "the chosen scheme asks").orElse("any scheme asks")
                    + ": the test does not count");
        }
        if (voltages.stream().filter(given::decides).allMatch(v -> a.against(v).orElseThrow() == Outcome.OVER)) {
            found.add("more than is asked, which ages the insulation: do not repeat it");
        }
        return enough ? Status.PASSED : Status.TO_DO;
    }

    private static Check barToBar(Given given) {
        List<Limit> deciding = deciding(given, EVEN, Optional.of(USUAL_EVENNESS));
        List<AcceptanceVerdict> verdicts = new ArrayList<>();
        List<String> found = new ArrayList<>();
        boolean open = false;
        for (Walk w : given.walks()) {
            open |= !w.open().isEmpty();
            if (w.evenness().isPresent()) {
                Evenness e = w.evenness().get();
                verdicts.addAll(e.verdicts());
                found.add(w.test() + ", " + w.ratios().size() + " readings: highest +" + Format.number(e.highest())
                        + " % at bars " + w.pairs().get(extreme(e, 1)) + ", lowest −" + Format.number(e.lowest())
                        + " % at bars " + w.pairs().get(extreme(e, -1))
                        + ", of the mean, each over what a sound winding reads there");
            }
            if (!w.open().isEmpty()) {
                found.add(w.test() + ": off the meter's scale at bars " + some(w.open()));
            }
        }
        if (!given.missing().isEmpty()) {
            found.add("not read at bars " + some(given.missing()));
        }
        List<Line> lines = lines(given, EVEN, deciding, verdicts);
        Status status = status(lines);
        if (open) {
            status = Status.FAILED;
        } else if (!given.missing().isEmpty() && status == Status.PASSED) {
            status = Status.TO_DO;
        }
        List<String> wanted = new ArrayList<>();
        decidingOf(lines).forEach(l -> wanted.add("deviation from the mean " + cited(l)));
        if (status == Status.TO_DO) {
            wanted.add("resistance or drop of every pair of neighbouring bars of the new winding, noted in the job's"
                    + " readings with stage as-rewound");
        }
        return new Check(
                "bar-to-bar",
                "Evenness bar to bar",
                status,
                found,
                wanted,
                lines,
                List.of("Mean", "Highest, bars", "Lowest, bars"));
    }

    private static int extreme(Evenness e, int sign) {
        int best = 0;
        for (int i = 1; i < e.readings().size(); i++) {
            if (sign * (e.readings().get(i) - e.readings().get(best)) > 0) {
                best = i;
            }
        }
        return best;
    }

    private static String some(List<String> pairs) {
        return pairs.stream().limit(12).collect(Collectors.joining(", "))
                + (pairs.size() > 12 ? " and " + (pairs.size() - 12) + " more" : "");
    }

    private static Check polarity(Given given) {
        List<String> found = new ArrayList<>();
        given.polarityRight()
                .ifPresent(right -> found.add(right ? "turns, or gives its output, the right way round" : "reversed"));
        if (!given.reversed().isEmpty()) {
            found.add("a compass swings the wrong way, or not at all, at bars " + some(given.reversed()));
        }
        Status status = !given.reversed().isEmpty()
                        || given.polarityRight().filter(r -> !r).isPresent()
                ? Status.FAILED
                : given.polarityRight().isPresent() ? Status.PASSED : Status.TO_DO;
        return new Check(
                "polarity",
                "Polarity",
                status,
                found,
                List.of("every coil in the same sense; the machine turns, or its output is, the right way round"),
                List.of(),
                List.of("Found"));
    }

    private static Check rise(Given given) {
        List<Limit> deciding = deciding(given, RISE, Optional.empty());
        List<Line> lines = lines(
                given,
                RISE,
                deciding,
                given.rise().map(TemperatureRise::verdicts).orElse(List.of()));
        List<String> found = new ArrayList<>();
        given.rise()
                .ifPresent(r -> found.add(Format.number(r.riseK()) + " K by resistance; the hot winding has "
                        + Format.number(r.hotCelsius()) + " °C in the mean"));
        List<String> wanted = new ArrayList<>();
        decidingOf(lines).forEach(l -> wanted.add(cited(l) + "; " + l.note()));
        if (deciding.isEmpty()) {
            wanted.add("decides only where the limit of a thermal class is chosen; needs a run under load, with the"
                    + " resistance cold and hot and the ambient temperature");
        }
        return new Check(
                "temperature-rise",
                "Temperature rise",
                status(lines),
                found,
                wanted,
                lines,
                List.of("Cold", "at °C", "Hot", "Ambient °C"));
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
        for (String quantity : judgedQuantities()) {
            Limit.conflicts(quantity)
                    .forEach((applies, limits) -> out.add("Sources differ on " + quantity.replace('-', ' ') + ", "
                            + applies + ": "
                            + limits.stream()
                                    .map(l -> l.words().strip() + " by "
                                            + l.source().cite())
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
     * {@return what a meter must read by the deciding minimum of insulation resistance, by the winding's temperature;
     * empty where none of those that decide is corrected}
     */
    public Map<String, String> leastReadings() {
        Map<String, String> out = new LinkedHashMap<>();
        Optional<Limit> limit = checks.get(0).lines().stream()
                .filter(Line::chosen)
                .map(Line::limit)
                .filter(InsulationTest::isCorrected)
                .findFirst();
        limit.ifPresent(l -> {
            for (int celsius = 10; celsius <= 60; celsius += 10) {
                out.put(celsius + " °C", Format.number(InsulationTest.leastReading(l, celsius)) + " Mohm");
            }
        });
        return out;
    }

    /** {@return what to mind, the tests of insulation resistance and high potential together} */
    public static List<Caution> cautions() {
        List<Caution> out = new ArrayList<>(InsulationTest.cautions());
        out.addAll(HighPotential.cautions());
        return List.copyOf(out);
    }
}
