package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.drawing.Element;
import coilwright.fault.Fault;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.JobText;
import coilwright.job.TakenReading;
import java.awt.Font;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javax.swing.AbstractButton;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes readings without a display, faster than the disk writes. */
class BenchTakingTest {
    @TempDir
    private Path folder;

    private final List<Throwable> troubles = new ArrayList<>();
    private final List<String> said = new ArrayList<>();
    private final Background disk = new Background("disk of a test", troubles::add);
    private JobDocument document;
    private WindingPanel winding;
    private BenchTaking taking;
    private Path journal;
    private JTextField reading;
    private boolean ended;

    @BeforeEach
    void begin() throws Exception {
        Job job = JobReader.read(BenchRunTest.SAMPLE);
        journal = folder.resolve("job.drop.csv");
        BenchRun run = BenchRun.begin(job, journal, BenchRunTest.drop(1, 5));
        JobText text = JobText.read(BenchRunTest.SAMPLE);
        Parts.run(() -> {
            Thread.currentThread().setUncaughtExceptionHandler((thread, e) -> troubles.add(e));
            document = new JobDocument(Optional.of(folder.resolve("job.yaml")), text);
            winding = new WindingPanel(document, said::add, troubles::add);
            taking = new BenchTaking(winding, document, said::add, troubles::add, disk, () -> ended = true);
            winding.begin();
            taking.start(run);
        });
        Parts.until("the winding is built", () -> winding.state().isPresent());
        reading = Parts.named(taking, "reading", JTextField.class);
    }

    @AfterEach
    void nothingUnforeseen() {
        Parts.run(() -> Thread.currentThread().setUncaughtExceptionHandler(null));
        assertThat(troubles).isEmpty();
    }

    private AbstractButton button(String name) {
        return Parts.named(taking, name, AbstractButton.class);
    }

    private List<String> noted() throws IOException {
        return Files.readAllLines(journal).stream()
                .filter(line -> line.matches("\\d.*"))
                .toList();
    }

    @Test
    void endingWaitsForWhatWasTyped() throws Exception {
        CountDownLatch held = Parts.hold(disk);
        Parts.type(reading, "5\n6\n/7\n");
        Parts.run(() -> button("end run").doClick());
        held.countDown();
        Parts.settle(disk);
        assertThat(noted()).containsExactly("1,2,5 mV", "2,3,7 mV");
        assertThat(Hand.see(() -> ended && taking.run().isEmpty())).isTrue();
    }

    @Test
    void aRunIsNotEndedOverAReadingThatWasRefused() throws Exception {
        CountDownLatch held = Parts.hold(disk);
        Parts.type(reading, "5.5.5\n6\n");
        Parts.run(() -> button("end run").doClick());
        held.countDown();
        Parts.settle(disk);
        assertThat(noted()).isEmpty();
        assertThat(Hand.see(() -> ended)).isFalse();
        assertThat(Hand.<String>see(reading::getText)).isEqualTo("5.5.5");
        assertThat(Parts.named(taking, "last reading", Wrapped.class).getText()).startsWith("✗ The reading is");
        Parts.run(() -> button("end run").doClick());
        assertThat(Hand.see(() -> ended)).isTrue();
    }

    @Test
    void whatIsBeingTypedStaysWhileTheDiskAnswers() throws Exception {
        CountDownLatch held = Parts.hold(disk);
        Parts.type(reading, "5\n6\n1");
        held.countDown();
        Parts.settle(disk);
        Parts.type(reading, "72\n");
        Parts.settle(disk);
        assertThat(noted()).containsExactly("1,2,5 mV", "2,3,6 mV", "3,4,172 mV");
    }

    @Test
    void aProposalTakenWhileTheDiskWritesIsTakenBeforeTheNextReading() throws Exception {
        var sound = JobReader.read(BenchRunTest.SAMPLE).benchArmature();
        List<PairReading> drops = new BenchTest.Drop(1, 5, 1).readWalk(sound);
        for (PairReading r : drops.subList(0, 3)) {
            Parts.type(reading, String.format(Locale.ROOT, "%.1f\n", r.value() * 1000));
        }
        Parts.until(
                "bars 4 and 5 are proposed",
                () -> button("proposal").isVisible()
                        && button("proposal").getText().contains("4 – 5"));
        Parts.run(() -> taking.run().orElseThrow().goTo(new BenchTest.Pair(9, 10)));
        CountDownLatch held = Parts.hold(disk);
        Parts.type(reading, "5\n+7\n");
        held.countDown();
        Parts.settle(disk);
        assertThat(noted().subList(3, noted().size())).containsExactly("9,10,5 mV", "4,5,7 mV");
    }

