package coilwright.desktop;

import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.job.RewindBasis;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.rewind.WorkStep;
import coilwright.rewind.WorkTest;
import coilwright.sheet.WorkSheet;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import java.awt.BorderLayout;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.Timer;

/**
 * The order of work, step by step with a tick for each, and the coil of the step lit up beside it. Every tick is on disk
 * at once, so that the work can be left and taken up again.
 */
final class OrderPanel extends JPanel {
    private static final long serialVersionUID = 1L;

    /** After the last change of the job, ms. */
    private static final int WAIT = 500;

    private static final int LIST = 520;
    private static final int WORDS = 190;
    private static final int DONE = 0;
    private static final int NUMBER = 1;

    private final transient MainWindow window;
    private final transient Background worker;
    private final transient Background disk;
    private final JComboBox<WindingWay> way = new JComboBox<>(WindingWay.values());
    private final JButton tick = Ui.enters(Ui.named(new JButton(), "Done, ne&xt"));
    private final JProgressBar progress = new JProgressBar();
    private final Wrapped words = new Wrapped(500);
    private final JPanel said = new JPanel(new BorderLayout());
    private final Steps steps = new Steps();
    private final JTable table = new JTable(steps);
    private final DrawingPane pane = new DrawingPane("order drawing");
    private final Wrapped told = new Wrapped(420);
    private final Wrapped notes = new Wrapped(420);
    private final Sides sides;
    private final Timer later = new Timer(WAIT, e -> refresh());
    private transient Optional<Made> made = Optional.empty();
    private transient WorkTicks ticks = new WorkTicks(WindingWay.FORMED_COILS, "none", Set.of());
    private transient Optional<Path> begunFor = Optional.empty();
    private boolean waits;

    private record Asked(JobText text, Optional<Path> file, Optional<WindingWay> way, boolean grey, Tones tones) {}

    /**
     * An answer to what was asked for.
     *
     * @param order empty where there is none
     * @param way that was asked for, or that the ticks kept are of
     * @param words why there is no order, or what is to be known of the ticks
     */
    private record Made(
            Asked of,
            WindingWay way,
            Optional<WorkOrder> order,
            Optional<Scene> scene,
            Optional<WorkTicks> ticks,
            String words) {}

    OrderPanel(MainWindow window, Consumer<Throwable> trouble) {
        super(new BorderLayout());
        this.window = window;
        this.worker = new Background("order of work", trouble);
        this.disk = new Background("ticks", this::notKept);
        later.setRepeats(false);
        var bar = new JPanel(new Rows());
        way.setName("order way");
        way.setRenderer(SheetPanel.renderer(WindingWay::words));
        way.addActionListener(e -> {
            if (!waits) {
                refresh();
            }
        });
        bar.add(Ui.label("Wo&und", way));
        bar.add(way);
        tick.setName("tick");
        tick.setToolTipText("Tick the step chosen and go to the next that is not done (Enter in the list)");
        tick.addActionListener(e -> tickAndGoOn());
        bar.add(tick);
        progress.setName("steps done");
        progress.setStringPainted(true);
        progress.getAccessibleContext().setAccessibleName("Steps done");
        bar.add(progress);
        var top = new JPanel(new BorderLayout());
        top.add(bar, BorderLayout.NORTH);
        said.setBorder(BorderFactory.createEmptyBorder(0, 10, 6, 10));
        words.setName("order words");
        said.add(words);
        top.add(said);
        add(top, BorderLayout.NORTH);
        table.setName("steps");
        table.getAccessibleContext().setAccessibleName("Steps of the work");
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.setAutoResizeMode(JTable.AUTO_RESIZE_LAST_COLUMN);
        table.setToolTipText("Space ticks or unticks; Enter ticks and goes on");
        table.getSelectionModel().addListSelectionListener(e -> light());
        key("ENTER", this::tickAndGoOn);
        key("SPACE", () -> chosen().ifPresent(s -> tick(s, !ticks.done().contains(s.number()))));
        var list = new JScrollPane(table);
        var text = new JPanel(new BorderLayout(0, 10));
        told.setName("step");
        text.add(told, BorderLayout.NORTH);
        text.add(notes);
        sides = new Sides(list, pane, text, LIST, WORDS);
        add(sides);
        fitColumns();
        window.document().onChange(() -> {
            if (isShowing()) {
                later.restart();
            }
        });
    }

    private void key(String stroke, Runnable run) {
        Ui.key(table, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, stroke, run);
    }

    /** Gives the narrow columns the width they need. */
    private void fitColumns() {
        for (int column : new int[] {DONE, NUMBER}) {
            var c = table.getColumnModel().getColumn(column);
            c.setMinWidth(Ui.px(48));
            c.setMaxWidth(Ui.px(64));
        }
        table.setRowHeight(Ui.px(24));
    }

    private final class Steps extends HeadedModel {
        private static final long serialVersionUID = 1L;

