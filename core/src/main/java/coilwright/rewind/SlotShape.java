package coilwright.rewind;

import java.util.List;

/**
 * The shape of a slot, seen along the shaft. All sizes are millimetres, before any insulation.
 *
 * <p>The body holds conductors. A neck, where there is one, is the opening between the tooth tips.
 */
public sealed interface SlotShape {
    /** {@return the part that holds conductors} */
    Outline body();

    /** {@return width of the opening at the core's surface, mm} */
    double openingMm();

    /** {@return height of the neck between the tooth tips, mm; 0 where the slot is open} */
    double neckMm();

    /** {@return depth from the core's surface to the floor, mm} */
    default double depthMm() {
        return body().heightMm() + neckMm();
    }

    /** {@return area of the bare slot, neck included, mm²} */
    default double areaMm2() {
        return body().areaMm2() + openingMm() * neckMm();
    }

    /**
     * Open slot with parallel walls and a flat floor.
     *
     * @param widthMm between the walls
     * @param depthMm from the core's surface to the floor
     */
    record Rectangular(double widthMm, double depthMm) implements SlotShape {
        /**
         * Checks the sizes.
         *
         * @param widthMm between the walls
         * @param depthMm from the core's surface to the floor
         * @throws IllegalArgumentException when a size is not over 0
         */
        public Rectangular {
            Require.positive("slot width", widthMm, "mm");
            Require.positive("slot depth", depthMm, "mm");
        }

        @Override
        public Outline body() {
            return SlotShape.taper(widthMm, widthMm, depthMm, 0);
        }

        @Override
        public double openingMm() {
            return widthMm;
        }

        @Override
        public double neckMm() {
            return 0;
        }
    }

    /**
     * Open slot between parallel-sided teeth: wider at the top than at the floor.
     *
     * @param topWidthMm at the core's surface
     * @param bottomWidthMm at the floor, before its corners are rounded
     * @param depthMm from the core's surface to the floor
     * @param cornerRadiusMm of the two corners at the floor, 0 where sharp
     */
    record ParallelTooth(double topWidthMm, double bottomWidthMm, double depthMm, double cornerRadiusMm)
            implements SlotShape {
        /**
         * Checks the sizes.
         *
         * @param topWidthMm at the core's surface
         * @param bottomWidthMm at the floor, before its corners are rounded
         * @param depthMm from the core's surface to the floor
         * @param cornerRadiusMm of the two corners at the floor, 0 where sharp
         * @throws IllegalArgumentException when a size is not over 0, or the corners do not fit
         */
        public ParallelTooth {
            Require.positive("slot width at the top", topWidthMm, "mm");
            Require.positive("slot width at the floor", bottomWidthMm, "mm");
            Require.positive("slot depth", depthMm, "mm");
            SlotShape.radiusFits(topWidthMm, bottomWidthMm, depthMm, cornerRadiusMm);
        }

        @Override
        public Outline body() {
            return SlotShape.taper(topWidthMm, bottomWidthMm, depthMm, cornerRadiusMm);
        }

        @Override
        public double openingMm() {
            return topWidthMm;
        }

        @Override
        public double neckMm() {
            return 0;
        }
    }

    /**
     * Open slot with parallel walls whose floor is a half circle.
     *
     * @param widthMm between the walls, twice the floor's radius
     * @param depthMm from the core's surface to the lowest point
     */
    record RoundBottom(double widthMm, double depthMm) implements SlotShape {
        /**
         * Checks the sizes.
         *
         * @param widthMm between the walls, twice the floor's radius
         * @param depthMm from the core's surface to the lowest point
         * @throws IllegalArgumentException when a size is not over 0, or the slot is shallower than its round floor
         */
        public RoundBottom {
            Require.positive("slot width", widthMm, "mm");
            Require.positive("slot depth", depthMm, "mm");
            SlotShape.radiusFits(widthMm, widthMm, depthMm, widthMm / 2);
        }

        @Override
        public Outline body() {
            return SlotShape.taper(widthMm, widthMm, depthMm, widthMm / 2);
        }

