package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CopperTest {
    /** By arithmetic from 234.5, which a page of the trade press, "Temperature rise", gives. */
    @ParameterizedTest
    @CsvSource({"25, 1.0196", "40, 1.0786", "75, 1.2161", "100, 1.3143", "150, 1.5108"})
    void factorsTo20(double celsius, double factor) {
        assertThat(Copper.resistanceFactor(20, celsius)).isCloseTo(factor, within(5.1e-5));
    }

    @Test
    void coefficientAt20() {
        // IEC 60028: 0.00393 per kelvin at 20 °C.
        assertThat(Copper.resistanceFactor(20, 21) - 1).isCloseTo(0.00393, within(5e-6));
    }

    @Test
    void massOfAKnownWire() {
        // Centelsa, Magnet Wire catalogue, p. 10: 6 AWG bare weighs 79.46 lb per 1000 ft.
        double kgPerKm = 79.46 * 0.45359237 / 0.3048;
        assertThat(WireSizes.awg(6).kgPerKm()).isCloseTo(kgPerKm, within(kgPerKm * 0.001));
    }

    @Property
    void temperatureComesBack(
            @ForAll @DoubleRange(min = -40, max = 60) double cold,
            @ForAll @DoubleRange(min = -40, max = 300) double hot,
            @ForAll @DoubleRange(min = 0.01, max = 1e4) double ohms) {
        double hotOhms = ohms * Copper.resistanceFactor(cold, hot);
        assertThat(Copper.temperature(ohms, cold, hotOhms)).isCloseTo(hot, within(1e-8));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> Copper.resistance(1, 0, 20)).hasMessageContaining("area is 0 mm²");
        assertThatThrownBy(() -> Copper.resistivity(-300)).hasMessageContaining("-234.5 °C");
        assertThatThrownBy(() -> Copper.resistivity(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
