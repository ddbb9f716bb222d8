package coilwright.rewind;

import java.util.List;
import java.util.Optional;

/**
 * How full a slot is.
 *
 * @param slotAreaMm2 bare slot, neck included
 * @param windingAreaMm2 left by liner, separator and wedge
 * @param copperAreaMm2 of all conductors
 * @param wires wires in the slot, strands counted singly
 * @param roomMm2 of all conductors in square packing
 * @param insulatedAreaMm2 of all conductors with their covering, round wire as circles
 * @param separatorFromMm height of the separator's underside above the floor: where both layers hold as many wires, else
 *     with half of the room on either side
 * @param packing where each wire lies; empty for strip, and where wire is so thin that only areas are compared
 * @param strips where each strip lies; empty for round wire
 */
public record SlotFill(
        double slotAreaMm2,
        double windingAreaMm2,
        double copperAreaMm2,
        int wires,
        double roomMm2,
        double insulatedAreaMm2,
        double separatorFromMm,
        Optional<Placed> packing,
        Optional<Strips> strips) {
    /** Most steps along the chord in the search for half the room. */
    private static final int CHORDS = 10;

    /** A part of the height at which the chord is left for plain halving. */
    private static final double CLOSE = 1e-10;

    /**
     * Wires placed in the two layers.
     *
     * @param wiresPerLayer wanted in each layer
     * @param bottomRoom wires that go into the bottom layer as the separator lies
     * @param topRoom wires that go into the top layer
     * @param separatorFromMm height of the separator's underside above the floor
     * @param separatorToMm height of its upper side
     * @param bottom places of the wires of the bottom layer, up to the number wanted
     * @param top places of the wires of the top layer, up to the number wanted
     * @param passesOpening whether a wire goes through the lined slot opening
     */
    public record Placed(
            int wiresPerLayer,
            Packing bottomRoom,
            Packing topRoom,
            double separatorFromMm,
            double separatorToMm,
            List<SlotPoint> bottom,
            List<SlotPoint> top,
            boolean passesOpening) {
        /**
         * Copies the lists.
         *
         * @param wiresPerLayer wanted in each layer
         * @param bottomRoom wires that go into the bottom layer as the separator lies
         * @param topRoom wires that go into the top layer
         * @param separatorFromMm height of the separator's underside above the floor
         * @param separatorToMm height of its upper side
         * @param bottom places of the wires of the bottom layer, up to the number wanted
         * @param top places of the wires of the top layer, up to the number wanted
         * @param passesOpening whether a wire goes through the lined slot opening
         */
        public Placed {
            bottom = List.copyOf(bottom);
            top = List.copyOf(top);
        }

        /** {@return whether every wire has a place and can be got to it} */
        public boolean fits() {
            return passesOpening && bottom.size() == wiresPerLayer && top.size() == wiresPerLayer;
        }

        /** {@return most wires that would go into each layer} */
        public int mostPerLayer() {
            return Math.min(bottomRoom.count(), topRoom.count());
        }
    }

    /**
     * A strip in its place, the slot seen along the shaft.
     *
     * @param leftMm its left side, from the slot's centre line, mm, to the right
     * @param bottomMm its underside above the floor
     * @param widthMm across the slot, covering included
     * @param heightMm upwards, covering included
     */
    public record LaidStrip(double leftMm, double bottomMm, double widthMm, double heightMm) {}

    /**
     * Strips laid in the two layers in straight rows, up to the number wanted in each.
     *
     * @param bottom places in the bottom layer
     * @param top places in the top layer
     */
    public record Strips(List<LaidStrip> bottom, List<LaidStrip> top) {
        /**
         * Copies the lists.
         *
         * @param bottom places in the bottom layer
         * @param top places in the top layer
         */
        public Strips {
            bottom = List.copyOf(bottom);
            top = List.copyOf(top);
        }

        /** {@return strips that found a place} */
        public int count() {
            return bottom.size() + top.size();
        }
    }

    /** {@return copper over the bare slot, the trade's space factor} */
    public double copperFactor() {
        return copperAreaMm2 / slotAreaMm2;
    }

    /** {@return conductors as squares of their overall diameter over the winding area: the usual slot fill} */
    public double fill() {
        return roomMm2 / windingAreaMm2;
    }

    /** {@return conductors as circles of their overall diameter over the winding area} */
    public double circleFill() {
        return insulatedAreaMm2 / windingAreaMm2;
    }

    /** {@return whether the wire goes in by the count where there is one, else by a fill of 1 at most} */
    public boolean fits() {
        return packing.map(Placed::fits).orElse(fill() <= 1);
    }

    /**
     * Fills a slot with the conductors of a two-layer winding.
     *
     * @param shape of the slot
     * @param insulation in it
     * @param conductor of one turn
     * @param turnsPerLayer turns of all coil sides of one layer, 1 or more
     * @return how full it is, by area and by laying every wire
     * @throws IllegalArgumentException when the insulation leaves no room
     */
    public static SlotFill of(SlotShape shape, SlotInsulation insulation, Conductor conductor, int turnsPerLayer) {
        Require.inRange("turns in a layer", turnsPerLayer, 1, 20 * CoilCopper.MAX_TURNS);
        Outline body = shape.body();
        double top = body.heightMm() - insulation.wedgeMm();
        double room = body.areaBetween(0, top, insulation.linerMm());
        int wiresPerLayer = Math.multiplyExact(turnsPerLayer, conductor.strands());
        Optional<Placed> placed = Optional.empty();
        double separated = room;
        double insulated = 2.0 * turnsPerLayer * conductor.roomMm2();
        if (conductor instanceof Conductor.Round round) {
            double d = round.wire().overallDiameterMm();
            insulated *= Math.PI / 4;
            if (room / (d * d) <= Packing.MOST_WIRES) {
                placed = Optional.of(place(shape, body, insulation, top, d, wiresPerLayer));
            }
        }
        double separatorFrom = placed.map(Placed::separatorFromMm)
                .orElseGet(() -> halfArea(body, insulation, top) - insulation.separatorMm() / 2);
        double separatorTo = separatorFrom + insulation.separatorMm();
        separated -= body.areaBetween(separatorFrom, separatorTo, insulation.linerMm());
        if (!(separated > 0)) {
            throw new IllegalArgumentException("liner " + Format.number(insulation.linerMm()) + " mm, separator "
                    + Format.number(insulation.separatorMm()) + " mm and wedge " + Format.number(insulation.wedgeMm())
                    + " mm leave no room in the slot: check the slot's sizes");
        }
        return new SlotFill(
                shape.areaMm2(),
                separated,
                2.0 * turnsPerLayer * conductor.areaMm2(),
                2 * wiresPerLayer,
                2.0 * turnsPerLayer * conductor.roomMm2(),
                insulated,
                separatorFrom,
                placed,
                conductor instanceof Conductor.Strip strip
                        ? Optional.of(new Strips(
                                new StripRows(body, insulation.linerMm(), 0, separatorFrom, wiresPerLayer).lay(strip),
                                new StripRows(body, insulation.linerMm(), separatorTo, top, wiresPerLayer).lay(strip)))
                        : Optional.empty());
    }

    /**
     * The height with half the room under it, by halving. The room grows with the height, so a height outside those
     * already found to be under and over it is not measured again; following the chord first brings the two together.
     */
    static double halfArea(Outline body, SlotInsulation insulation, double top) {
        double liner = insulation.linerMm();
        double wanted = body.areaBetween(0, top, liner) / 2;
        double lo = 0;
        double hi = Math.max(0, top);
        double under = lo;
        double over = hi;
        double roomUnder = 0;
        double roomOver = 2 * wanted;
        for (int i = 0; i < CHORDS && over - under > hi * CLOSE && roomUnder < wanted && wanted < roomOver; i++) {
            double apart = over - under;
            // A little to one side of where the chord meets it and then to the other, so that both ends move.
            double aside = apart * apart / (64 * hi) + hi * CLOSE / 4;
            double y = under + apart * (wanted - roomUnder) / (roomOver - roomUnder) + (i % 2 == 0 ? aside : -aside);
            if (y > under && y < over) {
                double room = body.areaBetween(0, y, liner);
                if (room < wanted) {
                    under = y;
                    roomUnder = room;
                } else {
                    over = y;
                    roomOver = room;
                }
            }
        }
        for (int i = 0; i < 40; i++) {
            double mid = (lo + hi) / 2;
            if (mid <= under || (mid < over && body.areaBetween(0, mid, liner) < wanted)) {
                lo = mid;
            } else {
                hi = mid;
            }
        }
        return (lo + hi) / 2;
    }

    /** The separator is moved until both layers hold as many. */
    private static Placed place(
            SlotShape shape, Outline body, SlotInsulation insulation, double top, double d, int wiresPerLayer) {
        double liner = insulation.linerMm();
        double thick = insulation.separatorMm();
        double lo = 0;
        double hi = Math.max(0, top - thick);
        double start = Math.max(0, halfArea(body, insulation, top) - thick / 2);
        Packing bottom = Packing.in(body, liner, 0, start, d);
        Packing upper = Packing.in(body, liner, start + thick, top, d);
        double at = start;
        double probe = start;
        for (int i = 0; i < 16 && bottom.count() != upper.count(); i++) {
            Packing b = i == 0 ? bottom : Packing.in(body, liner, 0, probe, d);
            Packing u = i == 0 ? upper : Packing.in(body, liner, probe + thick, top, d);
            if (Math.min(b.count(), u.count()) > Math.min(bottom.count(), upper.count())) {
                bottom = b;
                upper = u;
                at = probe;
            }
            if (Math.min(bottom.count(), upper.count()) >= wiresPerLayer) {
                break;
            }
            if (b.count() < u.count()) {
                lo = probe;
            } else {
                hi = probe;
            }
            probe = (lo + hi) / 2;
        }
        double opening = shape.openingMm() - (shape instanceof SlotShape.SemiClosed ? 0 : 2 * liner);
        return new Placed(
                wiresPerLayer,
                bottom,
                upper,
                at,
                at + thick,
                bottom.lowest(wiresPerLayer),
                upper.lowest(wiresPerLayer),
                d <= opening);
    }
}
