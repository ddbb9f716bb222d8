package coilwright.desktop;

import java.util.List;
import javax.swing.table.AbstractTableModel;

/** The rows of a table, its columns known by their heads. */
abstract class HeadedModel extends AbstractTableModel {
    private static final long serialVersionUID = 1L;

    private final transient List<String> heads;

    HeadedModel(List<String> heads) {
        this.heads = heads;
    }

    @Override
    public final int getColumnCount() {
        return heads.size();
    }

    @Override
    public final String getColumnName(int column) {
        return heads.get(column);
    }
}
