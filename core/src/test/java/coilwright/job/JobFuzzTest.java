package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AddLifecycleHook;

/** Whatever a job file holds, it is read or refused in words; what is read can be written, drawn and printed. */
@AddLifecycleHook(FuzzCases.class)
class JobFuzzTest {
    private static final Path SAMPLES = Path.of("../samples/jobs");
    private static final Path MALFORMED = Path.of("src/test/resources/coilwright/job/malformed");
    private static final Path FULL = Path.of("src/test/resources/coilwright/sheet/full-job.yaml");

    /** Drawing and printing take longer than reading. */
    private static final int ONE_USED_IN = 10;

    private static final List<String> GOOD = new ArrayList<>();
    private static final List<String> SEEDS = new ArrayList<>();

    static {
        try (Stream<Path> samples = Files.list(SAMPLES);
                Stream<Path> malformed = Files.list(MALFORMED)) {
            for (Path p : samples.sorted().toList()) {
                String text = Files.readString(p);
                if (text.length() < 3000) {
                    GOOD.add(text);
                }
            }
            GOOD.add(Files.readString(FULL));
            GOOD.add("{\"coilwright\": 1, \"title\": \"J\", \"armature\": {\"slots\": 12, \"bars\": 12, \"poles\": 2},"
                    + "\n \"winding\": {\"type\": \"lap\"}}");
            SEEDS.addAll(GOOD);
            SEEDS.addAll(GOOD);
            for (Path p : malformed
                    .filter(f -> f.toString().endsWith(".yaml"))
                    .sorted()
                    .toList()) {
                SEEDS.add(Files.readString(p));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Property
    void everyFileIsReadOrRefusedInWords(@ForAll("files") FuzzInput file) throws Exception {
        checkFile(file);
    }

    @Property
    void everyTextIsReadOrRefusedInWords(@ForAll("texts") FuzzInput text) throws Exception {
        checkText(text);
    }

    @Property
    void aFieldTakesWhateverIsTyped(@ForAll("edits") Edit edit) {
        edit.check();
    }

    @Provide
    Arbitrary<FuzzInput> files() {
        return Arbitraries.randomValue(r -> new Mangler(r, SEEDS).input());
    }

    @Provide
    Arbitrary<FuzzInput> texts() {
        return Arbitraries.randomValue(JobFuzzTest::tree);
    }

    @Provide
    Arbitrary<Edit> edits() {
        return Arbitraries.randomValue(Edit::of);
    }

    static FuzzInput file(Random random) {
        return new Mangler(random, SEEDS).input();
    }

    static FuzzInput tree(Random random) {
        String good = GOOD.get(random.nextInt(GOOD.size()));
        return FuzzInput.of(WildYaml.of(random, random.nextBoolean() ? good : otherParticulars(good, random)));
    }

    private static String otherParticulars(String good, Random random) {
        try {
            Job job = JobReader.parse("good", good);
            return JobWriter.toText(job.withParticulars(
                    Sections.particulars(random, job.armature().bars())));
        } catch (BadInputException e) {
            throw new IllegalStateException(e);
        }
    }

    static void checkFile(FuzzInput input) throws Exception {
        Path file = Scratch.with(input, ".yaml");
        Job job;
        try {
            job = JobReader.read(file);
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
            return;
        }
        checkJob(job, new Random(input.text().hashCode()));
    }

    static void checkText(FuzzInput input) throws Exception {
        Job job;
        try {
            job = JobReader.parse("job\u001b[1m.yaml", input.text());
        } catch (BadInputException e) {
            Refusal.check(e, "job\u001b[1m.yaml", input.text());
            return;
        }
        checkJob(job, new Random(input.text().hashCode()));
    }

    private static void checkJob(Job job, Random random) throws Exception {
        String written = JobWriter.toText(job);
        Refusal.assertHarmless(written);
        Job again = JobReader.parse("again", written);
        assertThat(again).isEqualTo(job);
        assertThat(JobWriter.toText(again)).isEqualTo(written);
        if (random.nextInt(ONE_USED_IN) == 0) {
            JobUse.check(job, random);
        }
    }

    /** A field of a text, right or wrong, and what is typed into it. */
    record Edit(String text, String path, String typed) {
        private static final List<String> PATHS = List.of(
                "title",
                "armature.slots",
                "armature.bars",
                "armature.slotOneInLineWith",
                "winding.type",
                "winding.throw",
                "winding.deadCoils",
                "winding.coilResistance",
                "winding.coils[1].topBar",
                "growler.face",
                "equalizers.every",
                "rating.volts",
                "wire.size",
                "core.slot.depth",
                "commutator.runOut",
                "commutator.runOut[2].height",
                "asFound.measured.temperature");

        static Edit of(Random random) {
            String text = random.nextInt(3) == 0 ? tree(random).text() : new Mangler(random, SEEDS).text();
            var mangler = new Mangler(random, List.of("12 mm", "a", "wave", "1, 2, 3"));
            return new Edit(
                    text.length() > 20_000 ? text.substring(0, 20_000) : text,
                    PATHS.get(random.nextInt(PATHS.size())),
                    random.nextBoolean() ? mangler.wild() : mangler.text());
        }

        void check() {
            JobText before = JobText.of("name", text);
            before.problems().forEach(p -> Refusal.assertSeen(p.toString()));
            JobText after;
            try {
                after = before.with(path, typed);
            } catch (IllegalArgumentException e) {
                assertThat(before.job().isEmpty() || path.endsWith("]") || before.size(path.split("\\[")[0]) < 2)
                        .as(e.getMessage())
                        .isTrue();
                Refusal.assertOwn(e);
                return;
            }
            after.problems().forEach(p -> Refusal.assertSeen(p.toString()));
            if (before.job().isPresent()) {
                assertThat(after.editable())
                        .as("can still be edited: %s", after.text())
                        .isTrue();
                if (!path.equals("winding.deadCoils")) {
                    assertThat(after.get(path)).isEqualTo(typed.strip());
                }
            }
        }

        @Override
        public String toString() {
            return path + " = " + FuzzInput.of(typed) + " in " + FuzzInput.of(text);
        }
    }
}
