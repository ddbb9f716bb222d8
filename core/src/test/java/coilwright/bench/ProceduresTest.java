package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The steps of a test name this winding's own numbers, and mean what this kind of winding does. */
class ProceduresTest {
    private static final Winding LAP = lap(16, 32, 4, 1);
    private static final Winding WAVE =
            Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
    private static final Winding TWO_POLE_WAVE =
            Winding.build(Armature.of(17, 17, 2), WindingSpec.wave(1, Direction.PROGRESSIVE));
    private static final Winding FROG_LEG = Winding.build(
            Armature.of(24, 24, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));

    private static Winding lap(int slots, int bars, int poles, int plex) {
        return Winding.build(Armature.of(slots, bars, poles), WindingSpec.lap(plex, Direction.PROGRESSIVE));
    }

    private static String all(Procedure p) {
        List<String> lines = new ArrayList<>(List.of(p.title()));
        lines.addAll(p.setUp());
        lines.addAll(p.cautions());
        lines.addAll(p.steps());
        lines.addAll(p.meaning());
        return String.join("\n", lines);
    }

    @Test
    void growlerAndMeter() {
        assertThat(all(Procedures.growlerMeterTurned(LAP, 292.5)))
                .contains("Growler and meter, armature turned", "Fix the probes at 292.5° (clockwise")
                .contains("Go once round, 32 pairs.", "2 coils share each slot: readings repeat in groups of 2 bars")
                .doesNotContain("coils in series");
        assertThat(all(Procedures.growlerMeterTurned(LAP, 652.5))).contains("Fix the probes at 292.5°");
        assertThat(all(Procedures.growlerMeterTurned(LAP, -67.5))).contains("Fix the probes at 292.5°");
        assertThat(all(Procedures.growlerMeterWalked(WAVE)))
                .contains("Growler and meter, probes walked", "note again, to bars 17 and 1.")
                .contains("Between neighbouring bars lie 2 coils in series, so one bad coil shows on 2 pairs.")
                .doesNotContain("share each slot");
        assertThat(all(Procedures.growlerMeterWalked(TWO_POLE_WAVE))).doesNotContain("coils in series");
    }

    @Test
    void growlerAndBlade() {
        String everywhere = "Pull at every slot: the armature has equalizers";
        String series = "Pull over up to 4 slots: two neighbouring bars are joined, so 2 coils in series are shorted.";
        assertThat(all(Procedures.growlerBlade(LAP)))
                .contains("Growler and blade", everywhere)
                .doesNotContain("in series");
        assertThat(all(Procedures.growlerBlade(WAVE))).contains(everywhere, series);
        assertThat(all(Procedures.growlerBlade(TWO_POLE_WAVE))).doesNotContain("in series");
        assertThat(all(Procedures.growlerBlade(FROG_LEG)))
                .contains("A frog-leg winding equalizes itself: the blade pulls at every slot")
                .doesNotContain(everywhere, "in series");
    }

    @Test
    void drop() {
        assertThat(all(Procedures.drop(LAP, FeedBars.advised(LAP, false))))
                .contains("Drop test")
                .contains(
                        "Feed in at bar 1, out at bar 17: a simplex lap winding is fed at bar 1 and the bar opposite.")
                .contains("One reading low or nothing: the coil between is shorted, or its bars touch.")
                .contains("One reading high and no reading on the rest of its side: that coil is open.");
        assertThat(all(Procedures.drop(WAVE, FeedBars.advised(WAVE, false))))
                .contains("2 readings low: one coil is shorted within itself; one reading nothing: the two bars touch.")
                .contains("2 readings high with nothing before and after: one coil is open.")
                .doesNotContain("One reading low", "One reading high");
        assertThat(all(Procedures.drop(TWO_POLE_WAVE, List.of())))
                .contains("One reading low or nothing", "One reading high and no reading");
    }

    @Test
    void resistanceAndGround() {
        assertThat(all(Procedures.resistance(LAP)))
                .contains("Resistance bar to bar", "Measure each pair of neighbouring bars, 1-2 to 32-1.");
        String images = "In a wave winding the sign also keeps changing two pole pitches from the true ground";
        assertThat(all(Procedures.ground(WAVE)))
                .contains("Ground", images)
                .contains("A wave winding shows as many such places as there are poles (4) when it is fed");
        assertThat(all(Procedures.ground(TWO_POLE_WAVE)))
                .contains("as many such places as there are poles (2)")
                .doesNotContain(images);
        assertThat(all(Procedures.ground(LAP)))
                .contains("A lap winding shows two such places, one true and one phantom.")
                .doesNotContain("wave");
    }

    @Test
    void polarity() {
        assertThat(all(Procedures.polarity(LAP))).contains("Polarity", "Go once round.");
        var two = new WindingSpec.Listed(List.of(
                ListedCoil.of(1, 1, 3, 1, 2),
                ListedCoil.of(2, 2, 4, 2, 1),
                ListedCoil.of(3, 3, 1, 3, 4),
                ListedCoil.of(4, 4, 2, 4, 3)));
        assertThat(all(Procedures.polarity(Winding.build(Armature.of(4, 4, 2), two))))
                .contains("Do each of the 2 circuits by itself.")
                .doesNotContain("Go once round.");
        var one = Winding.build(LAP.armature(), LAP.asListed());
        assertThat(all(Procedures.polarity(one))).contains("Go once round.");
    }
}
