package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.Growler;
import coilwright.fault.ConnectionCheck;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AddLifecycleHook;

/** Whatever a file in columns holds, or is typed as a reading, it is read or refused in words. */
@AddLifecycleHook(FuzzCases.class)
class TableFuzzTest {
    private static final int BARS = 12;
    private static final Winding PLAN =
            Winding.build(Armature.of(BARS, BARS, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));

    private static final List<String> READINGS = List.of(
            "from,to,reading\n1,2,0.52\n2,3,0.51\n3,4,OL\n4,5,\n# end\n",
            "from;to;reading\n1;2;0,52 mV\n2;3;0,51 mV\n",
            "to\treading\tfrom\n1\t-5 V\t2\n",
            "from,to,reading\n1,shaft,12 Mohm\nshaft,2,OL\n",
            "from,to,reading\n1,2,\"1,5\"\n2,3,\"2,5\"\n1,2,\u22123e-2\n",
            "\"from\",\"to\",\"reading\"\r\n\"1\",\"2\",\"12 mV\"\r\n");

    private static final List<String> JOURNALS = List.of(
            "# test: drop\n# feed: {in: 1, out: 5, amps: 1}\n# unit: mV\nfrom,to,reading\n1,2,172.2 mV\n1,2,170 mV\n",
            "# test: ground\n# unit: Mohm\nfrom,to,reading\n1,shaft,12 Mohm\nshaft,2,OL\n3,sha",
            "# test: growler\n# angle: 10.5\n# unit: V\n# meter: bench meter 2\nfrom,to,reading\n2,3,1 V\n",
            "# test: polarity\n# date: 2021-07-12\n# temperature: 20 \u00b0C\nfrom,to,reading\n1,2,1\n2,3,-1\n");

    private static final List<String> RUN_OUTS = List.of(
            "bar,height\n1,0.012 mm\n2,0.010 mm\n3,\n",
            "bar;height\n1;0,012\n2;0,01\n",
            "height,bar\n12 \u00b5m,1\n-3 um,2\n0.5 thou,3\n",
            "# gauge 3\nbar,height\n1,5\n1,6\n2,\u22125\n");

    private static final List<String> CONNECTIONS = List.of(
            ConnectionList.toText(PLAN),
            "coil,topSlot,bottomSlot,topBar,bottomBar\n1,1,7,1,2\n2,2,8,2,3\n2,2,8,,\n",
            "topBar,bottomBar,coil,topSlot,bottomSlot,dead\n1,2,1,1,7,false\n,,2,2,8,true\n",
            "\"coil\",\"topSlot\",\"bottomSlot\",\"topBar\",\"bottomBar\"\r\n1,1,7,1,2\r\n");

    private static final List<String> TYPED = List.of("172.2", "172,2 mV", "OL", "-12", "0.5 V", "12 ohm", "1");

    @Property
    void readings(@ForAll("readings") FuzzInput input) throws Exception {
        checkReadings(input);
    }

    @Property
    void journals(@ForAll("journals") FuzzInput input) throws Exception {
        checkJournal(input);
    }

    @Property
    void typed(@ForAll("typed") FuzzInput input) throws Exception {
        checkTyped(input);
    }

    @Property
    void amps(@ForAll("amps") FuzzInput input) throws Exception {
        checkAmps(input);
    }

    @Property
    void runOut(@ForAll("runOut") FuzzInput input) throws Exception {
        checkRunOut(input);
    }

    @Property
    void connections(@ForAll("connections") FuzzInput input) throws Exception {
        checkConnections(input);
    }

    @Provide("readings")
    Arbitrary<FuzzInput> readingsFiles() {
        return Arbitraries.randomValue(TableFuzzTest::readingsFile);
    }

    @Provide("journals")
    Arbitrary<FuzzInput> journalFiles() {
        return Arbitraries.randomValue(TableFuzzTest::journalFile);
    }

    @Provide("typed")
    Arbitrary<FuzzInput> typedTexts() {
        return Arbitraries.randomValue(TableFuzzTest::typedText);
    }

    @Provide("amps")
    Arbitrary<FuzzInput> typedAmps() {
        return Arbitraries.randomValue(TableFuzzTest::typedAmps);
    }

    @Provide("runOut")
    Arbitrary<FuzzInput> runOutFiles() {
        return Arbitraries.randomValue(TableFuzzTest::runOutFile);
    }

    @Provide("connections")
    Arbitrary<FuzzInput> connectionFiles() {
        return Arbitraries.randomValue(TableFuzzTest::connectionFile);
    }

    static FuzzInput readingsFile(Random random) {
        return new Mangler(random, READINGS).input();
    }

    static FuzzInput journalFile(Random random) {
        return new Mangler(random, JOURNALS).input();
    }

    static FuzzInput runOutFile(Random random) {
        return new Mangler(random, RUN_OUTS).input();
    }

    static FuzzInput connectionFile(Random random) {
        return new Mangler(random, CONNECTIONS).input();
    }

    static FuzzInput typedText(Random random) {
        var mangler = new Mangler(random, TYPED);
        return FuzzInput.of(random.nextBoolean() ? mangler.wild() : mangler.text());
    }

