package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Looks for two faults at once: every two of the main kinds (open coil, shorted coil or turns, bad joint, neighbouring
 * bars joined) at every two places that the {@link Screen} cannot rule out; every two joints of neighbouring bars that
 * belong to different circuits, and every such joint beside one fault of the main kinds; and every two grounds.
 */
final class PairSearch {
    /** Pairs this many times less likely than the best explanation are not looked at. */
    private static final double LEAST = Math.log(1e-3);

    /** An explanation that leaves more than this relative error is not the whole truth. */
    private static final double TOO_MUCH = 0.025;

    private static final int SMALL = 60;
    private static final int MOST_PLACES = 60;
    private static final int MOST_PLACES_SMALL = 120;
    private static final int MOST_FINE = 2;
    private static final int MOST_GROUNDS_FINE = 12;
    private static final int MOST_GROUND_BARS = 40;
    private static final double[] SIZES = {0.03, 0.2, 0.4, 0.6, 0.85};
    private static final double[] ALONG = {0.2, 0.5, 0.8};
    /** Where there is no size to choose. */
    private static final double[] FIXED = {0};

    private final BenchArmature armature;
    private final Weigher weigher;
    private final List<Place> places;
    private final List<Weighed> out = new ArrayList<>();
    private Weighed best;

    /**
     * A search.
     *
     * @param best explanation so far
     */
    PairSearch(BenchArmature armature, Weigher weigher, List<Place> places, Weighed best) {
        this.armature = armature;
        this.weigher = weigher;
        this.places = places;
        this.best = best;
    }

    /**
     * Looks.
     *
     * @param grounded whether a reading shows that something is joined to the shaft
     */
    List<Weighed> search(boolean grounded) {
        mainKinds(false);
        // Readings without sign may rule too much out; the others get a say of their own where much is left
        // unexplained.
        if (weigher.noise(best) > TOO_MUCH || best.fits().stream().anyMatch(f -> f.slip() >= 0)) {
            mainKinds(true);
        }
        acrossCircuits();
        if (grounded) {
            grounds();
        }
        out.sort(Comparator.comparingDouble((Weighed w) -> -w.logWeight()));
        for (Weighed w : List.copyOf(out.subList(0, Math.min(2, out.size())))) {
            out.addAll(likes(w));
        }
        return out;
    }

    private int bars() {
        return armature.winding().armature().bars();
    }

    private void add(Weighed w) {
        best = w.logWeight() > best.logWeight() ? w : best;
        out.add(w);
    }

    // ---- the main kinds ---------------------------------------------------------------------------------------------

    private void mainKinds(boolean onlySigned) {
        int most = bars() <= SMALL ? MOST_PLACES_SMALL : MOST_PLACES;
        double prior = 0;
        for (Place p : places) {
            for (Place.Mode m : p.modes()) {
                prior = Math.max(prior, m.prior());
            }
        }
        double limit = weigher.squaresFor(best.logWeight() + LEAST, logPrior(prior, prior));
        List<Screen.Hit> hits = new ArrayList<>();
        for (boolean twoBreaks : new boolean[] {false, true}) {
            Screen screen = Screen.of(weigher.models(), weigher.evidence(), places, twoBreaks, onlySigned);
            if (!screen.empty()) {
                hits.addAll(screen.pairs(limit, most));
            }
        }
        hits.sort(Comparator.comparingDouble(Screen.Hit::squares));
        for (Screen.Hit hit : hits) {
            Place.Mode first = mode(hit.first(), hit.firstMode());
            Place.Mode second = mode(hit.second(), hit.secondMode());
            double logPrior = logPrior(first.prior(), second.prior());
            if (weigher.most(logPrior, 0, hit.squares()) >= best.logWeight() + LEAST) {
                look(first.candidates(), second.candidates(), hit.squares());
            }
        }
    }

    private Place.Mode mode(int place, int mode) {
        return places.get(place).modes().get(mode);
    }

    private static double logPrior(double first, double second) {
        return Math.log(Priors.SECOND * first * second);
    }

