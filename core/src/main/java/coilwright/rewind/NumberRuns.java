package coilwright.rewind;

import java.util.ArrayList;
import java.util.List;

/** Numbers of coils, slots or bars as they are written on a sheet. */
public final class NumberRuns {
    private NumberRuns() {}

    /**
     * {@return the numbers in their order, three and more in a row joined, as in "1–4, 7, 8, 12"; empty for none}
     *
     * @param numbers in any order
     */
    public static String of(List<Integer> numbers) {
        List<String> out = new ArrayList<>();
        int from = 0;
        while (from < numbers.size()) {
            int to = from;
            while (to + 1 < numbers.size() && numbers.get(to + 1) == numbers.get(to) + 1) {
                to++;
            }
            if (to - from >= 2) {
                out.add(numbers.get(from) + "–" + numbers.get(to));
                from = to + 1;
            } else {
                out.add(Integer.toString(numbers.get(from)));
                from++;
            }
        }
        return String.join(", ", out);
    }

    /** The same with the noun in front, in the plural for several: "coil 7", "coils 1–4". */
    static String of(String noun, List<Integer> numbers) {
        return noun + (numbers.size() == 1 ? " " : "s ") + of(numbers);
    }
}
