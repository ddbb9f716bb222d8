package coilwright.fault;

import coilwright.fault.ConnectionCheck.Alignment;
import coilwright.fault.ConnectionCheck.Difference;
import coilwright.fault.ConnectionCheck.Kind;
import coilwright.fault.ConnectionCheck.Result;
import coilwright.fault.ConnectionCheck.Whole;
import coilwright.winding.Armature;
import coilwright.winding.ListedCoil;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;

/** Compares a list with a plan, each line with the planned coil of its number. */
final class CoilComparison {
    private final Armature armature;
    private final Layout plan;
    private final Optional<Layout> reversed;
    private final IntUnaryOperator label;
    private final List<Difference> out = new ArrayList<>();

    /**
     * A comparison.
     *
     * @param plan in the numbers of the list
     * @param reversed the plan in the other direction, in the numbers of the list; empty where there is none
     * @param label what the user calls a coil
     */
    CoilComparison(Armature armature, Layout plan, Optional<Layout> reversed, IntUnaryOperator label) {
        this.armature = armature;
        this.plan = plan;
        this.reversed = reversed;
        this.label = label;
    }

    Result compare(List<ListedCoil> found, Optional<Alignment> alignment) {
        Map<Integer, ListedCoil> planned = byNumber(plan);
        Map<Integer, ListedCoil> mine = assign(planned, found);
        Optional<Turned> turned = turned(mine);
        Map<Integer, ListedCoil> target = turned.map(t -> byNumber(t.layout())).orElse(planned);
        List<Lead> astray = new ArrayList<>();
        planned.forEach((n, expected) -> {
            ListedCoil row = mine.get(n);
            if (row == null) {
                add(Kind.MISSING, n, expected, null, List.of(), missing(expected));
                return;
            }
            slots(expected, row);
            if (turned.isPresent() && sameBars(expected, row)) {
                return;
            }
            bars(target.get(n), expected, row, astray);
        });
        explain(planned, mine, target, astray);
        out.sort(Comparator.comparingInt(Difference::coil).thenComparing(Difference::kind));
        return new Result(turned.map(t -> t.whole(mine)), out, alignment);
    }

    private static Map<Integer, ListedCoil> byNumber(Layout layout) {
        Map<Integer, ListedCoil> map = new LinkedHashMap<>();
        layout.rows().forEach(c -> map.put(c.coil(), c));
        return map;
    }

    /** To each planned coil the line of its number, of several the one most like it; the others are too many. */
    private Map<Integer, ListedCoil> assign(Map<Integer, ListedCoil> planned, List<ListedCoil> found) {
        Map<Integer, List<ListedCoil>> lines = new TreeMap<>();
        found.forEach(
                r -> lines.computeIfAbsent(r.coil(), n -> new ArrayList<>()).add(r));
        Map<Integer, ListedCoil> mine = new LinkedHashMap<>();
        lines.forEach((n, rows) -> {
            ListedCoil expected = planned.get(n);
            if (expected == null) {
                rows.forEach(r -> add(Kind.DOUBLED, n, null, r, List.of(), extra(r)));
                return;
            }
            ListedCoil best = rows.get(0);
            for (ListedCoil r : rows) {
                best = expected.likeness(r) > expected.likeness(best) ? r : best;
            }
            mine.put(n, best);
            boolean kept = false;
            for (ListedCoil r : rows) {
                if (r.equals(best) && !kept) {
                    kept = true;
                } else {
                    add(Kind.DOUBLED, n, expected, r, List.of(), doubled(r));
                }
            }
        });
        return mine;
    }

    /** The plan turned into what most of the list is. */
    private final class Turned {
        private final Kind kind;
        private final Layout layout;
        private final int shift;

        Turned(Kind kind, Layout unshifted, int shift) {
            this.kind = kind;
            this.layout = unshifted.shifted(armature, shift);
            this.shift = 2 * shift > armature.bars() ? shift - armature.bars() : shift;
        }

        Layout layout() {
            return layout;
        }

