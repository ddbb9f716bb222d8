package coilwright.drawing;

import java.util.List;

/** Finds what a drawing shows, by what it stands for. */
public final class DrawnParts {
    private DrawnParts() {}

    public static List<Shape.Group> groups(Drawing page, Element.Kind kind) {
        return page.shapes().stream()
                .filter(s -> s instanceof Shape.Group g
                        && g.element().filter(e -> e.kind() == kind).isPresent())
                .map(s -> (Shape.Group) s)
                .toList();
    }

    static Shape.Group group(Drawing page, Element.Kind kind, int number) {
        return groups(page, kind).stream()
                .filter(g -> g.element().orElseThrow().number() == number)
                .findFirst()
                .orElseThrow();
    }
}
