package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.TruingCut;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CommutatorBasisTest {
    private static Job job(String commutator) throws BadInputException {
        return JobReader.parse("t", """
                        coilwright: 1
                        title: T
                        armature: {slots: 12, bars: 12, poles: 4}
                        winding: {type: lap}
                        commutator: %s
                        """.formatted(commutator));
    }

    @Test
    void whatIsGivenStandsInPlaceOfTheJobs() throws BadInputException {
        Job job = job("{diameter: 48 mm, minimum: 45 mm, undercut: 20 thou}");
        CommutatorReport.Given asInTheJob = CommutatorBasis.of(job, CommutatorBasis.Options.none());
        assertThat(asInTheJob.diameterMm()).hasValue(48);
        assertThat(asInTheJob.minimumMm()).hasValue(45);
        assertThat(asInTheJob.undercutMm()).hasValue(0.508);
        assertThat(asInTheJob.micaMm()).isEmpty();
        assertThat(asInTheJob.newDiameterMm()).isEmpty();
        assertThat(asInTheJob.allowanceMm()).isZero();

        CommutatorReport.Given other = CommutatorBasis.of(
                job,
                new CommutatorBasis.Options(
                        Optional.of(length("47 mm")),
                        Optional.of(length("50 mm")),
                        Optional.empty(),
                        Optional.of(length("0.8 mm")),
                        Optional.empty(),
                        Optional.of(length("50 µm")),
                        TruingCut.Centring.RECENTRED,
                        List.of("brush-maker")));
        assertThat(other.diameterMm()).hasValue(47);
        assertThat(other.newDiameterMm()).hasValue(50);
        assertThat(other.minimumMm()).hasValue(45);
        assertThat(other.micaMm()).hasValue(0.8);
        assertThat(other.allowanceMm()).isEqualTo(0.05);
        assertThat(other.centring()).isEqualTo(TruingCut.Centring.RECENTRED);
        assertThat(other.chosen()).extracting(l -> l.id()).containsExactly("brush-maker");
    }

    @Test
    void micaWiderThanTheBarsArePitchedIsRefused() throws BadInputException {
        // Twelve bars on 20 mm stand 5.2 mm apart.
        Job job = job("{diameter: 20 mm, mica: 5.5 mm}");
        assertThatThrownBy(() -> CommutatorBasis.of(job, CommutatorBasis.Options.none()))
                .hasMessageContaining("leaves no copper");
    }

    private static Quantity length(String text) {
        return Quantity.parse(text, Quantity.Kind.LENGTH);
    }
}
