package coilwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A browser without a window, led through its debugging port; one page of it. */
final class Browser implements AutoCloseable {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final long PATIENCE = 60;

    private final Process process;
    private final WebSocket socket;
    private final BlockingQueue<JsonNode> incoming = new LinkedBlockingQueue<>();
    private final List<JsonNode> events = new ArrayList<>();
    private String session = "";
    private int last;

    /** Where it is installed; empty where it is not. */
    static Optional<Path> installed() {
        return Stream.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Starts one with an empty profile, and opens a page with scripts, requests and the console watched. */
    Browser(Path program, Path profile) throws Exception {
        process = new ProcessBuilder(
                        program.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--disable-dev-shm-usage",
                        "--hide-scrollbars",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + profile,
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(profile.resolve("output.txt").toFile())
                .start();
        Path port = profile.resolve("DevToolsActivePort");
        for (int i = 0;
                i < 600 && (!Files.exists(port) || Files.readAllLines(port).size() < 2);
                i++) {
            if (!process.isAlive()) {
                throw new IOException(Files.readString(profile.resolve("output.txt")));
            }
            Thread.sleep(50);
        }
        List<String> lines = Files.readAllLines(port);
        socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(URI.create("ws://127.0.0.1:" + lines.get(0) + lines.get(1)), new Listener())
                .get(PATIENCE, TimeUnit.SECONDS);
        String target = send("Target.createTarget", Map.of("url", "about:blank"))
                .get("targetId")
                .asText();
        session = send("Target.attachToTarget", Map.of("targetId", target, "flatten", true))
                .get("sessionId")
                .asText();
        for (String domain : List.of("Page", "Runtime", "Log", "Network")) {
            send(domain + ".enable", Map.of());
        }
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean whole) {
            text.append(data);
            if (whole) {
                try {
                    incoming.add(MAPPER.readTree(text.toString()));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
                text.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    JsonNode send(String method, Map<String, ?> params) throws Exception {
        ObjectNode message = MAPPER.createObjectNode().put("id", ++last).put("method", method);
        message.set("params", MAPPER.valueToTree(params));
        if (!session.isEmpty()) {
            message.put("sessionId", session);
        }
        socket.sendText(message.toString(), true).get(PATIENCE, TimeUnit.SECONDS);
        while (true) {
            JsonNode got = next();
            if (got.path("id").asInt() == last) {
                if (got.has("error")) {
                    throw new IOException(method + ": " + got.get("error"));
                }
                return got.get("result");
            }
            events.add(got);
        }
    }

    private JsonNode next() throws Exception {
        JsonNode got = incoming.poll(PATIENCE, TimeUnit.SECONDS);
        if (got == null) {
            throw new IOException("the browser does not answer");
        }
        return got;
    }

    private void await(String event) throws Exception {
        while (events.stream().noneMatch(e -> e.path("method").asText().equals(event))) {
            events.add(next());
        }
    }

    /** Sets the size of the window, px, and the colour scheme. */
    void window(int width, int height, String scheme) throws Exception {
        send(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", true));
        send(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    }

    /** Opens a file, forgetting what was seen before. */
    void open(Path page) throws Exception {
        events.clear();
        send("Page.navigate", Map.of("url", page.toUri().toString()));
        await("Page.loadEventFired");
    }

    /** The value of an expression in the page. */
    JsonNode value(String script) throws Exception {
        JsonNode got = send(
                "Runtime.evaluate",
                Map.of("expression", script, "returnByValue", true, "awaitPromise", true, "userGesture", true));
        if (got.has("exceptionDetails")) {
            throw new IOException(got.get("exceptionDetails").toString());
        }
        return got.get("result").path("value");
    }

    String text(String script) throws Exception {
        return value(script).asText();
    }

    /** A touch of a point of the window, px. */
    void tap(double x, double y) throws Exception {
        for (String type : List.of("mousePressed", "mouseReleased")) {
            send(
                    "Input.dispatchMouseEvent",
                    Map.of("type", type, "x", x, "y", y, "button", "left", "clickCount", 1, "buttons", 1));
        }
    }

    /** A touch of the middle of an element. */
    void tap(String selector) throws Exception {
        JsonNode at = value("(() => { const e = document.querySelector(" + quoted(selector) + ");"
                + " e.scrollIntoView({block: 'center'}); const b = e.getBoundingClientRect();"
                + " return [b.left + b.width / 2, b.top + b.height / 2]; })()");
        tap(at.get(0).asDouble(), at.get(1).asDouble());
    }

    /** Types into what has the focus. */
    void type(String words) throws Exception {
        send("Input.insertText", Map.of("text", words));
    }

    void key(String name) throws Exception {
        int code = name.equals("Enter") ? 13 : name.equals("Tab") ? 9 : 32;
        String text = name.equals("Enter") ? "\r" : name.equals("Tab") ? "" : " ";
        for (String type : List.of("keyDown", "keyUp")) {
            send(
                    "Input.dispatchKeyEvent",
                    Map.of(
                            "type",
                            type,
                            "key",
                            name,
                            "code",
                            name,
                            "windowsVirtualKeyCode",
                            code,
                            "text",
                            type.equals("keyDown") ? text : ""));
        }
    }

    static String quoted(String words) {
        try {
            return MAPPER.writeValueAsString(words);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the page asked for since it was opened. */
    List<String> requests() throws Exception {
        value("0");
        return events.stream()
                .filter(e -> e.path("method").asText().equals("Network.requestWillBeSent"))
                .map(e -> e.at("/params/request/url").asText())
                .toList();
    }

    /** What the page or the browser complained of since it was opened. */
    List<String> complaints() throws Exception {
        value("0");
        return events.stream()
                .filter(e -> List.of("Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded")
                        .contains(e.path("method").asText()))
                .map(JsonNode::toString)
                .toList();
    }

    byte[] pdf() throws Exception {
        return send("Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", false))
                .get("data")
                .binaryValue();
    }

    byte[] picture() throws Exception {
        return send("Page.captureScreenshot", Map.of("format", "png"))
                .get("data")
                .binaryValue();
    }

    /** Ends this browser alone. */
    @Override
    public void close() {
        session = "";
        try {
            send("Browser.close", Map.of());
            process.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (Exception e) {
            // It may be gone before it answers; what is left of it is ended below.
        }
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
    }
}
