package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WireSizesTest {
    /**
     * Table of sizes by the formula of ASTM B258 (as reported) and 1/58 Ω·mm²/m, agreeing with the usual printed tables.
     * Each value is held to the digits printed.
     */
    @ParameterizedTest
    @CsvSource({
        "4/0, 0.4600, 11.684, 107.219, 211600, 0.1608, 0.04901",
        "8, 0.1285, 3.2636, 8.3656, 16510, 2.061, 0.6282",
        "10, 0.1019, 2.5882, 5.2612, 10383, 3.277, 0.9989",
        "12, 0.0808, 2.0525, 3.3088, 6530, 5.211, 1.588",
        "14, 0.0641, 1.6277, 2.0809, 4107, 8.286, 2.525",
        "16, 0.0508, 1.2908, 1.3087, 2583, 13.17, 4.016",
        "18, 0.0403, 1.0237, 0.8231, 1624, 20.95, 6.385",
        "20, 0.0320, 0.8118, 0.5176, 1022, 33.31, 10.15",
        "22, 0.0253, 0.6438, 0.3255, 642.4, 52.96, 16.14",
        "24, 0.0201, 0.5106, 0.2047, 404.0, 84.22, 25.67",
        "26, 0.0159, 0.4049, 0.1288, 254.1, 133.9, 40.81",
        "28, 0.0126, 0.3211, 0.08098, 159.8, 212.9, 64.90",
        "30, 0.0100, 0.2546, 0.05093, 100.5, 338.6, 103.2",
        "32, 0.0080, 0.2019, 0.03203, 63.2, 538.3, 164.1",
        "36, 0.0050, 0.1270, 0.01267, 25.0, 1361, 414.8",
        "40, 0.0031, 0.0799, 0.00501, 9.9, 3441, 1049"
    })
    void awgTable(
            String awg, String inches, String mm, String mm2, String cmil, String ohmsPerKm, String ohmsPer1000Feet) {
        WireSize size = WireSizes.parse(awg + " AWG");
        assertThat(size.printedInches()).isEqualTo(Double.parseDouble(inches));
        printed(size.bareDiameterMm(), mm);
        if (awg.equals("18")) {
            // The formula gives 0.82305; the table squares the diameter rounded to 1.0237.
            assertThat(size.areaMm2()).isCloseTo(Double.parseDouble(mm2), within(6e-5));
        } else {
            printed(size.areaMm2(), mm2);
        }
        if (awg.equals("8")) {
            // 128.49 mil squared is 16 509.7; the table rounds it to the four figures of the printed diameter.
            assertThat(size.circularMils()).isCloseTo(16510, within(1.0));
        } else {
            printed(size.circularMils(), cmil);
        }
        printed(size.ohmsPerKm(20), ohmsPerKm);
        printed(size.ohmsPerKm(20) * 0.3048, ohmsPer1000Feet);
    }

    /** Half a unit of the last digit printed. */
    private static void printed(double value, String text) {
        int dot = text.indexOf('.');
        double unit = dot < 0 ? (text.endsWith("00") ? 100 : 1) : Math.pow(10, -(text.length() - dot - 1));
        assertThat(value).isCloseTo(Double.parseDouble(text), within(0.5001 * unit));
    }

    @Test
    void anchorsOfTheGauge() {
        // ASTM B258 as reported: No 36 is 0.0050 in, No 0000 is 0.4600 in, the ratio of a step is 1.1229322.
        assertThat(WireSizes.awg(36).bareDiameterMm()).isCloseTo(0.127, within(1e-12));
        assertThat(WireSizes.awg(-3).bareDiameterMm()).isCloseTo(11.684, within(1e-9));
        assertThat(WireSizes.awg(19).bareDiameterMm() / WireSizes.awg(20).bareDiameterMm())
                .isCloseTo(1.1229322, within(5e-8));
        // Three sizes are a factor of 2.005 in area.
        assertThat(WireSizes.awg(15).areaMm2() / WireSizes.awg(18).areaMm2()).isCloseTo(2.005, within(5e-4));
    }

    @Test
    void roundingRule() {
        // ASTM B258 as reported: 0.1 mil for sizes to 44, 0.01 mil from 45 on, four significant figures at most.
        assertThat(WireSizes.awg(44).printedInches()).isEqualTo(0.0020);
        assertThat(WireSizes.awg(45).printedInches()).isEqualTo(0.00176);
        assertThat(WireSizes.awg(56).printedInches()).isEqualTo(0.00049);
        assertThat(WireSizes.awg(0).printedInches()).isEqualTo(0.3249);
    }

    @ParameterizedTest
    @CsvSource({"7/0, 12.7", "0, 8.23", "10, 3.25", "14, 2.03", "18, 1.22", "19, 1.02", "22, 0.71", "26, 0.46"})
    void swgAgainstPublishedTable(String gauge, double mm) {
        // Wire gauge pages of a workshop supplier and an encyclopedia print these to 0.01 mm.
        assertThat(WireSizes.swg(gauge).bareDiameterMm()).isCloseTo(mm, within(0.0051));
        assertThat(WireSizes.swg(gauge).source().trust()).isEqualTo(Trust.FROM_MEMORY);
    }

    @Test
    void nineteenSwgOfTheDynamoNote() {
        // Rolls-Royce experimental archive, 12 July 1921, gives 0.041 in for 19 SWG; the nominal size is 0.040 in.
        assertThat(WireSizes.swg("19").printedInches()).isCloseTo(0.040, within(1e-12));
    }

    @Test
    void metricSizesArePreferredNumbers() {
        List<WireSize> all = WireSizes.all(WireSystem.METRIC);
        assertThat(all).hasSize(43 + 41);
        for (int i = 1; i < all.size(); i++) {
            double ratio = all.get(i).bareDiameterMm() / all.get(i - 1).bareDiameterMm();
            // R40 steps are 1.0593 before rounding; rounding to three decimals spoils the thinnest most.
            assertThat(ratio).isBetween(1.03, 1.13);
        }
        // R20 steps, every tenth size being a factor of √10.
        assertThat(WireSizes.metric(1.0).bareDiameterMm()).isEqualTo(1.0);
        assertThat(WireSizes.metric(3.15).bareDiameterMm()).isEqualTo(3.15);
        assertThat(WireSizes.metric(0.315).bareDiameterMm()).isEqualTo(0.315);
    }

    @Test
    void messagesSayWhatWouldDo() {
        assertThatThrownBy(() -> WireSizes.metric(0.88))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("0.88 mm is not a preferred diameter of IEC 60317: the nearest is 0.900 mm");
        assertThatThrownBy(() -> WireSizes.parse("18"))
                .hasMessageContaining("\"18 AWG\"")
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> WireSizes.parse("1/8 AWG")).hasMessageContaining("cannot be read");
        assertThatThrownBy(() -> WireSizes.awg(57)).hasMessageContaining("4/0");
        assertThatThrownBy(() -> WireSizes.swg("51")).hasMessageContaining("7/0 to 50");
    }

    @Property
    void gaugeFormulaAndItsInverseAgree(@ForAll @IntRange(min = -3, max = 56) int n) {
        WireSize size = WireSizes.awg(n);
        assertThat(WireSizes.awgNumberOf(size.bareDiameterMm())).isCloseTo(n, within(1e-9));
        assertThat(WireSizes.parse(size.label())).isEqualTo(size);
        assertThat(WireSizes.nearest(WireSystem.AWG, size.bareDiameterMm() * 1.04))
                .isEqualTo(size);
    }

    @Test
    void everyLabelReadsBack() {
        for (WireSystem system : WireSystem.values()) {
            for (WireSize size : WireSizes.all(system)) {
                assertThat(WireSizes.parse(size.label())).isEqualTo(size);
            }
        }
    }
}
