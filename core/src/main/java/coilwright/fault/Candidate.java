package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleFunction;

/**
 * A fault whose size may be free: it is a fault for every share from 0 to 1 of its range.
 *
 * @param kind word of the kind
 * @param prior weight of this fault at this place before any reading
 * @param sized whether its size is free
 * @param fault the fault at a share of its range
 */
record Candidate(String kind, double prior, boolean sized, DoubleFunction<Fault> fault) {
    static final double LEAST_SHORTED = 0.15;
    static final double MOST_SHORTED = 0.95;
    static final double LEAST_JOINT = 0.25;
    static final double MOST_JOINT = 50;
    static final double FEWEST_TURNS = 0.50;
    static final double MOST_TURNS = 1.50;
    static final double LEAST_TURN_ERROR = 0.15;

    static Candidate fixed(Fault fault, double prior) {
        return new Candidate(fault.kind(), prior, false, share -> fault);
    }

    static Candidate shortedTurns(int coil, double prior) {
        return new Candidate("shorted-turns", prior, true, share -> {
            // Even steps in the conductance left, since that is what the readings follow.
            double low = 1 / (1 - LEAST_SHORTED);
            double high = 1 / (1 - MOST_SHORTED);
            return new Fault.ShortedTurns(coil, 1 - 1 / between(low, high, share));
        });
    }

    static Candidate highResistance(int coil, double soundOhms, double prior) {
        return new Candidate(
                "high-resistance",
                prior,
                true,
                share -> new Fault.HighResistance(coil, soundOhms * between(LEAST_JOINT, MOST_JOINT, share)));
    }

    static Candidate fewTurns(int coil, double prior) {
        return new Candidate(
                "wrong-turns",
                prior,
                true,
                share -> new Fault.WrongTurns(coil, between(FEWEST_TURNS, 1 - LEAST_TURN_ERROR, share)));
    }

    static Candidate manyTurns(int coil, double prior) {
        return new Candidate(
                "wrong-turns",
                prior,
                true,
                share -> new Fault.WrongTurns(coil, between(1 + LEAST_TURN_ERROR, MOST_TURNS, share)));
    }

    static Candidate slotShort(int coil, double along, int other, double prior) {
        return new Candidate(
                "slot-short", prior, true, share -> new Fault.SlotShort(coil, along, other, 0.02 + 0.96 * share));
    }

    static Candidate groundedCoil(int coil, double prior) {
        return new Candidate(
                "ground", prior, true, share -> new Fault.Ground(new Point.Inside(coil, 0.02 + 0.96 * share)));
    }

    private static double between(double low, double high, double share) {
        return low * Math.pow(high / low, share);
    }

    /**
     * What faults amount to between bars.
     *
     * @param list the alterations
     * @param alone bars left without any coil; the last coil is left hanging on each, which changes nothing elsewhere
     */
    record Altered(List<Alteration> list, Set<Integer> alone) {}

    /** The alterations between bars that faults amount to; empty where they are not told by bars alone. */
    static Optional<Altered> alterations(BenchArmature sound, List<Fault> faults) {
        BenchArmature faulty = sound;
        List<Alteration> out = new ArrayList<>();
        for (Fault fault : faults) {
            if (fault instanceof Fault.ShortedCoil f) {
                CoilState c = faulty.coil(f.coil());
                if (!c.connected()) {
                    return Optional.empty();
                }
                out.add(Alteration.joined(c.topBar().getAsInt(), c.bottomBar().getAsInt()));
            } else if (fault instanceof Fault.ShortedTurns f) {
                CoilState c = faulty.coil(f.coil());
                faulty = faulty.with(c.withTurns(c.turns() * (1 - f.fraction())));
            } else if (fault instanceof Fault.BarShort f) {
                out.add(Alteration.joined(f.bar(), f.otherBar()));
            } else if (fault instanceof Fault.SlotShort f) {
                if (faults.size() > 1 || !addSlotShort(out, sound, f)) {
                    return Optional.empty();
                }
            } else if (fault instanceof Fault.Ground) {
                if (faults.stream().filter(Fault.Ground.class::isInstance).count() > 1) {
                    return Optional.empty();
                }
            } else {
                faulty = fault.in(faulty);
            }
        }
        for (CoilState was : sound.coils()) {
            CoilState is = faulty.coil(was.coil());
            if (!is.equals(was) && !add(out, was, is)) {
                return Optional.empty();
            }
        }
        return Optional.of(hang(sound, faulty, out));
    }

