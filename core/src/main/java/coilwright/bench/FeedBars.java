package coilwright.bench;

import coilwright.circuit.Circuit;
import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;

/**
 * Where direct current goes in and comes out for a drop test.
 *
 * @param in bar where current enters
 * @param out bar where it leaves
 * @param why which rule chose these bars
 */
public record FeedBars(int in, int out, String why) {
    /**
     * Checks that the bars differ.
     *
     * @param in bar where current enters
     * @param out bar where it leaves
     * @param why which rule chose these bars
     * @throws IllegalArgumentException when they do not
     */
    public FeedBars {
        if (in == out || in < 1 || out < 1) {
            throw new IllegalArgumentException("feed bars are " + in + " and " + out + ": name two different bars");
        }
    }

    /**
     * {@return the feeds the trade advises, one after the other so that every coil is reached: simplex lap, bar 1 and
     * the bar opposite; simplex wave, bar 1 and the bar a pole pitch away; a singly re-entrant multiplex winding, bars
     * 1 and 2; a multiply re-entrant one, the like for each circuit by itself} Source: {@code TRAINING_MODULE}.
     * Frog-leg and equalized lap windings are fed a pole pitch apart, since opposite bars may be joined (by
     * arithmetic).
     *
     * @param winding the winding
     * @param equalized whether bars of one potential are joined
     */
    public static List<FeedBars> advised(Winding winding, boolean equalized) {
        Armature a = winding.armature();
        return switch (winding.type()) {
            case LAP -> regular(winding, equalized && a.polePairs() > 1 ? a.polePitchBars() : a.bars() / 2.0);
            case WAVE -> regular(winding, a.polePitchBars());
            case FROG_LEG -> frogLeg(winding);
            case LISTED -> listed(winding);
        };
    }

    private static List<FeedBars> frogLeg(Winding winding) {
        Armature a = winding.armature();
        int parts = BenchTest.stepWithinCircuit(winding);
        List<FeedBars> out = new ArrayList<>();
        for (int c = 1; c <= parts; c++) {
            out.add(new FeedBars(
                    c,
                    far(a, c, a.polePitchBars(), parts),
                    "a frog-leg winding joins bars two pole pitches apart, so it is fed a pole pitch apart"
                            + (parts == 1 ? "" : ", each of its " + parts + " parts by itself")));
        }
        return out;
    }

    private static List<FeedBars> regular(Winding winding, double distance) {
        Armature a = winding.armature();
        int m = winding.sets().get(0).plex().orElse(1);
        int g = winding.pitches().orElseThrow().closures(a.bars());
        String kind = winding.type() == WindingType.LAP ? "lap" : "wave";
        if (m > 1 && g == 1) {
            return List.of(
                    new FeedBars(1, 2, "a singly re-entrant multiplex " + kind + " winding is fed at bars 1 and 2"));
        }
        List<FeedBars> out = new ArrayList<>();
        for (int c = 1; c <= g; c++) {
            String why = g == 1
                    ? "a simplex " + kind + " winding is fed at bar 1 and the bar "
                            + (distance * 2 == a.bars() ? "opposite" : "a pole pitch away")
                    : "circuit " + c + " of " + g + " is fed by itself";
            out.add(new FeedBars(c, far(a, c, distance, g), why));
        }
        return out;
    }

    /** The bar nearest to a distance on from a bar, of the same circuit. */
    private static int far(Armature a, int bar, double distance, int circuits) {
        int steps = Math.max(1, (int) Math.floor(distance / circuits + 1e-9));
        return a.wrapBar(bar + steps * circuits);
    }

    private static List<FeedBars> listed(Winding winding) {
        List<FeedBars> out = new ArrayList<>();
        for (Circuit c : WindingGraph.of(winding).circuits()) {
            if (c.bars().size() < 2) {
                continue;
            }
            int half = c.kind() == Circuit.Kind.CLOSED
                    ? c.bars().size() / 2
                    : c.bars().size() - 1;
            out.add(new FeedBars(
                    c.bars().get(0),
                    c.bars().get(half),
                    c.kind() == Circuit.Kind.CLOSED
                            ? "half way round the circuit of bar " + c.bars().get(0)
                            : "from end to end of the coils joined to bar "
                                    + c.bars().get(0)));
        }
        return out;
    }
}
