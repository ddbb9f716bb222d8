package coilwright.job;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Makes awkward input out of good input. */
final class Mangler {
    /** Values that have a meaning somewhere, and letters that upset programs. */
    static final List<String> WILD = List.of(
            "",
            " ",
            "0",
            "-0",
            "+1",
            "1",
            "2",
            "3",
            "4",
            "007",
            "0x1F",
            "0o17",
            "0b11",
            "1_000",
            "1:30:00",
            "1e3",
            "1e999",
            "-1e999",
            "1E-400",
            ".5",
            "5.",
            "1.5",
            "1,5",
            "1.234,5",
            "1 000",
            "1'000",
            "99999999999999999999",
            "2147483648",
            "-2147483649",
            "9223372036854775808",
            "0.000000000000000000000000000000000001",
            "NaN",
            "-.inf",
            ".nan",
            ".INF",
            "inf",
            "Infinity",
            "OL",
            "ol",
            "open",
            "null",
            "~",
            "true",
            "no",
            "y",
            "on",
            "2021-07-12",
            "2021-02-30",
            "+999999999-01-01",
            "2021-07-12T10:00:00Z",
            "\u0661\u0662",
            "\uff11\uff12",
            "\u0967",
            "\u22125",
            "\u20135",
            "5\u00a0mm",
            "5\u202fmm",
            "12 mm",
            "12mm",
            "1 ohm",
            "0.08 ohm",
            "5 mV",
            "3 \u03a9",
            "3 \u2126",
            "7 \u00b5m",
            "7 \u03bcm",
            "12 V",
            "20 \u00b0C",
            "-500 degC",
            "1e2 ohm",
            "1 ohms",
            "1 OHM",
            "1 mm mm",
            "mm",
            "1/2 in",
            "1 furlong",
            "999999999999 km",
            "0.000000000001 um",
            "18 AWG",
            "99 AWG",
            "4/0 AWG",
            "shaft",
            "SHAFT",
            "lap",
            "wave",
            "frog-leg",
            "listed",
            "drop",
            "growler",
            "resistance",
            "ground",
            "progressive",
            "[]",
            "{}",
            "[1, 2]",
            "{a: 1}",
            "[[]]",
            "{coil: 1, topSlot: 1, bottomSlot: 2, topBar: null, bottomBar: ~}",
            "&a 1",
            "*a",
            "!!int 5",
            "!!str 5",
            "!!binary aGk=",
            "!!float 5",
            "!!set {a}",
            "!!java.lang.Runtime []",
            "!own x",
            "!<tag:yaml.org,2002:int> 5",
            "<<: *a",
            "<<",
            "? a",
            "- a",
            "a: b: c",
            "# x",
            "|\n  a\n  b",
            ">-\n  a",
            "\"\\u001b[31m\"",
            "\"\\0\"",
            "\"\\ud800\"",
            "\"\\U00110000\"",
            "\"\\xff\"",
            "\"\\u202e\"",
            "\"\\n\"",
            "'",
            "\"",
            "`",
            "@",
            "%YAML 1.1",
            "---",
            "...",
            "=",
            "<script>alert(1)</script>",
            "\u001b[31m",
            "\u0000",
            "\u0007",
            "\u0085",
            "\u2028",
            "\u2029",
            "\ufeff",
            "\u202e",
            "\u2066",
            "\u200b",
            "\u200d",
            "\ufffe",
            "\uffff",
            "\ud83e\uddf2",
            "\ud800",
            "\udc00\ud800",
            "\u05d0\u05d1\u05d2",
            "\u0645\u0631\u062d\u0628\u0627",
            "e\u0301\u0302\u0303\u0304\u0305\u0306",
            "\ud83d\udc68\u200d\ud83d\udc69\u200d\ud83d\udc67",
            "\udb40\udc41",
            "%s%n%d",
            "${user.home}",
            "../../x",
            ",",
            ";",
            "\t",
            ",,,,",
            "\"\"\"",
            "\"a\"b",
            "\"a,b\"",
            "\r",
            "\r\n",
            "\n",
            ":",
            ": ",
            "-",
            "[",
            "]",
            "{",
            "}");

    private static final Pattern TOKEN = Pattern.compile("[\\p{L}\\p{N}_.+-]+|[^\\s\\p{L}\\p{N}]");
    private static final Pattern VALUE = Pattern.compile("(?<=[:,\\[] |,|\t|;)[^\\s,;:\\[\\]{}][^,;:\\[\\]{}\n]*");
    private static final int LONG = 5000;
    private static final int HUGE = 1_500_000;

    private final Random random;
    private final List<String> good;

