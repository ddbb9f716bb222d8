package coilwright.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.FlowLayout;

/** Lays buttons in a row, and in further rows where one has not room for all. */
final class Rows extends FlowLayout {
    private static final long serialVersionUID = 1L;

    Rows() {
        super(FlowLayout.LEADING, 4, 4);
    }

    @Override
    public Dimension preferredLayoutSize(Container target) {
        synchronized (target.getTreeLock()) {
            var in = target.getInsets();
            int room = target.getWidth() == 0 ? Integer.MAX_VALUE : target.getWidth() - in.left - in.right;
            int x = getHgap();
            int rowHeight = 0;
            int height = in.top + in.bottom + getVgap();
            for (Component c : target.getComponents()) {
                if (!c.isVisible()) {
                    continue;
                }
                Dimension d = c.getPreferredSize();
                if (x > getHgap() && x + d.width + getHgap() > room) {
                    height += rowHeight + getVgap();
                    rowHeight = 0;
                    x = getHgap();
                }
                x += d.width + getHgap();
                rowHeight = Math.max(rowHeight, d.height);
            }
            return new Dimension(Ui.px(100), height + rowHeight + getVgap());
        }
    }

    @Override
    public Dimension minimumLayoutSize(Container target) {
        return new Dimension(0, preferredLayoutSize(target).height);
    }
}
