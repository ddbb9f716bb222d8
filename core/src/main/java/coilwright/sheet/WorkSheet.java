package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.RewindBasis;
import coilwright.rewind.NumberRuns;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.rewind.WorkStep;
import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkTest;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSet;
import coilwright.winding.Pitches;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * The order of work to print and tick off: every step in its place, coils with their slots and bars, leads with their
 * bars, tests where a fault is still cheap to mend.
 */
public final class WorkSheet {
    private static final Set<Kind> COILS = EnumSet.of(Kind.PLACE, Kind.WIND, Kind.LOWER);
    private static final Set<Kind> LEADS = EnumSet.of(Kind.CONNECT, Kind.EQUALIZE);

    /** Room for a heading, a line beneath it and the first rows of a table, mm. */
    private static final double TABLE_START = 48;

    private final Job job;
    private final WorkOrder order;
    private final Winding winding;
    private final Sheet sheet;

    private WorkSheet(Job job, WorkOrder order, Palette palette) {
        this.job = RewindBasis.wound(job);
        this.order = order;
        this.winding = order.winding();
        this.sheet = Sheet.titled(job.title(), "Order of work: " + order.way().words(), palette);
    }

    /**
     * {@return the sheet of a job wound one way, by its plan where it has one, with its equalizers if it has any}
     *
     * @param job what the armature is
     * @param way how the coils come into the slots
     * @param palette colours, or black, white and grey
     * @throws IllegalArgumentException when the winding is not wound this way
     */
    public static DrawingPages of(Job job, WindingWay way, Palette palette) {
        return of(job, order(job, way), palette);
    }

    /** The order of work of a job, by its plan where it has one. */
    static WorkOrder order(Job job, WindingWay way) {
        return order(job, RewindBasis.wound(job).build(), way);
    }

    /**
     * {@return the order of work of a winding, with the equalizers of its job if it has any}
     *
     * @param job what the armature is
     * @param winding of the job, as it is to be wound
     * @param way how the coils come into the slots
     * @throws IllegalArgumentException when the winding is not wound this way
     */
    public static WorkOrder order(Job job, Winding winding, WindingWay way) {
        return WorkOrder.of(
                winding, way, job.equalizers().map(e -> e.rings(winding)).orElse(List.of()));
    }

    /**
     * {@return the sheet of an order of work}
     *
     * @param job what the armature is
     * @param order for the winding of the job, as it is to be wound
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(Job job, WorkOrder order, Palette palette) {
        return new WorkSheet(job, order, palette).pages();
    }

    private DrawingPages pages() {
        sheet.facts(facts());
        sheet.fields(List.of("Date", "Done by", "Wire", "Insulation"));
        sheet.caution(order.cautions());
        sheet.heading("Before you begin").items(order.notes());
        sheet.paragraph("Source of this order: " + order.source().cite()
                + ". Where the machine as found was made otherwise, do as found.");
        int first = indexOf(order.steps(), s -> COILS.contains(s.kind()));
        int last = order.steps().size() - 1;
        while (!COILS.contains(order.steps().get(last).kind())
                && order.steps().get(last).kind() != Kind.WEDGE) {
            last--;
        }
        work("Before winding", order.steps().subList(0, first));
        coils(order.steps().subList(first, last + 1));
        rest(order.steps().subList(last + 1, order.steps().size()));
        sheet.keepTogether(34).heading("Done");
        sheet.ticks(List.of("All steps are ticked; the last readings are kept with the job."));
        sheet.fields(List.of("Wire used", "Turns per coil", "Remarks"));
        return sheet.fewestPages();
    }

    private static int indexOf(List<WorkStep> steps, Predicate<WorkStep> which) {
        int i = 0;
        while (!which.test(steps.get(i))) {
            i++;
        }
        return i;
    }

    private Map<String, String> facts() {
        Armature a = winding.armature();
        Map<String, String> out = new LinkedHashMap<>();
        out.put("Slots, bars, poles", a.slots() + ", " + a.bars() + ", " + a.poles());
        out.put("Winding", winding.type().word());
        winding.pitches().ifPresent(p -> out.put("Coil throw", coilThrow(p)));
        out.put(
                "Slot 1",
                a.slotOneInLineWith() == SlotAlignment.BAR
                        ? "in line with bar 1"
                        : "in line with the mica before bar 1");
        out.put("Coils", Integer.toString(winding.coils().size()));
        if (winding.sidesPerSlot() > 1) {
            out.put("Coil sides per slot and layer", Integer.toString(winding.sidesPerSlot()));
        }
        List<Integer> dead = winding.deadCoils().stream().map(Coil::number).toList();
        if (!dead.isEmpty()) {
            out.put("Dead coils", NumberRuns.of(dead));
        }
        job.turns().ifPresent(n -> out.put("Turns per coil", Integer.toString(n)));
        int rings = order.steps(Kind.EQUALIZE).size();
        if (rings > 0) {
            out.put("Equalizers", Integer.toString(rings));
        }
        out.put("Steps", Integer.toString(order.steps().size()));
        return out;
    }

    private static String coilThrow(Pitches p) {
        return p.stepped() ? "stepped; see the table" : p.coilThrow();
    }

    /** Steps told in a sentence each. */
    private void work(String heading, List<WorkStep> steps) {
        if (steps.isEmpty()) {
            return;
        }
        sheet.heading(heading);
        List<List<String>> rows = new ArrayList<>();
        for (WorkStep s : steps) {
            String tests = s.tests().isEmpty() ? "" : " Tests: " + tests(s) + ".";
            rows.add(List.of("", number(s), s.text() + "." + tests + remarks(s)));
        }
        sheet.table(new Table(
                List.of(
                        new Table.Column("", 7, Table.Align.TICK),
                        new Table.Column("Step", 11, Table.Align.MIDDLE),
                        new Table.Column("Work", 158, Table.Align.LEFT)),
                rows,
                1));
    }

