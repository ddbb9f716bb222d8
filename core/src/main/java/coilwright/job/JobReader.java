package coilwright.job;

import coilwright.bench.Growler;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntConsumer;

/**
 * Reads job files: YAML (or JSON, which is YAML) as UTF-8, at most {@value #MAX_BYTES} bytes long.
 *
 * <p>Strict: unknown keys, doubled keys, keys the winding type has no use for, bare numbers where a unit is needed and
 * values of the wrong sort are all refused, with every problem reported at once. Aliases are not taken, nesting is at
 * most {@value YamlText#MAX_DEPTH} levels, and a file may hold at most {@value YamlText#MAX_EVENTS} keys and values. An
 * armature that cannot be wound is no bad file: it reads, and {@link Job#build()} tells what is wrong.
 */
public final class JobReader {
    /** Longest file taken, bytes. */
    public static final int MAX_BYTES = 4 * 1024 * 1024;

    /** The version of the file format that this library reads and writes. */
    public static final int VERSION = 1;

    static final List<String> TOP_KEYS = List.of(
            "coilwright",
            "title",
            "armature",
            "winding",
            "growler",
            "equalizers",
            "rating",
            "wire",
            "core",
            "commutator",
            "asFound",
            "plan",
            "asRewound",
            "notes",
            "readings");
    static final List<String> ARMATURE_KEYS = List.of("slots", "bars", "poles", "slotOneInLineWith");
    static final List<String> WINDING_KEYS = List.of(
            "type",
            "plex",
            "direction",
            "throw",
            "backSpan",
            "deadCoils",
            "leadOffset",
            "turns",
            "coilResistance",
            "coils");
    static final List<String> COIL_KEYS = List.of("coil", "topSlot", "bottomSlot", "topBar", "bottomBar");
    static final List<String> GROWLER_KEYS = List.of("halfGap", "face");
    static final List<String> EQUALIZER_KEYS = List.of("every");

    private static final Set<String> NOT_FOR_REGULAR = Set.of("coils");
    private static final Set<String> NOT_FOR_FROG_LEG = Set.of("coils", "deadCoils");
    private static final Set<String> NOT_FOR_LISTED =
            Set.of("plex", "direction", "throw", "backSpan", "deadCoils", "leadOffset");

    private JobReader() {}

    /**
     * Reads a job file.
     *
     * @param file where it lies
     * @return the job
     * @throws BadInputException when it cannot be read or anything in it is wrong, carrying every problem
     */
    public static Job read(Path file) throws BadInputException {
        return parse(file.toString(), InputText.read(file, "a job file", MAX_BYTES));
    }

    /**
     * Reads the text of a job file.
     *
     * @param name how problems name the file
     * @param text the whole text
     * @return the job
     * @throws BadInputException when anything in it is wrong, carrying every problem
     */
    public static Job parse(String name, String text) throws BadInputException {
        var problems = new Problems(name);
        if (text.length() > MAX_BYTES) {
            throw problems.only(0, "", "is longer than " + MAX_BYTES + " bytes, the most that a job file may have");
        }
        var root = new Field(problems, "", YamlText.compose(text, "job", "coilwright: " + VERSION, problems));
        Optional<Job> job = job(root);
        problems.throwIfAny();
        return job.orElseThrow(() -> new IllegalStateException("a job file without problems gave no job"));
    }

