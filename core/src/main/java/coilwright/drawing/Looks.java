package coilwright.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The style sheet of the drawings, worked out shape by shape for a painter that knows no style sheets. What it tells is
 * what a reader of the SVG shows. Not for use by several threads at a time.
 */
public final class Looks {
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");

    private final List<Rule> rules;
    private final Map<List<Object>, Look> known = new HashMap<>();

    private Looks(List<Rule> rules) {
        this.rules = rules;
    }

    /**
     * {@return the looks in a palette}
     *
     * @param palette colours, or black, white and grey
     */
    public static Looks of(Palette palette) {
        return parse(StyleSheet.of(palette));
    }

    static Looks parse(String sheet) {
        List<Rule> rules = new ArrayList<>();
        Matcher m = RULE.matcher(sheet);
        while (m.find()) {
            Map<String, String> set = new LinkedHashMap<>();
            for (String part : m.group(2).split(";")) {
                int colon = part.indexOf(':');
                if (colon > 0) {
                    set.put(
                            part.substring(0, colon).strip(),
                            part.substring(colon + 1).strip());
                }
            }
            for (String selector : m.group(1).split(",")) {
                rules.add(Rule.of(selector.strip(), set));
            }
        }
        // Among rules of one weight the later wins, which a stable sort keeps.
        rules.sort(Comparator.comparingInt(Rule::weight));
        return new Looks(List.copyOf(rules));
    }

    /**
     * {@return how a shape is painted that is no group}
     *
     * @param shape the shape
     * @param groups roles of the groups it lies in, outermost first
     */
    public Look of(Shape shape, List<List<Role>> groups) {
        return known.computeIfAbsent(List.of(element(shape), shape.roles(), groups), k -> work(shape, groups));
    }

    private Look work(Shape shape, List<List<Role>> groups) {
        List<Node> line = new ArrayList<>();
        Map<String, String> style = new HashMap<>();
        for (List<Role> roles : groups) {
            line.add(new Node("g", roles));
            apply(line, style);
        }
        line.add(new Node(element(shape), shape.roles()));
        apply(line, style);
        return new Look(
                colour(style.getOrDefault("fill", "#000000")),
                colour(style.getOrDefault("stroke", "none")),
                Double.parseDouble(style.getOrDefault("stroke-width", "1")),
                dashes(style.getOrDefault("stroke-dasharray", "none")));
    }

    private void apply(List<Node> line, Map<String, String> style) {
        for (Rule rule : rules) {
            if (rule.meets(line)) {
                style.putAll(rule.set());
            }
        }
    }

    private static OptionalInt colour(String value) {
        return value.equals("none") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(value.substring(1), 16));
    }

    private static List<Double> dashes(String value) {
        return value.equals("none")
                ? List.of()
                : Arrays.stream(value.split("[ ,]+")).map(Double::valueOf).toList();
    }

    private static String element(Shape shape) {
        if (shape instanceof Shape.Text) {
            return "text";
        } else if (shape instanceof Shape.Line) {
            return "line";
        } else if (shape instanceof Shape.Polyline p) {
            return p.closed() ? "polygon" : "polyline";
        } else if (shape instanceof Shape.Rect) {
            return "rect";
        }
        return shape instanceof Shape.Circle ? "circle" : shape instanceof Shape.Group ? "g" : "path";
    }

    private record Node(String element, List<Role> roles) {}

    /** One compound selector and whether the next must be its child, not any descendant. */
    private record Part(String element, List<String> classes, boolean child) {
        boolean meets(Node node) {
            return (element.isEmpty() || element.equals(node.element()))
                    && classes.stream()
                            .allMatch(c -> node.roles().stream()
                                    .anyMatch(r -> r.className().equals(c)));
        }
    }

    private record Rule(List<Part> parts, Map<String, String> set, int weight) {
        static Rule of(String selector, Map<String, String> set) {
            List<Part> parts = new ArrayList<>();
            int weight = 0;
            for (String word : selector.replace(">", " > ").split(" +")) {
                if (word.equals(">")) {
                    Part last = parts.remove(parts.size() - 1);
                    parts.add(new Part(last.element(), last.classes(), true));
                    continue;
                }
                String[] names = word.split("\\.");
                List<String> classes = Arrays.asList(names).subList(1, names.length);
                parts.add(new Part(names[0], classes, false));
                weight += 1000 * classes.size() + (names[0].isEmpty() ? 0 : 1);
            }
            return new Rule(List.copyOf(parts), set, weight);
        }

        boolean meets(List<Node> line) {
            return parts.get(parts.size() - 1).meets(line.get(line.size() - 1))
                    && meets(parts.size() - 2, line, line.size() - 2);
        }

        private boolean meets(int part, List<Node> line, int node) {
            if (part < 0) {
                return true;
            }
            int last = parts.get(part).child() ? Math.max(0, node) : 0;
            for (int i = node; i >= last; i--) {
                if (parts.get(part).meets(line.get(i)) && meets(part - 1, line, i - 1)) {
                    return true;
                }
            }
            return false;
        }
    }
}
