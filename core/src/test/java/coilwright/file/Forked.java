package coilwright.file;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A Java of its own, small and quick to start, for what a test must not do to itself. */
public final class Forked {
    private Forked() {}

    /**
     * A class with a main method, run with words before the command that change the conditions.
     *
     * @param classes that name, by where they come from, the class path
     */
    public static ProcessBuilder java(List<String> before, Class<?> main, List<Class<?>> classes, String... args) {
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx64m", "-XX:-UsePerfData"));
        command.add("-cp");
        command.add(Stream.concat(Stream.of(main), classes.stream())
                .map(Forked::place)
                .distinct()
                .collect(Collectors.joining(File.pathSeparator)));
        command.add(main.getName());
        command.addAll(List.of(args));
        return new ProcessBuilder(command).redirectErrorStream(true);
    }

    private static String place(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** All that it says until it ends. */
    public static String says(ProcessBuilder process) throws IOException, InterruptedException {
        Process p = process.start();
        p.getOutputStream().close();
        String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        p.waitFor();
        return said;
    }

    /** Leaves the test out, and says what is missing, unless a command can be run and ends well. */
    public static void needs(String what, String... command) {
        Optional<String> trouble;
        try {
            Process p = new ProcessBuilder(command).redirectErrorStream(true).start();
            p.getOutputStream().close();
            String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            trouble = p.waitFor() == 0 ? Optional.empty() : Optional.of(said.strip());
        } catch (IOException e) {
            trouble = Optional.of(String.valueOf(e.getMessage()));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        assumeTrue(trouble.isEmpty(), "left out, for want of " + what + ": " + trouble.orElse(""));
    }
}
