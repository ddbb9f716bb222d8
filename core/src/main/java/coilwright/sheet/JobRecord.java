package coilwright.sheet;

import coilwright.commutator.CommutatorReport;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.PageFormat;
import coilwright.drawing.Palette;
import coilwright.drawing.SlotSection;
import coilwright.drawing.ViewOptions;
import coilwright.job.AcceptanceBasis;
import coilwright.job.AsFound;
import coilwright.job.AsRewound;
import coilwright.job.CommutatorSizes;
import coilwright.job.CoreSizes;
import coilwright.job.HighPotentialDone;
import coilwright.job.InsulationState;
import coilwright.job.Job;
import coilwright.job.Measured;
import coilwright.job.Particulars;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.Rating;
import coilwright.job.ReadingSet;
import coilwright.job.RewindBasis;
import coilwright.job.SlotSizes;
import coilwright.rewind.Acceptance;
import coilwright.rewind.Caution;
import coilwright.rewind.Machine;
import coilwright.winding.Coil;
import coilwright.winding.Finding;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * All that is known of one job, in the order of the work: the machine, as found, readings and diagnosis, what is to be
 * wound, as rewound, before and after compared, acceptance, commutator, drawings, notes and signatures. What is not known
 * is left as a place to write on.
 */
public final class JobRecord {
    private final Job job;
    private final Winding winding;
    private final Particulars known;
    private final Palette palette;
    private final List<Block> out = new ArrayList<>();

    private JobRecord(Job job, Palette palette) {
        this.job = job;
        this.winding = job.build();
        this.known = job.particulars();
        this.palette = palette;
    }

    /**
     * {@return the record of a job}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     * @throws coilwright.winding.ImpossibleWindingException when the job's winding cannot be wound
     * @throws IllegalArgumentException when equalizers are given but the winding has nothing for them to join, or sizes
     *     do not go together
     */
    public static Document of(Job job, Palette palette) {
        return new JobRecord(job, palette).document();
    }

    private Document document() {
        Job wound = job;
        Optional<RewindReport> report = Optional.empty();
        String refused = "";
        try {
            report = Optional.of(RewindReport.of(job, RewindReport.Settings.USUAL));
            wound = RewindBasis.of(job).planned(job);
        } catch (IllegalArgumentException e) {
            refused = e.getMessage();
        }
        RecordReadings before = RecordReadings.of(job, ReadingSet.Stage.AS_FOUND);
        RecordReadings after = RecordReadings.of(wound, ReadingSet.Stage.AS_REWOUND);
        machine();
        asFound();
        out.add(new Block.Heading("Readings of the old winding, and diagnosis"));
        readings(before, "Chart of the readings of the old winding");
        RecordComparison.Planned planned = RecordComparison.Planned.of(wound, report);
        plan(wound, planned, report, refused);
        coils(wound);
        asRewound(after);
        out.add(new Block.Heading("Before and after"));
        out.add(new Block.Grid(new RecordComparison(job, planned, before, after).table()));
        acceptance();
        commutator();
        drawings(wound, report);
        end();
        return new Document(job.title(), "Job record", palette, out);
    }

    private void machine() {
        out.add(new Block.Blanks(List.of("Job number", "Owner", "Taken in on")));
        out.add(new Block.Heading("Machine"));
        Optional<Rating> r = known.rating();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Kind", Written.of(r.flatMap(Rating::kind)));
        facts.put("Voltage", Written.of(r.flatMap(Rating::volts)));
        facts.put("Armature current", Written.of(r.flatMap(Rating::current)));
        facts.put("Power", Written.of(r.flatMap(Rating::power)));
        facts.put("Speed", Written.of(r.flatMap(Rating::speed)));
        facts.put("Serial number", Written.of(r.flatMap(Rating::serial)));
        out.add(new Block.Facts(facts));
    }

    private void asFound() {
        out.add(new Block.Heading("As found"));
        Optional<AsFound> found = known.asFound();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Date", Written.of(found.flatMap(AsFound::date)));
        facts.put("By", Written.of(found.flatMap(AsFound::by)));
        facts.putAll(WindingFacts.of(job, winding, job.equalizers().isPresent()));
        facts.putIfAbsent("Turns per coil", "");
        facts.remove("Coil resistance");
        facts.put("Wire", known.wire().map(Written::wire).orElse(""));
        core(facts);
        facts.put(
                "Banding", found.flatMap(AsFound::banding).map(Written::banding).orElse(""));
        measured(facts, found.flatMap(AsFound::measured));
        out.add(new Block.Facts(facts));
        List<InsulationState> states = found.map(AsFound::insulation).orElse(List.of());
        if (!states.isEmpty()) {
            List<List<String>> rows = states.stream()
                    .map(s -> List.of(s.part(), Written.word(s.verdict()), Written.of(s.note())))
                    .toList();
            out.add(new Block.Grid(new Table(
                    List.of(
                            new Table.Column("Insulation", 40, Table.Align.LEFT),
                            new Table.Column("Verdict", 24, Table.Align.LEFT),
                            new Table.Column("Note", 88, Table.Align.LEFT)),
                    rows,
                    1)));
        }
    }

