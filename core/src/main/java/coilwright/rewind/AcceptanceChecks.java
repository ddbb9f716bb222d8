package coilwright.rewind;

import coilwright.rewind.Acceptance.Check;
import coilwright.rewind.Acceptance.Given;
import coilwright.rewind.Acceptance.Line;
import coilwright.rewind.Acceptance.Status;
import coilwright.rewind.Acceptance.Walk;
import coilwright.rewind.HighPotential.Applied;
import coilwright.rewind.HighPotential.Outcome;
import coilwright.rewind.HighPotential.Voltage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The checks of an acceptance, one after the other. */
final class AcceptanceChecks {
    private static final List<String> INSULATION =
            List.of("insulation-resistance", InsulationTest.PLUS_KV, "insulation-resistance-cold");
    private static final List<String> INDEX = List.of("polarization-index");
    private static final List<String> EVEN = List.of("bar-to-bar", "bar-to-bar-high", "bar-to-bar-low");
    private static final List<String> RISE = List.of("temperature-rise");

    private static final int MOST_PAIRS = 12;

    private final Given given;
    private final List<Voltage> voltages;

    AcceptanceChecks(Given given, List<Voltage> voltages) {
        this.given = given;
        this.voltages = voltages;
    }

    /** What the limits are on that an acceptance judges. */
    static List<String> quantities() {
        return Stream.of(INSULATION, INDEX, EVEN, RISE).flatMap(List::stream).toList();
    }

    /**
     * Makes every check.
     *
     * @throws IllegalArgumentException when a walk reads nothing at all, or no scheme has the name that was chosen
     */
    List<Check> all() {
        checkScheme();
        return List.of(insulation(), index(), highPotential(), barToBar(), polarity(), rise());
    }

    private void checkScheme() {
        if (given.scheme().isPresent()
                && !voltages.isEmpty()
                && voltages.stream().noneMatch(given::decides)) {
            throw new IllegalArgumentException("no scheme of the high-potential test for "
                    + given.work().key() + " is called \"" + given.scheme().get() + "\": choose one of "
                    + voltages.stream().map(Voltage::scheme).collect(Collectors.joining(", ")));
        }
    }

    /** The limits of a group that decide: the chosen, else the usual. */
    private List<Limit> deciding(List<String> group, Optional<String> usual) {
        List<Limit> chosen = given.chosen().stream()
                .filter(l -> group.contains(l.quantity()))
                .toList();
        return chosen.isEmpty() ? usual.map(Limit::of).map(List::of).orElse(List.of()) : chosen;
    }

    private List<Line> lines(List<String> group, List<Limit> deciding, List<AcceptanceVerdict> verdicts) {
        List<Line> out = new ArrayList<>();
        for (Limit l : Limit.all()) {
            if (!group.contains(l.quantity())) {
                continue;
            }
            boolean chosen = deciding.contains(l);
            List<AcceptanceVerdict> of =
                    verdicts.stream().filter(v -> v.limit().id().equals(l.id())).toList();
            if (of.isEmpty()) {
                out.add(new Line(
                        InsulationTest.byVolts(l, given.volts()), OptionalDouble.empty(), Optional.empty(), chosen));
            }
            of.forEach(v -> out.add(new Line(v.limit(), OptionalDouble.of(v.value()), Optional.of(v.pass()), chosen)));
        }
        return out;
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
        return l.words() + ", " + l.applies() + "; " + l.source().cite();
    }

    private Check insulation() {
        List<Limit> deciding = deciding(INSULATION, Optional.of(Acceptance.USUAL_INSULATION));
        List<Line> lines = lines(
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
        if (given.insulation().isPresent()
                && deciding.stream().anyMatch(l -> InsulationTest.lacksVoltage(l, given.volts()))) {
            wanted.add("that minimum goes by the rated voltage: give it (rating.volts)");
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

    private Check index() {
        List<Limit> deciding = deciding(INDEX, Optional.empty());
        List<Line> lines = lines(
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

    private Check highPotential() {
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
            wanted.add("not known yet which voltage: " + missing());
        }
        if (!given.wattsNote().isEmpty()) {
            wanted.add(given.wattsNote());
        }
        return new Check(
                "high-potential",
                "High-potential test, winding to core, " + given.work().key().replace('-', ' '),
                given.highPotential().map(a -> status(a, found)).orElse(Status.TO_DO),
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

    private String missing() {
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

    private Status status(Applied a, List<String> found) {
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

    private Check barToBar() {
        List<Limit> deciding = deciding(EVEN, Optional.of(Acceptance.USUAL_EVENNESS));
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
        List<Line> lines = lines(EVEN, deciding, verdicts);
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
        return pairs.stream().limit(MOST_PAIRS).collect(Collectors.joining(", "))
                + (pairs.size() > MOST_PAIRS ? " and " + (pairs.size() - MOST_PAIRS) + " more" : "");
    }

    private Check polarity() {
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

    private Check rise() {
        List<Limit> deciding = deciding(RISE, Optional.empty());
        List<Line> lines = lines(
                RISE, deciding, given.rise().map(TemperatureRise::verdicts).orElse(List.of()));
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
}
