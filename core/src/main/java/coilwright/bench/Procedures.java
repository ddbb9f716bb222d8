package coilwright.bench;

import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How each test is done, in steps, for one winding. Common practice, with the sources named in the text. */
public final class Procedures {
    private static final String MAINS =
            "The growler is a mains magnet: earthed, undamaged lead, hands off bars and blade while it is on; follow"
                    + " local electrical codes, and leave mains work to licensed people.";
    private static final String CLEAN =
            "Clean and dry the commutator and slots first: copper or carbon dust between bars reads as a short.";

    private Procedures() {}

    /**
     * {@return growler with a meter, the armature turned under probes held at one clock position}
     *
     * @param winding the winding
     * @param clockDegrees where the probes are held, clockwise from straight up
     */
    public static Procedure growlerMeterTurned(Winding winding, double clockDegrees) {
        return new Procedure(
                "Growler and meter, armature turned",
                List.of(
                        "Lay the armature in the growler's V, commutator end towards you.",
                        "Set an alternating millivoltmeter, or an ammeter of low resistance, between two probes.",
                        "Fix the probes at " + degrees(clockDegrees)
                                + " (clockwise from straight up), on two neighbouring bars."),
                List.of(
                        MAINS,
                        CLEAN,
                        "Switch the growler off before lifting the armature: without a core it overheats."),
                List.of(
                        "Switch on and note the reading.",
                        "Turn the armature by one bar, so that the next pair comes under the probes, and note again.",
                        "Go once round, " + winding.armature().bars() + " pairs."),
                meterMeaning(winding));
    }

    /**
     * {@return growler with a meter, the probes walked round a still armature}
     *
     * @param winding the winding
     */
    public static Procedure growlerMeterWalked(Winding winding) {
        return new Procedure(
                "Growler and meter, probes walked",
                List.of(
                        "Lay the armature in the growler's V, commutator end towards you, slot 1 at the angle of the"
                                + " sheet.",
                        "Chock it so that it cannot turn."),
                List.of(MAINS, CLEAN),
                List.of(
                        "Switch on. Put the probes on bars 1 and 2 and note the reading.",
                        "Step both probes on by one bar, clockwise, and note again, to bars "
                                + winding.armature().bars() + " and 1.",
                        "Expect different readings by place; compare each with the sheet, not with its neighbour."),
                meterMeaning(winding));
    }

    private static List<String> meterMeaning(Winding winding) {
        List<String> out = new ArrayList<>(List.of(
                "No reading on one pair alone: the coil between is shorted or its bars touch.",
                "An open coil shows on an ammeter of low resistance, which hardly moves on that pair; a voltmeter reads"
                        + " there what it reads on the others, since the rest of the winding gives the same voltage.",
                "About half the reading of its like: shorted turns.",
                "A reading that fits another place: crossed leads or a lead on the wrong bar."));
        if (winding.type() == WindingType.WAVE && winding.armature().polePairs() > 1) {
            out.add("Between neighbouring bars lie " + winding.armature().polePairs()
                    + " coils in series, so one bad coil shows on "
                    + winding.armature().polePairs() + " pairs.");
        }
        if (winding.sidesPerSlot() > 1) {
            out.add(winding.sidesPerSlot() + " coils share each slot: readings repeat in groups of "
                    + winding.sidesPerSlot()
                    + " bars with a step from group to group. That pattern is the slots, not a fault.");
        }
        return out;
    }

    /**
     * {@return growler with a steel blade}
     *
     * @param winding the winding
     */
    public static Procedure growlerBlade(Winding winding) {
        Armature a = winding.armature();
        List<String> meaning = new ArrayList<>();
        meaning.add("No pull anywhere: no short.");
        meaning.add("Pull over 2 slots one coil throw apart: a short inside that coil.");
        if (winding.type() == WindingType.WAVE && a.polePairs() > 1) {
            meaning.add("Pull over up to " + a.poles() + " slots: two neighbouring bars are joined, so " + a.polePairs()
                    + " coils in series are shorted.");
        }
        if (winding.type() == WindingType.FROG_LEG) {
            meaning.add(
                    "A frog-leg winding equalizes itself: the blade pulls at every slot, so this test tells nothing;"
                            + " use the bar-to-bar test.");
        } else {
            meaning.add("Pull at every slot: the armature has equalizers, and the blade cannot be used; use the"
                    + " bar-to-bar test.");
        }
        return new Procedure(
                "Growler and blade",
                List.of(
                        "Lay the armature in the growler's V.",
                        "Hold a strip of thin steel, such as a hacksaw blade, along the top slot, about 1/32 in"
                                + " (0.8 mm) off the core (US Army TM 10-3930-628-34)."),
                List.of(MAINS, CLEAN, "Keep the blade off the bars."),
                List.of(
                        "Switch on and turn the armature slowly through a full turn, the blade along the top.",
                        "Mark every slot over which the blade is pulled down and hums.",
                        "Repeat with the blade a coil throw to either side of the growler's faces, since a coil that"
                                + " links no flux makes no current."),
                meaning);
    }

