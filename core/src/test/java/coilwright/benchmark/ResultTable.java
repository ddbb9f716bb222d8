package coilwright.benchmark;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Results as one table in plain text, one line a size. */
final class ResultTable {
    private static final List<String> HEAD = List.of("measured", "size", "time", "against", "time", "ratio", "growth");
    /** Numbers are set to the right. */
    private static final List<Boolean> RIGHT = List.of(false, true, true, false, true, true, true);

    private ResultTable() {}

    /** The table, ending in a line break. */
    static String text(List<Compared> results) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEAD);
        for (Compared c : results) {
            int largest = c.times().lastKey();
            c.times()
                    .forEach((size, time) -> rows.add(List.of(
                            c.what(),
                            c.unit().isEmpty() ? "-" : size + " " + c.unit(),
                            time(time),
                            c.against(),
                            time(c.floor().get(size)),
                            ratio(c.ratio(size)),
                            size != largest || c.growth().isEmpty()
                                    ? ""
                                    : fixed(c.growth().getAsDouble()))));
        }
        int[] widths = new int[HEAD.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        var out = new StringBuilder();
        for (List<String> row : rows) {
            var line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String pad = " ".repeat(widths[i] - row.get(i).length());
                line.append(i == 0 ? "" : "  ").append(RIGHT.get(i) ? pad + row.get(i) : row.get(i) + pad);
            }
            out.append(line.toString().stripTrailing()).append('\n');
        }
        return out.toString();
    }

    /** Three figures that count, without an exponent. */
    private static String ratio(double value) {
        return new BigDecimal(value).round(new MathContext(3)).toPlainString();
    }

    private static String time(Measured time) {
        double unit = 1;
        String name = "ns";
        if (time.nanos() >= 1e9) {
            unit = 1e9;
            name = " s";
        } else if (time.nanos() >= 1e6) {
            unit = 1e6;
            name = "ms";
        } else if (time.nanos() >= 1e3) {
            unit = 1e3;
            name = "us";
        }
        return fixed(time.nanos() / unit) + " +- " + fixed(time.error() / unit) + " " + name;
    }

    private static String fixed(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
