package coilwright.winding;

import java.util.OptionalInt;

/** A winding wished for, with the numbers that follow from it, before any rule has passed. */
record Draft(Armature armature, WindingSpec spec) {
    int slots() {
        return armature.slots();
    }

    int bars() {
        return armature.bars();
    }

    int polePairs() {
        return armature.polePairs();
    }

    int deadCoils() {
        return spec instanceof WindingSpec.Regular r ? r.deadCoils().size() : 0;
    }

    /** Q: positions per layer, live and dead coils together. */
    int positions() {
        return bars() + deadCoils();
    }

    boolean fitsSlots() {
        return positions() % slots() == 0;
    }

    /** u, where the coils fill the slots evenly. */
    int sidesPerSlot() {
        return Math.max(1, positions() / slots());
    }

    /** The least number of coils, at least this many, that fills the slots evenly. */
    int coilsToFill(int coils) {
        return (coils + slots() - 1) / slots() * slots();
    }

    /** The most dead coils worth proposing. */
    int mostDead() {
        return Math.max(2, slots() / 4);
    }

    CoilSpan span() {
        if (spec instanceof WindingSpec.Regular r) {
            return r.span();
        }
        return spec instanceof WindingSpec.FrogLeg f ? f.span() : CoilSpan.usual();
    }

    /** y1 of the (lap) coils. */
    int backSpan() {
        CoilSpan span = span();
        if (span instanceof CoilSpan.Positions p) {
            return p.positions();
        }
        if (span instanceof CoilSpan.Throw t) {
            return (int) Math.min(Integer.MAX_VALUE, (long) t.slots() * sidesPerSlot());
        }
        return Math.max(1, slots() / armature.poles()) * sidesPerSlot();
    }

    int plex() {
        if (spec instanceof WindingSpec.Regular r) {
            return r.plex();
        }
        return spec instanceof WindingSpec.FrogLeg f ? f.plex() : 1;
    }

    Direction direction() {
        if (spec instanceof WindingSpec.Regular r) {
            return r.direction();
        }
        return spec instanceof WindingSpec.FrogLeg f ? f.direction() : Direction.PROGRESSIVE;
    }

    /** yc of the (lap) coils of a winding that is not listed; empty where that of a wave is not whole. */
    OptionalInt commutatorPitch() {
        return switch (spec.type()) {
            case WAVE -> wavePitch(bars(), polePairs(), plex(), direction());
            case LAP, FROG_LEG, LISTED -> OptionalInt.of(direction().sign() * plex());
        };
    }

    static OptionalInt wavePitch(int bars, int polePairs, int plex, Direction direction) {
        int numerator = bars + direction.sign() * plex;
        return numerator % polePairs == 0 ? OptionalInt.of(numerator / polePairs) : OptionalInt.empty();
    }

    /** Whether a wave winding of this plex and direction can be stepped round so many bars. */
    boolean waveSteps(int bars, Direction direction) {
        return bars >= 2 * plex()
                && wavePitch(bars, polePairs(), plex(), direction).isPresent();
    }

    /** Whether a winding of this kind, plex and direction can be stepped round so many bars. */
    boolean steps(int bars) {
        return switch (spec.type()) {
            case WAVE -> waveSteps(bars, direction());
            case FROG_LEG -> bars % polePairs() == 0 && bars >= 2 * polePairs() * plex();
            case LAP, LISTED -> bars >= 2 * plex();
        };
    }
}
