package coilwright.desktop;

import coilwright.file.SafeFiles;
import coilwright.job.BadInputException;
import coilwright.winding.ImpossibleWindingException;
import java.awt.BorderLayout;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
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
    private final transient Background opener = new Background("open", this::trouble);

    /** What is under way, in the order asked for; the bar tells of the first. */
    private final transient List<Task> tasks = new CopyOnWriteArrayList<>();

    /** Something under way; two of the same words are two. */
    private static final class Task {
        private final String what;
        /** Whether it can be given up. */
        private final boolean loose;
        /** Whether it opens a job. */
        private final boolean opens;

        Task(String what, boolean loose, boolean opens) {
            this.what = what;
            this.loose = loose;
            this.opens = opens;
        }
    }

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
        cancel.addActionListener(e -> giveUp());
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

    /** Works something out after what was asked before, with a bar to show it and a button to give it up. */
    <T> void busy(String what, Callable<T> work, Consumer<T> then) {
        inTurn(new Task(what, true, false), work, then);
    }

    /** Does something that must not be left half done after what was asked before, with a bar to show it. */
    <T> void surely(String what, Callable<T> work, Consumer<T> then) {
        inTurn(new Task(what, false, false), work, then);
    }

    /** Opens a job in place of any other that is being opened, with a bar to show it and a button to give it up. */
    <T> void opening(String what, Callable<T> work, Consumer<T> then) {
        tasks.removeIf(t -> t.opens);
        var task = new Task(what, true, true);
        begin(task);
        opener.queue(unlessGivenUp(task, work), answer -> end(task, answer, then), e -> fail(task, e));
    }

    private <T> void inTurn(Task task, Callable<T> work, Consumer<T> then) {
        begin(task);
        worker.queue(unlessGivenUp(task, work), answer -> end(task, answer, then), e -> fail(task, e));
    }

    private <T> Callable<Optional<T>> unlessGivenUp(Task task, Callable<T> work) {
        return () -> tasks.contains(task) ? Optional.of(work.call()) : Optional.empty();
    }

    private void begin(Task task) {
        tasks.add(task);
        showTask();
    }

    private <T> void end(Task task, Optional<T> answer, Consumer<T> then) {
        if (tasks.remove(task)) {
            showTask();
            then.accept(answer.orElseThrow());
        }
    }

    private void fail(Task task, Throwable e) {
        if (tasks.remove(task)) {
            showTask();
            trouble(e);
        }
    }

    private void giveUp() {
        if (!tasks.isEmpty()) {
            Task task = tasks.remove(0);
            showTask();
            say("Given up: " + task.what);
        }
    }

    private void showTask() {
        Optional<Task> first = tasks.stream().findFirst();
        progress.setStringPainted(true);
        progress.setString(first.map(t -> t.what).orElse(""));
        progress.setVisible(first.isPresent());
        cancel.setVisible(first.filter(t -> t.loose).isPresent());
    }
}
