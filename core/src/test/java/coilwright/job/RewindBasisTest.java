package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.Conductor;
import coilwright.winding.WindingType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a job tells of its copper, and what it leaves open. */
class RewindBasisTest {
    private static final String WHOLE = """
            coilwright: 1
            title: Orchard pump dynamo
            armature: {slots: 17, bars: 17, poles: 4}
            winding: {type: wave, throw: 4, turns: 6, coilResistance: 0.08 ohm}
            rating: {kind: dc-generator, volts: 12 V, current: 3 A, speed: 3000 rpm}
            wire: {size: 0.56 mm, insulation: iec-grade-2}
            core: {meanTurn: 200 mm, leads: 60 mm, slot: {shape: round-bottom, width: 3.2 mm, depth: 5 mm}}
            """;

    private static Job job(String text) {
        try {
            return JobReader.parse("job.yaml", text);
        } catch (BadInputException e) {
            throw new AssertionError(e);
        }
    }

    private static RewindBasis basis(String text) {
        return RewindBasis.of(job(text));
    }

    @Test
    void allOfIt() {
        RewindBasis basis = basis(WHOLE);
        assertThat(basis.missing()).isEmpty();
        var coil = basis.coil().orElseThrow();
        assertThat(coil.turns()).isEqualTo(6);
        assertThat(coil.leadsMm()).isEqualTo(60);
        // Six turns of 200 mm and the leads.
        assertThat(coil.lengthM()).isCloseTo(1.26, within(1e-12));
        var copper = basis.copper().orElseThrow();
        assertThat(copper.woundCoils()).isEqualTo(17);
        assertThat(copper.liveCoils()).isEqualTo(17);
        assertThat(copper.paths()).isEqualTo(2);
        assertThat(basis.slot().orElseThrow().sidesPerLayer()).isEqualTo(1);
        var machine = basis.machine().orElseThrow();
        assertThat(machine.poles()).isEqualTo(4);
        assertThat(machine.volts()).isEqualTo(12);
        assertThat(machine.rpm()).isEqualTo(3000);
        assertThat(machine.amps()).hasValue(3);
        assertThat(machine.slot()).isEqualTo(basis.slot());
        assertThat(basis.isOneCoilABar()).isTrue();
    }

    @Test
    void nothingOfIt() {
        RewindBasis basis = basis("""
                coilwright: 1
                title: Bare
                armature: {slots: 17, bars: 17, poles: 4}
                winding: {type: wave}
                """);
        assertThat(basis.coil()).isEmpty();
        assertThat(basis.copper()).isEmpty();
        assertThat(basis.slot()).isEmpty();
        assertThat(basis.machine()).isEmpty();
        assertThat(basis.missing())
                .containsExactly(
                        "turns per coil: winding.turns",
                        "wire: wire.size with wire.insulation, or wire.strip",
                        "mean turn: core.meanTurn as measured, or core.length, core.diameter, core.slot and core.endTurn",
                        "leads: core.leads; taken as nothing",
                        "section of a slot: core.slot",
                        "rated voltage and speed: rating.volts and rating.speed",
                        "armature current: rating.current");
        assertThat(basis.redesign(Plan.same())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                ", turns: 6 | turns per coil: winding.turns | no",
                "wire: {size: 0.56 mm, insulation: iec-grade-2} | wire: wire.size with wire.insulation, or wire.strip | no",
                "meanTurn: 200 mm, | mean turn: core.meanTurn as measured, or core.length, core.diameter, core.slot and"
                        + " core.endTurn | no",
                ", leads: 60 mm | leads: core.leads; taken as nothing | yes",
                "volts: 12 V, | rated voltage and speed: rating.volts and rating.speed | no",
                ", speed: 3000 rpm | rated voltage and speed: rating.volts and rating.speed | no",
                "current: 3 A, | armature current: rating.current | yes",
                ", insulation: iec-grade-2 | covering of the wire: wire.insulation or wire.overall | yes",
            })
    void oneThingLeftOut(String key, String missing, String machine) {
        RewindBasis basis = basis(WHOLE.replace(key, ""));
        assertThat(basis.missing()).containsExactly(missing);
        assertThat(basis.machine().isPresent()).isEqualTo(machine.equals("yes"));
    }

    @Test
    void twoCoilsShareASlot() {
        RewindBasis basis = basis(WHOLE.replace("bars: 17", "bars: 33")
                .replace("type: wave, throw: 4", "type: wave, throw: 4, deadCoils: [34]"));
        assertThat(basis.slot().orElseThrow().sidesPerLayer()).isEqualTo(2);
        assertThat(basis.copper().orElseThrow().woundCoils()).isEqualTo(34);
        assertThat(basis.copper().orElseThrow().liveCoils()).isEqualTo(33);
        assertThat(basis.isOneCoilABar()).isTrue();
        var frogLeg = basis(
                WHOLE.replace("slots: 17, bars: 17", "slots: 16, bars: 16").replace("type: wave", "type: frog-leg"));
        assertThat(frogLeg.isOneCoilABar()).isFalse();
        assertThat(frogLeg.copper().orElseThrow().paths()).isEqualTo(8);
    }

