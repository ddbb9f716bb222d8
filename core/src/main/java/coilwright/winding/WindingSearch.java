package coilwright.winding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Searches every winding that fits a core. */
public final class WindingSearch {
    private static final int MOST_PLEX = 3;
    private static final int MOST_SIDES = 4;

    private WindingSearch() {}

    /**
     * What is known and wished.
     *
     * @param slots 2 to {@value Armature#MAX_SLOTS}
     * @param poles even, 2 to {@value Armature#MAX_POLES}
     * @param bars empty to try one to four coil sides per slot and layer
     * @param type lap, wave or frog-leg; empty for all
     * @param plex empty for simplex, duplex and triplex
     */
    public record Query(int slots, int poles, OptionalInt bars, Optional<WindingType> type, OptionalInt plex) {
        /**
         * Checks the counts.
         *
         * @param slots 2 to {@value Armature#MAX_SLOTS}
         * @param poles even, 2 to {@value Armature#MAX_POLES}
         * @param bars empty to try one to four coil sides per slot and layer
         * @param type lap, wave or frog-leg; empty for all
         * @param plex empty for simplex, duplex and triplex
         * @throws IllegalArgumentException when a count is out of range or the type is listed
         */
        public Query {
            Armature.of(slots, bars.orElse(2), poles);
            if (type.isPresent() && type.get() == WindingType.LISTED) {
                throw new IllegalArgumentException("a listed winding cannot be searched for: ask for lap or wave");
            }
            if (plex.isPresent() && (plex.getAsInt() < 1 || plex.getAsInt() > WindingSpec.MAX_PLEX)) {
                throw new IllegalArgumentException(
                        "plex is " + plex.getAsInt() + ", but must be from 1 (simplex) to " + WindingSpec.MAX_PLEX);
            }
        }

        /**
         * {@return every winding of a core}
         *
         * @param slots slots in the core
         * @param poles main poles, an even number
         */
        public static Query of(int slots, int poles) {
            return new Query(slots, poles, OptionalInt.empty(), Optional.empty(), OptionalInt.empty());
        }

        /**
         * {@return every winding of a core and commutator}
         *
         * @param slots slots in the core
         * @param poles main poles, an even number
         * @param bars bars on the commutator
         */
        public static Query of(int slots, int poles, int bars) {
            return new Query(slots, poles, OptionalInt.of(bars), Optional.empty(), OptionalInt.empty());
        }
    }

    /**
     * A winding that fits.
     *
     * @param winding built
     * @param plex of its (lap) coils
     * @param direction of its (lap) coils
     * @param throwSlots slots spanned at the back, the longest not over the pole pitch
     * @param otherThrows shorter or longer throws that the rules let pass without a warning
     * @param findings what the rules say of it
     */
    public record Candidate(
            Winding winding,
            int plex,
            Direction direction,
            int throwSlots,
            List<Integer> otherThrows,
            List<Finding> findings) {
        /**
         * Copies the lists.
         *
         * @param winding built
         * @param plex of its (lap) coils
         * @param direction of its (lap) coils
         * @param throwSlots slots spanned at the back, the longest not over the pole pitch
         * @param otherThrows shorter or longer throws that the rules let pass without a warning
         * @param findings what the rules say of it
         */
        public Candidate {
            otherThrows = List.copyOf(otherThrows);
            findings = List.copyOf(findings);
        }

        private long warnings() {
            return findings.stream()
                    .filter(f -> f.severity() == Severity.WARNING)
                    .count();
        }

        private int dead() {
            return winding.spec() instanceof WindingSpec.Regular regular
                    ? regular.deadCoils().size()
                    : 0;
        }
    }

    /**
     * A winding that does not fit.
     *
     * @param type its kind
     * @param plex of its (lap) coils
     * @param direction of its (lap) coils
     * @param bars bars it was tried on
     * @param reason why, with what would do instead
     */
    public record Refusal(WindingType type, int plex, Direction direction, int bars, String reason) {}

    /**
     * What the search found.
     *
     * @param possible best first
     * @param refused by bars, type, plex and direction
     */
    public record Result(List<Candidate> possible, List<Refusal> refused) {
        /**
         * Copies the lists.
         *
         * @param possible best first
         * @param refused by bars, type, plex and direction
         */
        public Result {
            possible = List.copyOf(possible);
            refused = List.copyOf(refused);
        }
    }

    /** Best first: no warnings, plain before frog-leg, lowest plex, no dead coils, fewest bars; lap first on 2 poles. */
    private static Comparator<Candidate> bestFirst(int poles) {
        return Comparator.comparingLong(Candidate::warnings)
                .thenComparingInt(c -> c.winding().type() == WindingType.FROG_LEG ? 1 : 0)
                .thenComparingInt(Candidate::plex)
                .thenComparingInt(Candidate::dead)
                .thenComparingInt(c -> c.winding().armature().bars())
                .thenComparingInt(c -> (c.winding().type() == WindingType.LAP) == (poles == 2) ? 0 : 1)
                // Crossed leads are avoided by a progressive lap and by a retrogressive wave.
                .thenComparingInt(c ->
                        (c.direction() == Direction.PROGRESSIVE) == (c.winding().type() != WindingType.WAVE) ? 0 : 1);
    }

