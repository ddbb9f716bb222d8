package coilwright.commutator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.commutator.CommutatorReport.Given;
import coilwright.commutator.CommutatorReport.Verdict;
import java.util.List;
import java.util.OptionalDouble;
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
}
