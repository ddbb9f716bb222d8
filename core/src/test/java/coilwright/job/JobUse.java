package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.PageFormat;
import coilwright.drawing.Palette;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.fault.Diagnosis;
import coilwright.rewind.WindingWay;
import coilwright.sheet.BenchPage;
import coilwright.sheet.RecordHtml;
import coilwright.sheet.RewindReport;
import coilwright.sheet.RewindSheet;
import coilwright.sheet.SheetKind;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** What a job is good for, tried: it is wound, drawn, printed and diagnosed, or that is refused in words. */
final class JobUse {
    private static final int MOST_BARS = 60;
    private static final int MOST_DIAGNOSED = 24;
    private static final XMLInputFactory XML = XMLInputFactory.newDefaultFactory();

    private final Job job;
    private final Random random;

    private JobUse(Job job, Random random) {
        this.job = job;
        this.random = random;
    }

    static void check(Job job, Random random) throws XMLStreamException {
        var use = new JobUse(job, random);
        try {
            Winding winding = job.build();
            Rules.check(winding).forEach(f -> Refusal.assertSeen(f.message()));
            if (job.armature().bars() <= MOST_BARS && winding.coils().size() <= MOST_BARS * 2) {
                use.of(winding);
            }
        } catch (ImpossibleWindingException e) {
            assertThat(e.findings()).isNotEmpty().allSatisfy(f -> Refusal.assertSeen(f.message()));
        } catch (IllegalArgumentException e) {
            Refusal.assertOwn(e);
        }
    }

    private void of(Winding winding) throws XMLStreamException {
        Palette palette = one(Palette.values());
        switch (random.nextInt(6)) {
            case 0 -> {
                ViewOptions options = ViewOptions.of(job.title()).withFormat(one(PageFormat.values()));
                drawn(one(DrawingView.values()).draw(winding, options));
            }
            case 1 -> drawn(one(SheetKind.values()).pages(job, one(WindingWay.values()), palette));
            case 2 -> {
                SheetKind kind = random.nextBoolean() ? SheetKind.AS_FOUND : SheetKind.RECORD;
                wellFormed(RecordHtml.of(kind.document(job, palette).orElseThrow()));
            }
            case 3 -> wellFormed(asXml(page(job.benchArmature())));
            case 4 -> drawn(RewindSheet.of(RewindReport.of(job, RewindReport.Settings.USUAL), palette));
            default -> diagnosed();
        }
    }

    private String page(BenchArmature armature) {
        var walk = new BenchPage.Walk(armature, new BenchTest.Resistance(), Optional.empty());
        return BenchPage.of(job, new BenchPage.Contents("a", List.of(walk), Optional.empty()));
    }

    private void diagnosed() {
        if (job.armature().bars() <= MOST_DIAGNOSED && !job.readings().isEmpty()) {
            var diagnosis = Diagnosis.of(
                    job.benchArmature(),
                    job.readings().stream().map(s -> s.run(job.growler())).toList());
            assertThat(diagnosis.verdict()).isNotNull();
        }
    }

    private <T> T one(T[] of) {
        return of[random.nextInt(of.length)];
    }

    private static void drawn(DrawingPages pages) throws XMLStreamException {
        wellFormed(SvgWriter.write(pages.first()));
    }

    /** HTML has elements without an end, and script and style as they stand. */
    private static String asXml(String html) {
        return html.replaceAll("(?s)<(script|style)\\b[^>]*>.*?</\\1>", "")
                .replaceAll("<(/?[a-z][a-z0-9]*)\\b[^>]*?(/?)>", "<$1$2>")
                .replaceAll("<(meta|input|br|hr|link)>", "<$1/>");
    }

    /** Well-formed XML of legal characters, and nothing in it turns the text about. */
    private static void wellFormed(String xml) throws XMLStreamException {
        Refusal.assertHarmless(xml);
        XMLStreamReader reader = XML.createXMLStreamReader(new StringReader(xml));
        while (reader.hasNext()) {
            reader.next();
        }
        reader.close();
    }
}
