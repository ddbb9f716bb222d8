package coilwright.winding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Every slot and bar of a connection list must exist, and every coil number stand once. */
final class ListedCoilsExist implements Rules.BlockingRule {
    static final String ID = "listed-coils-exist";

    @Override
    public List<Finding> check(Draft draft) {
        if (!(draft.spec() instanceof WindingSpec.Listed listed)) {
            return List.of();
        }
        List<Finding> out = new ArrayList<>();
        Map<Integer, Integer> seen = new LinkedHashMap<>();
        int entry = 0;
        for (ListedCoil c : listed.coils()) {
            entry++;
            if (c.coil() < 1 || c.coil() > 2 * Armature.MAX_BARS) {
                out.add(wrong(c.coil(), entry, "coil", 2 * Armature.MAX_BARS));
            }
            Integer before = seen.putIfAbsent(c.coil(), entry);
            if (before != null) {
                out.add(Finding.error(
                        ID,
                        "coil " + c.coil() + " is listed twice, in entries " + before + " and " + entry,
                        "give every coil a number of its own",
                        References.ARITHMETIC));
            }
            range(out, entry, "topSlot", OptionalInt.of(c.topSlot()), draft.slots());
            range(out, entry, "bottomSlot", OptionalInt.of(c.bottomSlot()), draft.slots());
            range(out, entry, "topBar", c.topBar(), draft.bars());
            range(out, entry, "bottomBar", c.bottomBar(), draft.bars());
        }
        return out;
    }

    private static void range(List<Finding> out, int entry, String field, OptionalInt value, int max) {
        if (value.isPresent() && (value.getAsInt() < 1 || value.getAsInt() > max)) {
            out.add(wrong(value.getAsInt(), entry, field, max));
        }
    }

    private static Finding wrong(int value, int entry, String field, int max) {
        return Finding.error(
                ID,
                "entry " + entry + " has " + field + " " + value + ", but " + field + "s run from 1 to " + max,
                "correct the list",
                References.ARITHMETIC);
    }
}
