package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.job.ReadingSet.GivenFeed;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a job and its readings take, and what not. */
class JobValuesTest {
    private static final Job JOB = Job.of("Dynamo", Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));

    private static void refused(String message, ThrowingCallable what) {
        assertThatThrownBy(what).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
    }

    @Test
    void oneThingIsChangedAtATime() {
        Quantity ohms = new Quantity(new BigDecimal("0.08"), "ohm");
        Job job = JOB.withTurns(7)
                .withCoilResistance(ohms)
                .withGrowler(new Growler(40, 50))
                .withWinding(WindingSpec.lap(2, Direction.PROGRESSIVE))
                .withEqualizers(new Equalizers(2));
        assertThat(job.title()).isEqualTo("Dynamo");
        assertThat(job.turns()).hasValue(7);
        assertThat(job.coilResistance()).hasValue(ohms);
        assertThat(job.growler()).isEqualTo(new Growler(40, 50));
        assertThat(job.winding()).isEqualTo(WindingSpec.lap(2, Direction.PROGRESSIVE));
        assertThat(job.equalizers()).hasValue(new Equalizers(2));
        assertThat(job.withParticulars(Particulars.NONE)).isEqualTo(job);
        // Copper from 20 °C to 75 °C: (234.5 + 75)/(234.5 + 20).
        assertThat(JOB.withCoilResistance(ohms).benchArmature(75).soundOhms())
                .isEqualTo(0.08 * 309.5 / 254.5, org.assertj.core.api.Assertions.within(1e-12));
    }

    @Test
    void turnsAndResistances() {
        assertThat(JOB.withTurns(1).withTurns(10_000).turns()).hasValue(10_000);
        refused("turns is 0, but must be from 1 to 10000", () -> JOB.withTurns(0));
        refused("turns is 10001, but must be from 1 to 10000", () -> JOB.withTurns(10_001));
        refused(
                "is \"5 mm\", a length, but must be a resistance",
                () -> JOB.withCoilResistance(new Quantity(BigDecimal.valueOf(5), "mm")));
        refused(
                "is 0 ohm, but every coil has some resistance",
                () -> JOB.withCoilResistance(new Quantity(BigDecimal.ZERO, "ohm")));
    }

    @Test
    void titlesAreOneLineThatCanBeRead() {
        assertThat(titled("x".repeat(200)).title()).hasSize(200);
        refused("is blank: give the machine a name", () -> titled(" "));
        refused("is 201 characters long, but may have at most 200", () -> titled("x".repeat(201)));
        assertThat(titled("Μηχανή \uD83D\uDE80 \u2029".substring(0, 9)).title()).isNotBlank();
    }

    @ParameterizedTest
    @ValueSource(
            ints = {
                0x09, 0x0A, 0x7F, 0x85, 0x202A, 0x202E, 0x2066, 0x2069, 0xD800, 0xDFFF, 0x2028, 0x2029, 0xFEFF, 0xFFFE,
                0x1FFFF
            })
    void unseenCharactersAreRefused(int c) {
        String text = c >= 0xD800 && c <= 0xDFFF ? "pump" + (char) c : "pump" + Character.toString(c) + "s";
        refused(
                String.format(java.util.Locale.ROOT, "holds the unseen character U+%04X: take it out", c),
                () -> titled(text));
    }

    @ParameterizedTest
    @ValueSource(ints = {0x20, 0x7E, 0xA0, 0x2026, 0x202F, 0x2065, 0x206A, 0xD7FF, 0xE000, 0xFFFD, 0x1F680})
    void theirNeighboursAreTaken(int c) {
        String text = "pump" + Character.toString(c) + "s";
        assertThat(titled(text).title()).isEqualTo(text);
    }

    private static Job titled(String title) {
        return Job.of(title, JOB.armature(), JOB.winding());
    }

    private static TakenReading reading(int from, int to, String number, String unit) {
        return new TakenReading(from, to, new TakenReading.Value(new BigDecimal(number), Optional.ofNullable(unit)));
    }

    private static ReadingSet set(TestKind test, Optional<GivenFeed> feed, String unit, TakenReading... readings) {
        return new ReadingSet(
                Optional.empty(),
                test,
                feed,
                Optional.empty(),
                Optional.empty(),
                Optional.ofNullable(unit),
                Optional.empty(),
                Optional.empty(),
                List.of(readings));
    }

    private static final Optional<GivenFeed> FED = Optional.of(new GivenFeed(1, 7, BigDecimal.TEN));

    @Test
    void readingsAreOfBarsThatAreThere() {
        ReadingSet last = set(TestKind.RESISTANCE, Optional.empty(), "ohm", reading(12, 1, "1", null));
        assertThat(JOB.withReadings(List.of(last)).readings()).containsExactly(last);
        ReadingSet ground = set(TestKind.GROUND, Optional.empty(), "ohm", reading(1, BenchTest.SHAFT, "1", null));
        assertThat(JOB.withReadings(List.of(ground)).readings()).hasSize(1);
        refused(
                "is bar 13, but bars run from 1 to 12",
                () -> JOB.withReadings(
                        List.of(set(TestKind.RESISTANCE, Optional.empty(), "ohm", reading(12, 13, "1", null)))));
        refused(
                "is bar 13, but bars run from 1 to 12",
                () -> JOB.withReadings(List.of(set(
                        TestKind.DROP,
                        Optional.of(new GivenFeed(1, 13, BigDecimal.ONE)),
                        "V",
                        reading(1, 2, "1", null)))));
    }

    @Test
    void feedsHaveTwoBarsAndACurrent() {
        assertThat(new GivenFeed(2, 1, BigDecimal.valueOf(1_000_000)).amps()).isEqualTo("1000000");
        for (int[] wrong : new int[][] {{0, 3}, {3, 0}, {3, 3}}) {
            refused(
                    "feeds in at bar " + wrong[0] + " and out at bar " + wrong[1] + ": name two different bars",
                    () -> new GivenFeed(wrong[0], wrong[1], BigDecimal.ONE));
        }
        for (String wrong : new String[] {"0", "-1", "1000000.1"}) {
            refused(
                    "is " + wrong + ", but must be over 0 and at most 1000000 amperes",
                    () -> new GivenFeed(1, 2, new BigDecimal(wrong)));
        }
    }

    @Test
    void eachTestNeedsItsOwn() {
        refused("a drop test needs feed", () -> set(TestKind.DROP, Optional.empty(), "V"));
        refused("feed is not used by a resistance test", () -> set(TestKind.RESISTANCE, FED, "ohm"));
        refused("a growler test needs angle", () -> growler(TestKind.GROWLER, Optional.empty(), Optional.empty()));
        Optional<BigDecimal> most = Optional.of(BigDecimal.valueOf(-3600));
        assertThat(growler(TestKind.GROWLER, most, Optional.empty())
                        .run(Growler.USUAL)
                        .test())
                .isEqualTo(new BenchTest.GrowlerWalked(Growler.USUAL, -3600));
        assertThat(growler(TestKind.GROWLER_TURNED, Optional.empty(), most)
                        .run(Growler.USUAL)
                        .test())
                .isEqualTo(new BenchTest.GrowlerTurned(Growler.USUAL, -3600));
        refused("clock is not used by a growler test", () -> growler(TestKind.GROWLER, most, most));
        refused(
                "a growler-turned test needs clock",
                () -> growler(TestKind.GROWLER_TURNED, Optional.empty(), Optional.empty()));
        refused("angle is not used by a growler-turned test", () -> growler(TestKind.GROWLER_TURNED, most, most));
        Optional<BigDecimal> over = Optional.of(new BigDecimal("3600.5"));
        refused(
                "is 3600.5, but must be from -3600 to 3600 degrees",
                () -> growler(TestKind.GROWLER, over, Optional.empty()));
        refused(
                "is 3600.5, but must be from -3600 to 3600 degrees",
                () -> growler(TestKind.GROWLER_TURNED, Optional.empty(), over));
    }

    private static ReadingSet growler(TestKind test, Optional<BigDecimal> angle, Optional<BigDecimal> clock) {
        return new ReadingSet(
                Optional.empty(),
                test,
                Optional.empty(),
                angle,
                clock,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    @Test
    void unitsAndPlacesGoWithTheTest() {
        assertThatThrownBy(() -> set(TestKind.RESISTANCE, Optional.empty(), "V"))
                .hasMessageStartingWith("is \"V\", but a resistance test is read in ohm, ");
        assertThatThrownBy(() -> set(TestKind.POLARITY, Optional.empty(), "V"))
                .hasMessage("is \"V\", but a polarity test is read without a unit");
        assertThatThrownBy(() -> set(TestKind.RESISTANCE, Optional.empty(), "ohm", reading(1, 2, "5", "V")))
                .hasMessageStartingWith("is \"V\", but a resistance test is read in");
        refused(
                "is from 1 to shaft, but a resistance test is read between two bars",
                () -> set(TestKind.RESISTANCE, Optional.empty(), "ohm", reading(1, BenchTest.SHAFT, "5", null)));
        refused(
                "is from 1 to 2, but a ground test is read from a bar to the shaft",
                () -> set(TestKind.GROUND, Optional.empty(), "ohm", reading(1, 2, "5", null)));
        refused(
                "is 5 without a unit: give the unit of all readings beside them, such as unit: ohm",
                () -> set(TestKind.RESISTANCE, Optional.empty(), null, reading(1, 2, "5", null)));
        assertThat(set(TestKind.POLARITY, Optional.empty(), null, reading(1, 2, "-1", null))
                        .run(Growler.USUAL)
                        .readings()
                        .get(0)
                        .value())
                .isEqualTo(-1);
        // A reading's own unit goes before that of all.
        ReadingSet drop = set(TestKind.DROP, FED, "mV", reading(1, 2, "250", null), reading(2, 3, "0.3", "V"));
        assertThat(drop.run(Growler.USUAL).readings())
                .extracting(r -> r.value())
                .containsExactly(0.25, 0.3);
        assertThat(drop.run(Growler.USUAL).test()).isEqualTo(new BenchTest.Drop(1, 7, 10));
    }

    @Test
    void metersTemperaturesAndNumbersOfReadings() {
        refused("is blank: name the meter or leave the key out", () -> metered(" ", null));
        assertThat(metered("bench meter", "20 °C").meter()).hasValue("bench meter");
        refused("temperature is \"20 ohm\", a resistance, but must be a temperature", () -> metered("m", "20 ohm"));
        TakenReading[] most = new TakenReading[ReadingSet.MOST_READINGS];
        java.util.Arrays.fill(most, reading(1, 2, "1", null));
        assertThat(set(TestKind.RESISTANCE, Optional.empty(), "ohm", most).readings())
                .hasSize(20_000);
        TakenReading[] more = new TakenReading[ReadingSet.MOST_READINGS + 1];
        java.util.Arrays.fill(more, most[0]);
        refused(
                "has 20001 readings, but may have at most 20000",
                () -> set(TestKind.RESISTANCE, Optional.empty(), "ohm", more));
    }

    private static ReadingSet metered(String meter, String temperature) {
        Optional<Quantity> measured = Optional.ofNullable(temperature)
                .map(t -> new Quantity(new BigDecimal(t.split(" ")[0]), t.split(" ")[1]));
        return new ReadingSet(
                Optional.empty(),
                TestKind.RESISTANCE,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("ohm"),
                Optional.of(meter),
                measured,
                List.of());
    }

    @Test
    void sizesOfTheCoreGoTogether() {
        Quantity five = new Quantity(BigDecimal.valueOf(5), "mm");
        var none = Optional.<Quantity>empty();
        Optional<Quantity> length = Optional.of(new Quantity(BigDecimal.valueOf(62), "mm"));
        Optional<Quantity> diameter = Optional.of(new Quantity(BigDecimal.valueOf(34), "mm"));
        var core = new CoreSizes(
                length, diameter, none, Optional.of(five), Optional.empty(), Optional.empty(), none, none);
        assertThat(core.size().orElseThrow().shaftMm()).isZero();
        assertThat(core.size().orElseThrow().lengthMm()).isEqualTo(62);
        assertThat(core.size().orElseThrow().slotPitchCircleMm()).isEqualTo(29);
        assertThat(core.meanTurn(17, 4)).isEmpty();
        var shafted = new CoreSizes(
                length, diameter, Optional.of(five), Optional.of(five), Optional.empty(), Optional.empty(), none, none);
        assertThat(shafted.size().orElseThrow().shaftMm()).isEqualTo(5);
        for (var part : List.of(
                new CoreSizes(none, diameter, none, Optional.of(five), Optional.empty(), Optional.empty(), none, none),
                new CoreSizes(length, none, none, Optional.of(five), Optional.empty(), Optional.empty(), none, none),
                new CoreSizes(length, diameter, none, none, Optional.empty(), Optional.empty(), none, none))) {
            assertThat(part.size()).isEmpty();
        }
    }
}
