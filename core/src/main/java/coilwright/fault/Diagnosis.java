package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import java.util.List;

/**
 * What readings say of an armature.
 *
 * @param armature as it should be
 * @param runs the readings
 * @param verdict sound, faulty or unclear
 * @param soundProbability that nothing is wrong that these tests can show
 * @param ranked explanations by probability, those that these readings do not tell apart taken together; "sound" is not
 *     among them
 * @param unseen kinds of fault that these tests cannot show at all
 * @param suspects readings that fit no likely explanation and should be taken again
 * @param noise estimated relative error of a reading
 * @param gains scale of each run against what the job file says, in the order of the runs
 * @param likeliest what explains the readings best; no faults where that is "sound"
 */
public record Diagnosis(
        BenchArmature armature,
        List<TestRun> runs,
        Verdict verdict,
        double soundProbability,
        List<Explanation> ranked,
        List<String> unseen,
        List<Suspect> suspects,
        double noise,
        List<Double> gains,
        List<Fault> likeliest) {
    /** The three answers. */
    public enum Verdict {
        /** No fault that these tests can show. */
        SOUND,
        /** Something is wrong. */
        FAULTY,
        /** The readings do not decide. */
        UNCLEAR
    }

    /**
     * Faults that explain the readings.
     *
     * @param faults together
     * @param probability of this explanation and those that read the same, 0 to 1
     * @param sameReadings other faults that read the same under these tests, or so nearly that the error of the readings
     *     hides the difference
     * @param because the readings that speak most for it against "sound"
     */
    public record Explanation(
            List<Fault> faults, double probability, List<List<Fault>> sameReadings, List<Because> because) {
        /**
         * Copies the lists.
         *
         * @param faults together
         * @param probability of this explanation and those that read the same, 0 to 1
         * @param sameReadings other faults that read the same under these tests, or so nearly that the error of the
         *     readings hides the difference
         * @param because the readings that speak most for it against "sound"
         */
        public Explanation {
            faults = List.copyOf(faults);
            sameReadings = List.copyOf(sameReadings);
            because = List.copyOf(because);
        }

        /**
         * {@return whether these faults are among the explanation's}
         *
         * @param wanted one or more faults
         */
        public boolean covers(List<Fault> wanted) {
            return faults.equals(wanted) || sameReadings.contains(wanted);
        }
    }

    /**
     * A reading that speaks for an explanation.
     *
     * @param test the test it was taken in
     * @param reading as taken
     * @param sound what a sound winding would read at the same scale
     * @param explained what the explanation reads
     */
    public record Because(BenchTest test, PairReading reading, double sound, double explained) {}

    /**
     * A reading to be taken again.
     *
     * @param test the test it was taken in
     * @param reading as taken
     * @param expected what the likeliest explanation reads there
     * @param advice why, and what may have happened
     */
    public record Suspect(BenchTest test, PairReading reading, double expected, String advice) {}

    /**
     * Copies the lists.
     *
     * @param armature as it should be
     * @param runs the readings
     * @param verdict sound, faulty or unclear
     * @param soundProbability that nothing is wrong that these tests can show
     * @param ranked explanations by probability, those that these readings do not tell apart taken together; "sound" is
     *     not among them
     * @param unseen kinds of fault that these tests cannot show at all
     * @param suspects readings that fit no likely explanation and should be taken again
     * @param noise estimated relative error of a reading
     * @param gains scale of each run against what the job file says, in the order of the runs
     * @param likeliest what explains the readings best; no faults where that is "sound"
     */
    public Diagnosis {
        runs = List.copyOf(runs);
        ranked = List.copyOf(ranked);
        unseen = List.copyOf(unseen);
        suspects = List.copyOf(suspects);
        gains = List.copyOf(gains);
        likeliest = List.copyOf(likeliest);
    }

    /**
     * Explains readings.
     *
     * @param armature as it should be, equalizers included
     * @param runs one or more runs with at least three readings together
     * @return what explains them, likeliest first
     * @throws IllegalArgumentException when there are too few readings, or one lies outside the armature
     */
    public static Diagnosis of(BenchArmature armature, List<TestRun> runs) {
        return new Diagnoser(armature, runs).diagnose();
    }
}
