package coilwright.lesson;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Finding;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import coilwright.winding.WorkedPitches;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Tell whether a winding can be wound; if not, why, and what would do.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec a winding that may or may not fit it
 */
public record FeasibleExercise(int grade, Armature armature, WindingSpec.Regular spec) implements Exercise {
    private static final String PITCH_RULE = "commutator-pitch-whole";
    private static final String SLOTS_RULE = "coil-sides-fit-slots";
    private static final int MOST_TRIES = 10_000;

    static FeasibleExercise make(Dice dice, int grade) {
        boolean yes = dice.oneIn(3);
        for (int i = 0; i < MOST_TRIES; i++) {
            FeasibleExercise e = any(dice, grade);
            List<Finding> broken = Rules.blocking(e.armature, e.spec);
            if (broken.isEmpty() == yes && broken.stream().map(Finding::rule).allMatch(FeasibleExercise::taught)) {
                return e;
            }
        }
        throw new IllegalStateException("no exercise of grade " + grade + " was found");
    }

    private static boolean taught(String rule) {
        return rule.equals(PITCH_RULE) || rule.equals(SLOTS_RULE);
    }

    private static FeasibleExercise any(Dice dice, int grade) {
        int poles = grade == 1 ? 4 : dice.of(4, 4, 6, 8);
        int slots = dice.from(2 * poles - 1, grade == 1 ? 25 : grade == 2 ? 36 : 48);
        int u = grade == 1 ? 1 : dice.from(1, 3);
        WindingType type = dice.oneIn(4) ? WindingType.LAP : WindingType.WAVE;
        int plex = grade == 1 ? 1 : grade == 2 ? dice.of(1, 1, 2) : dice.of(1, 2, 3);
        int off = grade == 1 ? (type == WindingType.LAP ? dice.of(0, 1) : 0) : dice.of(0, 0, 0, -1, 1);
        int dead = grade == 3 && type == WindingType.WAVE && dice.oneIn(2) ? 1 : 0;
        int bars = u * slots - dead + off;
        List<Integer> deadCoils = dead == 0 ? List.of() : List.of(bars + dead);
        Direction direction = dice.of(Direction.PROGRESSIVE, Direction.RETROGRESSIVE);
        return new FeasibleExercise(
                grade,
                Armature.of(slots, bars, poles),
                new WindingSpec.Regular(type, plex, direction, CoilSpan.usual(), deadCoils, 0));
    }

    @Override
    public Kind kind() {
        return Kind.FEASIBLE;
    }

    @Override
    public List<String> question() {
        String dead = spec.deadCoils().isEmpty()
                ? ", no dead coil"
                : ", " + Figures.count(spec.deadCoils().size(), "dead coil") + " besides the live ones";
        return List.of(
                "Wished for: " + Made.core(armature) + "; " + Made.plain(spec) + dead + ".",
                "Can it be wound so? If it can, give the commutator pitch, the number of closed circuits and of parallel"
                        + " paths. If not, say which rule it breaks (whole commutator pitch, coil sides that share out"
                        + " evenly over the slots, or both)"
                        + (spec.type() == WindingType.WAVE
                                ? " and, where the pitch is not whole, the nearest numbers of bars, fewer and more,"
                                        + " that the same winding can be stepped round."
                                : "."));
    }

    @Override
    public List<Answer> answers() {
        List<Finding> broken = Rules.blocking(armature, spec);
        List<Answer> out = new ArrayList<>();
        if (broken.isEmpty()) {
            Winding w = Winding.build(armature, spec);
            out.add(Answer.word("can it be wound", "yes", "yes"));
            out.add(Answer.of("commutator pitch", w.pitches().orElseThrow().commutator(), "bars"));
            out.add(Answer.of("closed circuits", w.closures().orElseThrow(), ""));
            out.add(Answer.of("parallel paths", w.parallelPaths().orElseThrow(), ""));
            return List.copyOf(out);
        }
        out.add(Answer.word("can it be wound", "no", "no"));
        List<String> rules = broken.stream().map(Finding::rule).sorted().toList();
        out.add(Answer.word(
                "rules broken",
                Figures.commas(rules),
                Figures.list(rules.stream().map(FeasibleExercise::words).toList())));
        if (rules.contains(PITCH_RULE)) {
            List<Integer> bars = nearestBars();
            out.add(Answer.word(
                    "bars that would do",
                    Figures.commas(bars),
                    String.join(" or ", bars.stream().map(String::valueOf).toList())));
        }
        return List.copyOf(out);
    }

    @Override
    public List<String> asked() {
        return List.of(
                "can it be wound",
                "commutator pitch, or rules broken",
                "closed circuits, or bars that would do",
                "parallel paths");
    }

    private static String words(String rule) {
        return rule.equals(PITCH_RULE) ? "the commutator pitch is not whole" : "the coils do not fill the slots evenly";
    }

    /** The next number of bars down and up whose commutator pitch is whole. */
    private List<Integer> nearestBars() {
        int down = armature.bars() - 1;
        while (down >= 2 * spec.plex() && !stepped(down)) {
            down--;
        }
        int up = armature.bars() + 1;
        while (!stepped(up)) {
            up++;
        }
        return IntStream.of(down, up).filter(k -> k >= 2 * spec.plex()).boxed().toList();
    }

    private boolean stepped(int bars) {
        return Rules.blocking(Armature.of(armature.slots(), bars, armature.poles()), spec.withDeadCoils(List.of()))
                .stream()
                .noneMatch(f -> f.rule().equals(PITCH_RULE));
    }

    @Override
    public List<String> steps() {
        List<String> out = new ArrayList<>();
        int q = armature.bars() + spec.deadCoils().size();
        out.add("slots: " + Figures.count(armature.bars(), "live coil")
                + (spec.deadCoils().isEmpty() ? "" : " and " + spec.deadCoils().size() + " dead, " + q + " coils")
                + " over " + armature.slots() + " slots: " + q + "/" + armature.slots() + " = "
                + (q % armature.slots() == 0
                        ? Integer.toString(q / armature.slots())
                        : Figures.number((double) q / armature.slots()))
                + (q % armature.slots() == 0 ? ", whole" : ", not whole"));
        List<Finding> broken = Rules.blocking(armature, spec);
        if (broken.isEmpty()) {
            for (WorkedPitches.Step s : WorkedPitches.of(Winding.build(armature, spec))) {
                if (List.of("commutator pitch", "closed circuits", "parallel paths")
                        .contains(s.what())) {
                    out.add(s.what() + ": " + s.working());
                }
            }
        }
        broken.forEach(f -> out.add(words(f.rule()) + ": " + f.message()));
        return List.copyOf(out);
    }
}
