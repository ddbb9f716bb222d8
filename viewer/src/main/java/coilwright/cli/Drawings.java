package coilwright.cli;

import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.OverlayDrawings;
import coilwright.drawing.ViewOptions;
import coilwright.file.SafeFiles;
import coilwright.job.Job;
import coilwright.winding.Winding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes drawings into files, each in one step. */
final class Drawings {
    private Drawings() {}

    /** Every view of a winding as SVG and PNG. */
    static List<Path> all(Console console, Job job, Winding winding, Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UsageException(folder + ": no folder can be made there: " + SafeFiles.reason(e));
        }
        ViewOptions options = ViewOptions.of(job.title()).withBench(bench(job));
        Map<Path, byte[]> contents = new LinkedHashMap<>();
        for (DrawingView view : DrawingView.values()) {
            DrawingPages pages = view.draw(winding, options);
            for (String ending : List.of(".svg", ".png")) {
                contents.putAll(contents(pages, folder.resolve(view.word() + ending), OptionalDouble.empty()));
            }
        }
        console.files().write(contents);
        return List.copyOf(contents.keySet());
    }

    /** The growler of a job, as the growler view takes it. */
    static GrowlerBench bench(Job job) {
        return GrowlerBench.of(job.growler());
    }

    /** The view of a drawing with something laid over it; developed unless given. */
    static DrawingView overlayView(Optional<String> word, Optional<Path> drawing) {
        if (word.isPresent() && drawing.isEmpty()) {
            throw new UsageException("--view tells how to draw, but there is no drawing: name one with --drawing FILE");
        }
        return Given.valid(() -> word.map(OverlayDrawings::viewNamed).orElse(DrawingView.DEVELOPED));
    }

    /** The pages of one view in the format that the name of the file tells. */
    static List<Path> write(Console console, DrawingPages pages, Path file, OptionalDouble dpi) {
        Map<Path, byte[]> contents = contents(pages, file, dpi);
        console.files().write(contents);
        return List.copyOf(contents.keySet());
    }

    private static Map<Path, byte[]> contents(DrawingPages pages, Path file, OptionalDouble dpi) {
        try {
            return DrawingFiles.contents(pages, file, dpi);
        } catch (IOException e) {
            throw new UsageException(file + ": cannot be drawn: " + SafeFiles.reason(e));
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
    }
}