        Whole whole(Map<Integer, ListedCoil> mine) {
            List<Integer> coils = new ArrayList<>();
            for (ListedCoil t : layout.rows()) {
                ListedCoil row = mine.get(t.coil());
                if (row != null && t.topBar().isPresent() && sameBars(t, row)) {
                    coils.add(label.applyAsInt(t.coil()));
                }
            }
            String how = coils.size() + " of " + layout.rows().size() + " coils";
            String words = switch (kind) {
                case WRONG_DIRECTION ->
                    "the winding is connected " + direction(!progressive()) + " instead of " + direction(progressive())
                            + " (" + how + "; commutator pitch " + signed(layout.step()) + " instead of "
                            + signed(plan.step())
                            + "): the voltage between neighbouring bars is the other way, so a motor turns the other "
                            + "way and a generator's polarity is reversed; move the leads to the planned bars, or"
                            + " reverse the field or the brush leads";
                case REVERSED_COIL ->
                    "the two leads of every coil are changed over (" + how
                            + "): the current runs the other way through every coil, so a motor turns the other way"
                            + " and a generator's polarity is reversed; move the leads to the planned bars, or"
                            + " reverse the field or the brush leads";
                default ->
                    "all leads stand " + bars(Math.abs(shift)) + " too far "
                            + (shift > 0 ? "clockwise" : "counter-clockwise") + " (" + how
                            + "): the coils agree with one another, but the brushes would have to stand "
                            + String.format(Locale.ROOT, "%.1f", Math.abs(shift) * armature.barAngle())
                            + "° further " + (shift > 0 ? "clockwise" : "counter-clockwise")
                            + "; move the leads to the planned bars";
            };
            return new Whole(kind, plan.step(), layout.step(), shift, coils, words);
        }

        /** A wave pitch is progressive where it is the larger of the two, a lap pitch where it is positive. */
        private boolean progressive() {
            return (plan.step() > layout.step()) != plan.mirrored();
        }

        private String direction(boolean progressive) {
            return progressive ? "progressive" : "retrogressive";
        }
    }

    /** Whether more than half of the list agrees with the plan turned as a whole, and better than with the plan. */
    private Optional<Turned> turned(Map<Integer, ListedCoil> mine) {
        int k = armature.bars();
        int[] straight = votes(plan, mine);
        int most = Math.max(straight[0], Math.max(2, mine.size() / 2));
        Optional<Turned> best = Optional.empty();
        for (int s = 1; s < k; s++) {
            if (straight[s] > most) {
                most = straight[s];
                best = Optional.of(new Turned(Kind.SHIFTED_BAR, plan, s));
            }
        }
        if (reversed.isPresent()) {
            int[] other = votes(reversed.get(), mine);
            for (int s = 0; s < k; s++) {
                if (other[s] > most) {
                    most = other[s];
                    best = Optional.of(new Turned(Kind.WRONG_DIRECTION, reversed.get(), s));
                }
            }
        }
        Layout over = plan.changedOver();
        int[] changed = votes(over, mine);
        for (int s = 0; s < k; s++) {
            if (changed[s] > most) {
                most = changed[s];
                best = Optional.of(new Turned(Kind.REVERSED_COIL, over, s));
            }
        }
        return best;
    }

    /** For each shift of all leads how many coils land where the layout says. */
    private int[] votes(Layout layout, Map<Integer, ListedCoil> mine) {
        int k = armature.bars();
        int[] out = new int[k];
        for (ListedCoil t : layout.rows()) {
            ListedCoil row = mine.get(t.coil());
            if (row == null || t.topBar().isEmpty() || t.bottomBar().isEmpty()) {
                continue;
            }
            if (onBar(row.topBar()) && onBar(row.bottomBar())) {
                int s = Math.floorMod(row.topBar().getAsInt() - t.topBar().getAsInt(), k);
                if (s
                        == Math.floorMod(
                                row.bottomBar().getAsInt() - t.bottomBar().getAsInt(), k)) {
                    out[s]++;
                }
            }
        }
        return out;
    }

    private boolean onBar(OptionalInt bar) {
        return bar.isPresent() && bar.getAsInt() <= armature.bars();
    }

    private static boolean sameBars(ListedCoil a, ListedCoil b) {
        return a.topBar().equals(b.topBar()) && a.bottomBar().equals(b.bottomBar());
    }

