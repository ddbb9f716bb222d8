package coilwright.sheet;

import coilwright.job.Job;
import coilwright.job.ReadingSet;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** Texts that try to be more than text, and jobs that hold them wherever a text can stand. */
final class HostileTexts {
    private static final List<String> PARTS = List.of(
            "<script>alert(1)</script>",
            "</script>",
            "</style>",
            "</svg>",
            "</title>",
            "</textarea>",
            "<img src=x onerror=alert(1)>",
            "<svg onload=alert(1)>",
            "<a href=\"javascript:alert(1)\">",
            "<iframe srcdoc='<script>'>",
            "<style>*{display:none}</style>",
            "}*{display:none}/*",
            "<!--",
            "-->",
            "<![CDATA[",
            "]]>",
            "<!DOCTYPE x [<!ENTITY e SYSTEM 'file:///etc/passwd'>]>",
            "<?xml-stylesheet href='//x.invalid'?>",
            "&e;",
            "&amp;",
            "&#60;",
            "&lt;",
            "\" onload=\"alert(1)",
            "' onload='alert(1)",
            "`${alert(1)}`",
            "\\u003cscript\\u003e",
            "\\",
            ") endobj >> /OpenAction << /S /JavaScript /JS (x) >>",
            "/CreationDate (D:1)",
            "startxref 0 %%EOF",
            "=HYPERLINK(\"//x.invalid\")",
            "@SUM(1)",
            "-1+1",
            "+1",
            "|cmd",
            ",;",
            "%n%s%d",
            "$1",
            "{0}",
            "# x: y",
            "a b",
            "א ב",
            "مرحبا",
            "\u200f",
            "\u061c",
            "🧲",
            "e\u0301");

    /** What no job file can hold, but the library may be handed. */
    private static final List<String> UNSEEN = List.of(
            "\u202e",
            "\u202d",
            "\u2067",
            "\u2069",
            "\u2028",
            "\u2029",
            "\u0000",
            "\u001b[31m",
            "\u0085",
            "\u009b",
            "\r",
            "\n",
            "\ud800",
            "\udc00",
            "\uffff",
            "\ufeff");

    private final Random random;

    HostileTexts(long seed) {
        this.random = new Random(seed);
    }

    /** A text that a job file can hold. */
    String text() {
        return some(PARTS);
    }

    /** A text with characters that no job file can hold. */
    String raw() {
        return some(UNSEEN) + some(PARTS) + some(UNSEEN);
    }

    private String some(List<String> parts) {
        return random.ints(1 + random.nextInt(4), 0, parts.size())
                .mapToObj(parts::get)
                .collect(Collectors.joining(random.nextBoolean() ? " " : ""));
    }

    /**
     * A job with another text wherever one stands that may be any.
     *
     * @param texts where they come from; each is asked for once a place
     */
    static Job everywhere(Job job, Supplier<String> texts) {
        List<ReadingSet> sets = new ArrayList<>();
        job.readings().forEach(s -> sets.add((ReadingSet) changed(s, texts)));
        Job named = new Job(
                texts.get(),
                job.armature(),
                job.winding(),
                job.turns(),
                job.coilResistance(),
                job.growler(),
                job.equalizers(),
                sets,
                job.particulars());
        return named.withParticulars((coilwright.job.Particulars) changed(job.particulars(), texts));
    }

    /** Texts that are held to a list of words, such as a size of wire, refuse others and stay. */
    private static Object changed(Object value, Supplier<String> texts) {
        if (value instanceof String) {
            return texts.get();
        }
        if (value instanceof Optional<?> o) {
            return o.map(v -> changed(v, texts));
        }
        if (value instanceof List<?> l) {
            return l.stream().map(v -> changed(v, texts)).toList();
        }
        return value instanceof Record r && r.getClass().getPackageName().equals("coilwright.job")
                ? changedRecord(r, texts)
                : value;
    }

    private static Object changedRecord(Record record, Supplier<String> texts) {
        RecordComponent[] parts = record.getClass().getRecordComponents();
        Object[] values = new Object[parts.length];
        try {
            for (int i = 0; i < parts.length; i++) {
                parts[i].getAccessor().setAccessible(true);
                values[i] = parts[i].getAccessor().invoke(record);
            }
            var constructor = record.getClass()
                    .getDeclaredConstructor(
                            Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new));
            for (int i = 0; i < parts.length; i++) {
                Object[] next = values.clone();
                next[i] = changed(values[i], texts);
                try {
                    constructor.newInstance(next);
                    values = next;
                } catch (InvocationTargetException e) {
                    if (!(e.getCause() instanceof IllegalArgumentException)) {
                        throw e;
                    }
                }
            }
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
