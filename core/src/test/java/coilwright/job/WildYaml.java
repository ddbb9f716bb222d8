package coilwright.job;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** A job file as a tree, given values of the wrong sort in places and written in one of the many ways YAML has. */
final class WildYaml {
    private static final List<String> TAGS =
            List.of("!!int ", "!!str ", "!!null ", "!!binary ", "!!set ", "!!map ", "!!seq ", "!a ", "!!java.net.URL ");
    private static final int DEEP = 60;
    private static final int MANY = 30_000;

    private final Random random;
    private final List<Part> all = new ArrayList<>();

    private WildYaml(Random random) {
        this.random = random;
    }

    /** A value, a list of items, or a section, whose keys stand beside its items. */
    private static final class Part {
        private String before = "";
        private String value = "";
        private boolean isText;
        private List<String> keys;
        private List<Part> items;
    }

    static String of(Random random, String good) {
        var yaml = new WildYaml(random);
        Part root = yaml.part(new Yaml().compose(new StringReader(good)));
        for (int i = random.nextInt(4); i > 0; i--) {
            yaml.change(yaml.all.get(random.nextInt(yaml.all.size())), root);
        }
        var out = new StringBuilder();
        if (random.nextInt(6) == 0) {
            yaml.flow(root, out, true);
        } else {
            yaml.block(root, out, 0);
        }
        return out.append('\n').toString();
    }

    private Part part(Node node) {
        var part = new Part();
        all.add(part);
        if (node instanceof ScalarNode s) {
            part.value = s.getValue();
            part.isText = !s.isPlain();
        } else if (node instanceof SequenceNode s) {
            part.items = new ArrayList<>(s.getValue().stream().map(this::part).toList());
        } else if (node instanceof MappingNode m) {
            part.keys = new ArrayList<>();
            part.items = new ArrayList<>();
            for (NodeTuple t : m.getValue()) {
                part.keys.add(((ScalarNode) t.getKeyNode()).getValue());
                part.items.add(part(t.getValueNode()));
            }
        }
        return part;
    }

    private String wild() {
        return Mangler.WILD.get(random.nextInt(Mangler.WILD.size()));
    }

    private void change(Part part, Part root) {
        Part other = all.get(random.nextInt(all.size()));
        switch (random.nextInt(14)) {
            case 0, 1, 2, 3 -> scalar(part, wild(), random.nextInt(3) == 0);
            case 4 -> scalar(part, Integer.toString(random.nextInt(60) - 2), false);
            case 5 -> wrap(part, random.nextInt(8) == 0 ? random.nextInt(DEEP) : 1);
            case 6 -> again(part);
            case 7 -> rename(part);
            case 8 -> drop(part);
            case 9 -> {
                other.before = "&a " + other.before;
                scalar(part, "*a", false);
            }
            case 10 -> {
                other.before = "&a " + other.before;
                add(root, "<<", "*a");
            }
            case 11 -> part.before = TAGS.get(random.nextInt(TAGS.size())) + part.before;
            case 12 -> {
                if (!holds(other, part)) {
                    copy(other, part);
                }
            }
            default -> add(part.keys == null ? root : part, wild(), wild());
        }
    }

    private static void scalar(Part part, String value, boolean isText) {
        part.keys = null;
        part.items = null;
        part.value = value;
        part.isText = isText;
    }

    private static boolean holds(Part whole, Part part) {
        return whole == part || (whole.items != null && whole.items.stream().anyMatch(p -> holds(p, part)));
    }

    private static void copy(Part from, Part to) {
        to.value = from.value;
        to.isText = from.isText;
        to.keys = from.keys == null ? null : new ArrayList<>(from.keys);
        to.items = from.items == null ? null : new ArrayList<>(from.items);
    }

    private void wrap(Part part, int deep) {
        for (int i = 0; i < deep; i++) {
            var inner = new Part();
            copy(part, inner);
            part.items = new ArrayList<>(List.of(inner));
            part.keys = random.nextBoolean() ? null : new ArrayList<>(List.of("a"));
        }
    }

    private void again(Part part) {
        if (part.items == null || part.items.isEmpty()) {
            return;
        }
        int at = random.nextInt(part.items.size());
        int times = part.keys == null && random.nextInt(20) == 0 ? MANY : 1;
        for (int i = 0; i < times; i++) {
            part.items.add(part.items.get(at));
            if (part.keys != null) {
                part.keys.add(part.keys.get(at));
            }
        }
    }

    private void rename(Part part) {
        if (part.keys != null && !part.keys.isEmpty()) {
            int at = random.nextInt(part.keys.size());
            String key = part.keys.get(at);
            part.keys.set(at, random.nextBoolean() || key.isEmpty() ? wild() : key.substring(1));
        }
    }

    private void drop(Part part) {
        if (part.items != null && !part.items.isEmpty()) {
            int at = random.nextInt(part.items.size());
            part.items.remove(at);
            if (part.keys != null) {
                part.keys.remove(at);
            }
        }
    }

    private static void add(Part section, String key, String value) {
        if (section.keys != null) {
            var part = new Part();
            part.value = value;
            section.keys.add(key);
            section.items.add(part);
        }
    }

    private void block(Part part, StringBuilder out, int indent) {
        if (part.items == null || part.items.isEmpty() || indent > 2 * DEEP || random.nextInt(5) == 0) {
            flow(part, out, false);
            return;
        }
        out.append(part.before);
        for (int i = 0; i < part.items.size(); i++) {
            if (indent > 0 || i > 0) {
                out.append(random.nextInt(60) == 0 ? " # note\n\n" : "\n").append(" ".repeat(indent));
            }
            out.append(part.keys == null ? "- " : part.keys.get(i) + ": ");
            block(part.items.get(i), out, indent + 2);
        }
    }

    private void flow(Part part, StringBuilder out, boolean json) {
        out.append(part.before);
        if (part.items == null) {
            out.append(part.isText ? quoted(part.value, json) : part.value);
            return;
        }
        out.append(part.keys == null ? "[" : "{");
        for (int i = 0; i < part.items.size(); i++) {
            out.append(i == 0 ? "" : ", ");
            if (part.keys != null) {
                out.append(json ? "\"" + part.keys.get(i) + "\"" : part.keys.get(i))
                        .append(": ");
            }
            flow(part.items.get(i), out, json);
        }
        out.append(part.keys == null ? "]" : "}");
    }

    private String quoted(String value, boolean json) {
        return json || random.nextBoolean()
                ? "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\""
                : "'" + value.replace("'", "''") + "'";
    }
}
