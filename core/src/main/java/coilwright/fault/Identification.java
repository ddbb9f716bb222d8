package coilwright.fault;

import coilwright.winding.Armature;
import coilwright.winding.CoilSet;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSearch;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * Which windings fit what can be seen of an armature without stripping it, and the one observation that would best
 * decide between them. Windings of plex 1 to 3 are looked for, each coil spanning whole slots.
 */
public final class Identification {
    /** Most poles tried where their number is not known. */
    public static final int MOST_POLES = 24;

    /** How far a resistance may be from its value, relative. */
    public static final double TOLERANCE = 0.05;

    private Identification() {}

    /**
     * What is known.
     *
     * @param slots counted
     * @param bars counted
     * @param poles of the frame; empty where it is not at hand
     * @param throwSlots slots that a coil spans at the back; empty where not seen
     * @param sightings everything else
     */
    public record Known(int slots, int bars, OptionalInt poles, OptionalInt throwSlots, List<BenchSighting> sightings) {
        /**
         * Checks the counts.
         *
         * @param slots counted
         * @param bars counted
         * @param poles of the frame; empty where it is not at hand
         * @param throwSlots slots that a coil spans at the back; empty where not seen
         * @param sightings everything else
         * @throws IllegalArgumentException when a count is out of range or a bar or slot does not exist
         */
        public Known {
            Armature.of(slots, bars, poles.orElse(2));
            sightings = List.copyOf(sightings);
            throwSlots.ifPresent(t -> {
                if (t < 1 || t >= slots) {
                    throw new IllegalArgumentException(
                            "the coil throw spans " + t + " slots, but " + slots + " slots allow 1 to " + (slots - 1));
                }
            });
            for (BenchSighting s : sightings) {
                if (s instanceof BenchSighting.TracedCoil t) {
                    bar(t.topBar(), bars);
                    bar(t.bottomBar(), bars);
                    t.topSlot().ifPresent(n -> slot(n, slots));
                    t.bottomSlot().ifPresent(n -> slot(n, slots));
                } else if (s instanceof BenchSighting.Continuity c) {
                    pair(c.bar(), c.otherBar(), bars);
                } else if (s instanceof BenchSighting.Resistance r) {
                    pair(r.bar(), r.otherBar(), bars);
                }
            }
        }

        private static void pair(int bar, int other, int bars) {
            bar(bar, bars);
            bar(other, bars);
            if (bar == other) {
                throw new IllegalArgumentException(
                        "bar " + bar + " is measured against itself: name two different bars");
            }
        }

        private static void bar(int bar, int bars) {
            if (bar < 1 || bar > bars) {
                throw new IllegalArgumentException("there is no bar " + bar + ": bars run from 1 to " + bars);
            }
        }

        private static void slot(int slot, int slots) {
            if (slot < 1 || slot > slots) {
                throw new IllegalArgumentException("there is no slot " + slot + ": slots run from 1 to " + slots);
            }
        }

        /**
         * {@return the same with one sighting more}
         *
         * @param more one more thing seen
         */
        public Known with(BenchSighting more) {
            List<BenchSighting> all = new ArrayList<>(sightings);
            all.add(more);
            return new Known(slots, bars, poles, throwSlots, all);
        }

        /**
         * {@return the same with the number of poles known}
         *
         * @param number main poles
         */
        public Known withPoles(int number) {
            return new Known(slots, bars, OptionalInt.of(number), throwSlots, sightings);
        }
    }

    /**
     * A winding that fits.
     *
     * @param winding built; where dead coils are needed, evenly spread ones
     * @param plex of its (lap) coils
     * @param direction of its (lap) coils
     * @param why what of the known it fits, with the numbers
     */
    public record Fit(Winding winding, int plex, Direction direction, List<String> why) {
        /**
         * Copies the list.
         *
         * @param winding built; where dead coils are needed, evenly spread ones
         * @param plex of its (lap) coils
         * @param direction of its (lap) coils
         * @param why what of the known it fits, with the numbers
         */
        public Fit {
            why = List.copyOf(why);
        }