        private transient List<WorkStep> rows = List.of();

        Steps() {
            super(List.of("Done", "Step", "Work"));
        }

        @Override
        public int getRowCount() {
            return rows.size();
        }

        @Override
        public Class<?> getColumnClass(int column) {
            return column == DONE ? Boolean.class : column == NUMBER ? Integer.class : String.class;
        }

        @Override
        public boolean isCellEditable(int row, int column) {
            return column == DONE;
        }

        @Override
        public Object getValueAt(int row, int column) {
            WorkStep s = rows.get(row);
            return column == DONE
                    ? (Object) ticks.done().contains(s.number())
                    : column == NUMBER ? (Object) s.number() : s.text();
        }

        @Override
        public void setValueAt(Object value, int row, int column) {
            tick(rows.get(row), Boolean.TRUE.equals(value));
        }
    }

    // ---- making the order -------------------------------------------------------------------------------------------

    /** Makes the order when the part comes into sight, if it is not there yet. */
    void begin() {
        refresh();
        table.requestFocusInWindow();
    }

    /** Makes the order again where anything has changed that it shows. */
    void refresh() {
        if (!isShowing()) {
            return;
        }
        fitColumns();
        sides.divide();
        Optional<Path> file = window.document().file();
        boolean first = made.isEmpty() || !begunFor.equals(file);
        begunFor = file;
        var asked = new Asked(
                window.document().text(),
                file,
                first ? Optional.empty() : Optional.of((WindingWay) way.getSelectedItem()),
                window.winding().grey(),
                Ui.tones());
        if (made.filter(m -> m.of().equals(asked)).isEmpty()) {
            // What is written comes before what is read.
            disk.queue(() -> true, written -> worker.replace(() -> make(asked), this::show));
        }
    }

    private static Made make(Asked asked) throws IOException {
        Optional<WorkTicks> kept = asked.file().isPresent()
                ? WorkTicks.read(WorkTicks.beside(asked.file().get()))
                : Optional.empty();
        WindingWay way = asked.way().or(() -> kept.map(WorkTicks::way)).orElse(WindingWay.FORMED_COILS);
        Optional<Job> job = asked.text().job();
        if (job.isEmpty()) {
            return none(asked, way, "First mend the job: a field is not right yet.");
        }
        try {
            Winding winding = RewindBasis.wound(job.get()).build();
            Optional<String> refusal = way.refusal(winding);
            if (refusal.isPresent()) {
                return none(asked, way, "Not wound this way: " + refusal.get() + ".");
            }
            WorkOrder order = WorkSheet.order(job.get(), winding, way);
            var options = WindingPanel.options(job.get(), winding, Optional.empty(), asked.grey());
            var scene = new Scene(DrawingView.DEVELOPED.draw(winding, options).first(), asked.tones());
            WorkTicks none = WorkTicks.none(order);
            Optional<WorkTicks> same = kept.filter(t -> t.mark().equals(none.mark()));
            return new Made(
                    asked,
                    way,
                    Optional.of(order),
                    Optional.of(scene),
                    Optional.of(same.orElse(none)),
                    same.isEmpty() ? ofAnother(asked.file(), kept, way) : "");
        } catch (ImpossibleWindingException e) {
            return none(
                    asked, way, "First mend the winding: " + e.findings().get(0).message());
        } catch (IllegalArgumentException e) {
            return none(asked, way, "There is no order of work: " + e.getMessage());
        }
    }

    private static String ofAnother(Optional<Path> file, Optional<WorkTicks> kept, WindingWay way) {
        if (kept.isEmpty() || kept.get().done().isEmpty()) {
            return "";
        }
        String what = kept.get().way() == way
                ? "the winding has changed since"
                : "they are of the work " + kept.get().way().words();
        return "⚠ The ticks kept in " + WorkTicks.beside(file.orElseThrow()).getFileName()
                + " are not of this order: " + what
                + ". Here nothing is ticked yet; with the first tick that file is put aside under another name.";
    }

    private static Made none(Asked asked, WindingWay way, String why) {
        return new Made(asked, way, Optional.empty(), Optional.empty(), Optional.empty(), "✗ " + why);
    }

    private void show(Made next) {
        Optional<WorkStep> was = chosen();
        boolean same = next.ticks().filter(t -> t.mark().equals(ticks.mark())).isPresent();
        waits = true;
        way.setSelectedItem(next.way());
        waits = false;
        made = Optional.of(new Made(
                new Asked(
                        next.of().text(),
                        next.of().file(),
                        Optional.of(next.way()),
                        next.of().grey(),
                        next.of().tones()),
                next.way(),
                next.order(),
                next.scene(),
                next.ticks(),
                next.words()));
        ticks = next.ticks().orElse(new WorkTicks(next.way(), "none", Set.of()));
        steps.rows = next.order().map(WorkOrder::steps).orElse(List.of());
        steps.fireTableDataChanged();
        say(next.words());
        notes.setText(next.order().map(OrderPanel::beforehand).orElse(""));
        pane.show(next.scene());
        showProgress();
        if (same && was.isPresent()) {
            choose(was.get().number() - 1);
        } else {
            choose(nextOpen(0));
        }
        light();
    }

