package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class JobTextTest {
    private static final String TEXT = """
            # The pump's dynamo; bars counted twice.
            coilwright: 1
            title: Orchard pump dynamo   # as on the plate
            armature: {slots: 17, bars: 17, poles: 4}
            winding:
              type: wave
              # measured at the back
              throw: 4
              turns: 6  # by the old coil

            # the small growler
            growler:
              halfGap: 40
              face: 50
            """;

    private static JobText text() {
        return JobText.of("job.yaml", TEXT);
    }

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("../samples/jobs"))) {
            return files.sorted().toList().stream();
        }
    }

    @Test
    void changesOneFieldsOwnCharactersAndNoOthers() {
        assertThat(text().with("armature.bars", "19").text()).isEqualTo(TEXT.replace("bars: 17", "bars: 19"));
        assertThat(text().with("title", "Pump: east").text())
                .isEqualTo(TEXT.replace("title: Orchard pump dynamo", "title: \"Pump: east\""));
        assertThat(text().with("winding.turns", "7").text()).isEqualTo(TEXT.replace("turns: 6 ", "turns: 7 "));
        assertThat(text().with("growler.face", "55.5").text()).isEqualTo(TEXT.replace("face: 50", "face: 55.5"));
        JobText same = text();
        assertThat(same.with("armature.bars", " 17 ")).isSameAs(same);
    }

    @Test
    void addsFieldsWhereTheirSectionIs() {
        assertThat(text().with("winding.coilResistance", "0.08 ohm").text())
                .isEqualTo(TEXT.replace("old coil\n", "old coil\n  coilResistance: 0.08 ohm\n"));
        assertThat(text().with("armature.slotOneInLineWith", "mica").text())
                .isEqualTo(TEXT.replace("poles: 4}", "poles: 4, slotOneInLineWith: mica}"));
        JobText ringed = text().with("equalizers.every", "2");
        assertThat(ringed.get("equalizers.every")).isEqualTo("2");
        assertThat(ringed.text()).contains("# as on the plate", "# the small growler", "equalizers: {every: 2}");
        assertThat(text().with("winding.deadCoils", "3 9").text()).contains("  deadCoils: [3, 9]\n");
    }

    @Test
    void fieldsAreFoundByTheirPath() {
        JobText listed = text().withType(WindingType.LISTED, text().job().map(Job::build));
        assertThat(listed.get("winding.coils[1].topSlot")).isEqualTo("1");
        assertThat(listed.get("winding.coils[17].topSlot")).isEqualTo("17");
        assertThat(listed.get("winding.coils[0].topSlot")).isEmpty();
        assertThat(listed.get("winding.coils[18].topSlot")).isEmpty();
        assertThat(text().get("armature[1].slots")).isEmpty();
        assertThat(text().with("winding.deadCoils", "3 9").get("winding.deadCoils"))
                .isEqualTo("3, 9");
        assertThatThrownBy(() -> text().get("winding.9x")).hasMessage("\"winding.9x\" names no field");
        assertThat(text().named("other.yaml")
                        .with("armature.poles", "3")
                        .problems()
                        .get(0)
                        .file())
                .isEqualTo("other.yaml");
        assertThat(JobText.of("job.yaml", text().job().orElseThrow()).job()).isEqualTo(text().job());
    }

    @Test
    void fillsWhatIsBlankAndReplacesWholeBlocks() {
        assertThat(JobText.of("j", "coilwright: 1\ntitle:\narmature: {slots: 4}\n")
                        .with("title", "Pump")
                        .text())
                .isEqualTo("coilwright: 1\ntitle: Pump\narmature: {slots: 4}\n");
        assertThat(JobText.of("j", "title: >\n  An old\n  pump\ncoilwright: 1\n")
                        .with("title", "Pump")
                        .text())
                .isEqualTo("title: Pump\ncoilwright: 1\n");
        assertThat(JobText.of("j", "coilwright: 1\narmature: {slots: 4}")
                        .with("title", "Pump")
                        .text())
                .isEqualTo("coilwright: 1\narmature: {slots: 4}\ntitle: Pump\n");
        assertThat(JobText.of("j", "growler: {}\n").with("growler.face", "50").text())
                .isEqualTo("growler: {face: 50}\n");
        // Blocks alone: the new field stands before them.
        assertThat(JobText.of("j", "armature:\n  slots: 4\nwinding:\n  type: lap\n")
                        .with("title", "Pump")
                        .text())
                .isEqualTo("title: Pump\narmature:\n  slots: 4\nwinding:\n  type: lap\n");
        assertThat(JobText.of("j", "armature:\n  slots: 4\ntitle: Pump\n")
                        .with("growler.face", "50")
                        .text())
                .isEqualTo("armature:\n  slots: 4\ntitle: Pump\ngrowler: {face: 50}\n");
        assertThat(JobText.of("j", "notes:\n  - old\nitems: [1, 2]\n")
                        .with("title", "Pump")
                        .text())
                .isEqualTo("notes:\n  - old\nitems: [1, 2]\ntitle: Pump\n");
        assertThatThrownBy(() -> JobText.of("j", "- a list\n").with("title", "Pump"))
                .hasMessage(
                        "title cannot be reached: the file is not laid out as keys and values; mend it in a text editor");
        assertThatThrownBy(() -> JobText.of("j", "title: [\n").with("title", "Pump"))
                .hasMessageContaining("cannot be reached");
        assertThat(JobText.of("j", "- a list\n").editable()).isFalse();
    }

    private static final String JSON =
            "{\"coilwright\": 1, \"title\": \"Pump\", \"armature\": {\"slots\": 4, \"bars\": 4, \"poles\": 2},"
                    + " \"winding\": {\"type\": \"lap\"}}";

    @Test
    void jsonStaysJson() {
        JobText json = JobText.of("job.json", JSON);
        assertThat(json.with("armature.bars", "8").text()).isEqualTo(JSON.replace("\"bars\": 4", "\"bars\": 8"));
        assertThat(json.with("title", "12").text()).isEqualTo(JSON.replace("\"Pump\"", "\"12\""));
        assertThat(json.with("winding.turns", "6").text()).isEqualTo(JSON.replace("\"lap\"", "\"lap\", \"turns\": 6"));
        assertThat(json.with("growler.face", "50").text())
                .isEqualTo(JSON.replace("\"lap\"}", "\"lap\"}, \"growler\": {\"face\": 50}"));
        JobText listed = json.withType(WindingType.LISTED, json.job().map(Job::build));
        assertThat(listed.problems()).isEmpty();
        assertThat(listed.text())
                .contains(
                        "\"coils\": [{\"coil\": 1, \"topSlot\": 1, \"bottomSlot\": 3, \"topBar\": 1, \"bottomBar\": 2}, ");
        RunOutEntry entry = new RunOutEntry(2, new Quantity(new BigDecimal("0.05"), "mm"));
        assertThat(json.withRunOut(List.of(entry)).text())
                .endsWith("\"commutator\": {\"runOut\": [{\"bar\": 2, \"height\": \"0.05 mm\"}]}}");
        assertThat(json.withRunOut(List.of(entry)).withRunOut(List.of()).text()).isEqualTo(JSON);
        JobText read = json.withReadings(List.of(new ReadingSet(
                Optional.empty(),
                TestKind.RESISTANCE,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("ohm"),
                Optional.empty(),
                Optional.empty(),
                List.of(new TakenReading(1, 2, new TakenReading.Value(new BigDecimal("0.4"), Optional.empty()))))));
        assertThat(read.job().orElseThrow().readings()).hasSize(1);
        assertThatThrownBy(() -> json.with("armature.poles", "3").withReadings(List.of()))
                .hasMessage("readings are put into a job without mistakes only: mend them first");
    }

    @Test
    void anOffsetThatIsWrittenStaysWritten() {
        JobText with = text().with("winding.leadOffset", "2");
        assertThat(with.withWinding(17, WindingSpec.wave(1, Direction.PROGRESSIVE))
                        .get("winding.leadOffset"))
                .isEqualTo("0");
        assertThat(text().withWinding(17, WindingSpec.wave(1, Direction.PROGRESSIVE))
                        .get("winding.leadOffset"))
                .isEmpty();
        assertThat(text().withWinding(
                                17, WindingSpec.wave(1, Direction.PROGRESSIVE).withLeadOffset(3))
                        .get("winding.leadOffset"))
                .isEqualTo("3");
        JobText stepped = text().withWinding(
                        17, WindingSpec.wave(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofPositions(4)));
        assertThat(stepped.get("winding.backSpan")).isEqualTo("4");
        assertThat(stepped.get("winding.throw")).isEmpty();
        JobText thrown = stepped.withWinding(
                17, WindingSpec.wave(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(3)));
        assertThat(thrown.get("winding.throw")).isEqualTo("3");
        assertThat(thrown.get("winding.backSpan")).isEmpty();
    }

    @Test
    void leavesFieldsOutWithTheirLineOnly() {
        assertThat(text().with("winding.turns", "").text())
                .isEqualTo(TEXT.replace("  turns: 6  # by the old coil\n", ""));
        assertThat(text().without("armature.slots").text()).isEqualTo(TEXT.replace("slots: 17, ", ""));
        assertThat(text().without("armature.poles").text()).isEqualTo(TEXT.replace(", poles: 4", ""));
        assertThat(text().without("growler.face").without("growler.halfGap").text())
                .isEqualTo(TEXT.replace("growler:\n  halfGap: 40\n  face: 50\n", ""));
        assertThat(text().without("winding").text())
                .contains("# the small growler")
                .doesNotContain("wave");
    }

    @Test
    void holdsWhatIsWrongAndSaysWhere() {
        JobText wrong = text().with("armature.poles", "3").with("winding.turns", "many, 1: x # y\"");
        assertThat(wrong.get("winding.turns")).isEqualTo("many, 1: x # y\"");
        assertThat(wrong.job()).isEmpty();
        assertThat(wrong.problems()).extracting(Problem::field).containsExactly("armature.poles", "winding.turns");
        assertThat(wrong.with("armature.poles", "4").with("winding.turns", "6").text())
                .isEqualTo(TEXT);
    }

    @Test
    void changesTheTypeWithTheKeysItHasUseFor() {
        JobText listed = text().withType(WindingType.LISTED, text().job().map(Job::build));
        assertThat(listed.problems()).isEmpty();
        assertThat(listed.size("winding.coils")).isEqualTo(17);
        assertThat(listed.text()).contains("# measured at the back", "turns: 6  # by the old coil");
        JobText moved = listed.with("winding.coils[3].topBar", "9");
        assertThat(moved.get("winding.coils[3].topBar")).isEqualTo("9");
        assertThat(moved.text())
                .isEqualTo(listed.text()
                        .replace(
                                "{coil: 3, topSlot: 3, bottomSlot: 7, topBar: 3,",
                                "{coil: 3, topSlot: 3, bottomSlot: 7, topBar: 9,"));
        JobText lap = listed.withType(WindingType.LAP, Optional.empty());
        assertThat(lap.problems()).isEmpty();
        assertThat(lap.job().orElseThrow().winding()).isEqualTo(WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    @Test
    void takesAWindingThatFits() {
        var spec = WindingSpec.wave(1, Direction.RETROGRESSIVE)
                .withSpan(CoilSpan.ofPositions(7))
                .withDeadCoils(List.of(34));
        JobText changed = text().withWinding(33, spec);
        assertThat(changed.job().orElseThrow().winding()).isEqualTo(spec);
        assertThat(changed.job().orElseThrow().armature()).isEqualTo(Armature.of(17, 33, 4));
        assertThat(changed.text()).contains("# measured at the back");
    }

    @Test
    void putsReadingsInWithoutTouchingTheRest() {
        var set = new ReadingSet(
                Optional.empty(),
                TestKind.DROP,
                Optional.of(new ReadingSet.GivenFeed(1, 5, BigDecimal.ONE)),
                Optional.empty(),
                Optional.empty(),
                Optional.of("mV"),
                Optional.empty(),
                Optional.empty(),
                List.of(TakenReading.of(1, 2, "17.2")));
        JobText with = text().withReadings(List.of(set));
        assertThat(with.text()).startsWith(TEXT);
        assertThat(with.job().orElseThrow().readings()).containsExactly(set);
        assertThat(with.withReadings(List.of()).text()).isEqualTo(TEXT);
        assertThat(with.with("growler.face", "51")
                        .withReadings(List.of(set, set))
                        .job()
                        .orElseThrow()
                        .readings())
                .hasSize(2);
    }

    private static List<String> runOut(JobText text) {
        return text.job().orElseThrow().particulars().commutator().stream()
                .flatMap(c -> c.runOut().stream())
                .map(e -> e.bar() + " " + e.height())
                .toList();
    }

    @Test
    void putsRunOutInAndTakesItOut() {
        List<RunOutEntry> two = List.of(
                new RunOutEntry(1, Quantity.parse("0.01 mm", Quantity.Kind.LENGTH)),
                new RunOutEntry(2, Quantity.parse("-5 µm", Quantity.Kind.LENGTH)));
        for (String section : List.of(
                "",
                "commutator: {diameter: 48 mm} # kept\n",
                "commutator:\n  diameter: 48 mm # kept\n",
                "commutator:\n  runOut: [{bar: 9, height: 1 thou}]\n  diameter: 48 mm # kept\n",
                "commutator:\n  # kept\n  diameter: 48 mm\n  runOut:\n    - {bar: 9, height: 1 thou}\nnotes: [a]\n")) {
            JobText text = JobText.of("t", TEXT + section);
            JobText with = text.withRunOut(two);
            assertThat(with.problems()).as(section).isEmpty();
            assertThat(runOut(with)).as(section).containsExactly("1 0.01 mm", "2 -5 µm");
            assertThat(with.text()).contains(section.isEmpty() ? "" : "# kept");
            assertThat(with.text().lines()).containsAll(TEXT.lines().toList());
            assertThat(runOut(with.withRunOut(List.of()))).isEmpty();
        }
        JobText json = JobText.of(
                "j.json",
                "{\"coilwright\": 1, \"title\": \"T\", \"armature\": {\"slots\": 17, \"bars\": 17, \"poles\": 4},"
                        + " \"winding\": {\"type\": \"wave\"}}\n");
        assertThat(runOut(json.withRunOut(two))).containsExactly("1 0.01 mm", "2 -5 µm");
    }

    @Test
    void takesJsonAndWhatIsNoYaml() {
        String json = "{\"coilwright\": 1, \"title\": \"T\", \"armature\": {\"slots\": 17, \"bars\": 17, \"poles\": 4},"
                + " \"winding\": {\"type\": \"wave\"}}\n";
        JobText changed = JobText.of("j.json", json)
                .with("winding.direction", "retrogressive")
                .with("growler.face", "50");
        assertThat(changed.problems()).isEmpty();
        assertThat(changed.text()).contains("\"direction\": \"retrogressive\"").contains("\"growler\": {\"face\": 50}");
        JobText none = JobText.of("x", "a: [");
        assertThat(none.editable()).isFalse();
        assertThat(none.problems()).hasSize(1);
        assertThat(none.get("title")).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everyFieldOfEverySampleCanBeChangedThereAndBack(Path file) throws Exception {
        JobText sample = JobText.read(file);
        Map<String, String> others = new LinkedHashMap<>();
        others.put("title", "A \"new\" one: №1 # 7");
        others.put("armature.slots", "23");
        others.put("armature.slotOneInLineWith", "mica");
        others.put("winding.plex", "2");
        others.put("winding.throw", "3");
        others.put("winding.turns", "11");
        others.put("winding.coilResistance", "2 mohm");
        others.put("growler.halfGap", "44");
        others.put("equalizers.every", "1");
        others.forEach((path, value) -> {
            JobText changed = sample.with(path, value);
            assertThat(changed.get(path)).isEqualTo(value);
            JobText back = changed.with(path, sample.get(path));
            assertThat(back.job()).as(path).isEqualTo(sample.job());
            JobText gone = changed.without(path);
            assertThat(gone.editable()).isTrue();
            assertThat(gone.get(path)).isEmpty();
            others.keySet().stream()
                    .filter(p -> !p.equals(path))
                    .forEach(p -> assertThat(gone.get(p)).as(p).isEqualTo(sample.get(p)));
        });
    }

    @Test
    void aWordThatStandsForNothingIsKeptAsAWord() {
        JobText job = JobText.of("x", "coilwright: 1\ntitle: A\nrating:\n  volts: 6 V\n");
        for (String word : List.of("null", "Null", "NULL", "nUll", "~")) {
            assertThat(job.with("rating.volts", word).get("rating.volts")).isEqualTo(word);
            assertThat(job.with("title", word).get("title")).isEqualTo(word);
        }
    }

    @Test
    void everyWayToEndALineIsKnown() {
        String text = "coilwright: 1\ntitle: A\nwinding:\n  type: lap\n  # short\n  throw: 5\nnotes: B\n";
        for (String end : List.of("\n", "\r\n", "\r")) {
            JobText job = JobText.of("x", text.replace("\n", end));
            JobText changed = job.with("winding.turns", "4");
            assertThat(changed.text())
                    .isEqualTo(text.replace("\n", end).replace("throw: 5" + end, "throw: 5" + end + "  turns: 4\n"));
            assertThat(changed.get("notes")).isEqualTo("B");
            assertThat(job.without("winding.throw").text())
                    .isEqualTo(text.replace("  throw: 5\n", "").replace("\n", end));
            assertThat(job.with("winding.type", "wave").without("notes").text())
                    .isEqualTo(text.replace("lap", "wave")
                            .replace("notes: B\n", "")
                            .replace("\n", end));
        }
    }
}
