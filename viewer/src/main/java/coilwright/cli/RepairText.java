package coilwright.cli;

import coilwright.fault.EmergencyRepair;
import coilwright.job.Job;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** How to cut out a coil, for a person and for a spreadsheet. */
final class RepairText {
    private RepairText() {}

    static String of(Job job, EmergencyRepair.Plan plan) {
        StringBuilder out = new StringBuilder();
        out.append(job.title()).append('\n');
        out.append("EMERGENCY MEASURE: cutting out coil ")
                .append(plan.coil().number())
                .append(", ");
        out.append(plan.trouble().word())
                .append(", slots ")
                .append(plan.coil().top().slot())
                .append(" and ");
        out.append(plan.coil().bottom().slot()).append("\n\nWhat to do\n");
        var steps = new TextTable("", "");
        steps.row("1.", plan.lift());
        steps.row("2.", bridge(plan.best()));
        steps.appendRowsTo(out);
        out.append("\nWhat it costs\n");
        var table = new TextTable(
                "", ">coils lost", ">paths", ">coils in a path", ">unbalance", ">volts", ">largest bar to bar");
        row(table, "sound", List.of(), plan.sound(), plan.sound());
        for (EmergencyRepair.Option o : plan.options()) {
            row(table, name(o), o.lost(), o.cost(), plan.sound());
        }
        table.appendTo(out);
        TextTable.paragraph(
                out,
                "Unbalance: the largest difference between two paths' voltages over their mean, at any rotor"
                        + " position. Volts: of all paths on the mean, the sound armature being 100 %. Largest"
                        + " bar to bar: over the mean between neighbouring bars. Field a sine wave, brushes at"
                        + " the neutral, no load. Best first.");
        out.append("\nMind\n");
        TextTable.items(out, plan.cautions());
        return out.toString();
    }

    private static void row(
            TextTable table, String name, List<Integer> lost, EmergencyRepair.Cost cost, EmergencyRepair.Cost sound) {
        table.row(
                name,
                lost.isEmpty() ? "-" : lost.stream().map(String::valueOf).collect(Collectors.joining(", ")),
                cost.paths(),
                cost.fewestCoils() + "-" + cost.mostCoils(),
                number("%.1f", 100 * cost.unbalance()) + " %",
                number("%.1f", 100 * cost.volts() / sound.volts()) + " %",
                number("%.2f", cost.barVolts()));
    }

    private static String name(EmergencyRepair.Option o) {
        return o.bridge().isEmpty()
                ? "no bars joined"
                : "bars " + o.bridge().get(0) + " and " + o.bridge().get(1) + " joined";
    }

    private static String bridge(EmergencyRepair.Option o) {
        return switch (o.way()) {
            case OWN_BARS ->
                "join bars " + o.bridge().get(0) + " and " + o.bridge().get(1) + ", the coil's own two, by a jumper";
            case WHOLE_TRIP ->
                "join bars " + o.bridge().get(0) + " and " + o.bridge().get(1)
                        + ", between which the coil lies in series with others";
            case NO_BRIDGE -> "join no bars";
        };
    }

    static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    static String csv(EmergencyRepair.Plan plan) {
        StringBuilder out = new StringBuilder(
                "way,bridge,coilsLost,parallelPaths,fewestCoils,mostCoils,unbalance,coilVolts,barVolts\n");
        line(out, "sound", List.of(), List.of(), plan.sound());
        plan.options().forEach(o -> line(out, o.way().word(), o.bridge(), o.lost(), o.cost()));
        return out.toString();
    }

    private static void line(
            StringBuilder out, String way, List<Integer> bridge, List<Integer> lost, EmergencyRepair.Cost cost) {
        List<String> cells = new ArrayList<>();
        cells.add(way);
        cells.add(bridge.stream().map(String::valueOf).collect(Collectors.joining(" ")));
        cells.add(lost.stream().map(String::valueOf).collect(Collectors.joining(" ")));
        cells.add(Integer.toString(cost.paths()));
        cells.add(Integer.toString(cost.fewestCoils()));
        cells.add(Integer.toString(cost.mostCoils()));
        cells.add(number("%.6f", cost.unbalance()));
        cells.add(number("%.6f", cost.volts()));
        cells.add(number("%.6f", cost.barVolts()));
        Csv.line(out, cells);
    }
}
