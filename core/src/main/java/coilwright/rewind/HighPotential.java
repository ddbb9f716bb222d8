package coilwright.rewind;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Voltages of the high-potential test, winding to core, by kind of machine and state of the winding. */
public final class HighPotential {
    /**
     * Direct test voltage over the alternating r.m.s. one.
     *
     * <p>Source: ANSI/EASA AR100, section 4, 2020 (read).
     */
    public static final double DC_FACTOR = 1.7;

    /** How long the full voltage is held, s. Source: ANSI/EASA AR100, section 4, 2020 (read). */
    public static final int SECONDS = 60;

    private HighPotential() {}

    /** Kinds of machine that the tables tell apart. */
    public enum MachineKind {
        /** Motor for direct current. */
        DC_MOTOR,
        /** Generator or dynamo. */
        DC_GENERATOR,
        /** Universal motor, not in a portable tool. */
        UNIVERSAL,
        /** Universal motor of a portable tool. */
        PORTABLE_TOOL;

        /** {@return the word in files and commands} */
        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** State of the winding. */
    public enum Work {
        /** Never tested before: the first test of a new winding. */
        NEW,
        /** Right after a rewind. */
        REWOUND,
        /** Cleaned, dried and varnished, not rewound; also a repeated test. */
        RECONDITIONED,
        /** In use. */
        IN_SERVICE;

        /** {@return the word in files and commands} */
        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * A test voltage by one scheme.
     *
     * @param scheme standard that it belongs to
     * @param acLow least alternating r.m.s. voltage, V; empty where only a most is given
     * @param acHigh most alternating r.m.s. voltage, V
     * @param rule where the full voltage comes from; empty where it goes by the rated voltage alone
     * @param ruleNote its conditions
     * @param factorSource where the part of it comes from
     * @param factorNote its conditions
     */
    public record Voltage(
            String scheme,
            OptionalDouble acLow,
            double acHigh,
            Optional<Source> rule,
            String ruleNote,
            Source factorSource,
            String factorNote) {
        /** {@return direct voltage in place of {@link #acHigh}} */
        public double dcHigh() {
            return DC_FACTOR * acHigh;
        }

        /** {@return direct voltage in place of {@link #acLow}} */
        public OptionalDouble dcLow() {
            return acLow.isEmpty() ? acLow : OptionalDouble.of(DC_FACTOR * acLow.getAsDouble());
        }

        /** {@return the voltage in one line with its sources} */
        public String text() {
            String ac = acLow.isEmpty()
                    ? "not over " + Format.number(acHigh)
                    : acLow.getAsDouble() == acHigh
                            ? Format.number(acHigh)
                            : Format.number(acLow.getAsDouble()) + " to " + Format.number(acHigh);
            return scheme + ": " + ac + " V AC r.m.s. or " + Format.number(dcHigh()) + " V DC, 1 min; "
                    + rule.map(r -> r.cite() + "; ").orElse("") + factorSource.cite();
        }
    }

    private record Rule(
            String scheme,
            Set<String> kinds,
            OptionalDouble voltsOver,
            OptionalDouble voltsFrom,
            OptionalDouble voltsUpto,
            OptionalDouble voltsUnder,
            OptionalDouble wattsOver,
            OptionalDouble wattsFrom,
            OptionalDouble wattsUpto,
            OptionalDouble wattsUnder,
            double base,
            double perVolt,
            OptionalDouble least,
            Source source,
            String note) {
        boolean covers(MachineKind kind, double volts, double watts) {
            return kinds.contains(kind.key())
                    && (voltsOver.isEmpty() || volts > voltsOver.getAsDouble())
                    && (voltsFrom.isEmpty() || volts >= voltsFrom.getAsDouble())
                    && (voltsUpto.isEmpty() || volts <= voltsUpto.getAsDouble())
                    && (voltsUnder.isEmpty() || volts < voltsUnder.getAsDouble())
                    && (wattsOver.isEmpty() || watts > wattsOver.getAsDouble())
                    && (wattsFrom.isEmpty() || watts >= wattsFrom.getAsDouble())
                    && (wattsUpto.isEmpty() || watts <= wattsUpto.getAsDouble())
                    && (wattsUnder.isEmpty() || watts < wattsUnder.getAsDouble());
        }

        double volts(double rated) {
            return Math.max(base + perVolt * rated, least.orElse(0));
        }
    }

    private record Factor(
            String scheme, String work, String basis, OptionalDouble low, double high, Source source, String note) {}

    private static final class Tables {
        static final List<Rule> RULES = Psv.load("high-potential.psv").rows().stream()
                .map(r -> new Rule(
                        r.text("scheme"),
                        new LinkedHashSet<>(List.of(r.text("kinds").split(" "))),
                        r.maybeNumber("volts-over"),
                        r.maybeNumber("volts-from"),
                        r.maybeNumber("volts-upto"),
                        r.maybeNumber("volts-under"),
                        r.maybeNumber("watts-over"),
                        r.maybeNumber("watts-from"),
                        r.maybeNumber("watts-upto"),
                        r.maybeNumber("watts-under"),
                        r.number("base"),
                        r.number("per-volt"),
                        r.maybeNumber("least"),
                        r.source(),
                        r.text("note")))
                .toList();
        static final List<Factor> FACTORS = Psv.load("high-potential-factors.psv").rows().stream()
                .map(r -> new Factor(
                        r.text("scheme"),
                        r.text("work"),
                        r.text("basis"),
                        r.maybeNumber("low"),
                        r.number("high"),
                        r.source(),
                        r.text("note")))
                .toList();

