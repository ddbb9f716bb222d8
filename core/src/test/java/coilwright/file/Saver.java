package coilwright.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Saves, to be run in a Java of its own. */
final class Saver {
    private Saver() {}

    public static void main(String[] args) throws IOException {
        if (args[0].equals("on")) {
            overAndOver(Path.of(args[1]), args[2]);
        }
        for (int i = 1; i < args.length; i++) {
            Map<Path, byte[]> contents = new LinkedHashMap<>();
            for (String pair : args[i].split(",")) {
                contents.put(
                        Path.of(pair.substring(0, pair.indexOf('='))),
                        version("new", Integer.parseInt(pair.substring(pair.indexOf('=') + 1)))
                                .getBytes(StandardCharsets.UTF_8));
            }
            try {
                SafeFiles.write(contents);
                System.out.println("written");
            } catch (IOException e) {
                System.out.println(SafeFiles.reason(e));
            }
            for (Path file : contents.keySet()) {
                if (Files.isRegularFile(file)) {
                    System.out.println(file.getFileName() + " " + whole(Files.readString(file)) + " "
                            + names(file.toAbsolutePath().getParent()));
                }
            }
        }
    }

    private static void overAndOver(Path file, String who) throws IOException {
        var random = new Random(who.hashCode());
        for (int n = 1; ; n++) {
            SafeFiles.write(file, version(who + "-" + n, random.nextInt(60_000)));
            if (n == 1) {
                System.out.write('.');
                System.out.flush();
            }
        }
    }

    /** What a file holds as a whole. */
    static String version(String name, int length) {
        return String.format(Locale.ROOT, "begin %s %d%n%s%nend %s", name, length, "x".repeat(length), name);
    }

    /** The name of the version that a text is the whole of, or what is wrong with it. */
    static String whole(String text) {
        String[] head = text.lines().findFirst().orElse("").split(" ");
        boolean whole = head.length == 3 && text.equals(version(head[1], Integer.parseInt(head[2])));
        return whole ? head[1] : "BROKEN after " + text.length() + " characters";
    }

    /** The names in a folder, those of unfinished files without their numbers. */
    static String names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString().replaceAll("[0-9a-z]+-[0-9]+(?=\\.part$)", "N"))
                    .sorted()
                    .collect(Collectors.joining(" ", "[", "]"));
        }
    }
}
