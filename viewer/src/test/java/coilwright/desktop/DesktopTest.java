package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Real windows on a display of their own, worked by keyboard and mouse; see {@link Scenarios}. */
class DesktopTest {
    @TempDir
    private static Path folder;

    /** A program with a display, on the class path of the tests, its coverage counted with theirs. */
    static List<String> java(List<String> arguments) {
        List<String> out = new ArrayList<>();
        out.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
                .filter(a -> a.startsWith("-javaagent:"))
                .forEach(out::add);
        out.addAll(List.of(
                "-Djava.awt.headless=false",
                "-XX:TieredStopAtLevel=1",
                "-Xmx700m",
                "-cp",
                System.getProperty("java.class.path")));
        out.addAll(arguments);
        return out;
    }

    @TestFactory
    Stream<DynamicTest> scenarios() throws Exception {
        Optional<String> missing = Display.missing();
        assumeTrue(missing.isEmpty(), missing.orElse(""));
        String output;
        try (Display display = Display.open()) {
            ProcessBuilder builder = new ProcessBuilder(java(List.of(
                            "coilwright.desktop.Scenarios",
                            Path.of("../samples/jobs").toAbsolutePath().toString(),
                            folder.toString())))
                    .redirectErrorStream(true);
            builder.environment().put("DISPLAY", display.name());
            Process process = builder.start();
            output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
        }
        List<DynamicTest> tests = new ArrayList<>();
        String whole = output;
        for (String line : output.split("\n")) {
            if (line.matches("(PASS|FAIL) .*")) {
                String name = line.substring(5).replaceAll(" \\d+$", "");
                tests.add(DynamicTest.dynamicTest(
                        name, () -> assertThat(line).as(whole).startsWith("PASS")));
            }
        }
        tests.add(DynamicTest.dynamicTest(
                "all were tried", () -> assertThat(tests).as(whole).hasSize(14)));
        return tests.stream();
    }

    @Test
    void withoutADisplaySaysSoAndLeavesWithTwo() throws Exception {
        ProcessBuilder builder = new ProcessBuilder(java(List.of("coilwright.cli.Main", "view")));
        builder.environment().remove("DISPLAY");
        Process process = builder.start();
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).isEqualTo(2);
        assertThat(err)
                .isEqualTo(
                        "coilwright: no window can be opened: there is no display here; the commands table, draw, probe"
                                + " and diagnose do the same without one\n");
    }
}
