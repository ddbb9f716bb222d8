package coilwright.drawing;

import coilwright.drawing.Comparison.Difference;
import coilwright.drawing.Overlay.Lead;
import coilwright.drawing.Overlay.Mark;
import coilwright.drawing.Overlay.Sample;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Counting;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Lays connections as found over the plan. Every coil side that was planned or found gets a place of its own in its
 * slot; where the two differ by their leads alone, one coil is drawn with both.
 */
final class ConnectionOverlay {
    private final Winding plan;
    private final Armature armature;
    private final Comparison comparison;
    private final List<Entry> entries = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    /** A coil to be drawn. Without a plan it is one too many, without a find it is missing. */
    private record Entry(int number, Optional<ListedCoil> planned, Optional<ListedCoil> found, String kinds) {
        boolean sameSlots() {
            return planned.isPresent()
                    && found.isPresent()
                    && planned.get().topSlot() == found.get().topSlot()
                    && planned.get().bottomSlot() == found.get().bottomSlot();
        }
    }

    ConnectionOverlay(Winding plan, Comparison comparison) {
        this.plan = plan;
        this.armature = plan.armature();
        this.comparison = comparison;
    }

    Overlay lay() {
        comparison.whole().ifPresent(w -> notes.add("the whole winding: " + w));
        pair();
        List<ListedCoil> places = new ArrayList<>();
        Map<Integer, Mark> marks = new LinkedHashMap<>();
        boolean own = comparison.numbering().isEmpty()
                && entries.stream()
                        .allMatch(e -> e.planned().isPresent()
                                && plan.hasCoil(e.number())
                                && (e.found().isEmpty() || e.sameSlots()));
        Set<Integer> taken = new LinkedHashSet<>();
        entries.forEach(e -> taken.add(e.number()));
        int[] spare = {1 + taken.stream().mapToInt(n -> n).max().orElse(0)};
        taken.clear();
        for (Entry e : entries) {
            if (e.found().isPresent() && !e.sameSlots()) {
                boolean extra = e.planned().isEmpty();
                put(
                        places,
                        marks,
                        taken,
                        spare,
                        e.found().get(),
                        mark(e, extra ? "extra-" : "found-", e.found(), false));
            }
            if (e.planned().isPresent()) {
                boolean planned = !e.sameSlots();
                put(
                        places,
                        marks,
                        taken,
                        spare,
                        e.planned().get(),
                        mark(e, planned && e.found().isPresent() ? "planned-" : "", e.planned(), planned));
            }
        }
        Winding drawn = own ? plan : Winding.build(armature, new WindingSpec.Listed(places));
        return new Overlay(drawn, marks, List.of(), Optional.of(words()));
    }

    /** A coil under its own number, or under one that is free where it is drawn twice. */
    private static void put(
            List<ListedCoil> places,
            Map<Integer, Mark> marks,
            Set<Integer> taken,
            int[] spare,
            ListedCoil at,
            Mark mark) {
        boolean first = taken.add(mark.number());
        int n = first ? mark.number() : spare[0]++;
        places.add(at.withNumber(n));
        String prefix = first ? "" : mark.prefix() + n + "-";
        marks.put(n, new Mark(mark.number(), prefix, mark.title(), mark.look(), mark.top(), mark.bottom(), false));
    }

    private static Mark mark(Entry e, String prefix, Optional<ListedCoil> at, boolean planned) {
        List<Lead> top = new ArrayList<>();
        List<Lead> bottom = new ArrayList<>();
        Role look;
        if (e.sameSlots()) {
            ListedCoil p = e.planned().get();
            ListedCoil f = e.found().get();
            both(top, p.topBar(), f.topBar());
            both(bottom, p.bottomBar(), f.bottomBar());
            look = top.size() + bottom.size() > 2 ? Role.CHANGED : Role.QUIET;
        } else {
            Role lead = planned ? Role.PLANNED_LEAD : Role.FOUND_LEAD;
            top.add(new Lead(at.orElseThrow().topBar(), lead));
            bottom.add(new Lead(at.orElseThrow().bottomBar(), lead));
            look = planned ? Role.PLANNED_SIDE : Role.FOUND_SIDE;
        }
        return new Mark(e.number(), prefix, title(e), look, top, bottom, false);
    }

