package coilwright.desktop;

import coilwright.bench.BenchArmature;
import coilwright.bench.FeedBars;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.Procedure;
import coilwright.job.Job;
import coilwright.job.ReadingSet;
import coilwright.job.TestKind;
import coilwright.job.Visible;
import coilwright.winding.Winding;
import java.awt.BorderLayout;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextField;

/** Sets a run of readings up: which test, where it is fed, how it is done; begins it, or takes a begun one up again. */
final class BenchSetUp extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final int WORDS = 380;

    private final transient WindingPanel winding;
    private final transient JobDocument document;
    private final transient Consumer<String> say;
    private final transient Consumer<Runnable> saveFirst;
    private final transient Consumer<Throwable> trouble;
    private final transient Consumer<BenchRun> start;
    private final transient Background disk;
    private final transient Background adviser;

    private final JComboBox<String> test = new JComboBox<>();
    private final Map<String, JTextField> fields = new LinkedHashMap<>();
    private final Map<String, JLabel> labels = new LinkedHashMap<>();

    /** What was filled in of bars and angles, by field: only that may be filled in otherwise. */
    private final Map<String, String> advised = new HashMap<>();

    /** The job that they are of. */
    private int of;

    private final Wrapped wrong = new Wrapped(WORDS);
    private final Wrapped howTo = new Wrapped(WORDS);
    private final JButton begin = Ui.enters(Ui.named(new JButton(), "Begi&n"));
    private final JButton resume = Ui.enters(Ui.named(new JButton(), "&Go on"));
    private transient Optional<Path> begun = Optional.empty();

    /** Whether the disk was asked for a run and has not answered yet. */
    private boolean asked;

    /**
     * Lays the set-up out.
     *
     * @param saveFirst saves the job, then does what it is given
     * @param disk where journals are begun and taken up
     * @param start takes the run
     */
    BenchSetUp(
            WindingPanel winding,
            JobDocument document,
            Consumer<String> say,
            Consumer<Runnable> saveFirst,
            Consumer<Throwable> trouble,
            Background disk,
            Consumer<BenchRun> start) {
        super(new BorderLayout());
        this.winding = winding;
        this.document = document;
        this.say = say;
        this.saveFirst = saveFirst;
        this.trouble = trouble;
        this.start = start;
        this.disk = disk;
        this.adviser = new Background("bench advice", trouble);
        add(laidOut());
        document.onChange(this::offerResume);
        offerResume();
        allow();
        winding.addPropertyChangeListener(WindingPanel.STATE, e -> {
            allow();
            fillIfShown();
        });
    }

    private JComponent laidOut() {
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
        howTo.setName("how to");
        wrong.setName("wrong");
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
        if (isShowing()) {
            fill();
        }
    }

    /** Fills in where the trade feeds and how the test is done. */
    void fill() {
        if (of != document.number()) {
            of = document.number();
            List.of("in", "out", "clock").forEach(key -> fields.get(key).setText(""));
        }
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
            fields.get("unit").setText(kind.unitless() ? "" : kind.ohms() ? "ohm" : "mV");
        }
        Optional<Job> job = document.text().job();
        Optional<Winding> built = built();
        if (job.isEmpty() || built.isEmpty()) {
            howTo.setText("First mend the job: its winding cannot be built as it stands.");
            return;
        }
        Job its = job.get();
        Winding w = built.get();
        adviser.replace(
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

    private Optional<Winding> built() {
        return winding.state().flatMap(JobState::winding);
    }

    /** A run can be begun, or gone on with, where the winding is built. */
    private void allow() {
        boolean can = !asked && document.text().job().isPresent() && built().isPresent();
        begin.setEnabled(can);
        resume.setEnabled(can);
    }

    private record Advice(List<FeedBars> feeds, double clock) {}

    private void advise(TestKind kind, Winding w, Advice advice) {
        if (!advice.feeds().isEmpty()) {
            fill("in", Integer.toString(advice.feeds().get(0).in()));
            fill("out", Integer.toString(advice.feeds().get(0).out()));
        }
        fill("amps", "1");
        fill("angle", "0");
        if (kind == TestKind.GROWLER_TURNED) {
            fill("clock", Figures.three(advice.clock()));
        }
        Procedure p = kind.procedure(w, advice.feeds(), advice.clock());
        StringBuilder words = new StringBuilder(p.title()).append('\n');
        part(words, "⚠ Take care", p.cautions());
        part(words, "Set up", p.setUp());
        part(words, "Then", p.steps());
        howTo.setText(words.toString());
    }

    /** Fills a field in, unless something was typed there. */
    private void fill(String key, String value) {
        String text = fields.get(key).getText();
        if (text.isBlank() || text.equals(advised.get(key))) {
            fields.get(key).setText(value);
            advised.put(key, value);
        }
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
        return JobFiles.beside(job, "." + kind.word() + (number > 1 ? "-" + number : "") + ".csv");
    }

    private static int free(Path job, TestKind kind) {
        int number = 1;
        while (Files.exists(file(job, kind, number))) {
            number++;
        }
        return number;
    }

    void offerResume() {
        TestKind kind = kind();
        begun = document.file().filter(f -> free(f, kind) > 1).map(f -> file(f, kind, free(f, kind) - 1));
        resume.setVisible(begun.isPresent());
        begun.ifPresent(f -> resume.setText("Go on with " + f.getFileName()));
        begin.setText(begun.isPresent() ? "Begin a new run" : "Begin");
    }

    private void begin() {
        Optional<Job> its = document.text().job();
        if (!begin.isEnabled() || its.isEmpty()) {
            return;
        }
        ReadingSet setUp;
        try {
            setUp = setUp(its.get().armature().bars());
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
        ask(() -> BenchRun.begin(its.get(), file, setUp));
    }

    /** Asks the disk for a run, and for no other before it has answered. */
    private void ask(Callable<BenchRun> run) {
        asked = true;
        allow();
        disk.queue(
                run,
                opened -> {
                    asked = false;
                    allow();
                    start.accept(opened);
                },
                e -> {
                    asked = false;
                    allow();
                    trouble.accept(e);
                });
    }

    private ReadingSet setUp(int bars) {
        TestKind kind = kind();
        Optional<ReadingSet.GivenFeed> feed = kind.fed() ? Optional.of(feed()) : Optional.empty();
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
        if (!unit.isEmpty() && !kind.kinds().isEmpty()) {
            check("unit", () -> ReadingSet.checkUnit(unit, kind));
        }
        if (!meter.isEmpty()) {
            check("meter", () -> ReadingSet.checkMeter(meter));
        }
        return new ReadingSet(
                Optional.of(LocalDate.now(ZoneId.systemDefault())),
                kind,
                feed,
                kind == TestKind.GROWLER ? Optional.of(number("angle", ReadingSet::checkDegrees)) : Optional.empty(),
                kind == TestKind.GROWLER_TURNED
                        ? Optional.of(number("clock", ReadingSet::checkDegrees))
                        : Optional.empty(),
                unit.isEmpty() || kind.kinds().isEmpty() ? Optional.empty() : Optional.of(unit),
                meter.isEmpty() ? Optional.empty() : Optional.of(meter),
                Optional.empty(),
                List.of());
    }

    private ReadingSet.GivenFeed feed() {
        int in = whole("in");
        int out = whole("out");
        BigDecimal amps = number("amps", ReadingSet.GivenFeed::checkAmps);
        if (in == out) {
            throw new IllegalArgumentException(
                    name("in") + " and " + name("out") + " are both " + in + ": name two different bars");
        }
        return new ReadingSet.GivenFeed(in, out, amps);
    }

    /** What a field is called, without what is added for its first reader. */
    private String name(String key) {
        return labels.get(key).getText().replaceFirst(" \\(.*", "");
    }

    /** Puts the name of a field before what is wrong with it. */
    private void check(String key, Runnable rule) {
        try {
            rule.run();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name(key) + " " + e.getMessage(), e);
        }
    }

    private BigDecimal number(String key, Consumer<BigDecimal> rule) {
        String text = fields.get(key).getText().strip().replace('−', '-');
        if (!text.matches("[+-]?[0-9]{1,9}(\\.[0-9]{1,12})?")) {
            throw new IllegalArgumentException(name(key) + " is \"" + Visible.cut(text) + "\", but must be a number");
        }
        var number = new BigDecimal(text);
        check(key, () -> rule.accept(number));
        return number;
    }

    private int whole(String key) {
        String text = fields.get(key).getText().strip();
        if (!text.matches("0{0,4}[1-9][0-9]{0,4}")) {
            throw new IllegalArgumentException(
                    name(key) + " is \"" + Visible.cut(text) + "\", but must be the number of a bar");
        }
        return Integer.parseInt(text);
    }

    private void resume(Path file) {
        document.text().job().ifPresent(job -> ask(() -> BenchRun.resume(job, file)));
    }

    /** Shows the set-up of a test. */
    void choose(String word) {
        test.setSelectedItem(word);
    }

    /** Where typing goes when this part comes to the front. */
    void focus() {
        fillIfShown();
        (resume.isVisible() ? resume : begin).requestFocusInWindow();
    }

    /** Where typing goes after a run. */
    void focusTest() {
        test.requestFocusInWindow();
    }
}
