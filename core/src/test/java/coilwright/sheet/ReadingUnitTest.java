package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The unit of a table is such that its largest value has one to three figures before the point and four in all. */
class ReadingUnitTest {
    private static ReadingUnit of(BenchTest test, double most, boolean ohmsKnown, boolean voltsKnown) {
        return ReadingUnit.of(
                test,
                List.of(
                        new PairReading(1, 2, -most),
                        new PairReading(2, 3, most / 3),
                        new PairReading(3, 4, Double.POSITIVE_INFINITY)),
                ohmsKnown,
                voltsKnown);
    }

    @ParameterizedTest
    @CsvSource({
        "123.4, V, 1, 1",
        "12.34, V, 1, 2",
        "10, V, 1, 2",
        "9.99, V, 1, 3",
        "1, V, 1, 3",
        "0.9999999999, V, 1, 3",
        "0.999, mV, 1000, 1",
        "0.1, mV, 1000, 1",
        "0.0123, mV, 1000, 2",
        "0.001, mV, 1000, 3",
        "0.000999, µV, 1000000, 1",
        "0.0000042, µV, 1000000, 3",
        "0.00000000042, µV, 1000000, 6",
        "1234567, V, 1, 0",
        "0, V, 1, 3"
    })
    void theLargestReadingSetsTheUnit(double most, String name, double factor, int decimals) {
        assertThat(of(new BenchTest.Drop(1, 4, 1), most, true, false))
                .isEqualTo(new ReadingUnit(name, factor, decimals));
        assertThat(of(new BenchTest.Resistance(), most, true, false))
                .isEqualTo(new ReadingUnit(name.replace('V', 'Ω'), factor, decimals));
    }

    @ParameterizedTest
    @CsvSource({"2.5, 3", "25, 2", "0.25, 4", "0.00001, 6"})
    void withoutTheResistanceOfACoilValuesAreThoseOfOne(double most, int decimals) {
        assertThat(of(new BenchTest.Drop(1, 4, 1), most, false, false))
                .isEqualTo(new ReadingUnit("mV at 1 mΩ a coil", 1, decimals));
        assertThat(of(new BenchTest.Resistance(), most, false, false))
                .isEqualTo(new ReadingUnit("× one coil", 1, decimals));
        assertThat(of(new BenchTest.GrowlerTurned(Growler.USUAL, 90), most, false, false))
                .isEqualTo(new ReadingUnit("relative", 1, 3));
        assertThat(of(new BenchTest.Polarity(), most, false, false)).isEqualTo(new ReadingUnit("sense", 1, 0));
    }

    @ParameterizedTest
    @CsvSource({
        "V, 1, 3, 1.2345, 1.235",
        "mV, 1000, 1, -0.01234, −12.3",
        "mV, 1000, 1, -0.00001, 0.0",
        "mV, 1000, 1, -0.0001, −0.1",
        "V, 1, 0, -0.4, 0",
        "V, 1, 3, Infinity, open",
        "sense, 1, 0, 2, +",
        "sense, 1, 0, -2, −",
        "sense, 1, 0, 0, none"
    })
    void aValueIsToldInItsUnit(String name, double factor, int decimals, double own, String words) {
        assertThat(new ReadingUnit(name, factor, decimals).words(own)).isEqualTo(words);
    }
}
