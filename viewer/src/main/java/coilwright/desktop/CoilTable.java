package coilwright.desktop;

import coilwright.drawing.Element;
import coilwright.winding.Coil;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.KeyboardFocusManager;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JLabel;
import javax.swing.JTable;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.TableCellEditor;
import javax.swing.text.JTextComponent;

/** Every coil with its slots, bars and path; a listed winding can be changed here, cell by cell. */
final class CoilTable extends JTable {
    private static final long serialVersionUID = 1L;
    private static final List<String> HEADS =
            List.of("Coil", "Top slot", "Bottom slot", "Top bar", "Bottom bar", "Path");
    private static final List<String> KEYS = List.of("coil", "topSlot", "bottomSlot", "topBar", "bottomBar");

    private transient Optional<Ties> ties = Optional.empty();
    private transient Set<Element> lit = Set.of();
    private transient boolean editable;
    private transient boolean quiet;
    private transient Consumer<Optional<Element>> onChoose = e -> {};
    private transient CellEdit onEdit = (path, value) -> {};

    /** Takes a change of one cell of a listed winding. */
    interface CellEdit {
        void set(String path, String value);
    }

    CoilTable() {
        setModel(new Model());
        setName("coils");
        getAccessibleContext().setAccessibleName("Coils");
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setFillsViewportHeight(true);
        setAutoCreateColumnsFromModel(false);
        putClientProperty("JTable.autoStartsEdit", true);
        putClientProperty("terminateEditOnFocusLost", true);
        setSurrendersFocusOnKeystroke(true);
        setDefaultRenderer(Object.class, new Cell());
        var heads = getTableHeader().getDefaultRenderer();
        getTableHeader().setDefaultRenderer((table, value, selected, focus, row, column) -> {
            Component head = heads.getTableCellRendererComponent(table, value, selected, focus, row, column);
            if (head instanceof JLabel label) {
                label.setText("<html><div align=right>" + HEADS.get(column).replace(" ", "<br>") + "</div></html>");
                label.setHorizontalAlignment(SwingConstants.RIGHT);
                label.setFont(table.getFont().deriveFont(table.getFont().getSize2D() * 0.9f));
            }
            return head;
        });
        updateUI();
        // Tab leaves the table; cells are walked with the arrows.
        setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("TAB"), "none");
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("shift TAB"), "none");
        getSelectionModel().addListSelectionListener(e -> {
            if (!quiet && !e.getValueIsAdjusting()) {
                onChoose.accept(chosen());
            }
        });
    }

    @Override
    public void updateUI() {
        super.updateUI();
        int line = getFontMetrics(getFont()).getHeight();
        setRowHeight(line + Ui.px(4));
        if (getTableHeader() != null) {
            getTableHeader().setPreferredSize(new Dimension(10, 2 * line + Ui.px(6)));
        }
    }

    /** What is typed takes the place of what stood there. */
    @Override
    public Component prepareEditor(TableCellEditor editor, int row, int column) {
        Component c = super.prepareEditor(editor, row, column);
        if (c instanceof JTextComponent text) {
            text.selectAll();
        }
        return c;
    }

    void onChoose(Consumer<Optional<Element>> listener) {
        onChoose = listener;
    }

    void onEdit(CellEdit listener) {
        onEdit = listener;
    }

    /** The coil of the row chosen. */
    Optional<Element> chosen() {
        int row = getSelectedRow();
        return ties.filter(t -> row >= 0 && row < t.winding().coils().size())
                .map(t -> Element.coil(t.winding().coils().get(row).number()));
    }

    void show(Optional<Ties> next, boolean listed) {
        quiet = true;
        if (isEditing()) {
            getCellEditor().cancelCellEditing();
        }
        int row = getSelectedRow();
        boolean sameRows = ties.map(t -> t.winding().coils().size())
                .equals(next.map(t -> t.winding().coils().size()));
        ties = next;
        editable = listed;
        Model model = (Model) getModel();
        if (sameRows) {
            model.fireTableRowsUpdated(0, Math.max(0, model.getRowCount() - 1));
        } else {
            model.fireTableDataChanged();
        }
        if (row >= 0 && row < model.getRowCount() && sameRows) {
            setRowSelectionInterval(row, row);
        }
        quiet = false;
    }

    /** Shows coils in heavy letters and brings the first into sight. */
    void light(Set<Element> elements, boolean choose) {
        lit = elements;
        repaint();
        if (!choose) {
            return;
        }
        ties.ifPresent(t -> {
            List<Coil> coils = t.winding().coils();
            quiet = true;
            clearSelection();
            for (int row = 0; row < coils.size(); row++) {
                if (elements.contains(Element.coil(coils.get(row).number()))) {
                    setRowSelectionInterval(row, row);
                    scrollRectToVisible(getCellRect(row, 0, true));
                    break;
                }
            }
            quiet = false;
        });
    }

    private final class Model extends HeadedModel {
        private static final long serialVersionUID = 1L;

        Model() {
            super(HEADS);
        }

        @Override
        public int getRowCount() {
            // Asked for while the table is being made, before its own fields are set.
            return ties == null ? 0 : ties.map(t -> t.winding().coils().size()).orElse(0);
        }

        @Override
        public Object getValueAt(int row, int column) {
            if (row >= getRowCount()) {
                return "";
            }
            Coil c = ties.orElseThrow().winding().coils().get(row);
            return switch (column) {
                case 0 -> Integer.toString(c.number());
                case 1 -> Integer.toString(c.top().slot());
                case 2 -> Integer.toString(c.bottom().slot());
                case 3 -> bar(c.topBar());
                case 4 -> bar(c.bottomBar());
                default -> {
                    OptionalInt path = ties.orElseThrow().path(c.number());
                    yield path.isPresent() ? Integer.toString(path.getAsInt()) : c.isDead() ? "dead" : "";
                }
            };
        }

        private String bar(OptionalInt bar) {
            return bar.isPresent() ? Integer.toString(bar.getAsInt()) : "";
        }

        @Override
        public boolean isCellEditable(int row, int column) {
            return editable && column >= 1 && column <= 4;
        }

        @Override
        public void setValueAt(Object value, int row, int column) {
            Coil c = ties.orElseThrow().winding().coils().get(row);
            String written = String.valueOf(value).strip();
            // A lead on no bar is written out, since a key left out reads as forgotten.
            onEdit.set(c.number() + "." + KEYS.get(column), written.isEmpty() && column >= 3 ? "null" : written);
        }
    }

    private final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;

        Cell() {
            setHorizontalAlignment(SwingConstants.RIGHT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int column) {
            super.getTableCellRendererComponent(table, value, selected, focus, row, column);
            boolean heavy = ties.filter(t -> row < t.winding().coils().size())
                    .map(t -> lit.contains(
                            Element.coil(t.winding().coils().get(row).number())))
                    .orElse(false);
            setFont(heavy ? table.getFont().deriveFont(Font.BOLD) : table.getFont());
            if (heavy && column == 0) {
                setText("▸ " + value);
            }
            setToolTipText(HEADS.get(column).toLowerCase(Locale.ROOT) + " of coil " + table.getValueAt(row, 0));
            return this;
        }
    }

    /** Tab-separated rows with their heading, for a spreadsheet. */
    String asText() {
        StringBuilder out = new StringBuilder(HEADS.stream().collect(Collectors.joining("\t"))).append('\n');
        for (int row = 0; row < getRowCount(); row++) {
            for (int column = 0; column < getColumnCount(); column++) {
                out.append(column == 0 ? "" : "\t").append(getValueAt(row, column));
            }
            out.append('\n');
        }
        return out.toString();
    }
}
