package coilwright.sheet;

import coilwright.job.AsFound;
import coilwright.job.AsRewound;
import coilwright.job.CommutatorSizes;
import coilwright.job.Job;
import coilwright.job.Measured;
import coilwright.job.Particulars;
import coilwright.job.Quantity;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Copper;
import coilwright.rewind.Evenness;
import coilwright.rewind.Format;
import coilwright.rewind.InsulationTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Before and after side by side: as found, as worked out for what is to be wound, as rewound.
 *
 * @param found job as found
 * @param planned what is to be wound
 * @param before readings of the old winding
 * @param after readings of the new one
 */
record RecordComparison(Job found, Planned planned, RecordReadings before, RecordReadings after) {
    /**
     * What is to be wound, as far as it is known.
     *
     * @param turns per coil
     * @param wire in words; may be empty
     * @param proposed whether the wire is a proposal, the plan leaving it open
     * @param coil copper of one coil
     * @param copper of the armature
     */
    record Planned(
            OptionalInt turns,
            String wire,
            boolean proposed,
            Optional<CoilCopper> coil,
            Optional<ArmatureCopper> copper) {
        /** What is worked out for the winding, with the wire proposed where the plan leaves it open. */
        static Planned of(Job wound, Optional<RewindReport> report) {
            Optional<RewindReportState> state = report.map(
                    r -> r.change().flatMap(RewindReport.Change::after).orElse(r.found()));
            boolean proposed = report.flatMap(RewindReport::change)
                    .map(RewindReport.Change::proposed)
                    .orElse(false);
            return new Planned(
                    state.map(RewindReportState::turns).orElse(wound.turns()),
                    state.flatMap(s -> s.wire().map(Written::wire).or(s::label)).orElse("")
                            + (proposed ? " (proposed)" : ""),
                    proposed,
                    state.flatMap(RewindReportState::coil),
                    state.flatMap(RewindReportState::copper));
        }
    }

    private static final String NOT_NOTED = " (temperature not noted)";

    Table table() {
        Particulars p = found.particulars();
        Optional<AsRewound> wound = p.asRewound();
        Optional<Measured> old = p.asFound().flatMap(AsFound::measured);
        Optional<Measured> now = wound.flatMap(AsRewound::measured);
        List<List<String>> rows = new ArrayList<>();
        OptionalInt turns = wound.isEmpty()
                ? OptionalInt.empty()
                : wound.get().turns().isPresent() ? wound.get().turns() : planned.turns();
        rows.add(row(
                "Turns per coil",
                Written.of(found.turns()),
                Written.of(planned.turns()),
                Written.of(turns),
                found.turns().isPresent() && turns.isPresent()
                        ? change(found.turns().getAsInt(), turns.getAsInt())
                        : ""));
        rows.add(row(
                "Wire",
                p.wire().map(Written::wire).orElse(""),
                planned.wire(),
                wound.map(w -> w.wire().map(Written::wire).orElse(planned.proposed() ? "" : planned.wire()))
                        .orElse(""),
                ""));
        rows.add(resistance(
                "Resistance of a coil at 20 °C",
                found.coilResistance(),
                old,
                now,
                Measured::coilResistance,
                planned.coil().map(c -> Written.ohms(c.resistance(Job.COLD))).orElse("")));
        rows.add(resistance(
                "Brush to brush at 20 °C",
                Optional.empty(),
                old,
                now,
                Measured::brushToBrush,
                planned.copper()
                        .map(c -> Written.ohms(c.brushToBrush(Job.COLD)))
                        .orElse("")));
        insulation(rows, old, now);
        rows.add(row(
                "Bar-to-bar readings, furthest from their mean",
                even(before.evenness()),
                "",
                even(after.evenness()),
                ""));
        rows.add(row("Verdict of the readings", before.verdictWords(), "", after.verdictWords(), ""));
        rows.add(row(
                "Copper, bare",
                "",
                planned.copper()
                        .map(c -> Format.number(c.massKg() * 1000) + " g")
                        .orElse(""),
                Written.of(wound.flatMap(AsRewound::copper)),
                ""));
        rows.add(row(
                "Banding",
                p.asFound().flatMap(AsFound::banding).map(Written::banding).orElse(""),
                "",
                wound.flatMap(AsRewound::banding).map(Written::banding).orElse(""),
                ""));
        rows.add(row(
                "Commutator diameter",
                Written.of(p.commutator().flatMap(CommutatorSizes::diameter)),
                p.commutator()
                        .flatMap(CommutatorSizes::minimum)
                        .map(q -> "not under " + q)
                        .orElse(""),
                "",
                ""));
        return new Table(
                List.of(
                        new Table.Column("", 34, Table.Align.LEFT),
                        new Table.Column("As found", 34, Table.Align.LEFT),
                        new Table.Column("To be wound", 34, Table.Align.LEFT),
                        new Table.Column("As rewound", 34, Table.Align.LEFT),
                        new Table.Column("Change", 16, Table.Align.RIGHT)),
                rows,
                1);
    }

