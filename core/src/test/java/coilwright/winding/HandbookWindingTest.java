package coilwright.winding;

import static coilwright.winding.Direction.PROGRESSIVE;
import static coilwright.winding.Direction.RETROGRESSIVE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Windings, rules and impossible cases as published, each with its source.
 *
 * <p>The books count back pitch Yb and front pitch Yf in conductors (top sides odd, bottom sides even) and print the
 * size of a lap winding's front pitch; {@link ConductorPitches} translates. They number the bars after the top sides:
 * the coil with top side 2k − 1 starts at bar k, which is lead offset 0 here.
 */
class HandbookWindingTest {
    private static final String[] ROMAN = {"", "I", "II", "III", "IV", "V", "VI", "VII"};

    private static Winding build(ConductorPitches book, int slots) {
        return Winding.build(book.armature(slots), book.spec());
    }

    private static Winding build(int slots, int bars, int poles, WindingSpec spec) {
        return Winding.build(Armature.of(slots, bars, poles), spec);
    }

    private static Pitches pitches(Winding w) {
        return w.pitches().orElseThrow();
    }

    private static int closures(Winding w) {
        return pitches(w).closures(w.armature().bars());
    }

    /** Coils in series from coil 1 on: where one coil ends, the next one starts. */
    private static List<Coil> series(Winding w, int firstCoil) {
        List<Coil> out = new ArrayList<>();
        Coil c = w.coil(firstCoil);
        do {
            out.add(c);
            int end = c.bottomBar().orElseThrow();
            c = w.liveCoils().stream()
                    .filter(x -> x.topBar().orElseThrow() == end)
                    .findFirst()
                    .orElseThrow();
        } while (c.number() != firstCoil && out.size() <= w.coils().size());
        return out;
    }

    private static String conductors(Coil c) {
        return (2 * c.top().position() - 1) + "-" + 2 * c.bottom().position();
    }

    private static String conductorSeries(Winding w, int firstCoil) {
        return series(w, firstCoil).stream()
                .map(HandbookWindingTest::conductors)
                .collect(Collectors.joining(" "));
    }

    private static String barSeries(Winding w, int firstCoil) {
        return Stream.concat(
                        series(w, firstCoil).stream().map(c -> c.topBar().orElseThrow()),
                        Stream.of(w.coil(firstCoil).topBar().orElseThrow()))
                .map(String::valueOf)
                .collect(Collectors.joining(" "));
    }

    /** A row as printed: conductors, slots, bars in Roman numbers. */
    private static String row(Coil c) {
        return conductors(c) + " " + c.top().slot() + "-" + c.bottom().slot() + " "
                + ROMAN[c.topBar().orElseThrow()] + "-" + ROMAN[c.bottomBar().orElseThrow()];
    }

    private static String conductorOrder(Winding w) {
        return w.coils().stream().map(HandbookWindingTest::conductors).collect(Collectors.joining(" "));
    }

    private static List<Finding> findings(Winding w, String rule) {
        return Rules.check(w).stream().filter(f -> f.rule().equals(rule)).toList();
    }

    private static List<Finding> refusal(int slots, int bars, int poles, WindingSpec spec) {
        return Rules.blocking(Armature.of(slots, bars, poles), spec);
    }

    @Nested
    class LapExamples {
        /** NIMI, Electrician (CITS) Trade Theory, vol. 2, p. 158: 2 poles, 6 slots, table printed cell for cell. */
        @Test
        void nimiSixSlotsProgressive() {
            var w = build(ConductorPitches.lap(12, 2, 7, 5), 6);

            assertThat(w.spec()).isEqualTo(WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(3)));
            assertThat(pitches(w).back()).isEqualTo(7);
            assertThat(pitches(w).front()).isEqualTo(5);
            assertThat(pitches(w).resultant()).isEqualTo(2);
            assertThat(pitches(w).commutator()).isEqualTo(1);
            assertThat(pitches(w).throwSlots()).hasValue(3);
            assertThat(w.parallelPaths()).hasValue(2);
            assertThat(series(w, 1).stream().map(HandbookWindingTest::row))
                    .containsExactly(
                            "1-8 1-4 I-II",
                            "3-10 2-5 II-III",
                            "5-12 3-6 III-IV",
                            "7-2 4-1 IV-V",
                            "9-4 5-2 V-VI",
                            "11-6 6-3 VI-I");
        }

        /** NIMI, as above, p. 158: the same core retrogressive has Yb = 5, Yf = 7. */
        @Test
        void nimiSixSlotsRetrogressive() {
            var w = build(ConductorPitches.lap(12, 2, 5, 7), 6);

            assertThat(((WindingSpec.Regular) w.spec()).direction()).isEqualTo(RETROGRESSIVE);
            assertThat(pitches(w).commutator()).isEqualTo(-1);
            assertThat(pitches(w).back()).isEqualTo(5);
            assertThat(pitches(w).front()).isEqualTo(7);
        }

        /**
         * Bakshi, Electrical Machines I, Ex. 1.21: 4 poles, 16 slots.
         *
         * <p>The last row of the companion's long table prints 31 + 9 = 40 − 32 = 4; 40 − 32 is 8, as its compact table
         * has, and only 8 leaves no conductor twice or never met.
         */
        @Test
        void bakshiSixteenSlots() {
            var w = build(ConductorPitches.lap(32, 4, 9, 7), 16);

            assertThat(w.armature().polePitchSlots()).isEqualTo(4);
            assertThat(pitches(w).commutator()).isEqualTo(1);
            assertThat(w.parallelPaths()).hasValue(4);
            assertThat(conductorSeries(w, 1))
                    .isEqualTo(
                            "1-10 3-12 5-14 7-16 9-18 11-20 13-22 15-24 17-26 19-28 21-30 23-32 25-2 27-4 29-6 31-8");
            for (int k = 1; k <= 16; k++) {
                Coil c = w.coil(k);
                assertThat(c.topBar()).hasValue(k);
                assertThat(c.bottomBar()).hasValue(k % 16 + 1);
                assertThat(c.bottom().slot()).isEqualTo((k + 3) % 16 + 1);
            }
            assertThat(w.coil(16).bottom().position() * 2).isEqualTo(8);
            assertThat(w.coils().stream().map(c -> 2 * c.bottom().position())).doesNotHaveDuplicates();
        }

