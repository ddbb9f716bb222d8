package coilwright.drawing;

import coilwright.bench.BenchTest;
import coilwright.bench.GrowlerMeter;
import coilwright.winding.Winding;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Small pictures of an armature on the bench, without words beside them, for sheets. */
public final class BenchPicture {
    private BenchPicture() {}

    /**
     * What touches the armature.
     *
     * @param feed bars where direct current goes in and comes out
     * @param meter bars under the two probes; {@link BenchTest#SHAFT} for the shaft
     * @param unit what stands in the meter, as in "mV"
     * @param compass slot under a compass
     */
    public record Touches(
            Optional<BenchTest.Pair> feed, Optional<BenchTest.Pair> meter, String unit, OptionalInt compass) {}

    /**
     * {@return the armature in the growler}
     *
     * @param winding the winding
     * @param options what to draw and how
     * @param radius of the core, mm; the picture is 50 mm wider than the core and 62 mm higher
     */
    public static Drawing growler(Winding winding, ViewOptions options, double radius) {
        return GrowlerLayout.alone(winding, options, radius, false);
    }

    /**
     * {@return the armature in the growler with a steel blade over its top slot and no probes}
     *
     * @param winding the winding
     * @param options what to draw and how
     * @param radius of the core, mm; the picture is 50 mm wider than the core and 62 mm higher
     */
    public static Drawing blade(Winding winding, ViewOptions options, double radius) {
        return GrowlerLayout.alone(winding, options, radius, true);
    }

    /**
     * {@return the armature from the commutator end, slot 1 up, and what touches it}
     *
     * @param winding the winding
     * @param touches what touches the armature, and where
     * @param palette colours, or black, white and grey
     * @param radius of the core, mm; the picture is 50 mm wider and higher than the core
     * @throws IllegalArgumentException when a bar or slot does not exist
     */
    public static Drawing touched(Winding winding, Touches touches, Palette palette, double radius) {
        Set<Integer> bars = new LinkedHashSet<>();
        for (Optional<BenchTest.Pair> pair : List.of(touches.feed(), touches.meter())) {
            pair.ifPresent(p -> {
                bars.add(check(winding, p.from()));
                bars.add(check(winding, p.to()));
            });
        }
        bars.remove(BenchTest.SHAFT);
        double half = radius + 25;
        var end = new EndView(winding, 0, new Point(half, half), radius, Canvas.SMALL + 0.4, bars, Highlight.none());
        var canvas = new Canvas();
        var occupied = new Occupied();
        end.core(canvas);
        Optional<Double> clock = touches.meter().map(p -> clock(winding, p));
        touches.meter()
                .filter(p -> p.to() != BenchTest.SHAFT)
                .ifPresent(p -> end.leads(canvas, p.from(), p.to(), clock.get()));
        end.slots(canvas);
        end.commutator(canvas);
        touches.feed().ifPresent(p -> end.feed(canvas, p.from(), p.to()));
        touches.meter().ifPresent(p -> {
            if (p.to() == BenchTest.SHAFT) {
                end.leads(canvas, p.from(), p.to(), clock.get());
            }
            end.meter(canvas, p.from(), p.to(), clock.get(), touches.unit(), occupied);
        });
        touches.compass().ifPresent(slot -> {
            end.compass(canvas, slot, occupied);
        });
        end.slotOne(canvas, occupied);
        return canvas.page(
                "Armature seen from the commutator end",
                "Armature seen from the commutator end. " + Caption.counts(winding.armature()) + ".",
                2 * half,
                2 * half,
                palette);
    }

    private static int check(Winding winding, int bar) {
        int bars = winding.armature().bars();
        if (bar < 0 || bar > bars) {
            throw new IllegalArgumentException("there is no bar " + bar + ": bars run from 1 to " + bars);
        }
        return bar;
    }

    private static double clock(Winding winding, BenchTest.Pair p) {
        if (p.from() == BenchTest.SHAFT || p.to() == BenchTest.SHAFT) {
            return winding.armature().barCentre(Math.max(p.from(), p.to()));
        }
        return GrowlerMeter.middle(winding.armature(), p.from(), p.to());
    }
}
