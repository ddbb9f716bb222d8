package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.rewind.Acceptance;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class AcceptanceBasisTest {
    private static final String HEAD = """
            coilwright: 1
            title: Mill lamp dynamo
            armature: {slots: 17, bars: 17, poles: 4, slotOneInLineWith: bar}
            winding: {type: wave, throw: 4, turns: 6, coilResistance: 0.08 ohm}
            """;

    private static Job job(String more) throws BadInputException {
        return JobReader.parse("job.yaml", HEAD + more);
    }

    private static String set(String head, List<PairReading> readings, double factor) {
        return "  - {" + head + ", stage: as-rewound, readings: ["
                + readings.stream()
                        .map(r -> "{from: " + r.from() + ", to: " + r.to() + ", reading: "
                                + String.format(java.util.Locale.ROOT, "%.9f", r.value() * factor) + "}")
                        .collect(Collectors.joining(", "))
                + "]}\n";
    }

    private static Acceptance.Given given(Job job) {
        return AcceptanceBasis.of(job, AcceptanceBasis.Options.none());
    }

    @Test
    void aSoundWindingReadsEvenWhateverThePathsAreFedWith() throws Exception {
        Job plain = job("");
        // The two paths of this wave winding have unlike lengths, so that the drops themselves are not alike.
        List<PairReading> drops = new BenchTest.Drop(1, 5, 2).readWalk(plain.benchArmature());
        assertThat(drops.stream()
                        .map(r -> Math.round(1e6 * Math.abs(r.value())))
                        .distinct()
                        .count())
                .isGreaterThan(1);
        Acceptance.Given given =
                given(job("readings:\n" + set("test: drop, feed: {in: 1, out: 5, amps: 2}, unit: V", drops, 1.1)));
        assertThat(given.walks()).hasSize(1);
        assertThat(given.walks().get(0).ratios())
                .hasSize(17)
                .allSatisfy(r -> assertThat(r).isCloseTo(1.1, within(1e-6)));
        assertThat(given.missing()).isEmpty();
    }

    @Test
    void oldReadingsDoNotCountTheLastOfATestDoesAndGapsAreTold() throws Exception {
        List<PairReading> ohms = new BenchTest.Resistance().readWalk(job("").benchArmature());
        Acceptance.Given given = given(job("readings:\n"
                + set("test: resistance, unit: ohm", ohms, 7)
                + set("test: resistance, unit: ohm", ohms.subList(0, 15), 1)
                + set("test: resistance, unit: ohm", ohms, 3).replace("as-rewound", "as-found")));
        assertThat(given.walks())
                .singleElement()
                .satisfies(w -> assertThat(w.ratios())
                        .hasSize(15)
                        .allSatisfy(r -> assertThat(r).isCloseTo(1, within(1e-6))));
        assertThat(given.missing()).containsExactly("16-17", "17-1");
    }

    @Test
    void anOpenPairIsNoRatio() throws Exception {
        Acceptance.Given given = given(job("readings:\n  - {test: resistance, stage: as-rewound, unit: ohm, readings:"
                + " [{from: 1, to: 2, reading: OL}, {from: 2, to: 3, reading: 0.1}]}\n"));
        assertThat(given.walks().get(0).open()).containsExactly("1-2");
        assertThat(given.walks().get(0).pairs()).containsExactly("2-3");
    }

    @Test
    void theOutputOfAGeneratorIsVoltsTimesAmperesAndOfAMotorItIsAskedFor() throws Exception {
        String rating = "rating: {kind: dc-generator, volts: 12 V, current: 18 A}\n";
        assertThat(given(job(rating)).watts()).hasValue(216);
        assertThat(given(job(rating)).wattsNote()).isNotEmpty();
        assertThat(given(job(rating.replace("generator", "motor"))).watts()).isEmpty();
        assertThat(given(job("rating: {kind: dc-motor, volts: 12 V, power: 1 hp}\n"))
                        .watts()
                        .orElseThrow())
                .isCloseTo(745.6999, within(1e-3));
    }

    @Test
    void optionsStandInPlaceOfTheJobsValues() throws Exception {
        Job job = job("asRewound: {measured: {temperature: 20 °C, insulationOneMinute: 3 Mohm, brushToBrush: 0.31 ohm},"
                + " highPotential: {volts: 400 V, current: dc, seconds: 60, result: failed}, polarity: reversed}\n");
        Acceptance.Given noted = given(job);
        assertThat(noted.insulation().orElseThrow().oneMinuteMohm()).isEqualTo(3);
        assertThat(noted.polarityRight()).hasValue(false);
        assertThat(noted.highPotential().orElseThrow().direct()).hasValue(true);
        assertThat(noted.highPotential().orElseThrow().passed()).isFalse();
        Acceptance.Given other = AcceptanceBasis.of(
                job,
                new AcceptanceBasis.Options(
                        Optional.empty(),
                        Optional.of(Quantity.parse("24 V", Quantity.Kind.VOLTAGE)),
                        Optional.empty(),
                        coilwright.rewind.HighPotential.Work.NEW,
                        Optional.of(Quantity.parse("120Mohm", Quantity.Kind.RESISTANCE)),
                        Optional.empty(),
                        Optional.of(Quantity.parse("68 °F", Quantity.Kind.TEMPERATURE)),
                        Optional.empty(),
                        Optional.of(Quantity.parse("0.37 ohm", Quantity.Kind.RESISTANCE)),
                        Optional.of(Quantity.parse("25 °C", Quantity.Kind.TEMPERATURE)),
                        List.of("rise-b"),
                        Optional.empty()));
        assertThat(other.volts()).hasValue(24);
        assertThat(other.insulation().orElseThrow().oneMinuteMohm()).isEqualTo(120);
        // (234.5 + 20)·0.37/0.31 − 234.5 = 69.258 °C, less 25 °C.
        assertThat(other.rise().orElseThrow().riseK()).isCloseTo(44.258, within(0.001));
    }

    @Test
    void aHotResistanceAloneIsRefused() throws Exception {
        Job job = job("");
        AcceptanceBasis.Options none = AcceptanceBasis.Options.none();
        for (Optional<Quantity> ambient :
                List.of(Optional.<Quantity>empty(), Optional.of(Quantity.parse("25 °C", Quantity.Kind.TEMPERATURE)))) {
            assertThatThrownBy(() -> AcceptanceBasis.of(
                            job,
                            new AcceptanceBasis.Options(
                                    none.kind(),
                                    none.volts(),
                                    none.power(),
                                    none.work(),
                                    none.insulationOneMinute(),
                                    none.insulationTenMinutes(),
                                    none.temperature(),
                                    none.coldResistance(),
                                    Optional.of(Quantity.parse("0.37 ohm", Quantity.Kind.RESISTANCE)),
                                    ambient,
                                    none.limits(),
                                    none.scheme())))
                    .hasMessageStartingWith("a hot resistance is given");
        }
    }

    @Test
    void theWindingIsJudgedByThePlan() throws Exception {
        String rating = "rating: {kind: dc-generator, volts: 6 V, current: 10 A}\n";
        assertThat(given(job(rating)).volts()).hasValue(6);
        assertThat(given(job(rating + "plan: {volts: 12 V, turns: 12}\n")).volts())
                .hasValue(12);
        Job other = job(rating + "plan: {type: lap, turns: 5}\n");
        List<PairReading> drops =
                new BenchTest.Drop(1, 5, 2).readWalk(RewindBasis.wound(other).benchArmature());
        Acceptance.Given given = given(job(rating + "plan: {type: lap, turns: 5}\nreadings:\n"
                + set("test: drop, feed: {in: 1, out: 5, amps: 2}, unit: V", drops, 1)));
        assertThat(given.walks().get(0).ratios())
                .hasSize(17)
                .allSatisfy(r ->
                        assertThat(r).isCloseTo(given.walks().get(0).ratios().get(0), within(1e-6)));
    }
}
