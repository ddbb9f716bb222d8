package coilwright.job;

import coilwright.winding.CoilSpan;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.nodes.CollectionNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * The text of a job file that is being changed, right or wrong. Changing a field changes that field's own characters
 * and leaves all others as they are: comments, order, and sections that the editor knows nothing of. Immutable.
 *
 * <p>A field is named by its path, as problems name it: {@code title}, {@code armature.slots},
 * {@code winding.coils[3].topBar} (counted from 1).
 */
public final class JobText {
    private static final Pattern PLAIN =
            Pattern.compile("-?[A-Za-z0-9+.]([A-Za-z0-9 .()/°%µΩ+-]*[A-Za-z0-9.()/°%µΩ+-])?");
    /** What YAML would take for nothing at all. */
    private static final Pattern NOTHING = Pattern.compile("null|Null|NULL");

    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?");
    private static final Pattern STEP = Pattern.compile("([A-Za-z]+)(?:\\[(\\d{1,6})\\])?");

    private final String name;
    private final String text;
    private final Optional<Node> root;
    private final List<Problem> problems;
    private final Optional<Job> job;

    private JobText(String name, String text, Optional<Node> root, List<Problem> problems, Optional<Job> job) {
        this.name = name;
        this.text = text;
        this.root = root;
        this.problems = List.copyOf(problems);
        this.job = job;
    }

    /**
     * {@return a text, right or wrong}
     *
     * @param name how problems name the file
     * @param text the whole text of a job file
     */
    public static JobText of(String name, String text) {
        Optional<Node> root = compose(text);
        try {
            return new JobText(name, text, root, List.of(), Optional.of(JobReader.parse(name, text)));
        } catch (BadInputException e) {
            return new JobText(name, text, root, e.problems(), Optional.empty());
        }
    }

    /**
     * {@return a job written out afresh}
     *
     * @param name how problems name the file
     * @param job what the armature is
     */
    public static JobText of(String name, Job job) {
        return of(name, JobWriter.toText(job));
    }

    /**
     * {@return the text of a file, right or wrong}
     *
     * @param file where it lies
     * @throws BadInputException when the file cannot be read as text at all
     */
    public static JobText read(Path file) throws BadInputException {
        return of(file.toString(), InputText.read(file, "a job file", JobReader.MAX_BYTES));
    }

    private static Optional<Node> compose(String text) {
        try {
            return Optional.of(YamlText.compose(text, "job", "coilwright: 1", new Problems("")));
        } catch (BadInputException e) {
            return Optional.empty();
        }
    }

    /** {@return the whole text} */
    public String text() {
        return text;
    }

    /** {@return what is wrong with it, in order of line; empty where it is a job} */
    public List<Problem> problems() {
        return problems;
    }

    /** {@return the job; empty while anything is wrong} */
    public Optional<Job> job() {
        return job;
    }

    /** {@return whether fields can be changed one by one: not where the text is no YAML at all} */
    public boolean editable() {
        return root.filter(MappingNode.class::isInstance).isPresent();
    }

    /**
     * {@return the same text under another name}
     *
     * @param other how problems name the file
     */
    public JobText named(String other) {
        return of(other, text);
    }

    /**
     * {@return what stands in a field, a list with commas between; empty where the field is left out or blank}
     *
     * @param path of the field, with stops between, such as {@code armature.slots} or {@code readings.0.test}
     */
    public String get(String path) {
        return find(path).map(JobText::words).orElse("");
    }

    /**
     * {@return how many entries a list has; 0 where there is none}
     *
     * @param path of the field, with stops between, such as {@code armature.slots} or {@code readings.0.test}
     */
    public int size(String path) {
        return find(path)
                .filter(SequenceNode.class::isInstance)
                .map(n -> ((SequenceNode) n).getValue().size())
                .orElse(0);
    }

    private static String words(Node node) {
        if (node instanceof ScalarNode s) {
            return s.getTag().equals(org.yaml.snakeyaml.nodes.Tag.NULL) ? "" : s.getValue();
        }
        return node instanceof SequenceNode list
                ? list.getValue().stream().map(JobText::words).collect(Collectors.joining(", "))
                : "";
    }

