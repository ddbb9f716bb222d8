package coilwright.drawing;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import java.util.function.IntConsumer;

/**
 * Where everything lies on a winding rolled out flat, mm. x runs along the circumference from the middle of slot 1 and
 * repeats after {@link #around}; y runs down the page, the back end above.
 */
final class DevelopedPlan {
    static final double MARGIN = 16.5;
    static final double APEX = 35;
    static final double BEND = 76;
    static final double CORE_TOP = 85;
    static final double LEAD_END = 150;
    static final double BAR_TOP = 153;
    static final double BAR_BOTTOM = 162;
    static final double LEGEND = 190;

    private static final double ROOM = Canvas.LONG - 2 * MARGIN;
    private static final double MOST_PITCH = 44;

    final Winding winding;
    final Armature armature;
    final double fontSize;
    final double around;
    final double slotPitch;
    final double barPitch;
    final double positionPitch;
    final boolean dense;
    final double coreBottom;
    final double leadStart;
    final int slotsPerPage;
    private final Overlay overlay;
    private final double layerGap;
    private final double slopeHeight;

    DevelopedPlan(Overlay overlay, PageFormat format) {
        this.overlay = overlay;
        this.winding = overlay.winding();
        this.armature = winding.armature();
        double font = 3.2;
        while (font > Canvas.SMALL && leastPitch(font) * (armature.slots() + overhang(true)) > ROOM) {
            font = Math.max(Canvas.SMALL, font - 0.2);
        }
        this.fontSize = font;
        double least = leastPitch(font);
        double pitch = Math.max(least, Math.min(MOST_PITCH, ROOM / (armature.slots() + overhang(true))));
        int perPage = armature.slots();
        if (format == PageFormat.A4 && pitch * (armature.slots() + overhang(true)) > ROOM + 1e-6) {
            int pages = (int) Math.ceil(armature.slots() / Math.max(1, Math.floor(ROOM / least - overhang(false))));
            perPage = (int) Math.ceil((double) armature.slots() / pages);
            pitch = Math.max(least, Math.min(MOST_PITCH, ROOM / (perPage + overhang(false))));
        }
        this.slotsPerPage = perPage;
        this.slotPitch = pitch;
        this.around = pitch * armature.slots();
        this.barPitch = around / armature.bars();
        int u = winding.sidesPerSlot();
        this.positionPitch = inner() * pitch / u;
        this.layerGap = Math.min(positionPitch * 0.84 / (winding.layers() - 1 + 0.6), 5.5 / (winding.layers() - 1));
        this.dense = positionPitch < 7;
        this.coreBottom = dense ? 103 : 113;
        this.leadStart = coreBottom + 3;
        double longest = winding.coils().stream()
                .mapToDouble(c -> Math.abs(span(c)))
                .max()
                .orElse(1);
        this.slopeHeight = Math.min(BEND - APEX, Math.max(12, 0.62 * longest)) / longest;
    }

    /** Part of a slot's pitch that its coil sides take; the rest is tooth. */
    private double inner() {
        return winding.sidesPerSlot() == 1 ? 0.78 : 0.86;
    }

    /** How far bars stand out beyond the slots of a page, in slot pitches. */
    private double overhang(boolean onePage) {
        double bar = (double) armature.slots() / armature.bars();
        if (onePage) {
            double half = armature.slotOneInLineWith() == SlotAlignment.MICA ? 1 : 1 - bar;
            return Math.abs(half) / 2;
        }
        return 2 * bar;
    }

    private double leastPitch(double font) {
        int u = winding.sidesPerSlot();
        double coilLabel = digits(overlay.lastNumber(), font) + 0.8;
        double position = Math.max(coilLabel, 0.95 * winding.layers());
        double bar = (digits(armature.bars(), font) + 1.1) * armature.bars() / armature.slots();
        double slot = digits(armature.slots(), font) + 2.2;
        return Math.max(Math.max(position * u / inner(), bar), slot);
    }

    /** Width of the widest number of as many digits. */
    static double digits(int largest, double font) {
        return TextWidths.em("0".repeat(Integer.toString(largest).length()), false) * font;
    }

    double slotX(int slot) {
        return (slot - 1) * slotPitch;
    }

    double barX(int bar) {
        return armature.barCentre(bar) / 360 * around;
    }

    double sideX(CoilSide side) {
        int u = winding.sidesPerSlot();
        int j = Math.floorMod(side.position() - 1, u);
        return slotX(side.slot())
                + ((j + 0.5) - u / 2.0) * positionPitch
                + (side.layer() - (winding.layers() + 1) / 2.0) * layerGap;
    }

    /** The way round from one x to another, mm: the short way, to the right where both are equal. */
    double shortWay(double from, double to) {
        double d = to - from;
        d -= around * Math.floor(d / around);
        return d > around / 2 + 1e-6 ? d - around : d;
    }

    double span(Coil c) {
        return shortWay(slotX(c.top().slot()), slotX(c.bottom().slot()))
                + sideX(c.bottom())
                - slotX(c.bottom().slot())
                - sideX(c.top())
                + slotX(c.top().slot());
    }

    double apexHeight(Coil c) {
        return BEND - Math.max(5, slopeHeight * Math.abs(span(c)));
    }

    /** Does something for each turn of the circumference that brings a stretch of it into a window. */
    void forImages(double low, double high, double left, double right, IntConsumer each) {
        int first = (int) Math.ceil((left - high) / around - 1e-9);
        int last = (int) Math.floor((right - low) / around + 1e-9);
        for (int k = first; k <= last; k++) {
            each.accept(k);
        }
    }

    double slotWidth() {
        return winding.sidesPerSlot() == 1
                ? Math.min(slotPitch * 0.7, layerGap * (winding.layers() - 1) + 4)
                : slotPitch * inner();
    }
}