    private void coils(List<WorkStep> steps) {
        sheet.keepTogether(TABLE_START);
        sheet.heading(order.way().byHand() ? "Coils, in the order of winding" : "Coils, in the order of putting in");
        if (!order.lifted().isEmpty()) {
            sheet.paragraph("A slot in brackets: the side belongs there, but stays lifted until a later step.");
        }
        List<List<String>> rows = new ArrayList<>();
        steps.forEach(s -> rows.add(coilRow(s)));
        boolean hand = order.way().byHand();
        sheet.table(new Table(
                List.of(
                        new Table.Column("", 7, Table.Align.TICK),
                        new Table.Column("Step", 11, Table.Align.MIDDLE),
                        new Table.Column("Coil", 24, Table.Align.LEFT),
                        new Table.Column("Top slot", 13, Table.Align.MIDDLE),
                        new Table.Column("Bottom slot", 15, Table.Align.MIDDLE),
                        new Table.Column(hand ? "Start on bar" : "Top lead on bar", 22, Table.Align.LEFT),
                        new Table.Column(hand ? "Finish on bar" : "Bottom lead on bar", 22, Table.Align.LEFT),
                        new Table.Column("Remark", 62, Table.Align.LEFT)),
                rows,
                1));
    }

    private List<String> coilRow(WorkStep s) {
        String coils = NumberRuns.of(s.coils());
        if (s.kind() == Kind.TEST) {
            return row(s, coils, "", "", "", "", "Test: " + tests(s) + ".");
        }
        if (s.kind() == Kind.WEDGE) {
            return row(s, "", "", "", "", "", "Close and wedge: slots " + NumberRuns.of(s.slots()) + ".");
        }
        if (s.kind() == Kind.LOWER) {
            return row(s, coils, slots(s, End.TOP), "", "", "", "Lower the top side." + remarks(s));
        }
        String top = s.lifted().isEmpty()
                ? slots(s, End.TOP)
                : "(" + s.lifted().get(0).slot() + ")";
        String loops = s.loops().isEmpty() ? "" : "Loop to bar " + NumberRuns.of(s.loops()) + ".";
        return row(
                s,
                bySet(s, n -> OptionalInt.of(n), true),
                top,
                slots(s, End.BOTTOM),
                bySet(s, n -> winding.coil(n).topBar(), false),
                bySet(s, n -> winding.coil(n).bottomBar(), false),
                (loops + remarks(s)).strip());
    }

    private static List<String> row(
            WorkStep s, String coils, String top, String bottom, String topBars, String bottomBars, String remark) {
        return List.of("", number(s), coils, top, bottom, topBars, bottomBars, remark);
    }

    private static String slots(WorkStep s, End end) {
        return NumberRuns.of(s.sides().stream()
                .filter(x -> x.end() == end)
                .map(WorkStep.Side::slot)
                .distinct()
                .toList());
    }

