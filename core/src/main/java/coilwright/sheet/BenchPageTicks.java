package coilwright.sheet;

import coilwright.job.Job;
import coilwright.rewind.Checklist;
import coilwright.rewind.Checklist.Item;
import coilwright.rewind.Checklist.Section;
import coilwright.rewind.Limit;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.rewind.WorkStep;
import coilwright.rewind.WorkTest;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The parts of a bench page whose steps are ticked off: the order of work, cleaning and inspection. */
final class BenchPageTicks {
    private final BenchPageHtml html;

    BenchPageTicks(BenchPageHtml html) {
        this.html = html;
    }

    /**
     * The order of work.
     *
     * @throws IllegalArgumentException when the winding is not wound this way
     */
    void work(Job job, WindingWay way) {
        WorkOrder order = WorkSheet.order(job, way);
        part("work", "Order of work: " + way.words(), "work " + way.word());
        caution(html, order.cautions());
        html.element("h3", "Before you begin").items(order.notes());
        html.element(
                "p",
                "Source of this order: " + order.source().cite()
                        + ". Where the machine as found was made otherwise, do as found.");
        html.open("ol", "class", "ticks");
        for (WorkStep s : order.steps()) {
            List<String> more = new ArrayList<>();
            if (!s.tests().isEmpty()) {
                more.add("Tests: " + s.tests().stream().map(WorkTest::title).collect(Collectors.joining("; ")) + ".");
            }
            more.addAll(s.remarks());
            tick(Integer.toString(s.number()), s.number() + ".", s.text() + ".", String.join(" ", more));
        }
        html.close("ol");
        end();
    }

    /** Cleaning and inspection, and what to note before stripping. */
    void inspection(Job job) {
        boolean equalized = job.equalizers().isPresent() || job.winding().type() == WindingType.FROG_LEG;
        Checklist list = Checklist.of(equalized);
        part("inspection", "Cleaning and inspection", "inspection");
        caution(
                html,
                list.items(Section.CAUTION).stream()
                        .map(i -> sentence(i.text()))
                        .toList());
        Map<Section, String> heads = new LinkedHashMap<>();
        heads.put(Section.CLEAN, "1. Clean and dry, before any test");
        heads.put(Section.LOOK, "2. Look");
        heads.put(Section.TEST, "3. Test, in this order");
        heads.put(Section.INSULATION, "4. Insulation, part by part");
        heads.put(Section.RECORD, "5. Before stripping: what to note");
        heads.forEach((section, head) -> {
            html.element("h3", head).open("ol", "class", "ticks");
            for (Item i : list.items(section)) {
                String key = section.name().toLowerCase(Locale.ROOT) + " " + i.id();
                tick(key, "", sentence(i.text()), more(i));
            }
            html.close("ol");
        });
        Limit limit = Limit.of("ir-ieee43-2013");
        html.element(
                "p",
                "Insulation resistance of a DC armature: " + limit.words() + " " + limit.note() + " ("
                        + limit.source().cite() + "). Other machines and editions have other limits.");
        html.element(
                "p",
                "Source of this list: " + list.source().cite() + ". What the maker of the machine says comes first.");
        end();
    }

    private static String more(Item i) {
        List<String> out = new ArrayList<>();
        if (!i.sound().isEmpty()) {
            out.add("Sound: " + i.sound() + ".");
        }
        if (!i.touchUp().isEmpty()) {
            out.add((i.section() == Section.INSULATION ? "Touch up: " : "If not: ") + i.touchUp() + ".");
        }
        if (!i.renew().isEmpty()) {
            out.add("Renew: " + i.renew() + ".");
        }
        return String.join(" ", out);
    }

    private static String sentence(String words) {
        return words.endsWith(".") ? words : words + ".";
    }

    private void part(String id, String title, String key) {
        html.open("section", "id", id, "data-ticks", key);
        html.open("details").open("summary").open("h2").text(title).raw("</h2> ");
        html.raw("<span class=\"count\" data-count></span>").close("summary");
        html.button("Go to the next step", "data-do", "next-tick");
    }

    private void end() {
        clear(html, "Clear these ticks");
        html.close("details").close("section");
    }

    /** One step with its box. */
    void tick(String key, String number, String words, String more) {
        html.raw("<li><label class=\"tick\">")
                .open("input", "type", "checkbox", "data-tick", key)
                .raw("<span>")
                .text(number.isEmpty() ? "" : number + " ")
                .text(words);
        if (!more.isEmpty()) {
            html.raw(" <small>").text(more).raw("</small>");
        }
        html.raw("</span></label></li>\n");
    }

    /** What can hurt someone, where it cannot be overlooked. */
    static void caution(BenchPageHtml html, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        html.open("div", "class", "warn", "role", "note", "aria-label", "Caution");
        html.raw("<p><strong>\u26A0 Caution</strong></p>\n").items(lines).close("div");
    }

    /** A button that asks before it clears. */
    static void clear(BenchPageHtml html, String words) {
        html.open("div", "class", "clear");
        html.button(words, "data-do", "clear", "aria-expanded", "false");
        html.raw("<div hidden data-sure role=\"alert\"><span></span>\n");
        html.button("Yes, clear", "data-do", "clear-yes").button("No, keep", "data-do", "clear-no");
        html.close("div").close("div");
    }
}
