package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.KeptText;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.PairReading;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Quantity;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BenchPageTest {
    private static final String HOSTILE =
            "</script><script>alert(1)</script><img src=x onerror='alert(2)'>\" onload=\"alert(3)\" &amp; <!-- ]]> id=\"coil-1\"";

    private static Job wave(String title) {
        return Job.of(title, Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE))
                .withCoilResistance(Quantity.parse("80 mohm", Quantity.Kind.RESISTANCE));
    }

    private static BenchPage.Contents contents(Job job, BenchTest... tests) {
        List<BenchPage.Walk> walks = new ArrayList<>();
        for (BenchTest test : tests) {
            walks.add(new BenchPage.Walk(job.benchArmature(), test, Optional.empty()));
        }
        return new BenchPage.Contents("job.yaml", walks, Optional.of(WindingWay.FORMED_COILS));
    }

    private static String page(Job job) {
        return BenchPage.of(job, contents(job, drop(job), new BenchTest.Resistance(), new BenchTest.Ground()));
    }

    private static BenchTest drop(Job job) {
        FeedBars feed =
                FeedBars.advised(job.build(), job.equalizers().isPresent()).get(0);
        return new BenchTest.Drop(feed.in(), feed.out(), 2);
    }

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("../samples/jobs"))) {
            return files.sorted().toList().stream();
        }
    }

    private static List<String> all(String pattern, String text) {
        List<String> out = new ArrayList<>();
        Matcher m = Pattern.compile(pattern, Pattern.DOTALL).matcher(text);
        while (m.find()) {
            out.add(m.group(1));
        }
        return out;
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleHasItsPairsDrawingsAndSteps(Path sample) throws Exception {
        Job job = JobReader.read(sample);
        Winding winding = job.build();
        BenchTest drop = drop(job);
        BenchPage.Contents contents = contents(job, drop);
        String page = BenchPage.of(job, contents);
        assertThat(all("data-from=\"(\\d+)\"", page)).hasSize(drop.walk(winding).size());
        for (String thing : List.of("coil", "bar", "slot")) {
            int most = thing.equals("coil")
                    ? winding.coils().size()
                    : thing.equals("bar")
                            ? winding.armature().bars()
                            : winding.armature().slots();
            Set<String> drawn = new HashSet<>(all("<g [^>]*data-" + thing + "=\"(\\d+)\"", page));
            assertThat(drawn).as(thing).hasSize(most);
        }
        String work = page.substring(page.indexOf("id=\"work\""), page.indexOf("id=\"inspection\""));
        assertThat(all("data-tick=\"(\\d+)\"", work))
                .hasSize(WorkOrder.of(
                                winding,
                                WindingWay.FORMED_COILS,
                                job.equalizers().map(e -> e.rings(winding)).orElse(List.of()))
                        .steps()
                        .size());
        List<String> ids = all(" id=\"([^\"]*)\"", page);
        assertThat(ids).doesNotHaveDuplicates();
        assertThat(BenchPage.of(job, contents)).as("the same bytes").isEqualTo(page);
    }

    @Test
    void whatIsTouchedIsToldInWords() throws Exception {
        JsonNode told = told(page(wave("Wave")));
        // y1 = 4 and yc = (17 + 1)/2 = 9 of the conventions: coil 5 spans slots 5 and 9, bars 5 and 14.
        assertThat(told.get("coil").get(4).get(1).asText()).isEqualTo("coil 5: slots 5 and 9, bars 5 and 14");
        assertThat(told.get("coil").get(4).get(2).asText())
                .isEqualTo("Top side in slot 5, its lead on bar 5. Bottom side in slot 9, its lead on bar 14.");
        assertThat(told.get("coil").get(4).get(4).toString()).isEqualTo("[5,14]");
        // The coil whose bottom lead lands on bar 5 is 5 − 9 + 17 = 13.
        assertThat(told.get("bar").get(4).get(1).asText()).isEqualTo("bar 5: coils 5 and 13");
        assertThat(told.get("bar").get(4).get(2).asText())
                .isEqualTo("Top lead of coil 5 from slot 5. Bottom lead of coil 13 from slot 17.");
        assertThat(told.get("slot").get(4).get(1).asText()).isEqualTo("slot 5: coils 5 and 1, bars 5, 14, 1 and 10");
        assertThat(told.get("slot").get(4).get(2).asText()).isEqualTo("Top: coil 5. Bottom: coil 1.");
    }

    @Test
    void deadCoilsAreToldAsDead() throws Exception {
        JsonNode told = told(page(JobReader.read(Path.of("../samples/jobs/ferry-lantern-dynamo.yaml"))));
        Winding winding = JobReader.read(Path.of("../samples/jobs/ferry-lantern-dynamo.yaml"))
                .build();
        assertThat(winding.deadCoils()).isNotEmpty();
        int dead = winding.deadCoils().get(0).number();
        assertThat(told.get("coil").get(dead - 1).get(1).asText())
                .startsWith("dead coil " + dead + ": slots ")
                .endsWith(", no bars");
    }

    private static JsonNode told(String page) throws IOException {
        return new ObjectMapper()
                .readTree(all("<script type=\"application/json\" id=\"winding-data\">(.*?)</script>", page)
                        .get(0));
    }

    @Test
    void hostileWordsStayWords() throws Exception {
        Job plain = wave("Wave");
        Job hostile = wave(HOSTILE);
        hostile = hostile.withParticulars(hostile.particulars().withNotes(List.of(HOSTILE)));
        String page = BenchPage.of(
                hostile,
                new BenchPage.Contents(HOSTILE, contents(hostile, drop(hostile)).walks(), Optional.empty()));
        String usual = BenchPage.of(
                plain, new BenchPage.Contents("x", contents(plain, drop(plain)).walks(), Optional.empty()));
        for (String tag : List.of("<script", "</script", "<img", "<!--", "<style", "</style")) {
            assertThat(count(page, tag)).as(tag).isEqualTo(count(usual, tag));
        }
        assertThat(page)
                .contains(
                        "&lt;/script&gt;&lt;script&gt;alert(1)&lt;/script&gt;&lt;img src=x onerror=&#39;alert(2)&#39;&gt;"
                                + "&quot; onload=&quot;alert(3)&quot; &amp;amp; &lt;!-- ]]&gt; id=&quot;coil-1&quot;");
        assertThat(all("<[a-z]+ [^>]*?( onerror| onload| onclick| style)=", page))
                .isEmpty();
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length;
    }

    @Test
    void signsThatMeanSomethingInHtmlOrEndLinesAreEscaped() throws Exception {
        String words = "</script> <!-- & ' \" \\ \u2028\u2029\u00e9\n\ud83d\ude00";
        String json = BenchPageWinding.quoted(words);
        assertThat(json).isPrintable().doesNotContain("<", ">", "&", "'");
        assertThat(new ObjectMapper().readValue(json, String.class)).isEqualTo(words);
        assertThat(BenchPageHtml.escaped("<a href=\"x\" title='y'>&\u0000\u202e\ud800"))
                .isEqualTo("&lt;a href=&quot;x&quot; title=&#39;y&#39;&gt;&amp;\ufffd\ufffd\ufffd");
    }

    @Test
    void nothingButItsOwnStyleAndScriptIsAllowed() throws Exception {
        String page = page(wave("Wave"));
        String policy = all("<meta http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\"", page)
                .get(0)
                .replace("&#39;", "'");
        String style = all("<style>(.*?)</style>", page).get(0);
        String script = all("<script>(.*?)</script>", page).get(0);
        assertThat(policy)
                .isEqualTo("default-src 'none'; style-src '" + digest(style) + "'; script-src '" + digest(script)
                        + "'; base-uri 'none'; form-action 'none'");
        assertThat(count(page, "<style")).isEqualTo(2);
        assertThat(count(page, "<script")).isEqualTo(3);
        assertThat(page).doesNotContain("unsafe", "http://", "https://", "url(", "@import", " style=", "javascript:");
        assertThat(script).doesNotContain("eval(", "innerHTML", "outerHTML", "document.write", "Function(", "fetch(");
        assertThat(page.substring(0, page.indexOf("<meta http-equiv")))
                .as("the policy stands before all that it governs")
                .doesNotContain("<style", "<script");
    }

    private static String digest(String text) throws Exception {
        return "sha256-"
                + Base64.getEncoder()
                        .encodeToString(
                                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void anotherJobOrTestIsKeptUnderAnotherName() {
        Job job = wave("Wave");
        Set<String> keys = new HashSet<>();
        keys.add(key(job, "a.yaml"));
        assertThat(key(job, "a.yaml")).isEqualTo(keys.iterator().next());
        keys.add(key(job, "b.yaml"));
        keys.add(key(wave("Other"), "a.yaml"));
        keys.add(key(job.withWinding(WindingSpec.wave(1, Direction.RETROGRESSIVE)), "a.yaml"));
        assertThat(keys).hasSize(4);
        List<String> tests = all(
                "data-test=\"([^\"]*)\"",
                BenchPage.of(
                        job,
                        contents(
                                job,
                                new BenchTest.Drop(1, 5, 2),
                                new BenchTest.Drop(1, 5, 1),
                                new BenchTest.Drop(2, 6, 2),
                                new BenchTest.Resistance())));
        assertThat(tests).hasSize(4).doesNotHaveDuplicates();
        assertThatThrownBy(() -> BenchPage.of(job, contents(job, new BenchTest.Ground(), new BenchTest.Ground())))
                .hasMessage("the ground test was asked for twice with the same set-up: a page holds it once");
    }

    private static String key(Job job, String name) {
        return all(
                        "data-job=\"([0-9a-f]{24})\"",
                        BenchPage.of(
                                job,
                                new BenchPage.Contents(
                                        name,
                                        contents(job, new BenchTest.Ground()).walks(),
                                        Optional.empty())))
                .get(0);
    }

    @Test
    void expectedValuesAreThoseOfTheTestSheet() {
        Job job = wave("Wave");
        String page = BenchPage.of(job, contents(job, drop(job)));
        List<PairReading> readings = drop(job).readWalk(job.benchArmature());
        assertThat(all("data-expected=\"([^\"]*)\"", page))
                .isEqualTo(
                        readings.stream().map(r -> Double.toString(r.value())).toList());
        ReadingUnit unit = ReadingUnit.of(drop(job), readings, true, false);
        assertThat(all("class=\"expected-value\">([^<]*)<", page))
                .isEqualTo(readings.stream().map(r -> unit.words(r.value())).toList());
    }

    @Test
    void cautionsStandOpen() {
        String page = page(wave("Wave"));
        String ground = page.substring(page.indexOf("id=\"ground\""), page.indexOf("id=\"work\""));
        int caution = ground.indexOf("A mains test lamp makes the whole armature live");
        assertThat(caution).isPositive().isLessThan(ground.indexOf("<details"));
    }

    @Test
    void aWayThatDoesNotSuitIsRefusedWithTheWayOut() {
        Job job = wave("Wave");
        var contents = new BenchPage.Contents("x", List.of(), Optional.of(WindingWay.OPPOSITE_PAIRS));
        assertThatThrownBy(() -> BenchPage.of(job, contents))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("choose coil-by-coil or formed-coils");
    }

    /** A page without its style, script (and their hashes) and drawings, a tag with its words on each line. */
    private static List<String> skeleton(String page) {
        return page.replaceAll("(?s)<(style|script|svg)\\b.*?</\\1>", "<$1/>")
                .replaceAll("sha256-[^&]+", "sha256")
                .replace("<", "\n<")
                .lines()
                .map(String::strip)
                .filter(l -> !l.isEmpty() && !l.startsWith("</"))
                .toList();
    }

    private static String small() {
        Job job = Job.of("Small", Armature.of(6, 12, 2), WindingSpec.lap(1, Direction.RETROGRESSIVE))
                .withTurns(5);
        return page(job);
    }

    /** With two sets of coils, each bar tied to another. */
    private static String tied() {
        return page(Job.of(
                "Tied", Armature.of(4, 8, 2), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)));
    }

    private static Map<String, String> kept() {
        Map<String, String> out = new LinkedHashMap<>();
        out.put("bench-page.txt", small());
        out.put("bench-page-tied.txt", tied());
        return out;
    }

    /** Set down when they were read; {@link #main} writes them anew. */
    @ParameterizedTest
    @ValueSource(strings = {"bench-page.txt", "bench-page-tied.txt"})
    void everyWordOfAPageIsAsItWasRead(String file) {
        assertThat(skeleton(kept().get(file))).containsExactlyElementsOf(KeptText.lines(BenchPageTest.class, file));
    }

    /** Writes the files into a folder. */
    public static void main(String[] args) throws IOException {
        for (Map.Entry<String, String> e : kept().entrySet()) {
            Files.write(Path.of(args[0], e.getKey()), skeleton(e.getValue()));
        }
    }
}
