package coilwright.winding;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A winding: every coil with its slots and bars. Immutable; built and checked once.
 *
 * <p>A lap, wave or frog-leg winding is sound by construction. A listed winding is whatever the list says.
 */
public final class Winding {
    private final Armature armature;
    private final WindingSpec spec;
    private final int sidesPerSlot;
    private final int layers;
    private final List<CoilSet> sets;
    private final List<Coil> coils;
    private final Map<Integer, Coil> byNumber;

    private Winding(
            Armature armature, WindingSpec spec, int sidesPerSlot, int layers, List<CoilSet> sets, List<Coil> coils) {
        this.armature = armature;
        this.spec = spec;
        this.sidesPerSlot = sidesPerSlot;
        this.layers = layers;
        this.sets = List.copyOf(sets);
        this.coils = List.copyOf(coils);
        Map<Integer, Coil> map = new LinkedHashMap<>();
        for (Coil c : coils) {
            map.put(c.number(), c);
        }
        this.byNumber = Collections.unmodifiableMap(map);
    }

    /**
     * Builds a winding.
     *
     * @param armature core and commutator
     * @param spec how it is wound
     * @return the winding
     * @throws ImpossibleWindingException when it breaks a rule without which it cannot be wound, carrying every such
     *     rule
     */
    public static Winding build(Armature armature, WindingSpec spec) {
        List<Finding> blocking = Rules.blocking(armature, spec);
        if (!blocking.isEmpty()) {
            throw new ImpossibleWindingException(blocking);
        }
        var draft = new Draft(armature, spec);
        if (spec instanceof WindingSpec.Regular regular) {
            return buildRegular(draft, regular);
        }
        if (spec instanceof WindingSpec.FrogLeg frogLeg) {
            return buildFrogLeg(draft, frogLeg);
        }
        return buildListed(armature, (WindingSpec.Listed) spec);
    }

    /**
     * The runs of coils that a lap, wave or frog-leg winding would have, without its coils. No blocking rule may stand
     * against it.
     */
    static List<CoilSet> sets(Armature armature, WindingSpec spec) {
        var draft = new Draft(armature, spec);
        return spec instanceof WindingSpec.FrogLeg frogLeg
                ? frogLegSets(draft, frogLeg)
                : regularSets(draft, (WindingSpec.Regular) spec);
    }

    private static List<CoilSet> regularSets(Draft draft, WindingSpec.Regular spec) {
        var pitches = new Pitches(draft.backSpan(), draft.commutatorPitch().orElseThrow(), draft.sidesPerSlot());
        return List.of(new CoilSet(
                spec.type(),
                OptionalInt.of(spec.plex()),
                Optional.of(spec.direction()),
                Optional.of(pitches),
                1,
                draft.positions()));
    }

    private static List<CoilSet> frogLegSets(Draft draft, WindingSpec.FrogLeg spec) {
        Armature a = draft.armature();
        int u = draft.sidesPerSlot();
        int q = draft.positions();
        int p = a.polePairs();
        var lap = new Pitches(draft.backSpan(), draft.commutatorPitch().orElseThrow(), u);
        var wave = new Pitches(q / p - lap.backSpan(), a.bars() / p - lap.commutator(), u);
        return List.of(
                new CoilSet(
                        WindingType.LAP,
                        OptionalInt.of(spec.plex()),
                        Optional.of(spec.direction()),
                        Optional.of(lap),
                        1,
                        q),
                new CoilSet(
                        WindingType.WAVE,
                        OptionalInt.of(p * spec.plex()),
                        Optional.of(spec.direction().reversed()),
                        Optional.of(wave),
                        q + 1,
                        q));
    }

    private static Winding buildRegular(Draft draft, WindingSpec.Regular spec) {
        int u = draft.sidesPerSlot();
        List<CoilSet> sets = regularSets(draft, spec);
        Pitches pitches = sets.get(0).pitches().orElseThrow();
        int q = draft.positions();
        boolean[] dead = new boolean[q + 1];
        for (int n : spec.deadCoils()) {
            dead[n] = true;
        }
        List<Coil> coils = new ArrayList<>(q);
        int rank = 0;
        for (int n = 1; n <= q; n++) {
            OptionalInt topBar = OptionalInt.empty();
            OptionalInt bottomBar = OptionalInt.empty();
            if (!dead[n]) {
                int bar = draft.armature().wrapBar(1 + rank + spec.leadOffset());
                topBar = OptionalInt.of(bar);
                bottomBar = OptionalInt.of(draft.armature().wrapBar(bar + pitches.commutator()));
                rank++;
            }
            coils.add(new Coil(n, 0, side(n, q, u, 1), side(n + pitches.backSpan(), q, u, 2), topBar, bottomBar));
        }
        return new Winding(draft.armature(), spec, u, 2, sets, coils);
    }