        /** Problem from Theraja, A Textbook of Electrical Technology, vol. II (Madras 1978): 4 poles, 20 slots. */
        @Test
        void therajaTwentySlots() {
            // Printed with the sign: Yb = 11, Yf = -9.
            var w = build(new ConductorPitches(WindingType.LAP, 1, 40, 4, 11, -9), 20);

            assertThat(pitches(w).frontSigned()).isEqualTo(-9);
            assertThat(conductorOrder(w))
                    .startsWith("1-12 3-14 ")
                    .contains(" 29-40 31-2 ")
                    .endsWith(" 39-10");
        }

        /**
         * The same problem (b): 13 slots on 4 poles, where slots and Z/P = 6.5 do not divide.
         *
         * <p>The rules page after Theraja, ch. 26, says that Z/P must be even for a lap winding. This printed winding
         * and the next one show that it need not: an even Z/P is needed only for paths that are alike. So the model
         * builds it and the symmetry rule warns.
         */
        @Test
        void therajaThirteenSlots() {
            var w = build(ConductorPitches.lap(26, 4, 7, 5), 13);

            assertThat(pitches(w).frontSigned()).isEqualTo(-5);
            assertThat(closures(w)).isEqualTo(1);
            assertThat(findings(w, "symmetry"))
                    .extracting(Finding::severity)
                    .containsExactly(Severity.WARNING, Severity.WARNING);
            // By arithmetic: 13/2 is not whole, so no two bars stand at one potential.
            assertThat(w.equalizerPitch()).isEmpty();
            assertThat(findings(w, "equalizers"))
                    .extracting(Finding::message)
                    .containsExactly("equalizers are impossible: K/p = 13/2 is not whole, so no two bars stand at one"
                            + " potential: 12 or 14 bars would take equalizers");
        }

        /** Rolls-Royce experimental archive, X.1640, 15 Feb 1916, p. 3: means 18 and 24, chorded by 2, 4, 6. */
        @ParameterizedTest
        @CsvSource({
            "110, 6, 19, 17",
            "110, 6, 17, 19",
            "96, 4, 25, 23",
            "96, 4, 23, 25",
            "96, 4, 23, 21",
            "96, 4, 21, 19",
            "96, 4, 19, 17"
        })
        void rollsRoyceLapPitches(int conductors, int poles, int back, int front) {
            var book = ConductorPitches.lap(conductors, poles, back, front);

            assertThat(book.check()).isEmpty();
            assertThat((back + front) / 2 % 2).as("mean pitch even").isZero();
            // Slots are not given; one coil to a slot leaves the pitches as they are.
            var w = build(book, conductors / 2);
            assertThat(pitches(w).back()).isEqualTo(back);
            assertThat(pitches(w).front()).isEqualTo(front);
            assertThat(pitches(w).commutator()).isEqualTo(back > front ? 1 : -1);
            assertThat(w.parallelPaths()).hasValue(poles);
        }

        /**
         * Hawkins Electrical Guide, vol. 2, figs 259-264: 2 poles, 12 inductors, 6 coils, bars A to F. Pitched short on
         * purpose, since 1 to 7 cannot be wound.
         */
        @Test
        void hawkinsSixCoils() {
            var w = build(ConductorPitches.lap(12, 2, 5, 3), 6);

            assertThat(series(w, 1).stream()
                            .map(c -> "ABCDEF".charAt(c.topBar().orElseThrow() - 1) + "-" + conductors(c) + "-"
                                    + "ABCDEF".charAt(c.bottomBar().orElseThrow() - 1)))
                    .containsExactly("A-1-6-B", "B-3-8-C", "C-5-10-D", "D-7-12-E", "E-9-2-F", "F-11-4-A");
        }

        /** Lecture notes after T. K. Bhattacharya (Kharagpur): 4 poles, 16 slots, coil 1-5', Yb = 9, Yf = 7. */
        @Test
        void kharagpurSixteenSlots() {
            // The notes prime the bottom layer of an elementary slot: 5' is the bottom side in slot 5.
            var w = build(16, 16, 4, WindingSpec.lap(1, PROGRESSIVE));

            assertThat(w.coil(1).bottom().slot()).isEqualTo(5);
            assertThat(pitches(w).back()).isEqualTo(9);
            assertThat(pitches(w).front()).isEqualTo(7);
        }

        /** Kulik, Elektricheskie mashiny, ch. 2: 16 elementary slots, y1 = 4, y2 = 3, y = y1 − y2 = 1. */
        @Test
        void kulikSixteenElementarySlots() {
            // Elementary slots are positions here, so y1 is the back span and y the commutator pitch. The number of
            // poles and of real slots is not to be seen in the print; 4 poles and 8 slots fit.
            var w = build(8, 16, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(4)));

