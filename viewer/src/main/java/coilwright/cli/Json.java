package coilwright.cli;

import coilwright.bench.BenchTest;
import coilwright.winding.Finding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Writes answers as JSON: keys in fixed order, one entry of a list a line, a line feed at the end. */
final class Json {
    private Json() {}

    /** What fills an answer. */
    interface Body {
        void write(JsonGenerator json) throws IOException;
    }

    /** One object. */
    static String object(Body body) {
        var text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text).setPrettyPrinter(new Layout())) {
            json.writeStartObject();
            body.write(json);
            json.writeEndObject();
            json.writeRaw('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    static void numberOrNull(JsonGenerator json, String key, OptionalInt value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(key, value.getAsInt());
        } else {
            json.writeNullField(key);
        }
    }

    static void numberOrNull(JsonGenerator json, String key, Optional<Integer> value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(key, value.get());
        } else {
            json.writeNullField(key);
        }
    }

    /** A number with six significant figures. */
    static void number(JsonGenerator json, String key, double value) throws IOException {
        json.writeFieldName(key);
        json.writeNumber(rounded(value).toPlainString());
    }

    /** Six significant figures, no zeros behind them. */
    static BigDecimal rounded(double value) {
        BigDecimal b = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
        return b.scale() < 0 ? b.setScale(0) : b;
    }

    /** A number to the sixth decimal, zeros behind it as well. */
    static void fixed(JsonGenerator json, String key, double value) throws IOException {
        String s = String.format(Locale.ROOT, "%.6f", value);
        json.writeFieldName(key);
        json.writeNumber(s.equals("-0.000000") ? "0.000000" : s);
    }

    static void fixed(JsonGenerator json, String key, OptionalDouble value) throws IOException {
        if (value.isEmpty()) {
            json.writeNullField(key);
        } else {
            fixed(json, key, value.getAsDouble());
        }
    }

    static void strings(JsonGenerator json, String key, List<String> texts) throws IOException {
        json.writeArrayFieldStart(key);
        for (String text : texts) {
            json.writeString(text);
        }
        json.writeEndArray();
    }

    static void numbers(JsonGenerator json, String key, List<Integer> numbers) throws IOException {
        json.writeArrayFieldStart(key);
        for (int n : numbers) {
            json.writeNumber(n);
        }
        json.writeEndArray();
    }

    /** A bar by its number, or the shaft by its name. */
    static void bar(JsonGenerator json, String key, int bar) throws IOException {
        if (bar == BenchTest.SHAFT) {
            json.writeStringField(key, "shaft");
        } else {
            json.writeNumberField(key, bar);
        }
    }

    static void findings(JsonGenerator json, List<Finding> findings) throws IOException {
        json.writeArrayFieldStart("findings");
        for (Finding f : findings) {
            json.writeStartObject();
            json.writeStringField("rule", f.rule());
            json.writeStringField("severity", f.severity().word());
            json.writeStringField("message", f.message());
            json.writeStringField("source", f.source().title());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** The keys of the answer, and the entries of its lists, on lines of their own; all else inline. */
    private static final class Layout extends DefaultPrettyPrinter {
        private static final long serialVersionUID = 1L;

        Layout() {
            super(Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                    .withObjectEntrySpacing(Separators.Spacing.NONE));
            indentObjectsWith(new LinesDownTo(1));
            indentArraysWith(new LinesDownTo(2));
        }

        @Override
        public void writeEndObject(JsonGenerator json, int entries) throws IOException {
            _nesting--;
            json.writeRaw(_nesting == 0 ? "\n}" : " }");
        }
    }

    private record LinesDownTo(int depth) implements DefaultPrettyPrinter.Indenter {
        @Override
        public void writeIndentation(JsonGenerator json, int level) throws IOException {
            json.writeRaw(level <= depth ? "\n" + "  ".repeat(level) : " ");
        }

        @Override
        public boolean isInline() {
            return false;
        }
    }
}
