package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class JobBenchTest {
    private static final Job WINCH = read("quarry-winch-motor");

    private static Job read(String sample) {
        try {
            return JobReader.read(Path.of("../samples/jobs", sample + ".yaml"));
        } catch (BadInputException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void coilsHaveTheirResistanceOrOneOhm() {
        assertThat(read("orchard-pump-dynamo").benchArmature().soundOhms()).isEqualTo(0.08);
        assertThat(read("hill-tram-motor").benchArmature().soundOhms()).isEqualTo(1);
    }

    /** Copper's constant 234.5 °C: at 75 °C a winding has 309.5/254.5 of its resistance at 20 °C. */
    @Test
    void aWarmWindingHasMoreResistance() {
        Job job = read("orchard-pump-dynamo");
        assertThat(job.benchArmature(20).soundOhms()).isCloseTo(0.08, within(1e-15));
        assertThat(job.benchArmature(75).soundOhms()).isCloseTo(0.08 * 309.5 / 254.5, within(1e-12));
        assertThatThrownBy(() -> job.benchArmature(-300)).hasMessageContaining("over -234.5 °C");
    }

    @Test
    void everyThirdSetHasARing() {
        List<List<Integer>> rings = WINCH.equalizers().orElseThrow().rings(WINCH.build());
        assertThat(rings).hasSize(8).allSatisfy(r -> assertThat(r).hasSize(3));
        assertThat(rings.get(0)).containsExactly(1, 25, 49);
        assertThat(rings.get(1)).containsExactly(4, 28, 52);
        assertThat(new Equalizers(1).rings(WINCH.build()))
                .isEqualTo(WindingGraph.of(WINCH.build()).equipotentialBars());
    }

    /** A ring joins its bars: no resistance between them; the others keep theirs. */
    @Test
    void ringsAreOnTheBench() {
        BenchArmature armature = WINCH.benchArmature();
        List<PairReading> ohms = new BenchTest.Resistance()
                .read(armature, List.of(new BenchTest.Pair(1, 25), new BenchTest.Pair(2, 26)));
        assertThat(ohms.get(0).value()).isZero();
        assertThat(ohms.get(1).value()).isGreaterThan(0);
    }

    @Test
    void ringsThatCannotBeAreRefused() {
        Job simple = Job.of("T", Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE))
                .withEqualizers(new Equalizers(1));
        assertThatThrownBy(simple::benchArmature)
                .hasMessage("equalizers.every is 1, but this winding has no two bars at one potential for a ring to "
                        + "join: leave equalizers out");
        assertThatThrownBy(() -> WINCH.withEqualizers(new Equalizers(25)).benchArmature())
                .hasMessage("equalizers.every is 25, but this winding has only 24 sets of bars at one potential: give "
                        + "1 to 24");
    }

    @Test
    void readingsBecomeARunInBaseUnits() throws Exception {
        Job job = JobReader.parse("x", """
                coilwright: 1
                title: Test
                armature: {slots: 17, bars: 17, poles: 4}
                winding: {type: wave, throw: 4}
                growler: {halfGap: 50, face: 70}
                readings:
                  - date: 2021-07-12
                    test: drop
                    feed: {in: 1, out: 5, amps: 2.50}
                    unit: mV
                    meter: shop meter 2
                    temperature: 21 degC
                    readings:
                      - {from: 1, to: 2, reading: 169.4}
                      - {from: 3, to: 2, reading: "-0.17 V"}
                      - {from: 3, to: 4, reading: }
                      - {from: 4, to: 5}
                      - {from: 5, to: 6, reading: OL}
                  - test: growler
                    angle: -12.5
                    readings: [{from: 1, to: 2, reading: 37}]
                  - test: ground
                    unit: kohm
                    readings: [{from: 1, to: shaft, reading: 4.7}]
                """);
        assertThat(job.readings()).hasSize(3);
        TestRun drop = job.readings().get(0).run(job.growler());
        assertThat(drop.test()).isEqualTo(new BenchTest.Drop(1, 5, 2.5));
        assertThat(drop.readings()).hasSize(3);
        assertThat(drop.readings().get(0).value()).isCloseTo(0.1694, within(1e-15));
        assertThat(drop.readings().get(1)).isEqualTo(new PairReading(3, 2, -0.17));
        assertThat(drop.readings().get(2).value()).isInfinite();
        TestRun growler = job.readings().get(1).run(job.growler());
        assertThat(growler.test()).isEqualTo(new BenchTest.GrowlerWalked(new Growler(50, 70), -12.5));
        assertThat(growler.readings()).containsExactly(new PairReading(1, 2, 37));
        TestRun ground = job.readings().get(2).run(job.growler());
        assertThat(ground.readings()).containsExactly(new PairReading(1, BenchTest.SHAFT, 4700));
        assertThat(JobReader.parse("x", JobWriter.toText(job))).isEqualTo(job);
    }

    @Test
    void aSetWithoutWhatItsTestNeedsCannotBeMade() {
        assertThatThrownBy(() -> new ReadingSet(
                        java.util.Optional.empty(),
                        TestKind.DROP,
                        java.util.Optional.empty(),
                        java.util.Optional.empty(),
                        java.util.Optional.empty(),
                        java.util.Optional.empty(),
                        java.util.Optional.empty(),
                        java.util.Optional.empty(),
                        List.of()))
                .hasMessage("a drop test needs feed");
    }
}
