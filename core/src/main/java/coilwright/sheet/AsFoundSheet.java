package coilwright.sheet;

import coilwright.drawing.MeasuringSketches;
import coilwright.drawing.Palette;
import coilwright.job.AsFound;
import coilwright.job.Banding;
import coilwright.job.CommutatorSizes;
import coilwright.job.CoreSizes;
import coilwright.job.EndTurnSizes;
import coilwright.job.InsulationState;
import coilwright.job.Job;
import coilwright.job.Measured;
import coilwright.job.Particulars;
import coilwright.job.Quantity;
import coilwright.job.Rating;
import coilwright.job.SlotForm;
import coilwright.job.SlotSizes;
import coilwright.job.StripSizes;
import coilwright.job.WireChoice;
import coilwright.rewind.InsulationBuild;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Pitches;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What to measure and note before and while an old winding is stripped, in the order of the work, with sketches of where
 * to measure. What the job file tells is filled in, to be checked; the rest is left to be written in.
 *
 * <p>The order and the parts asked for are common practice.
 */
public final class AsFoundSheet {
    private static final Set<String> INCHES = Set.of("in", "thou", "mil", "ft");

    /** Parts of the insulation asked for where the job file names none of its own. */
    private static final List<String> PARTS = List.of(
            "slot liners",
            "separators",
            "wedges, top sticks",
            "end windings",
            "leads and sleeves",
            "core ends, end laminations",
            "shaft",
            "banding insulation",
            "commutator end rings (V-rings)",
            "mica between the bars");

    private final Job job;
    private final Optional<Winding> winding;
    private final Particulars known;
    private final Palette palette;
    private final List<Block> out = new ArrayList<>();
    private List<List<String>> rows = new ArrayList<>();

    private AsFoundSheet(Job job, Palette palette) {
        this.job = job;
        this.winding = built(job);
        this.known = job.particulars();
        this.palette = palette;
    }

    /**
     * {@return the sheet of a job; what its winding tells is left blank where it cannot be wound}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     */
    public static Document of(Job job, Palette palette) {
        return new AsFoundSheet(job, palette).document();
    }

    private static Optional<Winding> built(Job job) {
        try {
            return Optional.of(job.build());
        } catch (ImpossibleWindingException e) {
            return Optional.empty();
        }
    }

    private Document document() {
        start();
        nameplate();
        counts();
        throwsAndLeads();
        tests();
        core();
        commutator();
        banding();
        stripping();
        insulation();
        end();
        return new Document(job.title(), "As-found sheet: before stripping", palette, out);
    }

    private void start() {
        Optional<AsFound> found = known.asFound();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Date", Written.of(found.flatMap(AsFound::date)));
        facts.put("By", Written.of(found.flatMap(AsFound::by)));
        out.add(new Block.Facts(facts));
        out.add(
                new Block.Paragraph(
                        "In the order of the work. Printed values are from the job file: check each on the"
                                + " armature, and correct it where it differs. Look at the commutator end; count clockwise and from 1."));
        out.add(new Block.Cautions(List.of(
                "Old machines may hold asbestos, lead and mica: keep dust down, do not blow it off, wear a mask made for"
                        + " it. Burning off a winding gives off poisonous fumes and can harm the core.",
                "Discharge capacitors, and the winding after every insulation test. Bands of steel wire spring when cut:"
                        + " eye protection. Local codes come first.")));
        out.add(new Block.Ticks(List.of(
                "Photographed as it came: both ends, leads on the risers, banding, brush holders, wiring",
                "Brush rocker and brush holders marked against the frame; end shields marked against the frame")));
    }

    private void nameplate() {
        out.add(new Block.Heading("1. Nameplate and use"));
        Optional<Rating> r = known.rating();
        row("Kind of machine", Written.of(r.flatMap(Rating::kind)));
        row("Voltage", Written.of(r.flatMap(Rating::volts)));
        row("Current", Written.of(r.flatMap(Rating::current)));
        row("Power", Written.of(r.flatMap(Rating::power)));
        row("Speed", Written.of(r.flatMap(Rating::speed)));
        row("Serial number", Written.of(r.flatMap(Rating::serial)));
        row("Turns which way, seen from the commutator end", "");
        row("What was wrong with it, in the owner's words", "");
        noted();
    }

