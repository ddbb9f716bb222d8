package coilwright.bench;

import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;

/**
 * A compass over the slot of each coil's top side while direct current goes in at the bar where its top lead should
 * land and out at the bar of its bottom lead. A reversed coil turns the needle the other way.
 */
public final class PolarityTest {
    private PolarityTest() {}

    /**
     * What the compass shows.
     *
     * @param coil number of the coil
     * @param in bar fed
     * @param out bar where the current leaves
     * @param sense current along the coil's top side, per ampere fed: over 0 as in a sound coil, under 0 reversed, 0
     *     where no current flows
     */
    public record Sense(int coil, int in, int out, double sense) {}

    /**
     * {@return the sense of every live coil, in order of number}
     *
     * @param armature the armature as it is on the bench
     */
    public static List<Sense> senses(BenchArmature armature) {
        BenchNetwork net = BenchNetwork.of(armature);
        Factorisation factorisation = net.network().factorised();
        List<Sense> out = new ArrayList<>();
        for (Coil coil : armature.winding().liveCoils()) {
            int in = coil.topBar().getAsInt();
            int to = coil.bottomBar().getAsInt();
            double sense = 0;
            int a = BenchNetwork.node(in);
            int b = BenchNetwork.node(to);
            if (in != to && factorisation.connected(a, b)) {
                Solution s = factorisation.solve(Feed.current(a, b, 1));
                for (BenchNetwork.Segment segment : net.segments()) {
                    if (segment.coil() == coil.number()) {
                        sense += s.current(segment.branch()) * segment.share();
                    }
                }
            }
            out.add(new Sense(coil.number(), in, to, Math.abs(sense) < 1e-12 ? 0 : sense));
        }
        return out;
    }
}
