package coilwright.desktop;

import coilwright.file.SafeFiles;
import coilwright.job.JobText;
import coilwright.job.Problem;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.filechooser.FileNameExtensionFilter;

/** Opens and saves the job of a window, and asks before anything is lost. */
final class JobFiles {
    private final MainWindow window;
    private final Settings settings;
    private final JobDocument document;
    private final Autosave autosave;
    /** Apart from all other work, so that nothing asked for later can overtake a save. */
    private final Background saver;

    /** What was saved last, by file. */
    private final Map<Path, String> stored = new HashMap<>();

    JobFiles(MainWindow window, Settings settings, JobDocument document, Consumer<Throwable> notSaved) {
        this.window = window;
        this.settings = settings;
        this.document = document;
        this.autosave = new Autosave(document, settings, window::say);
        this.saver = new Background("save", notSaved);
    }

    /** Goes on when nothing unsaved would be lost, asking where it would. */
    void guarded(Runnable then) {
        if (!document.unsaved()) {
            then.run();
            return;
        }
        int answer = ask(
                "Unsaved changes",
                "The changes of "
                        + document.file().map(f -> f.getFileName().toString()).orElse(MainWindow.NO_FILE)
                        + " are not saved.",
                JOptionPane.WARNING_MESSAGE,
                "Save",
                "Give up changes",
                "Go back");
        if (answer == 0) {
            // More may be changed before it is on disk.
            save(() -> guarded(then));
        } else if (answer == 1) {
            // What is kept of them goes when another job takes their place: opening one may yet come to nothing.
            then.run();
        }
    }

    void newFile() {
        guarded(() -> {
            JobText text = MainWindow.newJob();
            document.replace(Optional.empty(), text, text.text());
            window.say("A new job: change the fields on the left");
        });
    }

    void chooseFile() {
        guarded(() -> {
            var chooser = new JFileChooser(folder());
            chooser.setDialogTitle("Open a job");
            chooser.setFileFilter(
                    new FileNameExtensionFilter("Job files (*.yaml, *.yml, *.json)", "yaml", "yml", "json"));
            if (chooser.showOpenDialog(window.frame()) == JFileChooser.APPROVE_OPTION) {
                openFile(chooser.getSelectedFile().toPath());
            }
        });
    }

    /** Where jobs are saved, one after the other. */
    Background saver() {
        return saver;
    }

