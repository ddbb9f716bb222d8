package coilwright.job;

import coilwright.rewind.InsulationBuild;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Arbitrary sections of a job file, made from the records that declare them. */
final class Sections {
    private static final List<String> TEXTS = List.of(
            "a",
            "slot liners",
            "worn, at 3 places",
            "{a}",
            "[a]",
            "a: b",
            "a #b",
            "yes",
            "12",
            "\"",
            "'",
            "- a",
            "é",
            "null",
            "2021-07-12",
            ", ",
            "🧲");
    private static final List<String> SIZES = List.of("18 AWG", "4/0 AWG", "1 mm", "0.85 mm", "19 SWG");

    private static final int TRIES = 5;

    private Sections() {}

    static Arbitrary<Particulars> particulars(int bars) {
        return Arbitraries.randomValue(random -> particulars(random, bars));
    }

    static Particulars particulars(Random random, int bars) {
        return new Particulars(
                maybe(Rating.class, random, bars),
                maybe(WireChoice.class, random, bars),
                maybe(CoreSizes.class, random, bars),
                maybe(CommutatorSizes.class, random, bars),
                maybe(AsFound.class, random, bars),
                maybe(Plan.class, random, bars),
                maybe(AsRewound.class, random, bars),
                random.nextBoolean() ? List.of() : List.of(text(random), text(random)));
    }

    private static <R extends Record> Optional<R> maybe(Class<R> type, Random random, int bars) {
        return random.nextInt(3) == 0 ? Optional.empty() : section(type, random, bars);
    }

    /** A section whose record takes the values; nothing where none was found in a few tries. */
    private static <R extends Record> Optional<R> section(Class<R> type, Random random, int bars) {
        Class<?>[] types = Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        for (int i = 0; i < TRIES; i++) {
            List<Object> values = new ArrayList<>();
            boolean whole = true;
            for (SectionKey key : SectionKey.of(type)) {
                Optional<Object> value = held(key, random, bars);
                whole &= value.isPresent();
                values.add(value.orElse(null));
            }
            if (!whole) {
                continue;
            }
            try {
                return Optional.of(type.getDeclaredConstructor(types).newInstance(values.toArray()));
            } catch (InvocationTargetException e) {
                if (!(e.getCause() instanceof IllegalArgumentException)) {
                    throw new AssertionError(e.getCause());
                }
            } catch (ReflectiveOperationException e) {
                throw new LinkageError(e.getMessage(), e);
            }
        }
        return Optional.empty();
    }

    private static Optional<Object> held(SectionKey key, Random random, int bars) {
        if (key.holder() == SectionKey.Holder.ONE) {
            return value(key, random, bars);
        }
        if (key.holder() == SectionKey.Holder.LIST) {
            List<Object> list = new ArrayList<>();
            for (int i = random.nextInt(4); i > 0; i--) {
                value(key, random, bars).ifPresent(list::add);
            }
            return Optional.of(list);
        }
        Optional<Object> value = random.nextInt(4) == 0 ? Optional.empty() : value(key, random, bars);
        return Optional.of(
                key.type() == int.class
                        ? value.map(v -> OptionalInt.of((Integer) v)).orElse(OptionalInt.empty())
                        : value);
    }

    private static Optional<Object> value(SectionKey key, Random random, int bars) {
        Class<?> type = key.type();
        if (type == Quantity.class) {
            List<String> units = key.measure().value().units();
            int least = key.measure().least() == Measure.Least.OVER_ZERO ? 1 : 0;
            BigDecimal number = BigDecimal.valueOf(least + (long) random.nextInt(30_000), random.nextInt(4));
            boolean negative = key.measure().least() == Measure.Least.NONE && random.nextInt(4) == 0;
            return Optional.of(new Quantity(
                    negative ? number.negate() : number, units.get(random.nextInt(Math.min(3, units.size())))));
        }
        if (type == int.class) {
            int most = key.name().equals("bar") ? bars : key.count().to();
            return Optional.of(
                    key.count().from() + random.nextInt(most - key.count().from() + 1));
        }
        if (type == InsulationBuild.class) {
            return Optional.of(random.nextBoolean() ? InsulationBuild.BARE : InsulationBuild.IEC_GRADE_2);
        }
        if (type.isEnum()) {
            return Optional.of(type.getEnumConstants()[random.nextInt(type.getEnumConstants().length)]);
        }
        if (type == String.class) {
            return Optional.of(key.name().equals("size") ? SIZES.get(random.nextInt(SIZES.size())) : text(random));
        }
        if (type == LocalDate.class) {
            return Optional.of(LocalDate.of(1900, 1, 1).plusDays(random.nextInt(60_000)));
        }
        if (type == BigDecimal.class) {
            return Optional.of(BigDecimal.valueOf(random.nextInt(790), 1));
        }
        if (type == SlotSizes.class) {
            return Optional.of(slot(random));
        }
        return section(type.asSubclass(Record.class), random, bars).map(r -> r);
    }

    /** Sizes drawn at large hardly ever make a slot. */
    private static SlotSizes slot(Random random) {
        List<SlotForm> forms = List.of(SlotForm.values());
        SlotForm form = forms.get(random.nextInt(forms.size()));
        boolean parallel = form == SlotForm.RECTANGULAR || form == SlotForm.ROUND_BOTTOM;
        boolean semiClosed = form == SlotForm.SEMI_CLOSED;
        return new SlotSizes(
                form,
                given(parallel, "6 mm"),
                given(!parallel, "0.25 in"),
                given(!parallel, "4.40 mm"),
                Quantity.parse("1" + random.nextInt(10) + " mm", Quantity.Kind.LENGTH),
                given(!parallel && random.nextBoolean(), "1 mm"),
                given(semiClosed, "2.5 mm"),
                given(semiClosed, "0 mm"),
                given(semiClosed, "1.0 mm"),
                given(random.nextBoolean(), "10 mil"),
                given(random.nextBoolean(), "0 mm"),
                given(random.nextBoolean(), "1 mm"));
    }

    private static Optional<Quantity> given(boolean given, String size) {
        return given ? Optional.of(Quantity.parse(size, Quantity.Kind.LENGTH)) : Optional.empty();
    }

    private static String text(Random random) {
        String a = TEXTS.get(random.nextInt(TEXTS.size()));
        String text = random.nextBoolean() ? a : a + TEXTS.get(random.nextInt(TEXTS.size()));
        return text.isBlank() ? "a" : text;
    }
}
