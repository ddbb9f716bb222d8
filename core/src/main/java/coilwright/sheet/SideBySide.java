package coilwright.sheet;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import java.util.ArrayList;
import java.util.List;

/** Several drawings as one, in a row that fits the width of the text. */
final class SideBySide {
    private SideBySide() {}

    /**
     * A row of drawings, white around them cut off, their lower edges in line.
     *
     * @param drawings at least one
     * @param gap between them, mm
     */
    static Drawing of(List<Drawing> drawings, double gap, Palette palette) {
        List<Box> ink = drawings.stream().map(Sheet::ink).toList();
        double high = ink.stream().mapToDouble(Box::height).max().orElseThrow();
        List<Shape> shapes = new ArrayList<>();
        double x = 0;
        for (int i = 0; i < drawings.size(); i++) {
            Box b = ink.get(i);
            var placed = new Placed(x - b.left(), high - b.bottom(), 1, i == 0 ? "" : "s" + i + "-");
            for (Shape s : drawings.get(i).shapes()) {
                if (!s.roles().contains(Role.PAPER)) {
                    shapes.add(placed.shape(s));
                }
            }
            x += b.width() + gap;
        }
        return new Drawing(drawings.get(0).title(), drawings.get(0).description(), x - gap, high, palette, shapes);
    }
}
