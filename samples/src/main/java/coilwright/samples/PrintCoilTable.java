package coilwright.samples;

import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.Coil;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import java.nio.file.Path;

/** Reads a job file and prints which bars each coil lands on. */
public final class PrintCoilTable {
    private PrintCoilTable() {}

    public static void main(String[] args) {
        Path file = Path.of(args.length > 0 ? args[0] : "samples/jobs/orchard-pump-dynamo.yaml");
        try {
            Job job = JobReader.read(file);
            Winding winding = job.build();
            System.out.println(job.title());
            for (Coil coil : winding.coils()) {
                String bars = coil.isLive()
                        ? "bar " + coil.topBar().getAsInt() + " to bar "
                                + coil.bottomBar().getAsInt()
                        : "not connected";
                System.out.println("coil " + coil.number() + ": slots "
                        + coil.top().slot() + " and " + coil.bottom().slot() + ", " + bars);
            }
        } catch (BadInputException e) {
            // Every problem with its line, ready to be shown.
            System.err.println(e.getMessage());
        } catch (ImpossibleWindingException e) {
            e.findings().forEach(f -> System.err.println(f.message()));
        }
    }
}
