package coilwright.drawing.export;

import coilwright.drawing.Drawing;
import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.UserAgent;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.batik.transcoder.image.PNGTranscoder;

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
        var transcoder = new ShippedFontTranscoder();
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_WIDTH, (float) w);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_HEIGHT, (float) h);
        transcoder.addTranscodingHint(ImageTranscoder.KEY_BACKGROUND_COLOR, Color.WHITE);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
        var out = new ByteArrayOutputStream();
        try {
            transcoder.transcode(new TranscoderInput(SvgDocuments.of(drawing)), new TranscoderOutput(out));
        } catch (TranscoderException e) {
            throw new IOException("the picture cannot be made: " + e.getMessage(), e);
        }
        return out.toByteArray();
    }

    /** Takes the shipped font for all text. */
    private static final class ShippedFontTranscoder extends PNGTranscoder {
        @Override
        protected UserAgent createUserAgent() {
            return new SVGAbstractTranscoderUserAgent() {
                @Override
                public FontFamilyResolver getFontFamilyResolver() {
                    return ShippedFont.INSTANCE;
                }
            };
        }
    }
}
