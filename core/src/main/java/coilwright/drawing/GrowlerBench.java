package coilwright.drawing;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.winding.Winding;
import java.util.List;
import java.util.Optional;

/**
 * What the growler view shows besides the winding.
 *
 * @param growler its faces
 * @param equalizers bars of each equalizer ring; empty where there are none
 * @param probes the pair of bars to show the probes on; the pair that reads most where empty
 */
public record GrowlerBench(Growler growler, List<List<Integer>> equalizers, Optional<BenchTest.Pair> probes) {
    /**
     * Copies the lists.
     *
     * @param growler its faces
     * @param equalizers bars of each equalizer ring; empty where there are none
     * @param probes the pair of bars to show the probes on; the pair that reads most where empty
     */
    public GrowlerBench {
        equalizers = equalizers.stream().map(List::copyOf).toList();
    }

    /** {@return the usual growler, no equalizers, the probes where they read most} */
    public static GrowlerBench usual() {
        return of(Growler.USUAL);
    }

    /**
     * {@return a growler, no equalizers, the probes where they read most}
     *
     * @param growler faces of the growler
     */
    public static GrowlerBench of(Growler growler) {
        return new GrowlerBench(growler, List.of(), Optional.empty());
    }

    /**
     * {@return the same with the probes on a pair of bars}
     *
     * @param from bar under the first probe
     * @param to bar under the second probe
     */
    public GrowlerBench withProbes(int from, int to) {
        return new GrowlerBench(growler, equalizers, Optional.of(new BenchTest.Pair(from, to)));
    }

    /**
     * {@return the same with equalizer rings}
     *
     * @param rings the bars that each equalizer joins
     */
    public GrowlerBench withEqualizers(List<List<Integer>> rings) {
        return new GrowlerBench(growler, rings, probes);
    }

    /** The sound armature with its equalizers; one coil counts as 1 ohm, which no growler reading depends on. */
    BenchArmature armature(Winding winding) {
        return BenchArmature.sound(winding, 1).withEqualizers(equalizers);
    }
}
