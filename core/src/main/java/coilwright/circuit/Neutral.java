package coilwright.circuit;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.List;

/**
 * Where the brushes must stand for this lead throw. A coil is shorted by a brush without harm when its middle stands
 * under a pole's centre, its sides equally far on either side. The brush must then stand on the middle between the
 * coil's two bars (for a wave winding, bars brought together by whole pole pairs).
 *
 * @param fromPoleCentre angle from a pole's centre to the brush, degrees, positive clockwise from the commutator end,
 *     over −180/P up to and including 180/P
 * @param spread largest difference between any coil's own neutral and the mean, degrees; not 0 where several coil
 *     sides share a slot or leads are crossed
 * @param polePitch 360/P, degrees
 */
public record Neutral(double fromPoleCentre, double spread, double polePitch) {
    /**
     * {@return the neutral of a winding, the circular mean of its live coils}
     *
     * @param winding the winding
     * @throws IllegalArgumentException when the winding has no live coil
     */
    public static Neutral of(Winding winding) {
        List<Coil> coils = winding.liveCoils();
        if (coils.isEmpty()) {
            throw new IllegalArgumentException("no coil has both leads on bars, so no neutral can be given");
        }
        Armature a = winding.armature();
        double pitch = 360.0 / a.poles();
        double[] own = coils.stream().mapToDouble(c -> ofCoil(a, c)).toArray();
        double x = 0;
        double y = 0;
        for (double degrees : own) {
            double phase = degrees / pitch * 2 * Math.PI;
            x += Math.cos(phase);
            y += Math.sin(phase);
        }
        // Coils spread evenly over a pole pitch have no mean; the first one's neutral then stands for all.
        double mean = Math.hypot(x, y) < 1e-9 * own.length
                ? tidy(own[0], pitch)
                : tidy(Math.atan2(y, x) / (2 * Math.PI) * pitch, pitch);
        double spread = 0;
        for (double degrees : own) {
            spread = Math.max(spread, Math.abs(centred(degrees - mean, pitch)));
        }
        return new Neutral(mean, spread < 1e-9 ? 0 : spread, pitch);
    }

    /**
     * {@return the neutral of one coil by itself: from its centre to the middle of its bars, degrees, within half a
     * pole pitch}
     *
     * @param a core and commutator
     * @param c a live coil
     */
    public static double ofCoil(Armature a, Coil c) {
        // Bars whole pole pairs apart shift their middle by whole pole pitches, which do not count.
        double bars =
                (a.barCentre(c.topBar().getAsInt()) + a.barCentre(c.bottomBar().getAsInt())) / 2;
        int span = Math.floorMod(c.bottom().slot() - c.top().slot(), a.slots());
        double coil = a.slotCentre(c.top().slot()) + span * a.slotAngle() / 2;
        return centred(bars - coil, 360.0 / a.poles());
    }

    private static double tidy(double degrees, double pitch) {
        double d = centred(degrees, pitch);
        return Math.abs(d) < 1e-9 ? 0 : d;
    }

    /** Brings an angle into −period/2 (excluded) to period/2 by whole periods. */
    static double centred(double degrees, double period) {
        double d = degrees - period * Math.floor(degrees / period);
        return d > period / 2 + 1e-9 ? d - period : d;
    }

    /**
     * {@return angle from the middle between two poles to the brush, degrees, over −180/P up to and including 180/P}
     */
    public double fromBetweenPoles() {
        return tidy(fromPoleCentre + polePitch / 2, polePitch);
    }
}
