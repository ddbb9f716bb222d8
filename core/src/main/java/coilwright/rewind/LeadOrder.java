package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Lead;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;

/**
 * Leads on their bars: the leads of the deepest layer all round first, then those of the next, with a test and a layer
 * of insulation between; equalizers before the last round. Common practice.
 */
final class LeadOrder {
    private final Winding winding;
    private final Map<Integer, Integer> loops;
    private final Set<Integer> loopStarts;
    private final List<List<Integer>> rings;
    private final StepList out;

    /**
     * Prepares the leads.
     *
     * @param loops coils that go on without a cut, each with the coil that follows it
     * @param rings bars of each equalizer
     */
    LeadOrder(Winding winding, Map<Integer, Integer> loops, List<List<Integer>> rings, StepList out) {
        this.winding = winding;
        this.loops = loops;
        this.loopStarts = new LinkedHashSet<>(loops.values());
        this.rings = rings;
        this.out = out;
    }

    void connect() {
        List<List<List<Lead>>> rounds = new ArrayList<>();
        for (int layer = winding.layers(); layer >= 1; layer--) {
            List<List<Lead>> bySlot = round(layer);
            if (!bySlot.isEmpty()) {
                rounds.add(bySlot);
            }
        }
        for (int i = 0; i < rounds.size(); i++) {
            if (i == rounds.size() - 1) {
                equalize();
            }
            rounds.get(i).forEach(this::connect);
            if (i < rounds.size() - 1) {
                between(words(rounds.get(i).get(0).get(0)));
            }
        }
    }

    /** The leads of one layer by slot, in order of position; a loop goes with the bottom lead that it begins with. */
    private List<List<Lead>> round(int layer) {
        Map<Integer, Lead> byPosition = new TreeMap<>();
        for (Coil c : winding.coils()) {
            for (End end : End.values()) {
                CoilSide side = side(c, end);
                if (side.layer() == layer && bar(c, end).isPresent()) {
                    byPosition.put(side.position(), lead(c, end));
                }
            }
        }
        Map<Integer, List<Lead>> bySlot = new LinkedHashMap<>();
        for (Lead l : byPosition.values()) {
            if (l.end() == End.TOP && loopStarts.contains(l.coil())) {
                continue;
            }
            List<Lead> leads = bySlot.computeIfAbsent(l.slot(), k -> new ArrayList<>());
            leads.add(l);
            if (l.end() == End.BOTTOM && loops.containsKey(l.coil())) {
                leads.add(lead(winding.coil(loops.get(l.coil())), End.TOP));
            }
        }
        return List.copyOf(bySlot.values());
    }

    private static CoilSide side(Coil c, End end) {
        return end == End.TOP ? c.top() : c.bottom();
    }

    private static OptionalInt bar(Coil c, End end) {
        return end == End.TOP ? c.topBar() : c.bottomBar();
    }

    private static Lead lead(Coil c, End end) {
        CoilSide side = side(c, end);
        return new Lead(c.number(), end, side.slot(), side.layer(), bar(c, end).getAsInt());
    }

    private void connect(List<Lead> leads) {
        StepDraft step = out.add(Kind.CONNECT);
        leads.forEach(step::lead);
        Lead first = leads.get(0);
        List<Lead> own = leads.stream().filter(l -> l.end() == first.end()).toList();
        List<Integer> coils = own.stream().map(Lead::coil).toList();
        List<Integer> bars = own.stream().map(Lead::bar).toList();
        step.coils(coils)
                .slots(List.of(first.slot()))
                .text("Lay the " + first.end().word() + (own.size() == 1 ? " lead" : " leads") + " of "
                        + NumberRuns.of(kind(first) + "coil", coils) + " (slot " + first.slot() + ") in "
                        + NumberRuns.of("bar", bars) + (own.size() == 1 ? "" : ", in this order"));
        for (Lead l : leads) {
            if (l.end() == End.BOTTOM && loops.containsKey(l.coil())) {
                step.loop(l.bar());
            }
        }
        if (leads.size() > own.size()) {
            List<Integer> on = leads.stream()
                    .filter(l -> l.end() == End.TOP)
                    .map(Lead::coil)
                    .toList();
            step.remark(
                    on.size() == 1
                            ? "As a loop: coil " + on.get(0) + " starts there."
                            : "As loops: " + NumberRuns.of("coil", on) + " start there.");
        }
    }

    private String kind(Lead lead) {
        return winding.sets().size() > 1
                ? winding.setOf(winding.coil(lead.coil())).type().word() + " "
                : "";
    }

    private String words(Lead lead) {
        String kind = kind(lead);
        return lead.end().word() + " leads" + (kind.isEmpty() ? "" : " of the " + kind + "coils");
    }

    private void between(String leads) {
        out.add(Kind.TEST)
                .tests(WorkTest.OPEN, WorkTest.GROUND)
                .text("Test while the other leads are free: from each bar to the free end of its coil and to no other,"
                        + " and nothing to the core");
        out.add(Kind.INSULATE)
                .text("Lay insulation over the " + leads + " before the next leads come on them, and between leads"
                        + " that cross");
    }

    private void equalize() {
        for (int i = 0; i < rings.size(); i++) {
            StepDraft step = out.add(Kind.EQUALIZE)
                    .bars(rings.get(i))
                    .text("Equalizer " + (i + 1) + " of " + rings.size() + " to " + NumberRuns.of("bar", rings.get(i)));
            if (i == 0) {
                step.remark("Before the top leads where the equalizers lie behind or under the leads (common"
                        + " practice); do as it was found.");
            }
        }
    }
}
