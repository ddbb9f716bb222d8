package coilwright.fault;

import java.util.List;

/**
 * One explanation weighed against the readings.
 *
 * @param faults together; none for a sound winding
 * @param logWeight logarithm of its likelihood times its prior
 * @param plain the like with no reading taken for a slip: smooth in a fault's size
 * @param predicted readings it predicts, run by run
 * @param fits how it fits each run
 */
record Weighed(List<Fault> faults, double logWeight, double plain, List<double[]> predicted, List<Evidence.Fit> fits) {}
