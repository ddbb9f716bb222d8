package coilwright.rewind;

/**
 * How a coil goes from slot to slot outside the core, for its mean length.
 *
 * <p>These are models; a turn measured on the stripped coil is better, and {@link MeanTurn#measured} takes its place.
 */
public sealed interface EndTurn {
    /**
     * {@return length of the coil outside the core at one end, mm}
     *
     * @param core sizes of the core
     * @param slots slots in the core
     * @param throwSlots slots spanned by the coil
     */
    double lengthMm(CoreSize core, int slots, int throwSlots);

    /** {@return one line on how it was reckoned} */
    String model();

    /**
     * Wound by hand: straight out of the slot, then as a taut string to the other slot, round the shaft if it is in the
     * way. Both ends of the string lie on the slot pitch circle. By geometry.
     *
     * @param overhangMm straight part out of each slot before the wire turns, insulation and build-up of the end turns
     *     taken as a mean
     */
    record HandWound(double overhangMm) implements EndTurn {
        /**
         * Checks the overhang.
         *
         * @param overhangMm straight part out of each slot before the wire turns, insulation and build-up of the end
         *     turns taken as a mean
         * @throws IllegalArgumentException when it is negative
         */
        public HandWound {
            Require.notNegative("overhang", overhangMm, "mm");
        }

        @Override
        public double lengthMm(CoreSize core, int slots, int throwSlots) {
            double angle = spanAngle(slots, throwSlots);
            double radius = core.slotPitchCircleMm() / 2;
            double shaft = core.shaftMm() / 2;
            double string = 2 * radius * Math.sin(angle / 2);
            if (radius * Math.cos(angle / 2) < shaft) {
                string = 2 * Math.sqrt(radius * radius - shaft * shaft)
                        + shaft * (angle - 2 * Math.acos(shaft / radius));
            }
            return 2 * overhangMm + string;
        }

        @Override
        public String model() {
            return "hand wound: overhang, then taut from slot to slot on the slot pitch circle, round the shaft where it is"
                    + " in the way";
        }
    }

    /**
     * Formed (diamond) coil: two straight parts, two legs that follow the slot pitch circle at an angle, and a nose.
     * The usual form of the textbooks (from memory).
     *
     * @param straightMm straight part out of each slot
     * @param legDegrees angle between a leg and the core's end face, 0 to under 80, commonly 30 to 45
     * @param noseMm length of the nose
     */
    record Diamond(double straightMm, double legDegrees, double noseMm) implements EndTurn {
        /**
         * Checks the sizes.
         *
         * @param straightMm straight part out of each slot
         * @param legDegrees angle between a leg and the core's end face, 0 to under 80, commonly 30 to 45
         * @param noseMm length of the nose
         * @throws IllegalArgumentException when a length is negative or the angle is not from 0 to under 80
         */
        public Diamond {
            Require.notNegative("straight part", straightMm, "mm");
            Require.notNegative("nose", noseMm, "mm");
            if (!(legDegrees >= 0 && legDegrees < 80)) {
                throw new IllegalArgumentException("leg angle is " + Format.number(legDegrees)
                        + "°, but must be from 0 to under 80: measure it from the core's end face");
            }
        }

        @Override
        public double lengthMm(CoreSize core, int slots, int throwSlots) {
            double arc = core.slotPitchCircleMm() / 2 * spanAngle(slots, throwSlots);
            return 2 * straightMm + arc / Math.cos(Math.toRadians(legDegrees)) + noseMm;
        }

        @Override
        public String model() {
            return "formed coil: straight parts, legs along the slot pitch circle at " + Format.number(legDegrees)
                    + "° to the end face, nose";
        }
    }

    private static double spanAngle(int slots, int throwSlots) {
        Require.atLeast("slots", slots, 2);
        if (throwSlots < 1 || throwSlots >= slots) {
            throw new IllegalArgumentException("coil throw is " + throwSlots + " slots, but must be from 1 to "
                    + (slots - 1) + " on " + slots + " slots");
        }
        // The shorter way round.
        return 2 * Math.PI * Math.min(throwSlots, slots - throwSlots) / slots;
    }
}
