package coilwright.rewind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How thickly a round wire is covered.
 *
 * <p>The overall diameters are the largest that the standard allows, so that what fits by them fits.
 */
public enum InsulationBuild {
    /** No covering. */
    BARE("bare"),
    /** IEC 60317 grade 1, the thinnest enamel. */
    IEC_GRADE_1("grade 1"),
    /** IEC 60317 grade 2. */
    IEC_GRADE_2("grade 2"),
    /** IEC 60317 grade 3, the thickest enamel. */
    IEC_GRADE_3("grade 3"),
    /** NEMA MW 1000 single build, 14 to 40 AWG. */
    NEMA_SINGLE("single build"),
    /** NEMA MW 1000 heavy build, 6 to 40 AWG. */
    NEMA_HEAVY("heavy build"),
    /** NEMA MW 1000 triple build, 14 to 30 AWG. */
    NEMA_TRIPLE("triple build"),
    /** Two layers of fine cotton, as on armatures of the 1920s. */
    DOUBLE_COTTON("double cotton");

    private final String word;

    InsulationBuild(String word) {
        this.word = word;
    }

    /** {@return the word printed beside a wire} */
    public String word() {
        return word;
    }

    /**
     * Largest overall diameter of a covered wire.
     *
     * @param diameterMm mm
     * @param source where it comes from
     */
    public record Overall(double diameterMm, Source source) {}

    private record Iec(double bare, List<Optional<Double>> largest) {}

    private record Nema(
            Optional<Double> singleIncrease,
            Optional<Double> singleLargest,
            double heavyIncrease,
            Optional<Double> heavyLargest) {}

    private static final class IecTable {
        static final List<Iec> ROWS = new ArrayList<>();

        static {
            for (Psv.Row row : WireTables.metric()) {
                if (row.text("series").equals("R20")) {
                    ROWS.add(new Iec(
                            row.number("mm"),
                            List.of(number(row, "grade1"), number(row, "grade2"), number(row, "grade3"))));
                }
            }
        }

        private IecTable() {}
    }

    private static final class NemaTable {
        static final Map<Integer, Nema> ROWS = new LinkedHashMap<>();

        static {
            for (Psv.Row row : Psv.load("wire-nema.psv").rows()) {
                ROWS.put(
                        (int) row.number("awg"),
                        new Nema(
                                number(row, "single-increase"),
                                number(row, "single-max"),
                                row.number("heavy-increase"),
                                number(row, "heavy-max")));
            }
        }

        private NemaTable() {}
    }

    private static Optional<Double> number(Psv.Row row, String column) {
        Optional<String> text = row.maybe(column);
        return text.isPresent() ? Optional.of(Double.parseDouble(text.get())) : Optional.empty();
    }

    private static final String IEC_TITLE = "IEC 60317-0-1, largest overall diameters";
    private static final String NEMA_TITLE =
            "Centelsa, Magnet Wire catalogue, p. 10, round magnet wires to NEMA MW 1000";

    /**
     * {@return largest overall diameter of a size in this build; empty where the build is not made or not known for it}
     *
     * <p>IEC grades: the table for R20 sizes; for every other diameter the bare diameter and the increase of the next
     * larger R20 size. NEMA builds: for single, and for heavy to 9 AWG, the table; else the bare diameter, the least
     * increase and an allowance for tolerances fitted to the table (1.6 mil at 6 AWG falling to 0.4 mil at 36). The
     * least increase of triple build is 10^(0.980 − n/44.8) mil, of the form of an annex of NEMA MW 1000 (from memory),
     * which gives the table's single and heavy increases with 0.518 and 0.818 to 0.1 mil, 14 to 30 AWG. Double cotton:
     * 0.010 in at most, Rolls-Royce experimental archive, armature make-up, 22 March 1920.
     *
     * @param size the bare size
     */
    public Optional<Overall> overall(WireSize size) {
        return switch (this) {
            case BARE -> Optional.of(new Overall(size.bareDiameterMm(), size.source()));
            case IEC_GRADE_1 -> iec(size, 0);
            case IEC_GRADE_2 -> iec(size, 1);
            case IEC_GRADE_3 -> iec(size, 2);
            case NEMA_SINGLE, NEMA_HEAVY, NEMA_TRIPLE -> nema(size);
            case DOUBLE_COTTON ->
                Optional.of(new Overall(
                        size.bareDiameterMm() + 0.010 * WireSizes.MM_PER_INCH,
                        new Source(
                                "Rolls-Royce experimental archive, armature make-up: fine double cotton adds not more"
                                        + " than 0.010 in",
                                "22 March 1920",
                                Trust.READ)));
        };
    }

    private static Optional<Overall> iec(WireSize size, int grade) {
        double bare = size.bareDiameterMm();
        if (bare < IecTable.ROWS.get(0).bare() - 1e-9) {
            return Optional.empty();
        }
        for (Iec row : IecTable.ROWS) {
            if (row.bare() >= bare - 1e-9) {
                boolean own = Math.abs(row.bare() - bare) < 1e-6;
                Optional<Double> largest = row.largest().get(grade);
                return largest.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Overall(
                                bare + largest.get() - row.bare(),
                                new Source(IEC_TITLE, "", own ? Trust.FROM_MEMORY : Trust.DERIVED)));
            }
        }
        return Optional.empty();
    }

    private Optional<Overall> nema(WireSize size) {
        if (size.system() != WireSystem.AWG) {
            return Optional.empty();
        }
        int n = WireSizes.awgNumber(size.name());
        Nema row = NemaTable.ROWS.get(n);
        boolean made = row != null
                && (this == NEMA_HEAVY
                        || (this == NEMA_SINGLE && row.singleIncrease().isPresent())
                        || (this == NEMA_TRIPLE && n >= 14 && n <= 30));
        if (!made) {
            return Optional.empty();
        }
        Optional<Double> printed = switch (this) {
            case NEMA_SINGLE -> row.singleLargest();
            case NEMA_HEAVY -> row.heavyLargest();
            default -> Optional.empty();
        };
        if (printed.isPresent()) {
            return Optional.of(new Overall(mils(printed.get()), new Source(NEMA_TITLE, "", Trust.READ)));
        }
        double increase = this == NEMA_HEAVY ? row.heavyIncrease() : Math.pow(10, 0.980 - n / 44.8);
        return Optional.of(new Overall(
                size.bareDiameterMm() + mils(increase + tolerance(n)),
                new Source(
                        this == NEMA_HEAVY ? NEMA_TITLE : "NEMA MW 1000, formula for the least increase",
                        "",
                        Trust.FITTED)));
    }

    /** Largest overall less nominal bare less least increase, mil, drawn through the printed rows. */
    private static double tolerance(int n) {
        int[] at = {6, 9, 14, 18, 20, 24, 30, 36, 44};
        double[] mil = {1.6, 1.3, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3};
        int i = 1;
        while (n > at[i]) {
            i++;
        }
        return mil[i - 1] + (mil[i] - mil[i - 1]) * (n - at[i - 1]) / (at[i] - at[i - 1]);
    }

    private static double mils(double mil) {
        return mil * WireSizes.MM_PER_INCH / 1000;
    }
}
