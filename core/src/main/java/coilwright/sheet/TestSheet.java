package coilwright.sheet;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Bond;
import coilwright.bench.FeedBars;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerBlade;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.Procedure;
import coilwright.bench.Procedures;
import coilwright.drawing.BenchPicture;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.Palette;
import coilwright.drawing.ViewOptions;
import coilwright.job.Job;
import coilwright.job.TestKind;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A sheet to print and take to the bench: one test of one armature, with drawing, set-up, cautions, steps, and every
 * pair in the order of the walk with what it should read and an empty column for what it reads.
 */
public final class TestSheet {
    private static final double RADIUS = 32;

    private final Job job;
    private final BenchArmature armature;
    private final Winding winding;
    private final Options options;

    /**
     * How a sheet is made.
     *
     * @param knownGood one reading of the growler meter on a pair known to be good, volts: growler readings are then in
     *     volts; relative where empty
     * @param palette colours
     */
    public record Options(Optional<PairReading> knownGood, Palette palette) {
        /** {@return growler readings relative, in colour} */
        public static Options usual() {
            return new Options(Optional.empty(), Palette.COLOUR);
        }
    }

    TestSheet(Job job, BenchArmature armature, Options options) {
        this.job = job;
        this.armature = armature;
        this.winding = armature.winding();
        this.options = options;
    }

    /**
     * {@return the sheet of a test with a meter, a lamp or a compass}
     *
     * @param job what the armature is; values are in ohms and volts where it tells the resistance of a coil
     * @param armature what the readings are expected of: the sound one, with its equalizers if it has any
     * @param test the test with its set-up
     * @param options what is chosen
     * @throws IllegalArgumentException when the test or the known-good reading does not suit the winding
     */
    public static DrawingPages of(Job job, BenchArmature armature, BenchTest test, Options options) {
        return new TestSheet(job, armature, options).meter(test);
    }

    /**
     * {@return the sheet of the test with a steel blade: every slot, whether the blade lies still over it}
     *
     * @param job what the armature is
     * @param armature the sound one, with its equalizers if it has any
     * @param growler faces of the growler
     * @param options what is chosen
     */
    public static DrawingPages blade(Job job, BenchArmature armature, Growler growler, Options options) {
        return new TestSheet(job, armature, options).blade(growler);
    }

    /**
     * What is to be read, and how it is written.
     *
     * @param own what the bench gives, in the order of the walk
     * @param readings the same, scaled to the meter where a reading of it is known
     * @param unit in which they are written
     */
    record Expected(List<PairReading> own, List<PairReading> readings, ReadingUnit unit) {}

    Expected expected(BenchTest test) {
        List<PairReading> own = test.readWalk(armature);
        boolean volts = test.relative() && options.knownGood().isPresent();
        double scale = volts ? known(test, options.knownGood().get()) : 1;
        List<PairReading> scaled = own.stream().map(r -> r.atScale(scale)).toList();
        return new Expected(
                own, scaled, ReadingUnit.of(test, scaled, job.coilResistance().isPresent(), volts));
    }

    private DrawingPages meter(BenchTest test) {
        Expected all = expected(test);
        ReadingUnit unit = all.unit();
        Procedure procedure = procedure(test);
        Sheet sheet = Sheet.titled(
                job.title(),
                "Test sheet: " + procedure.title()
                        + (test instanceof BenchTest.GroundWalk ? ", walk to find the place" : ""),
                options.palette());
        Map<String, String> set = new LinkedHashMap<>();
        set.put("Placed and fed", test.setUp());
        amperes(test).ifPresent(i -> set.put("Feed current", i));
        set.put("Readings", unitWords(test, unit));
        body(sheet, set, picture(test, all.own()), procedure);
        sheet.heading("Readings, in the order of the walk");
        sheet.table(table(test, all.readings(), unit));
        end(sheet, "Every reading agrees with the one expected.");
        return sheet.fewestPages();
    }

