package coilwright.job;

import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotShape;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Section of a slot and what lines it. Each shape has its own sizes; those of another are refused.
 *
 * @param shape of the slot
 * @param width between parallel walls
 * @param topWidth of the body at its top
 * @param bottomWidth of the body at the floor, before its corners are rounded
 * @param depth from the core's surface to the floor; of a semi-closed slot from the shoulders to the floor
 * @param corner radius of the corners at the floor; sharp where empty
 * @param opening between the tooth tips
 * @param lip height of the neck between the tips
 * @param shoulder height over which the body narrows to the opening
 * @param liner thickness; none where empty
 * @param separator thickness between the layers; none where empty
 * @param wedge height that wedge, top stick and folded liner take; none where empty
 */
public record SlotSizes(
        SlotForm shape,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> width,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> topWidth,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> bottomWidth,
        @Measure(Quantity.Kind.LENGTH) Quantity depth,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> corner,

        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> opening,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> lip,

        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> shoulder,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> liner,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> separator,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> wedge) {
    /**
     * Checks that the shape's own sizes are given, no others, and that they belong together.
     *
     * @param shape of the slot
     * @param width between parallel walls
     * @param topWidth of the body at its top
     * @param bottomWidth of the body at the floor, before its corners are rounded
     * @param depth from the core's surface to the floor; of a semi-closed slot from the shoulders to the floor
     * @param corner radius of the corners at the floor; sharp where empty
     * @param opening between the tooth tips
     * @param lip height of the neck between the tips
     * @param shoulder height over which the body narrows to the opening
     * @param liner thickness; none where empty
     * @param separator thickness between the layers; none where empty
     * @param wedge height that wedge, top stick and folded liner take; none where empty
     * @throws IllegalArgumentException when they do not
     */
    public SlotSizes {
        Map<String, Optional<Quantity>> sizes = byKey(width, topWidth, bottomWidth, opening, lip, shoulder, corner);
        List<String> needed = needed(shape);
        List<String> missing = new ArrayList<>();
        for (String key : needed) {
            if (sizes.get(key).isEmpty()) {
                missing.add(key);
            }
        }
        if (!missing.isEmpty()) {
            throw new IllegalArgumentException(
                    "is a " + Words.of(shape) + " slot without " + String.join(", ", missing) + ": measure it");
        }
        List<String> taken = new ArrayList<>(needed);
        if (shape == SlotForm.PARALLEL_TOOTH || shape == SlotForm.SEMI_CLOSED) {
            taken.add("corner");
        }
        for (Map.Entry<String, Optional<Quantity>> size : sizes.entrySet()) {
            if (size.getValue().isPresent() && !taken.contains(size.getKey())) {
                throw new IllegalArgumentException("gives " + size.getKey() + ", but a " + Words.of(shape)
                        + " slot has only " + String.join(", ", taken)
                        + " and depth: leave it out, or choose another shape");
            }
        }
        shape(shape, sizes, depth);
    }

    private static Map<String, Optional<Quantity>> byKey(
            Optional<Quantity> width,
            Optional<Quantity> topWidth,
            Optional<Quantity> bottomWidth,
            Optional<Quantity> opening,
            Optional<Quantity> lip,
            Optional<Quantity> shoulder,
            Optional<Quantity> corner) {
        Map<String, Optional<Quantity>> sizes = new LinkedHashMap<>();
        sizes.put("width", width);
        sizes.put("topWidth", topWidth);
        sizes.put("bottomWidth", bottomWidth);
        sizes.put("opening", opening);
        sizes.put("lip", lip);
        sizes.put("shoulder", shoulder);
        sizes.put("corner", corner);
        return sizes;
    }

    private static List<String> needed(SlotForm shape) {
        return switch (shape) {
            case RECTANGULAR, ROUND_BOTTOM -> List.of("width");
            case PARALLEL_TOOTH -> List.of("topWidth", "bottomWidth");
            case SEMI_CLOSED -> List.of("topWidth", "bottomWidth", "opening", "lip", "shoulder");
        };
    }

    private static SlotShape shape(SlotForm form, Map<String, Optional<Quantity>> sizes, Quantity depth) {
        Map<String, Double> mm = new LinkedHashMap<>();
        for (Map.Entry<String, Optional<Quantity>> size : sizes.entrySet()) {
            mm.put(size.getKey(), mm(size.getValue()));
        }
        double deep = depth.in("mm");
        return switch (form) {
            case RECTANGULAR -> new SlotShape.Rectangular(mm.get("width"), deep);
            case ROUND_BOTTOM -> new SlotShape.RoundBottom(mm.get("width"), deep);
            case PARALLEL_TOOTH ->
                new SlotShape.ParallelTooth(mm.get("topWidth"), mm.get("bottomWidth"), deep, mm.get("corner"));
            case SEMI_CLOSED ->
                new SlotShape.SemiClosed(
                        mm.get("opening"),
                        mm.get("lip"),
                        mm.get("shoulder"),
                        mm.get("topWidth"),
                        mm.get("bottomWidth"),
                        deep,
                        mm.get("corner"));
        };
    }

    /** {@return the shape in millimetres} */
    public SlotShape slotShape() {
        Map<String, Optional<Quantity>> sizes = byKey(width, topWidth, bottomWidth, opening, lip, shoulder, corner);
        return shape(shape, sizes, depth);
    }

    /** {@return what it is lined with, in millimetres} */
    public SlotInsulation insulation() {
        return new SlotInsulation(mm(liner), mm(separator), mm(wedge));
    }

    private static double mm(Optional<Quantity> size) {
        return size.isPresent() ? size.get().in("mm") : 0;
    }
}