        /** {@return its kind and poles in words} */
        public String words() {
            return kindWords(winding.type(), plex, direction, winding.armature().poles());
        }
    }

    /**
     * A winding that does not fit.
     *
     * @param type its kind
     * @param plex of its (lap) coils
     * @param direction of its (lap) coils
     * @param poles it was tried on
     * @param reason why not
     */
    public record Excluded(WindingType type, int plex, Direction direction, int poles, String reason) {}

    /**
     * An observation still to be made.
     *
     * @param kind poles, continuity, resistance-ratio, blade or trace
     * @param words what to do
     * @param bars where, in pairs for a ratio; empty where it is not on bars
     * @param outcomes what may come out, and what then is left
     */
    public record Next(String kind, String words, List<Integer> bars, List<Outcome> outcomes) {
        /**
         * Copies the lists.
         *
         * @param kind poles, continuity, resistance-ratio, blade or trace
         * @param words what to do
         * @param bars where, in pairs for a ratio; empty where it is not on bars
         * @param outcomes what may come out, and what then is left
         */
        public Next {
            bars = List.copyOf(bars);
            outcomes = List.copyOf(outcomes);
        }
    }

    /**
     * One thing that may come out.
     *
     * @param value what is seen, as a number: poles; 1 or 0 for joined or not; a ratio; slots; bars from 1 to K − 1
     * @param words the same in words
     * @param fits indices, from 0, of the fits that would be left
     */
    public record Outcome(double value, String words, List<Integer> fits) {
        /**
         * Copies the list.
         *
         * @param value what is seen, as a number: poles; 1 or 0 for joined or not; a ratio; slots; bars from 1 to K − 1
         * @param words the same in words
         * @param fits indices, from 0, of the fits that would be left
         */
        public Outcome {
            fits = List.copyOf(fits);
        }
    }

    /**
     * The answer.
     *
     * @param fits likeliest first
     * @param excluded in order of poles
     * @param next empty where at most one is left or nothing on this list would tell them apart
     */
    public record Answer(List<Fit> fits, List<Excluded> excluded, Optional<Next> next) {
        /**
         * Copies the lists.
         *
         * @param fits likeliest first
         * @param excluded in order of poles
         * @param next empty where at most one is left or nothing on this list would tell them apart
         */
        public Answer {
            fits = List.copyOf(fits);
            excluded = List.copyOf(excluded);
            Objects.requireNonNull(next);
        }
    }

    static String kindWords(WindingType type, int plex, Direction direction, int poles) {
        return WindingSpec.plexWord(plex) + " " + type.word() + ", " + direction.word() + ", " + poles + " poles";
    }

    /**
     * Finds the windings that fit.
     *
     * @param known what was seen
     * @return the windings that fit and what would decide between them
     */
    public static Answer of(Known known) {
        List<Fit> fits = new ArrayList<>();
        List<Excluded> excluded = new ArrayList<>();
        OptionalInt throwSlots = traced(known);
        List<Integer> poles = new ArrayList<>();
        if (known.poles().isPresent()) {
            poles.add(known.poles().getAsInt());
        } else {
            for (int p = 2; p <= Math.max(2, Math.min(MOST_POLES, known.slots())); p += 2) {
                poles.add(p);
            }
        }
        for (int p : poles) {
            onPoles(known, throwSlots, p, fits, excluded);
        }
        List<Fit> ordered = new ArrayList<>(fits);
        // Few plexes and few poles are the common case; the search has put the better winding first on each.
        ordered.sort(Comparator.<Fit>comparingInt(f -> f.winding().type() == WindingType.FROG_LEG ? 1 : 0)
                .thenComparingInt(Fit::plex)
                .thenComparingInt(f -> f.winding().armature().poles()));
        return new Answer(ordered, excluded, NextSighting.best(ordered, known));
    }

