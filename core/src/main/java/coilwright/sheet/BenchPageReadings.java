package coilwright.sheet;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.Procedure;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.Quantity;
import coilwright.job.TakenReading;
import coilwright.job.TestKind;
import coilwright.rewind.Limit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One test of a bench page: how it is done, what each pair should read, and room for what it reads. */
final class BenchPageReadings {
    private static final String NO_UNIT = "no unit";
    private static final List<String> VOLTS = List.of("mV", "V", "µV");
    private static final List<String> AMPERES = List.of("mA", "A");
    private static final List<String> OHMS = List.of("mΩ", "Ω", "µΩ", "kΩ", "MΩ");

    private final BenchPageHtml html;
    private final Job job;
    private final BenchPage.Walk walk;
    private final BenchTest test;
    private final TestKind kind;
    private final String id;
    private final TestSheet sheet;
    private final TestSheet.Expected expected;
    private final Procedure procedure;

    /**
     * Works the test out.
     *
     * @param id of the part, unique in the page
     */
    BenchPageReadings(BenchPageHtml html, Job job, BenchPage.Walk walk, String id) {
        this.html = html;
        this.job = job;
        this.walk = walk;
        this.test = walk.test();
        this.kind = TestKind.of(test.word()).orElseThrow();
        this.id = id;
        this.sheet = new TestSheet(job, walk.armature(), new TestSheet.Options(walk.knownGood(), Palette.COLOUR));
        this.expected = sheet.expected(test);
        this.procedure = sheet.procedure(test);
    }

    String id() {
        return id;
    }

    String title() {
        return procedure.title() + (test instanceof BenchTest.GroundWalk ? ", walk to find the place" : "");
    }

    /** A short name. */
    String name() {
        String word = id.replace('-', ' ');
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    /** What tells this test from another of the same armature. */
    static String signature(BenchTest test) {
        return test.word() + " " + test.setUp() + " " + TestSheet.amperes(test).orElse("");
    }

    void write() {
        html.open(
                "section",
                "id",
                id,
                "class",
                "readings",
                "data-test",
                signature(test),
                "data-file",
                file(),
                "data-kind",
                kind.word(),
                "data-signed",
                yes(test.signed()),
                "data-known",
                yes(scaleKnown()),
                "data-least",
                Double.toString(megohms() * 1e6),
                "data-least-words",
                Limit.of("ir-ieee43-2013").words());
        html.element("h2", title());
        html.element("p", setUp(), "class", "set");
        BenchPageTicks.caution(html, procedure.cautions());
        steps();
        html.element("h3", "Readings");
        if (!allOpen()) {
            html.element(
                    "p", "Expected values are " + TestSheet.unitWords(test, expected.unit()) + ".", "class", "keep");
        }
        controls();
        html.open("div", "class", "head", "aria-hidden", "true");
        html.element("span", "Bars");
        html.element("span", "Expected" + shownUnit());
        html.raw("<span>Read<span data-unit></span></span><span></span>\n").close("div");
        html.raw("<p class=\"print-line keep\">Each line: bars, expected").text(shownUnit());
        html.raw(", read<span data-unit></span>.</p>\n");
        html.open("ol", "class", "rows");
        int n = 0;
        for (int i = 0; i < expected.readings().size(); i++) {
            row(++n, expected.readings().get(i));
        }
        html.close("ol");
        handOver();
        html.close("section");
    }

    private String setUp() {
        String words = test.setUp();
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1)
                + TestSheet.amperes(test).map(a -> ", " + a).orElse("") + ".";
    }

    private void steps() {
        html.open("details", "open", "").open("summary").raw("<h3>Set-up and steps</h3> ");
        html.raw("<span class=\"count\" data-count></span>").close("summary");
        html.open("ol", "class", "ticks");
        var ticks = new BenchPageTicks(html);
        int n = 0;
        for (String s : procedure.setUp()) {
            ticks.tick("set-up " + ++n, "", s, "");
        }
        n = 0;
        for (String s : procedure.steps()) {
            ticks.tick("step " + ++n, "", s, "");
        }
        html.close("ol").close("details");
        html.open("details")
                .open("summary")
                .raw("<h3>What a deviation means</h3>")
                .close("summary");
        html.items(procedure.meaning()).close("details");
        int step = BenchTest.stepWithinCircuit(walk.armature().winding());
        if (step > 1 && !kind.ownPairs()) {
            html.element(
                    "p",
                    "The winding makes " + step + " separate circuits: pairs stand " + step
                            + " bars apart, so that both bars belong to one circuit.");
        }
    }

    private void controls() {
        html.open("div", "class", "tools");
        List<String> units = units();
        if (!units.isEmpty()) {
            html.raw("<label>Meter reads in ").open("select", "data-do", "unit");
            for (String u : units) {
                boolean usual = u.equals(usualUnit(units));
                html.open(
                        "option",
                        "value",
                        u.equals(NO_UNIT) ? "" : u,
                        "data-factor",
                        u.equals(NO_UNIT) ? "1" : factor(u),
                        usual ? "selected" : "",
                        "");
                html.text(u).raw("</option>");
            }
            html.raw("</select></label>\n");
        }
        if (kind != TestKind.GROUND && kind != TestKind.POLARITY) {
            html.raw("<label>Stands out from <select data-do=\"tolerance\">"
                    + "<option value=\"0.05\">5 %</option><option value=\"0.1\" selected>10 %</option>"
                    + "<option value=\"0.2\">20 %</option></select></label>\n");
        }
        html.button("Next not read", "data-do", "next");
        html.close("div");
        html.open("p", "class", "bar-of-progress");
        html.raw("<progress max=\"" + expected.readings().size() + "\" value=\"0\" aria-label=\"Readings entered\">"
                + "</progress> <span role=\"status\" data-progress>0 of "
                + expected.readings().size() + " read</span></p>\n");
        html.raw("<p class=\"overall\" role=\"status\" data-overall></p>\n");
    }

