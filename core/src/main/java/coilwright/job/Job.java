package coilwright.job;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.winding.Armature;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One armature on the bench: what a job file holds.
 *
 * @param title what the machine is called, one line
 * @param armature the core and the commutator
 * @param winding what is to be, or was found, wound; whether it can be is known on {@link #build()}
 * @param turns turns per coil, 1 to {@value #MAX_TURNS}; empty where not known
 * @param coilResistance resistance of one coil, over 0; empty where not known
 * @param growler the growler that the armature lies on
 * @param equalizers rings that join bars of one potential; empty for none
 * @param readings what was read, set by set, in the order noted
 * @param particulars what else is known of the machine
 */
public record Job(
        String title,
        Armature armature,
        WindingSpec winding,
        OptionalInt turns,
        Optional<Quantity> coilResistance,
        Growler growler,
        Optional<Equalizers> equalizers,
        List<ReadingSet> readings,
        Particulars particulars) {
    /** Most turns per coil taken. */
    public static final int MAX_TURNS = 10_000;

    /** Temperature at which a coil resistance is taken to be given, °C. */
    public static final double COLD = 20;

    /** Longest title taken, in characters. */
    public static final int MAX_TITLE = 200;

    /**
     * Checks each field.
     *
     * @param title what the machine is called, one line
     * @param armature the core and the commutator
     * @param winding what is to be, or was found, wound; whether it can be is known on {@link #build()}
     * @param turns turns per coil, 1 to {@value #MAX_TURNS}; empty where not known
     * @param coilResistance resistance of one coil, over 0; empty where not known
     * @param growler the growler that the armature lies on
     * @param equalizers rings that join bars of one potential; empty for none
     * @param readings what was read, set by set, in the order noted
     * @param particulars what else is known of the machine
     * @throws IllegalArgumentException when a field is out of its range
     */
    public Job {
        checkTitle(title);
        Objects.requireNonNull(armature);
        Objects.requireNonNull(winding);
        if (turns.isPresent()) {
            checkTurns(turns.getAsInt());
        }
        if (coilResistance.isPresent()) {
            checkCoilResistance(coilResistance.get());
        }
        Objects.requireNonNull(growler);
        Objects.requireNonNull(equalizers);
        readings = List.copyOf(readings);
        for (ReadingSet set : readings) {
            set.feed().ifPresent(f -> checkBars(armature, f.in(), f.out()));
            set.readings().forEach(r -> checkBars(armature, r.from(), r.to()));
        }
        if (particulars.commutator().isPresent()) {
            particulars.commutator().get().checkBars(armature.bars());
        }
    }

    private static void checkBars(Armature armature, int... bars) {
        for (int bar : bars) {
            if (bar != BenchTest.SHAFT) {
                checkBar(bar, armature.bars());
            }
        }
    }

    static void checkBar(int bar, int most) {
        if (bar < 1 || bar > most) {
            throw new IllegalArgumentException("is bar " + bar + ", but bars run from 1 to " + most);
        }
    }

    static void checkDegrees(BigDecimal degrees, int most) {
        if (degrees.abs().compareTo(BigDecimal.valueOf(most)) > 0) {
            throw new IllegalArgumentException("is " + Visible.cut(degrees.toString()) + ", but must be from -" + most
                    + " to " + most + " degrees");
        }
    }

    /**
     * {@return a job of which no more than the winding is known}
     *
     * @param title name of the machine
     * @param armature core and commutator
     * @param winding how it is wound
     */
    public static Job of(String title, Armature armature, WindingSpec winding) {
        return new Job(
                title,
                armature,
                winding,
                OptionalInt.empty(),
                Optional.empty(),
                Growler.USUAL,
                Optional.empty(),
                List.of(),
                Particulars.NONE);
    }

    /**
     * {@return the same job with turns per coil given}
     *
     * @param number turns per coil, at least 1
     */
    public Job withTurns(int number) {
        return new Job(
                title,
                armature,
                winding,
                OptionalInt.of(number),
                coilResistance,
                growler,
                equalizers,
                readings,
                particulars);
    }

    /**
     * {@return the same job with the resistance of a coil given}
     *
     * @param resistance of one coil, from bar to bar
     */
    public Job withCoilResistance(Quantity resistance) {
        return new Job(
                title, armature, winding, turns, Optional.of(resistance), growler, equalizers, readings, particulars);
    }

    /**
     * {@return the same job on another growler}
     *
     * @param other faces of the growler
     */
    public Job withGrowler(Growler other) {
        return new Job(title, armature, winding, turns, coilResistance, other, equalizers, readings, particulars);
    }

    /**
     * {@return the same job with another winding}
     *
     * @param other how it is wound
     */
    public Job withWinding(WindingSpec other) {
        return new Job(title, armature, other, turns, coilResistance, growler, equalizers, readings, particulars);
    }

    /**
     * Builds the winding.
     *
     * @return the winding, checked
     * @throws ImpossibleWindingException when it cannot be wound
     */
    public Winding build() {
        return Winding.build(armature, winding);
    }

    /**
     * {@return the same job with equalizer rings}
     *
     * @param rings how many sets of bars one ring skips
     */
    public Job withEqualizers(Equalizers rings) {
        return new Job(
                title, armature, winding, turns, coilResistance, growler, Optional.of(rings), readings, particulars);
    }

    /**
     * {@return the same job with other readings}
     *
     * @param sets the readings, each set with its test
     * @throws IllegalArgumentException when they name a bar that the armature has not
     */
    public Job withReadings(List<ReadingSet> sets) {
        return new Job(title, armature, winding, turns, coilResistance, growler, equalizers, sets, particulars);
    }

    /**
     * {@return the same job with other particulars}
     *
     * @param other what else is known of the machine
     * @throws IllegalArgumentException when they name a bar that the armature has not
     */
    public Job withParticulars(Particulars other) {
        return new Job(title, armature, winding, turns, coilResistance, growler, equalizers, readings, other);
    }

    /**
     * {@return the armature on the bench, sound, with its equalizer rings; a coil has 1 ohm where its resistance is not
     * known}
     *
     * @throws ImpossibleWindingException when it cannot be wound
     * @throws IllegalArgumentException when equalizers are given but the winding has nothing for them to join
     */
    public BenchArmature benchArmature() {
        return JobBench.sound(this, OptionalDouble.empty());
    }

    /**
     * {@return the same at another temperature, the coil resistance taken to be given at {@value #COLD} °C}
     *
     * @param celsius over −234.5
     * @throws ImpossibleWindingException when it cannot be wound
     * @throws IllegalArgumentException when the temperature is out of range, or equalizers are given but the winding
     *     has nothing for them to join
     */
    public BenchArmature benchArmature(double celsius) {
        return JobBench.sound(this, OptionalDouble.of(celsius));
    }

    static void checkTitle(String title) {
        checkLine(title, "is blank: give the machine a name");
    }

    static void checkLine(String text, String whereBlank) {
        checkLine(text, whereBlank, MAX_TITLE);
    }

    static void checkLine(String text, String whereBlank, int most) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(whereBlank);
        }
        if (text.length() > most) {
            throw new IllegalArgumentException(
                    "is " + text.length() + " characters long, but may have at most " + most);
        }
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (isUnseen(c)) {
                throw new IllegalArgumentException(
                        String.format(Locale.ROOT, "holds the unseen character U+%04X: take it out", c));
            }
        }
    }

    /** Characters that break lines, turn the text about, or cannot be stored. */
    static boolean isUnseen(int c) {
        return Character.isISOControl(c)
                || (c >= 0x202A && c <= 0x202E)
                || (c >= 0x2066 && c <= 0x2069)
                || (c >= 0xD800 && c <= 0xDFFF)
                || c == 0x2028
                || c == 0x2029
                || c == 0xFEFF
                || (c & 0xFFFE) == 0xFFFE;
    }

    static void checkTurns(int turns) {
        if (turns < 1 || turns > MAX_TURNS) {
            throw new IllegalArgumentException("turns is " + turns + ", but must be from 1 to " + MAX_TURNS);
        }
    }

    static void checkCoilResistance(Quantity resistance) {
        if (resistance.kind() != Quantity.Kind.RESISTANCE) {
            throw new IllegalArgumentException(
                    "is \"" + resistance + "\", " + resistance.kind().words() + ", but must be a resistance");
        }
        if (resistance.value().signum() <= 0) {
            throw new IllegalArgumentException("is " + resistance + ", but every coil has some resistance");
        }
    }
}
