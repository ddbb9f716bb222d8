package coilwright.desktop;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.Procedure;
import coilwright.drawing.Element;
import coilwright.fault.Diagnosis;
import coilwright.fault.Fault;
import coilwright.file.SafeFiles;
import coilwright.job.Job;
import coilwright.job.ReadingSet;
import coilwright.job.ReadingsJournal;
import coilwright.job.TakenReading;
import coilwright.job.TestKind;
import coilwright.job.Visible;
import coilwright.winding.Winding;
import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.awt.Toolkit;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.UIManager;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.text.AttributeSet;
import javax.swing.text.BadLocationException;
import javax.swing.text.DocumentFilter;
import javax.swing.text.PlainDocument;

/**
 * Guides through a run of readings: shows what to touch and what to expect, takes the number, goes on. All of it by the
 * keys of a number pad, for someone with a probe in each hand. Every reading is on disk before the next is asked for.
 */
final class BenchPanel extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final String SET_UP = "set up";
    private static final String RUN = "run";

    /** The key that takes the last reading back. */
    private static final String BACK = "/";

    private final transient WindingPanel winding;
    private final transient JobDocument document;
    private final transient Consumer<String> say;
    private final transient Consumer<Runnable> saveFirst;
    private final transient Background disk;
    private final transient Background thinker;
    private final transient Background painter;
    private final transient Background lister;
    private final CardLayout cards = new CardLayout();

    private final JComboBox<String> test = new JComboBox<>();
    private final Map<String, JTextField> fields = new LinkedHashMap<>();
    private final Map<String, JLabel> labels = new LinkedHashMap<>();
    private final Wrapped wrong = new Wrapped(380);
    private final Wrapped howTo = new Wrapped(380);
    private final JButton begin = Ui.enters(Ui.named(new JButton(), "Begi&n"));
    private final JButton resume = Ui.enters(Ui.named(new JButton(), "&Go on"));
    private transient Optional<Path> begun = Optional.empty();

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
    private final JTable table = new JTable();
    private transient Optional<BenchTest.Pair> proposed = Optional.empty();
    private transient boolean writing;
    private final transient Deque<String> waiting = new ArrayDeque<>();

    BenchPanel(
            WindingPanel winding,
            JobDocument document,
            Consumer<String> say,
            Consumer<Runnable> saveFirst,
            Consumer<Throwable> trouble) {
        this.winding = winding;
        this.document = document;
        this.say = say;
        this.saveFirst = saveFirst;
        this.disk = new Background("readings", trouble);
        this.thinker = new Background("diagnosis", trouble);
        this.painter = new Background("bench picture", trouble);
        this.lister = new Background("bench list", trouble);
        setLayout(cards);
        add(setUpCard(), SET_UP);
        add(runCard(), RUN);
        document.onChange(this::offerResume);
        offerResume();
        winding.addPropertyChangeListener("ties", e -> fillIfShown());
    }

    // ---- setting up -------------------------------------------------------------------------------------------------

    private JComponent setUpCard() {
        var form = new JPanel(new GridBagLayout());
        form.setBorder(BorderFactory.createEmptyBorder(16, 20, 16, 20));
        for (TestKind kind : TestKind.values()) {
            test.addItem(kind.word());
        }
        test.setName("test");
        test.addActionListener(e -> fillIfShown());
        var c = new GridBagConstraints();
        c.gridy = 0;
        c.insets = new Insets(3, 0, 3, 10);
        c.anchor = GridBagConstraints.WEST;
        c.fill = GridBagConstraints.HORIZONTAL;
        form.add(Ui.label("&Test", test), c);
        form.add(test, c);
        field(form, c, "in", "&In at bar");
        field(form, c, "out", "&Out at bar");
        field(form, c, "amps", "&Amperes");
        field(form, c, "angle", "&Slot 1 at, degrees");
        field(form, c, "clock", "&Probes held at, degrees");
        field(form, c, "unit", "&Unit of the readings");
        field(form, c, "meter", "&Meter (may be left out)");
        c.gridwidth = 2;
        c.gridy++;
        form.add(wrong, c);
        c.gridy++;
        var buttons = new JPanel(new Rows());
        begin.setName("begin");
        resume.setName("resume");
        begin.addActionListener(e -> begin());
        resume.addActionListener(e -> begun.ifPresent(this::resume));
        buttons.add(resume);
        buttons.add(begin);
        form.add(buttons, c);
        c.gridy++;
        c.weighty = 1;
        form.add(new JLabel(), c);

        var text = new Side();
        text.add(howTo);
        var scroll = new JScrollPane(text);
        scroll.setBorder(null);
        var left = new JScrollPane(form);
        left.setBorder(null);
        var split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, left, scroll);
        split.setBorder(null);
        split.setResizeWeight(0.4);
        return split;
    }

    /** Holds words that break at its own width. */
    static final class Side extends JPanel implements javax.swing.Scrollable {
        private static final long serialVersionUID = 1L;

        Side() {
            super(new BorderLayout());
            setBorder(BorderFactory.createEmptyBorder(16, 20, 16, 20));
        }

        @Override
        public Dimension getPreferredScrollableViewportSize() {
            return new Dimension(Ui.px(420), Ui.px(300));
        }

        @Override
        public int getScrollableUnitIncrement(java.awt.Rectangle visible, int orientation, int direction) {
            return Ui.px(16);
        }

        @Override
        public int getScrollableBlockIncrement(java.awt.Rectangle visible, int orientation, int direction) {
            return visible.height;
        }

        @Override
        public boolean getScrollableTracksViewportWidth() {
            return true;
        }

        @Override
        public boolean getScrollableTracksViewportHeight() {
            return false;
        }
    }

    private void field(JPanel form, GridBagConstraints c, String key, String name) {
        var input = new JTextField(8);
        input.setName("run " + key);
        input.addActionListener(e -> begin());
        JLabel label = Ui.label(name, input);
        fields.put(key, input);
        labels.put(key, label);
        c.gridy++;
        form.add(label, c);
        form.add(input, c);
    }

    private TestKind kind() {
        return TestKind.of((String) test.getSelectedItem()).orElseThrow();
    }

    /** What advises takes libraries that most who open a job never need. */
    void fillIfShown() {
        if (isShowing() && run.isEmpty()) {
            fill();
        }
    }

    /** Fills in where the trade feeds and how the test is done. */
    private void fill() {
        TestKind kind = kind();
        shown("in", kind.fed());
        shown("out", kind.fed());
        shown("amps", kind.fed());
        shown("angle", kind == TestKind.GROWLER);
        shown("clock", kind == TestKind.GROWLER_TURNED);
        shown("unit", !kind.kinds().isEmpty());
        List<String> units = new ArrayList<>();
        kind.kinds().forEach(k -> units.addAll(k.units()));
        if (!units.contains(fields.get("unit").getText())) {
            fields.get("unit")
                    .setText(
                            kind.unitless() ? "" : kind.ohms() ? "ohm" : "mV");
        }
        Optional<Job> job = document.text().job();
        Optional<Winding> built = winding.state().flatMap(JobState::winding);
        begin.setEnabled(job.isPresent() && built.isPresent());
        if (job.isEmpty() || built.isEmpty()) {
            howTo.setText("First mend the job: its winding cannot be built as it stands.");
            return;
        }
        Job its = job.get();
        Winding w = built.get();
        painter.replace(
                () -> {
                    BenchArmature sound = its.benchArmature();
                    return new Advice(
                            FeedBars.advised(w, !sound.bonds().isEmpty()),
                            kind == TestKind.GROWLER_TURNED
                                    ? GrowlerMeter.of(sound, its.growler()).bestClock()
                                    : 0);
                },
                advice -> advise(kind, w, advice));
        offerResume();
    }

    private record Advice(List<FeedBars> feeds, double clock) {}

    private void advise(TestKind kind, Winding w, Advice advice) {
        if (!advice.feeds().isEmpty()) {
            fields.get("in").setText(Integer.toString(advice.feeds().get(0).in()));
            fields.get("out").setText(Integer.toString(advice.feeds().get(0).out()));
        }
        if (fields.get("amps").getText().isBlank()) {
            fields.get("amps").setText("1");
        }
        if (fields.get("angle").getText().isBlank()) {
            fields.get("angle").setText("0");
        }
        fields.get("clock").setText(Figures.three(advice.clock()));
        Procedure p = kind.procedure(w, advice.feeds(), advice.clock());
        StringBuilder words = new StringBuilder(p.title()).append('\n');
        part(words, "⚠ Take care", p.cautions());
        part(words, "Set up", p.setUp());
        part(words, "Then", p.steps());
        howTo.setText(words.toString());
    }

    private static void part(StringBuilder words, String title, List<String> lines) {
        words.append('\n').append(title).append('\n');
        lines.forEach(l -> words.append("· ").append(l).append('\n'));
    }

    private void shown(String key, boolean shown) {
        fields.get(key).setVisible(shown);
        labels.get(key).setVisible(shown);
    }

    /** The file of a run beside the job: NAME.TEST.csv, then NAME.TEST-2.csv and so on. */
    private static Path file(Path job, TestKind kind, int number) {
        String name = job.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return job.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + "." + kind.word()
                + (number > 1 ? "-" + number : "") + ".csv");
    }

    private static int free(Path job, TestKind kind) {
        int number = 1;
        while (Files.exists(file(job, kind, number))) {
            number++;
        }
        return number;
    }

    private void offerResume() {
        TestKind kind = kind();
        begun = document.file().filter(f -> free(f, kind) > 1).map(f -> file(f, kind, free(f, kind) - 1));
        resume.setVisible(begun.isPresent());
        begun.ifPresent(f -> resume.setText("Go on with " + f.getFileName()));
        begin.setText(begun.isPresent() ? "Begin a new run" : "Begin");
    }

    private void begin() {
        if (!begin.isEnabled()) {
            return;
        }
        ReadingSet setUp;
        try {
            setUp = setUp();
        } catch (IllegalArgumentException e) {
            wrong.setText("✗ " + e.getMessage());
            return;
        }
        wrong.setText("");
        if (document.file().isEmpty()) {
            say.accept("Save the job first: its readings are kept beside it");
            saveFirst.accept(this::begin);
            return;
        }
        Path job = document.file().get();
        Path file = file(job, kind(), free(job, kind()));
        Job its = document.text().job().orElseThrow();
        disk.queue(() -> new BenchRun(its, ReadingsJournal.begin(file, setUp)), this::start);
    }

    private ReadingSet setUp() {
        TestKind kind = kind();
        Optional<ReadingSet.GivenFeed> feed = kind.fed()
                ? Optional.of(new ReadingSet.GivenFeed(whole("in"), whole("out"), number("amps")))
                : Optional.empty();
        int bars = document.text().job().orElseThrow().armature().bars();
        feed.ifPresent(f -> {
            if (f.in() > bars || f.out() > bars) {
                throw new IllegalArgumentException(
                        "the feed names bar " + Math.max(f.in(), f.out()) + ", but bars run from 1 to " + bars);
            }
        });
        String unit = fields.get("unit").getText().strip();
        String meter = fields.get("meter").getText().strip();
        if (unit.isEmpty() && !kind.unitless()) {
            throw new IllegalArgumentException("the readings need a unit, such as "
                    + kind.kinds().get(0).units().get(0));
        }
        return new ReadingSet(
                Optional.of(LocalDate.now(ZoneId.systemDefault())),
                kind,
                feed,
                kind == TestKind.GROWLER ? Optional.of(number("angle")) : Optional.empty(),
                kind == TestKind.GROWLER_TURNED ? Optional.of(number("clock")) : Optional.empty(),
                unit.isEmpty() || kind.kinds().isEmpty() ? Optional.empty() : Optional.of(unit),
                meter.isEmpty() ? Optional.empty() : Optional.of(meter),
                Optional.empty(),
                List.of());
    }

    private BigDecimal number(String key) {
        String text = fields.get(key).getText().strip().replace('−', '-');
        if (!text.matches("[+-]?[0-9]{1,9}(\\.[0-9]{1,12})?")) {
            throw new IllegalArgumentException(
                    labels.get(key).getText() + " is \"" + Visible.cut(text) + "\", but must be a number");
        }
        return new BigDecimal(text);
    }

    private int whole(String key) {
        String text = fields.get(key).getText().strip();
        if (!text.matches("[0-9]{1,5}")) {
            throw new IllegalArgumentException(
                    labels.get(key).getText() + " is \"" + Visible.cut(text) + "\", but must be the number of a bar");
        }
        return Integer.parseInt(text);
    }

    private void resume(Path file) {
        document.text()
                .job()
                .ifPresent(job -> disk.queue(
                        () -> new BenchRun(
                                job, ReadingsJournal.resume(file, job.armature().bars())),
                        this::start));
    }

    // ---- running ----------------------------------------------------------------------------------------------------

    private JComponent runCard() {
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
        var end = Ui.named(new JButton(), "End this &run");
        end.setName("end run");
        end.addActionListener(e -> end());

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
        table.setName("readings");
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.getAccessibleContext().setAccessibleName("Readings");
        table.setFillsViewportHeight(true);
        table.addMouseListener(new java.awt.event.MouseAdapter() {
            @Override
            public void mouseClicked(java.awt.event.MouseEvent e) {
                goToRow(table.rowAtPoint(e.getPoint()));
            }
        });
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
            Font usual = UIManager.getFont("Label.font");
            pair.setFont(usual.deriveFont(Font.BOLD, usual.getSize2D() * 3.4f));
            expect.setFont(usual.deriveFont(usual.getSize2D() * 1.5f));
            reading.setFont(usual.deriveFont(usual.getSize2D() * 2.4f));
            last.setFont(usual.deriveFont(Font.BOLD, usual.getSize2D() * 1.1f));
            table.setRowHeight(table.getFontMetrics(usual).getHeight() + Ui.px(4));
        }
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

    private void start(BenchRun next) {
        run = Optional.of(next);
        proposed = Optional.empty();
        waiting.clear();
        writing = false;
        last.setText(
                next.taken().isEmpty()
                        ? "Kept in " + next.journal().file().getFileName()
                        : "Taken up again: " + next.taken().size() + " pairs are read already");
        verdict.setText("");
        updateUI();
        table.setModel(new Model());
        for (int i = 0; i < 3; i++) {
            table.getColumnModel().getColumn(i).setCellRenderer(new Cell());
        }
        cards.show(this, RUN);
        ask();
        think();
        reading.requestFocusInWindow();
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
            ((Model) table.getModel()).show(lines);
            now.map(p -> r.walk().indexOf(p))
                    .filter(i -> i >= 0 && i < table.getRowCount())
                    .ifPresent(i -> {
                        table.setRowSelectionInterval(i, i);
                        table.scrollRectToVisible(table.getCellRect(i, 0, true));
                    });
        });
        Tones tones = Ui.isDark() ? Tones.DARK : Tones.LIGHT;
        painter.replace(() -> new Scene(r.picture(now), tones), s -> picture.show(Optional.of(s)));
    }

    void redraw() {
        run.ifPresent(r -> ask());
    }

    private static String words(BenchRun r, BenchTest.Pair p) {
        if (p.to() == BenchTest.SHAFT) {
            return "Bar " + p.from() + " – shaft";
        }
        return (r.kind() == TestKind.POLARITY ? "Feed " : "Bars ") + p.from() + " – " + p.to();
    }

    private void enter(String typed) {
        if (run.isEmpty()) {
            return;
        }
        if (writing) {
            // Whoever types faster than the disk writes loses nothing.
            waiting.add(typed);
            clearLater();
            return;
        }
        BenchRun r = run.get();
        if (r.current().isEmpty()) {
            say.accept("Every pair was read: end the run, or choose a pair in the list to read it again");
            return;
        }
        writing = true;
        clearLater();
        disk.queue(
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
    }

    /** A document cannot be changed while it tells of a change. */
    private void clearLater() {
        javax.swing.SwingUtilities.invokeLater(() -> reading.setText(""));
    }

    private record Written(Optional<BenchRun.Noted> noted, String wrong) {}

    private void written(BenchRun r, Written w, String typed) {
        writing = false;
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
        String where = words(r, new BenchTest.Pair(t.from(), t.to()));
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
        goOn();
    }

    /** What was typed while the disk was busy. */
    private void goOn() {
        Optional.ofNullable(waiting.poll()).ifPresent(next -> {
            if (next.equals(BACK)) {
                takeBack();
            } else {
                enter(next);
            }
        });
    }

    private static String shown(TakenReading t) {
        return t.shown() instanceof TakenReading.Value v
                ? v.number().toPlainString().replace("-", "−")
                        + v.unit().map(u -> " " + u).orElse("")
                : t.shown() instanceof TakenReading.OffScale ? "off the scale" : "passed over";
    }

    private void takeBack() {
        if (run.isEmpty()) {
            return;
        }
        if (writing) {
            waiting.add(BACK);
            return;
        }
        BenchRun r = run.get();
        writing = true;
        disk.queue(
                () -> {
                    try {
                        return new Back(r.takeBack(), "");
                    } catch (IOException e) {
                        return new Back(Optional.empty(), SafeFiles.reason(e));
                    }
                },
                back -> {
                    writing = false;
                    last.setText(
                            !back.wrong().isEmpty()
                                    ? "✗ Not taken back: " + back.wrong()
                                    : back.reading()
                                            .map(t -> "Taken back: " + words(r, new BenchTest.Pair(t.from(), t.to()))
                                                    + ", " + shown(t))
                                            .orElse("There is nothing to take back"));
                    reading.putClientProperty("JComponent.outline", null);
                    ask();
                    think();
                    goOn();
                });
    }

    private record Back(Optional<TakenReading> reading, String wrong) {}

    private void goToRow(int row) {
        run.filter(r -> row >= 0 && row < r.walk().size() && !writing).ifPresent(r -> {
            r.goTo(r.walk().get(row));
            ask();
            reading.requestFocusInWindow();
        });
    }

    private void takeProposal() {
        proposed.filter(p -> !writing).ifPresent(p -> {
            run.orElseThrow().goTo(p);
            ask();
            reading.requestFocusInWindow();
        });
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
        proposed.ifPresent(p -> proposal.setText("Go to " + words(r, p).toLowerCase(java.util.Locale.ROOT) + " (+)"));
        Set<Element> faulty = new LinkedHashSet<>();
        if (v.isEmpty()) {
            verdict.setText("Too few readings to tell anything yet.");
        } else {
            Diagnosis d = v.get().diagnosis();
            StringBuilder words = new StringBuilder();
            words.append(
                    switch (d.verdict()) {
                        case SOUND ->
                            "✓ Sound, as far as these readings show (" + Figures.percent(d.soundProbability()) + ").";
                        case FAULTY -> "⚠ Faulty (" + Figures.percent(1 - d.soundProbability()) + ").";
                        case UNCLEAR -> "? Not clear yet (sound with " + Figures.percent(d.soundProbability()) + ").";
                    });
            if (d.verdict() != Diagnosis.Verdict.SOUND) {
                d.ranked().stream()
                        .filter(e -> e.probability() >= 0.01)
                        .limit(3)
                        .forEach(e -> {
                            words.append("\n· ")
                                    .append(words(e.faults()))
                                    .append(", ")
                                    .append(Figures.percent(e.probability()));
                            if (!e.sameReadings().isEmpty()) {
                                words.append(" (or ")
                                        .append(words(e.sameReadings().get(0)));
                                words.append(
                                        e.sameReadings().size() > 1
                                                ? ", and others that read the same)"
                                                : ", which reads the same)");
                            }
                        });
                d.likeliest().forEach(f -> {
                    f.coils().forEach(n -> faulty.add(Element.coil(n)));
                    f.bars().forEach(n -> faulty.add(Element.bar(n)));
                });
            }
            v.get()
                    .next()
                    .ifPresent(n ->
                            words.append("\nNext: ").append(n.instruction()).append('.'));
            verdict.setText(words.toString());
        }
        picture.mark(faulty);
        winding.drawing().mark(faulty);
    }

    private static String words(List<Fault> faults) {
        return faults.isEmpty()
                ? "a sound winding"
                : String.join(" and ", faults.stream().map(Fault::words).toList());
    }

    private void keepInJob() {
        BenchRun r = run.orElseThrow();
        List<ReadingSet> sets =
                new ArrayList<>(document.text().job().map(Job::readings).orElse(List.of()));
        sets.add(r.readings());
        try {
            document.change(document.text().withReadings(sets), "readings");
            say.accept("The readings are in the job; save it to keep them there");
        } catch (IllegalArgumentException e) {
            say.accept(e.getMessage());
        }
    }

    private void end() {
        run = Optional.empty();
        thinker.cancel();
        offerResume();
        cards.show(this, SET_UP);
        test.requestFocusInWindow();
    }

    private final class Model extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private static final List<String> HEADS = List.of("Pair", "Expected", "Read");

        private transient List<BenchRun.Line> lines = List.of();

        void show(List<BenchRun.Line> next) {
            lines = next;
            fireTableDataChanged();
        }

        @Override
        public int getRowCount() {
            return lines == null ? 0 : lines.size();
        }

        @Override
        public int getColumnCount() {
            return HEADS.size();
        }

        @Override
        public String getColumnName(int column) {
            return HEADS.get(column);
        }

        @Override
        public Object getValueAt(int row, int column) {
            BenchRun.Line line = lines.get(row);
            return switch (column) {
                case 0 -> line.pair().toString().replace("-", "–");
                case 1 ->
                    line.expected().isPresent()
                            ? run.map(r -> Figures.in(line.expected().getAsDouble(), r.kind(), r.unit()))
                                    .orElse("")
                            : "";
                default ->
                    line.taken()
                            .map(t -> (line.standsOut() ? "⚠ " : "") + shown(t))
                            .orElse("");
            };
        }
    }

    private static final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int column) {
            super.getTableCellRendererComponent(table, value, selected, false, row, column);
            setHorizontalAlignment(SwingConstants.RIGHT);
            setFont(String.valueOf(value).startsWith("⚠") ? table.getFont().deriveFont(Font.BOLD) : table.getFont());
            return this;
        }
    }

    /** The tests there are, for a menu. */
    static List<String> tests() {
        return Arrays.stream(TestKind.values()).map(TestKind::word).toList();
    }

    /** Where typing goes when this part comes to the front. */
    void focus() {
        if (run.isPresent()) {
            reading.requestFocusInWindow();
        } else {
            fillIfShown();
            (resume.isVisible() ? resume : begin).requestFocusInWindow();
        }
    }

    /** Shows the set-up of a test. */
    void choose(String word) {
        if (run.isEmpty()) {
            test.setSelectedItem(word);
        }
    }
}
