package coilwright.winding;

import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What holds for every small winding holds for large ones drawn at random. */
class LargeWindingTest {
    @Property(tries = 300)
    void aLapIsSound(
            @ForAll @IntRange(min = 41, max = 200) int slots,
            @ForAll @IntRange(min = 1, max = 6) int u,
            @ForAll @IntRange(min = 1, max = 15) int pairs,
            @ForAll @IntRange(min = 1, max = 6) int plex,
            @ForAll Direction direction,
            @ForAll @IntRange(min = -300, max = 300) int offset,
            @ForAll @IntRange(min = 0, max = 10_000) int where) {
        int span = u + where % (u * (slots - 2) + 1);
        var dead = where % 3 == 0 ? List.<Integer>of() : List.of(1 + where % (slots * u));
        var w = Winding.build(
                Armature.of(slots, slots * u - dead.size(), 2 * pairs),
                new WindingSpec.Regular(WindingType.LAP, plex, direction, CoilSpan.ofPositions(span), dead, offset));
        WindingChecks.regular(w, span);
    }

    @Property(tries = 300)
    void aWaveIsSound(
            @ForAll @IntRange(min = 6, max = 60) int pitch,
            @ForAll @IntRange(min = 1, max = 10) int pairs,
            @ForAll @IntRange(min = 1, max = 4) int plex,
            @ForAll Direction direction,
            @ForAll @IntRange(min = 2, max = 5) int u,
            @ForAll @IntRange(min = -300, max = 300) int offset,
            @ForAll @IntRange(min = 0, max = 10_000) int where) {
        // From the pitch to the bars, and with dead coils up to full slots.
        int bars = pairs * pitch - direction.sign() * plex;
        Assume.that(bars >= 2 * plex && bars >= 2 * u);
        int slots = (bars + u - 1) / u;
        int q = slots * u;
        var dead = new TreeSet<Integer>();
        for (int i = 0; dead.size() < q - bars; i++) {
            dead.add(1 + (where + 7 * i) % q);
        }
        int span = u + where % (u * (slots - 2) + 1);
        var w = Winding.build(
                Armature.of(slots, bars, 2 * pairs),
                new WindingSpec.Regular(
                        WindingType.WAVE, plex, direction, CoilSpan.ofPositions(span), List.copyOf(dead), offset));
        WindingChecks.regular(w, span);
    }

    @Property(tries = 200)
    void aFrogLegIsSound(
            @ForAll @IntRange(min = 1, max = 10) int pairs,
            @ForAll @IntRange(min = 4, max = 30) int slotsPerPair,
            @ForAll @IntRange(min = 1, max = 5) int u,
            @ForAll @IntRange(min = 1, max = 3) int plex,
            @ForAll Direction direction,
            @ForAll @IntRange(min = -300, max = 300) int offset) {
        Assume.that(slotsPerPair * u >= 2 * plex);
        int slots = pairs * slotsPerPair;
        var w = Winding.build(
                Armature.of(slots, slots * u, 2 * pairs),
                new WindingSpec.FrogLeg(plex, direction, CoilSpan.usual(), offset));
        EveryWindingTest.frogLeg(w, Math.max(1, slotsPerPair / 2) * u, plex * direction.sign());
    }

    @Property(tries = 200)
    void aWindingListedCoilByCoilIsTheSameWinding(
            @ForAll @IntRange(min = 4, max = 60) int slots,
            @ForAll @IntRange(min = 1, max = 4) int u,
            @ForAll @IntRange(min = 1, max = 6) int pairs,
            @ForAll @IntRange(min = 1, max = 2) int plex,
            @ForAll Direction direction,
            @ForAll @IntRange(min = -9, max = 9) int offset) {
        var w = Winding.build(
                Armature.of(slots, slots * u, 2 * pairs),
                WindingSpec.lap(plex, direction).withLeadOffset(offset));
        var listed = Winding.build(w.armature(), w.asListed());
        if (!listed.coils().equals(w.coils())) {
            throw WindingChecks.wrong(w.spec(), "listed");
        }
        if (listed.sidesPerSlot() != u) {
            throw WindingChecks.wrong(w.spec(), "sides per slot");
        }
    }
}