    private void keep() {
        Parts.run(() -> button("keep").doClick());
    }

    private List<Integer> sizes() {
        return Hand.see(() -> document.text().job().orElseThrow().readings().stream()
                .map(set -> set.readings().size())
                .toList());
    }

    @Test
    void readingsArePutIntoTheJobOnce() throws Exception {
        Parts.type(reading, "172\n*");
        keep();
        Parts.settle(disk);
        keep();
        assertThat(sizes()).containsExactly(2);
        assertThat(said).last().isEqualTo("The readings are in the job already");
        Parts.type(reading, "171\n");
        Parts.settle(disk);
        keep();
        assertThat(sizes()).containsExactly(3);
        BenchRun again = BenchRun.resume(JobReader.read(BenchRunTest.SAMPLE), journal);
        Parts.run(() -> taking.start(again));
        Parts.type(reading, "170\n");
        Parts.settle(disk);
        keep();
        assertThat(sizes()).containsExactly(4);
        Parts.run(document::undo);
        Parts.run(document::undo);
        assertThat(sizes()).containsExactly(2);
    }

    @Test
    void readingsArePutIntoNoJobOfAnotherWinding() throws Exception {
        Parts.type(reading, "172\n");
        Parts.settle(disk);
        Parts.run(() -> document.edit("armature.poles", "2"));
        keep();
        assertThat(sizes()).isEmpty();
        assertThat(said).last().asString().startsWith("Not put into this job").endsWith(journal.toString());
        Parts.run(document::undo);
        keep();
        assertThat(sizes()).containsExactly(1);
    }

    @Test
    void faultsAreMarkedOnTheWindingReadAlone() throws Exception {
        var sound = JobReader.read(BenchRunTest.SAMPLE).benchArmature();
        List<PairReading> drops = new BenchTest.Drop(1, 5, 1).readWalk(new Fault.OpenCoil(7).in(sound));
        for (PairReading r : drops) {
            Parts.type(reading, String.format(Locale.ROOT, "%.1f\n", r.value() * 1000));
        }
        DrawingPane drawing = winding.drawing();
        Parts.until("the fault is marked", () -> drawing.marked().contains(Element.coil(7)));
        Parts.run(() -> document.change(MainWindow.newJob(), "other"));
        Parts.until("another winding has no mark", () -> drawing.marked().isEmpty());
        Parts.run(document::undo);
        Parts.until("the winding read has", () -> drawing.marked().contains(Element.coil(7)));
        Parts.settle(disk);
        Parts.run(() -> button("end run").doClick());
        assertThat(Hand.see(drawing::marked)).isEmpty();
    }

    @Test
    void theLastReadingKeepsItsLettersWhenTheWindowIsDressedOtherwise() {
        Wrapped last = Parts.named(taking, "last reading", Wrapped.class);
        Font before = Hand.see(last::getFont);
        Parts.run(() -> {
            SwingUtilities.updateComponentTreeUI(taking);
            taking.redraw();
        });
        assertThat(Hand.<Font>see(last::getFont)).isEqualTo(before);
        assertThat(before.isBold()).isTrue();
    }

    @Test
    void whatIsTypedBeyondTheLastPairIsNotNotedOnAnother() throws Exception {
        int pairs = Hand.see(() -> taking.run().orElseThrow().walk().size());
        CountDownLatch held = Parts.hold(disk);
        Parts.type(reading, "5\n".repeat(pairs) + "6\n7\n");
        held.countDown();
        Parts.until("all are read", () -> taking.run().orElseThrow().current().isEmpty());
        Parts.settle(disk);
        assertThat(said).anyMatch(words -> words.startsWith("Every pair was read"));
        Parts.type(reading, "/");
        Parts.settle(disk);
        assertThat(noted()).hasSize(pairs - 1).allMatch(line -> line.endsWith(",5 mV"));
        assertThat(Hand.see(() -> taking.run().orElseThrow().taken().values().stream()
                        .map(TakenReading::pair)
                        .distinct()
                        .count()))
                .isEqualTo(pairs - 1);
    }
}
