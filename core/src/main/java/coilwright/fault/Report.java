package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Puts explanations that the readings do not tell apart together, ranks them, and says what speaks for them. */
final class Report {
    /** Explanations this many times less likely than the best are let go. */
    private static final double LEAST_ODDS = 1e-6;

    private static final double SAME = 1e-6;
    /**
     * Readings that differ by less than three standard errors, all taken together, do not tell two explanations apart.
     * Common practice.
     */
    static final double APART = 3;
    /** No meter is read finer than this. */
    private static final double LEAST_NOISE = 1e-4;

    private static final double SURE_SOUND = 0.70;
    private static final double SURE_FAULT = 0.05;

    private final BenchArmature armature;
    private final List<TestRun> runs;
    private final Weigher weigher;
    private final Weighed nothing;

    Report(BenchArmature armature, List<TestRun> runs, Weigher weigher, Weighed nothing) {
        this.armature = armature;
        this.runs = runs;
        this.weigher = weigher;
        this.nothing = nothing;
    }

    /** An explanation with its share of all that is likely. */
    private record Ranked(Weighed weighed, double mass) {
        List<Fault> faults() {
            return weighed.faults();
        }
    }

    private static double mass(List<Ranked> group) {
        return group.stream().mapToDouble(Ranked::mass).sum();
    }

    /**
     * The diagnosis.
     *
     * @param all every explanation weighed, "sound" among them
     * @param unseen kinds that the tests cannot show
     */
    Diagnosis of(List<Weighed> all, List<String> unseen) {
        Weighed best =
                all.stream().max(Comparator.comparingDouble(Weighed::logWeight)).orElseThrow();
        Grouped grouped = grouped(kept(all, best), Math.max(LEAST_NOISE, weigher.noise(best)));
        List<List<Ranked>> groups = grouped.groups();
        double soundProbability = grouped.soundMass() / grouped.total();
        List<Diagnosis.Explanation> ranked = new ArrayList<>();
        for (List<Ranked> g : groups) {
            ranked.add(new Diagnosis.Explanation(
                    g.get(0).faults(),
                    mass(g) / grouped.total(),
                    distinct(g),
                    because(g.get(0).weighed())));
        }
        boolean soundFirst =
                ranked.isEmpty() || soundProbability >= ranked.get(0).probability();
        Weighed likeliest = soundFirst ? nothing : groups.get(0).get(0).weighed();
        return new Diagnosis(
                armature,
                runs,
                verdict(soundProbability),
                soundProbability,
                ranked,
                unseen,
                suspects(likeliest),
                weigher.noise(likeliest),
                likeliest.fits().stream().map(Evidence.Fit::gain).toList(),
                likeliest.faults());
    }

    private static Diagnosis.Verdict verdict(double soundProbability) {
        if (soundProbability >= SURE_SOUND) {
            return Diagnosis.Verdict.SOUND;
        }
        return soundProbability <= SURE_FAULT ? Diagnosis.Verdict.FAULTY : Diagnosis.Verdict.UNCLEAR;
    }

    /** What is not out of the question, likeliest first. */
    private static List<Ranked> kept(List<Weighed> all, Weighed best) {
        List<Ranked> kept = new ArrayList<>();
        for (Weighed w : all) {
            double mass = Math.exp(w.logWeight() - best.logWeight());
            if (mass >= LEAST_ODDS) {
                kept.add(new Ranked(w, mass));
            }
        }
        kept.sort(Comparator.comparingDouble((Ranked w) -> -w.mass()));
        return kept;
    }

    /**
     * Explanations put together.
     *
     * @param groups those that the readings do not tell apart, the likeliest first in each and of all
     * @param soundMass share of "sound" and of single faults that read like it
     * @param total share of all
     */
    private record Grouped(List<List<Ranked>> groups, double soundMass, double total) {}

    private Grouped grouped(List<Ranked> kept, double noise) {
        List<List<Ranked>> groups = new ArrayList<>();
        double soundMass = 0;
        double total = 0;
        for (Ranked w : kept) {
            if (w.faults().isEmpty() || (w.faults().size() == 1 && same(w.weighed(), nothing))) {
                soundMass += w.mass();
                total += w.mass();
                continue;
            }
            Optional<List<Ranked>> home = groups.stream()
                    .filter(g -> like(w.weighed(), g.get(0).weighed(), noise))
                    .findFirst();
            // A second fault that adds nothing which could be read is no explanation.
            if (w.faults().size() > 1
                    && (same(w.weighed(), nothing)
                            || home.stream().flatMap(List::stream).anyMatch(g -> within(g.faults(), w.faults())))) {
                continue;
            }
            total += w.mass();
            if (home.isPresent()) {
                home.get().add(w);
            } else {
                groups.add(new ArrayList<>(List.of(w)));
            }
        }
        groups.sort(Comparator.comparingDouble((List<Ranked> g) -> -mass(g)));
        return new Grouped(groups, soundMass, total);
    }

    private static boolean within(List<Fault> some, List<Fault> all) {
        return some.size() < all.size() && kinds(all).containsAll(kinds(some));
    }

