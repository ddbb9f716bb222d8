package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.KeptText;
import coilwright.fault.ConnectionCheck.Alignment;
import coilwright.fault.ConnectionCheck.Result;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.IntUnaryOperator;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** What is told of lists in numbers of their own with several things wrong at once, word by word. */
final class FreeListsTest {
    private static final String FILE = "free-lists.txt";

    private static Map<String, Winding> windings() {
        Map<String, Winding> out = new LinkedHashMap<>();
        out.put("lap", winding(12, 12, 4, WindingSpec.lap(1, Direction.PROGRESSIVE)));
        out.put(
                "lap with a dead coil",
                winding(12, 11, 4, WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(6))));
        out.put("duplex lap", winding(16, 16, 4, WindingSpec.lap(2, Direction.RETROGRESSIVE)));
        out.put("two coils a slot", winding(8, 16, 2, WindingSpec.lap(1, Direction.PROGRESSIVE)));
        out.put("wave", winding(17, 17, 4, WindingSpec.wave(1, Direction.PROGRESSIVE)));
        out.put(
                "wave with a dead coil",
                winding(12, 23, 4, WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(10))));
        out.put("frog-leg", winding(16, 16, 4, new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)));
        return out;
    }

    private static Winding winding(int slots, int bars, int poles, WindingSpec spec) {
        return Winding.build(Armature.of(slots, bars, poles), spec);
    }

    /** Ways to spoil a list. */
    private static Map<String, UnaryOperator<List<ListedCoil>>> spoilt() {
        Map<String, UnaryOperator<List<ListedCoil>>> out = new LinkedHashMap<>();
        out.put("whole", l -> l);
        out.put("the first three only", l -> new ArrayList<>(l.subList(0, 3)));
        out.put("one missing, one twice", l -> {
            l.remove(4);
            l.add(l.get(7));
            return l;
        });
        out.put("bottom leads of two exchanged", l -> {
            ListedCoil a = l.get(2);
            ListedCoil b = l.get(3);
            l.set(2, new ListedCoil(a.coil(), a.topSlot(), a.bottomSlot(), a.topBar(), b.bottomBar()));
            l.set(3, new ListedCoil(b.coil(), b.topSlot(), b.bottomSlot(), b.topBar(), a.bottomBar()));
            return l;
        });
        out.put("one changed over, one off its bar, one on bar 99 in slot 99", l -> {
            ListedCoil a = l.get(1);
            l.set(1, new ListedCoil(a.coil(), a.topSlot(), a.bottomSlot(), a.bottomBar(), a.topBar()));
            ListedCoil b = l.get(6);
            l.set(6, new ListedCoil(b.coil(), b.topSlot(), b.bottomSlot(), b.topBar(), OptionalInt.empty()));
            ListedCoil c = l.get(0);
            l.set(0, new ListedCoil(c.coil(), 99, c.bottomSlot(), c.topBar(), OptionalInt.of(99)));
            return l;
        });
        out.put("one line under another number, one in a neighbour's slot", l -> {
            l.set(3, l.get(3).withNumber(77));
            ListedCoil b = l.get(5);
            l.set(5, new ListedCoil(b.coil(), b.topSlot() % 8 + 1, b.bottomSlot(), b.topBar(), b.bottomBar()));
            return l;
        });
        out.put("all leads changed over", l -> {
            l.replaceAll(c -> new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.bottomBar(), c.topBar()));
            return l;
        });
        return out;
    }

    private record Count(String words, Alignment way, boolean numbered) {}

    private static List<Count> counts() {
        return List.of(
                new Count("as planned", new Alignment(1, 1, false, false, 0), false),
                new Count("from slot 4 and bar 6", new Alignment(4, 6, false, false, 0), true),
                new Count("the other way from slot 3 and bar 2", new Alignment(3, 2, true, false, 0), true));
    }

    private static List<ListedCoil> counted(Winding w, Count count) {
        Armature a = w.armature();
        int sign = count.way().mirrored() ? -1 : 1;
        IntUnaryOperator number = n -> {
            var set = w.sets().get(w.coil(n).set());
            int by = count.numbered() ? 3 : 0;
            return set.firstCoil() + Math.floorMod(by + sign * (n - set.firstCoil()), set.coilCount());
        };
        Layout out = Layout.of(w)
                .renumbered(
                        number,
                        s -> count.way().slot(a, s),
                        b -> count.way().bar(a, b),
                        count.way().mirrored());
        return new ArrayList<>(out.rows());
    }

    private static List<String> told() {
        List<String> out = new ArrayList<>();
        windings()
                .forEach((name, w) -> counts().forEach(count -> spoilt().forEach((how, spoil) -> {
                    out.add(name + ", counted " + count.words() + ": " + how);
                    Result r = ConnectionCheck.free(w, spoil.apply(counted(w, count)));
                    out.add("  " + r.alignment().orElseThrow());
                    r.whole().ifPresent(x -> out.add("  " + x.words() + ": " + x.coils()));
                    int most = 8;
                    r.differences().stream()
                            .limit(most)
                            .forEach(d -> out.add(
                                    "  " + d.kind().word() + ", coil " + d.coil() + " " + d.words() + " " + d.with()));
                    if (r.differences().size() > most) {
                        out.add("  " + r.differences().size() + " in all");
                    }
                })));
        return out;
    }

    @Test
    void everyWordStaysAsItWas() {
        assertThat(told()).containsExactlyElementsOf(KeptText.lines(FreeListsTest.class, FILE));
    }

    /** Writes the file into a folder. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0], FILE), told());
    }
}
