package coilwright.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The arithmetic of a winding written out step by step with its own numbers, as a rewinder does it on paper. */
public final class WorkedPitches {
    private WorkedPitches() {}

    /**
     * One step.
     *
     * @param what what is worked out
     * @param working rule, numbers and result
     */
    public record Step(String what, String working) {}

    /**
     * {@return the steps in order; empty for a listed winding, whose list says all}
     *
     * @param winding the winding
     */
    public static List<Step> of(Winding winding) {
        if (winding.type() == WindingType.LISTED) {
            return List.of();
        }
        List<Step> out = new ArrayList<>();
        var draft = new Draft(winding.armature(), winding.spec());
        core(out, draft);
        for (CoilSet set : winding.sets()) {
            String which = winding.sets().size() > 1 ? set.type().word() + " part: " : "";
            pitches(out, draft, set, which);
        }
        paths(out, winding, draft);
        return List.copyOf(out);
    }

    private static void core(List<Step> out, Draft draft) {
        Armature a = draft.armature();
        int q = draft.positions();
        if (draft.deadCoils() > 0) {
            add(out, "coils", "Q = bars + dead coils = " + a.bars() + " + " + draft.deadCoils() + " = " + q);
        }
        int u = draft.sidesPerSlot();
        add(out, "coil sides per slot and layer", "u = Q/S = " + q + "/" + a.slots() + " = " + u);
        add(out, "pole pitch", "S/P = " + a.slots() + "/" + a.poles() + " = " + Words.slots(a.polePitchSlots()));
    }

    private static void pitches(List<Step> out, Draft draft, CoilSet set, String which) {
        Pitches y = set.pitches().orElseThrow();
        int u = draft.sidesPerSlot();
        int y1 = y.backSpan();
        if (!which.isEmpty() && set.type() == WindingType.WAVE) {
            int p = draft.polePairs();
            add(
                    out,
                    which + "back span",
                    "y1 = Q/p - y1 of the lap part = " + draft.positions() + "/" + p + " - " + draft.backSpan() + " = "
                            + y1 + " positions");
        } else if (draft.span() instanceof CoilSpan.Positions) {
            String split = y.stepped() ? ", " + Words.number(y.meanThrow()) + " slots on the mean: stepped" : "";
            add(out, which + "back span", "y1 = " + y1 + " positions, as given" + split);
        } else {
            int slots = y.throwSlots().orElseThrow();
            String from = draft.span() instanceof CoilSpan.Throw
                    ? plural(slots, "slot") + ", as given"
                    : "pole pitch rounded down = " + plural(slots, "slot");
            add(out, which + "coil throw", from + ": slot 1 to slot " + (1 + slots));
            add(out, which + "back span", "y1 = u × throw = " + u + " × " + slots + " = " + plural(y1, "position"));
        }
        int yc = y.commutator();
        add(out, which + "commutator pitch", commutator(draft, set, yc));
        add(out, which + "back pitch", "Yb = 2 × y1 + 1 = 2 × " + y1 + " + 1 = " + y.back() + " conductors");
        add(
                out,
                which + "front pitch",
                "Yf = 2 × (yc - y1) - 1 = 2 × (" + yc + " - " + y1 + ") - 1 = " + plural(y.frontSigned(), "conductor")
                        + (y.frontSigned() < 0 ? ", printed without its sign" : ""));
        add(
                out,
                which + "resultant pitch",
                "Y = Yb + Yf = " + y.back() + (y.frontSigned() < 0 ? " - " : " + ") + y.front() + " = "
                        + (y.back() + y.frontSigned()) + " = 2 × yc");
        int k = draft.bars();
        add(out, which + "closed circuits", "gcd(K, yc) = gcd(" + k + ", " + Math.abs(yc) + ") = " + y.closures(k));
    }

    private static String commutator(Draft draft, CoilSet set, int yc) {
        int m = set.plex().orElseThrow();
        int k = draft.bars();
        int p = draft.polePairs();
        Direction direction = set.direction().orElseThrow();
        String sign = direction == Direction.PROGRESSIVE ? "+" : "-";
        if (set.type() == WindingType.LAP) {
            return "yc = " + sign + "m = " + String.format(Locale.ROOT, "%+d", yc)
                    + (Math.abs(yc) == 1 ? " bar" : " bars");
        }
        return "yc = (K " + sign + " m)/p = (" + k + " " + sign + " " + m + ")/" + p + " = " + plural(yc, "bar");
    }

    private static void paths(List<Step> out, Winding winding, Draft draft) {
        int poles = draft.armature().poles();
        int m = draft.plex();
        int paths = winding.parallelPaths().orElseThrow();
        String working = switch (winding.type()) {
            case LAP -> "P × m = " + poles + " × " + m;
            case WAVE -> "2 × m = 2 × " + m;
            case FROG_LEG -> "2 × P × m = 2 × " + poles + " × " + m;
            case LISTED -> throw new AssertionError("a listed winding has no paths by rule");
        };
        add(out, "parallel paths", working + " = " + paths);
        winding.equalizerPitch()
                .ifPresent(e -> add(
                        out,
                        "equalizer pitch",
                        winding.type() == WindingType.WAVE
                                ? "K/a = " + draft.bars() + "/" + paths / 2 + " = " + e + " bars"
                                : "K/p = " + draft.bars() + "/" + draft.polePairs() + " = " + e + " bars"));
    }

    private static String plural(int n, String noun) {
        return n + " " + noun + (Math.abs(n) == 1 ? "" : "s");
    }

    private static void add(List<Step> out, String what, String working) {
        out.add(new Step(what, working));
    }
}
