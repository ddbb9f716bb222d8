package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Networks solved here and by a circuit simulator. */
class NgSpiceTest {
    private static final double RELATIVE = 1e-9;

    @BeforeAll
    static void needsTheSimulator() {
        NgSpice.assumeAvailable();
    }

    @Test
    void agreesOnGeneratedNetworks() {
        Random random = new Random(41);
        List<NgSpice.Case> cases = new ArrayList<>();
        while (cases.size() < 120) {
            Network network = Networks.random(random);
            List<Feed> feeds = new ArrayList<>();
            for (int f = random.nextInt(3); f >= 0; f--) {
                int a = random.nextInt(network.nodeCount());
                int b = (a + 1 + random.nextInt(network.nodeCount() - 1)) % network.nodeCount();
                feeds.add(
                        random.nextInt(3) == 0
                                ? Feed.voltage(a, b, 1 + random.nextInt(9))
                                : Feed.current(a, b, random.nextGaussian()));
            }
            if (DenseOracle.solvable(network, feeds)) {
                cases.add(new NgSpice.Case(network, feeds));
            }
        }
        List<NgSpice.Result> results = NgSpice.solve(cases);
        double worst = 0;
        for (int c = 0; c < cases.size(); c++) {
            Network network = cases.get(c).network();
            Solution solution = network.factorised().solve(cases.get(c).feeds());
            double size = results.get(c).greatest();
            for (int a = 0; a < network.nodeCount(); a++) {
                for (int b = 0; b < network.nodeCount(); b++) {
                    OptionalDouble found = solution.voltage(a, b);
                    OptionalDouble expected = results.get(c).voltage(a, b);
                    assertThat(found.isPresent()).isEqualTo(expected.isPresent());
                    if (expected.isPresent()) {
                        worst = Math.max(worst, Math.abs(found.getAsDouble() - expected.getAsDouble()) / size);
                    }
                }
            }
            for (int f = 0; f < cases.get(c).feeds().size(); f++) {
                double i = results.get(c).feedCurrent(f);
                Compare.close(solution.feedCurrent(f), i, RELATIVE * Math.abs(i) + RELATIVE * size);
            }
        }
        assertThat(worst).isLessThan(RELATIVE);
    }

    @Test
    void agreesOnChangedNetworks() {
        Random random = new Random(43);
        List<NgSpice.Case> cases = new ArrayList<>();
        List<Solution> solutions = new ArrayList<>();
        while (cases.size() < 60) {
            Network network = Networks.random(random);
            int n = network.nodeCount();
            int faulty = random.nextInt(Math.max(1, network.branchCount()));
            if (network.branchCount() == 0 || network.branch(faulty).emf() != 0) {
                continue;
            }
            List<Change> changes = List.of(
                    random.nextBoolean()
                            ? Change.removed(faulty)
                            : Change.resistance(faulty, random.nextInt(2) * random.nextDouble()),
                    Change.added(random.nextInt(n), random.nextInt(n), random.nextInt(2) * 0.3));
            List<Feed> feeds = List.of(Feed.current(0, 1 + random.nextInt(n - 1), 2.5));
            Modified modified = network.factorised().with(changes);
            if (DenseOracle.solvable(modified.network(), feeds)) {
                cases.add(new NgSpice.Case(modified.network(), feeds));
                solutions.add(modified.solve(feeds));
            }
        }
        List<NgSpice.Result> results = NgSpice.solve(cases);
        for (int c = 0; c < cases.size(); c++) {
            Network network = cases.get(c).network();
            for (int a = 0; a < network.nodeCount(); a++) {
                Compare.same(
                        solutions.get(c).voltage(a, 0),
                        results.get(c).voltage(a, 0),
                        results.get(c).greatest(),
                        Compare.drive(network, cases.get(c).feeds()));
            }
        }
    }
}
