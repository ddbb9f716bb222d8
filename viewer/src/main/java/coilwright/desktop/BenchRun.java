package coilwright.desktop;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.drawing.BenchPicture;
import coilwright.drawing.Drawing;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.Palette;
import coilwright.drawing.ViewOptions;
import coilwright.fault.Diagnosis;
import coilwright.fault.NextProbe;
import coilwright.fault.ReadingWatch;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.ReadingSet;
import coilwright.job.ReadingsJournal;
import coilwright.job.TakenReading;
import coilwright.job.TestKind;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One run of readings: which pair is next, what it should read, and what was read. Knows no window. One thread notes
 * and takes back; others may meanwhile ask what was read and what it tells.
 */
final class BenchRun {
    private static final double RADIUS = 60;

    private final Job job;
    private final BenchArmature sound;
    private final ReadingsJournal journal;
    private final BenchTest test;
    private final List<BenchTest.Pair> walk;
    private final ReadingWatch watch;

    /** As of the last one noted or taken back; the journal itself belongs to the thread that does that. */
    private volatile ReadingSet readings;

    private volatile Optional<BenchTest.Pair> current;

    /**
     * What came of a reading.
     *
     * @param reading as noted
     * @param standsOut whether it is unlike what a sound winding reads
     * @param expected what that would be, in the base unit; empty while the scale is not known
     */
    record Noted(TakenReading reading, boolean standsOut, OptionalDouble expected) {}

    private BenchRun(Job job, Basis basis, ReadingsJournal journal) {
        this.job = job;
        this.sound = basis.sound();
        this.journal = journal;
        this.readings = journal.readings();
        this.test = basis.test();
        this.walk = test.walk(sound.winding());
        this.watch = basis.watch();
        this.current = firstUnread(readings, 0);
    }

    /** What a run rests on, whatever was read. */
    private record Basis(BenchArmature sound, BenchTest test, ReadingWatch watch) {
        static Basis of(Job job, ReadingSet setUp) {
            BenchArmature sound = job.benchArmature();
            BenchTest test = setUp.run(job.growler()).test();
            boolean absolute = job.coilResistance().isPresent() && !test.relative();
            return new Basis(sound, test, new ReadingWatch(sound, test, absolute));
        }
    }

    /**
     * Begins a run; takes a moment for large windings.
     *
     * @param file that must not be there yet, and is not where there is no run
     * @throws ImpossibleWindingException when the job's winding cannot be wound
     * @throws IOException when the file cannot be written
     */
    static BenchRun begin(Job job, Path file, ReadingSet setUp) throws IOException {
        Basis basis = Basis.of(job, setUp);
        return new BenchRun(job, basis, ReadingsJournal.begin(file, setUp));
    }

    /**
     * Takes up a run where it stopped; takes a moment for large windings.
     *
     * @throws ImpossibleWindingException when the job's winding cannot be wound
     * @throws BadInputException when the file is no run of this armature
     * @throws IOException when the file cannot be mended
     */
    static BenchRun resume(Job job, Path file) throws BadInputException, IOException {
        var journal = ReadingsJournal.resume(file, job.armature().bars());
        return new BenchRun(job, Basis.of(job, journal.readings()), journal);
    }

    Job job() {
        return job;
    }

    /** Whether a winding is the one whose readings these are. */
    boolean isOf(Armature armature, WindingSpec spec) {
        return job.armature().equals(armature) && job.winding().equals(spec);
    }

    /** What was read so far. */
    ReadingSet readings() {
        return readings;
    }

    ReadingsJournal journal() {
        return journal;
    }

    BenchTest test() {
        return test;
    }

    TestKind kind() {
        return readings.test();
    }

    String unit() {
        return readings.unit().orElse("");
    }

    List<BenchTest.Pair> walk() {
        return walk;
    }

    /** Pairs that were read or passed over. */
    Map<BenchTest.Pair, TakenReading> taken() {
        return taken(readings);
    }

    private static Map<BenchTest.Pair, TakenReading> taken(ReadingSet set) {
        Map<BenchTest.Pair, TakenReading> out = new LinkedHashMap<>();
        set.readings().forEach(r -> out.put(r.pair(), r));
        return out;
    }

    private List<PairReading> numbers(ReadingSet set) {
        return set.run(job.growler()).readings();
    }

    /** The pair to touch now; empty when all were read. */
    Optional<BenchTest.Pair> current() {
        return current;
    }

    private Optional<BenchTest.Pair> firstUnread(ReadingSet set, int from) {
        var taken = taken(set);
        for (int i = 0; i < walk.size(); i++) {
            BenchTest.Pair p = walk.get((from + i) % walk.size());
            if (!taken.containsKey(p)) {
                return Optional.of(p);
            }
        }
        return Optional.empty();
    }

    /** What a sound winding would read on a pair, in the base unit; empty while the scale is not known. */
    OptionalDouble expected(BenchTest.Pair pair) {
        return watch.expected(pair, watch.scale(numbers(readings)));
    }

