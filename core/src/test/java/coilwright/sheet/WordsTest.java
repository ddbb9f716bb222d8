package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values and windings in the words of a sheet. */
class WordsTest {
    private static Job job(String more) {
        try {
            return JobReader.parse("t.yaml", """
                    coilwright: 1
                    title: T
                    armature: {slots: 12, bars: 12, poles: 2}
                    winding: {type: lap}
                    """ + more);
        } catch (BadInputException e) {
            throw new IllegalArgumentException(e.problems().toString(), e);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{size: 0.5 mm, insulation: iec-grade-2} | 0.5 mm, grade 2",
                "{size: 18 AWG, insulation: nema-heavy, inHand: 1} | 18 AWG, heavy build, one in hand",
                "{size: 18 AWG, insulation: nema-heavy, inHand: 3} | 18 AWG, heavy build, 3 in hand",
                "{size: 0.5 mm, overall: 0.56 mm} | 0.5 mm, 0.56 mm over the covering",
                "{strip: {width: 4 mm, thickness: 1.5 mm}} | strip 4 mm × 1.5 mm",
                "{strip: {width: 4 mm, thickness: 1.5 mm, corner: 0.3 mm, covering: 0.1 mm}}"
                        + " | strip 4 mm × 1.5 mm, corners 0.3 mm, covering 0.1 mm a side"
            })
    void wireIsToldWithAllThatIsKnown(String yaml, String words) {
        assertThat(Written.wire(job("wire: " + yaml + "\n").particulars().wire().orElseThrow()))
                .isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{shape: rectangular, width: 6 mm, depth: 20 mm} | rectangular, 20 mm deep, 6 mm wide",
                "{shape: round-bottom, width: 6 mm, depth: 20 mm} | round bottom, 20 mm deep, 6 mm wide",
                "{shape: parallel-tooth, topWidth: 6 mm, bottomWidth: 4 mm, depth: 12 mm, corner: 1 mm}"
                        + " | parallel tooth, 12 mm deep, 6 mm wide at the top, 4 mm at the floor, corners 1 mm"
            })
    void aSlotIsToldByItsShape(String yaml, String words) {
        assertThat(Written.slot(job("core: {slot: " + yaml + "}\n")
                        .particulars()
                        .core()
                        .orElseThrow()
                        .slot()
                        .orElseThrow()))
                .isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({"0, 0 ohm", "1, 1 ohm", "12.5, 12.5 ohm", "0.5, 500 mohm", "0.001, 1 mohm", "0.0005, 500 µohm"})
    void ohmsHaveOneToThreeFiguresBeforeThePoint(double ohms, String words) {
        assertThat(Written.ohms(ohms)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0 %",
        "0.126, 13 %",
        "0.99, 99 %",
        "0.991, 99.1 %",
        "0.999, 99.9 %",
        "0.9995, 99.9 %",
        "0.99999, 99.9 %",
        "1, 100.0 %"
    })
    void aProbabilityIsNeverAllWhereThereIsDoubt(double p, String words) {
        assertThat(DiagnosisWords.percent(p)).isEqualTo(words);
    }

    private static Map<String, String> facts(Armature armature, WindingSpec spec, boolean equalizers) {
        Job job = Job.of("T", armature, spec).withTurns(4);
        return WindingFacts.of(job, Winding.build(armature, spec), equalizers);
    }

    @Test
    void aWindingIsToldByItsPitches() {
        assertThat(facts(
                        Armature.of(31, 61, 4),
                        WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(32)),
                        false))
                .containsEntry("Winding", "Simplex wave, retrogressive")
                .containsEntry("Commutator pitch", "+30")
                .containsEntry("Dead coils", "32")
                .containsEntry("Turns per coil", "4")
                .doesNotContainKey("Equalizers");
        assertThat(facts(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.RETROGRESSIVE), true))
                .containsEntry("Commutator pitch", "−1")
                .containsEntry("Equalizers", "fitted")
                .doesNotContainKey("Dead coils");
        assertThat(facts(
                        Armature.of(22, 66, 4),
                        WindingSpec.lap(2, Direction.PROGRESSIVE).withSpan(CoilSpan.ofPositions(16)),
                        false))
                // 16 positions at 3 a slot: some coils span five slots, some six.
                .containsEntry("Coil throw", "1–6 and 1–7")
                .containsEntry("Winding", "Duplex lap, progressive");
    }
}
