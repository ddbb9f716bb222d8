package coilwright.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Works out again the sums that are printed in lines of words, wherever both sides of an equals sign are numbers. */
final class Sums {
    private static final String UNIT = "mm²|mΩ|mm|Ω|m|%|A|mV|kg|°|coils|layers|coil sides?|turns|in hand|slots?";
    private static final String TERM = "(?:[\\d.]+|[-−+×/()²π]|cos|\\s|(?:" + UNIT + ")(?![\\w²]))";
    private static final Pattern BEFORE = Pattern.compile("(?<![A-Za-z\\d.])(" + TERM + "+)$");
    private static final Pattern AFTER = Pattern.compile("^(" + TERM + "+)");

    private Sums() {}

    /** A sum as printed, and what its two sides come to. */
    record Sum(String text, double left, double right) {
        /** Whether the sides agree to five figures, a unit's thousand or hundred aside. */
        boolean right(double slack) {
            for (double scale : new double[] {1, 1000, 0.001, 100}) {
                if (Math.abs(left * scale - right) <= slack * Math.max(Math.abs(right), Math.abs(left * scale))) {
                    return true;
                }
            }
            return Math.abs(left - right) <= lastFigure();
        }

        /** Half of the last place printed. */
        private double lastFigure() {
            Matcher m = Pattern.compile("\\.(\\d+)[^\\d.]*$").matcher(text);
            return m.find() ? 0.51 * Math.pow(10, -m.group(1).length()) : 1e-9;
        }
    }

    static List<Sum> in(String line) {
        List<Sum> out = new ArrayList<>();
        for (int at = line.indexOf(" = "); at >= 0; at = line.indexOf(" = ", at + 1)) {
            String before = line.substring(0, at);
            // A chain of equals signs compares neighbours.
            Matcher left =
                    BEFORE.matcher(before.substring(before.lastIndexOf(" = ") < 0 ? 0 : before.lastIndexOf(" = ") + 3));
            Matcher right = AFTER.matcher(line.substring(at + 3));
            // What begins with an operator has a letter before it.
            if (left.find() && right.find() && !left.group(1).matches("\\s*(?:[-−+×/]\\s|[)²]).*")) {
                Optional<Double> a = value(left.group(1));
                Optional<Double> b = value(right.group(1));
                if (a.isPresent() && b.isPresent()) {
                    out.add(new Sum(
                            left.group(1).strip() + " = " + right.group(1).strip(), a.get(), b.get()));
                }
            }
        }
        return out;
    }

    /** What an expression comes to; empty where it is none. */
    static Optional<Double> value(String text) {
        String plain = text.replaceAll("°", "").replaceAll("(?<![a-z])(?:" + UNIT + ")(?![\\w²])", " ");
        var reader = new Reader(plain.replace('−', '-').replaceAll("\\s", ""));
        try {
            double v = reader.sum();
            return reader.at == reader.text.length() ? Optional.of(v) : Optional.empty();
        } catch (IndexOutOfBoundsException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static final class Reader {
        private final String text;
        private int at;

        Reader(String text) {
            this.text = text;
        }

        private boolean next(String s) {
            if (text.startsWith(s, at)) {
                at += s.length();
                return true;
            }
            return false;
        }

        double sum() {
            double v = product();
            while (true) {
                if (next("+")) {
                    v += product();
                } else if (next("-")) {
                    v -= product();
                } else {
                    return v;
                }
            }
        }

        private double product() {
            double v = factor();
            while (true) {
                if (next("×")) {
                    v *= factor();
                } else if (next("/")) {
                    v /= factor();
                } else {
                    return v;
                }
            }
        }

        private double factor() {
            if (next("-")) {
                return -factor();
            }
            if (next("cos")) {
                return Math.cos(Math.toRadians(factor()));
            }
            double v;
            if (next("(")) {
                v = sum();
                if (!next(")")) {
                    throw new NumberFormatException();
                }
            } else if (next("π")) {
                v = Math.PI;
            } else {
                int start = at;
                while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
                    at++;
                }
                v = Double.parseDouble(text.substring(start, at));
            }
            return next("²") ? v * v : v;
        }
    }
}
