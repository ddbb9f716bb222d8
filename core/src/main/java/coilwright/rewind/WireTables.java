package coilwright.rewind;

import java.util.List;

/** The table that wire sizes and their coverings share. */
final class WireTables {
    private static final Psv METRIC = Psv.load("wire-metric.psv");

    private WireTables() {}

    /** Metric sizes from the thinnest, with the largest overall diameter of each grade. */
    static List<Psv.Row> metric() {
        return METRIC.rows();
    }
}
