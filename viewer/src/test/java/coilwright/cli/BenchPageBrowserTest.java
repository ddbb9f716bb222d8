package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coilwright.job.ReadingsFile;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench page as a browser shows it and a finger uses it. */
class BenchPageBrowserTest {
    private static final String ORCHARD =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();
    private static final String MOUNTAIN =
            TableCommandTest.SAMPLES.resolve("mountain-railway-motor.yaml").toString();

    @TempDir
    private static Path temp;

    private static Optional<Browser> opened = Optional.empty();
    private static Path orchard;

    private Browser browser;

    @BeforeAll
    static void start() throws Exception {
        Optional<Path> program = Browser.installed();
        assumeTrue(program.isPresent(), "no Chromium here: the bench page is not tried in a browser");
        orchard = page(
                ORCHARD, "orchard", "drop", "--also", "resistance,ground,growler,polarity", "--way", "formed-coils");
        opened = Optional.of(new Browser(program.get(), Files.createDirectory(temp.resolve("profile"))));
    }

    @AfterAll
    static void stop() {
        opened.ifPresent(Browser::close);
    }

    @BeforeEach
    void phone() throws Exception {
        browser = opened.orElseThrow();
        browser.window(360, 740, "light");
    }

    @AfterEach
    void askedForNothingAndComplainedOfNothing() throws Exception {
        assertThat(browser.requests()).isNotEmpty().allMatch(url -> url.startsWith("file:") || url.startsWith("blob:"));
        assertThat(browser.complaints()).isEmpty();
        browser.value("localStorage.clear()");
    }

    private static Path page(String job, String name, String test, String... more) {
        Path file = temp.resolve(name + ".html");
        List<String> args = new ArrayList<>(List.of("page", job, "--out", file.toString(), "--test", test));
        args.addAll(List.of(more));
        assertThat(Run.of(args.toArray(String[]::new))).isEqualTo(new Run(0, "", ""));
        return file;
    }

    /** Types a reading into the entry of a row, counted from 1. */
    private void enter(String test, int row, String reading) throws Exception {
        browser.tap("#" + test + "_" + row);
        browser.type(reading);
    }

    private String says(String test, int row) throws Exception {
        return browser.text("document.getElementById('" + test + "_" + row + "-s').textContent");
    }

    private String text(String selector) throws Exception {
        return browser.text("document.querySelector(" + Browser.quoted(selector) + ").textContent");
    }

    @Test
    void aTouchLightsTheCoilUpAndTellsItInWords() throws Exception {
        browser.open(orchard);
        // 8 px beside the dot of coil 5's top side: within reach of a finger.
        JsonNode at = browser.value("(() => { const b = document.querySelector('#r-coil-5 circle.coil-top');"
                + " b.scrollIntoView({block: 'center'}); const r = b.getBoundingClientRect();"
                + " return [r.left + r.width / 2, r.top + r.height / 2]; })()");
        browser.tap(at.get(0).asDouble(), at.get(1).asDouble());
        assertThat(text("#told")).startsWith("coil 5: slots 5 and 9, bars 5 and 14");
        assertThat(browser.text("[...document.querySelectorAll('#drawings .pan[data-view=round] .lit')].map(g => g.id)"
                        + ".sort().join(' ')"))
                .isEqualTo("r-bar-14 r-bar-5 r-coil-5 r-slot-5 r-slot-9");
        browser.tap("[data-do=step][data-by='1']");
        assertThat(text("#told")).startsWith("coil 6: slots 6 and 10, bars 6 and 15");
        browser.tap("[data-do=kind][data-kind=bar]");
        assertThat(text("#told")).startsWith("bar 6: coils 6 and 14");
        browser.tap("[data-do=view][data-view=developed]");
        assertThat(browser.value("document.querySelector('#d-bar-6').classList.contains('lit')")
                        .asBoolean())
                .isTrue();
        assertThat(browser.value("document.querySelector('.pan[data-view=round]').hidden")
                        .asBoolean())
                .isTrue();
        // All is back in its place once another thing is chosen.
        browser.tap("[data-do=step][data-by='-1']");
        assertThat(browser.value("document.querySelector('#d-bar-6').nextElementSibling.id")
                        .asText())
                .isEqualTo("d-bar-7");
    }