    private void core(Map<String, String> facts) {
        Optional<CoreSizes> core = known.core();
        Optional<SlotSizes> slot = core.flatMap(CoreSizes::slot);
        facts.put("Core length", Written.of(core.flatMap(CoreSizes::length)));
        facts.put("Core diameter", Written.of(core.flatMap(CoreSizes::diameter)));
        facts.put("Shaft diameter", Written.of(core.flatMap(CoreSizes::shaft)));
        facts.put("Slot", slot.map(Written::slot).orElse(Written.of(core.flatMap(CoreSizes::slotDepth))));
        facts.put(
                "Liner, separator, wedge",
                slot.map(s -> sizes(List.of(s.liner(), s.separator(), s.wedge())))
                        .orElse(""));
    }

    /** Sizes with a dash where one is not known; empty where none is. */
    private static String sizes(List<Optional<Quantity>> sizes) {
        return sizes.stream().allMatch(Optional::isEmpty)
                ? ""
                : sizes.stream().map(s -> s.map(Quantity::toString).orElse("–")).collect(Collectors.joining(", "));
    }

    private static void measured(Map<String, String> facts, Optional<Measured> m) {
        facts.put("Winding temperature", Written.of(m.flatMap(Measured::temperature)));
        facts.put("Resistance of a coil, measured", Written.of(m.flatMap(Measured::coilResistance)));
        facts.put("Brush to brush, measured", Written.of(m.flatMap(Measured::brushToBrush)));
        facts.put("Insulation resistance, 1 min", Written.of(m.flatMap(Measured::insulationOneMinute)));
        facts.put("Insulation resistance, 10 min", Written.of(m.flatMap(Measured::insulationTenMinutes)));
        facts.put("Insulation test voltage", Written.of(m.flatMap(Measured::testVolts)));
    }

    private void readings(RecordReadings readings, String chart) {
        if (readings.sets().isEmpty()) {
            out.add(new Block.Paragraph("None noted in the job file."));
            out.add(new Block.Lines(2));
            return;
        }
        readings.addTo(out, palette, chart);
    }

    private void plan(Job wound, RecordComparison.Planned plan, Optional<RewindReport> report, String refused) {
        out.add(new Block.Heading("What is to be wound"));
        Optional<Plan> wanted = known.plan();
        if (!refused.isEmpty()) {
            out.add(new Block.Paragraph(
                    "The plan cannot be wound: " + refused + ". Told here is the winding as found."));
        }
        if (refused.isEmpty() && wanted.filter(p -> !p.equals(Plan.same())).isEmpty()) {
            out.add(new Block.Paragraph("As found; the job file plans no change."));
        }
        Winding planned = wound.build();
        Map<String, String> facts =
                WindingFacts.of(wound, planned, wound.equalizers().isPresent());
        facts.keySet().removeAll(List.of("Slots", "Bars", "Poles", "Slot 1", "Coil resistance"));
        planned.pitches().ifPresent(p -> {
            facts.put("Back and front pitch, conductors", p.back() + ", " + p.front());
        });
        facts.put("Turns per coil", Written.of(plan.turns()));
        facts.put("Wire", plan.wire());
        out.add(new Block.Facts(facts));
        List<String> findings =
                Rules.check(planned).stream().map(Finding::message).toList();
        if (!findings.isEmpty()) {
            out.add(new Block.Items(findings));
        }
        if (refused.isEmpty()) {
            report.ifPresent(this::worked);
        }
    }

