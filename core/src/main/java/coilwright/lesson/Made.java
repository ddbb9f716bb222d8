package coilwright.lesson;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Finding;
import coilwright.winding.Rules;
import coilwright.winding.Severity;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Small windings invented for exercises, and how they are told. */
final class Made {
    private static final int MOST_TRIES = 20_000;

    private Made() {}

    /**
     * A winding that can be wound: grade 1 simplex with one coil side per slot and layer, grade 2 with several, or
     * duplex, grade 3 with a lead offset, a dead coil, stepped coils or triplex.
     *
     * @param mostBars largest number of bars, at least 12
     * @param also what else it must be
     */
    static Winding winding(Dice dice, int grade, int mostBars, Predicate<Winding> also) {
        for (int i = 0; i < MOST_TRIES; i++) {
            int poles = grade == 1 ? dice.of(2, 4) : grade == 2 ? dice.of(2, 4, 6) : dice.of(2, 4, 4, 6, 8);
            int u = grade == 1 ? 1 : dice.of(1, 2, 2, 3);
            int most = mostBars / u;
            int least = Math.max(5, 2 * poles - 1);
            if (most < least) {
                continue;
            }
            int slots = dice.from(least, most);
            // On 2 poles a wave is a lap winding by another name.
            WindingType type =
                    poles == 2 ? WindingType.LAP : dice.of(WindingType.LAP, WindingType.WAVE, WindingType.WAVE);
            int plex = grade == 1 ? 1 : grade == 2 ? dice.of(1, 1, 1, 2) : dice.of(1, 1, 2, 3);
            int dead = grade == 3 && type == WindingType.WAVE && u > 1 && dice.oneIn(2) ? 1 : 0;
            int bars = u * slots - dead;
            CoilSpan span = span(dice, grade, slots, poles, u);
            int offset = grade == 3 && dice.oneIn(2) ? dice.from(-3, 3) : 0;
            List<Integer> deadCoils = dead == 0 ? List.of() : List.of(dice.from(1, u * slots));
            SlotAlignment line = grade > 1 && dice.oneIn(3) ? SlotAlignment.MICA : SlotAlignment.BAR;
            Direction direction = dice.of(Direction.PROGRESSIVE, Direction.RETROGRESSIVE);
            var armature = new Armature(slots, bars, poles, line);
            var spec = new WindingSpec.Regular(type, plex, direction, span, deadCoils, offset);
            if (!Rules.blocking(armature, spec).isEmpty()) {
                continue;
            }
            Winding winding = Winding.build(armature, spec);
            if (quiet(winding) && also.test(winding)) {
                return winding;
            }
        }
        throw new IllegalStateException("no winding of grade " + grade + " with up to " + mostBars + " bars was found");
    }

    private static CoilSpan span(Dice dice, int grade, int slots, int poles, int u) {
        int usual = Math.max(1, slots / poles);
        if (grade == 3 && u > 1 && dice.oneIn(4)) {
            return CoilSpan.ofPositions(usual * u + dice.from(1, u - 1));
        }
        if (grade > 1 && usual > 2 && dice.oneIn(3)) {
            return CoilSpan.ofThrow(usual - 1);
        }
        return CoilSpan.usual();
    }

    /** Without a warning: what is taught should be good practice. */
    private static boolean quiet(Winding winding) {
        return Rules.check(winding).stream().map(Finding::severity).noneMatch(s -> s == Severity.WARNING);
    }

    /** The core and commutator in words. */
    static String core(Armature a) {
        return Figures.count(a.slots(), "slot") + ", " + Figures.count(a.bars(), "bar") + ", "
                + Figures.count(a.poles(), "pole");
    }

    /** The winding in words, with everything from which its table follows. */
    static String winding(Armature a, WindingSpec.Regular spec) {
        StringBuilder out = new StringBuilder();
        out.append(plain(spec)).append("; ").append(span(a, spec));
        if (!spec.deadCoils().isEmpty()) {
            out.append("; dead coil")
                    .append(spec.deadCoils().size() == 1 ? " " : "s ")
                    .append(Figures.list(spec.deadCoils()));
        }
        out.append("; slot 1 in line with ")
                .append(a.slotOneInLineWith() == SlotAlignment.BAR ? "bar 1" : "the mica before bar 1");
        if (spec.leadOffset() != 0) {
            int n = Math.abs(spec.leadOffset());
            out.append("; all leads shifted ")
                    .append(Figures.count(n, "bar"))
                    .append(spec.leadOffset() > 0 ? " clockwise" : " counter-clockwise");
        }
        return out.toString();
    }

    /** Plex, kind and direction. */
    static String plain(WindingSpec.Regular spec) {
        return WindingSpec.plexWord(spec.plex()) + " " + spec.type().word() + " winding, "
                + spec.direction().word();
    }

    static String span(Armature a, WindingSpec.Regular spec) {
        if (spec.span() instanceof CoilSpan.Throw t) {
            return "coil throw 1–" + (1 + t.slots());
        }
        if (spec.span() instanceof CoilSpan.Positions p) {
            return "coils span " + Figures.count(p.positions(), "position") + " at the back";
        }
        return "coil throw the pole pitch, rounded down to whole slots";
    }

    static WindingSpec.Regular spec(Winding winding) {
        return (WindingSpec.Regular) winding.spec();
    }

    /** Where the steps must be read with a rule at hand. */
    static List<String> numbering() {
        return List.of("Seen from the commutator end; slots, coils and bars count clockwise from 1; a coil bears the"
                + " number of its top side; the top lead of coil 1 lands on bar 1 unless leads are shifted.");
    }

    /** Copies a list and adds to it. */
    static <T> List<T> with(List<T> first, List<T> more) {
        List<T> out = new ArrayList<>(first);
        out.addAll(more);
        return List.copyOf(out);
    }
}
