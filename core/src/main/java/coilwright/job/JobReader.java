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
        if (job.isEmpty()) {
            throw new IllegalStateException("a job file without problems gave no job");
        }
        return job.get();
    }

    private static Optional<Job> job(Field root) {
        Optional<Map<String, Field>> section = root.section(TOP_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> fields = section.get();
        Optional<Field> version =
                root.required(fields, "coilwright", ": begin the file with \"coilwright: " + VERSION + "\"");
        if (version.isPresent()) {
            version.get().wholeNumber(Whole.VERSION);
        }
        Optional<Field> name = root.required(fields, "title", ": give the machine a name");
        Optional<String> title = name.isPresent() ? name.get().text(new Title()) : Optional.empty();
        Optional<Armature> armature = armature(root.required(fields, "armature", ": give its slots, bars and poles"));
        Optional<WindingRead> winding = winding(
                root.required(fields, "winding", ": give at least its type: " + String.join(", ", TYPES.keySet())));
        Optional<Growler> growler =
                fields.containsKey("growler") ? growler(fields.get("growler")) : Optional.of(Growler.USUAL);
        Optional<Equalizers> equalizers =
                fields.containsKey("equalizers") ? equalizers(fields.get("equalizers")) : Optional.empty();
        int bars = armature.isPresent() ? armature.get().bars() : Armature.MAX_BARS;
        List<ReadingSet> readings =
                fields.containsKey("readings") ? ReadingsSection.read(fields.get("readings"), bars) : List.of();
        Particulars particulars = particulars(fields, bars);
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

    private static Particulars particulars(Map<String, Field> fields, int bars) {
        Optional<CommutatorSizes> commutator = part(fields, "commutator", CommutatorSizes.class);
        if (commutator.isPresent()) {
            checkRunOut(fields.get("commutator"), commutator.get(), bars);
        }
        return new Particulars(
                part(fields, "rating", Rating.class),
                part(fields, "wire", WireChoice.class),
                part(fields, "core", CoreSizes.class),
                commutator,
                part(fields, "asFound", AsFound.class),
                part(fields, "plan", Plan.class),
                part(fields, "asRewound", AsRewound.class),
                fields.containsKey("notes") ? SectionReader.lines(fields.get("notes")) : List.of());
    }

    private static void checkRunOut(Field field, CommutatorSizes commutator, int bars) {
        try {
            commutator.checkBars(bars);
        } catch (IllegalArgumentException e) {
            field.wrong(e.getMessage());
        }
    }

    private static <R extends Record> Optional<R> part(Map<String, Field> fields, String key, Class<R> type) {
        return fields.containsKey(key) ? SectionReader.read(fields.get(key), type) : Optional.empty();
    }

    // Classes and loops, not lambdas, in all that every job file goes through: each lambda costs start-up time.

    /** What a whole number must keep to. */
    private enum Whole implements IntConsumer {
        VERSION,
        SLOTS,
        BARS,
        POLES,
        PLEX,
        LEAD_OFFSET,
        THROW,
        BACK_SPAN,
        TURNS;

        @Override
        public void accept(int n) {
            switch (this) {
                case VERSION -> checkVersion(n);
                case SLOTS -> Armature.of(n, 2, 2);
                case BARS -> Armature.of(2, n, 2);
                case POLES -> Armature.of(2, 2, n);
                case PLEX -> WindingSpec.lap(n, Direction.PROGRESSIVE);
                case LEAD_OFFSET -> WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(n);
                case THROW -> checkThrow(n);
                case BACK_SPAN -> checkBackSpan(n);
                case TURNS -> Job.checkTurns(n);
            }
        }
    }

    /** What a number that counts something from one must keep to. */
    private record FromOne(String what, int most) implements IntConsumer {
        @Override
        public void accept(int n) {
            if (n < 1 || n > most) {
                throw new IllegalArgumentException("is " + n + ", but " + what + " is from 1 to " + most);
            }
        }
    }

    private record Title() implements Consumer<String> {
        @Override
        public void accept(String title) {
            Job.checkTitle(title);
        }
    }

    private record CoilResistance() implements Consumer<Quantity> {
        @Override
        public void accept(Quantity resistance) {
            Job.checkCoilResistance(resistance);
        }
    }

    /** One angle of a growler whose other angle leaves it all the room there is. */
    private record GrowlerAngle(boolean isFace) implements DoubleConsumer {
        @Override
        public void accept(double angle) {
            if (isFace) {
                new Growler(90, angle);
            } else {
                new Growler(angle, 1e-9);
            }
        }
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

    private static Optional<Armature> armature(Optional<Field> given) {
        Optional<Map<String, Field>> section = section(given, ARMATURE_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Field field = given.get();
        Map<String, Field> f = section.get();
        OptionalInt slots = count(field, f, "slots", Whole.SLOTS);
        OptionalInt bars = count(field, f, "bars", Whole.BARS);
        OptionalInt poles = count(field, f, "poles", Whole.POLES);
        Optional<SlotAlignment> alignment = f.containsKey("slotOneInLineWith")
                ? f.get("slotOneInLineWith").oneOf(ALIGNMENTS)
                : Optional.of(SlotAlignment.BAR);
        if (slots.isEmpty() || bars.isEmpty() || poles.isEmpty() || alignment.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Armature(slots.getAsInt(), bars.getAsInt(), poles.getAsInt(), alignment.get()));
    }

    private static Optional<Map<String, Field>> section(Optional<Field> field, List<String> keys) {
        return field.isPresent() ? field.get().section(keys) : Optional.empty();
    }

    private static OptionalInt count(Field section, Map<String, Field> fields, String key, IntConsumer check) {
        Optional<Field> field = section.required(fields, key, ": count the " + key);
        return field.isEmpty() ? OptionalInt.empty() : field.get().wholeNumber(check);
    }

    /** The winding section, which also holds what is said of each coil. */
    private record WindingRead(WindingSpec spec, OptionalInt turns, Optional<Quantity> coilResistance) {}

    private static Optional<WindingRead> winding(Optional<Field> given) {
        Optional<Map<String, Field>> section = section(given, WINDING_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Field field = given.get();
        Map<String, Field> f = section.get();
        Optional<Field> kind = field.required(f, "type", ": it is one of " + String.join(", ", TYPES.keySet()));
        Optional<WindingType> type = kind.isPresent() ? kind.get().oneOf(TYPES) : Optional.empty();
        if (type.isPresent()) {
            refuseUnused(f, type.get());
        }
        int plex = whole(f, "plex", 1, Whole.PLEX);
        Optional<Direction> direction =
                f.containsKey("direction") ? f.get("direction").oneOf(DIRECTIONS) : Optional.empty();
        CoilSpan span = span(f);
        List<Integer> dead = deadCoils(f);
        int leadOffset = whole(f, "leadOffset", 0, Whole.LEAD_OFFSET);
        OptionalInt turns = f.containsKey("turns") ? f.get("turns").wholeNumber(Whole.TURNS) : OptionalInt.empty();
        Optional<Quantity> resistance = f.containsKey("coilResistance")
                ? f.get("coilResistance").quantity(Quantity.Kind.RESISTANCE, new CoilResistance())
                : Optional.empty();
        List<ListedCoil> coils = coils(field, f, type);
        if (type.isEmpty() || (type.get() == WindingType.LISTED && coils.isEmpty())) {
            return Optional.empty();
        }
        Direction way = direction.orElse(Direction.PROGRESSIVE);
        WindingSpec spec = switch (type.get()) {
            case LAP, WAVE -> new WindingSpec.Regular(type.get(), plex, way, span, dead, leadOffset);
            case FROG_LEG -> new WindingSpec.FrogLeg(plex, way, span, leadOffset);
            case LISTED -> new WindingSpec.Listed(coils);
        };
        return Optional.of(new WindingRead(spec, turns, resistance));
    }

    private static void refuseUnused(Map<String, Field> fields, WindingType type) {
        Set<String> unused = unused(type);
        for (Map.Entry<String, Field> entry : fields.entrySet()) {
            Field field = entry.getValue();
            if (unused.contains(entry.getKey()) && !field.isEmptyList()) {
                field.wrong("is not used by a " + type.word() + " winding: leave it out");
            }
        }
    }

    /**
     * {@return keys of the winding section that a type has no use for}
     *
     * @param type the kind of winding
     */
    public static Set<String> unused(WindingType type) {
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
        OptionalInt positions = inPositions == null ? OptionalInt.empty() : inPositions.wholeNumber(Whole.BACK_SPAN);
        if (slots.isPresent()) {
            return CoilSpan.ofThrow(slots.getAsInt());
        }
        return positions.isPresent() ? CoilSpan.ofPositions(positions.getAsInt()) : CoilSpan.usual();
    }

    /** A throw is given in slots spanned; the trade's way of writing it is told from that by its dash. */
    private static OptionalInt throwSlots(Field field) {
        String written = field.written().orElse("");
        if (!written.startsWith("1-") || !written.matches("1-[0-9]{1,4}")) {
            return field.wholeNumber(Whole.THROW);
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
        if (!fields.containsKey("deadCoils")) {
            return dead;
        }
        var seen = new HashSet<Integer>();
        for (Field entry : fields.get("deadCoils").list(Armature.MAX_BARS).orElse(List.of())) {
            OptionalInt number = entry.wholeNumber(new FromOne("a coil number", 2 * Armature.MAX_BARS));
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
        for (Field entry : field.get().list(2 * Armature.MAX_BARS).orElse(List.of())) {
            Optional<ListedCoil> coil = coil(entry);
            if (coil.isPresent()) {
                coils.add(coil.get());
            }
        }
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
        return field.isEmpty() ? OptionalInt.empty() : field.get().wholeNumber(new FromOne(what, most));
    }

    private static OptionalInt bar(Map<String, Field> fields, String key) {
        Field field = fields.get(key);
        if (field == null || field.isNull()) {
            return OptionalInt.empty();
        }
        return field.wholeNumber(new FromOne("a bar", Armature.MAX_BARS));
    }

    private static Optional<Growler> growler(Field field) {
        Optional<Map<String, Field>> section = field.section(GROWLER_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalDouble halfGap = angle(f, "halfGap", Growler.USUAL.halfGap(), new GrowlerAngle(false));
        OptionalDouble face = angle(f, "face", Growler.USUAL.face(), new GrowlerAngle(true));
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
            Map<String, Field> fields, String key, double unlessGiven, DoubleConsumer check) {
        return fields.containsKey(key) ? fields.get(key).number("degrees", check) : OptionalDouble.of(unlessGiven);
    }

    static final Map<String, WindingType> TYPES = new LinkedHashMap<>();
    static final Map<String, Direction> DIRECTIONS = new LinkedHashMap<>();
    static final Map<String, SlotAlignment> ALIGNMENTS = new LinkedHashMap<>();

    static {
        for (WindingType type : WindingType.values()) {
            TYPES.put(type.word(), type);
        }
        for (Direction direction : Direction.values()) {
            DIRECTIONS.put(direction.word(), direction);
        }
        for (SlotAlignment alignment : SlotAlignment.values()) {
            ALIGNMENTS.put(alignment.word(), alignment);
        }
    }
}
