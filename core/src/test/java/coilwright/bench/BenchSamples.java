package coilwright.bench;

import coilwright.circuit.WindingGraph;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Windings of every kind, and armatures of them with every kind of fault. */
final class BenchSamples {
    /** Kinds of winding, in the order in which they are drawn. */
    enum Kind {
        LAP,
        MULTIPLEX_LAP,
        WAVE,
        MULTIPLEX_WAVE,
        DEAD_COILS,
        FROG_LEG,
        LISTED
    }

    /** All kinds of winding. */
    static final List<Kind> KINDS = List.of(Kind.values());

    /** Kinds of fault, one for each record of {@link Fault}. */
    static final int FAULT_KINDS = 12;

    private BenchSamples() {}

    /** An armature with what was done to it. */
    record Sample(Kind kind, BenchArmature armature, List<Fault> faults, boolean equalized) {
        @Override
        public String toString() {
            return kind + " " + armature.winding().armature() + " "
                    + armature.winding().spec() + (equalized ? " equalized" : "") + " with "
                    + faults.stream().map(Fault::words).toList();
        }
    }

    static Arbitrary<Sample> samples() {
        return Arbitraries.integers().between(0, 1_000_000).map(i -> nth(i, new Random(i)));
    }

    static Arbitrary<Sample> soundAndSymmetric() {
        return sound(List.of(Kind.LAP, Kind.MULTIPLEX_LAP, Kind.WAVE, Kind.MULTIPLEX_WAVE, Kind.FROG_LEG), true);
    }

    static Arbitrary<Sample> soundAndSimplex() {
        return sound(List.of(Kind.LAP, Kind.WAVE), false);
    }

    private static Arbitrary<Sample> sound(List<Kind> kinds, boolean someEqualized) {
        return Arbitraries.integers().between(0, 1_000_000).map(i -> {
            Random random = new Random(i);
            Kind kind = kinds.get(i % kinds.size());
            BenchArmature a = BenchArmature.sound(winding(kind, random), 0.1 + random.nextDouble());
            boolean equalize = someEqualized && random.nextBoolean();
            return new Sample(kind, equalize ? equalized(a) : a, List.of(), equalize);
        });
    }

    /** The samples by number go through the kinds of windings, and for each in turn through the kinds of faults. */
    static Sample nth(int number, Random random) {
        return sample(number % KINDS.size(), number / KINDS.size() % (FAULT_KINDS + 1), random);
    }

    /** A sample with a winding of one kind and at least one fault of one kind; none of either where it is 0. */
    static Sample sample(int kind, int fault, Random random) {
        Kind wanted = KINDS.get(kind);
        Winding w = winding(wanted, random);
        BenchArmature a = BenchArmature.sound(w, 0.05 + 2 * random.nextDouble());
        boolean equalize = random.nextInt(2) == 0;
        if (equalize) {
            a = equalized(a);
        }
        List<Fault> faults = new ArrayList<>();
        for (int i = 0; fault > 0 && i < 1 + random.nextInt(3); i++) {
            Fault f = fault(w, i == 0 ? fault - 1 : random.nextInt(FAULT_KINDS), random);
            faults.add(f);
            a = f.in(a);
        }
        return new Sample(wanted, a, faults, equalize);
    }

    /** With a ring on every set of bars of one potential. */
    static BenchArmature equalized(BenchArmature a) {
        return a.withEqualizers(WindingGraph.of(a.winding()).equipotentialBars());
    }

    static Winding winding(Kind kind, Random random) {
        while (true) {
            try {
                Optional<Winding> made = attempt(kind, random);
                if (made.isPresent()) {
                    return made.get();
                }
            } catch (ImpossibleWindingException e) {
                // The numbers drawn make no winding: draw again.
            }
        }
    }