    Mangler(Random random, List<String> good) {
        this.random = random;
        this.good = good;
    }

    /** A file, mangled as text, as bytes, or both. */
    FuzzInput input() {
        if (random.nextInt(25) == 0) {
            byte[] any = new byte[random.nextInt(400)];
            random.nextBytes(any);
            return FuzzInput.of(any);
        }
        String text = text();
        return switch (random.nextInt(12)) {
            case 0 -> FuzzInput.of(bytes(text));
            case 1 -> FuzzInput.of("\ufeff" + text);
            default -> FuzzInput.of(text);
        };
    }

    private byte[] bytes(String text) {
        Charset charset = switch (random.nextInt(5)) {
            case 0 -> StandardCharsets.UTF_16;
            case 1 -> StandardCharsets.UTF_16LE;
            case 2 -> StandardCharsets.ISO_8859_1;
            default -> StandardCharsets.UTF_8;
        };
        byte[] bytes = text.getBytes(charset);
        for (int i = random.nextInt(6); i > 0 && bytes.length > 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    /** Good text with a few things wrong, or by chance none. */
    String text() {
        String text = one();
        int changes = random.nextInt(3) == 0 ? random.nextInt(12) : random.nextInt(3);
        for (int i = 0; i < changes; i++) {
            text = change(text);
        }
        return text;
    }

    private String one() {
        return good.get(random.nextInt(good.size()));
    }

    String wild() {
        return WILD.get(random.nextInt(WILD.size()));
    }

    private int at(String text) {
        return random.nextInt(text.length() + 1);
    }

    private String change(String text) {
        int a = at(text);
        int b = Math.min(text.length(), a + random.nextInt(30));
        return switch (random.nextInt(16)) {
            case 0 -> text.substring(0, a) + text.substring(b);
            case 1 -> text.substring(0, a) + wild() + text.substring(a);
            case 2 -> text.substring(0, b) + text.substring(a);
            case 3, 4, 5 -> instead(text, TOKEN);
            case 6, 7, 8 -> instead(text, VALUE);
            case 9, 10 -> lines(text);
            case 11 -> text.substring(0, a) + one();
            case 12 -> splice(text, a);
            case 13 -> text.substring(0, a) + text.substring(a, b).repeat(repeats(b - a)) + text.substring(b);
            case 14 -> layout(text);
            default ->
                text.substring(0, a)
                        + Character.toString(random.nextInt(3) == 0 ? any() : random.nextInt(128))
                        + text.substring(a);
        };
    }

    private int any() {
        return random.nextInt(Character.MAX_CODE_POINT + 1);
    }

    private int repeats(int length) {
        int times = random.nextInt(500) == 0 ? HUGE : random.nextInt(10) == 0 ? LONG : 1 + random.nextInt(20);
        return Math.min(times, HUGE / Math.max(1, length));
    }

    private String splice(String text, int a) {
        String other = one();
        return text.substring(0, a) + other.substring(at(other));
    }

    private String instead(String text, Pattern what) {
        Matcher m = what.matcher(text);
        int from = at(text);
        if (text.length() > HUGE / 10 || !(m.find(from) || m.find(0))) {
            return text + wild();
        }
        return text.substring(0, m.start()) + value(m.group()) + text.substring(m.end());
    }

    private String value(String old) {
        return switch (random.nextInt(6)) {
            case 0 -> Integer.toString(random.nextInt(40));
            case 1 -> old + wild();
            case 2 -> wild() + old;
            case 3 -> "\"" + old + "\"";
            default -> wild();
        };
    }

    private String lines(String text) {
        if (text.length() > HUGE / 10) {
            return text;
        }
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int a = random.nextInt(lines.size());
        int b = random.nextInt(lines.size());
        switch (random.nextInt(6)) {
            case 0 -> lines.remove(a);
            case 1 -> lines.add(b, lines.get(a));
            case 2 -> Collections.swap(lines, a, b);
            case 3 -> lines.set(a, " " + lines.get(a));
            case 4 -> lines.set(a, lines.get(a).stripLeading());
            default -> lines.set(a, lines.get(a) + one().split("\n", 2)[0]);
        }
        return String.join("\n", lines);
    }

    private String layout(String text) {
        return switch (random.nextInt(6)) {
            case 0 -> text.replace("\n", "\r\n");
            case 1 -> text.replace('\n', '\r');
            case 2 -> text.replace("  ", "\t");
            case 3 -> text.replace(',', ';');
            case 4 -> text.replace('.', ',');
            default -> text.toUpperCase(java.util.Locale.ROOT);
        };
    }
}
