package coilwright;

import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Holds every property to at most {@code -Dtries.most} tries, always the same ones, and leaves a failed try as it
 * is. Mutation testing runs each property very often and asks only whether it fails. Without the option, nothing
 * changes.
 */
public final class FewTries implements AroundPropertyHook {
    private static final int MOST = Integer.getInteger("tries.most", Integer.MAX_VALUE);
    private static final int JQWIK_TRIES = 1000;

    @Override
    public PropertyExecutionResult aroundProperty(PropertyLifecycleContext context, PropertyExecutor property) {
        if (MOST < Integer.MAX_VALUE) {
            int tries = context.attributes().tries().orElse(JQWIK_TRIES);
            context.attributes().setTries(Math.min(MOST, tries));
            context.attributes().setSeed("1");
            context.attributes().setShrinking(ShrinkingMode.OFF);
        }
        return property.execute();
    }

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }
}
