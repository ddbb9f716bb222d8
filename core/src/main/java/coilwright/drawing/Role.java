package coilwright.drawing;

import java.util.Locale;

/** What a shape stands for. Its class name in SVG never changes. */
public enum Role {
    /** The white of the page. */
    PAPER,
    /** A coil with all its parts. */
    COIL,
    /** The half of a coil next to the air gap: solid. */
    COIL_TOP,
    /** The half of a coil at the slot floor: dashed. */
    COIL_BOTTOM,
    /** A wave coil of a frog-leg winding. */
    SECOND_SET,
    /** A coil with no lead on any bar. */
    DEAD,
    /** The insulated end of a lead that lands on no bar. */
    CAP,
    /** A commutator bar. */
    BAR,
    /** A slot. */
    SLOT,
    /** The iron between the slots. */
    CORE,
    /** The open space of the slots in the iron. */
    OPENING,
    /** The shaft. */
    SHAFT,
    /** A pole. */
    POLE,
    /** A north pole, marked N. */
    NORTH,
    /** A south pole, marked S. */
    SOUTH,
    /** A brush. */
    BRUSH,
    /** A wire outside the armature. */
    WIRE,
    /** A place found faulty. */
    FAULT,
    /** The coil, bar or slot asked for: heavy lines. */
    HIGHLIGHT,
    /** The white band beneath a heavy line that parts it from what it crosses. */
    HALO,
    /** A thin line that leads from a label to what it names. */
    LEADER,
    /** A thin line that helps to measure. */
    GUIDE,
    /** A number or a word beside a thing. */
    LABEL,
    /** The title of a drawing. */
    TITLE,
    /** Words in the margin. */
    NOTE,
    /** The explanation of lines and signs. */
    LEGEND,
    /** The plate behind a label. */
    PLATE,
    /** A shape within a crowded drawing: thin lines. */
    DENSE,
    /** A shape within a very crowded drawing: hair lines. */
    FINE,
    /** A coil box of the paths drawing. */
    BOX,
    /** A coil shorted by a brush. */
    SHORTED,
    /** The iron of a growler. */
    GROWLER,
    /** A face of a growler. */
    FACE,
    /** A line of flux at one instant. */
    FLUX,
    /** A probe and its lead. */
    PROBE,
    /** The round sign of a meter, a battery or a lamp. */
    INSTRUMENT,
    /** The frame or zero line of a chart. */
    AXIS,
    /** A line across a chart that helps to read a value. */
    GRID,
    /** A value that a sound winding should read: an empty bar. */
    EXPECTED,
    /** A value that was read: a dot. */
    READ,
    /** A value that a supposed fault explains: a cross. */
    EXPLAINED,
    /** A line of a table or a sheet. */
    RULE,
    /** The head of a table. */
    HEAD,
    /** The box around what can hurt someone or mislead. */
    CAUTION,
    /** A small square to tick. */
    TICK,
    /** A coil found as planned, where others are not: thin grey lines. */
    QUIET,
    /** A coil whose slots are as planned and whose leads are not: solid lines. */
    CHANGED,
    /** A lead planned and not found: dashed, with a ring on its bar. */
    PLANNED_LEAD,
    /** A lead found where none was planned: solid and heavy, with a dot on its bar. */
    FOUND_LEAD,
    /** A coil planned and not found in its slots: dashed. */
    PLANNED_SIDE,
    /** A coil found in slots where it was not planned: solid and heavy. */
    FOUND_SIDE,
    /** A coil cut out, its leads lifted: solid and heavy, with crosses. */
    LIFTED,
    /** A coil that carries nothing because another is cut out. */
    IDLE,
    /** A jumper between two bars: the heaviest line. */
    BRIDGE,
    /** The liner of a slot. */
    LINER,
    /** The separator between the layers of a slot. */
    SEPARATOR,
    /** The wedge that closes a slot. */
    WEDGE,
    /** The covering of a conductor in section. */
    COVERING,
    /** Copper of the top layer in section: light. */
    COPPER_TOP,
    /** Copper of the bottom layer in section: dark. */
    COPPER_BOTTOM,
    /** A dimension line. */
    DIMENSION,
    /** The run-out from bar to bar as read. */
    TRACE,
    /** The circle off centre that fits a trace best: dashed. */
    FIT,
    /** The path of the turning tool: heavy. */
    TOOL,
    /** A bar after the cut: a ring. */
    AFTER,
    /** A bar that needs a look: highest, lowest, or not with the others. */
    STANDOUT,
    /** Parallel path 1, and every eighth after it. */
    PATH_1,
    /** Parallel path 2, and every eighth after it. */
    PATH_2,
    /** Parallel path 3, and every eighth after it. */
    PATH_3,
    /** Parallel path 4, and every eighth after it. */
    PATH_4,
    /** Parallel path 5, and every eighth after it. */
    PATH_5,
    /** Parallel path 6, and every eighth after it. */
    PATH_6,
    /** Parallel path 7, and every eighth after it. */
    PATH_7,
    /** Parallel path 8, and every eighth after it. */
    PATH_8;

    private final String className = name().toLowerCase(Locale.ROOT).replace('_', '-');

    /** {@return the class name, as in {@code coil-top}} */
    public String className() {
        return className;
    }

    /**
     * {@return the role of a parallel path; path 9 looks like path 1 again}
     *
     * @param number 1 and up
     */
    public static Role path(int number) {
        return valueOf("PATH_" + (1 + Math.floorMod(number - 1, 8)));
    }
}
