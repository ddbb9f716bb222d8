package coilwright.job;

import coilwright.bench.BenchArmature;
import coilwright.bench.ResistanceTest;
import coilwright.winding.Winding;
import java.util.OptionalDouble;

/** Lays a job's armature on the bench; apart from {@link Job} so that reading one loads no network. */
final class JobBench {
    private JobBench() {}

    static BenchArmature sound(Job job, OptionalDouble celsius) {
        Winding winding = job.build();
        double ohms = job.coilResistance().map(r -> r.in("ohm")).orElse(1.0);
        if (celsius.isPresent()) {
            ohms = ResistanceTest.at(ohms, Job.COLD, celsius.getAsDouble());
        }
        BenchArmature sound = BenchArmature.sound(winding, ohms);
        return job.equalizers().isEmpty()
                ? sound
                : sound.withEqualizers(job.equalizers().get().rings(winding));
    }
}
