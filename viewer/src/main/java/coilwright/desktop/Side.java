package coilwright.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.Scrollable;

/** Holds words that break at its own width. */
final class Side extends JPanel implements Scrollable {
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
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return Ui.px(16);
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
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
