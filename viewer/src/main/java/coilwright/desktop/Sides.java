package coilwright.desktop;

import java.awt.BorderLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.SwingUtilities;

/** A list beside a drawing with words under it; divided anew when the size of letters changes. */
final class Sides extends JPanel {
    private static final long serialVersionUID = 1L;

    private final JSplitPane all;
    private final JSplitPane right;
    private final int listWidth;
    private final int wordsHeight;
    private int dividedFor;

    /**
     * Lays them out.
     *
     * @param listWidth wished for, at most nearly half
     * @param wordsHeight wished for, at most half
     */
    Sides(JComponent list, DrawingPane drawing, JComponent words, int listWidth, int wordsHeight) {
        super(new BorderLayout());
        this.listWidth = listWidth;
        this.wordsHeight = wordsHeight;
        var about = new Side();
        about.setBorder(BorderFactory.createEmptyBorder(8, 10, 8, 10));
        about.add(words);
        var scroll = new JScrollPane(about);
        scroll.setBorder(null);
        right = new JSplitPane(JSplitPane.VERTICAL_SPLIT, drawing, scroll);
        right.setResizeWeight(1);
        right.setBorder(null);
        all = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, list, right);
        all.setResizeWeight(0);
        all.setBorder(null);
        add(all);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                SwingUtilities.invokeLater(() -> divide());
            }
        });
    }

    /** Divides the room where the size of letters is another than before. */
    void divide() {
        int letters = Ui.px(1000);
        if (letters != dividedFor && getWidth() > 0 && getHeight() > 0) {
            dividedFor = letters;
            all.setDividerLocation(Math.min(Ui.px(listWidth), getWidth() * 9 / 20));
            right.setDividerLocation(getHeight() - Math.min(Ui.px(wordsHeight), getHeight() / 2));
        }
    }
}
