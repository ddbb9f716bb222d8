package coilwright.drawing.export;

import coilwright.drawing.Drawing;
import coilwright.drawing.SvgWriter;
import java.io.IOException;
import java.io.StringReader;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.w3c.dom.svg.SVGDocument;

/** Drawings as documents that the renderer takes. */
final class SvgDocuments {
    private SvgDocuments() {}

    static SVGDocument of(Drawing drawing) throws IOException {
        return new SAXSVGDocumentFactory(null)
                .createSVGDocument("file:/drawing.svg", new StringReader(SvgWriter.write(drawing)));
    }
}
