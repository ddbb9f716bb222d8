package coilwright.bench;

import coilwright.circuit.Circuit;
import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;

/** Pairs of bars to probe, and where they stand. */
public final class ProbePairs {
    private ProbePairs() {}

    /**
     * {@return every bar with the one a number of bars on}
     *
     * @param armature core and commutator
     * @param bars how far apart, 1 to K − 1
     * @throws IllegalArgumentException when it is out of range
     */
    public static List<BenchTest.Pair> apart(Armature armature, int bars) {
        if (bars < 1 || bars >= armature.bars()) {
            throw new IllegalArgumentException("pairs " + bars + " bars apart were asked for, but with "
                    + armature.bars() + " bars they are 1 to " + (armature.bars() - 1) + " apart");
        }
        List<BenchTest.Pair> out = new ArrayList<>();
        for (int bar = 1; bar <= armature.bars(); bar++) {
            out.add(new BenchTest.Pair(bar, armature.wrapBar(bar + bars)));
        }
        return out;
    }

    /**
     * {@return the bars of each circuit that nothing joins to another, ascending, in order of the lowest bar; bars that
     * no coil touches are left out}
     *
     * @param winding the winding
     */
    public static List<List<Integer>> circuits(Winding winding) {
        List<NavigableSet<Integer>> parts = new ArrayList<>();
        for (Circuit c : WindingGraph.of(winding).circuits()) {
            if (c.kind() == Circuit.Kind.BARE_BAR) {
                continue;
            }
            NavigableSet<Integer> joined = new TreeSet<>(c.bars());
            List<NavigableSet<Integer>> apart = new ArrayList<>();
            for (NavigableSet<Integer> part : parts) {
                if (c.bars().stream().anyMatch(part::contains)) {
                    joined.addAll(part);
                } else {
                    apart.add(part);
                }
            }
            apart.add(joined);
            parts = apart;
        }
        parts.sort(Comparator.comparingInt(NavigableSet::first));
        return parts.stream().map(List::copyOf).toList();
    }

    /**
     * {@return each bar of a circuit with the next one of the same circuit, once round}
     *
     * @param circuit its bars, ascending
     */
    public static List<BenchTest.Pair> neighbours(List<Integer> circuit) {
        List<BenchTest.Pair> out = new ArrayList<>();
        for (int i = 0; circuit.size() > 1 && i < circuit.size(); i++) {
            out.add(new BenchTest.Pair(circuit.get(i), circuit.get((i + 1) % circuit.size())));
        }
        return out;
    }

    /**
     * {@return readings with the place of each, clockwise from straight up}
     *
     * @param armature core and commutator
     * @param readings the readings
     * @param angle of slot 1's centre line, degrees
     */
    public static List<GrowlerMeter.Placed> placed(Armature armature, List<PairReading> readings, double angle) {
        return readings.stream()
                .map(r -> new GrowlerMeter.Placed(r, GrowlerMeter.clock(armature, r.from(), r.to(), angle)))
                .toList();
    }

    /**
     * {@return those that read most, within a millionth; empty where all read nothing}
     *
     * @param placed readings with their places
     */
    public static List<GrowlerMeter.Placed> best(List<GrowlerMeter.Placed> placed) {
        double most = placed.stream()
                .mapToDouble(p -> p.reading().value())
                .filter(Double::isFinite)
                .max()
                .orElse(0);
        return placed.stream()
                .filter(p -> most > 0 && p.reading().value() >= most * (1 - 1e-6))
                .toList();
    }

    /**
     * {@return the same readings, those that are mere rounding beside the largest taken for nothing}
     *
     * @param readings the readings
     */
    public static List<PairReading> withoutRounding(List<PairReading> readings) {
        double most = PairReading.largest(readings);
        return readings.stream()
                .map(r -> Math.abs(r.value()) <= 1e-12 * most ? new PairReading(r.from(), r.to(), 0) : r)
                .toList();
    }

    /**
     * {@return those within a relative tolerance of a value}
     *
     * @param readings the readings
     * @param value the reading looked for
     * @param tolerance 0 to 1
     */
    public static List<PairReading> near(List<PairReading> readings, double value, double tolerance) {
        return readings.stream()
                .filter(r -> Math.abs(r.value() - value) <= tolerance * Math.abs(value))
                .toList();
    }
}
