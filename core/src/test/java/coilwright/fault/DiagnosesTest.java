package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.KeptText;
import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Faults put into small armatures, read with an error of a few thousandths and diagnosed, some of them roughly and in part: the fault must come first, or
 * among those that read the same; and all figures stay as they were, set down when the first was seen to hold. Where a
 * change of the diagnosis is meant, {@link #main} writes the file anew.
 */
final class DiagnosesTest {
    private static final String FILE = "diagnoses.txt";

    private record Case(
            String name, BenchArmature sound, List<BenchTest> tests, List<Fault> faults, double error, int pairs) {
        Case(String name, BenchArmature sound, List<BenchTest> tests, List<Fault> faults) {
            this(name, sound, tests, faults, 0.002, Integer.MAX_VALUE);
        }

        /** As read by an unsteady hand that stops early. */
        Case rough(double off, int most) {
            return new Case(name, sound, tests, faults, off, most);
        }

        boolean rough() {
            return pairs < Integer.MAX_VALUE;
        }

        List<TestRun> runs() {
            BenchArmature faulty = sound;
            for (Fault f : faults) {
                faulty = f.in(faulty);
            }
            List<TestRun> out = new ArrayList<>();
            for (BenchTest test : tests) {
                List<PairReading> read = new ArrayList<>();
                List<PairReading> exact = test.readWalk(faulty);
                for (PairReading r : exact.subList(0, Math.min(pairs, exact.size()))) {
                    double off = 1 + error * ((read.size() * 5 + out.size() * 3) % 7 - 3);
                    read.add(new PairReading(r.from(), r.to(), r.value() * off * (1 + out.size())));
                }
                out.add(new TestRun(test, read));
            }
            return out;
        }
    }

    private static List<Case> cases() {
        BenchArmature lap = sound(Armature.of(10, 10, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        BenchArmature wave = sound(Armature.of(11, 11, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        BenchArmature apart = sound(Armature.of(8, 8, 2), WindingSpec.lap(2, Direction.PROGRESSIVE));
        List<BenchTest> drop = List.of(new BenchTest.Drop(1, 6, 1));
        List<BenchTest> both = List.of(new BenchTest.Drop(1, 4, 1), new BenchTest.Resistance());
        List<BenchTest> ohms = List.of(new BenchTest.Resistance());
        List<BenchTest> shaft = List.of(new BenchTest.Resistance(), new BenchTest.GroundWalk(1, 4, 1));
        List<Case> out = new ArrayList<>();
        out.add(new Case("lap", lap, drop, List.of()));
        out.add(new Case("lap", lap, drop, List.of(new Fault.OpenCoil(3))));
        out.add(new Case("lap", lap, drop, List.of(new Fault.ShortedCoil(4))));
        out.add(new Case("lap", lap, ohms, List.of(new Fault.ShortedTurns(7, 0.4))));
        out.add(new Case("lap", lap, ohms, List.of(new Fault.HighResistance(2, 0.6))));
        out.add(new Case("lap", lap, drop, List.of(new Fault.CrossedLeads(4, 5, Fault.Leads.BOTH))));
        out.add(new Case("lap", lap, both, List.of(new Fault.OpenCoil(3), new Fault.ShortedCoil(8))));
        out.add(new Case("lap", lap, both, List.of(new Fault.HighResistance(2, 3), new Fault.ShortedTurns(6, 0.5))));
        out.add(new Case("lap", lap, shaft, List.of(new Fault.Ground(Point.bar(7)))));
        out.add(new Case("lap", lap, shaft, List.of(new Fault.Ground(new Point.Inside(3, 0.4)))));
        out.add(new Case("lap", lap, both, List.of(new Fault.SlotShort(6, 0.5, 1, 0.3))));
        out.add(new Case("wave", wave, ohms, List.of(new Fault.ShortedCoil(4))));
        out.add(new Case("wave", wave, both, List.of(new Fault.BarShort(5, 6))));
        out.add(new Case("wave", wave, both, List.of(new Fault.WrongBar(4, true, 5))));
        out.add(new Case("wave", wave, both, List.of(new Fault.OpenCoil(2), new Fault.OpenCoil(9))));
        out.add(new Case("wave", wave, List.of(new BenchTest.Polarity()), List.of(new Fault.ReversedCoil(7))));
        out.add(new Case("two circuits", apart, ohms, List.of(new Fault.BarShort(3, 4))));
        out.add(new Case(
                "two circuits", apart, ohms, List.of(new Fault.HighResistance(2, 0.8), new Fault.ShortedCoil(5))));
        out.add(new Case("lap", lap, ohms, List.of()).rough(0.02, 4));
        out.add(new Case("lap", lap, ohms, List.of(new Fault.ShortedTurns(3, 0.2))).rough(0.02, 7));
        out.add(new Case("lap", lap, drop, List.of(new Fault.HighResistance(4, 0.15))).rough(0.02, 6));
        out.add(new Case("lap", lap, drop, List.of(new Fault.ShortedCoil(2))).rough(0.01, 3));
        out.add(new Case("lap", lap, both, List.of(new Fault.WrongTurns(2, 1.2))).rough(0.015, 8));
        out.add(new Case("lap", lap, shaft, List.of(new Fault.Ground(Point.bar(3)))).rough(0.01, 4));
        out.add(new Case("wave", wave, ohms, List.of(new Fault.HighResistance(5, 0.3))).rough(0.02, 8));
        out.add(new Case("wave", wave, both, List.of(new Fault.CrossedLeads(3, 4, Fault.Leads.TOP))).rough(0.01, 5));
        out.add(new Case("two circuits", apart, ohms, List.of(new Fault.HighResistance(2, 0.4))).rough(0.02, 5));
        return out;
    }

    private static BenchArmature sound(Armature armature, WindingSpec spec) {
        return BenchArmature.sound(Winding.build(armature, spec), 1);
    }

    private static Map<Case, Diagnosis> diagnosed() {
        Map<Case, Diagnosis> out = new LinkedHashMap<>();
        cases().forEach(c -> out.put(c, Diagnosis.of(c.sound(), c.runs())));
        return out;
    }

    private static List<String> told(Map<Case, Diagnosis> diagnosed) {
        List<String> out = new ArrayList<>();
        diagnosed.forEach((c, d) -> {
            out.add(words(c));
            out.addAll(lines(d));
        });
        return out;
    }

    private static String words(Case c) {
        return c.name() + ", "
                + c.tests().stream().map(BenchTest::word).collect(Collectors.joining(" and ")) + ": "
                + words(c.faults())
                + (c.rough() ? ", " + c.pairs() + " pairs read roughly" : "");
    }

    private static String words(List<Fault> faults) {
        return faults.isEmpty() ? "sound" : faults.stream().map(Fault::words).collect(Collectors.joining(" and "));
    }

    private static String figure(double x) {
        return String.format(Locale.ROOT, "%.3f", x);
    }

    private static List<String> lines(Diagnosis d) {
        List<String> out = new ArrayList<>();
        out.add("  " + d.verdict() + ", sound " + figure(d.soundProbability()) + ", noise "
                + String.format(Locale.ROOT, "%.4f", d.noise()) + ", gains "
                + d.gains().stream().map(DiagnosesTest::figure).collect(Collectors.joining(" ")));
        for (Diagnosis.Explanation e : d.ranked()) {
            if (e.probability() >= 0.001) {
                out.add("  " + figure(e.probability()) + " " + words(e.faults())
                        + e.sameReadings().stream()
                                .limit(6)
                                .map(s -> "; " + words(s))
                                .collect(Collectors.joining())
                        + (e.sameReadings().size() > 6 ? "; " + e.sameReadings().size() + " in all" : ""));
            }
        }
        out.add("  not seen: " + String.join(" ", d.unseen()));
        d.suspects().forEach(s -> out.add("  again: " + s.reading() + " " + s.advice()));
        NextProbe.of(d, Growler.USUAL)
                .ifPresent(n -> out.add("  next, " + figure(n.information()) + ": " + n.instruction()));
        return out;
    }

    @Test
    void theFaultPutInIsFoundAndEveryFigureStaysAsItWas() {
        Map<Case, Diagnosis> diagnosed = diagnosed();
        diagnosed.forEach((c, d) -> {
            assertThat(d.ranked().stream()
                                    .mapToDouble(Diagnosis.Explanation::probability)
                                    .sum()
                            + d.soundProbability())
                    .isCloseTo(1, within(1e-9));
            if (c.faults().isEmpty()) {
                assertThat(d.verdict()).isEqualTo(Diagnosis.Verdict.SOUND);
            } else if (!c.rough()) {
                assertThat(d.verdict()).as(words(c)).isEqualTo(Diagnosis.Verdict.FAULTY);
                assertThat(Workshop.names(d.ranked().get(0), c.faults()))
                        .as(words(c))
                        .isTrue();
            }
        });
        assertThat(told(diagnosed)).containsExactlyElementsOf(KeptText.lines(DiagnosesTest.class, FILE));
    }

    /** Writes the file into a folder. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0], FILE), told(diagnosed()));
    }
}