    private static Winding buildFrogLeg(Draft draft, WindingSpec.FrogLeg spec) {
        Armature a = draft.armature();
        int u = draft.sidesPerSlot();
        int q = draft.positions();
        List<CoilSet> sets = frogLegSets(draft, spec);
        Pitches lap = sets.get(0).pitches().orElseThrow();
        Pitches wave = sets.get(1).pitches().orElseThrow();
        List<Coil> coils = new ArrayList<>(2 * q);
        for (int n = 1; n <= q; n++) {
            int bar = a.wrapBar(n + spec.leadOffset());
            coils.add(new Coil(
                    n,
                    0,
                    side(n, q, u, 1),
                    side(n + lap.backSpan(), q, u, 4),
                    OptionalInt.of(bar),
                    OptionalInt.of(a.wrapBar(bar + lap.commutator()))));
        }
        // A wave coil starts on the bar where the lap coil ends whose bottom side shares its position.
        int waveOffset = spec.leadOffset() + lap.commutator() - lap.backSpan();
        for (int n = 1; n <= q; n++) {
            int bar = a.wrapBar(n + waveOffset);
            coils.add(new Coil(
                    q + n,
                    1,
                    side(n, q, u, 2),
                    side(n + wave.backSpan(), q, u, 3),
                    OptionalInt.of(bar),
                    OptionalInt.of(a.wrapBar(bar + wave.commutator()))));
        }
        return new Winding(a, spec, u, 4, sets, coils);
    }

    private static CoilSide side(int position, int positions, int u, int layer) {
        int wrapped = 1 + Math.floorMod(position - 1, positions);
        return new CoilSide(1 + (wrapped - 1) / u, wrapped, layer);
    }

    private static Winding buildListed(Armature a, WindingSpec.Listed spec) {
        List<ListedCoil> list = new ArrayList<>(spec.coils());
        list.sort(Comparator.comparingInt(ListedCoil::coil));
        int[] tops = new int[a.slots() + 1];
        int[] bottoms = new int[a.slots() + 1];
        int u = 1;
        for (ListedCoil c : list) {
            u = Math.max(u, Math.max(++tops[c.topSlot()], ++bottoms[c.bottomSlot()]));
        }
        int q = u * a.slots();
        int[] nextTop = new int[a.slots() + 1];
        Map<Integer, Integer> topPosition = new LinkedHashMap<>();
        for (ListedCoil c : list) {
            topPosition.put(c.coil(), (c.topSlot() - 1) * u + 1 + nextTop[c.topSlot()]++);
        }
        // Within a slot the bottom sides lie in the order in which their top sides come round.
        int perSlot = u;
        List<ListedCoil> round = new ArrayList<>(list);
        round.sort(Comparator.<ListedCoil>comparingInt(
                        c -> Math.floorMod(topPosition.get(c.coil()) - (c.bottomSlot() - 1) * perSlot - 1, q))
                .thenComparingInt(ListedCoil::coil));
        int[] nextBottom = new int[a.slots() + 1];
        Map<Integer, Integer> bottomPosition = new LinkedHashMap<>();
        for (ListedCoil c : round) {
            bottomPosition.put(c.coil(), (c.bottomSlot() - 1) * u + 1 + nextBottom[c.bottomSlot()]++);
        }
        List<Coil> coils = new ArrayList<>(list.size());
        for (ListedCoil c : list) {
            coils.add(new Coil(
                    c.coil(),
                    0,
                    new CoilSide(c.topSlot(), topPosition.get(c.coil()), 1),
                    new CoilSide(c.bottomSlot(), bottomPosition.get(c.coil()), 2),
                    c.topBar(),
                    c.bottomBar()));
        }
        var set = new CoilSet(
                WindingType.LISTED,
                OptionalInt.empty(),
                Optional.empty(),
                evenPitches(a, coils, u),
                list.get(0).coil(),
                list.size());
        return new Winding(a, spec, u, 2, List.of(set), coils);
    }

    /** The pitches of a list whose live coils all reach equally far, in slots and on the commutator. */
    private static Optional<Pitches> evenPitches(Armature a, List<Coil> coils, int u) {
        int step = -1;
        int span = -1;
        for (Coil c : coils) {
            int itsSpan = Math.floorMod(c.bottom().slot() - c.top().slot(), a.slots());
            if (span >= 0 && span != itsSpan) {
                return Optional.empty();
            }
            span = itsSpan;
            if (c.isLive()) {
                int itsStep =
                        Math.floorMod(c.bottomBar().getAsInt() - c.topBar().getAsInt(), a.bars());
                if (step >= 0 && step != itsStep) {
                    return Optional.empty();
                }
                step = itsStep;
            }
        }
        if (step <= 0 || span <= 0) {
            return Optional.empty();
        }
        // A step of nearly a whole turn is a short step backwards.
        int back = a.bars() - step;
        int signed = back * 2 * a.polePairs() < a.bars() ? -back : step;
        return Optional.of(new Pitches(span * u, signed, u));
    }

