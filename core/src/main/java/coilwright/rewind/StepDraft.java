package coilwright.rewind;

import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Lead;
import coilwright.rewind.WorkStep.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** A step of work while it is put together. */
final class StepDraft {
    final int number;
    private final Kind kind;
    private final List<Integer> coils = new ArrayList<>();
    private final Set<Integer> slots = new LinkedHashSet<>();
    private final Set<Integer> bars = new LinkedHashSet<>();
    private final List<Side> sides = new ArrayList<>();
    private final List<Side> lifted = new ArrayList<>();
    private final List<Integer> separators = new ArrayList<>();
    private final List<Lead> leads = new ArrayList<>();
    private final List<Integer> loops = new ArrayList<>();
    private final List<WorkTest> tests = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private String text = "";

    StepDraft(int number, Kind kind) {
        this.number = number;
        this.kind = kind;
    }

    StepDraft coils(List<Integer> more) {
        coils.addAll(more);
        return this;
    }

    StepDraft slots(List<Integer> more) {
        slots.addAll(more);
        return this;
    }

    StepDraft bars(List<Integer> more) {
        bars.addAll(more);
        return this;
    }

    StepDraft side(Side side) {
        sides.add(side);
        slots.add(side.slot());
        return this;
    }

    StepDraft lift(Side side) {
        lifted.add(side);
        return this;
    }

    StepDraft separator(int slot) {
        separators.add(slot);
        return this;
    }

    StepDraft lead(Lead lead) {
        leads.add(lead);
        bars.add(lead.bar());
        return this;
    }

    StepDraft loop(int bar) {
        loops.add(bar);
        return this;
    }

    StepDraft tests(WorkTest... more) {
        tests.addAll(Arrays.asList(more));
        return this;
    }

    StepDraft text(String words) {
        text = words;
        return this;
    }

    StepDraft remark(String words) {
        remarks.add(words);
        return this;
    }

    WorkStep step() {
        return new WorkStep(
                number,
                kind,
                coils,
                List.copyOf(slots),
                List.copyOf(bars),
                sides,
                lifted,
                separators,
                leads,
                loops,
                tests,
                text,
                remarks);
    }
}
