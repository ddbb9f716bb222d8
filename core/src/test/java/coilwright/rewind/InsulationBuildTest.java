package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InsulationBuildTest {
    /**
     * A cable maker's table "Diameters and increase in diameters of enamelled round copper winding wires (SWG sizes)", to
     * IS 13730-0-1, prints the largest overall diameters. Our values come from the metric table by the rule for sizes
     * between. Misprints left out: grade 1 of 11, 12 and 14 SWG (3.029, 2.772, 2.018 mm), grade 3 of 11 and 12, grade 2
     * of 12 and 32, which do not go with their neighbours.
     */
    @ParameterizedTest
    @CsvSource({
        "13, 2.415, 2.455, 2.493",
        "15, 1.903, 1.941, 1.977",
        "16, 1.698, 1.735, 1.770",
        "17, 1.492, 1.528, 1.562",
        "18, 1.285, 1.318, 1.350",
        "19, 1.080, 1.113, 1.144",
        "20, 0.976, 1.008, 1.038",
        "21, 0.872, 0.902, 0.931",
        "22, 0.766, 0.795, 0.822",
        "23, 0.659, 0.684, 0.708",
        "24, 0.605, 0.629, 0.652",
        "25, 0.554, 0.578, 0.601",
        "26, 0.501, 0.523, 0.544",
        "27, 0.458, 0.480, 0.500",
        "29, 0.382, 0.401, 0.418",
        "31, 0.329, 0.347, 0.364",
        "33, 0.286, 0.303, 0.319",
        "35, 0.241, 0.255, 0.269",
        "37, 0.197, 0.210, 0.222",
        "40, 0.141, 0.151, 0.160"
    })
    void swgSizesInTheIecGrades(String swg, double grade1, double grade2, double grade3) {
        WireSize size = WireSizes.swg(swg);
        // The table rounds the conductor to 0.001 mm before adding.
        assertThat(diameter(InsulationBuild.IEC_GRADE_1, size)).isCloseTo(grade1, within(0.0016));
        assertThat(diameter(InsulationBuild.IEC_GRADE_2, size)).isCloseTo(grade2, within(0.0016));
        assertThat(diameter(InsulationBuild.IEC_GRADE_3, size)).isCloseTo(grade3, within(0.0016));
    }

    /** R40 sizes as printed in an extract of DIN EN 60317-0-1 (2014) and a size table to IEC 60317-0-1. */
    @ParameterizedTest
    @CsvSource({
        "1.320, 1.388, 1.422",
        "1.500, 1.570, 1.606",
        "1.700, 1.772, 1.809",
        "1.900, 1.974, 2.012",
        "2.120, 2.196, 2.235"
    })
    void intermediateSizes(double mm, double grade1, double grade2) {
        WireSize size = WireSizes.metric(mm);
        assertThat(diameter(InsulationBuild.IEC_GRADE_1, size)).isCloseTo(grade1, within(1e-9));
        assertThat(diameter(InsulationBuild.IEC_GRADE_2, size)).isCloseTo(grade2, within(1e-9));
        assertThat(InsulationBuild.IEC_GRADE_1
                        .overall(size)
                        .orElseThrow()
                        .source()
                        .trust())
                .isEqualTo(Trust.DERIVED);
    }

    @Test
    void publishedExampleOfFineWire() {
        // An enamelled-wire maker's page on grades: 0.100 mm grade 1 is 0.108 to 0.117 mm overall.
        assertThat(diameter(InsulationBuild.IEC_GRADE_1, WireSizes.metric(0.1))).isEqualTo(0.117, within(1e-9));
    }

    /** Heavy build is fitted above 9 AWG; up to there the largest diameters were read, so the fit can be held to them. */
    @Test
    void heavyBuildFitAgreesWithReadRows() {
        double[] readMils = {167.1, 149.1, 133.2, 118.9};
        for (int n = 6; n <= 9; n++) {
            var overall = InsulationBuild.NEMA_HEAVY.overall(WireSizes.awg(n)).orElseThrow();
            assertThat(overall.source().trust()).isEqualTo(Trust.READ);
            assertThat(overall.diameterMm() / 25.4 * 1000).isCloseTo(readMils[n - 6], within(1e-9));
        }
        var ten = InsulationBuild.NEMA_HEAVY.overall(WireSizes.awg(10)).orElseThrow();
        assertThat(ten.source().trust()).isEqualTo(Trust.FITTED);
        // The catalogue's row for 10 AWG is bare 101.9 and increase 3.1 mil; tolerances bring 1 to 1.5 mil more.
        assertThat(ten.diameterMm() / 25.4 * 1000).isBetween(101.9 + 3.1 + 1.0, 101.9 + 3.1 + 1.5);
    }

    /** The form of formula used for triple build (from memory) against the printed single and heavy increases. */
    @Test
    void formulaForTheLeastIncrease() {
        int rows = 0;
        for (Psv.Row row : Psv.load("wire-nema.psv").rows()) {
            double n = row.number("awg");
            if (n >= 14 && n <= 30) {
                assertThat(row.number("single-increase")).isCloseTo(Math.pow(10, 0.518 - n / 44.8), within(0.06));
                assertThat(row.number("heavy-increase")).isCloseTo(Math.pow(10, 0.818 - n / 44.8), within(0.1));
                rows++;
            }
        }
        assertThat(rows).isEqualTo(17);
    }

    @Test
    void thickerBuildsAreThicker() {
        List<List<InsulationBuild>> families = List.of(
                List.of(
                        InsulationBuild.BARE,
                        InsulationBuild.IEC_GRADE_1,
                        InsulationBuild.IEC_GRADE_2,
                        InsulationBuild.IEC_GRADE_3),
                List.of(
                        InsulationBuild.BARE,
                        InsulationBuild.NEMA_SINGLE,
                        InsulationBuild.NEMA_HEAVY,
                        InsulationBuild.NEMA_TRIPLE));
        int compared = 0;
        for (List<InsulationBuild> family : families) {
            for (WireSystem system : WireSystem.values()) {
                for (WireSize size : WireSizes.all(system)) {
                    for (int i = 1; i < family.size(); i++) {
                        var thin = family.get(i - 1).overall(size);
                        var thick = family.get(i).overall(size);
                        if (thin.isPresent() && thick.isPresent()) {
                            assertThat(thick.get().diameterMm())
                                    .as("%s %s", size.label(), family.get(i).word())
                                    .isGreaterThan(thin.get().diameterMm());
                            compared++;
                        }
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(400);
    }

    @ParameterizedTest
    @CsvSource({
        // Bare, least increase, and the allowance drawn between 9 (1.3), 14 (0.9), 18 (0.8), 20 (0.7), 36 (0.4) and 44
        // (0.3).
        "10, 3.1, 1.22",
        "12, 2.9, 1.06",
        "14, 3.2, 0.9",
        "16, 2.9, 0.85",
        "19, 2.5, 0.75",
        "20, 2.3, 0.7",
        "40, 0.6, 0.35"
    })
    void heavyBuildIsBareAndIncreaseAndAllowance(int awg, double increase, double allowance) {
        WireSize size = WireSizes.awg(awg);
        assertThat(diameter(InsulationBuild.NEMA_HEAVY, size))
                .isCloseTo(size.bareDiameterMm() + (increase + allowance) * 0.0254, within(1e-9));
    }

    @Test
    void tripleBuildIsMadeFrom14To30() {
        // 10^(0.980 − 14/44.8) = 4.651 mil and 10^(0.980 − 30/44.8) = 2.043 mil.
        for (int awg : new int[] {14, 30}) {
            WireSize size = WireSizes.awg(awg);
            double allowance = awg == 14 ? 0.9 : 0.5;
            var overall = InsulationBuild.NEMA_TRIPLE.overall(size).orElseThrow();
            assertThat(overall.diameterMm())
                    .isCloseTo(
                            size.bareDiameterMm() + (Math.pow(10, 0.980 - awg / 44.8) + allowance) * 0.0254,
                            within(1e-9));
            assertThat(overall.source().title()).isEqualTo("NEMA MW 1000, formula for the least increase");
        }
        assertThat(InsulationBuild.NEMA_TRIPLE.overall(WireSizes.awg(13))).isEmpty();
        assertThat(InsulationBuild.NEMA_TRIPLE.overall(WireSizes.awg(31))).isEmpty();
        assertThat(InsulationBuild.NEMA_HEAVY.overall(WireSizes.awg(5))).isEmpty();
        assertThat(InsulationBuild.NEMA_HEAVY.overall(WireSizes.awg(41))).isEmpty();
        assertThat(InsulationBuild.NEMA_SINGLE
                        .overall(WireSizes.awg(14))
                        .orElseThrow()
                        .diameterMm())
                .isCloseTo(66.6 * 0.0254, within(1e-9));
        assertThat(InsulationBuild.NEMA_HEAVY
                        .overall(WireSizes.awg(12))
                        .orElseThrow()
                        .source()
                        .title())
                .startsWith("Centelsa");
    }

    @Test
    void metricSizesOfTheTableAndBetween() {
        var own = InsulationBuild.IEC_GRADE_1.overall(WireSizes.metric(5)).orElseThrow();
        assertThat(own.diameterMm()).isCloseTo(5.093, within(1e-9));
        assertThat(own.source().trust()).isEqualTo(Trust.FROM_MEMORY);
        var thick = new WireSize(WireSystem.METRIC, "6", 6, Source.arithmetic());
        assertThat(InsulationBuild.IEC_GRADE_1.overall(thick)).isEmpty();
        var thin = new WireSize(WireSystem.METRIC, "0.01", 0.01, Source.arithmetic());
        assertThat(InsulationBuild.IEC_GRADE_1.overall(thin)).isEmpty();
        // Fine double cotton adds 0.010 in.
        assertThat(diameter(InsulationBuild.DOUBLE_COTTON, WireSizes.metric(1))).isCloseTo(1.254, within(1e-9));
    }

    @Test
    void buildsThatAreNotMade() {
        assertThat(InsulationBuild.NEMA_SINGLE.overall(WireSizes.awg(12))).isEmpty();
        assertThat(InsulationBuild.NEMA_HEAVY.overall(WireSizes.swg("18"))).isEmpty();
        assertThat(InsulationBuild.IEC_GRADE_3.overall(WireSizes.metric(0.05))).isEmpty();
        assertThatThrownBy(() -> RoundWire.of(WireSizes.awg(12), InsulationBuild.NEMA_SINGLE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("12 AWG in single build")
                .hasMessageContaining("measure it");
        assertThatThrownBy(() ->
                        RoundWire.of(WireSizes.metric(1), InsulationBuild.BARE).measuredOverall(0.9))
                .hasMessageContaining("under the bare 1 mm");
    }

    private static double diameter(InsulationBuild build, WireSize size) {
        return build.overall(size).orElseThrow().diameterMm();
    }
}
