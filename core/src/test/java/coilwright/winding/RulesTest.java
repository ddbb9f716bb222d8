package coilwright.winding;

import static coilwright.winding.Direction.PROGRESSIVE;
import static coilwright.winding.Direction.RETROGRESSIVE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Each rule kept and broken, with its exact words. */
class RulesTest {
    private static List<Finding> blocking(int slots, int bars, int poles, WindingSpec spec) {
        return Rules.blocking(Armature.of(slots, bars, poles), spec);
    }

    private static List<String> refusal(int slots, int bars, int poles, WindingSpec spec) {
        return blocking(slots, bars, poles, spec).stream().map(Finding::message).toList();
    }

    private static List<Finding> said(String rule, int slots, int bars, int poles, WindingSpec spec) {
        return Rules.check(Winding.build(Armature.of(slots, bars, poles), spec)).stream()
                .filter(f -> f.rule().equals(rule))
                .toList();
    }

    private static List<String> messages(String rule, int slots, int bars, int poles, WindingSpec spec) {
        return said(rule, slots, bars, poles, spec).stream()
                .map(f -> f.severity().word() + " " + f.message())
                .toList();
    }

    private static WindingSpec.FrogLeg frogLeg(int plex, CoilSpan span) {
        return new WindingSpec.FrogLeg(plex, PROGRESSIVE, span, 0);
    }

