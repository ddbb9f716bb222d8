package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.JobText;
import coilwright.winding.Finding;
import coilwright.winding.ImpossibleWindingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javax.swing.AbstractButton;
import javax.swing.JLabel;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sets runs up without a display. */
class BenchSetUpTest {
    @TempDir
    private Path folder;

    private final List<Throwable> troubles = new ArrayList<>();
    private final List<BenchRun> runs = new ArrayList<>();
    private final Background disk = new Background("disk of a test", troubles::add);
    private JobDocument document;
    private WindingPanel winding;
    private BenchSetUp setUp;

    @BeforeEach
    void begin() throws Exception {
        JobText text = JobText.read(BenchRunTest.SAMPLE);
        Parts.run(() -> {
            Thread.currentThread().setUncaughtExceptionHandler((thread, e) -> troubles.add(e));
            document = new JobDocument(Optional.of(folder.resolve("job.yaml")), text);
            winding = new WindingPanel(document, words -> {}, troubles::add);
            setUp = new BenchSetUp(winding, document, words -> {}, Runnable::run, troubles::add, disk, runs::add);
            winding.begin();
        });
        looked();
        Parts.run(setUp::fill);
        Parts.until("the feed is advised", () -> field("out").getText().equals("5"));
    }

    @AfterEach
    void nothingUnforeseen() {
        Parts.run(() -> Thread.currentThread().setUncaughtExceptionHandler(null));
        assertThat(troubles).isEmpty();
    }

    private AbstractButton button(String name) {
        return Parts.named(setUp, name, AbstractButton.class);
    }

    private JTextField field(String key) {
        return Parts.named(setUp, "run " + key, JTextField.class);
    }

    private boolean enabled(String name) {
        return Hand.see(() -> button(name).isEnabled());
    }

    /** Waits until the rules have looked at the text as it stands. */
    private void looked() throws InterruptedException {
        Parts.until(
                "the rules are through",
                () -> winding.state().filter(s -> s.text() == document.text()).isPresent());
    }

    private void change(String text) throws InterruptedException {
        Parts.run(() -> document.change(JobText.of("t", text), "all"));
        looked();
    }

    private void undo() throws InterruptedException {
        Parts.run(document::undo);
        looked();
    }

    @Test
    void aRunIsBegunOrGoneOnWithOnlyWhereTheWindingIsBuilt() throws Exception {
        assertThat(enabled("begin")).isTrue();
        change(document.text().text().replace("slots: 17", "slots: x"));
        assertThat(enabled("begin") || enabled("resume")).isFalse();
        undo();
        assertThat(enabled("begin") && enabled("resume")).isTrue();
        change(BenchRunTest.UNWINDABLE);
        assertThat(enabled("begin") || enabled("resume")).isFalse();
        undo();
        assertThat(enabled("begin") && enabled("resume")).isTrue();
    }

    @Test
    void nothingIsBegunOnATextThatTheRulesHaveNotLookedAtYet() throws Exception {
        Parts.run(() -> {
            document.edit("armature.slots", "x");
            button("begin").doClick();
        });
        looked();
        Parts.settle(disk);
        assertThat(runs).isEmpty();
    }

    /** Fills in what is advised, and waits for it. */
    private void fill(String test) throws InterruptedException {
        Parts.run(() -> {
            Parts.named(setUp, "how to", Wrapped.class).setText("");
            setUp.choose(test);
            setUp.fill();
        });
        Parts.until(
                "it is advised",
                () -> !Parts.named(setUp, "how to", Wrapped.class).getText().isEmpty());
    }

    private String typed(String key) {
        return Hand.see(() -> field(key).getText());
    }

    @Test
    void adviceLeavesAloneWhatWasTyped() throws Exception {
        Parts.run(() -> field("out").setText("9"));
        fill("drop");
        assertThat(typed("in") + " to " + typed("out")).isEqualTo("1 to 9");
        fill("growler-turned");
        String clock = typed("clock");
        assertThat(clock).isNotEmpty();
        Parts.run(() -> field("clock").setText("7"));
        fill("growler-turned");
        assertThat(typed("clock")).isEqualTo("7");
        Parts.run(() -> field("clock").setText(""));
        fill("growler-turned");
        assertThat(typed("clock")).isEqualTo(clock);
    }