    /** The throw, seen at the back or traced. */
    private static OptionalInt traced(Known known) {
        OptionalInt out = known.throwSlots();
        for (BenchSighting s : known.sightings()) {
            if (s instanceof BenchSighting.TracedCoil t && t.topSlot().isPresent()) {
                int span = Math.floorMod(t.bottomSlot().getAsInt() - t.topSlot().getAsInt(), known.slots());
                if (span == 0 || (out.isPresent() && out.getAsInt() != span)) {
                    throw new IllegalArgumentException(t.words() + " spans " + span + " slots, but "
                            + (span == 0
                                    ? "a coil spans at least 1"
                                    : "the coil throw is given as " + out.getAsInt() + " slots")
                            + ": trace it again, counting clockwise from the commutator end");
                }
                out = OptionalInt.of(span);
            }
        }
        return out;
    }

    private static void onPoles(
            Known known, OptionalInt throwSlots, int poles, List<Fit> fits, List<Excluded> excluded) {
        double pitch = (double) known.slots() / poles;
        WindingSearch.Result found = WindingSearch.find(WindingSearch.Query.of(known.slots(), poles, known.bars()));
        for (WindingSearch.Refusal r : found.refused()) {
            excluded.add(new Excluded(r.type(), r.plex(), r.direction(), poles, r.reason()));
        }
        for (WindingSearch.Candidate c : found.possible()) {
            WindingType type = c.winding().type();
            if (throwSlots.isPresent() && known.poles().isEmpty() && !plausible(throwSlots.getAsInt(), pitch)) {
                excluded.add(new Excluded(
                        type,
                        c.plex(),
                        c.direction(),
                        poles,
                        String.format(
                                Locale.ROOT,
                                "the coil throw spans %d slots, but the pole pitch on %d poles is %.2f slots",
                                throwSlots.getAsInt(),
                                poles,
                                pitch)));
                continue;
            }
            Winding winding = c.winding();
            if (throwSlots.isPresent()) {
                WindingSpec spec = spanning(winding.spec(), throwSlots.getAsInt());
                if (!Rules.blocking(winding.armature(), spec).isEmpty()) {
                    String reason = Rules.blocking(winding.armature(), spec).stream()
                            .map(f -> f.message())
                            .collect(Collectors.joining("; "));
                    excluded.add(new Excluded(type, c.plex(), c.direction(), poles, reason));
                    continue;
                }
                winding = Winding.build(winding.armature(), spec);
            }
            List<String> why = new ArrayList<>();
            counts(winding, why);
            Optional<String> against = against(new Electrical(winding), known, why);
            if (against.isPresent()) {
                excluded.add(new Excluded(type, c.plex(), c.direction(), poles, against.get()));
            } else {
                throwSlots.ifPresent(t -> why.add(String.format(
                        Locale.ROOT, "coil throw 1-%d spans %d slots, the pole pitch is %.2f", t + 1, t, pitch)));
                fits.add(new Fit(winding, c.plex(), c.direction(), why));
            }
        }
    }

    /** Two thirds of a pole pitch to less than one slot over it. */
    static boolean plausible(int throwSlots, double pitch) {
        return throwSlots >= Math.floor(pitch * 2 / 3) && throwSlots < pitch + 1;
    }

    private static WindingSpec spanning(WindingSpec spec, int throwSlots) {
        if (spec instanceof WindingSpec.FrogLeg f) {
            return new WindingSpec.FrogLeg(f.plex(), f.direction(), CoilSpan.ofThrow(throwSlots), f.leadOffset());
        }
        return ((WindingSpec.Regular) spec).withSpan(CoilSpan.ofThrow(throwSlots));
    }