    /** Every two of some faults at a few sizes, and the likeliest of them at their best sizes. */
    private void look(List<Candidate> firsts, List<Candidate> seconds, double squares) {
        record Found(Candidate a, Candidate b, TwoSizes.Rough rough) {}
        List<Found> found = new ArrayList<>();
        for (Candidate a : firsts) {
            for (Candidate b : seconds) {
                int sizes = (a.sized() ? 1 : 0) + (b.sized() ? 1 : 0);
                if (weigher.most(logPrior(a.prior(), b.prior()), sizes, squares) >= best.logWeight() + LEAST) {
                    found.add(new Found(a, b, rough(a, b)));
                }
            }
        }
        found.sort(Comparator.comparingDouble((Found f) -> -f.rough().weighed().plain()));
        int fine = 0;
        for (Found f : found) {
            boolean sized = f.a().sized() || f.b().sized();
            if (sized && fine < MOST_FINE) {
                fine++;
                add(TwoSizes.fine(f.rough(), f.a().sized(), f.b().sized(), (x, y) -> weigh(f.a(), x, f.b(), y)));
            } else {
                add(f.rough().weighed());
            }
        }
    }

    private Weighed weigh(Candidate a, double x, Candidate b, double y) {
        return weigher.weigh(
                List.of(a.fault().apply(x), b.fault().apply(y)),
                logPrior(a.prior(), b.prior()),
                (a.sized() ? 1 : 0) + (b.sized() ? 1 : 0));
    }

    private TwoSizes.Rough rough(Candidate a, Candidate b) {
        return TwoSizes.coarse(a.sized() ? SIZES : FIXED, b.sized() ? SIZES : FIXED, (x, y) -> weigh(a, x, b, y));
    }

    /** The same pair with one or both faults of fixed size told by their like between the same two bars. */
    private List<Weighed> likes(Weighed pair) {
        List<Weighed> more = new ArrayList<>();
        for (Candidate a : at(pair.faults().get(0))) {
            for (Candidate b : at(pair.faults().get(1))) {
                Fault first = a.sized() ? pair.faults().get(0) : a.fault().apply(0);
                Fault second = b.sized() ? pair.faults().get(1) : b.fault().apply(0);
                List<Fault> faults = List.of(first, second);
                if (!faults.equals(pair.faults())) {
                    int sizes = (a.sized() ? 1 : 0) + (b.sized() ? 1 : 0);
                    more.add(weigher.weigh(faults, logPrior(a.prior(), b.prior()), sizes));
                }
            }
        }
        return more;
    }

    private List<Candidate> at(Fault fault) {
        for (Place p : places) {
            List<Candidate> all =
                    p.modes().stream().flatMap(m -> m.candidates().stream()).toList();
            boolean here = all.stream().anyMatch(c -> {
                Fault f = c.fault().apply(0.5);
                return f.kind().equals(fault.kind())
                        && f.coils().equals(fault.coils())
                        && f.bars().equals(fault.bars());
            });
            if (here) {
                return all.stream()
                        .filter(c -> !c.sized() || c.kind().equals(fault.kind()))
                        .toList();
            }
        }
        return List.of();
    }

    // ---- joints across circuits -------------------------------------------------------------------------------------

