package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Drawing;
import coilwright.drawing.Element;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The walk through the rules: what its steps say of its armatures, and what their drawings show. */
class WalkTest {
    private static Chapter chapter(String title) {
        return Walk.chapters().stream()
                .filter(c -> c.title().equals(title))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> words(String title) {
        return chapter(title).steps().stream().map(Chapter.Step::words).toList();
    }

    private static List<Shape.Group> groups(Drawing d, Element.Kind kind) {
        return d.shapes().stream()
                .filter(s -> s instanceof Shape.Group g
                        && g.element().filter(e -> e.kind() == kind).isPresent())
                .map(s -> (Shape.Group) s)
                .toList();
    }

    /** Numbers of the coils of each drawing, those drawn heavily negative. */
    private static List<List<Integer>> coils(String title) {
        List<List<Integer>> out = new ArrayList<>();
        for (Chapter.Step s : chapter(title).steps()) {
            s.drawing()
                    .ifPresent(d -> out.add(groups(d, Element.Kind.COIL).stream()
                            .map(g -> g.element().orElseThrow().number()
                                    * (g.roles().contains(Role.HIGHLIGHT) ? -1 : 1))
                            .toList()));
        }
        return out;
    }

    @Test
    void chaptersStandInOrder() {
        assertThat(Walk.chapters().stream().map(Chapter::title))
                .containsExactly(
                        "What a coil is",
                        "The throw",
                        "The lap winding",
                        "The wave winding",
                        "Progressive and retrogressive",
                        "When a wave can be wound",
                        "The dead coil",
                        "Plex",
                        "Re-entrancy",
                        "Equalizers",
                        "Brushes",
                        "The growler");
    }

    @Test
    void aCoilAndItsNeighbour() {
        assertThat(words("What a coil is").get(0)).contains("has 8 slots, 8 bars, 2 poles.");
        assertThat(words("What a coil is").get(1)).endsWith("lies in slots 1 and 5, its leads on bars 1 and 2.");
        assertThat(words("What a coil is").get(2))
                .contains("coil 2 in slots 2 and 6.")
                .endsWith("8 slots take 8 coils.");
        assertThat(coils("What a coil is")).containsExactly(List.of(-1), List.of(1, -2));
    }

    @Test
    void theThrowIsCountedFromOne() {
        assertThat(words("The throw").get(0)).contains("8/2 = 4 slots.").endsWith("coil throw 1–5.");
        assertThat(words("The throw").get(1))
                .contains("with throw 1–4, coils span 3 slots, the pole pitch is 4 slots, chording factor 0.924.");
    }

    /** Four coils one by one, the next three in words, and the last on the whole winding. */
    @Test
    void theLapClosesAfterEightCoils() {
        assertThat(words("The lap winding"))
                .hasSize(7)
                .contains(
                        "Coil no. 1 of the walk: coil 1 leads from bar 1 through slots 1 and 5 to bar 2.",
                        "Coil no. 4 of the walk: coil 4 leads from bar 4 through slots 4 and 8 to bar 5.",
                        "So it goes on, coil by coil: coil 5 to bar 6, coil 6 to bar 7, coil 7 to bar 8. Coil no. 8 of the"
                                + " walk: coil 8 leads from bar 8 through slots 8 and 4 to bar 1. Bar 1 is where the first"
                                + " coil began: the winding closes after 8 coils, and every bar has one top and one"
                                + " bottom lead.");
        assertThat(words("The lap winding").get(0)).contains("pitch is +1.").contains("with coil throw 1–5:");
        assertThat(words("The lap winding").get(6))
                .startsWith("The back pitch Yb = 2 × 4 + 1 = 9 conductors and the front pitch 7 differ by 2")
                .endsWith("here 2.");
        assertThat(coils("The lap winding").subList(0, 4))
                .containsExactly(List.of(-1), List.of(1, -2), List.of(1, 2, -3), List.of(1, 2, 3, -4));
        assertThat(coils("The lap winding").get(4)).containsExactly(1, 2, 3, 4, 5, 6, 7, -8);
    }

    /** From bar 1 by fours of seven: 5, 2, 6, 3, 7, 4 and 1. */
    @Test
    void theWaveComesRoundToTheNextBar() {
        List<String> words = words("The wave winding");
        assertThat(words.get(0)).endsWith("(bars + 1) over pole pairs = (7 + 1)/2 = 4:");
        assertThat(words.get(2)).startsWith("Coil no. 2 of the walk: coil 5 leads from bar 5 ");
        assertThat(words.get(4))
                .startsWith(
                        "So it goes on, coil by coil: coil 6 to bar 3, coil 3 to bar 7, coil 7 to bar 4. Coil no. 7");
        assertThat(words.get(5))
                .startsWith(
                        "After 2 coils, once round, it has come to the bar beside the first: bar 1 + 2 × 4 = 9, that is"
                                + " bar 2. Between two neighbouring bars lie 2 coils in series.");
        assertThat(coils("The wave winding").subList(0, 3))
                .containsExactly(List.of(-1), List.of(1, -5), List.of(1, 5, -2));
    }

    @Test
    void directionsAreShownByTheirCoils() {
        List<String> words = words("Progressive and retrogressive");
        assertThat(words.get(0)).endsWith("coil 1 from bar 1 to bar 2.");
        assertThat(words.get(1)).contains("commutator pitch −1, from bar 1 to bar 8.");
        assertThat(coils("Progressive and retrogressive"))
                .containsExactly(List.of(-1), List.of(-1), List.of(1, -5), List.of(1, -4));
    }

    @Test
    void whatCannotBeWoundClosesTooSoon() {
        assertThat(words("When a wave can be wound").get(2))
                .startsWith("As the rule has it: commutator pitch would be 8/2 ± 1/2, not whole");
        assertThat(coils("When a wave can be wound")).containsExactly(List.of(1, -5));
    }

    @Test
    void theDeadCoilIsMarked() {
        assertThat(words("The dead coil").get(1)).contains("coil 16").endsWith("past it as if it were not there.");
        assertThat(coils("The dead coil").get(0)).hasSize(16).endsWith(-16);
    }

    @Test
    void twoCircuitsAndTwiceRound() {
        assertThat(words("Plex").get(0)).contains("On 10 slots, 10 bars, 2 poles, commutator pitch +2, the walk");
        assertThat(words("Plex").get(1)).endsWith("There are poles × plex = 2 × 2 = 4 parallel paths.");
        assertThat(coils("Plex").get(0)).containsExactly(1, 3, 5, 7, -9);
        assertThat(coils("Plex").get(1)).containsExactly(2, 4, 6, 8, 10, -1, -3, -5, -7, -9);
        // Bars 1, 3, 5, 7, 9 and on to 2.
        assertThat(words("Re-entrancy").get(1))
                .endsWith("The walk takes coils 1, 3, 5, 7 and 9 once round and comes to bar 2, not to bar 1;");
    }

    @Test
    void ringsJoinBarsTwoPolePitchesApart() {
        assertThat(words("Equalizers").get(1))
                .contains("12/2 = 6, should stand at one potential: bars 1 and 7, marked, and so on, 6 pairs.");
        Drawing d = chapter("Equalizers").steps().get(1).drawing().orElseThrow();
        assertThat(groups(d, Element.Kind.BAR).stream()
                        .filter(g -> g.roles().contains(Role.HIGHLIGHT))
                        .map(g -> g.element().orElseThrow().number()))
                .containsExactly(1, 7);
    }

    /** A coil throw of 3 of 12 slots has its middle at 45°, the bars 1 and 2 theirs at 15°. */
    @Test
    void brushesStandBeforeThePolesByTheDifference() {
        List<String> words = words("Brushes");
        assertThat(words.get(1))
                .contains(
                        "coil 1 lies in slots 1 and 4, its middle at 45°; its bars 1 and 2 have their middle at 15°. The"
                                + " brushes therefore stand 30° before the pole centres: + at 330°, − at 60°,");
        // + at 330° stands on bar 12, − at 240° on bar 9: the way back is by coils 11, 10 and 9.
        assertThat(words.get(2)).endsWith("coils 11, 10 and 9 from brush 1 (+) to brush 4 (−).");
        Drawing with = chapter("Brushes").steps().get(1).drawing().orElseThrow();
        assertThat(groups(with, Element.Kind.BRUSH)).hasSize(4);
        Drawing without = chapter("Equalizers").steps().get(1).drawing().orElseThrow();
        assertThat(groups(without, Element.Kind.BRUSH)).isEmpty();
    }

    @Test
    void theGrowlerReadsByPlace() {
        List<String> words = words("The growler");
        assertThat(words.get(0))
                .contains("8 slots, 8 bars, 2 poles stands with slot 1 straight up; the meter is on bars");
        assertThat(words.get(1)).startsWith("The coil between bars 1 and 2 has its sides at 0° and 180°.");
        assertThat(words.get(2)).startsWith("If coil 3, in slots 3 and 7 and on bars 3 and 4, is shorted");
    }
}
