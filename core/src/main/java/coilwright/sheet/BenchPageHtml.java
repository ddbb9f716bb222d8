package coilwright.sheet;

/** Writes HTML; every word and value that comes in is escaped here, so that none of it is taken for markup. */
final class BenchPageHtml {
    private final StringBuilder out = new StringBuilder(1 << 16);

    /** Text as it stands between tags and, in quotation marks, within them. */
    static String escaped(String words) {
        var to = new StringBuilder(words.length() + 16);
        words.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> to.append("&amp;");
                case '<' -> to.append("&lt;");
                case '>' -> to.append("&gt;");
                case '"' -> to.append("&quot;");
                case '\'' -> to.append("&#39;");
                default -> to.appendCodePoint(isForbidden(c) ? 0xFFFD : c);
            }
        });
        return to.toString();
    }

    /** What HTML cannot hold, and what turns the direction of text about. */
    private static boolean isForbidden(int c) {
        return (c < ' ' && c != '\t' && c != '\n')
                || (c >= 0x7F && c < 0xA0)
                || (c >= 0xD800 && c < 0xE000)
                || (c >= 0x202A && c <= 0x202E)
                || (c >= 0x2066 && c <= 0x2069)
                || (c & 0xFFFE) == 0xFFFE;
    }

    /** Markup of our own, or written safely elsewhere. */
    BenchPageHtml raw(String markup) {
        out.append(markup);
        return this;
    }

    BenchPageHtml text(String words) {
        out.append(escaped(words));
        return this;
    }

    /**
     * A start tag.
     *
     * @param attributes names and values in turn; an empty name is passed over with its value
     */
    BenchPageHtml open(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            if (!attributes[i].isEmpty()) {
                out.append(' ')
                        .append(attributes[i])
                        .append("=\"")
                        .append(escaped(attributes[i + 1]))
                        .append('"');
            }
        }
        out.append('>');
        return this;
    }

    BenchPageHtml close(String tag) {
        out.append("</").append(tag).append(">\n");
        return this;
    }

    /** An element that holds nothing but words. */
    BenchPageHtml element(String tag, String words, String... attributes) {
        return open(tag, attributes).text(words).close(tag);
    }

    /** A button that does nothing by itself. */
    BenchPageHtml button(String words, String... attributes) {
        out.append("<button type=\"button\"");
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(escaped(attributes[i + 1]))
                    .append('"');
        }
        out.append('>').append(escaped(words)).append("</button>\n");
        return this;
    }

    BenchPageHtml items(Iterable<String> items) {
        open("ul", "class", "plain");
        items.forEach(i -> element("li", i));
        return close("ul");
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