    private void say(String text) {
        words.setText(text);
        said.setVisible(!text.isEmpty());
    }

    private static String beforehand(WorkOrder order) {
        StringBuilder out = new StringBuilder("⚠ Take care\n");
        order.cautions().forEach(c -> out.append("· ").append(c).append('\n'));
        out.append("Before you begin\n");
        order.notes().forEach(c -> out.append("· ").append(c).append('\n'));
        out.append("Source: ").append(order.source().cite());
        out.append(". Where the machine as found was made otherwise, do as found.");
        return out.toString();
    }

    private void showProgress() {
        int all = steps.getRowCount();
        int done = ticks.done().size();
        progress.setMaximum(Math.max(1, all));
        progress.setValue(done);
        progress.setString(done + " of " + all + " done");
        tick.setEnabled(all > 0);
    }

    // ---- working through it -----------------------------------------------------------------------------------------

    private Optional<WorkStep> chosen() {
        int row = table.getSelectedRow();
        return row < 0 || row >= steps.rows.size() ? Optional.empty() : Optional.of(steps.rows.get(row));
    }

    /** The row of the first step not done from a row on, else of the first of all; the last where all are done. */
    private int nextOpen(int from) {
        int all = steps.getRowCount();
        for (int i = 0; i < all; i++) {
            int row = (from + i) % all;
            if (!ticks.done().contains(steps.rows.get(row).number())) {
                return row;
            }
        }
        return all - 1;
    }

    private void choose(int row) {
        if (row >= 0 && row < steps.getRowCount()) {
            table.changeSelection(row, NUMBER, false, false);
        }
    }

    private void light() {
        Optional<WorkStep> step = chosen();
        told.setText(step.map(OrderPanel::tell).orElse(""));
        Set<Element> lit = new LinkedHashSet<>();
        // A test takes in all that lies in the slots: lit up, that would hide the drawing.
        step.filter(s -> s.kind() != WorkStep.Kind.TEST).ifPresent(s -> {
            s.coils().forEach(n -> lit.add(Element.coil(n)));
            s.slots().forEach(n -> lit.add(Element.slot(n)));
            s.bars().forEach(n -> lit.add(Element.bar(n)));
        });
        if (lit.isEmpty()) {
            pane.pin(Optional.empty());
            return;
        }
        Element first = lit.iterator().next();
        pane.pin(Optional.of(
                new Ties.Tied(first, lit, Set.of(), step.orElseThrow().text())));
        pane.reveal(first);
    }

    private static String tell(WorkStep s) {
        String tests = s.tests().isEmpty()
                ? ""
                : "\nTests: " + s.tests().stream().map(WorkTest::title).collect(Collectors.joining("; ")) + ".";
        String remarks = s.remarks().isEmpty() ? "" : "\n" + String.join(" ", s.remarks());
        return "Step " + s.number() + ". " + s.text() + "." + tests + remarks;
    }

    private void tickAndGoOn() {
        chosen().ifPresent(s -> {
            if (tick(s, true)) {
                choose(nextOpen(table.getSelectedRow()));
            }
        });
    }

    /** Ticks a step, or takes its tick away; false where the job must be saved first. */
    private boolean tick(WorkStep s, boolean done) {
        Optional<Path> file = window.document().file();
        if (file.isEmpty()) {
            window.say("The ticks are kept beside the job: save it first");
            window.save(() -> {});
            return false;
        }
        ticks = ticks.with(s.number(), done);
        int row = s.number() - 1;
        steps.fireTableCellUpdated(row, DONE);
        showProgress();
        WorkTicks now = ticks;
        disk.queue(() -> now.keep(file.get(), s.number()), aside -> {
            String name = WorkTicks.beside(file.get()).getFileName().toString();
            aside.ifPresent(a -> say("The ticks of the other order are in " + a.getFileName() + "."));
            window.say("Step " + s.number() + (done ? " is done" : " is not done") + "; kept in " + name
                    + aside.map(a -> "; the one before is now " + a.getFileName())
                            .orElse(""));
        });
        return true;
    }

    /** What is not on disk does not count as ticked. */
    private void notKept(Throwable e) {
        window.say("The tick is not kept: "
                + (e instanceof IOException io ? StatusBar.told(io) : String.valueOf(e.getMessage())));
        made = Optional.empty();
        refresh();
    }

    /** Whether a step is ticked. */
    boolean isDone(int step) {
        return ticks.done().contains(step);
    }

    DrawingPane pane() {
        return pane;
    }

    JTable table() {
        return table;
    }
}
