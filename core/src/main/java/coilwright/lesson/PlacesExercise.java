package coilwright.lesson;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.circuit.Neutral;
import coilwright.circuit.WindingGraph;
import coilwright.drawing.Drawing;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Finding;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where brushes and equalizers go. Pole 1 has its centre straight up, and slot 1 stands under it.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec a winding without dead or stepped coils
 */
public record PlacesExercise(int grade, Armature armature, WindingSpec.Regular spec) implements Exercise {
    static PlacesExercise make(Dice dice, int grade) {
        Winding w = Made.winding(
                dice,
                grade,
                grade == 1 ? 16 : grade == 2 ? 24 : 36,
                x -> suits(x) && (grade == 1 || x.armature().poles() > 2));
        return new PlacesExercise(grade, w.armature(), Made.spec(w));
    }

    private static boolean suits(Winding w) {
        return w.deadCoils().isEmpty()
                && !w.pitches().orElseThrow().stepped()
                && w.armature().poles() <= 6
                && BrushGear.leastWidth(w) <= w.armature().polePitchBars()
                && sure(w)
                && exact(w);
    }

    /** Whether no brush edge lies so near to the edge of a bar that only a hair decides what it touches. */
    private static boolean sure(Winding w) {
        Armature a = w.armature();
        BrushGear gear = gear(w);
        for (Brush b : gear.brushes()) {
            double edge = (b.angle() - a.barCentre(1)) / a.barAngle() + (gear.widthBars() + 1) / 2;
            double off = Math.abs(edge - Math.rint(edge));
            if (off > 1e-7 && off < 0.03) {
                return false;
            }
            if (!Figures.clear(b.angle(), 1)) {
                return false;
            }
        }
        return true;
    }

    /** Whether the bars that the equalizer pitch joins stand at one potential exactly, and no others do. */
    private static boolean exact(Winding w) {
        List<List<Integer>> rings = WindingGraph.of(w).equipotentialBars();
        return w.equalizerPitch().isEmpty()
                ? rings.isEmpty()
                : rings.size() == w.equalizerPitch().getAsInt()
                        && rings.stream()
                                .allMatch(r ->
                                        r.size() * rings.size() == w.armature().bars());
    }

    private static BrushGear gear(Winding w) {
        return BrushGear.at(w, 0, BrushGear.leastWidth(w));
    }

    private Winding winding() {
        return Winding.build(armature, spec);
    }

    @Override
    public Kind kind() {
        return Kind.PLACES;
    }

    @Override
    public List<String> question() {
        BrushGear gear = gear(winding());
        return List.of(
                "Given: " + Made.core(armature) + "; " + Made.winding(armature, spec) + ".",
                "Pole 1 has its centre straight up, the others follow clockwise, and slot 1 stands straight up. A coil may"
                        + " be shorted by a brush while its middle stands under the centre of a pole. Where do the "
                        + armature.poles()
                        + " brushes stand (degrees clockwise from straight up, to one decimal; brush 1"
                        + " is the one nearest to pole 1), and which bars does each touch if it is "
                        + Figures.count((int) gear.widthBars(), "bar")
                        + " wide? How many of them are the least that will do?",
                "Which bars may be joined by equalizers: how many bars from tap to tap, how many rings, and which bars are"
                        + " on the ring of bar 1? Write none where there is none.");
    }

    @Override
    public List<Answer> answers() {
        Winding w = winding();
        BrushGear gear = gear(w);
        List<Answer> out = new ArrayList<>();
        for (Brush b : gear.brushes()) {
            out.add(Answer.of("brush " + b.number() + " stands at", Figures.fixed(b.angle(), 1), "°"));
            out.add(Answer.word(
                    "brush " + b.number() + " touches",
                    Figures.commas(b.bars()),
                    (b.bars().size() == 1 ? "bar " : "bars ") + Figures.list(b.bars())));
        }
        out.add(Answer.of("least number of brushes", BrushGear.leastBrushes(w), ""));
        List<List<Integer>> rings = WindingGraph.of(w).equipotentialBars();
        if (rings.isEmpty()) {
            out.add(Answer.word("equalizer pitch", "none", "none"));
            out.add(Answer.of("rings", 0, ""));
            out.add(Answer.word("ring of bar 1", "none", "none"));
            return List.copyOf(out);
        }
        int pitch = w.equalizerPitch().orElseThrow();
        out.add(Answer.word("equalizer pitch", Integer.toString(pitch), Figures.count(pitch, "bar")));
        out.add(Answer.of("rings", rings.size(), ""));
        List<Integer> first = rings.get(0);
        out.add(Answer.word("ring of bar 1", Figures.commas(first), "bars " + Figures.list(first)));
        return List.copyOf(out);
    }

