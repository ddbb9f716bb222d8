package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
}