    private void acrossCircuits() {
        Armature a = armature.winding().armature();
        double prior = Priors.BAR_SHORT / a.bars();
        List<Fault.BarShort> joints = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            if (!weigher.sound().joined(bar, a.wrapBar(bar + 1))) {
                joints.add(new Fault.BarShort(bar, a.wrapBar(bar + 1)));
            }
        }
        boolean shown = shownAcross();
        for (int j = 0; j < joints.size(); j++) {
            for (int k = j + 1; k < joints.size(); k++) {
                Weighed w = weigher.weigh(List.of(joints.get(j), joints.get(k)), logPrior(prior, prior), 0);
                if (w.logWeight() >= best.logWeight() + LEAST) {
                    add(w);
                }
            }
        }
        // One joint by itself changes nothing within a circuit, so that only readings across them tell of it.
        if (shown) {
            besideAcross(joints, prior);
        }
    }

    /** Whether a reading between bars that nothing should join shows that something does. */
    private boolean shownAcross() {
        for (int r = 0; r < weigher.models().size(); r++) {
            RunModel model = weigher.models().get(r);
            for (int i = 0; i < model.size() && model.quick(); i++) {
                double value = weigher.evidence().get(r).data(i);
                if (model.floats(i) && value != 0 && !Double.isInfinite(value)) {
                    return true;
                }
            }
        }
        return false;
    }

    private void besideAcross(List<Fault.BarShort> joints, double prior) {
        record Hit(Fault.BarShort joint, Place.Mode mode, double squares) {}
        List<Hit> hits = new ArrayList<>();
        for (Fault.BarShort joint : joints) {
            Screen screen = Screen.of(weigher.models(joint), weigher.evidence(), places);
            for (int p = 0; p < places.size(); p++) {
                for (int m = 0; m < places.get(p).modes().size(); m++) {
                    Place.Mode mode = mode(p, m);
                    double squares = screen.single(p, m);
                    if (weigher.most(logPrior(prior, mode.prior()), 0, squares) >= best.logWeight() + LEAST) {
                        hits.add(new Hit(joint, mode, squares));
                    }
                }
            }
        }
        hits.sort(Comparator.comparingDouble(Hit::squares));
        for (Hit hit : hits.subList(0, Math.min(MOST_PLACES_SMALL, hits.size()))) {
            if (weigher.most(logPrior(prior, hit.mode().prior()), 0, hit.squares()) >= best.logWeight() + LEAST) {
                look(List.of(Candidate.fixed(hit.joint(), prior)), hit.mode().candidates(), hit.squares());
            }
        }
    }

    // ---- two grounds ------------------------------------------------------------------------------------------------

    /** A place to be grounded: a bar, or a coil anywhere along it. */
    private record Ground(int number, boolean isCoil) {
        Fault at(double share) {
            return isCoil ? Candidate.groundedAt(number, share) : new Fault.Ground(Point.bar(number));
        }
    }

    /** Two places grounded, weighed at a few places along the coils among them. */
    private record TwoGrounds(Ground a, Ground b, TwoSizes.Rough rough) {
        double logWeight() {
            return rough.weighed().logWeight();
        }
    }

    private void grounds() {
        List<TwoGrounds> found = bars() <= SMALL ? everyTwoGrounds() : likelyGrounds();
        found.sort(Comparator.comparingDouble((TwoGrounds f) -> -f.logWeight()));
        for (int i = 0; i < found.size(); i++) {
            TwoGrounds f = found.get(i);
            if (i < MOST_GROUNDS_FINE && (f.a().isCoil() || f.b().isCoil())) {
                add(TwoSizes.fine(f.rough(), f.a().isCoil(), f.b().isCoil(), (x, y) -> weigh(f.a(), x, f.b(), y)));
            } else if (f.logWeight() >= best.logWeight() + LEAST) {
                add(f.rough().weighed());
            }
        }
    }

    private List<TwoGrounds> everyTwoGrounds() {
        List<Ground> all = new ArrayList<>(onBars());
        for (Coil c : Diagnoser.live(armature)) {
            all.add(new Ground(c.number(), true));
        }
        return everyTwo(all);
    }

    /** What a ground along a coil reads lies between what the bars of its leads do, so that bars are tried first. */
    private List<TwoGrounds> likelyGrounds() {
        Map<Integer, List<Ground>> near = new LinkedHashMap<>();
        onBars().forEach(g ->
                near.computeIfAbsent(g.number(), x -> new ArrayList<>()).add(g));
        for (Coil c : Diagnoser.live(armature)) {
            CoilState state = armature.coil(c.number());
            near.get(state.topBar().getAsInt()).add(new Ground(c.number(), true));
            near.get(state.bottomBar().getAsInt()).add(new Ground(c.number(), true));
        }
        List<TwoGrounds> coarse = everyTwo(onBars());
        coarse.sort(Comparator.comparingDouble((TwoGrounds f) -> -f.logWeight()));
        List<TwoGrounds> out = new ArrayList<>();
        for (TwoGrounds f : coarse.subList(0, Math.min(MOST_GROUND_BARS, coarse.size()))) {
            for (Ground a : near.get(f.a().number())) {
                for (Ground b : near.get(f.b().number())) {
                    if (!a.equals(b)) {
                        out.add(new TwoGrounds(a, b, rough(a, b)));
                    }
                }
            }
        }
        return out;
    }

    private List<Ground> onBars() {
        return IntStream.rangeClosed(1, bars())
                .mapToObj(bar -> new Ground(bar, false))
                .toList();
    }

    private List<TwoGrounds> everyTwo(List<Ground> grounds) {
        List<TwoGrounds> out = new ArrayList<>();
        for (int j = 0; j < grounds.size(); j++) {
            for (int k = j + 1; k < grounds.size(); k++) {
                out.add(new TwoGrounds(grounds.get(j), grounds.get(k), rough(grounds.get(j), grounds.get(k))));
            }
        }
        return out;
    }

    private TwoSizes.Rough rough(Ground a, Ground b) {
        return TwoSizes.coarse(a.isCoil() ? ALONG : FIXED, b.isCoil() ? ALONG : FIXED, (x, y) -> weigh(a, x, b, y));
    }

    private Weighed weigh(Ground a, double x, Ground b, double y) {
        double prior = Priors.GROUND / 2 / Math.max(1, bars());
        return weigher.weigh(
                List.of(a.at(x), b.at(y)), logPrior(prior, prior), (a.isCoil() ? 1 : 0) + (b.isCoil() ? 1 : 0));
    }
}
