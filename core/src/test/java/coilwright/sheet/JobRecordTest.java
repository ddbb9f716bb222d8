package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.job.Job;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.ReadingSet;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class JobRecordTest {
    private static Document record(Job job) {
        return JobRecord.of(job, Palette.COLOUR);
    }

    /** Texts may overlap only where a drawing of its own has them; the sheet itself must be sound. */
    static void sound(Document document) {
        for (Drawing page : document.pages().pages()) {
            assertThat(page.overlappingTexts()).as(page.description()).isEmpty();
            assertThat(page.outsidePage()).as(page.description()).isEmpty();
        }
    }

    static Map<String, String> facts(Document document) {
        Map<String, String> out = new LinkedHashMap<>();
        document.blocks().forEach(b -> {
            if (b instanceof Block.Facts f) {
                f.facts().forEach((k, v) -> out.merge(k, v, (x, y) -> x + "|" + y));
            }
        });
        return out;
    }

    static List<List<String>> rows(Document document, String firstCell) {
        List<List<String>> out = new ArrayList<>();
        document.blocks().forEach(b -> {
            if (b instanceof Block.Grid g) {
                g.table().rows().stream()
                        .filter(r -> r.get(0).equals(firstCell))
                        .forEach(out::add);
            }
        });
        return out;
    }

    /** The row of the table of before and after, which alone has five columns. */
    private static List<String> row(Document document, String firstCell) {
        List<List<String>> rows =
                rows(document, firstCell).stream().filter(r -> r.size() == 5).toList();
        assertThat(rows).as(firstCell).hasSize(1);
        return rows.get(0);
    }

    private static List<String> headings(Document document) {
        return document.blocks().stream()
                .filter(b -> b instanceof Block.Heading)
                .map(b -> ((Block.Heading) b).words())
                .toList();
    }

    @Property(tries = 20)
    void noTextOverlapsOrLeavesThePage(@ForAll long seed) {
        Job job = RecordJobs.random(seed);
        sound(record(job));
        sound(AsFoundSheet.of(job, Palette.MONOCHROME));
    }

    @Property(tries = 5)
    void theSameJobGivesTheSameDocument(@ForAll long seed) {
        assertThat(record(RecordJobs.random(seed))).isEqualTo(record(RecordJobs.random(seed)));
    }

    @Example
    void everySectionStandsInTheOrderOfTheWork() {
        Document document = record(RecordJobs.full());
        assertThat(headings(document).stream().filter(h -> !h.endsWith(" as planned")))
                .containsExactly(
                        "Machine",
                        "As found",
                        "Readings of the old winding, and diagnosis",
                        "What is to be wound",
                        "Plan",
                        "What else the plan touches",
                        "Coils",
                        "As rewound",
                        "Readings of the new winding",
                        "Before and after",
                        "Acceptance",
                        "Commutator",
                        "Drawings",
                        "Notes",
                        "Signatures");
        assertThat(headings(document)).containsSubsequence(headings(record(RecordJobs.bare())));
        assertThat(headings(record(RecordJobs.bare()))).hasSizeGreaterThan(10);
        sound(document);
        sound(record(RecordJobs.bare()));
    }

    @Example
    void whatIsKnownIsToldAndTheDiagnosisNamesTheCoil() {
        Document document = record(RecordJobs.full());
        assertThat(facts(document))
                .containsEntry("Voltage", "12 V|24 V instead of 12 V")
                .containsEntry("Serial number", "HL 0417")
                .containsEntry("Shaft diameter", "0.59 in")
                .containsEntry("Liner, separator, wedge", "0.25 mm, 10 thou, 1 mm")
                .containsEntry("High-potential test", "1000 V AC for 60 s: passed");
        assertThat(facts(document).get("Wire"))
                .startsWith("18 AWG, heavy build, one in hand|21 AWG, heavy build|")
                .endsWith("|21 AWG, heavy build");
        List<String> paragraphs = document.blocks().stream()
                .filter(b -> b instanceof Block.Paragraph)
                .map(b -> ((Block.Paragraph) b).words())
                .toList();
        assertThat(paragraphs).anyMatch(p -> p.startsWith("Diagnosis: FAULTY"));
        assertThat(paragraphs).anyMatch(p -> p.startsWith("Diagnosis: SOUND"));
        List<String> items = document.blocks().stream()
                .filter(b -> b instanceof Block.Items)
                .flatMap(b -> ((Block.Items) b).items().stream())
                .toList();
        assertThat(items).anyMatch(i -> i.startsWith("coil 3 with 40 % of its turns shorted"));
    }

    /** Copper by (234.5 + 20)/(234.5 + t), insulation halved for each 10 °C over 40 °C: worked by hand. */
    @Example
    void beforeAndAfterAreBroughtToOneTemperature() {
        Document document = record(RecordJobs.full());
        // 0.0297 · 254.5 / 264.5 and 0.1155 · 254.5 / 256.5
        assertThat(row(document, "Resistance of a coil at 20 °C"))
                .contains("0.02858 ohm", "0.1146 ohm")
                .endsWith("+301.0 %");
        assertThat(row(document, "Brush to brush at 20 °C")).contains("0.1215 ohm", "0.4867 ohm");
        // 30 · 0.5^((40 − 30)/10) and 900 · 0.5^((40 − 22)/10)
        assertThat(row(document, "Insulation resistance at 40 °C, 1 min")).contains("15 Mohm", "258.5 Mohm");
        assertThat(row(document, "Polarization index")).containsExactly("Polarization index", "1.4", "", "3", "");
        assertThat(row(document, "Turns per coil").subList(1, 5)).containsExactly("6", "12", "12", "+100.0 %");
        assertThat(row(document, "Commutator diameter").subList(1, 4)).containsExactly("48 mm", "not under 45 mm", "");
    }

    @Example
    void evennessIsTakenOverWhatASoundWindingReads() {
        Job job = RecordJobs.full();
        // Readings of the new winding scatter by 0.4 % by construction; the old one has a coil that reads far less.
        RecordReadings after = RecordReadings.of(job, ReadingSet.Stage.AS_REWOUND);
        assertThat(after.evenness().orElseThrow().highest()).isCloseTo(0.4, within(0.05));
        assertThat(after.evenness().orElseThrow().lowest()).isCloseTo(0.4, within(0.05));
        RecordReadings before = RecordReadings.of(job, ReadingSet.Stage.AS_FOUND);
        assertThat(before.evenness().orElseThrow().lowest()).isGreaterThan(10);
    }

    @Example
    void whatIsNotKnownIsLeftEmpty() {
        Document document = record(RecordJobs.bare());
        Map<String, String> facts = facts(document);
        assertThat(facts)
                .containsEntry("Voltage", "")
                .containsEntry("Core length", "")
                .containsEntry("Slot", "")
                .containsEntry("High-potential test", "")
                .containsEntry("Diameter after turning", "")
                .containsEntry("Total indicator reading", "");
        for (String name : List.of(
                "Turns per coil", "Wire", "Brush to brush at 20 °C", "Polarization index", "Verdict of the readings")) {
            assertThat(row(document, name).subList(1, 5)).as(name).containsOnly("");
        }
        // Where a value is missing, a line to write on stands in print.
        assertThat(document.pages().first().texts().stream()
                        .map(Shape.Text::text)
                        .filter(t -> t.matches("_+")))
                .hasSizeGreaterThan(10);
    }

    @Example
    void aTemperatureThatIsNotKnownIsNotMadeUp() {
        Job job = RecordJobs.full();
        var p = job.particulars();
        var m = p.asRewound().orElseThrow().measured().orElseThrow();
        var cold = new coilwright.job.Measured(
                Optional.empty(),
                m.coilResistance(),
                m.brushToBrush(),
                m.insulationOneMinute(),
                m.insulationTenMinutes(),
                m.testVolts());
        var w = p.asRewound().orElseThrow();
        Job other = job.withParticulars(p.withAsRewound(new coilwright.job.AsRewound(
                w.date(),
                w.by(),
                w.turns(),
                w.wire(),
                w.copper(),
                Optional.of(cold),
                w.highPotential(),
                w.polarity(),
                w.banding(),
                w.varnish())));
        assertThat(row(record(other), "Resistance of a coil at 20 °C")).contains("0.1155 ohm (temperature not noted)");
    }

    @Example
    void aPlanForAnotherWindingIsDrawnBesideTheOld() {
        Job job = Job.of("Change", Armature.of(15, 15, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        Plan lap = new Plan(
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.of(WindingType.LAP),
                OptionalInt.empty(),
                Optional.empty());
        Document document = record(job.withParticulars(job.particulars().withPlan(lap)));
        assertThat(facts(document).get("Winding")).startsWith("Simplex wave, progressive|Simplex lap");
        assertThat(annexes(document))
                .containsExactly(
                        "Winding as found from the commutator end",
                        "Winding as found rolled out flat",
                        "Winding as it is to be wound from the commutator end",
                        "Winding as it is to be wound rolled out flat");
    }

    @Example
    void aPlanThatCannotBeWoundIsSaidSo() {
        Job job = Job.of("Change", Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Plan wave = new Plan(
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.of(WindingType.WAVE),
                OptionalInt.of(1),
                Optional.of(Direction.PROGRESSIVE));
        Document document = record(job.withParticulars(job.particulars().withPlan(wave)));
        assertThat(document.blocks())
                .anyMatch(b -> b instanceof Block.Paragraph p
                        && p.words().startsWith("The plan cannot be wound: no progressive wave winding"));
        assertThat(annexes(document)).hasSize(2);
        sound(document);
    }

    @Example
    void everyDrawingHasItsOwnPagesAtTheEnd() {
        Document document = record(RecordJobs.full());
        assertThat(annexes(document))
                .containsExactly(
                        "Chart of the readings of the old winding",
                        "Chart of the readings of the new winding",
                        "Run-out of the commutator",
                        "Winding from the commutator end",
                        "Winding rolled out flat",
                        "Section of a slot as found",
                        "Section of a slot as it is to be wound");
        List<Drawing> wide = document.pages().pages().stream()
                .filter(p -> p.width() > p.height())
                .toList();
        assertThat(wide).hasSize(7);
        assertThat(document.pages().pages()).endsWith(wide.toArray(Drawing[]::new));
    }

    @Example
    void wireThatThePlanLeavesOpenIsProposed() {
        Job job = RecordJobs.full();
        Plan volts = new Plan(
                Optional.of(Quantity.parse("24 V", Quantity.Kind.VOLTAGE)),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty());
        Document document = record(job.withParticulars(job.particulars().withPlan(volts)));
        // Twice the turns leave half the area: three numbers of the gauge further.
        assertThat(row(document, "Wire").get(2)).contains("21 AWG").endsWith("(proposed)");
        assertThat(row(document, "Turns per coil").get(2)).isEqualTo("12");
    }

    private static List<String> annexes(Document document) {
        return document.blocks().stream()
                .filter(b -> b instanceof Block.Annex)
                .map(b -> ((Block.Annex) b).words())
                .toList();
    }
}
