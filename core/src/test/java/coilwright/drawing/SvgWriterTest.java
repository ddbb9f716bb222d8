package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamWriter;
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

    private static Drawing everyShape() {
        var middle = new Point(10, 10);
        var text = new Shape.Text(middle, "a < b", 3, true, Shape.Anchor.MIDDLE, List.of(Role.LABEL));
        return new Drawing(
                "A & B",
                "What it shows.",
                20,
                30,
                Palette.COLOUR,
                List.of(
                        new Shape.Rect(1, 2, 3, 4, 0, List.of(Role.PAPER)),
                        new Shape.Rect(1, 2, 3, 4, 0.5, List.of()),
                        new Shape.Circle(middle, 5, List.of(Role.SHAFT)),
                        new Shape.Polyline(List.of(middle, new Point(1, 2)), false, List.of(Role.WIRE)),
                        new Shape.Curve(
                                middle,
                                List.of(
                                        new Shape.Cubic(new Point(1, 2), new Point(3, 4), new Point(5, 6)),
                                        new Shape.Cubic(new Point(5, 7), new Point(7, 8), new Point(9, 9))),
                                List.of(Role.WIRE)),
                        new Shape.Arc(middle, 5, 0, 180, List.of()),
                        new Shape.Arc(middle, 5, 0, -90, List.of()),
                        new Shape.Group(
                                Optional.of("bar-7"),
                                Optional.of(Element.bar(7)),
                                "Bar 7",
                                List.of(Role.BAR),
                                List.of(text)),
                        new Shape.Group(
                                Optional.empty(),
                                Optional.empty(),
                                "",
                                List.of(),
                                List.of(new Shape.Text(middle, "c", 2, false, Shape.Anchor.END, List.of()))),
                        new Shape.Text(middle, "d", 2, false, Shape.Anchor.START, List.of())));
    }

    private static final String SHAPES = """
            <rect class="paper" x="1" y="2" width="3" height="4"/>
            <rect x="1" y="2" width="3" height="4" rx="0.5"/>
            <circle class="shaft" cx="10" cy="10" r="5"/>
            <polyline class="wire" points="10,10 1,2"/>
            <path class="wire" d="M10,10C1,2 3,4 5,6C5,7 7,8 9,9"/>
            <path d="M10,5A5 5 0 0 1 10,15"/>
            <path d="M10,5A5 5 0 0 0 5,10"/>
            <g id="%1$sbar-7" class="bar" data-bar="7">
            <title>Bar 7</title>
            <text class="label" x="10" y="10" font-size="3" font-weight="bold" text-anchor="middle">a &lt; b</text>
            </g>
            <g>
            <text x="10" y="10" font-size="2" text-anchor="end">c</text>
            </g>
            <text x="10" y="10" font-size="2">d</text>
            </svg>
            """;

    @Test
    void aDocumentIsWrittenLineByLine() {
        assertThat(SvgWriter.write(everyShape()))
                .isEqualTo("""
                        <?xml version="1.0" encoding="UTF-8"?>
                        <svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="30mm" viewBox="0 0 20 30" role="img"\
                         aria-labelledby="title desc">
                        <title id="title">A &amp; B</title>
                        <desc id="desc">What it shows.</desc>
                        <style type="text/css">
                        """
                        + SvgWriter.style(Palette.COLOUR).replace("&", "&amp;").replace(">", "&gt;") + "</style>\n"
                        + SHAPES.formatted(""));
    }

    @Test
    void aPartIsShownInlineWithItsIdsApart() throws Exception {
        var text = new StringWriter();
        XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(text);
        SvgWriter.writeInline(everyShape(), new Box(2, 3, 12, 9), "p-", xml);
        xml.flush();
        assertThat(text).hasToString("""
                        <svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="6mm" viewBox="2 3 10 6" role="img"\
                         aria-labelledby="p-title p-desc">
                        <title id="p-title">A &amp; B</title>
                        <desc id="p-desc">What it shows.</desc>
                        """ + SHAPES.formatted("p-"));
    }

    @Test
    void charactersThatNoTextMayHoldAreReplaced() {
        for (int c = 0; c <= 0x2100; c++) {
            boolean control = c < 0x20 || (c >= 0x7f && c <= 0x9f);
            boolean turns = (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
            String want = c == '\t' || c == '\n' ? " " : control || turns ? "\ufffd" : Character.toString(c);
            assertThat(SvgWriter.legal("a" + Character.toString(c) + "b"))
                    .as("%04x", c)
                    .isEqualTo("a" + want + "b");
        }
        assertThat(SvgWriter.legal("\ud83e\uddf2")).as("a magnet").isEqualTo("\ud83e\uddf2");
        assertThat(SvgWriter.legal("\ud83e")).as("half a magnet").isEqualTo("\ufffd");
        assertThat(SvgWriter.legal("\udfff\ud7ff\ue000\ufffd")).isEqualTo("\ufffd\ud7ff\ue000\ufffd");
        assertThat(SvgWriter.legal("\ufffe\uffff")).isEqualTo("\ufffd\ufffd");
        assertThat(SvgWriter.legal(Character.toString(0x1fffe))).isEqualTo("\ufffd");
        assertThat(SvgWriter.legal(Character.toString(0x1fffd))).isEqualTo(Character.toString(0x1fffd));
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