    private static Optional<Job> job(Field root) {
        Optional<Map<String, Field>> section = root.section(TOP_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> fields = section.get();
        root.required(fields, "coilwright", ": begin the file with \"coilwright: " + VERSION + "\"")
                .ifPresent(f -> f.wholeNumber(JobReader::checkVersion));
        Optional<String> title =
                root.required(fields, "title", ": give the machine a name").flatMap(f -> f.text(Job::checkTitle));
        Optional<Armature> armature = root.required(fields, "armature", ": give its slots, bars and poles")
                .flatMap(JobReader::armature);
        Optional<WindingRead> winding = root.required(
                        fields, "winding", ": give at least its type: " + String.join(", ", TYPES.keySet()))
                .flatMap(JobReader::winding);
        Optional<Growler> growler =
                fields.containsKey("growler") ? growler(fields.get("growler")) : Optional.of(Growler.USUAL);
        Optional<Equalizers> equalizers =
                Optional.ofNullable(fields.get("equalizers")).flatMap(JobReader::equalizers);
        List<ReadingSet> readings = Optional.ofNullable(fields.get("readings"))
                .map(f -> ReadingsSection.read(f, armature.map(Armature::bars).orElse(Armature.MAX_BARS)))
                .orElse(List.of());
        Particulars particulars = particulars(fields, armature);
        if (title.isEmpty() || armature.isEmpty() || winding.isEmpty() || growler.isEmpty() || root.anyWrong()) {
            return Optional.empty();
        }
        WindingRead w = winding.get();
        return Optional.of(new Job(
                title.get(),
                armature.get(),
                w.spec(),
                w.turns(),
                w.coilResistance(),
                growler.get(),
                equalizers,
                readings,
                particulars));
    }

    private static Particulars particulars(Map<String, Field> fields, Optional<Armature> armature) {
        Optional<CommutatorSizes> commutator = part(fields, "commutator", CommutatorSizes.class);
        int bars = armature.map(Armature::bars).orElse(Armature.MAX_BARS);
        commutator.ifPresent(c -> c.runOut().stream()
                .filter(entry -> entry.bar() > bars)
                .findFirst()
                .ifPresent(entry -> fields.get("commutator")
                        .wrong("runOut names bar " + entry.bar() + ", but bars run from 1 to " + bars)));
        return new Particulars(
                part(fields, "rating", Rating.class),
                part(fields, "wire", WireChoice.class),
                part(fields, "core", CoreSizes.class),
                commutator,
                part(fields, "asFound", AsFound.class),
                part(fields, "plan", Plan.class),
                part(fields, "asRewound", AsRewound.class),
                Optional.ofNullable(fields.get("notes"))
                        .map(SectionReader::lines)
                        .orElse(List.of()));
    }

    private static <R extends Record> Optional<R> part(Map<String, Field> fields, String key, Class<R> type) {
        return Optional.ofNullable(fields.get(key)).flatMap(f -> SectionReader.read(f, type));
    }

    private static void checkVersion(int version) {
        if (version > VERSION) {
            throw new IllegalArgumentException(
                    "is " + version + ", written for a later Coilwright: this one reads " + VERSION + " only");
        }
        if (version < VERSION) {
            throw new IllegalArgumentException("is " + version + ", but must be " + VERSION);
        }
    }

    private static Optional<Armature> armature(Field field) {
        Optional<Map<String, Field>> section = field.section(ARMATURE_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalInt slots = count(field, f, "slots", n -> Armature.of(n, 2, 2));
        OptionalInt bars = count(field, f, "bars", n -> Armature.of(2, n, 2));
        OptionalInt poles = count(field, f, "poles", n -> Armature.of(2, 2, n));
        Optional<SlotAlignment> alignment = f.containsKey("slotOneInLineWith")
                ? f.get("slotOneInLineWith").oneOf(ALIGNMENTS)
                : Optional.of(SlotAlignment.BAR);
        if (slots.isEmpty() || bars.isEmpty() || poles.isEmpty() || alignment.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Armature(slots.getAsInt(), bars.getAsInt(), poles.getAsInt(), alignment.get()));
    }

    private static OptionalInt count(Field section, Map<String, Field> fields, String key, IntConsumer check) {
        Optional<Field> field = section.required(fields, key, ": count the " + key);
        return field.isEmpty() ? OptionalInt.empty() : field.get().wholeNumber(check);
    }

    /** The winding section, which also holds what is said of each coil. */
    private record WindingRead(WindingSpec spec, OptionalInt turns, Optional<Quantity> coilResistance) {}

    private static Optional<WindingRead> winding(Field field) {
        Optional<Map<String, Field>> section = field.section(WINDING_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        Optional<WindingType> type = field.required(f, "type", ": it is one of " + String.join(", ", TYPES.keySet()))
                .flatMap(t -> t.oneOf(TYPES));
        type.ifPresent(t -> refuseUnused(f, t));
        int plex = whole(f, "plex", 1, n -> WindingSpec.lap(n, Direction.PROGRESSIVE));
        Direction direction = Optional.ofNullable(f.get("direction"))
                .flatMap(d -> d.oneOf(DIRECTIONS))
                .orElse(Direction.PROGRESSIVE);
        CoilSpan span = span(f);
        List<Integer> dead = deadCoils(f);
        int leadOffset = whole(
                f,
                "leadOffset",
                0,
                n -> WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(n));
        OptionalInt turns = f.containsKey("turns") ? f.get("turns").wholeNumber(Job::checkTurns) : OptionalInt.empty();
        Optional<Quantity> resistance = Optional.ofNullable(f.get("coilResistance"))
                .flatMap(r -> r.quantity(Quantity.Kind.RESISTANCE, Job::checkCoilResistance));
        List<ListedCoil> coils = coils(field, f, type);
        if (type.isEmpty() || (type.get() == WindingType.LISTED && coils.isEmpty())) {
            return Optional.empty();
        }
        WindingSpec spec = switch (type.get()) {
            case LAP, WAVE -> new WindingSpec.Regular(type.get(), plex, direction, span, dead, leadOffset);
            case FROG_LEG -> new WindingSpec.FrogLeg(plex, direction, span, leadOffset);
            case LISTED -> new WindingSpec.Listed(coils);
        };
        return Optional.of(new WindingRead(spec, turns, resistance));
    }

    private static void refuseUnused(Map<String, Field> fields, WindingType type) {
        Set<String> unused = unused(type);
        fields.forEach((key, field) -> {
            if (unused.contains(key) && !field.isEmptyList()) {
                field.wrong("is not used by a " + type.word() + " winding: leave it out");
            }
        });
    }

    /** Keys of the winding section that a type has no use for. */
    static Set<String> unused(WindingType type) {
        return switch (type) {
            case LAP, WAVE -> NOT_FOR_REGULAR;
            case FROG_LEG -> NOT_FOR_FROG_LEG;
            case LISTED -> NOT_FOR_LISTED;
        };
    }

    private static int whole(Map<String, Field> fields, String key, int unlessGiven, IntConsumer check) {
        return fields.containsKey(key) ? fields.get(key).wholeNumber(check).orElse(unlessGiven) : unlessGiven;
    }

    private static CoilSpan span(Map<String, Field> fields) {
        Field inSlots = fields.get("throw");
        Field inPositions = fields.get("backSpan");
        if (inSlots != null && inPositions != null) {
            Field later = inSlots.line() > inPositions.line() ? inSlots : inPositions;
            later.wrong("throw and backSpan say the same thing twice: keep throw where all coils of a slot go to one "
                    + "slot, backSpan where they are stepped");
        }
        OptionalInt slots = inSlots == null ? OptionalInt.empty() : throwSlots(inSlots);
        OptionalInt positions =
                inPositions == null ? OptionalInt.empty() : inPositions.wholeNumber(JobReader::checkBackSpan);
        if (slots.isPresent()) {
            return CoilSpan.ofThrow(slots.getAsInt());
        }
        return positions.isPresent() ? CoilSpan.ofPositions(positions.getAsInt()) : CoilSpan.usual();
    }

    /** A throw is given in slots spanned; the trade's way of writing it is told from that by its dash. */
    private static OptionalInt throwSlots(Field field) {
        String written = field.written().orElse("");
        if (!written.matches("1-[0-9]{1,4}")) {
            return field.wholeNumber(JobReader::checkThrow);
        }
        int last = Integer.parseInt(written.substring(2));
        field.wrong("is \"" + written + "\", but must be the number of slots spanned"
                + (last > 1 ? ": " + (last - 1) : ""));
        return OptionalInt.empty();
    }

    private static void checkThrow(int slots) {
        CoilSpan.ofThrow(slots);
        atMost("throw", slots, Armature.MAX_SLOTS);
    }

    private static void checkBackSpan(int positions) {
        CoilSpan.ofPositions(positions);
        atMost("backSpan", positions, 2 * Armature.MAX_BARS);
    }

    private static void atMost(String what, int value, int most) {
        if (value > most) {
            throw new IllegalArgumentException(what + " is " + value + ", but may be at most " + most);
        }
    }

    private static List<Integer> deadCoils(Map<String, Field> fields) {
        List<Integer> dead = new ArrayList<>();
        List<Field> entries = Optional.ofNullable(fields.get("deadCoils"))
                .flatMap(f -> f.list(Armature.MAX_BARS))
                .orElse(List.of());
        var seen = new java.util.HashSet<Integer>();
        for (Field entry : entries) {
            OptionalInt number = entry.wholeNumber(n -> fromOne("a coil number", n, 2 * Armature.MAX_BARS));
            if (number.isPresent()) {
                if (seen.add(number.getAsInt())) {
                    dead.add(number.getAsInt());
                } else {
                    entry.wrong("names coil " + number.getAsInt() + " again: name each dead coil once");
                }
            }
        }
        return dead;
    }

    private static void fromOne(String what, int value, int most) {
        if (value < 1 || value > most) {
            throw new IllegalArgumentException("is " + value + ", but " + what + " is from 1 to " + most);
        }
    }

    private static List<ListedCoil> coils(Field winding, Map<String, Field> fields, Optional<WindingType> type) {
        boolean wanted = type.isPresent() && type.get() == WindingType.LISTED;
        if (!wanted && (type.isPresent() || !fields.containsKey("coils"))) {
            return List.of();
        }
        Optional<Field> field =
                winding.required(fields, "coils", ": list each coil as {coil, topSlot, bottomSlot, topBar, bottomBar}");
        if (field.isEmpty()) {
            return List.of();
        }
        if (wanted && field.get().isEmptyList()) {
            field.get().wrong("is empty: list each coil as {coil, topSlot, bottomSlot, topBar, bottomBar}");
            return List.of();
        }
        List<ListedCoil> coils = new ArrayList<>();
        field.get()
                .list(2 * Armature.MAX_BARS)
                .orElse(List.of())
                .forEach(entry -> coil(entry).ifPresent(coils::add));
        return coils;
    }

    private static Optional<ListedCoil> coil(Field entry) {
        Optional<Map<String, Field>> section = entry.section(COIL_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalInt number = place(entry, f, "coil", "a coil number", 2 * Armature.MAX_BARS);
        OptionalInt topSlot = place(entry, f, "topSlot", "a slot", Armature.MAX_SLOTS);
        OptionalInt bottomSlot = place(entry, f, "bottomSlot", "a slot", Armature.MAX_SLOTS);
        OptionalInt topBar = bar(f, "topBar");
        OptionalInt bottomBar = bar(f, "bottomBar");
        if (number.isEmpty() || topSlot.isEmpty() || bottomSlot.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new ListedCoil(number.getAsInt(), topSlot.getAsInt(), bottomSlot.getAsInt(), topBar, bottomBar));
    }

    private static OptionalInt place(Field entry, Map<String, Field> fields, String key, String what, int most) {
        Optional<Field> field = entry.required(fields, key, "");
        return field.isEmpty() ? OptionalInt.empty() : field.get().wholeNumber(n -> fromOne(what, n, most));
    }

    private static OptionalInt bar(Map<String, Field> fields, String key) {
        Field field = fields.get(key);
        if (field == null || field.isNull()) {
            return OptionalInt.empty();
        }
        return field.wholeNumber(n -> fromOne("a bar", n, Armature.MAX_BARS));
    }

    private static Optional<Growler> growler(Field field) {
        Optional<Map<String, Field>> section = field.section(GROWLER_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalDouble halfGap = angle(f, "halfGap", Growler.USUAL.halfGap(), x -> new Growler(x, 1e-9));
        OptionalDouble face = angle(f, "face", Growler.USUAL.face(), x -> new Growler(90, x));
        if (halfGap.isEmpty() || face.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Growler(halfGap.getAsDouble(), face.getAsDouble()));
        } catch (IllegalArgumentException e) {
            f.getOrDefault("face", field).wrong(e.getMessage());
            return Optional.empty();
        }
    }

    private static Optional<Equalizers> equalizers(Field field) {
        Optional<Map<String, Field>> section = field.section(EQUALIZER_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Optional<Field> every = field.required(
                section.get(), "every", ": 1 for a ring on every set of bars at one potential, 2 for every other");
        OptionalInt number = every.isEmpty() ? OptionalInt.empty() : every.get().wholeNumber(Equalizers::new);
        return number.isEmpty() ? Optional.empty() : Optional.of(new Equalizers(number.getAsInt()));
    }

    private static OptionalDouble angle(
            Map<String, Field> fields, String key, double unlessGiven, java.util.function.DoubleConsumer check) {
        return fields.containsKey(key) ? fields.get(key).number("degrees", check) : OptionalDouble.of(unlessGiven);
    }

    static final Map<String, WindingType> TYPES = words(WindingType.values(), WindingType::word);
    static final Map<String, Direction> DIRECTIONS = words(Direction.values(), Direction::word);
    static final Map<String, SlotAlignment> ALIGNMENTS = words(SlotAlignment.values(), SlotAlignment::word);

    private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
        Map<String, T> map = new LinkedHashMap<>();
        Arrays.stream(values).forEach(v -> map.put(word.apply(v), v));
        return map;
    }
}
