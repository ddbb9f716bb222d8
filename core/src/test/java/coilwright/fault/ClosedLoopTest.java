package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Faults are put into windings, read with noise and unknown scale, and must be found again. */
final class ClosedLoopTest {
    private static final double NOISE = 0.02;

    @Tag("long")
    @Test
    void aSingleFaultOfAnyKindComesFirst() {
        var shop = new Workshop(20_01);
        List<String> misses = new ArrayList<>();
        int tried = 0;
        for (int i = 0; i < 300; i++) {
            Winding w = shop.winding(30, false);
            BenchArmature sound = BenchArmature.sound(w, 1);
            Optional<Fault> fault = shop.fault(w, i % Workshop.KINDS);
            if (fault.isEmpty()) {
                continue;
            }
            List<Fault> faults = List.of(fault.get());
            if (!Workshop.shown(sound, faults, Workshop.tests(sound), NOISE)) {
                continue;
            }
            tried++;
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, faults, Workshop.tests(sound), NOISE));
            if (d.ranked().isEmpty()
                    || d.likeliest().isEmpty()
                    || !Workshop.names(d.ranked().get(0), faults)) {
                misses.add(describe(w, faults, d));
            }
        }
        assertThat(tried).isGreaterThan(270);
        assertThat(misses).hasSizeLessThanOrEqualTo(tried / 100);
    }

    @Tag("long")
    @Test
    void soundWindingsAreCalledSound() {
        var shop = new Workshop(20_02);
        for (int i = 0; i < 150; i++) {
            Winding w = shop.winding(40, false);
            BenchArmature sound = BenchArmature.sound(w, 1);
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, List.of(), Workshop.tests(sound), NOISE));
            assertThat(d.verdict()).as(describe(w, List.of(), d)).isEqualTo(Diagnosis.Verdict.SOUND);
        }
    }

    @Test
    void twoFaultsOfTheMainKindsComeFirst() {
        var shop = new Workshop(20_03);
        List<String> misses = new ArrayList<>();
        int tried = 0;
        while (tried < 60) {
            Winding w = shop.winding(30, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            Fault first = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            Fault second = shop.fault(w, shop.random().nextInt(5)).orElseThrow();
            List<Fault> faults = List.of(first, second);
            if (overlap(w, first, second) || !Workshop.shown(sound, faults, Workshop.tests(sound), NOISE)) {
                continue;
            }
            tried++;
            Diagnosis d = Diagnosis.of(sound, shop.runs(sound, faults, Workshop.tests(sound), NOISE));
            if (d.ranked().isEmpty() || !Workshop.names(d.ranked().get(0), faults)) {
                misses.add(describe(w, faults, d));
            }
        }
        assertThat(misses).hasSizeLessThanOrEqualTo(3);
    }

    /** Two faults on one coil, or a short across a coil that is faulty itself, are one fault to any meter. */
    static boolean overlap(Winding w, Fault a, Fault b) {
        return bars(w, a).equals(bars(w, b));
    }

    private static List<Integer> bars(Winding w, Fault f) {
        if (!f.bars().isEmpty()) {
            return f.bars().stream().sorted().toList();
        }
        var coil = w.coil(f.coils().get(0));
        return List.of(coil.topBar().getAsInt(), coil.bottomBar().getAsInt()).stream()
                .sorted()
                .toList();
    }

    @Test
    void aDecimalSlipIsPointedOutOrDoesNoHarm() {
        var shop = new Workshop(20_04);
        for (int i = 0; i < 40; i++) {
            Winding w = shop.winding(30, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<TestRun> runs =
                    shop.runs(sound, List.of(), Workshop.tests(sound).subList(0, 1), 0.01);
            List<PairReading> readings = new ArrayList<>(runs.get(0).readings());
            int at = shop.random().nextInt(readings.size());
            PairReading was = readings.get(at);
            double factor = new double[] {10, 0.1, -1}[i % 3];
            readings.set(at, new PairReading(was.from(), was.to(), factor * was.value()));
            Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(runs.get(0).test(), readings)));
            boolean pointedOut = d.suspects().stream()
                    .anyMatch(
                            s -> s.reading().from() == was.from() && s.reading().to() == was.to());
            boolean spokenFor = !d.ranked().isEmpty()
                    && d.ranked().get(0).because().stream()
                            .anyMatch(b -> b.reading().from() == was.from());
            assertThat(d.verdict() == Diagnosis.Verdict.SOUND || pointedOut || spokenFor)
                    .as("factor %s on %s of %s", factor, was, describe(w, List.of(), d))
                    .isTrue();
        }
    }

    @Test
    void swappedRepeatedAndMissingPairsAreTakenAsTheyAre() {
        var shop = new Workshop(20_05);
        for (int i = 0; i < 30; i++) {
            Winding w = shop.winding(30, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<Fault> faults = List.of(shop.fault(w, i % 2).orElseThrow());
            TestRun run = shop.runs(sound, faults, Workshop.tests(sound).subList(0, 1), 0.005)
                    .get(0);
            List<PairReading> readings = new ArrayList<>();
            for (PairReading r : run.readings()) {
                switch (shop.random().nextInt(8)) {
                    case 0 -> readings.add(new PairReading(r.to(), r.from(), -r.value()));
                    case 1 -> {
                        readings.add(r);
                        readings.add(r);
                    }
                    default -> readings.add(r);
                }
            }
            Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(run.test(), readings)));
            assertThat(d.ranked()).isNotEmpty();
            assertThat(Workshop.names(d.ranked().get(0), faults))
                    .as(describe(w, faults, d))
                    .isTrue();
        }
    }

    @Test
    void tooFewOrImpossibleReadingsAreRefused() {
        Winding w = new Workshop(1).winding(30, true);
        BenchArmature sound = BenchArmature.sound(w, 1);
        var test = new BenchTest.Drop(1, 3, 1);
        assertThat(message(sound, test, List.of(new PairReading(1, 2, 1))))
                .isEqualTo("there are 1 readings, but a diagnosis needs at least 3: read more pairs");
        int k = w.armature().bars();
        assertThat(message(
                        sound,
                        test,
                        List.of(new PairReading(1, 2, 1), new PairReading(2, 3, 1), new PairReading(3, k + 1, 1))))
                .isEqualTo("a reading lies between 3 and " + (k + 1) + ", but bars run from 1 to " + k);
        assertThat(message(
                        sound,
                        test,
                        List.of(new PairReading(1, 2, 1), new PairReading(2, 3, Double.NaN), new PairReading(3, 4, 1))))
                .isEqualTo("the reading between 2 and 3 is not a number");
    }

    private static String message(BenchArmature sound, BenchTest test, List<PairReading> readings) {
        try {
            Diagnosis.of(sound, List.of(new TestRun(test, readings)));
            return "nothing";
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    static String describe(Winding w, List<Fault> faults, Diagnosis d) {
        return w.type() + " S=" + w.armature().slots() + " K=" + w.armature().bars() + " P="
                + w.armature().poles() + " step "
                + w.pitches().map(p -> p.commutator()).orElse(0) + " " + faults + " gave " + d.verdict()
                + String.format(Locale.ROOT, " sound %.3g ", d.soundProbability())
                + d.ranked().stream()
                        .limit(3)
                        .map(e -> String.format(
                                Locale.ROOT,
                                "%.3g %s like %s",
                                e.probability(),
                                e.faults(),
                                e.sameReadings().stream().limit(3).toList()))
                        .toList();
    }
}
