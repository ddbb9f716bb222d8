package coilwright.bench;

import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An armature as it lies on the bench, electrically: the state of every coil, and everything joined that the winding
 * itself does not join. Immutable.
 */
public final class BenchArmature {
    private final Winding winding;
    private final double soundOhms;
    private final Map<Integer, CoilState> states;
    private final List<Bond> bonds;

    private BenchArmature(Winding winding, double soundOhms, Map<Integer, CoilState> states, List<Bond> bonds) {
        this.winding = winding;
        this.soundOhms = soundOhms;
        this.states = states;
        this.bonds = List.copyOf(bonds);
    }

    /**
     * {@return a sound armature}
     *
     * @param winding the winding
     * @param ohms resistance of one coil, over 0; 1 where it is unknown
     */
    public static BenchArmature sound(Winding winding, double ohms) {
        Map<Integer, CoilState> states = new LinkedHashMap<>();
        for (Coil c : winding.coils()) {
            states.put(c.number(), CoilState.sound(c, ohms));
        }
        return new BenchArmature(winding, ohms, states, List.of());
    }

    /** {@return the winding as it should be} */
    public Winding winding() {
        return winding;
    }

    /** {@return resistance of one sound coil, ohm} */
    public double soundOhms() {
        return soundOhms;
    }

    /** {@return every coil in order of number} */
    public List<CoilState> coils() {
        return List.copyOf(states.values());
    }

    /**
     * {@return one coil}
     *
     * @param number its number, from 1
     * @throws IllegalArgumentException when there is none of the number
     */
    public CoilState coil(int number) {
        winding.coil(number);
        return states.get(number);
    }

    /** {@return everything joined besides} */
    public List<Bond> bonds() {
        return bonds;
    }

    /**
     * {@return the same armature with one coil otherwise}
     *
     * @param state the coil as it is
     */
    public BenchArmature with(CoilState state) {
        winding.coil(state.coil());
        Map<Integer, CoilState> next = new LinkedHashMap<>(states);
        next.put(state.coil(), state);
        return new BenchArmature(winding, soundOhms, next, bonds);
    }

    /**
     * {@return the same armature with two places joined}
     *
     * @param bond the places and the resistance between them
     * @throws IllegalArgumentException when a bar or coil does not exist
     */
    public BenchArmature with(Bond bond) {
        check(bond.a());
        check(bond.b());
        List<Bond> next = new ArrayList<>(bonds);
        next.add(bond);
        return new BenchArmature(winding, soundOhms, states, next);
    }

    /**
     * {@return the same armature with equalizer rings}
     *
     * @param rings bars of each ring, joined with no resistance
     */
    public BenchArmature withEqualizers(List<List<Integer>> rings) {
        BenchArmature out = this;
        for (List<Integer> ring : rings) {
            for (int i = 1; i < ring.size(); i++) {
                out = out.with(Bond.direct(Point.bar(ring.get(0)), Point.bar(ring.get(i))));
            }
        }
        return out;
    }

    private void check(Point point) {
        if (point instanceof Point.Bar b
                && (b.number() < 1 || b.number() > winding.armature().bars())) {
            throw new IllegalArgumentException("there is no bar " + b.number() + ": bars run from 1 to "
                    + winding.armature().bars());
        }
        if (point instanceof Point.Inside inside) {
            winding.coil(inside.coil());
        }
    }
}
