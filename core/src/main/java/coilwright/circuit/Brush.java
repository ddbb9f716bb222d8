package coilwright.circuit;

import java.util.List;

/**
 * One brush at rest over the turning commutator.
 *
 * @param number 1..P, by the pole it belongs to
 * @param positive whether it joins the + terminal; odd brushes do (the other way where rotation or field is reversed)
 * @param angle of its middle, degrees clockwise from straight up, from the commutator end
 * @param bars the bars it touches, in clockwise order
 */
public record Brush(int number, boolean positive, double angle, List<Integer> bars) {
    /**
     * Copies the list.
     *
     * @param number 1..P, by the pole it belongs to
     * @param positive whether it joins the + terminal; odd brushes do (the other way where rotation or field is
     *     reversed)
     * @param angle of its middle, degrees clockwise from straight up, from the commutator end
     * @param bars the bars it touches, in clockwise order
     */
    public Brush {
        bars = List.copyOf(bars);
    }

    /** {@return + or −} */
    public String sign() {
        return positive ? "+" : "−";
    }
}
