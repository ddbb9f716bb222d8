package coilwright.desktop;

import coilwright.job.TestKind;
import java.awt.CardLayout;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JPanel;

/** Guides through a run of readings: first how it is set up, then pair by pair. */
final class BenchPanel extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final String SET_UP = "set up";
    private static final String RUN = "run";

    private final CardLayout cards = new CardLayout();
    private final BenchSetUp setUp;
    private final BenchTaking taking;

    BenchPanel(
            WindingPanel winding,
            JobDocument document,
            Consumer<String> say,
            Consumer<Runnable> saveFirst,
            Consumer<Throwable> trouble) {
        setLayout(cards);
        // Both on one thread, so that nothing is noted before the journal is there.
        var disk = new Background("readings", trouble);
        taking = new BenchTaking(winding, document, say, trouble, disk, this::end);
        setUp = new BenchSetUp(winding, document, say, saveFirst, trouble, disk, this::start);
        add(setUp, SET_UP);
        add(taking, RUN);
    }

    private void start(BenchRun run) {
        taking.start(run);
        cards.show(this, RUN);
        taking.focus();
    }

    private void end() {
        setUp.offerResume();
        cards.show(this, SET_UP);
        setUp.focusTest();
    }

    /** The run under way; empty while one is set up. */
    Optional<BenchRun> run() {
        return taking.run();
    }

    /** Fills in what is advised, if the set-up shows. */
    void fillIfShown() {
        setUp.fillIfShown();
    }

    void redraw() {
        taking.redraw();
    }

    /** The tests there are, for a menu. */
    static List<String> tests() {
        return Arrays.stream(TestKind.values()).map(TestKind::word).toList();
    }

    /** Where typing goes when this part comes to the front. */
    void focus() {
        if (run().isPresent()) {
            taking.focus();
        } else {
            setUp.focus();
        }
    }

    /** Shows the set-up of a test, unless a run is under way. */
    void choose(String word) {
        if (run().isEmpty()) {
            setUp.choose(word);
        }
    }
}
