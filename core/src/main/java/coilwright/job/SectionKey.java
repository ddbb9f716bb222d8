package coilwright.job;

import java.lang.annotation.Annotation;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One key of a section, as the component of the section's record declares it.
 *
 * @param component of the record
 * @param holder whether it must be there, may be there, or is a list
 * @param type of the value, or of each value in the list
 */
record SectionKey(RecordComponent component, Holder holder, Class<?> type) {
    /** How many values a key holds. */
    enum Holder {
        ONE,
        MAYBE,
        LIST
    }

    /** The keys of a section in order. */
    static List<SectionKey> of(Class<? extends Record> section) {
        List<SectionKey> keys = new ArrayList<>();
        for (RecordComponent component : section.getRecordComponents()) {
            keys.add(of(component));
        }
        return keys;
    }

    private static SectionKey of(RecordComponent component) {
        Class<?> raw = component.getType();
        if (raw == OptionalInt.class) {
            return new SectionKey(component, Holder.MAYBE, int.class);
        }
        if (raw == Optional.class || raw == List.class) {
            Type inner = ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
            return new SectionKey(component, raw == List.class ? Holder.LIST : Holder.MAYBE, (Class<?>) inner);
        }
        return new SectionKey(component, Holder.ONE, raw);
    }

    String name() {
        return component.getName();
    }

    /** Whether its value is a section of its own. */
    boolean isSection() {
        return type.isRecord() && type != Quantity.class;
    }

    /** What it measures; only of a quantity. */
    Measure measure() {
        return annotation(Measure.class);
    }

    /** Its range; only of a whole number. */
    Count count() {
        return annotation(Count.class);
    }

    private <A extends Annotation> A annotation(Class<A> kind) {
        A annotation = component.getAnnotation(kind);
        if (annotation == null) {
            throw new IllegalStateException(
                    component.getDeclaringRecord().getSimpleName() + "." + name() + " lacks its " + kind);
        }
        return annotation;
    }

    /** Whether its value is one of the kinds that a section may hold. */
    boolean isKnownKind() {
        return isSection()
                || type.isEnum()
                || List.of(Quantity.class, int.class, String.class, LocalDate.class, BigDecimal.class)
                        .contains(type);
    }
}
