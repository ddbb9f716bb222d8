package coilwright.drawing;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.drawing.Shape.Anchor;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Readings over the pairs of bars in the order of the walk: an empty bar for what a sound winding should read, a dot
 * for what was read, a cross for what a supposed fault explains. Long walks run over several strips.
 */
public final class ReadingsChart {
    private static final double LEFT = 24;
    private static final double RIGHT = 287;
    private static final double LEAST_WIDTH = 3.25;
    private static final double MOST_WIDTH = 16;
    private static final int STRIPS_ON_A_PAGE = 5;
    private static final double TOP = 37;
    private static final double BOTTOM = 202;
    private static final double LABELS = 8;

    private final Data data;
    private final Palette palette;
    private final Map<BenchTest.Pair, Column> columns = new LinkedHashMap<>();
    private final double low;
    private final double high;
    private final double step;

    /**
     * What a chart shows.
     *
     * @param title one line
     * @param unit of all values, as in "mV"
     * @param signed whether a pair read the other way round has the other sign
     * @param expected what a sound winding reads, in the order of the walk; infinite where nothing joins the two
     * @param read what was read; any pairs, with gaps and repeats
     * @param explained what a supposed fault explains
     */
    public record Data(
            String title,
            String unit,
            boolean signed,
            List<PairReading> expected,
            List<PairReading> read,
            List<PairReading> explained) {
        /**
         * Copies the lists.
         *
         * @param title one line
         * @param unit of all values, as in "mV"
         * @param signed whether a pair read the other way round has the other sign
         * @param expected what a sound winding reads, in the order of the walk; infinite where nothing joins the two
         * @param read what was read; any pairs, with gaps and repeats
         * @param explained what a supposed fault explains
         * @throws IllegalArgumentException when there is nothing to show or a value is no number
         */
        public Data {
            expected = List.copyOf(expected);
            read = List.copyOf(read);
            explained = List.copyOf(explained);
            if (expected.isEmpty() && read.isEmpty() && explained.isEmpty()) {
                throw new IllegalArgumentException("a chart has no readings, but needs one");
            }
            for (List<PairReading> list : List.of(expected, read, explained)) {
                for (PairReading r : list) {
                    if (Double.isNaN(r.value())) {
                        throw new IllegalArgumentException(
                                "the reading on bars " + r.from() + " and " + r.to() + " is no number");
                    }
                }
            }
        }

        /**
         * {@return expected readings alone}
         *
         * @param title one line
         * @param unit of the values
         * @param signed whether their sign means something
         * @param expected what a sound winding reads, in order
         */
        public static Data of(String title, String unit, boolean signed, List<PairReading> expected) {
            return new Data(title, unit, signed, expected, List.of(), List.of());
        }
    }

    private static final class Column {
        private final List<Double> expected = new ArrayList<>();
        private final List<Double> read = new ArrayList<>();
        private final List<Double> explained = new ArrayList<>();
    }

    private ReadingsChart(Data data, Palette palette) {
        this.data = data;
        this.palette = palette;
        data.expected().forEach(r -> expectedColumn(r).expected.add(r.value()));
        data.read().forEach(r -> column(r).read.add(value(r)));
        data.explained().forEach(r -> column(r).explained.add(value(r)));
        double least = 0;
        double most = 0;
        for (Column c : columns.values()) {
            for (List<Double> list : List.of(c.expected, c.read, c.explained)) {
                for (double v : list) {
                    if (Double.isFinite(v)) {
                        least = Math.min(least, v);
                        most = Math.max(most, v);
                    }
                }
            }
        }
        double range = most - least > 0 ? most - least : 1;
        this.step = niceStep(range / 4);
        this.low = -Math.ceil(-least / step - 1e-9) * step;
        this.high = Math.max(Math.ceil(most / step - 1e-9), low < 0 ? 0 : 1) * step;
    }

