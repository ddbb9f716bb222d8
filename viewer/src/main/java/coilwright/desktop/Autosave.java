package coilwright.desktop;

import coilwright.file.SafeFiles;
import coilwright.job.JobReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.Timer;

/**
 * Keeps unsaved changes beside the file, {@code .NAME.autosave}, so that a kill or a power cut loses at most the last
 * half second. It goes when the changes are saved or given up.
 */
final class Autosave {
    private static final int WAIT = 400;

    private final JobDocument document;
    private final Settings settings;
    private final Background writer;
    private final Consumer<String> trouble;
    private final Timer timer;
    private Optional<Path> written = Optional.empty();

    Autosave(JobDocument document, Settings settings, Consumer<String> trouble) {
        this.document = document;
        this.settings = settings;
        this.trouble = trouble;
        this.writer = new Background("autosave", e -> trouble.accept(words(e)));
        this.timer = new Timer(WAIT, e -> write());
        timer.setRepeats(false);
        document.onChange(() -> {
            if (document.unsaved()) {
                if (!timer.isRunning()) {
                    timer.start();
                }
            } else {
                timer.stop();
                clear();
            }
        });
    }

    /** Where changes of a file are kept. */
    static Path beside(Path file) {
        return file.resolveSibling("." + file.getFileName() + ".autosave");
    }

    private Path place(Optional<Path> file) {
        return file.map(Autosave::beside).orElseGet(settings::untitled);
    }

    private void write() {
        Path place = place(document.file());
        String text = document.text().text();
        written = Optional.of(place);
        writer.queue(
                () -> {
                    Files.createDirectories(place.toAbsolutePath().getParent());
                    SafeFiles.write(place, text);
                    return true;
                },
                done -> {});
    }

    /** Takes what an earlier window kept for a file as kept by this one. */
    void takeOver(Optional<Path> file) {
        written = Optional.of(place(file));
    }

    /** Takes away what was kept. */
    void clear() {
        timer.stop();
        written.ifPresent(p -> writer.queue(() -> Files.deleteIfExists(p), done -> {}));
        written = Optional.empty();
    }

    /** Takes away what is kept for a file, whoever kept it. */
    void forget(Optional<Path> file) {
        Path place = place(file);
        writer.queue(() -> Files.deleteIfExists(place), done -> {});
    }

    /** Does something once all that was asked for before is on disk, or gone from it. */
    void settled(Runnable then) {
        writer.queue(() -> true, done -> then.run());
    }

    /** Unsaved changes left over from a window that did not end well; empty where they are the same as the file. */
    Optional<String> leftOver(Optional<Path> file, String text) {
        Path place = place(file);
        try {
            if (!Files.isRegularFile(place) || Files.size(place) > JobReader.MAX_BYTES) {
                return Optional.empty();
            }
            String kept = Files.readString(place, StandardCharsets.UTF_8);
            return kept.equals(text) ? Optional.empty() : Optional.of(kept);
        } catch (IOException e) {
            trouble.accept(words(e));
            return Optional.empty();
        }
    }

    private static String words(Throwable e) {
        return "Changes cannot be kept beside the file: "
                + (e instanceof IOException io ? SafeFiles.reason(io) : String.valueOf(e.getMessage()))
                + ". Save often.";
    }
}
