package coilwright.drawing.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.PageFormat;
import coilwright.drawing.Palette;
import coilwright.drawing.SampleWindings;
import coilwright.drawing.Shape;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Winding;
import java.awt.font.FontRenderContext;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ExportTest {
    private static Winding sample(String name) {
        return SampleWindings.all().get(name);
    }

    @ParameterizedTest
    @EnumSource(DrawingView.class)
    void pictureShowsSomethingAndIsTheSameTwice(DrawingView view) throws IOException {
        for (String name : List.of("smallest", "frog-leg", "broken")) {
            Drawing page = view.draw(sample(name), ViewOptions.of(name)).first();
            byte[] png = PngExport.png(page, 60);
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
            assertThat(image.getWidth()).isEqualTo((int) Math.ceil(page.width() / 25.4 * 60));
            assertThat(image.getHeight()).isEqualTo((int) Math.ceil(page.height() / 25.4 * 60));
            long ink = 0;
            for (int x = 0; x < image.getWidth(); x++) {
                for (int y = 0; y < image.getHeight(); y++) {
                    ink += (image.getRGB(x, y) & 0xffffff) == 0xffffff ? 0 : 1;
                }
            }
            double share = (double) ink / image.getWidth() / image.getHeight();
            assertThat(share).as("share of ink in %s of %s", view, name).isBetween(0.005, 0.9);
            if (name.equals("smallest")) {
                assertThat(PngExport.png(page, 60)).isEqualTo(png);
            }
        }
    }

    @Test
    void monochromePictureHoldsOnlyGreys() throws IOException {
        Drawing page = DrawingView.DEVELOPED
                .draw(sample("wave"), ViewOptions.of("").withPalette(Palette.MONOCHROME))
                .first();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(PngExport.png(page, 60)));
        int most = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                int c = image.getRGB(x, y);
                int red = c >> 16 & 255;
                int green = c >> 8 & 255;
                int blue = c & 255;
                most = Math.max(most, Math.max(red, Math.max(green, blue)) - Math.min(red, Math.min(green, blue)));
            }
        }
        assertThat(most).isLessThan(3);
    }

    @Test
    void resolutionOutOfReachIsRefused() {
        Drawing wide = DrawingView.DEVELOPED
                .draw(SampleWindings.bars400(), ViewOptions.of(""))
                .first();
        assertThatThrownBy(() -> PngExport.png(wide, 0)).hasMessageContaining("from 1 to 1200");
        assertThatThrownBy(() -> PngExport.png(wide, 1200))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("too large");
        assertThat(PngExport.usualDpi(wide)).isLessThanOrEqualTo(150);
    }

    @Test
    void pdfHasAllPagesWithFontsEmbedded() throws IOException {
        DrawingPages pages = DrawingView.DEVELOPED.draw(
                SampleWindings.bars400(), ViewOptions.of("").withFormat(PageFormat.A4));
        String pdf = new String(PdfExport.pdf(pages), StandardCharsets.ISO_8859_1);
        assertThat(pdf).startsWith("%PDF-").contains("+DejaVuSans", "+DejaVuSans-Bold", "/FontFile2");
        assertThat(pdf).doesNotContain("CreationDate", "Helvetica");
        Matcher count = Pattern.compile("/Type /Pages\\s+/Count (\\d+)").matcher(pdf);
        assertThat(count.find()).isTrue();
        assertThat(Integer.parseInt(count.group(1)))
                .isEqualTo(pages.pages().size())
                .isGreaterThan(5);
    }

    @Test
    void pdfTableOfObjectsPointsAtObjects() throws IOException {
        String pdf = new String(
                PdfExport.pdf(DrawingView.PATHS.draw(sample("wave"), ViewOptions.of("ring"))),
                StandardCharsets.ISO_8859_1);
        Matcher start = Pattern.compile("startxref\\n(\\d+)\\n").matcher(pdf);
        assertThat(start.find()).isTrue();
        int table = Integer.parseInt(start.group(1));
        assertThat(pdf.substring(table)).startsWith("xref\n0 ");
        String[] lines = pdf.substring(table).split("\r?\n");
        int objects = Integer.parseInt(lines[1].split(" ")[1]);
        assertThat(objects).isGreaterThan(5);
        for (int i = 1; i < objects; i++) {
            int at = Integer.parseInt(lines[2 + i].substring(0, 10));
            assertThat(pdf.substring(at)).startsWith(i + " 0 obj");
        }
    }

    @Test
    void pdfIsTheSameTwiceInAnyTimeZone() throws IOException {
        DrawingPages pages = DrawingView.COIL.draw(sample("mica"), ViewOptions.of("Ä <&> ½"));
        byte[] first = PdfExport.pdf(pages);
        TimeZone own = TimeZone.getDefault();
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("GMT+05:30"));
            assertThat(PdfExport.pdf(pages)).isEqualTo(first);
        } finally {
            TimeZone.setDefault(own);
        }
    }

    @Test
    void filesAreWrittenByTheirEnding(@TempDir Path folder) throws IOException {
        DrawingPages one = DrawingView.ROUND.draw(sample("wave"), ViewOptions.of(""));
        assertThat(DrawingFiles.write(one, folder.resolve("a.svg"), OptionalDouble.empty()))
                .containsExactly(folder.resolve("a.svg"));
        assertThat(Files.readString(folder.resolve("a.svg"))).isEqualTo(SvgWriter.write(one.first()));
        DrawingPages many = DrawingView.DEVELOPED.draw(
                sample("six-pole lap"), ViewOptions.of("").withFormat(PageFormat.A4));
        assertThat(many.pages()).hasSizeGreaterThan(1);
        List<Path> files = DrawingFiles.write(many, folder.resolve("b.PNG"), OptionalDouble.of(20));
        assertThat(files).hasSameSizeAs(many.pages()).contains(folder.resolve("b-2.PNG"));
        assertThat(Arrays.copyOf(Files.readAllBytes(files.get(1)), 4)).containsExactly(0x89, 'P', 'N', 'G');
        assertThat(DrawingFiles.write(many, folder.resolve("c.pdf"), OptionalDouble.empty()))
                .containsExactly(folder.resolve("c.pdf"));
        assertThatThrownBy(() -> DrawingFiles.write(one, folder.resolve("d.gif"), OptionalDouble.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("\"d.gif\" does not end in a format a drawing can have: name it .svg, .png or .pdf");
    }

    /** The width table against the font files it was taken from. */
    @Test
    void widthTableIsThatOfTheFont() throws Exception {
        var context = new FontRenderContext(null, true, true);
        for (boolean bold : new boolean[] {false, true}) {
            try (InputStream in = ShippedFont.open(bold ? "DejaVuSans-Bold.ttf" : "DejaVuSans.ttf")) {
                java.awt.Font font = java.awt.Font.createFont(java.awt.Font.TRUETYPE_FONT, in)
                        .deriveFont(100f);
                for (int c = 0x20; c < 0x2600; c++) {
                    String s = Character.toString(c);
                    double table = new Shape.Text(
                                    new coilwright.drawing.Point(0, 0), s, 100, bold, Shape.Anchor.START, List.of())
                            .width();
                    boolean listed = (c < 0x7f || (c >= 0xa0 && c < 0x180) || c == 0x2212 || c == 0x2192 || c == 0x2013)
                            && c != 0xad;
                    if (listed) {
                        double real = font.createGlyphVector(context, s)
                                .getGlyphMetrics(0)
                                .getAdvanceX();
                        assertThat(table)
                                .as("width of %s", s)
                                .isCloseTo(real, org.assertj.core.api.Assertions.within(0.1));
                    }
                }
            }
        }
    }
}
