package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchTest;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every key against a second way of working it out: plain counting, a dense matrix, or trying all that may be. So many of
 * each kind are tried; {@code -Dlessons=1000} or {@link #main} tries more.
 */
class KeysTest {
    private static final int MANY = Integer.getInteger("lessons", 120);
    private static final long SEED = 20_240_229;

    @ParameterizedTest
    @EnumSource(Kind.class)
    void everyKeyIsRightTheOtherWay(Kind kind) {
        check(kind, MANY);
    }

    /** Tries 1,000 of each kind, or as many as the first argument tells. */
    public static void main(String[] args) {
        int many = args.length > 0 ? Integer.parseInt(args[0]) : 1000;
        for (Kind kind : Kind.values()) {
            check(kind, many);
            System.out.println(kind.word() + ": " + many + " keys agree");
        }
    }

    private static void check(Kind kind, int many) {
        for (int i = 0; i < many; i++) {
            int grade = 1 + i % 3;
            Exercise e = Lesson.exercise(SEED, grade, kind, 1 + i / 3);
            try {
                assertThat(e.kind()).isEqualTo(kind);
                assertThat(e.grade()).isEqualTo(grade);
                assertThat(e.question()).isNotEmpty().noneMatch(String::isBlank);
                assertThat(e.answers()).isNotEmpty();
                assertThat(e.asked()).isNotEmpty();
                assertThat(e.steps()).isNotEmpty().noneMatch(String::isBlank);
                check(e);
            } catch (AssertionError | RuntimeException failed) {
                throw new AssertionError(
                        kind.word() + " of grade " + grade + ", number " + (1 + i / 3) + ": " + e, failed);
            }
        }
    }

    private static void check(Exercise e) {
        if (e instanceof PitchesExercise p) {
            pitches(p);
        } else if (e instanceof TableExercise t) {
            table(t);
        } else if (e instanceof FeasibleExercise f) {
            feasible(f);
        } else if (e instanceof ListErrorExercise l) {
            listError(l);
        } else if (e instanceof ReadingsExercise r) {
            readings(r);
        } else if (e instanceof FaultExercise f) {
            fault(f);
        } else if (e instanceof PlacesExercise p) {
            places(p);
        } else {
            wire((WireExercise) e);
        }
    }

    private static Map<String, String> answers(Exercise e) {
        Map<String, String> out = new LinkedHashMap<>();
        e.answers().forEach(a -> assertThat(out.put(a.what(), a.value())).isNull());
        return out;
    }

    private static int number(Map<String, String> answers, String what) {
        return Integer.parseInt(answers.get(what));
    }

    private static void pitches(PitchesExercise e) {
        Map<String, String> a = answers(e);
        Plain plain = Plain.of(e.armature(), e.spec());
        int s = e.armature().slots();
        int k = e.armature().bars();
        Set<Integer> spans = new TreeSet<>();
        for (int[] r : plain.rows()) {
            spans.add(Math.floorMod(r[1] - r[0], s));
        }
        assertThat(a.get("coil throw"))
                .isEqualTo(spans.stream().map(String::valueOf).collect(Collectors.joining(",")));
        int yc = number(a, "commutator pitch");
        int[] live = plain.rows().stream().filter(r -> r[2] > 0).findFirst().orElseThrow();
        assertThat(Math.floorMod(live[3] - live[2] - yc, k)).isZero();
        int m = e.spec().plex() * e.spec().direction().sign();
        assertThat(e.spec().type() == WindingType.LAP ? yc : yc * e.armature().polePairs() - k)
                .isEqualTo(m);
        assertThat(number(a, "closed circuits")).isEqualTo(plain.rings());
        int paths = number(a, "parallel paths");
        if (2 * e.spec().plex() * e.armature().polePairs() < k) {
            assertThat(paths).isEqualTo(2 * plain.turnsOfTheVoltages());
        }
        // Conductors: top sides odd, bottom sides even, two to a position.
        int z = 2 * plain.rows().size();
        int bottom = 2 * (1 + number(a, "span at the back"));
        assertThat(number(a, "back pitch")).isEqualTo(bottom - 1);
        assertThat((bottom / 2 - 1) % (z / 2) / plain.u() + 1)
                .isEqualTo(plain.rows().get(0)[1]);
        if (e.spec().deadCoils().isEmpty()) {
            int next = IntStream.range(0, plain.rows().size())
                    .filter(i -> plain.rows().get(i)[2] == plain.rows().get(0)[3])
                    .findFirst()
                    .orElseThrow();
            int front = number(a, "front pitch");
            int step = Math.floorMod(2 * next + 1 - bottom, z);
            assertThat(List.of(Math.floorMod(front, z), Math.floorMod(-front, z)))
                    .contains(step);
        }
        assertThat(number(a, "resultant pitch")).isEqualTo(2 * Math.abs(yc));
        if (e.grade() > 1) {
            assertThat(number(a, "coil sides per slot and layer")).isEqualTo(plain.u());
            int pairs = e.spec().type() == WindingType.LAP ? e.armature().polePairs() : paths / 2;
            boolean may = pairs > 1 && k % pairs == 0 && e.armature().polePairs() % pairs == 0;
            assertThat(a.get("equalizer pitch")).isEqualTo(may ? Integer.toString(k / pairs) : "none");
        }
    }

    private static void table(TableExercise e) {
        Plain plain = Plain.of(e.armature(), e.spec());
        List<List<String>> rows = e.filledTable().orElseThrow().rows();
        assertThat(rows).hasSize(plain.rows().size());
        Set<String> tops = new LinkedHashSet<>();
        Set<String> bottoms = new LinkedHashSet<>();
        for (int i = 0; i < rows.size(); i++) {
            int[] r = plain.rows().get(i);
            List<String> expected = new ArrayList<>(List.of(Integer.toString(i + 1)));
            for (int n : r) {
                expected.add(n == 0 ? "–" : Integer.toString(n));
            }
            assertThat(rows.get(i)).isEqualTo(expected);
            if (r[2] > 0) {
                tops.add(expected.get(3));
                bottoms.add(expected.get(4));
            }
            List<String> asked = e.table().orElseThrow().rows().get(i);
            assertThat(asked).isEqualTo(i < e.given() ? expected : List.of(expected.get(0), "", "", "", ""));
        }
        assertThat(tops).hasSize(e.armature().bars());
        assertThat(bottoms).hasSize(e.armature().bars());
        assertThat(e.answers())
                .hasSize(rows.size() - e.given())
                .allSatisfy(a -> assertThat(a.value())
                        .isEqualTo(String.join(
                                ",",
                                rows.get(Integer.parseInt(a.what().substring(5)) - 1)
                                        .subList(1, 5))));
    }

    private static void feasible(FeasibleExercise e) {
        Map<String, String> a = answers(e);
        int k = e.armature().bars();
        int p = e.armature().polePairs();
        int m = e.spec().plex() * e.spec().direction().sign();
        boolean wave = e.spec().type() == WindingType.WAVE;
        boolean fills = (k + e.spec().deadCoils().size()) % e.armature().slots() == 0;
        boolean stepped = !wave || Plain.steps(k, p, m) > 0;
        assertThat(a.get("can it be wound")).isEqualTo(fills && stepped ? "yes" : "no");
        if (fills && stepped) {
            Plain plain = Plain.of(e.armature(), e.spec());
            assertThat(number(a, "commutator pitch")).isEqualTo(plain.yc());
            assertThat(number(a, "closed circuits")).isEqualTo(plain.rings());
            if (2 * e.spec().plex() * p < k) {
                assertThat(number(a, "parallel paths")).isEqualTo(2 * plain.turnsOfTheVoltages());
            }
            assertThat(a).hasSize(4);
            return;
        }
        List<String> rules = new ArrayList<>();
        if (!fills) {
            rules.add("coil-sides-fit-slots");
        }
        if (!stepped) {
            rules.add("commutator-pitch-whole");
            int down = k - 1;
            while (Plain.steps(down, p, m) == 0) {
                down--;
            }
            int up = k + 1;
            while (Plain.steps(up, p, m) == 0) {
                up++;
            }
            assertThat(a.get("bars that would do")).isEqualTo(down + "," + up);
        }
        assertThat(a.get("rules broken")).isEqualTo(String.join(",", rules));
    }

    /** All that the question allows is tried; one alone gives the list. */
    private static void listError(ListErrorExercise e) {
        int[][] found = new int[e.found().size()][];
        for (int i = 0; i < found.length; i++) {
            ListedCoil c = e.found().get(i);
            assertThat(c.coil()).isEqualTo(i + 1);
            found[i] = new int[] {
                c.topSlot(),
                c.bottomSlot(),
                c.topBar().getAsInt(),
                c.bottomBar().getAsInt()
            };
        }
        List<Map<Integer, int[]>> explanations = new ArrayList<>();
        for (int[][] plan : plans(e)) {
            explanations.addAll(oneErrorFrom(plan, found));
        }
        assertThat(explanations).hasSize(1);
        Map<String, String> a = answers(e);
        assertThat(a).hasSize(1 + explanations.get(0).size());
        explanations
                .get(0)
                .forEach((coil, row) -> assertThat(a.get("coil " + coil + " should be"))
                        .isEqualTo(Arrays.stream(row).mapToObj(String::valueOf).collect(Collectors.joining(","))));
        String coils =
                explanations.get(0).keySet().stream().map(String::valueOf).collect(Collectors.joining(","));
        assertThat(a.get("error")).endsWith(":" + coils);
    }

    /** The plan, or at grade 3 every plan of the kind. */
    private static List<int[][]> plans(ListErrorExercise e) {
        if (e.grade() < 3) {
            return List.<int[][]>of(Plain.of(e.armature(), e.spec()).rows().toArray(int[][]::new));
        }
        List<int[][]> out = new ArrayList<>();
        Armature a = e.armature();
        int k = a.bars();
        int u = k / a.slots();
        for (Direction d : Direction.values()) {
            int past = d.sign() * e.spec().plex();
            int yc = e.spec().type() == WindingType.LAP ? past : Plain.steps(k, a.polePairs(), past);
            for (int y1 = u; yc != 0 && y1 <= k - u; y1++) {
                for (int offset = 0; offset < k; offset++) {
                    int[][] plan = new int[k][];
                    for (int i = 0; i < k; i++) {
                        plan[i] = new int[] {
                            i / u + 1, (i + y1) % k / u + 1, (i + offset) % k + 1, Math.floorMod(i + offset + yc, k) + 1
                        };
                    }
                    out.add(plan);
                }
            }
        }
        return out;
    }

    /** The rows as planned that one error of the kinds allowed turned into those found. */
    private static List<Map<Integer, int[]>> oneErrorFrom(int[][] plan, int[][] found) {
        List<Integer> off = new ArrayList<>();
        for (int i = 0; i < plan.length; i++) {
            if (!Arrays.equals(plan[i], found[i])) {
                off.add(i);
            }
        }
        Map<Integer, int[]> rows = new LinkedHashMap<>();
        off.forEach(i -> rows.put(i + 1, plan[i]));
        List<Map<Integer, int[]>> out = new ArrayList<>();
        if (off.size() == 1) {
            int[] p = plan[off.get(0)];
            int[] f = found[off.get(0)];
            boolean reversed = p[2] == f[3] && p[3] == f[2] && p[0] == f[0] && p[1] == f[1];
            long differ = IntStream.range(0, 4).filter(c -> p[c] != f[c]).count();
            if (reversed || differ == 1) {
                out.add(rows);
            }
        } else if (off.size() == 2) {
            int[] p = plan[off.get(0)];
            int[] q = plan[off.get(1)];
            for (int column = 2; column < 4; column++) {
                int[] one = p.clone();
                int[] other = q.clone();
                one[column] = q[column];
                other[column] = p[column];
                if (Arrays.equals(one, found[off.get(0)]) && Arrays.equals(other, found[off.get(1)])) {
                    out.add(rows);
                }
            }
        }
        return out;
    }

    private static int[][] pairs(List<BenchTest.Pair> pairs) {
        return pairs.stream().map(p -> new int[] {p.from(), p.to()}).toArray(int[][]::new);
    }

    private static void readings(ReadingsExercise e) {
        Plain plain = Plain.of(e.armature(), e.spec());
        boolean growler = e.test() instanceof BenchTest.GrowlerWalked;
        var bench = new DenseBench(e.armature().bars());
        for (int i = 0; i < plain.rows().size(); i++) {
            int[] r = plain.rows().get(i);
            int coil = i + 1;
            if (e.fault()
                    .filter(f -> f instanceof Fault.OpenCoil && f.coils().contains(coil))
                    .isPresent()) {
                continue;
            }
            boolean shorted = e.fault().filter(f -> f.coils().contains(coil)).isPresent();
            double volts = growler ? enclosed(plain, r, ((BenchTest.GrowlerWalked) e.test()).angle()) : 0;
            bench.coil(r[2], r[3], shorted ? 0 : growler ? 1 : e.milliohms(), volts);
        }
        int[][] pairs = pairs(e.pairs());
        double[] read = e.test() instanceof BenchTest.Drop d
                ? bench.drop(d.in(), d.out(), d.amperes(), pairs)
                : growler ? bench.induced(pairs) : bench.resistance(pairs);
        double last = growler ? 0.01 : 0.1;
        List<Answer> answers = e.answers();
        assertThat(answers).hasSize(read.length);
        for (int i = 0; i < read.length; i++) {
            String value = answers.get(i).value();
            assertThat(value.equals("open")).isEqualTo(Double.isInfinite(read[i]));
            if (!value.equals("open")) {
                assertThat(Double.parseDouble(value)).isCloseTo(read[i], within(last / 2 * 0.97));
                assertThat(value.substring(value.indexOf('.') + 1)).hasSize(growler ? 2 : 1);
            }
        }
    }

    /** Flux of the growler between the sides of a coil, added up in small steps. */
    private static double enclosed(Plain plain, int[] row, double angle) {
        double from = angle + plain.slotAngle(row[0]);
        double span = Math.floorMod(row[1] - row[0], plain.armature().slots())
                * 360.0
                / plain.armature().slots();
        int steps = 40_000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double at = (from + span * (i + 0.5) / steps) % 360;
            sum += at > 105 && at < 165 ? 1 : at > 195 && at < 255 ? -1 : 0;
        }
        return sum * span / steps / 60;
    }

    /** All faults named in the question are tried; those that give the table are the answer. */
    private static void fault(FaultExercise e) {
        Plain plain = Plain.of(e.armature(), e.spec());
        int k = e.armature().bars();
        int[][] pairs = new int[k][];
        for (int i = 0; i < k; i++) {
            pairs[i] = new int[] {i + 1, (i + 1) % k + 1};
        }
        List<List<String>> rows = e.table().orElseThrow().rows();
        assertThat(rows).hasSize(k);
        List<String> fitting = new ArrayList<>();
        for (String fault : faults(e, k)) {
            double[] read = read(e, plain, fault, pairs);
            boolean fits = true;
            for (int i = 0; i < k; i++) {
                assertThat(rows.get(i).get(0)).isEqualTo(pairs[i][0] + "–" + pairs[i][1]);
                String printed = rows.get(i).get(1).replace('−', '-');
                fits &= printed.equals("open")
                        ? Double.isInfinite(read[i])
                        : Math.abs(Double.parseDouble(printed) - read[i]) < 0.05;
            }
            if (fits) {
                fitting.add(fault);
            }
        }
        assertThat(e.answers().get(0).value().split(" (?=[a-z-]+:)")).containsExactlyInAnyOrderElementsOf(fitting);
        assertThat(read(e, plain, "none", pairs)).isNotEqualTo(read(e, plain, fitting.get(0), pairs));
    }

    private static List<String> faults(FaultExercise e, int k) {
        List<String> out = new ArrayList<>();
        for (int i = 1; i <= k; i++) {
            out.add("open-coil:" + i);
            out.add("shorted-coil:" + i);
            out.add("bar-short:" + i + "," + (i % k + 1));
            if (e.grade() > 1) {
                out.add("shorted-turns:" + i + ",50%");
                out.add("high-resistance:" + i + "," + Math.round(e.milliohms()) + " mohm");
            }
            if (e.grade() > 2) {
                for (String leads : List.of("top", "bottom", "both")) {
                    out.add("crossed-leads:" + i + "," + (i % k + 1) + "," + leads);
                }
            }
        }
        return out;
    }

    private static double[] read(FaultExercise e, Plain plain, String fault, int[][] pairs) {
        String kind = fault.split(":")[0];
        String[] part = fault.contains(":") ? fault.split(":")[1].split(",") : new String[] {"0"};
        int at = Integer.parseInt(part[0]);
        var bench = new DenseBench(e.armature().bars());
        for (int i = 0; i < plain.rows().size(); i++) {
            int top = plain.rows().get(i)[2];
            int bottom = plain.rows().get(i)[3];
            double ohms = e.milliohms();
            boolean here = at == i + 1;
            if (kind.equals("crossed-leads")) {
                int other = Integer.parseInt(part[1]);
                top = part[2].equals("bottom") ? top : top == at ? other : top == other ? at : top;
                bottom = part[2].equals("top") ? bottom : bottom == at ? other : bottom == other ? at : bottom;
            } else if (here) {
                ohms *= switch (kind) {
                    case "shorted-coil" -> 0;
                    case "shorted-turns" -> 0.5;
                    case "high-resistance" -> 2;
                    default -> 1;
                };
            }
            if (top != bottom && !(here && kind.equals("open-coil"))) {
                bench.coil(top, bottom, ohms, 0);
            }
        }
        if (kind.equals("bar-short")) {
            bench.join(at, Integer.parseInt(part[1]));
        }
        return e.test() instanceof BenchTest.Drop d
                ? bench.drop(d.in(), d.out(), d.amperes(), pairs)
                : bench.resistance(pairs);
    }

    private static void places(PlacesExercise e) {
        Map<String, String> a = answers(e);
        Plain plain = Plain.of(e.armature(), e.spec());
        int poles = e.armature().poles();
        double pitch = 360.0 / poles;
        // The coils of slot 1, each against the first, so that none is taken round the pole pitch from it.
        double first = neutral(plain, plain.rows().get(0));
        double sum = 0;
        for (int i = 0; i < plain.u(); i++) {
            double own = neutral(plain, plain.rows().get(i));
            sum += own - pitch * Math.rint((own - first) / pitch);
        }
        double off = sum / plain.u();
        off -= pitch * Math.rint(off / pitch);
        int plex = e.spec().plex();
        double told = Double.parseDouble(a.get("brush 1 stands at"));
        double gap = told - off;
        // A brush half way between two poles may be told from either.
        boolean half = Math.abs(Math.abs(off) - pitch / 2) < 1e-6;
        assertThat(Math.abs(gap - 360 * Math.rint(gap / 360)))
                .satisfiesAnyOf(
                        g -> assertThat(g).isLessThan(0.05),
                        g -> assertThat(half && Math.abs(g - pitch) < 0.05).isTrue());
        for (int j = 1; j <= poles; j++) {
            double angle = Double.parseDouble(a.get("brush " + j + " stands at"));
            assertThat(Math.abs((angle - told - (j - 1) * pitch) % 360))
                    .satisfiesAnyOf(
                            g -> assertThat(g).isLessThan(0.11),
                            g -> assertThat(g).isGreaterThan(359.89));
            double exact = off + pitch * Math.rint((angle - off) / pitch);
            Set<String> touched = new TreeSet<>();
            for (int i = 0; i < 4000; i++) {
                double at = exact
                        + (i / 4000.0 + 1 / 8000.0 - 0.5)
                                * plex
                                * 360
                                / e.armature().bars();
                double bar = (at - plain.barAngle(1)) / 360 * e.armature().bars();
                touched.add(Integer.toString(
                        1 + Math.floorMod((int) Math.rint(bar), e.armature().bars())));
            }
            assertThat(a.get("brush " + j + " touches").split(",")).containsExactlyInAnyOrderElementsOf(touched);
        }
        assertThat(number(a, "least number of brushes")).isEqualTo(e.spec().type() == WindingType.LAP ? poles : 2);
        equalizers(e, plain, a);
    }

    /** From the middle of a coil to the middle between its bars, degrees, but for whole pole pitches. */
    private static double neutral(Plain plain, int[] r) {
        Armature a = plain.armature();
        double coil = plain.slotAngle(r[0]) + Math.floorMod(r[1] - r[0], a.slots()) * 180.0 / a.slots();
        double bars = plain.barAngle(r[2]) + plain.yc() * 180.0 / a.bars();
        double pitch = 360.0 / a.poles();
        // A wave coil's bars are brought together by a pole pair, their middle by a pole pitch.
        return bars - coil - pitch * Math.rint((bars - coil) / pitch);
    }

    /** Bars at one potential whatever the field, as long as it repeats every two poles. */
    private static void equalizers(PlacesExercise e, Plain plain, Map<String, String> a) {
        Random field = new Random(5);
        int s = e.armature().slots();
        int k = e.armature().bars();
        double[] flux = field.doubles(s).toArray();
        double[] volts = new double[k + 1];
        int[] circuit = new int[k + 1];
        for (int start = 1; start <= k; start++) {
            if (circuit[start] != 0) {
                continue;
            }
            int bar = start;
            while (circuit[bar] == 0) {
                circuit[bar] = start;
                int here = bar;
                int[] r = plain.rows().stream()
                        .filter(x -> x[2] == here)
                        .findFirst()
                        .orElseThrow();
                int p = e.armature().polePairs();
                double next = volts[bar] + flux[r[0] * p % s] - flux[r[1] * p % s];
                bar = r[3];
                if (circuit[bar] == 0) {
                    volts[bar] = next;
                } else {
                    assertThat(next).isCloseTo(volts[bar], within(1e-9));
                }
            }
        }
        List<String> ring = new ArrayList<>();
        Set<Long> rings = new LinkedHashSet<>();
        for (int bar = 1; bar <= k; bar++) {
            if (circuit[bar] == circuit[1] && Math.abs(volts[bar] - volts[1]) < 1e-9) {
                ring.add(Integer.toString(bar));
            }
            rings.add(Math.round(volts[bar] * 1e7) * 1000 + circuit[bar]);
        }
        if (ring.size() == 1) {
            assertThat(a.get("ring of bar 1")).isEqualTo("none");
            assertThat(a.get("rings")).isEqualTo("0");
            assertThat(a.get("equalizer pitch")).isEqualTo("none");
        } else {
            assertThat(a.get("ring of bar 1")).isEqualTo(String.join(",", ring));
            assertThat(number(a, "rings")).isEqualTo(rings.size());
            assertThat(number(a, "equalizer pitch")).isEqualTo(Integer.parseInt(ring.get(1)) - 1);
        }
    }

    private static void wire(WireExercise e) {
        Map<String, Double> expected = new LinkedHashMap<>();
        Plain plain = Plain.of(e.armature(), e.spec());
        double area = e.inHand() * Math.PI * e.bareMm() * e.bareMm() / 4;
        double turn = e.meanTurnMm();
        if (e.grade() == 3) {
            double slots = Math.floorMod(
                    plain.rows().get(0)[1] - plain.rows().get(0)[0],
                    e.armature().slots());
            double arc = Math.PI
                    * (e.core().diameterMm() - e.core().slotDepthMm())
                    * slots
                    / e.armature().slots();
            double end = 2 * e.diamond().straightMm()
                    + arc / Math.cos(Math.PI * e.diamond().legDegrees() / 180)
                    + e.diamond().noseMm();
            turn = 2 * e.core().lengthMm() + 2 * end;
            expected.put("mean turn", turn);
        }
        expected.put("copper area of one turn", area);
        double metres = turn * e.turns() / 1000;
        expected.put("length of one coil", metres);
        double ohms = metres / 58 / area;
        expected.put("resistance of one coil at 20 °C", ohms);
        if (e.grade() > 1) {
            double paths = e.spec().type() == WindingType.LAP
                    ? e.armature().poles() * e.spec().plex()
                    : 2 * e.spec().plex();
            double warm = ohms * (234.5 + e.warmCelsius()) / 254.5;
            expected.put(
                    "armature resistance at " + Math.round(e.warmCelsius()) + " °C",
                    warm * (e.armature().bars() / paths) / paths);
            double wide = e.slot().widthMm() - 2 * e.insulation().linerMm();
            double high = e.slot().depthMm()
                    - e.insulation().linerMm()
                    - e.insulation().separatorMm()
                    - e.insulation().wedgeMm();
            int wires = 2 * plain.u() * e.turns() * e.inHand();
            expected.put("slot fill", 100 * wires * e.overallMm() * e.overallMm() / (wide * high));
        }
        if (e.grade() == 3) {
            expected.put("copper in the armature", plain.rows().size() * metres * area * 8.89 / 1000);
        }
        assertThat(e.answers().stream().map(Answer::what)).containsExactlyElementsOf(expected.keySet());
        for (Answer a : e.answers()) {
            double is = Double.parseDouble(a.value()) / (a.unit().equals("mΩ") ? 1000 : 1);
            double should = expected.get(a.what());
            // Three significant figures.
            double unit = Math.pow(10, Math.floor(Math.log10(should)) - 2);
            assertThat(is).as(a.what()).isCloseTo(should, within(unit / 2));
            assertThat(a.value().replace(".", "").replaceFirst("^0+", ""))
                    .as(a.what())
                    .hasSize(3);
        }
    }
}
