package coilwright.commutator;

import coilwright.commutator.CommutatorLimit.Quantity;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * A commutator judged: what its run-out readings say, what cut cleans it up, what diameter is left, how to undercut,
 * and how it stands to every limit shipped. Which limits hold is the user's choice.
 *
 * @param given sizes and choices
 * @param runOut of the readings
 * @param cuts the cleaning cut by centring; empty where the diameter is not known
 * @param undercut advice, where undercut depth and mica thickness are known
 * @param judged every limit on run-out, undercut and wear
 */
public record CommutatorReport(
        Given given,
        RunOut runOut,
        Map<TruingCut.Centring, TruingCut> cuts,
        Optional<Undercut> undercut,
        List<Judged> judged) {
    /** Largest diameter taken, mm. */
    public static final double MOST_DIAMETER = 5000;

    /** Largest mica thickness taken, mm. */
    public static final double MOST_MICA = 10;

    /** Largest undercut depth and allowance taken, mm. */
    public static final double MOST_DEPTH = 20;

    /** Limit on the depth to cut to, unless another is chosen: common practice. */
    public static final String USUAL_DEPTH = "practice-depth";

    /** Least undercut, unless another is chosen: the value that most sources print. */
    public static final String USUAL_LEAST = "small-engine-starter-undercut";

    /**
     * What is known and chosen.
     *
     * @param diameterMm over the bars, mm
     * @param newDiameterMm when new, mm, for limits on wear
     * @param minimumMm least diameter allowed, mm
     * @param micaMm thickness of the mica, mm
     * @param undercutMm depth of the mica under the bars now, mm
     * @param allowanceMm to take off the lowest bar beyond a bare clean-up, on the radius, mm
     * @param centring how it is to run in the lathe, and how the run-out is judged
     * @param chosen limits that hold for this commutator
     */
    public record Given(
            OptionalDouble diameterMm,
            OptionalDouble newDiameterMm,
            OptionalDouble minimumMm,
            OptionalDouble micaMm,
            OptionalDouble undercutMm,
            double allowanceMm,
            TruingCut.Centring centring,
            List<CommutatorLimit> chosen) {
        /**
         * Copies the list and checks the ranges.
         *
         * @param diameterMm over the bars, mm
         * @param newDiameterMm when new, mm, for limits on wear
         * @param minimumMm least diameter allowed, mm
         * @param micaMm thickness of the mica, mm
         * @param undercutMm depth of the mica under the bars now, mm
         * @param allowanceMm to take off the lowest bar beyond a bare clean-up, on the radius, mm
         * @param centring how it is to run in the lathe, and how the run-out is judged
         * @param chosen limits that hold for this commutator
         * @throws IllegalArgumentException when a size is out of range, or sizes do not go together
         */
        public Given {
            chosen = List.copyOf(chosen);
            diameterMm.ifPresent(
                    d -> Text.most("commutator diameter", Text.positive("commutator diameter", d), MOST_DIAMETER));
            newDiameterMm.ifPresent(d -> Text.most("new diameter", Text.positive("new diameter", d), MOST_DIAMETER));
            minimumMm.ifPresent(
                    d -> Text.most("minimum diameter", Text.positive("minimum diameter", d), MOST_DIAMETER));
            micaMm.ifPresent(m -> Text.most("mica thickness", Text.positive("mica thickness", m), MOST_MICA));
            undercutMm.ifPresent(u -> Text.most("undercut depth", Text.notNegative("undercut depth", u), MOST_DEPTH));
            Text.most("allowance", Text.notNegative("allowance", allowanceMm), MOST_DEPTH);
            if (newDiameterMm.isPresent()
                    && diameterMm.isPresent()
                    && newDiameterMm.getAsDouble() < diameterMm.getAsDouble()) {
                throw new IllegalArgumentException("new diameter is " + Text.mm(newDiameterMm.getAsDouble())
                        + ", under the diameter of " + Text.mm(diameterMm.getAsDouble())
                        + ": a commutator does not grow, so one of the two is wrong");
            }
            if (undercutMm.isPresent()
                    && diameterMm.isPresent()
                    && undercutMm.getAsDouble() >= diameterMm.getAsDouble() / 2) {
                throw new IllegalArgumentException("undercut depth is " + Text.mm(undercutMm.getAsDouble())
                        + ", deeper than a commutator of " + Text.mm(diameterMm.getAsDouble())
                        + ": check both and their units");
            }
        }

        /** {@return nothing known, to run as read, no limit chosen} */
        public static Given nothing() {
            return new Given(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    0,
                    TruingCut.Centring.AS_READ,
                    List.of());
        }

        /**
         * Checks the mica against the bars' pitch.
         *
         * @param bars on the commutator, at least 3
         * @throws IllegalArgumentException when no copper is left between one mica and the next
         */
        public void checkMica(int bars) {
            if (micaMm.isPresent()
                    && diameterMm.isPresent()
                    && bars * micaMm.getAsDouble() >= Math.PI * diameterMm.getAsDouble()) {
                throw new IllegalArgumentException("mica of " + Text.mm(micaMm.getAsDouble()) + " between " + bars
                        + " bars leaves no copper on a diameter of " + Text.mm(diameterMm.getAsDouble())
                        + ": check both and their units");
            }
        }

        /**
         * {@return the limit chosen on a quantity, the first of several}
         *
         * @param quantity what the limit is on
         */
        public Optional<CommutatorLimit> chosenOn(Quantity quantity) {
            return chosen.stream().filter(l -> l.quantity() == quantity).findFirst();
        }

        /** {@return the limit on the depth to cut the mica to: the chosen one, else common practice} */
        public CommutatorLimit depth() {
            return chosenOn(Quantity.UNDERCUT_DEPTH).orElseGet(() -> CommutatorLimit.of(USUAL_DEPTH));
        }

        /** {@return the limit under which the mica is cut again: the chosen one, else the usual} */
        public CommutatorLimit least() {
            return chosenOn(Quantity.UNDERCUT_LIMIT).orElseGet(() -> CommutatorLimit.of(USUAL_LEAST));
        }

        /** {@return sizes in words, those that are known} */
        public Map<String, String> facts() {
            Map<String, String> out = new LinkedHashMap<>();
            diameterMm.ifPresent(d -> out.put("Diameter over the bars", Text.mm(d)));
            newDiameterMm.ifPresent(d -> out.put("Diameter when new", Text.mm(d)));
            minimumMm.ifPresent(d -> out.put("Least diameter", Text.mm(d)));
            micaMm.ifPresent(m -> out.put("Mica", Text.both(m)));
            undercutMm.ifPresent(u -> out.put("Undercut now", Text.both(u)));
            return out;
        }
    }

    /**
     * A limit and how the commutator stands to it.
     *
     * @param limit with its source
     * @param verdict empty where the value has not been measured
     * @param chosen whether the user chose it
     */
    public record Judged(CommutatorLimit limit, Optional<CommutatorVerdict> verdict, boolean chosen) {
        /** {@return "passes", "fails" or "not known"} */
        public String word() {
            return verdict.map(v -> v.pass() ? "passes" : "fails").orElse("not known");
        }

        /** {@return the value measured in words, empty where there is none} */
        public String value() {
            return verdict.map(v -> Text.mm(v.valueMm())).orElse("");
        }

        private String text() {
            return verdict.map(v -> limit.id() + ": " + v.text())
                    .orElse(limit.id() + ": not known, measure it; " + limit.printed() + ", " + limit.cite());
        }
    }

    /** How it ended. */
    public enum Verdict {
        /** A limit that was chosen is not kept. */
        OUT_OF_LIMITS,
        /** The cleaning cut goes under the least diameter. */
        UNDER_MINIMUM,
        /** A limit that was chosen cannot be judged before more is measured. */
        INCOMPLETE,
        /** Every limit that was chosen is kept. */
        WITHIN_LIMITS,
        /** No limit on a measured value was chosen. */
        NO_LIMIT_CHOSEN;

        /** {@return the word in files and scripts} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * Copies the collections.
     *
     * @param given sizes and choices
     * @param runOut of the readings
     * @param cuts the cleaning cut by centring; empty where the diameter is not known
     * @param undercut advice, where undercut depth and mica thickness are known
     * @param judged every limit on run-out, undercut and wear
     */
    public CommutatorReport {
        cuts = Map.copyOf(cuts);
        judged = List.copyOf(judged);
    }

    /**
     * Judges a commutator.
     *
     * @param bars on it, at least 3
     * @param readings of at least 3 bars, that go round at least half the commutator
     * @param given what is known and chosen
     * @return what the readings say, and what to do
     * @throws IllegalArgumentException when there are too few, all lie on one side, one is of a bar that is not there,
     *     or sizes do not go together
     */
    public static CommutatorReport of(int bars, List<Reading> readings, Given given) {
        given.checkMica(bars);
        RunOut runOut = RunOut.of(bars, readings);
        if (!runOut.tellsCentre()) {
            throw new IllegalArgumentException("the bars read leave " + Math.round(runOut.widestGapDegrees())
                    + "° of the commutator without a reading, and its centre is not told from one side: read bars all"
                    + " the way round");
        }
        Map<TruingCut.Centring, TruingCut> cuts = new EnumMap<>(TruingCut.Centring.class);
        if (given.diameterMm().isPresent()) {
            for (TruingCut.Centring c : TruingCut.Centring.values()) {
                cuts.put(
                        c,
                        TruingCut.plan(
                                runOut, c, given.diameterMm().getAsDouble(), given.allowanceMm(), given.minimumMm()));
            }
        }
        Optional<Undercut> undercut =
                given.undercutMm().isEmpty() || given.micaMm().isEmpty()
                        ? Optional.empty()
                        : Optional.of(Undercut.advise(
                                given.undercutMm().getAsDouble(),
                                depth(runOut, given, given.centring()),
                                given.micaMm().getAsDouble(),
                                given.depth(),
                                given.least()));
        return new CommutatorReport(given, runOut, cuts, undercut, judge(runOut, given));
    }

    private static double depth(RunOut runOut, Given given, TruingCut.Centring centring) {
        return given.allowanceMm()
                + (centring == TruingCut.Centring.RECENTRED ? runOut.residualTirMm() : runOut.tirMm());
    }

    private static List<Judged> judge(RunOut runOut, Given given) {
        List<CommutatorVerdict> verdicts = new ArrayList<>(CommutatorVerdict.runOut(
                given.centring() == TruingCut.Centring.RECENTRED ? runOut.recentred() : runOut));
        given.undercutMm().ifPresent(u -> verdicts.addAll(CommutatorVerdict.undercut(u)));
        given.diameterMm().ifPresent(d -> verdicts.addAll(CommutatorVerdict.wear(given.newDiameterMm(), d)));
        List<Judged> out = new ArrayList<>();
        for (CommutatorLimit l : CommutatorLimit.all()) {
            if (l.quantity() != Quantity.UNDERCUT_DEPTH && l.quantity() != Quantity.UNDERCUT_WIDTH) {
                out.add(new Judged(
                        l,
                        verdicts.stream().filter(v -> v.limit().equals(l)).findFirst(),
                        given.chosen().contains(l)));
            }
        }
        return out;
    }

    /** {@return the cut in the centring chosen; empty where the diameter is not known} */
    public Optional<TruingCut> planned() {
        return Optional.ofNullable(cuts.get(given.centring()));
    }

    /**
     * {@return infeed from first touch to a clean surface, on the radius, mm; known without the diameter}
     *
     * @param centring how it runs in the lathe
     */
    public double cutDepthMm(TruingCut.Centring centring) {
        return depth(runOut, given, centring);
    }

    /** {@return how it ended; the first that holds in the order of the words} */
    public Verdict verdict() {
        List<Judged> chosen = judged.stream().filter(Judged::chosen).toList();
        if (chosen.stream().anyMatch(j -> j.verdict().filter(v -> !v.pass()).isPresent())) {
            return Verdict.OUT_OF_LIMITS;
        }
        if (goesUnder()) {
            return Verdict.UNDER_MINIMUM;
        }
        if (chosen.isEmpty()) {
            return Verdict.NO_LIMIT_CHOSEN;
        }
        return chosen.stream().anyMatch(j -> j.verdict().isEmpty()) ? Verdict.INCOMPLETE : Verdict.WITHIN_LIMITS;
    }

    /** {@return whether the answer is no: out of a limit chosen, or a clean-up goes under the least diameter} */
    public boolean refused() {
        return verdict() == Verdict.OUT_OF_LIMITS || verdict() == Verdict.UNDER_MINIMUM;
    }

    private boolean goesUnder() {
        return planned().flatMap(TruingCut::keepsMinimum).filter(kept -> !kept).isPresent();
    }

    /** {@return the verdict in a sentence, and beneath it each limit chosen and what else decides} */
    public List<String> verdictLines() {
        List<String> out = new ArrayList<>();
        out.add(
                switch (verdict()) {
                    case OUT_OF_LIMITS -> "OUT OF THE CHOSEN LIMITS.";
                    case UNDER_MINIMUM ->
                        "UNDER THE MINIMUM: the planned cut that cleans up goes under the least diameter. Do not turn it:"
                                + " renew the commutator, or ask its maker.";
                    case INCOMPLETE -> "Incomplete: not all of the chosen limits can be judged yet.";
                    case WITHIN_LIMITS -> "Within the chosen limits.";
                    case NO_LIMIT_CHOSEN ->
                        "No limit on a measured value is chosen: every limit is given below; choose those that hold for"
                                + " this machine, its maker's first.";
                });
        judged.stream().filter(Judged::chosen).forEach(j -> out.add(j.text()));
        if (verdict() == Verdict.OUT_OF_LIMITS && goesUnder()) {
            out.add("A cut that cleans up goes under the least diameter as well: renew the commutator.");
        }
        return out;
    }

    /** {@return what the readings say, in words} */
    public Map<String, String> facts() {
        Map<String, String> out = new LinkedHashMap<>();
        List<Integer> missing = runOut.missing();
        out.put(
                "Bars read",
                runOut.list().size() + " of " + runOut.bars()
                        + (missing.isEmpty() ? "" : "; not read: " + some(missing)));
        out.put(
                "Total indicator reading",
                Text.both(runOut.tirMm()) + "; highest bar "
                        + runOut.highest(false).bar() + ", lowest bar "
                        + runOut.lowest(false).bar());
        boolean round = Text.mm(runOut.eccentricityMm()).equals("0 mm");
        out.put(
                "Eccentricity",
                Text.both(runOut.eccentricityMm())
                        + (round
                                ? ""
                                : ", which swings the gauge by " + Text.mm(2 * runOut.eccentricityMm())
                                        + "; high side at bar " + runOut.highSideBar() + ", "
                                        + Math.round(runOut.highSideDegrees()) % 360 + "° on from bar 1 ("
                                        + runOut.highSideClock() + " on a clock's face with bar 1 at 12)"));
        out.put(
                "Own shape, eccentricity out",
                Text.both(runOut.residualTirMm()) + " TIR"
                        + (runOut.isRound()
                                ? ""
                                : "; highest bar " + runOut.highest(true).bar() + ", lowest bar "
                                        + runOut.lowest(true).bar()));
        out.put(
                "Largest step",
                runOut.largestStep()
                        .map(s -> Text.both(Math.abs(s.stepMm())) + (s.stepMm() < 0 ? " down" : " up") + " from bar "
                                + s.from() + " to bar " + s.to())
                        .orElse("no two neighbours were read"));
        out.put(
                "Standing out",
                runOut.standouts().isEmpty()
                        ? "no bar"
                        : runOut.standouts().stream()
                                        .limit(12)
                                        .map(b -> "bar " + b.bar() + " by " + (b.residualMm() < 0 ? "−" : "+")
                                                + Text.mm(Math.abs(b.residualMm())))
                                        .collect(Collectors.joining(", "))
                                + (runOut.standouts().size() > 12
                                        ? " and " + (runOut.standouts().size() - 12) + " more"
                                        : "")
                                + ": read again, and look for a lifted or sunken bar");
        return out;
    }

    private static String some(List<Integer> bars) {
        return bars.stream().limit(12).map(String::valueOf).collect(Collectors.joining(", "))
                + (bars.size() > 12 ? " and " + (bars.size() - 12) + " more" : "");
    }

    /** {@return the cleaning cuts in words, by how the commutator runs in the lathe} */
    public Map<String, String> cutLines() {
        Map<String, String> out = new LinkedHashMap<>();
        for (TruingCut.Centring c : TruingCut.Centring.values()) {
            String name = (c == TruingCut.Centring.AS_READ ? "On the centres it was read on" : "Set true to itself")
                    + (c == given.centring() ? " (planned)" : "");
            out.put(
                    name,
                    Optional.ofNullable(cuts.get(c))
                            .map(TruingCut::text)
                            .orElseGet(() -> "cut " + Text.mm(cutDepthMm(c))
                                    + " on the radius from first touch; the diameter is not given"));
        }
        return out;
    }

    /** {@return how to undercut, in words} */
    public List<String> undercutLines() {
        return undercutLines(given, undercut);
    }

    /**
     * {@return how to undercut, in words, with nothing read yet}
     *
     * @param given what is known and chosen
     */
    public static List<String> undercutLines(Given given) {
        return undercutLines(given, Optional.empty());
    }

    private static List<String> undercutLines(Given given, Optional<Undercut> undercut) {
        List<String> out = new ArrayList<>();
        CommutatorLimit depth = given.depth();
        out.add(undercut.map(u -> capital(u.text()))
                .orElseGet(() -> "Cut the mica " + Undercut.depthText(depth) + ", "
                        + (given.micaMm().isPresent()
                                ? "a saw of " + Text.mm(given.micaMm().getAsDouble()) + " to "
                                        + Text.mm(given.micaMm().getAsDouble() + Undercut.SAW_OVER_MICA)
                                        + " (common practice)"
                                : "the full width of the mica; mica thickness is not given")
                        + ". It is cut again where it lies less than "
                        + Text.mm(given.least().lowMm().orElseThrow()) + " under the bars ("
                        + given.least().cite()
                        + "); "
                        + (given.undercutMm().isPresent()
                                ? "now " + Text.mm(given.undercutMm().getAsDouble())
                                : "its depth now is not given")
                        + "."));
        given.chosenOn(Quantity.UNDERCUT_WIDTH)
                .ifPresent(w -> out.add("Width of the cut: " + w.printed() + " (" + w.cite() + ")."));
        out.add("Common practice is about 0.030 in (0.76 mm) deep; other depths are printed from "
                + Text.mm(CommutatorLimit.on(Quantity.UNDERCUT_DEPTH).stream()
                        .mapToDouble(l -> l.lowMm().orElse(l.highMm().orElseThrow()))
                        .min()
                        .orElseThrow())
                + " to "
                + Text.mm(CommutatorLimit.on(Quantity.UNDERCUT_DEPTH).stream()
                        .mapToDouble(l -> l.highMm().orElseThrow())
                        .max()
                        .orElseThrow())
                + ": go by the machine's maker.");
        return List.copyOf(out);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** {@return how readings are taken} */
    public static List<String> steps() {
        return List.of(
                "Run the armature on its own bearings, or between centres that are true with them. Clean the bars and"
                        + " brush out the slots.",
                "Set a dial gauge square to the bars in the middle of the brush track, with a foot that does not drop"
                        + " into the slots, and set it to nought on bar 1.",
                "Turn the armature by hand, always the same way, and note the gauge on the middle of every bar, not on"
                        + " the mica. Further out is more.",
                "Come back to bar 1: it must read the same again.",
                "Measure the diameter across the worn track, the mica and the depth of the undercut.");
    }

    /** {@return what limits the worth of the readings} */
    public List<String> notes() {
        List<String> out = new ArrayList<>();
        int read = runOut.list().size();
        if (read == 3) {
            out.add("Three readings always fit a round commutator off centre: eccentricity and own shape cannot be told"
                    + " apart from them. Read several places along each bar, or gauge the diameter across.");
        } else if (runOut.widestGapDegrees() > 120) {
            out.add("The readings leave " + Math.round(runOut.widestGapDegrees())
                    + "° without one: the eccentricity is not well found; read the bars between.");
        }
        if (!runOut.missing().isEmpty()) {
            out.add("A bar that was not read may be the lowest or the highest: the cut is for the bars read.");
        }
        out.add(
                given.centring() == TruingCut.Centring.AS_READ
                        ? "Judged as read. If the armature was not read on its own bearings or centres, read it again there, or"
                                + " judge it recentred."
                        : "Judged with the eccentricity taken out. That is right only where the readings were taken on other"
                                + " centres than the machine's: on its own bearings the eccentricity counts.");
        return List.copyOf(out);
    }
}