    /** A resistance measured before and after, each brought to 20 °C. */
    private static List<String> resistance(
            String name,
            Optional<Quantity> noted,
            Optional<Measured> old,
            Optional<Measured> now,
            Function<Measured, Optional<Quantity>> which,
            String expected) {
        Optional<Quantity> was = old.flatMap(which);
        Optional<Quantity> is = now.flatMap(which);
        String change = "";
        if (is.isPresent() && (was.isPresent() || noted.isPresent())) {
            double before =
                    was.map(q -> at20(q, old.get())).orElseGet(() -> noted.get().in("ohm"));
            change = change(before, at20(is.get(), now.get()));
        }
        return row(
                name,
                was.map(q -> cold(q, old.get())).orElse(Written.of(noted)),
                expected,
                is.map(q -> cold(q, now.get())).orElse(""),
                change);
    }

    private static double at20(Quantity q, Measured m) {
        return q.in("ohm") * Copper.resistanceFactor(m.celsius(), Job.COLD);
    }

    private static String cold(Quantity q, Measured m) {
        return m.temperature().isEmpty() ? q + NOT_NOTED : Written.resistanceAt(q, m.celsius(), Job.COLD);
    }

    private static void insulation(List<List<String>> rows, Optional<Measured> old, Optional<Measured> now) {
        Optional<InsulationTest> was = old.flatMap(Measured::insulationTest);
        Optional<InsulationTest> is = now.flatMap(Measured::insulationTest);
        rows.add(row("Insulation resistance at 40 °C, 1 min", megohms(was, old), "", megohms(is, now), ""));
        rows.add(row("Polarization index", index(was), "", index(is), ""));
    }

    private static String megohms(Optional<InsulationTest> test, Optional<Measured> m) {
        return test.map(t -> Format.number(t.correctedMohm()) + " Mohm"
                        + (m.get().temperature().isEmpty() ? NOT_NOTED : ""))
                .orElse("");
    }

    private static String index(Optional<InsulationTest> test) {
        return test.filter(t -> t.polarizationIndex().isPresent())
                .map(t -> Format.number(t.polarizationIndex().getAsDouble()))
                .orElse("");
    }

    private static String even(Optional<Evenness> evenness) {
        return evenness.map(e -> "+" + percent(e.highest()) + ", −" + percent(e.lowest()))
                .orElse("");
    }

    private static String percent(double p) {
        return String.format(Locale.ROOT, "%.1f %%", p);
    }

    /** Change from one value to another in percent; none where it rounds to nothing. */
    private static String change(double from, double to) {
        double share = (to / from - 1) * 100;
        String shown = percent(Math.abs(share));
        return shown.equals("0.0 %") ? "none" : (share < 0 ? "−" : "+") + shown;
    }

    private static List<String> row(String name, String found, String planned, String rewound, String change) {
        return List.of(name, found, planned, rewound, change);
    }
}
