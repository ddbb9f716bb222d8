package coilwright.sheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A part of a rewind report in words, for a page or a screen.
 *
 * @param part which part it is
 * @param planned whether it is of the winding as planned, not as found
 * @param title heading
 * @param facts names and values, in order
 * @param table under the facts
 * @param items lines under the table
 */
public record RewindReportSection(
        Part part,
        boolean planned,
        String title,
        Map<String, String> facts,
        Optional<Table> table,
        List<String> items) {
    /** Parts of a report. */
    public enum Part {
        /** The wire found. */
        WIRE,
        /** What could be wound in its place. */
        SUBSTITUTES,
        /** One coil. */
        COIL,
        /** The whole armature. */
        ARMATURE,
        /** The slot. */
        SLOT,
        /** Currents and voltages. */
        LOAD,
        /** What is planned, and what it does. */
        PLAN,
        /** Sizes made that come near the ideal wire. */
        PROPOSALS,
        /** What else the plan touches. */
        CAUTIONS,
        /** Other windings on the core. */
        OTHERS,
        /** What is not known. */
        MISSING
    }

    /**
     * Copies map and list.
     *
     * @param part which part it is
     * @param planned whether it is of the winding as planned, not as found
     * @param title heading
     * @param facts names and values, in order
     * @param table under the facts
     * @param items lines under the table
     */
    public RewindReportSection {
        facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        items = List.copyOf(items);
    }

    static RewindReportSection facts(Part part, boolean planned, String title, Map<String, String> facts) {
        return new RewindReportSection(part, planned, title, facts, Optional.empty(), List.of());
    }

    static RewindReportSection table(Part part, boolean planned, String title, Table table) {
        return new RewindReportSection(part, planned, title, Map.of(), Optional.of(table), List.of());
    }

    static RewindReportSection items(Part part, boolean planned, String title, List<String> items) {
        return new RewindReportSection(part, planned, title, Map.of(), Optional.empty(), items);
    }
}
