package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.Bond;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/** One thing wrong with a winding. */
public sealed interface Fault {
    /** {@return the word for the kind in files and output} */
    String kind();

    /**
     * {@return the armature with this fault besides what it has}
     *
     * @param armature the armature as it is on the bench
     */
    BenchArmature in(BenchArmature armature);

    /**
     * {@return the armature with several faults besides what it has}
     *
     * @param armature the armature as it is on the bench
     * @param faults one after the other
     */
    static BenchArmature all(BenchArmature armature, List<Fault> faults) {
        BenchArmature out = armature;
        for (Fault f : faults) {
            out = f.in(out);
        }
        return out;
    }

    /** {@return numbers of the coils it sits in; empty where it sits on bars} */
    default List<Integer> coils() {
        return List.of();
    }

    /** {@return the bars it sits on; empty where it sits in coils} */
    default List<Integer> bars() {
        return List.of();
    }

    /** {@return the fault in words} */
    String words();

    /** A fault of one coil's own wire or leads, told by the state of that coil alone. */
    sealed interface OfCoil extends Fault {
        /** {@return number of the coil} */
        int coil();

        /**
         * {@return the coil with this fault besides what it has}
         *
         * @param coil the coil with what it has already
         */
        CoilState in(CoilState coil);

        @Override
        default BenchArmature in(BenchArmature armature) {
            return armature.with(in(armature.coil(coil())));
        }

        @Override
        default List<Integer> coils() {
            return List.of(coil());
        }
    }

    /** Which leads of two neighbouring bars are crossed. */
    enum Leads {
        /** The top leads. */
        TOP,
        /** The bottom leads. */
        BOTTOM,
        /** Both leads of each bar. */
        BOTH;

        /** {@return the place of the crossing in words} */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** A broken wire, or a lead off its bar. */
    record OpenCoil(int coil) implements OfCoil {
        @Override
        public String kind() {
            return "open-coil";
        }

        @Override
        public CoilState in(CoilState c) {
            return c.broken();
        }

        @Override
        public String words() {
            return "coil " + coil + " open";
        }
    }

    /** All turns of a coil shorted: its two ends touch. */
    record ShortedCoil(int coil) implements Fault {
        @Override
        public String kind() {
            return "shorted-coil";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            CoilState c = armature.coil(coil);
            int top = c.topBar().orElseThrow();
            int bottom = c.bottomBar().orElseThrow();
            return top == bottom ? armature : armature.with(Bond.direct(Point.bar(top), Point.bar(bottom)));
        }

        @Override
        public List<Integer> coils() {
            return List.of(coil);
        }

        @Override
        public String words() {
            return "coil " + coil + " shorted";
        }
    }

    /**
     * Some turns of a coil shorted.
     *
     * @param fraction of its turns, over 0 and under 1
     */
    record ShortedTurns(int coil, double fraction) implements Fault {
        /**
         * Checks the fraction.
         *
         * @param coil the coil of the turns
         * @param fraction of its turns, over 0 and under 1
         */
        public ShortedTurns {
            if (!(fraction > 0 && fraction < 1)) {
                throw new IllegalArgumentException(
                        "the share of shorted turns is " + fraction + ", but must be over 0 and under 1");
            }
        }

        @Override
        public String kind() {
            return "shorted-turns";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            return armature.with(Bond.direct(
                    new Point.Inside(coil, 0.5 - fraction / 2), new Point.Inside(coil, 0.5 + fraction / 2)));
        }

        @Override
        public List<Integer> coils() {
            return List.of(coil);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "coil %d with %.0f %% of its turns shorted", coil, fraction * 100);
        }
    }

    /**
     * A bad joint in series with a coil.
     *
     * @param ohms added, over 0
     */
    record HighResistance(int coil, double ohms) implements OfCoil {
        @Override
        public String kind() {
            return "high-resistance";
        }

