package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.svg.SVGDocument;

class SvgWriterTest {
    @Test
    void hostileTitleStaysText() throws Exception {
        String hostile = "</title><script>alert('x')</script> & \"quoted\" ]]> \u0001 \ud800 \t end";
        Drawing page = DrawingView.DEVELOPED
                .draw(SampleWindings.wave(), ViewOptions.of(hostile))
                .first();
        String svg = SvgWriter.write(page);
        SVGDocument parsed = new SAXSVGDocumentFactory(null).createSVGDocument("file:/test.svg", new StringReader(svg));
        assertThat(parsed.getElementsByTagName("script").getLength()).isZero();
        assertThat(parsed.getElementById("title").getTextContent())
                .isEqualTo("</title><script>alert('x')</script> & \"quoted\" ]]> \ufffd \ufffd   end");
    }

    @Test
    void styleSheetKeepsToWhatEveryReaderTakes() {
        for (Palette palette : Palette.values()) {
            assertThat(StyleSheet.of(palette))
                    .doesNotContain("--", "var(", ":not", "rgb", "hsl", "%")
                    .doesNotContainPattern("#[0-9a-f]{7,}");
        }
        // Colour never stands alone: in black and white only greys are left.
        assertThat(StyleSheet.of(Palette.MONOCHROME).lines().flatMap(l -> hex(l)))
                .allMatch(c -> c.substring(1, 3).equals(c.substring(3, 5))
                        && c.substring(3, 5).equals(c.substring(5, 7)));
    }

    private static java.util.stream.Stream<String> hex(String line) {
        return java.util.regex.Pattern.compile("#[0-9a-f]{6}")
                .matcher(line)
                .results()
                .map(r -> r.group());
    }

    @Test
    void shapesAreWrittenInTheirOwnTerms() {
        Point middle = new Point(10, 10);
        var page = new Drawing(
                "t",
                "d",
                20,
                20,
                Palette.COLOUR,
                List.of(
                        new Shape.Line(new Point(0, 1.006), new Point(2.5, 1.0 / 3), List.of(Role.WIRE, Role.DENSE)),
                        new Shape.Arc(middle, 5, 0, 90, List.of()),
                        new Shape.Sector(middle, 2, 4, 0, 270, List.of(Role.NORTH)),
                        new Shape.Polyline(List.of(middle, new Point(1, 2), new Point(3, 4)), true, List.of())));
        assertThat(SvgWriter.write(page))
                .contains("viewBox=\"0 0 20 20\"")
                .contains("<line class=\"wire dense\" x1=\"0\" y1=\"1.01\" x2=\"2.5\" y2=\"0.33\"")
                .contains("d=\"M10,5A5 5 0 0 1 15,10\"")
                .contains("d=\"M10,6A4 4 0 1 1 6,10L8,10A2 2 0 1 0 10,8Z\"")
                .contains("<polygon points=\"10,10 1,2 3,4\"");
    }

    @Test
    void numbersHaveOneForm() {
        assertThat(Decimal.of(0)).isEqualTo("0");
        assertThat(Decimal.of(-0.004)).isEqualTo("0");
        assertThat(Decimal.of(-0.5)).isEqualTo("-0.5");
        assertThat(Decimal.of(12.3456)).isEqualTo("12.35");
        assertThat(Decimal.of(12345.10)).isEqualTo("12345.1");
        assertThat(Decimal.of(7.05)).isEqualTo("7.05");
    }
}
