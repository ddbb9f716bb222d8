package coilwright.commutator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import coilwright.commutator.CommutatorReport.Given;
import coilwright.commutator.CommutatorReport.Verdict;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CommutatorReportTest {
    private static List<Reading> readings(int bars, IntToDoubleFunction height) {
        return IntStream.rangeClosed(1, bars)
                .mapToObj(b -> new Reading(b, height.applyAsDouble(b)))
                .toList();
    }

    /** Off centre by 0.02 mm towards 90°, and bar 13 of 24 stands out by 0.03 mm. */
    private static List<Reading> offCentre() {
        return readings(24, b -> 0.02 * Math.sin(2 * Math.PI * (b - 1) / 24) + (b == 13 ? 0.03 : 0));
    }

    private static Given sizes(double diameter, double minimum, TruingCut.Centring centring, String... limits) {
        return new Given(
                OptionalDouble.of(diameter),
                OptionalDouble.empty(),
                OptionalDouble.of(minimum),
                OptionalDouble.of(0.6),
                OptionalDouble.of(0.5),
                0,
                centring,
                Stream.of(limits).map(CommutatorLimit::of).toList());
    }

    @ParameterizedTest
    @CsvSource({
        // 0.002 in, brush maker's note; 0.05 mm and 0.2 mm of undercut, car starter service data, 1997.
        "AS_READ, brush-maker, 39, WITHIN_LIMITS",
        "AS_READ, starter-generator, 39, OUT_OF_LIMITS",
        "AS_READ, starter-generator-undercut, 39, WITHIN_LIMITS",
        "AS_READ, practice-depth, 39, NO_LIMIT_CHOSEN",
        "AS_READ, fork-lift-starter-wear, 39, INCOMPLETE",
        "AS_READ, brush-maker, 39.99, UNDER_MINIMUM",
        "AS_READ, starter-generator, 39.99, OUT_OF_LIMITS",
        "RECENTRED, brush-maker, 39, WITHIN_LIMITS",
    })
    void verdicts(TruingCut.Centring centring, String limit, double minimum, Verdict verdict) {
        CommutatorReport report = CommutatorReport.of(24, offCentre(), sizes(40, minimum, centring, limit));
        assertThat(report.verdict()).isEqualTo(verdict);
        assertThat(report.refused()).isEqualTo(verdict == Verdict.OUT_OF_LIMITS || verdict == Verdict.UNDER_MINIMUM);
        assertThat(report.verdictLines()).isNotEmpty();
    }

    @Test
    void recentredReadingsAreJudgedByTheOwnShape() {
        // Off centre alone, 0.08 mm on the gauge: out of a 0.05 mm limit as read, within it about its own centre.
        List<Reading> round = readings(36, b -> 0.04 * Math.cos(2 * Math.PI * (b - 1) / 36));
        assertThat(CommutatorReport.of(36, round, sizes(40, 38, TruingCut.Centring.AS_READ, "car-starter-1997"))
                        .verdict())
                .isEqualTo(Verdict.OUT_OF_LIMITS);
        CommutatorReport own =
                CommutatorReport.of(36, round, sizes(40, 38, TruingCut.Centring.RECENTRED, "car-starter-1997"));
        assertThat(own.verdict()).isEqualTo(Verdict.WITHIN_LIMITS);
        assertThat(own.notes()).anyMatch(n -> n.contains("on its own bearings the eccentricity counts"));
        assertThat(own.planned().orElseThrow().depthMm()).isCloseTo(0, within(1e-12));
        assertThat(own.cutDepthMm(TruingCut.Centring.AS_READ)).isCloseTo(0.08, within(1e-12));
    }

    @Test
    void theWordsTellBarsAndPlaces() {
        CommutatorReport report =
                CommutatorReport.of(24, offCentre(), sizes(40, 38, TruingCut.Centring.AS_READ, "exciter-depth"));
        assertThat(report.facts().get("Standing out")).startsWith("bar 13 by +0.02");
        assertThat(report.facts().get("Largest step")).contains("down from bar 13 to bar 14");
        assertThat(report.facts().get("Own shape, eccentricity out")).contains("highest bar 13");
        assertThat(report.cutLines()).hasSize(2);
        assertThat(report.cutLines().keySet()).first().asString().endsWith("(planned)");
        // TM 55-2210-223-34: 1/16 to 3/32 in.
        assertThat(report.undercutLines().get(0)).contains(" mm to 2.381 mm deep (1/16-3/32 in");
        assertThat(report.judged()).extracting(CommutatorReport.Judged::limit).doesNotHaveDuplicates();
    }

    @Property(tries = 200)
    void theHighSideStandsWhereTheClockSays(
            @ForAll @IntRange(min = 12, max = 90) int bars, @ForAll @DoubleRange(min = 0, max = 359) double phase) {
        RunOut r = RunOut.of(
                bars, readings(bars, b -> 0.05 * Math.cos(2 * Math.PI * (b - 1) / bars - Math.toRadians(phase))));
        String[] clock = r.highSideClock().split(":");
        double hours = Integer.parseInt(clock[0]) + Integer.parseInt(clock[1]) / 60.0;
        assertThat(Math.abs(Math.IEEEremainder(30 * hours - phase, 360))).isLessThanOrEqualTo(7.5 + 1e-6);
        assertThat(r.isRound()).isTrue();
        assertThat(r.recentred().tirMm()).isLessThan(1e-9);
    }

    @Test
    void fewReadingsAreToldAsSuch() {
        CommutatorReport three = CommutatorReport.of(3, readings(3, b -> 0.01 * b), Given.nothing());
        assertThat(three.notes()).anyMatch(n -> n.startsWith("Three readings always fit"));
        CommutatorReport half = CommutatorReport.of(24, offCentre().subList(0, 13), Given.nothing());
        assertThat(half.notes()).anyMatch(n -> n.contains("180° without one"));
        assertThat(half.facts().get("Bars read"))
                .isEqualTo("13 of 24; not read: 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24");
        List<Reading> everyThird =
                readings(60, b -> 0).stream().filter(r -> r.bar() % 3 == 1).toList();
        assertThat(CommutatorReport.of(60, everyThird, Given.nothing()).facts().get("Bars read"))
                .endsWith("17, 18 and 28 more");
    }

    @Test
    void barsOnOneSideDoNotTellTheCentre() {
        // Five bars of forty, 9° apart: their fit may put the centre metres away.
        List<Reading> few = readings(40, b -> 0.01 * (b % 3)).subList(0, 5);
        assertThatThrownBy(() -> CommutatorReport.of(40, few, sizes(48, 45, TruingCut.Centring.AS_READ)))
                .hasMessage("the bars read leave 324° of the commutator without a reading, and its centre is not told"
                        + " from one side: read bars all the way round");
    }

    @Test
    void withoutSizesTheDepthOfTheCutIsToldAndTheRestAskedFor() {
        CommutatorReport report = CommutatorReport.of(24, offCentre(), Given.nothing());
        assertThat(report.cuts()).isEmpty();
        assertThat(report.cutLines().values()).allMatch(l -> l.contains("the diameter is not given"));
        assertThat(report.undercut()).isEmpty();
        assertThat(report.undercutLines().get(0))
                .contains("0.762 mm deep (about 0.030 in")
                .contains("mica thickness is not given")
                .contains("its depth now is not given");
        assertThat(report.verdict()).isEqualTo(Verdict.NO_LIMIT_CHOSEN);
    }

    @Test
    void micaThatTheToolReachesIsLevel() {
        Given given = new Given(
                OptionalDouble.of(40),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(0.6),
                OptionalDouble.of(0.01),
                0,
                TruingCut.Centring.AS_READ,
                List.of());
        assertThat(CommutatorReport.of(24, offCentre(), given).undercutLines().get(0))
                .contains("the mica lies level with the bars where most is taken off");
    }

    @Test
    void absurdSizesAreRefused() {
        assertThatThrownBy(() -> sizes(6000, 38, TruingCut.Centring.AS_READ))
                .hasMessage("commutator diameter is 6000 mm, but may be at most 5000 mm: check the unit");
        assertThatThrownBy(() -> new Reading(4, 250)).hasMessageContaining("a gauge reads at most 100 mm either way");
        // 300 × 0.6 mm of mica on 125.7 mm of circle.
        assertThatThrownBy(() -> sizes(40, 38, TruingCut.Centring.AS_READ).checkMica(300))
                .hasMessageContaining("leaves no copper on a diameter of 40 mm");
        assertThatThrownBy(() -> new Given(
                        OptionalDouble.of(40),
                        OptionalDouble.of(39),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        0,
                        TruingCut.Centring.AS_READ,
                        List.of()))
                .hasMessageContaining("a commutator does not grow");
        assertThatThrownBy(() -> CommutatorReport.of(24, offCentre().subList(0, 2), Given.nothing()))
                .hasMessageContaining("only 2 bars are read");
    }

    @Test
    void cautionsNameWhatHurts() {
        assertThat(String.join(" ", TruingCut.cautions()))
                .contains("eye protection")
                .contains("Mica dust")
                .contains("No file, steel scraper or screwdriver")
                .contains("local codes")
                .contains("few thousandths");
    }

    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static Given given(
            OptionalDouble diameter,
            OptionalDouble whenNew,
            OptionalDouble minimum,
            OptionalDouble mica,
            OptionalDouble undercut,
            double allowance) {
        return new Given(diameter, whenNew, minimum, mica, undercut, allowance, TruingCut.Centring.AS_READ, List.of());
    }

    /** Each size in turn: its largest is taken, a hair more is not, nor what must be over nought. */
    @ParameterizedTest
    @CsvSource({
        "commutator diameter, 5000, mm, over 0",
        "new diameter, 5000, mm, over 0",
        "minimum diameter, 5000, mm, over 0",
        "mica thickness, 10, mm, over 0",
        "undercut depth, 20, mm, 0 or more",
        "allowance, 20, mm, 0 or more"
    })
    void sizesHaveRanges(String name, double most, String unit, String least) {
        DoubleFunction<Given> one = x -> {
            OptionalDouble v = OptionalDouble.of(x);
            return switch (name) {
                case "commutator diameter" -> given(v, NONE, NONE, NONE, NONE, 0);
                case "new diameter" -> given(NONE, v, NONE, NONE, NONE, 0);
                case "minimum diameter" -> given(NONE, NONE, v, NONE, NONE, 0);
                case "mica thickness" -> given(NONE, NONE, NONE, v, NONE, 0);
                case "undercut depth" -> given(NONE, NONE, NONE, NONE, v, 0);
                default -> given(NONE, NONE, NONE, NONE, NONE, x);
            };
        };
        assertThat(one.apply(most)).isNotNull();
        assertThatThrownBy(() -> one.apply(most + 0.01))
                .hasMessage(
                        "%s is %s.01 %s, but may be at most %s %s: check the unit",
                        name, Math.round(most), unit, Math.round(most), unit);
        if (least.equals("0 or more")) {
            assertThat(one.apply(0)).isNotNull();
        } else {
            assertThatThrownBy(() -> one.apply(0)).hasMessage("%s is 0 mm, but must be over 0: measure it again", name);
        }
        assertThatThrownBy(() -> one.apply(-0.5)).hasMessageStartingWith(name + " is -0.5 mm, but must be " + least);
        assertThatThrownBy(() -> one.apply(Double.NaN))
                .hasMessageStartingWith(name + " is no number, but must be " + least);
    }

    @Test
    void sizesGoTogether() {
        OptionalDouble d30 = OptionalDouble.of(30);
        assertThat(given(d30, d30, NONE, NONE, OptionalDouble.of(14.9), 0)).isNotNull();
        assertThat(given(NONE, d30, NONE, NONE, OptionalDouble.of(15), 0)).isNotNull();
        assertThat(given(OptionalDouble.of(31), NONE, NONE, NONE, NONE, 0)).isNotNull();
        assertThatThrownBy(() -> given(d30, NONE, NONE, NONE, OptionalDouble.of(15), 0))
                .hasMessage("undercut depth is 15 mm, deeper than a commutator of 30 mm: check both and their units");
        // 60 · 0.3 mm of mica leaves most of the 125.7 mm round a commutator of 40 mm; 300 · 0.6 mm leaves none.
        given(OptionalDouble.of(40), NONE, NONE, OptionalDouble.of(0.3), NONE, 0)
                .checkMica(60);
        given(NONE, NONE, NONE, OptionalDouble.of(0.6), NONE, 0).checkMica(300);
        given(OptionalDouble.of(40), NONE, NONE, NONE, NONE, 0).checkMica(300);
        Given thick = sizes(40, 38, TruingCut.Centring.AS_READ);
        assertThatThrownBy(() -> CommutatorReport.of(300, readings(300, b -> 0), thick))
                .hasMessage(
                        "mica of 0.6 mm between 300 bars leaves no copper on a diameter of 40 mm: check both and their"
                                + " units");
    }

    @Test
    void factsOfTheSizes() {
        assertThat(Given.nothing().facts()).isEmpty();
        assertThat(given(
                                OptionalDouble.of(40),
                                OptionalDouble.of(42),
                                OptionalDouble.of(38.1),
                                OptionalDouble.of(0.762),
                                OptionalDouble.of(0),
                                0)
                        .facts())
                .containsExactly(
                        entry("Diameter over the bars", "40 mm"),
                        entry("Diameter when new", "42 mm"),
                        entry("Least diameter", "38.1 mm"),
                        entry("Mica", "0.762 mm (30 thou)"),
                        entry("Undercut now", "0 mm (0 thou)"));
    }

    /**
     * Worked by hand: the mean is 0.03/24 mm; towards 0° the fit holds −2 · 0.03/24 mm, towards 90° 0.02 mm, so
     * e = 0.0202 mm towards 97.1°; bar 13 keeps 0.03 − 0.00125 − 0.0025 mm. From bar 13 to 14 the height falls by 0.03 +
     * 0.02 sin 15° mm.
     */
    @Test
    void factsOfTheReadings() {
        var facts = CommutatorReport.of(24, offCentre(), Given.nothing()).facts();
        assertThat(facts.get("Bars read")).isEqualTo("24 of 24");
        assertThat(facts.get("Total indicator reading")).isEqualTo("0.05 mm (2 thou); highest bar 13, lowest bar 19");
        assertThat(facts.get("Eccentricity"))
                .isEqualTo(
                        "0.02 mm (0.8 thou), which swings the gauge by 0.04 mm; high side at bar 7, 97° on from bar 1"
                                + " (3:00 on a clock's face with bar 1 at 12)");
        assertThat(facts.get("Own shape, eccentricity out"))
                .startsWith("0.03 mm (1.2 thou) TIR; highest bar 13, lowest bar 1");
        assertThat(facts.get("Largest step")).isEqualTo("0.035 mm (1.4 thou) down from bar 13 to bar 14");
        assertThat(facts.get("Standing out"))
                .isEqualTo("bar 13 by +0.026 mm: read again, and look for a lifted or sunken bar");

        var mirrored = CommutatorReport.of(
                        24,
                        offCentre().stream()
                                .map(r -> new Reading(r.bar(), -r.heightMm()))
                                .toList(),
                        Given.nothing())
                .facts();
        assertThat(mirrored.get("Largest step")).endsWith(" up from bar 13 to bar 14");
        assertThat(mirrored.get("Standing out")).startsWith("bar 13 by −0.026 mm");
        assertThat(mirrored.get("Eccentricity")).contains("high side at bar 19, 277° on from bar 1");
    }

    @Test
    void factsOfACommutatorThatIsTrue() {
        var facts = CommutatorReport.of(6, readings(6, b -> b == 1 ? 0.0001 : 0), Given.nothing())
                .facts();
        assertThat(facts.get("Eccentricity")).isEqualTo("0 mm (0 thou)");
        assertThat(facts.get("Own shape, eccentricity out")).isEqualTo("0 mm (0 thou) TIR");
        assertThat(facts.get("Standing out")).isEqualTo("no bar");
        assertThat(CommutatorReport.of(
                                6, List.of(new Reading(1, 0), new Reading(3, 0.1), new Reading(5, 0)), Given.nothing())
                        .facts()
                        .get("Largest step"))
                .isEqualTo("no two neighbours were read");
        // A high side that rounds to a whole turn is told as 0°.
        assertThat(CommutatorReport.of(
                                36,
                                readings(36, b -> 0.1 * Math.cos(2 * Math.PI * (b - 1) / 36 + Math.toRadians(0.3))),
                                Given.nothing())
                        .facts()
                        .get("Eccentricity"))
                .contains("high side at bar 1, 0° on from bar 1 (12:00");
    }

    /** Of 60 bars, those out come in pairs across and the others in, so that mean and eccentricity stay nought. */
    @ParameterizedTest
    @CsvSource({"3, 12, ''", "4, 16, ' and 4 more'"})
    void twelveThatStandOutAreNamed(int fours, int out, String more) {
        CommutatorReport report = CommutatorReport.of(
                60,
                readings(60, b -> (b - 1) % 15 < fours ? ((b - 1) / 15 % 2 == 0 ? 0.05 : -0.05) : 0),
                Given.nothing());
        assertThat(report.runOut().standouts()).hasSize(out);
        assertThat(report.facts().get("Standing out").split(", bar")).hasSize(12);
        assertThat(report.facts().get("Standing out"))
                .endsWith(" mm" + more + ": read again, and look for a lifted or sunken bar");
    }

    @Test
    void twelveBarsNotReadAreNamed() {
        List<Reading> read =
                IntStream.range(0, 11).mapToObj(i -> offCentre().get(2 * i)).toList();
        assertThat(CommutatorReport.of(24, read, Given.nothing()).facts().get("Bars read"))
                .endsWith("22, 23 and 1 more");
    }

    @Test
    void limitsJudgedOneByOne() {
        Given given = new Given(
                OptionalDouble.of(30.1),
                OptionalDouble.of(32),
                OptionalDouble.of(30),
                NONE,
                OptionalDouble.of(0.15),
                0,
                TruingCut.Centring.AS_READ,
                Stream.of("fork-lift-starter-wear", "fork-lift-starter-undercut", "fork-lift-starter")
                        .map(CommutatorLimit::of)
                        .toList());
        CommutatorReport report = CommutatorReport.of(24, offCentre(), given);
        assertThat(report.judged().stream().filter(CommutatorReport.Judged::chosen))
                .extracting(j -> j.limit().id(), CommutatorReport.Judged::word, CommutatorReport.Judged::value)
                .containsExactly(
                        tuple("fork-lift-starter", "passes", "0.05 mm"),
                        tuple("fork-lift-starter-undercut", "fails", "0.15 mm"),
                        tuple("fork-lift-starter-wear", "passes", "1.9 mm"));
        // Depth of the cut 0.05 mm, of which the lowest bar lies 0.02125 mm under the mean: 30.0575 mm is left.
        assertThat(report.verdictLines())
                .containsExactly(
                        "OUT OF THE CHOSEN LIMITS.",
                        "fork-lift-starter: 0.05 mm passes: fork lift starter, 0.2 mm (0.008 in) (repair above it);"
                                + " TM 10-3930-653-14&P (read in the source)",
                        "fork-lift-starter-undercut: 0.15 mm fails: fork lift starter, 0.2 mm; TM 10-3930-653-14&P"
                                + " (read in the source)",
                        "fork-lift-starter-wear: 1.9 mm passes: fork lift starter, 2 mm; TM 10-3930-653-14&P (read in"
                                + " the source)");
        // The mica's thickness is not known, so there is no advice on the saw.
        assertThat(report.undercut()).isEmpty();
    }

    @Test
    void whatIsNotMeasuredIsNotKnown() {
        CommutatorReport report = CommutatorReport.of(
                24, offCentre(), sizes(40, 39, TruingCut.Centring.AS_READ, "fork-lift-starter-wear"));
        assertThat(report.judged().stream().filter(CommutatorReport.Judged::chosen))
                .singleElement()
                .satisfies(j -> assertThat(j.word()).isEqualTo("not known"))
                .satisfies(j -> assertThat(j.value()).isEmpty());
        assertThat(report.verdictLines().get(1))
                .isEqualTo(
                        "fork-lift-starter-wear: not known, measure it; 2 mm, TM 10-3930-653-14&P (read in the source)");
    }

    @Test
    void outOfLimitsAndUnderTheMinimumAreBothTold() {
        assertThat(CommutatorReport.of(
                                24, offCentre(), sizes(40, 39.99, TruingCut.Centring.AS_READ, "starter-generator"))
                        .verdictLines())
                .hasSize(3)
                .endsWith("A cut that cleans up goes under the least diameter as well: renew the commutator.");
        assertThat(CommutatorReport.of(24, offCentre(), sizes(40, 39, TruingCut.Centring.AS_READ, "starter-generator"))
                        .verdictLines())
                .hasSize(2);
        assertThat(CommutatorReport.of(24, offCentre(), sizes(40, 39.99, TruingCut.Centring.AS_READ, "brush-maker"))
                        .verdictLines())
                .hasSize(2)
                .first()
                .asString()
                .startsWith("UNDER THE MINIMUM");
        assertThat(Verdict.UNDER_MINIMUM.word()).isEqualTo("under-minimum");
        assertThat(TruingCut.Centring.AS_READ.word()).isEqualTo("as-read");
    }

    @Test
    void theAdviceTakesTheCutInTheCentringChosen() {
        CommutatorReport report = CommutatorReport.of(24, offCentre(), sizes(40, 39, TruingCut.Centring.AS_READ));
        assertThat(report.cutLines().keySet())
                .containsExactly("On the centres it was read on (planned)", "Set true to itself");
        assertThat(report.undercut().orElseThrow().depthAfterCutMm()).isCloseTo(0.45, within(1e-12));
        CommutatorReport own = CommutatorReport.of(24, offCentre(), sizes(40, 39, TruingCut.Centring.RECENTRED));
        assertThat(own.cutLines().keySet())
                .containsExactly("On the centres it was read on", "Set true to itself (planned)");
        assertThat(own.undercut().orElseThrow().depthAfterCutMm())
                .isCloseTo(0.5 - own.runOut().residualTirMm(), within(1e-12));
        assertThat(own.undercutLines().get(0)).startsWith("No undercut needed: ");
    }

    @Test
    void undercuttingWithNothingRead() {
        Given wide = new Given(
                NONE,
                NONE,
                NONE,
                OptionalDouble.of(0.6),
                OptionalDouble.of(0.3),
                0,
                TruingCut.Centring.AS_READ,
                List.of(CommutatorLimit.of("starter-generator-width"), CommutatorLimit.of("starter-generator-depth")));
        assertThat(CommutatorReport.undercutLines(wide))
                .containsExactly(
                        "Cut the mica 1.397 mm deep (0.055 in deep, TM 10-4320-342-24 (read in the source)), a saw of 0.6 mm"
                                + " to 0.676 mm (common practice). It is cut again where it lies less than 0.2 mm under"
                                + " the bars (TM 9-2815-255-24 (read in the source)); now 0.3 mm.",
                        "Width of the cut: 0.042 in wide (TM 10-4320-342-24 (read in the source)).",
                        "Common practice is about 0.030 in (0.76 mm) deep; other depths are printed from 0.4 mm to 2.381"
                                + " mm: go by the machine's maker.");
    }

    @Test
    void gapsAndBarsNotReadAreNoted() {
        // Bars 1, 9 and 17 and some between: gaps of 120° at most.
        CommutatorReport third = CommutatorReport.of(
                24, Stream.of(1, 2, 9, 17).map(b -> new Reading(b, 0.01 * b)).toList(), Given.nothing());
        assertThat(third.notes())
                .containsExactly(
                        "A bar that was not read may be the lowest or the highest: the cut is for the bars read.",
                        "Judged as read. If the armature was not read on its own bearings or centres, read it again there,"
                                + " or judge it recentred.");
        assertThat(CommutatorReport.of(24, offCentre(), Given.nothing()).notes())
                .hasSize(1);
        assertThat(CommutatorReport.steps()).hasSize(5).anyMatch(s -> s.startsWith("Come back to bar 1"));
    }
}
