package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkTicksTest {
    @TempDir
    private Path folder;

    private static WorkOrder order(int slots, WindingWay way) {
        return WorkOrder.of(
                Winding.build(Armature.of(slots, slots, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), way);
    }

    private final WorkOrder order = order(12, WindingWay.COIL_BY_COIL);

    @Test
    void readsBackWhatItKeeps() throws IOException {
        Path job = folder.resolve("a.b.yaml");
        WorkTicks ticks = WorkTicks.none(order).with(3, true).with(1, true).with(3, false);
        assertThat(ticks.keep(job, 3)).isEmpty();
        assertThat(folder.resolve("a.b.order.csv")).content().endsWith("step,done\n1,yes\n");
        assertThat(WorkTicks.read(WorkTicks.beside(job))).contains(ticks);
    }

    @Test
    void keepingAgainPutsNothingAside() throws IOException {
        Path job = folder.resolve("job.yaml");
        WorkTicks.none(order).with(1, true).keep(job, 1);
        assertThat(WorkTicks.none(order).with(1, true).with(2, true).keep(job, 2))
                .isEmpty();
        assertThat(WorkTicks.read(WorkTicks.beside(job)).orElseThrow().done()).containsExactlyInAnyOrder(1, 2);
    }

    @Test
    void ticksOfAnotherOrderArePutAsideOneByOne() throws IOException {
        Path job = folder.resolve("job.yaml");
        WorkTicks.none(order).with(7, true).keep(job, 7);
        String first = Files.readString(WorkTicks.beside(job));
        assertThat(WorkTicks.none(order(14, WindingWay.COIL_BY_COIL))
                        .with(1, true)
                        .keep(job, 1))
                .contains(folder.resolve("job.order-1.csv"));
        assertThat(WorkTicks.none(order(12, WindingWay.OPPOSITE_PAIRS))
                        .with(2, true)
                        .keep(job, 2))
                .contains(folder.resolve("job.order-2.csv"));
        assertThat(folder.resolve("job.order-1.csv")).content().isEqualTo(first);
        assertThat(WorkTicks.read(WorkTicks.beside(job)).orElseThrow().way()).isEqualTo(WindingWay.OPPOSITE_PAIRS);
    }

    @Test
    void aFileOfSomethingElseIsPutAsideToo() throws IOException {
        Path job = folder.resolve("job.yaml");
        Files.writeString(WorkTicks.beside(job), "my own notes\n");
        assertThat(WorkTicks.read(WorkTicks.beside(job))).isEmpty();
        assertThat(WorkTicks.none(order).with(1, true).keep(job, 1)).contains(folder.resolve("job.order-1.csv"));
        assertThat(folder.resolve("job.order-1.csv")).content().isEqualTo("my own notes\n");
    }

    @Test
    void twoWindowsKeepEachOthersTicks() throws IOException {
        Path job = folder.resolve("job.yaml");
        WorkTicks one = WorkTicks.none(order).with(1, true);
        one.keep(job, 1);
        WorkTicks other = WorkTicks.none(order).with(5, true);
        other.keep(job, 5);
        one.with(2, true).keep(job, 2);
        assertThat(WorkTicks.read(WorkTicks.beside(job)).orElseThrow().done()).containsExactlyInAnyOrder(1, 2, 5);
        other.with(1, false).keep(job, 1);
        assertThat(WorkTicks.read(WorkTicks.beside(job)).orElseThrow().done()).containsExactlyInAnyOrder(2, 5);
    }

    @Test
    void whereTheNewTicksCannotBeKeptWhatIsThereStays() throws IOException {
        Path job = folder.resolve("job.yaml");
        Path inTheWay = Files.createDirectory(WorkTicks.beside(job));
        assertThatThrownBy(() -> WorkTicks.none(order).with(1, true).keep(job, 1))
                .isInstanceOf(IOException.class);
        assertThat(inTheWay).isDirectory();
        assertThat(folder.resolve("job.order-1.csv")).doesNotExist();
    }

    @Test
    void theMarkTellsOrdersApart() {
        assertThat(WorkTicks.markOf(order)).isEqualTo(WorkTicks.markOf(order(12, WindingWay.COIL_BY_COIL)));
        assertThat(WorkTicks.markOf(order))
                .isNotEqualTo(WorkTicks.markOf(order(12, WindingWay.FORMED_COILS)))
                .isNotEqualTo(WorkTicks.markOf(order(14, WindingWay.COIL_BY_COIL)));
    }

    @Test
    void aBrokenLineIsPassedOver() {
        String text = WorkTicks.none(order).with(1, true).toText() + "2,y";
        assertThat(WorkTicks.parse(text).orElseThrow().done()).containsExactly(1);
        assertThat(WorkTicks.parse("# way: sideways\n# order: 1\nstep,done\n1,yes\n"))
                .isEmpty();
    }
}