    @Test
    void aTouchBesideAThingFindsTheNearest() throws Exception {
        browser.open(orchard);
        // 15 px above the highest coil there is no line of any coil, bar or slot.
        JsonNode at = browser.value("(() => { const box = document.querySelector('.pan');"
                + " box.scrollIntoView({block: 'center'});"
                + " const points = [...box.querySelectorAll('[data-coil] path')].flatMap(p =>"
                + " [...Array(101).keys()].map(i => p.getPointAtLength(p.getTotalLength() * i / 100)"
                + ".matrixTransform(p.getScreenCTM())));"
                + " const top = points.reduce((a, b) => a.y <= b.y ? a : b), x = top.x, y = top.y - 15;"
                + " return [x, y, document.elementFromPoint(x, y).closest('[data-coil],[data-bar],[data-slot]') === null];"
                + " })()");
        assertThat(at.get(2).asBoolean()).isTrue();
        browser.tap(at.get(0).asDouble(), at.get(1).asDouble());
        String before = text("#told");
        assertThat(before).startsWith("coil ");
        // Nothing is within reach of the lower right corner.
        JsonNode corner = browser.value("(() => { const r = document.querySelector('.pan svg').getBoundingClientRect();"
                + " return [r.right - 30, r.bottom - 90]; })()");
        browser.tap(corner.get(0).asDouble(), corner.get(1).asDouble());
        assertThat(text("#told")).isEqualTo(before);
    }

    @Test
    void readingsAreComparedKeptAndReadByTheDiagnosis() throws Exception {
        browser.open(orchard);
        // An open coil 5 as the bench would read it, at 2 A instead of the 1 A of the page.
        Run faulty = Run.of(
                "probe",
                ORCHARD,
                "--test",
                "drop",
                "--feed",
                "1,5",
                "--amps",
                "2",
                "--fault",
                "open-coil:5",
                "--format",
                "csv");
        List<String> lines = faulty.out().lines().skip(1).toList();
        for (int i = 0; i < lines.size(); i++) {
            double volts = Double.parseDouble(lines.get(i).split(",")[2]);
            enter("drop", i + 1, String.format(Locale.ROOT, "%.1f", volts * 1e3));
        }
        assertThat(text("#drop [data-progress]")).startsWith("17 of 17 read, ").doesNotContain("none");
        String csv = browser.text("document.querySelector('#drop [data-csv]').value");
        assertThat(csv).startsWith("from,to,reading\n1,2,").contains(" mV\n");
        browser.open(orchard);
        assertThat(browser.text("document.querySelector('#drop [data-csv]').value"))
                .as("kept over a reload")
                .isEqualTo(csv);
        Path file = Files.writeString(temp.resolve("drop.csv"), csv);
        Run diagnosis = Run.of("diagnose", ORCHARD, file.toString(), "--test", "drop", "--feed", "1,5");
        assertThat(diagnosis.code()).as(diagnosis.err()).isEqualTo(1);
        assertThat(diagnosis.out()).contains("oil 5", "open");
        browser.open(page(MOUNTAIN, "other", "drop"));
        assertThat(text("#drop [data-progress]")).as("another job has nothing").isEqualTo("0 of 400 read");
    }

