package coilwright.lesson;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.circuit.Step;
import coilwright.circuit.WindingGraph;
import coilwright.drawing.Drawing;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Say what a test should read.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec the winding
 * @param milliohms resistance of one sound coil, over 0
 * @param test a drop test, a resistance test or a growler walked round
 * @param fault an open or shorted coil, known beforehand; empty where the winding is sound
 * @param pairs asked for, in order
 */
public record ReadingsExercise(
        int grade,
        Armature armature,
        WindingSpec.Regular spec,
        double milliohms,
        BenchTest test,
        Optional<Fault> fault,
        List<BenchTest.Pair> pairs)
        implements Exercise {
    /**
     * Copies the list.
     *
     * @param grade 1 to 3
     * @param armature core and commutator
     * @param spec the winding
     * @param milliohms resistance of one sound coil, over 0
     * @param test a drop test, a resistance test or a growler walked round
     * @param fault an open or shorted coil, known beforehand; empty where the winding is sound
     * @param pairs asked for, in order
     */
    public ReadingsExercise {
        pairs = List.copyOf(pairs);
    }

    static ReadingsExercise make(Dice dice, int grade) {
        while (true) {
            int which = dice.from(1, grade == 1 ? 2 : 3);
            boolean growler = which == 3;
            Winding w = Made.winding(
                    dice,
                    grade == 3 ? 2 : 1,
                    grade == 1 ? 12 : 20,
                    x -> !growler || Made.spec(x).plex() == 1);
            if (grade == 1 && w.type() != WindingType.LAP) {
                continue;
            }
            double milliohms = dice.of(40, 50, 60, 80, 100, 120, 150, 200);
            Optional<Fault> fault = Optional.empty();
            if (grade == 3 && !growler && w.closures().orElseThrow() == 1) {
                int coil = dice.from(1, w.coils().size());
                fault = Optional.of(dice.oneIn(2) ? new Fault.OpenCoil(coil) : new Fault.ShortedCoil(coil));
            }
            BenchTest test = switch (which) {
                case 1 -> {
                    FeedBars feed = dice.of(FeedBars.advised(w, false));
                    yield new BenchTest.Drop(feed.in(), feed.out(), dice.of(1, 2, 4, 5, 10));
                }
                case 2 -> new BenchTest.Resistance();
                default -> new BenchTest.GrowlerWalked(Growler.USUAL, 5 * dice.from(0, 71));
            };
            var made = new ReadingsExercise(
                    grade, w.armature(), Made.spec(w), milliohms, test, fault, pairs(dice, w, test, fault));
            if (made.clear()) {
                return made;
            }
        }
    }

    private static List<BenchTest.Pair> pairs(Dice dice, Winding w, BenchTest test, Optional<Fault> fault) {
        int k = w.armature().bars();
        List<BenchTest.Pair> out = new ArrayList<>();
        fault.ifPresent(f -> {
            Coil c = w.coil(f.coils().get(0));
            if (w.type() == WindingType.LAP) {
                out.add(new BenchTest.Pair(c.topBar().getAsInt(), c.bottomBar().getAsInt()));
            }
        });
        while (out.size() < 3) {
            int from = dice.from(1, k);
            int on = test instanceof BenchTest.Resistance && !out.isEmpty() ? dice.from(2, k - 2) : 1;
            var pair = new BenchTest.Pair(from, w.armature().wrapBar(from + on));
            if (!out.contains(pair)) {
                out.add(pair);
            }
        }
        return out;
    }

    /** Whether every value is rounded one way by everybody, and some read something. */
    private boolean clear() {
        List<PairReading> read = read();
        double most = PairReading.largest(read);
        return most > 0.01
                && read.stream().allMatch(r -> Double.isInfinite(r.value()) || Figures.clear(r.value(), decimals()));
    }

    private boolean growler() {
        return test instanceof BenchTest.GrowlerWalked;
    }

    private int decimals() {
        return growler() ? 2 : 1;
    }

    private String unit() {
        return growler() ? "" : test.ohms() ? "mΩ" : "mV";
    }

    private Winding winding() {
        return Winding.build(armature, spec);
    }

    /** In millivolts, milliohms, or faces of flux. */
    private List<PairReading> read() {
        BenchArmature sound = BenchArmature.sound(winding(), growler() ? 1 : milliohms);
        return test.read(fault.map(f -> f.in(sound)).orElse(sound), pairs);
    }

    @Override
    public Kind kind() {
        return Kind.READINGS;
    }

    @Override
    public List<String> question() {
        List<String> out = new ArrayList<>();
        out.add("Given: " + Made.core(armature) + "; " + Made.winding(armature, spec)
                + (growler()
                        ? "."
                        : "; every coil has " + Figures.number(milliohms) + " mΩ, joints and bars nothing."));
        fault.ifPresent(f -> out.add("One thing is wrong: " + f.words() + "."));
        String which = Figures.list(
                pairs.stream().map(p -> "bars " + p.from() + " and " + p.to()).toList());
        if (test instanceof BenchTest.Drop d) {
            out.add("Drop test: " + Figures.number(d.amperes()) + " A of direct current in at bar " + d.in()
                    + " and out at bar " + d.out() + ". What does a millivoltmeter read between " + which
                    + ", + probe on the bar named first? In mV, to one decimal, with its sign.");
        } else if (growler()) {
            out.add(String.join(
                    " ",
                    "Growler: two faces, each " + Figures.number(Growler.USUAL.face()) + "° wide, their middles at "
                            + Figures.degrees(Growler.USUAL.rightFace()) + " and "
                            + Figures.degrees(Growler.USUAL.leftFace())
                            + " clockwise from straight up; the flux goes in through one and out through the other. Slot 1 stands at "
                            + Figures.degrees(angle()) + ".",
                    "A coil through which the whole flux of one face goes reads 1. What does the meter read between "
                            + which + "? To two decimals, without sign."));
        } else {
            out.add("Nothing else is connected. What does a low-resistance ohmmeter read between " + which
                    + "? In mΩ, to one decimal; \"open\" where nothing joins the two.");
        }
        return List.copyOf(out);
    }

    private double angle() {
        return ((BenchTest.GrowlerWalked) test).angle();
    }

    @Override
    public List<Answer> answers() {
        List<Answer> out = new ArrayList<>();
        for (PairReading r : read()) {
            String what = "bars " + r.from() + " and " + r.to();
            out.add(
                    Double.isInfinite(r.value())
                            ? Answer.word(what, "open", "open")
                            : Answer.of(what, Figures.fixed(r.value(), decimals()), unit()));
        }
        return List.copyOf(out);
    }

    @Override
    public List<String> asked() {
        return pairs.stream()
                .map(p -> "bars " + p.from() + " and " + p.to() + (unit().isEmpty() ? "" : ", " + unit()))
                .toList();
    }

    @Override
    public List<String> steps() {
        Winding w = winding();
        List<String> out = new ArrayList<>();
        out.add("commutator pitch " + Figures.signed(w.pitches().orElseThrow().commutator()) + ": the coils make "
                + Figures.count(w.closures().orElseThrow(), "closed circuit")
                + (w.closures().orElseThrow() == 1
                        ? " of all " + armature.bars() + " coils"
                        : ", each of " + armature.bars() / w.closures().orElseThrow() + " coils"));
        List<Answer> answers = answers();
        var ring = new RingWorking(w, milliohms, fault);
        if (test instanceof BenchTest.Drop d) {
            out.addAll(ring.currents(d));
        }
        for (int i = 0; i < pairs.size(); i++) {
            BenchTest.Pair p = pairs.get(i);
            String answer = answers.get(i).printed();
            if (test instanceof BenchTest.Drop d) {
                out.add(ring.drop(d, p.from(), p.to(), answer));
            } else if (growler()) {
                out.add(flux(w, p, answer));
            } else {
                out.add(ring.resistance(p.from(), p.to(), answer));
            }
        }
        return List.copyOf(out);
    }

    private String flux(Winding w, BenchTest.Pair p, String answer) {
        List<Step> way = WindingGraph.of(w).between(p.from(), p.to()).get(0);
        List<String> coils = new ArrayList<>();
        for (Step s : way) {
            double volts = Growler.USUAL.coilVolts(armature, s.coil(), angle()) * (s.forward() ? 1 : -1);
            double top = turn(angle() + armature.slotCentre(s.coil().top().slot()));
            double bottom = turn(angle() + armature.slotCentre(s.coil().bottom().slot()));
            coils.add("coil " + s.coil().number() + " with sides at " + Figures.degrees(top) + " and "
                    + Figures.degrees(bottom) + (s.forward() ? "" : ", passed backwards,") + " encloses "
                    + Figures.number(volts));
        }
        return "bars " + p.from() + " and " + p.to() + ": " + String.join("; ", coils)
                + (way.size() == 1 ? "" : "; in sum, without sign,") + " → " + answer;
    }

    private static double turn(double degrees) {
        return degrees - 360 * Math.floor(degrees / 360);
    }

    @Override
    public Optional<Drawing> picture() {
        BenchTest.Pair first = pairs.get(0);
        if (growler()) {
            return Optional.of(Pictures.growler(winding(), angle(), first, false));
        }
        Optional<BenchTest.Pair> feed =
                test instanceof BenchTest.Drop d ? Optional.of(new BenchTest.Pair(d.in(), d.out())) : Optional.empty();
        return Optional.of(Pictures.touched(winding(), feed, Optional.of(first), test.ohms() ? "Ω" : "mV"));
    }
}
