package coilwright.drawing;

import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import coilwright.drawing.Shape.Anchor;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The run-out of a commutator over its bars: heights as read about their mean, the circle off centre that fits them
 * best, the bars that need a look, and where a truing cut is planned, the path of the tool and every bar after it. Many
 * bars run over several strips.
 */
public final class TraceChart {
    private static final double LEFT = 26;
    private static final double RIGHT = 287;
    private static final double LEAST_WIDTH = 1.3;
    private static final double MOST_WIDTH = 26;
    private static final double TOP = 48;
    private static final double BOTTOM = 202;
    private static final double NUMBERS = 5;
    private static final double HEAD = 5;
    private static final int STRIPS_ON_A_PAGE = 3;

    private final Data data;
    private final RunOut runOut;
    private final Palette palette;
    private final Map<Integer, RunOut.Bar> read = new LinkedHashMap<>();
    private final Set<Integer> standouts = new TreeSet<>();
    private final boolean centred;
    private final double mean;
    private final double low;
    private final double high;
    private final double step;

    /**
     * What a chart shows.
     *
     * @param title one line
     * @param runOut readings
     * @param cut planned from the same readings; empty where none is
     */
    public record Data(String title, RunOut runOut, Optional<TruingCut> cut) {}

    private TraceChart(Data data, boolean centred, Palette palette) {
        this.data = data;
        this.runOut = data.runOut();
        this.palette = palette;
        runOut.list().forEach(b -> read.put(b.bar(), b));
        this.centred = centred;
        this.mean = centred
                ? runOut.meanMm()
                : runOut.list().stream()
                        .mapToDouble(RunOut.Bar::heightMm)
                        .average()
                        .orElseThrow();
        if (centred) {
            runOut.standouts().forEach(b -> standouts.add(b.bar()));
        }
        // The circle swings by the eccentricity either way, between the bars too.
        double swing = centred ? 1000 * runOut.eccentricityMm() : 0;
        double least = -swing;
        double most = swing;
        for (RunOut.Bar b : runOut.list()) {
            least = Math.min(least, height(b));
            most = Math.max(most, height(b));
        }
        Optional<Double> tool = tool(1).map(v -> v - (recentred() ? fit(1) + swing : 0));
        least = Math.min(least, tool.orElse(least));
        double range = Math.max(most - least, 1);
        this.step = ReadingsChart.niceStep(range / 5);
        this.low = Math.floor(least / step + 1e-9) * step;
        this.high = Math.max(Math.ceil(most / step - 1e-9) * step, low + step);
    }

    /**
     * {@return the chart on A4 pages, long side across}
     *
     * @param data what it shows
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages pages(Data data, Palette palette) {
        return new DrawingPages(new TraceChart(data, true, palette).draw());
    }

    /**
     * {@return the chart while the reading is under way and the centre is not to be told yet: heights about the mean of
     * those read, no fitted circle, no bar that stands out of it}
     *
     * @param title one line
     * @param runOut readings so far
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages begun(String title, RunOut runOut, Palette palette) {
        return new DrawingPages(new TraceChart(new Data(title, runOut, Optional.empty()), false, palette).draw());
    }

    /** Height over the mean as read, µm. */
    private double height(RunOut.Bar b) {
        return 1000 * (b.heightMm() - mean);
    }

    /** The circle off centre over the mean, µm; a bar may be a fraction. */
    private double fit(double bar) {
        double degrees = (bar - 1) * 360 / runOut.bars() - runOut.highSideDegrees();
        return 1000 * runOut.eccentricityMm() * Math.cos(Math.toRadians(degrees));
    }

    /** The tool's path over the mean, µm: a circle about the axis it was read on, or about its own centre. */
    private Optional<Double> tool(double bar) {
        return data.cut().map(c -> {
            RunOut.Bar top = runOut.highest(recentred());
            double touch = recentred() ? 1000 * top.residualMm() : height(top);
            return touch - 1000 * c.depthMm() + (recentred() ? fit(bar) : 0);
        });
    }

    private boolean recentred() {
        return data.cut()
                .filter(c -> c.centring() == TruingCut.Centring.RECENTRED)
                .isPresent();
    }

