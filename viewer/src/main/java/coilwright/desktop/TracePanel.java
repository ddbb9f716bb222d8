package coilwright.desktop;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.job.Quantity;
import coilwright.job.RunOutEntry;
import coilwright.sheet.CommutatorPages;
import java.awt.BorderLayout;
import java.awt.Component;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultCellEditor;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;

/**
 * Run-out of the commutator, bar after bar by the number pad, with the trace beside it and what the readings say below.
 * Every reading goes into the job at once and can be undone.
 */
final class TracePanel extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final int LIST = 330;
    private static final int WORDS = 260;
    private static final int BAR = 0;
    private static final int HEIGHT = 1;

    private final transient JobDocument document;
    private final transient WindingPanel winding;
    private final transient Consumer<String> say;
    private final transient Background worker;
    private final JComboBox<String> unit = new JComboBox<>(TraceEntries.UNITS.toArray(new String[0]));
    private final Bars bars = new Bars();
    private final JTable table = new JTable(bars);
    private final Wrapped wrong = new Wrapped(LIST);
    private final DrawingPane pane = new DrawingPane("trace");
    private final Wrapped words = new Wrapped(500);
    private final Sides sides;
    private transient Optional<Asked> asked = Optional.empty();
    private transient Set<Integer> standing = Set.of();
    private transient Optional<Path> begunFor = Optional.empty();
    private boolean begun;

    private record Asked(JobText text, boolean grey, Tones tones) {}

    /**
     * What the readings say.
     *
     * @param scene the trace; empty while too few bars are read
     * @param words what is to be known
     * @param standing bars that need a look
     */
    private record Said(Optional<Scene> scene, String words, Set<Integer> standing) {}

    TracePanel(MainWindow window, Consumer<Throwable> trouble) {
        super(new BorderLayout());
        this.document = window.document();
        this.winding = window.winding();
        this.say = window::say;
        this.worker = new Background("trace", trouble);
        var bar = new JPanel(new Rows());
        unit.setName("trace unit");
        unit.setToolTipText("Of the gauge; what is read already keeps its own");
        bar.add(Ui.label("&Unit", unit));
        bar.add(unit);
        table.setName("bars");
        table.getAccessibleContext().setAccessibleName("Height of every bar");
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.setSurrendersFocusOnKeystroke(true);
        table.putClientProperty("terminateEditOnFocusLost", true);
        table.setDefaultEditor(String.class, new HeightEditor());
        key(table, "ENTER", this::goOn);
        key(table, "SLASH", this::goBack);
        key(table, "DIVIDE", this::goBack);
        key(table, "DELETE", this::clear);
        var left = new JPanel(new BorderLayout());
        left.add(bar, BorderLayout.NORTH);
        left.add(new JScrollPane(table));
        var foot = new JPanel(new BorderLayout(0, 4));
        foot.setBorder(BorderFactory.createEmptyBorder(6, 10, 6, 10));
        wrong.setName("trace wrong");
        foot.add(wrong, BorderLayout.NORTH);
        var keys = new Wrapped(LIST);
        keys.setText("A number and Enter goes to the next bar · Enter alone passes over · / goes back a bar · Delete"
                + " clears · further out is more");
        foot.add(keys);
        left.add(foot, BorderLayout.SOUTH);
        words.setName("trace words");
        sides = new Sides(left, pane, words, LIST, WORDS);
        add(sides);
        fitRows();
        document.onChange(this::refresh);
    }

    private static void key(JComponent on, String stroke, Runnable run) {
        Ui.key(on, on instanceof JTable ? WHEN_ANCESTOR_OF_FOCUSED_COMPONENT : WHEN_FOCUSED, stroke, run);
    }

    private void fitRows() {
        table.setRowHeight(Ui.px(24));
        var column = table.getColumnModel().getColumn(BAR);
        column.setMinWidth(Ui.px(48));
        column.setMaxWidth(Ui.px(72));
    }

    private final class Bars extends HeadedModel {
        private static final long serialVersionUID = 1L;

        private transient List<RunOutEntry> entries = List.of();
        private int count;

        Bars() {
            super(List.of("Bar", "Height", "Remark"));
        }

        @Override
        public int getRowCount() {
            return count;
        }

        @Override
        public Class<?> getColumnClass(int column) {
            return column == BAR ? Integer.class : String.class;
        }

        @Override
        public boolean isCellEditable(int row, int column) {
            return column == HEIGHT;
        }

        @Override
        public Object getValueAt(int row, int column) {
            return column == BAR
                    ? (Object) (row + 1)
                    : column == HEIGHT
                            ? TraceEntries.shown(entries, row + 1)
                            : standing.contains(row + 1) ? "⚠ stands out" : "";
        }

        @Override
        public void setValueAt(Object value, int row, int column) {
            String typed = String.valueOf(value).strip();
            if (typed.equals(TraceEntries.shown(entries, row + 1))) {
                return;
            }
            put(row + 1, typed.isEmpty() ? Optional.empty() : Optional.of(height(typed, row)));
        }
    }

    private Quantity height(String typed, int row) {
        return TraceEntries.height(typed, row + 1, bars.count, (String) unit.getSelectedItem());
    }

    private void put(int bar, Optional<Quantity> height) {
        try {
            document.change(TraceEntries.with(document.text(), bar, height), "run-out of bar " + bar);
            say.accept("Bar " + bar + ": " + height.map(Quantity::toString).orElse("not read"));
        } catch (IllegalArgumentException e) {
            refuse(e.getMessage());
        }
    }

    private void refuse(String why) {
        wrong.setText("✗ " + why);
        wrong.setForeground(Ui.error());
        say.accept("✗ " + why);
    }

    /** Takes a height only when it is one. */
    private final class HeightEditor extends DefaultCellEditor {
        private static final long serialVersionUID = 1L;

        private int row;

        HeightEditor() {
            super(new JTextField());
            var field = (JTextField) getComponent();
            field.setName("height");
            field.getAccessibleContext().setAccessibleName("Height");
            key(field, "ENTER", TracePanel.this::goOn);
            key(field, "SLASH", TracePanel.this::goBack);
            key(field, "DIVIDE", TracePanel.this::goBack);
        }

        @Override
        public Component getTableCellEditorComponent(JTable in, Object value, boolean selected, int atRow, int column) {
            row = atRow;
            var field = (JTextField) super.getTableCellEditorComponent(in, value, selected, atRow, column);
            field.getAccessibleContext().setAccessibleName("Height of bar " + (atRow + 1));
            field.selectAll();
            return field;
        }

        @Override
        public boolean stopCellEditing() {
            String typed = String.valueOf(getCellEditorValue()).strip();
            if (!typed.isEmpty() && !typed.equals(TraceEntries.shown(bars.entries, row + 1))) {
                try {
                    height(typed, row);
                } catch (IllegalArgumentException e) {
                    refuse(e.getMessage());
                    return false;
                }
            }
            wrong.setText("");
            return super.stopCellEditing();
        }
    }

    private void goOn() {
        if (table.isEditing() && !table.getCellEditor().stopCellEditing()) {
            return;
        }
        table.requestFocusInWindow();
        if (table.getSelectedRow() + 1 < bars.count) {
            choose(table.getSelectedRow() + 1);
            return;
        }
        // A number typed on past the last bar must not take the place of its reading.
        table.clearSelection();
        table.getSelectionModel().setAnchorSelectionIndex(-1);
        table.getSelectionModel().setLeadSelectionIndex(-1);
        say.accept("That was the last bar. Come back to bar 1: it must read the same again.");
    }

    private void goBack() {
        if (table.isEditing()) {
            table.getCellEditor().cancelCellEditing();
            wrong.setText("");
        }
        table.requestFocusInWindow();
        int row = table.getSelectedRow();
        choose(row < 0 ? bars.count - 1 : Math.max(row - 1, 0));
    }

    private void clear() {
        int row = table.getSelectedRow();
        if (row >= 0 && !TraceEntries.shown(bars.entries, row + 1).isEmpty()) {
            put(row + 1, Optional.empty());
        }
    }

    private void choose(int row) {
        if (row >= 0 && row < bars.count) {
            table.changeSelection(row, HEIGHT, false, false);
        }
    }

    // ---- what they say ----------------------------------------------------------------------------------------------

    /** Shows the readings when the part comes into sight. */
    void begin() {
        boolean first = !begun || !begunFor.equals(document.file());
        begun = true;
        begunFor = document.file();
        refresh();
        if (first) {
            unit.setSelectedItem(TraceEntries.unit(bars.entries));
            int row = 0;
            while (row + 1 < bars.count
                    && !TraceEntries.shown(bars.entries, row + 1).isEmpty()) {
                row++;
            }
            choose(row);
        }
        table.requestFocusInWindow();
    }

    /** Shows what the job now holds. */
    void refresh() {
        if (!isShowing()) {
            return;
        }
        fitRows();
        sides.divide();
        var now = new Asked(document.text(), winding.grey(), Ui.tones());
        if (asked.equals(Optional.of(now))) {
            return;
        }
        asked = Optional.of(now);
        Optional<Job> job = now.text().job();
        table.setEnabled(job.isPresent());
        if (job.isEmpty()) {
            words.setText("First mend the job: a field is not right yet.");
            return;
        }
        bars.entries = TraceEntries.of(job.get());
        if (bars.count == job.get().armature().bars()) {
            bars.fireTableRowsUpdated(0, bars.count - 1);
        } else {
            bars.count = job.get().armature().bars();
            bars.fireTableDataChanged();
            choose(0);
        }
        worker.replace(() -> said(job.get(), now), this::show);
    }

    private static Said said(Job job, Asked how) {
        try {
            var progress = CommutatorPages.progress(job, how.grey() ? Palette.MONOCHROME : Palette.COLOUR);
            Optional<Scene> scene = progress.trace().map(p -> new Scene(p.first(), how.tones()));
            if (progress.report().isEmpty()) {
                StringBuilder out = new StringBuilder(
                        scene.isEmpty()
                                ? "The trace is drawn from the third bar read on.\n\n"
                                : "So far the bars read lie on one side. The centre, the cut and the bars that stand out"
                                        + " are told once bars are read all the way round.\n\n");
                part(out, "How to read", CommutatorReport.steps());
                cautions(out);
                return new Said(scene, out.toString().strip(), Set.of());
            }
            CommutatorReport report = progress.report().get();
            Set<Integer> standing = new LinkedHashSet<>();
            report.runOut().standouts().stream().map(RunOut.Bar::bar).forEach(standing::add);
            return new Said(scene, words(report), standing);
        } catch (IllegalArgumentException e) {
            return new Said(Optional.empty(), "✗ " + e.getMessage(), Set.of());
        }
    }

    private static String words(CommutatorReport report) {
        StringBuilder out = new StringBuilder();
        part(out, "Run-out", report.facts());
        part(out, "Cut that cleans up", report.cutLines());
        part(out, "Undercut", report.undercutLines());
        part(out, "Verdict", report.verdictLines());
        part(out, "Mind", report.notes());
        cautions(out);
        return out.toString().strip();
    }

    private static void part(StringBuilder out, String title, Map<String, String> facts) {
        part(
                out,
                title,
                facts.entrySet().stream()
                        .map(f -> f.getKey() + ": " + f.getValue())
                        .toList());
    }

    private static void part(StringBuilder out, String title, List<String> lines) {
        out.append(title).append('\n');
        lines.forEach(l -> out.append("· ").append(l).append('\n'));
        out.append('\n');
    }

    private static void cautions(StringBuilder out) {
        part(out, "⚠ Take care", TruingCut.cautions());
    }

    private void show(Said next) {
        standing = next.standing();
        words.setText(next.words());
        pane.show(next.scene());
        if (bars.count > 0 && !table.isEditing()) {
            bars.fireTableRowsUpdated(0, bars.count - 1);
        }
        table.repaint();
    }

    DrawingPane pane() {
        return pane;
    }

    JTable table() {
        return table;
    }
}
