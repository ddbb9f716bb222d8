package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchNetwork;
import coilwright.bench.Bond;
import coilwright.bench.Point;
import coilwright.circuit.BrushGear;
import coilwright.circuit.Neutral;
import coilwright.network.Solution;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Cutting out a faulty coil so that the armature runs until it can be rewound: an emergency measure. What it costs is
 * worked out for a field that is a sine wave round the armature, with the brushes at the neutral and no load.
 */
public final class EmergencyRepair {
    /** Most rotor positions looked at. */
    private static final int MOST_POSITIONS = 120;

    /** Most rotor positions times bars. */
    private static final int MOST_WORK = 60_000;

    private EmergencyRepair() {}

    /** What is wrong with the coil. */
    public enum Trouble {
        /** Its wire is broken. */
        OPEN,
        /** Its turns touch one another. */
        SHORTED;

        /** {@return the word for it} */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** How the gap is closed. */
    public enum Way {
        /** The coil's own two bars are joined in its place. */
        OWN_BARS,
        /**
         * The two bars are joined between which the coil lies in series with one coil of each other pole pair: all of
         * them are cut out, but the jumper is short.
         */
        WHOLE_TRIP,
        /** Nothing is joined. */
        NO_BRIDGE;

        /** {@return the word for it in output} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * What the armature is like electrically, over a revolution.
     *
     * @param paths fewest parallel paths between the brushes
     * @param fewestCoils fewest coils in series in a path, those that a brush shorts left out
     * @param mostCoils most coils in series in a path
     * @param unbalance largest difference between the voltages of two paths at one moment, relative to their mean
     * @param volts mean voltage of all paths, in peak volts of one coil of full pitch
     * @param barVolts largest voltage between neighbouring bars, relative to the mean over a pole pitch
     */
    public record Cost(int paths, int fewestCoils, int mostCoils, double unbalance, double volts, double barVolts) {}

    /**
     * One way to do it.
     *
     * @param way how the gap is closed
     * @param bridge the bars to join; empty where none are
     * @param lost coils that then carry nothing, the faulty one included, in order of number
     * @param cost what the armature is like then
     */
    public record Option(Way way, List<Integer> bridge, List<Integer> lost, Cost cost) {
        /**
         * Copies the lists.
         *
         * @param way how the gap is closed
         * @param bridge the bars to join; empty where none are
         * @param lost coils that then carry nothing, the faulty one included, in order of number
         * @param cost what the armature is like then
         */
        public Option {
            bridge = List.copyOf(bridge);
            lost = List.copyOf(lost);
        }
    }

    /**
     * What to do.
     *
     * @param winding the winding
     * @param coil the faulty coil
     * @param trouble what is wrong with it
     * @param sound what the armature was like
     * @param options best first: most paths, then least unbalance, then fewest coils lost
     * @param cautions what to mind
     */
    public record Plan(
            Winding winding, Coil coil, Trouble trouble, Cost sound, List<Option> options, List<String> cautions) {
        /**
         * Copies the lists.
         *
         * @param winding the winding
         * @param coil the faulty coil
         * @param trouble what is wrong with it
         * @param sound what the armature was like
         * @param options best first: most paths, then least unbalance, then fewest coils lost
         * @param cautions what to mind
         */
        public Plan {
            options = List.copyOf(options);
            cautions = List.copyOf(cautions);
        }

        /** {@return the best way} */
        public Option best() {
            return options.get(0);
        }

        /** {@return what to do with the leads, in words} */
        public String lift() {
            return "lift the top lead of coil " + coil.number() + " from bar "
                    + coil.topBar().getAsInt() + " and its bottom lead from bar "
                    + coil.bottomBar().getAsInt() + ", and insulate both"
                    + (trouble == Trouble.SHORTED
                            ? "; cut the coil through at the back end and insulate the ends, or its shorted turns will"
                                    + " go on heating"
                            : "");
        }
    }