    private static Altered hang(BenchArmature sound, BenchArmature faulty, List<Alteration> alterations) {
        Set<Integer> alone = new TreeSet<>();
        if (!sound.bonds().isEmpty()) {
            return new Altered(alterations, alone);
        }
        for (Alteration a : alterations) {
            for (int bar : new int[] {a.from(), a.to()}) {
                if (isAlone(faulty, alterations, bar)) {
                    alone.add(bar);
                }
            }
        }
        List<Alteration> kept = new ArrayList<>(alterations);
        for (int bar : alone) {
            for (int i = 0; i < kept.size(); i++) {
                Alteration a = kept.get(i);
                if (a.conductance() < 0 && (a.from() == bar || a.to() == bar)) {
                    kept.remove(i);
                    break;
                }
            }
        }
        return new Altered(kept, alone);
    }

    private static boolean isAlone(BenchArmature faulty, List<Alteration> alterations, int bar) {
        if (alterations.stream().anyMatch(a -> a.conductance() > 0 && (a.from() == bar || a.to() == bar))) {
            return false;
        }
        for (CoilState c : faulty.coils()) {
            if (c.connected() && !c.open()) {
                int top = c.topBar().getAsInt();
                int bottom = c.bottomBar().getAsInt();
                if (top != bottom && (top == bar || bottom == bar)) {
                    return false;
                }
            }
        }
        return true;
    }

    /**
     * Two coils touching are four arms that meet in one place; the star is replaced by the mesh between their bars
     * that does the same.
     */
    private static boolean addSlotShort(List<Alteration> out, BenchArmature sound, Fault.SlotShort f) {
        CoilState first = sound.coil(f.coil());
        CoilState second = sound.coil(f.otherCoil());
        if (!first.connected() || !second.connected() || first.open() || second.open()) {
            return false;
        }
        int[] bar = new int[4];
        double[] arm = new double[4];
        double[] drive = new double[4];
        int[] coil = new int[4];
        int at = 0;
        for (boolean isFirst : new boolean[] {true, false}) {
            CoilState c = isFirst ? first : second;
            double along = isFirst ? f.fraction() : f.otherFraction();
            double g = RunModel.conductance(c);
            int top = c.topBar().getAsInt();
            int bottom = c.bottomBar().getAsInt();
            out.add(new Alteration(top, bottom, -g, c.coil(), -g));
            bar[at] = top;
            arm[at] = g / along;
            drive[at] = along;
            coil[at++] = c.coil();
            bar[at] = bottom;
            arm[at] = g / (1 - along);
            drive[at] = along - 1;
            coil[at++] = c.coil();
        }
        double sum = arm[0] + arm[1] + arm[2] + arm[3];
        for (int i = 0; i < 4; i++) {
            for (int j = i + 1; j < 4; j++) {
                if (bar[i] == bar[j]) {
                    continue;
                }
                double g = arm[i] * arm[j] / sum;
                out.add(new Alteration(bar[i], bar[j], g, coil[i], g * drive[i]));
                out.add(new Alteration(bar[i], bar[j], 0, coil[j], -g * drive[j]));
            }
        }
        return true;
    }

    private static boolean add(List<Alteration> out, CoilState was, CoilState is) {
        if (!was.connected() || !is.connected()) {
            return false;
        }
        double before = was.open() ? 0 : RunModel.conductance(was);
        double after = is.open() ? 0 : RunModel.conductance(is);
        double driveBefore = before;
        double driveAfter = after * is.turns() / was.turns();
        int top = was.topBar().getAsInt();
        int bottom = was.bottomBar().getAsInt();
        if (same(was.topBar(), is.topBar()) && same(was.bottomBar(), is.bottomBar())) {
            out.add(new Alteration(top, bottom, after - before, was.coil(), driveAfter - driveBefore));
            return true;
        }
        if (same(was.topBar(), is.bottomBar()) && same(was.bottomBar(), is.topBar())) {
            out.add(new Alteration(top, bottom, after - before, was.coil(), -driveAfter - driveBefore));
            return true;
        }
        out.add(new Alteration(top, bottom, -before, was.coil(), -driveBefore));
        int newTop = is.topBar().getAsInt();
        int newBottom = is.bottomBar().getAsInt();
        if (newTop != newBottom) {
            out.add(new Alteration(newTop, newBottom, after, was.coil(), driveAfter));
        }
        return true;
    }

    private static boolean same(OptionalInt a, OptionalInt b) {
        return a.equals(b);
    }
}