    private Optional<Node> find(String path) {
        Optional<Node> at = root;
        for (String step : path.split("\\.")) {
            Matcher m = STEP.matcher(step);
            if (!m.matches()) {
                throw new IllegalArgumentException("\"" + path + "\" names no field");
            }
            at = at.flatMap(n -> tuple(n, m.group(1))).map(NodeTuple::getValueNode);
            if (m.group(2) != null) {
                int index = Integer.parseInt(m.group(2)) - 1;
                at = at.filter(SequenceNode.class::isInstance)
                        .map(n -> ((SequenceNode) n).getValue())
                        .filter(l -> index >= 0 && index < l.size())
                        .map(l -> l.get(index));
            }
        }
        return at;
    }

    private static Optional<NodeTuple> tuple(Node node, String key) {
        return node instanceof MappingNode map
                ? map.getValue().stream()
                        .filter(t -> t.getKeyNode() instanceof ScalarNode s
                                && s.getValue().equals(key))
                        .findFirst()
                : Optional.empty();
    }

    /**
     * {@return the text with another value in a field; a blank value leaves the field out} The value need not be right.
     *
     * @param path of the field, with stops between, such as {@code armature.slots} or {@code readings.0.test}
     * @param value as it is to stand there, a list with commas between
     * @throws IllegalArgumentException when the field cannot be reached in this text
     */
    public JobText with(String path, String value) {
        String wanted = value.strip();
        if (wanted.equals(get(path))) {
            return this;
        }
        if (wanted.isEmpty()) {
            return without(path);
        }
        boolean list = path.equals("winding.deadCoils");
        String written = list
                ? Arrays.stream(wanted.split("[,\\s]+"))
                        .map(w -> written(path, w))
                        .collect(Collectors.joining(", ", "[", "]"))
                : written(path, wanted);
        return of(name, put(path, written));
    }

    private boolean json() {
        return root.map(n -> flow(n)).orElse(false);
    }

    private String written(String path, String value) {
        if (json()) {
            return NUMBER.matcher(value).matches() && !path.equals("title") ? value : quoted(value);
        }
        if (path.equals("title")) {
            return JobWriter.text(value);
        }
        return PLAIN.matcher(value).matches() && !NOTHING.matcher(value).matches() ? value : quoted(value);
    }

    private static String quoted(String value) {
        // A leading character outside the plain form brings about the writer's quotation marks.
        String marked = JobWriter.text("\"" + value);
        return "\"" + marked.substring("\"\\\"".length());
    }

    private static boolean flow(Node node) {
        return node instanceof MappingNode m && m.getFlowStyle() == DumperOptions.FlowStyle.FLOW;
    }

    private String put(String path, String written) {
        Optional<Node> there = find(path);
        if (there.filter(JobText::inLines).isPresent()) {
            return without(path).put(path, written);
        }
        if (there.isPresent()) {
            int start = start(there.get());
            int end = end(there.get());
            String old = text.substring(start, end);
            String before = start > 0 && text.charAt(start - 1) == ':' ? " " : "";
            return text.substring(0, start) + before + written + (endsLine(old) ? "\n" : "") + text.substring(end);
        }
        int dot = path.lastIndexOf('.');
        String key = path.substring(dot + 1);
        if (key.endsWith("]")) {
            throw new IllegalArgumentException(path + " is not there: the list ends before it");
        }
        if (dot < 0) {
            return insert(root.orElseThrow(() -> unreachable(path)), key, written);
        }
        String parent = path.substring(0, dot);
        Optional<Node> section = find(parent);
        if (section.filter(n -> n instanceof MappingNode).isPresent()) {
            return insert(section.get(), key, written);
        }
        return put(parent, "{" + key(key) + ": " + written + "}");
    }

    private static IllegalArgumentException unreachable(String path) {
        return new IllegalArgumentException(
                path + " cannot be reached: the file is not laid out as keys and values; mend it in a text editor");
    }

    private String key(String key) {
        return json() ? "\"" + key + "\"" : key;
    }

    private String insert(Node section, String key, String written) {
        if (!(section instanceof MappingNode map)) {
            throw unreachable(key);
        }
        List<NodeTuple> tuples = map.getValue();
        if (tuples.isEmpty()) {
            int at = start(map) + 1;
            return text.substring(0, at) + key(key) + ": " + written + text.substring(at);
        }
        if (flow(map)) {
            int at = end(tuples.get(tuples.size() - 1).getValueNode());
            return text.substring(0, at) + ", " + key(key) + ": " + written + text.substring(at);
        }
        Node first = tuples.get(0).getKeyNode();
        String line = " ".repeat(first.getStartMark().getColumn()) + key + ": " + written + "\n";
        for (int i = tuples.size() - 1; i >= 0; i--) {
            Node value = tuples.get(i).getValueNode();
            if (value instanceof ScalarNode || flow(value) || inBrackets(value)) {
                int at = lineEnd(Math.max(start(value), end(value) - 1));
                String parted = at > 0 && !isBreak(text.charAt(at - 1)) ? "\n" : "";
                return text.substring(0, at) + parted + line + text.substring(at);
            }
        }
        int at = lineStart(start(first));
        return text.substring(0, at) + line + text.substring(at);
    }