    /** The rewind worked out: of a change only what is planned, else the winding as it is to be wound again. */
    private void worked(RewindReport report) {
        Set<RewindReportSection.Part> left = EnumSet.of(
                RewindReportSection.Part.SUBSTITUTES,
                RewindReportSection.Part.OTHERS,
                RewindReportSection.Part.MISSING);
        for (RewindReportSection section : RewindReportText.of(report)) {
            if (section.planned() != report.change().isPresent() || left.contains(section.part())) {
                continue;
            }
            out.add(new Block.Heading(section.title()));
            Map<String, String> facts = new LinkedHashMap<>();
            section.facts().forEach((name, value) -> facts.put(WindingFacts.capital(name), value));
            if (!facts.isEmpty()) {
                out.add(new Block.Facts(facts));
            }
            section.table().ifPresent(t -> out.add(new Block.Grid(t)));
            if (!section.items().isEmpty()) {
                out.add(
                        section.part() == RewindReportSection.Part.CAUTIONS
                                ? new Block.Cautions(section.items())
                                : new Block.Items(section.items()));
            }
        }
    }

    private void coils(Job wound) {
        out.add(new Block.Heading("Coils"));
        List<List<String>> rows = new ArrayList<>();
        for (Coil c : wound.build().coils()) {
            rows.add(List.of(
                    Integer.toString(c.number()),
                    c.top().slot() + "–" + c.bottom().slot(),
                    bar(c.topBar()),
                    bar(c.bottomBar())));
        }
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("Coil", 11, Table.Align.MIDDLE),
                        new Table.Column("Slots", 14, Table.Align.MIDDLE),
                        new Table.Column("Top lead on bar", 14, Table.Align.MIDDLE),
                        new Table.Column("Bottom lead on bar", 15, Table.Align.MIDDLE)),
                rows,
                Math.max(1, Math.min(3, (rows.size() + 7) / 8)))));
    }

    private static String bar(OptionalInt bar) {
        return bar.isPresent() ? Integer.toString(bar.getAsInt()) : "dead";
    }

    private void asRewound(RecordReadings after) {
        out.add(new Block.Heading("As rewound"));
        Optional<AsRewound> w = known.asRewound();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Date", Written.of(w.flatMap(AsRewound::date)));
        facts.put("By", Written.of(w.flatMap(AsRewound::by)));
        facts.put("Turns per coil", w.map(x -> Written.of(x.turns())).orElse(""));
        facts.put("Wire", w.flatMap(AsRewound::wire).map(Written::wire).orElse(""));
        facts.put("Copper used", Written.of(w.flatMap(AsRewound::copper)));
        facts.put("Banding", w.flatMap(AsRewound::banding).map(Written::banding).orElse(""));
        facts.put("Varnish", Written.of(w.flatMap(AsRewound::varnish)));
        measured(facts, w.flatMap(AsRewound::measured));
        out.add(new Block.Facts(facts));
        out.add(new Block.Heading("Readings of the new winding"));
        readings(after, "Chart of the readings of the new winding");
    }

    private void acceptance() {
        out.add(new Block.Heading("Acceptance"));
        Optional<AsRewound> w = known.asRewound();
        try {
            judged(Acceptance.of(AcceptanceBasis.of(job, AcceptanceBasis.Options.none())));
        } catch (IllegalArgumentException e) {
            out.add(new Block.Paragraph("It cannot be judged: " + e.getMessage() + "."));
        }
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "High-potential test",
                w.flatMap(AsRewound::highPotential)
                        .map(JobRecord::highPotential)
                        .orElse(""));
        facts.put(
                "Turns or delivers the right way round",
                w.flatMap(AsRewound::polarity)
                        .map(p -> p == AsRewound.Polarity.RIGHT ? "yes" : "no, reversed")
                        .orElse(""));
        facts.put("Ran without load, for how long", "");
        facts.put("Ran at load, sparking at the brushes", "");
        out.add(new Block.Facts(facts));
        out.add(new Block.Cautions(
                Acceptance.cautions().stream().map(Caution::text).toList()));
        out.add(new Block.Ticks(List.of("Accepted", "Not accepted; the reason is in the notes")));
    }

    private void judged(Acceptance acceptance) {
        out.add(new Block.Paragraph(acceptance.verdictText()));
        List<List<String>> rows = new ArrayList<>();
        for (Acceptance.Check c : acceptance.checks()) {
            String by = c.lines().stream()
                    .filter(Acceptance.Line::chosen)
                    .map(l -> l.limit().words() + "; " + l.limit().source().cite())
                    .collect(Collectors.joining(". "));
            rows.add(List.of(
                    c.title(),
                    String.join("; ", c.found()),
                    by.isEmpty() ? String.join("; ", c.wanted()) : by,
                    c.status() == Acceptance.Status.TO_DO
                            ? ""
                            : c.status().word().replace('-', ' ')));
        }
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("Check", 34, Table.Align.LEFT),
                        new Table.Column("Found", 48, Table.Align.LEFT),
                        new Table.Column("Wanted", 72, Table.Align.LEFT),
                        new Table.Column("Verdict", 22, Table.Align.LEFT)),
                rows,
                1)));
    }

    private static String highPotential(HighPotentialDone h) {
        return h.volts()
                + h.current().map(c -> " " + c.name()).orElse("")
                + (h.seconds().isPresent() ? " for " + h.seconds().getAsInt() + " s" : "")
                + ": " + Written.word(h.result());
    }

    private void commutator() {
        out.add(new Block.Heading("Commutator"));
        Optional<CommutatorSizes> c = known.commutator();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Diameter as found", Written.of(c.flatMap(CommutatorSizes::diameter)));
        facts.put("Least diameter allowed", Written.of(c.flatMap(CommutatorSizes::minimum)));
        facts.put("Mica", Written.of(c.flatMap(CommutatorSizes::mica)));
        facts.put("Undercut as found", Written.of(c.flatMap(CommutatorSizes::undercut)));
        facts.put("Brush width", Written.of(c.flatMap(CommutatorSizes::brushWidth)));
        CommutatorPages.Progress progress = CommutatorPages.NOTHING_READ;
        try {
            progress = CommutatorPages.progress(job, palette);
        } catch (IllegalArgumentException e) {
            out.add(new Block.Paragraph("The run-out cannot be judged: " + e.getMessage() + "."));
        }
        Optional<CommutatorReport> report = progress.report();
        if (report.isPresent()) {
            facts.putAll(report.get().facts());
            facts.putAll(report.get().cutLines());
        } else {
            facts.put("Total indicator reading", "");
            facts.put("Largest step from bar to bar", "");
        }
        facts.put("Diameter after turning", "");
        facts.put("Undercut after turning", "");
        facts.put("Run-out after turning", "");
        out.add(new Block.Facts(facts));
        report.ifPresent(r -> {
            List<String> lines = new ArrayList<>(r.notes());
            lines.addAll(r.undercutLines());
            out.add(new Block.Items(lines));
        });
        progress.trace().ifPresent(t -> out.add(new Block.Annex("Run-out of the commutator", t)));
    }

    private void drawings(Job wound, Optional<RewindReport> report) {
        out.add(new Block.Heading("Drawings"));
        if (!wound.winding().equals(job.winding())) {
            views(winding, " as found");
            views(wound.build(), " as it is to be wound");
        } else {
            views(winding, "");
        }
        report.ifPresent(r -> {
            Optional<RewindReportState> after = r.change().flatMap(RewindReport.Change::after);
            section(r.found(), after.isPresent() ? " as found" : "");
            after.ifPresent(s -> section(s, " as it is to be wound"));
        });
    }

    private void section(RewindReportState state, String when) {
        if (state.slot().isEmpty()
                || state.conductor().isEmpty()
                || state.turns().isEmpty()) {
            return;
        }
        Machine.Slot slot = state.slot().get();
        try {
            out.add(new Block.Annex(
                    "Section of a slot" + when,
                    DrawingPages.of(SlotSection.of(
                            new SlotSection.Data(
                                    titled(when),
                                    slot.shape(),
                                    slot.insulation(),
                                    state.conductor().get(),
                                    state.turns().getAsInt() * slot.sidesPerLayer()),
                            palette))));
        } catch (IllegalArgumentException e) {
            out.add(new Block.Paragraph("Section of a slot" + when + ": " + e.getMessage() + "."));
        }
    }

    private void views(Winding which, String when) {
        ViewOptions options = ViewOptions.of(titled(when)).withPalette(palette).withFormat(PageFormat.A4);
        out.add(new Block.Annex("Winding" + when + " from the commutator end", DrawingView.ROUND.draw(which, options)));
        out.add(new Block.Annex("Winding" + when + " rolled out flat", DrawingView.DEVELOPED.draw(which, options)));
    }

    private String titled(String when) {
        return when.isEmpty() ? job.title() : job.title() + ":" + when;
    }

    private void end() {
        out.add(new Block.Heading("Notes"));
        if (!known.notes().isEmpty()) {
            out.add(new Block.Items(known.notes()));
        }
        out.add(new Block.Lines(3));
        out.add(new Block.Heading("Signatures"));
        out.add(new Block.Blanks(List.of("Date", "Done by")));
        out.add(new Block.Blanks(List.of("Date", "Checked by")));
    }
}
