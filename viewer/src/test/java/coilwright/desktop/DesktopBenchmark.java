package coilwright.desktop;

import coilwright.job.JobText;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;

/**
 * How quick the window is; to be run on a quiet machine with a display, from the folder of the project. Prints, for the
 * developed drawing of 400 bars, how long it takes from the pointer's move to the painted highlight (a frame is 16 ms),
 * and how long a first window takes from the start of the program against an empty frame of the same look.
 */
final class DesktopBenchmark {
    private DesktopBenchmark() {}

    public static void main(String[] args) throws Exception {
        if (args.length > 0) {
            first(args[0]);
            return;
        }
        hover();
        double[] empty = middle("empty");
        double[] small = middle("samples/jobs/orchard-pump-dynamo.yaml");
        double[] large = middle("samples/jobs/mountain-railway-motor.yaml");
        System.out.printf(
                "first window: empty frame %.0f ms; 17 bars %.0f ms, %.1f times; 400 bars %.0f ms, %.1f times%n",
                empty[0], small[0], small[0] / empty[0], large[0], large[0] / empty[0]);
        System.out.printf(
                "  processor time of all threads: %.0f ms; %.0f ms, %.1f times; %.0f ms, %.1f times%n",
                empty[1], small[1], small[1] / empty[1], large[1], large[1] / empty[1]);
        System.exit(0);
    }

    private static void hover() throws Exception {
        Path file = Path.of("samples/jobs/mountain-railway-motor.yaml");
        MainWindow window = Desktop.window(
                Optional.of(file), JobText.read(file), new Settings(Files.createTempDirectory("settings")));
        DrawingPane pane = window.winding().drawing();
        while (!Hand.see(pane::isPainted)
                || Hand.see(() -> window.winding().ties()).isEmpty()) {
            Thread.sleep(50);
        }
        Hand.see(() -> {
            pane.fit();
            return true;
        });
        while (!Hand.see(pane::isPainted)) {
            Thread.sleep(50);
        }
        List<Double> millis = new ArrayList<>();
        List<Double> worked = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            int bar = 1 + i * 7 % 400;
            millis.add(Hand.see(() -> {
                Rectangle2D b = pane.scene()
                        .orElseThrow()
                        .boundsOf(coilwright.drawing.Element.bar(bar))
                        .orElseThrow();
                var at = pane.placeOf(b.getCenterX(), b.getCenterY()).orElseThrow();
                var threads = ManagementFactory.getThreadMXBean();
                long start = System.nanoTime();
                long work = threads.getCurrentThreadCpuTime();
                pane.dispatchEvent(
                        new MouseEvent(pane, MouseEvent.MOUSE_MOVED, 0, 0, at.x, at.y, 0, false, MouseEvent.NOBUTTON));
                pane.paintImmediately(0, 0, pane.getWidth(), pane.getHeight());
                worked.add((threads.getCurrentThreadCpuTime() - work) / 1e6);
                return (System.nanoTime() - start) / 1e6;
            }));
        }
        List<Double> warm = millis.subList(100, 400).stream().sorted().toList();
        System.out.printf(
                "hover on 400 bars: middle %.1f ms, 95 of 100 under %.1f ms, longest %.1f ms%n",
                warm.get(150), warm.get(285), warm.get(299));
        List<Double> own = worked.subList(100, 400).stream().sorted().toList();
        System.out.printf(
                "  of that the processor's own time: middle %.1f ms, 95 of 100 under %.1f ms, longest %.1f ms%n",
                own.get(150), own.get(285), own.get(299));
        SwingUtilities.invokeAndWait(() -> window.frame().dispose());
    }

    private static double[] middle(String what) throws IOException, InterruptedException {
        double[] millis = new double[3];
        double[] worked = new double[3];
        for (int i = 0; i < millis.length; i++) {
            Process p = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            DesktopBenchmark.class.getName(),
                            what)
                    .redirectErrorStream(true)
                    .start();
            String out = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
            p.waitFor();
            String[] numbers = out.substring(out.lastIndexOf('\n') + 1).split(" ");
            millis[i] = Double.parseDouble(numbers[0]);
            worked[i] = Double.parseDouble(numbers[1]);
        }
        Arrays.sort(millis);
        Arrays.sort(worked);
        return new double[] {millis[millis.length / 2], worked[worked.length / 2]};
    }

    /** Opens one window and prints the milliseconds from the start of the program until it is painted. */
    private static void first(String what) throws Exception {
        JFrame frame;
        if (what.equals("empty")) {
            var made = new JFrame[1];
            SwingUtilities.invokeAndWait(() -> {
                FlatLightLaf.setup();
                made[0] = new JFrame("Empty");
                made[0].setSize(1280, 800);
                made[0].setVisible(true);
            });
            frame = made[0];
        } else {
            Path file = Path.of(what);
            frame = Desktop.window(
                            Optional.of(file), JobText.read(file), new Settings(Files.createTempDirectory("settings")))
                    .frame();
        }
        while (!Hand.see(frame::isShowing)) {
            Thread.sleep(1);
        }
        SwingUtilities.invokeAndWait(() -> frame.getRootPane()
                .paintImmediately(
                        0,
                        0,
                        frame.getRootPane().getWidth(),
                        frame.getRootPane().getHeight()));
        long start = ManagementFactory.getRuntimeMXBean().getStartTime();
        long work = ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
        System.out.println((System.currentTimeMillis() - start) + " " + work / 1_000_000);
        System.exit(0);
    }
}