    /** Something about each coil of a step, set after set. */
    private String bySet(WorkStep s, IntFunction<OptionalInt> what, boolean named) {
        List<String> out = new ArrayList<>();
        for (CoilSet set : winding.sets()) {
            List<Integer> numbers = s.coils().stream()
                    .filter(n -> winding.setOf(winding.coil(n)).equals(set))
                    .map(what::apply)
                    .filter(OptionalInt::isPresent)
                    .map(OptionalInt::getAsInt)
                    .toList();
            if (!numbers.isEmpty()) {
                out.add(NumberRuns.of(numbers)
                        + (named && winding.sets().size() > 1 ? " " + set.type().word() : ""));
            }
        }
        return out.isEmpty() ? "none" : String.join("; ", out);
    }

    /** Everything after the coils: leads of one kind in a table each, the other steps as sentences. */
    private void rest(List<WorkStep> steps) {
        int i = 0;
        boolean connected = false;
        while (i < steps.size()) {
            String run = run(steps.get(i));
            int end = i;
            while (end < steps.size() && run(steps.get(end)).equals(run)) {
                end++;
            }
            List<WorkStep> here = steps.subList(i, end);
            if (run.isEmpty()) {
                boolean more = steps.subList(end, steps.size()).stream().anyMatch(s -> LEADS.contains(s.kind()));
                work(!more ? "Joining and finishing" : connected ? "Before the next leads" : "Before the leads", here);
            } else {
                leads(run, here);
                connected = true;
            }
            i = end;
        }
    }

    /** A name shared by lead steps that stand in one table; empty for other steps. */
    private String run(WorkStep s) {
        if (s.kind() == Kind.EQUALIZE) {
            return "Equalizers";
        }
        if (s.kind() != Kind.CONNECT) {
            return "";
        }
        WorkStep.Lead first = s.leads().get(0);
        String set = winding.sets().size() > 1
                ? " of the " + winding.setOf(winding.coil(first.coil())).type().word() + " coils"
                : "";
        String end = first.end().word();
        return end.substring(0, 1).toUpperCase(Locale.ROOT) + end.substring(1) + " leads" + set;
    }

    private void leads(String heading, List<WorkStep> steps) {
        boolean loops = steps.stream().anyMatch(s -> !s.loops().isEmpty());
        sheet.keepTogether(TABLE_START);
        sheet.heading(loops ? heading + " and loops" : heading);
        boolean rings = steps.get(0).kind() == Kind.EQUALIZE;
        boolean remarks = steps.stream().anyMatch(s -> !s.remarks().isEmpty());
        if (rings) {
            steps.stream().flatMap(s -> s.remarks().stream()).distinct().forEach(sheet::paragraph);
            remarks = false;
        }
        List<Table.Column> columns = new ArrayList<>(
                List.of(new Table.Column("", 7, Table.Align.TICK), new Table.Column("Step", 11, Table.Align.MIDDLE)));
        if (!rings) {
            columns.add(new Table.Column("Coil", 24, Table.Align.LEFT));
            columns.add(new Table.Column("From slot", 14, Table.Align.MIDDLE));
        }
        columns.add(new Table.Column(rings ? "Joins bars" : "To bar, in this order", 29, Table.Align.LEFT));
        if (remarks) {
            columns.add(new Table.Column("Remark", 50, Table.Align.LEFT));
        }
        List<List<String>> rows = new ArrayList<>();
        for (WorkStep s : steps) {
            List<String> row = new ArrayList<>(List.of("", number(s)));
            if (!rings) {
                row.add(NumberRuns.of(s.coils()));
                row.add(NumberRuns.of(s.slots()));
            }
            row.add(NumberRuns.of(s.bars()));
            if (remarks) {
                row.add(remarks(s).strip());
            }
            rows.add(row);
        }
        sheet.table(new Table(columns, rows, remarks || rows.size() < 6 ? 1 : 2));
    }

    private static String tests(WorkStep s) {
        return s.tests().stream()
                .map(WorkTest::title)
                .map(t -> t.substring(0, 1).toLowerCase(Locale.ROOT) + t.substring(1))
                .collect(Collectors.joining("; "));
    }

    private static String remarks(WorkStep s) {
        return s.remarks().isEmpty() ? "" : " " + String.join(" ", s.remarks());
    }

    private static String number(WorkStep s) {
        return Integer.toString(s.number());
    }
}
