package coilwright.cli;

import coilwright.bench.BenchArmature;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerBlade;
import coilwright.bench.Procedure;
import coilwright.bench.Procedures;
import coilwright.fault.Fault;
import coilwright.job.FaultText;
import coilwright.job.Job;
import coilwright.job.Visible;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a blade over the growler hums.
 *
 * @param job the job
 * @param useless whether it hums everywhere on a sound armature too, so that it tells nothing
 * @param cases one for each short looked at
 * @param procedure how it is done
 */
record ProbeBlade(Job job, boolean useless, List<Case> cases, Procedure procedure) {
    /** The word for the test. */
    static final String WORD = "growler-blade";

    private static final List<String> SHORTS = List.of("shorted-coil", "shorted-turns", "bar-short", "ground");

    /**
     * One short.
     *
     * @param words the short, in words
     * @param pulls over every slot
     */
    record Case(String words, List<GrowlerBlade.SlotPull> pulls) {
        /** The slots over which the blade hums. */
        List<GrowlerBlade.SlotPull> felt() {
            return pulls.stream().filter(GrowlerBlade.SlotPull::felt).toList();
        }
    }

    /**
     * Works out where the blade hums.
     *
     * @param shorts as given; where none, a sound armature and the two usual shorts are looked at
     */
    static ProbeBlade of(Job job, BenchArmature sound, List<String> shorts) {
        Growler growler = job.growler();
        List<Case> cases = new ArrayList<>();
        if (shorts.isEmpty()) {
            cases.add(new Case("no short", GrowlerBlade.pulls(sound, growler)));
            Optional<Coil> first = sound.winding().liveCoils().stream().findFirst();
            first.ifPresent(c -> cases.add(of(sound, growler, List.of("shorted-coil:" + c.number()))));
            cases.add(of(sound, growler, List.of("bar-short:1,2")));
        } else {
            cases.add(of(sound, growler, shorts));
        }
        boolean useless = GrowlerBlade.useless(sound, growler);
        return new ProbeBlade(job, useless, cases, Procedures.growlerBlade(sound.winding()));
    }

    private static Case of(BenchArmature sound, Growler growler, List<String> shorts) {
        List<String> words = new ArrayList<>();
        for (String s : shorts) {
            Fault fault = FaultText.parse(s, sound.winding());
            if (!SHORTS.contains(fault.kind())) {
                throw new UsageException("--short is \"" + Visible.cut(s) + "\", but a blade feels shorts only: "
                        + String.join(", ", SHORTS) + " (two grounds make a short)");
            }
            words.add(fault.words());
        }
        return new Case(String.join("; ", words), GrowlerBlade.pulls(FaultText.in(sound, shorts), growler));
    }
}
