package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.job.Quantity.Kind;
import java.math.BigDecimal;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
    /**
     * Values by definition: the international inch (25.4 mm) and pound (0.45359237 kg), the horsepower of 550 foot-pounds
     * force a second, and the Celsius and Fahrenheit scales.
     */
    @ParameterizedTest
    @CsvSource({
        "0.08 ohm, RESISTANCE, mohm, 80",
        "820 uohm, RESISTANCE, ohm, 0.00082",
        "820 µΩ, RESISTANCE, uohm, 820",
        "4.7kΩ, RESISTANCE, ohm, 4700",
        "2 Mohm, RESISTANCE, kohm, 2000",
        "0.030 in, LENGTH, mm, 0.762",
        "1 ft, LENGTH, in, 12",
        "10 thou, LENGTH, mm, 0.254",
        "10 mil, LENGTH, um, 254",
        "2.5 cm, LENGTH, mm, 25",
        "1 km, LENGTH, m, 1000",
        "12 mV, VOLTAGE, V, 0.012",
        "2.4 kV, VOLTAGE, V, 2400",
        "250 mA, CURRENT, A, 0.25",
        "1 hp, POWER, W, 745.6998715822702",
        "1.5 kW, POWER, W, 1500",
        "1800 rpm, SPEED, rev/min, 1800",
        "20 °C, TEMPERATURE, K, 293.15",
        "75 °C, TEMPERATURE, °F, 167",
        "-40 degF, TEMPERATURE, degC, -40",
        "212 °F, TEMPERATURE, °C, 100",
        "1 lb, MASS, kg, 0.45359237",
        "16 oz, MASS, lb, 1"
    })
    void converts(String text, Kind kind, String unit, double value) {
        assertThat(Quantity.parse(text, kind).in(unit)).isCloseTo(value, within(1e-12 * Math.max(1, Math.abs(value))));
    }

    @Test
    void everyUnitOfEveryKindConvertsThereAndBack() {
        for (Kind kind : Kind.values()) {
            for (String from : kind.units()) {
                for (String to : kind.units()) {
                    var quantity = new Quantity(new BigDecimal("3.25"), from);
                    var there = new Quantity(BigDecimal.valueOf(quantity.in(to)), to);
                    assertThat(there.in(from)).as(from + " " + to).isCloseTo(3.25, within(1e-9));
                }
            }
        }
    }

    @Property(tries = 500)
    void keepsWhatWasWritten(@ForAll("quantities") Quantity quantity) {
        assertThat(Quantity.parse(quantity.toString(), quantity.kind())).isEqualTo(quantity);
        assertThat(quantity.in(quantity.unit())).isEqualTo(quantity.value().doubleValue());
    }

    @Provide
    Arbitrary<Quantity> quantities() {
        return Combinators.combine(
                        Arbitraries.bigDecimals()
                                .between(new BigDecimal("-999999"), new BigDecimal("999999"))
                                .ofScale(4),
                        Arbitraries.of(Kind.values()).flatMap(k -> Arbitraries.of(k.units())))
                .as(Quantity::new);
    }

    @Test
    void keepsTrailingZerosAndDropsThePlural() {
        assertThat(Quantity.parse("0.030in", Kind.LENGTH)).hasToString("0.030 in");
        assertThat(Quantity.parse("2 ohms", Kind.RESISTANCE)).hasToString("2 ohm");
    }

    @Test
    void greekMuAndOhmSignAreTheUsualLetters() {
        assertThat(Quantity.parse("5 \u03BC\u2126", Kind.RESISTANCE)).hasToString("5 µΩ");
    }

    @Test
    void refusesAnotherKind() {
        assertThatThrownBy(() -> Quantity.parse("1 mm", Kind.RESISTANCE))
                .hasMessage("is \"1 mm\", a length, but must be a resistance such as \"1 ohm\"");
        assertThatThrownBy(() -> Quantity.parse("1 mm", Kind.LENGTH).in("ohm"))
                .hasMessage("1 mm cannot be given in \"ohm\"");
        assertThatThrownBy(() -> new Quantity(BigDecimal.ONE, "furlong"))
                .hasMessage("\"furlong\" is no unit known here");
    }
}
