package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.Quantity;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever the files beside a job hold, or is typed as a height, does no harm. As many cases are tried as the system
 * property {@code fuzz} says, a few hundred unless given.
 */
class WindowFuzzTest {
    private static final int CASES = Integer.getInteger("fuzz", 300);
    private static final WorkOrder ORDER = WorkOrder.of(
            Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), WindingWay.COIL_BY_COIL);
    private static final List<String> WILD = List.of(
            "",
            " ",
            "0",
            "-1",
            "1",
            "12",
            "9999999",
            "99999999999999",
            "yes",
            "no",
            "# way: formed-coils",
            "# order: x",
            "#",
            "step,done",
            ",",
            ";",
            "\n",
            "\r",
            "\r\n",
            "\t",
            "\0",
            "\u001b[31m",
            "\u202e",
            "\u2028",
            "\ufeff",
            "\ud800",
            "\u0661",
            "\u2212",
            "mm",
            "\u00b5m",
            "0.012",
            "0,012",
            "1e9",
            "NaN",
            "\"",
            "'",
            "1 mm",
            "12 thou",
            "1 furlong",
            "a".repeat(20_000),
            "\\u0000",
            "recent.1=\\u0000x",
            "size=99999999999",
            "=",
            ":",
            "\\");

    @TempDir
    private Path folder;

    private static String mangled(Random random, String text) {
        StringBuilder out = new StringBuilder(text);
        for (int i = random.nextInt(5); i > 0; i--) {
            int at = random.nextInt(out.length() + 1);
            int to = Math.min(out.length(), at + random.nextInt(8));
            out.replace(at, random.nextBoolean() ? at : to, WILD.get(random.nextInt(WILD.size())));
        }
        return out.toString();
    }

    private static byte[] bytes(Random random, String text) {
        byte[] bytes = mangled(random, text).getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(4) == 0 && bytes.length > 0) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    @Test
    void ticksOfAnyFileAreReadOrLeftAloneAndNeverLost() throws IOException {
        WorkTicks own = WorkTicks.none(ORDER).with(1, true).with(3, true);
        Path job = folder.resolve("job.yaml");
        Path file = WorkTicks.beside(job);
        for (int i = 0; i < CASES; i++) {
            byte[] before = bytes(new Random(i * 0x9E3779B97F4A7C15L), own.toText());
            Files.write(file, before);
            Optional<WorkTicks> read = WorkTicks.read(file);
            read.ifPresent(t -> assertThat(WorkTicks.parse(t.toText())).contains(t));
            Optional<Path> aside = own.keep(job, 1);
            if (aside.isPresent()) {
                assertThat(WorkTicks.read(file)).contains(own);
                assertThat(Files.readAllBytes(aside.get())).isEqualTo(before);
                Files.delete(aside.get());
            } else {
                assertThat(read.orElseThrow().mark()).isEqualTo(own.mark());
                assertThat(WorkTicks.read(file)).contains(read.get().with(1, true));
            }
        }
    }

    @Test
    void aHeightIsTakenOrRefusedInWords() {
        for (int i = 0; i < CASES; i++) {
            Random random = new Random(i * 0x9E3779B97F4A7C15L);
            String typed = mangled(random, WILD.get(random.nextInt(WILD.size())));
            try {
                Quantity height = TraceEntries.height(typed, 3, 12, "mm");
                assertThat(height.kind()).isEqualTo(Quantity.Kind.LENGTH);
            } catch (IllegalArgumentException e) {
                assertThat(e.getMessage()).startsWith("the height of bar 3 ").hasSizeLessThan(300);
                assertThat(e.getMessage().chars().noneMatch(Character::isISOControl))
                        .as(e.getMessage())
                        .isTrue();
            }
        }
    }

    @Test
    void damagedSettingsAreAsGoodAsNone() throws IOException {
        String text = "dark=true\nsize=150\nrecent.1=/a/b.yaml\nrecent.2=c.yaml\n";
        for (int i = 0; i < CASES; i++) {
            Files.write(folder.resolve("window.properties"), bytes(new Random(i * 0x9E3779B97F4A7C15L), text));
            var settings = new Settings(folder);
            assertThat(settings.size()).isBetween(100, 250);
            assertThat(settings.recent()).hasSizeLessThanOrEqualTo(8);
            assertThat(settings.dark()).isIn(true, false);
        }
    }
}
