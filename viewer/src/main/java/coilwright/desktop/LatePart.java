package coilwright.desktop;

import java.awt.BorderLayout;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** A part of the window that is made when first asked for, since most openings never need it. */
final class LatePart<P extends JComponent> {
    private final JPanel place = new JPanel(new BorderLayout());
    private final Supplier<P> make;
    private Optional<P> made = Optional.empty();

    LatePart(Supplier<P> make) {
        this.make = make;
    }

    /** Where it stands, made or not. */
    JPanel place() {
        return place;
    }

    P get() {
        if (made.isEmpty()) {
            made = Optional.of(make.get());
            place.add(made.get());
            place.revalidate();
        }
        return made.get();
    }

    void ifMade(Consumer<P> then) {
        made.ifPresent(then);
    }
}