    private void counts() {
        out.add(new Block.Heading("2. Count and mark"));
        Armature a = job.armature();
        out.add(new Block.Ticks(List.of(
                "Slot 1 marked on the core with a punch or scriber, and bar 1 at the end of its riser, where turning and"
                        + " cleaning leave the marks")));
        row("Slots", Integer.toString(a.slots()));
        row("Bars", Integer.toString(a.bars()));
        row("Poles", Integer.toString(a.poles()));
        row(
                "Slot 1 is in line with (bar or mica)",
                a.slotOneInLineWith() == SlotAlignment.BAR ? "bar: bar 1" : "mica: between the last bar and bar 1");
        row(
                "Coil sides in a slot, top and bottom together",
                winding.map(w -> sides(w, a.slots())).orElse(""));
        row(
                "Dead coils (in the slots, on no bar)",
                winding.map(w -> w.deadCoils().isEmpty()
                                ? "none"
                                : "coils "
                                        + String.join(
                                                ", ",
                                                w.deadCoils().stream()
                                                        .map(c -> Integer.toString(c.number()))
                                                        .toList()))
                        .orElse(""));
        row("Equalizers (rings or wires joining bars)", job.equalizers().isPresent() ? "fitted" : "");
        noted();
        out.add(new Block.Pictures(List.of(MeasuringSketches.alignment(palette))));
    }

    private static String sides(Winding w, int slots) {
        int sides = 2 * w.coils().size();
        return sides % slots == 0 ? Integer.toString(sides / slots) : "";
    }

