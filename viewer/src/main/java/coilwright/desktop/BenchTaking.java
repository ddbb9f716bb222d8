package coilwright.desktop;

import coilwright.bench.BenchTest;
import coilwright.drawing.Element;
import coilwright.file.SafeFiles;
import coilwright.job.Job;
import coilwright.job.ReadingSet;
import coilwright.job.TakenReading;
import coilwright.job.TestKind;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.awt.Toolkit;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextField;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import javax.swing.text.AttributeSet;
import javax.swing.text.BadLocationException;
import javax.swing.text.DocumentFilter;
import javax.swing.text.PlainDocument;

/**
 * Takes the readings of a run: shows what to touch and what to expect, takes the number, goes on. All of it by the keys of
 * a number pad, for someone with a probe in each hand. Every reading is on disk before the next is asked for.
 */
final class BenchTaking extends JPanel {
    private static final long serialVersionUID = 1L;

    /** The key that takes the last reading back. */
    private static final String BACK = "/";

    private final transient WindingPanel winding;
    private final transient JobDocument document;
    private final transient Consumer<String> say;
    private final transient Consumer<Throwable> trouble;
    private final transient Runnable ended;
    private final transient Background disk;
    private final transient Background thinker;
    private final transient Background painter;
    private final transient Background lister;

    private transient Optional<BenchRun> run = Optional.empty();
    private final DrawingPane picture = new DrawingPane("bench picture");
    private final JLabel pair = new JLabel(" ");
    private final JLabel expect = new JLabel(" ");
    private final JTextField reading = new JTextField(8);
    private final Wrapped last = new Wrapped(320);
    private final Wrapped verdict = new Wrapped(320);
    private final JProgressBar done = new JProgressBar();
    private final JButton proposal = Ui.named(new JButton(), "Take the proposed pair (+)");
    private final JButton keep = Ui.named(new JButton(), "Put readings into the &job");
    private final JButton end = Ui.named(new JButton(), "End this &run");
    private final BenchReadings table = new BenchReadings(this::goToRow);
    private transient Optional<BenchTest.Pair> proposed = Optional.empty();
    private transient Set<Element> faulty = Set.of();

    /** What was put into the job of this run. */
    private transient Optional<ReadingSet> kept = Optional.empty();

    private transient boolean writing;

    /** What was asked for while the disk was busy, to be done in turn: whoever is faster than the disk loses nothing. */
    private final transient Deque<Runnable> waiting = new ArrayDeque<>();

    /**
     * Lays the run out.
     *
     * @param disk where readings are written, after its journal was begun there
     * @param ended told when the run is
     */
    BenchTaking(
            WindingPanel winding,
            JobDocument document,
            Consumer<String> say,
            Consumer<Throwable> trouble,
            Background disk,
            Runnable ended) {
        super(new BorderLayout());
        this.winding = winding;
        this.document = document;
        this.say = say;
        this.trouble = trouble;
        this.ended = ended;
        this.disk = disk;
        this.thinker = new Background("diagnosis", trouble);
        this.painter = new Background("bench picture", trouble);
        this.lister = new Background("bench list", trouble);
        wire();
        add(laidOut());
        winding.addPropertyChangeListener(WindingPanel.STATE, e -> markWinding());
    }

    private void wire() {
        pair.setName("pair");
        pair.setHorizontalAlignment(SwingConstants.CENTER);
        expect.setName("expect");
        expect.setHorizontalAlignment(SwingConstants.CENTER);
        reading.setName("reading");
        reading.setHorizontalAlignment(SwingConstants.CENTER);
        reading.getAccessibleContext().setAccessibleName("Reading");
        ((PlainDocument) reading.getDocument()).setDocumentFilter(new KeypadKeys());
        reading.addActionListener(e -> enter(reading.getText()));
        last.setName("last reading");
        verdict.setName("verdict");
        done.setStringPainted(true);
        done.setName("done");
        proposal.setName("proposal");
        proposal.addActionListener(e -> takeProposal());
        keep.setName("keep");
        keep.addActionListener(e -> keepInJob());
        end.setName("end run");
        end.addActionListener(e -> end());
    }

