package coilwright.sheet;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.ReadingsChart;
import coilwright.fault.Diagnosis;
import coilwright.fault.Fault;
import java.util.ArrayList;
import java.util.List;

/** Charts of the readings that a diagnosis was made from. */
public final class RunCharts {
    private RunCharts() {}

    /**
     * {@return expected, read and explained values of each run, at the scale of the readings}
     *
     * @param title of the job
     * @param d the diagnosis
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(String title, Diagnosis d, Palette palette) {
        List<Drawing> pages = new ArrayList<>();
        BenchArmature faulty = Fault.all(d.armature(), d.likeliest());
        for (int i = 0; i < d.runs().size(); i++) {
            TestRun run = d.runs().get(i);
            double gain = d.gains().get(i);
            List<BenchTest.Pair> pairs = run.pairs();
            pages.addAll(ReadingsChart.pages(
                            new ReadingsChart.Data(
                                    title + ": " + DiagnosisWords.faults(d.likeliest()),
                                    run.test().ohms() ? "ohm" : "as read",
                                    run.test().signed(),
                                    scaled(run.test().read(d.armature(), pairs), gain),
                                    run.readings(),
                                    d.likeliest().isEmpty()
                                            ? List.of()
                                            : scaled(run.test().read(faulty, pairs), gain)),
                            palette)
                    .pages());
        }
        return new DrawingPages(pages);
    }

    private static List<PairReading> scaled(List<PairReading> readings, double gain) {
        return readings.stream().map(r -> r.atScale(gain)).toList();
    }
}
