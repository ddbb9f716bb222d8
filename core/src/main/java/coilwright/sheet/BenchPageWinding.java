package coilwright.sheet;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/** What a bench page tells of each coil, bar and slot that is touched. */
final class BenchPageWinding {
    private final Winding winding;
    private final Map<Integer, List<Coil>> top = new LinkedHashMap<>();
    private final Map<Integer, List<Coil>> bottom = new LinkedHashMap<>();
    private final Map<Integer, List<Coil>> topLead = new LinkedHashMap<>();
    private final Map<Integer, List<Coil>> bottomLead = new LinkedHashMap<>();

    /**
     * One thing.
     *
     * @param number its number
     * @param words what it belongs with, in one line
     * @param detail which side or lead goes where
     * @param coils to light up
     * @param bars to light up
     * @param slots to light up
     */
    record Told(
            int number, String words, String detail, List<Integer> coils, List<Integer> bars, List<Integer> slots) {}

    BenchPageWinding(Winding winding) {
        this.winding = winding;
        for (Coil c : winding.coils()) {
            put(top, c.top().slot(), c);
            put(bottom, c.bottom().slot(), c);
            c.topBar().ifPresent(b -> put(topLead, b, c));
            c.bottomBar().ifPresent(b -> put(bottomLead, b, c));
        }
    }

    private static void put(Map<Integer, List<Coil>> to, int key, Coil coil) {
        to.computeIfAbsent(key, k -> new ArrayList<>()).add(coil);
    }

    List<Told> coils() {
        return winding.coils().stream().map(this::coil).toList();
    }

    List<Told> bars() {
        List<Told> out = new ArrayList<>();
        for (int bar = 1; bar <= winding.armature().bars(); bar++) {
            out.add(bar(bar));
        }
        return out;
    }

    List<Told> slots() {
        List<Told> out = new ArrayList<>();
        for (int slot = 1; slot <= winding.armature().slots(); slot++) {
            out.add(slot(slot));
        }
        return out;
    }

    private Told coil(Coil c) {
        List<Integer> slots = List.of(c.top().slot(), c.bottom().slot());
        List<Integer> bars = bars(List.of(c));
        String set = winding.sets().size() > 1 ? winding.setOf(c).type().word() + " " : "";
        String name = (c.isDead() ? "dead " : "") + set + "coil " + c.number();
        return new Told(
                c.number(),
                name + ": slots " + and(slots) + ", "
                        + (bars.isEmpty() ? "no bars" : (bars.size() == 1 ? "bar " : "bars ") + and(bars)),
                c.isDead()
                        ? "Leads cut and insulated; it stays in its slots for balance."
                        : "Top side in slot " + c.top().slot() + ", its lead on " + landing(c.topBar())
                                + ". Bottom side in slot " + c.bottom().slot() + ", its lead on "
                                + landing(c.bottomBar()) + ".",
                List.of(c.number()),
                bars,
                slots);
    }

    private static String landing(OptionalInt bar) {
        return bar.isPresent() ? "bar " + bar.getAsInt() : "no bar";
    }

    private Told bar(int bar) {
        List<Coil> tops = topLead.getOrDefault(bar, List.of());
        List<Coil> bottoms = bottomLead.getOrDefault(bar, List.of());
        List<Coil> all = both(tops, bottoms);
        List<String> detail = new ArrayList<>();
        tops.forEach(c -> detail.add(
                "Top lead of coil " + c.number() + " from slot " + c.top().slot() + "."));
        bottoms.forEach(c -> detail.add(
                "Bottom lead of coil " + c.number() + " from slot " + c.bottom().slot() + "."));
        return new Told(
                bar,
                "bar " + bar + ": " + (all.isEmpty() ? "no lead lands on it" : coilWords(all)),
                String.join(" ", detail),
                numbers(all),
                List.of(bar),
                slots(tops, bottoms));
    }

    private Told slot(int slot) {
        List<Coil> tops = top.getOrDefault(slot, List.of());
        List<Coil> bottoms = bottom.getOrDefault(slot, List.of());
        List<Coil> all = both(tops, bottoms);
        List<Integer> bars = bars(all);
        String landed = bars.isEmpty() ? "" : (bars.size() == 1 ? ", bar " : ", bars ") + and(bars);
        return new Told(
                slot,
                "slot " + slot + ": " + (all.isEmpty() ? "no coil side lies in it" : coilWords(all) + landed),
                (tops.isEmpty() ? "" : "Top: " + coilWords(tops) + ". ")
                        + (bottoms.isEmpty() ? "" : "Bottom: " + coilWords(bottoms) + "."),
                numbers(all),
                bars,
                List.of(slot));
    }

    private static List<Integer> slots(List<Coil> tops, List<Coil> bottoms) {
        Set<Integer> out = new LinkedHashSet<>();
        tops.forEach(c -> out.add(c.top().slot()));
        bottoms.forEach(c -> out.add(c.bottom().slot()));
        return List.copyOf(out);
    }

    private static List<Integer> bars(List<Coil> coils) {
        Set<Integer> out = new LinkedHashSet<>();
        for (Coil c : coils) {
            c.topBar().ifPresent(out::add);
            c.bottomBar().ifPresent(out::add);
        }
        return List.copyOf(out);
    }

    private static List<Coil> both(List<Coil> a, List<Coil> b) {
        Set<Coil> out = new LinkedHashSet<>(a);
        out.addAll(b);
        return List.copyOf(out);
    }

    private static List<Integer> numbers(List<Coil> coils) {
        return coils.stream().map(Coil::number).toList();
    }

    private static String coilWords(List<Coil> coils) {
        return (coils.size() == 1 ? "coil " : "coils ") + and(numbers(coils));
    }

    /** "3", "3 and 6", "3, 4 and 6". */
    static String and(List<Integer> numbers) {
        int last = numbers.size() - 1;
        String end = Integer.toString(numbers.get(last));
        return last == 0
                ? end
                : numbers.subList(0, last).stream().map(String::valueOf).collect(Collectors.joining(", ")) + " and "
                        + end;
    }

    /** What tells this winding from any other. */
    String signature() {
        Armature a = winding.armature();
        return a.slots() + " " + a.bars() + " " + a.poles() + " " + a.slotOneInLineWith() + "\n"
                + winding.coils().stream()
                        .map(c -> c.number() + " " + c.top().slot() + " "
                                + c.bottom().slot() + " " + landing(c.topBar()) + " " + landing(c.bottomBar()))
                        .collect(Collectors.joining("\n"));
    }

    /** The same as JSON that no script element takes for its end. */
    String json() {
        return "{\"coil\":" + list(coils()) + ",\"bar\":" + list(bars()) + ",\"slot\":" + list(slots()) + "}";
    }

    private static String list(List<Told> things) {
        return things.stream()
                .map(t -> "[" + t.number() + "," + quoted(t.words()) + "," + quoted(t.detail()) + "," + t.coils() + ","
                        + t.bars() + "," + t.slots() + "]")
                .collect(Collectors.joining(",\n", "[", "]"));
    }

    /** A JSON string of plain ASCII, without any sign that means something in HTML. */
    static String quoted(String words) {
        var to = new StringBuilder(words.length() + 2).append('"');
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            if (c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' || c == '\'') {
                to.append("\\u").append(String.format(Locale.ROOT, "%04x", (int) c));
            } else {
                to.append(c);
            }
        }
        return to.append('"').toString();
    }
}
