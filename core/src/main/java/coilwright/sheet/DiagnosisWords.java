package coilwright.sheet;

import coilwright.fault.Diagnosis;
import coilwright.fault.Fault;
import java.util.List;
import java.util.Locale;

/** A diagnosis in words, for sheets and for the command line. */
public final class DiagnosisWords {
    private DiagnosisWords() {}

    /**
     * {@return faults in words}
     *
     * @param faults one or more faults
     */
    public static String faults(List<Fault> faults) {
        return faults.isEmpty()
                ? "a sound winding"
                : String.join(" and ", faults.stream().map(Fault::words).toList());
    }

    /**
     * {@return the verdict in one sentence with how sure it is}
     *
     * @param d the diagnosis
     */
    public static String verdict(Diagnosis d) {
        String sure = percent(d.soundProbability());
        return switch (d.verdict()) {
            case SOUND -> "SOUND, as far as these tests show (" + sure + " sure).";
            case FAULTY -> "FAULTY (" + percent(1 - d.soundProbability()) + " sure).";
            case UNCLEAR -> "UNCLEAR: the readings do not decide (sound with " + sure + ").";
        };
    }

    /**
     * {@return a probability in percent; never all of it where there is doubt}
     *
     * @param p 0 to 1
     */
    public static String percent(double p) {
        double shown = p > 0.999 && p < 1 ? 0.999 : p;
        return String.format(Locale.ROOT, shown > 0.99 ? "%.1f %%" : "%.0f %%", shown * 100);
    }
}
