package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.job.BadInputException;
import coilwright.job.JobReader;
import coilwright.winding.Winding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The long closed loop, run by hand: faults with 2 % noise and unknown scale, how many are found, kind by kind, and each
 * miss in a line. Arguments: random windings with a fault of every kind, sound windings, pairs of faults, and which
 * part of all faults of every kind at every place of the samples (1 for all, 2 for half of them, 0 for none); optionally
 * the most bars of a sample.
 */
final class ClosedLoopFigures {
    private static final double NOISE = 0.02;

    private final Workshop shop = new Workshop(1);
    private final Map<String, int[]> counts = new LinkedHashMap<>();

    private ClosedLoopFigures() {}

    public static void main(String[] args) throws IOException, BadInputException {
        var figures = new ClosedLoopFigures();
        int everyPlace = Integer.parseInt(args[3]);
        int mostBars = args.length > 4 ? Integer.parseInt(args[4]) : Integer.MAX_VALUE;
        if (everyPlace > 0) {
            figures.samples(everyPlace, mostBars);
        }
        figures.windings(Integer.parseInt(args[0]));
        figures.sound(Integer.parseInt(args[1]));
        figures.pairs(Integer.parseInt(args[2]));
    }

    private void samples(int every, int mostBars) throws IOException, BadInputException {
        try (Stream<Path> files = Files.list(Path.of("../samples/jobs"))) {
            for (Path p : files.sorted().toList()) {
                BenchArmature sound = JobReader.read(p).benchArmature();
                if (sound.winding().armature().bars() > mostBars) {
                    continue;
                }
                long start = System.nanoTime();
                List<Fault> all = shop.everywhere(sound);
                Collections.shuffle(all, shop.random());
                for (int i = 0; i < all.size(); i += every) {
                    tryOut(sound, List.of(all.get(i)));
                }
                print(p.getFileName() + ", " + sound.winding().armature().bars() + " bars, "
                        + (System.nanoTime() - start) / 1_000_000_000L + " s");
            }
        }
    }

    private void windings(int number) {
        for (int i = 0; i < number; i++) {
            BenchArmature sound = BenchArmature.sound(shop.winding(40, false), 1);
            for (int kind = 0; kind < Workshop.KINDS; kind++) {
                Optional<Fault> fault = shop.fault(sound.winding(), kind);
                if (fault.isPresent()) {
                    tryOut(sound, List.of(fault.get()));
                }
            }
        }
        print("random windings");
    }

    private void pairs(int number) {
        for (int i = 0; i < number; ) {
            Winding w = shop.winding(60, i % 4 != 0);
            Fault a = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            Fault b = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            if (!ClosedLoopTest.overlap(w, a, b)) {
                i++;
                tryOut(BenchArmature.sound(w, 1), List.of(a, b));
            }
        }
        print("pairs");
    }

    private void sound(int number) {
        int sounds = 0;
        for (int i = 0; i < number; i++) {
            BenchArmature sound = BenchArmature.sound(shop.winding(40, false), 1);
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, List.of(), Workshop.tests(sound), NOISE));
            if (d.verdict() == Diagnosis.Verdict.SOUND) {
                sounds++;
            } else {
                System.out.println("missed: " + ClosedLoopTest.describe(sound.winding(), List.of(), d));
            }
        }
        System.out.printf(Locale.ROOT, "sound called sound: %d of %d%n", sounds, number);
    }

    /** Faults must come first, where the readings can tell them at all. */
    private void tryOut(BenchArmature sound, List<Fault> faults) {
        List<BenchTest> tests = Workshop.tests(sound);
        String kind = faults.size() > 1 ? "pair" : faults.get(0).kind();
        boolean shown = Workshop.shown(sound, faults, tests, NOISE);
        int[] count = counts.computeIfAbsent(kind, k -> new int[3]);
        if (!shown) {
            count[2]++;
            return;
        }
        count[1]++;
        Diagnosis d = Diagnosis.of(sound, shop.runs(sound, faults, tests, NOISE));
        if (!d.likeliest().isEmpty() && Workshop.names(d.ranked().get(0), faults)) {
            count[0]++;
        } else {
            System.out.println("missed: " + ClosedLoopTest.describe(sound.winding(), faults, d));
        }
    }

    private void print(String what) {
        System.out.println(what + ":");
        int found = 0;
        int tried = 0;
        for (Map.Entry<String, int[]> e : counts.entrySet()) {
            int[] c = e.getValue();
            System.out.printf(
                    Locale.ROOT, "  %s: %d of %d; %d more lie within the error%n", e.getKey(), c[0], c[1], c[2]);
            found += c[0];
            tried += c[1];
        }
        System.out.printf(Locale.ROOT, "  all: %d of %d (%.2f %%)%n", found, tried, 100.0 * found / Math.max(1, tried));
        counts.clear();
    }
}
