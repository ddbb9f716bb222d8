package coilwright.job;

import coilwright.winding.Armature;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
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
 */
public record Job(
        String title,
        Armature armature,
        WindingSpec winding,
        OptionalInt turns,
        Optional<Quantity> coilResistance,
        Growler growler) {
    /** Most turns per coil taken. */
    public static final int MAX_TURNS = 10_000;

    /** Longest title taken, in characters. */
    public static final int MAX_TITLE = 200;

    /**
     * Checks each field.
     *
     * @throws IllegalArgumentException when a field is out of its range
     */
    public Job {
        checkTitle(title);
        Objects.requireNonNull(armature);
        Objects.requireNonNull(winding);
        turns.ifPresent(Job::checkTurns);
        coilResistance.ifPresent(Job::checkCoilResistance);
        Objects.requireNonNull(growler);
    }

    /** A job of which no more than the winding is known. */
    public static Job of(String title, Armature armature, WindingSpec winding) {
        return new Job(title, armature, winding, OptionalInt.empty(), Optional.empty(), Growler.USUAL);
    }

    /** The same job with turns per coil given. */
    public Job withTurns(int number) {
        return new Job(title, armature, winding, OptionalInt.of(number), coilResistance, growler);
    }

    /** The same job with the resistance of a coil given. */
    public Job withCoilResistance(Quantity resistance) {
        return new Job(title, armature, winding, turns, Optional.of(resistance), growler);
    }

    /** The same job on another growler. */
    public Job withGrowler(Growler other) {
        return new Job(title, armature, winding, turns, coilResistance, other);
    }

    /** The same job with another winding. */
    public Job withWinding(WindingSpec other) {
        return new Job(title, armature, other, turns, coilResistance, growler);
    }

    /**
     * Builds the winding.
     *
     * @throws ImpossibleWindingException when it cannot be wound
     */
    public Winding build() {
        return Winding.build(armature, winding);
    }

    static void checkTitle(String title) {
        if (title.isBlank()) {
            throw new IllegalArgumentException("is blank: give the machine a name");
        }
        if (title.length() > MAX_TITLE) {
            throw new IllegalArgumentException(
                    "is " + title.length() + " characters long, but may have at most " + MAX_TITLE);
        }
        for (int i = 0; i < title.length(); i += Character.charCount(title.codePointAt(i))) {
            int c = title.codePointAt(i);
            if (isUnseen(c)) {
                throw new IllegalArgumentException(
                        String.format(Locale.ROOT, "holds the unseen character U+%04X: take it out", c));
            }
        }
    }

    /** Characters that break lines, turn the text about, or cannot be stored. */
    private static boolean isUnseen(int c) {
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
