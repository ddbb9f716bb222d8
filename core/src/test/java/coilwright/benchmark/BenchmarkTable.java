package coilwright.benchmark;

import coilwright.fault.DiagnosisBenchmark;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Every benchmark in one table, each beside a baseline measured in the same run, with the exponent by which its time
 * grows with its size. A time is the median of some goes, its error half the range of their middle half; it is processor
 * time, but for start-up, which is by the clock. All of it takes about nine minutes on a quiet machine; the words of
 * {@link #words} ask for parts.
 */
public final class BenchmarkTable {
    private static final String STARTUP = "startup";
    private static final Path JAR = Path.of("viewer", "target", "coilwright.jar");

    /** What is measured, in the order of the table. */
    static final List<Comparison> COMPARISONS = List.of(
            new Comparison(
                    "winding",
                    "winding built and checked",
                    WindingBenchmark.class,
                    "winding",
                    "as many ready coils listed",
                    "readyCoils"),
            new Comparison(
                    "winding",
                    "circuits of a winding",
                    WindingBenchmark.class,
                    "circuits",
                    "JGraphT, same graph and its parts",
                    "graphAndParts"),
            new Comparison(
                    "search",
                    "search for windings that fit",
                    SearchBenchmark.class,
                    "search",
                    "each that fits built once",
                    "buildWhatFits"),
            new Comparison(
                    "drop",
                    "drop walk",
                    DropWalkBenchmark.class,
                    "dropWalk",
                    "EJML, one factorisation",
                    "generalDropWalk"),
            new Comparison(
                    "drop",
                    "winding built, and drop walk",
                    DropWalkBenchmark.class,
                    "dropWalkFromFreshWinding",
                    "EJML, one factorisation",
                    "generalDropWalk"),
            new Comparison(
                    "drop",
                    "drop walk",
                    DropWalkBenchmark.class,
                    "dropWalk",
                    "EJML, called for each pair",
                    "generalDropWalkPerPair"),
            new Comparison(
                    "drop",
                    "resistance walk",
                    DropWalkBenchmark.class,
                    "resistanceWalk",
                    "EJML, solved for each pair",
                    "generalResistanceWalk"),
            update("8 readings, a coil changed", "eightReadingsByUpdate"),
            update("8 readings, two coils changed", "eightReadingsByUpdateOfTwo"),
            update("whole walk, a coil changed", "walkByUpdate"),
            update("network changed and refactorised", "refactorisation"),
            new Comparison(
                    "diagnosis",
                    "one hypothesis weighed",
                    DiagnosisBenchmark.class,
                    "hypothesisByUpdate",
                    "its network refactorised",
                    "hypothesisByRefactorising"),
            new Comparison(
                    "diagnosis",
                    "diagnosis of a drop walk",
                    DiagnosisBenchmark.class,
                    "diagnose",
                    "one network refactorised",
                    "hypothesisByRefactorising"),
            new Comparison(
                    "drawing",
                    "developed drawing to SVG",
                    DrawingBenchmark.class,
                    "developed",
                    "as many ready elements",
                    "readyForDeveloped"),
            new Comparison(
                    "drawing",
                    "round drawing to SVG",
                    DrawingBenchmark.class,
                    "round",
                    "as many ready elements",
                    "readyForRound"));

    private BenchmarkTable() {}

    private static Comparison update(String what, String method) {
        return new Comparison(
                "update", what, NetworkBenchmark.class, method, "EJML, matrix refactorised", "generalRefactorisation");
    }

    /** The words that ask for parts of the table. */
    static Set<String> words() {
        Set<String> words =
                COMPARISONS.stream().map(Comparison::room).collect(Collectors.toCollection(LinkedHashSet::new));
        words.add(STARTUP);
        return words;
    }

    /** Measures and prints; all unless words name parts. */
    public static void main(String[] args) throws RunnerException, IOException, InterruptedException {
        List<String> wanted = args.length == 0 ? List.copyOf(words()) : List.of(args);
        if (!words().containsAll(wanted)) {
            System.err.println("the parts of the table are " + String.join(", ", words()) + "; asked for "
                    + String.join(", ", wanted));
            System.exit(2);
        }
        // The runner hands this on to the virtual machines it starts.
        System.setProperty("java.class.path", classPath());
        List<Compared> results = new ArrayList<>(measure(
                COMPARISONS.stream().filter(c -> wanted.contains(c.room())).toList()));
        String missing = "";
        if (wanted.contains(STARTUP)) {
            Path jar = Files.exists(JAR) ? JAR : Path.of("..").resolve(JAR);
            if (Files.exists(jar)) {
                System.err.println("measuring start-up");
                results.addAll(StartupTimes.of(jar));
            } else {
                missing = "Start-up is not in it: there is no " + JAR + "; mvn -q -DskipTests package makes it.\n";
            }
        }
        System.out.print(ResultTable.text(results));
        System.out.print(missing);
    }

    private static List<Compared> measure(List<Comparison> comparisons) throws RunnerException {
        Set<String> benchmarks = new LinkedHashSet<>();
        comparisons.forEach(c -> benchmarks.addAll(c.benchmarks()));
        Map<String, SortedMap<Integer, Measured>> times = new HashMap<>();
        Map<String, String> units = new HashMap<>();
        for (String benchmark : benchmarks) {
            System.err.println("measuring " + benchmark.substring(benchmark.lastIndexOf('.') + 1));
            ChainedOptionsBuilder options = new OptionsBuilder()
                    .include("^" + Pattern.quote(benchmark) + "$")
                    .forks(1)
                    .jvmArgsAppend("-Xmx1g")
                    .addProfiler(ProcessorTime.class)
                    .warmupIterations(5)
                    .warmupTime(TimeValue.milliseconds(500))
                    .measurementIterations(7)
                    .measurementTime(TimeValue.milliseconds(400))
                    .verbosity(VerboseMode.SILENT);
            for (RunResult result : new Runner(options.build()).run()) {
                String unit = result.getParams().getParamsKeys().iterator().next();
                units.put(benchmark, unit);
                times.computeIfAbsent(benchmark, b -> new TreeMap<>())
                        .put(Integer.valueOf(result.getParams().getParam(unit)), Measured.middle(goes(result)));
            }
        }
        return comparisons.stream()
                .map(c -> new Compared(
                        c.what(),
                        units.get(c.benchmarks().get(0)),
                        times.get(c.benchmarks().get(0)),
                        c.against(),
                        times.get(c.benchmarks().get(1))))
                .toList();
    }

    private static double[] goes(RunResult result) {
        return result.getAggregatedResult().getIterationResults().stream()
                .mapToDouble(iteration ->
                        iteration.getSecondaryResults().get(ProcessorTime.LABEL).getScore())
                .toArray();
    }

    /** The class path of this class, also where a build tool has loaded it by a class loader of its own. */
    private static String classPath() {
        if (BenchmarkTable.class.getClassLoader() instanceof URLClassLoader loader) {
            return Arrays.stream(loader.getURLs())
                    .map(url -> Path.of(URI.create(url.toString())).toString())
                    .collect(Collectors.joining(File.pathSeparator));
        }
        return System.getProperty("java.class.path");
    }
}
