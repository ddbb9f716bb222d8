package coilwright.rewind;

import java.util.Objects;

/** What one turn is wound with. */
public sealed interface Conductor {
    /** {@return copper area, mm²} */
    double areaMm2();

    /** {@return room it takes in square packing, mm²: the rectangle or squares round it, covering included} */
    double roomMm2();

    /** {@return wires side by side in one turn} */
    int strands();

    /** {@return the conductor as written on a work sheet} */
    String label();

    /**
     * Round wire, one or more in hand.
     *
     * @param wire covered wire
     * @param strands wires in hand, 1 to 100
     */
    record Round(RoundWire wire, int strands) implements Conductor {
        /**
         * Checks the count.
         *
         * @param wire covered wire
         * @param strands wires in hand, 1 to 100
         * @throws IllegalArgumentException when there is no wire in hand
         */
        public Round {
            Objects.requireNonNull(wire, "wire");
            Require.inRange("wires in hand", strands, 1, 100);
        }

        @Override
        public double areaMm2() {
            return strands * wire.size().areaMm2();
        }

        @Override
        public double roomMm2() {
            return strands * wire.overallDiameterMm() * wire.overallDiameterMm();
        }

        @Override
        public String label() {
            String hand = strands == 1 ? "" : strands + " × ";
            return hand + wire.size().label() + ", " + wire.build().word();
        }
    }

    /**
     * Strip or bar, as in starter armatures.
     *
     * @param widthMm over the copper
     * @param thicknessMm over the copper
     * @param cornerRadiusMm of the copper's four edges, 0 where sharp
     * @param insulationMm covering on each side
     */
    record Strip(double widthMm, double thicknessMm, double cornerRadiusMm, double insulationMm) implements Conductor {
        /**
         * Checks the sizes.
         *
         * @param widthMm over the copper
         * @param thicknessMm over the copper
         * @param cornerRadiusMm of the copper's four edges, 0 where sharp
         * @param insulationMm covering on each side
         * @throws IllegalArgumentException when one is out of range
         */
        public Strip {
            Require.positive("strip width", widthMm, "mm");
            Require.positive("strip thickness", thicknessMm, "mm");
            Require.notNegative("corner radius", cornerRadiusMm, "mm");
            Require.notNegative("insulation", insulationMm, "mm");
            if (2 * cornerRadiusMm > Math.min(widthMm, thicknessMm) + 1e-9) {
                throw new IllegalArgumentException("corner radius is " + Format.number(cornerRadiusMm)
                        + " mm, but may be half the strip's thinner side at most, "
                        + Format.number(Math.min(widthMm, thicknessMm) / 2) + " mm");
            }
        }

        @Override
        public double areaMm2() {
            return widthMm * thicknessMm - (4 - Math.PI) * cornerRadiusMm * cornerRadiusMm;
        }

        @Override
        public double roomMm2() {
            return (widthMm + 2 * insulationMm) * (thicknessMm + 2 * insulationMm);
        }

        @Override
        public int strands() {
            return 1;
        }

        @Override
        public String label() {
            return "strip " + Format.number(widthMm) + " × " + Format.number(thicknessMm) + " mm";
        }
    }

    /**
     * {@return one round wire in hand}
     *
     * @param wire the wire
     */
    static Conductor of(RoundWire wire) {
        return new Round(wire, 1);
    }

    /**
     * {@return the same conductor with its area and room multiplied: an ideal wire, which need not be sold}
     *
     * @param factor over 0
     */
    default Conductor scaledArea(double factor) {
        Require.positive("factor", factor, "");
        double k = Math.sqrt(factor);
        if (this instanceof Strip s) {
            return new Strip(s.widthMm * k, s.thicknessMm * k, s.cornerRadiusMm * k, s.insulationMm * k);
        }
        Round r = (Round) this;
        double bare = r.wire.size().bareDiameterMm() * k;
        var ideal = new WireSize(WireSystem.METRIC, "ideal " + Format.number(bare), bare, Source.arithmetic());
        return new Round(
                new RoundWire(
                        ideal, r.wire.build(), Math.max(bare, r.wire.overallDiameterMm() * k), Source.arithmetic()),
                r.strands);
    }
}
