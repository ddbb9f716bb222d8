package coilwright.cli;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.TestRun;
import coilwright.drawing.Palette;
import coilwright.fault.Diagnosis;
import coilwright.fault.NextProbe;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.ReadingSet;
import coilwright.job.ReadingsFile;
import coilwright.job.TestKind;
import coilwright.sheet.RunCharts;
import coilwright.winding.ImpossibleWindingException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is wrong with an armature, from its readings. */
@Command(
        name = "diagnose",
        header = "Tell from readings whether an armature is sound, and if not, what is wrong and where.",
        description = {
            "Reads one or more readings files (CSV: from,to,reading), each with its --test in the same order, and weighs "
                    + "every fault the winding can have. Without files the readings in the job file are taken. Supply "
                    + "and meter may have any scale; some readings may be missing. Exit code 0: sound, 1: not."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright diagnose job.yaml drop.csv --test drop --feed 1,5",
            "  coilwright diagnose job.yaml drop.csv ground.csv --test drop --test ground",
            "  coilwright diagnose job.yaml growler.csv --test growler-turned --clock 97.5 --chart chart.pdf"
        })
final class DiagnoseCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "READINGS", description = "Readings files (CSV).")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--test",
            paramLabel = "TEST",
            description = "drop, growler, growler-turned, resistance, ground, ground-walk or polarity; once for each "
                    + "readings file, in their order.")
    private List<String> tests = new ArrayList<>();

    @Option(
            names = "--feed",
            paramLabel = "A,B",
            description =
                    "Bars where current enters and leaves; once for all tests that are fed or once for each; where "
                            + "the trade feeds this winding unless given.")
    private List<String> feeds = new ArrayList<>();

    @Option(
            names = "--angle",
            paramLabel = "DEG",
            description = "With growler: where slot 1 stands, degrees clockwise from straight up; 0 unless given.")
    private Optional<Double> angle;

    @Option(
            names = "--clock",
            paramLabel = "DEG",
            description = "With growler-turned: where the probes are held; where they read most unless given.")
    private Optional<Double> clock;

    @Option(
            names = "--unit",
            paramLabel = "UNIT",
            description = "Unit of readings that have none, such as mV; the base unit unless given.")
    private Optional<String> unit;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Also draw expected, read and explained values, ending in .svg, .png or .pdf.")
    private Optional<Path> chart;

    @Mixin
    private OutputOptions output;

    DiagnoseCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        try {
            BenchArmature sound = job.benchArmature();
            List<TestRun> runs = files.isEmpty() ? noted(job) : read(job, sound);
            Diagnosis diagnosis = Diagnosis.of(sound, runs);
            Optional<NextProbe> next = NextProbe.of(diagnosis, job.growler());
            if (chart.isPresent()) {
                Drawings.write(
                        console,
                        RunCharts.of(job.title(), diagnosis, Palette.COLOUR),
                        chart.get(),
                        OptionalDouble.empty());
            }
            output.answer(
                    console,
                    switch (output.format()) {
                        case TEXT -> DiagnosisText.of(job, diagnosis, next);
                        case JSON -> DiagnosisJson.of(diagnosis, next);
                        case CSV -> DiagnosisText.csv(diagnosis);
                    });
            return diagnosis.verdict() == Diagnosis.Verdict.SOUND ? Exit.DONE : Exit.NO;
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
    }

    private List<TestRun> noted(Job job) {
        if (!tests.isEmpty()) {
            throw new UsageException("--test was given without a readings file: name one after the job file");
        }
        if (job.readings().isEmpty()) {
            throw new UsageException(jobFile + " has no readings: name a readings file, with its --test");
        }
        return job.readings().stream()
                .map((ReadingSet s) -> s.run(job.growler()))
                .toList();
    }

    private List<TestRun> read(Job job, BenchArmature sound) throws BadInputException {
        if (tests.size() != files.size()) {
            throw new UsageException(files.size() + " readings files and " + tests.size()
                    + " --test were given: name one test for each file, in their order");
        }
        List<TestRun> runs = new ArrayList<>();
        int fed = 0;
        for (int i = 0; i < files.size(); i++) {
            TestKind kind = Given.oneOf("--test", tests.get(i), List.of(TestKind.values()), TestKind::word);
            ReadingsFile file =
                    ReadingsFile.read(files.get(i), sound.winding().armature().bars());
            BenchTest test = test(kind, job, sound, fed);
            if (kind.fed()) {
                fed++;
            }
            try {
                runs.add(new TestRun(test, file.numbers(kind, unit)));
            } catch (IllegalArgumentException e) {
                throw new UsageException(files.get(i) + ": " + e.getMessage());
            }
        }
        return runs;
    }

    private BenchTest test(TestKind kind, Job job, BenchArmature sound, int fed) {
        return switch (kind) {
            case DROP -> {
                BenchTest.Pair f = feed(sound, fed);
                yield new BenchTest.Drop(f.from(), f.to(), 1);
            }
            case GROUND_WALK -> {
                BenchTest.Pair f = feed(sound, fed);
                yield new BenchTest.GroundWalk(f.from(), f.to(), 1);
            }
            case GROWLER -> new BenchTest.GrowlerWalked(job.growler(), angle.orElse(0.0));
            case GROWLER_TURNED ->
                new BenchTest.GrowlerTurned(
                        job.growler(),
                        clock.orElseGet(
                                () -> GrowlerMeter.of(sound, job.growler()).bestClock()));
            case RESISTANCE -> new BenchTest.Resistance();
            case GROUND -> new BenchTest.Ground();
            case POLARITY -> new BenchTest.Polarity();
        };
    }

    private BenchTest.Pair feed(BenchArmature sound, int fed) {
        if (!feeds.isEmpty()) {
            return Given.bars(
                    "--feed",
                    fed < feeds.size() ? feeds.get(fed) : feeds.get(feeds.size() - 1),
                    sound.winding().armature().bars());
        }
        List<FeedBars> advised =
                FeedBars.advised(sound.winding(), !sound.bonds().isEmpty());
        if (advised.isEmpty()) {
            throw new UsageException("no coil has both leads on bars, so there is nothing to feed");
        }
        FeedBars f = fed < advised.size() ? advised.get(fed) : advised.get(advised.size() - 1);
        return new BenchTest.Pair(f.in(), f.out());
    }
}
