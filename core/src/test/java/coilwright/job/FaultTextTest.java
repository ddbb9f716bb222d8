package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchArmature;
import coilwright.bench.Point;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class FaultTextTest {
    private static final Winding WINDING = Winding.build(
            Armature.of(12, 23, 4), WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(24)));

    static List<Arguments> forms() {
        return List.of(
                Arguments.of("open-coil:3", new Fault.OpenCoil(3)),
                Arguments.of("shorted-coil: 3", new Fault.ShortedCoil(3)),
                Arguments.of("shorted-turns:3,25%", new Fault.ShortedTurns(3, 0.25)),
                Arguments.of("high-resistance:3,50 mohm", new Fault.HighResistance(3, 0.05)),
                Arguments.of("bar-short:4,5", new Fault.BarShort(4, 5)),
                Arguments.of("crossed-leads:4,5", new Fault.CrossedLeads(4, 5, Fault.Leads.BOTH)),
                Arguments.of("crossed-leads:4,5,top", new Fault.CrossedLeads(4, 5, Fault.Leads.TOP)),
                Arguments.of("reversed-coil:7", new Fault.ReversedCoil(7)),
                Arguments.of("wrong-turns:7,150%", new Fault.WrongTurns(7, 1.5)),
                Arguments.of("wrong-bar:7,bottom,9", new Fault.WrongBar(7, false, 9)),
                Arguments.of("ground:9", new Fault.Ground(Point.bar(9))),
                Arguments.of("ground:9,50%", new Fault.Ground(new Point.Inside(9, 0.5))));
    }

    @ParameterizedTest
    @MethodSource("forms")
    void reads(String text, Fault fault) {
        assertThat(FaultText.parse(text, WINDING)).isEqualTo(fault);
        assertThat(FaultText.forms()).anyMatch(f -> f.startsWith(fault.kind() + ":"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            open-col:3 | "open-col" is no kind of fault: did you mean "open-coil"?
            open-coil | fault "open-coil" is not of the form open-coil:COIL
            open-coil:x | fault "open-coil:x" has "x" where a whole number should stand: the form is open-coil:COIL
            open-coil:25 | fault "open-coil:25" names coil 25, but coils run from 1 to 24
            open-coil:24 | fault "open-coil:24" names coil 24, which has not both leads on bars
            bar-short:4 | fault "bar-short:4" is not of the form bar-short:BAR,BAR
            bar-short:4,4 | fault "bar-short:4,4" names bar 4 twice: name two bars
            bar-short:4,24 | fault "bar-short:4,24" names bar 24, but bars run from 1 to 23
            shorted-turns:3,0.5 | fault "shorted-turns:3,0.5" has "0.5" where a share such as 50% should stand
            shorted-turns:3,100% | fault "shorted-turns:3,100%" has 100%, but it must be over 0% and under 100%
            high-resistance:3,5 | fault "high-resistance:3,5": is 5 without a unit: write "5 ohm" if that is what it is
            wrong-bar:3,both,4 | fault "wrong-bar:3,both,4" has "both" where one of top, bottom should stand
            """)
    void refuses(String text, String message) {
        assertThatThrownBy(() -> FaultText.parse(text, WINDING))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    @Test
    void faultsAddUp() {
        BenchArmature out =
                FaultText.in(BenchArmature.sound(WINDING, 1), List.of("open-coil:3", "bar-short:4,5", "ground:1"));
        assertThat(out.coil(3).open()).isTrue();
        assertThat(out.bonds()).hasSize(2);
    }
}