    /** A file beside a job: the job's name without its ending, then a tail. */
    static Path beside(Path job, String tail) {
        String name = job.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return job.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + tail);
    }

    File folder() {
        return document.file()
                .map(f -> f.toAbsolutePath().getParent().toFile())
                .orElse(Path.of("").toAbsolutePath().toFile());
    }

    void openFile(Path path) {
        JobText before = document.text();
        window.opening(path, () -> JobText.read(path), text -> {
            Runnable take = () -> {
                document.replace(Optional.of(path), text, text.text());
                noteOpened(path);
                // Not before what was given up is gone.
                autosave.settled(this::offerRecovery);
            };
            if (document.text() == before) {
                take.run();
            } else {
                guarded(take);
            }
        });
    }

    void noteOpened(Path path) {
        settings.opened(path);
        window.showTitle();
        window.say(
                document.text().problems().isEmpty()
                        ? "Opened " + path
                        : "Opened " + path + ", which is not right yet: see the fields marked ✗");
    }

    void offerRecovery() {
        Optional<String> kept =
                autosave.leftOver(document.file(), document.text().text());
        if (kept.isEmpty()) {
            return;
        }
        int answer = ask(
                "Unsaved changes found",
                "There are changes that were not saved when Coilwright last ended.",
                JOptionPane.QUESTION_MESSAGE,
                "Take them up",
                "Throw them away");
        if (answer == 0) {
            autosave.takeOver(document.file());
            document.change(
                    JobText.of(document.file().map(Path::toString).orElse(MainWindow.NO_FILE), kept.get()), "taken up");
            window.say("The unsaved changes are back; undo gives the file as it is");
        } else if (answer == 1) {
            autosave.forget(document.file());
        }
    }

    /**
     * Saves the job.
     *
     * @param then what to do when it is on disk, unless another job has taken its place meanwhile
     */
    void save(Runnable then) {
        if (document.file().isEmpty()) {
            saveAs(then);
        } else {
            write(document.file().get(), then);
        }
    }

    void saveAs(Runnable then) {
        var chooser = new JFileChooser(folder());
        chooser.setDialogTitle("Save the job as");
        chooser.setSelectedFile(document.file().orElse(Path.of("job.yaml")).toFile());
        if (chooser.showSaveDialog(window.frame()) == JFileChooser.APPROVE_OPTION) {
            Path chosen = chooser.getSelectedFile().toPath();
            Path path = chosen.getFileName().toString().contains(".")
                    ? chosen
                    : chosen.resolveSibling(chosen.getFileName() + ".yaml");
            if (mayWrite(List.of(path), document.file())) {
                write(path, then);
            }
        }
    }

    boolean mayWrite(List<Path> paths, Optional<Path> own) {
        List<Path> there = paths.stream()
                .filter(p -> Files.exists(p) && !Optional.of(p).equals(own))
                .toList();
        return there.isEmpty()
                || JOptionPane.showConfirmDialog(
                                window.frame(), mayReplace(there), "Replace", JOptionPane.OK_CANCEL_OPTION)
                        == JOptionPane.OK_OPTION;
    }

    /** The question whether files may be replaced. */
    static String mayReplace(List<Path> there) {
        Path first = there.get(0).getFileName();
        int more = there.size() - 1;
        return more == 0
                ? "The file " + first + " is there already. Put the new one in its place?"
                : "The file " + first + " and " + more + " more are there already. Put the new ones in their place?";
    }

    private void write(Path path, Runnable then) {
        if (document.text().job().isEmpty()) {
            window.say("Not saved: " + words(document.text().problems().get(0)));
            focusProblem();
            return;
        }
        String text = document.text().text();
        int job = document.number();
        Optional<Path> before = document.file();
        boolean own = before.filter(path::equals).isPresent();
        List<String> known = List.of(document.saved(), text);
        saver.queue(
                () -> own && isChanged(path, known) ? Optional.<Path>empty() : Optional.of(store(path, text)), p -> {
                    if (p.isPresent()) {
                        saved(job, before, path, text, then);
                    } else if (job != document.number()) {
                        window.say(notSaved(path));
                    } else {
                        askWhichToKeep(path, text, then);
                    }
                });
    }

    /** A problem of the job shown: its field and what is wrong with it. */
    static String words(Problem p) {
        return (p.field().isEmpty() ? "" : p.field() + " ") + p.message();
    }

    /** On the thread of the saver alone. */
    private Path store(Path path, String text) throws IOException {
        SafeFiles.write(path, text);
        stored.put(path, text);
        return path;
    }

    /** On the thread of the saver alone. A save that the window was not told of yet is no other program's. */
    private boolean isChanged(Path path, List<String> known) throws IOException {
        List<String> all = new ArrayList<>(known);
        Optional.ofNullable(stored.get(path)).ifPresent(all::add);
        return JobDocument.isChanged(path, all);
    }

    private void saved(int job, Optional<Path> before, Path path, String text, Runnable then) {
        settings.opened(path);
        if (job != document.number()) {
            window.showTitle();
            window.say("Saved " + path);
            return;
        }
        autosave.clear();
        autosave.forget(before);
        document.savedAs(path, text);
        window.showTitle();
        window.say("Saved " + path);
        then.run();
    }

    private static String notSaved(Path path) {
        return "Not saved: another program changed " + path.getFileName();
    }

    private void askWhichToKeep(Path path, String text, Runnable then) {
        int job = document.number();
        int answer = ask(
                "Changed meanwhile",
                "Another program changed " + path.getFileName() + " since it was opened or saved here.\n"
                        + "If the other is taken up, undo gives yours again.",
                JOptionPane.WARNING_MESSAGE,
                "Save mine under another name",
                "Put mine in its place",
                "Take up the other",
                "Go back");
        switch (answer) {
            case 0 -> saveAs(then);
            case 1 -> saver.queue(() -> store(path, text), p -> saved(job, Optional.of(p), p, text, then));
            case 2 ->
                window.opening(path, () -> JobText.read(path), other -> {
                    if (job == document.number()) {
                        document.takeUp(other);
                        window.say("Taken up as the other program saved it; undo gives yours");
                    }
                });
            default -> window.say(notSaved(path));
        }
    }

    /** Says so when another program changed the job while the window was not looked at. */
    void lookAgain() {
        document.file().ifPresent(file -> {
            List<String> known = List.of(document.saved());
            saver.queue(
                    () -> isChanged(file, known),
                    changed -> {
                        if (changed && document.file().filter(file::equals).isPresent()) {
                            window.say("Another program changed " + file.getFileName() + ": "
                                    + (document.unsaved() ? "saving asks which to keep" : "open it again to see it"));
                        }
                    },
                    e -> window.say("Whether another program changed " + file.getFileName() + " cannot be seen"
                            + (e instanceof IOException io ? ": " + SafeFiles.reason(io) : "")));
        });
    }

    private void focusProblem() {
        document.text().problems().stream()
                .map(p -> window.winding().form().input(p.field()))
                .flatMap(Optional::stream)
                .findFirst()
                .ifPresent(c -> c.requestFocusInWindow());
    }

    void close() {
        guarded(() -> {
            autosave.clear();
            window.frame().dispose();
        });
    }

    /** The number of the answer chosen, from nought; −1 where the question was put away. */
    private int ask(String title, String question, int kind, String... answers) {
        return JOptionPane.showOptionDialog(
                window.frame(), question, title, JOptionPane.DEFAULT_OPTION, kind, null, answers, answers[0]);
    }
}
