package coilwright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects what is wrong with one file. */
final class Problems {
    /** More than this many are not worth reading. */
    private static final int MOST = 50;

    /** More than this many are counted only. */
    private static final int MOST_KEPT = 10_000;

    private final String file;
    private final Set<Problem> list = new LinkedHashSet<>();
    private int notKept;

    Problems(String file) {
        this.file = file;
    }

    /** Notes a problem; one that was noted before is not told again. */
    void add(int line, String field, String message) {
        if (list.size() < MOST_KEPT) {
            list.add(new Problem(file, line, field, message));
        } else {
            notKept++;
        }
    }

    boolean any() {
        return !list.isEmpty();
    }

    /** An exception for this problem alone. */
    BadInputException only(int line, String field, String message) {
        return new BadInputException(List.of(new Problem(file, line, field, message)));
    }

    void throwIfAny() throws BadInputException {
        if (list.isEmpty()) {
            return;
        }
        List<Problem> sorted = new ArrayList<>(list);
        sorted.sort(Comparator.comparingInt(Problem::line));
        if (sorted.size() > MOST) {
            int more = sorted.size() - MOST + notKept;
            sorted = new ArrayList<>(sorted.subList(0, MOST));
            sorted.add(new Problem(file, 0, "", more + " more problems are not shown"));
        }
        throw new BadInputException(sorted);
    }
}
