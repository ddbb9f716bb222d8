package coilwright.drawing;

import coilwright.drawing.export.PdfExport;
import coilwright.drawing.export.PngExport;
import coilwright.file.SafeFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes the pages of a view to files; the ending of the name tells the format. */
public final class DrawingFiles {
    private DrawingFiles() {}

    /**
     * Writes {@code name.svg}, {@code name.png} or {@code name.pdf}. Several pages go into one PDF, but into
     * {@code name-1.svg}, {@code name-2.svg} and so on.
     *
     * @param pages what to write
     * @param file where
     * @param dpi resolution of PNG, 1 to 1200; 150, or less for a very large page, where empty
     * @return the files written
     * @throws IllegalArgumentException when the ending is none of these or the picture would be too large
     * @throws IOException when a file cannot be written; none is written then
     */
    public static List<Path> write(DrawingPages pages, Path file, OptionalDouble dpi) throws IOException {
        Map<Path, byte[]> contents = contents(pages, file, dpi);
        SafeFiles.write(contents);
        return List.copyOf(contents.keySet());
    }

    /**
     * {@return pages of A4 for a file whose name ends in .pdf, one page for others}
     *
     * @param file its name tells
     */
    public static PageFormat usualFormat(Path file) {
        return name(file).toLowerCase(Locale.ROOT).endsWith(".pdf") ? PageFormat.A4 : PageFormat.SINGLE;
    }

    /**
     * {@return what {@link #write} would write, file by file, for callers that write it their own way}
     *
     * @param pages one or more pages
     * @param file its ending tells the format; further pages are numbered
     * @param dpi dots per inch of PNG; empty for the usual
     * @throws IllegalArgumentException when the ending is none of these or the picture would be too large
     * @throws IOException when a picture cannot be made
     */
    public static Map<Path, byte[]> contents(DrawingPages pages, Path file, OptionalDouble dpi) throws IOException {
        String name = name(file);
        int dot = name.lastIndexOf('.');
        String ending = dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
        Map<Path, byte[]> contents = new LinkedHashMap<>();
        switch (ending) {
            case "pdf" -> contents.put(file, PdfExport.pdf(pages));
            case "svg", "png" -> {
                int n = 0;
                for (Drawing page : pages.pages()) {
                    n++;
                    Path to = pages.pages().size() == 1
                            ? file
                            : file.resolveSibling(name.substring(0, dot) + "-" + n + name.substring(dot));
                    contents.put(
                            to,
                            ending.equals("svg")
                                    ? SvgWriter.write(page).getBytes(StandardCharsets.UTF_8)
                                    : PngExport.png(page, dpi.orElse(PngExport.usualDpi(page))));
                }
            }
            default ->
                throw new IllegalArgumentException(
                        "\"" + name + "\" does not end in a format a drawing can have: name it .svg, .png or .pdf");
        }
        return contents;
    }

    /** The last part of a path; a root has none. */
    private static String name(Path file) {
        return Optional.ofNullable(file.getFileName()).map(Path::toString).orElse("");
    }
}
