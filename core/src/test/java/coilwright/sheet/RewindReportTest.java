package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.ResistanceTest;
import coilwright.drawing.Drawing;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.rewind.Caution;
import coilwright.rewind.Conductor;
import coilwright.rewind.Limit;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.rewind.SlotFill;
import coilwright.winding.WindingType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RewindReportTest {
    private static final Path SAMPLES = Path.of("../samples/jobs");
    private static final RewindReport.Settings USUAL = RewindReport.Settings.USUAL;

    static Stream<String> samples() throws IOException {
        try (Stream<Path> files = Files.list(SAMPLES)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList().stream();
        }
    }

    private static RewindReport sample(String file) throws BadInputException {
        return RewindReport.of(JobReader.read(SAMPLES.resolve(file)), USUAL);
    }

    private static Job job(String yaml) {
        try {
            return JobReader.parse("test.yaml", "coilwright: 1\ntitle: Test\n" + yaml);
        } catch (BadInputException e) {
            throw new IllegalArgumentException(e.problems().toString(), e);
        }
    }

    private static RewindReport report(String yaml) {
        return RewindReport.of(job(yaml), USUAL);
    }

    /** The sample machines hang together: a tenth of the resistance is more than a rewinder would let pass. */
    @ParameterizedTest
    @MethodSource("samples")
    void samplesAreMachinesThatCouldBeWound(String file) throws BadInputException {
        RewindReport report = sample(file);
        assertThat(report.missing()).isEmpty();
        assertThat(report.canBeWound()).isTrue();
        assertThat(report.found().fits()).contains(true);
        assertThat(report.compared()).allSatisfy(c -> assertThat(c.difference()).isBetween(-0.05, 0.05));
        assertThat(report.compared().isEmpty())
                .isEqualTo(report.job().coilResistance().isEmpty());
        assertThat(report.found().checks())
                .filteredOn(c -> !c.id().equals("copper-factor"))
                .allMatch(RewindReportState.Check::usual);
        // A round-wire slot holds some copper, and a strip never stands wider or higher than its slot.
        assertThat(report.found().fill().orElseThrow().copperFactor()).isBetween(0.12, 0.55);
        assertThat(report.found().copper().orElseThrow().massKg()).isGreaterThan(0.001);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void sheetsKeepTheirTextsApart(String file) throws BadInputException {
        RewindReport report = sample(file);
        for (Drawing page : RewindSheet.of(report).pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
        }
        assertThat(RewindSheet.of(report)).isEqualTo(RewindSheet.of(sample(file)));
    }

    /**
     * Rolls-Royce experimental archive, X.1005, 12 July 1921: a 4-pole dynamo of 14 slots and 28 coils of 12 turns in 19
     * SWG, one coil connected lapwise; 0.418 ohm between two bars 90 degrees apart at 18 °C.
     *
     * <p>The note gives neither core nor mean turn. Assumed: 236 mm to a turn, leads taken as nothing, the nominal 0.040 in
     * (the note has 0.041). What is checked is that the report's brush-to-brush value, which takes equal paths, stands for
     * the two bars that were measured: the network of this very winding gives the same within a hundredth.
     */
    @Test
    void dynamoOf1921() throws BadInputException {
        Job layout = JobReader.read(SAMPLES.resolve("landing-stage-light-dynamo.yaml"));
        Job told = job("""
                armature: {slots: 14, bars: 28, poles: 4, slotOneInLineWith: bar}
                winding: {type: lap, throw: 3, turns: 12}
                wire: {size: 19 SWG, insulation: double-cotton}
                core: {meanTurn: 236 mm}
                asFound: {measured: {temperature: 18 °C, brushToBrush: 0.418 ohm}}
                """);
        RewindReport report =
                RewindReport.of(told.withWinding(layout.winding()), new RewindReport.Settings(List.of(18.0), 0.1, 5));
        assertThat(report.found().copper().orElseThrow().paths()).isEqualTo(2);
        RewindReport.Compared compared = report.compared().get(0);
        assertThat(compared.key()).isEqualTo("asFound.measured.brushToBrush");
        assertThat(compared.difference()).isCloseTo(0, within(0.005));
        double coil = report.found().coil().orElseThrow().resistance(18);
        double network = ResistanceTest.of(BenchArmature.sound(report.winding(), coil))
                .between(1, 8)
                .orElseThrow();
        assertThat(compared.expected()).isCloseTo(network, within(0.01 * network));
    }

    /** U. A. Bakshi and M. V. Bakshi, example 1.1: 440 conductors give 462 V lap and 924 V wave. */
    @Test
    void publishedEmf() {
        RewindReport report = report("""
                armature: {slots: 55, bars: 55, poles: 4, slotOneInLineWith: bar}
                winding: {type: lap, turns: 4}
                rating: {volts: 462 V, speed: 900 rpm}
                wire: {size: 14 AWG, insulation: nema-heavy}
                core: {meanTurn: 900 mm}
                plan: {type: wave, turns: 4}
                """);
        Redesign redesign = report.change().orElseThrow().redesign().orElseThrow();
        assertThat(redesign.before().conductors()).isEqualTo(440);
        assertThat(redesign.before().flux()).isCloseTo(0.07, within(1e-12));
        assertThat(redesign.emfAtSpeed()).isCloseTo(924, within(1e-9));
        assertThat(redesign.rpmForVolts()).isCloseTo(450, within(1e-9));
        OtherWinding wave = report.others().stream()
                .filter(o -> o.type() == WindingType.WAVE && o.candidate().plex() == 1)
                .findFirst()
                .orElseThrow();
        assertThat(wave.voltsFactor()).isEqualTo(2);
    }

    /**
     * Example 1.2 of the same: 42 coils of 8 turns give 263.424 V lap. The book's wave of 42 coils cannot be wound on 4
     * poles, which the report says; a rewind for half the speed needs twice the turns.
     */
    @Test
    void publishedEmfWhoseWaveCannotBeWound() {
        String machine = """
                armature: {slots: 42, bars: 42, poles: 4, slotOneInLineWith: bar}
                winding: {type: lap, turns: 8}
                rating: {volts: 263.424 V, speed: 1120 rpm}
                wire: {size: 14 AWG, insulation: nema-heavy}
                core: {meanTurn: 900 mm}
                """;
        RewindReport wave = report(machine + "plan: {type: wave}");
        assertThat(wave.canBeWound()).isFalse();
        assertThat(wave.change().orElseThrow().refused().orElseThrow()).contains("42 bars on 4 poles");
        RewindReport slow = report(machine + "plan: {speed: 560 rpm}");
        Redesign redesign = slow.change().orElseThrow().redesign().orElseThrow();
        assertThat(redesign.before().flux()).isCloseTo(0.021, within(1e-12));
        assertThat(slow.change().orElseThrow().after().orElseThrow().turns()).hasValue(16);
        assertThat(redesign.emfAtSpeed()).isCloseTo(263.424, within(1e-9));
    }

    private static String dynamo(int turns, String wire, double core, String more) {
        return "armature: {slots: 17, bars: 17, poles: 4, slotOneInLineWith: bar}\n"
                + "winding: {type: wave, turns: " + turns + "}\n"
                + "rating: {kind: dc-generator, volts: 6 V, current: 10 A, speed: 1500 rpm}\nwire: " + wire
                + "\ncore: {length: " + core + " mm, diameter: 120 mm, leads: 0 mm, endTurn: {form: hand-wound,"
                + " straight: 4 mm}, slot: {shape: rectangular, width: 9 mm, depth: 20 mm, liner: 0.3 mm}}\n" + more;
    }

    /**
     * Twice the turns at half the area: the same fill and mass, four times the resistance (a rewinding discussion prints
     * the reverse case). Two wires in hand against one make the half exact.
     */
    @Property(tries = 25)
    void twiceTheTurnsAtHalfTheArea(
            @ForAll @IntRange(min = 1, max = 30) int turns,
            @ForAll @DoubleRange(min = 20, max = 300) double core,
            @ForAll @IntRange(min = 14, max = 24) int gauge) {
        String one = "{size: " + gauge + " AWG, insulation: nema-heavy, inHand: 1}";
        RewindReport report = RewindReport.of(
                job(dynamo(
                        turns,
                        one.replace("1}", "2}"),
                        (double) Math.round(core),
                        "plan: {volts: 12 V, wire: " + one + "}")),
                new RewindReport.Settings(List.of(75.0), 0, 0));
        RewindReportState before = report.found();
        RewindReportState after = report.change().orElseThrow().after().orElseThrow();
        assertThat(after.turns()).hasValue(2 * turns);
        double r = before.copper().orElseThrow().brushToBrush(75);
        assertThat(after.copper().orElseThrow().brushToBrush(75)).isCloseTo(4 * r, within(1e-9 * r));
        double m = before.copper().orElseThrow().massKg();
        assertThat(after.copper().orElseThrow().massKg()).isCloseTo(m, within(1e-9 * m));
        SlotFill fill = before.fill().orElseThrow();
        assertThat(after.fill().orElseThrow().fill()).isCloseTo(fill.fill(), within(1e-9));
        assertThat(after.fill().orElseThrow().wires()).isEqualTo(fill.wires());
        assertThat(after.fits()).isEqualTo(before.fits());
        assertThat(after.barVolts().orElseThrow())
                .isCloseTo(2 * before.barVolts().orElseThrow(), within(1e-9));
        assertThat(report.canBeWound()).isEqualTo(fill.fits());
        assertThat(report.change().orElseThrow().samePowerAmps()).hasValue(5);
    }

    @Test
    void proposesAWireThatIsMadeAndGoesIn() throws BadInputException {
        RewindReport.Change change = sample("post-van-dynamo.yaml").change().orElseThrow();
        assertThat(change.proposed()).isTrue();
        RewindReportState after = change.after().orElseThrow();
        assertThat(after.turns()).hasValue(8);
        // Three gauge numbers are a factor of two in area: 16 AWG becomes 19 AWG.
        assertThat(after.label()).contains("19 AWG, heavy build");
        assertThat(after.fits()).contains(true);
        assertThat(change.proposals().get(0).byArea()).isEqualTo(1);
        assertThat(change.proposals()).anyMatch(p -> p.byFit() == 1);
        assertThat(change.redesign().orElseThrow().cautions())
                .extracting(Caution::id)
                .contains("field", "regulator", "brushes");
    }

    @Test
    void halfTheVoltageTakesTheSameWireTwoInHand() throws BadInputException {
        RewindReport report = sample("millpond-boat-dynamo.yaml");
        RewindReportState after = report.change().orElseThrow().after().orElseThrow();
        assertThat(after.turns()).hasValue(4);
        assertThat(report.change().orElseThrow().proposals()).isEmpty();
        assertThat(after.fill().orElseThrow().wires())
                .isEqualTo(report.found().fill().orElseThrow().wires());
        assertThat(after.amps().orElseThrow()).isCloseTo(16, within(1e-9));
    }

    @Test
    void aThinnerProposalWhereTheNearestDoesNotGoIn() {
        RewindReport report = report(dynamo(76, "{size: 1 mm, insulation: iec-grade-1}", 60, "plan: {volts: 12 V}"));
        RewindReport.Change change = report.change().orElseThrow();
        assertThat(change.proposals().get(0).fill().orElseThrow().fits()).isFalse();
        assertThat(change.proposed()).isTrue();
        assertThat(change.after().orElseThrow().label()).contains("3 × 26 AWG, single build");
        assertThat(change.after().orElseThrow().fits()).contains(true);
        assertThat(words(report)).contains("but only if every wire lies in its place");
    }

    @Test
    void nothingIsProposedThatDoesNotGoIn() {
        RewindReport report = report(dynamo(90, "{size: 1 mm, insulation: iec-grade-1}", 60, "plan: {volts: 12 V}"));
        RewindReport.Change change = report.change().orElseThrow();
        assertThat(change.proposed()).isFalse();
        assertThat(change.proposals())
                .isNotEmpty()
                .noneMatch(p -> p.fill().orElseThrow().fits());
        assertThat(report.canBeWound()).isFalse();
        assertThat(words(report)).contains("nothing made comes within a tenth of it and goes in");
    }

    @Test
    void thickWireIsNoPlan() {
        RewindReport report = report(dynamo(
                6,
                "{size: 18 AWG, insulation: nema-heavy}",
                60,
                "plan: {wire: {size: 6 AWG, insulation: nema-heavy}}"));
        assertThat(report.found().fits()).contains(true);
        assertThat(report.canBeWound()).isFalse();
        assertThat(words(report)).contains("it does not go in", "as before");
    }

    @Test
    void theSameTurnsKeepTheWire() {
        RewindReport report =
                report(dynamo(6, "{size: 18 AWG, insulation: nema-heavy}", 60, "plan: {volts: 12 V, speed: 3000 rpm}"));
        RewindReport.Change change = report.change().orElseThrow();
        assertThat(change.after().orElseThrow().conductor())
                .isEqualTo(report.found().conductor());
        assertThat(change.ideal()).isEmpty();
        assertThat(change.redesign().orElseThrow().emfAtSpeed()).isCloseTo(12, within(1e-9));
    }

    @Test
    void voltsBetweenBarsGoByTheBars() throws BadInputException {
        // A frog-leg winding has two coils a bar: 48 V · 4 poles / 48 bars.
        RewindReport report = sample("hill-tram-motor.yaml");
        assertThat(report.found().barVolts()).hasValue(4);
        assertThat(report.others()).isEmpty();
        assertThat(RewindReportText.of(report))
                .filteredOn(x -> x.part() == RewindReportSection.Part.OTHERS)
                .singleElement()
                .extracting(RewindReportSection::items)
                .asString()
                .contains("half as many coils");
        RewindReport lap = report("armature: {slots: 24, bars: 48, poles: 4, slotOneInLineWith: bar}\n"
                + "winding: {type: frog-leg, throw: 6, turns: 1}\nplan: {type: lap}");
        assertThat(lap.change().orElseThrow().refused().orElseThrow()).contains("96 live coils on 48 bars");
        assertThat(lap.canBeWound()).isFalse();
    }

    @Test
    void aBareJobSaysWhichKeysTellTheRest() {
        RewindReport report =
                report("armature: {slots: 17, bars: 17, poles: 4, slotOneInLineWith: bar}\nwinding: {type: wave}\n"
                        + "plan: {volts: 12 V, turns: 3}");
        assertThat(report.canBeWound()).isTrue();
        assertThat(report.missing())
                .anyMatch(m -> m.contains("winding.turns"))
                .anyMatch(m -> m.contains("wire.size"))
                .anyMatch(m -> m.contains("core.meanTurn"))
                .anyMatch(m -> m.contains("rating.volts"));
        assertThat(words(report)).contains("rating.volts", "turns per coil");
    }

    @Test
    void turnsAndWireAreWorkedOutWithoutARating() {
        String bare = dynamo(6, "{size: 18 AWG, insulation: nema-heavy}", 60, "plan: {turns: 12}")
                .replaceFirst("rating: .*\n", "");
        RewindReport report = report(bare);
        RewindReport.Change change = report.change().orElseThrow();
        assertThat(change.redesign()).isEmpty();
        assertThat(change.after().orElseThrow().label()).contains("21 AWG, heavy build");
        assertThat(change.after().orElseThrow().fits()).contains(true);
    }

    @Test
    void anUnknownCoveringIsNotCalledBare() {
        RewindReport unknown = report(dynamo(6, "{size: 18 AWG}", 60, "plan: {volts: 12 V}"));
        assertThat(unknown.found().label()).contains("18 AWG, covering not known");
        assertThat(unknown.found().fill()).isEmpty();
        assertThat(unknown.change().orElseThrow().after().orElseThrow().fill()).isPresent();
        RewindReport measured = report(dynamo(6, "{size: 18 AWG, overall: 1.12 mm}", 60, ""));
        assertThat(measured.found().label()).contains("18 AWG, covering as measured");
        assertThat(words(measured)).doesNotContain("bare\n").contains("heavy build");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "length: 60.0 mm|length: 999999999999 km|core.length is 999999999999 km, beyond any armature",
                "width: 9 mm|width: 999999999999 km|core.slot.width is 999999999999 km",
                "volts: 6 V|volts: 999999999999 kV|rating.volts is 999999999999 kV",
                "volts: 6 V|volts: 0.000001 V|turns per coil is 12000000",
                "size: 18 AWG, insulation: nema-heavy|size: 18 AWG, overall: 9 km|wire, overall is 9 km",
                "length: 60.0 mm|length: 60.0 mm, meanTurn: 9 km|core.meanTurn is 9 km",
                "diameter: 120 mm|diameter: 9 km|core.diameter is 9 km",
                "leads: 0 mm|leads: 9 km|core.leads is 9 km",
                "straight: 4 mm|straight: 9 km|core.endTurn.straight is 9 km",
                "hand-wound, straight: 4 mm|diamond, legAngle: 40, straight: 4 mm, nose: 9 km|core.endTurn.nose is 9 km",
                "diameter: 120 mm|shaft: 9 km|core.shaft is 9 km",
                "rectangular, width: 9 mm|parallel-tooth, topWidth: 9 km, bottomWidth: 5 mm|core.slot.topWidth is 9 km",
                "rectangular, width: 9 mm|parallel-tooth, topWidth: 9 mm, bottomWidth: 9 km|core.slot.bottomWidth is 9 km",
                "current: 10 A|current: 999999999 kA|rating.current is 999999999 kA",
                "speed: 1500 rpm|speed: 999999999 rpm|rating.speed is 999999999 rpm",
                "plan: {volts: 12 V}|plan: {volts: 999999999 kV}|planned voltage is 999999999 kV",
                "plan: {volts: 12 V}|plan: {speed: 999999999 rpm}|planned speed is 999999999 rpm",
                "plan: {volts: 12 V}|plan: {wire: {size: 18 AWG, overall: 9 km}}|planned wire, overall is 9 km",
                "{size: 18 AWG, insulation: nema-heavy}|{strip: {width: 9 m, thickness: 1 mm}}|wire, strip width is 9 m",
                "{size: 18 AWG, insulation: nema-heavy}|{strip: {width: 9 mm, thickness: 9 m}}|strip thickness is 9 m",
                "{size: 18 AWG, insulation: nema-heavy}|{strip: {width: 9 mm, thickness: 1 mm, covering: 9 m}}|strip"
                        + " covering is 9 m",
                "liner: 0.3 mm|liner: 4.6 mm|leave no room in the slot",
            })
    void absurdSizesAreRefused(String was, String becomes, String message) {
        String yaml = dynamo(1, "{size: 18 AWG, insulation: nema-heavy}", 60, "plan: {volts: 12 V}");
        assertThat(yaml).contains(was);
        Job job = job(yaml.replace(was, becomes));
        assertThatThrownBy(() -> RewindReport.of(job, USUAL))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(message);
    }

    @Test
    void everyWireInEverySlotIsCountedInTime() {
        RewindReport report =
                report(dynamo(10_000, "{size: 0.04 mm, insulation: iec-grade-2, inHand: 100}", 60, "plan: {turns: 1}"));
        assertThat(report.found().fill().orElseThrow().wires()).isEqualTo(2_000_000);
        assertThat(report.found().fits()).contains(false);
        assertThat(words(report)).contains("over 1000 %");
    }

    @Test
    void settingsAreChecked() {
        assertThatThrownBy(() -> new RewindReport.Settings(List.of(), 0.1, 5)).hasMessageContaining("temperature");
        assertThatThrownBy(() -> new RewindReport.Settings(List.of(900.0), 0.1, 5))
                .hasMessageContaining("900 °C");
        assertThatThrownBy(() -> new RewindReport.Settings(List.of(20.0), 1.1, 5))
                .hasMessageContaining("110 %");
        assertThatThrownBy(() -> new RewindReport.Settings(List.of(20.0), 0.1, 51))
                .hasMessageContaining("51");
    }

    @Test
    void limitsBearTheirSources() throws BadInputException {
        RewindReport report = sample("sawmill-belt-motor.yaml");
        assertThat(report.found().checks())
                .extracting(RewindReportState.Check::limit)
                .contains(Limit.of("density-continuous"), Limit.of("bar-volts"), Limit.of("fill-usual"));
        assertThat(words(report)).contains("common practice (from memory)", "glossary of motor terms");
        assertThat(report.found().conductor().orElseThrow())
                .isInstanceOfSatisfying(
                        Conductor.Round.class, r -> assertThat(r.strands()).isEqualTo(2));
    }

    @Test
    void theOtherWindingsTellWhichIsTheOneFound() {
        String full = words(report(dynamo(8, "{size: 16 AWG, insulation: nema-heavy}", 60, "")));
        assertThat(full).contains("simplex wave, progressive (as it is), 1-5").doesNotContain("but for the throw");
        String chorded = words(report(dynamo(8, "{size: 16 AWG, insulation: nema-heavy}", 60, "")
                .replace("type: wave,", "type: wave, throw: 3,")));
        assertThat(chorded).contains("simplex wave, progressive (as it is, other throw), 1-5");
    }

    @Test
    void aSizeIsSaidToGoInOnlyWhereTheSlotIsKnown() {
        String wire = "{size: 16 AWG, insulation: nema-heavy}";
        String known = dynamo(8, wire, 60, "plan: {volts: 12 V}");
        assertThat(words(report(known))).contains("; nearest size made that goes in");
        String unknown = known.replaceAll("core: .*", "core: {meanTurn: 300 mm}");
        assertThat(words(report(unknown))).contains("; nearest size made\n").doesNotContain("made that goes in");
    }

    private static String words(RewindReport report) {
        StringBuilder out = new StringBuilder();
        for (RewindReportSection s : RewindReportText.of(report)) {
            out.append(s.title()).append('\n');
            s.facts().forEach((k, v) -> out.append(k).append(' ').append(v).append('\n'));
            s.table().ifPresent(t -> t.rows().forEach(r -> out.append(r).append('\n')));
            s.items().forEach(i -> out.append(i).append('\n'));
        }
        return out.toString();
    }
}
