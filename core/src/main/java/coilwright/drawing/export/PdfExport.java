package coilwright.drawing.export;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.SvgWriter;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.fop.apps.io.InternalResourceResolver;
import org.apache.fop.apps.io.ResourceResolverFactory;
import org.apache.fop.fonts.EmbeddingMode;
import org.apache.fop.fonts.EncodingMode;
import org.apache.fop.fonts.FontInfo;
import org.apache.fop.fonts.FontLoader;
import org.apache.fop.fonts.FontUris;
import org.apache.fop.svg.PDFBridgeContext;
import org.apache.fop.svg.PDFDocumentGraphics2D;
import org.apache.fop.svg.font.FOPFontFamilyResolverImpl;
import org.apache.xmlgraphics.image.loader.ImageManager;
import org.apache.xmlgraphics.image.loader.impl.DefaultImageContext;
import org.apache.xmlgraphics.image.loader.impl.DefaultImageSessionContext;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;
import org.apache.xmlgraphics.java2d.GraphicContext;

/** Drawings as PDF, a page each, with the font embedded. */
public final class PdfExport {
    private static final double POINT = 25.4 / 72;

    private PdfExport() {}

    /**
     * {@return all pages in one file} The same pages give the same bytes: no date of creation is kept.
     *
     * @param pages one or more pages
     * @throws IOException when the file cannot be made
     */
    public static byte[] pdf(DrawingPages pages) throws IOException {
        var bytes = new ByteArrayOutputStream();
        var graphics = new PDFDocumentGraphics2D(false);
        FontInfo fonts = fonts();
        graphics.setFontInfo(fonts);
        graphics.setGraphicContext(new GraphicContext());
        boolean first = true;
        for (Drawing page : pages.pages()) {
            int width = points(page.width());
            int height = points(page.height());
            if (first) {
                graphics.setupDocument(bytes, width, height);
                graphics.getPDFDocument().getInfo().setTitle(SvgWriter.legal(page.title()));
                graphics.getPDFDocument().getInfo().setProducer("Coilwright");
                graphics.getPDFDocument().getInfo().setCreator("Coilwright");
            } else {
                graphics.nextPage(width, height);
            }
            first = false;
            GraphicsNode root = nodes(page, fonts);
            graphics.setSVGDimension(width, height);
            root.paint(graphics);
        }
        graphics.finish();
        return SteadyPdf.withoutDate(bytes.toByteArray());
    }

    private static int points(double mm) {
        return (int) Math.round(mm / POINT);
    }

    private static GraphicsNode nodes(Drawing page, FontInfo fonts) throws IOException {
        var agent = new UserAgentAdapter() {
            @Override
            public float getPixelUnitToMillimeter() {
                return (float) POINT;
            }

            @Override
            public FontFamilyResolver getFontFamilyResolver() {
                return new FOPFontFamilyResolverImpl(fonts);
            }
        };
        var images = new DefaultImageContext();
        var context = new PDFBridgeContext(
                agent, fonts, new ImageManager(images), new DefaultImageSessionContext(images, new File(".")));
        return new GVTBuilder().build(context, SvgDocuments.of(page));
    }

    private static FontInfo fonts() throws IOException {
        InternalResourceResolver resolver =
                ResourceResolverFactory.createInternalResourceResolver(URI.create("shipped:/"), new ShippedFiles());
        var fonts = new FontInfo();
        add(fonts, resolver, "F1", "DejaVuSans.ttf", 400);
        add(fonts, resolver, "F2", "DejaVuSans-Bold.ttf", 700);
        return fonts;
    }

    private static void add(FontInfo fonts, InternalResourceResolver resolver, String key, String file, int weight)
            throws IOException {
        fonts.addMetrics(
                key,
                FontLoader.loadFont(
                        new FontUris(URI.create("shipped:/" + file), null),
                        null,
                        true,
                        EmbeddingMode.AUTO,
                        EncodingMode.AUTO,
                        false,
                        false,
                        resolver,
                        false,
                        false,
                        false));
        fonts.addFontProperties(key, new String[] {ShippedFont.FAMILY, "sans-serif", "any"}, "normal", weight);
    }

    /** Gives the font files out of the program itself. */
    private static final class ShippedFiles implements ResourceResolver {
        @Override
        public Resource getResource(URI uri) {
            String path = uri.getPath();
            return new Resource(ShippedFont.open(path.substring(path.lastIndexOf('/') + 1)));
        }

        @Override
        public OutputStream getOutputStream(URI uri) throws IOException {
            throw new IOException("nothing is written to " + uri);
        }
    }
}
