package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class AsFoundSheetTest {
    private static Document sheet(Job job) {
        return AsFoundSheet.of(job, Palette.COLOUR);
    }

    private static String noted(Document document, String what) {
        List<List<String>> rows = JobRecordTest.rows(document, what);
        assertThat(rows).as(what).hasSize(1);
        return rows.get(0).get(1);
    }

    /** Columns for mm and inch of a size. */
    private static List<String> size(Document document, String letter, String what) {
        List<List<String>> rows = JobRecordTest.rows(document, letter).stream()
                .filter(r -> r.get(1).equals(what))
                .toList();
        assertThat(rows).as(what).hasSize(1);
        return rows.get(0).subList(2, 4);
    }

    @Test
    void whatTheJobTellsIsFilledIn() {
        Document d = sheet(RecordJobs.full());
        assertThat(noted(d, "Kind of machine")).isEqualTo("dc generator");
        assertThat(noted(d, "Slots")).isEqualTo("17");
        assertThat(noted(d, "Slot 1 is in line with (bar or mica)")).startsWith("bar");
        assertThat(noted(d, "Coil sides in a slot, top and bottom together")).isEqualTo("2");
        assertThat(noted(d, "Coil throw")).isEqualTo("1–5");
        assertThat(noted(d, "Lap or wave; simplex, duplex, …")).isEqualTo("Simplex wave");
        assertThat(noted(d, "Coil with its top side in slot 1: top lead on bar"))
                .isEqualTo("1");
        assertThat(noted(d, "The same coil: bottom side in slot")).isEqualTo("5");
        // Commutator pitch (17 + 1) / 2 = 9: from bar 1 to bar 10.
        assertThat(noted(d, "The same coil: bottom lead on bar")).isEqualTo("10");
        assertThat(noted(d, "Insulation resistance to the shaft, 1 min")).isEqualTo("30 Mohm");
        assertThat(noted(d, "Turns per coil")).isEqualTo("6");
        assertThat(noted(d, "Wires in hand")).isEqualTo("1");
        assertThat(JobRecordTest.rows(d, "slot liners").get(0)).containsExactly("slot liners", "", "", "×", "brittle");
        assertThat(JobRecordTest.rows(d, "key of the shaft").get(0))
                .containsExactly("key of the shaft", "×", "", "", "painted");
        assertThat(JobRecordTest.rows(d, "wedges, top sticks").get(0)).contains("", "", "", "");
        JobRecordTest.sound(d);
    }

    @Test
    void millimetresAndInchesStandInTheirOwnColumns() {
        Document d = sheet(RecordJobs.full());
        assertThat(size(d, "A", "core length, end laminations and vents included"))
                .containsExactly("60", "");
        assertThat(size(d, "C", "shaft with its insulation at the end turns")).containsExactly("", "0.59");
        assertThat(size(d, "h", "separator, thickness")).containsExactly("", "10 thou");
        assertThat(size(d, "D", "overhang of the end turns, commutator end")).containsExactly("", "");
    }

    @Test
    void anEmptyJobLeavesEverythingToBeWritten() {
        Job job = Job.of("Bare", new Armature(3, 3, 2, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Document d = sheet(job);
        for (String what : List.of("Voltage", "Turns per coil", "Wires in hand", "Temperature of the winding")) {
            assertThat(noted(d, what)).as(what).isEmpty();
        }
        assertThat(noted(d, "Slot 1 is in line with (bar or mica)")).startsWith("mica");
        assertThat(size(d, "f", "depth")).containsExactly("", "");
        JobRecordTest.sound(d);
    }

    @Test
    void aWindingThatCannotBeWoundStillGetsItsSheet() {
        // A simplex wave on 16 bars and 4 poles has no whole commutator pitch.
        Document d = sheet(Job.of("Miscounted", Armature.of(16, 16, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)));
        assertThat(noted(d, "Slots")).isEqualTo("16");
        assertThat(noted(d, "Coil throw")).isEmpty();
        assertThat(noted(d, "The same coil: bottom lead on bar")).isEmpty();
        JobRecordTest.sound(d);
    }
}