    private DrawingPages blade(Growler growler) {
        Procedure procedure = Procedures.growlerBlade(winding);
        Sheet sheet = Sheet.titled(job.title(), "Test sheet: " + procedure.title(), options.palette());
        Map<String, String> set = new LinkedHashMap<>();
        set.put("Placed", "armature in the growler, turned under a steel blade");
        Drawing picture = BenchPicture.blade(
                winding, ViewOptions.of("").withPalette(options.palette()).withBench(GrowlerBench.of(growler)), RADIUS);
        body(sheet, set, picture, procedure);
        List<List<String>> rows = new ArrayList<>();
        for (GrowlerBlade.SlotPull pull : GrowlerBlade.pulls(armature, growler)) {
            rows.add(List.of(Integer.toString(pull.slot()), pull.felt() ? "hums" : "still", ""));
        }
        sheet.heading("Slots, in order");
        sheet.table(new Table(
                List.of(
                        new Table.Column("Slot", 14, Table.Align.MIDDLE),
                        new Table.Column("Expected", 19, Table.Align.MIDDLE),
                        new Table.Column("Found", 22, Table.Align.LEFT)),
                rows,
                strips(rows.size())));
        end(sheet, "The blade behaves at every slot as expected.");
        return sheet.fewestPages();
    }

    private void body(Sheet sheet, Map<String, String> set, Drawing picture, Procedure procedure) {
        sheet.factsBeside(facts(), picture, 120);
        sheet.fields(List.of("Date", "Done by", "Meter", "Temperature"));
        sheet.heading("Set-up").facts(set).items(procedure.setUp());
        sheet.caution(procedure.cautions());
        sheet.heading("Steps").steps(procedure.steps());
        int step = BenchTest.stepWithinCircuit(winding);
        if (step > 1) {
            sheet.paragraph("The winding makes " + step + " separate circuits: each pair of the table stands " + step
                    + " bars apart, so that both bars belong to one circuit.");
        }
        sheet.heading("What a deviation means").items(procedure.meaning());
    }

    private static void end(Sheet sheet, String good) {
        sheet.keepTogether(34).heading("Result");
        sheet.ticks(List.of(good, "Some do not; they are marked in the table."));
        sheet.fields(List.of("Remarks"));
    }

    static Optional<String> amperes(BenchTest test) {
        if (test instanceof BenchTest.Drop d) {
            return Optional.of(amperes(d.amperes()));
        }
        return test instanceof BenchTest.GroundWalk w ? Optional.of(amperes(w.amperes())) : Optional.empty();
    }

    private static String amperes(double amperes) {
        return new BigDecimal(String.format(Locale.ROOT, "%.4g", amperes))
                        .stripTrailingZeros()
                        .toPlainString() + " A";
    }

    private double known(BenchTest test, PairReading reading) {
        double relative = test.read(armature, List.of(reading.pair())).get(0).value();
        if (!(reading.value() > 0) || !(relative > 1e-9)) {
            throw new IllegalArgumentException("the known-good reading is " + reading.value() + " where "
                    + String.format(Locale.ROOT, "%.3f", relative)
                    + " is expected: choose a pair on which the meter moves");
        }
        return reading.value() / relative;
    }

    private Map<String, String> facts() {
        return WindingFacts.of(job, winding, !rings().isEmpty());
    }

    static String unitWords(BenchTest test, ReadingUnit unit) {
        return switch (unit.name()) {
            case "relative" -> "relative: 1 is one whole face's flux through one sound coil";
            case "sense" -> "+ as in a sound coil, − the other way";
            case "× one coil" -> "in times the resistance of one coil, which is not given";
            case "mV at 1 mΩ a coil" ->
                "in mV where a coil has 1 mΩ; the resistance of a coil is not given, so compare readings with each other";
            default -> "in " + unit.name() + (test.signed() ? ", first bar against second" : "");
        };
    }

    Procedure procedure(BenchTest test) {
        List<FeedBars> feeds = test instanceof BenchTest.Drop d ? List.of(feed(d)) : List.of();
        double clock = test instanceof BenchTest.GrowlerTurned g ? g.clockDegrees() : 0;
        return TestKind.of(test.word()).orElseThrow().procedure(winding, feeds, clock);
    }