    /** A turn over the slots that the coil spans: two straight parts of 62 mm and two strings across the end. */
    @Test
    void theThrowOfTheWindingMakesTheTurn() {
        String reckoned = WHOLE.replace(
                "meanTurn: 200 mm,",
                "length: 62 mm, diameter: 34 mm, slotDepth: 5 mm, endTurn: {form: hand-wound, straight: 5 mm},");
        double string = 29 * Math.sin(Math.PI * 4 / 17);
        assertThat(basis(reckoned).coil().orElseThrow().lengthM())
                .isCloseTo(6 * 2 * (0.062 + 0.010 + string / 1000) + 0.06, within(1e-9));
        // Stepped coils: 7 positions of 2 to a slot, 3.5 slots on the mean, taken as 4.
        String stepped =
                reckoned.replace("bars: 17", "bars: 34").replace("type: wave, throw: 4", "type: lap, backSpan: 7");
        assertThat(basis(stepped).coil().orElseThrow().lengthM())
                .isEqualTo(basis(reckoned).coil().orElseThrow().lengthM());
        // A list without even pitches: spans of 5, 3 and, the shorter way, 4 slots.
        String listed = reckoned.replace(
                "type: wave, throw: 4",
                "type: listed, coils: [{coil: 1, topSlot: 1, bottomSlot: 6, topBar: 1, bottomBar: 2}, {coil: 2, topSlot: 2,"
                        + " bottomSlot: 5, topBar: 2, bottomBar: 3}, {coil: 3, topSlot: 16, bottomSlot: 12, topBar: 3,"
                        + " bottomBar: 1}]");
        assertThat(basis(listed).coil().orElseThrow().lengthM())
                .isEqualTo(basis(reckoned).coil().orElseThrow().lengthM());
    }

    private static Plan plan(String keys) {
        return job(WHOLE + "plan: {" + keys + "}\n").particulars().plan().orElseThrow();
    }

    @Test
    void whatThePlanAsksFor() {
        RewindBasis basis = basis(WHOLE);
        assertThat(basis.redesign(plan("volts: 24 V"))
                        .orElseThrow()
                        .after()
                        .copper()
                        .coil()
                        .turns())
                .isEqualTo(12);
        assertThat(basis.redesign(plan("speed: 6000 rpm"))
                        .orElseThrow()
                        .after()
                        .copper()
                        .coil()
                        .turns())
                .isEqualTo(3);
        assertThat(basis.redesign(plan("turns: 8"))
                        .orElseThrow()
                        .after()
                        .copper()
                        .coil()
                        .turns())
                .isEqualTo(8);
        Conductor thick = basis.redesign(plan("wire: {size: 0.8 mm, insulation: iec-grade-2}"))
                .orElseThrow()
                .after()
                .copper()
                .coil()
                .conductor();
        assertThat(thick.label()).startsWith("0.800 mm");
        // A lap winding on four poles has four paths, and so twice the turns for the same voltage.
        var lap = basis.redesign(plan("type: lap")).orElseThrow();
        assertThat(lap.after().copper().paths()).isEqualTo(4);
        assertThat(lap.after().copper().coil().turns()).isEqualTo(12);
    }

    @Test
    void anotherWindingOnTheSameCore() {
        RewindBasis basis = basis(WHOLE);
        assertThat(basis.other(Plan.same())).isEmpty();
        assertThat(basis.other(plan("type: lap")).orElseThrow().candidate().plex())
                .isEqualTo(1);
        assertThat(basis.other(plan("type: lap, plex: 2"))
                        .orElseThrow()
                        .candidate()
                        .plex())
                .isEqualTo(2);
        for (String direction : new String[] {"progressive", "retrogressive"}) {
            assertThat(basis.other(plan("type: wave, direction: " + direction))
                            .orElseThrow()
                            .candidate()
                            .direction()
                            .word())
                    .isEqualTo(direction);
        }
        assertThatThrownBy(() -> basis.other(plan("type: wave, plex: 2, direction: progressive")))
                .hasMessage(
                        "no progressive wave winding of plex 2 fits 17 slots and 17 bars on 4 poles: rules lists those"
                                + " that do");
        RewindBasis frogLeg = basis(
                WHOLE.replace("slots: 17, bars: 17", "slots: 16, bars: 16").replace("type: wave", "type: frog-leg"));
        assertThatThrownBy(() -> frogLeg.other(plan("type: lap")))
                .hasMessage(
                        "the armature has 32 live coils on 16 bars, but a lap winding has one coil a bar: write a job"
                                + " file of its own for it");
    }

    @Test
    void theJobAsItIsToBeWound() {
        Job same = job(WHOLE);
        assertThat(basis(WHOLE).planned(same)).isEqualTo(same);
        Job twice = job(WHOLE + "plan: {volts: 24 V}\n");
        Job planned = RewindBasis.of(twice).planned(twice);
        assertThat(planned.turns()).hasValue(12);
        assertThat(planned.coilResistance()).isEmpty();
        assertThat(planned.winding()).isEqualTo(twice.winding());
        assertThat(planned.particulars()).isEqualTo(twice.particulars());
        Job wire = job(WHOLE + "plan: {wire: {size: 0.8 mm, insulation: iec-grade-2}}\n");
        Job thicker = RewindBasis.of(wire).planned(wire);
        assertThat(thicker.particulars().wire())
                .isEqualTo(wire.particulars().plan().orElseThrow().wire());
        assertThat(thicker.coilResistance()).isEmpty();
        assertThat(thicker.turns()).hasValue(6);
        Job lap = job(WHOLE + "plan: {type: lap, turns: 6}\n");
        Job asLap = RewindBasis.of(lap).planned(lap);
        assertThat(asLap.winding().type()).isEqualTo(WindingType.LAP);
        assertThat(asLap.turns()).hasValue(6);
        assertThat(asLap.coilResistance()).isEqualTo(lap.coilResistance());
        // Neither rating nor turns known: the turns stay open.
        Job bare = job(WHOLE.replace(", turns: 6", "").replace("volts: 12 V, ", "") + "plan: {turns: 9}\n");
        assertThat(RewindBasis.of(bare).planned(bare).turns()).hasValue(9);
        Job open = job(WHOLE.replace(", turns: 6", "") + "plan: {volts: 24 V}\n");
        assertThat(RewindBasis.of(open).planned(open)).isEqualTo(open);
    }
}
