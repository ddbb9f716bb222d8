package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.winding.Armature;
import coilwright.winding.WindingSpec;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is large is taken up to a bound and refused in words past it, and the manual states the bounds. */
class BoundsTest {
    private static final String JOB = """
            coilwright: 1
            title: Test
            armature: {slots: 17, bars: 17, poles: 4}
            winding: {type: wave, throw: 4}
            """;

    @TempDir
    private Path folder;

    private static void refused(ThrowingCallable reading, String message) {
        assertThatThrownBy(reading).isInstanceOf(BadInputException.class).hasMessage(message);
    }

    @Test
    void theManualStatesTheBounds() throws Exception {
        String page = Files.readString(Path.of("../samples/docs/what-a-file-may-hold.md"));
        List<Integer> bounds = List.of(
                JobReader.MAX_BYTES,
                ConnectionList.MAX_BYTES,
                YamlText.MAX_DEPTH,
                YamlText.MAX_EVENTS,
                YamlText.MAX_LINE,
                CsvTable.MAX_LINE,
                CsvTable.MAX_COLUMNS,
                Armature.MAX_SLOTS,
                Armature.MAX_BARS,
                Armature.MAX_POLES,
                2 * Armature.MAX_BARS,
                WindingSpec.MAX_PLEX,
                Job.MAX_TURNS,
                Job.MAX_TITLE,
                SectionReader.MOST_CHARACTERS,
                SectionReader.MOST_ENTRIES,
                SectionReader.MOST_DEGREES,
                ReadingSet.MOST_READINGS,
                ReadingSet.MOST_DEGREES,
                WireChoice.MOST_IN_HAND);
        assertThat(bounds)
                .allSatisfy(n -> assertThat(page)
                        .containsPattern("(?<![0-9,])" + String.format(Locale.ROOT, "%,d", n) + "(?![0-9]|,[0-9])"));
        assertThat(ReadingsFile.MAX_BYTES).isEqualTo(JobReader.MAX_BYTES);
        assertThat(RunOutFile.MAX_BYTES).isEqualTo(JobReader.MAX_BYTES);
    }

    @Test
    void aLineOfAJobFileMayHaveAMillionCharacters() {
        String longest = JOB + "#" + "x".repeat(YamlText.MAX_LINE - 1);
        assertThatCode(() -> JobReader.parse("x", longest + "\n")).doesNotThrowAnyException();
        refused(
                () -> JobReader.parse("x", longest + "x\n"),
                "x:5: is longer than 1000000 characters, the most that a line may have");
    }

    @Test
    void aLineOfATableMayHaveTenThousandCharacters() {
        String comment = "#" + "x".repeat(20_000) + "\n";
        String row = "1,2,\"" + " ".repeat(CsvTable.MAX_LINE - 7) + "5\"";
        assertThatCode(() -> ReadingsFile.parse("x", comment + "from,to,reading\n" + row + "\n", 9))
                .doesNotThrowAnyException();
        refused(
                () -> ReadingsFile.parse("x", "from,to,reading\n" + row + " \n", 9),
                "x:2: is longer than 10000 characters, the most that a line may have");
        // Such a line took hours when the marks were looked at one by one.
        refused(
                () -> RunOutFile.parse("x", "a" + "\"".repeat(RunOutFile.MAX_BYTES - 1), 9, Optional.of("mm")),
                "x:1: is longer than 10000 characters, the most that a line may have");
    }

    @Test
    void aTableMayHaveAHundredColumns() {
        refused(
                () -> ReadingsFile.parse("x", "from,to,reading" + ",a".repeat(98) + "\n", 9),
                "x:1: has 101 columns, but may have at most 100");
        refused(
                () -> ConnectionList.parse("x", "coil,topSlot,bottomSlot,topBar,bottomBar" + ",a".repeat(96) + "\n"),
                "x:1: has more than 100 cells");
    }

    @Test
    void rowsAreCountedRightOrWrong() {
        String rows = "x,y,z\n".repeat(ReadingSet.MOST_READINGS + 1);
        refused(
                () -> ReadingsFile.parse("x", "from,to,reading\n" + rows, 9),
                "x:20002: is too long: at most 20000 readings are taken");
    }

