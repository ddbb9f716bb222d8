package coilwright.rewind;

import coilwright.rewind.WorkStep.Kind;
import java.util.ArrayList;
import java.util.List;

/** Steps of work, numbered as they come. */
final class StepList {
    private final List<StepDraft> drafts = new ArrayList<>();

    StepDraft add(Kind kind) {
        var draft = new StepDraft(drafts.size() + 1, kind);
        drafts.add(draft);
        return draft;
    }

    List<WorkStep> steps() {
        return drafts.stream().map(StepDraft::step).toList();
    }
}