            assertThat(w.coil(1).bottom().position()).isEqualTo(5);
            Coil second = series(w, 1).get(1);
            assertThat(second.top().position()).isEqualTo(5 - 3);
            // Step 25 of the walk: top 13, then bottom 13 + 4 − 16 = 1.
            Coil thirteenth = series(w, 1).get(12);
            assertThat(thirteenth.top().position()).isEqualTo(13);
            assertThat(thirteenth.bottom().position()).isEqualTo(1);
        }
    }

    @Nested
    class WaveExamples {
        /** NIMI, Electrician (CITS) Trade Theory, vol. 2, p. 161: 2 poles, 7 slots, table printed cell for cell. */
        @Test
        void nimiSevenSlotsRetrogressive() {
            var w = build(ConductorPitches.wave(14, 2, 7, 5), 7);

            assertThat(((WindingSpec.Regular) w.spec()).direction()).isEqualTo(RETROGRESSIVE);
            assertThat(pitches(w).back() + pitches(w).front()).isEqualTo(12);
            assertThat(pitches(w).commutator()).isEqualTo(6);
            assertThat(series(w, 1).stream().map(HandbookWindingTest::row))
                    .containsExactly(
                            "1-8 1-4 I-VII",
                            "13-6 7-3 VII-VI",
                            "11-4 6-2 VI-V",
                            "9-2 5-1 V-IV",
                            "7-14 4-7 IV-III",
                            "5-12 3-6 III-II",
                            "3-10 2-5 II-I");
            // Brushes 3 bars apart stand about 155 degrees apart in the text; exactly 154.3.
            assertThat(3 * w.armature().barAngle()).isCloseTo(155, within(1.0));
        }

        /**
         * Bakshi, Electrical Machines I, Ex. 1.23: 4 poles, 13 slots, Ya = (26 + 2)/4 = 7.
         *
         * <p>One row of the companion's long table prints 5 + 7 = 14; 5 + 7 is 12, as its compact table has. Equal
         * pitches of 7 make 26 conductors progressive, as the Rolls-Royce note of 9 Oct 1918 has too.
         */
        @Test
        void bakshiThirteenSlots() {
            var w = build(ConductorPitches.wave(26, 4, 7, 7), 13);

            assertThat(((WindingSpec.Regular) w.spec()).direction()).isEqualTo(PROGRESSIVE);
            assertThat(pitches(w).commutator()).isEqualTo(7);
            assertThat(pitches(w).resultant()).isEqualTo(14);
            assertThat(w.parallelPaths()).hasValue(2);
            assertThat(conductorSeries(w, 1))
                    .isEqualTo("1-8 15-22 3-10 17-24 5-12 19-26 7-14 21-2 9-16 23-4 11-18 25-6 13-20");
            assertThat(barSeries(w, 1)).isEqualTo("1 8 2 9 3 10 4 11 5 12 6 13 7 1");
            assertThat(pitches(w).throwSlots()).hasValue(3);
        }

        /** Teaching article on a 15-slot wave winding, 4 poles, Z = 30: Yr = (30 + 2)/2 = 16, pitches 9 and 7. */
        @Test
        void fifteenSlotsProgressive() {
            var w = build(ConductorPitches.wave(30, 4, 9, 7), 15);

            assertThat(pitches(w).commutator()).isEqualTo(8);
            assertThat(conductorSeries(w, 1))
                    .isEqualTo("1-10 17-26 3-12 19-28 5-14 21-30 7-16 23-2 9-18 25-4 11-20 27-6 13-22 29-8 15-24");
            assertThat(barSeries(w, 1)).isEqualTo("1 9 2 10 3 11 4 12 5 13 6 14 7 15 8 1");
            assertThat(pitches(w).throwSlots()).hasValue(4);
        }

        /**
         * The article rejects that progressive winding, having found no place for the + brush; Theraja (from memory)
         * takes 7 or 8 as average pitch for Z = 30 and works 7. Both close through every coil, and equal pitches of 7
         * are retrogressive, so both are built.
         */
        @Test
        void fifteenSlotsBothWays() {
            var progressive = build(ConductorPitches.wave(30, 4, 9, 7), 15);
            var retrogressive = build(ConductorPitches.wave(30, 4, 7, 7), 15);

            assertThat(((WindingSpec.Regular) progressive.spec()).direction()).isEqualTo(PROGRESSIVE);
            assertThat(((WindingSpec.Regular) retrogressive.spec()).direction()).isEqualTo(RETROGRESSIVE);
            assertThat(series(progressive, 1)).hasSize(15);
            assertThat(series(retrogressive, 1)).hasSize(15);
            assertThat(pitches(retrogressive).commutator()).isEqualTo(7);
        }

        /** Teaching page on wave windings: 4 poles, 25 slots, 2C/P = 12.5, Yb = 13, Y = (50 + 2)/2 = 26, Yf = 13. */
        @Test
        void twentyFiveSlots() {
            var w = build(ConductorPitches.wave(50, 4, 13, 13), 25);

            assertThat(pitches(w).commutator()).isEqualTo(13);
            assertThat(pitches(w).resultant()).isEqualTo(26);
            assertThat(w.spec()).isEqualTo(WindingSpec.wave(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(6)));
            assertThat(w.coils())
                    .as("the usual throw")
                    .isEqualTo(
                            build(25, 25, 4, WindingSpec.wave(1, PROGRESSIVE)).coils());
        }

        /** Lecture notes after T. K. Bhattacharya (Kharagpur): 4 poles, 17 slots, yc = 2(17 + 1)/4 = 9, coil 1-5'. */
        @Test
        void kharagpurSeventeenSlots() {
            var w = build(17, 17, 4, WindingSpec.wave(1, PROGRESSIVE));

            assertThat(pitches(w).commutator()).isEqualTo(9);
            assertThat(w.coil(1).bottom().slot()).isEqualTo(5);
            assertThat(pitches(w).back()).isEqualTo(9);
            assertThat(pitches(w).front()).isEqualTo(9);
            assertThat(w.parallelPaths()).hasValue(2);
            // Between adjacent bars lie P/2 = 2 coils: from bar 1 two coils in series lead to bar 2.
            assertThat(series(w, 1).get(1).bottomBar()).hasValue(2);
        }

        /**
         * Rolls-Royce experimental archive, 4 Dec 1920: 4 poles, 27 sections of 8 turns, 432 conductors, throw 1-7. The
         * wires are counted there; 27 slots are taken, 432 = 27 · 2 · 8.
         */
        @Test
        void rollsRoyceTwentySevenSections() {
            var w = build(27, 27, 4, WindingSpec.wave(1, RETROGRESSIVE).withSpan(CoilSpan.ofThrow(6)));

            assertThat(w.coil(1).bottom().slot()).isEqualTo(7);
            assertThat(pitches(w).back()).isEqualTo(13);
            assertThat(pitches(w).front()).isEqualTo(13);
            assertThat(pitches(w).commutator()).isEqualTo(13);
            assertThat(w.liveCoils().size() * 2 * 8).isEqualTo(432);
            // By arithmetic from yc = 13.
            assertThat(barSeries(w, 1))
                    .isEqualTo("1 14 27 13 26 12 25 11 24 10 23 9 22 8 21 7 20 6 19 5 18 4 17 3 16 2 15 1");
        }

        /** Arnold, Die Ankerwicklungen, 2nd ed., pp. 80-81: 2 poles, 16 winding fields, y = (16 − 2)/2 = 7. */
        @Test
        void arnoldSixteenFields() {
            // Arnold's winding field is one conductor, and y is both pitches at once: field to field, back and front.
            var w = build(ConductorPitches.wave(16, 2, 7, 7), 8);

            assertThat(conductorSeries(w, 1).replace('-', ' ')).isEqualTo("1 8 15 6 13 4 11 2 9 16 7 14 5 12 3 10");
            // He also allows 9.
            assertThat(ConductorPitches.wave(16, 2, 9, 9).check()).isEmpty();
        }
    }

    @Nested
    class MultiplexAndMixed {
        /** Teaching page on duplex lap windings: 4 poles, 12 slots, Yb = 7, Y = 2m = 4, Yf = 3. */
        @Test
        void duplexLapTwelveSlots() {
            var w = build(ConductorPitches.lap(24, 4, 7, 3).withPlex(2), 12);

            assertThat(pitches(w).commutator()).isEqualTo(2);
            assertThat(pitches(w).resultant()).isEqualTo(4);
            assertThat(w.parallelPaths()).hasValue(8);
            assertThat(closures(w)).isEqualTo(2);
            assertThat(conductorSeries(w, 1)).isEqualTo("1-8 5-12 9-16 13-20 17-24 21-4");
            assertThat(conductorSeries(w, 2)).isEqualTo("3-10 7-14 11-18 15-22 19-2 23-6");
            // By arithmetic; lecture notes on duplex lap say so too: two simplex laps on alternate bars.
            assertThat(barSeries(w, 1)).isEqualTo("1 3 5 7 9 11 1");
            assertThat(barSeries(w, 2)).isEqualTo("2 4 6 8 10 12 2");
        }

        /**
         * Arnold, Die Theorie der Gleichstrommaschine, vol. 1, pp. 18-19: y = ±2 closes doubly for an even number of
         * coils, singly after two trips for an odd one. Shown there on a ring winding; the step is the same in a lap.
         */
        @ParameterizedTest
        @ValueSource(ints = {8, 9, 12, 13, 20, 21, 36, 37})
        void duplexClosesTwiceWhereEven(int bars) {
            for (Direction direction : Direction.values()) {
                var w = build(bars, bars, 4, WindingSpec.lap(2, direction));
                assertThat(series(w, 1)).hasSize(bars % 2 == 0 ? bars / 2 : bars);
                // a = 2p pairs of paths.
                assertThat(w.parallelPaths().getAsInt() / 2)
                        .isEqualTo(2 * w.armature().polePairs());
            }
        }

        /** Training module Identification and Testing of DC Armatures, p. 4: the six classes met in practice. */
        @Test
        void theSixClasses() {
            assertThat(closures(build(24, 24, 4, WindingSpec.lap(1, PROGRESSIVE))))
                    .isEqualTo(1);
            assertThat(closures(build(25, 25, 4, WindingSpec.lap(2, PROGRESSIVE))))
                    .isEqualTo(1);
            assertThat(closures(build(24, 24, 4, WindingSpec.lap(2, PROGRESSIVE))))
                    .isEqualTo(2);
            assertThat(closures(build(25, 25, 4, WindingSpec.wave(1, PROGRESSIVE))))
                    .isEqualTo(1);
            assertThat(closures(build(28, 28, 4, WindingSpec.wave(2, PROGRESSIVE))))
                    .isEqualTo(1);
            assertThat(closures(build(26, 26, 4, WindingSpec.wave(2, PROGRESSIVE))))
                    .isEqualTo(2);
        }

        /** Swiss patent CH 124206 (1926), fig. 1: 8 poles, 32 slots, 4 sides a slot, 64 coils, 32 bars. */
        @Test
        void patentLapAndWave() {
            for (Direction direction : Direction.values()) {
                var w = build(32, 32, 8, new WindingSpec.FrogLeg(1, direction, CoilSpan.usual(), 0));

                assertThat(w.coils()).hasSize(64);
                assertThat(w.layers()).isEqualTo(4);
                assertThat(w.sidesPerSlot()).isEqualTo(1);
                var lap = w.sets().get(0);
                var wave = w.sets().get(1);
                assertThat(lap.pitches().orElseThrow().commutator()).isEqualTo(direction.sign());
                // "Singly closed", and as many paths as the lap: yc = (32 ± 4)/4 = 9 or 7 (by arithmetic).
                assertThat(wave.plex()).hasValue(4);
                assertThat(wave.pitches().orElseThrow().commutator()).isEqualTo(direction == PROGRESSIVE ? 7 : 9);
                assertThat(findings(w, "re-entrancy"))
                        .extracting(Finding::reason)
                        .allMatch(r -> r.contains("singly re-entrant"));
                assertThat(w.parallelPaths()).hasValue(16);
            }
        }

        /** By arithmetic from the a-rule of Arnold, Die Theorie der Gleichstrommaschine, vol. 1, p. 23. */
        @ParameterizedTest
        @CsvSource({
            "26, PROGRESSIVE, 14, 2",
            "26, RETROGRESSIVE, 12, 2",
            "28, PROGRESSIVE, 15, 1",
            "28, RETROGRESSIVE, 13, 1"
        })
        void duplexWaveOnFourPoles(int bars, Direction direction, int yc, int rings) {
            var w = build(bars, bars, 4, WindingSpec.wave(2, direction));

            assertThat(pitches(w).commutator()).isEqualTo(yc);
            assertThat(closures(w)).isEqualTo(rings);
            assertThat(series(w, 1)).hasSize(bars / rings);
            assertThat(w.parallelPaths()).hasValue(4);
        }
    }

    @Nested
    class DeadAndSpareCoils {
        /**
         * Bakshi, Electrical Machines I, Ex. 1.22: 496 conductors, 4 poles, 31 slots, 4 sides a slot, wave: 62 coils of
         * 4 turns, one of them a dummy; average pitch (61 + 1)/2 = 31, Yb = 4·8 + 1 = 33, Yf = 29.
         *
         * <p>The companion prints 124 as "commutator pitch". That is the mean of (496 ± 2)/4, counted in wires of four
         * turns; on 61 bars a coil reaches 31 (or retrogressive 30) bars on.
         */
        @Test
        void bakshiOneDummyCoil() {
            assertThat(refusal(31, 62, 4, WindingSpec.wave(1, PROGRESSIVE))).hasSize(1);
            var spec = WindingSpec.wave(1, PROGRESSIVE)
                    .withSpan(CoilSpan.ofThrow(8))
                    .withDeadCoils(List.of(62));
            var w = build(31, 61, 4, spec);

            assertThat(w.coils()).hasSize(62);
            assertThat(w.coils().size() * 2 * 4).isEqualTo(496);
            assertThat(w.liveCoils()).hasSize(61);
            assertThat(w.sidesPerSlot() * 2).as("sides in a slot, both layers").isEqualTo(4);
            assertThat(pitches(w).back()).isEqualTo(33);
            assertThat(pitches(w).front()).isEqualTo(29);
            assertThat(pitches(w).resultant()).isEqualTo(62);
            assertThat(pitches(w).commutator()).isEqualTo(31);
            assertThat(w.coil(1).bottom().slot()).as("throw 1-9").isEqualTo(9);
            assertThat(series(w, 1)).hasSize(61);
            var other = build(31, 61, 4, WindingSpec.wave(1, RETROGRESSIVE).withDeadCoils(List.of(62)));
            assertThat(pitches(other).commutator()).isEqualTo(30);
        }

        /**
         * Rolls-Royce experimental archive, X.1005, 12 Jul 1921, Rotax AT.12 dynamo: 4 poles, 14 slots, 2 coils a slot,
         * throw 1-4, retrogressive wave; the 28th coil is not left dead but connected lapwise into the circuit. The list
         * is by arithmetic from that: a plain wave of 27 opened at one bar, where coil 28 leads from bar 28 to bar 1.
         */
        @Test
        void spareCoilConnectedLapwise() {
            assertThat(refusal(14, 28, 4, WindingSpec.wave(1, RETROGRESSIVE))).hasSize(1);
            List<ListedCoil> list = new ArrayList<>();
            for (int k = 1; k <= 28; k++) {
                int topSlot = (k + 1) / 2;
                int toBar = k <= 14 ? k + 13 : k == 15 ? 28 : k < 28 ? k - 14 : 1;
                list.add(ListedCoil.of(k, topSlot, (topSlot + 2) % 14 + 1, k, toBar));
            }
            var w = build(14, 28, 4, new WindingSpec.Listed(list));

            assertThat(w.sidesPerSlot()).isEqualTo(2);
            assertThat(w.coils().size() * 2 * 12).as("wires of 12 turns").isEqualTo(672);
            assertThat(672 / 14).as("wires in a slot").isEqualTo(48);
            WindingChecks.everySideInOnePlace(w);
            WindingChecks.everyBarMetTwice(w);
            assertThat(series(w, 1)).hasSize(28).doesNotHaveDuplicates();
            assertThat(series(w, 1).get(27).number()).isEqualTo(28);
            assertThat(Rules.check(w)).extracting(Finding::severity).containsOnly(Severity.NOTE);

            // Every coil but the two at the join does as in the plain wave of 27 with a dummy coil.
            var plain = build(14, 27, 4, WindingSpec.wave(1, RETROGRESSIVE).withDeadCoils(List.of(28)));
            long same = IntStream.rangeClosed(1, 27)
                    .filter(k -> w.coil(k).equals(plain.coil(k)))
                    .count();
            assertThat(same).isEqualTo(26);
            assertThat(plain.coil(15).bottomBar()).hasValue(1);
        }

        /** Notes on dummy coils after Theraja: left in for balance, ends taped, no bars; a matter of wave windings. */
        @Test
        void dummyCoilsBelongToWaveWindings() {
            var wave = build(24, 23, 4, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(24)));
            assertThat(wave.coil(24).isDead()).isTrue();
            assertThat(findings(wave, "dead-coil-use"))
                    .extracting(Finding::severity)
                    .containsExactly(Severity.NOTE);
            var lap = build(24, 23, 4, WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(24)));
            assertThat(findings(lap, "dead-coil-use"))
                    .extracting(Finding::severity)
                    .containsExactly(Severity.WARNING);
        }
    }

    @Nested
    class EqualizersAndVoltage {
        /**
         * By arithmetic from Hawkins, vol. 2 (points of equal potential), pitch from memory: 4 poles, K = 16, rings join
         * 1-9, 2-10, ..., 8-16; the full set is 8 rings, each with as many taps as pole pairs. A page of 2026 gives a
         * ring as many taps as poles; bars at one potential lie two pole pitches apart, so there are only P/2 of them.
         */
        @Test
        void ringsOfSixteenBars() {
            var w = build(16, 16, 4, WindingSpec.lap(1, PROGRESSIVE));

            assertThat(w.equalizerPitch()).hasValue(8);
            // A full trip by the equalizer pitch comes back after P/2 taps.
            Set<Integer> ring = new TreeSet<>();
            for (int bar = 1; ring.add(bar); bar = w.armature().wrapBar(bar + 8)) {}
            assertThat(ring).containsExactly(1, 9);
            assertThat(findings(w, "equalizers").get(0).reason())
                    .contains("K/p = 8 apart, 2 taps on each of up to 8 rings");
        }

        /** Question bank: at most Z/P rings for Z conductors in one-turn coils (value from memory): K/(P/2). */
        @ParameterizedTest
        @CsvSource({"48, 4", "72, 6", "144, 8", "32, 4"})
        void atMostAQuarterAsManyRings(int conductors, int poles) {
            int bars = conductors / 2;
            var w = build(bars, bars, poles, WindingSpec.lap(1, PROGRESSIVE));

            assertThat(w.equalizerPitch()).hasValue(conductors / poles);
        }

        /**
         * Hawkins, vol. 2, and an explainer on equalizer rings: needed by lap windings of more than two paths; a wave has
         * two paths and needs none, a 2-pole lap has nothing to equalize. Two unsigned pages that place them in wave
         * windings are wrong.
         */
        @Test
        void whoNeedsEqualizers() {
            assertThat(findings(build(25, 25, 4, WindingSpec.wave(1, PROGRESSIVE)), "equalizers")
                            .get(0)
                            .reason())
                    .isEqualTo("a simplex wave has two paths only and needs no equalizers");
            assertThat(findings(build(24, 24, 2, WindingSpec.lap(1, PROGRESSIVE)), "equalizers")
                            .get(0)
                            .reason())
                    .endsWith("nothing to equalize");
            assertThat(findings(build(24, 24, 4, WindingSpec.lap(1, PROGRESSIVE)), "equalizers")
                            .get(0)
                            .reason())
                    .startsWith("equalizers are possible and advised for 4 paths");
        }

        private static double volts(Winding w, int turns, double flux, double rpm) {
            // E = P·flux·Z·N/(60·A), Z in wires.
            int wires = 2 * turns * w.liveCoils().size();
            return w.armature().poles()
                    * flux
                    * wires
                    * rpm
                    / (60 * w.parallelPaths().getAsInt());
        }

        /** Bakshi, Electrical Machines I, Ex. 1.1: P = 4, Z = 440, 0.07 Wb, 900 rpm: 462 V lap, 924 V wave. */
        @Test
        void bakshiLapAgainstWave() {
            // Coils are not given. 55 of 4 turns make 440 wires and can be wound both ways; 220 of one turn could not.
            assertThat(volts(build(55, 55, 4, WindingSpec.lap(1, PROGRESSIVE)), 4, 0.07, 900))
                    .isCloseTo(462, within(1e-9));
            assertThat(volts(build(55, 55, 4, WindingSpec.wave(1, PROGRESSIVE)), 4, 0.07, 900))
                    .isCloseTo(924, within(1e-9));
            assertThat(refusal(220, 220, 4, WindingSpec.wave(1, PROGRESSIVE))).isNotEmpty();
        }

        /**
         * Bakshi, Ex. 1.2: P = 4, 21 mWb, 42 coils of 8 turns, 1120 rpm: 263.424 V lap; wave gives the same at 560 rpm.
         * The sum is right for two paths, but 42 coils (even) cannot be a simplex wave on 4 poles at all.
         */
        @Test
        void bakshiFortyTwoCoils() {
            var lap = build(42, 42, 4, WindingSpec.lap(1, PROGRESSIVE));
            assertThat(volts(lap, 8, 0.021, 1120)).isCloseTo(263.424, within(1e-9));
            assertThat(refusal(42, 42, 4, WindingSpec.wave(1, PROGRESSIVE))).isNotEmpty();
            int wavePaths = build(43, 43, 4, WindingSpec.wave(1, PROGRESSIVE))
                    .parallelPaths()
                    .getAsInt();
            assertThat(4 * 0.021 * 672 * 560 / (60 * wavePaths)).isCloseTo(263.424, within(1e-9));
        }
    }

    @Nested
    class NoSuchWinding {
        /** Lecture notes after T. K. Bhattacharya (Kharagpur): 4 poles, 16 bars: coil 2 ends on bar 17 = 1. */
        @Test
        void waveOfSixteenClosesAfterTwoCoils() {
            assertThat(refusal(16, 16, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .extracting(Finding::message)
                    .containsExactly(
                            "commutator pitch would be 16/2 ± 1/2, not whole: a simplex wave on 4 poles needs an"
                                    + " odd number of bars; 15 (one dead coil) or 17 would do");
            // The notes' yc = 2S/P = 8, listed as it would be connected: 1 to 9, 9 to 17 = 1.
            List<ListedCoil> list = IntStream.rangeClosed(1, 16)
                    .mapToObj(k -> ListedCoil.of(k, k, (k + 3) % 16 + 1, k, (k + 7) % 16 + 1))
                    .toList();
            var w = build(16, 16, 4, new WindingSpec.Listed(list));
            assertThat(barSeries(w, 1)).isEqualTo("1 9 1");
            assertThat(refusal(17, 17, 4, WindingSpec.wave(1, PROGRESSIVE))).isEmpty();
        }

        /** Bakshi, Ex. 1.22: 31 slots of 2 coils on 4 poles: 61/2 and 63/2 are not whole, so one coil must go. */
        @Test
        void waveOfSixtyTwo() {
            for (Direction direction : Direction.values()) {
                assertThat(refusal(31, 62, 4, WindingSpec.wave(1, direction)))
                        .extracting(Finding::wayOut)
                        .containsExactly("a simplex wave on 4 poles needs an odd number of bars; "
                                + "61 (one dead coil) or 63 would do");
            }
        }

        /** Rolls-Royce archive, X.1005, 12 Jul 1921: a plain 4-pole wave of 28 needs a dummy, or one coil lapwise. */
        @Test
        void waveOfTwentyEight() {
            assertThat(refusal(14, 28, 4, WindingSpec.wave(1, RETROGRESSIVE)))
                    .extracting(Finding::wayOut)
                    .containsExactly("a simplex wave on 4 poles needs an odd number of bars; "
                            + "27 (one dead coil) or 29 would do");
        }

        /** Hawkins, vol. 2, drum winding, web p. 12: sides opposite one another, 1 to 7; it must be 1 to 6 or 1 to 8. */
        @Test
        void coilSidesDiametricallyOpposite() {
            var book = ConductorPitches.lap(12, 2, 6, 5);
            assertThat(book.check())
                    .extracting(Finding::message)
                    .containsExactly(
                            "back pitch 6 is even, so it would join conductor 1, a top side, with conductor 7, a"
                                    + " top side too: 5 or 7 would do");
            assertThatThrownBy(book::spec).isInstanceOf(ImpossibleWindingException.class);
            assertThat(ConductorPitches.lap(12, 2, 5, 3).check()).isEmpty();
            assertThat(ConductorPitches.lap(12, 2, 7, 5).check()).isEmpty();
        }

        /** Hawkins, vol. 2, drum winding requirements, 1 (web p. 22): the number of inductors must be even. */
        @Test
        void oddNumberOfInductors() {
            assertThat(ConductorPitches.lap(13, 2, 7, 5).check())
                    .extracting(Finding::message)
                    .containsExactly("13 conductors make no whole number of coils, as each coil has two sides: "
                            + "12 or 14 would do");
        }

        /** Rolls-Royce archive, X.1640, 15 Feb 1916; Theraja ch. 26: lap pitches must differ by 2. */
        @Test
        void lapWithEqualPitches() {
            assertThat(ConductorPitches.lap(32, 4, 9, 9).check())
                    .extracting(Finding::message)
                    .containsExactly(
                            "back pitch and front pitch are both 9, so the winding would come back to its own top"
                                    + " side; those of a simplex lap winding differ by 2: "
                                    + "back pitch 9 with front pitch 7 or 11 would do");
        }

        /** Rolls-Royce archive, X.1640, 9 Oct 1918; Theraja ch. 26: equal pitches 7 on 4 poles take 26 or 30 only. */
        @Test
        void waveBetweenTwentySixAndThirty() {
            List<Integer> possible = IntStream.rangeClosed(20, 36)
                    .filter(z -> ConductorPitches.wave(z, 4, 7, 7).check().isEmpty())
                    .boxed()
                    .toList();
            assertThat(possible).containsExactly(26, 30);
            assertThat(ConductorPitches.wave(26, 4, 7, 7).spec().direction()).isEqualTo(PROGRESSIVE);
            assertThat(ConductorPitches.wave(30, 4, 7, 7).spec().direction()).isEqualTo(RETROGRESSIVE);
            assertThat(ConductorPitches.wave(28, 4, 7, 7).check())
                    .extracting(Finding::message)
                    .containsExactly("average pitch 7 times 4 poles is 28, all the conductors there are, so that the"
                            + " winding closes after 2 coils; in a simplex wave winding they differ by 2: "
                            + "with these pitches 26 (progressive) or 30 (retrogressive) conductors would do");
        }

        /** Revision notes on wave windings after Theraja: an even number of pole pairs needs odd coils and bars. */
        @Test
        void evenPolePairsNeedOddBars() {
            for (int pairs = 1; pairs <= 7; pairs++) {
                boolean even = false;
                boolean odd = false;
                for (int bars = 8; bars <= 120; bars++) {
                    for (Direction direction : Direction.values()) {
                        if (refusal(bars, bars, 2 * pairs, WindingSpec.wave(1, direction))
                                .isEmpty()) {
                            even |= bars % 2 == 0;
                            odd |= bars % 2 != 0;
                        }
                    }
                }
                assertThat(odd).as("odd, %d pairs", pairs).isTrue();
                assertThat(even).as("even, %d pairs", pairs).isEqualTo(pairs % 2 != 0);
            }
        }

        /** By arithmetic: (K ± 2)/2 is not whole for odd K; a triplex lap on a multiple of 3 closes three times. */
        @Test
        void duplexWaveOfOddBarsAndTriplexLap() {
            for (int bars = 7; bars <= 61; bars += 2) {
                for (Direction direction : Direction.values()) {
                    assertThat(refusal(bars, bars, 4, WindingSpec.wave(2, direction)))
                            .extracting(Finding::rule)
                            .containsExactly("commutator-pitch-whole");
                }
            }
            var w = build(24, 24, 4, WindingSpec.lap(3, PROGRESSIVE));
            assertThat(pitches(w).commutator()).isEqualTo(3);
            assertThat(series(w, 1)).hasSize(8);
            assertThat(findings(w, "re-entrancy").get(0).reason()).startsWith("triply re-entrant");
        }
    }

    @Nested
    class RulesOfTheBooks {
        /** NIMI: Yb = Z/P + 1, Yf = Yb − 2·plex progressive, the other way round retrogressive. */
        @ParameterizedTest
        @CsvSource({"6, 2, 1", "16, 4, 1", "24, 4, 2", "36, 6, 1", "48, 6, 3", "24, 2, 2"})
        void nimiLapPitches(int bars, int poles, int plex) {
            int back = 2 * bars / poles + 1;
            var progressive = new ConductorPitches(WindingType.LAP, plex, 2 * bars, poles, back, -(back - 2 * plex));
            assertThat(build(progressive, bars).coils())
                    .isEqualTo(build(bars, bars, poles, WindingSpec.lap(plex, PROGRESSIVE))
                            .coils());
            var retrogressive = new ConductorPitches(WindingType.LAP, plex, 2 * bars, poles, back - 2 * plex, -back);
            assertThat(pitches(build(retrogressive, bars)).commutator()).isEqualTo(-plex);
        }

        /** Theraja ch. 26 and Kharagpur notes: lap A = m·P, wave A = 2·m whatever P; conductors a path Z/A. */
        @Test
        void pathsByRule() {
            for (int poles = 2; poles <= 12; poles += 2) {
                for (int plex = 1; plex <= 3; plex++) {
                    assertThat(build(60, 60, poles, WindingSpec.lap(plex, PROGRESSIVE))
                                    .parallelPaths())
                            .hasValue(plex * poles);
                    int bars = poles / 2 * 20 + plex;
                    assertThat(build(bars, bars, poles, WindingSpec.wave(plex, RETROGRESSIVE))
                                    .parallelPaths())
                            .hasValue(2 * plex);
                }
            }
        }

        /**
         * Rolls-Royce archive, 9 Oct 1918: with both pitches 2k + 1 (so n = (2k + 1)·p ∓ 2, their p being poles), minus
         * is progressive and plus retrogressive. Arnold judges the same by whether one trip lands after the start.
         */
        @ParameterizedTest
        @CsvSource({"3, 4", "7, 4", "13, 4", "7, 6", "9, 6", "11, 8", "5, 2"})
        void signOfAWaveWithEqualPitches(int pitch, int poles) {
            var less = ConductorPitches.wave(pitch * poles - 2, poles, pitch, pitch);
            var more = ConductorPitches.wave(pitch * poles + 2, poles, pitch, pitch);

            assertThat(less.spec().direction()).isEqualTo(PROGRESSIVE);
            assertThat(more.spec().direction()).isEqualTo(RETROGRESSIVE);
            // One trip is P/2 coils.
            var w = build(less, less.conductors() / 2);
            assertThat(series(w, 1).get(poles / 2 - 1).bottomBar()).hasValue(2);
            var back = build(more, more.conductors() / 2);
            assertThat(series(back, 1).get(poles / 2 - 1).bottomBar())
                    .hasValue(back.armature().bars());
        }

        /**
         * Rolls-Royce archive, about 30 May 1921 and X.3526: for uniform slot pitch, back z and front z − 2, the slots
         * are P·m + 1 (4 poles: 4m + 1; their m is no plex), always retrogressive.
         */
        @Test
        void uniformSlotPitch() {
            for (int poles = 2; poles <= 8; poles += 2) {
                for (int m = 2; m <= 9; m++) {
                    int slots = poles * m + 1;
                    var book = ConductorPitches.wave(2 * slots, poles, 2 * m + 1, 2 * m - 1);
                    assertThat(book.spec().direction()).isEqualTo(RETROGRESSIVE);
                    var w = build(book, slots);
                    assertThat(pitches(w).throwSlots()).hasValue(m);
                    assertThat(w.coils())
                            .isEqualTo(build(slots, slots, poles, WindingSpec.wave(1, RETROGRESSIVE))
                                    .coils());
                }
            }
        }

        /** Arnold, vol. 1, p. 23; Kharagpur notes: after one trip of P/2 coils a wave lands m bars beside the start. */
        @Test
        void oneTripLandsBesideTheStart() {
            for (int poles = 4; poles <= 12; poles += 2) {
                for (int plex = 1; plex <= 3; plex++) {
                    for (Direction direction : Direction.values()) {
                        int bars = poles / 2 * 12 - direction.sign() * plex;
                        var w = build(bars, bars, poles, WindingSpec.wave(plex, direction));
                        int bar = 1;
                        for (int coil = 0; coil < poles / 2; coil++) {
                            bar = w.coil(bar).bottomBar().orElseThrow();
                        }
                        assertThat(bar).isEqualTo(w.armature().wrapBar(1 + direction.sign() * plex));
                    }
                }
            }
        }

        /** Nagrath and Kothari, ch. 7; a 6-pole 36-slot question: Yb = U·Ycs + 1, U sides in a slot, both layers. */
        @ParameterizedTest
        @CsvSource({"1, 5", "2, 8", "2, 6", "3, 7", "4, 9"})
        void backPitchFromSidesInSlot(int u, int span) {
            int slots = 4 * span + 1;
            var w = build(slots, slots * u, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofThrow(span)));

            assertThat(pitches(w).back()).isEqualTo(2 * u * span + 1);
            assertThat(pitches(w).stepped()).isFalse();
            // All coils are of one shape: the same place in the slot at both ends.
            assertThat(w.coils())
                    .allMatch(c -> (c.top().position() - c.bottom().position()) % u == 0
                            && Math.floorMod(c.bottom().slot() - c.top().slot(), slots) == span);
        }

        /** EGYCON lesson 3; Nagrath and Kothari, ch. 7: the span is S/P less its fractional part. */
        @ParameterizedTest
        @CsvSource({"31, 4, 7", "16, 4, 4", "13, 4, 3", "7, 2, 3", "36, 6, 6", "5, 6, 1"})
        void usualSpan(int slots, int poles, int span) {
            var w = build(slots, slots, poles, WindingSpec.lap(1, PROGRESSIVE));
            assertThat(pitches(w).throwSlots()).hasValue(span);
        }

        /** Lecture notes on commutator windings: brush arms of opposite sign stand K/2p bars apart, p in pairs. */
        @Test
        void brushPitch() {
            assertThat(Armature.of(24, 24, 4).polePitchBars()).isEqualTo(24 / (2.0 * 2));
            assertThat(Armature.of(25, 25, 4).polePitchBars()).isEqualTo(6.25);
        }

        /** Lecture notes on duplex lap: the brush bridges more than one bar, usually 2 to 3; simplex 1 to 3 (common). */
        @Test
        void brushWidths() {
            assertThat(findings(build(24, 24, 4, WindingSpec.lap(2, PROGRESSIVE)), "brush-width"))
                    .extracting(Finding::reason)
                    .containsExactly("a brush of a duplex winding covers at least 2 bars, better 3 (one bar is 15°)");
            assertThat(findings(build(24, 24, 4, WindingSpec.lap(1, PROGRESSIVE)), "brush-width"))
                    .extracting(Finding::reason)
                    .containsExactly(
                            "a brush of a simplex winding covers 1 to 3 bars, commonly 1.5 to 2.5 (one bar is 15°)");
        }

        /**
         * Hawkins, vol. 2, footnotes: the back is the end away from the commutator. An explainer page defines the back
         * pitch as joining conductors on one segment; what shares a segment is the front pitch. In the printed NIMI table
         * (p. 158) Yb = 7 is within a coil (1-8), and bar II joins 8 with 3, Yf = 5 back.
         */
        @Test
        void backPitchIsWithinACoil() {
            var w = build(ConductorPitches.lap(12, 2, 7, 5), 6);
            Coil first = w.coil(1);
            Coil second = w.coil(2);

            assertThat(2 * first.bottom().position() - (2 * first.top().position() - 1))
                    .isEqualTo(7);
            assertThat(first.bottomBar()).isEqualTo(second.topBar());
            assertThat(2 * first.bottom().position() - (2 * second.top().position() - 1))
                    .isEqualTo(5);
        }
    }
}