    private JComponent laidOut() {
        var side = new JPanel(new GridBagLayout());
        side.setBorder(BorderFactory.createEmptyBorder(10, 14, 10, 14));
        var c = new GridBagConstraints();
        c.gridx = 0;
        c.weightx = 1;
        c.fill = GridBagConstraints.HORIZONTAL;
        c.insets = new Insets(2, 0, 2, 0);
        side.add(pair, c);
        side.add(expect, c);
        side.add(reading, c);
        var keys = new Wrapped(380);
        keys.setText("Enter notes · Enter alone passes over · * off the scale · / takes back · + proposed pair");
        side.add(keys, c);
        side.add(last, c);
        side.add(done, c);
        c.insets = new Insets(8, 0, 2, 0);
        side.add(verdict, c);
        c.insets = new Insets(2, 0, 2, 0);
        var buttons = new JPanel(new Rows());
        buttons.add(proposal);
        side.add(buttons, c);
        var ending = new JPanel(new Rows());
        ending.add(keep);
        ending.add(end);
        side.add(ending, c);
        c.weighty = 1;
        c.fill = GridBagConstraints.BOTH;
        var scroll = new JScrollPane(table);
        scroll.setPreferredSize(new Dimension(Ui.px(320), Ui.px(160)));
        scroll.setMinimumSize(new Dimension(Ui.px(200), Ui.px(90)));
        side.add(scroll, c);
        side.setMinimumSize(new Dimension(Ui.px(300), 10));
        side.setPreferredSize(new Dimension(Ui.px(440), 10));
        picture.setFocusable(false);
        var split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, picture, side);
        split.setBorder(null);
        split.setResizeWeight(1);
        return split;
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (pair != null) {
            dressLetters();
        }
    }

    private void dressLetters() {
        Font usual = UIManager.getFont("Label.font");
        pair.setFont(usual.deriveFont(Font.BOLD, usual.getSize2D() * 3.4f));
        expect.setFont(usual.deriveFont(usual.getSize2D() * 1.5f));
        reading.setFont(usual.deriveFont(usual.getSize2D() * 2.4f));
        last.setFont(usual.deriveFont(Font.BOLD, usual.getSize2D() * 1.1f));
    }

    /** The number pad in other uses: a comma is a point; star, stroke and plus command. */
    private final class KeypadKeys extends DocumentFilter {
        @Override
        public void replace(FilterBypass bypass, int at, int length, String text, AttributeSet attributes)
                throws BadLocationException {
            switch (text == null ? "" : text) {
                case "*" -> enter("OL");
                case BACK -> takeBack();
                case "+" -> takeProposal();
                case "," -> bypass.replace(at, length, ".", attributes);
                default -> bypass.replace(at, length, text, attributes);
            }
        }

        @Override
        public void insertString(FilterBypass bypass, int at, String text, AttributeSet attributes)
                throws BadLocationException {
            replace(bypass, at, 0, text, attributes);
        }
    }

    Optional<BenchRun> run() {
        return run;
    }

    /** Begins a run, or goes on with it. */
    void start(BenchRun next) {
        run = Optional.of(next);
        proposed = Optional.empty();
        kept = Optional.empty();
        waiting.clear();
        writing = false;
        last.setText(
                next.taken().isEmpty()
                        ? "Kept in " + next.journal().file().getFileName()
                        : "Taken up again: " + next.taken().size() + " pairs are read already");
        verdict.setText("");
        dressLetters();
        table.begin(next);
        ask();
        think();
    }

    private void ask() {
        BenchRun r = run.orElseThrow();
        Optional<BenchTest.Pair> now = r.current();
        pair.setText(now.map(p -> words(r, p)).orElse("All pairs read"));
        expect.setText(now.map(p -> {
                    var value = r.expected(p);
                    return value.isPresent()
                            ? "expect " + (Double.isInfinite(value.getAsDouble()) ? "" : "about ")
                                    + Figures.in(value.getAsDouble(), r.kind(), r.unit())
                            : "the first readings set the scale";
                })
                .orElse("/ takes the last one back"));
        int read = r.taken().size();
        done.setMaximum(r.walk().size());
        done.setValue(Math.min(read, r.walk().size()));
        done.setString(read + " of " + r.walk().size() + " pairs");
        reading.setEnabled(true);
        reading.getAccessibleContext().setAccessibleDescription(pair.getText() + ", " + expect.getText());
        lister.replace(r::lines, lines -> {
            table.show(lines);
            now.ifPresent(p -> table.choose(r.walk().indexOf(p)));
        });
        Tones tones = Ui.tones();
        painter.replace(() -> new Scene(r.picture(now), tones), s -> picture.show(Optional.of(s)));
    }

    /** Shows all again, once the window is dressed otherwise. */
    void redraw() {
        // The parts of this one were dressed after it.
        dressLetters();
        run.ifPresent(r -> ask());
    }

    private static String words(BenchRun r, BenchTest.Pair p) {
        if (p.to() == BenchTest.SHAFT) {
            return "Bar " + p.from() + " – shaft";
        }
        return (r.kind() == TestKind.POLARITY ? "Feed " : "Bars ") + p.from() + " – " + p.to();
    }

    private void enter(String typed) {
        if (run.isPresent() && note(typed)) {
            // A document cannot be changed while it tells of a change.
            SwingUtilities.invokeLater(() -> reading.setText(""));
        }
    }

    /** Notes a reading, at once or in its turn; whether there is a pair for it. */
    private boolean note(String typed) {
        if (waits(() -> note(typed))) {
            return true;
        }
        BenchRun r = run.orElseThrow();
        if (r.current().isEmpty()) {
            waiting.clear();
            say.accept("Every pair was read: end the run, or choose a pair in the list to read it again");
            return false;
        }
        write(
                () -> {
                    try {
                        return new Written(Optional.of(r.note(typed)), "");
                    } catch (IllegalArgumentException e) {
                        return new Written(Optional.empty(), "The reading " + e.getMessage());
                    } catch (IOException e) {
                        return new Written(
                                Optional.empty(),
                                "Not noted, " + r.journal().file() + " cannot be written: " + SafeFiles.reason(e));
                    }
                },
                w -> written(r, w, typed));
        return true;
    }

    private record Written(Optional<BenchRun.Noted> noted, String wrong) {}

    private void written(BenchRun r, Written w, String typed) {
        if (w.noted().isEmpty()) {
            Toolkit.getDefaultToolkit().beep();
            last.setText("✗ " + w.wrong());
            waiting.clear();
            if (reading.getText().isEmpty()) {
                reading.setText(typed);
            }
            return;
        }
        BenchRun.Noted noted = w.noted().get();
        TakenReading t = noted.reading();
        String where = words(r, t.pair());
        String value = shown(t);
        if (noted.standsOut()) {
            Toolkit.getDefaultToolkit().beep();
            last.setText("⚠ " + where + ": " + value
                    + (noted.expected().isPresent()
                            ? " where about " + Figures.in(noted.expected().getAsDouble(), r.kind(), r.unit())
                                    + " was expected"
                            : "")
                    + ". Sure? / takes it back");
            reading.putClientProperty("JComponent.outline", "warning");
        } else {
            last.setText("✓ " + where + ": " + value);
            reading.putClientProperty("JComponent.outline", null);
        }
        ask();
        think();
    }

    /** Whether something has to wait for the disk; it is done then, unless what is being written fails. */
    private boolean waits(Runnable act) {
        if (writing) {
            waiting.add(act);
        }
        return writing;
    }

    /** Changes the file of the run, then does what was asked for meanwhile. */
    private <T> void write(Callable<T> work, Consumer<T> then) {
        writing = true;
        disk.queue(
                work,
                answer -> {
                    writing = false;
                    then.accept(answer);
                    while (!writing && !waiting.isEmpty()) {
                        waiting.remove().run();
                    }
                },
                e -> {
                    writing = false;
                    waiting.clear();
                    trouble.accept(e);
                });
    }

    /** What a meter showed, in words. */
    static String shown(TakenReading t) {
        return t.shown() instanceof TakenReading.Value v
                ? v.number().toPlainString().replace("-", "−")
                        + v.unit().map(u -> " " + u).orElse("")
                : t.shown() instanceof TakenReading.OffScale ? "off the scale" : "passed over";
    }

    private void takeBack() {
        if (run.isEmpty()) {
            return;
        }
        if (waits(this::takeBack)) {
            return;
        }
        BenchRun r = run.get();
        write(
                () -> {
                    try {
                        return new Back(r.takeBack(), "");
                    } catch (IOException e) {
                        return new Back(Optional.empty(), SafeFiles.reason(e));
                    }
                },
                back -> {
                    if (!back.wrong().isEmpty()) {
                        waiting.clear();
                    }
                    last.setText(
                            !back.wrong().isEmpty()
                                    ? "✗ Not taken back: " + back.wrong()
                                    : back.reading()
                                            .map(t -> "Taken back: " + words(r, t.pair()) + ", " + shown(t))
                                            .orElse("There is nothing to take back"));
                    reading.putClientProperty("JComponent.outline", null);
                    ask();
                    think();
                });
    }

    private record Back(Optional<TakenReading> reading, String wrong) {}

    private void goToRow(int row) {
        run.filter(r -> row >= 0 && row < r.walk().size())
                .ifPresent(r -> goTo(r.walk().get(row)));
    }

    private void takeProposal() {
        proposed.ifPresent(this::goTo);
    }

    private void goTo(BenchTest.Pair wanted) {
        if (!waits(() -> goTo(wanted))) {
            run.orElseThrow().goTo(wanted);
            ask();
            reading.requestFocusInWindow();
        }
    }

    private void think() {
        BenchRun r = run.orElseThrow();
        thinker.replace(r::verdict, v -> {
            if (run.filter(now -> now == r).isPresent()) {
                showVerdict(r, v);
            }
        });
    }

    private void showVerdict(BenchRun r, Optional<BenchRun.Verdict> v) {
        proposed = v.flatMap(BenchRun.Verdict::next)
                .filter(n -> n.test().equals(r.test()))
                .map(n -> n.pair());
        proposal.setVisible(proposed.isPresent());
        proposed.ifPresent(p -> proposal.setText("Go to " + words(r, p).toLowerCase(Locale.ROOT) + " (+)"));
        verdict.setText(BenchResult.words(v));
        mark(BenchResult.faulty(v));
    }

    private void mark(Set<Element> next) {
        faulty = next;
        picture.mark(faulty);
        markWinding();
    }

    /** Marks what is at fault on the drawing of the winding that was read, and on no other. */
    private void markWinding() {
        winding.state()
                .flatMap(JobState::winding)
                .ifPresent(w -> winding.drawing()
                        .mark(run.filter(r -> r.isOf(w.armature(), w.spec())).isPresent() ? faulty : Set.of()));
    }

    private void keepInJob() {
        if (waits(this::keepInJob)) {
            return;
        }
        BenchRun r = run.orElseThrow();
        Optional<Job> job = document.text().job();
        if (job.filter(j -> !r.isOf(j.armature(), j.winding())).isPresent()) {
            say.accept("Not put into this job, whose winding is another than the one read: the readings are in "
                    + r.journal().file());
            return;
        }
        List<ReadingSet> sets = new ArrayList<>(job.map(Job::readings).orElse(List.of()));
        ReadingSet now = r.readings();
        if (sets.contains(now)) {
            say.accept("The readings are in the job already");
            return;
        }
        // What was put there earlier in this run gives way.
        sets.removeIf(s -> kept.filter(s::equals).isPresent() || isPart(s, now));
        sets.add(now);
        try {
            document.change(document.text().withReadings(sets), "readings");
            kept = Optional.of(now);
            say.accept("The readings are in the job; save it to keep them there");
        } catch (IllegalArgumentException e) {
            say.accept(e.getMessage());
        }
    }

    /** Whether all of one set of readings is in another of the same set-up. */
    private static boolean isPart(ReadingSet part, ReadingSet whole) {
        return part.withReadings(whole.readings()).equals(whole)
                && whole.readings().containsAll(part.readings());
    }

    private void end() {
        if (waits(this::end)) {
            return;
        }
        run = Optional.empty();
        thinker.cancel();
        mark(Set.of());
        ended.run();
    }

    /** Where typing goes. */
    void focus() {
        reading.requestFocusInWindow();
    }
}
