package coilwright.lesson;

import java.util.List;
import java.util.Random;

/**
 * Chance that is the same on every machine: {@link Random}, whose algorithm its contract lays down, asked for nothing
 * but {@link Random#nextInt(int)}.
 */
final class Dice {
    private final Random random;

    private Dice(long seed) {
        this.random = new Random(seed);
    }

    /** Dice of their own for every exercise, so that none depends on how many others are made. */
    static Dice of(long seed, int grade, Kind kind, int number) {
        long x = seed;
        for (long part : new long[] {grade, kind.ordinal() + 1, number}) {
            x = mix(x * 0x9E3779B97F4A7C15L + part);
        }
        return new Dice(x);
    }

    private static long mix(long x) {
        long z = (x ^ (x >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** A whole number from the least to the most, both included. */
    int from(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    /** Once in so many times. */
    boolean oneIn(int times) {
        return random.nextInt(times) == 0;
    }

    @SafeVarargs
    final <T> T of(T... choices) {
        return choices[random.nextInt(choices.length)];
    }

    <T> T of(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }
}