    @Test
    void aProblemIsToldOnce() {
        refused(
                () -> JobReader.parse("x", JOB.replace("throw: 4", "throw: 4" + ", throw: 4".repeat(6000))),
                "x:4: winding.throw: stands twice, first in line 4: keep one");
    }

    @Test
    void moreProblemsThanAreKeptAreCounted() {
        assertThatThrownBy(() -> ReadingsFile.parse("x", "from,to,reading\n" + "1,2,a\n".repeat(15_000), 9))
                .hasMessageEndingWith("\nx: 14950 more problems are not shown");
    }

    @Test
    void whatAMessageQuotesIsCutShort() {
        String row = "\n1," + "\u0007".repeat(5000) + " mm\n";
        assertThatThrownBy(() -> RunOutFile.parse("x", "bar,height" + row, 9, Optional.empty()))
                .message()
                .startsWith("x:2: height: is \"\\u0007\\u0007")
                .hasSizeLessThan(500);
    }

    @Test
    void jsonMayHaveTabsBetweenItsValues() throws Exception {
        String json =
                "{\t\"coilwright\":\t1,\t\n\t\"title\":\t\"a \\\" b\",\t\"armature\": {\"slots\":\t17,\"bars\":17,"
                        + "\"poles\":4},\n\t\"winding\":\t{\"type\":\t\"wave\"}\t}\t";
        assertThat(JobReader.parse("x", json).title()).isEqualTo("a \" b");
        refused(
                () -> JobReader.parse("x", json.replace("a \\\" b", "a\tb")),
                "x:2: title: holds the unseen character U+0009: take it out");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"\ufeff", "\ud800", "\uffff", "\u0085", "\u202e", "- a", "-", "\"", "a: b", "#", "@x", "\0"})
    void aTextStaysAYamlTextWhateverIsTyped(String typed) {
        JobText after = JobText.of("x", JOB).with("armature.bars", typed).with("title", typed);
        assertThat(after.editable()).isTrue();
        assertThat(after.get("armature.bars")).isEqualTo(typed);
        assertThat(after.get("title")).isEqualTo(typed);
    }

    @Test
    void aListInLinesIsReplacedAsAWhole() {
        String text =
                JOB.replace("{type: wave, throw: 4}\n", "\n  type: wave\n  deadCoils:\n    - 3\n    - 4\n  throw: 4\n");
        JobText after = JobText.of("x", text).with("winding.deadCoils", "7 8");
        assertThat(after.text()).endsWith("winding: \n  type: wave\n  throw: 4\n  deadCoils: [7, 8]\n");
        assertThat(after.job()).isPresent();
        assertThatThrownBy(() -> after.with("commutator.runOut[2].height", "1 mm"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("commutator.runOut[2] is not there: the list ends before it");
    }

    @Test
    void aRunWithAReadingThatItsTestCannotHaveIsRefusedAtItsLine() throws Exception {
        Path file = folder.resolve("a.csv");
        Files.writeString(file, "# test: ground\n# unit: ohm\nfrom,to,reading\n1,shaft,5\n1,2,5\n");
        refused(
                () -> ReadingsJournal.resume(file, 9),
                file + ":5: is from 1 to 2, but a ground test is read from a bar to the shaft");
        Files.writeString(file, "\n# test: drop\n\n# feed: {in: 1, out: 5, amps: 0}\n# unit: V\nfrom,to,reading\n");
        refused(
                () -> ReadingsJournal.resume(file, 9),
                file + ":4: feed.amps: is 0, but must be over 0 and at most 1000000 amperes");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e-999999999", "0.1234567890123", "1e999999999"})
    void aNumberThatNoFileCouldHoldIsNotTaken(String number) {
        var huge = new BigDecimal(number);
        assertThatThrownBy(() -> new ReadingSet.GivenFeed(1, 2, huge))
                .isInstanceOf(IllegalArgumentException.class)
                .message()
                .hasSizeLessThan(100);
        assertThatThrownBy(() -> ReadingSet.checkDegrees(huge)).isInstanceOf(IllegalArgumentException.class);
    }
}
