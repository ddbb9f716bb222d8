package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.file.Forked;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.yaml.snakeyaml.resolver.Resolver;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

class ReadingsJournalTest {
    @TempDir
    private Path folder;

    private static ReadingSet setUp(Optional<String> unit) {
        return new ReadingSet(
                Optional.of(LocalDate.of(2024, 3, 1)),
                TestKind.DROP,
                Optional.of(new ReadingSet.GivenFeed(1, 5, new BigDecimal("2.5"))),
                Optional.empty(),
                Optional.empty(),
                unit,
                Optional.of("The \"old\" meter"),
                Optional.empty(),
                List.of());
    }

    @Test
    void holdsEveryReadingAtOnceAndTakesUpWhereItStopped() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal journal = ReadingsJournal.begin(file, setUp(Optional.of("mV")));
        assertThat(ReadingsJournal.resume(file, 17).readings()).isEqualTo(journal.readings());
        journal.note(1, 2, "172.2");
        assertThat(Files.readString(file)).endsWith("from,to,reading\n1,2,172.2 mV\n");
        journal.note(2, 3, "OL");
        journal.note(3, 4, "");
        journal.note(4, 5, "0.171 V");
        journal.note(1, 2, "173");
        ReadingSet again = ReadingsJournal.resume(file, 17).readings();
        assertThat(again).isEqualTo(journal.readings());
        assertThat(again.readings()).hasSize(4);
        assertThat(again.readings().get(0).written()).isEqualTo("173 mV");
        assertThat(again.meter()).contains("The \"old\" meter");
        assertThat(ReadingsFile.read(file, 17).readings()).hasSize(5);
    }

    @Test
    void keepsWhichWindingIsRead() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingSet rewound = setUp(Optional.of("mV")).at(ReadingSet.Stage.AS_REWOUND);
        assertThat(ReadingsJournal.begin(file, rewound).readings()).isEqualTo(rewound);
        assertThat(ReadingsJournal.resume(file, 17).readings()).isEqualTo(rewound);
    }

    @Test
    void takesBackTheLast() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal journal = ReadingsJournal.begin(file, setUp(Optional.of("mV")));
        journal.note(1, 2, "172");
        journal.note(1, 2, "17");
        assertThat(journal.takeBack()).map(TakenReading::written).contains("17 mV");
        assertThat(ReadingsJournal.resume(file, 17).readings().readings())
                .extracting(TakenReading::written)
                .containsExactly("172 mV");
        journal.takeBack();
        assertThat(journal.takeBack()).isEmpty();
        assertThat(journal.readings().readings()).isEmpty();
    }

    @Test
    void notesNothingWrong() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal journal = ReadingsJournal.begin(file, setUp(Optional.empty()));
        assertThatThrownBy(() -> journal.note(1, 2, "12")).hasMessageContaining("without a unit");
        assertThatThrownBy(() -> journal.note(1, 2, "12 ohm")).hasMessageContaining("must be a voltage");
        assertThatThrownBy(() -> journal.note(1, 2, "twelve")).hasMessageContaining("must be a number");
        assertThatThrownBy(() -> journal.note(1, 0, "12 mV")).hasMessageContaining("between two bars");
        assertThat(ReadingsJournal.resume(file, 17).readings().readings()).isEmpty();
        assertThatThrownBy(() -> ReadingsJournal.begin(file, setUp(Optional.empty())))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void dropsALineThatWasCutOff() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal journal = ReadingsJournal.begin(file, setUp(Optional.of("mV")));
        journal.note(1, 2, "172");
        String good = Files.readString(file);
        Files.writeString(file, good + "2,3,1");
        ReadingsJournal again = ReadingsJournal.resume(file, 17);
        assertThat(again.readings()).isEqualTo(journal.readings());
        assertThat(Files.readString(file)).isEqualTo(good);
        again.note(2, 3, "171");
        assertThat(Files.readString(file)).isEqualTo(good + "2,3,171 mV\n");
    }

    @Test
    void saysWhatIsWrongWithAFile() throws Exception {
        Path file = Files.writeString(folder.resolve("a.csv"), "from,to,reading\n1,2,3 mV\n");
        assertThatThrownBy(() -> ReadingsJournal.resume(file, 17))
                .hasMessageContaining("does not begin with its set-up");
        Files.writeString(file, "# test: drop\nfrom,to,reading\n1,2,3 mV\n");
        assertThatThrownBy(() -> ReadingsJournal.resume(file, 17)).hasMessageContaining("a drop test needs it");
        Files.writeString(file, "# test: resistance\nfrom,to,reading\n1,99,3 ohm\n");
        assertThatThrownBy(() -> ReadingsJournal.resume(file, 17)).hasMessageContaining("99");
    }

    /** Units may hold a sign of two bytes, and a power cut knows nothing of that. */
    @Test
    void aLineCutWithinASignIsDropped() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal.begin(file, setUp(Optional.of("mV"))).note(1, 2, "172");
        String whole = Files.readString(file);
        byte[] cut = (whole + "2,3,17 µV\n").getBytes(StandardCharsets.UTF_8);
        Files.write(file, Arrays.copyOf(cut, cut.length - 3));
        assertThat(ReadingsJournal.resume(file, 17).readings().readings()).hasSize(1);
        assertThat(file).hasContent(whole);
    }

    @Test
    void whatAnotherProgramChangedIsNeitherMixedNorOverwritten() throws Exception {
        Path file = folder.resolve("a.csv");
        ReadingsJournal one = ReadingsJournal.begin(file, setUp(Optional.of("mV")));
        one.note(1, 2, "172");
        ReadingsJournal other = ReadingsJournal.resume(file, 17);
        other.note(2, 3, "173");
        String kept = Files.readString(file);
        assertThatThrownBy(() -> one.note(3, 4, "174"))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("another");
        assertThatThrownBy(one::takeBack).isInstanceOf(IOException.class).hasMessageContaining("another program");
        assertThat(one.readings().readings()).hasSize(1);
        assertThat(file).hasContent(kept);
        other.note(3, 4, "174");
        assertThat(ReadingsJournal.resume(file, 17).readings().readings()).hasSize(3);
        Files.delete(file);
        assertThatThrownBy(() -> other.note(4, 5, "1")).isInstanceOf(IOException.class);
        assertThat(file).doesNotExist();
    }

    /** The file may grow to 4 blocks of 1024 or 512 bytes: the reading that does not go in leaves no part of its line. */
    @Test
    void whereTheDiskIsFullTheLastReadingIsNotedWholeOrNotAtAll() throws Exception {
        Forked.needs("a shell that bounds the size of files", "sh", "-c", "ulimit -f 4");
        Path file = folder.resolve("a.csv");
        String noted = Forked.says(Forked.java(
                List.of("sh", "-c", "ulimit -f 4 && exec \"$@\"", "sh"),
                Filler.class,
                List.of(ReadingsJournal.class, Resolver.class, Unit.class, Units.class, AbstractUnit.class),
                file.toString()));
        assertThat(noted).matches("[1-9][0-9]* noted, then (?!.*another program).*\\R");
        int count = Integer.parseInt(noted.substring(0, noted.indexOf(' ')));
        assertThat(Files.readString(file)).endsWith("\n");
        assertThat(ReadingsFile.read(file, Filler.BARS).readings()).hasSize(count);
        ReadingsJournal again = ReadingsJournal.resume(file, Filler.BARS);
        again.note(1, 2, "5");
        assertThat(ReadingsFile.read(file, Filler.BARS).readings()).hasSize(count + 1);
    }

    /** Notes readings until that fails, twice: the second must not make anything of the first. */
    static final class Filler {
        static final int BARS = 900;

        private Filler() {}

        public static void main(String[] args) throws IOException {
            ReadingsJournal journal = ReadingsJournal.begin(Path.of(args[0]), setUp(Optional.of("mV")));
            int n = 0;
            for (int failed = 0; failed < 2; ) {
                try {
                    journal.note(n % BARS + 1, (n + 1) % BARS + 1, "123.45678");
                    n++;
                } catch (IOException e) {
                    failed++;
                    if (failed == 2) {
                        System.out.println(n + " noted, then " + e.getMessage());
                    }
                }
            }
        }
    }

    /** A spreadsheet parts every line into cells, and works out those that begin so. */
    @Property(tries = 200)
    void theMeterStaysOneCellThatIsNoFormula(@ForAll("meters") String meter) throws Exception {
        Path file = Files.createTempFile("meter", ".csv");
        try {
            Files.delete(file);
            ReadingSet given = new ReadingSet(
                    Optional.empty(),
                    TestKind.RESISTANCE,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of("ohm"),
                    Optional.of(meter),
                    Optional.empty(),
                    List.of());
            ReadingsJournal.begin(file, given);
            String line = Files.readString(file)
                    .lines()
                    .filter(l -> l.startsWith("# meter"))
                    .findFirst()
                    .orElseThrow();
            assertThat(line).doesNotContain(",", ";", "\t");
            assertThat(ReadingsJournal.resume(file, 17).readings().meter()).contains(meter);
        } finally {
            Files.deleteIfExists(file);
        }
    }

    @Provide
    Arbitrary<String> meters() {
        return Arbitraries.of(",", ";", "=", "+1", "@", "\"", "'", "\\", "\\x2C", "a", " ", "|", "#", ": ", "=1+1", "µ")
                .list()
                .ofMinSize(1)
                .ofMaxSize(12)
                .map(l -> String.join("", l))
                .filter(m -> !m.isBlank());
    }
}
