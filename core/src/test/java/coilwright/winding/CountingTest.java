package coilwright.winding;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Numbers of a list beside those of the plan, on 12 slots and 23 bars. */
final class CountingTest {
    private static final Armature ARMATURE = Armature.of(12, 23, 4);

    @Test
    void countedOnFromItsOwnOne() {
        var list = new Counting(4, 22, false);
        assertThat(list.slot(ARMATURE, 1)).isEqualTo(4);
        assertThat(list.slot(ARMATURE, 10)).isEqualTo(1);
        assertThat(list.bar(ARMATURE, 1)).isEqualTo(22);
        assertThat(list.bar(ARMATURE, 3)).isEqualTo(1);
        assertThat(list.bar(ARMATURE, 23)).isEqualTo(21);
    }

    @Test
    void countedBackFromItsOwnOne() {
        var list = new Counting(4, 2, true);
        assertThat(list.slot(ARMATURE, 1)).isEqualTo(4);
        assertThat(list.slot(ARMATURE, 4)).isEqualTo(1);
        assertThat(list.slot(ARMATURE, 5)).isEqualTo(12);
        assertThat(list.bar(ARMATURE, 1)).isEqualTo(2);
        assertThat(list.bar(ARMATURE, 3)).isEqualTo(23);
    }
}
