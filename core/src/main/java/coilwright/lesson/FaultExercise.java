package coilwright.lesson;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.PairReading;
import coilwright.drawing.Drawing;
import coilwright.drawing.Highlight;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Find the fault from readings. The faults that may be are told with the question; the readings single out one of them,
 * or several that are one to the meter, such as a shorted coil and its two bars touching.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec the winding
 * @param milliohms resistance of one sound coil, over 0
 * @param test a drop test or a resistance test
 * @param faults all faults taught at this grade that give these readings, at least one
 */
public record FaultExercise(
        int grade, Armature armature, WindingSpec.Regular spec, double milliohms, BenchTest test, List<Fault> faults)
        implements Exercise {
    /** Share of the largest reading by which some pair must tell any other fault. */
    private static final double STANDS_OUT = 0.04;

    private static final int DECIMALS = 1;

    /**
     * Copies the list.
     *
     * @param grade 1 to 3
     * @param armature core and commutator
     * @param spec the winding
     * @param milliohms resistance of one sound coil, over 0
     * @param test a drop test or a resistance test
     * @param faults all faults taught at this grade that give these readings, at least one
     */
    public FaultExercise {
        faults = List.copyOf(faults);
    }

    static FaultExercise make(Dice dice, int grade) {
        while (true) {
            Winding w = Made.winding(
                    dice,
                    grade == 3 ? 2 : 1,
                    grade == 1 ? 10 : 14,
                    x -> x.closures().orElseThrow() == 1);
            double milliohms = dice.of(40, 50, 60, 80, 100, 120);
            BenchTest test;
            if (grade > 1 && dice.oneIn(2)) {
                test = new BenchTest.Resistance();
            } else {
                FeedBars feed = FeedBars.advised(w, false).get(0);
                test = new BenchTest.Drop(feed.in(), feed.out(), dice.of(2, 5, 10));
            }
            List<Fault> all = taught(w, grade, milliohms);
            Fault fault = dice.of(all);
            Optional<FaultExercise> made = single(w, grade, milliohms, test, fault, all);
            if (made.isPresent()) {
                return made.get();
            }
        }
    }

    /** The exercise with a fault, where its readings single out one group. */
    private static Optional<FaultExercise> single(
            Winding w, int grade, double milliohms, BenchTest test, Fault fault, List<Fault> all) {
        var sound = BenchArmature.sound(w, milliohms);
        List<BenchTest.Pair> pairs = test.walk(w);
        List<PairReading> read = test.read(fault.in(sound), pairs);
        if (read.stream().anyMatch(r -> !Double.isInfinite(r.value()) && !Figures.clear(r.value(), DECIMALS))) {
            return Optional.empty();
        }
        double least = STANDS_OUT * largest(read);
        if (apart(read, test.read(sound, pairs)) < least) {
            return Optional.empty();
        }
        List<Fault> group = new ArrayList<>();
        for (Fault other : all) {
            double apart = apart(read, test.read(other.in(sound), pairs));
            if (apart < 1e-9 * largest(read)) {
                group.add(other);
            } else if (apart < least) {
                return Optional.empty();
            }
        }
        return group.isEmpty() || group.size() > 3
                ? Optional.empty()
                : Optional.of(new FaultExercise(grade, w.armature(), Made.spec(w), milliohms, test, group));
    }

    private static double largest(List<PairReading> read) {
        return read.stream()
                .mapToDouble(r -> Math.abs(r.value()))
                .filter(Double::isFinite)
                .max()
                .orElse(1);
    }

    /** The largest difference of two runs over the same pairs; infinite where one alone is open. */
    private static double apart(List<PairReading> a, List<PairReading> b) {
        double most = 0;
        for (int i = 0; i < a.size(); i++) {
            double x = a.get(i).value();
            double y = b.get(i).value();
            if (x != y) {
                double d = Math.abs(x - y);
                most = Math.max(most, Double.isNaN(d) ? Double.POSITIVE_INFINITY : d);
            }
        }
        return most;
    }

    /** Every fault that may be the answer at a grade. */
    static List<Fault> taught(Winding w, int grade, double milliohms) {
        List<Fault> out = new ArrayList<>();
        int k = w.armature().bars();
        for (Coil c : w.liveCoils()) {
            out.add(new Fault.OpenCoil(c.number()));
            out.add(new Fault.ShortedCoil(c.number()));
            if (grade > 1) {
                out.add(new Fault.ShortedTurns(c.number(), 0.5));
                out.add(new Fault.HighResistance(c.number(), milliohms));
            }
        }
        for (int bar = 1; bar <= k; bar++) {
            int next = w.armature().wrapBar(bar + 1);
            out.add(new Fault.BarShort(bar, next));
            if (grade == 3) {
                out.add(new Fault.CrossedLeads(bar, next, Fault.Leads.TOP));
                out.add(new Fault.CrossedLeads(bar, next, Fault.Leads.BOTTOM));
                out.add(new Fault.CrossedLeads(bar, next, Fault.Leads.BOTH));
            }
        }
        return out;
    }

    private static String kinds(int grade) {
        String easy = "a coil open, a coil shorted, two neighbouring bars joined";
        return switch (grade) {
            case 1 -> easy;
            case 2 -> easy + ", half the turns of a coil shorted, a bad joint that adds as much as a coil has";
            default ->
                easy
                        + ", half the turns of a coil shorted, a bad joint that adds as much as a coil has, top leads, bottom"
                        + " leads or all leads of two neighbouring bars crossed";
        };
    }

    private Winding winding() {
        return Winding.build(armature, spec);
    }

    private List<PairReading> read(Optional<Fault> fault) {
        var sound = BenchArmature.sound(winding(), milliohms);
        return test.read(fault.map(f -> f.in(sound)).orElse(sound), test.walk(winding()));
    }

    private String unit() {
        return test.ohms() ? "mΩ" : "mV";
    }

    private static String value(PairReading r) {
        return Double.isInfinite(r.value())
                ? "open"
                : Figures.fixed(r.value(), DECIMALS).replace('-', '−');
    }

    @Override
    public Kind kind() {
        return Kind.FAULT;
    }

    @Override
    public List<String> question() {
        return List.of(
                "Given: " + Made.core(armature) + "; " + Made.winding(armature, spec) + "; every sound coil has "
                        + Figures.number(milliohms) + " mΩ.",
                (test instanceof BenchTest.Drop d
                                ? "Drop test, " + Figures.number(d.amperes()) + " A in at bar " + d.in()
                                        + " and out at bar " + d.out() + ", + probe on the bar named first."
                                : "Ohmmeter from bar to bar, nothing else connected.")
                        + " The readings of all neighbouring bars are in the table.",
                "One fault is there, one of these: " + kinds(grade) + ". Which, and where? If the readings do not tell"
                        + " some of them apart, name them all.");
    }

    @Override
    public Optional<Grid> table() {
        return Optional.of(new Grid(
                List.of("Bars", unit()),
                read(Optional.of(faults.get(0))).stream()
                        .map(r -> List.of(r.from() + "–" + r.to(), value(r)))
                        .toList()));
    }

    @Override
    public List<Answer> answers() {
        return List.of(Answer.word(
                "fault",
                String.join(" ", faults.stream().map(FaultExercise::form).toList()),
                String.join(", or ", faults.stream().map(this::words).toList())));
    }

    private String words(Fault f) {
        return f instanceof Fault.HighResistance h
                ? "bad joint at coil " + h.coil() + " that adds " + Figures.number(h.ohms()) + " mΩ"
                : f.words();
    }

    /** The fault as commands take it. */
    static String form(Fault f) {
        String where = Figures.commas(f.coils().isEmpty() ? f.bars() : f.coils());
        if (f instanceof Fault.ShortedTurns s) {
            where += "," + Math.round(s.fraction() * 100) + "%";
        } else if (f instanceof Fault.HighResistance h) {
            where += "," + Figures.number(h.ohms()) + " mohm";
        } else if (f instanceof Fault.CrossedLeads c) {
            where += "," + c.leads().name().toLowerCase(Locale.ROOT);
        }
        return f.kind() + ":" + where;
    }

    @Override
    public List<String> steps() {
        List<PairReading> sound = read(Optional.empty());
        List<PairReading> read = read(Optional.of(faults.get(0)));
        List<String> out = new ArrayList<>();
        var ring = new RingWorking(winding(), milliohms, Optional.empty());
        if (test instanceof BenchTest.Drop d) {
            out.addAll(ring.currents(d));
        }
        out.add("a sound winding would read: " + runs(sound) + " " + unit());
        List<String> off = new ArrayList<>();
        for (int i = 0; i < read.size(); i++) {
            PairReading r = read.get(i);
            double change = Math.abs(r.value() - sound.get(i).value());
            if (!(change < 0.05)) {
                off.add(r.from() + "–" + r.to() + " (" + value(sound.get(i)) + " → " + value(r) + ")");
            }
        }
        out.add(
                off.size() == read.size()
                        ? "every pair reads otherwise than that; " + furthest(sound, read)
                        : "otherwise than that read: " + String.join(", ", off));
        for (Fault f : faults) {
            out.add(meaning(f));
        }
        out.add("put to the test: " + words(faults.get(0)) + " gives every reading of the table; " + nearest());
        return List.copyOf(out);
    }

    private static String runs(List<PairReading> readings) {
        List<String> out = new ArrayList<>();
        int i = 0;
        while (i < readings.size()) {
            int j = i;
            while (j + 1 < readings.size() && value(readings.get(j + 1)).equals(value(readings.get(i)))) {
                j++;
            }
            PairReading first = readings.get(i);
            PairReading last = readings.get(j);
            out.add((i == j ? "" : "from ") + first.from() + "–" + first.to()
                    + (i == j ? "" : " to " + last.from() + "–" + last.to()) + ": " + value(first));
            i = j + 1;
        }
        return String.join(", ", out);
    }

    private static String furthest(List<PairReading> sound, List<PairReading> read) {
        int at = 0;
        for (int i = 1; i < read.size(); i++) {
            if (Math.abs(read.get(i).value() - sound.get(i).value())
                    > Math.abs(read.get(at).value() - sound.get(at).value()) + 1e-9) {
                at = i;
            }
        }
        PairReading r = read.get(at);
        return "most so " + r.from() + "–" + r.to() + " (" + value(sound.get(at)) + " → " + value(r) + ")";
    }

    private String meaning(Fault f) {
        boolean drop = !test.ohms();
        if (f instanceof Fault.OpenCoil o) {
            return words(f) + ": " + leads(o.coil())
                    + (drop
                            ? "; no current flows in its way from feed to feed, all of it in the other, and whatever pair"
                                    + " spans the break reads the whole drop from there round"
                            : "; between bars that it parts the only way left is the long one round");
        } else if (f instanceof Fault.ShortedCoil s) {
            return words(f) + ": " + leads(s.coil())
                    + "; a coil without resistance drops nothing, and its way takes more of the current";
        } else if (f instanceof Fault.BarShort b) {
            return words(f) + ": bars " + b.bar() + " and " + b.otherBar()
                    + " stand at one potential, so the pair reads 0, whatever coils lie between";
        } else if (f instanceof Fault.ShortedTurns s) {
            return words(f) + ": " + leads(s.coil()) + "; it has " + Figures.number(milliohms) + " × "
                    + Figures.number(1 - s.fraction()) + " = " + Figures.number(milliohms * (1 - s.fraction()))
                    + " mΩ left, and drops less than its neighbours in series";
        } else if (f instanceof Fault.HighResistance h) {
            return words(f) + ": " + leads(h.coil()) + "; with the joint it has " + Figures.number(milliohms) + " + "
                    + Figures.number(h.ohms()) + " = " + Figures.number(milliohms + h.ohms())
                    + " mΩ, and drops more than its neighbours in series";
        }
        Fault.CrossedLeads c = (Fault.CrossedLeads) f;
        return words(f) + ": the coils there reach bar " + c.otherBar() + " instead of bar " + c.bar()
                + " and the other way round, so that pairs beside them span a coil more or a coil less"
                + (drop ? ", and a pair between may change its sign" : "");
    }

    private String leads(int coil) {
        Coil c = winding().coil(coil);
        return "it lies between bars " + c.topBar().getAsInt() + " and "
                + c.bottomBar().getAsInt();
    }

    /** How far the readings stand from those of the next best fault. */
    private String nearest() {
        List<PairReading> read = read(Optional.of(faults.get(0)));
        double least = Double.POSITIVE_INFINITY;
        Optional<Fault> next = Optional.empty();
        for (Fault other : taught(winding(), grade, milliohms)) {
            if (!faults.contains(other)) {
                double apart = apart(read, read(Optional.of(other)));
                // Of several as near, the first, and not the one that rounding makes the nearest.
                if (apart < least - 1e-9 * milliohms) {
                    least = apart;
                    next = Optional.of(other);
                }
            }
        }
        if (next.isEmpty()) {
            return "with any other some pair would be open that is not, or the other way round";
        }
        return "the next like it, " + words(next.get()) + ", would be off by " + Figures.fixed(least, DECIMALS) + " "
                + unit() + " at some pair";
    }

    @Override
    public Optional<Drawing> picture() {
        if (test instanceof BenchTest.Drop d) {
            return Optional.of(Pictures.touched(
                    winding(),
                    Optional.of(new BenchTest.Pair(d.in(), d.out())),
                    Optional.of(new BenchTest.Pair(1, 2)),
                    "mV"));
        }
        return Optional.of(Pictures.touched(winding(), Optional.empty(), Optional.of(new BenchTest.Pair(1, 2)), "Ω"));
    }

    @Override
    public Optional<Drawing> keyPicture() {
        if (!Pictures.small(armature)) {
            return Optional.empty();
        }
        Fault f = faults.get(0);
        return Optional.of(Pictures.developed(
                winding(), new Highlight(new TreeSet<>(f.coils()), new TreeSet<>(f.bars()), Set.of()), false));
    }
}