    @Test
    void outliersAreToldInWords() throws Exception {
        browser.open(orchard);
        String[] readings = {"84.7", "-84,7", "84.7", "0.4", "-75.3", "OL", "-60", "x", "4.71", "-300", "84.7", "84.7"};
        for (int i = 0; i < readings.length; i++) {
            enter("drop", i + 1, readings[i]);
        }
        assertThat(says("drop", 1)).isEqualTo("✓ fits");
        assertThat(says("drop", 2)).isEqualTo("⇄ wrong sign");
        assertThat(says("drop", 4)).isEqualTo("▼ reads nothing, or nearly");
        assertThat(says("drop", 6)).startsWith("✖ open: expected −75.29");
        assertThat(says("drop", 7)).isEqualTo("▼ 20 % low");
        assertThat(says("drop", 8)).startsWith("✖ not a number");
        assertThat(says("drop", 9)).isEqualTo("✓ fits");
        assertThat(says("drop", 10)).startsWith("⇄ wrong sign, and ");
        assertThat(text("#drop [data-progress]")).isEqualTo("12 of 17 read, 6 stand out");
        assertThat(text("#drop [data-export]")).isEqualTo("One entry is not a number and is left out.");
        assertThat(browser.text("document.querySelector('#drop [data-csv]').value"))
                .contains("2,3,-84.7 mV\n", "6,7,OL\n")
                .doesNotContain("x");
        browser.tap("#drop_1 + button");
        assertThat(says("drop", 1)).isEqualTo("⇄ wrong sign");
        enter("ground", 1, "500");
        enter("ground", 2, "0.2");
        browser.tap("#ground_3 + button");
        assertThat(says("ground", 1)).isEqualTo("✓ not under 5 Mohm");
        assertThat(says("ground", 2)).startsWith("✖ joined to the shaft");
        assertThat(says("ground", 3)).isEqualTo("✓ open, as expected");
    }

    @Test
    void enterGoesToTheNextEntry() throws Exception {
        browser.open(orchard);
        enter("resistance", 1, "140");
        browser.key("Enter");
        browser.type("141");
        assertThat(browser.text("document.activeElement.id")).isEqualTo("resistance_2");
        assertThat(browser.text("document.querySelector('#resistance [data-csv]').value"))
                .isEqualTo("from,to,reading\n1,2,140 mΩ\n2,3,141 mΩ\n");
        browser.tap("#resistance [data-do=next]");
        assertThat(browser.text("document.activeElement.id")).isEqualTo("resistance_3");
    }

    @Test
    void everyExportCanBeRead() throws Exception {
        browser.open(orchard);
        for (String test : List.of("resistance", "ground", "growler")) {
            for (int i = 1; i <= 17; i++) {
                browser.value("(() => { const e = document.getElementById('" + test + "_" + i + "'); e.value = '"
                        + (test.equals("ground") ? "OL" : ".5") + "';"
                        + " e.dispatchEvent(new Event('input', {bubbles: true})); })()");
            }
        }
        browser.value("document.querySelectorAll('#polarity [data-entry]').forEach(e => { e.value = '1';"
                + " e.dispatchEvent(new Event('input', {bubbles: true})); })");
        for (String test : List.of("resistance", "ground", "growler", "polarity")) {
            Path file = Files.writeString(
                    temp.resolve(test + ".csv"),
                    browser.text("document.querySelector('#" + test + " [data-csv]').value"));
            Run run = Run.of("diagnose", ORCHARD, file.toString(), "--test", test);
            assertThat(run.err()).as(test).isEmpty();
            assertThat(run.code()).as(test).isLessThan(2);
        }
    }

