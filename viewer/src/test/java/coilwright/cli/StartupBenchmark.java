package coilwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Measures how long {@code table} takes from start to end, as a ratio to a Java program that does nothing and to the
 * help screen from the same jar. Run after {@code mvn package}, from the root or from viewer:
 *
 * <pre>java viewer/src/test/java/coilwright/cli/StartupBenchmark.java</pre>
 */
public final class StartupBenchmark {
    private static final int ROUNDS = 21;

    private StartupBenchmark() {}

    public static void main(String[] args) throws Exception {
        Path root = Files.isDirectory(Path.of("samples")) ? Path.of("") : Path.of("..");
        Path jar = root.resolve("viewer/target/coilwright.jar");
        if (!Files.exists(jar)) {
            System.err.println(jar + " is missing: run mvn -q -DskipTests package first");
            System.exit(2);
        }
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String sample = root.resolve("samples/jobs/orchard-pump-dynamo.yaml").toString();
        Path folder = Files.createTempDirectory("startup");
        Path source = Files.writeString(
                folder.resolve("Empty.java"), "public class Empty { public static void main(String[] a) {} }\n");
        run(List.of(java + "c", "-d", folder.toString(), source.toString()));

        List<List<String>> commands = List.of(
                List.of(java, "-cp", folder.toString(), "Empty"),
                List.of(java, "-jar", jar.toString(), "--help"),
                List.of(java, "-jar", jar.toString(), "table", sample),
                List.of(java, "-jar", jar.toString(), "table", sample, "--format", "json"));
        double[][] times = new double[commands.size()][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            for (int c = 0; c < commands.size(); c++) {
                times[c][round] = run(commands.get(c));
            }
        }
        String[] names = {"empty program", "coilwright --help", "coilwright table", "coilwright table --format json"};
        double empty = median(times[0]);
        double help = median(times[1]);
        System.out.printf(Locale.ROOT, "%-32s %10s %12s %12s%n", "median of " + ROUNDS, "ms", "to empty", "to help");
        for (int c = 0; c < names.length; c++) {
            double t = median(times[c]);
            System.out.printf(Locale.ROOT, "%-32s %10.1f %12.2f %12.2f%n", names[c], t, t / empty, t / help);
        }
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
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
        return (System.nanoTime() - start) / 1e6;
    }
}
