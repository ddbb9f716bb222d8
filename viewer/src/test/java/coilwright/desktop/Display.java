package coilwright.desktop;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A display of its own for real windows, with a window manager, so that nothing shows on anyone's desk. */
final class Display implements AutoCloseable {
    private final Process server;
    private final Process manager;
    private final String name;

    private Display(Process server, Process manager, String name) {
        this.server = server;
        this.manager = manager;
        this.name = name;
    }

    /** Why there can be none; empty where there can. */
    static Optional<String> missing() {
        for (String program : new String[] {"Xvfb", "openbox"}) {
            boolean there = Arrays.stream(
                            System.getenv().getOrDefault("PATH", "").split(":"))
                    .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
            if (!there) {
                return Optional.of(program + " is not installed, so no real window can be tried");
            }
        }
        return Optional.empty();
    }

    static Display open() throws IOException, InterruptedException {
        Process server = new ProcessBuilder(
                        "Xvfb", "-displayfd", "1", "-screen", "0", "1600x1100x24", "-nolisten", "tcp")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        var out = new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.US_ASCII));
        String name = ":" + out.readLine();
        ProcessBuilder manager =
                new ProcessBuilder("openbox").redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD);
        manager.environment().put("DISPLAY", name);
        Process started = manager.start();
        Thread.sleep(300);
        return new Display(server, started, name);
    }

    String name() {
        return name;
    }

    @Override
    public void close() {
        try {
            manager.destroy();
            manager.waitFor(3, TimeUnit.SECONDS);
            server.destroy();
            server.waitFor(3, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
