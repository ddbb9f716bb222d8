package coilwright.cli;

import coilwright.file.SafeFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The files that a command writes: none of them may be one that it reads, nor one that it wrote just now. */
final class OutFiles {
    private final List<Path> read = new ArrayList<>();
    private final List<Path> written = new ArrayList<>();

    /** Notes a file that is read. */
    void reads(Path file) {
        read.add(file);
    }

    /**
     * Writes files, each in one step; all stay as they are where one of them cannot be written.
     *
     * @throws UsageException when one is read or was written already, or cannot be written
     */
    void write(Map<Path, byte[]> contents) {
        for (Path file : contents.keySet()) {
            refuse(file, read, "is read by this command, and would be lost");
            refuse(file, written, "was written by this command just now, and would be lost");
        }
        try {
            SafeFiles.write(contents);
        } catch (FileSystemException e) {
            throw new UsageException(
                    Optional.ofNullable(e.getFile()).orElse("") + ": cannot be written: " + SafeFiles.reason(e));
        } catch (IOException e) {
            throw new UsageException(
                    contents.keySet().iterator().next() + ": cannot be written: " + SafeFiles.reason(e));
        }
        written.addAll(contents.keySet());
    }

    /** Writes text as UTF-8, as {@link #write(Map)} does. */
    void write(Path file, String text) {
        write(Map.of(file, text.getBytes(StandardCharsets.UTF_8)));
    }

    private static void refuse(Path file, List<Path> others, String why) {
        // What is no file, such as a terminal, holds nothing that could be lost.
        if (Files.isRegularFile(file) && others.stream().anyMatch(other -> same(file, other))) {
            throw new UsageException(file + ": " + why + ": name another file to write");
        }
    }

    /** Whether two paths lead to one file, or would if it were there. */
    static boolean same(Path a, Path b) {
        try {
            return Files.isSameFile(a, b);
        } catch (IOException e) {
            return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize());
        }
    }
}
