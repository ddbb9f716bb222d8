package coilwright.sheet;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.drawing.DrawingView;
import coilwright.drawing.ViewOptions;
import coilwright.job.Job;
import coilwright.rewind.WindingWay;
import coilwright.winding.Winding;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One HTML file for a telephone or tablet at the bench: drawings that tell what is touched, what each pair should read
 * with room for what it reads, and steps to tick off. It needs no network and nothing to install; what is entered stays
 * in the browser until it is handed over. The same job gives the same bytes.
 *
 * <p>The page forbids itself everything but its own style sheet and script, by their digests.
 */
public final class BenchPage {
    private static final String FOLDER = "/coilwright/page/";

    /**
     * One test, walked in the usual order.
     *
     * @param armature what the readings are expected of: the sound one, with its equalizers if it has any
     * @param test the test with its set-up
     * @param knownGood one reading of the growler meter on a pair known to be good, volts: growler readings are then in
     *     volts; relative where empty
     */
    public record Walk(BenchArmature armature, BenchTest test, Optional<PairReading> knownGood) {}

    /**
     * What a page holds.
     *
     * @param name what tells the job from another of the same title, such as the name of its file: readings are kept
     *     under it
     * @param walks the tests, in order
     * @param way how the armature is wound, for the order of work; left out where empty
     */
    public record Contents(String name, List<Walk> walks, Optional<WindingWay> way) {
        /**
         * Copies the list.
         *
         * @param name what tells the job from another of the same title, such as the name of its file: readings are
         *     kept under it
         * @param walks the tests, in order
         * @param way how the armature is wound, for the order of work; left out where empty
         */
        public Contents {
            walks = List.copyOf(walks);
        }
    }

    private final Job job;
    private final Winding winding;
    private final Contents contents;
    private final BenchPageHtml html = new BenchPageHtml();

    private BenchPage(Job job, Contents contents) {
        this.job = job;
        this.winding = job.build();
        this.contents = contents;
    }

    /**
     * {@return the page of a job}
     *
     * @param job what the armature is
     * @param contents tests and steps that go on it
     * @throws coilwright.winding.ImpossibleWindingException when the job cannot be wound
     * @throws IllegalArgumentException when a test, a known-good reading or the way does not suit the winding, or a
     *     test comes twice with the same set-up
     */
    public static String of(Job job, Contents contents) {
        return new BenchPage(job, contents).page();
    }

    private String page() {
        var told = new BenchPageWinding(winding);
        var options = ViewOptions.of(job.title());
        var round = BenchPageDrawing.of(DrawingView.ROUND.draw(winding, options).first(), "r-");
        var developed =
                BenchPageDrawing.of(DrawingView.DEVELOPED.draw(winding, options).first(), "d-");
        List<BenchPageReadings> tests = tests();
        String style = "\n" + round.style() + resource("page.css");
        String script = "\n" + resource("page.js");
        html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        html.open("meta", "http-equiv", "Content-Security-Policy", "content", policy(style, script))
                .raw("\n");
        html.raw("""
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta name="color-scheme" content="light dark">
                <meta name="referrer" content="no-referrer">
                <meta name="format-detection" content="telephone=no">
                """);
        html.element("title", job.title() + " – bench page");
        html.raw("<style>").raw(style).raw("</style>\n</head>\n");
        html.open("body", "data-job", key(told)).raw("\n");
        header(tests);
        html.raw("<main>\n");
        drawings(round, developed);
        winding();
        tests.forEach(BenchPageReadings::write);
        var ticks = new BenchPageTicks(html);
        contents.way().ifPresent(way -> ticks.work(job, way));
        ticks.inspection(job);
        footer();
        html.raw("<script type=\"application/json\" id=\"winding-data\">")
                .raw(told.json())
                .raw("</script>\n<script>")
                .raw(script)
                .raw("</script>\n</body>\n</html>\n");
        return html.toString();
    }

    private List<BenchPageReadings> tests() {
        List<BenchPageReadings> out = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        Set<String> signatures = new HashSet<>();
        for (Walk walk : contents.walks()) {
            if (!signatures.add(BenchPageReadings.signature(walk.test()))) {
                throw new IllegalArgumentException("the " + walk.test().word()
                        + " test was asked for twice with the same set-up: a page holds it once");
            }
            int n = seen.merge(walk.test().word(), 1, Integer::sum);
            String id = walk.test().word() + (n == 1 ? "" : "-" + n);
            out.add(new BenchPageReadings(html, job, walk, id));
        }
        return out;
    }

    private void header(List<BenchPageReadings> tests) {
        html.raw("<header>\n").element("h1", job.title());
        html.element(
                "p",
                winding.armature().slots() + " slots, " + winding.armature().bars() + " bars, "
                        + winding.armature().poles() + " poles. Seen from the commutator end, everything counts"
                        + " clockwise.");
        html.raw("<p id=\"storage\" class=\"warn\" role=\"status\" hidden></p>\n"
                + "<noscript><p class=\"warn\">Scripts are off: what is expected stands here, but nothing that is"
                + " entered is compared or kept.</p></noscript>\n");
        html.raw("<nav aria-label=\"Parts of this page\">\n");
        link("drawings", "Drawing");
        for (int i = 0; i < tests.size(); i++) {
            link(tests.get(i).id(), tests.get(i).name());
        }
        if (contents.way().isPresent()) {
            link("work", "Order of work");
        }
        link("inspection", "Inspection");
        link("page", "Print");
        html.raw("</nav>\n</header>\n");
    }

