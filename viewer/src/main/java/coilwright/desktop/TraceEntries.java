package coilwright.desktop;

import coilwright.job.BadInputException;
import coilwright.job.CommutatorSizes;
import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.job.Quantity;
import coilwright.job.RunOutEntry;
import coilwright.job.RunOutFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Run-out readings as they are typed, bar after bar, into a job. */
final class TraceEntries {
    /** Units of a dial gauge, the usual first. */
    static final List<String> UNITS = List.of("mm", "µm", "thou", "in");

    private TraceEntries() {}

    /** The readings of a job, in its order. */
    static List<RunOutEntry> of(Job job) {
        return job.particulars().commutator().map(CommutatorSizes::runOut).orElse(List.of());
    }

    /** What was read on a bar; several readings of it one after the other; blank where it was not read. */
    static String shown(List<RunOutEntry> entries, int bar) {
        return entries.stream()
                .filter(e -> e.bar() == bar)
                .map(e -> e.height().toString())
                .collect(Collectors.joining("; "));
    }

    /** The unit that readings of a job are in; mm where there are none yet. */
    static String unit(List<RunOutEntry> entries) {
        return entries.isEmpty()
                ? UNITS.get(0)
                : entries.get(entries.size() - 1).height().unit();
    }

    /**
     * A height as typed.
     *
     * @param unit of a number alone
     * @throws IllegalArgumentException when it is no height, saying what would do
     */
    static Quantity height(String typed, int bar, int bars, String unit) {
        String cell = typed.replaceAll("[;\"\\p{Cntrl}]", " ").strip();
        try {
            List<RunOutEntry> read = RunOutFile.parse(
                            "reading", "bar;height\n" + bar + ";" + cell + "\n", bars, Optional.of(unit))
                    .entries();
            return read.get(0).height();
        } catch (BadInputException e) {
            throw new IllegalArgumentException(
                    "the height of bar " + bar + " " + e.problems().get(0).message(), e);
        }
    }

    /**
     * The text with this height on a bar in place of all that was read on it.
     *
     * @param height empty for a bar not read
     * @throws IllegalArgumentException when the text is no job
     */
    static JobText with(JobText text, int bar, Optional<Quantity> height) {
        List<RunOutEntry> entries =
                new ArrayList<>(of(text.job().orElseThrow(() -> new IllegalArgumentException("first mend the job"))));
        List<Integer> places = new ArrayList<>();
        int later = entries.size();
        for (int i = entries.size() - 1; i >= 0; i--) {
            if (entries.get(i).bar() == bar) {
                places.add(0, i);
            } else if (entries.get(i).bar() > bar) {
                later = i;
            }
        }
        if (places.size() == 1 && height.isPresent()) {
            // Changed where it stands, comments of the other lines stay as well.
            return text.with(
                    "commutator.runOut[" + (places.get(0) + 1) + "].height",
                    height.get().toString());
        }
        int at = places.isEmpty() ? later : places.get(0);
        for (int i = places.size() - 1; i >= 0; i--) {
            entries.remove((int) places.get(i));
        }
        height.ifPresent(h -> entries.add(at, new RunOutEntry(bar, h)));
        return text.withRunOut(entries);
    }
}
