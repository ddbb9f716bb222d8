package coilwright.winding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What is out of the ordinary in a connection list. */
final class ListedLeads implements Rules.WindingRule {
    static final String ID = "listed-leads";

    @Override
    public List<Finding> check(Winding winding) {
        if (winding.type() != WindingType.LISTED) {
            return List.of();
        }
        List<Finding> out = new ArrayList<>();
        Map<Integer, List<Integer>> tops = new LinkedHashMap<>();
        Map<Integer, List<Integer>> bottoms = new LinkedHashMap<>();
        for (int bar = 1; bar <= winding.armature().bars(); bar++) {
            tops.put(bar, new ArrayList<>());
            bottoms.put(bar, new ArrayList<>());
        }
        for (Coil c : winding.coils()) {
            c.topBar().ifPresent(b -> tops.get(b).add(c.number()));
            c.bottomBar().ifPresent(b -> bottoms.get(b).add(c.number()));
            if (c.isLive() && c.topBar().getAsInt() == c.bottomBar().getAsInt()) {
                out.add(warn(
                                "coil " + c.number() + " has both leads on bar "
                                        + c.topBar().getAsInt() + ", so it is shorted",
                                "trace its leads again")
                        .at(List.of(c.number()), List.of(c.topBar().getAsInt())));
            } else if (!c.isLive() && !c.isDead()) {
                out.add(warn("coil " + c.number() + " has one lead on no bar", "find the bar of its other lead")
                        .at(List.of(c.number()), List.of()));
            }
        }
        tops.forEach((bar, coils) -> perBar(out, bar, coils, "top"));
        bottoms.forEach((bar, coils) -> perBar(out, bar, coils, "bottom"));
        if (winding.pitches().isEmpty()) {
            out.add(Finding.note(
                    ID, "the coils do not all reach equally far, so no pitch is given", References.ARITHMETIC));
        }
        return out;
    }

    private static void perBar(List<Finding> out, int bar, List<Integer> coils, String which) {
        if (coils.isEmpty()) {
            out.add(warn("bar " + bar + " has no " + which + " lead", "a sound winding has one on every bar")
                    .at(List.of(), List.of(bar)));
        } else if (coils.size() > 1) {
            out.add(warn(
                            "bar " + bar + " has " + coils.size() + " " + which + " leads, of coils "
                                    + String.join(
                                            ", ",
                                            coils.stream().map(String::valueOf).toList()),
                            "a sound winding has one on every bar")
                    .at(coils, List.of(bar)));
        }
    }

    private static Finding warn(String reason, String wayOut) {
        return Finding.warning(ID, reason, wayOut, References.COMMON_PRACTICE);
    }
}