    /** {@return the core and commutator} */
    public Armature armature() {
        return armature;
    }

    /** {@return what it was built from} */
    public WindingSpec spec() {
        return spec;
    }

    /** {@return the kind of winding} */
    public WindingType type() {
        return spec.type();
    }

    /** {@return u: coil sides per layer in a slot (per pair of layers in a frog-leg winding)} */
    public int sidesPerSlot() {
        return sidesPerSlot;
    }

    /** {@return Q: positions per layer} */
    public int positions() {
        return sidesPerSlot * armature.slots();
    }

    /** {@return 2, or 4 in a frog-leg winding} */
    public int layers() {
        return layers;
    }

    /** {@return the runs of coils wound by one rule each} */
    public List<CoilSet> sets() {
        return sets;
    }

    /**
     * {@return the run of coils that a coil belongs to}
     *
     * @param coil a coil of this winding
     */
    public CoilSet setOf(Coil coil) {
        return sets.get(coil.set());
    }

    /** {@return all coils in order of number} */
    public List<Coil> coils() {
        return coils;
    }

    /**
     * {@return the coil of a number}
     *
     * @param number its number, from 1
     * @throws IllegalArgumentException when there is none
     */
    public Coil coil(int number) {
        Coil coil = byNumber.get(number);
        if (coil == null) {
            throw new IllegalArgumentException("there is no coil " + number + ": coils run from "
                    + coils.get(0).number() + " to "
                    + coils.get(coils.size() - 1).number());
        }
        return coil;
    }

    /**
     * {@return whether there is a coil of the number}
     *
     * @param number any number
     */
    public boolean hasCoil(int number) {
        return byNumber.containsKey(number);
    }

    /** {@return the coils with both leads on bars, in order of number} */
    public List<Coil> liveCoils() {
        List<Coil> live = new ArrayList<>(coils.size());
        for (Coil c : coils) {
            if (c.isLive()) {
                live.add(c);
            }
        }
        return Collections.unmodifiableList(live);
    }

    /** {@return the coils with no lead on any bar, in order of number} */
    public List<Coil> deadCoils() {
        List<Coil> dead = new ArrayList<>();
        for (Coil c : coils) {
            if (c.isDead()) {
                dead.add(c);
            }
        }
        return Collections.unmodifiableList(dead);
    }

    /** {@return pitches of the first set (the lap part of a frog-leg winding); empty for an uneven list} */
    public Optional<Pitches> pitches() {
        return sets.get(0).pitches();
    }

    /**
     * {@return A: parallel paths by rule, lap P·m, wave 2·m, frog-leg 2·P·m; empty for a listed winding, where only the
     * circuit tells} Source: {@link References#THERAJA}; frog-leg {@link References#PATENT_CH124206}.
     */
    public OptionalInt parallelPaths() {
        return switch (spec.type()) {
            case LAP -> OptionalInt.of(armature.poles() * plex());
            case WAVE -> OptionalInt.of(2 * plex());
            case FROG_LEG -> OptionalInt.of(2 * armature.poles() * plex());
            case LISTED -> OptionalInt.empty();
        };
    }

    /**
     * {@return closed circuits by rule, gcd(K, |yc|) for each set of coils; empty for a listed winding, where only the
     * circuit tells} Source: {@link References#ARNOLD}.
     */
    public OptionalInt closures() {
        if (spec.type() == WindingType.LISTED) {
            return OptionalInt.empty();
        }
        int closures = 0;
        for (CoilSet set : sets) {
            closures += set.pitches().orElseThrow().closures(armature.bars());
        }
        return OptionalInt.of(closures);
    }

    private int plex() {
        return sets.get(0).plex().orElse(1);
    }

    /**
     * {@return bars from a bar to the next one at its potential: lap and frog-leg K/p, multiplex wave K/a, where whole;
     * empty where there is none or the winding is unknown} Source: {@link References#HAWKINS} (points of equal
     * potential).
     */
    public OptionalInt equalizerPitch() {
        int k = armature.bars();
        int p = armature.polePairs();
        return switch (spec.type()) {
            case LAP, FROG_LEG -> p > 1 && k % p == 0 ? OptionalInt.of(k / p) : OptionalInt.empty();
            case WAVE -> {
                int a = plex();
                yield a > 1 && k % a == 0 && p % a == 0 ? OptionalInt.of(k / a) : OptionalInt.empty();
            }
            case LISTED -> OptionalInt.empty();
        };
    }

    /** {@return the same coils as a connection list, which can be changed line by line} */
    public WindingSpec.Listed asListed() {
        return new WindingSpec.Listed(coils.stream().map(ListedCoil::of).toList());
    }
}