    private void footer() {
        html.raw("</main>\n<footer>\n<section id=\"page\">\n<h2>This page</h2>\n");
        html.element(
                "p",
                "Entries and ticks stay in this browser, for this job alone. Parts that are closed are not printed.");
        html.raw("<div class=\"tools\">\n");
        html.button("Open all parts", "data-do", "open-all").button("Close all parts", "data-do", "close-all");
        html.button("Print", "data-do", "print");
        html.raw("</div>\n</section>\n</footer>\n");
    }

    private void link(String id, String words) {
        html.element("a", words, "class", "button", "href", "#" + id);
    }

    private void drawings(BenchPageDrawing round, BenchPageDrawing developed) {
        html.raw("<section id=\"drawings\">\n<h2>Drawing</h2>\n<div class=\"tools\" role=\"group\""
                + " aria-label=\"Which drawing\">\n");
        html.button("Round", "data-do", "view", "data-view", "round", "aria-pressed", "true");
        html.button("Developed", "data-do", "view", "data-view", "developed", "aria-pressed", "false");
        html.raw("</div>\n<div class=\"tools\" role=\"group\" aria-label=\"What to step through\">\n");
        html.button("Coil", "data-do", "kind", "data-kind", "coil", "aria-pressed", "true");
        html.button("Bar", "data-do", "kind", "data-kind", "bar", "aria-pressed", "false");
        html.button("Slot", "data-do", "kind", "data-kind", "slot", "aria-pressed", "false");
        html.raw("<label>Number <input id=\"pick\" type=\"text\" inputmode=\"numeric\" autocomplete=\"off\""
                + " maxlength=\"4\"></label>\n</div>\n<div class=\"told\">\n");
        html.button("◀", "data-do", "step", "data-by", "-1", "aria-label", "Previous");
        html.raw("<p id=\"told\" role=\"status\"><strong>Touch a coil, a bar or a slot, or step with the arrows."
                + "</strong></p>\n");
        html.button("▶", "data-do", "step", "data-by", "1", "aria-label", "Next");
        html.raw("</div>\n");
        drawing("round", "Round drawing", round, "");
        drawing("developed", "Developed drawing", developed, "hidden");
        html.raw("<div class=\"tools\" role=\"group\" aria-label=\"Size of the drawing\">\n");
        html.button("−", "data-do", "zoom", "data-by", "-1", "aria-label", "Smaller");
        html.button("+", "data-do", "zoom", "data-by", "1", "aria-label", "Larger");
        html.button("Whole", "data-do", "zoom", "data-by", "0");
        html.raw("</div>\n</section>\n");
    }

    private void drawing(String view, String name, BenchPageDrawing d, String hidden) {
        // Nobody can read a drawing that is squeezed to a tenth of its size.
        boolean large = Math.max(d.width(), d.height()) > 900;
        html.open(
                "div",
                "class",
                large ? "pan large" : "pan",
                "data-view",
                view,
                "data-width",
                Double.toString(d.width()),
                "tabindex",
                "0",
                "role",
                "region",
                "aria-label",
                name + ", to touch and move about",
                hidden,
                "");
        html.raw("\n").raw(d.svg()).close("div");
        if (large) {
            html.raw("<p class=\"print-only\">")
                    .text("The " + view + " drawing is too large for this paper: print it with")
                    .raw(" <code>")
                    .text("coilwright draw JOB --view " + view + " --out " + view + ".pdf")
                    .raw("</code>.</p>\n");
        }
    }

    private void winding() {
        html.raw("<section id=\"winding\">\n<details><summary><h2>Winding</h2></summary>\n<dl>\n");
        WindingFacts.of(job, winding, job.equalizers().isPresent())
                .forEach((k, v) ->
                        html.raw("<div>").element("dt", k).element("dd", v).raw("</div>"));
        html.raw("</dl>\n");
        if (!job.particulars().notes().isEmpty()) {
            html.element("h3", "Notes").items(job.particulars().notes());
        }
        html.raw("</details>\n</section>\n");
    }

    /** The name under which a browser keeps what is entered: another for another job. */
    private String key(BenchPageWinding told) {
        byte[] digest = sha256(contents.name() + "\n" + job.title() + "\n" + told.signature());
        return HexFormat.of().formatHex(digest, 0, 12);
    }

    private static String policy(String style, String script) {
        return "default-src 'none'; style-src '" + source(style) + "'; script-src '" + source(script)
                + "'; base-uri 'none'; form-action 'none'";
    }

    private static String source(String text) {
        return "sha256-" + Base64.getEncoder().encodeToString(sha256(text));
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static String resource(String name) {
        try (InputStream in = BenchPage.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException(FOLDER + name + " is missing from the library");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(FOLDER + name, e);
        }
    }
}
