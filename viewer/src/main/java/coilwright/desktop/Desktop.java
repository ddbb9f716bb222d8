package coilwright.desktop;

import coilwright.job.BadInputException;
import coilwright.job.JobText;
import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Toolkit;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javax.swing.SwingUtilities;

/** Opens the window. */
public final class Desktop {
    private Desktop() {}

    /** Why no window can be opened here, with the way out; empty where one can. */
    public static Optional<String> whyNot() {
        try {
            if (!GraphicsEnvironment.isHeadless()) {
                Toolkit.getDefaultToolkit().getScreenSize();
                return Optional.empty();
            }
        } catch (HeadlessException | AWTError | LinkageError e) {
            // What follows says it in the user's terms.
            return Optional.of(noDisplay());
        }
        return Optional.of(noDisplay());
    }

    private static String noDisplay() {
        return "no window can be opened: there is no display here; the commands table, draw, probe and diagnose do the"
                + " same without one";
    }

    /**
     * Opens the window and comes back when it is closed.
     *
     * @param file job to open; a new one where empty
     * @throws BadInputException when the file cannot be read as text at all; mistakes in it are shown in the window
     * @throws InterruptedException when the thread is told to stop waiting
     */
    public static void open(Optional<Path> file) throws BadInputException, InterruptedException {
        Settings settings = Settings.usual();
        // The toolkit wakes up while the file is read.
        SwingUtilities.invokeLater(() -> Ui.begin(settings));
        JobText text = file.isPresent() ? JobText.read(file.get()) : MainWindow.newJob();
        window(file, text, settings).await();
    }

    static MainWindow window(Optional<Path> file, JobText text, Settings settings) throws InterruptedException {
        var made = new CompletableFuture<MainWindow>();
        try {
            SwingUtilities.invokeAndWait(() -> {
                Ui.begin(settings);
                made.complete(new MainWindow(settings, file, text));
            });
        } catch (InvocationTargetException e) {
            throw new IllegalStateException(e.getCause());
        }
        MainWindow window = made.join();
        // Questions asked on opening hold up the event thread's caller, not this one.
        SwingUtilities.invokeLater(window::open);
        return window;
    }
}
