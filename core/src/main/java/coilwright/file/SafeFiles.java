package coilwright.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a file beside its place and then renames it, so that the place always holds the whole old file or the whole
 * new one, never a part, whenever the program is killed, the disk is full or the power goes.
 *
 * <p>A link is followed, so that it stays a link and what it points to is written, be it there or not. What is no
 * regular file (a terminal, a pipe) is written straight. Rights, owner and group of an existing file are kept as far as
 * the system lets them be set; where the group cannot be kept, its rights become those of others. Other hard links to
 * the file keep the old version.
 *
 * <p>A program that is killed may leave its unfinished file, {@code .NAME.….part}, behind; the next to write the same
 * file takes it away.
 *
 * <p>What is thrown is a {@link FileSystemException} that names the file as it was given, and the reason, as {@link
 * #reason} tells it. The old file is then unharmed.
 */
public final class SafeFiles {
    /** As many as the system itself follows. */
    private static final int MOST_LINKS = 40;

    private SafeFiles() {}

    /**
     * Puts the bytes into the file.
     *
     * @param file the file to write
     * @param bytes all that the file is to hold
     * @throws IOException when it cannot be written
     */
    public static void write(Path file, byte[] bytes) throws IOException {
        write(Map.of(file, bytes));
    }

    /**
     * Puts text into the file as UTF-8.
     *
     * @param file the file to write
     * @param text all that the file is to hold
     * @throws IOException when it cannot be written
     */
    public static void write(Path file, String text) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes several files; where one of them cannot be written, all stay as they are.
     *
     * @param contents by file
     * @throws IOException when one cannot be written
     */
    public static void write(Map<Path, byte[]> contents) throws IOException {
        List<StagedFile> all = new ArrayList<>();
        try {
            for (Map.Entry<Path, byte[]> entry : contents.entrySet()) {
                Path file = entry.getKey();
                byte[] bytes = entry.getValue();
                if (isStream(file)) {
                    naming(file, () -> Files.write(file, bytes, StandardOpenOption.WRITE, StandardOpenOption.APPEND));
                } else {
                    naming(file, () -> all.add(StagedFile.of(file, target(file), bytes)));
                }
            }
            for (StagedFile staged : all) {
                naming(staged.file(), staged::putInPlace);
            }
        } finally {
            all.forEach(StagedFile::drop);
        }
    }

    /**
     * Puts text into a new file as UTF-8, unless there is one already, made at this very moment even.
     *
     * @param file where it lies
     * @param text all that the file is to hold
     * @throws FileAlreadyExistsException when there is one
     * @throws IOException when it cannot be written
     */
    public static void create(Path file, String text) throws IOException {
        naming(file, () -> {
            StagedFile staged = StagedFile.of(file, target(file), text.getBytes(StandardCharsets.UTF_8));
            try {
                staged.putInNewPlace();
            } finally {
                staged.drop();
            }
        });
    }

    /**
     * {@return why reading or writing failed, in words for a person}
     *
     * @param e what went wrong
     */
    public static String reason(IOException e) {
        if (e instanceof FileAlreadyExistsException) {
            return "a file of that name is in the way";
        }
        if (e instanceof NotDirectoryException) {
            return "a part of the path is not a folder";
        }
        if (e instanceof FileSystemLoopException) {
            return "its links lead round in a circle";
        }
        if (e instanceof FileSystemException f) {
            return f.getReason() != null
                    ? small(f.getReason())
                    : e instanceof AccessDeniedException ? "permission denied" : "there is no such file or folder";
        }
        String message = e.getMessage();
        return message == null || message.isBlank() ? e.getClass().getSimpleName() : small(message);
    }

    private static String small(String message) {
        return message.substring(0, 1).toLowerCase(Locale.ROOT) + message.substring(1);
    }

    /** What may fail. */
    private interface Step {
        void run() throws IOException;
    }

    /** Lets what fails name the file as it was given, and its reason. */
    private static void naming(Path file, Step step) throws IOException {
        try {
            step.run();
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException e) {
            var named = new FileSystemException(file.toString(), null, reason(e));
            named.initCause(e);
            throw named;
        }
    }

    /** Whether it is a pipe, a terminal or the like, or a file that a process has open already. */
    private static boolean isStream(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            return false;
        }
        return Files.exists(file) && (!Files.isRegularFile(file) || leadsToDescriptor(file));
    }

    /** A shell that sends an answer into a file hands it over as such a link; to replace the file would cut it off. */
    private static boolean leadsToDescriptor(Path file) throws IOException {
        Path at = file;
        for (int i = 0; i < MOST_LINKS && Files.isSymbolicLink(at); i++) {
            Path folder = at.toAbsolutePath().getParent();
            if (folder.startsWith("/dev/fd") || (folder.startsWith("/proc") && folder.endsWith("fd"))) {
                return true;
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        return false;
    }

    private static Path target(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new FileSystemException(file.toString(), null, "it is a folder: name a file in it");
        }
        Path at = file;
        for (int i = 0; Files.isSymbolicLink(at); i++) {
            if (i == MOST_LINKS) {
                throw new FileSystemLoopException(file.toString());
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        Path folder = at.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new FileSystemException(
                    file.toString(), null, "there is no folder " + folder + ": make it, or name another");
        }
        if (Files.exists(at) && !Files.isWritable(at)) {
            throw new FileSystemException(
                    file.toString(), null, "it may not be written to: allow that, or name another file");
        }
        return at;
    }

    /** Sees to it that a change of names in a folder outlasts a power cut, where the system can be asked to. */
    static void settle(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Not every system opens a folder; there the file system itself sees to it, or nobody can.
            return;
        }
    }
}