    private void slots(ListedCoil expected, ListedCoil row) {
        List<String> parts = new ArrayList<>();
        slot(parts, "top", row.topSlot(), expected.topSlot());
        slot(parts, "bottom", row.bottomSlot(), expected.bottomSlot());
        if (!parts.isEmpty()) {
            add(Kind.WRONG_SLOT, row.coil(), expected, row, List.of(), String.join(", ", parts));
        }
    }

    private void slot(List<String> parts, String side, int found, int expected) {
        if (found != expected) {
            parts.add(side + " side in slot " + found + " instead of slot " + expected
                    + (found > armature.slots() ? " (slots run from 1 to " + armature.slots() + ")" : ""));
        }
    }

    /** A lead on a bar that is not its own. */
    private record Lead(int coil, boolean top, int expected, int found) {
        String side() {
            return top ? "top" : "bottom";
        }
    }

    private void bars(ListedCoil target, ListedCoil expected, ListedCoil row, List<Lead> astray) {
        int n = row.coil();
        boolean none = row.isOffBars();
        if (target.isOffBars()) {
            if (!none) {
                add(
                        Kind.LIVE_INSTEAD_OF_DEAD,
                        n,
                        expected,
                        row,
                        List.of(),
                        "should be dead, but has " + leads(row) + ": cut its leads off and insulate them");
            }
            return;
        }
        if (none) {
            add(Kind.DEAD_INSTEAD_OF_LIVE, n, expected, row, List.of(), "is on no bar: connect " + leads(target));
            return;
        }
        boolean topOff = target.topBar().isPresent() && row.topBar().isEmpty();
        boolean bottomOff = target.bottomBar().isPresent() && row.bottomBar().isEmpty();
        if (topOff || bottomOff) {
            String side = topOff ? "top" : "bottom";
            int bar = (topOff ? target.topBar() : target.bottomBar()).getAsInt();
            add(Kind.LEAD_OFF, n, expected, row, List.of(), side + " lead on no bar: connect it to bar " + bar);
        }
        stray(n, true, target.topBar(), row.topBar(), astray);
        stray(n, false, target.bottomBar(), row.bottomBar(), astray);
    }

    private static void stray(int coil, boolean top, OptionalInt expected, OptionalInt found, List<Lead> astray) {
        if (found.isPresent() && !found.equals(expected)) {
            astray.add(new Lead(coil, top, expected.orElse(0), found.getAsInt()));
        }
    }

    /** Gives each lead that is astray its reason: its coil's other lead, an exchange with another coil, or neither. */
    private void explain(
            Map<Integer, ListedCoil> planned,
            Map<Integer, ListedCoil> mine,
            Map<Integer, ListedCoil> target,
            List<Lead> astray) {
        Map<Integer, List<Lead>> byCoil = new TreeMap<>();
        astray.forEach(
                l -> byCoil.computeIfAbsent(l.coil(), n -> new ArrayList<>()).add(l));
        List<Lead> left = new ArrayList<>();
        byCoil.forEach((n, leads) -> {
            if (leads.size() == 2 && exchanged(leads.get(0), leads.get(1))) {
                add(
                        Kind.REVERSED_COIL,
                        n,
                        planned.get(n),
                        mine.get(n),
                        List.of(),
                        "its two leads are changed over: " + leads(target.get(n)));
            } else {
                left.addAll(leads);
            }
        });
        Map<Lead, Lead> partners = partners(left);
        Map<Integer, List<Lead>> shifted = new TreeMap<>();
        Map<Integer, List<Lead>> swapped = new TreeMap<>();
        for (Lead l : left) {
            (partners.containsKey(l) ? swapped : shifted)
                    .computeIfAbsent(l.coil(), n -> new ArrayList<>())
                    .add(l);
        }
        swapped.forEach((n, leads) -> {
            List<String> parts = new ArrayList<>();
            List<Integer> with = new ArrayList<>();
            for (Lead l : leads) {
                Lead other = partners.get(l);
                int number = label.applyAsInt(other.coil());
                parts.add(l.side() + " lead exchanged with the " + other.side() + " lead of coil " + number
                        + ": move it from bar " + l.found() + " to bar " + l.expected());
                if (!with.contains(number)) {
                    with.add(number);
                }
            }
            add(Kind.SWAPPED_LEADS, n, planned.get(n), mine.get(n), with, String.join("; ", parts));
        });
        shifted.forEach((n, leads) -> add(
                Kind.SHIFTED_BAR,
                n,
                planned.get(n),
                mine.get(n),
                List.of(),
                String.join("; ", leads.stream().map(this::astrayWords).toList())));
    }

