package coilwright.desktop;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.util.Locale;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.AbstractButton;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.KeyStroke;
import javax.swing.UIManager;

/** Small things that all parts of the window share. */
final class Ui {
    private static Optional<Font> usual = Optional.empty();

    private Ui() {}

    /** Dresses the first window, if nothing is dressed yet. */
    static void begin(Settings settings) {
        if (usual.isEmpty()) {
            dress(settings.dark(), settings.size());
        }
    }

    /** Dresses all windows, at a size in percent. */
    static void dress(boolean dark, int percent) {
        boolean first = usual.isEmpty();
        if (first) {
            UIManager.put("TabbedPane.showTabSeparators", true);
            UIManager.put("ScrollBar.showButtons", false);
            UIManager.put("Component.hideMnemonics", false);
            setLook(dark);
            usual = Optional.of(UIManager.getFont("defaultFont"));
        }
        if (first && percent == 100) {
            return;
        }
        UIManager.put("defaultFont", usual.get().deriveFont(usual.get().getSize2D() * percent / 100));
        setLook(dark);
        FlatLaf.updateUI();
    }

    private static void setLook(boolean dark) {
        if (dark) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
    }

    /** A length at the size in use. */
    static int px(int length) {
        return UIScale.scale(length);
    }

    /**
     * Something to do.
     *
     * @param name with an ampersand before the letter that stands for it
     * @param stroke as {@link KeyStroke#getKeyStroke(String)} takes it; blank for none
     */
    static Action action(String name, String stroke, Runnable run) {
        Action action = new AbstractAction(plain(name)) {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                run.run();
            }
        };
        mnemonic(name).ifPresent(c -> action.putValue(Action.MNEMONIC_KEY, (int) c));
        if (!stroke.isEmpty()) {
            action.putValue(Action.ACCELERATOR_KEY, KeyStroke.getKeyStroke(stroke));
        }
        return action;
    }

    /**
     * Lets a key do something.
     *
     * @param when as {@link JComponent#getInputMap(int)} takes it
     * @param stroke as {@link KeyStroke#getKeyStroke(String)} takes it
     */
    static void key(JComponent on, int when, String stroke, Runnable run) {
        // The toolkit's own actions keep their names.
        String name = "own " + stroke;
        on.getInputMap(when).put(KeyStroke.getKeyStroke(stroke), name);
        on.getActionMap().put(name, action("", "", run));
    }

    /** A button's words, with an ampersand before the letter that stands for it. */
    static <B extends AbstractButton> B named(B button, String name) {
        button.setText(plain(name));
        mnemonic(name).ifPresent(button::setMnemonic);
        return button;
    }

    /** A label for a thing to type into, with an ampersand before the letter that stands for it. */
    static JLabel label(String name, Component of) {
        JLabel label = new JLabel(plain(name));
        mnemonic(name).ifPresent(label::setDisplayedMnemonic);
        label.setLabelFor(of);
        of.getAccessibleContext().setAccessibleName(plain(name));
        return label;
    }

    private static String plain(String name) {
        return name.replace("&", "");
    }

    private static Optional<Character> mnemonic(String name) {
        int at = name.indexOf('&');
        return at < 0
                ? Optional.empty()
                : Optional.of((char) KeyEvent.getExtendedKeyCodeForChar(Character.toUpperCase(name.charAt(at + 1))));
    }

    /** Lets a button be pressed by Enter as well, for hands on the number pad. */
    static <B extends AbstractButton> B enters(B button) {
        button.getInputMap().put(KeyStroke.getKeyStroke("ENTER"), "pressed");
        button.getInputMap().put(KeyStroke.getKeyStroke("released ENTER"), "released");
        return button;
    }

    /** Words that break into lines of their own accord. */
    static String html(String words) {
        return "<html>" + words.replace("&", "&amp;").replace("<", "&lt;").replace("\n", "<br>") + "</html>";
    }

    /** Words that break into lines of a width in pixels. */
    static String html(String words, int width) {
        return html(words).replace("<html>", "<html><div width=" + width + ">").replace("</html>", "</div></html>");
    }

    /** The colour of what is wrong, dark or light enough to be read; never without a sign beside it. */
    static Color error() {
        return new Color(isDark() ? 0xff9aa8 : 0xa3123a);
    }

    /** How drawings are coloured on the screen now. */
    static Tones tones() {
        return isDark() ? Tones.DARK : Tones.LIGHT;
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static boolean isDark() {
        return FlatLaf.isLafDark();
    }
}
