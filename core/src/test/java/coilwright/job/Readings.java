package coilwright.job;

import coilwright.bench.BenchTest;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Made-up readings for properties. */
final class Readings {
    private Readings() {}

    /** What a meter may show, numbers with or without a unit of the kinds. */
    static Arbitrary<TakenReading.Shown> shown(List<Quantity.Kind> kinds, boolean units) {
        Arbitrary<BigDecimal> numbers = Combinators.combine(
                        Arbitraries.longs().between(-999_999_999_999L, 999_999_999_999L),
                        Arbitraries.integers().between(0, 20))
                .as(BigDecimal::valueOf);
        List<String> symbols = kinds.stream().flatMap(k -> k.units().stream()).toList();
        Arbitrary<Optional<String>> unit = units && !symbols.isEmpty()
                ? Arbitraries.of(symbols).map(Optional::of)
                : Arbitraries.just(Optional.empty());
        Arbitrary<TakenReading.Shown> values =
                Combinators.combine(numbers, unit).as(TakenReading.Value::new);
        return Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(6, values),
                net.jqwik.api.Tuple.of(1, Arbitraries.just(new TakenReading.Gap())),
                net.jqwik.api.Tuple.of(1, Arbitraries.just(new TakenReading.OffScale())));
    }

    /** Two different places, bars or (where asked) a bar and the shaft, either way round. */
    static Arbitrary<BenchTest.Pair> pairs(int bars, boolean toShaft) {
        Arbitrary<Integer> one = Arbitraries.integers().between(1, bars);
        Arbitrary<Boolean> swapped = Arbitraries.of(true, false);
        Arbitrary<Integer> other = Arbitraries.integers().between(1, bars - 1);
        return Combinators.combine(one, other, swapped).as((a, step, swap) -> {
            int b = toShaft ? BenchTest.SHAFT : 1 + (a - 1 + step) % bars;
            return swap ? new BenchTest.Pair(b, a) : new BenchTest.Pair(a, b);
        });
    }

    static Arbitrary<ReadingSet> sets(int bars) {
        Arbitrary<LocalDate> dates =
                Arbitraries.integers().between(-20_000, 40_000).map(LocalDate::ofEpochDay);
        Arbitrary<BigDecimal> degrees = Arbitraries.bigDecimals()
                .between(new BigDecimal("-3600"), new BigDecimal("3600"))
                .ofScale(2);
        Arbitrary<String> meters = Arbitraries.of("bench meter 2", "yes", "a: b", "1921", "Ω", "# 3");
        return Arbitraries.of(TestKind.values()).flatMap(test -> {
            boolean ownUnits = !test.kinds().isEmpty();
            List<String> symbols =
                    test.kinds().stream().flatMap(k -> k.units().stream()).toList();
            Arbitrary<Optional<String>> unit = symbols.isEmpty()
                    ? Arbitraries.just(Optional.empty())
                    : Arbitraries.of(symbols).map(Optional::of);
            Arbitrary<Optional<ReadingSet.GivenFeed>> feed = test.fed()
                    ? Combinators.combine(
                                    pairs(bars, false),
                                    Arbitraries.bigDecimals()
                                            .between(new BigDecimal("0.001"), new BigDecimal("500"))
                                            .ofScale(3))
                            .as((p, amps) -> Optional.of(new ReadingSet.GivenFeed(p.from(), p.to(), amps)))
                    : Arbitraries.just(Optional.empty());
            Arbitrary<List<TakenReading>> readings = Combinators.combine(
                            pairs(bars, test.toShaft()),
                            Arbitraries.oneOf(shown(test.kinds(), false), shown(test.kinds(), ownUnits)))
                    .as((p, s) -> new TakenReading(p.from(), p.to(), s))
                    .list()
                    .ofMaxSize(6);
            return Combinators.combine(
                            dates.optional(),
                            feed,
                            degrees,
                            unit,
                            meters.optional(),
                            Arbitraries.of("20 °C", "-4.5 °C", "75.0 degF").optional(),
                            readings)
                    .as((date, f, angle, u, meter, celsius, list) -> new ReadingSet(
                            date,
                            test,
                            f,
                            test == TestKind.GROWLER ? Optional.of(angle) : Optional.empty(),
                            test == TestKind.GROWLER_TURNED ? Optional.of(angle) : Optional.empty(),
                            u,
                            meter,
                            celsius.map(t -> Quantity.parse(t, Quantity.Kind.TEMPERATURE)),
                            list))
                    .flatMap(set -> Arbitraries.of(ReadingSet.Stage.values()).map(set::at));
        });
    }
}
