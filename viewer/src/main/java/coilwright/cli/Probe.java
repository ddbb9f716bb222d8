package coilwright.cli;

import coilwright.bench.BenchArmature;
import coilwright.bench.FeedBars;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.Procedure;
import coilwright.job.Job;
import coilwright.job.TestKind;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one test should read on one armature: all that is printed, drawn or written of it.
 *
 * @param job the job
 * @param armature as it lies on the bench
 * @param test which test
 * @param setUp in words, one line
 * @param feeds where the trade feeds it, the first of them used; as given where it was given; empty where not fed
 * @param procedure how it is done
 * @param notes what to know of these readings, one line each
 * @param readings the pairs asked for, in order
 * @param circuits the walk within each circuit where there are several
 * @param angle of slot 1's centre line where the armature lies still in a growler
 * @param best the pairs that read most and where they stand; empty but in a growler
 * @param relative whether readings are relative, to one whole face's flux through one coil
 * @param brushOhms resistance from + to − brushes, where asked for
 * @param faults put into the armature, in words
 */
record Probe(
        Job job,
        BenchArmature armature,
        TestKind test,
        String setUp,
        List<FeedBars> feeds,
        Procedure procedure,
        List<String> notes,
        List<PairReading> readings,
        List<CircuitWalk> circuits,
        OptionalDouble angle,
        List<GrowlerMeter.Placed> best,
        boolean relative,
        OptionalDouble brushOhms,
        List<String> faults) {
    /**
     * The walk within one circuit.
     *
     * @param number from one
     * @param feed of this circuit by itself, where the test is fed
     */
    record CircuitWalk(int number, Optional<FeedBars> feed, List<PairReading> readings) {}

    /** Copies the lists. */
    Probe {
        feeds = List.copyOf(feeds);
        notes = List.copyOf(notes);
        readings = List.copyOf(readings);
        circuits = List.copyOf(circuits);
        best = List.copyOf(best);
        faults = List.copyOf(faults);
    }

    /** The key of a reading in answers for scripts. */
    String key() {
        return switch (test) {
            case RESISTANCE, GROUND -> "ohms";
            case POLARITY -> "sense";
            case DROP, GROWLER, GROWLER_TURNED, GROUND_WALK -> "volts";
        };
    }
}
