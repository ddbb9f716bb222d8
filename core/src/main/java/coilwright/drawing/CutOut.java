package coilwright.drawing;

import java.util.List;

/**
 * A coil cut out in an emergency, for {@link OverlayDrawings#cutOut}.
 *
 * @param coil number of the coil whose leads are lifted
 * @param cutThrough whether it is also cut through at the back end
 * @param idle numbers of the other coils that then carry nothing
 * @param bridge the two bars joined by a jumper; empty where none are
 */
public record CutOut(int coil, boolean cutThrough, List<Integer> idle, List<Integer> bridge) {
    /**
     * Copies the lists.
     *
     * @param coil number of the coil whose leads are lifted
     * @param cutThrough whether it is also cut through at the back end
     * @param idle numbers of the other coils that then carry nothing
     * @param bridge the two bars joined by a jumper; empty where none are
     * @throws IllegalArgumentException when the bridge has another number of bars than none or two
     */
    public CutOut {
        idle = List.copyOf(idle);
        bridge = List.copyOf(bridge);
        if (!bridge.isEmpty() && bridge.size() != 2) {
            throw new IllegalArgumentException("a bridge joins " + bridge.size() + " bars, but must join two");
        }
    }
}
