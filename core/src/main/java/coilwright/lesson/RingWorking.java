package coilwright.lesson;

import coilwright.bench.BenchTest;
import coilwright.circuit.Circuit;
import coilwright.circuit.Step;
import coilwright.circuit.WindingGraph;
import coilwright.fault.Fault;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How direct current shares itself out round a closed winding, told in steps: coil by coil, as it is done on paper.
 *
 * @param winding any whose circuits are closed rings
 * @param milliohms of one coil
 * @param fault an open or a shorted coil, where there is one
 */
record RingWorking(Winding winding, double milliohms, Optional<Fault> fault) {
    /** Resistance of a coil by the number of sound coils it stands for: 1, 0 shorted, infinite open. */
    private double parts(Step step) {
        if (fault.isEmpty() || !fault.get().coils().contains(step.coil().number())) {
            return 1;
        }
        return fault.get() instanceof Fault.OpenCoil ? Double.POSITIVE_INFINITY : 0;
    }

    private double sum(List<Step> steps) {
        return steps.stream().mapToDouble(this::parts).sum();
    }

    private Optional<Circuit> circuit(int bar) {
        return WindingGraph.of(winding).circuits().stream()
                .filter(c -> c.bars().contains(bar))
                .findFirst();
    }

    private List<List<Step>> ways(int from, int to) {
        return WindingGraph.of(winding).between(from, to);
    }

    /** Why two bars have the resistance they have. */
    String resistance(int from, int to, String answer) {
        List<List<Step>> ways = ways(from, to);
        String pair = "bars " + from + " and " + to + ": ";
        if (ways.isEmpty()) {
            return pair + "they belong to two of the separate circuits, so nothing joins them: open";
        }
        double one = sum(ways.get(0));
        double other = sum(ways.get(1));
        String r = Figures.number(milliohms);
        String two = coils(ways.get(0)) + " one way, " + coils(ways.get(1)) + " the other";
        if (Double.isInfinite(one) || Double.isInfinite(other)) {
            double left = Math.min(one, other);
            return pair + two + ", where one coil is open: " + Figures.number(left) + " × " + r + " = " + answer;
        }
        return pair + two + faulty(ways, " of which one is shorted") + "; in parallel " + r + " × "
                + Figures.number(one)
                + " × " + Figures.number(other) + "/(" + Figures.number(one) + " + " + Figures.number(other) + ") = "
                + answer;
    }

    private String faulty(List<List<Step>> ways, String words) {
        return fault.isPresent() && Double.isFinite(sum(ways.get(0))) && Double.isFinite(sum(ways.get(1)))
                ? "," + words
                : "";
    }

    private static String coils(List<Step> steps) {
        return Figures.count(steps.size(), "coil");
    }

    /** How the fed current divides. */
    List<String> currents(BenchTest.Drop drop) {
        List<List<Step>> ways = ways(drop.in(), drop.out());
        double[] share = shares(ways);
        List<String> out = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            double parts = sum(ways.get(i));
            double others = sum(ways.get(1 - i));
            String way =
                    "from bar " + drop.in() + " to bar " + drop.out() + (i == 0 ? " one way: " : " the other way: ")
                            + coils(ways.get(i)) + " (" + numbers(ways.get(i)) + ")";
            String amps = Figures.number(drop.amperes());
            String current = Figures.number(drop.amperes() * share[i]);
            if (Double.isInfinite(parts)) {
                out.add(way + ", broken by the open coil, carry nothing");
            } else if (Double.isInfinite(others)) {
                out.add(way + " carry all of the " + amps + " A");
            } else {
                out.add(way + (parts < ways.get(i).size() ? ", one of them shorted," : "") + " carry " + amps + " × "
                        + Figures.number(others) + "/(" + Figures.number(parts) + " + " + Figures.number(others)
                        + ") = "
                        + current + " A");
            }
        }
        return out;
    }

    private static String numbers(List<Step> steps) {
        if (steps.size() > 8) {
            return "from coil " + steps.get(0).coil().number() + " to coil "
                    + steps.get(steps.size() - 1).coil().number();
        }
        return (steps.size() == 1 ? "coil " : "coils ")
                + Figures.list(steps.stream().map(s -> s.coil().number()).toList());
    }

    private double[] shares(List<List<Step>> ways) {
        double one = sum(ways.get(0));
        double other = sum(ways.get(1));
        if (Double.isInfinite(one) || Double.isInfinite(other)) {
            return Double.isInfinite(one) ? new double[] {0, 1} : new double[] {1, 0};
        }
        return new double[] {other / (one + other), one / (one + other)};
    }

    /** What lies between two bars, and what that reads. */
    String drop(BenchTest.Drop drop, int from, int to, String answer) {
        String pair = "bars " + from + " and " + to + ": ";
        List<List<Step>> feed = ways(drop.in(), drop.out());
        List<List<Step>> here = ways(from, to);
        if (here.isEmpty() || !circuit(from).equals(circuit(drop.in()))) {
            return pair + "not both on the fed circuit, so the meter stays still: " + answer;
        }
        double[] share = shares(feed);
        List<Step> way =
                here.stream().filter(w -> Double.isFinite(sum(w))).findFirst().orElseThrow();
        List<String> terms = new ArrayList<>();
        double run = 0;
        int coils = 0;
        for (Step s : way) {
            double amps = amps(feed, share, drop, s);
            if (parts(s) == 0) {
                continue;
            }
            if (coils > 0 && Math.abs(amps - run) > 1e-12) {
                terms.add(term(coils, run));
                coils = 0;
            }
            run = amps;
            coils++;
        }
        if (coils > 0) {
            terms.add(term(coils, run));
        }
        boolean round = way != here.get(0);
        return pair + (round ? "the way past the open coil goes through " : "through ") + numbers(way)
                + (way.stream().anyMatch(s -> parts(s) == 0) ? ", of which one is shorted" : "") + ": "
                + (terms.isEmpty() ? "nothing" : String.join(" + ", terms)) + " = " + answer;
    }

    private String term(int coils, double amps) {
        return coils + " × " + Figures.number(milliohms) + " × "
                + (amps < 0 ? "(" + Figures.number(amps) + ")" : Figures.number(amps));
    }

    /** Current through a coil in the sense in which a step passes it. */
    private double amps(List<List<Step>> feed, double[] share, BenchTest.Drop drop, Step step) {
        for (int i = 0; i < 2; i++) {
            for (Step s : feed.get(i)) {
                if (s.coil().number() == step.coil().number()) {
                    return (s.fromBar() == step.fromBar() ? 1 : -1) * share[i] * drop.amperes();
                }
            }
        }
        return 0;
    }
}
