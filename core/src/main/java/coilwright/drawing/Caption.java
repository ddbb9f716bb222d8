package coilwright.drawing;

import coilwright.circuit.BrushGear;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSet;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** Words about a winding that several drawings share. */
final class Caption {
    private Caption() {}

    /** Kind and pitches in one line. */
    static String kind(Winding w) {
        List<String> parts = new ArrayList<>();
        CoilSet set = w.sets().get(0);
        String plex = set.plex().isPresent() && w.type() != WindingType.LISTED
                ? plex(set.plex().getAsInt()) + " "
                : "";
        parts.add(plex
                + w.type().word()
                + (w.type() == WindingType.LISTED ? " winding" : "")
                + set.direction().map(d -> ", " + d.word()).orElse(""));
        set.pitches().ifPresent(p -> {
            parts.add("coil throw " + p.coilThrow());
            parts.add("commutator pitch " + signed(p.commutator()));
        });
        w.parallelPaths().ifPresent(n -> parts.add(n + " parallel paths"));
        int dead = w.deadCoils().size();
        if (dead > 0) {
            parts.add(dead == 1 ? "1 dead coil" : dead + " dead coils");
        }
        return String.join(" · ", parts);
    }

    /** The counts in one line. */
    static String counts(Armature a) {
        return a.slots() + " slots · " + a.bars() + " bars · " + a.poles() + " poles · slot 1 in line with "
                + (a.slotOneInLineWith() == SlotAlignment.BAR ? "bar 1" : "the mica before bar 1");
    }

    static String plex(int m) {
        return WindingSpec.plexWord(m);
    }

    static String signed(int n) {
        return n < 0 ? "−" + -(long) n : "+" + n;
    }

    /** At most two decimals, half as ½. */
    static String number(double x) {
        double size = Math.abs(x);
        if (Math.abs(size * 2 - Math.rint(size * 2)) < 1e-6) {
            long halves = Math.round(size * 2);
            String whole = halves < 2 && halves % 2 == 1 ? "" : Long.toString(halves / 2);
            return (x < 0 && halves > 0 ? "−" : "") + whole + (halves % 2 == 1 ? "½" : "");
        }
        String s = String.format(Locale.ROOT, "%.2f", size).replaceAll("\\.?0+$", "");
        return (x < 0 ? "−" : "") + s;
    }

    static String degrees(double x) {
        return number(x) + "°";
    }

    /** What a coil is, for a person who points at it. */
    static String coil(Coil c) {
        String place = "Coil " + c.number() + ": slots " + c.top().slot() + "–"
                + c.bottom().slot();
        if (c.isDead()) {
            return place + ", dead, no bars";
        }
        return place + ", top lead on " + lead(c.topBar()) + ", bottom lead on " + lead(c.bottomBar());
    }

    static String lead(OptionalInt bar) {
        return bar.isPresent() ? "bar " + bar.getAsInt() : "no bar";
    }

    /** The brushes for the options; empty where the winding has no live coil. */
    static Optional<BrushGear> brushes(Winding w, ViewOptions o) {
        if (w.liveCoils().isEmpty()) {
            return Optional.empty();
        }
        double usual =
                Math.min(BrushGear.leastWidth(w), Math.max(1, w.armature().polePitchBars()));
        return Optional.of(BrushGear.at(w, o.rotorAngle(), o.brushWidth().orElse(usual)));
    }
}
