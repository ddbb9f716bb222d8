package coilwright.winding;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A run of coils wound by one rule. Lap and wave windings have one set, a frog-leg winding two (lap first), a listed
 * winding one.
 *
 * @param type lap, wave or listed
 * @param plex m of this set; empty for a listed set
 * @param direction empty for a listed set
 * @param pitches empty where a listed winding has no even step
 * @param firstCoil number of its first coil
 * @param coilCount how many coils, dead ones included
 */
public record CoilSet(
        WindingType type,
        OptionalInt plex,
        Optional<Direction> direction,
        Optional<Pitches> pitches,
        int firstCoil,
        int coilCount) {}
