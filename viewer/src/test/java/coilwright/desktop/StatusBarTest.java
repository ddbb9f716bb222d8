package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import javax.swing.AbstractButton;
import javax.swing.JLabel;
import org.junit.jupiter.api.Test;

class StatusBarTest {
    private final StatusBar bar = Hand.see(StatusBar::new);
    private final List<String> answers = new ArrayList<>();
    private final CountDownLatch held = new CountDownLatch(1);

    private String held(String answer) throws InterruptedException {
        held.await();
        return answer;
    }

    private static String fails() {
        throw new IllegalArgumentException("no room");
    }

    private AbstractButton cancel() {
        return Parts.named(bar, "cancel", AbstractButton.class);
    }

    private String said() {
        return Parts.named(bar, "status", JLabel.class).getText();
    }

    @Test
    void nothingThatWasAskedForIsOvertaken() throws Exception {
        Parts.run(() -> {
            bar.busy("Drawing a.pdf", () -> held("drawn"), answers::add);
            bar.busy("Copying", () -> "copied", answers::add);
            bar.opening("Opening a.yaml", () -> "opened", answers::add);
        });
        Parts.until("a job is opened", () -> answers.equals(List.of("opened")));
        assertThat(Hand.see(() -> cancel().isVisible())).isTrue();
        held.countDown();
        Parts.until("all is done", () -> answers.equals(List.of("opened", "drawn", "copied")));
        assertThat(Hand.see(() -> cancel().isVisible())).isFalse();
    }

    @Test
    void aJobOpenedLaterTakesTheEarliersPlace() throws Exception {
        Parts.run(() -> {
            bar.opening("Opening a.yaml", () -> held("a"), answers::add);
            bar.opening("Opening b.yaml", () -> "b", answers::add);
        });
        held.countDown();
        Parts.until("one is opened", () -> !answers.isEmpty());
        assertThat(answers).containsExactly("b");
    }

    @Test
    void whatIsGivenUpHasNoAnswerAndWhatComesAfterItHas() throws Exception {
        Parts.run(() -> {
            bar.busy("Drawing a.pdf", () -> held("drawn"), answers::add);
            bar.busy("Copying", () -> "copied", answers::add);
            cancel().doClick();
        });
        assertThat(said()).isEqualTo("Given up: Drawing a.pdf");
        held.countDown();
        Parts.until("the other is done", () -> !answers.isEmpty());
        assertThat(answers).containsExactly("copied");
    }

    @Test
    void aFileBeingWrittenCannotBeGivenUp() throws Exception {
        Parts.run(() -> bar.surely("Saving a.pdf", () -> held("saved"), answers::add));
        assertThat(Hand.see(() -> cancel().isVisible())).isFalse();
        held.countDown();
        Parts.until("it is saved", () -> answers.equals(List.of("saved")));
    }

    @Test
    void whatFailsIsToldAndLeavesTheBar() throws Exception {
        Parts.run(() -> bar.busy("Copying", StatusBarTest::fails, answers::add));
        Parts.until("it is told", () -> said().equals("no room"));
        assertThat(Hand.see(() -> cancel().isVisible())).isFalse();
        assertThat(answers).isEmpty();
    }
}