    private static void both(List<Lead> to, OptionalInt planned, OptionalInt found) {
        if (planned.equals(found)) {
            to.add(Lead.usual(planned));
        } else {
            to.add(new Lead(planned, Role.PLANNED_LEAD));
            to.add(new Lead(found, Role.FOUND_LEAD));
        }
    }

    private static String title(Entry e) {
        List<String> parts = new ArrayList<>();
        e.planned().ifPresent(c -> parts.add("planned in " + place(c)));
        e.found().ifPresent(c -> parts.add("found in " + place(c)));
        boolean same = e.planned().equals(e.found());
        return "Coil " + e.number() + ": "
                + (same ? "as planned, " + place(e.planned().get()) : String.join("; ", parts))
                + (e.kinds().isEmpty() ? "" : " (" + e.kinds() + ")");
    }

    private static String place(ListedCoil c) {
        return "slots " + c.topSlot() + "–" + c.bottomSlot() + ", top lead on " + Caption.lead(c.topBar())
                + ", bottom lead on " + Caption.lead(c.bottomBar());
    }

    /** To each line of the list what was planned in its place. */
    private void pair() {
        List<ListedCoil> left = new ArrayList<>(comparison.found());
        List<Entry> extras = new ArrayList<>();
        List<Entry> missing = new ArrayList<>();
        Map<ListedCoil, Optional<ListedCoil>> expected = new LinkedHashMap<>();
        for (Difference d : comparison.differences()) {
            if (d.extra()) {
                left.remove(d.found().orElseThrow());
                extras.add(new Entry(d.coil(), Optional.empty(), d.found(), d.kind()));
            } else if (d.found().isEmpty()) {
                missing.add(new Entry(d.coil(), d.planned(), Optional.empty(), d.kind()));
            } else {
                expected.put(d.found().get(), d.planned());
            }
        }
        List<ListedCoil> unused = planned();
        expected.values().forEach(p -> p.flatMap(c -> same(unused, c)).ifPresent(unused::remove));
        missing.forEach(e -> same(unused, e.planned().orElseThrow()).ifPresent(unused::remove));
        List<Entry> out = new ArrayList<>();
        List<ListedCoil> others = new ArrayList<>();
        for (ListedCoil row : left) {
            if (!expected.containsKey(row)) {
                Optional<ListedCoil> same = same(unused, row);
                if (same.isPresent()) {
                    unused.remove(same.get());
                    out.add(new Entry(row.coil(), Optional.of(row), Optional.of(row), ""));
                } else {
                    others.add(row);
                }
            }
        }
        expected.forEach((row, p) -> out.add(new Entry(row.coil(), p, Optional.of(row), kinds(row))));
        // What is wrong with the winding as a whole is no difference of single coils.
        for (ListedCoil row : others) {
            Optional<ListedCoil> like = likest(unused, row);
            like.ifPresent(unused::remove);
            Optional<ListedCoil> p = like.map(c -> c.withNumber(row.coil()));
            out.add(new Entry(
                    row.coil(), p, Optional.of(row), comparison.whole().orElse("")));
        }
        out.addAll(missing);
        out.sort(Comparator.comparingInt(Entry::number));
        out.addAll(extras);
        for (Entry e : out) {
            if (comparison.differences().stream().anyMatch(d -> d.coil() == e.number())) {
                note(e);
            }
            drawable(e).ifPresent(entries::add);
        }
    }

