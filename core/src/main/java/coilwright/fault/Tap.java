package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import java.util.Optional;

/**
 * A bar, or a place along a sound coil, by what it draws from the bars: one ampere drawn at a share f along a coil is
 * drawn as 1 − f at its top bar and f at its bottom bar, with a further drop of f(1 − f) times the coil's resistance
 * at the place itself. Its potential lies between those of the two bars by the same share, whatever voltage is in the
 * coil, since voltage and resistance are spread evenly along the wire.
 *
 * @param coil number of the coil, or 0 on a bar
 * @param top bar of its top lead
 * @param bottom bar of its bottom lead
 * @param along share of the wire from the top lead
 * @param ohms resistance of the coil
 */
record Tap(int coil, int top, int bottom, double along, double ohms) {
    static Tap bar(int number) {
        return new Tap(0, number, number, 0, 0);
    }

    /** Empty where the coil carries no current, or not evenly. */
    static Optional<Tap> of(BenchArmature armature, Point point) {
        if (point instanceof Point.Bar bar) {
            return Optional.of(bar(bar.number()));
        }
        if (point instanceof Point.Inside inside) {
            CoilState c = armature.coil(inside.coil());
            if (c.connected() && !c.open() && c.jointOhms() == 0) {
                return Optional.of(new Tap(
                        c.coil(), c.topBar().getAsInt(), c.bottomBar().getAsInt(), inside.fraction(), c.ohms()));
            }
        }
        return Optional.empty();
    }

    /** The potential here, from those of the bars by number. */
    double of(double[] bars) {
        return coil == 0 ? bars[top] : (1 - along) * bars[top] + along * bars[bottom];
    }

    /** Volts that one ampere drawn here and one drawn there have in common within one coil. */
    double common(Tap other) {
        return coil == 0 || coil != other.coil
                ? 0
                : ohms * Math.min(along, other.along) * (1 - Math.max(along, other.along));
    }
}
