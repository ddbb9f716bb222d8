package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import coilwright.commutator.Reading;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RunOutFileTest {
    private static final String HEAD = "bar,height\n";

    @TempDir
    private Path temp;

    private static List<RunOutEntry> entries(String text, String unit) throws BadInputException {
        return RunOutFile.parse("x", text, 24, Optional.of(unit).filter(u -> !u.isEmpty()))
                .entries();
    }

    private static RunOutEntry entry(int bar, String number, String unit) {
        return new RunOutEntry(bar, new Quantity(new BigDecimal(number), unit));
    }

    @Test
    void unitsGapsRepeatsAndCommentsInTheOrderOfTheFile() throws Exception {
        String text = """
                # before the cut
                bar,height
                1,0.012 mm
                2,12 µm
                3,0.5 thou

                4,
                1,-0.010 mm
                24,\u22121 um
                ,
                """;
        assertThat(entries(text, ""))
                .containsExactly(
                        entry(1, "0.012", "mm"),
                        entry(2, "12", "µm"),
                        entry(3, "0.5", "thou"),
                        entry(1, "-0.010", "mm"),
                        entry(24, "-1", "um"));
        assertThat(RunOutFile.readings(entries(text, "")))
                .extracting(Reading::heightMm)
                .satisfiesExactly(
                        h -> assertThat(h).isCloseTo(0.012, within(1e-12)),
                        h -> assertThat(h).isCloseTo(0.012, within(1e-12)),
                        h -> assertThat(h).isCloseTo(0.0127, within(1e-12)),
                        h -> assertThat(h).isCloseTo(-0.010, within(1e-12)),
                        h -> assertThat(h).isCloseTo(-0.001, within(1e-12)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "bar,height\n1,12.5\n",
                "bar,height\r\n1,\"12,5\"\r\n",
                "bar;height\n1;12,5\n",
                "height\tbar\n12.5\t1\n",
                "bar , \"height\"\n\"1\" , 12.5"
            })
    void bareNumbersTakeTheUnitGiven(String text) throws Exception {
        assertThat(entries(text, "um")).containsExactly(entry(1, "12.5", "um"));
    }

    static List<Arguments> malformed() {
        return List.of(
                Arguments.of("", "mm", "x: is empty: it begins with the line bar,height"),
                Arguments.of(HEAD, "mm", "x:1: has a heading but no readings under it"),
                Arguments.of(HEAD + "1,\n2,\n", "mm", "x: has no heights: every one of them is blank"),
                Arguments.of(
                        "bar,hieght\n1,2 mm\n",
                        "",
                        "x:1: hieght: unknown column: did you mean \"height\"?\nx:1: height: this column is missing"),
                Arguments.of(HEAD + "25,1 mm\n", "", "x:2: bar: is \"25\", but must be a bar from 1 to 24"),
                Arguments.of(HEAD + "0,1 mm\n", "", "x:2: bar: is \"0\", but must be a bar from 1 to 24"),
                Arguments.of(HEAD + "a,\n", "", "x:2: bar: is \"a\", but must be a bar from 1 to 24"),
                Arguments.of(HEAD + ",1 mm\n", "", "x:2: bar: is blank, but must be a bar from 1 to 24"),
                Arguments.of(
                        HEAD + "1,0.01\n",
                        "",
                        "x:2: height: is \"0.01\" without a unit: write it with the height, such as 0.012 mm, or give one"
                                + " unit for all"),
                Arguments.of(
                        HEAD + "1,0.01\n2,0.01 mm\n",
                        "mm",
                        "x:3: height: is \"0.01 mm\" with a unit, but line 2 has none: give all heights their unit, or"
                                + " none"),
                Arguments.of(
                        HEAD + "1,1 mm\n2,2\n",
                        "mm",
                        "x:3: height: is \"2\" without a unit, but line 2 has one: give all heights their unit, or none"),
                Arguments.of(
                        HEAD + "1,1 V\n",
                        "",
                        "x:2: height: is \"1 V\", a voltage, but must be a length such as \"1 mm\""),
                Arguments.of(HEAD + "1,OL\n", "mm", "x:2: height: is \"OL\", but must be a length such as \"1 mm\""),
                Arguments.of(
                        HEAD + "1,0.5 m\n",
                        "",
                        "x:2: height: is \"0.5 m\", but a gauge reads at most 100 mm either way: check the unit"),
                Arguments.of(
                        HEAD + "1,\"0,5 mm\"\n2,0.4 mm\n",
                        "",
                        "x:3: height: is \"0.4 mm\", with a decimal point, but line 2 has a decimal comma: keep to one"),
                Arguments.of(
                        HEAD + "1,0,5 mm\n",
                        "",
                        "x:2: has 3 cells, but the heading has 2: put a reading with a decimal comma in quotation"
                                + " marks"),
                Arguments.of(HEAD + "1,NaN mm\n2,1e-3 mm\n", "", null));
    }

    @ParameterizedTest
    @MethodSource("malformed")
    void malformedFilesAreToldByLine(String text, String unit, String message) {
        var thrown = catchThrowableOfType(BadInputException.class, () -> entries(text, unit));
        assertThat(thrown).isNotNull();
        if (message != null) {
            assertThat(thrown).hasMessage(message);
        } else {
            assertThat(thrown.problems()).extracting(Problem::line).containsExactly(2, 3);
        }
    }

    @Test
    void aUnitThatIsNoLengthIsRefused() {
        assertThatThrownBy(() -> entries(HEAD + "1,1\n", "V"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the unit of the readings is \"V\", but must be one of length: mm, in, cm, m, km, um, mil,"
                        + " thou, ft");
    }

    @Property(tries = 100)
    void whatIsWrittenIsReadBack(
            @ForAll @Size(min = 1, max = 30) List<@IntRange(min = 1, max = 24) Integer> bars,
            @ForAll @BigRange(min = "-3", max = "3") @Scale(4) BigDecimal height,
            @ForAll @IntRange(max = 3) int unit)
            throws Exception {
        String symbol = List.of("mm", "µm", "thou", "in").get(unit);
        RunOutFile file = new RunOutFile(
                bars.stream().map(b -> entry(b, height.toPlainString(), symbol)).toList());
        assertThat(RunOutFile.parse("x", file.toText(), 24, Optional.empty())).isEqualTo(file);
    }

    @Test
    void filesAreWrittenAndRead() throws Exception {
        RunOutFile file = new RunOutFile(List.of(entry(1, "0.01", "mm")));
        Path path = temp.resolve("r.csv");
        file.write(path);
        assertThat(RunOutFile.read(path, 3, Optional.empty())).isEqualTo(file);
        assertThatThrownBy(() -> RunOutFile.read(temp.resolve("none.csv"), 3, Optional.empty()))
                .hasMessageContaining("there is no such file");
    }
}
