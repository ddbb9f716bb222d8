package coilwright.benchmark;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * How long the packed program takes from start to end: against a Java program that does nothing, and against the bare
 * help screen of the library that reads its command line. The programs are run in turn.
 */
final class StartupTimes {
    private static final int ROUNDS = 15;
    private static final List<Integer> BARS = List.of(100, 200, 400);

    private static final String EMPTY = "public class Empty { public static void main(String[] args) {} }\n";
    private static final String BARE = """
            import picocli.CommandLine;

            @CommandLine.Command(name = "bare", mixinStandardHelpOptions = true, description = "Prints this help.")
            public class Bare implements Runnable {
                public static void main(String[] args) {
                    System.exit(new CommandLine(new Bare()).execute(args));
                }

                public void run() {}
            }
            """;

    private StartupTimes() {}

    /**
     * Measures.
     *
     * @param jar the packed program
     */
    static List<Compared> of(Path jar) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("startup");
        try {
            return measure(folder, jar.toAbsolutePath());
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    private static List<Compared> measure(Path folder, Path jar) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Path empty = Files.writeString(folder.resolve("Empty.java"), EMPTY, StandardCharsets.UTF_8);
        Path bare = Files.writeString(folder.resolve("Bare.java"), BARE, StandardCharsets.UTF_8);
        run(List.of(
                java + "c",
                "-proc:none",
                "-cp",
                jar.toString(),
                "-d",
                folder.toString(),
                empty.toString(),
                bare.toString()));

        List<List<String>> commands = new ArrayList<>();
        commands.add(List.of(java, "-cp", folder.toString(), "Empty"));
        commands.add(List.of(java, "-cp", folder + File.pathSeparator + jar, "Bare", "--help"));
        commands.add(List.of(java, "-jar", jar.toString(), "--help"));
        for (int bars : BARS) {
            Path job = Files.writeString(folder.resolve(bars + ".yaml"), job(bars), StandardCharsets.UTF_8);
            commands.add(List.of(java, "-jar", jar.toString(), "table", job.toString()));
        }
        double[][] nanos = new double[commands.size()][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            for (int c = 0; c < commands.size(); c++) {
                nanos[c][round] = run(commands.get(c));
            }
        }
        List<Measured> times = Arrays.stream(nanos).map(Measured::middle).toList();
        SortedMap<Integer, Measured> table = new TreeMap<>();
        SortedMap<Integer, Measured> floor = new TreeMap<>();
        for (int i = 0; i < BARS.size(); i++) {
            table.put(BARS.get(i), times.get(3 + i));
            floor.put(BARS.get(i), times.get(1));
        }
        String nothing = "an empty program";
        String help = "a bare help screen of picocli";
        return List.of(
                new Compared("a bare help screen of picocli", "", only(times.get(1)), nothing, only(times.get(0))),
                new Compared("coilwright --help", "", only(times.get(2)), help, only(times.get(1))),
                new Compared("coilwright table", "bars", table, help, floor));
    }

    private static SortedMap<Integer, Measured> only(Measured time) {
        return new TreeMap<>(Map.of(1, time));
    }

    private static String job(int bars) {
        return String.join(
                "\n",
                List.of(
                        "coilwright: 1",
                        "title: Start-up",
                        "armature: {slots: " + bars / 4 + ", bars: " + bars + ", poles: 4, slotOneInLineWith: bar}",
                        "winding: {type: lap, plex: 1, direction: progressive, turns: 1}",
                        ""));
    }

    private static double run(List<String> command) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        int code = process.waitFor();
        if (code != 0) {
            throw new IllegalStateException(command + " left with " + code);
        }
        return System.nanoTime() - start;
    }
}
