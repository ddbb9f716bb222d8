package coilwright.job;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant. */
public final class NearWord {
    private NearWord() {}

    /**
     * {@return the nearest of the known words, where one is near: at most a third of its letters wrong, and at most
     * three}
     *
     * @param word as it was typed
     * @param known the words there are
     */
    public static Optional<String> of(String word, Collection<String> known) {
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String candidate : known) {
            int d = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (d < least && d <= Math.min(3, Math.max(1, candidate.length() / 3))) {
                least = d;
                best = candidate;
            }
        }
        return Optional.ofNullable(best);
    }

    /** A question whether the nearest of the known words is meant; something else to say where none is near. */
    static String question(String word, Collection<String> known, String otherwise) {
        return of(word, known).map(near -> "did you mean \"" + near + "\"?").orElse(otherwise);
    }

    /** Letters to add, drop, change, or swap with a neighbour. */
    static int distance(String a, String b) {
        if (Math.abs(a.length() - b.length()) > 3) {
            return 4;
        }
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(d[i - 1][j - 1] + change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