    private void row(int n, PairReading r) {
        String from = TakenReading.name(r.from());
        String to = TakenReading.name(r.to());
        String pair = from + "–" + to;
        String words = expected.unit().words(r.value());
        String input = id + "_" + n;
        String spoken = (kind.toShaft() ? "Bar " + from + " to " + to : "Bars " + from + " and " + to) + ", expected "
                + words.replace("−", "minus ");
        html.open(
                "li",
                "data-from",
                from,
                "data-to",
                to,
                "data-expected",
                Double.isInfinite(r.value()) ? "open" : Double.toString(r.value()),
                "data-words",
                words);
        html.raw("<label for=\"" + input + "\" class=\"pair\">").text(pair);
        if (kind == TestKind.POLARITY) {
            // The walk of this test has one pair for each coil in service, in their order.
            html.raw(" <small>")
                    .text("coil "
                            + walk.armature().winding().liveCoils().get(n - 1).number())
                    .raw("</small>");
        }
        html.raw("</label>");
        html.raw("<span class=\"expected-value\">").text(words).raw("</span>");
        if (kind == TestKind.POLARITY) {
            html.open("select", "id", input, "data-entry", "", "aria-label", spoken, "aria-describedby", input + "-s");
            html.raw("<option value=\"\">–</option><option value=\"1\">+ as sound</option>"
                    + "<option value=\"-1\">− other way</option><option value=\"0\">0 still</option></select>");
        } else {
            html.open(
                    "input",
                    "id",
                    input,
                    "data-entry",
                    "",
                    "type",
                    "text",
                    "inputmode",
                    "decimal",
                    "enterkeyhint",
                    "next",
                    "autocomplete",
                    "off",
                    "maxlength",
                    "16",
                    "aria-label",
                    spoken,
                    "aria-describedby",
                    input + "-s");
            if (test.signed()) {
                html.button("±", "data-do", "sign", "aria-label", "Turn the sign of bars " + from + " and " + to);
            } else if (test.ohms()) {
                html.button("OL", "data-do", "open", "aria-label", "Off the scale at bars " + from + " and " + to);
            }
        }
        html.raw("<span class=\"says\" id=\"" + input + "-s\"></span></li>\n");
    }

    private void handOver() {
        html.open("div", "class", "hand-over");
        html.element("h3", "Hand over");
        html.open("p");
        html.text("The readings as a file that the diagnosis reads:").raw(" <code>");
        html.text("coilwright diagnose JOB " + file() + " --test " + kind.word() + setUpOptions())
                .raw("</code></p>\n");
        html.open("div", "class", "tools");
        html.raw("<a class=\"button\" data-do=\"save\" href=\"#" + id + "\">Save as CSV</a>\n");
        html.button("Copy as text", "data-do", "copy");
        html.close("div");
        html.raw("<p role=\"status\" data-export></p>\n");
        html.open("label", "class", "as-text").text("The same as text");
        html.raw("<textarea data-csv readonly rows=\"5\" spellcheck=\"false\"></textarea>")
                .close("label");
        BenchPageTicks.clear(html, "Clear these readings and ticks");
        html.close("div");
    }

    /** The options by which the diagnosis learns of the same set-up. */
    private String setUpOptions() {
        if (test instanceof BenchTest.Drop d) {
            return " --feed " + d.in() + "," + d.out();
        } else if (test instanceof BenchTest.GroundWalk w) {
            return " --feed " + w.in() + "," + w.out();
        } else if (test instanceof BenchTest.GrowlerWalked g) {
            return " --angle " + plain(g.angle());
        }
        return test instanceof BenchTest.GrowlerTurned g ? " --clock " + plain(g.clockDegrees()) : "";
    }

    private static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private String file() {
        return id + ".csv";
    }

    /** Whether an expected value is what the meter shows, and not only in proportion to it. */
    private boolean scaleKnown() {
        boolean growler = test.relative();
        return growler ? walk.knownGood().isPresent() : job.coilResistance().isPresent();
    }

    private boolean allOpen() {
        return expected.readings().stream().allMatch(r -> Double.isInfinite(r.value()));
    }

    private String shownUnit() {
        if (allOpen() || kind == TestKind.POLARITY) {
            return "";
        }
        String unit = expected.unit().name();
        return (unit.equals("relative") ? ", " : unit.startsWith("×") ? " " : " in ") + unit;
    }

    private List<String> units() {
        List<String> out = new ArrayList<>();
        if (kind == TestKind.POLARITY) {
            return out;
        }
        if (kind.unitless()) {
            out.add(NO_UNIT);
        }
        out.addAll(kind.kinds().contains(Quantity.Kind.RESISTANCE) ? OHMS : VOLTS);
        if (kind.kinds().contains(Quantity.Kind.CURRENT)) {
            out.addAll(AMPERES);
        }
        return out;
    }

    private String usualUnit(List<String> units) {
        if (kind == TestKind.GROUND) {
            return "MΩ";
        }
        return Optional.of(expected.unit().name()).filter(units::contains).orElse(units.get(0));
    }

    /** How much of the base unit one of these is. */
    private static String factor(String unit) {
        var one = new Quantity(BigDecimal.ONE, unit);
        return Double.toString(one.in(one.kind().units().get(0)));
    }

    private static double megohms() {
        return Limit.of("ir-ieee43-2013").low().orElseThrow();
    }

    private static String yes(boolean is) {
        return is ? "yes" : "no";
    }
}
