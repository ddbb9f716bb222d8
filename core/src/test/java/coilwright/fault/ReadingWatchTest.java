package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReadingWatchTest {
    private static final Winding WINDING =
            Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
    private static final BenchArmature SOUND = BenchArmature.sound(WINDING, 0.08);
    private static final BenchTest DROP = new BenchTest.Drop(1, 5, 1);

    private static List<PairReading> scaled(BenchArmature armature, BenchTest test, double gain) {
        return test.readWalk(armature).stream()
                .map(r -> new PairReading(r.from(), r.to(), r.value() * gain))
                .toList();
    }

    @Test
    void noReadingOfASoundWindingStandsOutAtAnyScaleWithSomeScatter() {
        for (double gain : new double[] {1, 0.37, -2}) {
            var watch = new ReadingWatch(SOUND, DROP, false);
            List<PairReading> before = new ArrayList<>();
            int i = 0;
            for (PairReading r : scaled(SOUND, DROP, gain)) {
                var read = new PairReading(r.from(), r.to(), r.value() * (1 + 0.02 * (i++ % 3 - 1)));
                assertThat(watch.standsOut(read, watch.scale(before))).isFalse();
                before.add(read);
            }
            var pair = new BenchTest.Pair(3, 4);
            double own = DROP.read(SOUND, List.of(pair)).get(0).value();
            assertThat(watch.expected(pair, watch.scale(before)).getAsDouble())
                    .isCloseTo(own * gain, org.assertj.core.data.Percentage.withPercentage(2.1));
        }
    }

    @Test
    void aShortedCoilStandsOutWhereItIsRead() {
        List<PairReading> sound = scaled(SOUND, DROP, 1);
        List<PairReading> faulty = scaled(new Fault.BarShort(8, 9).in(SOUND), DROP, 1);
        var watch = new ReadingWatch(SOUND, DROP, false);
        assertThat(watch.standsOut(faulty.get(7), watch.scale(sound.subList(0, 7))))
                .isTrue();
        assertThat(watch.standsOut(faulty.get(7), watch.scale(sound.subList(0, 2))))
                .isFalse();
    }

    @Test
    void theScaleIsKnownBeforehandOnlyWhereItIsGiven() {
        var pair = new BenchTest.Pair(1, 2);
        double own = DROP.read(SOUND, List.of(pair)).get(0).value();
        var none = new ReadingWatch.Scale(java.util.OptionalDouble.empty(), 0);
        assertThat(new ReadingWatch(SOUND, DROP, true).expected(pair, none)).hasValue(own);
        assertThat(new ReadingWatch(SOUND, DROP, false).expected(pair, none)).isEmpty();
    }

    @Test
    void aGroundStandsOutAtOnce() {
        var watch = new ReadingWatch(SOUND, new BenchTest.Ground(), false);
        var pair = new BenchTest.Pair(1, BenchTest.SHAFT);
        var none = watch.scale(List.of());
        assertThat(watch.expected(pair, none)).hasValue(Double.POSITIVE_INFINITY);
        assertThat(watch.standsOut(new PairReading(1, 0, Double.POSITIVE_INFINITY), none))
                .isFalse();
        assertThat(watch.standsOut(new PairReading(1, 0, 3.0), none)).isTrue();
    }

    private static PairReading times(PairReading r, double gain) {
        return new PairReading(r.from(), r.to(), r.value() * gain);
    }

    @Test
    void theScaleIsTheMedianOfWhatTellsOfIt() {
        var watch = new ReadingWatch(SOUND, DROP, false);
        List<PairReading> own = DROP.readWalk(SOUND);
        ReadingWatch.Scale scale =
                watch.scale(List.of(times(own.get(0), 3), times(own.get(1), 1), times(own.get(2), 2)));
        assertThat(scale.gain()).hasValue(2);
        assertThat(scale.count()).isEqualTo(3);
        // Neither nothing nor off the scale tells of it, nor a pair that should read next to nothing.
        PairReading small = own.stream()
                .min(Comparator.comparingDouble(r -> Math.abs(r.value())))
                .orElseThrow();
        assertThat(watch.scale(List.of(
                                times(own.get(0), 3),
                                times(own.get(1), 0),
                                new PairReading(3, 4, Double.POSITIVE_INFINITY),
                                times(small, 7)))
                        .count())
                .isEqualTo(1);
        assertThat(watch.scale(List.of()).gain()).isEmpty();
    }

    @Test
    void aTenthOfWhatIsExpectedOrOfAFifthOfTheUsualMayBeOff() {
        var watch = new ReadingWatch(SOUND, DROP, false);
        List<PairReading> own = DROP.readWalk(SOUND);
        var scale = new ReadingWatch.Scale(OptionalDouble.of(-2), 3);
        double[] sizes =
                own.stream().mapToDouble(r -> Math.abs(r.value())).sorted().toArray();
        double usual = sizes[sizes.length / 2];
        PairReading small = own.stream()
                .min(Comparator.comparingDouble(r -> Math.abs(r.value())))
                .orElseThrow();
        assertThat(Math.abs(small.value())).isLessThan(0.2 * usual);
        for (PairReading r : own) {
            double allowed = 0.1 * 2 * Math.max(Math.abs(r.value()), 0.2 * usual);
            for (double side : new double[] {-1, 1}) {
                double should = -2 * r.value();
                assertThat(watch.standsOut(new PairReading(r.from(), r.to(), should + 0.99 * side * allowed), scale))
                        .isFalse();
                assertThat(watch.standsOut(new PairReading(r.from(), r.to(), should + 1.01 * side * allowed), scale))
                        .isTrue();
            }
        }
        PairReading first = own.get(0);
        var two = new ReadingWatch.Scale(OptionalDouble.of(1), 2);
        assertThat(watch.standsOut(times(first, 5), two)).isFalse();
        assertThat(watch.standsOut(new PairReading(1, 2, Double.POSITIVE_INFINITY), two))
                .isTrue();
    }

    @Test
    void severalThreadsMayAskForPairsBesideTheWalk() throws Exception {
        var none = new ReadingWatch.Scale(OptionalDouble.empty(), 0);
        for (int round = 0; round < 20; round++) {
            var watch = new ReadingWatch(SOUND, DROP, true);
            ExecutorService threads = Executors.newFixedThreadPool(8);
            List<Future<Long>> answers = new ArrayList<>();
            for (int from = 1; from <= 8; from++) {
                int first = from;
                answers.add(threads.submit(() -> IntStream.rangeClosed(first + 2, 17)
                        .filter(to -> watch.expected(new BenchTest.Pair(first, to), none)
                                .isPresent())
                        .count()));
            }
            threads.shutdown();
            for (int i = 0; i < answers.size(); i++) {
                assertThat(answers.get(i).get()).isEqualTo(17 - (i + 3) + 1);
            }
        }
    }

    @Test
    void aPairThatShouldReadNothingReadsNothingAtAnyScale() {
        // Equal currents flow into bar 4 from both sides of a lap winding fed there: bars 3 and 5 stand alike.
        Winding lap = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        var watch = new ReadingWatch(BenchArmature.sound(lap, 0.08), new BenchTest.Drop(4, 10, 1), false);
        var none = new ReadingWatch.Scale(OptionalDouble.empty(), 0);
        assertThat(watch.expected(new BenchTest.Pair(3, 5), none)).hasValue(0);
        assertThat(watch.expected(new BenchTest.Pair(3, 4), none)).isEmpty();
    }
}
