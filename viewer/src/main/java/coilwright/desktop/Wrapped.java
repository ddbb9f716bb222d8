package coilwright.desktop;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Toolkit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.UIManager;

/**
 * Words that break into lines within the width of what they lie in. A label does not break them, and a text area asks
 * for another size with every layout.
 */
final class Wrapped extends JComponent implements Accessible {
    private static final long serialVersionUID = 1L;

    private final int usualWidth;
    private String text = "";

    Wrapped(int usualWidth) {
        this.usualWidth = usualWidth;
        updateUI();
    }

    @Override
    public void updateUI() {
        setFont(UIManager.getFont("Label.font"));
        setForeground(UIManager.getColor("Label.foreground"));
    }

    void setText(String words) {
        if (!words.equals(text)) {
            text = words;
            revalidate();
            repaint();
        }
    }

    String getText() {
        return text;
    }

    private int room() {
        if (getParent() == null || getParent().getWidth() == 0) {
            return Ui.px(usualWidth);
        }
        var in = getParent().getInsets();
        return getParent().getWidth() - in.left - in.right;
    }

    private List<String> lines(int width) {
        FontMetrics metrics = getFontMetrics(getFont());
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\n")) {
            StringBuilder line = new StringBuilder();
            for (String word : paragraph.split(" ")) {
                if (line.length() > 0 && metrics.stringWidth(line + " " + word) > width) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                line.append(line.length() == 0 ? "" : " ").append(word);
            }
            lines.add(line.toString());
        }
        return lines;
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(
                Ui.px(60), lines(room()).size() * getFontMetrics(getFont()).getHeight());
    }

    @Override
    public Dimension getMinimumSize() {
        return getPreferredSize();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        if (Toolkit.getDefaultToolkit().getDesktopProperty("awt.font.desktophints") instanceof Map<?, ?> hints) {
            g.addRenderingHints(hints);
        }
        g.setFont(getFont());
        g.setColor(getForeground());
        FontMetrics metrics = g.getFontMetrics();
        int y = metrics.getAscent();
        for (String line : lines(getWidth())) {
            g.drawString(line, 0, y);
            y += metrics.getHeight();
        }
        g.dispose();
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;

                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.LABEL;
                }

                @Override
                public String getAccessibleName() {
                    return text;
                }
            };
        }
        return accessibleContext;
    }
}
