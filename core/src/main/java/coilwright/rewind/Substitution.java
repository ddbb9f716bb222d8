package coilwright.rewind;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What else could be wound in place of a wire that is not to be had. */
public final class Substitution {
    private Substitution() {}

    /** What counts first. */
    public enum Rank {
        /** Nearest copper area, then least room. */
        AREA,
        /** Nearest room in the slot, then nearest copper area. */
        FIT
    }

    /**
     * What is wanted and what may be offered.
     *
     * @param areaMm2 copper area of one turn
     * @param roomMm2 room of one turn in square packing, to compare fit with
     * @param builds the covering to be used in each system; a system left out is not offered
     * @param mostInHand 1 to 8 wires in hand
     * @param within largest difference of area offered, as a fraction, such as 0.10
     */
    public record Wanted(
            double areaMm2, double roomMm2, Map<WireSystem, InsulationBuild> builds, int mostInHand, double within) {
        /**
         * Checks the ranges.
         *
         * @param areaMm2 copper area of one turn
         * @param roomMm2 room of one turn in square packing, to compare fit with
         * @param builds the covering to be used in each system; a system left out is not offered
         * @param mostInHand 1 to 8 wires in hand
         * @param within largest difference of area offered, as a fraction, such as 0.10
         * @throws IllegalArgumentException when a value is out of range
         */
        public Wanted {
            Require.positive("wanted area", areaMm2, "mm²");
            Require.positive("wanted room", roomMm2, "mm²");
            if (mostInHand < 1 || mostInHand > 8) {
                throw new IllegalArgumentException(
                        "wires in hand are up to " + mostInHand + ", but must be from 1 to 8");
            }
            Require.positive("allowed difference", within, "");
            builds = Collections.unmodifiableMap(new LinkedHashMap<>(builds));
            if (builds.isEmpty()) {
                throw new IllegalArgumentException("no wire system is to be offered: name AWG, METRIC or SWG");
            }
        }

        /**
         * {@return what is wanted in place of a conductor: every system with the build nearest to its own, three in
         * hand, within a tenth}
         *
         * @param conductor the one to be replaced
         */
        public static Wanted inPlaceOf(Conductor conductor) {
            Map<WireSystem, InsulationBuild> builds = new LinkedHashMap<>();
            InsulationBuild own =
                    conductor instanceof Conductor.Round r ? r.wire().build() : InsulationBuild.IEC_GRADE_2;
            for (WireSystem system : WireSystem.values()) {
                builds.put(system, like(own, system));
            }
            return new Wanted(conductor.areaMm2(), conductor.roomMm2(), builds, 3, 0.10);
        }

        private static InsulationBuild like(InsulationBuild build, WireSystem system) {
            boolean american = system == WireSystem.AWG;
            return switch (build) {
                case BARE -> InsulationBuild.BARE;
                case IEC_GRADE_1, NEMA_SINGLE -> american ? InsulationBuild.NEMA_SINGLE : InsulationBuild.IEC_GRADE_1;
                case IEC_GRADE_2, NEMA_HEAVY, DOUBLE_COTTON ->
                    american ? InsulationBuild.NEMA_HEAVY : InsulationBuild.IEC_GRADE_2;
                case IEC_GRADE_3, NEMA_TRIPLE -> american ? InsulationBuild.NEMA_TRIPLE : InsulationBuild.IEC_GRADE_3;
            };
        }
    }

    /**
     * One thing to wind instead.
     *
     * @param conductor wire and number in hand
     * @param areaDifference (its area − wanted)/wanted
     * @param roomDifference (its room − wanted)/wanted
     */
    public record Option(Conductor.Round conductor, double areaDifference, double roomDifference) {
        /**
         * Checks that there is a conductor.
         *
         * @param conductor wire and number in hand
         * @param areaDifference (its area − wanted)/wanted
         * @param roomDifference (its room − wanted)/wanted
         */
        public Option {
            Objects.requireNonNull(conductor, "conductor");
        }

        /** {@return resistance of the winding over that with the wanted area} */
        public double resistanceFactor() {
            return 1 / (1 + areaDifference);
        }
    }

    /**
     * {@return all options within the allowed difference, best first; ties by fewest in hand}
     *
     * @param wanted area, systems and builds to look among
     * @param rank what counts as best
     */
    public static List<Option> options(Wanted wanted, Rank rank) {
        List<Option> out = new ArrayList<>();
        wanted.builds().forEach((system, build) -> {
            for (WireSize size : WireSizes.all(system)) {
                if (build.overall(size).isEmpty()) {
                    continue;
                }
                RoundWire wire = RoundWire.of(size, build);
                for (int strands = 1; strands <= wanted.mostInHand(); strands++) {
                    var conductor = new Conductor.Round(wire, strands);
                    double area = conductor.areaMm2() / wanted.areaMm2() - 1;
                    if (Math.abs(area) <= wanted.within() + 1e-12) {
                        out.add(new Option(conductor, area, conductor.roomMm2() / wanted.roomMm2() - 1));
                    }
                }
            }
        });
        Comparator<Option> area = Comparator.comparingDouble(o -> Math.abs(o.areaDifference()));
        Comparator<Option> fit = Comparator.comparingDouble(o -> Math.abs(o.roomDifference()));
        Comparator<Option> order = rank == Rank.AREA
                ? area.thenComparing(Comparator.comparingDouble(Option::roomDifference))
                : fit.thenComparing(area);
        out.sort(order.thenComparingInt(o -> o.conductor().strands())
                .thenComparing(o -> o.conductor().label()));
        return List.copyOf(out);
    }
}
