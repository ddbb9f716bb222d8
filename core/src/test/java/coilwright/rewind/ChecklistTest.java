package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.rewind.Checklist.Item;
import coilwright.rewind.Checklist.Section;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChecklistTest {
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void everySectionIsFilledAsItsKindAsks(boolean equalized) {
        Checklist list = Checklist.of(equalized);
        List<Section> sections =
                list.items().stream().map(Item::section).distinct().toList();
        assertThat(sections).containsExactly(Section.values());
        assertThat(list.items()).isSortedAccordingTo((a, b) -> a.section().compareTo(b.section()));
        for (Section section : Section.values()) {
            assertThat(list.items(section)).extracting(Item::id).doesNotHaveDuplicates();
        }
        for (Item i : list.items()) {
            boolean table =
                    i.section() == Section.LOOK || i.section() == Section.TEST || i.section() == Section.INSULATION;
            assertThat(i.sound().isEmpty()).as(i.id()).isNotEqualTo(table);
            assertThat(i.touchUp().isEmpty()).as(i.id()).isNotEqualTo(table);
            assertThat(i.renew().isEmpty()).as(i.id()).isEqualTo(i.section() != Section.INSULATION);
        }
    }

    @Test
    void testsComeInTheOrderOfTheTrade() {
        assertThat(Checklist.of(false).items(Section.TEST))
                .extracting(Item::id)
                .containsExactly("ground", "bar-to-bar", "growler", "run-out", "undercut", "insulation-resistance");
    }

    @Test
    void onlyTheGrowlerTestHangsOnEqualizers() {
        List<Item> plain = new ArrayList<>(Checklist.of(false).items());
        plain.removeAll(Checklist.of(true).items());
        assertThat(plain).extracting(Item::id).containsExactly("growler");
        assertThat(plain.get(0).text()).contains("blade");
    }
}
