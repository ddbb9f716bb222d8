package coilwright.benchmark;

import java.util.List;

/**
 * A line of the table before it is measured: a benchmark and its baseline, both methods of one class with one parameter
 * that is the size.
 *
 * @param room the word that asks for it
 * @param what it is
 * @param type the class of both
 * @param method the benchmark
 * @param against the name of the baseline
 * @param floor the baseline
 */
record Comparison(String room, String what, Class<?> type, String method, String against, String floor) {
    /** Full names of both benchmarks. */
    List<String> benchmarks() {
        return List.of(benchmark(method), benchmark(floor));
    }

    private String benchmark(String name) {
        return type.getName() + "." + name;
    }
}
