package coilwright.rewind;

import coilwright.winding.References;
import java.util.Objects;

/**
 * Where a value comes from.
 *
 * @param title of the standard, book or practice
 * @param edition year or edition; empty where there is none
 * @param trust how far it may be trusted
 */
public record Source(String title, String edition, Trust trust) {
    /**
     * Checks that all is given.
     *
     * @param title of the standard, book or practice
     * @param edition year or edition; empty where there is none
     * @param trust how far it may be trusted
     */
    public Source {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(edition, "edition");
        Objects.requireNonNull(trust, "trust");
    }

    /** By arithmetic. */
    static Source arithmetic() {
        return new Source(References.ARITHMETIC.title(), "", Trust.DERIVED);
    }

    /** Common practice of the trade. */
    static Source practice() {
        return new Source(References.COMMON_PRACTICE.title(), "", Trust.FROM_MEMORY);
    }

    static Source read(References reference) {
        return new Source(reference.title(), "", Trust.READ);
    }

    /** {@return title, edition and trust as printed beside a value} */
    public String cite() {
        return title + (edition.isEmpty() ? "" : ", " + edition) + " (" + trust.word() + ")";
    }
}