    @Test
    void theFileToSaveHoldsTheReadings() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("saved"));
        browser.send("Browser.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", folder.toString()));
        browser.open(orchard);
        enter("drop", 1, "84.7");
        browser.tap("#drop [data-do=save]");
        Path saved = folder.resolve("drop.csv");
        for (int i = 0; i < 200 && !Files.exists(saved); i++) {
            Thread.sleep(50);
        }
        assertThat(saved).content().isEqualTo("from,to,reading\n1,2,84.7 mV\n");
    }

    @Test
    void ticksAreKeptAndClearedOnlyAfterAsking() throws Exception {
        browser.open(orchard);
        browser.tap("#drop .tick input");
        browser.value("document.querySelector('#work details').open = true");
        browser.tap("#work .tick:first-child");
        enter("drop", 1, "84.7");
        browser.open(orchard);
        assertThat(text("#drop [data-count]")).isEqualTo("1 of 6 ticked");
        assertThat(text("#work [data-count]")).startsWith("1 of ");
        browser.tap("#drop [data-do=clear]");
        assertThat(text("#drop [data-sure] span")).startsWith("Clear 1 reading and 1 tick here?");
        browser.tap("#drop [data-do=clear-no]");
        assertThat(text("#drop [data-progress]")).startsWith("1 of 17 read");
        browser.tap("#drop [data-do=clear]");
        browser.tap("#drop [data-do=clear-yes]");
        browser.open(orchard);
        assertThat(text("#drop [data-progress]")).isEqualTo("0 of 17 read");
        assertThat(text("#drop [data-count]")).isEqualTo("0 of 6 ticked");
        assertThat(text("#work [data-count]")).as("others stay").startsWith("1 of ");
    }

    @Test
    void worksWhereNothingIsKept() throws Exception {
        JsonNode id = browser.send(
                "Page.addScriptToEvaluateOnNewDocument",
                Map.of(
                        "source",
                        "Object.defineProperty(window, 'localStorage', {configurable: true, get() { throw new"
                                + " DOMException('refused', 'SecurityError'); }});"));
        try {
            browser.open(orchard);
            assertThat(browser.value("document.getElementById('storage').hidden")
                            .asBoolean())
                    .isFalse();
            assertThat(text("#storage")).contains("keeps nothing");
            enter("drop", 1, "84.7");
            assertThat(text("#drop [data-progress]")).startsWith("1 of 17 read");
        } finally {
            browser.send(
                    "Page.removeScriptToEvaluateOnNewDocument",
                    Map.of("identifier", id.get("identifier").asText()));
            browser.open(orchard);
        }
    }

    @Test
    void spoiltEntriesAreNotRun() throws Exception {
        browser.open(orchard);
        browser.value("(() => { const p = 'coilwright 1 ' + document.body.dataset.job + ' readings '"
                + " + document.getElementById('drop').dataset.test;"
                + " localStorage.setItem(p, JSON.stringify({'1-2': '<img src=x onerror=alert(1)>', '2-3': {}, '3-4': 5}));"
                + " localStorage.setItem('coilwright 1 ' + document.body.dataset.job + ' ticks work formed-coils', '{');"
                + " })()");
        browser.open(orchard);
        assertThat(text("#drop [data-progress]")).isEqualTo("1 of 17 read, 1 stands out");
        assertThat(browser.value("document.images.length").asInt()).isZero();
    }

    @Test
    void hostileJobsAreInert() throws Exception {
        String hostile = "</script><script>window.bad = 1</script><img src=//example.invalid/x onerror=window.bad=2>";
        Path job = Files.writeString(
                temp.resolve("hostile.yaml"),
                Files.readString(Path.of(ORCHARD)).replaceFirst("title: .*", "title: \"" + hostile + "\"")
                        + "\nnotes:\n  - \"" + hostile + "\"\n");
        browser.open(page(job.toString(), "hostile", "drop"));
        assertThat(browser.value("window.bad === undefined").asBoolean()).isTrue();
        assertThat(text("h1")).isEqualTo(hostile);
        assertThat(browser.value("document.images.length").asInt()).isZero();
        // Even with the escaping broken the policy would hold.
        browser.value("(() => { const s = document.createElement('script'); s.textContent = 'window.bad = 3';"
                + " document.body.append(s); })()");
        assertThat(browser.value("window.bad === undefined").asBoolean()).isTrue();
        assertThat(browser.complaints()).hasSize(1).allMatch(c -> c.contains("Content Security Policy"));
        browser.open(orchard);
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = BenchPageBrowserTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void fitsATelephoneAndAGlove() throws Exception {
        String look = resource("bench-page-look.js");
        for (Path page : List.of(orchard, page(MOUNTAIN, "mountain", "drop", "--also", "ground"))) {
            browser.open(page);
            for (String scheme : List.of("light", "dark")) {
                browser.window(360, 740, scheme);
                browser.value("document.querySelectorAll('details').forEach(d => { d.open = true; })");
                browser.value("(() => { let i = 0; document.querySelectorAll('#drop [data-entry]').forEach(e => {"
                        + " if (i++ < 12) { e.value = ['80', '-3', 'x', 'OL'][i % 4];"
                        + " e.dispatchEvent(new Event('input', {bubbles: true})); } });"
                        + " document.querySelector('#drop [data-do=clear]').click(); })()");
                JsonNode found = browser.value(look);
                assertThat(found.get("scroll").asInt()).isEqualTo(360);
                assertThat(found.get("wide")).as("wider than the window").isEmpty();
                assertThat(found.get("small")).as("under 44 px").isEmpty();
                assertThat(found.get("faint")).as(scheme + ": contrast under 7").isEmpty();
                assertThat(found.get("texts").asInt()).as("texts looked at").isGreaterThan(150);
                assertThat(found.get("targets").asInt()).as("targets looked at").isGreaterThan(80);
                assertThat(found.get("nameless"))
                        .as("without a name for a reader")
                        .isEmpty();
            }
        }
    }

    @Test
    void printsOnPages() throws Exception {
        browser.open(orchard);
        enter("drop", 1, "84.7");
        byte[] pdf = browser.pdf();
        String raw = new String(pdf, StandardCharsets.ISO_8859_1);
        assertThat(raw).startsWith("%PDF");
        int few = raw.split("/Type /Page\\b").length - 1;
        assertThat(few).isBetween(2, 8);
        browser.tap("[data-do=open-all]");
        String all = new String(browser.pdf(), StandardCharsets.ISO_8859_1);
        assertThat(all.split("/Type /Page\\b").length - 1)
                .as("with all parts open")
                .isGreaterThan(few);
    }

    /** As many texts as the system property {@code fuzz} says, a few hundred unless given. */
    @Test
    void whateverIsTypedIsHandedOverAsAReadingOrSaidToBeNone() throws Exception {
        browser.open(orchard);
        int left = Integer.getInteger("fuzz", 300);
        Random random = new Random(1);
        while (left > 0) {
            List<String> typed = new ArrayList<>();
            for (; left > 0 && typed.size() < 500; left--) {
                typed.add(typed(random));
            }
            JsonNode got =
                    browser.value("(" + Browser.quoted(String.join("\u0001", typed)) + ".split('\\u0001')).map(t => {"
                            + " const e = document.getElementById('drop_1'); e.value = t;"
                            + " e.dispatchEvent(new Event('input', {bubbles: true}));"
                            + " return [document.querySelector('#drop [data-csv]').value,"
                            + " document.getElementById('drop_1-s').textContent]; })");
            for (int i = 0; i < typed.size(); i++) {
                String csv = got.get(i).get(0).asText();
                String says = got.get(i).get(1).asText();
                if (csv.equals("from,to,reading\n")) {
                    assertThat(says.isEmpty() || says.contains("not a number"))
                            .as("%s: %s", Browser.quoted(typed.get(i)), says)
                            .isTrue();
                } else {
                    assertThat(ReadingsFile.parse(Browser.quoted(typed.get(i)), csv, 17)
                                    .readings())
                            .hasSize(1);
                    assertThat(says).doesNotContain("not a number");
                }
            }
        }
    }

    private static final List<String> PARTS = List.of(
            "",
            "0",
            "1",
            "12.3",
            ".5",
            "5.",
            ",",
            ".",
            "-",
            "+",
            "\u2212",
            "OL",
            "o.l",
            "inf",
            "\u221e",
            "NaN",
            "1e9",
            "1e999",
            "0x1F",
            " ",
            "\u00a0",
            "\u0661",
            "\uff11",
            "mV",
            "\u202e",
            "\u001b[31m",
            "\ud83e\uddf2",
            "<b>",
            "\"",
            "'",
            "=1+1",
            "999999999999",
            "000",
            "1\n2",
            "\t",
            "__proto__",
            "open",
            "0L");

    private static String typed(Random random) {
        StringBuilder out = new StringBuilder();
        for (int i = 1 + random.nextInt(4); i > 0; i--) {
            out.append(PARTS.get(random.nextInt(PARTS.size())));
        }
        return out.toString();
    }
}
