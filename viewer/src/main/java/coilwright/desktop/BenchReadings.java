package coilwright.desktop;

import java.awt.Component;
import java.awt.Font;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.UIManager;
import javax.swing.table.DefaultTableCellRenderer;

/** The pairs of a run with what should be and what was read. */
final class BenchReadings extends JTable {
    private static final long serialVersionUID = 1L;
    private static final List<String> HEADS = List.of("Pair", "Expected", "Read");

    private transient Optional<BenchRun> run = Optional.empty();

    /**
     * Makes an empty one.
     *
     * @param choose takes the row that was clicked; −1 where that was beside all rows
     */
    BenchReadings(IntConsumer choose) {
        setModel(new Model());
        setName("readings");
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        getAccessibleContext().setAccessibleName("Readings");
        setFillsViewportHeight(true);
        setDefaultRenderer(Object.class, new Cell());
        addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                choose.accept(rowAtPoint(e.getPoint()));
            }
        });
    }

    @Override
    public void updateUI() {
        super.updateUI();
        setRowHeight(getFontMetrics(UIManager.getFont("Label.font")).getHeight() + Ui.px(4));
    }

    /** Begins with another run, none of whose lines are known yet. */
    void begin(BenchRun next) {
        run = Optional.of(next);
        show(List.of());
    }

    void show(List<BenchRun.Line> lines) {
        ((Model) getModel()).show(lines);
    }

    /** Chooses the row of a pair and brings it into sight. */
    void choose(int row) {
        if (row >= 0 && row < getRowCount()) {
            setRowSelectionInterval(row, row);
            scrollRectToVisible(getCellRect(row, 0, true));
        }
    }

    private final class Model extends HeadedModel {
        private static final long serialVersionUID = 1L;

        private transient List<BenchRun.Line> lines = List.of();

        Model() {
            super(HEADS);
        }

        void show(List<BenchRun.Line> next) {
            lines = next;
            fireTableDataChanged();
        }

        @Override
        public int getRowCount() {
            return lines.size();
        }

        @Override
        public Object getValueAt(int row, int column) {
            BenchRun.Line line = lines.get(row);
            return switch (column) {
                case 0 -> line.pair().dashed();
                case 1 ->
                    line.expected().isPresent()
                            ? run.map(r -> Figures.in(line.expected().getAsDouble(), r.kind(), r.unit()))
                                    .orElse("")
                            : "";
                default ->
                    line.taken()
                            .map(t -> (line.standsOut() ? "⚠ " : "") + BenchTaking.shown(t))
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
}