    static FuzzInput typedAmps(Random random) {
        String digits = random.nextInt(1000) + "." + random.nextInt(1000) + "0".repeat(random.nextInt(20)) + "1";
        return FuzzInput.of(
                switch (random.nextInt(4)) {
                    case 0 -> digits;
                    case 1 -> digits + "e" + (random.nextInt(40) - 20);
                    case 2 -> digits + "E" + random.nextInt();
                    default -> new Mangler(random, List.of("1", "0.5", "1e9", "1e-9")).text();
                });
    }

    static void checkReadings(FuzzInput input) throws IOException, BadInputException {
        Path file = Scratch.with(input, ".csv");
        ReadingsFile read;
        try {
            read = ReadingsFile.read(file, BARS);
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
            return;
        }
        assertThat(ReadingsFile.parse("again", read.toText(), BARS)).isEqualTo(read);
        for (TestKind kind : TestKind.values()) {
            try {
                assertThat(read.numbers(kind, Optional.empty())).isNotNull();
            } catch (IllegalArgumentException e) {
                Refusal.assertOwn(e);
            }
        }
    }

    static void checkJournal(FuzzInput input) throws IOException, BadInputException {
        Path file = Scratch.with(input, ".csv");
        ReadingsJournal journal;
        try {
            journal = ReadingsJournal.resume(file, BARS);
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
            return;
        }
        ReadingSet readings = journal.readings();
        assertThat(ReadingsJournal.resume(file, BARS).readings()).isEqualTo(readings);
        if (journal.takeBack().isPresent()) {
            assertThat(ReadingsJournal.resume(file, BARS).readings()).isEqualTo(journal.readings());
        }
        assertThat(readings.run(Growler.USUAL).readings()).isNotNull();
    }

    static void checkTyped(FuzzInput input) throws IOException, BadInputException {
        List<TestKind> kinds = List.of(TestKind.DROP, TestKind.GROUND, TestKind.POLARITY);
        TestKind kind = kinds.get(input.text().length() % kinds.size());
        Path file = Scratch.with(FuzzInput.of(""), ".csv");
        Files.delete(file);
        ReadingsJournal journal = ReadingsJournal.begin(file, setUp(kind));
        int to = kind == TestKind.GROUND ? 0 : 2;
        try {
            TakenReading noted = journal.note(1, to, input.text());
            assertThat(ReadingsJournal.resume(file, BARS).readings().readings()).containsExactly(noted);
        } catch (IllegalArgumentException e) {
            Refusal.assertOwn(e);
            assertThat(journal.readings().readings()).isEmpty();
            assertThat(Files.readString(file)).endsWith("from,to,reading\n");
        }
    }

    /** A current of any size that is taken can be written and read again. */
    static void checkAmps(FuzzInput input) throws IOException, BadInputException {
        ReadingSet.GivenFeed feed;
        if (input.text().length() > 20_000) {
            // Digits beyond counting take the test itself minutes; none who asks for a current takes so many.
            return;
        }
        try {
            feed = new ReadingSet.GivenFeed(1, 5, new BigDecimal(input.text()));
        } catch (NumberFormatException e) {
            return;
        } catch (IllegalArgumentException e) {
            Refusal.assertOwn(e);
            return;
        }
        Path file = Scratch.with(FuzzInput.of(""), ".csv");
        Files.delete(file);
        ReadingsJournal.begin(file, setUp(TestKind.DROP, Optional.of(feed)));
        assertThat(ReadingsJournal.resume(file, BARS)
                        .readings()
                        .feed()
                        .orElseThrow()
                        .amps())
                .isEqualByComparingTo(feed.amps());
    }

    private static ReadingSet setUp(TestKind kind) {
        return setUp(kind, kind.fed() ? Optional.of(new ReadingSet.GivenFeed(1, 5, BigDecimal.ONE)) : Optional.empty());
    }

    private static ReadingSet setUp(TestKind kind, Optional<ReadingSet.GivenFeed> feed) {
        return new ReadingSet(
                Optional.empty(),
                kind,
                feed,
                Optional.empty(),
                Optional.empty(),
                kind.unitless() ? Optional.empty() : Optional.of(kind == TestKind.GROUND ? "Mohm" : "mV"),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    static void checkRunOut(FuzzInput input) throws IOException, BadInputException {
        Path file = Scratch.with(input, ".csv");
        Optional<String> unit = input.text().length() % 2 == 0 ? Optional.of("mm") : Optional.empty();
        RunOutFile read;
        try {
            read = RunOutFile.read(file, BARS, unit);
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
            return;
        }
        assertThat(RunOutFile.parse("again", read.toText(), BARS, Optional.empty()))
                .isEqualTo(read);
        assertThat(RunOutFile.readings(read.entries())).hasSameSizeAs(read.entries());
    }

    static void checkConnections(FuzzInput input) throws IOException, BadInputException {
        Path file = Scratch.with(input, ".csv");
        try {
            List<ListedCoil> once = ConnectionList.read(file);
            assertThat(ConnectionList.parse("again", ConnectionList.toText(once)))
                    .isEqualTo(once);
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
        }
        try {
            List<ListedCoil> found = ConnectionList.readAsFound(file);
            ConnectionCheck.of(PLAN, found).differences().forEach(d -> Refusal.assertSeen(d.toString()));
            assertThat(ConnectionCheck.free(PLAN, found)).isNotNull();
        } catch (BadInputException e) {
            Refusal.check(e, file.toString(), input.text());
        }
    }
}