    /** Whether it is a list or section whose parts stand in lines of their own. */
    private static boolean inLines(Node node) {
        return node instanceof CollectionNode<?> c && c.getFlowStyle() == DumperOptions.FlowStyle.BLOCK;
    }

    private static boolean inBrackets(Node node) {
        return node instanceof SequenceNode s && s.getFlowStyle() == DumperOptions.FlowStyle.FLOW;
    }

    /**
     * {@return the text without a field; without its section where nothing else is in that}
     *
     * @param path of the field, with stops between, such as {@code armature.slots} or {@code readings.0.test}
     * @throws IllegalArgumentException when the field cannot be reached in this text
     */
    public JobText without(String path) {
        if (find(path).isEmpty()) {
            return this;
        }
        int dot = path.lastIndexOf('.');
        Node section =
                dot < 0 ? root.orElseThrow() : find(path.substring(0, dot)).orElseThrow();
        if (!(section instanceof MappingNode map)) {
            throw unreachable(path);
        }
        if (map.getValue().size() == 1 && dot > 0) {
            return without(path.substring(0, dot));
        }
        int i = 0;
        String key = path.substring(dot + 1);
        while (!(map.getValue().get(i).getKeyNode() instanceof ScalarNode s
                && s.getValue().equals(key))) {
            i++;
        }
        return of(name, flow(map) ? cutFlow(map, i) : cutBlock(map, i));
    }

    private String cutFlow(MappingNode map, int i) {
        List<NodeTuple> all = map.getValue();
        int from = i == 0 ? start(all.get(0).getKeyNode()) : end(all.get(i - 1).getValueNode());
        int to = i == 0 && all.size() > 1
                ? start(all.get(1).getKeyNode())
                : end(all.get(i).getValueNode());
        return text.substring(0, from) + text.substring(to);
    }

    private String cutBlock(MappingNode map, int i) {
        List<NodeTuple> all = map.getValue();
        int from = lineStart(start(all.get(i).getKeyNode()));
        Node value = all.get(i).getValueNode();
        int to = Math.max(end(value), end(all.get(i).getKeyNode()));
        // A block ends where the next thing begins: comments and blank lines before that are not its own.
        while (to > from && Character.isWhitespace(text.charAt(to - 1))) {
            to--;
        }
        int last = lineStart(to);
        while (last > from && text.substring(last, lineEnd(last)).strip().startsWith("#")) {
            to = last - 1;
            last = lineStart(to);
        }
        return text.substring(0, from) + text.substring(lineEnd(to));
    }

    private int start(Node node) {
        return text.offsetByCodePoints(0, node.getStartMark().getIndex());
    }

    private int end(Node node) {
        return text.offsetByCodePoints(0, node.getEndMark().getIndex());
    }

    private int lineStart(int at) {
        int start = at;
        while (start > 0 && !isBreak(text.charAt(start - 1))) {
            start--;
        }
        return start;
    }

    /** Just behind the break that ends the line. */
    private int lineEnd(int at) {
        int end = at;
        while (end < text.length() && !isBreak(text.charAt(end))) {
            end++;
        }
        return text.startsWith("\r\n", end) ? end + 2 : Math.min(end + 1, text.length());
    }

    /** Whether a line ends here. */
    private static boolean isBreak(char c) {
        return c == '\n' || c == '\r';
    }

    private static boolean endsLine(String text) {
        return !text.isEmpty() && isBreak(text.charAt(text.length() - 1));
    }

    /**
     * {@return the text with another type of winding} Keys that the type has no use for are left out. Where it is to be
     * a list and is none yet, it becomes the list of the winding given.
     *
     * @param type the kind of winding
     * @param now the winding as it is; empty where it cannot be built
     */
    public JobText withType(WindingType type, Optional<Winding> now) {
        JobText out = with("winding.type", type.word());
        for (String key : JobReader.WINDING_KEYS) {
            if (JobReader.unused(type).contains(key)) {
                out = out.without("winding." + key);
            }
        }
        if (type == WindingType.LISTED && out.size("winding.coils") == 0 && now.isPresent()) {
            out = out.withCoils(now.get().asListed().coils());
        }
        return out;
    }

