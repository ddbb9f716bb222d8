package coilwright.winding;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Checks that hold for every regular winding, in plain loops so that very many can be run. */
final class WindingChecks {
    private WindingChecks() {}

    static AssertionError wrong(Object winding, String what) {
        return new AssertionError(what + ": " + winding);
    }

    /** Every coil side in exactly one place of its layer, in the slot that its position belongs to. */
    static void everySideInOnePlace(Winding w) {
        int q = w.positions();
        int u = w.sidesPerSlot();
        boolean[][] taken = new boolean[w.layers() + 1][q + 1];
        int sides = 0;
        for (Coil c : w.coils()) {
            for (CoilSide side : List.of(c.top(), c.bottom())) {
                if (taken[side.layer()][side.position()]) {
                    throw wrong(w.spec(), "two sides in one place, coil " + c);
                }
                taken[side.layer()][side.position()] = true;
                if (side.slot() * u < side.position() || (side.slot() - 1) * u >= side.position()) {
                    throw wrong(w.spec(), "position outside its slot, coil " + c);
                }
                sides++;
            }
            if (c.top().layer() >= c.bottom().layer()) {
                throw wrong(w.spec(), "top side beneath the bottom side, coil " + c);
            }
        }
        if (sides != w.layers() * q) {
            throw wrong(w.spec(), "places left empty");
        }
    }

    /** Every bar is met by exactly one top and one bottom lead of each set; dead coils by none. */
    static void everyBarMetTwice(Winding w) {
        int k = w.armature().bars();
        for (int set = 0; set < w.sets().size(); set++) {
            int[] tops = new int[k + 1];
            int[] bottoms = new int[k + 1];
            for (Coil c : w.coils()) {
                if (c.set() == set && c.isLive()) {
                    tops[c.topBar().getAsInt()]++;
                    bottoms[c.bottomBar().getAsInt()]++;
                }
            }
            for (int bar = 1; bar <= k; bar++) {
                if (tops[bar] != 1 || bottoms[bar] != 1) {
                    throw wrong(w.spec(), "bar " + bar + " of " + w.armature());
                }
            }
        }
        for (Coil c : w.coils()) {
            if (c.isLive() == c.isDead()) {
                throw wrong(w.spec(), "half a coil " + c);
            }
        }
    }

    /** Walks each set from bar to bar: as many rings as the divisor says, all of one length, all coils met. */
    static void closesAsOften(Winding w, int set, int rings) {
        int k = w.armature().bars();
        int[] next = new int[k + 1];
        for (Coil c : w.coils()) {
            if (c.set() == set && c.isLive()) {
                next[c.topBar().getAsInt()] = c.bottomBar().getAsInt();
            }
        }
        boolean[] met = new boolean[k + 1];
        int found = 0;
        int coils = 0;
        for (int start = 1; start <= k; start++) {
            if (met[start]) {
                continue;
            }
            int length = 0;
            for (int bar = start; !met[bar]; bar = next[bar]) {
                met[bar] = true;
                length++;
            }
            if (length != k / rings) {
                throw wrong(w.spec(), "ring of " + length + " coils on " + w.armature());
            }
            coils += length;
            found++;
        }
        if (found != rings || coils != k) {
            throw wrong(w.spec(), found + " rings instead of " + rings + " on " + w.armature());
        }
    }

    /** The largest number that divides both, found by trying. */
    static int commonDivisor(int a, int b) {
        for (int d = Math.min(a, b); d > 1; d--) {
            if (a % d == 0 && b % d == 0) {
                return d;
            }
        }
        return 1;
    }

    /**
     * Calling another slot slot 1 changes no table: the winding whose dead coils are counted on by one slot is the
     * winding with every slot number one higher and every bar number higher by the live coils of one slot.
     */
    static void sameWhenRenumbered(Winding w, Winding turned) {
        int u = w.sidesPerSlot();
        int s = w.armature().slots();
        int k = w.armature().bars();
        int q = w.positions();
        int liveInFirst = 0;
        for (Coil c : turned.coils()) {
            if (c.set() == 0 && c.number() <= u && c.isLive()) {
                liveInFirst++;
            }
        }
        for (Coil c : w.coils()) {
            int n = c.set() * q + (c.number() - c.set() * q + u - 1) % q + 1;
            Coil t = turned.coil(n);
            boolean same = t.top().slot() == c.top().slot() % s + 1
                    && t.bottom().slot() == c.bottom().slot() % s + 1
                    && t.top().position() == (c.top().position() + u - 1) % q + 1
                    && t.bottom().position() == (c.bottom().position() + u - 1) % q + 1
                    && t.isLive() == c.isLive()
                    && (!c.isLive()
                            || (t.topBar().getAsInt() == (c.topBar().getAsInt() + liveInFirst - 1) % k + 1
                                    && t.bottomBar().getAsInt()
                                            == (c.bottomBar().getAsInt() + liveInFirst - 1) % k + 1));
            if (!same) {
                throw wrong(w.spec(), "renumbered coil " + c + " became " + t);
            }
        }
    }

    /** The conductor walk gives the same table and the same number of closed circuits. */
    static void agreesWithConductorWalk(Winding w, int backSpan) {
        var spec = (WindingSpec.Regular) w.spec();
        Set<Integer> deadTops = new HashSet<>();
        spec.deadCoils().forEach(n -> deadTops.add(2 * n - 1));
        var walk = new ConductorWalk(
                2 * w.positions(),
                w.armature().slots(),
                2 * backSpan + 1,
                ConductorWalk.resultantByTheBooks(
                        spec.type() == WindingType.LAP,
                        2 * w.armature().bars(),
                        w.armature().poles(),
                        spec.plex(),
                        spec.direction() == Direction.PROGRESSIVE),
                deadTops,
                spec.leadOffset());
        if (walk.rows.size() != w.coils().size()) {
            throw wrong(spec, "number of coils");
        }
        for (Coil c : w.coils()) {
            var row = walk.rows.get(2 * c.number() - 1);
            boolean same = row.bottom() == 2 * c.bottom().position()
                    && row.topSlot() == c.top().slot()
                    && row.bottomSlot() == c.bottom().slot()
                    && row.topBar() == c.topBar().orElse(0)
                    && row.bottomBar() == c.bottomBar().orElse(0);
            if (!same) {
                throw wrong(spec, "the walk gives " + row + ", the model " + c);
            }
        }
        int yc = w.pitches().orElseThrow().commutator();
        if (walk.circuits.size() != commonDivisor(w.armature().bars(), Math.abs(yc))) {
            throw wrong(spec, "circuits of the walk");
        }
    }

    /** All of the above for a lap or wave winding. */
    static void regular(Winding w, int backSpan) {
        everySideInOnePlace(w);
        everyBarMetTwice(w);
        int yc = w.pitches().orElseThrow().commutator();
        closesAsOften(w, 0, commonDivisor(w.armature().bars(), Math.abs(yc)));
        agreesWithConductorWalk(w, backSpan);
        var spec = (WindingSpec.Regular) w.spec();
        int q = w.positions();
        Winding turned = spec.deadCoils().isEmpty()
                ? w
                : Winding.build(
                        w.armature(),
                        spec.withDeadCoils(spec.deadCoils().stream()
                                .map(n -> (n + w.sidesPerSlot() - 1) % q + 1)
                                .toList()));
        sameWhenRenumbered(w, turned);
    }
}