    private static Optional<Winding> attempt(Kind kind, Random random) {
        int poles = 2 * (1 + random.nextInt(4));
        int u = 1 + random.nextInt(3);
        int slots = 5 + random.nextInt(20);
        Direction direction = random.nextBoolean() ? Direction.PROGRESSIVE : Direction.RETROGRESSIVE;
        int offset = random.nextInt(7) - 3;
        int usual = Math.max(1, slots / poles);
        CoilSpan span = switch (random.nextInt(4)) {
            case 0 -> CoilSpan.ofPositions(Math.max(1, usual * u + random.nextInt(3) - 1));
            case 1 -> CoilSpan.ofThrow(Math.max(1, usual - 1));
            default -> CoilSpan.usual();
        };
        var alignment = random.nextBoolean() ? SlotAlignment.BAR : SlotAlignment.MICA;
        int dead = kind == Kind.DEAD_COILS ? 1 + random.nextInt(2) : 0;
        int bars = slots * u - dead;
        if (bars > 45) {
            return Optional.empty();
        }
        var armature = new Armature(slots, bars, poles, alignment);
        return switch (kind) {
            case LAP, MULTIPLEX_LAP, WAVE, MULTIPLEX_WAVE, DEAD_COILS -> {
                boolean lap = kind == Kind.LAP
                        || kind == Kind.MULTIPLEX_LAP
                        || (kind == Kind.DEAD_COILS && random.nextBoolean());
                int plex = kind == Kind.MULTIPLEX_LAP || kind == Kind.MULTIPLEX_WAVE ? 2 + random.nextInt(2) : 1;
                List<Integer> out = new ArrayList<>();
                while (out.size() < dead) {
                    int n = 1 + random.nextInt(slots * u);
                    if (!out.contains(n)) {
                        out.add(n);
                    }
                }
                yield Optional.of(Winding.build(
                        armature,
                        new WindingSpec.Regular(
                                lap ? WindingType.LAP : WindingType.WAVE, plex, direction, span, out, offset)));
            }
            case FROG_LEG ->
                Optional.of(Winding.build(
                        armature, new WindingSpec.FrogLeg(1 + random.nextInt(2), direction, CoilSpan.usual(), offset)));
            case LISTED -> Optional.of(listed(armature, direction, random));
        };
    }

    /** A lap winding as a list, with some lines changed: leads loose, moved or on one bar, coils gone. */
    private static Winding listed(Armature armature, Direction direction, Random random) {
        var whole = Winding.build(armature, WindingSpec.lap(1, direction)).asListed();
        List<ListedCoil> lines = new ArrayList<>(whole.coils());
        for (int i = random.nextInt(4); i >= 0; i--) {
            int at = random.nextInt(lines.size());
            ListedCoil c = lines.get(at);
            OptionalInt elsewhere = OptionalInt.of(1 + random.nextInt(armature.bars()));
            switch (random.nextInt(5)) {
                case 0 -> lines.set(at, ListedCoil.dead(c.coil(), c.topSlot(), c.bottomSlot()));
                case 1 ->
                    lines.set(
                            at,
                            new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), OptionalInt.empty(), c.bottomBar()));
                case 2 -> lines.set(at, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.topBar(), elsewhere));
                case 3 ->
                    lines.set(at, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), elsewhere, c.bottomBar()));
                default -> lines.remove(at);
            }
        }
        return Winding.build(armature, new WindingSpec.Listed(lines));
    }

    static Fault fault(Winding w, int kind, Random random) {
        List<Coil> live = w.liveCoils();
        Coil one = live.get(random.nextInt(live.size()));
        // Faults that need no leads are put into dead coils too.
        Coil any = w.coils().get(random.nextInt(w.coils().size()));
        int bars = w.armature().bars();
        int bar = 1 + random.nextInt(bars);
        int next = w.armature().wrapBar(bar + 1);
        double part = (1 + random.nextInt(9)) / 10.0;
        return switch (kind) {
            case 0 -> new Fault.OpenCoil(one.number());
            case 1 -> new Fault.ShortedCoil(one.number());
            case 2 -> new Fault.ShortedTurns(any.number(), part);
            case 3 -> new Fault.HighResistance(one.number(), 0.01 + 3 * random.nextDouble());
            case 4 -> new Fault.BarShort(bar, next);
            case 5 -> slotShort(w, random);
            case 6 -> new Fault.Ground(Point.bar(bar));
            case 7 -> new Fault.Ground(new Point.Inside(any.number(), part));
            case 8 -> new Fault.ReversedCoil(one.number());
            case 9 ->
                new Fault.CrossedLeads(bar, next, List.of(Fault.Leads.values()).get(random.nextInt(3)));
            case 10 -> new Fault.WrongBar(one.number(), random.nextBoolean(), bar);
            case 11 -> new Fault.WrongTurns(one.number(), 0.3 + random.nextDouble());
            default -> throw new AssertionError(kind);
        };
    }

    private static Fault slotShort(Winding w, Random random) {
        while (true) {
            int slot = 1 + random.nextInt(w.armature().slots());
            List<Coil> there = w.coils().stream().filter(c -> c.lies(slot)).toList();
            if (there.size() >= 2) {
                int i = random.nextInt(there.size());
                int j = (i + 1 + random.nextInt(there.size() - 1)) % there.size();
                return new Fault.SlotShort(
                        there.get(i).number(),
                        (1 + random.nextInt(9)) / 10.0,
                        there.get(j).number(),
                        (1 + random.nextInt(9)) / 10.0);
            }
        }
    }
}
