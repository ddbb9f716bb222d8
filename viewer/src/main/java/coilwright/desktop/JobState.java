package coilwright.desktop;

import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.winding.Finding;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Rules;
import coilwright.winding.Severity;
import coilwright.winding.Winding;
import java.util.List;
import java.util.Optional;

/**
 * What the library says of a text.
 *
 * @param text the text
 * @param winding built; empty where it cannot be, or while the text is no job
 * @param findings of the rules, worst first
 * @param waysOut what would do instead, where a finding asks for it
 */
record JobState(JobText text, Optional<Winding> winding, List<Finding> findings, List<WayOut> waysOut) {
    /** Works it out; takes a while for large windings. */
    static JobState of(JobText text) {
        if (text.job().isEmpty()) {
            return new JobState(text, Optional.empty(), List.of(), List.of());
        }
        Job job = text.job().get();
        try {
            Winding winding = job.build();
            List<Finding> findings = Rules.check(winding).stream()
                    .sorted((a, b) -> a.severity().compareTo(b.severity()))
                    .toList();
            boolean warned = findings.stream().anyMatch(f -> f.severity() != Severity.NOTE);
            return new JobState(
                    text, Optional.of(winding), findings, warned ? WayOut.of(job, Optional.of(findings)) : List.of());
        } catch (ImpossibleWindingException e) {
            return new JobState(text, Optional.empty(), e.findings(), WayOut.of(job, Optional.empty()));
        }
    }

    Optional<Job> job() {
        return text.job();
    }
}
