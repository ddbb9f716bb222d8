package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.PairReading;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class ReadingsFileTest {
    private static final String HEAD = "from,to,reading\n";

    @TempDir
    private Path temp;

    @Test
    void readsNumbersGapsAndOffScaleInTheOrderOfTheFile() throws Exception {
        String text = """
                # taken cold

                from,to,reading
                1,2,12.30
                2,1,-12.3
                # again
                1,2,12.31
                3,4,
                4,5,OL
                5,6,open
                6,shaft,1.5e-3
                ,,
                """;
        assertThat(ReadingsFile.parse("x", text, 17).readings())
                .containsExactly(
                        TakenReading.of(1, 2, "12.30"),
                        TakenReading.of(2, 1, "-12.3"),
                        TakenReading.of(1, 2, "12.31"),
                        new TakenReading(3, 4, new TakenReading.Gap()),
                        new TakenReading(4, 5, new TakenReading.OffScale()),
                        new TakenReading(5, 6, new TakenReading.OffScale()),
                        TakenReading.of(6, 0, "0.0015"));
    }

    static List<Arguments> sameReading() {
        return List.of(
                Arguments.of("from,to,reading\n1,2,\"12,5 mV\"\n"),
                Arguments.of("from,to,reading\r\n1,2,12.5 mV\r\n"),
                Arguments.of("from;to;reading\n1;2;12,5 mV\n"),
                Arguments.of("from;to;reading\n1;2;12.5mV\n"),
                Arguments.of("from\tto\treading\n1\t2\t12,5 mV\n"),
                Arguments.of("reading,to,from\n12.5 mV,2,1\n"),
                Arguments.of("\n# noted\nfrom , to , \"reading\"\n\"1\", 2 ,\"12.5 mV\""),
                Arguments.of("from,to,reading\r1,2,12.5 mV\r"));
    }

    @ParameterizedTest
    @MethodSource("sameReading")
    void formsOfOneReading(String text) throws Exception {
        var value = new TakenReading.Value(new BigDecimal("12.5"), Optional.of("mV"));
        assertThat(ReadingsFile.parse("x", text, 17).readings()).containsExactly(new TakenReading(1, 2, value));
    }

    static List<Arguments> malformed() {
        return List.of(
                Arguments.of("", "x: is empty: it begins with the line from,to,reading"),
                Arguments.of("# nothing\n\n", "x: is empty: it begins with the line from,to,reading"),
                Arguments.of(HEAD, "x:1: has a heading but no readings under it"),
                Arguments.of("1,2,12.3\n", "x:1: must be the heading from,to,reading"),
                Arguments.of(
                        "from,to,readng\n1,2,3\n",
                        "x:1: readng: unknown column: did you mean \"reading\"?\n"
                                + "x:1: reading: this column is missing"),
                Arguments.of("from,to,reading,to\n", "x:1: to: is a column twice: keep one"),
                Arguments.of(
                        "from,to,reading,remark\n", "x:1: remark: unknown column: the columns are from,to,reading"),
                Arguments.of("from,to\n1,2\n", "x:1: reading: this column is missing"),
                Arguments.of(HEAD + "1,2\n", "x:2: has 2 cells, but the heading has 3"),
                Arguments.of(
                        HEAD + "1,2,12,3\n",
                        "x:2: has 4 cells, but the heading has 3: put a reading with a decimal comma in quotation "
                                + "marks"),
                Arguments.of(HEAD + "18,1,3\n", "x:2: from: is \"18\", but must be a bar from 1 to 17, or shaft"),
                Arguments.of(HEAD + "0,1,3\n", "x:2: from: is \"0\", but must be a bar from 1 to 17, or shaft"),
                Arguments.of(HEAD + "1,,3\n", "x:2: to: is blank, but must be a bar from 1 to 17, or shaft"),
                Arguments.of(HEAD + "1,2.0,3\n", "x:2: to: is \"2.0\", but must be a bar from 1 to 17, or shaft"),
                Arguments.of(HEAD + "1,core,3\n", "x:2: to: is \"core\", but must be a bar from 1 to 17, or shaft"),
                Arguments.of(
                        HEAD + "4,4,3\n",
                        "x:2: to: is 4 as well: a reading is between two bars, or a bar and the shaft"),
                Arguments.of(
                        HEAD + "1,2,high\n",
                        "x:2: reading: is \"high\", but must be a number, with or without a unit such as V, OL for off "
                                + "the scale, or blank for a gap"),
                Arguments.of(
                        HEAD + "1,2,12 mv\n",
                        "x:2: reading: is \"12 mv\", but \"mv\" is no unit known here: did you mean \"mV\"?"),
                Arguments.of(
                        HEAD + "1,2,12 mm\n",
                        "x:2: reading: is \"12 mm\", a length, but must be a voltage or a resistance or a current"),
                Arguments.of(
                        HEAD + "1,2,\"1,234,5\"\n",
                        "x:2: reading: is \"1,234,5\", with a comma: write a point before decimals, and nothing "
                                + "between thousands"),
                Arguments.of(
                        HEAD + "1,2,\"1.234,5\"\n",
                        "x:2: reading: is \"1.234,5\", with a comma: write a point before decimals, and nothing "
                                + "between thousands"),
                Arguments.of(
                        HEAD + "1,2,12.3\n2,3,\"1,234\"\n",
                        "x:3: reading: is \"1,234\", with a decimal comma, but line 2 has a decimal point: keep to one"),
                Arguments.of(
                        "from;to;reading\n1;2;12,3\n2;3;1.234\n",
                        "x:3: reading: is \"1.234\", with a decimal point, but line 2 has a decimal comma: keep to one"),
                Arguments.of(
                        HEAD + "1,2,12 mV\n2,3,13\n",
                        "x:3: reading: is \"13\" without a unit, but line 2 has one: give all readings their unit, or "
                                + "none"),
                Arguments.of(
                        HEAD + "1,2,12\n2,3,13 mV\n",
                        "x:3: reading: is \"13 mV\" with a unit, but line 2 has none: give all readings their unit, or "
                                + "none"),
                Arguments.of(
                        HEAD + "1,2,12 mV\n2,3,13 mohm\n",
                        "x:3: reading: is \"13 mohm\", a resistance, but line 2 has a voltage: one file holds one kind"),
                Arguments.of(HEAD + "1,2,\"12\n", "x:2: has a quotation mark that is not closed"),
                Arguments.of(
                        HEAD + "1,2,\"12\" mV\n",
                        "x:2: has text after a closing quotation mark: a cell is quoted whole or not"),
                Arguments.of(HEAD + "1,2,1e99\n", "x:2: reading: is 1E+99, far out of range"),
                Arguments.of(
                        HEAD + "99,x,?\n",
                        "x:2: from: is \"99\", but must be a bar from 1 to 17, or shaft\n"
                                + "x:2: to: is \"x\", but must be a bar from 1 to 17, or shaft\n"
                                + "x:2: reading: is \"?\", but must be a number, with or without a unit such as V, OL "
                                + "for off the scale, or blank for a gap"));
    }

    @ParameterizedTest
    @MethodSource("malformed")
    void refusesWithFileLineAndColumn(String text, String expected) {
        var refusal = catchThrowableOfType(BadInputException.class, () -> ReadingsFile.parse("x", text, 17));
        assertThat(refusal).isNotNull();
        assertThat(refusal).hasMessage(expected);
    }

    @Test
    void aFileIsNamedWhereItIsMissingAndHoldsWhatIsWritten() throws Exception {
        Path file = temp.resolve("readings.csv");
        var refusal = catchThrowableOfType(BadInputException.class, () -> ReadingsFile.read(file, 17));
        assertThat(refusal).hasMessage(file + ": there is no such file");
        var readings =
                ReadingsFile.of(List.of(new PairReading(1, 2, 0.125), new PairReading(3, 0, Double.POSITIVE_INFINITY)));
        readings.write(file);
        assertThat(Files.readString(file)).isEqualTo("from,to,reading\n1,2,0.125\n3,shaft,OL\n");
        assertThat(ReadingsFile.read(file, 17)).isEqualTo(readings);
    }

    @Test
    void numbersComeInTheBaseUnit() throws Exception {
        var millivolts = ReadingsFile.parse("x", HEAD + "1,2,12.5 mV\n2,3,\n3,4,-0.5 V\n4,5,OL\n", 17);
        List<PairReading> volts = millivolts.numbers(TestKind.DROP, Optional.empty());
        assertThat(volts).hasSize(3);
        assertThat(volts.get(0).value()).isCloseTo(0.0125, within(1e-15));
        assertThat(volts.get(1)).isEqualTo(new PairReading(3, 4, -0.5));
        assertThat(volts.get(2).value()).isInfinite();

        var bare = ReadingsFile.parse("x", HEAD + "1,2,12.5\n", 17);
        assertThat(bare.numbers(TestKind.DROP, Optional.empty())).containsExactly(new PairReading(1, 2, 12.5));
        assertThat(bare.numbers(TestKind.RESISTANCE, Optional.of("mohm")).get(0).value())
                .isCloseTo(0.0125, within(1e-15));
        assertThatThrownBy(() -> millivolts.numbers(TestKind.RESISTANCE, Optional.empty()))
                .hasMessage("reading 1-2 is \"mV\", but a resistance test is read in ohm, mohm, uohm, kohm, Mohm");
        assertThatThrownBy(() -> bare.numbers(TestKind.GROUND, Optional.empty()))
                .hasMessage("reading 1-2 is from 1 to 2, but a ground test is read from a bar to the shaft");
        assertThatThrownBy(() -> bare.numbers(TestKind.DROP, Optional.of("ohm")))
                .hasMessage("is \"ohm\", but a drop test is read in V, mV, uV, kV");
    }
}