    /**
     * One line of the list of readings.
     *
     * @param expected what a sound winding would read, in the base unit; empty while the scale is not known
     * @param taken what was read; empty where nothing was yet
     * @param standsOut whether it is unlike what is expected
     */
    record Line(BenchTest.Pair pair, OptionalDouble expected, Optional<TakenReading> taken, boolean standsOut) {}

    /** The walk with what should be and what was read; takes a moment for large windings. */
    List<Line> lines() {
        ReadingSet now = readings;
        List<PairReading> all = numbers(now);
        Map<BenchTest.Pair, PairReading> byPair = new LinkedHashMap<>();
        all.forEach(r -> byPair.put(r.pair(), r));
        ReadingWatch.Scale scale = watch.scale(all);
        var taken = taken(now);
        return walk.stream()
                .map(p -> new Line(
                        p,
                        watch.expected(p, scale),
                        Optional.ofNullable(taken.get(p)),
                        Optional.ofNullable(byPair.get(p))
                                .filter(r -> watch.standsOut(r, scale))
                                .isPresent()))
                .toList();
    }

    /**
     * Notes what the meter showed on the current pair and goes on; comes back when it is on disk.
     *
     * @param shown blank to pass the pair over
     * @throws IllegalArgumentException saying what is wrong with it
     * @throws IOException when it cannot be written
     */
    Noted note(String shown) throws IOException {
        BenchTest.Pair pair = current.orElseThrow(() -> new IllegalArgumentException("every pair was read"));
        TakenReading reading = journal.note(pair.from(), pair.to(), shown);
        ReadingSet all = journal.readings();
        readings = all;
        List<PairReading> before = new ArrayList<>();
        Optional<PairReading> now = Optional.empty();
        for (PairReading r : numbers(all)) {
            if (r.from() == pair.from() && r.to() == pair.to()) {
                now = Optional.of(r);
            } else {
                before.add(r);
            }
        }
        ReadingWatch.Scale scale = watch.scale(before);
        var noted =
                new Noted(reading, now.filter(r -> watch.standsOut(r, scale)).isPresent(), watch.expected(pair, scale));
        current = firstUnread(all, walk.indexOf(pair) + 1);
        return noted;
    }

    /** Takes the last reading back and asks for it again. */
    Optional<TakenReading> takeBack() throws IOException {
        Optional<TakenReading> back = journal.takeBack();
        readings = journal.readings();
        back.ifPresent(r -> current = Optional.of(r.pair()));
        return back;
    }

    /** Asks for a pair, read already or not. */
    void goTo(BenchTest.Pair pair) {
        current = Optional.of(pair);
    }

    /** What the readings so far say; empty while they are too few to say anything. Takes a while. */
    Optional<Verdict> verdict() {
        TestRun run = readings.run(job.growler());
        if (run.readings().size() < 3) {
            return Optional.empty();
        }
        try {
            Diagnosis diagnosis = Diagnosis.of(sound, List.of(run));
            return Optional.of(new Verdict(diagnosis, NextProbe.of(diagnosis, job.growler())));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** A diagnosis and what to read next. */
    record Verdict(Diagnosis diagnosis, Optional<NextProbe> next) {}

    /** A picture of the armature with what touches it; takes a moment for large windings. */
    Drawing picture(Optional<BenchTest.Pair> pair) {
        Winding winding = sound.winding();
        ViewOptions options = ViewOptions.of(job.title());
        GrowlerBench bench = GrowlerBench.of(job.growler());
        GrowlerBench probed = pair.map(p -> bench.withProbes(p.from(), p.to())).orElse(bench);
        if (test instanceof BenchTest.GrowlerWalked g) {
            return BenchPicture.growler(
                    winding, options.withRotorAngle(g.angle()).withBench(probed), RADIUS);
        }
        if (test instanceof BenchTest.GrowlerTurned g) {
            double angle = pair.map(p -> g.clockDegrees() - GrowlerMeter.middle(winding.armature(), p.from(), p.to()))
                    .orElse(0.0);
            return BenchPicture.growler(winding, options.withRotorAngle(angle).withBench(probed), RADIUS);
        }
        Optional<BenchTest.Pair> feed = readings.feed().map(f -> new BenchTest.Pair(f.in(), f.out()));
        boolean polarity = test instanceof BenchTest.Polarity;
        return BenchPicture.touched(
                winding,
                new BenchPicture.Touches(
                        polarity ? pair : feed,
                        polarity ? Optional.empty() : pair,
                        unit().isEmpty() ? "Ω" : unit(),
                        polarity
                                ? pair.map(p -> compass(winding, p)).orElse(OptionalInt.empty())
                                : OptionalInt.empty()),
                Palette.COLOUR,
                RADIUS);
    }

    private static OptionalInt compass(Winding winding, BenchTest.Pair pair) {
        return winding.liveCoils().stream()
                .filter(c ->
                        c.topBar().getAsInt() == pair.from() && c.bottomBar().getAsInt() == pair.to())
                .map(Coil::top)
                .mapToInt(s -> s.slot())
                .findFirst();
    }
}
