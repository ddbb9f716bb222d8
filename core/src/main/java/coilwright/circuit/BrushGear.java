package coilwright.circuit;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The brushes on the commutator at one rotor position, and the parallel paths between them. Pole j has its centre at
 * (j − 1)·360/P degrees clockwise from straight up; brush j stands at the neutral from there.
 *
 * @param winding the winding
 * @param neutral where the brushes stand from the pole centres
 * @param rotorAngle of slot 1's centre line, degrees clockwise from straight up
 * @param widthBars how many bars wide a brush is, over 0, at most a pole pitch
 * @param brushes all P brushes
 * @param paths from + to − brushes
 * @param shorted coils whose ends lie on brushes of one sign, so that they carry no part of the load
 * @param idle live coils that no path reaches (in a broken winding, or where a brush misses a circuit)
 */
public record BrushGear(
        Winding winding,
        Neutral neutral,
        double rotorAngle,
        double widthBars,
        List<Brush> brushes,
        List<CurrentPath> paths,
        List<Coil> shorted,
        List<Coil> idle) {

    /**
     * {@return the width that just reaches every interleaved circuit: m bars for plex m, one for a listed winding}
     *
     * @param winding the winding
     */
    public static double leastWidth(Winding winding) {
        return winding.sets().get(0).plex().orElse(1);
    }

    /**
     * {@return how many of the P brushes are enough: all for lap and frog-leg, two for wave}
     *
     * @param winding the winding
     */
    public static int leastBrushes(Winding winding) {
        return winding.type() == WindingType.WAVE ? 2 : winding.armature().poles();
    }

    /**
     * Puts brushes at the neutral and traces the paths.
     *
     * @param winding the winding
     * @param rotorAngle any angle, degrees
     * @param widthBars over 0, at most K/P
     * @return the brushes and the paths between them
     * @throws IllegalArgumentException when the width is out of range or no coil is live
     */
    public static BrushGear at(Winding winding, double rotorAngle, double widthBars) {
        Neutral neutral = Neutral.of(winding);
        return shifted(winding, neutral, rotorAngle, widthBars);
    }

    private static BrushGear shifted(Winding winding, Neutral neutral, double rotorAngle, double widthBars) {
        Armature a = winding.armature();
        double most = Math.max(1, a.polePitchBars());
        if (!(widthBars > 0) || widthBars > most) {
            throw new IllegalArgumentException("brush width is " + widthBars
                    + " bars, but must be over 0 and at most a pole pitch (" + most + " bars)");
        }
        if (!Double.isFinite(rotorAngle)) {
            throw new IllegalArgumentException("rotor angle is " + rotorAngle + ", but must be a number of degrees");
        }
        List<Brush> brushes = new ArrayList<>();
        for (int j = 1; j <= a.poles(); j++) {
            double angle = (j - 1) * 360.0 / a.poles() + neutral.fromPoleCentre();
            angle -= 360 * Math.floor(angle / 360);
            brushes.add(new Brush(j, j % 2 == 1, angle, touched(a, angle - rotorAngle, widthBars)));
        }
        return new Tracer(winding, brushes).trace(neutral, rotorAngle, widthBars);
    }

    /** Bars under a brush whose middle stands at an angle from slot 1's centre line. */
    private static List<Integer> touched(Armature a, double angle, double widthBars) {
        double middle = (angle - a.barCentre(1)) / a.barAngle();
        double reach = (widthBars + 1) / 2 - 1e-9;
        List<Integer> bars = new ArrayList<>();
        for (int i = (int) Math.ceil(middle - reach); i <= middle + reach; i++) {
            bars.add(a.wrapBar(i + 1));
        }
        return bars;
    }

    /**
     * Copies the lists.
     *
     * @param winding the winding
     * @param neutral where the brushes stand from the pole centres
     * @param rotorAngle of slot 1's centre line, degrees clockwise from straight up
     * @param widthBars how many bars wide a brush is, over 0, at most a pole pitch
     * @param brushes all P brushes
     * @param paths from + to − brushes
     * @param shorted coils whose ends lie on brushes of one sign, so that they carry no part of the load
     * @param idle live coils that no path reaches (in a broken winding, or where a brush misses a circuit)
     */
    public BrushGear {
        brushes = List.copyOf(brushes);
        paths = List.copyOf(paths);
        shorted = List.copyOf(shorted);
        idle = List.copyOf(idle);
    }

    /** Follows coils from brush to brush. */
    private static final class Tracer {
        private final Winding winding;
        private final List<Brush> brushes;
        private final Map<Integer, Brush> brushOn = new LinkedHashMap<>();
        private final Map<Integer, List<Coil>> coilsOn = new LinkedHashMap<>();
        private final Set<Coil> seen = new LinkedHashSet<>();

        Tracer(Winding winding, List<Brush> brushes) {
            this.winding = winding;
            this.brushes = brushes;
            for (Brush b : brushes) {
                b.bars().forEach(bar -> brushOn.putIfAbsent(bar, b));
            }
            for (Coil c : winding.liveCoils()) {
                coilsOn.computeIfAbsent(c.topBar().getAsInt(), x -> new ArrayList<>())
                        .add(c);
                if (c.topBar().getAsInt() != c.bottomBar().getAsInt()) {
                    coilsOn.computeIfAbsent(c.bottomBar().getAsInt(), x -> new ArrayList<>())
                            .add(c);
                }
            }
        }

        BrushGear trace(Neutral neutral, double rotorAngle, double widthBars) {
            List<CurrentPath> paths = new ArrayList<>();
            Set<Coil> shorted = new LinkedHashSet<>();
            List<Brush> order = new ArrayList<>(brushes);
            order.sort(Comparator.comparing((Brush b) -> !b.positive()).thenComparing(Brush::number));
            for (Brush start : order) {
                for (int bar : start.bars()) {
                    for (Coil c : coilsOn.getOrDefault(bar, List.of())) {
                        if (seen.contains(c)) {
                            continue;
                        }
                        List<Step> steps = follow(c, bar);
                        Brush end = brushOn.get(steps.get(steps.size() - 1).toBar());
                        if (end == null) {
                            continue;
                        }
                        steps.forEach(s -> seen.add(s.coil()));
                        if (end.positive() == start.positive()) {
                            steps.forEach(s -> shorted.add(s.coil()));
                        } else {
                            paths.add(new CurrentPath(paths.size() + 1, start.number(), end.number(), steps));
                        }
                    }
                }
            }
            List<Coil> idle =
                    winding.liveCoils().stream().filter(c -> !seen.contains(c)).toList();
            List<Coil> shortedList = shorted.stream()
                    .sorted(Comparator.comparingInt(Coil::number))
                    .toList();
            return new BrushGear(winding, neutral, rotorAngle, widthBars, brushes, paths, shortedList, idle);
        }

        /** On from a brush through one coil after another to the next brush, or to where the way ends or branches. */
        private List<Step> follow(Coil first, int bar) {
            List<Step> steps = new ArrayList<>();
            Set<Coil> mine = new LinkedHashSet<>();
            Coil coil = first;
            int from = bar;
            while (true) {
                int to = WindingGraph.other(coil, from);
                var step = new Step(coil, from, to);
                steps.add(step);
                mine.add(coil);
                if (brushOn.containsKey(to)) {
                    return steps;
                }
                Coil next = onward(step, mine);
                if (next == null) {
                    return steps;
                }
                coil = next;
                from = to;
            }
        }

        /** The coil that carries on from a bar: of the same set and sense where there is one, else the only other. */
        @SuppressWarnings("ReturnMissingNullable")
        private Coil onward(Step step, Set<Coil> mine) {
            List<Coil> others = coilsOn.getOrDefault(step.toBar(), List.of()).stream()
                    .filter(c -> !mine.contains(c) && !seen.contains(c))
                    .toList();
            if (others.size() == 1) {
                return others.get(0);
            }
            List<Coil> onward = others.stream()
                    .filter(c -> c.set() == step.coil().set())
                    .filter(c -> (c.topBar().getAsInt() == step.toBar()) == step.forward())
                    .toList();
            return onward.size() == 1 ? onward.get(0) : null;
        }
    }
}
