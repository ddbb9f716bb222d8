package coilwright.winding;

import java.util.List;

/** Live and dead coils together must fill the slots evenly: (K + d)/S whole. */
final class CoilSidesFitSlots implements Rules.BlockingRule {
    static final String ID = "coil-sides-fit-slots";

    @Override
    public List<Finding> check(Draft draft) {
        if (draft.spec().type() == WindingType.LISTED || draft.fitsSlots()) {
            return List.of();
        }
        int s = draft.slots();
        int q = draft.positions();
        int below = q / s * s;
        int above = below + s;
        int dead = draft.deadCoils();
        String coils = Words.count(q, "coil") + (dead == 0 ? "" : " (" + Words.count(dead, "dead coil") + " counted)");
        StringBuilder way = new StringBuilder();
        if (above - draft.bars() <= Math.max(2, s / 4)) {
            way.append(Words.count(above - draft.bars(), "dead coil")).append(" in all would fill the slots; or ");
        }
        if (below - dead >= 2) {
            way.append(below - dead).append(" or ");
        }
        way.append(above - dead).append(" bars would do");
        return List.of(Finding.error(
                ID,
                draft.bars() + " bars need " + coils + ", which do not share out evenly over " + s + " slots (" + q
                        + "/" + s + " is not whole)",
                way.toString(),
                References.NAGRATH_KOTHARI));
    }
}
