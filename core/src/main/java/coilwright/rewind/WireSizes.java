package coilwright.rewind;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The sizes of bare round wire in each system. */
public final class WireSizes {
    /** Millimetres in an inch, exact. */
    public static final double MM_PER_INCH = 25.4;

    /** Largest American size, 4/0, as the number −3. */
    public static final int LARGEST_AWG = -3;

    /** Smallest American size. */
    public static final int SMALLEST_AWG = 56;

    private static final Source AWG_SOURCE =
            new Source("ASTM B258, American wire gauge formula, as reported", "2002", Trust.READ);
    private static final Source METRIC_SOURCE =
            new Source("IEC 60317-0-1, nominal conductor diameters", "", Trust.FROM_MEMORY);
    private static final Source SWG_SOURCE = new Source("BS 3737, standard wire gauge", "1964", Trust.FROM_MEMORY);

    /** Each table is read where it is needed first, since a job file seldom needs more than one. */
    private static final class Metric {
        static final Map<String, WireSize> SIZES = new LinkedHashMap<>();

        static {
            for (Psv.Row row : WireTables.metric()) {
                String mm = row.text("mm");
                SIZES.put(mm, new WireSize(WireSystem.METRIC, mm, Double.parseDouble(mm), METRIC_SOURCE));
            }
        }

        private Metric() {}
    }

    private static final class Swg {
        static final Map<String, WireSize> SIZES = new LinkedHashMap<>();

        static {
            for (Psv.Row row : Psv.load("wire-swg.psv").rows()) {
                String gauge = row.text("gauge");
                SIZES.put(gauge, new WireSize(WireSystem.SWG, gauge, row.number("inches") * MM_PER_INCH, SWG_SOURCE));
            }
        }

        private Swg() {}
    }

    private static final Pattern LABEL = Pattern.compile("\\s*#?([0-9./]+)\\s*(awg|mm|swg)\\s*");

    private WireSizes() {}

    /**
     * {@return an American size: 0.005 in · 92^((36 − n)/39)}
     *
     * @param number n; 0, −1, −2, −3 for 1/0, 2/0, 3/0, 4/0
     * @throws IllegalArgumentException when it is outside {@value #LARGEST_AWG} to {@value #SMALLEST_AWG}
     */
    public static WireSize awg(int number) {
        if (number < LARGEST_AWG || number > SMALLEST_AWG) {
            throw new IllegalArgumentException("AWG " + number + " is outside the gauge: sizes run from 4/0 ("
                    + LARGEST_AWG + ") to " + SMALLEST_AWG);
        }
        String name = number > 0 ? Integer.toString(number) : (1 - number) + "/0";
        return new WireSize(WireSystem.AWG, name, awgInches(number) * MM_PER_INCH, AWG_SOURCE);
    }

    static double awgInches(double number) {
        return 0.005 * Math.pow(92, (36 - number) / 39);
    }

    /** The gauge number, not whole, whose formula gives a diameter. */
    static double awgNumberOf(double diameterMm) {
        return 36 - 39 * Math.log(diameterMm / MM_PER_INCH / 0.005) / Math.log(92);
    }

    static int awgNumber(String name) {
        return name.endsWith("/0")
                ? 1 - Integer.parseInt(name.substring(0, name.length() - 2))
                : Integer.parseInt(name);
    }

    /**
     * The rounding rule of ASTM B258 (as reported): to 0.1 mil, from size 45 on to 0.01 mil, and never to more than four
     * significant figures.
     */
    static double b258Rounded(double inches, int number) {
        return new BigDecimal(inches)
                .setScale(number <= 44 ? 4 : 5, RoundingMode.HALF_EVEN)
                .round(new MathContext(4, RoundingMode.HALF_EVEN))
                .doubleValue();
    }

    /**
     * {@return a size of standard wire gauge}
     *
     * @param name such as {@code 19} or {@code 7/0}
     * @throws IllegalArgumentException when there is no such size
     */
    public static WireSize swg(String name) {
        WireSize size = Swg.SIZES.get(name.equals("1/0") ? "0" : name);
        if (size == null) {
            throw new IllegalArgumentException("SWG " + name + " is no size of the gauge: sizes run from 7/0 to 50");
        }
        return size;
    }

    /**
     * {@return a metric size}
     *
     * @param millimetres nominal diameter, a preferred number of series R20 or R40
     * @throws IllegalArgumentException when it is none, naming the nearest
     */
    public static WireSize metric(double millimetres) {
        Require.positive("diameter", millimetres, "mm");
        WireSize size = Metric.SIZES.get(BigDecimal.valueOf(millimetres)
                .setScale(3, RoundingMode.HALF_UP)
                .toPlainString());
        if (size == null || Math.abs(size.bareDiameterMm() - millimetres) > 1e-6) {
            throw new IllegalArgumentException(Format.number(millimetres)
                    + " mm is not a preferred diameter of IEC 60317: the nearest is "
                    + nearest(WireSystem.METRIC, millimetres).label());
        }
        return size;
    }

    /**
     * {@return the size of a system whose diameter is nearest}
     *
     * @param system the system of sizes
     * @param diameterMm bare, mm
     */
    public static WireSize nearest(WireSystem system, double diameterMm) {
        Require.positive("diameter", diameterMm, "mm");
        return all(system).stream()
                .min(Comparator.comparingDouble(s -> Math.abs(Math.log(s.bareDiameterMm() / diameterMm))))
                .orElseThrow();
    }

    /**
     * {@return every size of a system, AWG and SWG from the thickest, metric from the thinnest}
     *
     * @param system the system of sizes
     */
    public static List<WireSize> all(WireSystem system) {
        return switch (system) {
            case AWG -> {
                List<WireSize> out = new ArrayList<>();
                for (int n = LARGEST_AWG; n <= SMALLEST_AWG; n++) {
                    out.add(awg(n));
                }
                yield List.copyOf(out);
            }
            case METRIC -> List.copyOf(Metric.SIZES.values());
            case SWG -> List.copyOf(Swg.SIZES.values());
        };
    }

    /**
     * {@return a size by its spoken name: {@code 18 AWG}, {@code 4/0 AWG}, {@code 0.85 mm}, {@code 19 SWG}}
     *
     * @param text number or diameter, and system
     * @throws IllegalArgumentException when it cannot be read or there is no such size
     */
    public static WireSize parse(String text) {
        Matcher m = LABEL.matcher(text.toLowerCase(Locale.ROOT));
        try {
            if (m.matches()) {
                return switch (m.group(2)) {
                    case "awg" -> awg(awgNumber(m.group(1)));
                    case "swg" -> swg(m.group(1));
                    default -> metric(Double.parseDouble(m.group(1)));
                };
            }
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(notRead(text), e);
        }
        throw new IllegalArgumentException(notRead(text));
    }

    private static String notRead(String text) {
        return "wire size \"" + text + "\" cannot be read: write a number and AWG, SWG or mm, such as \"18 AWG\", "
                + "\"19 SWG\" or \"0.85 mm\"";
    }
}
