package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SceneTest {
    private static final Winding WINDING = Winding.build(
            Armature.of(12, 23, 4),
            WindingSpec.wave(1, Direction.RETROGRESSIVE)
                    .withSpan(CoilSpan.ofThrow(3))
                    .withDeadCoils(List.of(24)));

    private static Drawing drawing(DrawingView view) {
        return view.draw(WINDING, ViewOptions.of("A machine")).first();
    }

    private static BufferedImage painted(Scene scene, double scale, Over over) {
        return painted(scene, scale, new AffineTransform(), over);
    }

    private static BufferedImage painted(Scene scene, double scale, AffineTransform placed, Over over) {
        Drawing d = scene.drawing();
        var image = new BufferedImage(
                (int) Math.ceil(d.width() * scale), (int) Math.ceil(d.height() * scale), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.transform(placed);
        g.scale(scale, scale);
        assertThat(scene.paint(g, scale, () -> false)).isTrue();
        over.paint(g);
        g.dispose();
        return image;
    }

    private interface Over {
        void paint(Graphics2D g);
    }

    private static long coloured(BufferedImage image, int rgb) {
        long n = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                n += (image.getRGB(x, y) & 0xffffff) == rgb ? 1 : 0;
            }
        }
        return n;
    }

    /** Painted by this painter and by way of SVG, a drawing looks the same but for the edges of lines. */
    @ParameterizedTest
    @EnumSource(DrawingView.class)
    void looksAsThePicturesFilesHold(DrawingView view) throws Exception {
        Drawing drawing = drawing(view);
        byte[] png = DrawingFiles.contents(DrawingPages.of(drawing), Path.of("x.png"), OptionalDouble.of(100))
                .values()
                .iterator()
                .next();
        BufferedImage file = ImageIO.read(new ByteArrayInputStream(png));
        // A file has whole pixels: the page fills them in one direction and stands in their middle in the other.
        double scale = Math.min(file.getWidth() / drawing.width(), file.getHeight() / drawing.height());
        BufferedImage own = painted(
                new Scene(drawing, Tones.LIGHT),
                scale,
                AffineTransform.getTranslateInstance(
                        (file.getWidth() - drawing.width() * scale) / 2,
                        (file.getHeight() - drawing.height() * scale) / 2),
                g -> {});
        int tiles = 0;
        int far = 0;
        for (int y = 0; y + TILE <= Math.min(own.getHeight(), file.getHeight()); y += TILE) {
            for (int x = 0; x + TILE <= Math.min(own.getWidth(), file.getWidth()); x += TILE) {
                double[] a = mean(own, x, y);
                double[] b = mean(file, x, y);
                double apart = Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) + Math.abs(a[2] - b[2]);
                tiles += b[0] < 250 ? 1 : 0;
                far += apart > 60 ? 1 : 0;
            }
        }
        assertThat(tiles).isGreaterThan(200);
        assertThat((double) far / tiles).isLessThan(0.02);
    }

    private static final int TILE = 6;

    private static double[] mean(BufferedImage image, int left, int top) {
        double[] sum = new double[3];
        for (int y = top; y < top + TILE; y++) {
            for (int x = left; x < left + TILE; x++) {
                Color c = new Color(image.getRGB(x, y));
                sum[0] += c.getRed();
                sum[1] += c.getGreen();
                sum[2] += c.getBlue();
            }
        }
        return new double[] {sum[0] / TILE / TILE, sum[1] / TILE / TILE, sum[2] / TILE / TILE};
    }

    @Test
    void findsWhatLiesUnderAPlace() {
        Scene scene = new Scene(drawing(DrawingView.DEVELOPED), Tones.LIGHT);
        for (int bar = 1; bar <= 23; bar++) {
            Rectangle2D b = scene.boundsOf(Element.bar(bar)).orElseThrow();
            assertThat(scene.nearest(b.getCenterX(), b.getCenterY(), 1)).contains(Element.bar(bar));
        }
        Box page = scene.drawing().page();
        assertThat(scene.nearest(page.right() - 0.1, page.bottom() - 0.1, 1)).isEmpty();
        assertThat(scene.boundsOf(Element.bar(99))).isEmpty();
    }

    @Test
    void heavyLinesShowInTheirColourAndOnlyWhereAsked() {
        Scene scene = new Scene(drawing(DrawingView.DEVELOPED), Tones.LIGHT);
        int mark = 0xb0106b;
        assertThat(coloured(painted(scene, 4, g -> {}), mark)).isZero();
        long one = coloured(painted(scene, 4, g -> scene.paintHeavy(g, 4, Set.of(Element.coil(3)))), mark);
        long two = coloured(
                painted(scene, 4, g -> scene.paintHeavy(g, 4, Set.of(Element.coil(3), Element.coil(9)))), mark);
        assertThat(one).isGreaterThan(500);
        assertThat(two).isGreaterThan(one * 3 / 2);
    }

    @Test
    void darkTonesExchangeLightAndDarkAndKeepTheHue() {
        assertThat(Tones.LIGHT.of(0x15539e)).isEqualTo(new Color(0x15539e));
        assertThat(Tones.DARK.of(0xffffff)).isEqualTo(new Color(30, 30, 30));
        assertThat(Tones.DARK.of(0x000000)).isEqualTo(Color.WHITE);
        Color blue = Tones.DARK.of(0x15539e);
        assertThat(blue.getBlue()).isGreaterThan(blue.getGreen()).isGreaterThan(200);
        assertThat(blue.getGreen()).isGreaterThan(blue.getRed());
    }

    @Test
    void leavesOffWhenTold() {
        Scene scene = new Scene(drawing(DrawingView.ROUND), Tones.LIGHT);
        var image = new BufferedImage(10, 10, BufferedImage.TYPE_INT_RGB);
        assertThat(scene.paint(image.createGraphics(), 1, () -> true)).isFalse();
    }
}
