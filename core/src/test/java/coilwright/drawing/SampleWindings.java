package coilwright.drawing;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Windings of every kind, from the smallest to 400 bars. */
public final class SampleWindings {
    private SampleWindings() {}

    public static Map<String, Winding> all() {
        Map<String, Winding> out = new LinkedHashMap<>();
        out.put("smallest", build(Armature.of(3, 3, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)));
        out.put(
                "two slots",
                build(
                        Armature.of(2, 2, 2),
                        new WindingSpec.Listed(List.of(ListedCoil.of(1, 1, 2, 1, 2), ListedCoil.of(2, 2, 1, 2, 1)))));
        out.put("wave", wave());
        out.put("lap", build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.RETROGRESSIVE)));
        out.put("dead coil", deadCoil());
        out.put(
                "mica",
                build(
                        new Armature(12, 24, 2, SlotAlignment.MICA),
                        WindingSpec.lap(1, Direction.RETROGRESSIVE).withLeadOffset(3)));
        out.put(
                "stepped duplex",
                build(
                        Armature.of(22, 66, 4),
                        WindingSpec.lap(2, Direction.PROGRESSIVE).withSpan(CoilSpan.ofPositions(16))));
        out.put(
                "frog-leg",
                build(Armature.of(24, 48, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)));
        out.put(
                "two-pole frog-leg",
                build(Armature.of(12, 24, 2), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 2)));
        out.put("six-pole lap", build(Armature.of(54, 162, 6), WindingSpec.lap(1, Direction.PROGRESSIVE)));
        out.put("many-pole wave", build(Armature.of(61, 183, 10), WindingSpec.wave(2, Direction.PROGRESSIVE)));
        out.put("broken", broken());
        out.put(
                "no live coil",
                build(
                        Armature.of(4, 4, 2),
                        new WindingSpec.Listed(List.of(ListedCoil.dead(1, 1, 3), ListedCoil.dead(2, 2, 4)))));
        out.put("crowded slots", crowded());
        out.put("400 bars", bars400());
        return out;
    }

    static Winding wave() {
        return build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
    }

    static Winding deadCoil() {
        return build(
                Armature.of(31, 61, 4),
                WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(32)));
    }

    public static Winding bars400() {
        return build(Armature.of(100, 400, 8), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    /** Missing leads, two leads of a kind on one bar, a coil on one bar, a coil wound backwards, a bare bar. */
    static Winding broken() {
        return build(
                Armature.of(12, 12, 2),
                new WindingSpec.Listed(List.of(
                        ListedCoil.of(1, 1, 6, 1, 2),
                        ListedCoil.of(2, 2, 7, 2, 3),
                        ListedCoil.of(3, 8, 3, 3, 4),
                        ListedCoil.of(4, 4, 9, 5, 4),
                        ListedCoil.of(5, 5, 10, 5, 6),
                        new ListedCoil(6, 6, 11, OptionalInt.of(6), OptionalInt.empty()),
                        ListedCoil.of(7, 7, 12, 7, 8),
                        ListedCoil.of(8, 8, 1, 8, 9),
                        ListedCoil.of(9, 9, 2, 9, 9),
                        ListedCoil.of(10, 10, 10, 1, 1),
                        ListedCoil.dead(11, 11, 4),
                        ListedCoil.of(12, 12, 5, 12, 1))));
    }

    /** Far more coils than slots and bars, all in two slots. */
    private static Winding crowded() {
        List<ListedCoil> list = new java.util.ArrayList<>();
        for (int n = 1; n <= 90; n++) {
            list.add(ListedCoil.of(n, 1, 2, 1 + n % 5, 1 + (n + 1) % 5));
        }
        return build(Armature.of(2, 5, 2), new WindingSpec.Listed(list));
    }

    static Winding build(Armature a, WindingSpec spec) {
        return Winding.build(a, spec);
    }
}
