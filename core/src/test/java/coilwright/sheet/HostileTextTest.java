package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchTest;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Palette;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.drawing.export.PdfExport;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.JobWriter;
import coilwright.rewind.WindingWay;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Whatever texts a job holds, every kind of output shows them as texts, and stays what it is. */
class HostileTextTest {
    private static final Pattern TAG =
            Pattern.compile("<(/?)([a-z][a-z0-9]*)((?: [a-zA-Z0-9-]+(?:=\"[^\"<]*\")?)*)/?>");
    private static final Pattern ATTRIBUTE = Pattern.compile(" ([a-zA-Z0-9-]+)(?:=\"([^\"<]*)\")?");

    /** More of them with {@code -Dfuzz=1000}. */
    static LongStream seeds() {
        return LongStream.rangeClosed(1, Integer.getInteger("fuzz", 2));
    }

    private static Job hostile(long seed) {
        return HostileTexts.everywhere(RecordJobs.full(), new HostileTexts(seed)::text);
    }

    @Test
    void textsStandEverywhere() {
        var places = new AtomicInteger();
        String text =
                JobWriter.toText(HostileTexts.everywhere(RecordJobs.full(), () -> "text " + places.incrementAndGet()));
        // Title, serial number, twice by whom, three parts of the insulation with two notes, two bandings, varnish, two
        // meters, two lines of notes.
        assertThat(Pattern.compile("text \\d+").matcher(text).results()).hasSize(16);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aJobFileGivesThemBack(long seed) throws Exception {
        Job job = hostile(seed);
        assertThat(JobReader.parse("job", JobWriter.toText(job))).isEqualTo(job);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void drawingsAndSheetsHoldNothingThatRunsOrFetches(long seed) throws Exception {
        Job job = hostile(seed);
        for (DrawingView view : DrawingView.values()) {
            inert(view.draw(job.build(), ViewOptions.of(job.title())));
            inert(view.draw(job.build(), ViewOptions.of(new HostileTexts(seed).raw())));
        }
        for (SheetKind kind : SheetKind.values()) {
            if (kind != SheetKind.RECORD) {
                inert(kind.pages(job, WindingWay.FORMED_COILS, Palette.COLOUR));
            }
        }
    }

    private static void inert(DrawingPages pages) throws Exception {
        for (Drawing page : pages.pages()) {
            String svg = SvgWriter.write(page);
            List<Element> all = elements(svg);
            assertThat(svg).startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg ");
            assertThat(svg.substring(5)).doesNotContain("<?", "<!", "\r");
            plain(svg);
            for (Element e : all) {
                assertThat(RecordHtmlTest.KNOWN).contains(e.getTagName());
                for (int i = 0; i < e.getAttributes().getLength(); i++) {
                    String name = e.getAttributes().item(i).getNodeName();
                    assertThat(name.equals("type") || RecordHtmlTest.ATTRIBUTES.contains(name))
                            .as(name)
                            .isTrue();
                    assertThat(name).isNotEqualTo("href");
                }
            }
            assertThat(all.stream().filter(e -> e.getTagName().equals("style")).map(Node::getTextContent))
                    .containsExactly("\n" + SvgWriter.style(page.palette()));
        }
    }

    private static List<Element> elements(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        NodeList all = factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(xml)))
                .getElementsByTagName("*");
        List<Element> out = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            out.add((Element) all.item(i));
        }
        return out;
    }

    /** Nothing that turns the text about, breaks lines of its own accord, commands a terminal or cannot be stored. */
    private static void plain(String text) {
        assertThat(text.codePoints()
                        .filter(c -> (Character.isISOControl(c) && c != '\n' && c != '\t')
                                || (c >= 0x202a && c <= 0x202e)
                                || (c >= 0x2066 && c <= 0x2069)
                                || (c >= 0xd800 && c <= 0xdfff)
                                || (c & 0xfffe) == 0xfffe)
                        .mapToObj(Integer::toHexString))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theRecordForABrowserStaysWhatItIs(long seed) throws Exception {
        Job job = hostile(seed);
        String usual = RecordHtml.of(JobRecord.of(RecordJobs.full(), Palette.COLOUR));
        String html = RecordHtml.of(JobRecord.of(job, Palette.COLOUR));
        RecordHtmlTest.inert(html);
        sameMarkup(html, usual);
        List<Block> blocks = List.of(
                new Block.Heading(new HostileTexts(seed).raw()),
                new Block.Paragraph(new HostileTexts(seed + 1).raw()),
                new Block.Facts(Map.of(new HostileTexts(seed + 2).raw(), new HostileTexts(seed + 3).raw())),
                new Block.Items(List.of(new HostileTexts(seed + 4).raw())));
        String raw = RecordHtml.of(
                new Document(new HostileTexts(seed).raw(), new HostileTexts(seed).raw(), Palette.COLOUR, blocks));
        RecordHtmlTest.inert(raw);
        sameMarkup(raw, usual);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theBenchPageStaysWhatItIs(long seed) {
        sameMarkup(page(hostile(seed), new HostileTexts(seed).raw()), page(RecordJobs.full(), "job.yaml"));
    }

    private static String page(Job job, String name) {
        return BenchPage.of(
                job,
                new BenchPage.Contents(
                        name,
                        List.of(new BenchPage.Walk(job.benchArmature(), new BenchTest.Resistance(), Optional.empty())),
                        Optional.of(WindingWay.FORMED_COILS)));
    }

    /** The tags and attributes of a page, and what is run or is style, are those of a page of harmless texts. */
    private static void sameMarkup(String page, String usual) {
        plain(page);
        Map<String, Set<String>> markup = markup(page);
        Map<String, Set<String>> harmless = markup(usual);
        markup.forEach((what, attributes) ->
                assertThat(harmless.getOrDefault(what, Set.of())).as(what).containsAll(attributes));
    }

    /** By tag its attributes, told strictly: no other sign opens a tag, no value is without quotation marks. */
    private static Map<String, Set<String>> markup(String html) {
        Map<String, Set<String>> out = new LinkedHashMap<>();
        String doctype = "<!DOCTYPE html>";
        assertThat(html).startsWith(doctype);
        Matcher tag = TAG.matcher(html);
        for (int at = html.indexOf('<', doctype.length()); at >= 0; at = html.indexOf('<', at)) {
            assertThat(tag.region(at, html.length()).lookingAt())
                    .as(html.substring(at, Math.min(html.length(), at + 80)))
                    .isTrue();
            String name = tag.group(2);
            Set<String> attributes = out.computeIfAbsent(name, n -> new TreeSet<>());
            Matcher attribute = ATTRIBUTE.matcher(tag.group(3));
            while (attribute.find()) {
                attributes.add(attribute.group(1));
                if (attribute.group(1).matches("href|src|action|style|on.*")) {
                    assertThat(attribute.group(1)).isEqualTo("href");
                    assertThat(attribute.group(2)).startsWith("#");
                }
            }
            at = tag.end();
            if (tag.group(1).isEmpty() && (name.equals("script") || name.equals("style"))) {
                int end = html.indexOf("</" + name + ">", at);
                out.computeIfAbsent(name + " holds", n -> new TreeSet<>()).add(html.substring(at, end));
                at = end;
            }
        }
        return out;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aPdfHoldsTheTitleAsATextAndNoAction(long seed) throws Exception {
        for (String title : List.of(new HostileTexts(seed).text(), new HostileTexts(seed).raw())) {
            String pdf = new String(
                    PdfExport.pdf(DrawingView.COIL.draw(RecordJobs.full().build(), ViewOptions.of(title))),
                    StandardCharsets.ISO_8859_1);
            Matcher table = Pattern.compile("(?s).*startxref\n(\\d+)\n%%EOF\n?").matcher(pdf);
            assertThat(table.matches()).isTrue();
            int end = Integer.parseInt(table.group(1));
            String[] lines = pdf.substring(end).split("\n");
            assertThat(lines[0]).isEqualTo("xref");
            var starts = new TreeSet<Integer>(Set.of(end));
            for (int i = Integer.parseInt(lines[1].split(" ")[1].strip()) - 1; i > 0; i--) {
                int start = Integer.parseInt(lines[i + 2].substring(0, 10));
                assertThat(pdf.substring(start)).startsWith(i + " 0 obj");
                starts.add(start);
            }
            var names = new StringBuilder();
            for (int start : starts.headSet(end)) {
                // A text is in brackets, its own brackets marked, or in hexadecimal digits.
                names.append(pdf.substring(start, starts.higher(start))
                        .replaceAll("(?s)stream\n.*", "")
                        .replaceAll("(?s)\\((?:[^()\\\\]|\\\\.)*\\)", "()"));
            }
            assertThat(names.toString())
                    .contains("/Title ", "/Producer ")
                    .doesNotContain(
                            "/Action",
                            "/OpenAction",
                            "/AA",
                            "/JavaScript",
                            "/JS",
                            "/URI",
                            "/Launch",
                            "/Annot",
                            "/Embed");
        }
    }
}
