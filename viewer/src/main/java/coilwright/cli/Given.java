package coilwright.cli;

import coilwright.bench.BenchTest;
import coilwright.job.Quantity;
import coilwright.job.Visible;
import coilwright.rewind.InsulationBuild;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads values of options; what is wrong with one is a {@link UsageException}. */
final class Given {
    private static final Pattern PAIR = Pattern.compile("\\s*(\\d{1,9}|shaft)\\s*[,-]\\s*(\\d{1,9}|shaft)\\s*");
    private static final Pattern PLAIN = Pattern.compile("[+-]?\\d{1,12}(\\.\\d{1,20})?([eE][+-]?\\d{1,2})?");

    private Given() {}

    /** Two bars such as {@code 1,9}. */
    static BenchTest.Pair bars(String option, String text, int most) {
        BenchTest.Pair pair = pair(option, text, most);
        if (pair.from() == BenchTest.SHAFT || pair.to() == BenchTest.SHAFT) {
            throw new UsageException(option + " is \"" + Visible.cut(text) + "\", but must be two bars such as 1,2");
        }
        return pair;
    }

    /** Two bars, or a bar and the shaft. */
    static BenchTest.Pair pair(String option, String text, int most) {
        Matcher m = PAIR.matcher(text);
        if (!m.matches()) {
            throw new UsageException(option + " is \"" + Visible.cut(text) + "\", but must be two bars such as 1,2");
        }
        int from = bar(option, m.group(1), most);
        int to = bar(option, m.group(2), most);
        if (from == to) {
            throw new UsageException(option + " is \"" + Visible.cut(text) + "\": name two different bars");
        }
        return new BenchTest.Pair(from, to);
    }

    private static int bar(String option, String text, int most) {
        if (text.equals("shaft")) {
            return BenchTest.SHAFT;
        }
        int bar = Integer.parseInt(text);
        if (bar < 1 || bar > most) {
            throw new UsageException(option + " names bar " + bar + ", but bars run from 1 to " + most);
        }
        return bar;
    }

    /** A number in the first unit of its kind, or with a unit of its own. */
    static double amount(String option, String text, Quantity.Kind kind, String base) {
        if (PLAIN.matcher(text.strip()).matches()) {
            return Double.parseDouble(text.strip());
        }
        try {
            return Quantity.parse(text, kind).in(base);
        } catch (IllegalArgumentException e) {
            throw new UsageException(option + " " + e.getMessage());
        }
    }

    /** A number with its unit. */
    static Quantity quantity(String option, String text, Quantity.Kind kind) {
        try {
            return Quantity.parse(text, kind);
        } catch (IllegalArgumentException e) {
            throw new UsageException(option + " " + e.getMessage());
        }
    }

    /** A quantity over 0, in the first unit of its kind where it has none of its own. */
    static Quantity positive(String option, String text, Quantity.Kind kind) {
        String given = text.strip();
        Quantity quantity;
        try {
            quantity = Quantity.parse(
                    given.matches("[+-]?\\d+(\\.\\d+)?")
                            ? given + " " + kind.units().get(0)
                            : given,
                    kind);
        } catch (IllegalArgumentException e) {
            throw new UsageException(option + " " + e.getMessage());
        }
        if (quantity.value().signum() <= 0) {
            throw new UsageException(option + " is " + quantity + ", but must be over 0");
        }
        return quantity;
    }

    /** The one that a word names. */
    static <T> T oneOf(String option, String word, List<T> all, Function<T, String> words) {
        return all.stream()
                .filter(t -> words.apply(t).equals(word))
                .findFirst()
                .orElseThrow(() -> new UsageException(option + " is \"" + Visible.cut(word) + "\", but must be one of "
                        + String.join(", ", all.stream().map(words).toList())));
    }

    /** What is worked out from options; where one of them is out of range, that is a mistake in usage. */
    static <T> T valid(Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
    }

    static OptionalInt whole(Optional<Integer> value) {
        return value.isPresent() ? OptionalInt.of(value.get()) : OptionalInt.empty();
    }

    static OptionalDouble number(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    /** The words for coverings, for completion. */
    static final class Builds extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Builds() {
            super(Arrays.stream(InsulationBuild.values()).map(Given::word).toList());
        }
    }

    /** The word that job files use for a covering. */
    static String word(InsulationBuild build) {
        return build.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** A covering, such as {@code nema-heavy}. */
    static InsulationBuild build(String text) {
        return oneOf("--insulation", text, List.of(InsulationBuild.values()), Given::word);
    }

    /** A share in percent, such as {@code 5%}. */
    static double share(String option, String text) {
        String digits = text.strip();
        if (!digits.matches("\\d{1,3}(\\.\\d{1,9})? ?%")) {
            throw new UsageException(option + " is \"" + Visible.cut(text) + "\", but must be a share such as 5%");
        }
        double percent = Double.parseDouble(digits.replace("%", "").strip());
        if (percent > 100) {
            throw new UsageException(option + " is " + text + ", but may be at most 100%");
        }
        return percent / 100;
    }
}
