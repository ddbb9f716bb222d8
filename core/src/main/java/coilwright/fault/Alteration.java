package coilwright.fault;

/**
 * A change between two bars: more conductance, and more of what a source drives through it.
 *
 * @param from bar
 * @param to bar
 * @param conductance added, siemens; infinite where the bars are joined
 * @param coil number of the coil whose voltage drives the added source, or 0
 * @param drive siemens by which that coil's voltage is multiplied to give the added source current
 */
record Alteration(int from, int to, double conductance, int coil, double drive) {
    static Alteration joined(int from, int to) {
        return new Alteration(from, to, Double.POSITIVE_INFINITY, 0, 0);
    }
}
