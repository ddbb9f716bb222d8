package coilwright.drawing;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes a drawing as SVG. The same drawing gives the same text. */
public final class SvgWriter {
    private static final String NAMESPACE = "http://www.w3.org/2000/svg";

    // The JDK's own writer, whatever else is on the class path.
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

    private final XMLStreamWriter out;
    private final String prefix;

    private SvgWriter(XMLStreamWriter out, String prefix) {
        this.out = out;
        this.prefix = prefix;
    }

    /**
     * {@return the drawing as one string, lines ended by a line feed}
     *
     * @param drawing the page
     */
    public static String write(Drawing drawing) {
        var text = new StringWriter(1 << 16);
        try {
            write(drawing, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Writes the drawing to a writer, which stays open.
     *
     * @param drawing the page
     * @param to where it goes
     * @throws IOException when the writer fails
     */
    public static void write(Drawing drawing, Writer to) throws IOException {
        try {
            to.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
            XMLStreamWriter xml = FACTORY.createXMLStreamWriter(to);
            new SvgWriter(xml, "").document(drawing);
            xml.close();
        } catch (XMLStreamException e) {
            throw e.getCause() instanceof IOException io ? io : new IOException(e.getMessage(), e);
        }
    }

    /**
     * Writes an svg element into a document that holds {@link #style} itself; well-formed there, be it HTML or XML.
     *
     * @param drawing the page
     * @param view part of the page to show
     * @param prefix of ids, so that several drawings share a document
     * @param to where it goes
     * @throws XMLStreamException when the writer fails
     */
    public static void writeInline(Drawing drawing, Box view, String prefix, XMLStreamWriter to)
            throws XMLStreamException {
        new SvgWriter(to, prefix).element(drawing, view, false);
    }

    /**
     * {@return the style sheet of all drawings in a palette}
     *
     * @param palette colours, or black, white and grey
     */
    public static String style(Palette palette) {
        return StyleSheet.of(palette);
    }

    private void document(Drawing d) throws XMLStreamException {
        out.setDefaultNamespace(NAMESPACE);
        element(d, d.page(), true);
        out.writeEndDocument();
        out.flush();
    }

    private void element(Drawing d, Box view, boolean styled) throws XMLStreamException {
        out.writeStartElement("svg");
        out.writeDefaultNamespace(NAMESPACE);
        String w = Decimal.of(view.width());
        String h = Decimal.of(view.height());
        out.writeAttribute("width", w + "mm");
        out.writeAttribute("height", h + "mm");
        out.writeAttribute("viewBox", Decimal.of(view.left()) + " " + Decimal.of(view.top()) + " " + w + " " + h);
        out.writeAttribute("role", "img");
        out.writeAttribute("aria-labelledby", prefix + "title " + prefix + "desc");
        line();
        textElement("title", "title", d.title());
        textElement("desc", "desc", d.description());
        if (styled) {
            out.writeStartElement("style");
            out.writeAttribute("type", "text/css");
            out.writeCharacters("\n" + StyleSheet.of(d.palette()));
            out.writeEndElement();
            line();
        }
        for (Shape s : d.shapes()) {
            shape(s);
        }
        out.writeEndElement();
        line();
    }

    private void line() throws XMLStreamException {
        out.writeCharacters("\n");
    }

    private void textElement(String name, String id, String words) throws XMLStreamException {
        out.writeStartElement(name);
        if (!id.isEmpty()) {
            out.writeAttribute("id", prefix + id);
        }
        out.writeCharacters(legal(words));
        out.writeEndElement();
        line();
    }

    private void shape(Shape s) throws XMLStreamException {
        if (s instanceof Shape.Group g) {
            group(g);
        } else if (s instanceof Shape.Text t) {
            text(t);
        } else if (s instanceof Shape.Line l) {
            out.writeEmptyElement("line");
            roles(l.roles());
            number("x1", l.from().x());
            number("y1", l.from().y());
            number("x2", l.to().x());
            number("y2", l.to().y());
            line();
        } else if (s instanceof Shape.Polyline p) {
            out.writeEmptyElement(p.closed() ? "polygon" : "polyline");
            roles(p.roles());
            var points = new StringBuilder();
            for (Point at : p.points()) {
                point(points.isEmpty() ? points : points.append(' '), at);
            }
            out.writeAttribute("points", points.toString());
            line();
        } else if (s instanceof Shape.Rect r) {
            out.writeEmptyElement("rect");
            roles(r.roles());
            number("x", r.x());
            number("y", r.y());
            number("width", r.width());
            number("height", r.height());
            if (r.radius() > 0) {
                number("rx", r.radius());
            }
            line();
        } else if (s instanceof Shape.Circle c) {
            out.writeEmptyElement("circle");
            roles(c.roles());
            number("cx", c.middle().x());
            number("cy", c.middle().y());
            number("r", c.radius());
            line();
        } else {
            out.writeEmptyElement("path");
            roles(s.roles());
            out.writeAttribute("d", pathData(s));
            line();
        }
    }

    private static String pathData(Shape s) {
        var d = new StringBuilder("M");
        if (s instanceof Shape.Curve c) {
            point(d, c.start());
            for (Shape.Cubic piece : c.pieces()) {
                point(d.append('C'), piece.first());
                point(d.append(' '), piece.second());
                point(d.append(' '), piece.end());
            }
        } else if (s instanceof Shape.Arc a) {
            point(d, at(a.middle(), a.radius(), a.from()));
            arc(d, a.middle(), a.radius(), a.from(), a.sweep());
        } else if (s instanceof Shape.Sector r) {
            point(d, at(r.middle(), r.outer(), r.from()));
            arc(d, r.middle(), r.outer(), r.from(), r.sweep());
            point(d.append('L'), at(r.middle(), r.inner(), r.from() + r.sweep()));
            arc(d, r.middle(), r.inner(), r.from() + r.sweep(), -r.sweep());
            d.append('Z');
        } else {
            throw new IllegalStateException("no path data for " + s.getClass().getSimpleName());
        }
        return d.toString();
    }

    private static Point at(Point middle, double radius, double degrees) {
        return Point.polar(middle.x(), middle.y(), radius, degrees);
    }

    private static void arc(StringBuilder d, Point middle, double radius, double from, double sweep) {
        String r = Decimal.of(radius);
        d.append('A').append(r).append(' ').append(r).append(" 0 ");
        d.append(Math.abs(sweep) > 180 ? "1 " : "0 ").append(sweep > 0 ? "1 " : "0 ");
        point(d, at(middle, radius, from + sweep));
    }

    private static void point(StringBuilder to, Point p) {
        to.append(Decimal.of(p.x())).append(',').append(Decimal.of(p.y()));
    }

    private void group(Shape.Group g) throws XMLStreamException {
        out.writeStartElement("g");
        if (g.id().isPresent()) {
            out.writeAttribute("id", prefix + g.id().get());
        }
        roles(g.roles());
        if (g.element().isPresent()) {
            Element e = g.element().get();
            out.writeAttribute(e.kind().attribute(), Integer.toString(e.number()));
        }
        line();
        if (!g.title().isEmpty()) {
            textElement("title", "", g.title());
        }
        for (Shape s : g.shapes()) {
            shape(s);
        }
        out.writeEndElement();
        line();
    }

    private void text(Shape.Text t) throws XMLStreamException {
        out.writeStartElement("text");
        roles(t.roles());
        number("x", t.at().x());
        number("y", t.at().y());
        number("font-size", t.size());
        if (t.bold()) {
            out.writeAttribute("font-weight", "bold");
        }
        if (t.anchor() != Shape.Anchor.START) {
            out.writeAttribute("text-anchor", t.anchor() == Shape.Anchor.MIDDLE ? "middle" : "end");
        }
        out.writeCharacters(legal(t.text()));
        out.writeEndElement();
        line();
    }

    private void number(String name, double value) throws XMLStreamException {
        out.writeAttribute(name, Decimal.of(value));
    }

    private void roles(List<Role> roles) throws XMLStreamException {
        if (roles.isEmpty()) {
            return;
        }
        String names = roles.get(0).className();
        for (int i = 1; i < roles.size(); i++) {
            names = names + " " + roles.get(i).className();
        }
        out.writeAttribute("class", names);
    }

    /**
     * {@return the words with the replacement sign for every character that XML cannot hold or that turns the text
     * about; the XML writer escapes the rest}
     *
     * @param words any text
     */
    public static String legal(String words) {
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            if (c < ' ' || Character.isSurrogate(c) || c >= '\ufffe' || (c >= 0x7f && c < 0xa0) || turns(c)) {
                return cleaned(words);
            }
        }
        return words;
    }

    /** Whether a character opens or closes an embedding, override or isolate of direction. */
    private static boolean turns(int c) {
        return (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
    }

    private static String cleaned(String words) {
        var out = new StringBuilder();
        words.codePoints().forEach(c -> {
            boolean wrong = (c < ' ' && c != '\t' && c != '\n')
                    || (c >= 0x7f && c < 0xa0)
                    || (c >= 0xd800 && c < 0xe000)
                    || (c & 0xfffe) == 0xfffe
                    || turns(c);
            out.appendCodePoint(wrong ? 0xfffd : c == '\t' || c == '\n' ? ' ' : c);
        });
        return out.toString();
    }
}
