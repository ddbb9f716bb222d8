package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.TestRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Predicts what faults read in every run, and weighs that against the readings. Several threads may ask it. */
final class Weigher {
    /** Error of a reading expected before any is taken, and how many readings that expectation is worth. */
    static final double USUAL_NOISE = 0.015;

    private static final double USUAL_WORTH = 4;
    private static final double BASE = USUAL_WORTH * USUAL_NOISE * USUAL_NOISE;

    private final BenchArmature armature;
    private final Alterations alterations;
    private final SoundNetwork sound;
    private final List<RunModel> models = new ArrayList<>();
    private final List<Evidence> evidence = new ArrayList<>();
    private final int readings;
    private final int measured;
    private final double logMeasured;
    private final double[] logScale;
    private final Linked asWound;
    /** The one asked for last; whichever thread it was, any other finds it whole or makes its own. */
    private volatile Linked lastLinked;

    Weigher(BenchArmature armature, List<TestRun> runs) {
        this.armature = armature;
        alterations = new Alterations(armature);
        sound = new SoundNetwork(armature);
        for (TestRun run : runs) {
            models.add(new RunModel(sound, run));
            evidence.add(new Evidence(run.readings()));
        }
        asWound = new Linked(List.of(), sound, models);
        readings = runs.stream().mapToInt(r -> r.readings().size()).sum();
        measured = evidence.stream().mapToInt(Evidence::measured).sum();
        logScale = new double[measured + 1];
        Arrays.setAll(logScale, Weigher::logScale);
        logMeasured = Math.log(Math.max(1, measured));
    }

    SoundNetwork sound() {
        return sound;
    }

    List<RunModel> models() {
        return models;
    }

    List<Evidence> evidence() {
        return evidence;
    }

    // ---- predicting -------------------------------------------------------------------------------------------------

    /** The runs on a network with bars of different circuits linked. */
    private record Linked(List<Alteration> links, SoundNetwork network, List<RunModel> models) {}

    private Linked linked(Linked apart, Alteration link) {
        List<Alteration> links = new ArrayList<>(apart.links());
        links.add(link);
        Linked last = lastLinked;
        if (last == null || !last.links().equals(links)) {
            var network = new SoundNetwork(apart.network(), link);
            last = new Linked(
                    links,
                    network,
                    apart.models().stream()
                            .map(m -> new RunModel(m, network, link))
                            .toList());
            lastLinked = last;
        }
        return last;
    }

    /** The runs with two bars joined that the winding keeps apart. */
    List<RunModel> models(Fault.BarShort acrossCircuits) {
        return linked(asWound, Alteration.joined(acrossCircuits.bar(), acrossCircuits.otherBar()))
                .models();
    }

    double[][] predict(List<Fault> faults) {
        double[][] out = new double[models.size()][];
        Optional<Alterations.Altered> altered = alterations.of(faults);
        Linked here = asWound;
        if (altered.isPresent()) {
            List<Alteration> rest = new ArrayList<>();
            for (Alteration a : altered.get().list()) {
                if (a.conductance() > 0 && !here.network().joined(a.from(), a.to())) {
                    here = linked(here, a);
                } else {
                    rest.add(a);
                }
            }
            altered = Optional.of(new Alterations.Altered(rest, altered.get().alone()));
        }
        for (int r = 0; r < out.length; r++) {
            RunModel model = here.models().get(r);
            Optional<double[]> quick = faults.isEmpty()
                    ? Optional.of(model.expected())
                    : model.quick() ? betweenBars(model, faults, altered) : toShaft(model, faults);
            if (quick.isPresent()) {
                out[r] = quick.get();
            } else {
                out[r] = model.quick() || touches(model, faults)
                        ? model.slow(Fault.all(armature, faults))
                        : model.expected();
            }
        }
        return out;
    }

    private Optional<double[]> betweenBars(RunModel model, List<Fault> faults, Optional<Alterations.Altered> altered) {
        if (altered.isPresent()) {
            return model.predict(altered.get().list(), altered.get().alone());
        }
        if (faults.size() == 1 && faults.get(0) instanceof Fault.SlotShort s) {
            return joined(model, Tap.of(armature, s.place()), Tap.of(armature, s.otherPlace()));
        }
        if (faults.size() == 2 && faults.get(0) instanceof Fault.Ground a && faults.get(1) instanceof Fault.Ground b) {
            return joined(model, Tap.of(armature, a.place()), Tap.of(armature, b.place()));
        }
        return Optional.empty();
    }

    private static Optional<double[]> joined(RunModel model, Optional<Tap> a, Optional<Tap> b) {
        return a.isPresent() && b.isPresent() ? model.joined(a.get(), b.get()) : Optional.empty();
    }

