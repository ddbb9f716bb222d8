package coilwright.winding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class WorkedPitchesTest {
    /** Reads one side of an equation, sums and products of numbers; works it out anew. */
    private static final class Reader {
        private final String text;
        private int at;

        Reader(String text) {
            this.text = text.replace(" ", "");
        }

        double sum() {
            double x = product();
            while (at < text.length() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
                x += text.charAt(at++) == '+' ? product() : -product();
            }
            return x;
        }

        private double product() {
            double x = factor();
            while (at < text.length() && (text.charAt(at) == '×' || text.charAt(at) == '/')) {
                x = text.charAt(at++) == '×' ? x * factor() : x / factor();
            }
            return x;
        }

        private double factor() {
            if (text.charAt(at) == '-') {
                at++;
                return -factor();
            }
            if (text.charAt(at) == '+') {
                at++;
                return factor();
            }
            if (text.charAt(at) == '(') {
                at++;
                double x = sum();
                at++;
                return x;
            }
            int from = at;
            while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
                at++;
            }
            return Double.parseDouble(text.substring(from, at));
        }
    }

    private static final Pattern NUMBERS = Pattern.compile("[-+]?[\\d(][\\d ()+×/.-]*");

    /** The sides of an equation that are written in numbers, worked out. */
    private static List<Double> sides(String working) {
        List<Double> out = new ArrayList<>();
        for (String side : working.split(" = ", -1)) {
            String bare = side.replaceAll(" (position|conductor|slot|bar)s?\\b.*$", "");
            if (NUMBERS.matcher(bare).matches()) {
                out.add(new Reader(bare).sum());
            }
        }
        return out;
    }

    @Test
    void everyEquationIsTrue() {
        int equations = 0;
        for (int slots = 4; slots <= 26; slots++) {
            for (int u = 1; u <= 3; u++) {
                for (int poles = 2; poles <= 8; poles += 2) {
                    for (int plex = 1; plex <= 2; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (WindingSpec spec : List.of(
                                    WindingSpec.lap(plex, direction),
                                    WindingSpec.wave(plex, direction),
                                    WindingSpec.wave(plex, direction).withDeadCoils(List.of(1)),
                                    WindingSpec.lap(plex, direction).withSpan(CoilSpan.ofThrow(2)),
                                    WindingSpec.lap(plex, direction).withSpan(CoilSpan.ofPositions(2 * u + 1)),
                                    new WindingSpec.FrogLeg(plex, direction, CoilSpan.usual(), 0))) {
                                int dead = spec instanceof WindingSpec.Regular r
                                        ? r.deadCoils().size()
                                        : 0;
                                var armature = Armature.of(slots, slots * u - dead, poles);
                                if (!Rules.blocking(armature, spec).isEmpty()) {
                                    continue;
                                }
                                equations += check(Winding.build(armature, spec));
                            }
                        }
                    }
                }
            }
        }
        assertThat(equations).isGreaterThan(10_000);
    }

    private static int check(Winding w) {
        int equations = 0;
        for (WorkedPitches.Step step : WorkedPitches.of(w)) {
            List<Double> sides = sides(step.working());
            for (int i = 1; i < sides.size(); i++) {
                assertThat(sides.get(i)).as("%s", step).isCloseTo(sides.get(i - 1), within(0.0051));
                equations++;
            }
        }
        Pitches y = w.pitches().orElseThrow();
        String which = w.sets().size() > 1 ? "lap part: " : "";
        assertThat(last(w, which + "back span")).isEqualTo(y.backSpan());
        assertThat(last(w, which + "commutator pitch")).isEqualTo(y.commutator());
        assertThat(last(w, which + "front pitch")).isEqualTo(y.frontSigned());
        assertThat(last(w, "parallel paths")).isEqualTo(w.parallelPaths().getAsInt());
        return equations;
    }

    private static int last(Winding w, String what) {
        String working = WorkedPitches.of(w).stream()
                .filter(s -> s.what().equals(what))
                .findFirst()
                .orElseThrow()
                .working();
        Matcher m = Pattern.compile("= ([-+]?\\d+)(?! ?[×/(])").matcher(working);
        int found = Integer.MIN_VALUE;
        while (m.find()) {
            found = Integer.parseInt(m.group(1));
        }
        return found;
    }

    @Test
    void writesItAsOnPaper() {
        // Bakshi, Electrical Machines I, Ex. 1.23: Ya = (26 + 2)/4 = 7, in bars (13 + 1)/2.
        assertThat(WorkedPitches.of(Winding.build(Armature.of(13, 13, 4), WindingSpec.wave(1, Direction.PROGRESSIVE))))
                .extracting(WorkedPitches.Step::working)
                .contains(
                        "S/P = 13/4 = 3.25 slots",
                        "yc = (K + m)/p = (13 + 1)/2 = 7 bars",
                        "Yb = 2 × y1 + 1 = 2 × 3 + 1 = 7 conductors",
                        "Y = Yb + Yf = 7 + 7 = 14 = 2 × yc",
                        "2 × m = 2 × 1 = 2");
    }

    private static List<String> steps(int slots, int bars, int poles, WindingSpec spec) {
        return WorkedPitches.of(Winding.build(Armature.of(slots, bars, poles), spec)).stream()
                .map(s -> s.what() + ": " + s.working())
                .toList();
    }

    @Test
    void everyStepOfAWaveWithADeadCoil() {
        assertThat(steps(24, 23, 4, WindingSpec.wave(1, Direction.PROGRESSIVE).withDeadCoils(List.of(24))))
                .containsExactly(
                        "coils: Q = bars + dead coils = 23 + 1 = 24",
                        "coil sides per slot and layer: u = Q/S = 24/24 = 1",
                        "pole pitch: S/P = 24/4 = 6 slots",
                        "coil throw: pole pitch rounded down = 6 slots: slot 1 to slot 7",
                        "back span: y1 = u × throw = 1 × 6 = 6 positions",
                        "commutator pitch: yc = (K + m)/p = (23 + 1)/2 = 12 bars",
                        "back pitch: Yb = 2 × y1 + 1 = 2 × 6 + 1 = 13 conductors",
                        "front pitch: Yf = 2 × (yc - y1) - 1 = 2 × (12 - 6) - 1 = 11 conductors",
                        "resultant pitch: Y = Yb + Yf = 13 + 11 = 24 = 2 × yc",
                        "closed circuits: gcd(K, yc) = gcd(23, 12) = 1",
                        "parallel paths: 2 × m = 2 × 1 = 2");
    }

    @Test
    void everyStepOfAShortLap() {
        assertThat(steps(4, 4, 4, WindingSpec.lap(1, Direction.RETROGRESSIVE).withSpan(CoilSpan.ofThrow(1))))
                .containsExactly(
                        "coil sides per slot and layer: u = Q/S = 4/4 = 1",
                        "pole pitch: S/P = 4/4 = 1 slot",
                        "coil throw: 1 slot, as given: slot 1 to slot 2",
                        "back span: y1 = u × throw = 1 × 1 = 1 position",
                        "commutator pitch: yc = -m = -1 bar",
                        "back pitch: Yb = 2 × y1 + 1 = 2 × 1 + 1 = 3 conductors",
                        "front pitch: Yf = 2 × (yc - y1) - 1 = 2 × (-1 - 1) - 1 = -5 conductors, printed without its sign",
                        "resultant pitch: Y = Yb + Yf = 3 - 5 = -2 = 2 × yc",
                        "closed circuits: gcd(K, yc) = gcd(4, 1) = 1",
                        "parallel paths: P × m = 4 × 1 = 4",
                        "equalizer pitch: K/p = 4/2 = 2 bars");
    }

    @Test
    void theStepsThatDiffer() {
        // Yf = 2 · (1 − 1) − 1.
        assertThat(steps(4, 4, 4, WindingSpec.lap(1, Direction.PROGRESSIVE)))
                .contains(
                        "front pitch: Yf = 2 × (yc - y1) - 1 = 2 × (1 - 1) - 1 = -1 conductor, printed without its sign");
        assertThat(steps(3, 3, 8, WindingSpec.wave(1, Direction.PROGRESSIVE)))
                .contains("commutator pitch: yc = (K + m)/p = (3 + 1)/4 = 1 bar");
        var duplex = WindingSpec.lap(2, Direction.PROGRESSIVE);
        assertThat(steps(12, 36, 4, duplex.withSpan(CoilSpan.ofPositions(10))))
                .contains(
                        "back span: y1 = 10 positions, as given, 3.33 slots on the mean: stepped",
                        "commutator pitch: yc = +m = +2 bars")
                .noneMatch(s -> s.startsWith("coil throw"));
        assertThat(steps(12, 36, 4, duplex.withSpan(CoilSpan.ofPositions(9))))
                .contains("back span: y1 = 9 positions, as given");
        assertThat(steps(26, 26, 4, WindingSpec.wave(2, Direction.PROGRESSIVE)))
                .endsWith("equalizer pitch: K/a = 26/2 = 13 bars");
        assertThat(steps(24, 24, 4, new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)))
                .contains(
                        "lap part: coil throw: pole pitch rounded down = 6 slots: slot 1 to slot 7",
                        "lap part: commutator pitch: yc = +m = +1 bar",
                        "wave part: back span: y1 = Q/p - y1 of the lap part = 24/2 - 6 = 6 positions",
                        "wave part: commutator pitch: yc = (K - m)/p = (24 - 2)/2 = 11 bars",
                        "wave part: resultant pitch: Y = Yb + Yf = 13 + 9 = 22 = 2 × yc",
                        "parallel paths: 2 × P × m = 2 × 4 × 1 = 8",
                        "equalizer pitch: K/p = 24/2 = 12 bars");
        var lap = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WorkedPitches.of(Winding.build(lap.armature(), lap.asListed())))
                .isEmpty();
    }
}
