package coilwright.fault;

import java.util.LinkedHashSet;
import java.util.Set;

/** The records of {@link Fault}, for tests that are to miss none. */
public final class FaultKinds {
    private FaultKinds() {}

    public static Set<Class<?>> all() {
        Set<Class<?>> out = new LinkedHashSet<>();
        collect(Fault.class, out);
        return out;
    }

    private static void collect(Class<?> type, Set<Class<?>> out) {
        if (!type.isSealed()) {
            out.add(type);
            return;
        }
        for (Class<?> part : type.getPermittedSubclasses()) {
            collect(part, out);
        }
    }
}
