package coilwright.desktop;

import java.awt.Image;
import java.util.List;
import javax.swing.ImageIcon;

/** The icon of the window, in the sizes that desktops ask for; {@code icon.svg} is its drawing. */
final class Icon {
    static final List<Integer> SIZES = List.of(16, 32, 48, 128, 256);

    private Icon() {}

    /** One picture a size, smallest first. */
    static List<Image> images() {
        return SIZES.stream().map(Icon::image).toList();
    }

    private static Image image(int size) {
        return new ImageIcon(Icon.class.getResource("icon-" + size + ".png")).getImage();
    }
}