    @Test
    void anotherWindingsAdviceTakesThePlaceOfAdviceAndAnotherJobsOfAll() throws Exception {
        JobText other = JobText.read(Path.of("../samples/jobs/ferry-lantern-dynamo.yaml"));
        change(other.text());
        fill("drop");
        String out = typed("out");
        assertThat(out).isNotEqualTo("5");
        Parts.run(() -> field("out").setText("9"));
        Parts.run(() -> document.replace(Optional.empty(), other, other.text()));
        looked();
        fill("drop");
        assertThat(typed("out")).isEqualTo(out);
    }

    private String refused(String test, String key, String typed) throws InterruptedException {
        fill(test);
        Parts.run(() -> {
            field(key).setText(typed);
            button("begin").doClick();
            field(key).setText("1");
        });
        return Parts.named(setUp, "wrong", Wrapped.class).getText();
    }

    @Test
    void whatIsWrongIsToldByItsField() throws Exception {
        assertThat(refused("drop", "amps", "0"))
                .isEqualTo("✗ Amperes is 0, but must be over 0 and at most 1000000 amperes");
        assertThat(refused("drop", "in", "0")).isEqualTo("✗ In at bar is \"0\", but must be the number of a bar");
        assertThat(refused("drop", "in", "5"))
                .isEqualTo("✗ In at bar and Out at bar are both 5: name two different bars");
        assertThat(refused("growler", "angle", "4000")).startsWith("✗ Slot 1 at, degrees is 4000, but must be");
        assertThat(refused("growler-turned", "clock", "4000")).startsWith("✗ Probes held at, degrees is 4000, but");
        assertThat(refused("drop", "meter", "m".repeat(300))).startsWith("✗ Meter is 300 characters long");
        assertThat(refused("drop", "unit", "stone"))
                .startsWith("✗ Unit of the readings is \"stone\", but a drop test is read in ");
        Parts.settle(disk);
        assertThat(runs).isEmpty();
    }

    @Test
    void askedForTwiceARunIsBegunOnce() throws Exception {
        CountDownLatch held = Parts.hold(disk);
        Parts.run(() -> {
            button("begin").doClick();
            button("begin").doClick();
        });
        Parts.type(field("amps"), "\n");
        held.countDown();
        Parts.settle(disk);
        assertThat(runs).hasSize(1);
        assertThat(folder.resolve("job.drop.csv")).exists();
        assertThat(folder.resolve("job.drop-2.csv")).doesNotExist();
        assertThat(enabled("begin")).isTrue();
    }

    @Test
    void aRunThatCannotBeKeptCanBeAskedForAgain() throws Exception {
        Files.delete(folder);
        Parts.run(() -> button("begin").doClick());
        Parts.settle(disk);
        assertThat(troubles).hasSize(1);
        troubles.clear();
        Files.createDirectory(folder);
        Parts.run(() -> button("begin").doClick());
        Parts.settle(disk);
        assertThat(runs).hasSize(1);
    }

    @Test
    void aWindingThatCannotBeWoundIsNoFaultOfTheProgram() {
        var status = Hand.see(StatusBar::new);
        Parts.run(() -> status.trouble(new ImpossibleWindingException(
                JobState.of(JobText.of("t", BenchRunTest.UNWINDABLE)).findings())));
        assertThat(Parts.named(status, "status", JLabel.class).getText())
                .isEqualTo(JobState.of(JobText.of("t", BenchRunTest.UNWINDABLE)).findings().stream()
                        .map(Finding::message)
                        .findFirst()
                        .orElseThrow());
    }

    @Test
    void anotherJobThatCannotBeWoundIsToldByItsFile() throws Exception {
        Path other = Files.writeString(folder.resolve("other.yaml"), BenchRunTest.UNWINDABLE);
        Parts.until("the winding is there", () -> winding.ties().isPresent());
        Parts.run(() -> new ComparePanel(winding, words -> {}, troubles::add).with(other));
        Parts.until("it is told", () -> !troubles.isEmpty());
        assertThat(troubles.get(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(other + " cannot be wound: ");
        troubles.clear();
    }
}
