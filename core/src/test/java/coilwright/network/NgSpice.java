package coilwright.network;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;

/**
 * Has ngspice, a circuit simulator, solve networks. Many go into one run: each stands by itself in the deck, tied to the
 * others only by the ground.
 */
public final class NgSpice {
    private static final Pattern VALUE = Pattern.compile("^(?:v\\()?([\\w#]+)\\)? = (\\S+)\\s*$");

    private NgSpice() {}

    /** A network and its feeds, which must be satisfiable. */
    public record Case(Network network, List<Feed> feeds) {
        public Case {
            feeds = List.copyOf(feeds);
        }
    }

    /** What the simulator found. */
    public static final class Result {
        private final int[] part;
        private final double[] voltage;
        private final double[] feedCurrent;

        private Result(int[] part, double[] voltage, double[] feedCurrent) {
            this.part = part;
            this.voltage = voltage;
            this.feedCurrent = feedCurrent;
        }

        /** Voltage of a over b; empty when they float. */
        public OptionalDouble voltage(int a, int b) {
            return part[a] == part[b] ? OptionalDouble.of(voltage[a] - voltage[b]) : OptionalDouble.empty();
        }

        /** Current a feed drives into its {@code in} node. */
        public double feedCurrent(int feed) {
            return feedCurrent[feed];
        }

        /** The greatest voltage between a node and the lowest node of its part. */
        public double greatest() {
            return Arrays.stream(voltage).map(Math::abs).max().orElse(0);
        }
    }

    /** What is missing to run the simulator. */
    public static Optional<String> missing() {
        for (String folder : System.getenv().getOrDefault("PATH", "/usr/bin").split(":")) {
            if (Files.isExecutable(Path.of(folder, "ngspice"))) {
                return Optional.empty();
            }
        }
        return Optional.of("no program ngspice on the PATH (Debian package ngspice): comparison skipped");
    }

    /** Skips the test, saying so, when the simulator is not there. */
    public static void assumeAvailable() {
        Optional<String> missing = missing();
        missing.ifPresent(System.err::println);
        Assumptions.assumeTrue(missing.isEmpty(), () -> missing.orElse(""));
    }

    /** Solves all cases in one run. */
    public static List<Result> solve(List<Case> cases) {
        StringBuilder deck = new StringBuilder("networks\n");
        for (int c = 0; c < cases.size(); c++) {
            write(c, cases.get(c), deck);
        }
        deck.append(".options gmin=1e-30 reltol=1e-12 abstol=1e-18 vntol=1e-18\n.control\n")
                .append("set numdgt=16\nset width=200\nop\nprint all\nquit 0\n.endc\n.end\n");
        List<Result> results = new ArrayList<>();
        for (Case one : cases) {
            int n = one.network().nodeCount();
            double[] currents = new double[one.feeds().size()];
            for (int f = 0; f < currents.length; f++) {
                currents[f] = one.feeds().get(f) instanceof Feed.Current current ? current.amperes() : Double.NaN;
            }
            int[] part = DenseOracle.colours(one.network(), one.feeds(), true);
            double[] voltage = new double[n];
            for (int v = 0; v < n; v++) {
                voltage[v] = part[v] == v ? 0 : Double.NaN;
            }
            results.add(new Result(part, voltage, currents));
        }
        for (String line : run(deck.toString()).split("\n")) {
            Matcher matcher = VALUE.matcher(line);
            if (matcher.matches()) {
                take(matcher.group(1), Double.parseDouble(matcher.group(2)), results);
            }
        }
        for (Result result : results) {
            if (Arrays.stream(result.voltage).anyMatch(Double::isNaN)
                    || Arrays.stream(result.feedCurrent).anyMatch(Double::isNaN)) {
                throw new IllegalStateException("ngspice left out a value");
            }
        }
        return results;
    }

    private static void take(String name, double value, List<Result> results) {
        Matcher node = Pattern.compile("c(\\d+)n(\\d+)").matcher(name);
        Matcher feed = Pattern.compile("vc(\\d+)f(\\d+)#branch").matcher(name);
        if (node.matches()) {
            results.get(Integer.parseInt(node.group(1))).voltage[Integer.parseInt(node.group(2))] = value;
        } else if (feed.matches()) {
            // The simulator counts a source's current from its positive end through the source.
            results.get(Integer.parseInt(feed.group(1))).feedCurrent[Integer.parseInt(feed.group(2))] = -value;
        }
    }

    private static void write(int c, Case one, StringBuilder deck) {
        Network network = one.network();
        int n = network.nodeCount();
        int[] part = DenseOracle.colours(network, one.feeds(), true);
        String[] name = new String[n];
        int[] tied = new int[n];
        for (int v = 0; v < n; v++) {
            name[v] = part[v] == v ? "0" : "c" + c + "n" + v;
            tied[v] = v;
        }
        for (int e = 0; e < network.branchCount(); e++) {
            Branch branch = network.branch(e);
            int p = branch.from();
            int q = branch.to();
            String id = "c" + c + "b" + e;
            if (branch.isOpen() || p == q) {
                continue;
            }
            if (branch.isLink()) {
                // A link that closes a ring of links would make the simulator's equations singular.
                if (tied[p] != tied[q]) {
                    int gone = tied[q];
                    for (int v = 0; v < n; v++) {
                        tied[v] = tied[v] == gone ? tied[p] : tied[v];
                    }
                    deck.append("V" + id + " " + name[p] + " " + name[q] + " 0\n");
                }
            } else if (branch.emf() == 0) {
                deck.append("R" + id + " " + name[p] + " " + name[q] + " " + branch.resistance() + "\n");
            } else {
                deck.append("V" + id + " " + id + " " + name[p] + " " + branch.emf() + "\n");
                deck.append("R" + id + " " + id + " " + name[q] + " " + branch.resistance() + "\n");
            }
        }
        for (int f = 0; f < one.feeds().size(); f++) {
            Feed feed = one.feeds().get(f);
            String id = "c" + c + "f" + f;
            if (feed instanceof Feed.Current current) {
                deck.append("I" + id + " " + name[feed.out()] + " " + name[feed.in()] + " " + current.amperes() + "\n");
            } else if (feed instanceof Feed.Voltage voltage) {
                deck.append("V" + id + " " + name[feed.in()] + " " + name[feed.out()] + " " + voltage.volts() + "\n");
            }
        }
    }

    private static String run(String deck) {
        try {
            Path folder = Files.createTempDirectory("networks");
            Path file = folder.resolve("deck.cir");
            Path answers = folder.resolve("answers");
            Path complaints = folder.resolve("complaints");
            Files.writeString(file, deck, UTF_8);
            Process process = new ProcessBuilder("ngspice", "-b", file.toString())
                    .redirectOutput(answers.toFile())
                    .redirectError(complaints.toFile())
                    .start();
            boolean ended = process.waitFor(120, TimeUnit.SECONDS);
            if (!ended) {
                process.destroyForcibly();
            }
            String out = Files.readString(answers, UTF_8);
            String err = Files.readString(complaints, UTF_8);
            for (Path path : List.of(file, answers, complaints, folder)) {
                Files.delete(path);
            }
            if (!ended || process.exitValue() != 0 || err.contains("singular matrix")) {
                throw new IllegalStateException("ngspice failed: " + err);
            }
            return out;
        } catch (IOException e) {
            throw new IllegalStateException("ngspice could not be run", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while ngspice ran", e);
        }
    }
}
