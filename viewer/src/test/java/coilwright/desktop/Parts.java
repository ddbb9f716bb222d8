package coilwright.desktop;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextField;

/** Parts of the window tried without a display, with a disk that is as slow as a test wants it. */
final class Parts {
    private static final int PATIENCE = 20;

    private Parts() {}

    /** A part by its name, shown or not. */
    static <C extends Component> C named(Container in, String name, Class<C> type) {
        List<Component> all = new ArrayList<>();
        collect(in, all);
        return type.cast(
                all.stream().filter(c -> name.equals(c.getName())).findFirst().orElseThrow());
    }

    private static void collect(Container in, List<Component> out) {
        for (Component c : in.getComponents()) {
            out.add(c);
            if (c instanceof Container container) {
                collect(container, out);
            }
        }
    }

    static void run(Runnable what) {
        Hand.see(() -> {
            what.run();
            return true;
        });
    }

    /** Types key by key; a line break is Enter. */
    static void type(JTextField field, String keys) {
        keys.chars()
                .mapToObj(Character::toString)
                .forEach(key -> run(() -> {
                    if (key.equals("\n")) {
                        field.postActionEvent();
                    } else {
                        field.replaceSelection(key);
                    }
                }));
    }

    /** Lets a disk do nothing until the latch is counted down. */
    static CountDownLatch hold(Background disk) {
        var latch = new CountDownLatch(1);
        disk.queue(() -> latch.await(PATIENCE, TimeUnit.SECONDS), held -> {});
        return latch;
    }

    /** Waits until a disk has answered, and what its answers asked for as well. */
    static void settle(Background disk) throws InterruptedException {
        for (int i = 0; i < 12; i++) {
            var latch = new CountDownLatch(1);
            disk.queue(() -> true, done -> latch.countDown());
            if (!latch.await(PATIENCE, TimeUnit.SECONDS)) {
                throw new AssertionError("the disk does not answer");
            }
        }
        run(() -> {});
    }

    static void until(String what, Callable<Boolean> so) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE);
        while (!Hand.see(so)) {
            if (System.nanoTime() > end) {
                throw new AssertionError("waited in vain until " + what);
            }
            Thread.sleep(5);
        }
    }
}
