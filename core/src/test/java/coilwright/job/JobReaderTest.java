package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.Growler;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobReaderTest {
    private static final String FULL = """
            coilwright: 1
            title: Orchard pump dynamo
            armature: {slots: 17, bars: 17, poles: 4, slotOneInLineWith: mica}
            winding:
              type: wave
              plex: 1
              direction: retrogressive
              throw: 4
              deadCoils: []
              leadOffset: -2
              turns: 6
              coilResistance: 0.080 ohm
              coils: []
            growler: {halfGap: 40, face: 52.5}
            """;

    @TempDir
    private Path temp;

    @Test
    void readsEveryField() throws Exception {
        Job job = JobReader.parse("full.yaml", FULL);
        assertThat(job.title()).isEqualTo("Orchard pump dynamo");
        assertThat(job.armature().slots()).isEqualTo(17);
        assertThat(job.armature().slotOneInLineWith()).isEqualTo(SlotAlignment.MICA);
        assertThat(job.winding())
                .isEqualTo(new WindingSpec.Regular(
                        WindingType.WAVE, 1, Direction.RETROGRESSIVE, CoilSpan.ofThrow(4), List.of(), -2));
        assertThat(job.turns()).hasValue(6);
        assertThat(job.coilResistance()).contains(new Quantity(new BigDecimal("0.080"), "ohm"));
        assertThat(job.growler()).isEqualTo(new Growler(40, 52.5));
    }

    @Test
    void whatIsNotGivenIsTheUsual() throws Exception {
        Job job = JobReader.parse(
                "x", "{coilwright: 1, title: T, armature: {slots: 9, bars: 9, poles: 2}, winding: {type: lap}}");
        assertThat(job.armature().slotOneInLineWith()).isEqualTo(SlotAlignment.BAR);
        assertThat(job.winding())
                .isEqualTo(new WindingSpec.Regular(
                        WindingType.LAP, 1, Direction.PROGRESSIVE, CoilSpan.usual(), List.of(), 0));
        assertThat(job.turns()).isEmpty();
        assertThat(job.coilResistance()).isEmpty();
        assertThat(job.growler()).isEqualTo(new Growler(45, 60));
    }

    @Test
    void takesAByteOrderMarkAndWindowsLineEnds() throws Exception {
        Path file = Files.writeString(temp.resolve("w.yaml"), "\uFEFF" + FULL.replace("\n", "\r\n"));
        assertThat(JobReader.read(file)).isEqualTo(JobReader.parse("x", FULL));
    }

    @Test
    void takesJsonSetInWithTabs() throws Exception {
        String json = """
                {
                \t"coilwright": 1,
                \t"title": "T: # 1",
                \t"armature": {
                \t\t"slots": 9, "bars": 9, "poles": 2
                \t},
                \t"winding": {"type": "lap", "coilResistance": "2 ohm"}
                }
                """;
        Job job = JobReader.parse("x.json", json);
        assertThat(job.title()).isEqualTo("T: # 1");
        assertThat(job.armature().slots()).isEqualTo(9);
    }

    @Test
    void readsAListedWindingWithLeadsOnNoBar() throws Exception {
        Job job = JobReader.parse("x", """
                coilwright: 1
                title: Found
                armature: {slots: 3, bars: 3, poles: 2}
                winding:
                  type: listed
                  coils:
                    - {coil: 1, topSlot: 1, bottomSlot: 2, topBar: 1, bottomBar: 2}
                    - {coil: 2, topSlot: 2, bottomSlot: 3, topBar: null, bottomBar: 3}
                    - {coil: 3, topSlot: 3, bottomSlot: 1}
                """);
        assertThat(job.winding())
                .isEqualTo(new WindingSpec.Listed(List.of(
                        ListedCoil.of(1, 1, 2, 1, 2),
                        new ListedCoil(2, 2, 3, OptionalInt.empty(), OptionalInt.of(3)),
                        ListedCoil.dead(3, 3, 1))));
    }

    @Test
    void readsASteppedFrogLeg() throws Exception {
        Job job = JobReader.parse("x", """
                coilwright: 1
                title: Frog
                armature: {slots: 24, bars: 48, poles: 4}
                winding: {type: frog-leg, plex: 2, backSpan: 11, leadOffset: +3, deadCoils: []}
                """);
        assertThat(job.winding())
                .isEqualTo(new WindingSpec.FrogLeg(2, Direction.PROGRESSIVE, CoilSpan.ofPositions(11), 3));
    }

    @Test
    void anImpossibleWindingReadsButDoesNotBuild() throws Exception {
        Job job = JobReader.parse(
                "x", "{coilwright: 1, title: T, armature: {slots: 24, bars: 24, poles: 4}, winding: {type: wave}}");
        assertThatThrownBy(job::build)
                .isInstanceOf(ImpossibleWindingException.class)
                .hasMessageContaining("commutator pitch would be 24/2 ± 1/2, not whole");
    }
}
