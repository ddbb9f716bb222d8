package coilwright.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Locale;

/**
 * Writes a file beside its place and then renames it, so that the place always holds the whole old file or the whole
 * new one, never a part.
 */
public final class SafeFiles {
    private SafeFiles() {}

    /**
     * Puts the bytes into the file. A link is followed, so that it stays a link; what is no regular file (a terminal, a
     * pipe) is written straight. Rights of an existing file are kept.
     *
     * @param file the file to write
     * @param bytes all that the file is to hold
     * @throws IOException when it cannot be written; {@link #reason} says why in words. The old file is then unharmed
     */
    public static void write(Path file, byte[] bytes) throws IOException {
        if (Files.isDirectory(file)) {
            throw new FileSystemException(file.toString(), null, "it is a folder");
        }
        Path target = Files.exists(file) ? file.toRealPath() : file;
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            Files.write(target, bytes);
            return;
        }
        if (Files.exists(target) && !Files.isWritable(target)) {
            throw new AccessDeniedException(file.toString());
        }
        Path folder = target.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new NoSuchFileException(file.toString(), null, "there is no folder " + folder);
        }
        Path beside = null;
        try {
            beside = create(folder, target.getFileName().toString());
            fill(beside, bytes);
            keepRights(target, beside);
            move(beside, target);
            beside = null;
        } finally {
            if (beside != null) {
                Files.deleteIfExists(beside);
            }
        }
    }

    /**
     * Puts text into the file as UTF-8, as {@link #write(Path, byte[])} does.
     *
     * @param file the file to write
     * @param text all that the file is to hold
     * @throws IOException when it cannot be written; the old file is then unharmed
     */
    public static void write(Path file, String text) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * {@return why reading or writing failed, in words for a person}
     *
     * @param e what went wrong
     */
    public static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "a file of that name is in the way";
        }
        if (e instanceof NotDirectoryException) {
            return "a part of the path is not a folder";
        }
        if (e instanceof FileSystemException f) {
            return f.getReason() != null ? f.getReason() : "there is no such file or folder";
        }
        String message = e.getMessage();
        return message == null || message.isBlank()
                ? e.getClass().getSimpleName()
                : message.substring(0, 1).toLowerCase(Locale.ROOT) + message.substring(1);
    }

    private static Path create(Path folder, String name) throws IOException {
        for (int i = 0; ; i++) {
            Path candidate = folder.resolve(
                    "." + name + "." + Long.toString(ProcessHandle.current().pid(), 36) + "-" + i + ".part");
            try {
                return Files.createFile(candidate);
            } catch (FileAlreadyExistsException e) {
                if (i == 99) {
                    throw e;
                }
            }
        }
    }

    private static void fill(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            channel.force(true);
        }
    }

    private static void keepRights(Path target, Path beside) throws IOException {
        PosixFileAttributeView old = Files.getFileAttributeView(target, PosixFileAttributeView.class);
        if (old != null && Files.exists(target)) {
            Files.setPosixFilePermissions(beside, old.readAttributes().permissions());
        }
    }

    private static void move(Path beside, Path target) throws IOException {
        try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