    private Optional<double[]> toShaft(RunModel model, List<Fault> faults) {
        if (faults.size() > 2 || !faults.stream().allMatch(Fault.Ground.class::isInstance)) {
            return Optional.empty();
        }
        List<Tap> taps = new ArrayList<>();
        for (Fault f : faults) {
            Tap.of(armature, ((Fault.Ground) f).place()).ifPresent(taps::add);
        }
        return taps.size() < faults.size() ? Optional.empty() : model.grounded(taps.get(0), taps.get(taps.size() - 1));
    }

    /** Whether a test that is worked out the long way sees these faults at all. */
    private static boolean touches(RunModel model, List<Fault> faults) {
        long grounds = faults.stream().filter(Fault.Ground.class::isInstance).count();
        if (model.run().test() instanceof BenchTest.Polarity) {
            return grounds > 1
                    || faults.stream()
                            .anyMatch(f -> f instanceof Fault.ReversedCoil
                                    || f instanceof Fault.CrossedLeads
                                    || f instanceof Fault.WrongBar
                                    || f instanceof Fault.OpenCoil
                                    || f instanceof Fault.ShortedCoil
                                    || f instanceof Fault.BarShort);
        }
        return !Diagnoser.toShaft(model.run()) || grounds > 0;
    }

    // ---- weighing ---------------------------------------------------------------------------------------------------

    /**
     * Weighs faults.
     *
     * @param sizes how many of them have sizes fitted to the readings; each costs half the logarithm of their number
     */
    Weighed weigh(List<Fault> faults, double logPrior, int sizes) {
        double[][] predicted = predict(faults);
        List<Evidence.Fit> plain = new ArrayList<>();
        List<Evidence.Fit> robust = new ArrayList<>();
        for (int r = 0; r < predicted.length; r++) {
            Evidence.Fits fits = evidence.get(r).fits(predicted[r]);
            plain.add(fits.plain());
            robust.add(fits.robust());
        }
        double prior = logPrior - cost(sizes);
        double a = logLikelihood(plain);
        double b = logLikelihood(robust);
        return b > a
                ? new Weighed(faults, prior + b, prior + a, List.of(predicted), robust)
                : new Weighed(faults, prior + a, prior + a, List.of(predicted), plain);
    }

    /**
     * The best of explanations that differ in size. With every reading taken at its word, the weight is smooth in the
     * size; only where a slip is then left over, the search is done again without it.
     *
     * @param search finds the best by a worth
     */
    static Weighed bestSize(Function<ToDoubleFunction<Weighed>, Weighed> search) {
        Weighed plain = search.apply(Weighed::plain);
        if (plain.logWeight() == plain.plain()) {
            return plain;
        }
        Weighed robust = search.apply(Weighed::logWeight);
        return robust.logWeight() > plain.logWeight() ? robust : plain;
    }

    private double cost(int sizes) {
        return sizes * 0.5 * logMeasured;
    }

    /** Student's t: normal errors whose size is not known but expected to be about {@value #USUAL_NOISE}. */
    private double logLikelihood(List<Evidence.Fit> fits) {
        double squares = BASE;
        int count = 0;
        double slips = 0;
        for (Evidence.Fit f : fits) {
            squares += f.squares();
            count += f.count();
            if (f.slip() >= 0) {
                slips += logSlip(f.likeSlip() ? 1 : 20);
            }
        }
        return t(count, squares) + slips;
    }

    private double logSlip(double spread) {
        return Math.log(Priors.SLIP / 2 / readings / spread);
    }

    /** The most that an explanation can weigh whose squares are no less than a bound, slips aside. */
    double most(double logPrior, int sizes, double squares) {
        return logPrior - cost(sizes) + t(measured, BASE + squares);
    }

    /** The squares at which an explanation weighs so much, slips aside. */
    double squaresFor(double logWeight, double logPrior) {
        double half = (measured + USUAL_WORTH) / 2;
        return Math.exp((logScale[measured] - (logWeight - logPrior)) / half) - BASE;
    }

    private double t(int count, double squares) {
        return logScale[count] - (count + USUAL_WORTH) / 2 * Math.log(squares);
    }

    private static double logScale(int count) {
        return logGamma((count + USUAL_WORTH) / 2) - count / 2.0 * Math.log(Math.PI);
    }

    /** Stirling's series, good to 1e-10 over 2. */
    private static double logGamma(double x) {
        double shift = 0;
        double y = x;
        while (y < 8) {
            shift -= Math.log(y);
            y++;
        }
        double r = 1 / (y * y);
        return shift
                + (y - 0.5) * Math.log(y)
                - y
                + 0.5 * Math.log(2 * Math.PI)
                + (1 / 12.0 - r * (1 / 360.0 - r * (1 / 1260.0 - r / 1680.0))) / y;
    }

    /** Relative error of a reading that an explanation leaves. */
    double noise(Weighed w) {
        double squares = 0;
        int count = 0;
        for (Evidence.Fit f : w.fits()) {
            squares += f.squares();
            count += f.count();
        }
        return Math.sqrt(squares / Math.max(1, count - models.size()));
    }
}
