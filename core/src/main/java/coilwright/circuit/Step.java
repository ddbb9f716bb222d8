package coilwright.circuit;

import coilwright.winding.Coil;

/**
 * One coil passed through on a walk.
 *
 * @param coil the coil
 * @param fromBar bar it is entered from
 * @param toBar bar it is left to
 */
public record Step(Coil coil, int fromBar, int toBar) {
    /** {@return whether the coil is passed from its top lead to its bottom lead, the positive sense of its voltage} */
    public boolean forward() {
        return coil.topBar().getAsInt() == fromBar && coil.bottomBar().getAsInt() == toBar;
    }

    /** {@return the same coil passed the other way} */
    public Step reversed() {
        return new Step(coil, toBar, fromBar);
    }
}
