package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The window opens from the app image that the profile {@code package} has made. */
class PackagedWindowIT {
    private static final String TITLE = "orchard-pump-dynamo.yaml – Coilwright";

    @Test
    void opens() throws Exception {
        assumeTrue(Display.missing().isEmpty(), () -> Display.missing().get());
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/xwininfo")), "no xwininfo here");
        String program = Path.of("target/dist/coilwright/bin/coilwright-window").toString();
        try (Display display = Display.open()) {
            var builder = new ProcessBuilder(program, "../samples/jobs/orchard-pump-dynamo.yaml")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD);
            builder.environment().put("DISPLAY", display.name());
            Process window = builder.start();
            try {
                String windows = "";
                for (int i = 0; i < 120 && window.isAlive() && !windows.contains(TITLE); i++) {
                    Thread.sleep(500);
                    windows = windows(display);
                }
                assertThat(windows).contains(TITLE).contains("coilwright-cli-Main");
            } finally {
                window.destroy();
                window.waitFor();
            }
        }
    }

    private static String windows(Display display) throws Exception {
        Process xwininfo = new ProcessBuilder("/usr/bin/xwininfo", "-display", display.name(), "-root", "-tree")
                .redirectErrorStream(true)
                .start();
        String tree = new String(xwininfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        xwininfo.waitFor();
        return tree;
    }
}
