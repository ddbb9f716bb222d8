package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.JobText;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;

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
}
