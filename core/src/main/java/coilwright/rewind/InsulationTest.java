package coilwright.rewind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Insulation resistance, winding to core.
 *
 * @param oneMinuteMohm reading after one minute, MΩ
 * @param tenMinuteMohm reading after ten minutes, MΩ, where taken
 * @param celsius temperature of the winding
 */
public record InsulationTest(double oneMinuteMohm, OptionalDouble tenMinuteMohm, double celsius) {
    /** Temperature that the limits refer to, °C. */
    public static final double REFERENCE_CELSIUS = 40;

    /** Quantity of the minima that rise with the rated voltage. */
    static final String PLUS_KV = "insulation-resistance-plus-kv";

    /**
     * Checks the ranges.
     *
     * @param oneMinuteMohm reading after one minute, MΩ
     * @param tenMinuteMohm reading after ten minutes, MΩ, where taken
     * @param celsius temperature of the winding
     * @throws IllegalArgumentException when a resistance is negative or the temperature is not over -234.5 and under
     *     1000 °C
     */
    public InsulationTest {
        Require.notNegative("insulation resistance", oneMinuteMohm, "Mohm");
        tenMinuteMohm.ifPresent(r -> Require.notNegative("insulation resistance", r, "Mohm"));
        Require.temperature("winding temperature", celsius);
    }

    /**
     * {@return factor that brings a reading to 40 °C: 0.5^((40 − t)/10), halving for each 10 °C more}
     *
     * <p>Source: IEEE 43 (form from memory), for thermoplastic insulation; the 2013 edition has other formulas for
     * thermosetting insulation, which are not used here.
     *
     * @param celsius of the winding, °C
     */
    public static double correctionTo40(double celsius) {
        Require.temperature("winding temperature", celsius);
        return Math.pow(0.5, (REFERENCE_CELSIUS - celsius) / 10);
    }

    /** {@return one-minute reading brought to 40 °C, MΩ} */
    public double correctedMohm() {
        return oneMinuteMohm * correctionTo40(celsius);
    }

    /** {@return ten-minute reading over the one-minute one; empty where it was not taken or the first is nought} */
    public OptionalDouble polarizationIndex() {
        return tenMinuteMohm.isPresent() && oneMinuteMohm > 0
                ? OptionalDouble.of(tenMinuteMohm.getAsDouble() / oneMinuteMohm)
                : OptionalDouble.empty();
    }

    /** {@return why the polarization index says little here; empty where it stands} */
    public Optional<String> indexDoubt() {
        Limit meaningful = Limit.of("pi-meaningful");
        if (polarizationIndex().isEmpty()) {
            return Optional.empty();
        }
        if (!meaningful.admits(oneMinuteMohm)) {
            return Optional.of("the index says nothing above "
                    + Format.number(meaningful.high().orElseThrow()) + " Mohm; "
                    + meaningful.source().cite());
        }
        Limit dry = Limit.of("pi-dry");
        return dry.admits(polarizationIndex().getAsDouble())
                ? Optional.empty()
                : Optional.of(dry.note() + "; " + dry.source().cite());
    }

    /**
     * {@return what a meter must read at a temperature for a minimum to be kept, MΩ}
     *
     * @param limit on the insulation resistance
     * @param celsius temperature of the winding
     * @throws IllegalArgumentException when the limit has no least value
     */
    public static double leastReading(Limit limit, double celsius) {
        if (limit.low().isEmpty()) {
            throw new IllegalArgumentException("limit " + limit.id() + " has no least value: choose another");
        }
        double low = limit.low().getAsDouble();
        return isCorrected(limit) ? low / correctionTo40(celsius) : low;
    }

    /**
     * {@return whether a limit refers to a reading brought to 40 °C, and not to one taken cold}
     *
     * @param limit the limit
     */
    public static boolean isCorrected(Limit limit) {
        return !limit.quantity().equals("insulation-resistance-cold");
    }

    /** Whether a limit rises with the rated voltage, which is not given. */
    static boolean lacksVoltage(Limit limit, OptionalDouble ratedVolts) {
        return limit.quantity().equals(PLUS_KV) && ratedVolts.isEmpty();
    }

    /** The limit for a machine of some rated voltage, where it rises with that and it is given. */
    static Limit byVolts(Limit limit, OptionalDouble ratedVolts) {
        return limit.quantity().equals(PLUS_KV) && ratedVolts.isPresent()
                ? limit.raisedBy(ratedVolts.getAsDouble() / 1000)
                : limit;
    }

    /** {@return what to mind; common practice of the trade} */
    public static List<Caution> cautions() {
        return List.of(new Caution(
                "stored-charge",
                "after an insulation test the winding holds a charge: join it to the core and leave it so at"
                        + " least four times as long as the voltage was on, before touching it",
                Source.practice()));
    }

    /**
     * {@return the reading against every minimum shipped, corrected where the limit refers to 40 °C; the choice is the
     * user's}
     *
     * @param ratedVolts of the winding, for the minimum that goes by it
     */
    public List<AcceptanceVerdict> verdicts(double ratedVolts) {
        return verdicts(OptionalDouble.of(ratedVolts));
    }

    /**
     * {@return the same where the rated voltage may not be known: the minimum that goes by it is then left out}
     *
     * @param ratedVolts of the winding, over 0
     */
    public List<AcceptanceVerdict> verdicts(OptionalDouble ratedVolts) {
        List<AcceptanceVerdict> out = new ArrayList<>();
        Limit.on("insulation-resistance").forEach(l -> out.add(AcceptanceVerdict.of(l, correctedMohm())));
        ratedVolts.ifPresent(v -> {
            Require.positive("rated voltage", v, "V");
            Limit.on(PLUS_KV).forEach(l -> out.add(AcceptanceVerdict.of(byVolts(l, ratedVolts), correctedMohm())));
        });
        Limit.on("insulation-resistance-cold").forEach(l -> out.add(AcceptanceVerdict.of(l, oneMinuteMohm)));
        polarizationIndex()
                .ifPresent(pi -> Limit.on("polarization-index").forEach(l -> out.add(AcceptanceVerdict.of(l, pi))));
        return List.copyOf(out);
    }
}
