package coilwright.drawing;

import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A winding and what is laid over it.
 *
 * @param winding gives every coil drawn its place in the slots; its numbers of coils need not be those shown
 * @param marks by the winding's number of a coil; a coil without is drawn as usual
 * @param bridge two bars joined by a jumper; empty where none are
 * @param words what stands beside it; empty for the winding alone, with brushes and the usual legend
 */
record Overlay(Winding winding, Map<Integer, Mark> marks, List<Integer> bridge, Optional<Words> words) {
    /**
     * One end of a coil.
     *
     * @param bar where it lands; empty where it lands on none
     * @param role how it is drawn; {@link Role#COIL} for as the rest of the coil
     */
    record Lead(OptionalInt bar, Role role) {
        static Lead usual(OptionalInt bar) {
            return new Lead(bar, Role.COIL);
        }
    }

    /**
     * How a coil is drawn.
     *
     * @param number the number shown
     * @param prefix keeps ids apart where a number is drawn twice
     * @param title for a person who points at it
     * @param look how its sides are drawn; {@link Role#COIL} for as usual
     * @param top its top lead, as planned and as found
     * @param bottom its bottom lead, as planned and as found
     * @param cut whether it is cut through at the back end
     */
    record Mark(int number, String prefix, String title, Role look, List<Lead> top, List<Lead> bottom, boolean cut) {}

    /** A line of the legend. */
    record Sample(Role role, String words) {}

    /**
     * What stands beside the drawing.
     *
     * @param name of the drawing, where the job has none
     * @param what one line
     * @param mirrored whether the numbers run counter-clockwise seen from the commutator end
     * @param legend lines and their meaning
     * @param notes the differences in words
     * @param caution what can mislead or hurt; empty where nothing does
     */
    record Words(String name, String what, boolean mirrored, List<Sample> legend, List<String> notes, String caution) {}

    /** A winding alone. */
    static Overlay none(Winding winding) {
        return new Overlay(winding, Map.of(), List.of(), Optional.empty());
    }

    boolean plain() {
        return words.isEmpty();
    }

    Optional<Mark> mark(Coil c) {
        return Optional.ofNullable(marks.get(c.number()));
    }

    int number(Coil c) {
        Mark m = marks.get(c.number());
        return m == null ? c.number() : m.number();
    }

    /** The largest number shown. */
    int lastNumber() {
        int last = winding.coils().get(winding.coils().size() - 1).number();
        return marks.isEmpty()
                ? last
                : marks.values().stream().mapToInt(Mark::number).max().orElse(last);
    }

    List<Lead> leads(Coil c, boolean top) {
        Mark m = marks.get(c.number());
        if (m == null) {
            return List.of(Lead.usual(top ? c.topBar() : c.bottomBar()));
        }
        return top ? m.top() : m.bottom();
    }

    Role look(Coil c) {
        Mark m = marks.get(c.number());
        return m == null ? Role.COIL : m.look();
    }

    /** Whether a coil is painted after the others. */
    boolean front(Coil c) {
        return marks.containsKey(c.number()) && look(c) != Role.QUIET;
    }

    /** Coils in the order of painting: those that stand out last, heavy ones after dashed ones. */
    List<Coil> inFront() {
        List<Coil> out =
                new ArrayList<>(winding.coils().stream().filter(this::front).toList());
        out.sort(Comparator.comparing(c -> look(c) == Role.FOUND_SIDE || look(c) == Role.LIFTED));
        return out;
    }

    /** Whether a part of a coil is drawn in a heavy line. */
    boolean heavy(Coil c, Shape part) {
        boolean own = part.roles().contains(Role.COIL_TOP) || part.roles().contains(Role.COIL_BOTTOM);
        return part.roles().contains(Role.FOUND_LEAD)
                || part.roles().contains(Role.LIFTED)
                || (own && (look(c) == Role.FOUND_SIDE || look(c) == Role.LIFTED));
    }

    /** Whether so few coils stand out that a white band may part them from what they cross. */
    boolean few() {
        long front = winding.coils().stream().filter(this::front).count();
        return front <= Math.max(3, winding.coils().size() / 6);
    }

    /** What a coil is called on the page: its number, in brackets where it is dead. */
    String label(Coil c) {
        boolean dead = leads(c, true).stream().allMatch(l -> l.bar().isEmpty())
                && leads(c, false).stream().allMatch(l -> l.bar().isEmpty());
        return dead ? "(" + number(c) + ")" : Integer.toString(number(c));
    }

    /** The role of a lead's line. */
    static Role line(Lead lead, boolean top) {
        if (lead.role() == Role.LIFTED) {
            return Role.PLANNED_LEAD;
        }
        return lead.role() == Role.COIL ? (top ? Role.COIL_TOP : Role.COIL_BOTTOM) : lead.role();
    }
}