    @Nested
    class CommutatorPitch {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "24 | 24 | 4 | 1 | PROGRESSIVE | commutator pitch would be 24/2 ± 1/2, not whole: a simplex wave on 4"
                            + " poles needs an odd number of bars; 23 (one dead coil) or 25 would do",
                    "12 | 48 | 4 | 1 | RETROGRESSIVE | commutator pitch would be 48/2 ± 1/2, not whole: a simplex wave on"
                            + " 4 poles needs an odd number of bars; 47 (one dead coil) or 49 would do",
                    "25 | 25 | 4 | 2 | PROGRESSIVE | commutator pitch would be 25/2 ± 2/2, not whole: a duplex wave on 4"
                            + " poles needs an even number of bars; 24 (one dead coil) or 26 would do",
                    "21 | 21 | 6 | 1 | PROGRESSIVE | commutator pitch would be 21/3 ± 1/3, not whole: a simplex wave on 6"
                            + " poles needs a multiple of 3 bars, 1 more or 1 less; 20 (one dead coil) or 22 (wound"
                            + " retrogressive) would do",
                    "20 | 20 | 6 | 1 | RETROGRESSIVE | commutator pitch would be (20 - 1)/3, not whole: wound progressive"
                            + " the pitch is 7; a retrogressive simplex wave on 6 poles needs a multiple of 3 bars and 1"
                            + " more; 19 (one dead coil) or 22 would do",
                    "19 | 19 | 6 | 1 | PROGRESSIVE | commutator pitch would be (19 + 1)/3, not whole: wound retrogressive"
                            + " the pitch is 6; a progressive simplex wave on 6 poles needs a multiple of 3 bars and 1"
                            + " less; 17 (2 dead coils) or 20 would do",
                    "20 | 20 | 6 | 3 | PROGRESSIVE | commutator pitch would be 20/3 ± 3/3, not whole: a triplex wave on 6"
                            + " poles needs a number of bars that 3 divides; 18 (2 dead coils) or 21 would do",
                })
        void isNotWhole(int slots, int bars, int poles, int plex, Direction direction, String message) {
            // One and two are written as words.
            String expected = message.replace("(2 dead", "(two dead");
            assertThat(refusal(slots, bars, poles, WindingSpec.wave(plex, direction)))
                    .containsExactly(expected);
            assertThatThrownBy(() -> Winding.build(Armature.of(slots, bars, poles), WindingSpec.wave(plex, direction)))
                    .isInstanceOf(ImpossibleWindingException.class)
                    .hasMessage(expected);
        }

        @Test
        void namesNoDeadCoilWhereTheBarsGoOnAnotherCore() {
            // 22 bars do not fill 12 slots either; 21 and three dead coils would, and be whole.
            assertThat(refusal(12, 22, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .containsExactly(
                            "22 bars need 22 coils, which do not share out evenly over 12 slots (22/12 is not whole): no"
                                    + " number of bars suits these slots: another number of slots or other dead coils"
                                    + " would do",
                            "commutator pitch would be 22/2 ± 1/2, not whole: a simplex wave on 4 poles needs an odd"
                                    + " number of bars; 21 (three dead coils) or 23 (one dead coil) would do");
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    // Two bars are the fewest there are.
                    "3 | 3 | 6 | commutator pitch would be 3/3 ± 1/3, not whole: a simplex wave on 6 poles needs a"
                            + " multiple of 3 bars, 1 more or 1 less; 2 (one dead coil) or 4 (two dead coils, wound"
                            + " retrogressive) would do",
                    "3 | 3 | 10 | commutator pitch would be 3/5 ± 1/5, not whole: a simplex wave on 10 poles needs a"
                            + " multiple of 5 bars, 1 more or 1 less; 4 (two dead coils) would do",
                    // 4000 bars are the most.
                    "129 | 3999 | 14 | commutator pitch would be 3999/7 ± 1/7, not whole: a simplex wave on 14 poles"
                            + " needs a multiple of 7 bars, 1 more or 1 less; 3998 (one dead coil, wound retrogressive)"
                            + " would do",
                    "125 | 4000 | 14 | commutator pitch would be 4000/7 ± 1/7, not whole: a simplex wave on 14 poles"
                            + " needs a multiple of 7 bars, 1 more or 1 less; 3998 (two dead coils, wound retrogressive)"
                            + " would do",
                    // Six dead coils are not worth proposing, but these slots hold two coil sides a layer already.
                    "8 | 16 | 18 | commutator pitch would be 16/9 ± 1/9, not whole: a simplex wave on 18 poles needs a"
                            + " multiple of 9 bars, 1 more or 1 less; 10 (6 dead coils, wound retrogressive) or 17 would"
                            + " do",
                })
        void theNearestBarsAreNamed(int slots, int bars, int poles, String message) {
            assertThat(refusal(slots, bars, poles, WindingSpec.wave(1, PROGRESSIVE)))
                    .containsExactly(message);
        }

        @Test
        void barsThatFillTheSlotsNeedNoDeadCoil() {
            assertThat(refusal(7, 20, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .endsWith("commutator pitch would be 20/2 ± 1/2, not whole: a simplex wave on 4 poles needs an odd"
                            + " number of bars; 19 (two dead coils) or 21 would do");
            assertThat(refusal(31, 3999, 4, WindingSpec.wave(2, PROGRESSIVE)))
                    .endsWith(
                            "commutator pitch would be 3999/2 ± 2/2, not whole: a duplex wave on 4 poles needs an even"
                                    + " number of bars; 3998 (one dead coil) or 4000 would do");
        }

        @Test
        void isWhole() {
            assertThat(refusal(25, 25, 4, WindingSpec.wave(1, PROGRESSIVE))).isEmpty();
            assertThat(refusal(24, 23, 4, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(7))))
                    .isEmpty();
        }
    }

    @Nested
    class SidesInSlots {
        @Test
        void doNotShareOut() {
            assertThat(refusal(24, 23, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly("23 bars need 23 coils, which do not share out evenly over 24 slots (23/24 is not"
                            + " whole): one dead coil in all would fill the slots; or 24 bars would do");
            assertThat(refusal(24, 36, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly("36 bars need 36 coils, which do not share out evenly over 24 slots (36/24 is not"
                            + " whole): 24 or 48 bars would do");
            assertThat(refusal(24, 46, 4, WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(1))))
                    .containsExactly(
                            "46 bars need 47 coils (one dead coil counted), which do not share out evenly over 24"
                                    + " slots (47/24 is not whole): two dead coils in all would fill the slots; or 23 or 47 bars"
                                    + " would do");
        }

        @Test
        void asManyDeadCoilsAsAreWorthProposing() {
            // A quarter of the slots, 6 of 24.
            assertThat(refusal(24, 18, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly("18 bars need 18 coils, which do not share out evenly over 24 slots (18/24 is not"
                            + " whole): 6 dead coils in all would fill the slots; or 24 bars would do");
            assertThat(refusal(24, 17, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly("17 bars need 17 coils, which do not share out evenly over 24 slots (17/24 is not"
                            + " whole): 24 bars would do");
            // Where nothing else helps, more: an even number of bars makes no simplex wave on 4 poles.
            assertThat(refusal(12, 19, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .containsExactly("19 bars need 19 coils, which do not share out evenly over 12 slots (19/12 is not"
                            + " whole): 5 dead coils in all would fill the slots");
        }

        @Test
        void theNearestBarsAreNamed() {
            // From two bars to four thousand.
            assertThat(refusal(2, 3, 2, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "3 bars need three coils, which do not share out evenly over 2 slots (3/2 is not whole):"
                                    + " one dead coil in all would fill the slots; or 2 or 4 bars would do");
            assertThat(refusal(1000, 3999, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "3999 bars need 3999 coils, which do not share out evenly over 1000 slots (3999/1000"
                                    + " is not whole): one dead coil in all would fill the slots; or 3000 or 4000 bars would do");
            assertThat(refusal(1000, 3998, 4, WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(7))))
                    .containsExactly(
                            "3998 bars need 3999 coils (one dead coil counted), which do not share out evenly over"
                                    + " 1000 slots (3999/1000 is not whole): two dead coils in all would fill the slots; or 2999"
                                    + " or 3999 bars would do");
            // A progressive simplex wave on 6 poles takes 2 bars more than a multiple of 3; one coil of each is dead.
            assertThat(refusal(12, 22, 6, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(7))))
                    .startsWith("22 bars need 23 coils (one dead coil counted), which do not share out evenly over 12"
                            + " slots (23/12 is not whole): 11 or 23 bars would do");
        }

        @Test
        void ofAFrogLegNeedsWholePolePairsToo() {
            assertThat(refusal(24, 46, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly("46 bars need 46 coils, which do not share out evenly over 24 slots (46/24 is not"
                            + " whole): 24 or 48 bars would do");
            // Multiples of 7 that 3 divides; plex 4 makes 24 paths by the wave part.
            assertThat(refusal(7, 8, 6, frogLeg(1, CoilSpan.usual())))
                    .startsWith("8 bars need 8 coils, which do not share out evenly over 7 slots (8/7 is not whole): 21"
                            + " bars would do");
            assertThat(refusal(7, 8, 6, frogLeg(4, CoilSpan.usual())))
                    .startsWith("8 bars need 8 coils, which do not share out evenly over 7 slots (8/7 is not whole): 42"
                            + " bars would do");
            assertThat(refusal(12, 13, 6, frogLeg(2, CoilSpan.usual())))
                    .startsWith(
                            "13 bars need 13 coils, which do not share out evenly over 12 slots (13/12 is not whole):"
                                    + " 12 or 24 bars would do");
        }

        @Test
        void proposesNoBarsThatTheWaveCouldNotStep() {
            assertThat(refusal(12, 23, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .containsExactly("23 bars need 23 coils, which do not share out evenly over 12 slots (23/12 is not"
                            + " whole): one dead coil in all would fill the slots");
        }

        @Test
        void shareOut() {
            assertThat(refusal(24, 48, 4, WindingSpec.lap(1, PROGRESSIVE))).isEmpty();
            assertThat(refusal(24, 46, 4, WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(1, 2))))
                    .isEmpty();
        }
    }

    @Nested
    class LeadsAndSpans {
        @Test
        void stepsPastHalf() {
            assertThat(refusal(5, 5, 2, WindingSpec.lap(3, PROGRESSIVE)))
                    .containsExactly(
                            "a triplex lap steps 3 bars, over half of the 5 there are: plex 2 or less would do");
            assertThat(refusal(3, 3, 2, WindingSpec.lap(2, PROGRESSIVE)))
                    .containsExactly("a duplex lap steps 2 bars, over half of the 3 there are: plex 1 would do");
            assertThat(refusal(3, 3, 2, WindingSpec.wave(3, RETROGRESSIVE)))
                    .containsExactly("a triplex wave makes 6 paths, more than the 3 coils there are to share out:"
                            + " plex 1, or 6 bars for this plex, would do");
            assertThat(refusal(12, 12, 2, WindingSpec.lap(8, PROGRESSIVE)))
                    .containsExactly(
                            "an 8-plex lap steps 8 bars, over half of the 12 there are: plex 6 or less would do");
            assertThat(refusal(12, 12, 2, WindingSpec.lap(11, PROGRESSIVE)))
                    .containsExactly(
                            "an 11-plex lap steps 11 bars, over half of the 12 there are: plex 6 or less would do");
            assertThat(refusal(6, 6, 2, WindingSpec.lap(3, PROGRESSIVE))).isEmpty();
            // Of 3 bars on 10 poles no wave can be wound at all; 8 and 2 more make a multiple of 5.
            assertThat(refusal(3, 3, 10, WindingSpec.wave(2, PROGRESSIVE)))
                    .endsWith(
                            "a duplex wave makes 4 paths, more than the 3 coils there are to share out: 8 bars for this"
                                    + " plex would do");
        }

        @Test
        void spanOutOfRange() {
            assertThat(refusal(24, 24, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofThrow(24))))
                    .containsExactly("throw is 24, but there are only 24 slots: about 6 (one pole pitch) would do");
            assertThat(refusal(12, 24, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(1))))
                    .containsExactly(
                            "backSpan is 1, but with 2 coil sides per slot and layer it must be from 2 to 22 to"
                                    + " bring the two sides into two slots: about 6 (one pole pitch) would do");
            assertThat(refusal(12, 24, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(23))))
                    .hasSize(1);
            assertThat(refusal(12, 24, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofPositions(22))))
                    .isEmpty();
            assertThat(refusal(24, 24, 4, WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofThrow(23))))
                    .isEmpty();
        }

        @Test
        void theLargestThrowIsRefusedLikeAnyOther() {
            var spec = WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofThrow(Integer.MAX_VALUE));
            assertThat(refusal(12, 24, 4, spec))
                    .containsExactly(
                            "throw is 2147483647, but there are only 12 slots: about 3 (one pole pitch) would do");
            assertThat(refusal(12, 24, 4, frogLeg(1, CoilSpan.ofThrow(Integer.MAX_VALUE))))
                    .hasSize(2);
        }

        @Test
        void deadCoilsMustExist() {
            assertThat(refusal(12, 23, 4, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(25))))
                    .containsExactly("deadCoils names coil 25, but the coils run from 1 to 24: name one of those");
            assertThat(refusal(12, 23, 4, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(0))))
                    .containsExactly("deadCoils names coil 0, but the coils run from 1 to 24: name one of those");
            assertThat(refusal(12, 23, 4, WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(24))))
                    .isEmpty();
        }
    }

    @Nested
    class FrogLeg {
        @Test
        void doesNotFit() {
            assertThat(refusal(25, 25, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly("a frog-leg winding ties bars K/p = 25/2 apart, which is not whole: 24 or 26 bars"
                            + " would do");
            assertThat(refusal(12, 12, 6, frogLeg(3, CoilSpan.usual())))
                    .containsExactly(
                            "the wave part of a frog-leg winding has plex p·m = 9 and makes 18 paths, more than the"
                                    + " 12 coils there are to share out: plex 2 or less, or 18 bars for this plex, would do");
            assertThat(refusal(24, 48, 4, frogLeg(1, CoilSpan.ofThrow(12))))
                    .containsExactly(
                            "the lap coils of a frog-leg winding span 24 positions, which leaves no room for the"
                                    + " wave coils within two pole pitches (24 positions): a throw of 11 or less would do");
            assertThat(refusal(24, 48, 4, frogLeg(1, CoilSpan.ofPositions(23))))
                    .containsExactly(
                            "the lap coils of a frog-leg winding span 23 positions, which leaves no room for the"
                                    + " wave coils within two pole pitches (24 positions): a backSpan of 22 or less would do");
            assertThat(refusal(2, 8, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly(
                            "2 slots on 4 poles give less than one slot to a pole, which leaves no room for a lap"
                                    + " and a wave coil within two pole pitches: 4 slots or more would do");
        }

        @Test
        void theNearestBarsAndPlexAreNamed() {
            assertThat(refusal(5, 5, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly(
                            "a frog-leg winding ties bars K/p = 5/2 apart, which is not whole: 4 or 6 bars would do");
            assertThat(refusal(3, 3, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly(
                            "a frog-leg winding ties bars K/p = 3/2 apart, which is not whole: 4 bars would do",
                            "the wave part of a frog-leg winding has plex p·m = 2 and makes 4 paths, more than the 3 coils"
                                    + " there are to share out: 4 bars for this plex would do");
            assertThat(refusal(4, 4, 4, frogLeg(3, CoilSpan.usual())))
                    .containsExactly(
                            "the wave part of a frog-leg winding has plex p·m = 6 and makes 12 paths, more than the 4 coils"
                                    + " there are to share out: plex 1, or 12 bars for this plex, would do");
        }

        @Test
        void fits() {
            assertThat(refusal(24, 48, 4, frogLeg(1, CoilSpan.ofThrow(11)))).isEmpty();
            // One slot a pole, and as many bars as the wave part has paths.
            assertThat(refusal(4, 4, 4, frogLeg(1, CoilSpan.usual()))).isEmpty();
            assertThat(messages("listed-leads", 24, 48, 4, frogLeg(1, CoilSpan.usual())))
                    .isEmpty();
            var duplex = Winding.build(Armature.of(24, 48, 4), frogLeg(2, CoilSpan.usual()));
            assertThat(duplex.sets().get(0).plex()).hasValue(2);
            assertThat(duplex.sets().get(1).plex()).hasValue(4);
            assertThat(duplex.setOf(duplex.coil(48)).type()).isEqualTo(WindingType.LAP);
            assertThat(duplex.setOf(duplex.coil(49)).type()).isEqualTo(WindingType.WAVE);
            assertThat(duplex.sets())
                    .extracting(CoilSet::firstCoil, CoilSet::coilCount)
                    .containsExactly(tuple(1, 48), tuple(49, 48));
            // gcd(48, 2) of the lap part, gcd(48, 48/2 − 2) of the wave part.
            assertThat(duplex.closures()).hasValue(4);
            assertThat(messages("equalizers", 24, 48, 4, frogLeg(1, CoilSpan.usual())))
                    .containsExactly("note a lap and a wave coil in series join bars 24 apart with no net voltage: the"
                            + " winding equalizes itself");
        }
    }

    @Nested
    class Listed {
        private WindingSpec.Listed list(ListedCoil... coils) {
            return new WindingSpec.Listed(List.of(coils));
        }

        @Test
        void namesSlotsAndBarsThatExist() {
            assertThat(refusal(4, 4, 2, list(ListedCoil.of(1, 5, 2, 1, 2), ListedCoil.of(1, 1, 0, 9, 2))))
                    .containsExactly(
                            "entry 1 has topSlot 5, but topSlots run from 1 to 4: correct the list",
                            "coil 1 is listed twice, in entries 1 and 2: give every coil a number of its own",
                            "entry 2 has bottomSlot 0, but bottomSlots run from 1 to 4: correct the list",
                            "entry 2 has topBar 9, but topBars run from 1 to 4: correct the list");
            assertThat(refusal(4, 4, 2, list(ListedCoil.of(0, 1, 2, 1, 2))))
                    .containsExactly("entry 1 has coil 0, but coils run from 1 to 8000: correct the list");
            assertThat(refusal(4, 4, 2, list(ListedCoil.dead(1, 1, 2)))).isEmpty();
        }

        @Test
        void reportsWhatIsOutOfTheOrdinary() {
            var spec = list(
                    ListedCoil.of(1, 1, 3, 1, 2),
                    ListedCoil.of(2, 2, 4, 2, 2),
                    ListedCoil.of(3, 3, 1, 3, 4),
                    new ListedCoil(4, 4, 2, OptionalInt.of(3), OptionalInt.empty()));
            assertThat(messages("listed-leads", 4, 4, 2, spec))
                    .containsExactly(
                            "warning coil 2 has both leads on bar 2, so it is shorted: trace its leads again",
                            "warning coil 4 has one lead on no bar: find the bar of its other lead",
                            "warning bar 3 has 2 top leads, of coils 3, 4: a sound winding has one on every bar",
                            "warning bar 4 has no top lead: a sound winding has one on every bar",
                            "warning bar 1 has no bottom lead: a sound winding has one on every bar",
                            "warning bar 2 has 2 bottom leads, of coils 1, 2: a sound winding has one on every bar",
                            "warning bar 3 has no bottom lead: a sound winding has one on every bar",
                            "note the coils do not all reach equally far, so no pitch is given");
            assertThat(said("listed-leads", 4, 4, 2, spec).get(5).coils()).containsExactly(1, 2);
            assertThat(said("listed-leads", 4, 4, 2, spec).get(5).bars()).containsExactly(2);
        }

        @Test
        void saysNothingOfASoundList() {
            var sound = Winding.build(Armature.of(12, 24, 4), WindingSpec.lap(1, RETROGRESSIVE));
            assertThat(said("listed-leads", 12, 24, 4, sound.asListed())).isEmpty();
            var again = Winding.build(sound.armature(), sound.asListed());
            assertThat(again.pitches()).isEqualTo(sound.pitches());
            assertThat(again.parallelPaths()).isEmpty();
            assertThat(again.equalizerPitch()).isEmpty();
        }
    }

    @Nested
    class Advice {
        @Test
        void throwAgainstPolePitch() {
            String rule = "throw-against-pole-pitch";
            var lap = WindingSpec.lap(1, PROGRESSIVE);
            // Chording factor sin(span/pole pitch · 90°), from memory of Clayton and Hancock.
            assertThat(messages(rule, 24, 24, 4, lap))
                    .containsExactly("note coils span 6 slots, the pole pitch is 6 slots, chording factor 1.000");
            assertThat(messages(rule, 24, 24, 4, lap.withSpan(CoilSpan.ofThrow(5))))
                    .containsExactly("note coils span 5 slots, the pole pitch is 6 slots, chording factor 0.966");
            assertThat(messages(rule, 25, 25, 4, lap.withSpan(CoilSpan.ofThrow(7))))
                    .containsExactly("note coils span 7 slots, the pole pitch is 6.25 slots, chording factor 0.982");
            assertThat(messages(rule, 24, 24, 4, lap.withSpan(CoilSpan.ofThrow(7))))
                    .containsExactly(
                            "warning coils span 7 slots, the pole pitch is 6 slots, chording factor 0.966; longer"
                                    + " than the pole pitch by a slot or more, which costs copper and adds no voltage: a throw of"
                                    + " 6 (1-7) would do");
            assertThat(messages(rule, 24, 24, 4, lap.withSpan(CoilSpan.ofThrow(3))))
                    .containsExactly(
                            "warning coils span 3 slots, the pole pitch is 6 slots, chording factor 0.707; shorter"
                                    + " than two thirds of the pole pitch, so the coil sides lose voltage: a throw of 6 (1-7)"
                                    + " would do");
            assertThat(messages(rule, 24, 24, 4, lap.withSpan(CoilSpan.ofThrow(4))))
                    .containsExactly("note coils span 4 slots, the pole pitch is 6 slots, chording factor 0.866");
            assertThat(ThrowAgainstPolePitch.chordingFactor(2)).isCloseTo(0, within(1e-12));
            assertThat(messages(rule, 24, 24, 4, frogLeg(1, CoilSpan.ofThrow(5))))
                    .containsExactly(
                            "note lap coils: coils span 5 slots, the pole pitch is 6 slots, chording factor 0.966",
                            "warning wave coils: coils span 7 slots, the pole pitch is 6 slots, chording factor 0.966;"
                                    + " longer than the pole pitch by a slot or more, which costs copper and adds no voltage: a throw"
                                    + " of 6 (1-7) would do");
            // The longest throw not over the pole pitch is never too short.
            assertThat(messages(rule, 7, 7, 4, lap))
                    .containsExactly("note coils span 1 slot, the pole pitch is 1.75 slots, chording factor 0.782");
            assertThat(messages(rule, 4, 4, 4, lap))
                    .containsExactly("note coils span 1 slot, the pole pitch is 1 slot, chording factor 1.000");
        }

        @Test
        void steppedCoils() {
            var lap = WindingSpec.lap(1, PROGRESSIVE);
            assertThat(messages("stepped-coils", 12, 36, 4, lap.withSpan(CoilSpan.ofPositions(10))))
                    .containsExactly(
                            "note stepped (split-throw) coils: of the 3 coils of a slot 2 span 3 slots (1-4) and 1"
                                    + " span 4 (1-5)");
            assertThat(messages("stepped-coils", 12, 36, 4, lap)).isEmpty();
            // Counted on the built winding.
            var w = Winding.build(Armature.of(12, 36, 4), lap.withSpan(CoilSpan.ofPositions(10)));
            assertThat(w.coils().subList(0, 3).stream().map(c -> c.bottom().slot()))
                    .containsExactly(4, 4, 5);
        }

        @Test
        void parity() {
            assertThat(messages("parity", 16, 16, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "note back pitch 9 and front pitch 7 are both odd, so every top side joins bottom sides"
                                    + " at both ends");
        }

        @Test
        void symmetry() {
            assertThat(messages("symmetry", 24, 24, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .isEmpty();
            assertThat(messages("symmetry", 25, 25, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .isEmpty();
            assertThat(messages("symmetry", 13, 13, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "warning slots over pairs of paths is 13/2, not whole: the paths hold unequal numbers of coil"
                                    + " sides under the poles: for equal paths the number of slots would be 12 or 14",
                            "warning bars over pairs of paths is 13/2, not whole: the paths hold unequal numbers of coils,"
                                    + " and no exact equalizer fits: for equal paths the number of bars would be 12 or 14");
            assertThat(messages("symmetry", 24, 24, 4, WindingSpec.lap(2, PROGRESSIVE)))
                    .containsExactly(
                            "note pole pairs over pairs of paths is 2/4, not whole: the 2 interleaved windings share"
                                    + " each pole pair, and only the brushes even out their currents");
            assertThat(messages("symmetry", 20, 20, 6, WindingSpec.wave(2, RETROGRESSIVE)))
                    .containsExactly(
                            "warning pole pairs over pairs of paths is 3/2, not whole: the paths meet different"
                                    + " poles, and no exact equalizer fits: for equal paths the number of pole pairs would be 2 or"
                                    + " 4");
        }

        @Test
        void fewSlotsForEqualPaths() {
            assertThat(messages("symmetry", 3, 6, 4, WindingSpec.lap(2, PROGRESSIVE)))
                    .startsWith(
                            "warning slots over pairs of paths is 3/4, not whole: the paths hold unequal numbers of coil"
                                    + " sides under the poles: for equal paths the number of slots would be 4");
        }

        @Test
        void reEntrancy() {
            assertThat(messages("re-entrancy", 24, 24, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "note singly re-entrant: gcd(24, 1) = 1, so one closed circuit takes in every coil");
            assertThat(messages("re-entrancy", 24, 24, 4, WindingSpec.lap(2, PROGRESSIVE)))
                    .containsExactly("note doubly re-entrant: gcd(24, 2) = 2, so 2 separate closed circuits");
            assertThat(messages("re-entrancy", 24, 24, 4, WindingSpec.lap(4, RETROGRESSIVE)))
                    .containsExactly("note 4-fold re-entrant: gcd(24, 4) = 4, so 4 separate closed circuits");
        }

        @Test
        void equalizers() {
            String rule = "equalizers";
            assertThat(messages(rule, 36, 36, 6, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "note equalizers are possible and advised for 6 paths: they join bars K/p = 12 apart, 3"
                                    + " taps on each of up to 12 rings");
            assertThat(messages(rule, 13, 26, 4, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "note equalizers are possible and advised for 4 paths: they join bars K/p = 13 apart, 2"
                                    + " taps on each of up to 13 rings; only nearly at one potential, as 13 slots do not repeat"
                                    + " every two pole pitches");
            assertThat(messages(rule, 26, 26, 4, WindingSpec.wave(2, PROGRESSIVE)))
                    .containsExactly(
                            "note equalizers are possible: they join bars K/a = 13 apart, 2 taps on each ring");
            assertThat(messages(rule, 12, 12, 2, WindingSpec.lap(1, PROGRESSIVE)))
                    .containsExactly(
                            "note a lap winding on 2 poles has no two bars at one potential: nothing to equalize");
            assertThat(Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, PROGRESSIVE))
                            .equalizerPitch())
                    .isEmpty();
            assertThat(Winding.build(Armature.of(25, 25, 4), WindingSpec.wave(1, PROGRESSIVE))
                            .equalizerPitch())
                    .isEmpty();
            assertThat(messages(rule, 20, 20, 6, WindingSpec.wave(2, RETROGRESSIVE)))
                    .containsExactly(
                            "warning no exact equalizer fits: K/a = 20/2 and p/a = 3/2 must both be whole: share the"
                                    + " current between the circuits by brushes of full width instead");
        }

        @Test
        void brushWidth() {
            assertThat(messages("brush-width", 24, 24, 4, WindingSpec.lap(3, PROGRESSIVE)))
                    .containsExactly(
                            "note a brush of a triplex winding covers at least 3 bars, better 4 (one bar is 15°)");
        }

        @Test
        void deadCoils() {
            assertThat(messages(
                            "dead-coil-use",
                            24,
                            22,
                            4,
                            WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(12, 24))))
                    .containsExactly(
                            "warning coils 12, 24 dead in a lap winding, where every coil could have a bar: 24 bars"
                                    + " would need no dead coil");
            var wave = WindingSpec.wave(1, PROGRESSIVE).withDeadCoils(List.of(24));
            assertThat(messages("dead-coil-use", 24, 23, 4, wave))
                    .containsExactly(
                            "note coil 24 dead: kept in the slots for balance, leads cut off, taped and insulated,"
                                    + " no bars");
            assertThat(said("dead-coil-use", 24, 23, 4, wave).get(0).coils()).containsExactly(24);
            assertThat(messages("dead-coil-use", 25, 25, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .isEmpty();
        }
    }

    @Nested
    class Sources {
        @Test
        void eachRuleCitesItsOwn() {
            assertThat(blocking(24, 24, 4, WindingSpec.wave(1, PROGRESSIVE)))
                    .extracting(Finding::source)
                    .containsExactly(References.THERAJA);
            assertThat(said(
                                    "throw-against-pole-pitch",
                                    24,
                                    24,
                                    4,
                                    WindingSpec.lap(1, PROGRESSIVE).withSpan(CoilSpan.ofThrow(8)))
                            .get(0)
                            .source())
                    .isEqualTo(References.EGYCON);
            assertThat(said("re-entrancy", 24, 24, 4, WindingSpec.lap(1, PROGRESSIVE))
                            .get(0)
                            .source())
                    .isEqualTo(References.ARNOLD);
            assertThat(said("equalizers", 24, 24, 4, WindingSpec.lap(1, PROGRESSIVE))
                            .get(0)
                            .source())
                    .isEqualTo(References.HAWKINS);
            assertThat(said("brush-width", 24, 24, 4, WindingSpec.lap(2, PROGRESSIVE))
                            .get(0)
                            .source())
                    .isEqualTo(References.POLISH_LECTURE_NOTES);
            assertThat(blocking(25, 25, 4, frogLeg(1, CoilSpan.usual())).get(0).source())
                    .isEqualTo(References.PATENT_CH124206);
        }

        @ParameterizedTest
        @EnumSource(References.class)
        void titlesAreGiven(References source) {
            assertThat(source.title()).isNotBlank().doesNotContain("\n");
        }
    }

    @Nested
    class Values {
        @Test
        void armatureChecksItsCounts() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Armature.of(1, 24, 4))
                    .withMessage("slots is 1, but must be from 2 to 1000: count them again");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Armature.of(24, 4001, 4))
                    .withMessage("bars is 4001, but must be from 2 to 4000: count them again");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Armature.of(24, 24, 5))
                    .withMessage("poles is 5, but poles come in pairs of north and south: 4 or 6 would do");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Armature.of(24, 24, 102))
                    .withMessage("poles is 102, but must be from 2 to 100: count them again");
            Armature largest = Armature.of(Armature.MAX_SLOTS, Armature.MAX_BARS, Armature.MAX_POLES);
            assertThat(largest.slotAngle()).isEqualTo(0.36);
            assertThat(largest.barAngle()).isEqualTo(0.09);
        }

        @Test
        void specsCheckTheirFields() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> WindingSpec.lap(0, PROGRESSIVE))
                    .withMessage("plex is 0, but must be from 1 (simplex) to 12");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> frogLeg(13, CoilSpan.usual()))
                    .withMessage("plex is 13, but must be from 1 (simplex) to 12");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new WindingSpec.FrogLeg(1, PROGRESSIVE, CoilSpan.usual(), 4001))
                    .withMessage("leadOffset is 4001, but must be from -4000 to 4000 bars");
            assertThat(new WindingSpec.FrogLeg(12, PROGRESSIVE, CoilSpan.usual(), -4000).leadOffset())
                    .isEqualTo(-4000);
            for (WindingType type : List.of(WindingType.FROG_LEG, WindingType.LISTED)) {
                assertThatIllegalArgumentException()
                        .isThrownBy(() -> new WindingSpec.Regular(type, 1, PROGRESSIVE, CoilSpan.usual(), List.of(), 0))
                        .withMessage("a regular winding is lap or wave, not " + type.word());
            }
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> WindingSpec.lap(1, PROGRESSIVE).withDeadCoils(List.of(3, 3)))
                    .withMessage("deadCoils names a coil twice: [3, 3]; name each dead coil once");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> WindingSpec.lap(1, PROGRESSIVE).withLeadOffset(Integer.MIN_VALUE))
                    .withMessage("leadOffset is -2147483648, but must be from -4000 to 4000 bars");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> CoilSpan.ofThrow(0))
                    .withMessage("throw is 0, but a coil spans at least 1 slot");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new WindingSpec.Listed(List.of()))
                    .withMessageStartingWith("a listed winding has no coils");
        }

        @Test
        void barsLineUpWithSlotOne() {
            var mica = new Armature(24, 48, 4, SlotAlignment.MICA);
            assertThat(Armature.of(24, 48, 4).barCentre(1)).isZero();
            assertThat(mica.barCentre(1)).isEqualTo(3.75);
            // The mica between the last bar and bar 1 lies at the slot's centre line.
            assertThat(mica.barCentre(48) - 360).isEqualTo(-3.75);
            assertThat(mica.wrapBar(0)).isEqualTo(48);
            assertThat(mica.wrapBar(49)).isEqualTo(1);
            assertThat(mica.wrapSlot(-1)).isEqualTo(23);
            assertThat(mica.slotCentre(13)).isEqualTo(180);
        }

        @Test
        void unknownCoilIsNamed() {
            var w = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, PROGRESSIVE));
            assertThat(w.hasCoil(12)).isTrue();
            assertThat(w.hasCoil(13)).isFalse();
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> w.coil(13))
                    .withMessage("there is no coil 13: coils run from 1 to 12");
        }
    }
}
