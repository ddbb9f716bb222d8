package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.job.BadInputException;
import coilwright.job.JobReader;
import coilwright.winding.Winding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The long closed loop, run by hand: a fault of every kind in every sample and in many random windings, pairs of faults
 * and sound windings, with 2 % noise and unknown scale. Prints how many are found and lists the misses. Arguments:
 * windings, sound trials, pairs.
 */
final class ClosedLoopFigures {
    private static final double NOISE = 0.02;

    private ClosedLoopFigures() {}

    public static void main(String[] args) throws IOException, BadInputException {
        int windings = Integer.parseInt(args[0]);
        int soundTrials = Integer.parseInt(args[1]);
        int pairs = Integer.parseInt(args[2]);
        var shop = new Workshop(1);
        List<BenchArmature> armatures = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("../samples/jobs"))) {
            for (Path p : files.sorted().toList()) {
                BenchArmature a = JobReader.read(p).benchArmature();
                if (a.winding().armature().bars() <= 100) {
                    armatures.add(a);
                }
            }
        }
        for (int i = 0; i < windings; i++) {
            armatures.add(BenchArmature.sound(shop.winding(40, false), 1));
        }
        int[] found = new int[Workshop.KINDS];
        int[] tried = new int[Workshop.KINDS];
        for (BenchArmature sound : armatures) {
            for (int kind = 0; kind < Workshop.KINDS; kind++) {
                Optional<Fault> fault = shop.fault(sound.winding(), kind);
                if (fault.isEmpty()) {
                    continue;
                }
                // Joints are bad against the coil's own resistance.
                List<Fault> faults = List.of(
                        fault.get() instanceof Fault.HighResistance h
                                ? new Fault.HighResistance(h.coil(), h.ohms() * sound.soundOhms())
                                : fault.get());
                Diagnosis d = Diagnosis.of(sound, shop.runs(sound, faults, Workshop.tests(sound), NOISE));
                tried[kind]++;
                if (!d.likeliest().isEmpty() && Workshop.names(d.ranked().get(0), faults)) {
                    found[kind]++;
                } else {
                    System.out.println("missed: " + ClosedLoopTest.describe(sound.winding(), faults, d));
                }
            }
        }
        int allFound = 0;
        int allTried = 0;
        for (int kind = 0; kind < Workshop.KINDS; kind++) {
            allFound += found[kind];
            allTried += tried[kind];
            System.out.printf(Locale.ROOT, "kind %d: %d of %d%n", kind, found[kind], tried[kind]);
        }
        System.out.printf(Locale.ROOT, "single faults: %d of %d%n", allFound, allTried);
        int sounds = 0;
        for (int i = 0; i < soundTrials; i++) {
            BenchArmature sound = armatures.get(i % armatures.size());
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, List.of(), Workshop.tests(sound), NOISE));
            sounds += d.verdict() == Diagnosis.Verdict.SOUND ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "sound called sound: %d of %d%n", sounds, soundTrials);
        int pairsFound = 0;
        int pairsTried = 0;
        while (pairsTried < pairs) {
            Winding w = shop.winding(60, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            Fault a = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            Fault b = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            if (ClosedLoopTest.overlap(w, a, b)) {
                continue;
            }
            pairsTried++;
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, List.of(a, b), Workshop.tests(sound), NOISE));
            if (!d.ranked().isEmpty() && Workshop.names(d.ranked().get(0), List.of(a, b))) {
                pairsFound++;
            } else {
                System.out.println("missed: " + ClosedLoopTest.describe(w, List.of(a, b), d));
            }
        }
        System.out.printf(Locale.ROOT, "pairs of faults: %d of %d%n", pairsFound, pairsTried);
    }
}
