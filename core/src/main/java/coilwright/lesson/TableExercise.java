package coilwright.lesson;

import coilwright.drawing.Drawing;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Pitches;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WorkedPitches;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Fill in a winding table.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec a winding that can be wound on it
 * @param given how many coils the table shows to begin with
 */
public record TableExercise(int grade, Armature armature, WindingSpec.Regular spec, int given) implements Exercise {
    private static final String NONE = "–";

    static TableExercise make(Dice dice, int grade) {
        Winding w = Made.winding(dice, grade, grade == 1 ? 12 : grade == 2 ? 18 : 24, x -> true);
        return new TableExercise(grade, w.armature(), Made.spec(w), grade == 1 ? 2 : grade == 2 ? 1 : 0);
    }

    @Override
    public Kind kind() {
        return Kind.TABLE;
    }

    @Override
    public List<String> question() {
        List<String> out = new ArrayList<>();
        out.add("Given: " + Made.core(armature) + "; " + Made.winding(armature, spec) + ".");
        out.addAll(Made.numbering());
        out.add("Fill in the winding table."
                + (spec.deadCoils().isEmpty() ? "" : " Write – where a lead lands on no bar."));
        return List.copyOf(out);
    }

    private Winding winding() {
        return Winding.build(armature, spec);
    }

    @Override
    public List<Answer> answers() {
        List<Answer> out = new ArrayList<>();
        List<List<String>> rows = filled().rows();
        for (int i = given; i < rows.size(); i++) {
            List<String> row = rows.get(i);
            out.add(Answer.word(
                    "coil " + row.get(0),
                    String.join(",", row.subList(1, row.size())),
                    "slots " + row.get(1) + " and " + row.get(2)
                            + (row.get(3).equals(NONE) ? ", no bars" : ", bars " + row.get(3) + " and " + row.get(4))));
        }
        return List.copyOf(out);
    }

    private Grid filled() {
        return rows(winding(), Integer.MAX_VALUE);
    }

    private static Grid rows(Winding w, int shown) {
        List<List<String>> rows = new ArrayList<>();
        for (Coil c : w.coils()) {
            rows.add(
                    rows.size() < shown
                            ? List.of(
                                    Integer.toString(c.number()),
                                    Integer.toString(c.top().slot()),
                                    Integer.toString(c.bottom().slot()),
                                    bar(c.topBar()),
                                    bar(c.bottomBar()))
                            : List.of(Integer.toString(c.number()), "", "", "", ""));
        }
        return new Grid(Grid.COILS, rows);
    }

    private static String bar(OptionalInt bar) {
        return bar.isPresent() ? Integer.toString(bar.getAsInt()) : NONE;
    }

    @Override
    public Optional<Grid> table() {
        return Optional.of(rows(winding(), given));
    }

    @Override
    public Optional<Grid> filledTable() {
        return Optional.of(filled());
    }

    @Override
    public List<String> steps() {
        Winding w = winding();
        Pitches y = w.pitches().orElseThrow();
        List<String> out = new ArrayList<>();
        for (WorkedPitches.Step s : WorkedPitches.of(w)) {
            if (List.of("coils", "coil sides per slot and layer", "coil throw", "back span", "commutator pitch")
                    .contains(s.what())) {
                out.add(s.what() + ": " + s.working());
            }
        }
        int u = w.sidesPerSlot();
        Coil first = w.liveCoils().get(0);
        int q = w.positions();
        int end = first.number() + y.backSpan();
        out.add("coil " + first.number() + ": its top side has position " + first.number() + ", in slot "
                + first.top().slot() + (u == 1 ? "" : " (" + u + " positions to a slot)") + "; its bottom side lies "
                + Figures.count(y.backSpan(), "position") + " further, position "
                + end + (end > q ? " − " + q + " = " + (end - q) : "") + ", in slot "
                + first.bottom().slot());
        int top = first.topBar().orElseThrow();
        int bottom = top + y.commutator();
        out.add("coil " + first.number() + ": its top lead lands on bar 1"
                + (spec.leadOffset() == 0 ? "" : shift(spec.leadOffset(), armature.bars()))
                + (spec.leadOffset() == 0 ? "" : " = " + top) + ", its bottom lead on bar " + top + " "
                + (y.commutator() < 0 ? "− " : "+ ") + Math.abs(y.commutator()) + " = " + bottom
                + (bottom < 1 || bottom > armature.bars()
                        ? ", that is " + first.bottomBar().getAsInt()
                        : ""));
        out.add("every further live coil moves one position and one bar on; after position " + q
                + " comes 1, after bar "
                + armature.bars() + " comes 1"
                + (spec.deadCoils().isEmpty() ? "" : "; a dead coil takes a position but no bar"));
        out.add("proof: every bar of 1 to " + armature.bars() + " has one top and one bottom lead");
        return List.copyOf(out);
    }

    private static String shift(int offset, int bars) {
        int bar = 1 + offset;
        return " " + (offset < 0 ? "− " : "+ ") + Math.abs(offset) + (bar < 1 ? " + " + bars : "");
    }

    @Override
    public Optional<Drawing> keyPicture() {
        return Pictures.ofAll(winding());
    }
}
