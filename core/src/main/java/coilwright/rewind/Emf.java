package coilwright.rewind;

import coilwright.winding.References;

/**
 * The EMF of an armature, E = P·φ·Z·N/(60·A).
 *
 * <p>Source: {@link References#BAKSHI}.
 */
public final class Emf {
    private Emf() {}

    /**
     * {@return EMF between the brushes, V}
     *
     * @param poles P
     * @param fluxWb flux φ of one pole, Wb
     * @param conductors Z, twice the live coils times their turns
     * @param rpm N, revolutions a minute
     * @param paths A
     */
    public static double volts(int poles, double fluxWb, int conductors, double rpm, int paths) {
        check(poles, conductors, paths);
        return poles * fluxWb * conductors * rpm / (60.0 * paths);
    }

    /**
     * {@return flux of one pole from an EMF, Wb}
     *
     * @param poles main poles
     * @param volts EMF, V
     * @param conductors conductors in all slots
     * @param rpm speed, r/min
     * @param paths parallel paths A
     */
    public static double flux(int poles, double volts, int conductors, double rpm, int paths) {
        check(poles, conductors, paths);
        Require.positive("speed", rpm, "r/min");
        return volts * 60.0 * paths / (poles * rpm * conductors);
    }

    /**
     * {@return mean volts between neighbouring bars: V·P/K}
     *
     * @param volts between the brushes, V
     * @param poles main poles
     * @param bars bars on the commutator
     */
    public static double meanVoltsBetweenBars(double volts, int poles, int bars) {
        Require.atLeast("poles", poles, 2);
        Require.atLeast("bars", bars, 2);
        return volts * poles / bars;
    }

    private static void check(int poles, int conductors, int paths) {
        Require.atLeast("poles", poles, 2);
        Require.atLeast("conductors", conductors, 2);
        Require.atLeast("parallel paths", paths, 2);
    }
}
