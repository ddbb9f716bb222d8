package coilwright.bench;

import coilwright.winding.Coil;
import java.util.OptionalInt;

/**
 * A coil as it is electrically.
 *
 * @param coil its number
 * @param topBar bar where the lead of its top side lands; empty for none
 * @param bottomBar bar where the lead of its bottom side lands; empty for none
 * @param ohms resistance of its wire, over 0; infinite where it is broken
 * @param turns its turns relative to a sound coil, over 0
 * @param jointOhms further resistance in a bad joint at its top lead, 0 or more
 */
public record CoilState(
        int coil, OptionalInt topBar, OptionalInt bottomBar, double ohms, double turns, double jointOhms) {
    /**
     * Checks the values.
     *
     * @param coil its number
     * @param topBar bar where the lead of its top side lands; empty for none
     * @param bottomBar bar where the lead of its bottom side lands; empty for none
     * @param ohms resistance of its wire, over 0; infinite where it is broken
     * @param turns its turns relative to a sound coil, over 0
     * @param jointOhms further resistance in a bad joint at its top lead, 0 or more
     * @throws IllegalArgumentException when one is out of range
     */
    public CoilState {
        if (!(ohms > 0)) {
            throw new IllegalArgumentException("coil " + coil + " has " + ohms + " ohm, but must have more than 0");
        }
        if (!(turns > 0) || Double.isInfinite(turns)) {
            throw new IllegalArgumentException(
                    "coil " + coil + " has " + turns + " times the turns of a sound coil, but must have more than 0");
        }
        if (!(jointOhms >= 0) || Double.isInfinite(jointOhms)) {
            throw new IllegalArgumentException(
                    "the joint of coil " + coil + " has " + jointOhms + " ohm, but must have 0 or more");
        }
    }

    /** A coil as wound. */
    static CoilState sound(Coil coil, double ohms) {
        return new CoilState(coil.number(), coil.topBar(), coil.bottomBar(), ohms, 1, 0);
    }

    /** {@return whether its wire is broken} */
    public boolean open() {
        return Double.isInfinite(ohms);
    }

    /** {@return whether both leads land on bars} */
    public boolean connected() {
        return topBar.isPresent() && bottomBar.isPresent();
    }

    /** {@return the same coil with a broken wire} */
    public CoilState broken() {
        return new CoilState(coil, topBar, bottomBar, Double.POSITIVE_INFINITY, turns, jointOhms);
    }

    /** {@return the same coil with its leads changed over: current and flux act the other way} */
    public CoilState reversed() {
        return new CoilState(coil, bottomBar, topBar, ohms, turns, jointOhms);
    }

    /**
     * {@return the same coil on other bars}
     *
     * @param top bar of the top lead; empty where it is lifted
     * @param bottom bar of the bottom lead; empty where it is lifted
     */
    public CoilState onBars(OptionalInt top, OptionalInt bottom) {
        return new CoilState(coil, top, bottom, ohms, turns, jointOhms);
    }

    /**
     * {@return the same coil with a bad joint}
     *
     * @param extraOhms resistance of the joint, over 0
     */
    public CoilState withJoint(double extraOhms) {
        return new CoilState(coil, topBar, bottomBar, ohms, turns, extraOhms);
    }

    /**
     * {@return the same coil with other turns, its resistance with them}
     *
     * @param relative its turns over those of a sound coil, over 0
     */
    public CoilState withTurns(double relative) {
        return new CoilState(coil, topBar, bottomBar, ohms / turns * relative, relative, jointOhms);
    }
}
