package coilwright.desktop;

import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Finding;
import coilwright.winding.Severity;
import coilwright.winding.Winding;
import coilwright.winding.WindingSearch;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A winding that would do in place of the one wished for.
 *
 * @param words what would be other, as on a button
 * @param bars on how many bars
 * @param spec the winding
 */
record WayOut(String words, int bars, WindingSpec spec) {
    private static final int MOST = 4;

    /** The text with this winding in it. */
    JobText in(JobText text) {
        return text.withWinding(bars, spec);
    }

    /**
     * Windings near to the one wished for, nearest first.
     *
     * @param warnings of the winding as it is; empty where it cannot be built
     */
    static List<WayOut> of(Job job, Optional<List<Finding>> warnings) {
        if (job.winding() instanceof WindingSpec.Listed) {
            return List.of();
        }
        Armature a = job.armature();
        WindingType type = job.winding().type();
        int plex = plex(job.winding());
        Set<WayOut> out = new LinkedHashSet<>();
        add(
                out,
                job,
                warnings,
                WindingSearch.find(new WindingSearch.Query(
                        a.slots(), a.poles(), OptionalInt.of(a.bars()), Optional.of(type), OptionalInt.of(plex))));
        if (warnings.isEmpty()) {
            add(
                    out,
                    job,
                    warnings,
                    WindingSearch.find(new WindingSearch.Query(
                            a.slots(), a.poles(), OptionalInt.empty(), Optional.of(type), OptionalInt.of(plex))));
            add(out, job, warnings, WindingSearch.find(WindingSearch.Query.of(a.slots(), a.poles(), a.bars())));
        }
        return out.stream().limit(MOST).toList();
    }

    private static int plex(WindingSpec spec) {
        return spec instanceof WindingSpec.Regular r ? r.plex() : ((WindingSpec.FrogLeg) spec).plex();
    }

    private static Direction direction(WindingSpec spec) {
        return spec instanceof WindingSpec.Regular r ? r.direction() : ((WindingSpec.FrogLeg) spec).direction();
    }

    private static void add(Set<WayOut> out, Job job, Optional<List<Finding>> warnings, WindingSearch.Result found) {
        List<WindingSearch.Candidate> nearest = new ArrayList<>(found.possible());
        int bars = job.armature().bars();
        nearest.sort(
                Comparator.comparingInt(c -> Math.abs(c.winding().armature().bars() - bars)));
        int taken = 0;
        for (WindingSearch.Candidate c : nearest) {
            if (warnings.isPresent() && warned(c.findings()) >= warned(warnings.get())) {
                continue;
            }
            int offset = job.winding() instanceof WindingSpec.Regular r ? r.leadOffset() : 0;
            WindingSpec spec = c.winding().spec() instanceof WindingSpec.Regular r
                    ? r.withSpan(CoilSpan.ofThrow(c.throwSlots())).withLeadOffset(offset)
                    : c.winding().spec();
            String words = words(job, c.winding(), c);
            if (!words.isEmpty()
                    && taken < 2
                    && out.stream().noneMatch(w -> w.words().equals(words))) {
                out.add(new WayOut(words, c.winding().armature().bars(), spec));
                taken++;
            }
        }
    }

    private static long warned(List<Finding> findings) {
        return findings.stream().filter(f -> f.severity() != Severity.NOTE).count();
    }

    private static String words(Job job, Winding winding, WindingSearch.Candidate c) {
        List<String> other = new ArrayList<>();
        if (winding.armature().bars() != job.armature().bars()) {
            other.add(winding.armature().bars() + " bars");
        }
        if (winding.type() != job.winding().type() || c.plex() != plex(job.winding())) {
            other.add(WindingSpec.plexWord(c.plex()) + " " + winding.type().word());
        }
        if (c.direction() != direction(job.winding())) {
            other.add(c.direction().word());
        }
        List<Integer> dead = winding.deadCoils().stream().map(Coil::number).toList();
        List<Integer> deadNow = job.winding() instanceof WindingSpec.Regular r ? r.deadCoils() : List.of();
        if (!dead.equals(deadNow)) {
            other.add(
                    dead.isEmpty()
                            ? "no dead coil"
                            : (dead.size() == 1 ? "coil " : "coils ")
                                    + dead.stream().map(String::valueOf).collect(Collectors.joining(", "))
                                    + " dead");
        }
        CoilSpan span = job.winding() instanceof WindingSpec.Regular r
                ? r.span()
                : ((WindingSpec.FrogLeg) job.winding()).span();
        if (span instanceof CoilSpan.Positions || (span instanceof CoilSpan.Throw t && t.slots() != c.throwSlots())) {
            other.add("throw " + c.throwSlots());
        }
        return other.isEmpty() ? "" : "Use " + String.join(", ", other);
    }
}
