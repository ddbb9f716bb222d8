package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchArmature;
import coilwright.bench.Bond;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerBlade;
import coilwright.bench.Point;
import coilwright.bench.ResistanceTest;
import coilwright.fault.Identification.Answer;
import coilwright.fault.Identification.Fit;
import coilwright.fault.Identification.Known;
import coilwright.fault.Identification.Next;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class IdentificationTest {
    private static final List<Winding> MANY = SmallWindings.of(7, 14, 2, 6, 3);

    @Provide
    Arbitrary<Winding> windings() {
        return Arbitraries.of(MANY);
    }

    private static Known counted(int slots, int bars) {
        return new Known(slots, bars, OptionalInt.empty(), OptionalInt.empty(), List.of());
    }

    private static List<String> words(Answer answer) {
        return answer.fits().stream().map(Fit::words).toList();
    }

    @Example
    void whatIsNotThereIsRefused() {
        Known known = counted(12, 24);
        List<BenchSighting> noBar = List.of(
                BenchSighting.TracedCoil.onBars(25, 1),
                BenchSighting.TracedCoil.onBars(1, 25),
                new BenchSighting.Continuity(25, 1, true),
                new BenchSighting.Continuity(1, 25, false),
                new BenchSighting.Resistance(25, 1, 0.1),
                new BenchSighting.Resistance(1, 25, 0.1));
        for (BenchSighting s : noBar) {
            assertThatThrownBy(() -> known.with(s)).hasMessage("there is no bar 25: bars run from 1 to 24");
        }
        for (int slot : new int[] {0, 13}) {
            for (boolean top : new boolean[] {true, false}) {
                var traced = new BenchSighting.TracedCoil(
                        OptionalInt.of(top ? slot : 1), OptionalInt.of(top ? 1 : slot), 1, 2);
                assertThatThrownBy(() -> known.with(traced))
                        .hasMessage("there is no slot " + slot + ": slots run from 1 to 12");
            }
        }
        assertThatThrownBy(() -> known.with(BenchSighting.TracedCoil.onBars(0, 1)))
                .hasMessage("there is no bar 0: bars run from 1 to 24");
        for (BenchSighting s :
                List.of(new BenchSighting.Continuity(5, 5, true), new BenchSighting.Resistance(5, 5, 0.1))) {
            assertThatThrownBy(() -> known.with(s))
                    .hasMessage("bar 5 is measured against itself: name two different bars");
        }
        var last = new BenchSighting.TracedCoil(OptionalInt.of(12), OptionalInt.of(1), 24, 1);
        assertThat(known.with(last).sightings()).containsExactly(last);
        for (int span : new int[] {0, 12}) {
            assertThatThrownBy(() -> new Known(12, 24, OptionalInt.empty(), OptionalInt.of(span), List.of()))
                    .hasMessage("the coil throw spans " + span + " slots, but 12 slots allow 1 to 11");
        }
        assertThat(new Known(12, 24, OptionalInt.of(2), OptionalInt.of(11), List.of()).throwSlots())
                .hasValue(11);
    }

    @Example
    void seventeenSlotsOnFourPolesTracedBarOneToTen() {
        Known known = new Known(
                17, 17, OptionalInt.of(4), OptionalInt.of(4), List.of(BenchSighting.TracedCoil.onBars(1, 10)));
        Answer answer = Identification.of(known);
        // (17 + 1)/2 = 9 bars on.
        assertThat(words(answer)).containsExactly("simplex wave, progressive, 4 poles");
        assertThat(answer.next()).isEmpty();
        assertThat(answer.fits().get(0).why())
                .contains(
                        "a wave coil's leads land (17 + 1)/2 = 9 bars apart",
                        "coil throw 1-5 spans 4 slots, the pole pitch is 4.25");
        assertThat(answer.excluded())
                .anySatisfy(
                        e -> assertThat(e.reason()).contains("9 bars on, but a coil of this winding lands 8 bars on"));
    }

    @Example
    void twentyFourOfBothOnFourPolesIsALapOfWhichTheLampTellsThePlex() {
        Known known = new Known(24, 24, OptionalInt.of(4), OptionalInt.of(6), List.of());
        Answer open = Identification.of(known);
        assertThat(words(open))
                .contains("simplex lap, progressive, 4 poles", "duplex lap, progressive, 4 poles")
                .doesNotContain("simplex wave, progressive, 4 poles");
        Next next = open.next().orElseThrow();
        assertThat(next.outcomes()).hasSizeGreaterThan(1);
        Answer parted = Identification.of(known.with(new BenchSighting.Continuity(1, 2, false)));
        assertThat(parted.fits())
                .isNotEmpty()
                .allSatisfy(
                        f -> assertThat(f.winding().closures().orElseThrow()).isGreaterThan(1));
        assertThat(words(parted)).contains("duplex lap, progressive, 4 poles");
    }

    /** Between neighbouring bars lie P/2 coils of a wave: 2r(K − 2)/K on 4 poles, against r(K − 1)/K of a lap. */
    @Example
    void resistanceTellsAWaveFromALap() {
        double wave12 = 2.0 * (17 - 2) / 17;
        // Bars 1 and 10 hold one coil of the wave, but 8 or 9 of a lap.
        double wave110 = 16.0 / 17;
        Known known = new Known(
                17,
                17,
                OptionalInt.of(4),
                OptionalInt.empty(),
                List.of(
                        new BenchSighting.Resistance(1, 2, 0.031 * wave12),
                        new BenchSighting.Resistance(1, 10, 0.031 * wave110)));
        assertThat(words(Identification.of(known)))
                .contains("simplex wave, progressive, 4 poles", "simplex wave, retrogressive, 4 poles")
                .doesNotContain("simplex lap, progressive, 4 poles");
    }

    @Example
    void nothingFitsSaysWhyOfEach() {
        Answer answer = Identification.of(new Known(
                12, 12, OptionalInt.of(4), OptionalInt.empty(), List.of(BenchSighting.TracedCoil.onBars(1, 7))));
        assertThat(answer.fits()).isEmpty();
        assertThat(answer.next()).isEmpty();
        assertThat(answer.excluded())
                .hasSizeGreaterThan(6)
                .allSatisfy(e -> assertThat(e.reason()).isNotBlank());
    }

    @Example
    void badSightingsAreRefused() {
        assertThatThrownBy(() -> counted(12, 12).with(new BenchSighting.Continuity(1, 13, true)))
                .hasMessage("there is no bar 13: bars run from 1 to 12");
        assertThatThrownBy(() -> counted(12, 12).with(new BenchSighting.Resistance(4, 4, 1)))
                .hasMessageContaining("bar 4 is measured against itself");
        assertThatThrownBy(() -> new BenchSighting.Resistance(1, 2, 0)).hasMessageContaining("must be over 0");
        assertThatThrownBy(() -> new Known(12, 12, OptionalInt.empty(), OptionalInt.of(12), List.of()))
                .hasMessageContaining("12 slots allow 1 to 11");
        Known twoThrows = new Known(
                12,
                12,
                OptionalInt.empty(),
                OptionalInt.of(3),
                List.of(new BenchSighting.TracedCoil(OptionalInt.of(1), OptionalInt.of(5), 1, 2)));
        assertThatThrownBy(() -> Identification.of(twoThrows))
                .hasMessageContaining("the coil throw is given as 3 slots");
    }

    private static final double COIL = 0.037;

    private static boolean isTruth(Fit fit, Winding truth) {
        return fit.winding().type() == truth.type()
                && fit.winding().armature().poles() == truth.armature().poles()
                && fit.plex() == truth.sets().get(0).plex().orElseThrow()
                && fit.direction() == truth.sets().get(0).direction().orElseThrow()
                && fit.winding().deadCoils().size() == truth.deadCoils().size();
    }

    /** True sightings of a winding, with a coil resistance and meter errors of their own. */
    private static List<BenchSighting> sightings(Winding w, Random random) {
        List<BenchSighting> out = new ArrayList<>();
        int k = w.armature().bars();
        ResistanceTest test = ResistanceTest.of(BenchArmature.sound(w, COIL));
        int many = random.nextInt(5);
        for (int i = 0; i < many; i++) {
            int a = 1 + random.nextInt(k);
            int b = 1 + random.nextInt(k);
            Coil c = w.liveCoils().get(random.nextInt(w.liveCoils().size()));
            OptionalDouble ohms = a == b ? OptionalDouble.empty() : test.between(a, b);
            switch (random.nextInt(3)) {
                case 0 ->
                    out.add(
                            random.nextBoolean()
                                    ? BenchSighting.TracedCoil.onBars(
                                            c.topBar().getAsInt(), c.bottomBar().getAsInt())
                                    : new BenchSighting.TracedCoil(
                                            OptionalInt.of(c.top().slot()),
                                            OptionalInt.of(c.bottom().slot()),
                                            c.topBar().getAsInt(),
                                            c.bottomBar().getAsInt()));
                case 1 -> {
                    if (a != b) {
                        out.add(new BenchSighting.Continuity(a, b, ohms.isPresent()));
                    }
                }
                default -> {
                    if (ohms.isPresent()) {
                        double error = 1 + 0.09 * (random.nextDouble() - 0.5);
                        out.add(new BenchSighting.Resistance(a, b, ohms.getAsDouble() * error));
                    }
                }
            }
        }
        return out;
    }

    @Property(tries = 400)
    void theTrueWindingIsAlwaysAmongThemAndTheNextSightingSplits(
            @ForAll("windings") Winding truth, @ForAll Random random) {
        List<BenchSighting> seen = sightings(truth, random);
        if (truth.type() == WindingType.FROG_LEG) {
            // Its wave coils span otherwise than its lap coils, so tracing one to its slots gives another throw.
            seen.removeIf(s -> s instanceof BenchSighting.TracedCoil);
        }
        Known known = new Known(
                truth.armature().slots(),
                truth.armature().bars(),
                random.nextBoolean() ? OptionalInt.of(truth.armature().poles()) : OptionalInt.empty(),
                random.nextBoolean() ? truth.pitches().orElseThrow().throwSlots() : OptionalInt.empty(),
                seen);
        Electrical electrical = new Electrical(truth);
        for (int round = 0; ; round++) {
            Answer answer = Identification.of(known);
            assertThat(answer.fits())
                    .as("%s on %s from %s", truth.spec(), truth.armature(), known)
                    .filteredOn(f -> isTruth(f, truth))
                    .hasSize(1);
            if (answer.next().isEmpty()) {
                return;
            }
            Next next = answer.next().get();
            assertThat(next.outcomes()).hasSizeGreaterThan(1);
            next.outcomes().forEach(o -> assertThat(o.fits()).isNotEmpty());
            assertThat(next.outcomes().stream().flatMap(o -> o.fits().stream()).distinct())
                    .hasSize(answer.fits().size());
            Known more = observed(known, next, truth, electrical);
            int left = Identification.of(more).fits().size();
            assertThat(left).isLessThan(answer.fits().size());
            known = more;
            assertThat(round).isLessThan(12);
        }
    }

    private static Known observed(Known known, Next next, Winding truth, Electrical e) {
        int bar = next.bars().isEmpty() ? 0 : next.bars().get(0);
        return switch (next.kind()) {
            case "poles" -> known.withPoles(truth.armature().poles());
            case "continuity" -> {
                int other = next.bars().get(1);
                yield known.with(new BenchSighting.Continuity(
                        bar, other, e.resistance(bar, other).isPresent()));
            }
            case "resistance-ratio" ->
                known.with(new BenchSighting.Resistance(
                                bar,
                                next.bars().get(1),
                                COIL * e.resistance(bar, next.bars().get(1)).orElseThrow()))
                        .with(new BenchSighting.Resistance(
                                next.bars().get(2),
                                next.bars().get(3),
                                COIL
                                        * e.resistance(
                                                        next.bars().get(2),
                                                        next.bars().get(3))
                                                .orElseThrow()));
            case "blade" ->
                known.with(new BenchSighting.BladeSlots(e.bladeSlots().orElseThrow()));
            case "trace" -> {
                Coil c = truth.liveCoils().stream()
                        .filter(x -> x.topBar().getAsInt() == bar)
                        .findFirst()
                        .orElseThrow();
                yield known.with(
                        BenchSighting.TracedCoil.onBars(bar, c.bottomBar().getAsInt()));
            }
            default -> throw new AssertionError(next.kind());
        };
    }

    /** Slots with net ampere-conductors of the coils joined into a loop, by the model of the growler. */
    @Example
    void bladeCountsAgreeWithTheGrowler() {
        int compared = 0;
        for (Winding w : List.of(
                Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE)),
                Winding.build(Armature.of(33, 33, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)),
                Winding.build(Armature.of(32, 32, 6), WindingSpec.wave(1, Direction.PROGRESSIVE)),
                Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)))) {
            var joined = BenchArmature.sound(w, 1).with(Bond.direct(Point.bar(1), Point.bar(2)));
            List<Integer> hums = GrowlerBlade.slots(joined, Growler.USUAL);
            assertThat(hums).hasSize(new Electrical(w).bladeSlots().orElseThrow());
            compared++;
        }
        assertThat(compared).isEqualTo(4);
        // Positions on a wave are as many as the poles, for a short between bars: common practice, from memory.
        assertThat(new Electrical(Winding.build(Armature.of(32, 32, 6), WindingSpec.wave(1, Direction.PROGRESSIVE)))
                        .bladeSlots())
                .hasValue(6);
    }
}
