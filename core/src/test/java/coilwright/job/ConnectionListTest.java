package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class ConnectionListTest {
    private static final String HEAD = "coil,topSlot,bottomSlot,topBar,bottomBar\n";

    @Test
    void readsColumnsInAnyOrderWithQuotesSpacesAndWindowsLineEnds() throws Exception {
        String text =
                "bottomBar, coil ,topSlot,\"bottomSlot\",topBar,dead\r\n2,1,1,\"4\",1,false\r\n\r\n,2,1,4,,TRUE\r\n";
        assertThat(ConnectionList.parse("x", text))
                .containsExactly(ListedCoil.of(1, 1, 4, 1, 2), ListedCoil.dead(2, 1, 4));
    }

    @Test
    void aWindingReadsBackAsItsOwnList() throws Exception {
        var winding = Winding.build(
                Armature.of(12, 23, 4),
                WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(24)));
        String text = ConnectionList.toText(winding);
        assertThat(text).startsWith("coil,topSlot,bottomSlot,topBar,bottomBar,dead\n1,1,4,1,12,false\n");
        assertThat(text).endsWith("\n24,12,3,,,true\n");
        assertThat(ConnectionList.parse("x", text)).isEqualTo(winding.asListed().coils());
    }

    static List<Arguments> malformed() {
        return List.of(
                Arguments.of("", "x: is empty: it begins with the line coil,topSlot,bottomSlot,topBar,bottomBar"),
                Arguments.of(HEAD, "x:1: has a heading but no coils under it"),
                Arguments.of("1,1,5,1,2\n", "x:1: must be the heading coil,topSlot,bottomSlot,topBar,bottomBar"),
                Arguments.of(
                        "coil,topSlot,bottomSlot,topbar,bottomBar\n1,1,5,1,2\n",
                        "x:1: topbar: unknown column: did you mean \"topBar\"?\nx:1: topBar: this column is missing"),
                Arguments.of(
                        "coil,coil,topSlot,bottomSlot,topBar,bottomBar\n", "x:1: coil: is a column twice: keep one"),
                Arguments.of(HEAD + "1,1,5,1\n", "x:2: has 4 cells, but the heading has 5"),
                Arguments.of(HEAD + "1,1,5,1,2,3\n", "x:2: has 6 cells, but the heading has 5"),
                Arguments.of(HEAD + "1,,5,1,2\n", "x:2: topSlot: is blank"),
                Arguments.of(
                        HEAD + "1,1,5,1,2\n2,1,5,x,3\n",
                        "x:3: topBar: is \"x\", but must be a whole number from 1 to 4000, or blank where the lead "
                                + "lands on no bar"),
                Arguments.of(
                        HEAD + "1,1.5,5,1,2\n", "x:2: topSlot: is \"1.5\", but must be a whole number from 1 to 1000"),
                Arguments.of(
                        HEAD + "1,-1,5,1,2\n", "x:2: topSlot: is \"-1\", but must be a whole number from 1 to 1000"),
                Arguments.of(
                        HEAD + "99999999999,1,5,1,2\n",
                        "x:2: coil: is \"99999999999\", but must be a whole number from 1 to 8000"),
                Arguments.of(HEAD + "1,1,5,1,2\n\n1,2,6,2,3\n", "x:4: coil: lists coil 1 again, first in line 2"),
                Arguments.of(
                        "coil,topSlot,bottomSlot,topBar,bottomBar,dead\n1,1,5,1,2,true\n2,1,5,1,2,no\n",
                        "x:2: dead: is true, but the coil has a lead on a bar: a dead coil has none\n"
                                + "x:3: dead: is \"no\", but must be true or false"));
    }

    @ParameterizedTest
    @MethodSource("malformed")
    void refusesWithFileLineAndColumn(String text, String expected) {
        var refusal = catchThrowableOfType(BadInputException.class, () -> ConnectionList.parse("x", text));
        assertThat(refusal).isNotNull();
        assertThat(refusal).hasMessage(expected);
    }

    @Test
    void refusesAnUnclosedQuote() {
        var refusal =
                catchThrowableOfType(BadInputException.class, () -> ConnectionList.parse("x", HEAD + "\"1,1,5,1,2\n"));
        assertThat(refusal.problems()).hasSize(1);
        assertThat(refusal.getMessage()).startsWith("x:").contains("has a quotation mark that is not closed");
    }

    @Test
    void anUnclosedQuoteIsToldWhereItOpens() {
        for (String end : List.of("\n", "\r\n", "\r")) {
            String text = (HEAD + "1,1,5,\"1\",2\n2,2,6, \"say \"\"2\"\"\n,3\n3,3,7,3,4\n").replace("\n", end);
            BadInputException refusal =
                    catchThrowableOfType(BadInputException.class, () -> ConnectionList.parse("x", text));
            assertThat(refusal.getMessage()).isEqualTo("x:3: has a quotation mark that is not closed");
        }
    }

    @Test
    void refusesTooManyLines() {
        var refusal = catchThrowableOfType(
                BadInputException.class, () -> ConnectionList.parse("x", HEAD + "1,1,5,1,2\n".repeat(9000)));
        assertThat(refusal.getMessage()).contains("at most 8000 coils are taken");
    }

    @Test
    void missingFileIsNamed() {
        var refusal =
                catchThrowableOfType(BadInputException.class, () -> ConnectionList.read(Path.of("no-such-file.csv")));
        assertThat(refusal).hasMessage("no-such-file.csv: there is no such file");
    }
}
