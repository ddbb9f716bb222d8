package coilwright.bench;

import coilwright.winding.Armature;
import coilwright.winding.Coil;

/**
 * A growler: an alternating magnet whose two faces stand below the armature in its V. The flux goes into the armature
 * through one face and out through the other.
 *
 * <p>Assumed: the flux density is even under each face and zero elsewhere; a coil side counts as standing at its slot's
 * centre line; the coils' own leakage is left out. Readings are therefore relative: 1 is one whole face's flux through
 * one sound coil.
 *
 * @param halfGap from straight down to the middle of either face, degrees, over 0 and under 180
 * @param face width of a face, degrees, over 0, so that the faces do not overlap
 */
public record Growler(double halfGap, double face) {
    /** The usual V: faces 45° either side of straight down, 60° wide. */
    public static final Growler USUAL = new Growler(45, 60);

    /**
     * Checks the angles.
     *
     * @param halfGap from straight down to the middle of either face, degrees, over 0 and under 180
     * @param face width of a face, degrees, over 0, so that the faces do not overlap
     * @throws IllegalArgumentException when they are out of range or the faces overlap
     */
    public Growler {
        if (!(halfGap > 0 && halfGap < 180)) {
            throw new IllegalArgumentException(
                    "growler halfGap is " + halfGap + "°, but must be over 0° and under 180°");
        }
        double most = Math.min(2 * halfGap, 360 - 2 * halfGap);
        if (!(face > 0 && face <= most)) {
            throw new IllegalArgumentException("growler face is " + face + "°, but with halfGap " + halfGap
                    + "° it must be over 0° and at most " + most + "°, or the two faces overlap");
        }
    }

    /** {@return middle of the face on the right as seen from the commutator end (under 180°)} */
    public double rightFace() {
        return 180 - halfGap;
    }

    /** {@return middle of the face on the left as seen from the commutator end (over 180°)} */
    public double leftFace() {
        return 180 + halfGap;
    }

    /** Flux in from straight up clockwise to an angle, faces of flux. */
    private double fluxTo(double degrees) {
        double turn = degrees - 360 * Math.floor(degrees / 360);
        return share(turn - (rightFace() - face / 2)) - share(turn - (leftFace() - face / 2));
    }

    private double share(double intoFace) {
        return Math.max(0, Math.min(1, intoFace / face));
    }

    /**
     * {@return voltage of a coil from its top lead to its bottom lead, relative: 1 where one whole face lies between
     * its sides}
     *
     * @param armature core and commutator
     * @param coil a coil of this armature
     * @param armatureAngle of slot 1's centre line, degrees
     */
    public double coilVolts(Armature armature, Coil coil, double armatureAngle) {
        double top = armatureAngle + armature.slotCentre(coil.top().slot());
        int span = Math.floorMod(coil.bottom().slot() - coil.top().slot(), armature.slots());
        return fluxTo(top + span * armature.slotAngle()) - fluxTo(top);
    }
}