    /**
     * {@return the chart on A4 pages, long side across}
     *
     * @param data what it shows
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages pages(Data data, Palette palette) {
        return new DrawingPages(new ReadingsChart(data, palette).draw());
    }

    static double niceStep(double raw) {
        double tens = Math.pow(10, Math.floor(Math.log10(raw)));
        double m = raw / tens;
        return tens * (m <= 1 + 1e-9 ? 1 : m <= 2 + 1e-9 ? 2 : m <= 5 + 1e-9 ? 5 : 10);
    }

    private Column expectedColumn(PairReading r) {
        return columns.computeIfAbsent(r.pair(), x -> new Column());
    }

    private Column column(PairReading r) {
        Column turned = columns.get(new BenchTest.Pair(r.to(), r.from()));
        Column same = columns.get(r.pair());
        return same == null && turned != null ? turned : expectedColumn(r);
    }

    private double value(PairReading r) {
        boolean turned = !columns.containsKey(r.pair()) && columns.containsKey(new BenchTest.Pair(r.to(), r.from()));
        return turned && data.signed() ? 0 - r.value() : r.value();
    }

    private List<Drawing> draw() {
        List<BenchTest.Pair> pairs = List.copyOf(columns.keySet());
        int most = (int) Math.floor((RIGHT - LEFT) / LEAST_WIDTH);
        int strips = (pairs.size() + most - 1) / most;
        int perStrip = (pairs.size() + strips - 1) / strips;
        int pages = (strips + STRIPS_ON_A_PAGE - 1) / STRIPS_ON_A_PAGE;
        int onPage = (strips + pages - 1) / pages;
        double width = Math.min(MOST_WIDTH, (RIGHT - LEFT) / perStrip);
        double height = Math.min(120, (BOTTOM - TOP) / onPage);
        List<Drawing> out = new ArrayList<>();
        for (int page = 0; page < pages; page++) {
            var canvas = new Canvas();
            canvas.heading(
                    data.title(),
                    "Readings over the pairs of bars, in the order of the walk (" + data.unit() + ")",
                    pages == 1 ? "" : "page " + (page + 1) + " of " + pages,
                    Canvas.LONG);
            legend(canvas);
            for (int i = 0; i < onPage; i++) {
                int from = (page * onPage + i) * perStrip;
                if (from < pairs.size()) {
                    List<BenchTest.Pair> some = pairs.subList(from, Math.min(pairs.size(), from + perStrip));
                    strip(canvas, some, TOP + i * height, height - LABELS, width);
                }
            }
            out.add(canvas.page(data.title(), description(), Canvas.LONG, Canvas.SHORT, palette));
        }
        return out;
    }

    private String description() {
        return "Chart of readings in " + data.unit() + " over " + columns.size()
                + " pairs of bars in the order of the walk.";
    }

    private void legend(Canvas canvas) {
        double x = LEFT;
        double y = 30.5;
        if (!data.expected().isEmpty()) {
            canvas.rect(x, y - 2.4, 3, 3, Role.EXPECTED);
            x = words(canvas, x + 4.6, y, "expected of a sound winding");
        }
        if (!data.read().isEmpty()) {
            canvas.add(new Shape.Circle(new Point(x + 1.5, y - 0.9), 0.9, List.of(Role.READ)));
            x = words(canvas, x + 4.6, y, "read");
        }
        if (!data.explained().isEmpty()) {
            cross(x + 1.5, y - 0.9, 1.1).forEach(canvas::add);
            words(canvas, x + 4.6, y, "explained by the fault");
        }
    }

    private static double words(Canvas canvas, double x, double y, String words) {
        canvas.text(x, y, words, 2.6, Anchor.START, Role.LEGEND);
        return x + TextWidths.em(words, false) * 2.6 + 7;
    }

    private static List<Shape> cross(double x, double y, double r) {
        return List.of(
                new Shape.Line(new Point(x - r, y - r), new Point(x + r, y + r), List.of(Role.EXPLAINED)),
                new Shape.Line(new Point(x - r, y + r), new Point(x + r, y - r), List.of(Role.EXPLAINED)));
    }

    private void strip(Canvas canvas, List<BenchTest.Pair> pairs, double top, double height, double width) {
        double head = 4;
        double scale = (height - head) / (high - low);
        double zero = top + head + high * scale;
        double right = LEFT + width * pairs.size();
        int ticks = (int) Math.round((high - low) / step);
        int every = Math.max(1, (int) Math.ceil(3.4 * ticks / (height - head)));
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        for (int i = 0; i <= ticks; i++) {
            double v = low + i * step;
            double y = zero - v * scale;
            long fromZero = Math.round(v / step);
            canvas.line(LEFT, y, right, y, fromZero == 0 ? Role.AXIS : Role.GRID);
            if (fromZero % every == 0) {
                String s = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(v));
                canvas.text(LEFT - 1.5, y + 0.8, (fromZero < 0 ? "−" : "") + s, Canvas.SMALL, Anchor.END, Role.LABEL);
            }
        }
        canvas.line(LEFT, top + head, LEFT, top + height, Role.AXIS);
        canvas.text(LEFT, top + 2.6, data.unit(), Canvas.SMALL, Anchor.END, Role.LABEL);
        var occupied = new Occupied();
        for (int i = 0; i < pairs.size(); i++) {
            BenchTest.Pair p = pairs.get(i);
            double x = LEFT + width * (i + 0.5);
            column(canvas, p, x, width, zero, scale, top + 2.6);
            Shape.Text t =
                    Canvas.text(x, top + height + 4.2, p.dashed(), Canvas.SMALL, false, Anchor.MIDDLE, Role.LABEL);
            if (occupied.take(t.bounds().grown(0.5))) {
                canvas.line(x, top + height, x, top + height + 1.2, Role.AXIS);
                canvas.add(t);
            }
        }
    }

    private void column(
            Canvas canvas, BenchTest.Pair pair, double x, double width, double zero, double scale, double offScale) {
        Column c = columns.get(pair);
        List<Shape> parts = new ArrayList<>();
        List<String> words = new ArrayList<>();
        boolean off = false;
        double half = Math.min(4, width * 0.36);
        for (double v : c.expected) {
            words.add("expected " + number(v));
            off |= Double.isInfinite(v);
            if (Double.isFinite(v)) {
                double y = zero - v * scale;
                parts.add(new Shape.Rect(
                        x - half, Math.min(y, zero), 2 * half, Math.abs(y - zero), 0, List.of(Role.EXPECTED)));
            }
        }
        for (double v : c.read) {
            words.add("read " + number(v));
            off |= Double.isInfinite(v);
            if (Double.isFinite(v)) {
                parts.add(new Shape.Circle(new Point(x, zero - v * scale), Math.min(0.9, half), List.of(Role.READ)));
            }
        }
        for (double v : c.explained) {
            words.add("explained " + number(v));
            off |= Double.isInfinite(v);
            if (Double.isFinite(v)) {
                parts.addAll(cross(x, zero - v * scale, Math.min(1.1, half)));
            }
        }
        if (off) {
            parts.add(Canvas.text(x, offScale, "∞", Canvas.SMALL, false, Anchor.MIDDLE, Role.LABEL));
        }
        canvas.add(new Shape.Group(
                Optional.empty(),
                pair.from() > 0 ? Optional.of(Element.bar(pair.from())) : Optional.empty(),
                "Bars " + pair.dashed() + ": " + String.join(", ", words) + " " + data.unit(),
                List.of(),
                parts));
    }

    private static String number(double v) {
        if (Double.isInfinite(v)) {
            return "open";
        }
        return String.format(Locale.ROOT, "%.4g", v);
    }
}
