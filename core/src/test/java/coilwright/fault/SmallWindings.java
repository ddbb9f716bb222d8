package coilwright.fault;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;

/** Every winding of small cores. */
final class SmallWindings {
    private SmallWindings() {}

    /**
     * Lap, wave and frog-leg windings, of plex 1 to 3, with no dead coil and with one.
     *
     * @param mostSides most coil sides per slot and layer
     */
    static List<Winding> of(int fewestSlots, int mostSlots, int mostSides, int mostPoles, int mostPlex) {
        List<Winding> out = new ArrayList<>();
        for (int slots = fewestSlots; slots <= mostSlots; slots++) {
            for (int u = 1; u <= mostSides; u++) {
                for (int poles = 2; poles <= mostPoles; poles += 2) {
                    for (int plex = 1; plex <= mostPlex; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (int dead = 0; dead <= 1; dead++) {
                                for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                                    add(
                                            out,
                                            Armature.of(slots, slots * u - dead, poles),
                                            new WindingSpec.Regular(
                                                    type,
                                                    plex,
                                                    direction,
                                                    CoilSpan.usual(),
                                                    dead == 0 ? List.of() : List.of(slots * u / 2 + 1),
                                                    (slots + u) % 3 - 1));
                                }
                            }
                            add(
                                    out,
                                    Armature.of(slots, slots * u, poles),
                                    new WindingSpec.FrogLeg(plex, direction, CoilSpan.usual(), 1));
                        }
                    }
                }
            }
        }
        return out;
    }

    private static void add(List<Winding> out, Armature armature, WindingSpec spec) {
        if (Rules.blocking(armature, spec).isEmpty()) {
            out.add(Winding.build(armature, spec));
        }
    }
}
