package coilwright.winding;

/**
 * Where one side of a coil lies.
 *
 * @param slot 1..S
 * @param position 1..Q within its layer; position q lies in slot ceil(q/u)
 * @param layer 1 is next to the air gap; 2 at the floor of a two-layer slot, up to 4 in a frog-leg winding
 */
public record CoilSide(int slot, int position, int layer) {}
