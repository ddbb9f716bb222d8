package coilwright.sheet;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.SvgWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * A document as one file for a browser: drawings and style within it, nothing fetched, nothing run. It is well-formed XML
 * as well. The same document gives the same text.
 */
public final class RecordHtml {
    private static final String NAMESPACE = "http://www.w3.org/1999/xhtml";

    // The JDK's own writer, whatever else is on the class path.
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

    // Plain colours and rules only, and no "<" or "&": it stands unescaped, and holds for HTML and XML alike.
    private static final String STYLE = """
            *{box-sizing:border-box}
            html{background:#ffffff;color:#1b2733;font:15px/1.45 "DejaVu Sans",Verdana,sans-serif;-webkit-text-size-adjust:100%}
            body{max-width:62rem;margin:0 auto;padding:1.2rem 1rem 3rem;overflow-wrap:anywhere}
            header{border-bottom:2px solid #75808b;margin-bottom:1rem}
            h1{font-size:1.7rem;line-height:1.2;margin:.2rem 0}
            header p{margin:.2rem 0 .6rem;color:#4a5560}
            h2{font-size:1.15rem;margin:1.8rem 0 .5rem;border-bottom:1px solid #c4cad0;padding-bottom:.15rem;break-after:avoid}
            h3{font-size:1rem;margin:1.4rem 0 .5rem;break-after:avoid}
            p,ul{margin:.5rem 0}
            ul{padding-left:1.4rem}
            ul.ticks{list-style:none;padding-left:0}
            ul.ticks li{padding-left:1.6rem;position:relative;margin:.35rem 0}
            ul.ticks li::before{content:"";position:absolute;left:0;top:.2em;width:.95em;height:.95em;border:1.5px solid #1b2733}
            .cautions{border:2px solid #a3123a;border-radius:4px;padding:.4rem .9rem;margin:.8rem 0;break-inside:avoid}
            .cautions strong{color:#a3123a}
            .scroll{overflow-x:auto;margin:.6rem 0}
            .strips{display:flex;flex-wrap:wrap;gap:1rem;align-items:flex-start}
            .strips .scroll{flex:1 1 15rem;margin:0}
            table{border-collapse:collapse;width:100%}
            th,td{border:1px solid #75808b;padding:.2rem .45rem;text-align:left;vertical-align:top;height:1.9rem;min-width:2.6rem;overflow-wrap:break-word}
            thead th{background:#e6e9ed;vertical-align:bottom}
            tr{break-inside:avoid}
            td.m,th.m{text-align:center}
            td.r{text-align:right;font-variant-numeric:tabular-nums}
            th.r{text-align:center}
            table.facts th,table.facts td{border:0;height:auto;padding:.12rem .6rem .12rem 0}
            table.facts{margin-bottom:.6rem}
            table.facts th{font-weight:normal;color:#4a5560;width:34%}
            table.facts td{font-weight:bold}
            table.facts td.empty{border-bottom:1px solid #75808b}
            .blanks{display:flex;flex-wrap:wrap;gap:.9rem 1.4rem;margin:1.2rem 0}
            .blanks span{flex:1 1 10rem;border-bottom:1px solid #75808b;min-height:1.6rem;color:#4a5560}
            .line{border-bottom:1px solid #75808b;height:2rem;margin:0}
            .pictures{display:flex;flex-wrap:wrap;gap:1.4rem;align-items:flex-end;margin:.8rem 0;overflow-x:auto;break-inside:avoid}
            .pictures svg{flex:none}
            figure{margin:.8rem 0;overflow-x:auto}
            figure svg{display:block}
            a{color:#15539e}
            @page{size:A4;margin:14mm 14mm 16mm 20mm}
            @page wide{size:A4 landscape;margin:9mm}
            @media print{
            html{font-size:11px}
            body{max-width:none;padding:0}
            .scroll,figure,.pictures{overflow:visible}
            .pictures svg{flex:0 1 auto;max-width:100%;height:auto}
            figure.wide{page:wide;break-before:page;break-after:page;margin:0}
            figure.tall{break-before:page;margin:0}
            figure svg{max-width:100%;max-height:180mm}
            figure.tall svg{max-height:250mm}
            h3.annex{display:none}
            th,td{height:6mm;padding:.8mm 1mm}
            }
            """;

