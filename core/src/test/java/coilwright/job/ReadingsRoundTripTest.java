package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.PairReading;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Readings come back from a file as they went in, digit for digit. */
class ReadingsRoundTripTest {
    private static final int BARS = 40;

    @Property(tries = 600)
    void writtenFileReadsBackEqual(@ForAll("files") ReadingsFile file) throws Exception {
        String text = file.toText();
        assertThat(ReadingsFile.parse("x", text, BARS)).isEqualTo(file);
        assertThat(ReadingsFile.parse("x", text, BARS).toText()).isEqualTo(text);
    }

    /** As a spreadsheet of a country with decimal commas saves it. */
    @Property(tries = 300)
    void semicolonsAndDecimalCommasSayTheSame(@ForAll("files") ReadingsFile file) throws Exception {
        String text = file.toText().replace(',', ';').replace('.', ',');
        assertThat(ReadingsFile.parse("x", text, BARS)).isEqualTo(file);
    }

    @Property(tries = 300)
    void everyDoubleComesBack(@ForAll("values") List<Double> values) throws Exception {
        List<PairReading> expected = new ArrayList<>();
        values.forEach(v -> expected.add(new PairReading(1, 2, v)));
        String text = ReadingsFile.of(expected).toText();
        Assume.that(!values.isEmpty());
        assertThat(ReadingsFile.parse("x", text, BARS).numbers(TestKind.DROP, java.util.Optional.empty()))
                .isEqualTo(expected);
    }

    @Provide
    Arbitrary<List<Double>> values() {
        return Arbitraries.doubles()
                .between(-1e6, 1e6)
                .map(v -> Math.abs(v) < 1e-30 ? 0.0 : v)
                .list()
                .ofMaxSize(8);
    }

    @Provide
    Arbitrary<ReadingsFile> files() {
        return Arbitraries.of(Quantity.Kind.VOLTAGE, Quantity.Kind.RESISTANCE, Quantity.Kind.CURRENT)
                .flatMap(kind -> Arbitraries.of(true, false)
                        .flatMap(units -> Combinators.combine(
                                        Arbitraries.of(true, false).flatMap(shaft -> Readings.pairs(BARS, shaft)),
                                        Readings.shown(List.of(kind), units))
                                .as((p, s) -> new TakenReading(p.from(), p.to(), s))
                                .list()
                                .ofMinSize(1)
                                .ofMaxSize(12)))
                .map(ReadingsFile::new);
    }
}
