/**
 * The window: shows and changes a job, draws its winding, and guides through a run of readings at the bench.
 *
 * <p>Holds no rule and no formula: what can be wound, what should be read and what is wrong all come from the library.
 * Everything slow is worked out off the event thread ({@link coilwright.desktop.Background}).
 */
package coilwright.desktop;