    private static boolean exchanged(Lead a, Lead b) {
        return a.found() == b.expected() && b.found() == a.expected();
    }

    /** Leads of one side with each other first, then of different sides; the nearest coil first. */
    private static Map<Lead, Lead> partners(List<Lead> leads) {
        Map<Long, List<Lead>> byBars = new LinkedHashMap<>();
        leads.forEach(l -> byBars.computeIfAbsent(key(l.expected(), l.found()), x -> new ArrayList<>())
                .add(l));
        Map<Lead, Lead> out = new LinkedHashMap<>();
        for (boolean sameSide : new boolean[] {true, false}) {
            for (Lead a : leads) {
                if (out.containsKey(a)) {
                    continue;
                }
                byBars.getOrDefault(key(a.found(), a.expected()), List.of()).stream()
                        .filter(b -> !out.containsKey(b) && b.coil() != a.coil() && (b.top() == a.top()) == sameSide)
                        .min(Comparator.comparingInt(b -> Math.abs(b.coil() - a.coil())))
                        .ifPresent(b -> {
                            out.put(a, b);
                            out.put(b, a);
                        });
            }
        }
        return out;
    }

    private static long key(int from, int to) {
        return ((long) from << 32) | to;
    }

    private String astrayWords(Lead l) {
        if (l.found() > armature.bars()) {
            return l.side() + " lead on bar " + l.found() + ", but bars run from 1 to " + armature.bars()
                    + ": it belongs on bar " + l.expected();
        }
        if (l.expected() == 0) {
            return l.side() + " lead on bar " + l.found() + ", but it belongs on none";
        }
        int on = Math.floorMod(l.found() - l.expected(), armature.bars());
        boolean clockwise = 2 * on <= armature.bars();
        return l.side() + " lead on bar " + l.found() + ", " + bars(clockwise ? on : armature.bars() - on) + " "
                + (clockwise ? "clockwise" : "counter-clockwise") + " of its own: move it to bar " + l.expected();
    }

    static String bars(int n) {
        return n == 1 ? "1 bar" : n + " bars";
    }

    private static String signed(int n) {
        return (n > 0 ? "+" : "") + n;
    }

    private static String leads(ListedCoil c) {
        List<String> parts = new ArrayList<>();
        c.topBar().ifPresent(b -> parts.add("the top lead on bar " + b));
        c.bottomBar().ifPresent(b -> parts.add("the bottom lead on bar " + b));
        return String.join(", ", parts);
    }

    private static String missing(ListedCoil c) {
        String place = "is not in the list: slots " + c.topSlot() + " and " + c.bottomSlot();
        return c.isOffBars() ? place + ", dead" : place + ", " + leads(c);
    }

    private static String extra(ListedCoil c) {
        return "is not in the plan: slots " + c.topSlot() + " and " + c.bottomSlot()
                + (leads(c).isEmpty() ? "" : ", " + leads(c)) + "; trace it again";
    }

    private static String doubled(ListedCoil c) {
        return "stands in the list once more: slots " + c.topSlot() + " and " + c.bottomSlot()
                + (leads(c).isEmpty() ? "" : ", " + leads(c)) + "; trace it again and keep one line";
    }

    @SuppressWarnings("NullableOptional")
    private void add(Kind kind, int coil, ListedCoil expected, ListedCoil found, List<Integer> with, String words) {
        int number = label.applyAsInt(coil);
        out.add(new Difference(
                kind,
                number,
                Optional.ofNullable(expected).map(c -> c.withNumber(number)),
                Optional.ofNullable(found).map(c -> c.withNumber(number)),
                with,
                words));
    }
}
