package coilwright.winding;

import java.util.List;

/** A dead coil must be one of the coils. */
final class DeadCoilsExist implements Rules.BlockingRule {
    static final String ID = "dead-coils-exist";

    @Override
    public List<Finding> check(Draft draft) {
        if (!(draft.spec() instanceof WindingSpec.Regular r)) {
            return List.of();
        }
        List<Integer> strange = r.deadCoils().stream()
                .filter(n -> n < 1 || n > draft.positions())
                .toList();
        if (strange.isEmpty()) {
            return List.of();
        }
        return List.of(Finding.error(
                ID,
                "deadCoils names coil " + strange.get(0) + ", but the coils run from 1 to " + draft.positions(),
                "name one of those",
                References.ARITHMETIC));
    }
}