    /**
     * {@return the text with another connection list}
     *
     * @param coils the coils, in any order
     */
    public JobText withCoils(List<ListedCoil> coils) {
        JobText out = without("winding.coils");
        if (out.json()) {
            return of(
                    name,
                    out.put(
                            "winding.coils",
                            "["
                                    + coils.stream()
                                            .map(c -> JobWriter.coil(c).replaceAll("([a-zA-Z]+):", "\"$1\":"))
                                            .collect(Collectors.joining(", "))
                                    + "]"));
        }
        return of(
                name,
                out.put(
                        "winding.coils",
                        coils.stream().map(JobWriter::coil).collect(Collectors.joining(",\n    ", "[\n    ", "]"))));
    }

    /**
     * {@return the text with other readings of run-out in {@code commutator.runOut}; without them where there are none}
     *
     * @param readings heights round the bars
     * @throws IllegalArgumentException when the section cannot be reached in this text
     */
    public JobText withRunOut(List<RunOutEntry> readings) {
        String path = "commutator.runOut";
        if (readings.isEmpty()) {
            return without(path);
        }
        boolean inPlace = find(path).filter(JobText::inBrackets).isPresent();
        JobText out = inPlace ? this : without(path);
        boolean json = out.json();
        String list = readings.stream()
                .map(r -> json
                        ? "{\"bar\": " + r.bar() + ", \"height\": "
                                + quoted(r.height().toString()) + "}"
                        : "{bar: " + r.bar() + ", height: " + r.height() + "}")
                .collect(Collectors.joining(json ? ", " : ",\n    ", json ? "[" : "[\n    ", "]"));
        return of(name, out.put(path, list));
    }

    /**
     * {@return the text with this winding on this many bars}
     *
     * @param bars bars on the commutator
     * @param spec how it is wound
     */
    public JobText withWinding(int bars, WindingSpec spec) {
        if (spec instanceof WindingSpec.Listed listed) {
            return with("armature.bars", Integer.toString(bars))
                    .withType(WindingType.LISTED, Optional.empty())
                    .withCoils(listed.coils());
        }
        JobText out = with("armature.bars", Integer.toString(bars)).withType(spec.type(), Optional.empty());
        if (spec instanceof WindingSpec.Regular r) {
            out = out.with(
                    "winding.deadCoils",
                    r.deadCoils().stream().map(String::valueOf).collect(Collectors.joining(", ")));
            return out.common(r.plex(), r.direction().word(), r.span(), r.leadOffset());
        }
        WindingSpec.FrogLeg f = (WindingSpec.FrogLeg) spec;
        return out.common(f.plex(), f.direction().word(), f.span(), f.leadOffset());
    }

    private JobText common(int plex, String direction, CoilSpan span, int leadOffset) {
        JobText out = with("winding.plex", Integer.toString(plex)).with("winding.direction", direction);
        if (span instanceof CoilSpan.Throw t) {
            out = out.without("winding.backSpan").with("winding.throw", Integer.toString(t.slots()));
        } else if (span instanceof CoilSpan.Positions p) {
            out = out.without("winding.throw").with("winding.backSpan", Integer.toString(p.positions()));
        } else {
            out = out.without("winding.throw").without("winding.backSpan");
        }
        return leadOffset == 0 && out.get("winding.leadOffset").isEmpty()
                ? out
                : out.with("winding.leadOffset", Integer.toString(leadOffset));
    }

    /**
     * {@return the text with other readings}
     *
     * @param sets the readings, each set with its test
     * @throws IllegalArgumentException when the text is no job, or the readings do not fit it
     */
    public JobText withReadings(List<ReadingSet> sets) {
        Job changed = job.orElseThrow(() -> new IllegalArgumentException(
                        "readings are put into a job without mistakes only: mend them first"))
                .withReadings(sets);
        String whole = JobWriter.toText(changed);
        if (json()) {
            return of(name, whole);
        }
        List<String> lines = new ArrayList<>();
        boolean in = false;
        for (String line : whole.split("\n")) {
            in = line.startsWith(" ") ? in : line.startsWith("readings:");
            if (in) {
                lines.add(line);
            }
        }
        String rest = without("readings").text;
        String parted = rest.isEmpty() || endsLine(rest) ? "" : "\n";
        return of(name, rest + parted + String.join("\n", lines) + (lines.isEmpty() ? "" : "\n"));
    }
}
