package coilwright.rewind;

import coilwright.winding.Armature;
import coilwright.winding.WindingSearch;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;

/**
 * Another winding on the same core with the same coils, and what it does to voltage and current.
 *
 * <p>The voltage goes against the number of paths and the current with it; the power stays. Source: the EMF examples of
 * {@link coilwright.winding.References#BAKSHI}.
 *
 * @param candidate winding that fits the core
 * @param paths its parallel paths
 * @param voltsFactor new voltage over old, same speed and flux
 * @param ampsFactor new current over old, same current density
 * @param resistanceFactor new brush-to-brush resistance over old
 */
public record OtherWinding(
        WindingSearch.Candidate candidate, int paths, double voltsFactor, double ampsFactor, double resistanceFactor) {

    /** {@return its kind} */
    public WindingType type() {
        return candidate.winding().type();
    }

    /**
     * {@return every lap and wave winding that fits the core and commutator, best first, against one with a given
     * number of paths} Frog-leg windings are left out: they have twice the coils.
     *
     * @param armature core and commutator
     * @param pathsNow parallel paths of the present winding
     */
    public static List<OtherWinding> on(Armature armature, int pathsNow) {
        Require.atLeast("parallel paths", pathsNow, 2);
        List<OtherWinding> out = new ArrayList<>();
        var query = WindingSearch.Query.of(armature.slots(), armature.poles(), armature.bars());
        for (WindingSearch.Candidate c : WindingSearch.find(query).possible()) {
            if (c.winding().type() == WindingType.FROG_LEG) {
                continue;
            }
            c.winding().parallelPaths().ifPresent(a -> {
                double ratio = (double) a / pathsNow;
                out.add(new OtherWinding(c, a, 1 / ratio, ratio, 1 / (ratio * ratio)));
            });
        }
        return List.copyOf(out);
    }
}