    private final Document document;
    private final StringWriter text = new StringWriter(1 << 16);
    private final XMLStreamWriter out;
    private int drawings;

    private RecordHtml(Document document) throws XMLStreamException {
        this.document = document;
        this.out = FACTORY.createXMLStreamWriter(text);
    }

    /**
     * {@return the document as one string, lines ended by a line feed, to be stored as UTF-8}
     *
     * @param document the record
     */
    public static String of(Document document) {
        try {
            var html = new RecordHtml(document);
            html.write();
            return html.text.toString();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void write() throws XMLStreamException {
        text.write("<!DOCTYPE html>\n");
        out.writeStartElement("html");
        out.writeDefaultNamespace(NAMESPACE);
        out.writeAttribute("lang", "en");
        head();
        open("body", "");
        open("header", "");
        element("h1", "", document.title());
        element("p", "", document.subtitle());
        close();
        open("main", "");
        List<Block.Annex> annexes = new ArrayList<>();
        for (Block block : document.blocks()) {
            put(block, annexes);
        }
        for (int i = 0; i < annexes.size(); i++) {
            annex(annexes.get(i), i + 1);
        }
        close();
        close();
        close();
        out.writeEndDocument();
        out.flush();
        out.close();
    }

    private void head() throws XMLStreamException {
        String style = "\n" + STYLE + within(document.palette());
        open("head", "");
        meta("charset", "utf-8");
        meta(
                "http-equiv",
                "Content-Security-Policy",
                "content",
                "default-src 'none'; style-src 'sha256-" + sha256(style) + "'; base-uri 'none'; form-action 'none'");
        meta("name", "viewport", "content", "width=device-width, initial-scale=1");
        meta("name", "referrer", "content", "no-referrer");
        element("title", "", document.title() + ": " + document.subtitle());
        out.writeStartElement("style");
        out.writeCharacters("");
        out.flush();
        text.write(style);
        close();
        close();
    }

    /** The rules of the drawings, kept to what lies within an svg element. */
    private static String within(Palette palette) {
        var rules = new StringBuilder();
        for (String line : SvgWriter.style(palette).strip().split("\n")) {
            int brace = line.indexOf('{');
            List<String> selectors = new ArrayList<>();
            for (String selector : line.substring(0, brace).split(",")) {
                selectors.add("svg " + selector);
            }
            rules.append(String.join(",", selectors))
                    .append(line.substring(brace))
                    .append('\n');
        }
        return rules.toString();
    }

    private static String sha256(String words) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(words.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private void put(Block block, List<Block.Annex> annexes) throws XMLStreamException {
        if (block instanceof Block.Heading h) {
            element("h2", "", h.words());
        } else if (block instanceof Block.Paragraph p) {
            element("p", "", p.words());
        } else if (block instanceof Block.Items i) {
            list("", i.items());
        } else if (block instanceof Block.Ticks t) {
            list("ticks", t.items());
        } else if (block instanceof Block.Cautions c) {
            if (!c.items().isEmpty()) {
                open("div", "cautions");
                element("strong", "", "Caution");
                list("", c.items());
                close();
            }
        } else if (block instanceof Block.Facts f) {
            facts(f.facts());
        } else if (block instanceof Block.Grid g) {
            grid(g.table());
        } else if (block instanceof Block.Blanks b) {
            open("div", "blanks");
            for (String name : b.names()) {
                element("span", "", name);
            }
            close();
        } else if (block instanceof Block.Lines l) {
            for (int i = 0; i < l.lines(); i++) {
                element("p", "line", "");
            }
        } else if (block instanceof Block.Pictures p) {
            open("div", "pictures");
            for (Drawing d : p.drawings()) {
                svg(d);
            }
            close();
        } else if (block instanceof Block.Annex a) {
            annexes.add(a);
            open("p", "");
            out.writeStartElement("a");
            out.writeAttribute("href", "#annex-" + annexes.size());
            words(a.words());
            out.writeEndElement();
            close();
        } else {
            throw new IllegalStateException("no place for " + block.getClass().getSimpleName());
        }
    }

    private void annex(Block.Annex annex, int number) throws XMLStreamException {
        out.writeStartElement("h3");
        out.writeAttribute("class", "annex");
        out.writeAttribute("id", "annex-" + number);
        words(annex.words());
        close();
        for (Drawing page : annex.pages().pages()) {
            open("figure", page.width() > page.height() ? "wide" : "tall");
            svg(page);
            close();
        }
    }

    private void svg(Drawing drawing) throws XMLStreamException {
        drawings++;
        SvgWriter.writeInline(drawing, Sheet.ink(drawing), "d" + drawings + "-", out);
    }

    private void list(String kind, List<String> items) throws XMLStreamException {
        if (items.isEmpty()) {
            return;
        }
        open("ul", kind);
        for (String item : items) {
            element("li", "", item);
        }
        close();
    }

    private void facts(Map<String, String> facts) throws XMLStreamException {
        open("table", "facts");
        open("tbody", "");
        for (Map.Entry<String, String> fact : facts.entrySet()) {
            open("tr", "");
            out.writeStartElement("th");
            out.writeAttribute("scope", "row");
            words(fact.getKey());
            out.writeEndElement();
            element("td", fact.getValue().isEmpty() ? "empty" : "", fact.getValue());
            close();
        }
        close();
        close();
    }

    private void grid(Table table) throws XMLStreamException {
        int rows = table.rows().size();
        int each = Math.max(1, (rows + table.strips() - 1) / table.strips());
        open("div", "strips");
        for (int from = 0; from < rows; from += each) {
            open("div", "scroll");
            strip(table, table.rows().subList(from, Math.min(rows, from + each)));
            close();
        }
        close();
    }

    private void strip(Table table, List<List<String>> rows) throws XMLStreamException {
        double total = table.columns().stream().mapToDouble(Table.Column::share).sum();
        open("table", "");
        open("colgroup", "");
        for (Table.Column c : table.columns()) {
            out.writeEmptyElement("col");
            out.writeAttribute("width", Math.round(c.share() / total * 100) + "%");
        }
        close();
        open("thead", "");
        open("tr", "");
        for (Table.Column c : table.columns()) {
            out.writeStartElement("th");
            out.writeAttribute("scope", "col");
            align(c.align());
            words(c.head());
            out.writeEndElement();
        }
        close();
        close();
        open("tbody", "");
        for (List<String> row : rows) {
            open("tr", "");
            for (int i = 0; i < row.size(); i++) {
                out.writeStartElement("td");
                align(table.columns().get(i).align());
                words(row.get(i));
                out.writeEndElement();
            }
            close();
        }
        close();
        close();
    }

    private void align(Table.Align align) throws XMLStreamException {
        if (align != Table.Align.LEFT) {
            out.writeAttribute("class", align == Table.Align.MIDDLE ? "m" : "r");
        }
    }

    private void meta(String... attributes) throws XMLStreamException {
        out.writeEmptyElement("meta");
        for (int i = 0; i < attributes.length; i += 2) {
            out.writeAttribute(attributes[i], attributes[i + 1]);
        }
        out.writeCharacters("\n");
    }

    private void open(String name, String kind) throws XMLStreamException {
        out.writeStartElement(name);
        if (!kind.isEmpty()) {
            out.writeAttribute("class", kind);
        }
    }

    private void close() throws XMLStreamException {
        out.writeEndElement();
        out.writeCharacters("\n");
    }

    private void element(String name, String kind, String words) throws XMLStreamException {
        open(name, kind);
        words(words);
        close();
    }

    /** Writes words, and so that the element is not written as an empty one, which HTML does not know. */
    private void words(String words) throws XMLStreamException {
        out.writeCharacters(SvgWriter.legal(words));
    }
}