    /**
     * Works out the ways to cut out a coil.
     *
     * @param winding the winding
     * @param coil number of the coil to be cut out
     * @param trouble what is wrong with it
     * @return the ways there are, and what each costs
     * @throws IllegalArgumentException when there is no such coil, it is dead, or the leads do not meet two to a bar
     */
    public static Plan of(Winding winding, int coil, Trouble trouble) {
        Coil faulty = winding.coil(coil);
        if (!faulty.isLive()) {
            throw new IllegalArgumentException(
                    "coil " + coil + " is dead: it is on no two bars, so there is nothing to cut out");
        }
        if (winding.type() == WindingType.LISTED) {
            twoToABar(winding);
        }
        int from = faulty.topBar().getAsInt();
        int to = faulty.bottomBar().getAsInt();
        Cost sound = cost(winding, Optional.empty(), List.of());
        List<Option> options = new ArrayList<>();
        if (winding.type() != WindingType.FROG_LEG && from != to) {
            options.add(option(winding, Way.OWN_BARS, List.of(from, to), faulty, List.of(faulty)));
        }
        if (winding.type() == WindingType.WAVE && winding.armature().polePairs() > 1) {
            for (List<Coil> trip : trips(winding, faulty)) {
                int first = trip.get(0).topBar().getAsInt();
                int last = trip.get(trip.size() - 1).bottomBar().getAsInt();
                if (first != last && trip.stream().distinct().count() == trip.size()) {
                    options.add(option(winding, Way.WHOLE_TRIP, List.of(first, last), faulty, trip));
                }
            }
        }
        options.add(option(winding, Way.NO_BRIDGE, List.of(), faulty, List.of(faulty)));
        options.sort(Comparator.<Option>comparingInt(o -> -o.cost().paths())
                .thenComparingDouble(o -> Math.rint(o.cost().unbalance() * 1e6))
                .thenComparingInt(o -> o.lost().size())
                .thenComparing(Option::way)
                .thenComparingInt(o -> o.bridge().isEmpty() ? 0 : o.bridge().get(0)));
        return new Plan(winding, faulty, trouble, sound, options, cautions(winding, trouble, sound, options.get(0)));
    }

    private static void twoToABar(Winding winding) {
        int[] leads = new int[winding.armature().bars() + 1];
        winding.liveCoils().forEach(c -> {
            leads[c.topBar().getAsInt()]++;
            leads[c.bottomBar().getAsInt()]++;
        });
        for (int bar = 1; bar < leads.length; bar++) {
            if (leads[bar] != 2) {
                throw new IllegalArgumentException("bar " + bar + " has " + leads[bar]
                        + " leads, but a coil can be cut out by rule only where two leads meet on every bar: check the"
                        + " connections first");
            }
        }
    }

    /** Every run of p coils in series, one a pole pair, that holds the coil. */
    private static List<List<Coil>> trips(Winding winding, Coil faulty) {
        Map<Integer, Coil> startingOn = new LinkedHashMap<>();
        Map<Integer, Coil> endingOn = new LinkedHashMap<>();
        winding.liveCoils().forEach(c -> {
            startingOn.put(c.topBar().getAsInt(), c);
            endingOn.put(c.bottomBar().getAsInt(), c);
        });
        int p = winding.armature().polePairs();
        List<List<Coil>> out = new ArrayList<>();
        Coil first = faulty;
        for (int before = 0; before < p; before++) {
            List<Coil> trip = new ArrayList<>();
            Coil c = first;
            for (int i = 0; i < p; i++) {
                trip.add(c);
                c = startingOn.get(c.bottomBar().getAsInt());
            }
            out.add(trip);
            first = endingOn.get(first.topBar().getAsInt());
        }
        return out;
    }

    private static Option option(Winding winding, Way way, List<Integer> bridge, Coil faulty, List<Coil> lost) {
        return new Option(
                way,
                bridge,
                lost.stream().map(Coil::number).sorted().toList(),
                cost(winding, Optional.of(faulty), bridge));
    }

    private static Cost cost(Winding winding, Optional<Coil> lifted, List<Integer> bridge) {
        Armature a = winding.armature();
        double width = Math.min(BrushGear.leastWidth(winding), Math.max(1, a.polePitchBars()));
        double neutral = Neutral.of(winding).fromPoleCentre();
        int steps = 2 * a.bars();
        int most = Math.min(MOST_POSITIONS, Math.max(12, MOST_WORK / a.bars()));
        int stride = (steps + most - 1) / most;
        int paths = Integer.MAX_VALUE;
        int fewest = Integer.MAX_VALUE;
        int longest = 0;
        double unbalance = 0;
        double volts = 0;
        double barVolts = 0;
        int positions = 0;
        for (int step = 0; step < steps; step += stride) {
            // Brush 1 on the middle of a bar, then on the mica after it.
            double rotor = neutral - a.barCentre(1) - step * a.barAngle() / 2;
            BrushGear gear = BrushGear.at(winding, rotor, width);
            var now = PathVolts.of(winding, gear, lifted, bridge);
            if (now.isEmpty()) {
                continue;
            }
            PathVolts v = now.get();
            positions++;
            paths = Math.min(paths, v.paths());
            fewest = Math.min(fewest, v.fewestCoils());
            longest = Math.max(longest, v.mostCoils());
            unbalance = Math.max(unbalance, v.unbalance());
            volts += v.mean();
            barVolts = Math.max(barVolts, barVolts(winding, gear, rotor, lifted, bridge));
        }
        if (positions == 0) {
            return new Cost(0, 0, 0, 0, 0, 0);
        }
        return new Cost(paths, fewest, longest, tidy(unbalance), volts / positions, barVolts);
    }

