package coilwright.fault;

import java.util.List;

/**
 * One explanation weighed against the readings.
 *
 * @param faults together; none for a sound winding
 * @param logWeight logarithm of its likelihood times its prior
 * @param predicted readings it predicts, run by run
 * @param fits how it fits each run
 */
record Weighed(List<Fault> faults, double logWeight, double[][] predicted, List<Evidence.Fit> fits) {}
