package coilwright.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * A value in a file together with its place. Each reading method either gives the value or notes what is wrong with it
 * and gives nothing, so that one pass finds every problem.
 */
final class Field {
    private static final Set<Tag> SCALAR_TAGS = Set.of(Tag.STR, Tag.INT, Tag.FLOAT, Tag.BOOL, Tag.NULL, Tag.TIMESTAMP);
    private static final Set<Tag> COLLECTION_TAGS = Set.of(Tag.MAP, Tag.SEQ);
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]+");
    private static final Pattern BEGINS_WITH_ZERO = Pattern.compile("[+-]?0[0-9]+");
    private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{1,9}(\\.[0-9]{1,12})?");

    private final Problems problems;
    private final String path;
    private final Node node;
    private final Set<String> meant = new HashSet<>();

    Field(Problems problems, String path, Node node) {
        this.problems = problems;
        this.path = path;
        this.node = node;
    }

    int line() {
        return node.getStartMark().getLine() + 1;
    }

    String path() {
        return path;
    }

    /** Whether anything was found wrong with the file so far. */
    boolean anyWrong() {
        return problems.any();
    }

    void wrong(String message) {
        problems.add(line(), path, message);
    }

    /** The fields of a section by key, in order, unknown and doubled keys noted and left out. */
    Optional<Map<String, Field>> section(Collection<String> known) {
        if (!(node instanceof MappingNode map) || strangeTag()) {
            mustBe("a section of keys: " + String.join(", ", known));
            return Optional.empty();
        }
        Map<String, Field> fields = new LinkedHashMap<>();
        for (NodeTuple tuple : map.getValue()) {
            Node key = tuple.getKeyNode();
            int keyLine = key.getStartMark().getLine() + 1;
            if (!(key instanceof ScalarNode scalar)) {
                problems.add(keyLine, path, "has a list or section where a key should stand");
                continue;
            }
            String name = scalar.getValue();
            String keyPath = path.isEmpty() ? shown(name) : path + "." + shown(name);
            if (!known.contains(name)) {
                problems.add(keyLine, keyPath, "unknown key: " + meant(name, known));
                NearWord.of(name, known).ifPresent(meant::add);
            } else if (fields.containsKey(name)) {
                problems.add(
                        keyLine,
                        keyPath,
                        "stands twice, first in line " + fields.get(name).line() + ": keep one");
            } else {
                fields.put(name, new Field(problems, keyPath, tuple.getValueNode()));
            }
        }
        return Optional.of(fields);
    }

    private static String meant(String name, Collection<String> known) {
        return NearWord.question(name, known, "the keys here are " + String.join(", ", known));
    }

    /** A required field of a section; its absence is noted, unless a misspelt key was noted that means it. */
    Optional<Field> required(Map<String, Field> fields, String key, String why) {
        Optional<Field> field = Optional.ofNullable(fields.get(key));
        if (field.isEmpty() && !meant.contains(key)) {
            problems.add(line(), path.isEmpty() ? key : path + "." + key, "is missing" + why);
        }
        return field;
    }

    /** The entries of a list, named from one. */
    Optional<List<Field>> list(int most) {
        if (!(node instanceof SequenceNode sequence) || strangeTag()) {
            mustBe("a list in brackets");
            return Optional.empty();
        }
        List<Node> nodes = sequence.getValue();
        if (nodes.size() > most) {
            wrong("has " + nodes.size() + " entries, but may have at most " + most);
            return Optional.empty();
        }
        List<Field> fields = new ArrayList<>(nodes.size());
        for (Node entry : nodes) {
            fields.add(new Field(problems, path + "[" + (fields.size() + 1) + "]", entry));
        }
        return Optional.of(fields);
    }

    /** Whether it is a list without entries, which says the same as no list. */
    boolean isEmptyList() {
        return node instanceof SequenceNode sequence && sequence.getValue().isEmpty();
    }

    /** Its text as written, where it is no list or section. */
    Optional<String> written() {
        return node instanceof ScalarNode scalar ? Optional.of(scalar.getValue()) : Optional.empty();
    }

    /** Whether it is written {@code null}, {@code ~} or as nothing. */
    boolean isNull() {
        return node.getTag().equals(Tag.NULL);
    }

    /**
     * A whole number in plain digits.
     *
     * @param check throws {@link IllegalArgumentException} with the reason when it is out of range
     */
    OptionalInt wholeNumber(IntConsumer check) {
        if (!(node instanceof ScalarNode scalar) || !scalar.getTag().equals(Tag.INT)) {
            mustBe("a whole number");
            return OptionalInt.empty();
        }
        String digits = scalar.getValue();
        if (!WHOLE.matcher(digits).matches()) {
            wrong("is " + shown(digits) + ", but must be a whole number in plain digits");
            return OptionalInt.empty();
        }
        if (BEGINS_WITH_ZERO.matcher(digits).matches()) {
            wrong("is " + shown(digits) + ", but a whole number does not begin with 0");
            return OptionalInt.empty();
        }
        if (digits.length() > 9) {
            wrong("is " + shown(digits) + ", far out of range");
            return OptionalInt.empty();
        }
        int value = Integer.parseInt(digits);
        try {
            check.accept(value);
            return OptionalInt.of(value);
        } catch (IllegalArgumentException e) {
            wrong(e.getMessage());
            return OptionalInt.empty();
        }
    }

    /** A number, whole or with decimals after a point. */
    OptionalDouble number(String unit, DoubleConsumer check) {
        boolean isNumber = node.getTag().equals(Tag.INT) || node.getTag().equals(Tag.FLOAT);
        if (!(node instanceof ScalarNode scalar) || !isNumber) {
            mustBe("a number of " + unit + ", without the unit");
            return OptionalDouble.empty();
        }
        String digits = scalar.getValue();
        if (!DECIMAL.matcher(digits).matches()) {
            wrong("is " + shown(digits) + ", but must be a number of " + unit + " in plain digits");
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(digits);
        try {
            check.accept(value);
            return OptionalDouble.of(value);
        } catch (IllegalArgumentException e) {
            wrong(e.getMessage());
            return OptionalDouble.empty();
        }
    }

    /** A number as written, whole or with decimals after a point. */
    Optional<BigDecimal> decimal(String unit, Consumer<BigDecimal> check) {
        OptionalDouble number = number(unit, x -> {});
        if (number.isEmpty()) {
            return Optional.empty();
        }
        return passing(new BigDecimal(((ScalarNode) node).getValue()), check);
    }

    /** Text on one line. */
    Optional<String> text(Consumer<String> check) {
        if (!(node instanceof ScalarNode scalar) || strangeTag()) {
            mustBe("text");
            return Optional.empty();
        }
        if (isNull()) {
            wrong("has no value");
            return Optional.empty();
        }
        if (!scalar.getTag().equals(Tag.STR)) {
            wrong("is " + shown(scalar.getValue()) + ", which YAML takes for " + taken(scalar.getTag())
                    + ": put quotation marks round it to make it text");
            return Optional.empty();
        }
        return passing(scalar.getValue(), check);
    }

    /** One of several words. */
    <T> Optional<T> oneOf(Map<String, T> words) {
        String all = String.join(", ", words.keySet());
        if (!(node instanceof ScalarNode scalar) || strangeTag()) {
            mustBe("one of " + all);
            return Optional.empty();
        }
        if (isNull()) {
            wrong("has no value: it is one of " + all);
            return Optional.empty();
        }
        Optional<T> found = Optional.ofNullable(words.get(scalar.getValue()));
        if (found.isEmpty()) {
            String near = NearWord.question(scalar.getValue(), words.keySet(), "");
            wrong("is \"" + shown(scalar.getValue()) + "\", but must be one of " + all
                    + (near.isEmpty() ? "" : "; " + near));
        }
        return found;
    }

    /** A number with its unit. */
    Optional<Quantity> quantity(Quantity.Kind kind, Consumer<Quantity> check) {
        if (!(node instanceof ScalarNode scalar) || strangeTag() || isNull()) {
            mustBe(kind.words() + " such as \"1 " + kind.units().get(0) + "\"");
            return Optional.empty();
        }
        try {
            return passing(Quantity.parse(scalar.getValue(), kind), check);
        } catch (IllegalArgumentException e) {
            wrong(e.getMessage());
            return Optional.empty();
        }
    }

    private <T> Optional<T> passing(T value, Consumer<T> check) {
        try {
            check.accept(value);
            return Optional.of(value);
        } catch (IllegalArgumentException e) {
            wrong(e.getMessage());
            return Optional.empty();
        }
    }

    /** What is made; nothing, and its complaint noted, where it cannot be. */
    <T> Optional<T> made(Supplier<T> maker) {
        try {
            return Optional.of(maker.get());
        } catch (IllegalArgumentException e) {
            wrong(e.getMessage());
            return Optional.empty();
        }
    }

    private boolean strangeTag() {
        return !(node instanceof ScalarNode ? SCALAR_TAGS : COLLECTION_TAGS).contains(node.getTag());
    }

    private void mustBe(String wanted) {
        String is;
        String wayOut = "";
        if (strangeTag()) {
            is = "carries the tag " + shown(node.getTag().getValue());
        } else if (node instanceof MappingNode) {
            is = "is a section of keys";
        } else if (node instanceof SequenceNode) {
            is = "is a list";
        } else if (isNull()) {
            is = "has no value";
        } else {
            String value = ((ScalarNode) node).getValue();
            boolean text = node.getTag().equals(Tag.STR);
            is = text ? "is the text \"" + shown(value) + "\"" : "is " + shown(value);
            if (text && value.matches("[0-9.]+") && wanted.contains("number")) {
                wayOut = ": take the quotation marks off";
            }
        }
        wrong(is + ", but must be " + wanted + wayOut);
    }

    private static String taken(Tag tag) {
        if (tag.equals(Tag.BOOL)) {
            return "true or false";
        }
        return tag.equals(Tag.INT) || tag.equals(Tag.FLOAT) ? "a number" : "a date";
    }

    /** Text from the file as messages show it: on one line and not too long. */
    static String shown(String text) {
        return Visible.cut(text);
    }
}
