package coilwright.job;

import java.util.Locale;
import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionEndEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.ReaderException;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/** Turns YAML text into a tree of nodes that know their lines, within bounds, and never makes an object of it. */
final class YamlText {
    /** Deepest nesting taken. */
    static final int MAX_DEPTH = 12;

    /** Most keys, values and brackets taken; a listed winding of the largest size needs about half. */
    static final int MAX_EVENTS = 200_000;

    /**
     * Longest line taken, characters; the time that a long word takes grows with the square of its length. The largest
     * listed winding as JSON on one line needs two thirds.
     */
    static final int MAX_LINE = 1_000_000;

    private YamlText() {}

    /**
     * The one document in the text.
     *
     * @param holds what the file holds, for messages, such as "job"
     * @param begin how such a file begins, for messages
     */
    static Node compose(String text, String holds, String begin, Problems problems) throws BadInputException {
        if (text.isBlank()) {
            throw problems.only(0, "", "is empty: a " + holds + " file begins with \"" + begin + "\"");
        }
        refuseStrayLineEnds(text, problems);
        refuseLongLines(text, problems);
        var options = new LoaderOptions();
        options.setCodePointLimit(Integer.MAX_VALUE);
        options.setNestingDepthLimit(10 * MAX_DEPTH);
        try {
            var parser = new BoundedParser(new StreamReader(spacesForTabs(text)), options);
            var composer = new Composer(parser, new Resolver(), options);
            Optional<Node> node = Optional.ofNullable(composer.getSingleNode());
            if (node.isEmpty()) {
                throw problems.only(
                        0, "", "holds nothing but comments: a " + holds + " file begins with \"" + begin + "\"");
            }
            return node.get();
        } catch (Refused e) {
            throw problems.only(e.line, "", e.getMessage());
        } catch (ReaderException e) {
            throw unseen(text, e.getCodePoint(), problems);
        } catch (MarkedYAMLException e) {
            throw problems.only(lineOf(e), "", inWords(e, holds));
        } catch (YAMLException e) {
            throw problems.only(0, "", "is not YAML: " + e.getMessage());
        }
    }

    /** JSON takes tabs between its values, YAML does not; within brackets blanks have no meaning. */
    private static String spacesForTabs(String text) {
        if (!text.stripLeading().startsWith("{") || text.indexOf('\t') < 0) {
            return text;
        }
        StringBuilder out = new StringBuilder(text);
        boolean quoted = false;
        for (int i = 0; i < out.length(); i++) {
            char c = out.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == '\\' && quoted) {
                i++;
            } else if (c == '\t' && !quoted) {
                out.setCharAt(i, ' ');
            }
        }
        return out.toString();
    }

    /** These end a line in YAML and in no editor, so that the lines of messages would not be the editor's. */
    private static void refuseStrayLineEnds(String text, Problems problems) throws BadInputException {
        for (int c : new int[] {0x85, 0x2028, 0x2029}) {
            if (text.indexOf(c) >= 0) {
                throw unseen(text, c, problems);
            }
        }
    }

    private static void refuseLongLines(String text, Problems problems) throws BadInputException {
        int begun = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r') {
                begun = i + 1;
            } else if (i - begun >= MAX_LINE) {
                throw problems.only(
                        InputText.lineAt(text, i),
                        "",
                        "is longer than " + MAX_LINE + " characters, the most that a line may have");
            }
        }
    }

    private static BadInputException unseen(String text, int codePoint, Problems problems) {
        int at = 0;
        while (at < text.length() && text.codePointAt(at) != codePoint) {
            at += Character.charCount(text.codePointAt(at));
        }
        String code = String.format(Locale.ROOT, "U+%04X", codePoint);
        return problems.only(InputText.lineAt(text, at), "", "holds the unseen character " + code + ": take it out");
    }

    private static int lineOf(MarkedYAMLException e) {
        Mark mark = e.getProblemMark() != null ? e.getProblemMark() : e.getContextMark();
        return mark == null ? 0 : mark.getLine() + 1;
    }

    private static String inWords(MarkedYAMLException e, String holds) {
        String problem = String.valueOf(e.getProblem());
        String context = String.valueOf(e.getContext());
        if (problem.contains("(TAB)")) {
            return "holds a tab where YAML takes spaces only: put spaces in its place";
        }
        if (problem.contains("Global tag is not allowed")) {
            return "carries the tag " + problem.substring(problem.indexOf(": ") + 2) + ": tags are not taken";
        }
        if (context.contains("expected a single document")) {
            return "a second document begins here: one file holds one " + holds;
        }
        if (problem.contains("mapping values are not allowed")) {
            return "has a colon where none can stand: check how far the line is set in, and quote text that holds "
                    + "\": \"";
        }
        if (problem.contains("expected <block end>")) {
            return "does not line up with the lines above: set keys of one section in equally far";
        }
        if (problem.contains("could not find expected ':'")) {
            return "is neither \"key: value\" nor the rest of a value: the colon after a key is missing near here";
        }
        if (problem.contains("expected ',' or ")) {
            return "a bracket is not closed, or a comma is missing";
        }
        if (problem.contains("found unexpected end of stream")) {
            return "a quotation mark is not closed";
        }
        if (problem.contains("expected '<document start>'")) {
            return "does not follow from what stands before it: check how far the lines are set in, and that nothing "
                    + "stands before the first key";
        }
        if (problem.contains("expected the node content")) {
            return "has a sign where a value should stand: write the value, or put quotation marks round it";
        }
        if (problem.contains("that cannot start any token")) {
            return "has a value that begins with a sign which YAML keeps for itself: put quotation marks round it";
        }
        if (problem.contains("escape")) {
            return "has a backslash within quotation marks that begins no escape: write two for a backslash";
        }
        if (problem.contains("entries are not allowed here") || problem.contains("keys are not allowed here")) {
            return "has \"-\" or \"?\" where none can stand: check how far the line is set in";
        }
        return "is not YAML: " + problem;
    }

    /** A parser that takes no aliases and stops at the bounds. */
    private static final class BoundedParser extends ParserImpl {
        private int depth;
        private int events;

        BoundedParser(StreamReader reader, LoaderOptions options) {
            super(reader, options);
        }

        @Override
        public Event getEvent() {
            Event event = super.getEvent();
            int line = event.getStartMark() == null ? 0 : event.getStartMark().getLine() + 1;
            if (++events > MAX_EVENTS) {
                throw new Refused(line, "has more than " + MAX_EVENTS + " keys and values up to here, too many");
            }
            if (event instanceof AliasEvent alias) {
                throw new Refused(
                        line, "*" + alias.getAnchor() + " stands for another value: write the value out instead");
            }
            if (event instanceof CollectionStartEvent && ++depth > MAX_DEPTH) {
                throw new Refused(line, "is nested deeper than " + MAX_DEPTH + " levels");
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
            return event;
        }
    }

    /** Stops the parse. */
    private static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final int line;

        Refused(int line, String message) {
            super(message, null, false, false);
            this.line = line;
        }
    }
}
