package coilwright.winding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class WindingSearchTest {
    private static String key(WindingType type, int plex, Direction direction, int bars) {
        return type + " " + plex + " " + direction + " " + bars;
    }

    private static String key(WindingSearch.Candidate c) {
        return key(
                c.winding().type(),
                c.plex(),
                c.direction(),
                c.winding().armature().bars());
    }

    private static WindingSpec spec(
            WindingType type, int plex, Direction direction, CoilSpan span, List<Integer> dead) {
        return type == WindingType.FROG_LEG
                ? new WindingSpec.FrogLeg(plex, direction, span, 0)
                : new WindingSpec.Regular(type, plex, direction, span, dead, 0);
    }

    private static boolean builds(Armature armature, WindingSpec spec) {
        try {
            Winding.build(armature, spec);
            return true;
        } catch (ImpossibleWindingException e) {
            return false;
        }
    }

    @Test
    void findsAllThatCanBeBuiltAndRefusesTheRest() {
        for (int slots = 3; slots <= 26; slots++) {
            for (int poles = 2; poles <= 8; poles += 2) {
                var result = WindingSearch.find(WindingSearch.Query.of(slots, poles));
                Set<String> possible = new TreeSet<>();
                for (var c : result.possible()) {
                    assertThat(possible.add(key(c))).as("given once").isTrue();
                    assertThat(c.winding().armature().slots()).isEqualTo(slots);
                    assertThat(c.winding().armature().poles()).isEqualTo(poles);
                }
                Set<String> refused = new TreeSet<>();
                for (var r : result.refused()) {
                    assertThat(refused.add(key(r.type(), r.plex(), r.direction(), r.bars())))
                            .as("refused once")
                            .isTrue();
                    assertThat(r.reason()).contains("would do");
                }
                for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE, WindingType.FROG_LEG)) {
                    for (int plex = 1; plex <= 3; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (int u = 1; u <= 4; u++) {
                                String key = key(type, plex, direction, u * slots);
                                boolean fits = builds(
                                        Armature.of(slots, u * slots, poles),
                                        spec(type, plex, direction, CoilSpan.usual(), List.of()));
                                assertThat(possible.remove(key)).as(key).isEqualTo(fits);
                                assertThat(refused.remove(key)).as(key).isEqualTo(!fits);
                                if (!fits && type == WindingType.WAVE) {
                                    // The fewest dead coils, one or two, that make it fit.
                                    for (int dead = 1; dead <= 2; dead++) {
                                        int bars = u * slots - dead;
                                        List<Integer> coils = new ArrayList<>();
                                        for (int i = 1; i <= dead; i++) {
                                            coils.add(i);
                                        }
                                        if (bars >= 2
                                                && builds(
                                                        Armature.of(slots, bars, poles),
                                                        spec(type, plex, direction, CoilSpan.usual(), coils))) {
                                            String fewer = key(type, plex, direction, bars);
                                            assertThat(possible.remove(fewer))
                                                    .as(fewer)
                                                    .isTrue();
                                            break;
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
                assertThat(possible)
                        .as("nothing else on %d slots, %d poles", slots, poles)
                        .isEmpty();
                assertThat(refused).isEmpty();
            }
        }
    }

    @Test
    void findsExactlyWhatFitsAGivenCommutator() {
        for (int slots = 4; slots <= 14; slots++) {
            for (int bars = 4; bars <= 30; bars++) {
                for (int poles = 2; poles <= 6; poles += 2) {
                    var result = WindingSearch.find(WindingSearch.Query.of(slots, poles, bars));
                    assertThat(result.possible().size() + result.refused().size())
                            .isEqualTo(18);
                    for (var c : result.possible()) {
                        assertThat(c.winding().armature().bars()).isEqualTo(bars);
                        int dead = c.winding().deadCoils().size();
                        assertThat((bars + dead) % slots).isZero();
                        assertThat(dead).isLessThanOrEqualTo(Math.max(2, slots / 4));
                    }
                    for (var r : result.refused()) {
                        int dead = r.type() == WindingType.FROG_LEG ? 0 : Math.floorMod(-bars, slots);
                        List<Integer> coils = new ArrayList<>();
                        for (int i = 1; i <= dead && dead <= Math.max(2, slots / 4); i++) {
                            coils.add(i);
                        }
                        assertThat(builds(
                                        Armature.of(slots, bars, poles),
                                        spec(r.type(), r.plex(), r.direction(), CoilSpan.usual(), coils)))
                                .as("%s", r)
                                .isFalse();
                    }
                }
            }
        }
    }

    @Test
    void otherThrowsAreThoseThatPassWithoutAWarning() {
        for (int slots = 6; slots <= 40; slots++) {
            for (int poles = 2; poles <= 6; poles += 2) {
                for (var c : WindingSearch.find(new WindingSearch.Query(
                                slots, poles, OptionalInt.of(slots), Optional.empty(), OptionalInt.of(1)))
                        .possible()) {
                    List<Integer> quiet = new ArrayList<>();
                    for (int t = 1; t < slots; t++) {
                        var spec = spec(c.winding().type(), 1, c.direction(), CoilSpan.ofThrow(t), List.of());
                        var armature = c.winding().armature();
                        if (t != c.throwSlots()
                                && builds(armature, spec)
                                && Rules.check(Winding.build(armature, spec)).stream()
                                        .noneMatch(f -> f.rule().equals("throw-against-pole-pitch")
                                                && f.severity() == Severity.WARNING)) {
                            quiet.add(t);
                        }
                    }
                    assertThat(c.otherThrows())
                            .as("%s on %d slots, %d poles", c.winding().type(), slots, poles)
                            .isEqualTo(quiet);
                }
            }
        }
    }

    @Test
    void bestComesFirst() {
        var twoPoles = WindingSearch.find(WindingSearch.Query.of(12, 2)).possible();
        assertThat(key(twoPoles.get(0))).isEqualTo("LAP 1 PROGRESSIVE 12");
        var fourPoles = WindingSearch.find(WindingSearch.Query.of(25, 4)).possible();
        assertThat(key(fourPoles.get(0))).isEqualTo("WAVE 1 RETROGRESSIVE 25");
        for (int slots = 4; slots <= 30; slots++) {
            var possible = WindingSearch.find(WindingSearch.Query.of(slots, 4)).possible();
            for (int i = 1; i < possible.size(); i++) {
                assertThat(warnings(possible.get(i - 1))).isLessThanOrEqualTo(warnings(possible.get(i)));
            }
        }
    }

    /** No warnings, plain before frog-leg, lowest plex, no dead coils, fewest bars, the type that suits the poles. */
    @Test
    void oneMeritAfterTheOtherDecides() {
        for (int slots = 4; slots <= 24; slots++) {
            for (int poles = 2; poles <= 6; poles += 2) {
                boolean two = poles == 2;
                assertThat(WindingSearch.find(WindingSearch.Query.of(slots, poles))
                                .possible())
                        .as("%d slots, %d poles", slots, poles)
                        .isSortedAccordingTo(Comparator.comparing(c -> {
                            WindingType type = c.winding().type();
                            boolean crossed = (c.direction() == Direction.PROGRESSIVE) == (type == WindingType.WAVE);
                            return String.format(
                                    Locale.ROOT,
                                    "%d %b %d %d %03d %b %b",
                                    warnings(c),
                                    type == WindingType.FROG_LEG,
                                    c.plex(),
                                    c.winding().deadCoils().size(),
                                    c.winding().armature().bars(),
                                    (type == WindingType.LAP) != two,
                                    crossed);
                        }));
            }
        }
    }

    private static long warnings(WindingSearch.Candidate c) {
        return c.findings().stream()
                .filter(f -> f.severity() == Severity.WARNING)
                .count();
    }

    @Test
    void keepsToTheTypeAndPlexAskedFor() {
        var result = WindingSearch.find(
                new WindingSearch.Query(24, 4, OptionalInt.empty(), Optional.of(WindingType.WAVE), OptionalInt.of(1)));
        assertThat(result.possible())
                .isNotEmpty()
                .allMatch(c -> c.winding().type() == WindingType.WAVE && c.plex() == 1);
        assertThat(result.possible().get(0).winding().deadCoils())
                .extracting(Coil::number)
                .containsExactly(24);
        assertThat(result.refused()).isNotEmpty().allMatch(r -> r.type() == WindingType.WAVE && r.plex() == 1);
    }

    @Test
    void refusesSenselessQuestions() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new WindingSearch.Query(
                        24, 4, OptionalInt.empty(), Optional.of(WindingType.LISTED), OptionalInt.empty()))
                .withMessage("a listed winding cannot be searched for: ask for lap or wave");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> new WindingSearch.Query(24, 4, OptionalInt.empty(), Optional.empty(), OptionalInt.of(13)))
                .withMessage("plex is 13, but must be from 1 (simplex) to 12");
        assertThatIllegalArgumentException().isThrownBy(() -> WindingSearch.Query.of(24, 3));
    }
}
