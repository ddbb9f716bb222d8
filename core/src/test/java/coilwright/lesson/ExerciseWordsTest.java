package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.fault.Fault;
import coilwright.rewind.CoreSize;
import coilwright.rewind.EndTurn;
import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotShape;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Exercises set by hand, with their questions, keys and workings as they should read. */
class ExerciseWordsTest {
    private static final WindingSpec.Regular LAP = WindingSpec.lap(1, Direction.PROGRESSIVE);
    private static final WindingSpec.Regular LAP_BACK = WindingSpec.lap(1, Direction.RETROGRESSIVE);
    private static final WindingSpec.Regular WAVE = WindingSpec.wave(1, Direction.PROGRESSIVE);

    private static Map<String, String> printed(Exercise e) {
        return e.answers().stream().collect(Collectors.toMap(Answer::what, Answer::printed));
    }

    // ---- small things -----------------------------------------------------------------------------------------------

    @Test
    void answersArePrintedWithTheirUnits() {
        assertThat(Answer.of("pitch", -1, "bars").printed()).isEqualTo("−1 bar");
        assertThat(Answer.of("pitch", 1, "bars").printed()).isEqualTo("1 bar");
        assertThat(Answer.of("pitch", 11, "bars").printed()).isEqualTo("11 bars");
        assertThat(Answer.of("ohms", "1", "mΩ").printed()).isEqualTo("1 mΩ");
        assertThat(Answer.of("place", "60.0", "°").printed()).isEqualTo("60.0°");
        assertThat(Answer.of("circuits", 2, "").printed()).isEqualTo("2");
        assertThat(Answer.word("error", "wrong-slot:3", "wrong slot, coil 3").printed())
                .isEqualTo("wrong slot, coil 3");
    }

    @Test
    void figuresAreWrittenAlikeEverywhere() {
        assertThat(Figures.signed(3)).isEqualTo("+3");
        assertThat(Figures.signed(-3)).isEqualTo("−3");
        assertThat(Figures.signed(0)).isEqualTo("+0");
        assertThat(Figures.list(List.of())).isEmpty();
        assertThat(Figures.list(List.of(4))).isEqualTo("4");
        assertThat(Figures.list(List.of(4, 5))).isEqualTo("4 and 5");
        assertThat(Figures.list(List.of(4, 5, 6))).isEqualTo("4, 5 and 6");
        assertThat(Figures.number(0.000_000_000_1)).isEqualTo("0");
        assertThat(Figures.number(0.000_000_002)).isEqualTo("0.000000002");
        assertThat(Figures.number(-1234.567)).isEqualTo("−1234.6");
        assertThat(Figures.fixed(-0.04, 1)).isEqualTo("0.0");
        assertThat(Figures.fixed(2.25, 1)).isEqualTo("2.2");
        // Within a fiftieth of the last place of a half, not everybody rounds alike.
        assertThat(Figures.clear(1.2518, 2)).isTrue();
        assertThat(Figures.clear(1.2551, 2)).isFalse();
        assertThat(Figures.clear(-1.2549, 2)).isFalse();
        assertThat(Figures.clear(1.2553, 2)).isTrue();
    }

    @Test
    void kindsBearTheirTitles() {
        assertThat(Kind.LIST_ERROR.title()).isEqualTo("Error in a connection list");
        assertThat(Kind.FEASIBLE.title()).isEqualTo("Can it be wound?");
    }

    @Test
    void oneLessonHoldsUpToAThousandOfAKind() {
        assertThat(Lesson.exercises(1, 1, List.of(Kind.PITCHES), 1000)).hasSize(1000);
    }

    // ---- pitches ----------------------------------------------------------------------------------------------------

