package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The schema that ships with the library says what the reader says. */
class JobSchemaTest {
    private static final Path SAMPLES = Path.of("../samples/jobs");
    private static final Path MALFORMED = Path.of("src/test/resources/coilwright/job/malformed");

    /** What a schema cannot see: how a value is written, or sums over several values. */
    private static final Set<String> BEYOND_A_SCHEMA = Set.of(
            "null-tag.yaml",
            "title-half-a-character.yaml",
            "blank-title.yaml",
            "commutator-minimum-over.yaml",
            "core-length-zero.yaml",
            "core-shaft-too-thick.yaml",
            "end-turn-angle-for-hand.yaml",
            "end-turn-too-steep.yaml",
            "end-turn-without-angle.yaml",
            "growler-faces-overlap.yaml",
            "key-twice.yaml",
            "measured-index-alone.yaml",
            "measured-too-hot.yaml",
            "notes-blank.yaml",
            "plan-listed.yaml",
            "plan-plex-alone.yaml",
            "readings-bar-beyond.yaml",
            "readings-feed-at-one-bar.yaml",
            "readings-same-bar.yaml",
            "readings-to-shaft.yaml",
            "readings-unit-of-other-kind.yaml",
            "readings-without-unit.yaml",
            "run-out-bar-beyond.yaml",
            "section-twice.yaml",
            "slot-depth-twice.yaml",
            "slot-lacks-size.yaml",
            "slot-other-shape.yaml",
            "slots-hexadecimal.yaml",
            "slots-octal.yaml",
            "slots-with-exponent.yaml",
            "strip-too-round.yaml",
            "title-is-date.yaml",
            "two-documents.yaml",
            "wire-both.yaml",
            "wire-covering-not-made.yaml",
            "wire-neither.yaml",
            "wire-no-such-size.yaml",
            "wire-overall-under-bare.yaml");

    /** Sections whose keys are the components of a record. */
    static final Map<String, Class<? extends Record>> SECTIONS = new LinkedHashMap<>();

    static {
        SECTIONS.put("rating", Rating.class);
        SECTIONS.put("wire", WireChoice.class);
        SECTIONS.put("core", CoreSizes.class);
        SECTIONS.put("commutator", CommutatorSizes.class);
        SECTIONS.put("asFound", AsFound.class);
        SECTIONS.put("plan", Plan.class);
        SECTIONS.put("asRewound", AsRewound.class);
    }

    private static JsonNode schemaText() throws IOException {
        try (InputStream in = JobReader.class.getResourceAsStream("/coilwright/job.schema.json")) {
            return new ObjectMapper().readTree(in);
        }
    }

