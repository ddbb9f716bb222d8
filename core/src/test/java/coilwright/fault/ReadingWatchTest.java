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
import java.util.List;
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
}
