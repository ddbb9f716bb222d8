package coilwright.desktop;

import coilwright.file.SafeFiles;
import coilwright.job.BadInputException;
import coilwright.winding.ImpossibleWindingException;
import java.awt.BorderLayout;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;

/** The line at the foot of the window: what is lit up, what is being worked on, and what went wrong. */
final class StatusBar extends JPanel {
    private static final long serialVersionUID = 1L;

    private final JLabel status = new JLabel(" ");
    private final JProgressBar progress = new JProgressBar();
    private final JButton cancel = Ui.named(new JButton(), "Cancel");
    private final transient Background worker = new Background("work", this::trouble);

    StatusBar() {
        super(new BorderLayout(8, 0));
        setBorder(BorderFactory.createEmptyBorder(3, 10, 3, 10));
        status.setName("status");
        status.getAccessibleContext().setAccessibleName("Status");
        add(status);
        var right = new JPanel(new BorderLayout(6, 0));
        progress.setIndeterminate(true);
        progress.setVisible(false);
        cancel.setName("cancel");
        cancel.setVisible(false);
        right.add(progress);
        right.add(cancel, BorderLayout.EAST);
        add(right, BorderLayout.EAST);
    }

    void say(String words) {
        status.setText(words.isEmpty() ? " " : words);
        status.setToolTipText(words.isEmpty() ? null : words);
        status.getAccessibleContext().setAccessibleDescription(words);
    }

    /** What should never happen, in one line. */
    void trouble(Throwable e) {
        working(false);
        String why = e instanceof IOException io
                ? told(io)
                : e instanceof UncheckedIOException u ? SafeFiles.reason(u.getCause()) : e.getMessage();
        boolean expected = e instanceof IOException
                || e instanceof IllegalArgumentException
                || e instanceof BadInputException
                || e instanceof ImpossibleWindingException;
        say(
                expected
                        ? String.valueOf(why)
                        : "This should not have happened; please report it: "
                                + e.getClass().getSimpleName() + (why == null ? "" : ": " + why));
    }

    /** Says that a save failed, and why. */
    void notSaved(Throwable e) {
        trouble(e);
        say("Not saved: " + status.getText());
    }

    /** Which file failed, and why. */
    static String told(IOException e) {
        return e instanceof FileSystemException f && f.getFile() != null
                ? f.getFile() + ": " + SafeFiles.reason(e)
                : SafeFiles.reason(e);
    }

    /** Works something out with a bar to show it and a button to give it up. */
    <T> void busy(String what, Callable<T> work, Consumer<T> then) {
        progress.setString(what);
        progress.setStringPainted(true);
        working(true);
        for (var l : cancel.getActionListeners()) {
            cancel.removeActionListener(l);
        }
        cancel.addActionListener(e -> {
            worker.cancel();
            working(false);
            say("Given up: " + what);
        });
        worker.replace(work, answer -> {
            working(false);
            then.accept(answer);
        });
    }

    private void working(boolean on) {
        progress.setVisible(on);
        cancel.setVisible(on);
    }
}
