package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.CoilState;
import coilwright.bench.TestRun;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The screen's bound is never above what faults reach, so that no two can be lost by it. */
final class ScreenTest {
    private static Place.Mode mode(int coil, Fault... faults) {
        List<Candidate> candidates = new ArrayList<>();
        for (Fault f : faults) {
            candidates.add(Candidate.fixed(f, 0.01));
        }
        return new Place.Mode(coil, candidates);
    }

    private static List<Place> places(BenchArmature sound, Workshop shop) {
        List<Place> out = new ArrayList<>();
        for (Coil c : sound.winding().liveCoils()) {
            CoilState s = sound.coil(c.number());
            int n = c.number();
            double x = 0.1 + 0.8 * shop.random().nextDouble();
            out.add(new Place(
                    s.topBar().getAsInt(),
                    s.bottomBar().getAsInt(),
                    List.of(
                            mode(0, new Fault.ShortedCoil(n), new Fault.ShortedTurns(n, x)),
                            mode(n, new Fault.OpenCoil(n), new Fault.HighResistance(n, 5 * x)))));
        }
        return out;
    }

    /** Squares that faults leave. */
    private static double reached(Weigher weigher, List<Fault> faults) {
        double[][] predicted = weigher.predict(faults);
        double squares = 0;
        for (int r = 0; r < predicted.length; r++) {
            squares += weigher.evidence().get(r).fits(predicted[r]).plain().squares();
        }
        return squares;
    }

    /** Squares that every two faults reach at least, and what they reach, are held against each other. */
    private static int compare(BenchArmature sound, List<TestRun> runs, List<Place> places) {
        var weigher = new Weigher(sound, runs);
        int tried = 0;
        for (boolean twoBreaks : new boolean[] {false, true}) {
            Screen screen = Screen.of(weigher.models(), weigher.evidence(), places, twoBreaks, true);
            for (Screen.Hit hit : screen.pairs(Double.MAX_VALUE, Integer.MAX_VALUE)) {
                Place.Mode a = places.get(hit.first()).modes().get(hit.firstMode());
                Place.Mode b = places.get(hit.second()).modes().get(hit.secondMode());
                for (Candidate first : a.candidates()) {
                    for (Candidate second : b.candidates()) {
                        List<Fault> faults =
                                List.of(first.fault().apply(0), second.fault().apply(0));
                        double squares = reached(weigher, faults);
                        tried++;
                        assertThat(hit.squares())
                                .as(
                                        "%s on %s %s %s",
                                        faults,
                                        sound.winding().type(),
                                        sound.winding().armature(),
                                        runs)
                                .isLessThanOrEqualTo(squares * (1 + 1e-6) + 1e-9);
                    }
                }
            }
        }
        return tried;
    }

    @Test
    void noTwoFaultsDoBetterThanTheirBound() {
        var shop = new Workshop(31);
        int tried = 0;
        for (int i = 0; i < 24; i++) {
            Winding w = shop.winding(24, i % 2 == 0);
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<Fault> truth = List.of(shop.fault(w, i % 5).orElseThrow());
            List<BenchTest> tests = List.of(new BenchTest.Drop(1, 3, 1), new BenchTest.Resistance());
            tried += compare(sound, shop.runs(sound, truth, tests, 0.02), places(sound, shop));
        }
        assertThat(tried).isGreaterThan(5000);
    }

    /** The second fault of a mode: some turns shorted, or a bad joint. */
    private static Fault sized(Place place, int mode) {
        return place.modes().get(mode).candidates().get(1).fault().apply(0);
    }

    private static List<TestRun> exact(BenchArmature faulty, List<BenchTest> tests) {
        return tests.stream().map(t -> new TestRun(t, t.readWalk(faulty))).toList();
    }

    /** Without an error the true fault's bound is nothing, and that of most others is more. */
    @Test
    void theBoundOfASingleFaultIsNothingOnlyWhereTheReadingsAreItsOwn() {
        var shop = new Workshop(32);
        for (int i = 0; i < 8; i++) {
            Winding w = shop.winding(20, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<Place> places = places(sound, shop);
            for (List<BenchTest> tests : List.<List<BenchTest>>of(
                    List.of(new BenchTest.Drop(1, 3, 1)),
                    List.of(new BenchTest.Resistance()),
                    List.of(new BenchTest.Drop(1, 2, 1), new BenchTest.Resistance()))) {
                int at = shop.random().nextInt(places.size());
                for (int mode = 0; mode < 2; mode++) {
                    Fault fault = sized(places.get(at), mode);
                    var weigher = new Weigher(sound, exact(fault.in(sound), tests));
                    Screen screen = Screen.of(weigher.models(), weigher.evidence(), places);
                    assertThat(screen.empty()).isFalse();
                    assertThat(screen.single(at, mode))
                            .as("%s %s", fault, tests)
                            .isLessThan(1e-12);
                    int others = 0;
                    for (int p = 0; p < places.size(); p++) {
                        double squares = screen.single(p, mode);
                        Fault other = sized(places.get(p), mode);
                        double reached = reached(weigher, List.of(other));
                        assertThat(squares).isLessThanOrEqualTo(reached * (1 + 1e-6) + 1e-9);
                        others += squares > 1e-6 ? 1 : 0;
                    }
                    assertThat(others)
                            .as("%s %s %s", w.armature(), fault, tests)
                            .isGreaterThan(places.size() / 2);
                }
            }
        }
    }
}
