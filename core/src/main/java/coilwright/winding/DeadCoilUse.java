package coilwright.winding;

import java.util.List;

/** A dead coil belongs to a wave winding whose punching does not suit, and to no lap winding. */
final class DeadCoilUse implements Rules.WindingRule {
    static final String ID = "dead-coil-use";

    @Override
    public List<Finding> check(Winding winding) {
        if (winding.deadCoils().isEmpty() || winding.type() == WindingType.LISTED) {
            return List.of();
        }
        List<Integer> dead = winding.deadCoils().stream().map(Coil::number).toList();
        String which = (dead.size() == 1 ? "coil " : "coils ")
                + String.join(", ", dead.stream().map(String::valueOf).toList());
        if (winding.type() == WindingType.LAP) {
            return List.of(Finding.warning(
                            ID,
                            which + " dead in a lap winding, where every coil could have a bar",
                            (winding.armature().bars() + dead.size()) + " bars would need no dead coil",
                            References.DUMMY_COIL_NOTES)
                    .at(dead, List.of()));
        }
        return List.of(Finding.note(
                        ID,
                        which + " dead: kept in the slots for balance, leads cut off, taped and insulated, no bars",
                        References.DUMMY_COIL_NOTES)
                .at(dead, List.of()));
    }
}
