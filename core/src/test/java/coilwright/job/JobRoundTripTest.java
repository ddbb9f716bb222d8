package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.Growler;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What is written reads back the same. */
class JobRoundTripTest {
    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void writtenJobReadsBackEqual(@ForAll("jobs") Job job) throws Exception {
        String text = JobWriter.toText(job);
        assertThat(JobReader.parse("x", text)).isEqualTo(job);
        assertThat(JobWriter.toText(JobReader.parse("x", text))).isEqualTo(text);
    }

    @Property(tries = 500)
    void writtenConnectionListReadsBackEqual(@ForAll("coilLists") List<ListedCoil> coils) throws Exception {
        assertThat(ConnectionList.parse("x", ConnectionList.toText(coils))).isEqualTo(coils);
    }

    @Example
    void fileHoldsTheText() throws Exception {
        Path folder = Files.createTempDirectory("round");
        Path file = folder.resolve("job.yaml");
        Job job = Job.of("T", Armature.of(9, 9, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        JobWriter.write(job, file);
        assertThat(JobReader.read(file)).isEqualTo(job);
        Files.delete(file);
        Files.delete(folder);
    }

    @Provide
    Arbitrary<Job> jobs() {
        Arbitrary<Armature> armatures = Combinators.combine(
                        Arbitraries.integers().between(2, 1000),
                        Arbitraries.integers().between(2, 4000),
                        Arbitraries.integers().between(1, 50).map(p -> 2 * p),
                        Arbitraries.of(SlotAlignment.values()))
                .as(Armature::new);
        Arbitrary<Optional<Quantity>> resistances = Combinators.combine(
                        Arbitraries.bigDecimals()
                                .between(new BigDecimal("0.001"), new BigDecimal("99999"))
                                .ofScale(3),
                        Arbitraries.of(Quantity.Kind.RESISTANCE.units()))
                .as(Quantity::new)
                .optional();
        Arbitrary<Growler> growlers = Combinators.combine(
                        Arbitraries.doubles().between(20, 160).ofScale(2),
                        Arbitraries.doubles().between(1, 40).ofScale(2))
                .as(Growler::new);
        Arbitrary<Optional<Equalizers>> equalizers =
                Arbitraries.integers().between(1, 4000).map(Equalizers::new).optional();
        return armatures.flatMap(a -> Combinators.combine(
                        titles(),
                        Arbitraries.just(a),
                        windings(),
                        turns(),
                        resistances,
                        growlers,
                        equalizers,
                        Combinators.combine(Readings.sets(a.bars()).list().ofMaxSize(2), Sections.particulars(a.bars()))
                                .as(Map::entry))
                .as((title, armature, winding, turns, ohms, growler, rings, known) -> new Job(
                        title, armature, winding, turns, ohms, growler, rings, known.getKey(), known.getValue())));
    }

    private static Arbitrary<OptionalInt> turns() {
        return Arbitraries.integers()
                .between(1, Job.MAX_TURNS)
                .optional()
                .map(n -> n.isPresent() ? OptionalInt.of(n.get()) : OptionalInt.empty());
    }

    private static Arbitrary<String> titles() {
        Arbitrary<String> awkward = Arbitraries.of(
                "yes",
                "null",
                "~",
                "1921",
                "1e3",
                "0x1F",
                "2021-07-12",
                ".inf",
                "- a",
                "a: b",
                "a #b",
                "a # b",
                "'",
                "\"",
                "\\",
                "{a}",
                "[a]",
                "&a",
                "*a",
                "!a",
                "%a",
                "@a",
                "`a",
                "|",
                ">",
                " a",
                "a ",
                "=",
                "<<",
                "on",
                "N",
                "é",
                "モーター",
                "🧲",
                "a\u00A0b",
                "true",
                "1:30",
                "?",
                "---",
                "...");
        Arbitrary<String> any =
                Arbitraries.strings().ofMinLength(1).ofMaxLength(40).filter(JobRoundTripTest::isTitle);
        Arbitrary<String> ascii = Arbitraries.strings()
                .withCharRange(' ', '~')
                .ofMinLength(1)
                .ofMaxLength(40)
                .filter(s -> !s.isBlank());
        return Arbitraries.oneOf(awkward, any, ascii);
    }

    private static boolean isTitle(String text) {
        try {
            Job.checkTitle(text);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private static Arbitrary<WindingSpec> windings() {
        Arbitrary<CoilSpan> spans = Arbitraries.oneOf(
                Arbitraries.just(CoilSpan.usual()),
                Arbitraries.integers().between(1, 1000).map(CoilSpan::ofThrow),
                Arbitraries.integers().between(1, 8000).map(CoilSpan::ofPositions));
        Arbitrary<Integer> plexes = Arbitraries.integers().between(1, WindingSpec.MAX_PLEX);
        Arbitrary<Direction> directions = Arbitraries.of(Direction.values());
        Arbitrary<Integer> offsets = Arbitraries.integers().between(-4000, 4000);
        Arbitrary<WindingSpec> regular = Combinators.combine(
                        Arbitraries.of(WindingType.LAP, WindingType.WAVE),
                        plexes,
                        directions,
                        spans,
                        Arbitraries.integers()
                                .between(1, 8000)
                                .set()
                                .ofMaxSize(6)
                                .map(List::copyOf),
                        offsets)
                .as(WindingSpec.Regular::new);
        Arbitrary<WindingSpec> frogLeg =
                Combinators.combine(plexes, directions, spans, offsets).as(WindingSpec.FrogLeg::new);
        Arbitrary<WindingSpec> listed = lists().map(WindingSpec.Listed::new);
        return Arbitraries.oneOf(regular, frogLeg, listed);
    }

    @Provide
    Arbitrary<List<ListedCoil>> coilLists() {
        return lists();
    }

    private static Arbitrary<List<ListedCoil>> lists() {
        Arbitrary<OptionalInt> bars = Arbitraries.integers()
                .between(1, 4000)
                .optional()
                .map(n -> n.isPresent() ? OptionalInt.of(n.get()) : OptionalInt.empty());
        Arbitrary<Integer> slots = Arbitraries.integers().between(1, 1000);
        return Combinators.combine(Arbitraries.integers().between(1, 8000), slots, slots, bars, bars)
                .as(ListedCoil::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(12)
                .uniqueElements(ListedCoil::coil);
    }
}
