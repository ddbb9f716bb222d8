package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.Bond;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What each kind of fault is called, where it sits and what it does to an armature. */
final class FaultTest {
    /** Coil n from bar n to bar n + 1. */
    private static final BenchArmature SOUND =
            BenchArmature.sound(Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE)), 0.5);

    static List<Arguments> kinds() {
        return List.of(
                Arguments.of(new Fault.OpenCoil(3), "open-coil", List.of(3), List.of(), "coil 3 open"),
                Arguments.of(new Fault.ShortedCoil(3), "shorted-coil", List.of(3), List.of(), "coil 3 shorted"),
                Arguments.of(
                        new Fault.ShortedTurns(3, 0.25),
                        "shorted-turns",
                        List.of(3),
                        List.of(),
                        "coil 3 with 25 % of its turns shorted"),
                Arguments.of(
                        new Fault.HighResistance(3, 0.04567),
                        "high-resistance",
                        List.of(3),
                        List.of(),
                        "bad joint at coil 3, about 0.0457 ohm"),
                Arguments.of(new Fault.BarShort(4, 5), "bar-short", List.of(), List.of(4, 5), "bars 4 and 5 joined"),
                Arguments.of(
                        new Fault.SlotShort(3, 0.2, 7, 0.6),
                        "slot-short",
                        List.of(3, 7),
                        List.of(),
                        "coils 3 and 7 touching in the slot they share"),
                Arguments.of(new Fault.Ground(Point.bar(9)), "ground", List.of(), List.of(9), "bar 9 grounded"),
                Arguments.of(
                        new Fault.Ground(new Point.Inside(9, 0.4)),
                        "ground",
                        List.of(9),
                        List.of(),
                        "coil 9 grounded at 40 % of its length"),
                Arguments.of(new Fault.ReversedCoil(7), "reversed-coil", List.of(7), List.of(), "coil 7 reversed"),
                Arguments.of(
                        new Fault.CrossedLeads(4, 5, Fault.Leads.BOTH),
                        "crossed-leads",
                        List.of(),
                        List.of(4, 5),
                        "all leads of bars 4 and 5 crossed"),
                Arguments.of(
                        new Fault.CrossedLeads(4, 5, Fault.Leads.TOP),
                        "crossed-leads",
                        List.of(),
                        List.of(4, 5),
                        "top leads of bars 4 and 5 crossed"),
                Arguments.of(
                        new Fault.CrossedLeads(4, 5, Fault.Leads.BOTTOM),
                        "crossed-leads",
                        List.of(),
                        List.of(4, 5),
                        "bottom leads of bars 4 and 5 crossed"),
                Arguments.of(
                        new Fault.WrongBar(7, true, 9),
                        "wrong-bar",
                        List.of(7),
                        List.of(9),
                        "top lead of coil 7 on bar 9"),
                Arguments.of(
                        new Fault.WrongBar(7, false, 9),
                        "wrong-bar",
                        List.of(7),
                        List.of(9),
                        "bottom lead of coil 7 on bar 9"),
                Arguments.of(
                        new Fault.WrongTurns(7, 1.5),
                        "wrong-turns",
                        List.of(7),
                        List.of(),
                        "coil 7 with 150 % of the right turns"));
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void saysWhatItIsAndWhere(Fault fault, String kind, List<Integer> coils, List<Integer> bars, String words) {
        assertThat(fault.kind()).isEqualTo(kind);
        assertThat(fault.coils()).isEqualTo(coils);
        assertThat(fault.bars()).isEqualTo(bars);
        assertThat(fault.words()).isEqualTo(words);
    }

    @Test
    void everyKindIsToldHereAndMadeInTheWorkshop() {
        Winding w = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        var shop = new Workshop(1);
        assertThat(kindsOf(kinds().stream().map(a -> (Fault) a.get()[0]))).isEqualTo(FaultKinds.all());
        assertThat(kindsOf(IntStream.range(0, Workshop.KINDS)
                        .mapToObj(kind -> shop.fault(w, kind).orElseThrow())))
                .isEqualTo(FaultKinds.all());
        assertThat(kindsOf(shop.everywhere(BenchArmature.sound(w, 1)).stream())).isEqualTo(FaultKinds.all());
    }

    private static Set<Class<?>> kindsOf(Stream<Fault> faults) {
        return faults.map(Fault::getClass).collect(Collectors.toSet());
    }

    private static List<Integer> changed(BenchArmature armature) {
        return SOUND.coils().stream()
                .filter(c -> !armature.coil(c.coil()).equals(c))
                .map(CoilState::coil)
                .toList();
    }

    private static CoilState only(BenchArmature armature, int coil) {
        assertThat(armature.bonds()).isEmpty();
        assertThat(changed(armature)).containsExactly(coil);
        return armature.coil(coil);
    }

    private static CoilState on(int coil, int top, int bottom) {
        return SOUND.coil(coil).onBars(OptionalInt.of(top), OptionalInt.of(bottom));
    }

    @Test
    void faultsOfOneCoilChangeThatCoilAlone() {
        assertThat(only(new Fault.OpenCoil(3).in(SOUND), 3).open()).isTrue();
        assertThat(only(new Fault.ReversedCoil(3).in(SOUND), 3)).isEqualTo(on(3, 4, 3));
        assertThat(only(new Fault.WrongBar(3, true, 9).in(SOUND), 3)).isEqualTo(on(3, 9, 4));
        assertThat(only(new Fault.WrongBar(3, false, 9).in(SOUND), 3)).isEqualTo(on(3, 3, 9));
        // Half as many turns again have half as much resistance again.
        CoilState more = only(new Fault.WrongTurns(3, 1.5).in(SOUND), 3);
        assertThat(more.turns()).isEqualTo(1.5);
        assertThat(more.ohms()).isCloseTo(0.75, within(1e-12));
    }

    @Test
    void badJointsOfOneCoilAddUp() {
        BenchArmature once = new Fault.HighResistance(3, 0.2).in(SOUND);
        assertThat(only(once, 3).jointOhms()).isEqualTo(0.2);
        assertThat(only(new Fault.HighResistance(3, 0.05).in(once), 3).jointOhms())
                .isCloseTo(0.25, within(1e-12));
    }

    private static void joins(BenchArmature armature, Point a, Point b) {
        assertThat(changed(armature)).isEmpty();
        assertThat(armature.bonds()).containsExactly(Bond.direct(a, b));
    }

    @Test
    void shortsAndGroundsJoinTwoPlaces() {
        joins(new Fault.ShortedCoil(3).in(SOUND), Point.bar(3), Point.bar(4));
        joins(new Fault.BarShort(4, 5).in(SOUND), Point.bar(4), Point.bar(5));
        // Two fifths of the turns about the middle of the wire: from 30 % to 70 % of it.
        joins(new Fault.ShortedTurns(3, 0.4).in(SOUND), new Point.Inside(3, 0.3), new Point.Inside(3, 0.7));
        joins(new Fault.SlotShort(3, 0.2, 7, 0.6).in(SOUND), new Point.Inside(3, 0.2), new Point.Inside(7, 0.6));
        joins(new Fault.Ground(Point.bar(9)).in(SOUND), Point.bar(9), Point.shaft());
        joins(new Fault.Ground(new Point.Inside(9, 0.4)).in(SOUND), new Point.Inside(9, 0.4), Point.shaft());
    }

    @Test
    void aCoilOnOneBarIsNoFurtherShorted() {
        Winding w = Winding.build(
                Armature.of(2, 2, 2),
                new WindingSpec.Listed(List.of(ListedCoil.of(1, 1, 2, 1, 1), ListedCoil.of(2, 2, 1, 2, 1))));
        BenchArmature armature = BenchArmature.sound(w, 1);
        assertThat(new Fault.ShortedCoil(1).in(armature)).isSameAs(armature);
    }

    /** Bar 4 holds the top lead of coil 4 and the bottom lead of coil 3; bar 5 those of coils 5 and 4. */
    @Test
    void crossedLeadsChangePlaces() {
        BenchArmature top = new Fault.CrossedLeads(4, 5, Fault.Leads.TOP).in(SOUND);
        assertThat(changed(top)).containsExactly(4, 5);
        assertThat(top.coil(4)).isEqualTo(on(4, 5, 5));
        assertThat(top.coil(5)).isEqualTo(on(5, 4, 6));
        BenchArmature bottom = new Fault.CrossedLeads(4, 5, Fault.Leads.BOTTOM).in(SOUND);
        assertThat(changed(bottom)).containsExactly(3, 4);
        assertThat(bottom.coil(3)).isEqualTo(on(3, 3, 5));
        assertThat(bottom.coil(4)).isEqualTo(on(4, 4, 4));
        BenchArmature both = new Fault.CrossedLeads(4, 5, Fault.Leads.BOTH).in(SOUND);
        assertThat(changed(both)).containsExactly(3, 4, 5);
        assertThat(both.coil(3)).isEqualTo(on(3, 3, 5));
        assertThat(both.coil(4)).isEqualTo(on(4, 5, 4));
        assertThat(both.coil(5)).isEqualTo(on(5, 4, 6));
        assertThat(both.bonds()).isEmpty();
    }

    @Test
    void aShareOfTurnsLiesBetweenNoneAndAll() {
        for (double share : new double[] {0, 1, -0.1, Double.NaN}) {
            assertThatThrownBy(() -> new Fault.ShortedTurns(3, share))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("the share of shorted turns is " + share + ", but must be over 0 and under 1");
        }
    }
}
