package coilwright.fault;

import coilwright.fault.ConnectionCheck.Alignment;
import coilwright.fault.ConnectionCheck.Result;
import coilwright.winding.Armature;
import coilwright.winding.CoilSet;
import coilwright.winding.Counting;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/** Compares a list with a plan whose slots, bars and coils bear other numbers. */
final class FreeComparison {
    private final Winding winding;
    private final Armature armature;
    private final Layout plan;
    private final Optional<Layout> reversed;
    private final List<ListedCoil> found;
    private final List<ListedCoil> foundDead;

    FreeComparison(Winding winding, List<ListedCoil> found) {
        this.winding = winding;
        this.armature = winding.armature();
        this.plan = Layout.of(winding);
        this.reversed = Layout.reversed(winding);
        this.found = List.copyOf(found);
        this.foundDead = this.found.stream().filter(ListedCoil::isOffBars).toList();
    }

    Result compare() {
        Best best = best(plan, false);
        boolean isReversed = false;
        Best mirrored = best(plan, true);
        best = mirrored.votes() > best.votes() ? mirrored : best;
        boolean doubtful = false;
        if (reversed.isPresent()) {
            for (boolean mirror : new boolean[] {false, true}) {
                Best other = best(reversed.get(), mirror);
                doubtful |= other.votes() == best.votes()
                        && other.counting().mirrored() != best.counting().mirrored()
                        && !isReversed;
                if (other.votes() > best.votes()) {
                    best = other;
                    isReversed = true;
                    doubtful = false;
                }
            }
        }
        Layout matched = best.on(armature, isReversed ? reversed.get() : plan);
        Map<String, Deque<Integer>> places = new HashMap<>();
        matched.rows()
                .forEach(c ->
                        places.computeIfAbsent(key(c), x -> new ArrayDeque<>()).add(c.coil()));
        // A coil of the plan for each line, where the two agree in everything.
        int[] coilOfLine = new int[found.size()];
        int agreeing = 0;
        for (int i = 0; i < coilOfLine.length; i++) {
            Deque<Integer> here = places.get(key(found.get(i)));
            if (here != null && !here.isEmpty()) {
                coilOfLine[i] = here.remove();
                agreeing++;
            }
        }
        var alignment = new Alignment(
                best.counting().slotOfOne(),
                best.counting().barOfOne(),
                best.counting().mirrored(),
                doubtful,
                agreeing);
        return byPlace(best, matched, coilOfLine, alignment);
    }

    /**
     * Each line is compared with the coil whose place it takes, whatever its number; what takes no coil's place, with
     * the coil that its number would be, or else with the one most like it.
     */
    private Result byPlace(Best best, Layout matched, int[] coilOfLine, Alignment alignment) {
        Map<Integer, ListedCoil> all = new LinkedHashMap<>();
        matched.rows().forEach(c -> all.put(c.coil(), c));
        Map<Integer, ListedCoil> left = new LinkedHashMap<>(all);
        for (int n : coilOfLine) {
            left.remove(n);
        }
        Optional<IntUnaryOperator> numbering = numbering(best.counting().mirrored(), coilOfLine);
        Map<Integer, Integer> coilOfNumber = new HashMap<>();
        Map<Integer, Integer> labels = new HashMap<>();
        numbering.ifPresent(rule -> all.keySet().forEach(n -> {
            coilOfNumber.put(rule.applyAsInt(n), n);
            labels.put(n, rule.applyAsInt(n));
        }));
        List<ListedCoil> lines = new ArrayList<>();
        int spare = 1 + Collections.max(all.keySet());
        for (int i = 0; i < coilOfLine.length; i++) {
            ListedCoil row = found.get(i);
            int coil = coilOfLine[i];
            if (coil == 0) {
                coil = coilOfNumber.getOrDefault(row.coil(), 0);
                coil = left.containsKey(coil) ? coil : likest(left, row);
                coil = coil == 0 ? again(all, row) : coil;
                coil = coil == 0 ? spare++ : coil;
                left.remove(coil);
            }
            labels.put(coil, row.coil());
            lines.add(row.withNumber(coil));
        }
        return new CoilComparison(
                        armature,
                        best.on(armature, plan),
                        reversed.map(r -> best.on(armature, r)),
                        n -> labels.getOrDefault(n, n))
                .compare(lines, Optional.of(alignment));
    }

    /** The coil most like a line; 0 where none is like enough. */
    private static int likest(Map<Integer, ListedCoil> coils, ListedCoil row) {
        int most = 3;
        int out = 0;
        for (ListedCoil c : coils.values()) {
            int like = c.likeness(row);
            if (like > most) {
                most = like;
                out = c.coil();
            }
        }
        return out;
    }

    /** The coil that a line is once more; 0 where it is none. */
    private static int again(Map<Integer, ListedCoil> coils, ListedCoil row) {
        return coils.values().stream()
                .filter(c -> key(c).equals(key(row)))
                .mapToInt(ListedCoil::coil)
                .findFirst()
                .orElse(0);
    }

