package coilwright.lesson;

import coilwright.drawing.Drawing;
import coilwright.winding.Armature;
import coilwright.winding.Pitches;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WorkedPitches;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Work out the pitches of a winding.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec a winding that can be wound on it
 */
public record PitchesExercise(int grade, Armature armature, WindingSpec.Regular spec) implements Exercise {
    static PitchesExercise make(Dice dice, int grade) {
        Winding w = Made.winding(dice, grade, grade == 1 ? 24 : grade == 2 ? 60 : 100, x -> true);
        return new PitchesExercise(grade, w.armature(), Made.spec(w));
    }

    @Override
    public Kind kind() {
        return Kind.PITCHES;
    }

    @Override
    public List<String> question() {
        String pitches = "Work out the coil throw, the span at the back in positions, the commutator pitch, the back,"
                + " front and resultant pitch in conductors (the front pitch without its sign), the number of closed"
                + " circuits and of parallel paths";
        return List.of(
                "Given: " + Made.core(armature) + "; " + Made.winding(armature, spec) + ".",
                grade == 1
                        ? pitches + "."
                        : pitches + ", and the bars from one equalizer tap to the next (none where there is none).");
    }

    @Override
    public List<Answer> answers() {
        Winding w = Winding.build(armature, spec);
        Pitches y = w.pitches().orElseThrow();
        List<Answer> out = new ArrayList<>();
        if (grade > 1) {
            out.add(Answer.of("coil sides per slot and layer", w.sidesPerSlot(), ""));
        }
        out.add(coilThrow(y));
        out.add(Answer.of("span at the back", y.backSpan(), "positions"));
        out.add(Answer.of("commutator pitch", y.commutator(), "bars"));
        out.add(Answer.of("back pitch", y.back(), "conductors"));
        out.add(Answer.of("front pitch", y.front(), "conductors"));
        out.add(Answer.of("resultant pitch", y.resultant(), "conductors"));
        out.add(Answer.of("closed circuits", w.closures().orElseThrow(), ""));
        out.add(Answer.of("parallel paths", w.parallelPaths().orElseThrow(), ""));
        if (grade > 1) {
            out.add(
                    w.equalizerPitch().isPresent()
                            ? Answer.word(
                                    "equalizer pitch",
                                    Integer.toString(w.equalizerPitch().getAsInt()),
                                    Figures.count(w.equalizerPitch().getAsInt(), "bar"))
                            : Answer.word("equalizer pitch", "none", "none"));
        }
        return List.copyOf(out);
    }

    /** Slots spanned: one number, or two for stepped coils, written as the trade writes them. */
    static Answer coilThrow(Pitches y) {
        int low = y.backSpan() / y.sidesPerSlot();
        return y.stepped()
                ? Answer.word("coil throw", low + "," + (low + 1), y.coilThrow())
                : Answer.word("coil throw", Integer.toString(low), y.coilThrow());
    }

    @Override
    public List<String> steps() {
        Winding w = Winding.build(armature, spec);
        List<String> out = new ArrayList<>();
        for (WorkedPitches.Step s : WorkedPitches.of(w)) {
            out.add(s.what() + ": " + s.working());
        }
        if (grade > 1 && w.equalizerPitch().isEmpty()) {
            out.add("equalizers: " + PlacesExercise.equalizerRule(w));
        }
        return List.copyOf(out);
    }

    @Override
    public Optional<Drawing> keyPicture() {
        return Pictures.ofAll(Winding.build(armature, spec));
    }
}