    /**
     * {@return drop test with direct current}
     *
     * @param winding the winding
     * @param feeds bars fed, one pair after the other
     */
    public static Procedure drop(Winding winding, List<FeedBars> feeds) {
        List<String> setUp = new ArrayList<>();
        setUp.add("Low-voltage direct current, a 6 or 12 V battery with a rheostat and an ammeter, to the bars below"
                + " (training module JQR 251.36/.37/.41).");
        for (FeedBars f : feeds) {
            setUp.add("Feed in at bar " + f.in() + ", out at bar " + f.out() + ": " + f.why() + ".");
        }
        setUp.add("A millivoltmeter to 250 mV between two fine probes; set the rheostat so that it stays below mid"
                + " scale.");
        boolean lap = winding.type() != WindingType.WAVE;
        int p = winding.armature().polePairs();
        return new Procedure(
                "Drop test",
                setUp,
                List.of(
                        "Current warms the winding: feed no longer than each reading needs.",
                        "Break the feed only at the rheostat: a bar from which current is broken burns.",
                        "A battery can deliver a dangerous current into a short: fuse it."),
                List.of(
                        "Put the probes on bars 1 and 2 and note the reading with its sign.",
                        "Step clockwise, 2-3, 3-4, to the last bar and 1.",
                        "Keep the current the same; note it with the readings."),
                List.of(
                        lap || p == 1
                                ? "One reading low or nothing: the coil between is shorted, or its bars touch."
                                : p + " readings low: one coil is shorted within itself; one reading nothing: the two"
                                        + " bars touch.",
                        lap || p == 1
                                ? "One reading high and no reading on the rest of its side: that coil is open."
                                : p + " readings high with nothing before and after: one coil is open.",
                        "One reading a little high: a bad joint.",
                        "A reading of the wrong sign between two doubled ones: the leads of two neighbouring bars are"
                                + " crossed."));
    }

    /**
     * {@return resistance between bars}
     *
     * @param winding the winding
     */
    public static Procedure resistance(Winding winding) {
        return new Procedure(
                "Resistance bar to bar",
                List.of(
                        "A low-resistance ohmmeter with four leads, or current and millivolts.",
                        "Note the winding's temperature; resistances are compared at one temperature,"
                                + " R2/R1 = (234.5 + t2)/(234.5 + t1)."),
                List.of("Nothing else may be connected to the commutator."),
                List.of(
                        "Measure each pair of neighbouring bars, 1-2 to "
                                + winding.armature().bars() + "-1.",
                        "Measure a pole pitch apart, and brush to brush, for the record."),
                List.of(
                        "Nothing: shorted coil or touching bars.",
                        "High on one pair: open coil or bad joint.",
                        "All readings even but off the expected value: another wire or another number of turns."));
    }

    /**
     * {@return ground test with lamp or ohmmeter, and the walk that finds the place}
     *
     * @param winding the winding
     */
    public static Procedure ground(Winding winding) {
        int poles = winding.armature().poles();
        return new Procedure(
                "Ground",
                List.of(
                        "A series lamp or an ohmmeter between any bar and the bare shaft.",
                        "To find the place: feed direct current as for the drop test, millivoltmeter from the shaft to"
                                + " one bar after another."),
                List.of(
                        "A mains test lamp makes the whole armature live: insulated stand, no hands on the metal, local"
                                + " codes, licensed practice. A battery and lamp, or an insulation tester, is safer.",
                        "After an insulation test, discharge the winding to the shaft before touching it."),
                List.of(
                        "Lamp lights or ohmmeter reads low: the winding is grounded.",
                        "Walk the bars: near the ground the reading falls to nothing and returns with the other sign.",
                        "Move the feed to other bars and walk again."),
                List.of(
                        "The place that stays at nothing when the feed is moved is the true ground; places that move are"
                                + " phantoms (training module JQR 251.36/.37/.41)."
                                + (winding.type() == WindingType.WAVE && poles > 2
                                        ? " In a wave winding the sign also keeps changing two pole pitches from the true"
                                                + " ground, a coil away from it: take the bar that reads least."
                                        : ""),
                        winding.type() == WindingType.WAVE
                                ? "A wave winding shows as many such places as there are poles (" + poles
                                        + ") when it is fed a pole pitch apart."
                                : "A lap winding shows two such places, one true and one phantom.",
                        "Nothing at any bar: the shaft is not joined to the winding."));
    }

    /**
     * {@return polarity of each coil}
     *
     * @param winding the winding
     */
    public static Procedure polarity(Winding winding) {
        int closures = winding.type() == WindingType.LISTED
                ? Math.max(1, WindingGraph.of(winding).closures())
                : 1;
        return new Procedure(
                "Polarity",
                List.of(
                        "A compass, or a meter that shows its sign, and a low direct current.",
                        "Feed the two bars of one coil at a time from a battery through a resistor."),
                List.of("Keep the compass away from the growler: its needle loses its magnetism."),
                List.of(
                        "Hold the compass over the slot of the coil's top side while current flows in at the lower bar.",
                        "Note which way the needle swings, and step on.",
                        closures > 1 ? "Do each of the " + closures + " circuits by itself." : "Go once round."),
                List.of(
                        "The needle swings the other way over one coil: that coil is reversed.",
                        "With the growler, a reversed coil reads like its neighbours between its own bars, but any two"
                                + " probes that take it in with a neighbour read low."));
    }

    private static String degrees(double d) {
        double turn = d - 360 * Math.floor(d / 360);
        return String.format(Locale.ROOT, "%.1f°", turn);
    }
}