        @Override
        public double openingMm() {
            return widthMm;
        }

        @Override
        public double neckMm() {
            return 0;
        }
    }

    /**
     * Half-closed slot: a body under tooth tips that leave a narrower opening.
     *
     * @param openingMm between the tooth tips
     * @param lipMm height of the neck between the tips
     * @param shoulderMm height over which the body narrows to the opening, over 0
     * @param topWidthMm of the body under the shoulders
     * @param bottomWidthMm of the body at the floor, before its corners are rounded
     * @param bodyMm height of the body from the floor to the shoulders
     * @param cornerRadiusMm of the two corners at the floor, 0 where sharp
     */
    record SemiClosed(
            double openingMm,
            double lipMm,
            double shoulderMm,
            double topWidthMm,
            double bottomWidthMm,
            double bodyMm,
            double cornerRadiusMm)
            implements SlotShape {
        /**
         * Checks the sizes.
         *
         * @param openingMm between the tooth tips
         * @param lipMm height of the neck between the tips
         * @param shoulderMm height over which the body narrows to the opening, over 0
         * @param topWidthMm of the body under the shoulders
         * @param bottomWidthMm of the body at the floor, before its corners are rounded
         * @param bodyMm height of the body from the floor to the shoulders
         * @param cornerRadiusMm of the two corners at the floor, 0 where sharp
         * @throws IllegalArgumentException when a size is not over 0, the lip is negative, the opening is wider than
         *     the body, or the walls lean in more than the shoulders
         */
        public SemiClosed {
            Require.positive("slot opening", openingMm, "mm");
            Require.notNegative("lip height", lipMm, "mm");
            Require.positive("shoulder height", shoulderMm, "mm");
            Require.positive("slot width under the shoulders", topWidthMm, "mm");
            Require.positive("slot width at the floor", bottomWidthMm, "mm");
            Require.positive("body height", bodyMm, "mm");
            if (openingMm > topWidthMm) {
                throw new IllegalArgumentException("slot opening is " + Format.number(openingMm)
                        + " mm, wider than the body under it, " + Format.number(topWidthMm)
                        + " mm: describe it as an open slot");
            }
            SlotShape.radiusFits(topWidthMm, bottomWidthMm, bodyMm, cornerRadiusMm);
            // A floor wider than the top leans the walls inwards; the shoulders must lean in at least as much.
            if ((bottomWidthMm - topWidthMm) / bodyMm > (topWidthMm - openingMm) / shoulderMm) {
                throw new IllegalArgumentException(
                        "the walls lean in more than the shoulders, so the body is hollow: check the widths and heights");
            }
        }

        @Override
        public Outline body() {
            return new Outline(List.of(
                    new Outline.Corner(bottomWidthMm / 2, 0, cornerRadiusMm),
                    new Outline.Corner(topWidthMm / 2, bodyMm, 0),
                    new Outline.Corner(openingMm / 2, bodyMm + shoulderMm, 0)));
        }

        @Override
        public double neckMm() {
            return lipMm;
        }
    }

    private static Outline taper(double top, double bottom, double depth, double radius) {
        return new Outline(List.of(new Outline.Corner(bottom / 2, 0, radius), new Outline.Corner(top / 2, depth, 0)));
    }

    private static void radiusFits(double top, double bottom, double depth, double radius) {
        Require.notNegative("corner radius", radius, "mm");
        // Angle between the floor and the wall, turned through at the corner.
        double turn = Math.PI / 2 - Math.atan2((top - bottom) / 2, depth);
        double most = Math.min(bottom / 2, Math.hypot(depth, (top - bottom) / 2)) / Math.tan(turn / 2);
        if (radius > most * (1 + 1e-9)) {
            throw new IllegalArgumentException("corner radius is " + Format.number(radius) + " mm, but a floor of "
                    + Format.number(bottom) + " mm and a depth of " + Format.number(depth) + " mm leave room for "
                    + Format.number(most) + " mm at most");
        }
    }
}