    /** Kinds and places, sizes apart. */
    private static List<String> kinds(List<Fault> faults) {
        return faults.stream().map(f -> f.kind() + f.coils() + f.bars()).toList();
    }

    /**
     * Whether the readings do not tell two explanations apart: what they predict differs by no more than the error of
     * the readings lets them see.
     */
    private boolean like(Weighed a, Weighed b, double noise) {
        double squares = 0;
        double most = APART * APART * noise * noise;
        for (int r = 0; r < a.predicted().size() && squares <= most; r++) {
            squares += weigher.evidence()
                    .get(r)
                    .apart(
                            a.predicted().get(r),
                            b.predicted().get(r),
                            b.fits().get(r).gain());
        }
        return squares <= most || same(a, b);
    }

    /** Whether two explanations read the same in every run, but for a run's scale, which is not known. */
    boolean same(Weighed a, Weighed b) {
        for (int r = 0; r < a.predicted().size(); r++) {
            if (!proportional(a.predicted().get(r), b.predicted().get(r))) {
                return false;
            }
        }
        return true;
    }

    static boolean proportional(double[] x, double[] y) {
        double xx = 0;
        double xy = 0;
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            if (Double.isInfinite(x[i]) || Double.isInfinite(y[i])) {
                if (x[i] != y[i]) {
                    return false;
                }
            } else {
                xx += x[i] * x[i];
                xy += x[i] * y[i];
                most = Math.max(most, Math.abs(y[i]));
            }
        }
        if (xx == 0 || most == 0) {
            return xx == 0 && most == 0;
        }
        double scale = xy / xx;
        if (scale <= 0) {
            return false;
        }
        double slack = SAME * Math.max(most, 1e-300);
        for (int i = 0; i < x.length; i++) {
            if (!Double.isInfinite(x[i]) && Math.abs(scale * x[i] - y[i]) > slack) {
                return false;
            }
        }
        return true;
    }

    private static List<List<Fault>> distinct(List<Ranked> group) {
        Set<List<Fault>> out = new LinkedHashSet<>();
        group.stream().skip(1).forEach(w -> out.add(w.faults()));
        out.remove(group.get(0).faults());
        return List.copyOf(out);
    }

    private List<Diagnosis.Because> because(Weighed w) {
        record Scored(double score, Diagnosis.Because because) {}
        List<Scored> scored = new ArrayList<>();
        for (int r = 0; r < runs.size(); r++) {
            Evidence e = weigher.evidence().get(r);
            double gain = w.fits().get(r).gain();
            for (int i = 0; i < e.size(); i++) {
                if (w.fits().get(r).slip() == i) {
                    continue;
                }
                double gainBySound = e.square(nothing.predicted().get(r), gain, i)
                        - e.square(w.predicted().get(r), gain, i);
                scored.add(new Scored(
                        gainBySound,
                        new Diagnosis.Because(
                                runs.get(r).test(),
                                runs.get(r).readings().get(i),
                                PairReading.atScale(nothing.predicted().get(r)[i], gain),
                                PairReading.atScale(w.predicted().get(r)[i], gain))));
            }
        }
        return scored.stream()
                .filter(s -> s.score() > 0)
                .sorted(Comparator.comparingDouble((Scored s) -> -s.score()))
                .limit(3)
                .map(Scored::because)
                .toList();
    }

    private List<Diagnosis.Suspect> suspects(Weighed w) {
        List<Diagnosis.Suspect> out = new ArrayList<>();
        for (int r = 0; r < runs.size(); r++) {
            Evidence e = weigher.evidence().get(r);
            Evidence.Fit fit = w.fits().get(r);
            double[] squares = new double[e.size()];
            for (int i = 0; i < squares.length; i++) {
                squares[i] = e.square(w.predicted().get(r), fit.gain(), i);
            }
            double[] sorted = squares.clone();
            Arrays.sort(sorted);
            double usual = Math.max(sorted[sorted.length / 2], Weigher.USUAL_NOISE * Weigher.USUAL_NOISE);
            for (int i = 0; i < squares.length; i++) {
                if (i == fit.slip() || squares[i] > 64 * usual) {
                    PairReading reading = runs.get(r).readings().get(i);
                    double should = PairReading.atScale(w.predicted().get(r)[i], fit.gain());
                    out.add(new Diagnosis.Suspect(runs.get(r).test(), reading, should, advice(reading, should)));
                }
            }
        }
        return out;
    }

    private static String advice(PairReading reading, double should) {
        double ratio = reading.value() / should;
        String again = "; read this pair again";
        for (double slip : new double[] {10, 100, 1000}) {
            if (Math.abs(ratio / slip - 1) < 0.15) {
                return "about " + (int) slip + " times too much: a decimal point or a meter range?" + again;
            }
            if (Math.abs(ratio * slip - 1) < 0.15) {
                return "about " + (int) slip + " times too little: a decimal point or a meter range?" + again;
            }
        }
        if (Math.abs(ratio + 1) < 0.15) {
            return "the wrong sign: probes changed over?" + again;
        }
        return "it fits no fault that explains the others" + again;
    }
}
