package coilwright.desktop;

import coilwright.job.JobText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** The job being worked on: its text as it stands, the steps back and forth, and what was last saved. */
final class JobDocument {
    private static final int MOST_STEPS = 500;

    private final Deque<Step> undo = new ArrayDeque<>();
    private final Deque<Step> redo = new ArrayDeque<>();
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<Path> file;
    private JobText text;
    private String saved;
    private String lastField = "";
    private int number;

    /** A text gone from, and what was done to it. */
    private record Step(JobText text, String what) {}

    JobDocument(Optional<Path> file, JobText text) {
        this.file = file;
        this.text = text;
        this.saved = text.text();
    }

    void onChange(Runnable listener) {
        listeners.add(listener);
    }

    private void changed() {
        listeners.forEach(Runnable::run);
    }

    Optional<Path> file() {
        return file;
    }

    JobText text() {
        return text;
    }

    /** Tells one job from the next that is opened or begun in its place. */
    int number() {
        return number;
    }

    /** What the file held when it was last read or written here. */
    String saved() {
        return saved;
    }

    /**
     * Whether another program changed a file meanwhile. Where none is there any more, nothing can be lost.
     *
     * @param known texts that it may hold without that
     * @throws IOException when it cannot be read
     */
    static boolean isChanged(Path file, Collection<String> known) throws IOException {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        return !known.contains(text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    /** Takes up what another program saved, in a step of its own: undone, it gives what was here. */
    void takeUp(JobText other) {
        saved = other.text();
        if (other.text().equals(text.text())) {
            changed();
        } else {
            change(other, "taken up");
        }
    }

    /** Takes another file or a new job in place of this one. */
    void replace(Optional<Path> newFile, JobText newText, String newSaved) {
        number++;
        file = newFile;
        text = newText;
        saved = newSaved;
        undo.clear();
        redo.clear();
        lastField = "";
        changed();
    }

    /**
     * Changes one field; changes of the same field one after the other are one step. Each begins at the text before the
     * step, so that a field emptied on the way to another value keeps its place and its comment.
     */
    void edit(String field, String value) {
        boolean goesOn = field.equals(lastField) && !undo.isEmpty();
        JobText before = goesOn ? undo.element().text() : text;
        JobText next = before.with(field, value);
        if (next.text().equals(text.text())) {
            return;
        }
        if (goesOn && next.text().equals(before.text())) {
            undo.pop();
            text = before;
            lastField = "";
            changed();
            return;
        }
        step(next, field, goesOn);
    }

    /** Changes the text in a step of its own. */
    void change(JobText next, String what) {
        if (!next.text().equals(text.text())) {
            step(next, what, false);
            lastField = "";
        }
    }

    private void step(JobText next, String what, boolean goesOn) {
        if (!goesOn) {
            undo.push(new Step(text, what));
            if (undo.size() > MOST_STEPS) {
                undo.removeLast();
            }
        }
        redo.clear();
        text = next;
        lastField = what;
        changed();
    }

    /** The next change of a field is a step of its own. */
    void seal() {
        lastField = "";
    }

    Optional<String> undoable() {
        return Optional.ofNullable(undo.peek()).map(Step::what);
    }

    Optional<String> redoable() {
        return Optional.ofNullable(redo.peek()).map(Step::what);
    }

    void undo() {
        exchange(undo, redo);
    }

    void redo() {
        exchange(redo, undo);
    }

    private void exchange(Deque<Step> from, Deque<Step> to) {
        if (!from.isEmpty()) {
            Step step = from.pop();
            to.push(new Step(text, step.what()));
            text = step.text();
            lastField = "";
            changed();
        }
    }

    boolean unsaved() {
        return !text.text().equals(saved);
    }

    /** What was written into the file is what counts as saved. */
    void savedAs(Path to, String written) {
        if (!Optional.of(to).equals(file)) {
            file = Optional.of(to);
            text = text.named(to.toString());
        }
        saved = written;
        lastField = "";
        changed();
    }
}