    @Test
    void pitchesOfAWaveWithADeadCoil() {
        var e = new PitchesExercise(3, Armature.of(8, 15, 4), WAVE.withDeadCoils(List.of(16)));
        assertThat(e.question().get(0))
                .isEqualTo("Given: 8 slots, 15 bars, 4 poles; simplex wave winding, progressive; coil throw the pole"
                        + " pitch, rounded down to whole slots; dead coil 16; slot 1 in line with bar 1.");
        assertThat(e.question().get(1)).endsWith("equalizer tap to the next (none where there is none).");
        // u = 16/8, y1 = 2 × 2, yc = (15 + 1)/2, Yb = 2 × 4 + 1, Yf = 2 × (8 − 4) − 1.
        assertThat(e.answers())
                .extracting(Answer::what, Answer::printed)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("coil sides per slot and layer", "2"),
                        org.assertj.core.groups.Tuple.tuple("coil throw", "1–3"),
                        org.assertj.core.groups.Tuple.tuple("span at the back", "4 positions"),
                        org.assertj.core.groups.Tuple.tuple("commutator pitch", "8 bars"),
                        org.assertj.core.groups.Tuple.tuple("back pitch", "9 conductors"),
                        org.assertj.core.groups.Tuple.tuple("front pitch", "7 conductors"),
                        org.assertj.core.groups.Tuple.tuple("resultant pitch", "16 conductors"),
                        org.assertj.core.groups.Tuple.tuple("closed circuits", "1"),
                        org.assertj.core.groups.Tuple.tuple("parallel paths", "2"),
                        org.assertj.core.groups.Tuple.tuple("equalizer pitch", "none"));
        assertThat(e.steps()).endsWith("equalizers: a simplex wave has two paths only and needs no equalizers");
        assertThat(e.asked()).contains("commutator pitch, bars", "closed circuits");
        assertThat(e.keyPicture()).isPresent();
    }

    @Test
    void pitchesOfSteppedCoilsAtTheMica() {
        var e = new PitchesExercise(
                3,
                new Armature(6, 12, 2, SlotAlignment.MICA),
                LAP.withSpan(CoilSpan.ofPositions(7)).withLeadOffset(-2));
        assertThat(e.question().get(0))
                .isEqualTo(
                        "Given: 6 slots, 12 bars, 2 poles; simplex lap winding, progressive; coils span 7 positions at"
                                + " the back; slot 1 in line with the mica before bar 1; all leads shifted 2 bars"
                                + " counter-clockwise.");
        Map<String, String> a = printed(e);
        assertThat(a).containsEntry("coil throw", "1–4 and 1–5").containsEntry("back pitch", "15 conductors");
        assertThat(a).containsEntry("front pitch", "13 conductors").containsEntry("commutator pitch", "1 bar");
        assertThat(e.answers().get(1).value()).isEqualTo("3,4");
    }

    @Test
    void easyPitchesLeaveCoilSidesAndEqualizersOut() {
        var easy = new PitchesExercise(
                1, Armature.of(12, 12, 4), LAP.withSpan(CoilSpan.ofThrow(2)).withLeadOffset(1));
        assertThat(easy.question().get(0))
                .contains("; coil throw 1–3; ")
                .endsWith("; all leads shifted 1 bar clockwise.");
        assertThat(easy.question().get(1)).endsWith("of closed circuits and of parallel paths.");
        assertThat(printed(easy)).hasSize(8).doesNotContainKey("equalizer pitch");
        assertThat(easy.steps()).noneMatch(s -> s.startsWith("equalizers: a "));
        // The same asked for at a higher grade: 12 bars over 2 pole pairs.
        var hard = new PitchesExercise(2, easy.armature(), easy.spec());
        assertThat(printed(hard)).containsEntry("equalizer pitch", "6 bars").hasSize(10);
        // Too large to be read at the width of a page.
        assertThat(new PitchesExercise(1, Armature.of(19, 19, 2), LAP).keyPicture())
                .isEmpty();
        assertThat(new PitchesExercise(1, Armature.of(18, 18, 2), LAP).keyPicture())
                .isPresent();
        assertThat(new PitchesExercise(1, Armature.of(12, 24, 2), LAP).keyPicture())
                .isPresent();
        assertThat(new PitchesExercise(1, Armature.of(13, 26, 2), LAP).keyPicture())
                .isEmpty();
    }

    @Test
    void severalDeadCoilsAreTold() {
        assertThat(Made.winding(Armature.of(8, 14, 4), WAVE.withDeadCoils(List.of(4, 12))))
                .contains("; dead coils 4 and 12; ");
        assertThat(Made.numbering())
                .singleElement()
                .asString()
                .startsWith("Seen from the commutator end;")
                .endsWith("on bar 1 unless leads are shifted.");
    }

    // ---- tables -----------------------------------------------------------------------------------------------------

    @Test
    void aTableWithLeadsShiftedBackOverBarOne() {
        var e = new TableExercise(3, Armature.of(7, 14, 2), LAP.withLeadOffset(-1), 2);
        assertThat(e.question()).hasSize(3).endsWith("Fill in the winding table.");
        assertThat(e.steps())
                .containsExactly(
                        "coil sides per slot and layer: u = Q/S = 14/7 = 2",
                        "coil throw: pole pitch rounded down = 3 slots: slot 1 to slot 4",
                        "back span: y1 = u × throw = 2 × 3 = 6 positions",
                        "commutator pitch: yc = +m = +1 bar",
                        "coil 1: its top side has position 1, in slot 1 (2 positions to a slot); its bottom side lies 6"
                                + " positions further, position 7, in slot 4",
                        "coil 1: its top lead lands on bar 1 − 1 + 14 = 14, its bottom lead on bar 14 + 1 = 15, that is"
                                + " 1",
                        "every further live coil moves one position and one bar on; after position 14 comes 1, after bar"
                                + " 14 comes 1",
                        "proof: every bar of 1 to 14 has one top and one bottom lead");
        assertThat(e.answers()).hasSize(12);
        assertThat(printed(e)).containsEntry("coil 3", "slots 2 and 5, bars 2 and 3");
        assertThat(e.keyPicture()).isPresent();
    }

    @Test
    void aTableThatBeginsWithADeadCoilAndGoesRound() {
        var e = new TableExercise(
                3, Armature.of(4, 3, 2), LAP_BACK.withSpan(CoilSpan.ofThrow(3)).withDeadCoils(List.of(1)), 0);
        assertThat(e.question()).endsWith("Fill in the winding table. Write – where a lead lands on no bar.");
        assertThat(e.steps())
                .contains(
                        "coils: Q = bars + dead coils = 3 + 1 = 4",
                        "coil 2: its top side has position 2, in slot 2; its bottom side lies 3 positions further,"
                                + " position 5 − 4 = 1, in slot 1",
                        "coil 2: its top lead lands on bar 1, its bottom lead on bar 1 − 1 = 0, that is 3",
                        "every further live coil moves one position and one bar on; after position 4 comes 1, after bar 3"
                                + " comes 1; a dead coil takes a position but no bar");
        assertThat(printed(e))
                .containsEntry("coil 1", "slots 1 and 4, no bars")
                .containsEntry("coil 2", "slots 2 and 1, bars 1 and 3");
        var forward = new TableExercise(3, Armature.of(4, 4, 2), LAP.withLeadOffset(2), 0);
        assertThat(forward.steps())
                .contains(
                        "coil 1: its top side has position 1, in slot 1; its bottom side lies 2 positions further,"
                                + " position 3, in slot 3",
                        "coil 1: its top lead lands on bar 1 + 2 = 3, its bottom lead on bar 3 + 1 = 4");
        // The last position and the last bar are reached without going round.
        var last = new TableExercise(
                3, Armature.of(4, 4, 2), LAP.withSpan(CoilSpan.ofThrow(3)).withLeadOffset(3), 0);
        assertThat(last.steps())
                .contains(
                        "coil 1: its top side has position 1, in slot 1; its bottom side lies 3 positions further,"
                                + " position 4, in slot 4",
                        "coil 1: its top lead lands on bar 1 + 3 = 4, its bottom lead on bar 4 + 1 = 5, that is 1");
        var back = new TableExercise(3, Armature.of(4, 4, 2), LAP_BACK.withLeadOffset(1), 0);
        assertThat(back.steps())
                .contains("coil 1: its top lead lands on bar 1 + 1 = 2, its bottom lead on bar 2 − 1 = 1");
    }

    // ---- can it be wound --------------------------------------------------------------------------------------------

    @Test
    void bothRulesBroken() {
        var e = new FeasibleExercise(2, Armature.of(7, 16, 4), WAVE);
        assertThat(e.question().get(0))
                .isEqualTo("Wished for: 7 slots, 16 bars, 4 poles; simplex wave winding, progressive, no dead coil.");
        assertThat(e.question().get(1))
                .endsWith(
                        "or both) and, where the pitch is not whole, the nearest numbers of bars, fewer and more, that"
                                + " the same winding can be stepped round.");
        assertThat(printed(e))
                .containsEntry("can it be wound", "no")
                .containsEntry(
                        "rules broken", "the coils do not fill the slots evenly and the commutator pitch is not whole")
                .containsEntry("bars that would do", "15 or 17")
                .hasSize(3);
        assertThat(e.steps().get(0)).isEqualTo("slots: 16 live coils over 7 slots: 16/7 = 2.2857, not whole");
        assertThat(e.steps())
                .hasSize(3)
                .anyMatch(s -> s.startsWith("the commutator pitch is not whole: commutator pitch would be 16/2 ± 1/2"))
                .anyMatch(s -> s.startsWith("the coils do not fill the slots evenly: 16 bars"));
    }

    @Test
    void nearestBarsGoInTheSameDirectionAndNotBelowTwoABrush() {
        // (K − 1)/3 whole: 4, 7, … bars; (K − 1)/3 of 2 or 1 bar makes no winding.
        var few = new FeasibleExercise(1, Armature.of(3, 3, 6), WindingSpec.wave(1, Direction.RETROGRESSIVE));
        assertThat(printed(few)).containsEntry("bars that would do", "4");
        // (K + 1)/3 whole: 2, 5, … bars.
        var forward = new FeasibleExercise(1, Armature.of(3, 3, 6), WAVE);
        assertThat(printed(forward)).containsEntry("bars that would do", "2 or 5");
        // (K ± 2)/2 whole: even numbers.
        var duplex = new FeasibleExercise(2, Armature.of(9, 9, 4), WindingSpec.wave(2, Direction.PROGRESSIVE));
        assertThat(printed(duplex)).containsEntry("bars that would do", "8 or 10");
    }

    @Test
    void whatCanBeWoundIsToldWithItsNumbers() {
        var e = new FeasibleExercise(3, Armature.of(8, 15, 4), WAVE.withDeadCoils(List.of(16)));
        assertThat(e.question().get(0)).endsWith(", progressive, 1 dead coil besides the live ones.");
        assertThat(printed(e))
                .containsEntry("can it be wound", "yes")
                .containsEntry("commutator pitch", "8 bars")
                .containsEntry("closed circuits", "1")
                .containsEntry("parallel paths", "2")
                .hasSize(4);
        assertThat(e.steps())
                .containsExactly(
                        "slots: 15 live coils and 1 dead, 16 coils over 8 slots: 16/8 = 2, whole",
                        "commutator pitch: yc = (K + m)/p = (15 + 1)/2 = 8 bars",
                        "closed circuits: gcd(K, yc) = gcd(15, 8) = 1",
                        "parallel paths: 2 × m = 2 × 1 = 2");
        var lap = new FeasibleExercise(1, Armature.of(7, 8, 4), LAP);
        assertThat(lap.question().get(1)).endsWith("evenly over the slots, or both).");
        assertThat(printed(lap))
                .containsEntry("rules broken", "the coils do not fill the slots evenly")
                .hasSize(2);
    }

    // ---- errors in lists --------------------------------------------------------------------------------------------

    private static ListErrorExercise list(int grade, Armature a, WindingSpec.Regular spec, ListedCoil... wrong) {
        List<ListedCoil> rows =
                new ArrayList<>(Winding.build(a, spec).asListed().coils());
        for (ListedCoil c : wrong) {
            rows.set(c.coil() - 1, c);
        }
        return new ListErrorExercise(grade, a, spec, rows);
    }

    @Test
    void exchangedLeadsOfALap() {
        // Coil n in slots n and n + 4, on bars n and n + 1: coils 3 and 6 with their bottom leads exchanged.
        ListErrorExercise e =
                list(1, Armature.of(8, 8, 2), LAP, ListedCoil.of(3, 3, 7, 3, 7), ListedCoil.of(6, 6, 2, 6, 4));
        assertThat(e.question())
                .startsWith(
                        "Meant: 8 slots, 8 bars, 2 poles; simplex lap winding, progressive; coil throw the pole pitch,"
                                + " rounded down to whole slots; slot 1 in line with bar 1.")
                .containsAll(Made.numbering())
                .hasSize(3);
        assertThat(e.answers())
                .containsExactly(
                        Answer.word("error", "swapped-leads:3,6", "swapped leads, coils 3 and 6"),
                        Answer.word("coil 3 should be", "3,7,3,4", "slots 3 and 7, bars 3 and 4"),
                        Answer.word("coil 6 should be", "6,2,6,7", "slots 6 and 2, bars 6 and 7"));
        assertThat(e.steps())
                .containsExactly(
                        "slots: every coil reaches 4 slots on, round past slot 8 to slot 1",
                        "top leads: coil by coil one bar on; bottom leads: top bar + 1, round past bar 8",
                        "coil 3: the list has slots 3 and 7, bars 3 and 7, the rule gives slots 3 and 7, bars 3 and 4",
                        "coil 6: the list has slots 6 and 2, bars 6 and 4, the rule gives slots 6 and 2, bars 6 and 7",
                        "the other 6 lines keep the rule; so: bottom lead exchanged with the bottom lead of coil 6: move"
                                + " it from bar 7 to bar 4");
        assertThat(e.table().orElseThrow().rows())
                .hasSize(8)
                .contains(List.of("3", "3", "7", "3", "7"), List.of("8", "8", "4", "8", "1"));
        assertThat(e.keyPicture()).isPresent();
    }

    @Test
    void aWrongSlotAmongSteppedCoilsTakenBackwards() {
        // Two coils a slot, spanning 5 positions: coil 3 from slot 2 to position 8 in slot 4.
        ListErrorExercise e = list(
                3, Armature.of(6, 12, 2), LAP_BACK.withSpan(CoilSpan.ofPositions(5)), ListedCoil.of(3, 2, 5, 3, 2));
        assertThat(e.question())
                .hasSize(2)
                .startsWith(
                        "Meant: 6 slots, 12 bars, 2 poles; simplex lap winding, all coils alike; throw, direction and"
                                + " lead throw as the list shows.");
        assertThat(e.answers().get(0).printed()).isEqualTo("wrong slot, coil 3");
        assertThat(e.steps())
                .containsExactly(
                        "slots: 2 coils to a slot; every coil reaches 5 positions on, round past slot 6 to slot 1",
                        "top leads: coil by coil one bar on; bottom leads: top bar − 1, round past bar 12",
                        "coil 3: the list has slots 2 and 5, bars 3 and 2, the rule gives slots 2 and 4, bars 3 and 2",
                        "the other 11 lines keep the rule; so: bottom side in slot 5 instead of slot 4");
        assertThat(list(1, Armature.of(19, 19, 2), LAP, ListedCoil.of(1, 1, 10, 2, 1))
                        .keyPicture())
                .isEmpty();
    }

    // ---- readings ---------------------------------------------------------------------------------------------------

    private static final Armature TWELVE = Armature.of(12, 12, 2);

    private static ReadingsExercise readings(
            int grade, WindingSpec.Regular spec, BenchTest test, Optional<Fault> fault, int... bars) {
        List<BenchTest.Pair> pairs = new ArrayList<>();
        for (int i = 0; i < bars.length; i += 2) {
            pairs.add(new BenchTest.Pair(bars[i], bars[i + 1]));
        }
        return new ReadingsExercise(grade, TWELVE, spec, 100, test, fault, pairs);
    }

    @Test
    void aDropTestWithAShortedCoil() {
        var e = readings(3, LAP, new BenchTest.Drop(1, 7, 4), Optional.of(new Fault.ShortedCoil(3)), 3, 4, 2, 3, 9, 10);
        assertThat(e.question())
                .containsExactly(
                        "Given: 12 slots, 12 bars, 2 poles; simplex lap winding, progressive; coil throw the pole pitch,"
                                + " rounded down to whole slots; slot 1 in line with bar 1; every coil has 100 mΩ, joints"
                                + " and bars nothing.",
                        "One thing is wrong: coil 3 shorted.",
                        "Drop test: 4 A of direct current in at bar 1 and out at bar 7. What does a millivoltmeter read"
                                + " between bars 3 and 4, bars 2 and 3 and bars 9 and 10, + probe on the bar named first?"
                                + " In mV, to one decimal, with its sign.");
        assertThat(e.answers()).extracting(Answer::printed).containsExactly("0.0 mV", "218.2 mV", "−181.8 mV");
        assertThat(e.asked()).containsExactly("bars 3 and 4, mV", "bars 2 and 3, mV", "bars 9 and 10, mV");
        assertThat(e.steps())
                .containsExactly(
                        "commutator pitch +1: the coils make 1 closed circuit of all 12 coils",
                        "from bar 1 to bar 7 one way: 6 coils (coils 1, 2, 3, 4, 5 and 6), one of them shorted, carry 4"
                                + " × 6/(5 + 6) = 2.1818 A",
                        "from bar 1 to bar 7 the other way: 6 coils (coils 12, 11, 10, 9, 8 and 7) carry 4 × 5/(6 + 5) ="
                                + " 1.8182 A",
                        "bars 3 and 4: through coil 3, of which one is shorted: nothing = 0.0 mV",
                        "bars 2 and 3: through coil 2: 1 × 100 × 2.1818 = 218.2 mV",
                        "bars 9 and 10: through coil 9: 1 × 100 × (−1.8182) = −181.8 mV");
        assertThat(e.picture()).isPresent();
    }

    @Test
    void aDropTestWithAnOpenCoil() {
        var e = readings(3, LAP, new BenchTest.Drop(1, 7, 4), Optional.of(new Fault.OpenCoil(10)), 10, 11, 6, 9);
        assertThat(e.answers()).extracting(Answer::printed).containsExactly("−2400.0 mV", "400.0 mV");
        assertThat(e.steps())
                .contains(
                        "from bar 1 to bar 7 one way: 6 coils (coils 1, 2, 3, 4, 5 and 6) carry all of the 4 A",
                        "from bar 1 to bar 7 the other way: 6 coils (coils 12, 11, 10, 9, 8 and 7), broken by the open"
                                + " coil, carry nothing",
                        "bars 10 and 11: the way past the open coil goes through from coil 9 to coil 11: 3 × 100 × 0 + 6 ×"
                                + " 100 × (−4) + 2 × 100 × 0 = −2400.0 mV",
                        "bars 6 and 9: through coils 6, 7 and 8: 1 × 100 × 4 + 2 × 100 × 0 = 400.0 mV");
        var broken = readings(3, LAP, new BenchTest.Drop(1, 7, 4), Optional.of(new Fault.OpenCoil(2)), 8, 9);
        assertThat(broken.steps())
                .contains(
                        "from bar 1 to bar 7 one way: 6 coils (coils 1, 2, 3, 4, 5 and 6), broken by the open coil, carry"
                                + " nothing",
                        "from bar 1 to bar 7 the other way: 6 coils (coils 12, 11, 10, 9, 8 and 7) carry all of the 4 A");
    }

    @Test
    void twoCircuitsAreFedAndReadEachByItself() {
        // Odd bars are one circuit of 6 coils, even bars the other.
        WindingSpec.Regular duplex = WindingSpec.lap(2, Direction.PROGRESSIVE);
        var drop = readings(2, duplex, new BenchTest.Drop(1, 7, 4), Optional.empty(), 2, 3, 2, 4, 3, 5);
        assertThat(drop.steps())
                .contains(
                        "commutator pitch +2: the coils make 2 closed circuits, each of 6 coils",
                        "bars 2 and 3: not both on the fed circuit, so the meter stays still: 0.0 mV",
                        "bars 2 and 4: not both on the fed circuit, so the meter stays still: 0.0 mV",
                        "bars 3 and 5: through coil 3: 1 × 100 × 2 = 200.0 mV");
        var ohms = readings(2, duplex, new BenchTest.Resistance(), Optional.empty(), 1, 2, 1, 5);
        assertThat(ohms.question())
                .endsWith("Nothing else is connected. What does a low-resistance ohmmeter read between bars 1 and 2 and"
                        + " bars 1 and 5? In mΩ, to one decimal; \"open\" where nothing joins the two.");
        assertThat(ohms.asked()).containsExactly("bars 1 and 2, mΩ", "bars 1 and 5, mΩ");
        assertThat(ohms.answers()).extracting(Answer::printed).containsExactly("open", "133.3 mΩ");
        assertThat(ohms.steps())
                .contains(
                        "bars 1 and 2: they belong to two of the separate circuits, so nothing joins them: open",
                        "bars 1 and 5: 2 coils one way, 4 coils the other; in parallel 100 × 2 × 4/(2 + 4) = 133.3 mΩ");
    }

    @Test
    void resistancesWithAFaultyCoil() {
        var shorted = readings(3, LAP, new BenchTest.Resistance(), Optional.of(new Fault.ShortedCoil(3)), 3, 4, 1, 5);
        assertThat(shorted.steps())
                .contains(
                        "bars 3 and 4: 1 coil one way, 11 coils the other, of which one is shorted; in parallel 100 × 0 ×"
                                + " 11/(0 + 11) = 0.0 mΩ",
                        "bars 1 and 5: 4 coils one way, 8 coils the other, of which one is shorted; in parallel 100 × 3 ×"
                                + " 8/(3 + 8) = 218.2 mΩ");
        var open = readings(3, LAP, new BenchTest.Resistance(), Optional.of(new Fault.OpenCoil(3)), 3, 4, 5, 6);
        assertThat(open.steps())
                .contains(
                        "bars 3 and 4: 1 coil one way, 11 coils the other, where one coil is open: 11 × 100 = 1100.0 mΩ",
                        "bars 5 and 6: 1 coil one way, 11 coils the other, where one coil is open: 1 × 100 = 100.0 mΩ");
    }

    /** Faces from 105° to 165° and from 195° to 255°; slot 1 at 90°, each coil spanning 180°. */
    @Test
    void theGrowlerIsWorkedOutByTheFluxEnclosed() {
        var e = readings(2, LAP, new BenchTest.GrowlerWalked(Growler.USUAL, 90), Optional.empty(), 1, 2, 4, 5, 3, 1);
        assertThat(e.question())
                .startsWith("Given: 12 slots, 12 bars, 2 poles; simplex lap winding, progressive; coil throw the pole"
                        + " pitch, rounded down to whole slots; slot 1 in line with bar 1.")
                .endsWith(
                        "Growler: two faces, each 60° wide, their middles at 135° and 225° clockwise from straight up;"
                                + " the flux goes in through one and out through the other. Slot 1 stands at 90°. A coil through"
                                + " which the whole flux of one face goes reads 1. What does the meter read between bars 1 and 2,"
                                + " bars 4 and 5 and bars 3 and 1? To two decimals, without sign.");
        assertThat(e.asked()).containsExactly("bars 1 and 2", "bars 4 and 5", "bars 3 and 1");
        assertThat(e.steps())
                .containsExactly(
                        "commutator pitch +1: the coils make 1 closed circuit of all 12 coils",
                        // From 90° to 270° both faces lie within: one in, one out.
                        "bars 1 and 2: coil 1 with sides at 90° and 270° encloses 0 → 0.00",
                        // From 180° to 0° only the left face does.
                        "bars 4 and 5: coil 4 with sides at 180° and 0° encloses −1 → 1.00",
                        // Coil 2 from 120°: three quarters of the right face and all of the left.
                        "bars 3 and 1: coil 2 with sides at 120° and 300°, passed backwards, encloses 0.25; coil 1 with"
                                + " sides at 90° and 270°, passed backwards, encloses 0; in sum, without sign, → 0.25");
    }

    // ---- faults -----------------------------------------------------------------------------------------------------

    private static final Armature EIGHT = Armature.of(8, 8, 2);

    private static FaultExercise fault(int grade, BenchTest test, Fault... faults) {
        return new FaultExercise(grade, EIGHT, LAP, 100, test, List.of(faults));
    }

    private static List<String> column(FaultExercise e) {
        return e.table().orElseThrow().rows().stream().map(r -> r.get(1)).toList();
    }

    @Test
    void anOpenCoilInADropTest() {
        FaultExercise e = fault(1, new BenchTest.Drop(1, 5, 8), new Fault.OpenCoil(3));
        assertThat(e.question())
                .containsExactly(
                        "Given: 8 slots, 8 bars, 2 poles; simplex lap winding, progressive; coil throw the pole pitch,"
                                + " rounded down to whole slots; slot 1 in line with bar 1; every sound coil has 100 mΩ.",
                        "Drop test, 8 A in at bar 1 and out at bar 5, + probe on the bar named first. The readings of all"
                                + " neighbouring bars are in the table.",
                        "One fault is there, one of these: a coil open, a coil shorted, two neighbouring bars joined."
                                + " Which, and where? If the readings do not tell some of them apart, name them all.");
        assertThat(e.table().orElseThrow().heads()).containsExactly("Bars", "mV");
        assertThat(e.table().orElseThrow().rows().get(7)).containsExactly("8–1", "−800.0");
        // All of the 8 A goes through coils 8 to 5; the break has the drop of all four.
        assertThat(column(e)).startsWith("0.0", "0.0", "3200.0", "0.0", "−800.0");
        assertThat(e.answers()).containsExactly(Answer.word("fault", "open-coil:3", "coil 3 open"));
        assertThat(e.steps())
                .containsExactly(
                        "from bar 1 to bar 5 one way: 4 coils (coils 1, 2, 3 and 4) carry 8 × 4/(4 + 4) = 4 A",
                        "from bar 1 to bar 5 the other way: 4 coils (coils 8, 7, 6 and 5) carry 8 × 4/(4 + 4) = 4 A",
                        "a sound winding would read: from 1–2 to 4–5: 400.0, from 5–6 to 8–1: −400.0 mV",
                        "every pair reads otherwise than that; most so 3–4 (400.0 → 3200.0)",
                        "coil 3 open: it lies between bars 3 and 4; no current flows in its way from feed to feed, all of"
                                + " it in the other, and whatever pair spans the break reads the whole drop from there"
                                + " round",
                        // With coil 5 open instead, bars 3 and 4 read 800, and bars 5 and 6 −3200.
                        "put to the test: coil 3 open gives every reading of the table; the next like it, coil 5 open,"
                                + " would be off by 2400.0 mV at some pair");
        assertThat(e.picture()).isPresent();
        assertThat(e.keyPicture()).isPresent();
    }

    @Test
    void crossedLeadsChangeOnlyThePairsBesideThem() {
        FaultExercise e = fault(3, new BenchTest.Drop(1, 5, 8), new Fault.CrossedLeads(6, 7, Fault.Leads.BOTH));
        assertThat(e.question().get(2))
                .contains("joined, half the turns of a coil shorted, a bad joint that adds as much as a coil has, top"
                        + " leads, bottom leads or all leads of two neighbouring bars crossed. Which");
        assertThat(column(e)).endsWith("−800.0", "400.0", "−800.0", "−400.0");
        assertThat(e.answers().get(0).value()).isEqualTo("crossed-leads:6,7,both");
        assertThat(e.steps())
                .contains(
                        "otherwise than that read: 5–6 (−400.0 → −800.0), 6–7 (−400.0 → 400.0), 7–8 (−400.0 → −800.0)",
                        "all leads of bars 6 and 7 crossed: the coils there reach bar 7 instead of bar 6 and the other way"
                                + " round, so that pairs beside them span a coil more or a coil less, and a pair between"
                                + " may change its sign");
    }

    @Test
    void aShortedCoilAndItsBarsAreOne() {
        FaultExercise e = fault(1, new BenchTest.Resistance(), new Fault.ShortedCoil(3), new Fault.BarShort(3, 4));
        assertThat(e.question().get(1))
                .isEqualTo(
                        "Ohmmeter from bar to bar, nothing else connected. The readings of all neighbouring bars are in"
                                + " the table.");
        assertThat(e.table().orElseThrow().heads()).containsExactly("Bars", "mΩ");
        // One of seven beside six.
        assertThat(column(e)).startsWith("85.7", "85.7", "0.0", "85.7");
        assertThat(e.answers().get(0).printed()).isEqualTo("coil 3 shorted, or bars 3 and 4 joined");
        assertThat(e.answers().get(0).value()).isEqualTo("shorted-coil:3 bar-short:3,4");
        assertThat(e.steps())
                .contains(
                        "a sound winding would read: from 1–2 to 8–1: 87.5 mΩ",
                        "coil 3 shorted: it lies between bars 3 and 4; a coil without resistance drops nothing, and its"
                                + " way takes more of the current",
                        "bars 3 and 4 joined: bars 3 and 4 stand at one potential, so the pair reads 0, whatever coils lie"
                                + " between");
        assertThat(e.picture()).isPresent();
    }

    @Test
    void partFaultsAreToldWithWhatIsLeft() {
        FaultExercise turns = fault(2, new BenchTest.Resistance(), new Fault.ShortedTurns(3, 0.5));
        assertThat(turns.question().get(2))
                .contains(
                        "joined, half the turns of a coil shorted, a bad joint that adds as much as a coil has. Which");
        // 50 beside 700; 100 beside 650.
        assertThat(column(turns)).startsWith("86.7", "86.7", "46.7", "86.7");
        assertThat(turns.answers().get(0).value()).isEqualTo("shorted-turns:3,50%");
        assertThat(turns.steps())
                .contains(
                        "every pair reads otherwise than that; most so 3–4 (87.5 → 46.7)",
                        "coil 3 with 50 % of its turns shorted: it lies between bars 3 and 4; it has 100 × 0.5 = 50 mΩ"
                                + " left, and drops less than its neighbours in series");
        FaultExercise joint = fault(2, new BenchTest.Resistance(), new Fault.HighResistance(3, 100));
        assertThat(joint.answers().get(0).printed()).isEqualTo("bad joint at coil 3 that adds 100 mΩ");
        assertThat(joint.answers().get(0).value()).isEqualTo("high-resistance:3,100 mohm");
        assertThat(joint.steps())
                .contains(
                        "bad joint at coil 3 that adds 100 mΩ: it lies between bars 3 and 4; with the joint it has 100 +"
                                + " 100 = 200 mΩ, and drops more than its neighbours in series");
        FaultExercise open = fault(2, new BenchTest.Resistance(), new Fault.OpenCoil(3));
        assertThat(open.steps())
                .contains(
                        "coil 3 open: it lies between bars 3 and 4; between bars that it parts the only way left is the"
                                + " long one round");
        FaultExercise top = fault(3, new BenchTest.Resistance(), new Fault.CrossedLeads(6, 7, Fault.Leads.TOP));
        assertThat(top.steps()).anyMatch(s -> s.endsWith("span a coil more or a coil less"));
    }

    // ---- places -----------------------------------------------------------------------------------------------------

    @Test
    void brushesOfALapWithTwoCoilsASlot() {
        var e = new PlacesExercise(2, Armature.of(12, 24, 6), LAP_BACK);
        assertThat(e.question().get(1)).contains("Where do the 6 brushes stand").contains("touch if it is 1 bar wide?");
        assertThat(printed(e))
                .containsEntry("brush 1 stands at", "30.0°")
                .containsEntry("brush 1 touches", "bar 3")
                .containsEntry("least number of brushes", "6")
                .containsEntry("equalizer pitch", "8 bars")
                .containsEntry("rings", "8")
                .containsEntry("ring of bar 1", "bars 1, 9 and 17");
        assertThat(e.steps())
                .containsExactly(
                        "slot angle 360°/12 = 30°, bar angle 360°/24 = 15°, pole pitch 360°/6 = 60°",
                        // −7.5° lies 37.5° before the middle of the coil, and that is 22.5° beyond a pole pitch before.
                        "coil 1: sides in slots 1 and 3, middle at 30°; top lead on bar 1 at 0°, bottom lead 1 bar back at"
                                + " −15°; middle between the two −7.5°, that is 22.5° from the coil's own middle, but for"
                                + " whole pole pitches",
                        "coil 2: sides in slots 1 and 3, middle at 30°; top lead on bar 2 at 15°, bottom lead 1 bar back at"
                                + " 0°; middle between the two 7.5°, that is 37.5° from the coil's own middle, but for"
                                + " whole pole pitches",
                        "the 2 coils of a slot share the brushes: their mean is 30°",
                        "from pole centre to pole centre on: brush 1 at 0° + 30° = 30.0°, brush 2 at 60° + 30° = 90.0°,"
                                + " brush 3 at 120° + 30° = 150.0°, brush 4 at 180° + 30° = 210.0°, brush 5 at 240° + 30° ="
                                + " 270.0°, brush 6 at 300° + 30° = 330.0°",
                        "bars: brush 1 stands at 3, counted in bars from the middle of bar 1 as 1; half a bar counts to"
                                + " either side of every bar, and half of 1 for the brush",
                        "least number: a lap winding needs a brush for every pole",
                        "equalizers: equalizers are possible and advised for 6 paths: they join bars K/p = 8 apart, 3 taps"
                                + " on each of up to 8 rings");
    }

    @Test
    void brushesOfAWaveStandBeforeThePoles() {
        var e = new PlacesExercise(1, Armature.of(7, 7, 4), WAVE);
        // Coil 1 in slots 1 and 2; yc = 4, 4 × 51.429° − 180° = 25.714°: bars and coil have one middle, 12.857° less
        // 25.714°.
        assertThat(e.steps())
                .contains(
                        "coil 1: sides in slots 1 and 2, middle at 25.714°; top lead on bar 1 at 0°, bottom lead 4 bars on"
                                + " at 205.71° less a pole pair, 180°, as brushes of one kind are joined: 25.714°; middle"
                                + " between the two 12.857°, that is −12.857° from the coil's own middle",
                        "from pole centre to pole centre on: brush 1 at 0° − 12.857° + 360° = 347.1°, brush 2 at 90° −"
                                + " 12.857° = 77.1°, brush 3 at 180° − 12.857° = 167.1°, brush 4 at 270° − 12.857° ="
                                + " 257.1°",
                        "bars: brush 1 stands at 0.75, counted in bars from the middle of bar 1 as 1; half a bar counts to"
                                + " either side of every bar, and half of 1 for the brush",
                        "least number: a wave winding joins all coils under poles of one kind, so one + and one − brush"
                                + " will do",
                        "equalizers: a simplex wave has two paths only and needs no equalizers")
                .noneMatch(s -> s.contains("share the brushes"));
        assertThat(printed(e))
                .containsEntry("brush 1 touches", "bars 7 and 1")
                .containsEntry("least number of brushes", "2")
                .containsEntry("ring of bar 1", "none");
        assertThat(e.keyPicture()).isPresent();
        assertThat(new PlacesExercise(1, Armature.of(12, 36, 4), LAP).keyPicture())
                .isEmpty();
    }

    // ---- wire -------------------------------------------------------------------------------------------------------

    private static WireExercise wire(int grade, int inHand, double bare) {
        return new WireExercise(
                grade,
                Armature.of(12, 24, 4),
                LAP,
                bare,
                0.6,
                inHand,
                10,
                400,
                new CoreSize(50, 80, 12, 0),
                new EndTurn.Diamond(10, 45, 15),
                new SlotShape.Rectangular(6.5, 12),
                new SlotInsulation(0.25, 0.3, 1),
                80);
    }

    @Test
    void aCoilAlone() {
        WireExercise e = wire(1, 1, 0.5);
        assertThat(e.question())
                .containsExactly(
                        "Given: 12 slots, 24 bars, 4 poles; 10 turns a coil of round copper wire, 0.5 mm bare, 0.6 mm over"
                                + " the enamel; mean turn 400 mm; leads left out.",
                        "Copper at 20 °C has 1/58 Ω·mm²/m.",
                        "Work out, to three significant figures: the copper area of one turn in mm², the length of one coil"
                                + " in m and the resistance of one coil at 20 °C in mΩ.");
        assertThat(e.steps())
                .containsExactly(
                        "copper area: π/4 × 0.5² = 0.19635 mm²",
                        "length of a coil: 10 × 400 mm = 4 m",
                        "resistance of a coil: 4/(58 × 0.19635) = 0.35124 Ω = 351.24 mΩ");
        assertThat(e.answers()).extracting(Answer::printed).containsExactly("0.196 mm²", "4.00 m", "351 mΩ");
        // From 1 ohm on in ohms.
        assertThat(wire(1, 1, 0.25).answers().get(2).printed()).isEqualTo("1.40 Ω");
    }

    @Test
    void anArmatureAndItsSlots() {
        WireExercise e = wire(2, 1, 0.5);
        assertThat(e.question())
                .containsExactly(
                        "Given: 12 slots, 24 bars, 4 poles; simplex lap winding, progressive; 10 turns a coil of round"
                                + " copper wire, 0.5 mm bare, 0.6 mm over the enamel; mean turn 400 mm; leads left out.",
                        "The slots have parallel walls: 6.5 mm wide, 12 mm deep, lined with 0.25 mm on floor and walls, a"
                                + " separator of 0.3 mm between the layers, 1 mm at the top for the wedge.",
                        "Copper at 20 °C has 1/58 Ω·mm²/m, at other temperatures (234.5 + t)/(234.5 + 20) times as much;"
                                + " slot fill is the squares round all wires over the room that insulation leaves.",
                        "Work out, to three significant figures: the copper area of one turn in mm², the length of one coil"
                                + " in m, the resistance of one coil at 20 °C in mΩ, the armature resistance at 80 °C in mΩ"
                                + " and the slot fill in %.");
        assertThat(e.steps().subList(3, 8))
                .containsExactly(
                        "warm: (234.5 + 80)/(234.5 + 20) = 1.2358 times as much, 434.05 mΩ a coil",
                        "armature: 4 paths of 24/4 = 6 coils in parallel: 434.05 × 24/4² = 651.07 mΩ",
                        "room in a slot: (6.5 − 2 × 0.25) × (12 − 0.25 − 0.3 − 1) = 62.7 mm²",
                        "wires in a slot: 2 layers × 2 coil sides × 10 turns = 40; squares: 40 × 0.6² = 14.4 mm²",
                        "slot fill: 14.4/62.7 = 22.967 %");
        assertThat(e.steps()).hasSize(8);
    }

    @Test
    void meanTurnAndMassFromTheCore() {
        WireExercise e = wire(3, 2, 0.5);
        assertThat(e.question().get(0))
                .contains("0.6 mm over the enamel; ")
                .contains("10 turns a coil of round copper wire, 2 in hand, 0.5 mm bare")
                .endsWith(
                        "coil throw 1–4, core 50 mm long and 80 mm across, slots 12 mm deep; formed coils: straight part"
                                + " out of each slot 10 mm, legs along the slot pitch circle at 45° to the end face, nose 15 mm;"
                                + " leads left out.");
        assertThat(e.question().get(2)).endsWith("leaves; copper weighs 8.89 g/cm³.");
        // The circle has 80 − 12 mm; 3 of 12 slots are a quarter of it.
        assertThat(e.steps())
                .startsWith(
                        "slot pitch circle: 80 − 12 = 68 mm; over 3 of 12 slots an arc of π × 68 × 3/12 = 53.407 mm",
                        "one end turn: 2 × 10 + 53.407/cos 45° + 15 = 110.53 mm",
                        "mean turn: 2 × 50 + 2 × 110.53 = 321.06 mm",
                        "copper area: 2 × π/4 × 0.5² = 0.3927 mm²",
                        "length of a coil: 10 × 321.06 mm = 3.2106 m")
                .contains(
                        "wires in a slot: 2 layers × 2 coil sides × 10 turns × 2 in hand = 80; squares: 80 × 0.6² = 28.8"
                                + " mm²")
                .endsWith("copper: 24 coils × 3.2106 m × 0.3927 mm² × 8.89/1000 = 0.269 kg");
        assertThat(e.answers().get(0).printed()).isEqualTo("321 mm");
        assertThat(printed(e))
                .containsEntry("copper in the armature", "0.269 kg")
                .hasSize(7);
    }
}
