package coilwright.winding;

import java.util.OptionalInt;

/**
 * The pitches of a winding.
 *
 * <p>Back, front and resultant pitch are counted in conductors (top sides odd, bottom sides even), as the textbooks
 * do: Yb = 2·y1 + 1, Yf = 2·(yc − y1) − 1, Y = Yb + Yf = 2·yc. Source: {@link References#THERAJA}.
 *
 * @param backSpan y1, positions spanned at the back
 * @param commutator yc, bars, signed
 * @param sidesPerSlot u, coil sides per layer in a slot
 */
public record Pitches(int backSpan, int commutator, int sidesPerSlot) {
    /** {@return Yb, conductors; always odd} */
    public int back() {
        return 2 * backSpan + 1;
    }

    /** {@return Yf with its sign, conductors; always odd} Negative in a lap winding; the books print its size. */
    public int frontSigned() {
        return 2 * (commutator - backSpan) - 1;
    }

    /** {@return |Yf|, as the books print it} */
    public int front() {
        return Math.abs(frontSigned());
    }

    /** {@return |Y|, conductors; always even} */
    public int resultant() {
        return Math.abs(back() + frontSigned());
    }

    /** {@return slots spanned by every coil, where all coils of a slot go to one slot; empty for a stepped coil} */
    public OptionalInt throwSlots() {
        return backSpan % sidesPerSlot == 0 ? OptionalInt.of(backSpan / sidesPerSlot) : OptionalInt.empty();
    }

    /** {@return the coil throw as the trade writes it, both slots counted: 1–5, or 1–5 and 1–6 of stepped coils} */
    public String coilThrow() {
        int low = backSpan / sidesPerSlot;
        return "1–" + (1 + low) + (stepped() ? " and 1–" + (2 + low) : "");
    }

    /**
     * {@return closed circuits that coils of this commutator pitch make by rule, gcd(K, |yc|)} Source:
     * {@link References#ARNOLD}.
     *
     * @param bars K
     */
    public int closures(int bars) {
        int a = bars;
        int b = Math.abs(commutator);
        while (b != 0) {
            int rest = a % b;
            a = b;
            b = rest;
        }
        return a;
    }

    /** {@return mean span in slots, y1/u} */
    public double meanThrow() {
        return (double) backSpan / sidesPerSlot;
    }

    /** {@return whether the coils of one slot split over two slots (a stepped, or split-throw, winding)} */
    public boolean stepped() {
        return throwSlots().isEmpty();
    }
}