    private static void counts(Winding w, List<String> why) {
        Armature a = w.armature();
        int dead = w.deadCoils().size();
        why.add(a.slots() + " slots with " + w.sidesPerSlot() + (w.sidesPerSlot() == 1 ? " coil" : " coils")
                + " a slot give " + w.positions() + " coils" + (dead == 0 ? "" : ", " + dead + " of them dead")
                + ", on " + a.bars() + " bars");
        for (CoilSet set : w.sets()) {
            int yc = set.pitches().orElseThrow().commutator();
            int m = set.plex().orElseThrow();
            String working = set.type() == WindingType.WAVE && w.type() != WindingType.FROG_LEG
                    ? "(" + a.bars() + (set.direction().orElseThrow() == Direction.PROGRESSIVE ? " + " : " - ") + m
                            + ")/" + a.polePairs() + " = "
                    : "";
            why.add("a " + set.type().word() + " coil's leads land " + working + yc
                    + (Math.abs(yc) == 1 ? " bar apart" : " bars apart"));
        }
        if (w.type() == WindingType.WAVE && a.poles() == 2) {
            why.add("on 2 poles a wave is the lap of the same direction: the two need not be told apart");
        }
    }

    /** What speaks against a winding; empty where nothing does, the reasons for it added to the list. */
    private static Optional<String> against(Electrical e, Known known, List<String> why) {
        double least = 0;
        double most = Double.POSITIVE_INFINITY;
        int resistances = 0;
        for (BenchSighting s : known.sightings()) {
            if (s instanceof BenchSighting.TracedCoil t) {
                int step = Math.floorMod(t.bottomBar() - t.topBar(), known.bars());
                if (!e.steps().contains(step)) {
                    return Optional.of(t.words() + ": " + CoilComparison.bars(step)
                            + " on, but a coil of this winding lands "
                            + e.steps().stream().map(CoilComparison::bars).collect(Collectors.joining(" or "))
                            + " on");
                }
                why.add(t.words() + ": " + CoilComparison.bars(step) + " on, as it should be");
            } else if (s instanceof BenchSighting.Continuity c) {
                boolean joined = e.resistance(c.bar(), c.otherBar()).isPresent();
                if (joined != c.joined()) {
                    return Optional.of(c.words() + ", but in this winding of " + circuits(e) + " they are "
                            + (joined ? "joined" : "not joined"));
                }
                why.add(c.words() + ", as with " + circuits(e));
            } else if (s instanceof BenchSighting.Resistance r) {
                OptionalDouble model = e.resistance(r.bar(), r.otherBar());
                if (model.isEmpty()) {
                    return Optional.of(r.words() + ", but in this winding of " + circuits(e) + " they are not joined");
                }
                least = Math.max(least, r.value() * (1 - TOLERANCE) / model.getAsDouble());
                most = Math.min(most, r.value() * (1 + TOLERANCE) / model.getAsDouble());
                resistances++;
            } else if (s instanceof BenchSighting.BladeSlots b) {
                OptionalInt expected = e.bladeSlots();
                if (expected.isPresent() && expected.getAsInt() != b.slots()) {
                    return Optional.of(b.words() + ", but in this winding it would over " + expected.getAsInt());
                }
                why.add(b.words()
                        + (expected.isPresent() ? ", as it should" : ": says nothing sure about this winding"));
            }
        }
        if (resistances > 0 && least > most) {
            return Optional.of("the resistances do not stand to one another as in this winding: " + ratios(e, known));
        }
        if (resistances > 1) {
            why.add("the resistances stand to one another as they should: " + ratios(e, known));
        }
        return Optional.empty();
    }

    private static String circuits(Electrical e) {
        int n = e.circuits();
        return n == 1 ? "one closed circuit" : n + " closed circuits";
    }

    private static String ratios(Electrical e, Known known) {
        return known.sightings().stream()
                .filter(BenchSighting.Resistance.class::isInstance)
                .map(BenchSighting.Resistance.class::cast)
                .map(r -> String.format(
                        Locale.ROOT,
                        "%.4g measured where it has %.4g coil resistances (bars %d and %d)",
                        r.value(),
                        e.resistance(r.bar(), r.otherBar()).orElseThrow(),
                        r.bar(),
                        r.otherBar()))
                .collect(Collectors.joining(", "));
    }
}
