package coilwright.desktop;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Window;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import javax.swing.AbstractButton;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;

/** Keyboard and mouse of a user, and eyes. */
final class Hand {
    private static final long PATIENCE = 40_000;

    private final Robot robot;

    Hand() throws AWTException {
        robot = new Robot();
        robot.setAutoDelay(4);
    }

    /** Reads something of the window on its own thread. */
    static <T> T see(Callable<T> what) {
        if (SwingUtilities.isEventDispatchThread()) {
            throw new IllegalStateException();
        }
        var out = new AtomicReference<T>();
        try {
            SwingUtilities.invokeAndWait(() -> {
                try {
                    out.set(what.call());
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                }
            });
        } catch (InterruptedException | InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
        return out.get();
    }

    /** Waits for something to be so. */
    void until(String what, Callable<Boolean> so) {
        long end = System.nanoTime() + PATIENCE * 1_000_000;
        while (!isSo(so)) {
            if (System.nanoTime() > end) {
                throw new AssertionError("waited in vain until " + what);
            }
            robot.delay(15);
        }
    }

    /** Waits for something to be so for a while: a window manager may take the focus away once more. */
    void untilItStays(String what, Callable<Boolean> so) {
        int[] times = {0};
        until(what, () -> {
            times[0] = isNow(so) ? times[0] + 1 : 0;
            return times[0] >= 8;
        });
    }

    /** Presses a key, and again where the press got lost on a busy machine; for keys that may be pressed twice. */
    void pressUntil(String stroke, String what, Callable<Boolean> so) {
        for (int i = 0; i < 8; i++) {
            press(stroke);
            long end = System.nanoTime() + PATIENCE * 1_000_000 / 8;
            while (System.nanoTime() < end) {
                if (isSo(so)) {
                    return;
                }
                robot.delay(15);
            }
        }
        throw new AssertionError("waited in vain until " + what);
    }

    /** What is not there yet is not so yet. */
    private static boolean isSo(Callable<Boolean> so) {
        return see(() -> isNow(so));
    }

    private static boolean isNow(Callable<Boolean> so) throws Exception {
        try {
            return so.call();
        } catch (NoSuchElementException | NoSuchFileException e) {
            return false;
        }
    }

    void press(String stroke) {
        KeyStroke k = KeyStroke.getKeyStroke(stroke);
        List<Integer> held = new ArrayList<>();
        if ((k.getModifiers() & InputEvent.CTRL_DOWN_MASK) != 0) {
            held.add(KeyEvent.VK_CONTROL);
        }
        if ((k.getModifiers() & InputEvent.ALT_DOWN_MASK) != 0) {
            held.add(KeyEvent.VK_ALT);
        }
        if ((k.getModifiers() & InputEvent.SHIFT_DOWN_MASK) != 0) {
            held.add(KeyEvent.VK_SHIFT);
        }
        held.forEach(robot::keyPress);
        robot.keyPress(k.getKeyCode());
        robot.keyRelease(k.getKeyCode());
        for (int i = held.size() - 1; i >= 0; i--) {
            robot.keyRelease(held.get(i));
        }
        robot.waitForIdle();
    }

    /** Types on the number pad and the letters. */
    void type(String words) {
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            switch (c) {
                case '.' -> press("PERIOD");
                case '-' -> press("MINUS");
                case '/' -> press("SLASH");
                case '*' -> press("shift 8");
                case ' ' -> press("SPACE");
                case '\n' -> press("ENTER");
                default -> press(String.valueOf(Character.toUpperCase(c)));
            }
        }
    }

    void moveTo(Component c, int x, int y) {
        Point at = see(() -> {
            Point p = new Point(x, y);
            SwingUtilities.convertPointToScreen(p, c);
            return p;
        });
        robot.mouseMove(at.x - 1, at.y);
        robot.mouseMove(at.x, at.y);
        robot.waitForIdle();
    }

    void click(Component c) {
        click(c, see(() -> c.getWidth() / 2), see(() -> c.getHeight() / 2));
    }

    void click(Component c, int x, int y) {
        moveTo(c, x, y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    void wheel(int steps) {
        robot.mouseWheel(steps);
        robot.waitForIdle();
    }

    void drag(Component c, int fromX, int fromY, int toX, int toY) {
        moveTo(c, fromX, fromY);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        moveTo(c, (fromX + toX) / 2, (fromY + toY) / 2);
        moveTo(c, toX, toY);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    /** How many points of a component have a colour on the screen. */
    long coloured(Component c, int rgb) {
        robot.delay(60);
        Rectangle r = see(() -> new Rectangle(c.getLocationOnScreen(), c.getSize()));
        var image = robot.createScreenCapture(r);
        return Arrays.stream(image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth()))
                .filter(p -> (p & 0xffffff) == rgb)
                .count();
    }

    /** Every showing component. */
    static List<Component> all() {
        List<Component> out = new ArrayList<>();
        for (Window w : Window.getWindows()) {
            if (w.isShowing()) {
                collect(w, out);
            }
        }
        return out;
    }

    private static void collect(Component c, List<Component> out) {
        if (!c.isShowing()) {
            return;
        }
        out.add(c);
        if (c instanceof Container container) {
            for (Component child : container.getComponents()) {
                collect(child, out);
            }
        }
    }

    /** The first showing component that is wanted; waits for it. */
    <C extends Component> C find(String what, Class<C> type, Predicate<C> wanted) {
        until("there is " + what, () -> all().stream().anyMatch(c -> type.isInstance(c) && wanted.test(type.cast(c))));
        return see(() -> all().stream()
                .filter(type::isInstance)
                .map(type::cast)
                .filter(wanted)
                .findFirst()
                .orElseThrow());
    }

    /** The showing component of a name, on the window's own thread. */
    Component now(String name) {
        return all().stream().filter(c -> name.equals(c.getName())).findFirst().orElseThrow();
    }

    Component named(String name) {
        return find(name, Component.class, c -> name.equals(c.getName()));
    }

    AbstractButton button(String words) {
        return find("button " + words, AbstractButton.class, b -> words.equals(b.getText()));
    }
}