    private static JsonSchema schema() throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(schemaText());
    }

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(SAMPLES)) {
            return files.sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleFits(Path sample) throws IOException {
        JsonNode tree = new YAMLMapper().readTree(Files.readString(sample));
        assertThat(schema().validate(tree)).isEmpty();
    }

    @Test
    void malformedFilesDoNotFit() throws IOException {
        List<String> fitting = new ArrayList<>();
        int tried = 0;
        try (Stream<Path> files = Files.list(MALFORMED)) {
            for (Path file : files.filter(p -> p.toString().endsWith(".yaml")).toList()) {
                JsonNode tree;
                try {
                    tree = new YAMLMapper().readTree(Files.readString(file));
                } catch (IOException e) {
                    continue;
                }
                // JSON has no bytes, so that no schema speaks of them.
                if (Files.readString(file).contains("!!binary")) {
                    continue;
                }
                tried++;
                if (schema().validate(tree).isEmpty()) {
                    fitting.add(file.getFileName().toString());
                }
            }
        }
        assertThat(tried).isGreaterThan(70);
        assertThat(fitting).containsExactlyInAnyOrderElementsOf(BEYOND_A_SCHEMA);
    }

    @Test
    void keysAreTheReadersKeys() throws IOException {
        JsonNode root = schemaText();
        assertThat(keys(root)).isEqualTo(JobReader.TOP_KEYS);
        JsonNode sections = root.get("properties");
        assertThat(keys(sections.get("armature"))).isEqualTo(JobReader.ARMATURE_KEYS);
        assertThat(keys(sections.get("winding"))).isEqualTo(JobReader.WINDING_KEYS);
        assertThat(keys(sections.get("winding").get("properties").get("coils").get("items")))
                .isEqualTo(JobReader.COIL_KEYS);
        assertThat(keys(sections.get("growler"))).isEqualTo(JobReader.GROWLER_KEYS);
        assertThat(keys(sections.get("equalizers"))).isEqualTo(JobReader.EQUALIZER_KEYS);
        JsonNode set = sections.get("readings").get("items");
        assertThat(keys(set)).isEqualTo(ReadingsSection.SET_KEYS);
        assertThat(keys(set.at("/properties/feed"))).isEqualTo(ReadingsSection.FEED_KEYS);
        assertThat(keys(set.at("/properties/readings/items"))).isEqualTo(ReadingsSection.READING_KEYS);
    }

    @Test
    void sectionsAreTheRecords() throws IOException {
        JsonNode sections = schemaText().get("properties");
        for (var section : SECTIONS.entrySet()) {
            JsonNode written = sections.get(section.getKey()).deepCopy();
            ((ObjectNode) written).remove("description");
            assertThat(written).as(section.getKey()).isEqualTo(SectionSchema.of(section.getValue()));
        }
        assertThat(sections.at("/notes/items")).isEqualTo(SectionSchema.line());
        assertThat(words(sections.at("/readings/items/properties/stage")))
                .containsExactlyElementsOf(ReadingsSection.STAGES.keySet());
    }

    @Test
    void sectionsHoldOnlyWhatCanBeReadAndWritten() {
        Deque<Class<? extends Record>> open = new ArrayDeque<>(SECTIONS.values());
        int seen = 0;
        while (!open.isEmpty()) {
            for (SectionKey key : SectionKey.of(open.pop())) {
                assertThat(key.isKnownKind()).as(key.toString()).isTrue();
                seen++;
                if (key.isSection()) {
                    open.push(key.type().asSubclass(Record.class));
                }
            }
        }
        assertThat(seen).isGreaterThan(60);
    }

    @Test
    void wordsAreTheReadersWords() throws IOException {
        JsonNode winding = schemaText().at("/properties/winding/properties");
        assertThat(words(winding.get("type"))).containsExactlyElementsOf(JobReader.TYPES.keySet());
        assertThat(words(winding.get("direction"))).containsExactlyElementsOf(JobReader.DIRECTIONS.keySet());
        assertThat(words(schemaText().at("/properties/armature/properties/slotOneInLineWith")))
                .containsExactlyElementsOf(JobReader.ALIGNMENTS.keySet());
        JsonNode set = schemaText().at("/properties/readings/items/properties");
        assertThat(words(set.get("test"))).containsExactlyElementsOf(ReadingsSection.TESTS.keySet());
        List<String> units = new ArrayList<>();
        for (Quantity.Kind kind : List.of(Quantity.Kind.VOLTAGE, Quantity.Kind.RESISTANCE, Quantity.Kind.CURRENT)) {
            units.addAll(kind.units());
        }
        assertThat(words(set.get("unit"))).containsExactlyElementsOf(units);
    }

    @Test
    void everyResistanceUnitFits() throws IOException {
        JsonNode tree = new YAMLMapper().readTree(Files.readString(SAMPLES.resolve("orchard-pump-dynamo.yaml")));
        var winding = (ObjectNode) tree.get("winding");
        for (String unit : Quantity.Kind.RESISTANCE.units()) {
            winding.put("coilResistance", "0.5 " + unit);
            assertThat(schema().validate(tree)).as(unit).isEmpty();
        }
        for (Quantity.Kind kind : Quantity.Kind.values()) {
            if (kind != Quantity.Kind.RESISTANCE) {
                winding.put("coilResistance", "0.5 " + kind.units().get(0));
                assertThat(schema().validate(tree)).as(kind.words()).isNotEmpty();
            }
        }
    }

    private static List<String> keys(JsonNode section) {
        List<String> keys = new ArrayList<>();
        section.get("properties").fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    private static List<String> words(JsonNode field) {
        List<String> words = new ArrayList<>();
        field.get("enum").forEach(w -> words.add(w.textValue()));
        return words;
    }
}
