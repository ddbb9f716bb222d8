package coilwright.cli;

import coilwright.bench.GrowlerBlade;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.ProbePairs;
import coilwright.bench.Procedure;
import coilwright.job.TestKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Expected readings for a person. */
final class ProbeText {
    private static final int BAR_WIDTH = 40;
    private static final int MOST_BEST = 12;

    private ProbeText() {}

    static String of(Probe probe, boolean explain) {
        StringBuilder out = new StringBuilder();
        head(out, probe.job().title(), probe.procedure());
        if (explain) {
            section(out, "Steps", numbered(probe.procedure().steps()));
            section(out, "What a deviation means", probe.procedure().meaning());
        }
        if (!probe.faults().isEmpty()) {
            section(out, "Faults put in", probe.faults());
        }
        Scale scale = Scale.of(probe, probe.readings());
        out.append("\nExpected readings: ").append(probe.setUp()).append('\n');
        // Neighbours of different circuits read nothing, every one; only the walks within circuits tell something.
        if (probe.circuits().isEmpty()) {
            table(out, probe, probe.readings(), scale);
        }
        for (Probe.CircuitWalk c : probe.circuits()) {
            out.append("\nWithin circuit ").append(c.number());
            c.feed()
                    .ifPresent(f -> out.append(", fed in at bar ")
                            .append(f.in())
                            .append(" and out at bar ")
                            .append(f.out()));
            out.append('\n');
            table(out, probe, c.readings(), Scale.of(probe, c.readings()));
        }
        probe.brushOhms()
                .ifPresent(r -> out.append("\nFrom + to - brushes: ")
                        .append(
                                Double.isFinite(r)
                                        ? Scale.of(probe, List.of(new PairReading(0, 1, r)))
                                                .withUnit(r)
                                        : "open")
                        .append('\n'));
        best(out, probe.best());
        section(out, "To know", probe.notes());
        return out.toString();
    }

    private static void head(StringBuilder out, String title, Procedure procedure) {
        out.append(title).append(": ").append(procedure.title()).append('\n');
        section(out, "Set-up", procedure.setUp());
        section(out, "Cautions", procedure.cautions());
    }

    private static void section(StringBuilder out, String title, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        out.append('\n').append(title).append('\n');
        var table = new TextTable("");
        lines.forEach(table::row);
        table.appendRowsTo(out);
    }

    private static List<String> numbered(List<String> lines) {
        List<String> out = new ArrayList<>();
        for (String line : lines) {
            out.add((out.size() + 1) + ". " + line);
        }
        return out;
    }

    private static void table(StringBuilder out, Probe probe, List<PairReading> readings, Scale scale) {
        boolean placed = probe.angle().isPresent();
        var table = placed
                ? new TextTable(">bars", ">stand at", ">" + scale.unit(), "")
                : new TextTable(">bars", ">" + scale.unit(), "");
        double most = scale.most();
        for (PairReading r : readings) {
            String pair = r.pair().toString();
            String bar = bar(r.value(), most);
            if (placed) {
                GrowlerMeter.Placed p = ProbePairs.placed(
                                probe.armature().winding().armature(),
                                List.of(r),
                                probe.angle().getAsDouble())
                        .get(0);
                table.row(pair, degrees(p.clockDegrees()), scale.number(r.value()), bar);
            } else {
                table.row(pair, scale.number(r.value()), bar);
            }
        }
        table.appendTo(out);
    }

    /** As long as the reading is large: hashes for a positive one, dashes for a negative one. */
    private static String bar(double value, double most) {
        if (!Double.isFinite(value)) {
            return "open";
        }
        if (most == 0) {
            return "";
        }
        int length = (int) (Math.abs(value) / most * BAR_WIDTH + 0.5);
        return (value < 0 ? "-" : "#").repeat(length);
    }

