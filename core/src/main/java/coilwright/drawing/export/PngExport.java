package coilwright.drawing.export;

import coilwright.drawing.Drawing;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.UserAgent;
import org.apache.batik.ext.awt.image.GraphicsUtil;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.w3c.dom.Document;

/** Drawings as PNG. */
public final class PngExport {
    /** Resolution where none is asked for and the page is not very large, dots per inch. */
    public static final double USUAL_DPI = 150;

    /** Most pixels of one picture. */
    public static final long MOST_PIXELS = 60_000_000;

    private PngExport() {}

    /**
     * {@return the usual resolution, or less for a page so large that the picture would have too many pixels}
     *
     * @param drawing the page
     */
    public static double usualDpi(Drawing drawing) {
        double most = Math.sqrt(MOST_PIXELS * 0.99 / (drawing.width() * drawing.height())) * 25.4;
        return Math.min(USUAL_DPI, most);
    }

    /**
     * {@return one page as PNG}
     *
     * @param drawing the page
     * @param dpi dots per inch, 10 to 1200
     * @throws IllegalArgumentException when the resolution is out of range or gives too many pixels
     * @throws IOException when the picture cannot be made
     */
    public static byte[] png(Drawing drawing, double dpi) throws IOException {
        if (!(dpi >= 1 && dpi <= 1200)) {
            throw new IllegalArgumentException("resolution is " + dpi + " dpi, but must be from 1 to 1200");
        }
        double w = Math.ceil(drawing.width() / 25.4 * dpi);
        double h = Math.ceil(drawing.height() / 25.4 * dpi);
        if (w * h > MOST_PIXELS) {
            throw new IllegalArgumentException("a picture of " + (long) w + " by " + (long) h
                    + " pixels is too large; at most " + (int) usualDpi(drawing)
                    + " dpi would do for this page, or print it on A4 pages");
        }
        var transcoder = new PaintedAtOnce((int) w, (int) h);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_WIDTH, (float) w);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_HEIGHT, (float) h);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
        var out = new ByteArrayOutputStream();
        try {
            transcoder.transcode(new TranscoderInput(SvgDocuments.of(drawing)), new TranscoderOutput(out));
        } catch (TranscoderException e) {
            throw new IOException("the picture cannot be made: " + e.getMessage(), e);
        }
        return out.toByteArray();
    }

    /**
     * Takes the shipped font for all text, and paints the whole page into one picture. The renderer's own way paints it
     * tile by tile, and so a shape as often as it meets tiles, which takes several times as long on a large page.
     */
    private static final class PaintedAtOnce extends SVGAbstractTranscoder {
        private final int columns;
        private final int rows;

        PaintedAtOnce(int columns, int rows) {
            this.columns = columns;
            this.rows = rows;
        }

        @Override
        protected UserAgent createUserAgent() {
            return new SVGAbstractTranscoderUserAgent() {
                @Override
                public FontFamilyResolver getFontFamilyResolver() {
                    return ShippedFont.INSTANCE;
                }
            };
        }

        @Override
        protected void transcode(Document document, String uri, TranscoderOutput output) throws TranscoderException {
            super.transcode(document, uri, output);
            var picture = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB);
            Graphics2D graphics = GraphicsUtil.createGraphics(picture);
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, columns, rows);
            graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            graphics.transform(curTxf);
            root.paint(graphics);
            graphics.dispose();
            new PNGTranscoder().writeImage(picture, output);
        }
    }
}
