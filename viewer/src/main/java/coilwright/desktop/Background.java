package coilwright.desktop;

import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/** Works things out off the event thread, one after the other; an answer that was overtaken is thrown away. */
final class Background {
    private final ExecutorService thread;
    private final AtomicLong latest = new AtomicLong();
    private final Consumer<Throwable> trouble;

    Background(String name, Consumer<Throwable> trouble) {
        this.trouble = trouble;
        thread = Executors.newSingleThreadExecutor(task -> {
            Thread t = new Thread(task, name);
            t.setDaemon(true);
            return t;
        });
    }

    /** Long work that asks now and then whether it was overtaken, to leave off. */
    interface Work<T> {
        T call(BooleanSupplier overtaken) throws Exception;
    }

    /**
     * Works something out in place of whatever was asked before.
     *
     * @param work off the event thread
     * @param then with the answer, on the event thread
     */
    <T> void replace(Callable<T> work, Consumer<T> then) {
        replace(overtaken -> work.call(), then);
    }

    /** Works something out in place of whatever was asked before, and leaves off once it is overtaken. */
    <T> void replace(Work<T> work, Consumer<T> then) {
        long mine = latest.incrementAndGet();
        thread.execute(() -> {
            if (latest.get() == mine) {
                run(
                        () -> work.call(() -> latest.get() != mine),
                        answer -> {
                            if (latest.get() == mine) {
                                then.accept(answer);
                            }
                        },
                        trouble);
            }
        });
    }

    /** Works something out after all that was asked before, whatever comes later. */
    <T> void queue(Callable<T> work, Consumer<T> then) {
        queue(work, then, trouble);
    }

    /**
     * Works something out after all that was asked before, whatever comes later.
     *
     * @param work off the event thread
     * @param then with the answer, on the event thread
     * @param failed with what went wrong in place of an answer, on the event thread
     */
    <T> void queue(Callable<T> work, Consumer<T> then, Consumer<Throwable> failed) {
        thread.execute(() -> run(work, then, failed));
    }

    private static <T> void run(Callable<T> work, Consumer<T> then, Consumer<Throwable> failed) {
        try {
            T answer = work.call();
            SwingUtilities.invokeLater(() -> then.accept(answer));
        } catch (Exception | StackOverflowError | OutOfMemoryError e) {
            SwingUtilities.invokeLater(() -> failed.accept(e));
        }
    }

    /** Throws away what is being worked out; its answer will not come. */
    void cancel() {
        latest.incrementAndGet();
    }
}
