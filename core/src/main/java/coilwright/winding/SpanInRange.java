package coilwright.winding;

import java.util.List;

/** A coil's two sides must lie in two slots, less than once round apart. */
final class SpanInRange implements Rules.BlockingRule {
    static final String ID = "span-in-range";

    @Override
    public List<Finding> check(Draft draft) {
        if (!draft.fitsSlots()) {
            return List.of();
        }
        int u = draft.sidesPerSlot();
        int s = draft.slots();
        if (draft.span() instanceof CoilSpan.Throw t && t.slots() >= s) {
            return List.of(Finding.error(
                    ID,
                    "throw is " + t.slots() + ", but there are only " + s + " slots",
                    "about " + Math.max(1, s / draft.armature().poles()) + " (one pole pitch) would do",
                    References.ARITHMETIC));
        }
        if (draft.span() instanceof CoilSpan.Positions b && (b.positions() < u || b.positions() > u * (s - 1))) {
            return List.of(Finding.error(
                    ID,
                    "backSpan is " + b.positions() + ", but with " + u + " coil sides per slot and layer it must be "
                            + "from " + u + " to " + u * (s - 1) + " to bring the two sides into two slots",
                    "about " + Math.max(1, s / draft.armature().poles()) * u + " (one pole pitch) would do",
                    References.ARITHMETIC));
        }
        return List.of();
    }
}
