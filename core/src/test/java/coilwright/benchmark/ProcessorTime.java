package coilwright.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * The processor time of all Java threads for each go, which other work on the machine disturbs little. Neither the
 * compiler nor the collector of the virtual machine is in it.
 */
public final class ProcessorTime implements InternalProfiler {
    /** Name of the result, in nanoseconds. */
    static final String LABEL = "processor";

    private long start;

    @Override
    public String getDescription() {
        return "processor time for each go";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        start = soFar();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double nanos = (double) (soFar() - start) / result.getMetadata().getAllOps();
        return List.of(new ScalarResult(LABEL, nanos, "ns/op", AggregationPolicy.AVG));
    }

    private static long soFar() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long sum = 0;
        for (long id : threads.getAllThreadIds()) {
            // -1 for a thread that has ended meanwhile.
            sum += Math.max(0, threads.getThreadCpuTime(id));
        }
        return sum;
    }
}