    private static void best(StringBuilder out, List<GrowlerMeter.Placed> best) {
        if (best.isEmpty()) {
            return;
        }
        List<String> lines = new ArrayList<>();
        for (GrowlerMeter.Placed p : best.subList(0, best.size() > MOST_BEST ? MOST_BEST : best.size())) {
            lines.add("bars " + p.reading().from() + " and " + p.reading().to() + " at " + degrees(p.clockDegrees()));
        }
        if (best.size() > MOST_BEST) {
            lines.add("and " + (best.size() - MOST_BEST) + " more");
        }
        section(out, "Read most (clockwise from straight up, commutator end)", lines);
    }

    static String degrees(double d) {
        return String.format(Locale.ROOT, "%.1f°", d);
    }

    /** Where a probe should see a reading. */
    static String pairs(Probe probe, String wanted, List<PairReading> pairs) {
        StringBuilder out = new StringBuilder();
        out.append(probe.job().title()).append(": ").append(probe.setUp()).append('\n');
        if (pairs.isEmpty()) {
            out.append("\nNo two bars read ").append(wanted).append(".\n");
            return out.toString();
        }
        out.append("\nBars that read ").append(wanted).append('\n');
        table(out, probe, pairs, Scale.of(probe, pairs));
        return out.toString();
    }

    static String blade(ProbeBlade blade, boolean explain) {
        StringBuilder out = new StringBuilder();
        head(out, blade.job().title(), blade.procedure());
        if (explain) {
            section(out, "Steps", numbered(blade.procedure().steps()));
            section(out, "What it means", blade.procedure().meaning());
        }
        if (blade.useless()) {
            out.append("\nThe blade hums over this armature everywhere even when it is sound, since bars are joined"
                    + " behind\nthe commutator: it tells nothing here. Use the bar-to-bar test.\n");
        }
        for (ProbeBlade.Case c : blade.cases()) {
            List<GrowlerBlade.SlotPull> felt = c.felt();
            out.append("\nWith ").append(c.words());
            if (felt.isEmpty()) {
                out.append(": the blade lies still everywhere\n");
                continue;
            }
            out.append(": the blade hums over ")
                    .append(felt.size() == 1 ? "1 slot" : felt.size() + " slots")
                    .append('\n');
            double most =
                    felt.stream().mapToDouble(GrowlerBlade.SlotPull::pull).max().orElse(0);
            var table = new TextTable(">slot", ">most at", ">pull", "");
            for (GrowlerBlade.SlotPull s : felt) {
                table.row(
                        s.slot(),
                        degrees(s.clockDegrees()),
                        String.format(Locale.ROOT, "%.2f", s.pull()),
                        bar(s.pull(), most));
            }
            table.appendTo(out);
        }
        out.append("\nPull is relative: 1 is one coil shorted within itself, with one whole face's flux through it.\n");
        return out.toString();
    }

    /**
     * How numbers are shown.
     *
     * @param unit at the head of the column
     * @param factor from the base unit
     * @param decimals after the point
     * @param most largest reading, base unit
     * @param signed whether a plus is written
     */
    record Scale(String unit, double factor, int decimals, double most, boolean signed) {
        static Scale of(Probe probe, List<PairReading> readings) {
            double most = PairReading.largest(readings);
            boolean signed = probe.test() == TestKind.DROP || probe.test() == TestKind.GROUND_WALK;
            if (probe.test() == TestKind.POLARITY) {
                return new Scale("swing", 1, 0, most, true);
            }
            if (probe.test().growler() && probe.relative()) {
                return new Scale("relative", 1, 4, most, false);
            }
            String base = probe.key().equals("ohms") ? "ohm" : "V";
            String[] prefixes = {"", "m", "u"};
            double factor = 1;
            int prefix = 0;
            while (prefix < 2 && most > 0 && most * factor < 1) {
                factor *= 1000;
                prefix++;
            }
            double shown = most * factor;
            return new Scale(prefixes[prefix] + base, factor, shown < 10 ? 4 : shown < 100 ? 3 : 2, most, signed);
        }

        String number(double value) {
            if (!Double.isFinite(value)) {
                return "OL";
            }
            return String.format(Locale.ROOT, (signed && value != 0 ? "%+." : "%.") + decimals + "f", value * factor);
        }

        String withUnit(double value) {
            return number(value) + " " + unit;
        }
    }
}
