package coilwright.winding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConductorPitchesTest {
    @Test
    void translatesThereAndBack() {
        int seen = 0;
        for (int bars = 4; bars <= 30; bars++) {
            for (int poles = 2; poles <= 8; poles += 2) {
                for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                    for (int plex = 1; plex <= 2; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (int span = 1; span < bars; span++) {
                                var spec = new WindingSpec.Regular(
                                        type, plex, direction, CoilSpan.ofPositions(span), List.of(), 0);
                                var armature = Armature.of(bars, bars, poles);
                                if (!Rules.blocking(armature, spec).isEmpty()) {
                                    continue;
                                }
                                var y = Winding.build(armature, spec).pitches().orElseThrow();
                                var book = new ConductorPitches(type, plex, 2 * bars, poles, y.back(), y.frontSigned());
                                assertThat(book.check()).isEmpty();
                                assertThat(book.spec()).isEqualTo(spec);
                                assertThat(book.armature(bars)).isEqualTo(armature);
                                seen++;
                            }
                        }
                    }
                }
            }
        }
        assertThat(seen).isGreaterThan(5_000);
    }

    @Test
    void whateverPassesCanBeBuiltAndStepsAsTold() {
        int seen = 0;
        for (int z = 4; z <= 40; z++) {
            for (int poles = 2; poles <= 6; poles += 2) {
                for (int plex = 1; plex <= 2; plex++) {
                    for (int back = 1; back <= 14; back++) {
                        for (int front = -14; front <= 14; front++) {
                            for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                                var book = new ConductorPitches(type, plex, z, poles, back, front);
                                if (!book.check().isEmpty()) {
                                    continue;
                                }
                                var w = Winding.build(book.armature(z / 2), book.spec());
                                var y = w.pitches().orElseThrow();
                                assertThat(y.back()).isEqualTo(back);
                                assertThat(y.frontSigned()).isEqualTo(front);
                                seen++;
                            }
                        }
                    }
                }
            }
        }
        assertThat(seen).isGreaterThan(1_000);
    }

    @Test
    void everyWayOutNamesNumbersThatWork() {
        Pattern counts = Pattern.compile("(?:with these pitches )?(?:(\\d+) \\(progressive\\) or )?(\\d+) \\(retro");
        Pattern average = Pattern.compile("average pitch of (\\d+)");
        int tried = 0;
        for (int z = 8; z <= 40; z += 2) {
            for (int poles = 2; poles <= 6; poles += 2) {
                for (int plex = 1; plex <= 2; plex++) {
                    for (int back = 3; back <= 7; back += 2) {
                        for (int front = 1; front <= 11; front += 2) {
                            var wave = new ConductorPitches(WindingType.WAVE, plex, z, poles, back, front);
                            List<Finding> found = wave.check();
                            if (!found.isEmpty()) {
                                assertThat(found).hasSize(1);
                                String way = found.get(0).wayOut();
                                Matcher m = counts.matcher(way);
                                if (m.find()) {
                                    for (String n : new String[] {m.group(1), m.group(2)}) {
                                        if (n != null) {
                                            var other = new ConductorPitches(
                                                    WindingType.WAVE, plex, Integer.parseInt(n), poles, back, front);
                                            assertThat(other.check()).as(way).isEmpty();
                                            tried++;
                                        }
                                    }
                                }
                                m = average.matcher(way);
                                if (m.find()) {
                                    int other = 2 * Integer.parseInt(m.group(1)) - back;
                                    assertThat(new ConductorPitches(WindingType.WAVE, plex, z, poles, back, other)
                                                    .check())
                                            .as(way)
                                            .isEmpty();
                                    tried++;
                                }
                            }
                            var lap = new ConductorPitches(WindingType.LAP, plex, z, poles, back, -front);
                            found = lap.check();
                            if (!found.isEmpty()) {
                                assertThat(found).hasSize(1);
                                Matcher m = Pattern.compile("front pitch (?:(\\d+) or )?(\\d+) would do")
                                        .matcher(found.get(0).wayOut());
                                assertThat(m.find()).isTrue();
                                for (String n : new String[] {m.group(1), m.group(2)}) {
                                    if (n != null) {
                                        var other = new ConductorPitches(
                                                WindingType.LAP, plex, z, poles, back, -Integer.parseInt(n));
                                        assertThat(other.check())
                                                .as(found.get(0).wayOut())
                                                .isEmpty();
                                        tried++;
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
        assertThat(tried).isGreaterThan(1_000);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "LAP | 1 | 32 | 4 | 9 | -5 | back pitch 9 and front pitch 5 differ by 4; those of a simplex lap winding "
                        + "differ by 2: back pitch 9 with front pitch 7 or 11 would do",
                "LAP | 2 | 32 | 4 | 9 | -7 | back pitch 9 and front pitch 7 differ by 2; those of a duplex lap winding "
                        + "differ by 4: back pitch 9 with front pitch 5 or 13 would do",
                "LAP | 1 | 32 | 4 | 9 | 7 | front pitch 7 leads onwards, but a lap winding comes back at the front; those "
                        + "of a simplex lap winding differ by 2: back pitch 9 with front pitch 7 or 11 would do",
                "LAP | 1 | 32 | 4 | 9 | -8 | front pitch 8 is even, so it would join one bottom side with another, 8 "
                        + "conductors back: 7 or 9 would do",
                "LAP | 1 | 32 | 4 | 1 | -3 | back pitch 1 joins a top side with the bottom side beneath it: about 9 (one "
                        + "pole pitch) would do",
                "LAP | 1 | 32 | 4 | 33 | -31 | back pitch 33 leads once round 32 conductors and on: about 9 (one pole "
                        + "pitch) would do",
                "LAP | 3 | 10 | 2 | 7 | -1 | a triplex winding makes at least 6 paths, more than the coils that 10 "
                        + "conductors make: plex 2 or less would do",
                "WAVE | 1 | 30 | 4 | 7 | 5 | average pitch 6 times 4 poles is 24; there are 30 conductors; in a simplex "
                        + "wave winding they differ by 2: an average pitch of 7 or 8; or with these pitches 22 "
                        + "(progressive) or 26 (retrogressive) conductors would do",
                "WAVE | 1 | 30 | 4 | 7 | -7 | average pitch 0 times 4 poles is 0; there are 30 conductors; in a simplex "
                        + "wave winding they differ by 2: an average pitch of 7 or 8 would do",
                "WAVE | 1 | 28 | 4 | 7 | -7 | average pitch 0 times 4 poles is 0; there are 28 conductors; in a simplex "
                        + "wave winding they differ by 2: back and front pitch must both lead onwards, and the conductors "
                        + "be a multiple of 4, 2 more or less",
                // Numbers of conductors are named where the pitches lead so far and make at least one coil of each
                // path.
                "WAVE | 1 | 30 | 2 | 3 | -1 | average pitch 1 times 2 poles is 2; there are 30 conductors; in a simplex "
                        + "wave winding they differ by 2: an average pitch of 14 or 16; or with these pitches 4 "
                        + "(retrogressive) conductors would do",
                "WAVE | 1 | 30 | 2 | 3 | 3 | average pitch 3 times 2 poles is 6; there are 30 conductors; in a simplex "
                        + "wave winding they differ by 2: an average pitch of 14 or 16; or with these pitches 4 "
                        + "(progressive) or 8 (retrogressive) conductors would do",
                "WAVE | 2 | 30 | 2 | 3 | -1 | average pitch 1 times 2 poles is 2; there are 30 conductors; in a duplex "
                        + "wave winding they differ by 4: an average pitch of 13 or 17 would do",
                "WAVE | 2 | 30 | 2 | 7 | -3 | average pitch 2 times 2 poles is 4; there are 30 conductors; in a duplex "
                        + "wave winding they differ by 4: an average pitch of 13 or 17; or with these pitches 8 "
                        + "(retrogressive) conductors would do",
                "WAVE | 2 | 30 | 2 | 3 | 5 | average pitch 4 times 2 poles is 8; there are 30 conductors; in a duplex "
                        + "wave winding they differ by 4: an average pitch of 13 or 17; or with these pitches 12 "
                        + "(retrogressive) conductors would do",
                "WAVE | 2 | 40 | 2 | 11 | 3 | average pitch 7 times 2 poles is 14; there are 40 conductors; in a duplex "
                        + "wave winding they differ by 4: an average pitch of 18 or 22; or with these pitches 18 "
                        + "(retrogressive) conductors would do",
                "WAVE | 2 | 30 | 4 | 7 | -7 | average pitch 0 times 4 poles is 0; there are 30 conductors; in a duplex "
                        + "wave winding they differ by 4: back and front pitch must both lead onwards, and the conductors "
                        + "be a multiple of 4, 4 more or less",
                "WAVE | 1 | 30 | 4 | 7 | 0 | front pitch 0 is even, so it would join one bottom side with another, 0 "
                        + "further on: 1 would do",
                "LAP | 1 | 32 | 4 | 2 | -5 | back pitch 2 is even, so it would join conductor 1, a top side, with "
                        + "conductor 3, a top side too: 1 or 3 would do",
            })
    void saysWhatIsWrong(WindingType type, int plex, int conductors, int poles, int back, int front, String message) {
        var book = new ConductorPitches(type, plex, conductors, poles, back, front);

        assertThat(book.check()).extracting(Finding::message).containsExactly(message);
        assertThatThrownBy(book::spec)
                .isInstanceOf(ImpossibleWindingException.class)
                .hasMessage(message);
        assertThatThrownBy(() -> book.armature(16)).isInstanceOf(ImpossibleWindingException.class);
    }

    @Test
    void noAveragePitchOfNoneIsProposed() {
        // 24 conductors less 2 · 12 leave nothing to share out.
        assertThat(new ConductorPitches(WindingType.WAVE, 12, 24, 4, 7, 7).check())
                .extracting(Finding::wayOut)
                .endsWith("an average pitch of 12; or with these pitches 52 (retrogressive) conductors would do");
    }

    @Test
    void theLargestNumbersAreTaken() {
        assertThat(new ConductorPitches(WindingType.LAP, 12, 8000, 100, 8000, -8000).resultant())
                .isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(12, 2, 7, 5).withPlex(13))
                .withMessage("plex is 13, but must be from 1 (simplex) to 12");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(8001, 2, 7, 5))
                .withMessage("conductors is 8001, but must be from 4 to 8000");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(12, 2, 8001, 5))
                .withMessage("back pitch is 8001, but must be from 1 to 8000: it is counted onwards from the top side");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.wave(12, 2, 7, 8001))
                .withMessage("front pitch is 8001, but must be from -8000 to 8000");
    }

    @Test
    void severalFindingsAreAllGiven() {
        assertThat(ConductorPitches.wave(13, 4, 6, 8).check())
                .extracting(Finding::rule)
                .containsExactly("conductors-even", "parity", "parity");
    }

    @Test
    void citesItsSources() {
        assertThat(ConductorPitches.wave(28, 4, 7, 7).check())
                .extracting(Finding::source)
                .containsExactly(References.ROLLS_ROYCE_NOTES);
        assertThat(ConductorPitches.lap(12, 2, 6, 5).check())
                .extracting(Finding::source)
                .containsExactly(References.HAWKINS);
    }

    @Test
    void refusesNumbersThatCountNothing() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ConductorPitches(WindingType.LISTED, 1, 12, 2, 7, 5))
                .withMessage("back and front pitch describe a lap or a wave winding, not listed");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(12, 2, 7, 5).withPlex(0))
                .withMessage("plex is 0, but must be from 1 (simplex) to 12");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(3, 2, 7, 5))
                .withMessage("conductors is 3, but must be from 4 to 8000");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(12, 3, 7, 5))
                .withMessage("poles is 3, but poles come in pairs of north and south: 2 or 4 would do");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.lap(12, 2, 0, 5))
                .withMessage("back pitch is 0, but must be from 1 to 8000: it is counted onwards from the top side");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConductorPitches.wave(12, 2, 7, Integer.MIN_VALUE))
                .withMessage("front pitch is -2147483648, but must be from -8000 to 8000");
    }
}
