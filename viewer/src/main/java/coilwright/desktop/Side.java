package coilwright.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import javax.swing.BorderFactory;

/** Holds words that break at its own width. */
final class Side extends ColumnPanel {
    private static final long serialVersionUID = 1L;

    Side() {
        super(new BorderLayout());
        setBorder(BorderFactory.createEmptyBorder(16, 20, 16, 20));
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(Ui.px(420), Ui.px(300));
    }
}