    /**
     * Tries every type, plex, direction and number of bars asked for.
     *
     * @param query core, and what of the winding is settled
     * @return windings that fit, best first, and why others do not
     */
    public static Result find(Query query) {
        List<Candidate> possible = new ArrayList<>();
        List<Refusal> refused = new ArrayList<>();
        List<WindingType> types =
                query.type().map(List::of).orElse(List.of(WindingType.LAP, WindingType.WAVE, WindingType.FROG_LEG));
        List<Integer> plexes = query.plex().isPresent()
                ? List.of(query.plex().getAsInt())
                : IntStream.rangeClosed(1, MOST_PLEX).boxed().toList();
        Set<Integer> wholeBars = new LinkedHashSet<>();
        if (query.bars().isPresent()) {
            wholeBars.add(query.bars().getAsInt());
        } else {
            for (int u = 1; u <= MOST_SIDES; u++) {
                wholeBars.add(u * query.slots());
            }
        }
        for (int bars : wholeBars) {
            for (WindingType type : types) {
                for (int plex : plexes) {
                    for (Direction direction : Direction.values()) {
                        tryOne(query, bars, type, plex, direction, possible, refused);
                    }
                }
            }
        }
        possible.sort(bestFirst(query.poles()));
        return new Result(possible, refused);
    }

    private static void tryOne(
            Query query,
            int bars,
            WindingType type,
            int plex,
            Direction direction,
            List<Candidate> possible,
            List<Refusal> refused) {
        var armature = Armature.of(query.slots(), bars, query.poles());
        int dead = Math.floorMod(-bars, query.slots());
        if (dead > Math.max(2, query.slots() / 4)) {
            dead = 0;
        }
        Optional<String> reason = attempt(armature, type, plex, direction, dead, possible);
        if (reason.isEmpty()) {
            return;
        }
        refused.add(new Refusal(type, plex, direction, bars, reason.get()));
        if (query.bars().isEmpty() && type == WindingType.WAVE) {
            for (int d = 1; d <= 2 && bars - d >= 2; d++) {
                var fewer = Armature.of(query.slots(), bars - d, query.poles());
                if (attempt(fewer, type, plex, direction, d, possible).isEmpty()) {
                    return;
                }
            }
        }
    }

    private static Optional<String> attempt(
            Armature armature, WindingType type, int plex, Direction direction, int dead, List<Candidate> possible) {
        WindingSpec spec = spec(type, plex, direction, CoilSpan.usual(), spread(dead, armature.bars() + dead));
        List<Finding> blocking = Rules.blocking(armature, spec);
        if (!blocking.isEmpty()) {
            return Optional.of(blocking.stream().map(Finding::message).collect(Collectors.joining("; ")));
        }
        Winding winding = Winding.build(armature, spec);
        int usual = winding.pitches().orElseThrow().throwSlots().orElseThrow();
        possible.add(new Candidate(
                winding, plex, direction, usual, otherThrows(winding, plex, direction, usual), Rules.check(winding)));
        return Optional.empty();
    }

    /** Tried without building the coils, which would take most of the time of a search. */
    private static List<Integer> otherThrows(Winding winding, int plex, Direction direction, int usual) {
        Armature armature = winding.armature();
        List<Integer> dead = winding.deadCoils().stream().map(Coil::number).toList();
        List<Integer> others = new ArrayList<>();
        double pitch = armature.polePitchSlots();
        for (int t = Math.max(1, (int) Math.ceil(pitch * 2 / 3)); t < pitch + 1 && t < armature.slots(); t++) {
            var other = spec(winding.type(), plex, direction, CoilSpan.ofThrow(t), dead);
            if (t != usual
                    && Rules.blocking(armature, other).isEmpty()
                    && Winding.sets(armature, other).stream()
                            .allMatch(set -> ThrowAgainstPolePitch.suits(set, pitch))) {
                others.add(t);
            }
        }
        return others;
    }

    private static WindingSpec spec(
            WindingType type, int plex, Direction direction, CoilSpan span, List<Integer> dead) {
        return type == WindingType.FROG_LEG
                ? new WindingSpec.FrogLeg(plex, direction, span, 0)
                : new WindingSpec.Regular(type, plex, direction, span, dead, 0);
    }

    /** Dead coils spread evenly round the core, for balance; the last coil where there is one. */
    private static List<Integer> spread(int dead, int coils) {
        return IntStream.rangeClosed(1, dead)
                .mapToObj(i -> (int) ((long) i * coils / dead))
                .toList();
    }
}
