package coilwright.samples;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.JobReader;
import coilwright.winding.Rules;
import coilwright.winding.Severity;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every sample job and program does what it says. */
class SampleProgramsTest {
    private static final Path JOBS = Path.of("jobs");

    @TempDir
    private Path temp;

    /** A program. */
    private interface Program {
        void run(String... args) throws Exception;
    }

    private static String printedBy(Program program, String... args) throws Exception {
        PrintStream before = System.out;
        var bytes = new ByteArrayOutputStream();
        System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        try {
            program.run(args);
        } finally {
            System.setOut(before);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }

    private static List<Path> jobs() throws Exception {
        try (Stream<Path> files = Files.list(JOBS)) {
            return files.sorted().toList();
        }
    }

    @Test
    void everySampleJobBuildsAndNoRuleWarns() throws Exception {
        Set<WindingType> types = new TreeSet<>();
        List<String> titles = new ArrayList<>();
        for (Path file : jobs()) {
            var job = JobReader.read(file);
            Winding winding = job.build();
            assertThat(Rules.check(winding))
                    .as(file.toString())
                    .allSatisfy(f -> assertThat(f.severity()).isEqualTo(Severity.NOTE));
            types.add(winding.type());
            titles.add(job.title());
        }
        assertThat(types).containsExactly(WindingType.values());
        assertThat(titles).hasSizeGreaterThanOrEqualTo(8).doesNotHaveDuplicates();
    }

    /** A spare coil connected lapwise closes the one circuit over all 28 bars, so that the winding needs no dead coil. */
    @Test
    void theSpareCoilConnectedLapwiseLeavesNoBarOut() throws Exception {
        Winding winding =
                JobReader.read(JOBS.resolve("landing-stage-light-dynamo.yaml")).build();
        int bar = 1;
        Set<Integer> seen = new TreeSet<>();
        do {
            int from = bar;
            seen.add(from);
            bar = winding.liveCoils().stream()
                    .filter(c -> c.topBar().getAsInt() == from)
                    .findFirst()
                    .orElseThrow()
                    .bottomBar()
                    .getAsInt();
        } while (bar != 1);
        assertThat(seen).hasSize(28);
        assertThat(winding.coil(15).topBar()).hasValue(15);
        assertThat(winding.coil(15).bottomBar()).hasValue(28);
        assertThat(winding.coil(28).bottomBar()).hasValue(1);
    }

    @Test
    void printCoilTablePrintsEveryCoil() throws Exception {
        String text = printedBy(
                PrintCoilTable::main, JOBS.resolve("ferry-lantern-dynamo.yaml").toString());
        assertThat(text.lines())
                .hasSize(25)
                .contains("Ferry lantern dynamo")
                .contains("coil 1: slots 1 and 4, bar 1 to bar 12")
                .contains("coil 24: slots 12 and 3, not connected");
    }

    @Test
    void listWindingsThatFitListsAndExplains() throws Exception {
        assertThat(printedBy(ListWindingsThatFit::main, "12", "4"))
                .contains("wave of plex 1, retrogressive: 23 bars, 1 dead coils, throw 1-4, 2 paths")
                .contains("others do not fit; the first because ");
    }

    @Test
    void drawAWindingWritesTheDrawing() throws Exception {
        Path file = temp.resolve("wave.svg");
        assertThat(printedBy(DrawAWinding::main, file.toString())).isEqualTo(file + System.lineSeparator());
        assertThat(Files.readString(file)).contains("data-coil=\"17\"").contains("A wave winding of 17 coils");
    }
}
