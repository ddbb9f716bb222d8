package coilwright.sheet;

import coilwright.bench.BenchArmature;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.drawing.Palette;
import coilwright.fault.Diagnosis;
import coilwright.job.AcceptanceBasis;
import coilwright.job.Job;
import coilwright.job.Quantity;
import coilwright.job.ReadingSet;
import coilwright.job.TakenReading;
import coilwright.rewind.Evenness;
import coilwright.rewind.Format;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The readings of one winding, the old or the new, with what they say of it.
 *
 * @param job that the winding was read on
 * @param stage which of the two
 * @param sets the readings
 * @param armature as it should be
 * @param diagnosis what they say; empty where there are none or too few
 * @param trouble why there is no diagnosis though there are readings; empty otherwise
 */
record RecordReadings(
        Job job,
        ReadingSet.Stage stage,
        List<ReadingSet> sets,
        BenchArmature armature,
        Optional<Diagnosis> diagnosis,
        String trouble) {
    private static final int MOST_SHOWN = 3;
    private static final double LEAST_SHOWN = 0.01;

    /**
     * The readings of one stage.
     *
     * @throws coilwright.winding.ImpossibleWindingException when the job's winding cannot be wound
     * @throws IllegalArgumentException when equalizers are given but the winding has nothing for them to join
     */
    static RecordReadings of(Job job, ReadingSet.Stage stage) {
        List<ReadingSet> sets =
                job.readings().stream().filter(s -> s.stage() == stage).toList();
        BenchArmature armature = job.benchArmature();
        if (sets.isEmpty()) {
            return new RecordReadings(job, stage, sets, armature, Optional.empty(), "");
        }
        try {
            List<TestRun> runs = sets.stream().map(s -> s.run(job.growler())).toList();
            return new RecordReadings(job, stage, sets, armature, Optional.of(Diagnosis.of(armature, runs)), "");
        } catch (IllegalArgumentException e) {
            return new RecordReadings(job, stage, sets, armature, Optional.empty(), e.getMessage());
        }
    }

    void addTo(List<Block> out, Palette palette, String chartWords) {
        for (int i = 0; i < sets.size(); i++) {
            set(
                    out,
                    sets.get(i),
                    diagnosis.isPresent() ? diagnosis.get().gains().get(i) : 1);
        }
        if (!trouble.isEmpty()) {
            out.add(new Block.Paragraph("No diagnosis: " + trouble + "."));
        }
        diagnosis.ifPresent(d -> {
            verdict(out, d);
            out.add(new Block.Annex(chartWords, RunCharts.of(job.title(), d, palette)));
        });
    }

    private void set(List<Block> out, ReadingSet set, double gain) {
        List<String> head = new ArrayList<>();
        set.date().ifPresent(d -> head.add(d.toString()));
        set.meter().ifPresent(m -> head.add("meter " + m));
        set.temperature().ifPresent(t -> head.add("winding at " + t));
        TestRun run = set.run(job.growler());
        head.add(run.test().setUp());
        out.add(new Block.Paragraph("Test: " + set.test().word() + ". " + String.join("; ", head) + "."));
        if (run.readings().isEmpty()) {
            return;
        }
        Optional<String> unit = unit(set);
        double base = unit.map(RecordReadings::inBase).orElse(1.0);
        List<PairReading> sound = sound(run);
        List<List<String>> rows = new ArrayList<>();
        int next = 0;
        for (TakenReading r : set.readings()) {
            if (r.shown() instanceof TakenReading.Gap) {
                continue;
            }
            String expected = sound.isEmpty()
                    ? ""
                    : number(PairReading.atScale(sound.get(next).value(), gain) / base);
            next++;
            rows.add(List.of(TakenReading.name(r.from()) + "–" + TakenReading.name(r.to()), shown(r, unit), expected));
        }
        String comma = unit.map(u -> ", " + u).orElse("");
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("Bars", 17, Table.Align.MIDDLE),
                        new Table.Column("Read" + comma, 19, Table.Align.RIGHT),
                        new Table.Column("Sound" + comma, 19, Table.Align.RIGHT)),
                rows,
                Math.max(1, Math.min(3, (rows.size() + 7) / 8)))));
    }

    /** What a sound winding reads; empty where the test does not tell of such pairs. */
    private List<PairReading> sound(TestRun run) {
        try {
            return run.test().read(armature, run.pairs());
        } catch (IllegalArgumentException e) {
            return List.of();
        }
    }

    private static String number(double value) {
        return Double.isInfinite(value) ? "open" : Format.number(value).replace('-', '−');
    }

    private static String shown(TakenReading r, Optional<String> unit) {
        if (r.shown() instanceof TakenReading.Value v) {
            String own = v.unit()
                    .filter(u -> !unit.equals(Optional.of(u)))
                    .map(u -> " " + u)
                    .orElse("");
            return v.number().toPlainString().replace('-', '−') + own;
        }
        return "OL";
    }

    /** Unit that the readings stand in: that of all, or that of the first with one of its own. */
    private static Optional<String> unit(ReadingSet set) {
        return set.unit()
                .or(() -> set.readings().stream()
                        .flatMap(r -> r.shown() instanceof TakenReading.Value v ? v.unit().stream() : Stream.empty())
                        .findFirst());
    }

    private static double inBase(String unit) {
        var one = new Quantity(BigDecimal.ONE, unit);
        return one.in(one.kind().units().get(0));
    }

    private static void verdict(List<Block> out, Diagnosis d) {
        out.add(new Block.Paragraph("Diagnosis: " + DiagnosisWords.verdict(d)));
        List<String> likely = d.verdict() == Diagnosis.Verdict.SOUND
                ? List.of()
                : d.ranked().stream()
                        .filter(e -> e.probability() >= LEAST_SHOWN)
                        .limit(MOST_SHOWN)
                        .map(e -> DiagnosisWords.faults(e.faults()) + ", " + DiagnosisWords.percent(e.probability())
                                + (e.sameReadings().isEmpty()
                                        ? ""
                                        : "; reads the same here: "
                                                + DiagnosisWords.faults(
                                                        e.sameReadings().get(0))
                                                + (e.sameReadings().size() > 1
                                                        ? " and "
                                                                + (e.sameReadings()
                                                                                .size()
                                                                        - 1) + " more"
                                                        : "")))
                        .toList();
        if (!likely.isEmpty()) {
            out.add(new Block.Items(likely));
        }
        if (!d.unseen().isEmpty()) {
            out.add(new Block.Paragraph("These tests cannot show: " + String.join(", ", d.unseen()) + "."));
        }
    }

    /** How even the readings from bar to bar are, by the first test that tells; empty where none does. */
    Optional<Evenness> evenness() {
        return AcceptanceBasis.walks(job, stage).stream()
                .filter(w -> w.ratios().stream().anyMatch(r -> r > 0))
                .flatMap(w -> w.evenness().stream())
                .findFirst();
    }

    /** The verdict in one word with the likeliest faults; empty where there is none. */
    String verdictWords() {
        return diagnosis
                .map(d -> d.verdict().name().toLowerCase(Locale.ROOT)
                        + (d.verdict() == Diagnosis.Verdict.FAULTY ? ": " + DiagnosisWords.faults(d.likeliest()) : ""))
                .orElse("");
    }
}
