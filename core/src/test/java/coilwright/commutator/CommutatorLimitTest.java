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
}
