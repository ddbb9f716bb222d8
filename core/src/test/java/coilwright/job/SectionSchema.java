package coilwright.job;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

/** What the schema must say of a section, from the record that declares its keys. */
final class SectionSchema {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final String UNSEEN =
            "^[^\\u0000-\\u001F\\u007F-\\u009F\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069\\uFEFF]*$";

    private SectionSchema() {}

    static ObjectNode of(Class<? extends Record> section) {
        ObjectNode node = JSON.objectNode();
        node.put("type", "object");
        node.put("additionalProperties", false);
        List<SectionKey> keys = SectionKey.of(section);
        ArrayNode required = JSON.arrayNode();
        keys.stream().filter(k -> k.holder() == SectionKey.Holder.ONE).forEach(k -> required.add(k.name()));
        if (!required.isEmpty()) {
            node.set("required", required);
        }
        ObjectNode properties = node.putObject("properties");
        for (SectionKey key : keys) {
            ObjectNode value = value(key);
            if (key.holder() == SectionKey.Holder.LIST) {
                ObjectNode list = JSON.objectNode();
                list.put("type", "array");
                list.put("maxItems", SectionReader.MOST_ENTRIES);
                list.set("items", value);
                value = list;
            }
            properties.set(key.name(), value);
        }
        return node;
    }

    static ObjectNode line() {
        ObjectNode node = JSON.objectNode();
        node.put("type", "string");
        node.put("minLength", 1);
        node.put("maxLength", SectionReader.MOST_CHARACTERS);
        node.put("pattern", UNSEEN);
        return node;
    }

    private static ObjectNode value(SectionKey key) {
        Class<?> type = key.type();
        if (type == String.class) {
            return line();
        }
        if (key.isSection()) {
            return of(type.asSubclass(Record.class));
        }
        ObjectNode node = JSON.objectNode();
        if (type == Quantity.class) {
            String sign = key.measure().least() == Measure.Least.NONE ? "[+-]?" : "\\+?";
            String units = key.measure().value().units().stream()
                    .map(u -> u.equals("ohm") ? "ohms?" : u)
                    .map(u -> u.replace("µ", "[µ\u03BC]").replace("Ω", "[Ω\u2126]"))
                    .collect(Collectors.joining("|"));
            node.put("type", "string");
            node.put("pattern", "^" + sign + "[0-9]{1,12}(\\.[0-9]{1,12})?\\s*(" + units + ")$");
        } else if (type == int.class) {
            node.put("type", "integer");
            node.put("minimum", key.count().from());
            node.put("maximum", key.count().to());
        } else if (type.isEnum()) {
            ArrayNode words = node.putArray("enum");
            Words.all(type).keySet().forEach(words::add);
        } else if (type == LocalDate.class) {
            node.put("type", "string");
            node.put("pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
        } else if (type == BigDecimal.class) {
            node.put("type", "number");
            node.put("minimum", -SectionReader.MOST_DEGREES);
            node.put("maximum", SectionReader.MOST_DEGREES);
        } else {
            throw new IllegalStateException("a section cannot hold " + type);
        }
        return node;
    }

    /** Prints the sections as they are to stand in the schema. */
    public static void main(String[] args) throws Exception {
        ObjectNode all = JSON.objectNode();
        JobSchemaTest.SECTIONS.forEach((name, type) -> all.set(name, of(type)));
        ObjectNode notes = all.putObject("notes");
        notes.put("type", "array");
        notes.put("maxItems", SectionReader.MOST_ENTRIES);
        notes.set("items", line());
        System.out.println(new com.fasterxml.jackson.databind.ObjectMapper()
                .writerWithDefaultPrettyPrinter()
                .writeValueAsString(all));
    }
}