    private static String key(ListedCoil c) {
        return c.topSlot() + "," + c.bottomSlot() + "," + c.topBar().orElse(0) + ","
                + c.bottomBar().orElse(0);
    }

    /** A way of counting, and how much of the list agrees with it. */
    private record Best(Counting counting, long votes) {
        Layout on(Armature armature, Layout layout) {
            return layout.renumbered(
                    n -> n, s -> counting.slot(armature, s), b -> counting.bar(armature, b), counting.mirrored());
        }
    }

    /** Every line votes for the ways of counting in which its top side and top lead fit some coil. */
    private Best best(Layout layout, boolean mirrored) {
        int s = armature.slots();
        int k = armature.bars();
        int sign = mirrored ? -1 : 1;
        int[] votes = new int[s * k];
        for (ListedCoil row : found) {
            if (row.topBar().isEmpty() || row.topBar().getAsInt() > k || row.topSlot() > s) {
                continue;
            }
            int span = Math.floorMod(row.bottomSlot() - row.topSlot(), s);
            int step = row.bottomBar().isEmpty()
                    ? -1
                    : Math.floorMod(row.bottomBar().getAsInt() - row.topBar().getAsInt(), k);
            for (ListedCoil c : layout.rows()) {
                if (c.topBar().isEmpty() || c.bottomBar().isEmpty()) {
                    continue;
                }
                int slot = Math.floorMod(row.topSlot() - 1 - sign * (c.topSlot() - 1), s);
                int bar = Math.floorMod(
                        row.topBar().getAsInt() - 1 - sign * (c.topBar().getAsInt() - 1), k);
                boolean spans = span == Math.floorMod(sign * (c.bottomSlot() - c.topSlot()), s);
                boolean steps = step
                        == Math.floorMod(
                                sign * (c.bottomBar().getAsInt() - c.topBar().getAsInt()), k);
                votes[slot * k + bar] += 2 + (spans ? 1 : 0) + (steps ? 1 : 0);
            }
        }
        int most = Arrays.stream(votes).max().orElse(0);
        int at = -1;
        int deadAt = -1;
        for (int i = 0; i < votes.length; i++) {
            if (votes[i] == most) {
                int dead = deadAgreeing(layout, 1 + i / k, mirrored);
                if (dead > deadAt) {
                    at = i;
                    deadAt = dead;
                }
            }
        }
        return new Best(new Counting(1 + at / k, 1 + at % k, mirrored), most * 10_000L + deadAt);
    }

    /** How many dead coils of the list lie where the plan has them. */
    private int deadAgreeing(Layout layout, int slotOfOne, boolean mirrored) {
        var counting = new Counting(slotOfOne, 1, mirrored);
        int out = 0;
        for (ListedCoil c : layout.rows()) {
            if (!c.isOffBars()) {
                continue;
            }
            for (ListedCoil row : foundDead) {
                if (row.topSlot() == counting.slot(armature, c.topSlot())
                        && row.bottomSlot() == counting.slot(armature, c.bottomSlot())) {
                    out++;
                }
            }
        }
        return out;
    }

    /**
     * The list's number of each planned coil, where the list counts its coils round in the same way as its slots; empty
     * where it numbers them by no such rule.
     */
    private Optional<IntUnaryOperator> numbering(boolean mirrored, int[] coilOfLine) {
        int sign = mirrored ? -1 : 1;
        int[] offset = new int[winding.sets().size()];
        int fitting = 0;
        for (int i = 0; i < offset.length; i++) {
            CoilSet set = winding.sets().get(i);
            int first = set.firstCoil();
            int count = set.coilCount();
            if (plan.rows().stream()
                            .filter(c -> c.coil() >= first && c.coil() < first + count)
                            .count()
                    != count) {
                return Optional.empty();
            }
            int[] votes = new int[count];
            for (int line = 0; line < coilOfLine.length; line++) {
                int coil = coilOfLine[line];
                int number = found.get(line).coil();
                if (coil >= first && coil < first + count && number >= first && number < first + count) {
                    votes[Math.floorMod(number - first - sign * (coil - first), count)]++;
                }
            }
            for (int v = 1; v < count; v++) {
                offset[i] = votes[v] > votes[offset[i]] ? v : offset[i];
            }
            fitting += votes[offset[i]];
        }
        if (2 * fitting <= found.size()) {
            return Optional.empty();
        }
        return Optional.of(n -> {
            for (int i = 0; i < offset.length; i++) {
                CoilSet set = winding.sets().get(i);
                if (n >= set.firstCoil() && n < set.firstCoil() + set.coilCount()) {
                    return set.firstCoil() + Math.floorMod(offset[i] + sign * (n - set.firstCoil()), set.coilCount());
                }
            }
            return n;
        });
    }
}
