package coilwright.job;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.AroundTryHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;
import net.jqwik.api.lifecycle.TryExecutionResult;
import net.jqwik.api.lifecycle.TryExecutor;
import net.jqwik.api.lifecycle.TryLifecycleContext;

/**
 * How many cases a fuzzer tries: as many as the system property {@code fuzz} says, a few hundred unless given. A case
 * that takes longer than {@link #HANGS} fails; with the property given the slowest is printed.
 */
public final class FuzzCases implements AroundPropertyHook, AroundTryHook {
    private static final Duration HANGS = Duration.ofSeconds(20);
    private static final int USUAL = 200;

    private static long slowest;
    private static String slowestCase = "";

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }

    @Override
    public PropertyExecutionResult aroundProperty(PropertyLifecycleContext context, PropertyExecutor property) {
        Optional<Integer> wanted = Optional.ofNullable(Integer.getInteger("fuzz"));
        context.attributes().setTries(wanted.orElse(USUAL));
        context.attributes().setEdgeCases(EdgeCasesMode.NONE);
        context.attributes().setShrinking(ShrinkingMode.OFF);
        slowest = 0;
        PropertyExecutionResult result = property.execute();
        if (wanted.isPresent()) {
            System.out.printf(
                    Locale.ROOT,
                    "%s: %d cases, the slowest took %.3f s: %s%n",
                    context.extendedLabel(),
                    result.countTries(),
                    slowest / 1e9,
                    slowestCase);
        }
        return result;
    }

    @Override
    public TryExecutionResult aroundTry(TryLifecycleContext context, TryExecutor aTry, List<Object> parameters) {
        long begun = System.nanoTime();
        TryExecutionResult result = assertTimeoutPreemptively(HANGS, () -> aTry.execute(parameters));
        long took = System.nanoTime() - begun;
        if (took > slowest) {
            slowest = took;
            slowestCase = String.valueOf(parameters.get(0));
        }
        return result;
    }
}