    private List<Drawing> draw() {
        int bars = runOut.bars();
        int most = (int) Math.floor((RIGHT - LEFT) / LEAST_WIDTH);
        int strips = (bars + most - 1) / most;
        int perStrip = (bars + strips - 1) / strips;
        int pages = (strips + STRIPS_ON_A_PAGE - 1) / STRIPS_ON_A_PAGE;
        int onPage = (strips + pages - 1) / pages;
        double width = Math.min(MOST_WIDTH, (RIGHT - LEFT) / perStrip);
        double height = (BOTTOM - TOP) / onPage;
        List<Drawing> out = new ArrayList<>();
        String title = data.title().isEmpty() ? "Commutator run-out" : data.title();
        for (int page = 0; page < pages; page++) {
            var canvas = new Canvas();
            canvas.heading(
                    title,
                    "Height of the bars about their mean, µm (0.001 mm)"
                            + (pages == 1 ? "" : ", page " + (page + 1) + " of " + pages),
                    figures(),
                    Canvas.LONG);
            data.cut()
                    .ifPresent(c -> canvas.text(
                            Canvas.BORDER,
                            29.4,
                            TextWidths.fit(cutWords(c), 2.9, false, Canvas.LONG - 2 * Canvas.BORDER),
                            2.9,
                            Anchor.START,
                            Role.NOTE));
            legend(canvas);
            for (int i = 0; i < onPage; i++) {
                int from = 1 + (page * onPage + i) * perStrip;
                if (from <= bars) {
                    strip(canvas, from, Math.min(bars, from + perStrip - 1), TOP + i * height, height - NUMBERS, width);
                }
            }
            out.add(canvas.page(
                    title,
                    "Chart of the run-out of a commutator of " + bars + " bars. " + figures() + ".",
                    Canvas.LONG,
                    Canvas.SHORT,
                    palette));
        }
        return out;
    }

    private String figures() {
        if (!centred) {
            return "run-out " + mm(runOut.tirMm()) + " so far; " + notRead();
        }
        return "run-out " + mm(runOut.tirMm()) + " as read, " + mm(runOut.residualTirMm())
                + " without the eccentricity of " + mm(runOut.eccentricityMm())
                + (runOut.eccentricityMm() > 5e-4 ? " (high side near bar " + runOut.highSideBar() + ")" : "")
                + (runOut.missing().isEmpty() ? "" : "; " + notRead());
    }

    private String notRead() {
        int n = runOut.missing().size();
        return n + (n == 1 ? " bar" : " bars") + " not read";
    }

    private static String cutWords(TruingCut c) {
        return "running " + (c.centring() == TruingCut.Centring.RECENTRED ? "true to itself" : "as it was read") + ": "
                + c.text();
    }

    private static String mm(double x) {
        return String.format(Locale.ROOT, "%.3f mm", x);
    }

    private void legend(Canvas canvas) {
        double y = data.cut().isPresent() ? 35 : 31;
        double x = LEFT;
        canvas.line(x, y - 0.9, x + 8, y - 0.9, Role.TRACE);
        canvas.add(new Shape.Circle(new Point(x + 4, y - 0.9), 0.8, List.of(Role.READ)));
        x = words(canvas, x + 10, y, "as read");
        canvas.line(x, y - 0.9, x + 8, y - 0.9, Role.AXIS);
        x = words(canvas, x + 10, y, centred ? "mean circle (0)" : "mean of the bars read (0)");
        if (centred) {
            canvas.line(x, y - 0.9, x + 8, y - 0.9, Role.FIT);
            x = words(canvas, x + 10, y, "fitted circle off centre");
        }
        if (data.cut().isPresent()) {
            canvas.line(x, y - 0.9, x + 8, y - 0.9, Role.TOOL);
            canvas.add(new Shape.Circle(new Point(x + 4, y - 0.9), 0.8, List.of(Role.AFTER)));
            words(canvas, x + 10, y, "depth of cut, bars after it");
        }
        y += 4.4;
        x = LEFT;
        canvas.add(triangle(x + 1.5, y - 0.9, -1));
        x = words(canvas, x + 4.6, y, "highest bar");
        canvas.add(triangle(x + 1.5, y - 0.9, 1));
        x = words(canvas, x + 4.6, y, "lowest bar");
        if (centred) {
            canvas.add(square(x + 1.5, y - 0.9));
            words(canvas, x + 4.6, y, "does not go with the others: read it again, look for a lifted bar");
        }
    }

