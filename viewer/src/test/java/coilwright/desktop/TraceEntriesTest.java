package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.job.JobText;
import coilwright.job.Quantity;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TraceEntriesTest {
    private static final String TEXT = """
            coilwright: 1
            title: T
            armature: {slots: 17, bars: 17, poles: 4}
            winding: {type: wave}
            commutator:
              diameter: 48 mm # over the bars
              runOut:
                - {bar: 2, height: 0.01 mm} # read twice
                - {bar: 9, height: 5 µm}
                - {bar: 9, height: 7 µm}
            """;

    private static Optional<Quantity> height(String typed) {
        return Optional.of(TraceEntries.height(typed, 3, 17, "µm"));
    }

    private static String shown(JobText text, int bar) {
        return TraceEntries.shown(TraceEntries.of(text.job().orElseThrow()), bar);
    }

    @Test
    void aNumberAloneTakesTheUnit() {
        assertThat(height("12").orElseThrow()).hasToString("12 µm");
        assertThat(height("-1,5").orElseThrow()).hasToString("-1.5 µm");
        assertThat(height("0.5 thou").orElseThrow()).hasToString("0.5 thou");
    }

    @Test
    void whatIsNoHeightIsRefusedWithTheReason() {
        assertThatThrownBy(() -> height("1.2.3"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("the height of bar 3 ")
                .hasMessageContaining("1.2.3");
        assertThatThrownBy(() -> height("1;2\n3")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> TraceEntries.height("9", 3, 17, "m")).hasMessageContaining("check the unit");
    }

    @Test
    void oneReadingIsChangedWhereItStands() {
        JobText changed = TraceEntries.with(JobText.of("t", TEXT), 2, height("12"));
        assertThat(changed.text()).isEqualTo(TEXT.replace("0.01 mm", "12 µm"));
    }

    @Test
    void aBarIsPutInItsPlaceAndTheRestStays() {
        JobText changed = TraceEntries.with(JobText.of("t", TEXT), 3, height("12"));
        assertThat(changed.text()).contains("diameter: 48 mm # over the bars");
        assertThat(TraceEntries.of(changed.job().orElseThrow()))
                .extracting(e -> e.bar() + "=" + e.height())
                .containsExactly("2=0.01 mm", "3=12 µm", "9=5 µm", "9=7 µm");
    }

    @Test
    void aBarReadTwiceIsReplacedAsAWhole() {
        JobText text = JobText.of("t", TEXT);
        assertThat(shown(text, 9)).isEqualTo("5 µm; 7 µm");
        assertThat(shown(TraceEntries.with(text, 9, height("6")), 9)).isEqualTo("6 µm");
        assertThat(shown(TraceEntries.with(text, 9, Optional.empty()), 9)).isEmpty();
    }

    @Test
    void theUnitIsThatOfTheLastReading() {
        assertThat(TraceEntries.unit(TraceEntries.of(JobText.of("t", TEXT).job().orElseThrow())))
                .isEqualTo("µm");
        assertThat(TraceEntries.unit(List.of())).isEqualTo("mm");
    }

    @Test
    void theFirstReadingMakesTheSection() {
        JobText bare = JobText.of("t", TEXT.substring(0, TEXT.indexOf("commutator:")));
        JobText one = TraceEntries.with(bare, 1, height("0"));
        assertThat(shown(one, 1)).isEqualTo("0 µm");
        assertThat(TraceEntries.with(one, 1, Optional.empty()).text()).isEqualTo(bare.text());
    }
}
