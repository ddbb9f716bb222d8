package coilwright.lesson;

import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.Copper;
import coilwright.rewind.CoreSize;
import coilwright.rewind.EndTurn;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.MeanTurn;
import coilwright.rewind.RoundWire;
import coilwright.rewind.SlotFill;
import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotShape;
import coilwright.rewind.WireSizes;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Wire, slot fill and resistance. Grade 1: area, length and resistance of a coil; grade 2: also the armature's
 * resistance warm and the fill of its slots; grade 3: also the mean turn from the core, several wires in hand, and the
 * mass.
 *
 * @param grade 1 to 3
 * @param armature core and commutator
 * @param spec the winding
 * @param bareMm bare diameter of the wire, mm
 * @param overallMm diameter over the enamel, mm
 * @param inHand wires in hand, at least 1
 * @param turns per coil
 * @param meanTurnMm as measured, mm; at grade 3 it is worked out instead
 * @param core sizes of the core
 * @param diamond form of the end turns
 * @param slot a slot with parallel walls
 * @param insulation in it
 * @param warmCelsius temperature of the warm winding
 */
public record WireExercise(
        int grade,
        Armature armature,
        WindingSpec.Regular spec,
        double bareMm,
        double overallMm,
        int inHand,
        int turns,
        double meanTurnMm,
        CoreSize core,
        EndTurn.Diamond diamond,
        SlotShape.Rectangular slot,
        SlotInsulation insulation,
        double warmCelsius)
        implements Exercise {
    private static final double[] SIZES = {
        0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8, 0.9, 1.0, 1.12
    };
    private static final int FIGURES = 3;

    static WireExercise make(Dice dice, int grade) {
        while (true) {
            Winding w = Made.winding(
                    dice,
                    Math.min(grade, 2),
                    36,
                    x -> !x.pitches().orElseThrow().stepped());
            double bare = SIZES[dice.from(0, SIZES.length - 1)];
            double overall = RoundWire.of(WireSizes.metric(bare), InsulationBuild.IEC_GRADE_2)
                    .overallDiameterMm();
            int inHand = grade == 3 ? dice.from(1, 3) : 1;
            int turns = dice.from(4, 40);
            int sides = 2 * turns * w.sidesPerSlot() * inHand;
            // A slot into which the wire goes at a usual fill, in tenths of a millimetre.
            double fill = dice.from(60, 85) / 100.0;
            double liner = dice.of(0.2, 0.25, 0.3);
            double separator = dice.of(0.2, 0.3);
            double wedge = dice.of(1.0, 1.5, 2.0);
            double area = sides * overall * overall / fill;
            double width = Math.rint(10 * (Math.sqrt(area / 2.5) + 2 * liner)) / 10;
            double depth = Math.rint(10 * (area / (width - 2 * liner) + liner + separator + wedge)) / 10;
            double diameter = 5 * Math.rint((w.armature().slots() * width * 1.9 / Math.PI + 2 * depth) / 5);
            var made = new WireExercise(
                    grade,
                    w.armature(),
                    Made.spec(w),
                    bare,
                    overall,
                    inHand,
                    turns,
                    dice.from(20, 60) * 10,
                    new CoreSize(dice.from(8, 30) * 5, diameter, depth, 0),
                    new EndTurn.Diamond(dice.from(5, 15), dice.of(30, 35, 40, 45), dice.from(10, 25)),
                    new SlotShape.Rectangular(width, depth),
                    new SlotInsulation(liner, separator, wedge),
                    dice.of(60, 75, 80, 100));
            if (width > 1.5 && made.values().allMatch(Value::clear)) {
                return made;
            }
        }
    }

    private record Value(String what, double value, String unit) {
        static Value ohms(String what, double ohms) {
            return ohms < 1 ? new Value(what, ohms * 1000, "mΩ") : new Value(what, ohms, "Ω");
        }

        int decimals() {
            return Math.max(0, FIGURES - 1 - (int) Math.floor(Math.log10(Math.abs(value))));
        }

        boolean clear() {
            // Near a power of ten the number of decimals itself would hang on a hair.
            double log = Math.log10(Math.abs(value));
            return value < 1000 && Math.abs(log - Math.rint(log)) > 0.01 && Figures.clear(value, decimals());
        }

        Answer answer() {
            return Answer.of(what, Figures.fixed(value, decimals()), unit);
        }
    }

    private Conductor conductor() {
        return new Conductor.Round(
                RoundWire.measured(WireSizes.metric(bareMm), InsulationBuild.IEC_GRADE_2, overallMm), inHand);
    }

    private MeanTurn meanTurn() {
        return grade == 3 ? MeanTurn.of(core, armature.slots(), throwSlots(), diamond) : MeanTurn.measured(meanTurnMm);
    }

    private int throwSlots() {
        return Winding.build(armature, spec)
                .pitches()
                .orElseThrow()
                .throwSlots()
                .orElseThrow();
    }

    private CoilCopper coil() {
        return new CoilCopper(turns, conductor(), meanTurn(), 0);
    }

    private ArmatureCopper all() {
        Winding w = Winding.build(armature, spec);
        return new ArmatureCopper(
                coil(),
                w.coils().size(),
                w.liveCoils().size(),
                w.parallelPaths().orElseThrow());
    }

    private SlotFill fill() {
        return SlotFill.of(
                slot,
                insulation,
                conductor(),
                turns * Winding.build(armature, spec).sidesPerSlot());
    }

    /** What is asked for, each worked out as it is come to, since the slot fill takes long. */
    private Stream<Value> values() {
        List<Supplier<Value>> out = new ArrayList<>();
        CoilCopper coil = coil();
        if (grade == 3) {
            out.add(() -> new Value("mean turn", meanTurn().lengthMm(), "mm"));
        }
        out.add(() -> new Value("copper area of one turn", conductor().areaMm2(), "mm²"));
        out.add(() -> new Value("length of one coil", coil.lengthM(), "m"));
        out.add(() -> Value.ohms("resistance of one coil at 20 °C", coil.resistance(20)));
        if (grade > 1) {
            out.add(() -> Value.ohms(
                    "armature resistance at " + Figures.number(warmCelsius) + " °C", all().brushToBrush(warmCelsius)));
            out.add(() -> new Value("slot fill", fill().fill() * 100, "%"));
        }
        if (grade == 3) {
            out.add(() -> new Value("copper in the armature", all().massKg(), "kg"));
        }
        return out.stream().map(Supplier::get);
    }

    @Override
    public Kind kind() {
        return Kind.WIRE;
    }

    @Override
    public List<String> question() {
        List<String> out = new ArrayList<>();
        out.add("Given: " + Made.core(armature) + "; "
                + (grade == 1 ? "" : Made.plain(spec) + "; ")
                + Figures.count(turns, "turn") + " a coil of round copper wire, "
                + (inHand == 1 ? "" : inHand + " in hand, ") + mm(bareMm) + " bare, " + mm(overallMm)
                + " over the enamel; "
                + (grade == 3
                        ? "coil throw 1–" + (1 + throwSlots()) + ", core " + mm(core.lengthMm()) + " long and "
                                + mm(core.diameterMm()) + " across, slots " + mm(core.slotDepthMm())
                                + " deep; formed coils: straight part out of each slot " + mm(diamond.straightMm())
                                + ", legs along the slot pitch circle at " + Figures.degrees(diamond.legDegrees())
                                + " to the end face, nose " + mm(diamond.noseMm())
                        : "mean turn " + mm(meanTurnMm))
                + "; leads left out.");
        if (grade > 1) {
            out.add("The slots have parallel walls: " + mm(slot.widthMm()) + " wide, " + mm(slot.depthMm())
                    + " deep, lined with " + mm(insulation.linerMm()) + " on floor and walls, a separator of "
                    + mm(insulation.separatorMm()) + " between the layers, " + mm(insulation.wedgeMm())
                    + " at the top for the wedge.");
        }
        out.add("Copper at 20 °C has 1/58 Ω·mm²/m"
                + (grade > 1
                        ? ", at other temperatures (234.5 + t)/(234.5 + 20) times as much; slot fill is the squares round"
                                + " all wires over the room that insulation leaves"
                        : "")
                + (grade == 3 ? "; copper weighs 8.89 g/cm³" : "") + ".");
        out.add("Work out, to three significant figures: "
                + Figures.list(
                        values().map(v -> "the " + v.what() + " in " + v.unit()).toList()) + ".");
        return List.copyOf(out);
    }

    private static String mm(double x) {
        return Figures.number(x) + " mm";
    }

    @Override
    public List<Answer> answers() {
        return values().map(Value::answer).toList();
    }

    @Override
    public List<String> steps() {
        List<String> out = new ArrayList<>();
        Winding w = Winding.build(armature, spec);
        CoilCopper coil = coil();
        double area = conductor().areaMm2();
        if (grade == 3) {
            double circle = core.slotPitchCircleMm();
            double arc = Math.PI * circle * throwSlots() / armature.slots();
            double end = diamond.lengthMm(core, armature.slots(), throwSlots());
            out.add("slot pitch circle: " + Figures.number(core.diameterMm()) + " − "
                    + Figures.number(core.slotDepthMm())
                    + " = " + mm(circle) + "; over " + throwSlots() + " of " + armature.slots()
                    + " slots an arc of π × "
                    + Figures.number(circle) + " × " + throwSlots() + "/" + armature.slots() + " = " + mm(arc));
            out.add("one end turn: 2 × " + Figures.number(diamond.straightMm()) + " + " + Figures.number(arc) + "/cos "
                    + Figures.degrees(diamond.legDegrees()) + " + " + Figures.number(diamond.noseMm()) + " = "
                    + mm(end));
            out.add("mean turn: 2 × " + Figures.number(core.lengthMm()) + " + 2 × " + Figures.number(end) + " = "
                    + mm(meanTurn().lengthMm()));
        }
        out.add("copper area: " + (inHand == 1 ? "" : inHand + " × ") + "π/4 × " + Figures.number(bareMm) + "² = "
                + Figures.number(area) + " mm²");
        out.add("length of a coil: " + turns + " × " + mm(meanTurn().lengthMm()) + " = "
                + Figures.number(coil.lengthM()) + " m");
        out.add("resistance of a coil: " + Figures.number(coil.lengthM()) + "/(58 × " + Figures.number(area) + ") = "
                + Figures.number(coil.resistance(20)) + " Ω = " + Figures.number(coil.resistance(20) * 1000) + " mΩ");
        if (grade > 1) {
            ArmatureCopper all = all();
            int paths = all.paths();
            double factor = Copper.resistanceFactor(20, warmCelsius);
            out.add("warm: (234.5 + " + Figures.number(warmCelsius) + ")/(234.5 + 20) = " + Figures.number(factor)
                    + " times as much, " + Figures.number(coil.resistance(warmCelsius) * 1000) + " mΩ a coil");
            out.add("armature: " + paths + " paths of " + all.liveCoils() + "/" + paths + " = "
                    + Figures.number((double) all.liveCoils() / paths) + " coils in parallel: "
                    + Figures.number(coil.resistance(warmCelsius) * 1000) + " × " + all.liveCoils() + "/" + paths
                    + "² = "
                    + Figures.number(all.brushToBrush(warmCelsius) * 1000) + " mΩ");
            SlotFill fill = fill();
            double liner = insulation.linerMm();
            int u = w.sidesPerSlot();
            out.add("room in a slot: (" + Figures.number(slot.widthMm()) + " − 2 × " + Figures.number(liner) + ") × ("
                    + Figures.number(slot.depthMm()) + " − " + Figures.number(liner) + " − "
                    + Figures.number(insulation.separatorMm()) + " − " + Figures.number(insulation.wedgeMm()) + ") = "
                    + Figures.number(fill.windingAreaMm2()) + " mm²");
            out.add("wires in a slot: 2 layers × " + Figures.count(u, "coil side") + " × " + turns + " turns"
                    + (inHand == 1 ? "" : " × " + inHand + " in hand") + " = " + fill.wires() + "; squares: "
                    + fill.wires() + " × " + Figures.number(overallMm) + "² = " + Figures.number(fill.roomMm2())
                    + " mm²");
            out.add("slot fill: " + Figures.number(fill.roomMm2()) + "/" + Figures.number(fill.windingAreaMm2()) + " = "
                    + Figures.number(fill.fill() * 100) + " %");
        }
        if (grade == 3) {
            out.add("copper: " + w.coils().size() + " coils × " + Figures.number(coil.lengthM()) + " m × "
                    + Figures.number(area) + " mm² × 8.89/1000 = " + Figures.number(all().massKg()) + " kg");
        }
        return List.copyOf(out);
    }
}
