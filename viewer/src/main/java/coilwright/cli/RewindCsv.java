package coilwright.cli;

import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.SlotFill;
import coilwright.sheet.RewindReport;
import coilwright.sheet.RewindReportState;
import java.util.List;
import java.util.Optional;

/** A rewind worked out, for a spreadsheet: one value a line, with its unit. */
final class RewindCsv {
    private final RewindReport report;
    private final StringBuilder out = new StringBuilder("part,item,quantity,value,unit\n");

    private RewindCsv(RewindReport report) {
        this.report = report;
    }

    static String of(RewindReport report) {
        var csv = new RewindCsv(report);
        csv.state("found", report.found());
        report.compared().forEach(c -> {
            csv.line("found", c.key(), "measured at " + Json.rounded(c.celsius()) + " °C", c.ohms(), "ohm");
            csv.line("found", c.key(), "worked out", c.expected(), "ohm");
        });
        csv.substitutes("substitute", report.substitutes());
        report.change().ifPresent(csv::change);
        report.others().forEach(o -> {
            String item = RewindJson.name(o);
            csv.line("other winding", item, "parallel paths", o.paths(), "");
            csv.line("other winding", item, "voltage factor", o.voltsFactor(), "");
            csv.line("other winding", item, "current factor", o.ampsFactor(), "");
            csv.line("other winding", item, "resistance factor", o.resistanceFactor(), "");
        });
        return csv.out.toString();
    }

    private void line(String part, String item, String quantity, double value, String unit) {
        Csv.line(out, List.of(part, item, quantity, Json.rounded(value).toPlainString(), unit));
    }

    private void change(RewindReport.Change c) {
        c.ideal().ifPresent(i -> line("plan", "ideal wire", "copper area", i.areaMm2(), "mm²"));
        c.redesign().ifPresent(r -> {
            line("plan", "turns", "before rounding", r.idealTurns(), "");
            line("plan", "machine", "EMF at planned speed", r.emfAtSpeed(), "V");
            line("plan", "machine", "speed for planned voltage", r.rpmForVolts(), "r/min");
        });
        substitutes("proposal", c.proposals());
        c.after().ifPresent(a -> state("plan", a));
    }

    private void substitutes(String part, List<RewindReport.Substitute> list) {
        for (RewindReport.Substitute s : list) {
            String item = s.option().conductor().label();
            line(part, item, "copper area", s.option().conductor().areaMm2(), "mm²");
            line(part, item, "area difference", s.option().areaDifference(), "");
            line(part, item, "room difference", s.option().roomDifference(), "");
            s.fill().ifPresent(f -> line(part, item, "slot fill", f.fill(), ""));
        }
    }

    private void state(String part, RewindReportState s) {
        s.conductor().ifPresent(c -> wire(part, c));
        s.coil().ifPresent(c -> coil(part, c));
        s.copper().ifPresent(c -> armature(part, c));
        s.fill().ifPresent(f -> slot(part, f));
        s.volts().ifPresent(v -> line(part, "machine", "voltage", v, "V"));
        s.amps().ifPresent(a -> line(part, "machine", "armature current", a, "A"));
        s.rpm().ifPresent(n -> line(part, "machine", "speed", n, "r/min"));
        s.currentDensity().ifPresent(j -> line(part, "machine", "current density", j, "A/mm²"));
        s.barVolts().ifPresent(v -> line(part, "machine", "volts between bars", v, "V"));
    }

    private void wire(String part, Conductor conductor) {
        String item = conductor.label();
        line(part, item, "copper area", conductor.areaMm2(), "mm²");
        line(part, item, "in hand", conductor.strands(), "");
        Optional<Conductor.Round> round =
                Optional.of(conductor).filter(c -> c instanceof Conductor.Round).map(c -> (Conductor.Round) c);
        round.ifPresent(r -> {
            line(part, item, "bare diameter", r.wire().size().bareDiameterMm(), "mm");
            line(part, item, "overall diameter", r.wire().overallDiameterMm(), "mm");
        });
    }

    private void coil(String part, CoilCopper c) {
        line(part, "coil", "turns", c.turns(), "");
        line(part, "coil", "mean turn", c.meanTurn().lengthMm(), "mm");
        line(part, "coil", "length", c.lengthM(), "m");
        for (double t : report.settings().celsius()) {
            line(part, "coil", "resistance at " + Json.rounded(t).toPlainString() + " °C", c.resistance(t), "ohm");
        }
        line(part, "coil", "copper", c.massKg(), "kg");
    }

    private void armature(String part, ArmatureCopper c) {
        line(part, "armature", "coils", c.woundCoils(), "");
        line(part, "armature", "parallel paths", c.paths(), "");
        for (double t : report.settings().celsius()) {
            line(
                    part,
                    "armature",
                    "brush to brush at " + Json.rounded(t).toPlainString() + " °C",
                    c.brushToBrush(t),
                    "ohm");
        }
        line(part, "armature", "copper", c.massKg(), "kg");
        double allowance = report.settings().allowance();
        line(part, "armature", "wire to buy", c.wireToBuyM(allowance), "m");
        line(part, "armature", "copper to buy", c.massToBuyKg(allowance), "kg");
    }

    private void slot(String part, SlotFill f) {
        line(part, "slot", "bare section", f.slotAreaMm2(), "mm²");
        line(part, "slot", "section left for wire", f.windingAreaMm2(), "mm²");
        line(part, "slot", "wires", f.wires(), "");
        line(part, "slot", "copper factor", f.copperFactor(), "");
        line(part, "slot", "fill", f.fill(), "");
        line(part, "slot", "fill in circles", f.circleFill(), "");
        f.packing().ifPresent(p -> {
            line(part, "slot", "most wires in the bottom layer", p.bottomRoom().count(), "");
            line(part, "slot", "most wires in the top layer", p.topRoom().count(), "");
        });
    }
}
