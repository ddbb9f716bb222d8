package coilwright.commutator;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The smallest cut that cleans up every bar read.
 *
 * <p>The tool must come down to the lowest bar. Depths are on the radius unless a name says diameter.
 *
 * @param centring how the commutator runs in the lathe
 * @param depthMm infeed from first touch on the highest bar to a clean surface, on the radius, mm; with no further
 *     allowance it equals the total indicator reading in that centring
 * @param lowestCutMm taken off the lowest bar, on the radius, mm: the further allowance alone
 * @param diameterBeforeMm over the mean of the bars, mm
 * @param diameterAfterMm clean, mm
 * @param minimumMm least diameter allowed, where known
 */
public record TruingCut(
        Centring centring,
        double depthMm,
        double lowestCutMm,
        double diameterBeforeMm,
        double diameterAfterMm,
        OptionalDouble minimumMm) {

    /** How the commutator runs in the lathe. */
    public enum Centring {
        /** On the bearings or centres it was read on: the eccentricity is turned away too. */
        AS_READ,
        /** Set to run true to itself: only its own shape is turned away. It will then run out on other centres. */
        RECENTRED;

        /** {@return the word in files and scripts} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * Plans the cut.
     *
     * @param runOut readings
     * @param centring how it will run in the lathe
     * @param diameterMm over the commutator now, mean over the bars, mm
     * @param allowanceMm taken off the lowest bar beyond a bare clean-up, on the radius, mm; 0 for none
     * @param minimumMm least diameter allowed, where known
     * @return the smallest cut that cleans up
     * @throws IllegalArgumentException when a size is out of range
     */
    public static TruingCut plan(
            RunOut runOut, Centring centring, double diameterMm, double allowanceMm, OptionalDouble minimumMm) {
        Text.positive("commutator diameter", diameterMm);
        Text.notNegative("allowance", allowanceMm);
        minimumMm.ifPresent(m -> Text.positive("minimum diameter", m));
        boolean recentred = centring == Centring.RECENTRED;
        double high = recentred
                ? runOut.highest(true).residualMm()
                : runOut.highest(false).heightMm() - runOut.meanMm();
        double low = recentred
                ? runOut.lowest(true).residualMm()
                : runOut.lowest(false).heightMm() - runOut.meanMm();
        double after = diameterMm + 2 * (low - allowanceMm);
        if (after <= 0) {
            throw new IllegalArgumentException("the lowest bar lies " + Text.mm(-low)
                    + " under the mean of a commutator of " + Text.mm(diameterMm)
                    + ": check the diameter and the unit of the readings");
        }
        return new TruingCut(centring, high - low + allowanceMm, allowanceMm, diameterMm, after, minimumMm);
    }

    /** {@return what to mind at the lathe and when undercutting; common practice of the trade} */
    public static List<String> cautions() {
        return List.of(
                "Lathe: eye protection, no gloves, loose sleeves or rings, the work turned over by hand first; follow"
                        + " the lathe's own rules and local codes, and leave it to trained people.",
                "Mica dust and fine copper: draw the dust off at the tool, wear a dust mask, do not blow it about; keep"
                        + " it out of the winding (cover the coils).",
                "No file, steel scraper or screwdriver between the soft copper bars: it drags copper across the mica"
                        + " and shorts them. A sharp saw of the mica's width, then a brush.",
                "Turn off only the few thousandths that clean up, with a sharp tool and light cuts: copper taken off"
                        + " does not come back.",
                "When all is cut, look for copper bridges between bars and test bar to bar again.");
    }

    /** {@return what is taken off the mean diameter, mm} */
    public double offDiameterMm() {
        return diameterBeforeMm - diameterAfterMm;
    }

    /**
     * {@return diameter left above the minimum, mm, negative when the cut goes under it; empty where no minimum is
     * known}
     */
    public OptionalDouble leftMm() {
        return minimumMm.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(diameterAfterMm - minimumMm.getAsDouble());
    }

    /** {@return whether the minimum is kept; empty where none is known} */
    public Optional<Boolean> keepsMinimum() {
        return minimumMm.isEmpty() ? Optional.empty() : Optional.of(diameterAfterMm >= minimumMm.getAsDouble());
    }

    /** {@return the cut in one line} */
    public String text() {
        String left = leftMm().isEmpty()
                ? "no minimum is given"
                : leftMm().getAsDouble() >= 0
                        ? Text.mm(leftMm().getAsDouble()) + " of diameter left above the minimum of "
                                + Text.mm(minimumMm.getAsDouble())
                        : Text.mm(-leftMm().getAsDouble()) + " under the minimum of " + Text.mm(minimumMm.getAsDouble())
                                + ": renew the commutator";
        return "cut " + Text.mm(depthMm) + " on the radius from first touch; mean diameter from "
                + Text.mm(diameterBeforeMm) + " to " + Text.mm(diameterAfterMm) + "; " + left;
    }
}
