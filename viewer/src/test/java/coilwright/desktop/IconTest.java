package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Image;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.junit.jupiter.api.Test;

/**
 * The icon in its sizes is the one drawn in {@code icon.svg}. After a change to the drawing, {@link #main} writes the
 * pictures anew.
 */
class IconTest {
    private static final Path FOLDER = Path.of("src/main/resources/coilwright/desktop");

    /** Writes the pictures. Run in {@code viewer}. */
    public static void main(String[] args) throws Exception {
        for (int size : Icon.SIZES) {
            Files.write(FOLDER.resolve("icon-" + size + ".png"), drawn(size));
        }
    }

    @Test
    void theSizesAreThoseOfTheDrawing() throws Exception {
        assertThat(Icon.SIZES).isNotEmpty();
        List<Image> shipped = Icon.images();
        for (int i = 0; i < Icon.SIZES.size(); i++) {
            int size = Icon.SIZES.get(i);
            BufferedImage drawn = ImageIO.read(new ByteArrayInputStream(drawn(size)));
            assertThat(shipped.get(i).getWidth(null)).isEqualTo(size);
            assertThat(shipped.get(i).getHeight(null)).isEqualTo(size);
            var there = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
            there.createGraphics().drawImage(shipped.get(i), 0, 0, null);
            assertThat(meanDifference(there, drawn)).as("size " + size).isLessThan(1.0);
            // A picture of one colour would be like any other.
            assertThat(there.getRGB(size / 2, size / 2)).isNotEqualTo(there.getRGB(size / 2, size / 8));
        }
    }

    private static byte[] drawn(int size) throws IOException, TranscoderException {
        var transcoder = new PNGTranscoder();
        transcoder.addTranscodingHint(PNGTranscoder.KEY_WIDTH, (float) size);
        transcoder.addTranscodingHint(PNGTranscoder.KEY_HEIGHT, (float) size);
        var out = new ByteArrayOutputStream();
        try (InputStream in = Files.newInputStream(FOLDER.resolve("icon.svg"))) {
            transcoder.transcode(new TranscoderInput(in), new TranscoderOutput(out));
        }
        return out.toByteArray();
    }

    private static double meanDifference(BufferedImage a, BufferedImage b) {
        long sum = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                for (int shift = 0; shift < 32; shift += 8) {
                    sum += Math.abs((a.getRGB(x, y) >>> shift & 255) - (b.getRGB(x, y) >>> shift & 255));
                }
            }
        }
        return sum / 4.0 / a.getWidth() / a.getHeight();
    }
}
