package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.job.Job;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Assumptions;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class RecordHtmlTest {
    private static org.w3c.dom.Document parsed(String html) throws Exception {
        assertThat(html).startsWith("<!DOCTYPE html>\n");
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(html.substring("<!DOCTYPE html>\n".length()))));
    }

    private static List<Element> elements(Node node) {
        List<Element> out = new ArrayList<>();
        NodeList all = ((org.w3c.dom.Document) node).getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            out.add((Element) all.item(i));
        }
        return out;
    }

    static final Set<String> KNOWN = Set.of(
            "html",
            "head",
            "meta",
            "title",
            "style",
            "body",
            "header",
            "main",
            "h1",
            "h2",
            "h3",
            "p",
            "a",
            "ul",
            "li",
            "div",
            "span",
            "strong",
            "table",
            "colgroup",
            "col",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "figure",
            "svg",
            "desc",
            "g",
            "line",
            "polyline",
            "polygon",
            "rect",
            "circle",
            "path",
            "text");

    static final Set<String> ATTRIBUTES = Set.of(
            "lang",
            "xmlns",
            "charset",
            "name",
            "content",
            "http-equiv",
            "class",
            "href",
            "id",
            "scope",
            "width",
            "height",
            "viewBox",
            "role",
            "aria-labelledby",
            "x",
            "y",
            "x1",
            "y1",
            "x2",
            "y2",
            "cx",
            "cy",
            "r",
            "rx",
            "d",
            "points",
            "font-size",
            "font-weight",
            "text-anchor",
            "data-coil",
            "data-bar",
            "data-slot",
            "data-pole",
            "data-brush",
            "data-path");

    /** Only what is meant to be there: nothing that runs, fetches or carries its own style; ids told apart. */
    static void inert(String html) throws Exception {
        List<Element> all = elements(parsed(html));
        List<String> ids = new ArrayList<>();
        int styles = 0;
        for (Element e : all) {
            assertThat(KNOWN).contains(e.getTagName());
            for (int i = 0; i < e.getAttributes().getLength(); i++) {
                Node a = e.getAttributes().item(i);
                assertThat(ATTRIBUTES).contains(a.getNodeName());
                if (a.getNodeName().equals("id")) {
                    ids.add(a.getNodeValue());
                }
                if (a.getNodeName().equals("href")) {
                    assertThat(a.getNodeValue()).matches("#annex-\\d+");
                }
            }
            styles += e.getTagName().equals("style") ? 1 : 0;
        }
        assertThat(ids).doesNotHaveDuplicates();
        assertThat(styles).isEqualTo(1);
        for (Element e : all) {
            for (String id : e.getAttribute("aria-labelledby").strip().split(" ")) {
                assertThat(id.isEmpty() || ids.contains(id)).isTrue();
            }
            if (e.hasAttribute("href")) {
                assertThat(ids).contains(e.getAttribute("href").substring(1));
            }
        }
        assertThat(html).doesNotContain("<script", "url(", "@import", "\r");
        assertThat(html.codePoints().anyMatch(c -> (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069)))
                .isFalse();
    }

    @Property(tries = 15)
    void wellFormedAndInertWhateverTheJobHolds(@ForAll long seed) throws Exception {
        Job job = RecordJobs.random(seed);
        inert(RecordHtml.of(JobRecord.of(job, Palette.COLOUR)));
        inert(RecordHtml.of(AsFoundSheet.of(job, Palette.MONOCHROME)));
    }

    @Example
    void hostileTextStandsAsText() throws Exception {
        for (String words : RecordJobs.HOSTILE) {
            Job job = Job.of(words, Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE))
                    .withParticulars(RecordJobs.full().particulars().withNotes(List.of(words)));
            String html = RecordHtml.of(JobRecord.of(job, Palette.COLOUR));
            inert(html);
            List<Element> all = elements(parsed(html));
            assertThat(all.stream().filter(e -> e.getTagName().equals("h1")).map(Node::getTextContent))
                    .containsExactly(words);
            assertThat(all.stream().filter(e -> e.getTagName().equals("li")).map(Node::getTextContent))
                    .contains(words);
        }
    }

    /** Job files cannot hold such characters; a document made otherwise might. */
    @Example
    void charactersThatTurnTheTextAboutAreShown() throws Exception {
        Document document = new Document(
                "a\u202eb\u2066c",
                "sub",
                Palette.COLOUR,
                List.of(new Block.Paragraph("p\u202e\u0000q"), new Block.Blanks(List.of("\u202dx"))));
        String html = RecordHtml.of(document);
        inert(html);
        assertThat(html).contains("<h1>a\ufffdb\ufffdc</h1>", "<p>p\ufffd\ufffdq</p>", "\ufffdx");
    }

    /** What the sheet prints and what the browser shows come from one model: no word of it is missing in either. */
    @Example
    void everyTextOfTheDocumentStandsInBoth() throws Exception {
        for (Document document : List.of(
                JobRecord.of(RecordJobs.full(), Palette.COLOUR), AsFoundSheet.of(RecordJobs.full(), Palette.COLOUR))) {
            String text = parsed(RecordHtml.of(document)).getDocumentElement().getTextContent();
            Set<String> printed = new LinkedHashSet<>();
            document.pages()
                    .pages()
                    .forEach(p -> p.texts()
                            .forEach(t -> printed.addAll(List.of(t.text().split("\\s+")))));
            for (String words : words(document)) {
                assertThat(text).contains(words);
                for (String word : words.strip().split("\\s+")) {
                    // Long words are parted in print.
                    if (word.length() < 12) {
                        assertThat(printed).as(words).contains(word);
                    }
                }
            }
        }
    }

    private static List<String> words(Document document) {
        List<String> out = new ArrayList<>(List.of(document.title(), document.subtitle()));
        for (Block block : document.blocks()) {
            if (block instanceof Block.Heading h) {
                out.add(h.words());
            } else if (block instanceof Block.Paragraph p) {
                out.add(p.words());
            } else if (block instanceof Block.Items i) {
                out.addAll(i.items());
            } else if (block instanceof Block.Ticks t) {
                out.addAll(t.items());
            } else if (block instanceof Block.Cautions c) {
                out.addAll(c.items());
            } else if (block instanceof Block.Facts f) {
                f.facts().forEach((k, v) -> out.addAll(List.of(k, v)));
            } else if (block instanceof Block.Grid g) {
                g.table().columns().forEach(c -> out.add(c.head()));
                g.table().rows().forEach(out::addAll);
            } else if (block instanceof Block.Blanks b) {
                out.addAll(b.names());
            } else if (block instanceof Block.Pictures p) {
                p.drawings()
                        .forEach(d -> d.texts().stream().map(Shape.Text::text).forEach(out::add));
            } else if (block instanceof Block.Annex a) {
                for (Drawing d : a.pages().pages()) {
                    d.texts().stream().map(Shape.Text::text).forEach(out::add);
                }
            }
        }
        return out.stream().filter(w -> !w.isBlank()).toList();
    }

    @Example
    void theStyleIsTheOneThatThePolicyLetsIn() throws Exception {
        for (Palette palette : Palette.values()) {
            String html = RecordHtml.of(JobRecord.of(RecordJobs.bare(), palette));
            int from = html.indexOf("<style>") + "<style>".length();
            String style = html.substring(from, html.indexOf("</style>"));
            String hash = Base64.getEncoder()
                    .encodeToString(
                            MessageDigest.getInstance("SHA-256").digest(style.getBytes(StandardCharsets.UTF_8)));
            assertThat(html)
                    .contains("content=\"default-src 'none'; style-src 'sha256-" + hash
                            + "'; base-uri 'none'; form-action 'none'\"");
            // Read as XML it must be the same characters as read as HTML.
            assertThat(style).doesNotContain("<", "&", "]]>");
        }
    }

    @Example
    void theSameDocumentGivesTheSameText() {
        assertThat(RecordHtml.of(JobRecord.of(RecordJobs.full(), Palette.COLOUR)))
                .isEqualTo(RecordHtml.of(JobRecord.of(RecordJobs.full(), Palette.COLOUR)));
    }

    @Example
    void noElementIsWrittenInAWayThatHtmlDoesNotKnow() {
        String html = RecordHtml.of(JobRecord.of(RecordJobs.bare(), Palette.COLOUR));
        Matcher empty = Pattern.compile("<(\\w+)[^<>]*/>").matcher(html);
        Set<String> names = new LinkedHashSet<>();
        while (empty.find()) {
            names.add(empty.group(1));
        }
        assertThat(names)
                .contains("meta", "col")
                .isSubsetOf("meta", "col", "line", "polyline", "polygon", "rect", "circle", "path");
    }

    /** A browser shows it without complaint, with nothing shut out by the policy, and prints it on pages of A4. */
    @Example
    void aBrowserShowsAndPrintsIt() throws Exception {
        Path folder = Files.createTempDirectory("record");
        Path html = folder.resolve("record.html");
        Path pdf = folder.resolve("record.pdf");
        Files.writeString(html, RecordHtml.of(JobRecord.of(RecordJobs.full(), Palette.COLOUR)));
        Path log = folder.resolve("log.txt");
        Process browser = start(
                folder,
                log,
                "--print-to-pdf=" + pdf,
                "--no-pdf-header-footer",
                html.toUri().toString());
        try {
            assertThat(browser.waitFor(90, TimeUnit.SECONDS)).isTrue();
        } finally {
            browser.destroyForcibly();
        }
        String said = Files.readString(log);
        assertThat(said).doesNotContain("CONSOLE", "Refused", "violates");
        byte[] printed = Files.readAllBytes(pdf);
        assertThat(new String(printed, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
        List<String> boxes = new ArrayList<>();
        Matcher box = Pattern.compile("/MediaBox \\[0 0 ([\\d.]+) ([\\d.]+)\\]")
                .matcher(new String(printed, StandardCharsets.ISO_8859_1));
        while (box.find()) {
            boxes.add(
                    Math.round(Double.parseDouble(box.group(1))) + " " + Math.round(Double.parseDouble(box.group(2))));
        }
        // A4 in points, upright for the text, on its side for the drawings.
        assertThat(boxes.stream().filter("842 595"::equals)).hasSize(7);
        assertThat(boxes.stream().filter("595 842"::equals)).hasSizeBetween(4, 9);
        assertThat(boxes).containsOnly("842 595", "595 842");
    }

    private static Process start(Path folder, Path log, String... more) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                "chromium",
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--enable-logging=stderr",
                "--user-data-dir=" + folder.resolve("profile")));
        command.addAll(List.of(more));
        try {
            return new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
        } catch (IOException e) {
            Assumptions.abort("no chromium here, so the record is not shown in a browser");
            throw new IllegalStateException(String.format(Locale.ROOT, "%s", e.getMessage()), e);
        }
    }
}
