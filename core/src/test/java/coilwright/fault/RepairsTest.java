package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.KeptText;
import coilwright.fault.EmergencyRepair.Cost;
import coilwright.fault.EmergencyRepair.Option;
import coilwright.fault.EmergencyRepair.Plan;
import coilwright.fault.EmergencyRepair.Trouble;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What is told of cutting out a coil of many kinds of winding, word by word and figure by figure. */
final class RepairsTest {
    private static final String FILE = "repairs.txt";

    private static List<Plan> plans() {
        List<Plan> out = new ArrayList<>();
        Winding lap = winding(24, 24, 4, WindingSpec.lap(1, Direction.PROGRESSIVE));
        out.add(EmergencyRepair.of(lap, 5, Trouble.OPEN));
        out.add(EmergencyRepair.of(lap, 24, Trouble.SHORTED));
        out.add(EmergencyRepair.of(Winding.build(lap.armature(), lap.asListed()), 5, Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(9, 9, 2, WindingSpec.lap(1, Direction.RETROGRESSIVE)), 9, Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(3, 3, 2, WindingSpec.lap(1, Direction.PROGRESSIVE)), 2, Trouble.SHORTED));
        out.add(EmergencyRepair.of(winding(20, 20, 4, WindingSpec.lap(2, Direction.PROGRESSIVE)), 7, Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(21, 21, 4, WindingSpec.lap(2, Direction.PROGRESSIVE)), 7, Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(25, 25, 4, WindingSpec.wave(1, Direction.PROGRESSIVE)), 5, Trouble.OPEN));
        out.add(EmergencyRepair.of(
                winding(17, 17, 4, WindingSpec.wave(1, Direction.RETROGRESSIVE)), 1, Trouble.SHORTED));
        out.add(EmergencyRepair.of(winding(19, 38, 6, WindingSpec.wave(1, Direction.PROGRESSIVE)), 20, Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(22, 22, 4, WindingSpec.wave(2, Direction.PROGRESSIVE)), 3, Trouble.OPEN));
        out.add(EmergencyRepair.of(
                winding(12, 23, 4, WindingSpec.wave(1, Direction.PROGRESSIVE).withDeadCoils(List.of(24))),
                2,
                Trouble.OPEN));
        out.add(EmergencyRepair.of(winding(13, 13, 2, WindingSpec.wave(1, Direction.PROGRESSIVE)), 4, Trouble.OPEN));
        out.add(EmergencyRepair.of(
                winding(16, 16, 4, new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)),
                3,
                Trouble.SHORTED));
        out.add(EmergencyRepair.of(winding(150, 150, 10, WindingSpec.lap(1, Direction.PROGRESSIVE)), 1, Trouble.OPEN));
        return out;
    }

    private static Winding winding(int slots, int bars, int poles, WindingSpec spec) {
        return Winding.build(Armature.of(slots, bars, poles), spec);
    }

    private static List<String> told() {
        List<String> out = new ArrayList<>();
        for (Plan p : plans()) {
            Winding w = p.winding();
            out.add(w.type().word() + ", " + w.armature().slots() + " slots, "
                    + w.armature().bars() + " bars, "
                    + w.armature().poles() + " poles: coil " + p.coil().number() + " "
                    + p.trouble().word());
            out.add("  " + p.lift());
            out.add("  sound: " + words(p.sound()));
            for (Option o : p.options()) {
                out.add("  " + o.way().word() + " " + o.bridge() + " loses " + o.lost() + ": " + words(o.cost()));
            }
            p.cautions().forEach(c -> out.add("  ! " + c));
        }
        return out;
    }

    private static String words(Cost c) {
        return String.format(
                Locale.ROOT,
                "%d paths of %d to %d coils, %.5f apart, %.5f V, bar to bar %.5f",
                c.paths(),
                c.fewestCoils(),
                c.mostCoils(),
                c.unbalance(),
                c.volts(),
                c.barVolts());
    }

    @Test
    void everyFigureStaysAsItWas() {
        assertThat(told()).containsExactlyElementsOf(KeptText.lines(RepairsTest.class, FILE));
    }

    @Test
    void aListThatLeavesABarWithOtherThanTwoLeadsIsRefused() {
        Winding lap = winding(12, 12, 4, WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<ListedCoil> lines = new ArrayList<>(lap.asListed().coils());
        lines.set(11, ListedCoil.dead(12, 12, 3));
        Winding oneLess = Winding.build(lap.armature(), new WindingSpec.Listed(lines));
        assertThatThrownBy(() -> EmergencyRepair.of(oneLess, 5, Trouble.OPEN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "bar 1 has 1 leads, but a coil can be cut out by rule only where two leads meet on every bar:"
                                + " check the connections first");
        lines.set(11, ListedCoil.of(12, 12, 3, 11, 1));
        Winding moved = Winding.build(lap.armature(), new WindingSpec.Listed(lines));
        assertThatThrownBy(() -> EmergencyRepair.of(moved, 5, Trouble.OPEN))
                .hasMessageStartingWith("bar 11 has 3 leads, but");
    }

    /** Writes the file into a folder. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0], FILE), told());
    }
}
