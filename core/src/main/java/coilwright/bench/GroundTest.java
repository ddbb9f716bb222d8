package coilwright.bench;

import coilwright.network.Solution;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

/** Lamp or ohmmeter from bars to the shaft, and the walk with direct current that finds the grounded place. */
public final class GroundTest {
    private GroundTest() {}

    /**
     * A place where the walk from shaft to bars reads nothing.
     *
     * @param from bar before it
     * @param to bar after it; the same bar where that bar itself reads nothing
     */
    public record ZeroPlace(int from, int to) {}

    /**
     * {@return ohms from every bar 1..K to the shaft; infinite where nothing joins them}
     *
     * @param armature the armature as it is on the bench
     */
    public static List<Double> barToShaft(BenchArmature armature) {
        BenchNetwork net = BenchNetwork.of(armature);
        var factorisation = net.network().factorised();
        List<Double> out = new ArrayList<>();
        for (int bar = 1; bar <= armature.winding().armature().bars(); bar++) {
            OptionalDouble r = factorisation.resistance(BenchNetwork.node(bar), net.shaftNode());
            out.add(r.orElse(Double.POSITIVE_INFINITY));
        }
        return out;
    }

    /**
     * {@return whether any bar is joined to the shaft: the lamp lights}
     *
     * @param armature the armature as it is on the bench
     */
    public static boolean grounded(BenchArmature armature) {
        return barToShaft(armature).stream().anyMatch(r -> !Double.isInfinite(r));
    }

    /**
     * The locating walk: direct current in at one bar and out at another, millivoltmeter from each bar to the shaft.
     *
     * @param armature the armature as it is on the bench
     * @param in bar where the current enters
     * @param out bar where it leaves
     * @param supply current or voltage fed
     * @return V(bar) − V(shaft) for bars 1..K; 0 throughout where the shaft is joined to nothing
     * @throws IllegalArgumentException as {@link DropTest#at} does
     */
    public static List<Double> walk(BenchArmature armature, int in, int out, Supply supply) {
        FedNetwork fed = FedNetwork.of(armature, FedNetwork.checkBar(armature, in), FedNetwork.checkBar(armature, out));
        int bars = armature.winding().armature().bars();
        if (!fed.joined()) {
            return new ArrayList<>(Collections.nCopies(bars, 0.0));
        }
        Solution s = fed.solve(supply);
        List<Double> volts = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            double v = s.voltage(BenchNetwork.node(bar), fed.net().shaftNode()).orElse(0);
            volts.add(v == 0 ? 0 : v);
        }
        return volts;
    }

    /**
     * {@return where a walk passes through nothing: bars that read nothing (within a millionth of the largest reading),
     * and neighbours between which the sign changes, in order of the walk} Empty where every bar reads nothing.
     *
     * @param walk V(bar) − V(shaft) for bars 1..K
     */
    public static List<ZeroPlace> zeroPlaces(List<Double> walk) {
        double most = walk.stream().mapToDouble(Math::abs).max().orElse(0);
        List<ZeroPlace> out = new ArrayList<>();
        if (most == 0) {
            return out;
        }
        int n = walk.size();
        for (int i = 0; i < n; i++) {
            double here = Math.abs(walk.get(i)) <= 1e-6 * most ? 0 : walk.get(i);
            double next = Math.abs(walk.get((i + 1) % n)) <= 1e-6 * most ? 0 : walk.get((i + 1) % n);
            if (here == 0) {
                out.add(new ZeroPlace(i + 1, i + 1));
            } else if (here * next < 0) {
                out.add(new ZeroPlace(i + 1, (i + 1) % n + 1));
            }
        }
        return out;
    }

    /**
     * {@return the zero places that two walks with different feeds have in common: the true ones among phantoms}
     *
     * @param first of one feed
     * @param second of the other feed
     */
    public static List<ZeroPlace> staying(List<ZeroPlace> first, List<ZeroPlace> second) {
        return first.stream().filter(second::contains).toList();
    }
}