    private FeedBars feed(BenchTest.Drop d) {
        return FeedBars.advised(winding, !rings().isEmpty()).stream()
                .filter(f -> f.in() == d.in() && f.out() == d.out())
                .findFirst()
                .orElse(new FeedBars(d.in(), d.out(), "as asked for"));
    }

    private List<List<Integer>> rings() {
        List<List<Integer>> out = new ArrayList<>();
        for (Bond b : armature.bonds()) {
            if (b.a() instanceof Point.Bar x && b.b() instanceof Point.Bar y) {
                out.add(List.of(x.number(), y.number()));
            }
        }
        return out;
    }

    private Drawing picture(BenchTest test, List<PairReading> walk) {
        PairReading first = walk.get(0);
        Optional<BenchTest.Pair> pair = Optional.of(first.pair());
        if (test instanceof BenchTest.GrowlerWalked g) {
            return growler(g.growler(), g.angle(), Optional.empty());
        } else if (test instanceof BenchTest.GrowlerTurned g) {
            double middle = GrowlerMeter.middle(winding.armature(), first.from(), first.to());
            return growler(g.growler(), g.clockDegrees() - middle, pair);
        } else if (test instanceof BenchTest.Drop d) {
            return touched(feedPair(d.in(), d.out()), pair, "mV");
        } else if (test instanceof BenchTest.GroundWalk w) {
            return touched(feedPair(w.in(), w.out()), pair, "mV");
        } else if (test instanceof BenchTest.Polarity) {
            int slot = winding.liveCoils().get(0).top().slot();
            return BenchPicture.touched(
                    winding,
                    new BenchPicture.Touches(pair, Optional.empty(), "", OptionalInt.of(slot)),
                    options.palette(),
                    RADIUS);
        }
        return touched(Optional.empty(), pair, "Ω");
    }

    private static Optional<BenchTest.Pair> feedPair(int in, int out) {
        return Optional.of(new BenchTest.Pair(in, out));
    }

    private Drawing touched(Optional<BenchTest.Pair> feed, Optional<BenchTest.Pair> meter, String unit) {
        return BenchPicture.touched(
                winding, new BenchPicture.Touches(feed, meter, unit, OptionalInt.empty()), options.palette(), RADIUS);
    }

    private Drawing growler(Growler growler, double angle, Optional<BenchTest.Pair> probes) {
        return BenchPicture.growler(
                winding,
                ViewOptions.of("")
                        .withRotorAngle(angle)
                        .withPalette(options.palette())
                        .withBench(new GrowlerBench(growler, rings(), probes)),
                RADIUS);
    }

    private Table table(BenchTest test, List<PairReading> expected, ReadingUnit unit) {
        boolean polarity = test instanceof BenchTest.Polarity;
        boolean allOpen = expected.stream().allMatch(r -> Double.isInfinite(r.value()));
        String comma = polarity ? "" : ", " + unit.name();
        List<Table.Column> columns = new ArrayList<>();
        if (polarity) {
            columns.add(new Table.Column("Coil", 9.5, Table.Align.MIDDLE));
        }
        columns.add(new Table.Column("Bars", polarity ? 15.5 : 17, Table.Align.MIDDLE));
        columns.add(new Table.Column(
                "Expected" + (allOpen ? "" : comma),
                polarity ? 17.5 : 20,
                polarity ? Table.Align.MIDDLE : Table.Align.RIGHT));
        columns.add(new Table.Column("Read" + comma, polarity ? 12.8 : 22, Table.Align.RIGHT));
        List<List<String>> rows = new ArrayList<>();
        List<Coil> live = winding.liveCoils();
        for (PairReading r : expected) {
            List<String> row = new ArrayList<>();
            if (polarity) {
                row.add(Integer.toString(live.get(rows.size()).number()));
            }
            row.add(r.pair().dashed());
            row.add(unit.words(r.value()));
            row.add("");
            rows.add(row);
        }
        return new Table(columns, rows, strips(rows.size()));
    }

    private static int strips(int rows) {
        return Math.max(1, Math.min(3, (rows + 7) / 8));
    }
}
