package coilwright.job;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** The words that job files use for the constants of an enumeration. */
final class Words {
    private Words() {}

    /** Small letters with hyphens: {@code STEEL_WIRE} is {@code steel-wire}. */
    static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Every constant by its word, in order. */
    static Map<String, Enum<?>> all(Class<?> type) {
        Map<String, Enum<?>> words = new LinkedHashMap<>();
        for (Object constant : type.getEnumConstants()) {
            words.put(of((Enum<?>) constant), (Enum<?>) constant);
        }
        return words;
    }
}
