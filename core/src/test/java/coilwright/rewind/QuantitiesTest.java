package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.Quantities.Kind;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantitiesTest {
    private static final Map<Kind, List<String>> UNITS = Map.of(
            Kind.LENGTH, List.of("mm", "cm", "m", "um", "in", "mil", "thou", "ft"),
            Kind.AREA, List.of("mm2", "in2", "cmil"),
            Kind.RESISTANCE, List.of("ohm", "mohm", "kohm", "Mohm"),
            Kind.VOLTAGE, List.of("V", "mV", "kV"),
            Kind.CURRENT, List.of("A", "mA"),
            Kind.POWER, List.of("W", "kW", "hp"),
            Kind.SPEED, List.of("rpm", "r/min"),
            Kind.MASS, List.of("kg", "g", "lb", "oz"),
            Kind.TEMPERATURE, List.of("degC", "degF", "K"),
            Kind.FLUX, List.of("Wb", "mWb"));

    record KindAndUnit(Kind kind, String unit) {}

    @Provide
    Arbitrary<KindAndUnit> units() {
        return Arbitraries.of(Kind.values())
                .flatMap(k -> Arbitraries.of(UNITS.get(k)).map(u -> new KindAndUnit(k, u)));
    }

    @Property
    void thereAndBack(@ForAll("units") KindAndUnit u, @ForAll @DoubleRange(min = -1e4, max = 1e4) double value) {
        double there = Quantities.convert(u.kind, value, u.kind.unit(), u.unit);
        assertThat(Quantities.convert(u.kind, there, u.unit, u.kind.unit()))
                .isCloseTo(value, within(1e-9 * Math.max(1, Math.abs(value))));
    }

    @Property
    void writtenAndRead(@ForAll("units") KindAndUnit u, @ForAll @DoubleRange(min = 0.1, max = 1000) double value) {
        double inUnit = Quantities.convert(u.kind, value, u.kind.unit(), u.unit);
        String text = Quantities.format(u.kind, value, u.unit, 9);
        double step = Math.abs(Quantities.convert(u.kind, inUnit + 1e-9, u.unit, u.kind.unit()) - value);
        assertThat(Quantities.parse(u.kind, text)).isCloseTo(value, within(step + 1e-12 * value));
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, 0.030 in, 0.762",
        "LENGTH, 1/32 in, 0.79375",
        "LENGTH, 1 1/16 in, 26.9875",
        "LENGTH, -1/8in, -3.175",
        "LENGTH, 41 thou, 1.0414",
        "AREA, 1e6 cmil, 506.7075",
        "RESISTANCE, 418 mohm, 0.418",
        "RESISTANCE, 5 Mohm, 5000000",
        "POWER, 0.5 hp, 372.8499",
        "SPEED, 1450 rpm, 1450",
        "TEMPERATURE, 230 degF, 110",
        "MASS, 1 lb, 0.45359237",
        "FLUX, 21 mWb, 0.021"
    })
    void knownValues(Kind kind, String text, double expected) {
        assertThat(Quantities.parse(kind, text)).isCloseTo(expected, within(Math.abs(expected) * 1e-6));
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> Quantities.parse(Kind.LENGTH, "1.15"))
                .hasMessage("\"1.15\" has no unit, and a length needs one: write it as in 1.15 mm");
        assertThatThrownBy(() -> Quantities.parse(Kind.LENGTH, "3 ohm")).hasMessageContaining("is no unit of a length");
        assertThatThrownBy(() -> Quantities.parse(Kind.VOLTAGE, "twelve")).hasMessageContaining("12 V");
        assertThatThrownBy(() -> Quantities.parse(Kind.LENGTH, "1/0 in")).isInstanceOf(IllegalArgumentException.class);
    }
}
