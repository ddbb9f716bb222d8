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
        for (int n : r.deadCoils()) {
            if (n < 1 || n > draft.positions()) {
                return List.of(Finding.error(
                        ID,
                        "deadCoils names coil " + n + ", but the coils run from 1 to " + draft.positions(),
                        "name one of those",
                        References.ARITHMETIC));
            }
        }
        return List.of();
    }
}