        @Override
        public CoilState in(CoilState c) {
            return c.withJoint(c.jointOhms() + ohms);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "bad joint at coil %d, about %.3g ohm", coil, ohms);
        }
    }

    /** Two bars touching. */
    record BarShort(int bar, int otherBar) implements Fault {
        @Override
        public String kind() {
            return "bar-short";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            return armature.with(Bond.direct(Point.bar(bar), Point.bar(otherBar)));
        }

        @Override
        public List<Integer> bars() {
            return List.of(bar, otherBar);
        }

        @Override
        public String words() {
            return "bars " + bar + " and " + otherBar + " joined";
        }
    }

    /**
     * Two coils touching across the layers of a slot they share.
     *
     * @param fraction place along the first coil from its top lead
     * @param otherFraction place along the other
     */
    record SlotShort(int coil, double fraction, int otherCoil, double otherFraction) implements Fault {
        @Override
        public String kind() {
            return "slot-short";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            return armature.with(Bond.direct(place(), otherPlace()));
        }

        /** Where it touches along the first coil. */
        Point place() {
            return new Point.Inside(coil, fraction);
        }

        /** Where it touches along the other coil. */
        Point otherPlace() {
            return new Point.Inside(otherCoil, otherFraction);
        }

        @Override
        public List<Integer> coils() {
            return List.of(coil, otherCoil);
        }

        @Override
        public String words() {
            return "coils " + coil + " and " + otherCoil + " touching in the slot they share";
        }
    }

    /**
     * A place joined to the core. Two grounds make a short through the core.
     *
     * @param place a bar or a place along a coil
     */
    record Ground(Point place) implements Fault {
        @Override
        public String kind() {
            return "ground";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            return armature.with(Bond.direct(place, Point.shaft()));
        }

        @Override
        public List<Integer> coils() {
            return place instanceof Point.Inside i ? List.of(i.coil()) : List.of();
        }

        @Override
        public List<Integer> bars() {
            return place instanceof Point.Bar b ? List.of(b.number()) : List.of();
        }

        @Override
        public String words() {
            return place instanceof Point.Inside i
                    ? String.format(
                            Locale.ROOT, "coil %d grounded at %.0f %% of its length", i.coil(), i.fraction() * 100)
                    : place + " grounded";
        }
    }

    /** A coil whose two leads are changed over. */
    record ReversedCoil(int coil) implements OfCoil {
        @Override
        public String kind() {
            return "reversed-coil";
        }

        @Override
        public CoilState in(CoilState c) {
            return c.reversed();
        }

        @Override
        public String words() {
            return "coil " + coil + " reversed";
        }
    }

    /** Leads of two bars exchanged. */
    record CrossedLeads(int bar, int otherBar, Leads leads) implements Fault {
        @Override
        public String kind() {
            return "crossed-leads";
        }

        @Override
        public BenchArmature in(BenchArmature armature) {
            BenchArmature out = armature;
            for (CoilState c : armature.coils()) {
                CoilState crossed = in(c);
                if (!crossed.equals(c)) {
                    out = out.with(crossed);
                }
            }
            return out;
        }

        /** One coil with those of its leads exchanged that are concerned. */
        CoilState in(CoilState c) {
            return c.onBars(
                    leads == Leads.BOTTOM ? c.topBar() : swapped(c.topBar()),
                    leads == Leads.TOP ? c.bottomBar() : swapped(c.bottomBar()));
        }

        private OptionalInt swapped(OptionalInt at) {
            if (at.isEmpty() || (at.getAsInt() != bar && at.getAsInt() != otherBar)) {
                return at;
            }
            return OptionalInt.of(at.getAsInt() == bar ? otherBar : bar);
        }

        @Override
        public List<Integer> bars() {
            return List.of(bar, otherBar);
        }

        @Override
        public String words() {
            return (leads == Leads.BOTH ? "all leads" : leads.word() + " leads") + " of bars " + bar + " and "
                    + otherBar + " crossed";
        }
    }

    /**
     * One lead on a bar that is not its own.
     *
     * @param top whether it is the top lead
     * @param bar where it lands
     */
    record WrongBar(int coil, boolean top, int bar) implements OfCoil {
        @Override
        public String kind() {
            return "wrong-bar";
        }

        @Override
        public CoilState in(CoilState c) {
            return top ? c.onBars(OptionalInt.of(bar), c.bottomBar()) : c.onBars(c.topBar(), OptionalInt.of(bar));
        }

        @Override
        public List<Integer> bars() {
            return List.of(bar);
        }

        @Override
        public String words() {
            return (top ? "top" : "bottom") + " lead of coil " + coil + " on bar " + bar;
        }
    }

    /**
     * A coil with more or fewer turns than the others.
     *
     * @param relative turns over the right number, over 0
     */
    record WrongTurns(int coil, double relative) implements OfCoil {
        @Override
        public String kind() {
            return "wrong-turns";
        }

        @Override
        public CoilState in(CoilState c) {
            return c.withTurns(relative);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "coil %d with %.0f %% of the right turns", coil, relative * 100);
        }
    }
}