    private static double words(Canvas canvas, double x, double y, String words) {
        canvas.text(x, y, words, 2.6, Anchor.START, Role.LEGEND);
        return x + TextWidths.em(words, false) * 2.6 + 6;
    }

    /** A small triangle that points up (−1) or down (1). */
    private static Shape triangle(double x, double y, int down) {
        return new Shape.Polyline(
                List.of(
                        new Point(x, y + 1.1 * down),
                        new Point(x - 1.2, y - 0.9 * down),
                        new Point(x + 1.2, y - 0.9 * down)),
                true,
                List.of(Role.STANDOUT));
    }

    private static Shape square(double x, double y) {
        return new Shape.Rect(x - 1.2, y - 1.2, 2.4, 2.4, 0, List.of(Role.STANDOUT));
    }

    private void strip(Canvas canvas, int from, int to, double top, double height, double width) {
        double scale = (height - 2 * HEAD) / (high - low);
        double zero = top + HEAD + high * scale;
        double right = LEFT + width * (to - from + 1);
        int ticks = (int) Math.round((high - low) / step);
        int every = Math.max(1, (int) Math.ceil(3.4 * ticks / (height - 2 * HEAD)));
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        for (int i = 0; i <= ticks; i++) {
            double v = low + i * step;
            double y = zero - v * scale;
            long fromZero = Math.round(v / step);
            canvas.line(LEFT, y, right, y, fromZero == 0 ? Role.AXIS : Role.GRID);
            if (Math.floorMod(fromZero, every) == 0) {
                String s = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(v));
                String sign = fromZero < 0 ? "−" : fromZero > 0 ? "+" : "";
                canvas.text(LEFT - 1.5, y + 0.8, sign + s, Canvas.SMALL, Anchor.END, Role.LABEL);
            }
        }
        canvas.line(LEFT, top + HEAD, LEFT, top + height - HEAD, Role.AXIS);
        canvas.text(LEFT, top + 2.4, "µm", Canvas.SMALL, Anchor.END, Role.LABEL);
        double base = top + height - HEAD;
        canvas.text(LEFT - 3, base + 4.4, "bar", Canvas.SMALL, Anchor.END, Role.LABEL);
        numbers(canvas, from, to, base, width);
        if (centred) {
            curve(canvas, from, to, width, zero, scale);
        }
        bars(canvas, from, to, width, zero, scale, top);
    }

    private static double x(int from, double bar, double width) {
        return LEFT + width * (bar - from + 0.5);
    }

    private static void numbers(Canvas canvas, int from, int to, double base, double width) {
        double room = TextWidths.em("0".repeat(Integer.toString(to).length()), false) * Canvas.SMALL + 1;
        int every = 1;
        for (int n : new int[] {500, 200, 100, 50, 20, 10, 5, 2, 1}) {
            every = n * width >= room ? n : every;
        }
        double last = Double.NEGATIVE_INFINITY;
        for (int bar = from; bar <= to; bar++) {
            double at = x(from, bar, width);
            if ((bar == from || bar % every == 0) && at - last >= room) {
                canvas.line(at, base, at, base + 1.2, Role.AXIS);
                canvas.text(at, base + 4.4, Integer.toString(bar), Canvas.SMALL, Anchor.MIDDLE, Role.LABEL);
                last = at;
            }
        }
    }

    private void curve(Canvas canvas, int from, int to, double width, double zero, double scale) {
        List<Point> fit = new ArrayList<>();
        List<Point> tool = new ArrayList<>();
        int n = Math.max(40, 2 * (to - from + 1));
        for (int i = 0; i <= n; i++) {
            double bar = from - 0.5 + (to - from + 1.0) * i / n;
            double at = x(from, bar, width);
            fit.add(new Point(at, zero - fit(bar) * scale));
            tool(bar).ifPresent(v -> tool.add(new Point(at, zero - v * scale)));
        }
        canvas.add(new Shape.Polyline(fit, false, List.of(Role.FIT)));
        if (!tool.isEmpty()) {
            canvas.add(new Shape.Polyline(tool, false, List.of(Role.TOOL)));
        }
    }

    private void bars(Canvas canvas, int from, int to, double width, double zero, double scale, double top) {
        int highest = runOut.highest(recentred()).bar();
        int lowest = runOut.lowest(recentred()).bar();
        List<Point> run = new ArrayList<>();
        for (int bar = from; bar <= to + 1; bar++) {
            if (bar <= to && read.containsKey(bar)) {
                run.add(new Point(x(from, bar, width), zero - height(read.get(bar)) * scale));
            } else {
                if (run.size() > 1) {
                    canvas.add(new Shape.Polyline(run, false, List.of(Role.TRACE)));
                }
                run.clear();
            }
        }
        double dot = Math.min(0.8, Math.max(0.35, width * 0.3));
        var occupied = new Occupied();
        List<Integer> order = new ArrayList<>();
        for (int bar = from; bar <= to; bar++) {
            if (!read.containsKey(bar)) {
                continue;
            }
            double at = x(from, bar, width);
            double y = zero - height(read.get(bar)) * scale;
            List<Shape> parts = new ArrayList<>();
            tool(bar)
                    .ifPresent(v ->
                            parts.add(new Shape.Circle(new Point(at, zero - v * scale), dot, List.of(Role.AFTER))));
            parts.add(new Shape.Circle(new Point(at, y), dot, List.of(Role.READ)));
            if (standouts.contains(bar)) {
                parts.add(square(at, y));
            }
            if (bar == highest) {
                parts.add(triangle(at, y - 2.6, -1));
            }
            if (bar == lowest) {
                parts.add(triangle(at, y + 2.6, 1));
            }
            canvas.add(new Shape.Group(
                    Optional.of("trace-" + Element.bar(bar).id()),
                    Optional.of(Element.bar(bar)),
                    "Bar " + bar + ": " + micrometres(height(read.get(bar))) + " about the mean"
                            + (centred
                                    ? ", " + micrometres(1000 * read.get(bar).residualMm()) + " off the fitted circle"
                                    : ""),
                    List.of(),
                    parts));
            if (bar == highest || bar == lowest) {
                order.add(0, bar);
            } else if (standouts.contains(bar)) {
                order.add(bar);
            }
        }
        Box within = new Box(LEFT, top, Canvas.LONG - 2, zero - low * scale + 2.2);
        for (int bar : order) {
            double at = x(from, bar, width);
            double y = zero - height(read.get(bar)) * scale;
            List<Point> places = new ArrayList<>();
            for (double away : new double[] {3.4, 5.6, 8, 11}) {
                places.add(new Point(at, y + (bar == lowest ? 1.9 : -1.9) + (bar == lowest ? away : -away)));
                places.add(new Point(at + away + 1, y));
                places.add(new Point(at - away - 1, y));
                places.add(new Point(at, y - away));
                places.add(new Point(at, y + away));
            }
            canvas.plate(places, Integer.toString(bar), 2.6, occupied, within::holds, Role.STANDOUT);
        }
        data.cut().ifPresent(c -> depth(canvas, from, to, width, zero, scale, highest, occupied, within));
    }

    /** The infeed from first touch on the highest bar to the tool's path under it. */
    private void depth(
            Canvas canvas,
            int from,
            int to,
            double width,
            double zero,
            double scale,
            int highest,
            Occupied occupied,
            Box within) {
        if (highest < from || highest > to) {
            return;
        }
        double at = x(from, highest, width);
        double y1 = zero - height(read.get(highest)) * scale;
        double y2 = zero - tool(highest).orElseThrow() * scale;
        canvas.line(at, y1, at, y2, Role.DIMENSION);
        List<Point> places = new ArrayList<>();
        String words = "cut " + mm(data.cut().orElseThrow().depthMm());
        double half = TextWidths.em(words, true) * 2.6 / 2;
        for (double t : new double[] {0.5, 0.7, 0.3, 0.85, 0.15}) {
            places.add(new Point(at + half + 1.5, y1 + (y2 - y1) * t));
            places.add(new Point(at - half - 1.5, y1 + (y2 - y1) * t));
        }
        canvas.plate(places, words, 2.6, occupied, within::holds, Role.LABEL);
    }

    private static String micrometres(double v) {
        String s = String.format(Locale.ROOT, "%.1f", Math.abs(v));
        return (s.equals("0.0") ? "" : v < 0 ? "−" : "+") + s + " µm";
    }
}
