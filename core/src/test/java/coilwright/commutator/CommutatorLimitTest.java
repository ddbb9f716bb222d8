package coilwright.commutator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.commutator.CommutatorLimit.Quantity;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CommutatorLimitTest {
    /** Each value against the inches printed beside it, so that no slip in turning inches into millimetres passes. */
    @ParameterizedTest
    @CsvSource({
        "small-engine-starter, 0.00197",
        "small-engine-starter-new, 0.0008",
        "fork-lift-starter, 0.008",
        "fork-lift-starter-turned, 0.0020",
        "generator-depth, 0.032",
        "truck-depth, 0.03125",
        "exciter-span, 0.002",
        "exciter-depth, 0.09375",
        "starter-generator, 0.0008",
        "starter-generator-depth, 0.055",
        "starter-generator-width, 0.042",
        "dc-machine-depth, 0.03125",
        "brush-maker, 0.002",
        "ar100, 0.003",
        "practice-depth, 0.030"
    })
    void inches(String id, double inches) {
        CommutatorLimit limit = CommutatorLimit.of(id);
        assertThat(limit.highMm().orElseThrow()).isCloseTo(inches * 25.4, within(0.0033));
    }

    @Test
    void everyLimitHasItsSource() {
        var ids = new LinkedHashSet<String>();
        for (CommutatorLimit l : CommutatorLimit.all()) {
            assertThat(ids.add(l.id())).as(l.id()).isTrue();
            assertThat(l.source()).as(l.id()).isNotBlank();
            assertThat(l.printed()).as(l.id()).isNotBlank();
        }
        assertThat(CommutatorLimit.of("ar100").trust()).isEqualTo(CommutatorLimit.Trust.FROM_MEMORY);
        assertThat(CommutatorLimit.of("practice-depth").trust()).isEqualTo(CommutatorLimit.Trust.FROM_MEMORY);
        for (Quantity q : Quantity.values()) {
            assertThat(CommutatorLimit.on(q)).as(q.name()).isNotEmpty();
        }
        // The misprint is told.
        assertThat(CommutatorLimit.of("small-engine-starter").note()).contains("misprinted");
    }

    @Test
    void verdictsDifferByMachineAndAllAreGiven() {
        // Swings 0.08 mm in all, 0.04 mm bar to bar at most.
        RunOut r = RunOut.of(
                24,
                IntStream.rangeClosed(1, 24)
                        .mapToObj(b -> new Reading(b, 0.04 * Math.cos(2 * Math.PI * (b - 1) / 24)))
                        .toList());
        List<CommutatorVerdict> all = CommutatorVerdict.runOut(r);
        assertThat(all)
                .extracting(v -> v.limit().id(), CommutatorVerdict::pass)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("small-engine-starter", false),
                        org.assertj.core.groups.Tuple.tuple("fork-lift-starter", true),
                        org.assertj.core.groups.Tuple.tuple("car-starter-1997", false),
                        org.assertj.core.groups.Tuple.tuple("car-starter-1994", true),
                        // Six of 24 bars, at best from 60° to 135°: 0.04·(cos 60° − cos 135°) = 0.0483 mm, under 0.05.
                        org.assertj.core.groups.Tuple.tuple("exciter-span", true));
        assertThat(all)
                .filteredOn(v -> v.limit().id().equals("exciter-span"))
                .singleElement()
                .extracting(CommutatorVerdict::valueMm)
                .satisfies(v -> assertThat(v).isCloseTo(0.04 * (0.5 + Math.sqrt(0.5)), within(1e-9)));
        assertThat(all.get(0).text()).contains("fails").contains("TM 9-2815-255-24 (read in the source)");
    }

    @Test
    void undercutAfterTheCut() {
        CommutatorLimit practice = CommutatorLimit.of("practice-depth");
        CommutatorLimit least = CommutatorLimit.of("car-starter-1997-undercut");
        Undercut deepEnough = Undercut.advise(0.5, 0.1, 0.6, practice, least);
        assertThat(deepEnough.needed()).isFalse();
        assertThat(deepEnough.depthAfterCutMm()).isCloseTo(0.4, within(1e-12));
        Undercut needed = Undercut.advise(0.25, 0.1, 0.6, practice, least);
        assertThat(needed.needed()).isTrue();
        assertThat(needed.lowMm()).isEqualTo(0.762);
        assertThat(needed.widthLowMm()).isEqualTo(0.6);
        assertThat(needed.text())
                .contains("0.15 mm under the bars")
                .contains("0.762 mm deep (about 0.030 in, common practice (from memory))");
        assertThat(Undercut.advise(0.1, 0, 0.6, CommutatorLimit.of("dc-machine-depth"), least)
                        .text())
                .contains("not more than 0.794 mm deep");
        assertThatThrownBy(() -> Undercut.advise(0.1, 0, 0.6, least, least))
                .hasMessageContaining("is on undercut limit, not on undercut depth");
    }

    @Test
    void undercutAndWearVerdicts() {
        assertThat(CommutatorVerdict.undercut(0.3))
                .extracting(v -> v.limit().id(), CommutatorVerdict::pass)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("starter-generator-undercut", false),
                        org.assertj.core.groups.Tuple.tuple("car-starter-1997-undercut", true));
        assertThat(CommutatorVerdict.wear(OptionalDouble.of(32), 29.9))
                .singleElement()
                .matches(v -> !v.pass());
        assertThat(CommutatorVerdict.wear(OptionalDouble.empty(), 29.9)).isEmpty();
    }

    @Test
    void limitsHoldToATenthOfAMicrometre() {
        CommutatorLimit most = CommutatorLimit.of("car-starter-1997");
        assertThat(most.admits(0.05)).isTrue();
        assertThat(most.admits(0.05009)).isTrue();
        assertThat(most.admits(0.05011)).isFalse();
        CommutatorLimit least = CommutatorLimit.of("car-starter-1997-undercut");
        assertThat(least.admits(0.2)).isTrue();
        assertThat(least.admits(0.19991)).isTrue();
        assertThat(least.admits(0.19989)).isFalse();
    }

    @Test
    void aLimitHasAnEnd() {
        assertThatThrownBy(() -> limit(OptionalDouble.empty(), OptionalDouble.empty()))
                .hasMessage("limit own has neither a least nor a greatest value: give one");
        assertThat(limit(OptionalDouble.empty(), OptionalDouble.of(1)).admits(0.4))
                .isTrue();
        assertThatThrownBy(() -> CommutatorLimit.of("nobody"))
                .hasMessageStartingWith("there is no limit \"nobody\": choose one of small-engine-starter-new, ");
        assertThat(Quantity.RUN_OUT_SIX_BARS.word()).isEqualTo("run-out-six-bars");
        assertThat(Quantity.RUN_OUT_SIX_BARS.words()).isEqualTo("change within six bars");
        assertThat(Quantity.DIAMETER_WEAR.isRunOut()).isFalse();
    }

    private static CommutatorLimit limit(OptionalDouble low, OptionalDouble high) {
        return new CommutatorLimit(
                "own",
                "this machine",
                Quantity.UNDERCUT_DEPTH,
                low,
                high,
                "as printed",
                "its manual",
                "",
                CommutatorLimit.Trust.READ,
                "");
    }

    @Test
    void theAdviceOnUndercutting() {
        CommutatorLimit least = CommutatorLimit.of("starter-generator-undercut");
        // 0.5 mm less a cut of 0.2 mm is under the 0.015 in (0.381 mm) of TM 10-4320-342-24.
        Undercut again = Undercut.advise(0.5, 0.2, 0.6, CommutatorLimit.of("generator-depth"), least);
        assertThat(again.widthHighMm()).isCloseTo(0.6762, within(1e-12));
        assertThat(again.text())
                .isEqualTo("undercut: after the cut the mica lies 0.3 mm under the bars, and 0.381 mm is the least"
                        + " (TM 10-4320-342-24 (read in the source)). Cut 0.635 mm to 0.813 mm deep (0.025-0.032 in,"
                        + " TM 10-3930-628-34 and Army Ordnance subcourse OD0010 (read in the source)), the full width"
                        + " of the mica, leaving no fins at the walls; a saw of 0.6 mm to 0.676 mm (common practice)."
                        + " Then bevel the bar edges lightly and brush out the slots.");
        Undercut enough = Undercut.advise(0.5, 0, 0.6, limit(OptionalDouble.of(0.4), OptionalDouble.empty()), least);
        assertThat(enough.text())
                .startsWith("no undercut needed: after the cut the mica lies 0.5 mm under the bars (TM 10-4320-342-24"
                        + " (read in the source)). If it is cut, cut at least 0.4 mm deep (as printed, its manual (read"
                        + " in the source)), the full width");
        assertThat(enough.highMm()).isInfinite();
        // Mica that the tool just reaches is turned with the bars.
        assertThat(Undercut.advise(0.2, 0.2, 0.6, CommutatorLimit.of("generator-depth"), least)
                        .text())
                .contains("the mica lies level with the bars where most is taken off, and 0.381 mm is the least");
        assertThatThrownBy(() -> Undercut.advise(
                        0.1, 0, 0.6, CommutatorLimit.of("practice-depth"), CommutatorLimit.of("practice-depth")))
                .hasMessage("limit practice-depth is on undercut depth, not on undercut limit: choose another");
    }

    @Test
    void verdictsInWords() {
        assertThat(CommutatorVerdict.runOut(
                        RunOut.of(3, List.of(new Reading(1, 0), new Reading(2, 0.05), new Reading(3, 0.01)))))
                .filteredOn(v -> v.limit().id().startsWith("small-engine-starter")
                        || v.limit().id().equals("car-starter-1997"))
                .extracting(CommutatorVerdict::text)
                .containsExactly(
                        "0.05 mm fails: small engine starter, 0.0008 in (0.02 mm); TM 9-2815-255-24 (read in the source)",
                        "0.05 mm passes: small engine starter, 0.00197 in (0.5 mm) (the millimetres are misprinted:"
                                + " 0.00197 in is 0.05 mm); TM 9-2815-255-24 (read in the source)",
                        "0.05 mm passes: car starter, 1997, 0.05 mm; Acura NSX service data, starter, 1997 (read in the"
                                + " source)");
        assertThat(CommutatorVerdict.wear(OptionalDouble.of(32), 30.1))
                .singleElement()
                .matches(CommutatorVerdict::pass)
                .satisfies(v -> assertThat(v.valueMm()).isCloseTo(1.9, within(1e-12)));
    }
}
