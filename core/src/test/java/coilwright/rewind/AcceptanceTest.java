package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Work;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AcceptanceTest {
    @Test
    void correctionTo40() {
        // IEEE 43, 0.5^((40 − T)/10), from memory of its form.
        assertThat(InsulationTest.correctionTo40(40)).isEqualTo(1);
        assertThat(InsulationTest.correctionTo40(30)).isCloseTo(0.5, within(1e-12));
        assertThat(InsulationTest.correctionTo40(60)).isCloseTo(4, within(1e-12));
        assertThat(new InsulationTest(20, OptionalDouble.empty(), 20).correctedMohm())
                .isCloseTo(5, within(1e-12));
    }

    @Property
    void tenDegreesHalve(@ForAll @DoubleRange(min = -20, max = 120) double t) {
        assertThat(InsulationTest.correctionTo40(t + 10) / InsulationTest.correctionTo40(t))
                .isCloseTo(2, within(1e-9));
    }

    @Test
    void editionsDisagreeAndBothAreShown() {
        // 5 Mohm in IEEE 43-2013 and AR100-2020, 100 Mohm before; 1 Mohm cold for a car dynamo.
        var verdicts = new InsulationTest(20, OptionalDouble.empty(), 40).verdicts(12);
        assertThat(verdicts)
                .filteredOn(v -> v.limit().id().equals("ir-ieee43-2013"))
                .singleElement()
                .matches(AcceptanceVerdict::pass);
        assertThat(verdicts)
                .filteredOn(v -> v.limit().id().equals("ir-ieee43-2000"))
                .singleElement()
                .matches(v -> !v.pass())
                .extracting(AcceptanceVerdict::text)
                .asString()
                .contains("20 Mohm fails: not under 100 Mohm")
                .contains("2000 (read in the source)");
        var conflicts = Limit.conflicts("insulation-resistance");
        assertThat(conflicts).containsOnlyKeys("DC armature");
        assertThat(conflicts.get("DC armature"))
                .extracting(Limit::id)
                .containsExactly("ir-ieee43-2013", "ir-ieee43-2000", "ir-ar100-2020", "ir-ar100-earlier");
    }

    @Test
    void minimumByRatedVoltage() {
        var verdicts = new InsulationTest(1.5, OptionalDouble.empty(), 40).verdicts(600);
        assertThat(verdicts)
                .filteredOn(v -> v.limit().id().equals("ir-kv-plus-1"))
                .singleElement()
                .matches(v -> !v.pass())
                .extracting(v -> v.limit().low().orElseThrow())
                .isEqualTo(1.6);
    }

    @Test
    void coldReadingOfACarDynamoIsNotCorrected() {
        // 2 Mohm at 15 °C is 0.35 Mohm at 40 °C, but the old specification speaks of the cold reading.
        var verdicts = new InsulationTest(2, OptionalDouble.empty(), 15).verdicts(12);
        assertThat(verdicts)
                .filteredOn(v -> v.limit().id().equals("ir-car-dynamo"))
                .singleElement()
                .matches(AcceptanceVerdict::pass);
    }

    @Test
    void polarizationIndex() {
        var test = new InsulationTest(100, OptionalDouble.of(180), 25);
        assertThat(test.polarizationIndex()).hasValue(1.8);
        assertThat(test.indexDoubt()).isEmpty();
        assertThat(test.verdicts(230))
                .filteredOn(v -> v.limit().quantity().equals("polarization-index"))
                .extracting(v -> v.limit().applies(), AcceptanceVerdict::pass)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("class A", true),
                        org.assertj.core.groups.Tuple.tuple("class B", false),
                        org.assertj.core.groups.Tuple.tuple("class F", false),
                        org.assertj.core.groups.Tuple.tuple("class H", false));
        assertThat(new InsulationTest(6000, OptionalDouble.of(9000), 25).indexDoubt())
                .hasValueSatisfying(s -> assertThat(s).contains("above 5000 Mohm"));
        assertThat(new InsulationTest(100, OptionalDouble.of(900), 25).indexDoubt())
                .hasValueSatisfying(s -> assertThat(s).contains("brittle"));
        assertThat(new InsulationTest(0, OptionalDouble.of(1), 25).polarizationIndex())
                .isEmpty();
    }

    /** ANSI/EASA AR100-2020, table 4-5; AC is DC over 1.7. */
    /** IEC 60034-1, table 16 (from memory): 500 + 2U under 1 kW and 100 V; else 1000 + 2U, at least 1500 V. */
    @ParameterizedTest
    @CsvSource({
        "99, 999, 698",
        "100, 999, 1500",
        "99, 1000, 1500",
        "250, 999, 1500",
        "300, 999, 1600",
        "440, 5000, 1880"
    })
    void newWindingsByTheInternationalScheme(double volts, double watts, double ac) {
        for (MachineKind kind : MachineKind.values()) {
            assertThat(HighPotential.voltages(kind, volts, watts, Work.NEW))
                    .filteredOn(v -> v.scheme().equals("IEC 60034-1"))
                    .extracting(HighPotential.Voltage::acHigh)
                    .containsExactly(ac);
        }
    }

    @Test
    void voltagesInWords() {
        var rewound = HighPotential.voltages(MachineKind.DC_MOTOR, 120, 1000, Work.REWOUND);
        assertThat(rewound.get(0).text())
                .isEqualTo(
                        "ANSI/EASA AR100: not over 992 V AC r.m.s. or 1686 V DC, 1 min; ANSI/EASA AR100, table 4-5, 2020"
                                + " (read in the source); ANSI/EASA AR100, as reported, 2020 (read in the source)");
        assertThat(rewound.get(1).text()).startsWith("IEC 60034-1: 1500 V AC r.m.s. or 2550 V DC, 1 min; ");
        assertThat(HighPotential.conflicting(rewound)).isTrue();
        assertThat(HighPotential.conflicting(rewound.subList(0, 1))).isFalse();
        assertThat(HighPotential.conflicting(List.of())).isFalse();
        assertThat(HighPotential.voltages(MachineKind.DC_MOTOR, 120, 1000, Work.IN_SERVICE)
                        .get(0)
                        .text())
                .startsWith("maintenance: 150 to 180 V AC r.m.s. or 306 V DC, 1 min; excerpt");
        var applied = new HighPotential.Applied(991.5, Optional.of(false), OptionalInt.of(60), false);
        assertThat(applied.text()).isEqualTo("991.5 V AC r.m.s., held 60 s: the insulation broke down");
        assertThat(applied.against(rewound.get(0))).hasValue(HighPotential.Outcome.KEPT);
        assertThat(new HighPotential.Applied(992.5, Optional.of(false), OptionalInt.empty(), true)
                        .against(rewound.get(0)))
                .hasValue(HighPotential.Outcome.KEPT);
        assertThat(HighPotential.Outcome.OVER.word()).isEqualTo("over");
    }

    @ParameterizedTest
    @CsvSource({
        "DC_GENERATOR, 12, 150, 500, 850",
        "DC_MOTOR, 35, 5000, 500, 850",
        "DC_MOTOR, 36, 100, 1000, 1700",
        "DC_MOTOR, 240, 373, 1000, 1700",
        "DC_GENERATOR, 110, 249, 1000, 1700",
        "DC_GENERATOR, 110, 250, 1220, 2074",
        "DC_MOTOR, 120, 1000, 1240, 2108",
        "DC_MOTOR, 240, 1000, 1480, 2516",
        "DC_MOTOR, 440, 1000, 1880, 3196",
        "UNIVERSAL, 230, 300, 1000, 1700",
        "UNIVERSAL, 230, 500, 1460, 2482",
        "PORTABLE_TOOL, 230, 300, 1460, 2482"
    })
    void newWindings(MachineKind kind, double volts, double watts, double ac, double dc) {
        var ar100 = HighPotential.voltages(kind, volts, watts, Work.NEW).stream()
                .filter(v -> v.scheme().equals("ANSI/EASA AR100"))
                .toList();
        assertThat(ar100).hasSize(1);
        assertThat(ar100.get(0).acHigh()).isCloseTo(ac, within(1e-9));
        assertThat(ar100.get(0).dcHigh()).isCloseTo(dc, within(1e-9));
    }

    @Test
    void iecRowsFromMemory() {
        var small = HighPotential.voltages(MachineKind.DC_MOTOR, 24, 200, Work.NEW);
        assertThat(small).hasSize(2);
        assertThat(small.get(1).scheme()).isEqualTo("IEC 60034-1");
        assertThat(small.get(1).acHigh()).isEqualTo(548);
        assertThat(small.get(1).rule().orElseThrow().trust()).isEqualTo(Trust.FROM_MEMORY);
        assertThat(HighPotential.conflicting(small)).isTrue();
        // At least 1500 V.
        assertThat(HighPotential.voltages(MachineKind.DC_MOTOR, 110, 2000, Work.NEW)
                        .get(1)
                        .acHigh())
                .isEqualTo(1500);
        assertThat(HighPotential.voltages(MachineKind.DC_MOTOR, 440, 2000, Work.NEW)
                        .get(1)
                        .acHigh())
                .isEqualTo(1880);
    }

    @Test
    void partOfTheVoltageByTheWork() {
        var rewound = HighPotential.voltages(MachineKind.DC_MOTOR, 120, 1000, Work.REWOUND);
        assertThat(rewound.get(0).acLow()).isEmpty();
        assertThat(rewound.get(0).acHigh()).isCloseTo(0.8 * 1240, within(1e-9));
        assertThat(rewound.get(0).text()).contains("not over 992 V AC").contains("ANSI/EASA AR100");
        assertThat(rewound.get(1).acHigh()).isCloseTo(1500, within(1e-9));
        var again = HighPotential.voltages(MachineKind.DC_MOTOR, 120, 1000, Work.RECONDITIONED);
        assertThat(again).extracting(HighPotential.Voltage::acHigh).containsExactly(0.65 * 1240, 0.75 * 1500);
        var service = HighPotential.voltages(MachineKind.DC_MOTOR, 120, 1000, Work.IN_SERVICE);
        assertThat(service).hasSize(1);
        assertThat(service.get(0).acLow()).hasValue(150);
        assertThat(service.get(0).acHigh()).isEqualTo(180);
        assertThat(service.get(0).rule()).isEmpty();
    }

    @Property
    void atMostOneRuleOfASchemeHolds(
            @ForAll MachineKind kind,
            @ForAll @DoubleRange(min = 1, max = 1000) double volts,
            @ForAll @DoubleRange(min = 1, max = 10000) double watts) {
        var all = HighPotential.voltages(kind, volts, watts, Work.NEW);
        assertThat(all.stream().map(HighPotential.Voltage::scheme).distinct().count())
                .isEqualTo(all.size());
        assertThat(all).extracting(HighPotential.Voltage::scheme).contains("IEC 60034-1");
    }

    @Test
    void evenness() {
        var even = Evenness.of(List.of(1.0, 1.02, 0.98, 1.0));
        assertThat(even.mean()).isCloseTo(1, within(1e-12));
        assertThat(even.highest()).isCloseTo(2, within(1e-9));
        assertThat(even.verdicts()).hasSize(4).allMatch(AcceptanceVerdict::pass);
        var odd = Evenness.of(List.of(1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.5));
        assertThat(odd.lowest()).isCloseTo(0.45 / 0.95 * 100, within(1e-9));
        assertThat(odd.verdicts())
                .extracting(v -> v.limit().id(), AcceptanceVerdict::pass)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("evenness-limit", false),
                        org.assertj.core.groups.Tuple.tuple("evenness-high", true));
        assertThatThrownBy(() -> Evenness.of(List.of())).hasMessageContaining("no readings");
    }

    @Test
    void temperatureRise() {
        // From 20 °C to 80 °C by the factor (234.5 + 80)/(234.5 + 20), in a room of 25 °C.
        var rise = TemperatureRise.of(1, 20, 314.5 / 254.5, 25);
        assertThat(rise.hotCelsius()).isCloseTo(80, within(1e-9));
        assertThat(rise.riseK()).isCloseTo(55, within(1e-9));
        assertThat(TemperatureRise.of(1, 20, 334.5 / 254.5, 25).verdicts())
                .extracting(v -> v.limit().id(), AcceptanceVerdict::pass)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("rise-a", false),
                        org.assertj.core.groups.Tuple.tuple("rise-e", true),
                        org.assertj.core.groups.Tuple.tuple("rise-b", true),
                        org.assertj.core.groups.Tuple.tuple("rise-f", true),
                        org.assertj.core.groups.Tuple.tuple("rise-h", true));
    }

    @Test
    void limitsAreWellFormed() {
        var ids = new LinkedHashSet<String>();
        for (Limit l : Limit.all()) {
            assertThat(ids.add(l.id())).as(l.id()).isTrue();
            assertThat(l.source().title()).isNotBlank();
            if (l.low().isPresent() && l.high().isPresent()) {
                assertThat(l.low().getAsDouble()).isLessThanOrEqualTo(l.high().getAsDouble());
            }
        }
        assertThat(ids).hasSizeGreaterThan(25);
        assertThatThrownBy(() -> Limit.of("no-such"))
                .hasMessageContaining("choose one of")
                .hasMessageContaining("fill-usual");
    }
}
