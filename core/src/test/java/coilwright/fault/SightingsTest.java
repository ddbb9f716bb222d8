package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.KeptText;
import coilwright.fault.BenchSighting.BladeSlots;
import coilwright.fault.BenchSighting.Continuity;
import coilwright.fault.BenchSighting.Resistance;
import coilwright.fault.BenchSighting.TracedCoil;
import coilwright.fault.Identification.Answer;
import coilwright.fault.Identification.Known;
import coilwright.fault.Identification.Next;
import coilwright.fault.Identification.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is told of an unknown winding from what was counted and seen of it, word by word. */
final class SightingsTest {
    private static final String FILE = "sightings.txt";

    private static final int MANY = 14;

    private static Map<String, Known> cases() {
        Map<String, Known> out = new LinkedHashMap<>();
        out.put("counted", known(7, 7, 0, 0));
        out.put("lap of any poles", known(12, 12, 0, 0, TracedCoil.onBars(1, 2)));
        out.put("three bars counted", known(3, 3, 0, 0));
        out.put("three bars", known(3, 3, 2, 0));
        out.put("two bars", known(4, 2, 2, 0));
        out.put("poles", known(17, 17, 4, 0));
        out.put("poles and throw", known(24, 24, 4, 6));
        out.put("throw", known(12, 12, 0, 3, TracedCoil.onBars(1, 2)));
        out.put("short throw", known(12, 12, 0, 2, TracedCoil.onBars(12, 1)));
        out.put("throw of every kind", known(16, 16, 4, 15));
        out.put("two coils a slot", known(12, 24, 2, 5));
        out.put("dead coil", known(12, 23, 4, 3));
        out.put("traced on bars", known(25, 25, 4, 0, TracedCoil.onBars(3, 16)));
        out.put("traced in slots", known(18, 18, 0, 0, traced(17, 4, 18, 1)));
        out.put("traced alike twice", known(18, 18, 4, 5, traced(1, 6, 1, 2), traced(17, 4, 17, 18)));
        out.put("joined", known(20, 20, 4, 0, new Continuity(1, 2, true)));
        out.put("not joined", known(20, 20, 4, 0, new Continuity(3, 4, false), new Continuity(3, 5, true)));
        out.put("resistance of parted bars", known(20, 20, 4, 0, new Continuity(3, 4, false), new Resistance(1, 2, 1)));
        double wave12 = 2.0 * (17 - 2) / 17;
        double wave110 = 16.0 / 17;
        out.put(
                "resistances of a wave",
                known(17, 17, 4, 0, new Resistance(1, 2, 0.031 * wave12), new Resistance(1, 10, 0.031 * wave110)));
        out.put("one resistance", known(17, 17, 4, 0, new Resistance(1, 2, 0.031)));
        out.put("blade over two", known(14, 14, 2, 0, new BladeSlots(2)));
        out.put("blade over four", known(17, 17, 4, 0, new BladeSlots(4)));
        out.put("blade nowhere", known(20, 20, 4, 0, new BladeSlots(0)));
        out.put("blade everywhere", known(16, 16, 4, 0, new BladeSlots(16)));
        out.put("blade and trace", known(16, 32, 4, 0, new BladeSlots(2), TracedCoil.onBars(1, 2)));
        out.put("many poles", known(48, 96, 8, 6, TracedCoil.onBars(1, 2)));
        return out;
    }

    private static Known known(int slots, int bars, int poles, int throwSlots, BenchSighting... seen) {
        return new Known(slots, bars, some(poles), some(throwSlots), List.of(seen));
    }

    private static OptionalInt some(int n) {
        return n == 0 ? OptionalInt.empty() : OptionalInt.of(n);
    }

    private static TracedCoil traced(int topSlot, int bottomSlot, int topBar, int bottomBar) {
        return new TracedCoil(OptionalInt.of(topSlot), OptionalInt.of(bottomSlot), topBar, bottomBar);
    }

    private static List<String> told() {
        List<String> out = new ArrayList<>();
        cases().forEach((name, known) -> {
            out.add(name + ": " + known.slots() + " slots, " + known.bars() + " bars"
                    + known.sightings().stream().map(s -> "; " + s.words()).collect(Collectors.joining()));
            Answer answer = Identification.of(known);
            boolean inFull = known.poles().isPresent();
            answer.fits().forEach(f -> {
                out.add("  " + f.words());
                (inFull ? f.why() : List.<String>of()).forEach(w -> out.add("    " + w));
            });
            Map<String, List<String>> byReason = new LinkedHashMap<>();
            answer.excluded().stream()
                    .filter(e -> inFull || e.reason().startsWith("the coil throw"))
                    .forEach(e -> byReason.computeIfAbsent(e.reason(), r -> new ArrayList<>())
                            .add(Identification.kindWords(e.type(), e.plex(), e.direction(), e.poles())));
            byReason.forEach((reason, kinds) -> out.add("  not " + String.join("; ", kinds) + ": " + reason));
            if (answer.fits().size() < MANY) {
                NextSighting.candidates(answer.fits(), known).forEach(n -> out.addAll(words("  perhaps ", n)));
            }
            answer.next().ifPresent(n -> out.addAll(words("  next ", n)));
        });
        return out;
    }

    private static List<String> words(String when, Next n) {
        List<String> out = new ArrayList<>(List.of(when + n.kind() + " " + n.bars() + ": " + n.words()));
        for (Outcome o : n.outcomes()) {
            out.add(String.format(Locale.ROOT, "    %.4f, %s: %s", o.value(), o.words(), o.fits()));
        }
        return out;
    }

    @Test
    void everyWordStaysAsItWas() {
        assertThat(told()).containsExactlyElementsOf(KeptText.lines(SightingsTest.class, FILE));
    }

    /** Writes the file into a folder. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0], FILE), told());
    }
}