        private Tables() {}
    }

    /**
     * {@return every voltage that a scheme gives for a machine; where they differ, all are given and the choice is the
     * user's}
     *
     * @param kind of machine
     * @param ratedVolts of the winding
     * @param ratedWatts output
     * @param work state of the winding
     */
    public static List<Voltage> voltages(MachineKind kind, double ratedVolts, double ratedWatts, Work work) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(work, "work");
        Require.positive("rated voltage", ratedVolts, "V");
        Require.positive("rated output", ratedWatts, "W");
        List<Voltage> out = new ArrayList<>();
        for (Factor f : Tables.FACTORS) {
            if (!f.work().equals(work.key())) {
                continue;
            }
            if (f.basis().equals("rated")) {
                out.add(voltage(f, ratedVolts, Optional.empty()));
                continue;
            }
            for (Rule rule : Tables.RULES) {
                if (rule.scheme().equals(f.scheme()) && rule.covers(kind, ratedVolts, ratedWatts)) {
                    out.add(voltage(f, rule.volts(ratedVolts), Optional.of(rule)));
                }
            }
        }
        return List.copyOf(out);
    }

    private static Voltage voltage(Factor f, double full, Optional<Rule> rule) {
        return new Voltage(
                f.scheme(),
                f.low().isEmpty() ? f.low() : OptionalDouble.of(f.low().getAsDouble() * full),
                f.high() * full,
                rule.map(Rule::source),
                rule.map(Rule::note).orElse(""),
                f.source(),
                f.note());
    }

    /**
     * A test that was done.
     *
     * @param volts applied, r.m.s. where alternating
     * @param direct whether the voltage was direct; empty where not noted
     * @param seconds that it was held; empty where not noted
     * @param passed whether the insulation held
     */
    public record Applied(double volts, Optional<Boolean> direct, OptionalInt seconds, boolean passed) {
        /**
         * Checks the voltage.
         *
         * @param volts applied, r.m.s. where alternating
         * @param direct whether the voltage was direct; empty where not noted
         * @param seconds that it was held; empty where not noted
         * @param passed whether the insulation held
         * @throws IllegalArgumentException when it is not over 0
         */
        public Applied {
            Require.positive("test voltage", volts, "V");
            Objects.requireNonNull(direct, "direct");
        }

        /**
         * {@return how the voltage stands to what a scheme asks, to the half volt; empty where its kind was not noted}
         *
         * @param asked what the scheme asks
         */
        public Optional<Outcome> against(Voltage asked) {
            return direct.map(dc -> {
                double high = dc ? asked.dcHigh() : asked.acHigh();
                double least = (dc ? asked.dcLow() : asked.acLow()).orElse(high);
                return volts < least - 0.5 ? Outcome.UNDER : volts > high + 0.5 ? Outcome.OVER : Outcome.KEPT;
            });
        }

        /** {@return the test in words} */
        public String text() {
            return Format.number(volts) + " V"
                    + direct.map(dc -> dc ? " DC" : " AC r.m.s.").orElse("")
                    + (seconds.isPresent() ? ", held " + seconds.getAsInt() + " s" : "")
                    + (passed ? ": the insulation held" : ": the insulation broke down");
        }
    }

    /** How an applied voltage stands to what a scheme asks. */
    public enum Outcome {
        /** Less than it asks; where it names only a most, less than that. */
        UNDER("under"),
        /** As it asks. */
        KEPT("kept"),
        /** More than it asks. */
        OVER("over");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }

        /** {@return the word in files and scripts} */
        public String word() {
            return word;
        }
    }

    /**
     * {@return whether the schemes ask for different voltages}
     *
     * @param voltages one a scheme
     */
    public static boolean conflicting(List<Voltage> voltages) {
        return voltages.stream().map(v -> Math.round(v.acHigh())).distinct().count() > 1;
    }

    /** {@return what to mind before and after the test} */
    public static List<Caution> cautions() {
        Source ar100 = new Source("ANSI/EASA AR100, section 4", "2020", Trust.READ);
        return List.of(
                new Caution(
                        "licensed",
                        "these voltages kill: the test is for trained, licensed people by local electrical codes, never"
                                + " alone; read the set's own instructions",
                        Source.practice()),
                new Caution(
                        "barrier",
                        "put a barrier and a sign round the place, the armature on an insulated stand, everyone outside"
                                + " before the voltage is raised",
                        Source.practice()),
                new Caution(
                        "insulation-first",
                        "measure the insulation resistance first; do not put high voltage on a wet or failing winding",
                        Source.practice()),
                new Caution(
                        "steps",
                        "raise direct voltage in steps, hold the full voltage for 1 minute, then discharge",
                        ar100),
                new Caution(
                        "discharge",
                        "bring the voltage down, switch off, then discharge the winding to the core with the set's"
                                + " discharge stick and leave it joined before touching anything",
                        Source.practice()),
                new Caution(
                        "not-again",
                        "each full-voltage test ages the insulation: do not repeat it at the full value",
                        Source.practice()),
                new Caution(
                        "tie-bars",
                        "tie all bars together and earth the core; take out brushes, capacitors and electronics",
                        Source.practice()));
    }
}
