package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.Acceptance.Check;
import coilwright.rewind.Acceptance.Given;
import coilwright.rewind.Acceptance.Status;
import coilwright.rewind.Acceptance.Verdict;
import coilwright.rewind.Acceptance.Walk;
import coilwright.rewind.HighPotential.Applied;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Outcome;
import coilwright.rewind.HighPotential.Work;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AcceptanceReportTest {
    private static final Walk EVEN =
            new Walk("resistance", List.of("1-2", "2-3", "3-1"), List.of(1.0, 1.02, 0.98), List.of());
    private static final Applied HELD = new Applied(992, Optional.of(false), OptionalInt.of(60), true);

    /** A 120 V, 1 kW motor, rewound: AR100-2020 table 4-5 asks 1000 + 2·120 = 1240 V when new, 80 % of it rewound. */
    private static Given motor(
            Optional<InsulationTest> insulation,
            Optional<Applied> applied,
            List<Walk> walks,
            Optional<Boolean> polarity,
            Optional<String> scheme,
            String... limits) {
        return new Given(
                Optional.of(MachineKind.DC_MOTOR),
                OptionalDouble.of(120),
                OptionalDouble.of(1000),
                "",
                Work.REWOUND,
                insulation,
                true,
                OptionalDouble.of(500),
                applied,
                walks,
                List.of(),
                polarity,
                List.of(),
                Optional.empty(),
                Stream.of(limits).map(Limit::of).toList(),
                scheme);
    }

    private static Optional<InsulationTest> megohms(double one) {
        return Optional.of(new InsulationTest(one, OptionalDouble.empty(), 40));
    }

    private static Acceptance good(double megohms, String... limits) {
        return Acceptance.of(
                motor(megohms(megohms), Optional.of(HELD), List.of(EVEN), Optional.of(true), Optional.empty(), limits));
    }

    private static Check check(Acceptance acceptance, String id) {
        return acceptance.checks().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        // 5 Mohm, IEEE 43-2013; 100 Mohm, the 2000 edition; kV + 1 Mohm, older windings; 1 Mohm cold, car dynamo 1938.
        "5, ir-ieee43-2013, PASSED",
        "4.99, ir-ieee43-2013, FAILED",
        "5, ir-ieee43-2000, FAILED",
        "100, ir-ieee43-2000, PASSED",
        "1.12, ir-kv-plus-1, PASSED",
        "1.11, ir-kv-plus-1, FAILED",
        "1, ir-car-dynamo, PASSED"
    })
    void theChosenMinimumDecides(double megohms, String limit, Status status) {
        Acceptance acceptance = good(megohms, limit);
        assertThat(check(acceptance, "insulation-resistance").status()).isEqualTo(status);
        assertThat(acceptance.verdict()).isEqualTo(status == Status.PASSED ? Verdict.ACCEPTED : Verdict.NOT_ACCEPTED);
        assertThat(check(acceptance, "insulation-resistance").lines())
                .filteredOn(Acceptance.Line::chosen)
                .singleElement()
                .extracting(l -> l.limit().id())
                .isEqualTo(limit);
    }

    @Test
    void theUsualMinimumDecidesWhereNoneIsChosenAndEditionsAreSetSideBySide() {
        Acceptance acceptance = good(20);
        assertThat(acceptance.verdict()).isEqualTo(Verdict.ACCEPTED);
        assertThat(check(acceptance, "insulation-resistance").lines())
                .filteredOn(l -> l.pass().filter(p -> !p).isPresent())
                .extracting(l -> l.limit().id())
                .containsExactly("ir-ieee43-2000", "ir-ar100-earlier", "ir-form-wound");
        assertThat(acceptance.conflicts())
                .hasSize(2)
                .anyMatch(c -> c.contains("not under 5 Mohm") && c.contains("not under 100 Mohm"))
                .anyMatch(c -> c.contains("ANSI/EASA AR100 not over 992 V AC, IEC 60034-1 1500 V AC"));
    }

    @Test
    void nothingMeasuredIsIncompleteAndTellsWhatWouldDo() {
        Acceptance acceptance =
                Acceptance.of(motor(Optional.empty(), Optional.empty(), List.of(), Optional.empty(), Optional.empty()));
        assertThat(acceptance.verdict()).isEqualTo(Verdict.INCOMPLETE);
        assertThat(acceptance.toDo())
                .extracting(Check::id)
                .containsExactly("insulation-resistance", "high-potential", "bar-to-bar", "polarity");
        assertThat(acceptance.checks())
                .allMatch(c -> !c.wanted().isEmpty() && !c.fields().isEmpty());
        assertThat(check(acceptance, "high-potential").wanted())
                .anyMatch(w -> w.contains("not over 992 V AC r.m.s. or 1686 V DC"));
        // 5 Mohm at 40 °C, halving for each 10 °C more (IEEE 43, form from memory).
        assertThat(acceptance.leastReadings())
                .containsEntry("20 °C", "20 Mohm")
                .containsEntry("40 °C", "5 Mohm")
                .containsEntry("60 °C", "1.25 Mohm");
    }

    @Property(tries = 100)
    void theLeastReadingJustKeepsTheLimit(@ForAll @DoubleRange(min = 0, max = 90) double celsius) {
        Limit limit = Limit.of("ir-ieee43-2013");
        double least = InsulationTest.leastReading(limit, celsius);
        assertThat(new InsulationTest(least, OptionalDouble.empty(), celsius).correctedMohm())
                .isCloseTo(5, within(1e-9));
        assertThat(InsulationTest.leastReading(Limit.of("ir-car-dynamo"), celsius))
                .isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        // AR100 rewound: at most 992 V AC or 1686.4 V DC. IEC 60034-1 (from memory): 1500 V AC, 2550 V DC.
        "992, ac, 60, true, , PASSED, KEPT, UNDER",
        "991, ac, 60, true, , TO_DO, UNDER, UNDER",
        "1500, ac, 60, true, , PASSED, OVER, KEPT",
        "992, ac, 60, true, iec, TO_DO, KEPT, UNDER",
        "1500, ac, 60, true, IEC 60034-1, PASSED, OVER, KEPT",
        "1686.4, dc, 60, true, , PASSED, KEPT, UNDER",
        "2550, dc, 60, true, iec, PASSED, OVER, KEPT",
        "992, dc, 60, true, , TO_DO, UNDER, UNDER",
        "992, ac, 30, true, , TO_DO, KEPT, UNDER",
        "992, ac, , true, , PASSED, KEPT, UNDER",
        "992, ac, 60, false, , FAILED, KEPT, UNDER",
    })
    void whetherTheTestCounts(
            double volts,
            String current,
            Integer seconds,
            boolean passed,
            String scheme,
            Status status,
            Outcome ar100,
            Outcome iec) {
        Applied applied = new Applied(
                volts,
                Optional.of(current.equals("dc")),
                seconds == null ? OptionalInt.empty() : OptionalInt.of(seconds),
                passed);
        Acceptance acceptance = Acceptance.of(motor(
                megohms(50), Optional.of(applied), List.of(EVEN), Optional.of(true), Optional.ofNullable(scheme)));
        assertThat(check(acceptance, "high-potential").status()).isEqualTo(status);
        assertThat(applied.against(acceptance.voltages().get(0))).hasValue(ar100);
        assertThat(applied.against(acceptance.voltages().get(1))).hasValue(iec);
    }

    @Test
    void aVoltageOfUnknownKindDoesNotCount() {
        Applied applied = new Applied(992, Optional.empty(), OptionalInt.of(60), true);
        Acceptance acceptance = Acceptance.of(
                motor(megohms(50), Optional.of(applied), List.of(EVEN), Optional.of(true), Optional.empty()));
        assertThat(check(acceptance, "high-potential").status()).isEqualTo(Status.TO_DO);
        assertThat(acceptance.verdict()).isEqualTo(Verdict.INCOMPLETE);
    }

    @Test
    void unevennessOpenPairsAndReversedPolarityFail() {
        Walk uneven = new Walk("resistance", List.of("1-2", "2-3", "3-1"), List.of(1.0, 1.0, 1.3), List.of());
        Walk open = new Walk("resistance", List.of("1-2", "2-3"), List.of(1.0, 1.0), List.of("3-1"));
        for (Walk walk : List.of(uneven, open)) {
            Acceptance bad = Acceptance.of(
                    motor(megohms(50), Optional.of(HELD), List.of(walk), Optional.of(true), Optional.empty()));
            assertThat(check(bad, "bar-to-bar").status()).isEqualTo(Status.FAILED);
            assertThat(bad.verdictText()).isEqualTo("NOT ACCEPTED: bar to bar.");
            assertThat(check(bad, "bar-to-bar").found()).anyMatch(f -> f.contains("3-1"));
        }
        assertThat(Acceptance.of(motor(
                                megohms(50), Optional.of(HELD), List.of(EVEN), Optional.of(false), Optional.empty()))
                        .verdict())
                .isEqualTo(Verdict.NOT_ACCEPTED);
    }

    @Test
    void theIndexDecidesOnlyWhereItsLimitIsChosenAndItMeansSomething() {
        // 1.5 for class A and 2.0 for class B; nothing above 5 Gohm (quiz notes on IEEE 43).
        var low = new InsulationTest(100, OptionalDouble.of(180), 40);
        assertThat(index(low).status()).isEqualTo(Status.NOT_JUDGED);
        assertThat(index(low, "pi-class-a").status()).isEqualTo(Status.PASSED);
        assertThat(index(low, "pi-class-b").status()).isEqualTo(Status.FAILED);
        assertThat(index(new InsulationTest(6000, OptionalDouble.of(7000), 40), "pi-class-b")
                        .status())
                .isEqualTo(Status.NOT_JUDGED);
        assertThat(index(new InsulationTest(100, OptionalDouble.empty(), 40), "pi-class-b")
                        .status())
                .isEqualTo(Status.TO_DO);
    }

    private static Check index(InsulationTest test, String... limits) {
        return check(
                Acceptance.of(motor(
                        Optional.of(test),
                        Optional.of(HELD),
                        List.of(EVEN),
                        Optional.of(true),
                        Optional.empty(),
                        limits)),
                "polarization-index");
    }

    @Test
    void absurdValuesAndStrangeChoicesAreRefused() {
        assertThatThrownBy(() -> good(1e12))
                .hasMessageContaining("insulation resistance is")
                .hasMessageContaining("check the unit");
        assertThatThrownBy(() -> good(50, "fill-usual"))
                .hasMessageContaining("limit fill-usual is on slot fill, which an acceptance does not judge")
                .hasMessageContaining("ir-ieee43-2013");
        assertThatThrownBy(() -> Acceptance.of(
                        motor(megohms(50), Optional.of(HELD), List.of(EVEN), Optional.of(true), Optional.of("nema"))))
                .hasMessage("no scheme of the high-potential test for rewound is called \"nema\": choose one of"
                        + " ANSI/EASA AR100, IEC 60034-1");
    }

    @Test
    void cautionsNameWhatKills() {
        assertThat(Acceptance.cautions())
                .extracting(Caution::id)
                .contains("stored-charge", "licensed", "barrier", "discharge", "insulation-first");
        assertThat(Acceptance.cautions()).extracting(Caution::text).anyMatch(t -> t.contains("local electrical codes"));
    }
}
