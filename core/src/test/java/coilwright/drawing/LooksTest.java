package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class LooksTest {
    private static final Shape.Line LINE = new Shape.Line(new Point(0, 0), new Point(1, 1), List.of());

    private static Shape.Line line(Role... roles) {
        return new Shape.Line(new Point(0, 0), new Point(1, 1), List.of(roles));
    }

    @Test
    void shapesLookAsTheStyleSheetSays() {
        Looks looks = Looks.of(Palette.COLOUR);
        assertThat(looks.of(LINE, List.of()))
                .isEqualTo(new Look(OptionalInt.empty(), OptionalInt.of(0x1b2733), 0.25, List.of()));
        Look bottom = looks.of(line(Role.COIL_BOTTOM), List.of(List.of(Role.COIL)));
        assertThat(bottom).isEqualTo(new Look(OptionalInt.empty(), OptionalInt.of(0xb3480f), 0.42, List.of(1.5, 1.0)));
        assertThat(looks.of(line(Role.COIL_BOTTOM), List.of(List.of(Role.COIL, Role.FINE)))
                        .width())
                .isEqualTo(0.14);
        var dot = new Shape.Circle(new Point(0, 0), 1, List.of(Role.COIL_TOP));
        assertThat(looks.of(dot, List.of()).fill()).hasValue(0x15539e);
        assertThat(Looks.of(Palette.MONOCHROME).of(dot, List.of()).fill()).hasValue(0);
    }

    @Test
    void heavyLinesWinOverTheirOwn() {
        Look heavy = Looks.of(Palette.COLOUR).of(line(Role.COIL_TOP), List.of(List.of(Role.COIL, Role.HIGHLIGHT)));
        assertThat(heavy.stroke()).hasValue(0xb0106b);
        assertThat(heavy.width()).isEqualTo(1.1);
    }

    @Test
    void rulesAreWeighedAsInAnyStyleSheet() {
        Looks looks = Looks.parse("line{stroke:#000001}.coil>line,.bar line{stroke:#000002}"
                + ".coil .coil-top{stroke:#000003;stroke-width:2}.coil.dead .coil-top{stroke:#000004}"
                + ".slot{stroke-dasharray:1 2}line.note{stroke:none}");
        assertThat(looks.of(LINE, List.of()).stroke()).hasValue(1);
        assertThat(looks.of(LINE, List.of(List.of(Role.COIL))).stroke()).hasValue(2);
        assertThat(looks.of(LINE, List.of(List.of(Role.COIL), List.of(Role.SLOT)))
                        .stroke())
                .hasValue(1);
        assertThat(looks.of(LINE, List.of(List.of(Role.BAR), List.of(Role.SLOT)))
                        .stroke())
                .hasValue(2);
        assertThat(looks.of(LINE, List.of(List.of(Role.SLOT))).dashes()).containsExactly(1.0, 2.0);
        assertThat(looks.of(line(Role.COIL_TOP), List.of(List.of(Role.COIL))).stroke())
                .hasValue(3);
        assertThat(looks.of(line(Role.COIL_TOP), List.of(List.of(Role.COIL, Role.DEAD)))
                        .stroke())
                .hasValue(4);
        assertThat(looks.of(line(Role.COIL_TOP), List.of(List.of(Role.COIL, Role.DEAD)))
                        .width())
                .isEqualTo(2);
        assertThat(looks.of(line(Role.NOTE), List.of()).stroke()).isEmpty();
    }
}
