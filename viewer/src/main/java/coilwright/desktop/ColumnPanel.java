package coilwright.desktop;

import java.awt.LayoutManager;
import java.awt.Rectangle;
import javax.swing.JPanel;
import javax.swing.Scrollable;

/** A panel that scrolls up and down, as wide as where it is looked at. */
abstract class ColumnPanel extends JPanel implements Scrollable {
    private static final long serialVersionUID = 1L;

    ColumnPanel(LayoutManager layout) {
        super(layout);
    }

    @Override
    public final int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return Ui.px(16);
    }

    @Override
    public final int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return visible.height;
    }

    @Override
    public final boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return false;
    }
}