    private static double tidy(double x) {
        return x < 1e-9 ? 0 : x;
    }

    /** Voltage of a coil from its top lead to its bottom lead in a sine-wave field, peak volts of a full-pitch coil. */
    static double coilVolts(Armature a, Coil c, double rotor) {
        double top =
                Math.toRadians(a.polePairs() * (rotor + a.slotCentre(c.top().slot())));
        double bottom =
                Math.toRadians(a.polePairs() * (rotor + a.slotCentre(c.bottom().slot())));
        return (Math.cos(top) - Math.cos(bottom)) / 2;
    }

    /** Largest voltage between neighbouring bars over the mean, in the network with all coils of equal resistance. */
    private static double barVolts(
            Winding winding, BrushGear gear, double rotor, Optional<Coil> lifted, List<Integer> bridge) {
        Armature a = winding.armature();
        BenchArmature armature = BenchArmature.sound(winding, 1);
        if (lifted.isPresent()) {
            armature = armature.with(
                    armature.coil(lifted.get().number()).onBars(OptionalInt.empty(), OptionalInt.empty()));
        }
        if (!bridge.isEmpty()) {
            armature = armature.with(Bond.direct(Point.bar(bridge.get(0)), Point.bar(bridge.get(1))));
        }
        List<Integer> plus = brushBars(gear, true);
        List<Integer> minus = brushBars(gear, false);
        armature = armature.withEqualizers(List.of(plus, minus));
        Solution solution = BenchNetwork.of(armature, c -> coilVolts(a, winding.coil(c.coil()), rotor))
                .network()
                .solve();
        OptionalDouble across = solution.voltage(BenchNetwork.node(plus.get(0)), BenchNetwork.node(minus.get(0)));
        if (across.isEmpty() || Math.abs(across.getAsDouble()) < 1e-9) {
            return 0;
        }
        double mean = Math.abs(across.getAsDouble()) / a.polePitchBars();
        double most = 0;
        for (int bar = 1; bar <= a.bars(); bar++) {
            OptionalDouble v = solution.voltage(BenchNetwork.node(bar), BenchNetwork.node(a.wrapBar(bar + 1)));
            most = Math.max(most, Math.abs(v.orElse(0)));
        }
        return most / mean;
    }

    static List<Integer> brushBars(BrushGear gear, boolean positive) {
        return gear.brushes().stream()
                .filter(b -> b.positive() == positive)
                .flatMap(b -> b.bars().stream())
                .distinct()
                .toList();
    }

    private static List<String> cautions(Winding winding, Trouble trouble, Cost sound, Option best) {
        List<String> out = new ArrayList<>();
        out.add("This is an emergency measure: rewind the armature as soon as it can be spared.");
        out.add("Leave the coil in its slots, so that the armature stays in balance; bind the lifted leads so that they"
                + " cannot fly.");
        if (trouble == Trouble.SHORTED) {
            out.add("First make sure that the short is in the coil: clean out the micas of its two bars and test"
                    + " again.");
        }
        Cost cost = best.cost();
        if (cost.paths() < sound.paths()) {
            out.add(String.format(
                    Locale.ROOT,
                    "%d of %d paths are left at times: keep the current under %.0f %% of the rated current.",
                    cost.paths(),
                    sound.paths(),
                    100.0 * cost.paths() / sound.paths()));
        }
        if (cost.unbalance() > sound.unbalance() + 1e-6 && cost.paths() > 1) {
            out.add(String.format(
                    Locale.ROOT,
                    "The voltages of the paths differ by up to %.1f %% (%.1f %% before): a current circulates between"
                            + " them even at no load, so run at reduced load and watch for heat and for sparking at"
                            + " the joined bars.",
                    100 * cost.unbalance(),
                    100 * sound.unbalance()));
        }
        if (!best.bridge().isEmpty()) {
            out.add("Use a jumper of at least the coil's own copper section, insulated where it passes other leads;"
                    + " a bar-to-bar test will read nothing across it from now on.");
        }
        if (winding.type() == WindingType.FROG_LEG) {
            out.add("Join no bars: the other part of the winding would be shorted through the jumper.");
        }
        return out;
    }
}