    private void throwsAndLeads() {
        out.add(new Block.Heading("3. Throw and leads"));
        row(
                "Coil throw",
                winding.flatMap(Winding::pitches).map(Pitches::coilThrow).orElse(""));
        row("Lap or wave; simplex, duplex, …", winding.map(w -> kind(w)).orElse(""));
        row(
                "Progressive or retrogressive (lap: leads uncrossed or crossed)",
                winding.flatMap(w -> w.sets().get(0).direction())
                        .map(Direction::word)
                        .orElse(""));
        Optional<Coil> first = winding.flatMap(
                w -> w.liveCoils().stream().filter(c -> c.top().slot() == 1).findFirst());
        row(
                "Coil with its top side in slot 1: top lead on bar",
                first.map(c -> Written.of(c.topBar())).orElse(""));
        row(
                "The same coil: bottom side in slot",
                first.map(c -> Integer.toString(c.bottom().slot())).orElse(""));
        row(
                "The same coil: bottom lead on bar",
                first.map(c -> Written.of(c.bottomBar())).orElse(""));
        row("Which lead lies under the other at the risers", "");
        row("Leads twisted, sleeved, soldered, welded or fused", "");
        noted();
        out.add(new Block.Pictures(
                List.of(MeasuringSketches.coilThrow(palette), MeasuringSketches.leadThrow(palette))));
        out.add(new Block.Paragraph("Trace at least three coils by hand before a lead is lifted, one of them beside the"
                + " first. An ohmmeter finds the two bars of a coil that cannot be seen."));
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("Coil", 14, Table.Align.MIDDLE),
                        new Table.Column("Top side in slot", 26, Table.Align.MIDDLE),
                        new Table.Column("Bottom side in slot", 26, Table.Align.MIDDLE),
                        new Table.Column("Top lead on bar", 26, Table.Align.MIDDLE),
                        new Table.Column("Bottom lead on bar", 26, Table.Align.MIDDLE)),
                List.of(blank(5), blank(5), blank(5), blank(5)),
                1)));
    }

    private static String kind(Winding w) {
        return WindingFacts.kind(w).split(",", 2)[0];
    }

    private void tests() {
        out.add(new Block.Heading("4. Measured before stripping"));
        Optional<Measured> m = known.asFound().flatMap(AsFound::measured);
        row("Temperature of the winding", Written.of(m.flatMap(Measured::temperature)));
        row("Resistance from bar to next bar, mean", "");
        row(
                "Resistance of one coil",
                Written.of(m.flatMap(Measured::coilResistance).or(job::coilResistance)));
        row("Resistance between the brushes' bars", Written.of(m.flatMap(Measured::brushToBrush)));
        row("Insulation test, direct volts", Written.of(m.flatMap(Measured::testVolts)));
        row("Insulation resistance to the shaft, 1 min", Written.of(m.flatMap(Measured::insulationOneMinute)));
        row("The same, 10 min", Written.of(m.flatMap(Measured::insulationTenMinutes)));
        noted();
        out.add(new Block.Ticks(
                List.of("Growler, drop or bar-to-bar readings taken all round and kept with this sheet")));
    }

    private void core() {
        out.add(new Block.Heading("5. Core and end turns"));
        out.add(new Block.Pictures(List.of(MeasuringSketches.core(palette))));
        Optional<CoreSizes> c = known.core();
        size("A", "core length, end laminations and vents included", c.flatMap(CoreSizes::length));
        size("B", "core diameter over the teeth", c.flatMap(CoreSizes::diameter));
        size("C", "shaft with its insulation at the end turns", c.flatMap(CoreSizes::shaft));
        size("D", "overhang of the end turns, commutator end", Optional.empty());
        size("E", "overhang of the end turns, back end", Optional.empty());
        size("H", "diameter over the end turns", Optional.empty());
        size(
                "",
                "straight part of a coil out of the slot",
                c.flatMap(CoreSizes::endTurn).map(EndTurnSizes::straight));
        size("", "both leads of a coil together, slot to riser", c.flatMap(CoreSizes::leads));
        sizes();
    }

    private void commutator() {
        out.add(new Block.Heading("6. Commutator"));
        Optional<CommutatorSizes> c = known.commutator();
        out.add(new Block.Pictures(List.of(MeasuringSketches.mica(palette))));
        size("F", "diameter, on the brush track and beside it", c.flatMap(CommutatorSizes::diameter));
        size("", "least diameter allowed, where it is known", c.flatMap(CommutatorSizes::minimum));
        size("G", "length of the brush track", Optional.empty());
        size("m", "thickness of the mica", c.flatMap(CommutatorSizes::mica));
        size("n", "undercut", c.flatMap(CommutatorSizes::undercut));
        size("", "brush width, along the bars' circle", c.flatMap(CommutatorSizes::brushWidth));
        size("", "run-out by a dial gauge, highest less lowest", Optional.empty());
        sizes();
        out.add(new Block.Ticks(List.of("Bars burnt, loose, lifted or bridged marked on the photograph")));
    }

    private void banding() {
        out.add(new Block.Heading("7. Banding"));
        Optional<Banding> b = known.asFound().flatMap(AsFound::banding);
        row(
                "Material (none, steel wire, glass tape, cord)",
                b.map(x -> Written.word(x.material())).orElse(""));
        row("Bands, and where they lie", b.map(x -> Written.of(x.bands())).orElse(""));
        row("Turns in each", b.map(x -> Written.of(x.turns())).orElse(""));
        row("Wire or cord diameter, or tape thickness", Written.of(b.flatMap(Banding::wire)));
        row("Width of a band", Written.of(b.flatMap(Banding::width)));
        row("Clips, solder, insulation under it", Written.of(b.flatMap(Banding::note)));
        noted();
    }

    private void stripping() {
        out.add(new Block.Heading("8. While stripping"));
        out.add(new Block.Ticks(List.of(
                "First coil lifted whole and kept, tagged with its slots and bars",
                "Turns counted on three coils from different places",
                "Old copper weighed")));
        row("Turns per coil", Written.of(job.turns()));
        row(
                "Wires in hand",
                known.wire()
                        .filter(w -> w.strip().isEmpty())
                        .map(w -> Written.of(w.inHand()))
                        .orElse(""));
        row(
                "Covering of the wire",
                Written.of(known.wire().flatMap(WireChoice::insulation).map(InsulationBuild::word)));
        row("Wire by its gauge", Written.of(known.wire().flatMap(WireChoice::size)));
        row("Old copper, mass", "");
        noted();
        out.add(new Block.Pictures(List.of(MeasuringSketches.micrometer(palette))));
        Optional<StripSizes> strip = known.wire().flatMap(WireChoice::strip);
        if (strip.isPresent()) {
            size("v", "strip, width over the copper", strip.map(StripSizes::width));
            size("v", "strip, thickness over the copper", strip.map(StripSizes::thickness));
            size("", "strip, covering on each side", strip.flatMap(StripSizes::covering));
        } else {
            size("v", "bare wire", Optional.empty());
            size("w", "wire over its covering", known.wire().flatMap(WireChoice::overall));
        }
        size("", "length of a turn, along the old coil", known.core().flatMap(CoreSizes::meanTurn));
        sizes();
        Optional<SlotSizes> slot = known.core().flatMap(CoreSizes::slot);
        SlotForm form = slot.map(SlotSizes::shape).orElse(SlotForm.SEMI_CLOSED);
        out.add(new Block.Pictures(
                List.of(MeasuringSketches.slot(MeasuringSketches.Slot.valueOf(form.name()), palette))));
        boolean leans = form == SlotForm.PARALLEL_TOOTH || form == SlotForm.SEMI_CLOSED;
        if (slot.isEmpty()) {
            out.add(new Block.Paragraph(
                    "Drawn is a semi-closed slot; of another shape draw its section here and letter it."));
        }
        if (form == SlotForm.SEMI_CLOSED) {
            size("a", "opening", slot.flatMap(SlotSizes::opening));
            size("b", "height of the lip", slot.flatMap(SlotSizes::lip));
            size("c", "height of the shoulder", slot.flatMap(SlotSizes::shoulder));
        }
        size(
                "d",
                leans ? "width of the body at its top" : "width",
                slot.flatMap(leans ? SlotSizes::topWidth : SlotSizes::width));
        if (leans) {
            size("e", "width at the floor", slot.flatMap(SlotSizes::bottomWidth));
        }
        size("f", "depth", slot.map(SlotSizes::depth).or(() -> known.core().flatMap(CoreSizes::slotDepth)));
        if (leans) {
            size("r", "radius of the corners", slot.flatMap(SlotSizes::corner));
        }
        size("g", "liner, thickness", slot.flatMap(SlotSizes::liner));
        size("", "liner, length out of each end of the core", Optional.empty());
        size("h", "separator, thickness", slot.flatMap(SlotSizes::separator));
        size("k", "wedge, height", slot.flatMap(SlotSizes::wedge));
        sizes();
    }

    private void insulation() {
        out.add(new Block.Heading("9. Insulation, part by part"));
        Map<String, InsulationState> states = new LinkedHashMap<>();
        known.asFound().map(AsFound::insulation).orElse(List.of()).forEach(s -> states.put(s.part(), s));
        List<List<String>> table = new ArrayList<>();
        states.values()
                .forEach(s -> table.add(List.of(
                        s.part(),
                        crossed(s, InsulationState.Verdict.SOUND),
                        crossed(s, InsulationState.Verdict.TOUCH_UP),
                        crossed(s, InsulationState.Verdict.RENEW),
                        Written.of(s.note()))));
        PARTS.stream().filter(p -> !states.containsKey(p)).forEach(p -> table.add(List.of(p, "", "", "", "")));
        table.add(blank(5));
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("Part", 48, Table.Align.LEFT),
                        new Table.Column("Sound", 15, Table.Align.MIDDLE),
                        new Table.Column("Touch up", 18, Table.Align.MIDDLE),
                        new Table.Column("Renew", 15, Table.Align.MIDDLE),
                        new Table.Column("What is worn, burnt, soaked or missing, and where", 80, Table.Align.LEFT)),
                table,
                1)));
    }

    private static String crossed(InsulationState state, InsulationState.Verdict verdict) {
        return state.verdict() == verdict ? "×" : "";
    }

    private void end() {
        out.add(new Block.Heading("Notes"));
        if (!known.notes().isEmpty()) {
            out.add(new Block.Items(known.notes()));
        }
        out.add(new Block.Lines(3));
        out.add(new Block.Blanks(List.of("Date", "Measured by", "Checked by")));
    }

    private void row(String what, String value) {
        rows.add(List.of(what, value));
    }

    /** Puts the rows gathered so far into a table of things noted. */
    private void noted() {
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("What", 86, Table.Align.LEFT),
                        new Table.Column("Noted", 90, Table.Align.LEFT)),
                rows,
                1)));
        rows = new ArrayList<>();
    }

    private void size(String letter, String what, Optional<Quantity> value) {
        boolean inch = value.filter(q -> INCHES.contains(q.unit())).isPresent();
        String words = value.map(
                        q -> q.unit().equals(inch ? "in" : "mm") ? q.value().toPlainString() : q.toString())
                .orElse("");
        rows.add(List.of(letter, what, inch ? "" : words, inch ? words : ""));
    }

    /** Puts the rows gathered so far into a table of sizes. */
    private void sizes() {
        out.add(new Block.Grid(new Table(
                List.of(
                        new Table.Column("", 10, Table.Align.MIDDLE),
                        new Table.Column("Size", 90, Table.Align.LEFT),
                        new Table.Column("mm", 38, Table.Align.RIGHT),
                        new Table.Column("inch", 38, Table.Align.RIGHT)),
                rows,
                1)));
        rows = new ArrayList<>();
    }

    private static List<String> blank(int cells) {
        List<String> out = new ArrayList<>();
        for (int i = 0; i < cells; i++) {
            out.add("");
        }
        return out;
    }
}