    /** What differs of a line, in words. */
    private String kinds(ListedCoil row) {
        return comparison.differences().stream()
                .filter(d -> !d.extra() && d.found().equals(Optional.of(row)))
                .map(Difference::kind)
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private void note(Entry e) {
        List<String> parts = new ArrayList<>();
        if (e.planned().isPresent() && e.found().isPresent()) {
            ListedCoil p = e.planned().get();
            ListedCoil f = e.found().get();
            instead(parts, "top side", "slot " + f.topSlot(), "slot " + p.topSlot());
            instead(parts, "bottom side", "slot " + f.bottomSlot(), "slot " + p.bottomSlot());
            instead(parts, "top lead", Caption.lead(f.topBar()), Caption.lead(p.topBar()));
            instead(parts, "bottom lead", Caption.lead(f.bottomBar()), Caption.lead(p.bottomBar()));
            if (parts.isEmpty()) {
                return;
            }
        }
        notes.add("coil " + e.number() + ", " + e.kinds() + (parts.isEmpty() ? "" : ": " + String.join(", ", parts)));
    }

    private static void instead(List<String> to, String what, String found, String planned) {
        if (!found.equals(planned)) {
            to.add(what + " " + (what.endsWith("lead") ? "on " : "in ") + found + ", not " + planned);
        }
    }

    /** The plan in the numbers of the list. */
    private List<ListedCoil> planned() {
        List<ListedCoil> out = new ArrayList<>();
        for (Coil c : plan.coils()) {
            out.add(new ListedCoil(
                    c.number(), slot(c.top().slot()), slot(c.bottom().slot()), bar(c.topBar()), bar(c.bottomBar())));
        }
        return out;
    }

    private int slot(int planned) {
        return comparison.numbering().map(n -> n.slot(armature, planned)).orElse(planned);
    }

    private OptionalInt bar(OptionalInt planned) {
        if (planned.isEmpty() || comparison.numbering().isEmpty()) {
            return planned;
        }
        return OptionalInt.of(comparison.numbering().get().bar(armature, planned.getAsInt()));
    }

    /** The planned coil of a line: of its number, or of its place in everything where numbers are free. */
    private Optional<ListedCoil> same(List<ListedCoil> lines, ListedCoil row) {
        return lines.stream()
                .filter(c -> (comparison.numbering().isPresent() || c.coil() == row.coil())
                        && c.withNumber(row.coil()).equals(row))
                .findFirst();
    }

    /** The planned coil most like a line; the one of its number unless numbers are free. */
    private Optional<ListedCoil> likest(List<ListedCoil> lines, ListedCoil row) {
        if (comparison.numbering().isEmpty()) {
            return lines.stream().filter(c -> c.coil() == row.coil()).findFirst();
        }
        Optional<ListedCoil> best = Optional.empty();
        int most = 0;
        for (ListedCoil c : lines) {
            int like = c.likeness(row);
            if (like > most) {
                most = like;
                best = Optional.of(c);
            }
        }
        return best;
    }

    /** The entry without what does not exist on the armature; empty where nothing is left. */
    private Optional<Entry> drawable(Entry e) {
        Optional<ListedCoil> found = e.found().flatMap(c -> {
            for (int slot : new int[] {c.topSlot(), c.bottomSlot()}) {
                if (slot < 1 || slot > armature.slots()) {
                    notes.add("coil " + e.number() + " as found is not drawn: there is no slot " + slot);
                    return Optional.empty();
                }
            }
            return Optional.of(
                    new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), real(e, c.topBar()), real(e, c.bottomBar())));
        });
        return found.isEmpty() && e.planned().isEmpty()
                ? Optional.empty()
                : Optional.of(new Entry(e.number(), e.planned(), found, e.kinds()));
    }

    private OptionalInt real(Entry e, OptionalInt bar) {
        if (bar.isPresent() && (bar.getAsInt() < 1 || bar.getAsInt() > armature.bars())) {
            notes.add("a lead of coil " + e.number() + " is drawn on no bar: there is no bar " + bar.getAsInt());
            return OptionalInt.empty();
        }
        return bar;
    }

    private Overlay.Words words() {
        int coils = (int) comparison.differences().stream()
                .map(Difference::coil)
                .distinct()
                .count();
        String what = "Connections as found, over the plan: "
                + (coils == 0
                        ? comparison.whole().isPresent() ? "differ as a whole" : "no coil differs"
                        : coils == 1 ? "1 coil differs" : coils + " coils differ");
        String numbering = comparison
                .numbering()
                .map(n -> "; numbers are the list's own, counted "
                        + (n.mirrored() ? "counter-clockwise or from the back end" : "clockwise") + ", its slot "
                        + n.slotOfOne() + " the plan's slot 1, its bar " + n.barOfOne() + " the plan's bar 1")
                .orElse("");
        List<Sample> legend = List.of(
                new Sample(Role.QUIET, "found as planned"),
                new Sample(Role.CHANGED, "coil whose leads differ"),
                new Sample(Role.PLANNED_LEAD, "planned, not found (ring)"),
                new Sample(Role.FOUND_LEAD, "found instead (dot)"));
        if (notes.isEmpty()) {
            notes.add("the connections are as planned");
        }
        return new Overlay.Words(
                "Connections as found",
                what + numbering,
                comparison.numbering().map(Counting::mirrored).orElse(false),
                legend,
                notes,
                "");
    }
}
