package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.JobText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobDocumentTest {
    private static final String TEXT = """
            coilwright: 1   # kept
            title: T
            armature: {slots: 17, bars: 17, poles: 4}
            winding: {type: wave}
            """;

    private final JobDocument document = new JobDocument(Optional.empty(), JobText.of("t", TEXT));

    @Test
    void typingInOneFieldIsOneStep() {
        document.edit("armature.bars", "1");
        document.edit("armature.bars", "");
        document.edit("armature.bars", "3");
        document.edit("armature.bars", "33");
        document.edit("title", "U");
        assertThat(document.undoable()).contains("title");
        document.undo();
        assertThat(document.text().get("armature.bars")).isEqualTo("33");
        document.undo();
        assertThat(document.text().text()).isEqualTo(TEXT);
        assertThat(document.undoable()).isEmpty();
        document.redo();
        document.redo();
        assertThat(document.text().get("title")).isEqualTo("U");
        assertThat(document.redoable()).isEmpty();
    }

    @Test
    void aFieldEmptiedOnTheWayKeepsItsPlace() {
        document.edit("armature.slots", "");
        document.edit("armature.slots", "19");
        assertThat(document.text().text()).isEqualTo(TEXT.replace("slots: 17", "slots: 19"));
        document.edit("armature.slots", "17");
        assertThat(document.text().text()).isEqualTo(TEXT);
        assertThat(document.undoable()).isEmpty();
    }

    @Test
    void aFieldLeftAndEnteredAgainBeginsANewStep() {
        document.edit("title", "U");
        document.seal();
        document.edit("title", "V");
        document.undo();
        assertThat(document.text().get("title")).isEqualTo("U");
    }

    @Test
    void aNewStepTakesTheWayForwardAway() {
        document.edit("title", "U");
        document.undo();
        document.edit("title", "W");
        document.redo();
        assertThat(document.text().get("title")).isEqualTo("W");
    }

    @Test
    void knowsWhatIsSaved() {
        assertThat(document.unsaved()).isFalse();
        document.edit("title", "U");
        assertThat(document.unsaved()).isTrue();
        document.undo();
        assertThat(document.unsaved()).isFalse();
        document.redo();
        document.savedAs(Path.of("t.yaml"), document.text().text());
        assertThat(document.unsaved()).isFalse();
        assertThat(document.file()).contains(Path.of("t.yaml"));
        document.undo();
        assertThat(document.unsaved()).isTrue();
    }

    @Test
    void tellsWhetherAnotherProgramChangedTheFile(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("job.yaml");
        assertThat(JobDocument.isChanged(file, List.of(TEXT))).isFalse();
        Files.writeString(file, TEXT);
        assertThat(JobDocument.isChanged(file, List.of("other", TEXT))).isFalse();
        Files.writeString(file, "\uFEFF" + TEXT);
        assertThat(JobDocument.isChanged(file, List.of(TEXT))).isFalse();
        Files.writeString(file, TEXT + "# more\n");
        assertThat(JobDocument.isChanged(file, List.of(TEXT))).isTrue();
        Files.write(file, new byte[] {(byte) 0xff});
        assertThat(JobDocument.isChanged(file, List.of(TEXT))).isTrue();
    }

    @Test
    void whatAnotherProgramSavedIsTakenUpAndUndoGivesOnesOwn() {
        document.edit("title", "Mine");
        JobText mine = document.text();
        JobText other = document.text().with("title", "Theirs");
        document.takeUp(other);
        assertThat(document.unsaved()).isFalse();
        assertThat(document.text().get("title")).isEqualTo("Theirs");
        document.undo();
        assertThat(document.text().text()).isEqualTo(mine.text());
        assertThat(document.unsaved()).isTrue();
        document.takeUp(mine);
        assertThat(document.unsaved()).isFalse();
    }
}