    /** What the rule of equalizers says. */
    static String equalizerRule(Winding w) {
        return Rules.check(w).stream()
                .filter(f -> f.rule().equals("equalizers"))
                .map(Finding::message)
                .findFirst()
                .orElse("no bars stand at one potential");
    }

    @Override
    public List<String> steps() {
        Winding w = winding();
        BrushGear gear = gear(w);
        List<String> out = new ArrayList<>();
        out.add("slot angle 360°/" + armature.slots() + " = " + Figures.degrees(armature.slotAngle())
                + ", bar angle 360°/"
                + armature.bars() + " = " + Figures.degrees(armature.barAngle()) + ", pole pitch 360°/"
                + armature.poles() + " = " + Figures.degrees(360.0 / armature.poles()));
        int u = w.sidesPerSlot();
        double off = gear.neutral().fromPoleCentre();
        double pitch = 360.0 / armature.poles();
        for (Coil c : w.coils().subList(0, u)) {
            // Told on the side of the mean, not round the pole pitch from it.
            double own = Neutral.ofCoil(armature, c);
            out.add(coil(w, c, own - pitch * Math.rint((own - off) / pitch)));
        }
        if (u > 1) {
            out.add("the " + u + " coils of a slot share the brushes: their mean is " + Figures.degrees(off));
        }
        List<String> places = new ArrayList<>();
        for (Brush b : gear.brushes()) {
            places.add(b.number() + " at " + Figures.degrees(360.0 / armature.poles() * (b.number() - 1)) + " "
                    + (off < 0 ? "− " : "+ ") + Figures.degrees(Math.abs(off))
                    + (b.number() == 1 && off < 0 ? " + 360°" : "") + " = " + Figures.fixed(b.angle(), 1) + "°");
        }
        out.add("from pole centre to pole centre on: brush " + String.join(", brush ", places));
        Brush first = gear.brushes().get(0);
        double middle = (first.angle() - armature.barCentre(1)) / armature.barAngle() + 1;
        out.add("bars: brush 1 stands at "
                + Figures.number(middle > armature.bars() + 0.5 ? middle - armature.bars() : middle)
                + ", counted in bars from the middle of bar 1 as 1; half a bar counts to either side of every "
                + "bar, and half of " + Figures.number(gear.widthBars()) + " for the brush");
        out.add(
                w.type() == WindingType.WAVE
                        ? "least number: a wave winding joins all coils under poles of one kind, so one + and one −"
                                + " brush will do"
                        : "least number: a lap winding needs a brush for every pole");
        out.add("equalizers: " + equalizerRule(w));
        return List.copyOf(out);
    }

    private String coil(Winding w, Coil c, double own) {
        double span = Math.floorMod(c.bottom().slot() - c.top().slot(), armature.slots()) * armature.slotAngle();
        double centre = armature.slotCentre(c.top().slot()) + span / 2;
        double top = armature.barCentre(c.topBar().getAsInt());
        int yc = w.pitches().orElseThrow().commutator();
        double bottom = top + yc * armature.barAngle();
        String wave = "";
        if (w.type() == WindingType.WAVE && armature.polePairs() > 1) {
            double pair = 720.0 / armature.poles();
            wave = " less a pole pair, " + Figures.degrees(pair) + ", as brushes of one kind are joined: "
                    + Figures.degrees(bottom - pair);
            bottom -= pair;
        }
        return "coil " + c.number() + ": sides in slots " + c.top().slot() + " and "
                + c.bottom().slot() + ", middle at " + Figures.degrees(centre) + "; top lead on bar "
                + c.topBar().getAsInt() + " at " + Figures.degrees(top) + ", bottom lead "
                + Figures.count(Math.abs(yc), "bar") + (yc < 0 ? " back at " : " on at ")
                + Figures.degrees(top + yc * armature.barAngle()) + wave + "; middle between the two "
                + Figures.degrees((top + bottom) / 2) + ", that is " + Figures.degrees(own)
                + " from the coil's own middle"
                + (Math.abs((top + bottom) / 2 - centre - own) < 1e-6 ? "" : ", but for whole pole pitches");
    }

    @Override
    public Optional<Drawing> keyPicture() {
        return Pictures.ofAll(winding());
    }
}
