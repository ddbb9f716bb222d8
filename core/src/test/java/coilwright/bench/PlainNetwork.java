package coilwright.bench;

import coilwright.network.Network;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/**
 * The network of an armature written out the plain way for comparison: every coil, dead or live, from its bottom lead up
 * to its top lead, cut at every place where something is joined, at its middle where it is broken, and with its bad
 * joint as a branch of its own. Bar b is node b − 1, the shaft node K.
 */
final class PlainNetwork {
    private PlainNetwork() {}

    /** With every coil at rest. */
    static Network of(BenchArmature a) {
        return of(a, c -> 0);
    }

    /**
     * In a growler: what a coil's voltage is, from the flux that its two sides enclose.
     *
     * @param angle of slot 1's centre line, degrees
     */
    static Network inGrowler(BenchArmature a, Growler g, double angle) {
        return of(a, c -> enclosed(a.winding().armature(), a.winding().coil(c.coil()), g, angle));
    }

    /** Flux of both faces between a coil's sides, in faces; in by the right face, out by the left. */
    private static double enclosed(Armature a, Coil coil, Growler g, double angle) {
        double from = angle + (coil.top().slot() - 1) * 360.0 / a.slots();
        double width = Math.floorMod(coil.bottom().slot() - coil.top().slot(), a.slots()) * 360.0 / a.slots();
        return overlap(from, width, 180 - g.halfGap(), g.face()) - overlap(from, width, 180 + g.halfGap(), g.face());
    }

    /** Share of a face within an arc, laid off wherever the two can meet. */
    private static double overlap(double from, double width, double middle, double face) {
        double sum = 0;
        long first = (long) Math.floor((from - middle) / 360) - 1;
        for (long turn = first; turn <= first + 3; turn++) {
            double low = middle + 360.0 * turn - face / 2;
            sum += Math.max(0, Math.min(from + width, low + face) - Math.max(from, low));
        }
        return sum / face;
    }

    private static Network of(BenchArmature a, ToDoubleFunction<CoilState> volts) {
        int bars = a.winding().armature().bars();
        Network.Builder out = Network.builder().nodes(bars);
        int shaft = out.node("shaft");
        Map<Point, Integer> place = new LinkedHashMap<>();
        for (int bar = 1; bar <= bars; bar++) {
            place.put(Point.bar(bar), bar - 1);
        }
        place.put(Point.shaft(), shaft);
        for (CoilState c : a.coils()) {
            String name = "coil " + c.coil();
            var cuts = new TreeSet<Double>();
            for (Bond b : a.bonds()) {
                for (Point p : new Point[] {b.a(), b.b()}) {
                    if (p instanceof Point.Inside i && i.coil() == c.coil()) {
                        cuts.add(i.fraction());
                    }
                }
            }
            double emf = volts.applyAsDouble(c) * c.turns();
            double wire = c.open() ? a.soundOhms() * c.turns() : c.ohms();
            int here = c.bottomBar().isPresent() ? c.bottomBar().getAsInt() - 1 : out.node(name + " bottom lead");
            double at = 1;
            boolean brokenYet = !c.open();
            for (double cut : cuts.descendingSet()) {
                if (!brokenYet && cut < 0.5) {
                    int loose = out.node(name + " below the break");
                    out.branch(here, loose, wire * (at - 0.5), emf * (at - 0.5));
                    here = out.node(name + " above the break");
                    at = 0.5;
                    brokenYet = true;
                }
                int next = out.node(name + " at " + cut);
                out.branch(here, next, wire * (at - cut), emf * (at - cut));
                place.put(new Point.Inside(c.coil(), cut), next);
                here = next;
                at = cut;
            }
            if (!brokenYet) {
                here = out.node(name + " above the break");
            }
            int joint = out.node(name + " joint");
            out.branch(here, joint, wire * at, emf * at);
            int top = c.topBar().isPresent() ? c.topBar().getAsInt() - 1 : out.node(name + " top lead");
            out.branch(joint, top, c.jointOhms());
        }
        for (Bond b : a.bonds()) {
            out.branch(place.get(b.a()), place.get(b.b()), b.ohms());
        }
        return out.build();
    }
}
