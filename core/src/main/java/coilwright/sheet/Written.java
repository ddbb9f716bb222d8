package coilwright.sheet;

import coilwright.job.Banding;
import coilwright.job.Quantity;
import coilwright.job.SlotSizes;
import coilwright.job.StripSizes;
import coilwright.job.WireChoice;
import coilwright.rewind.Copper;
import coilwright.rewind.Format;
import coilwright.rewind.InsulationBuild;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** Values of a job file as they stand in a document; what is not known is an empty text. */
final class Written {
    private Written() {}

    static String of(Optional<?> value) {
        return value.map(v -> v instanceof Enum<?> e ? word(e) : v.toString()).orElse("");
    }

    static String of(OptionalInt value) {
        return value.isPresent() ? Integer.toString(value.getAsInt()) : "";
    }

    /** A constant in small letters with spaces. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Bare size, covering, measured diameter and wires in hand; strip by its sizes. */
    static String wire(WireChoice wire) {
        if (wire.strip().isPresent()) {
            StripSizes s = wire.strip().get();
            return "strip " + s.width() + " × " + s.thickness()
                    + s.corner().map(c -> ", corners " + c).orElse("")
                    + s.covering().map(c -> ", covering " + c + " a side").orElse("");
        }
        List<String> parts = new ArrayList<>();
        wire.size().ifPresent(parts::add);
        wire.insulation().map(InsulationBuild::word).ifPresent(parts::add);
        wire.overall().ifPresent(d -> parts.add(d + " over the covering"));
        wire.inHand().ifPresent(n -> parts.add(n == 1 ? "one in hand" : n + " in hand"));
        return String.join(", ", parts);
    }

    static String banding(Banding b) {
        List<String> parts = new ArrayList<>();
        parts.add(word(b.material()));
        b.bands().ifPresent(n -> parts.add(n == 1 ? "1 band" : n + " bands"));
        b.turns().ifPresent(n -> parts.add(n == 1 ? "1 turn each" : n + " turns each"));
        b.wire().ifPresent(q -> parts.add(q + " thick"));
        b.width().ifPresent(q -> parts.add(q + " wide"));
        b.note().ifPresent(parts::add);
        return String.join(", ", parts);
    }

    /** Shape and sizes of a slot, without what lines it. */
    static String slot(SlotSizes s) {
        List<String> parts = new ArrayList<>();
        parts.add(word(s.shape()));
        parts.add(s.depth() + " deep");
        s.width().ifPresent(q -> parts.add(q + " wide"));
        s.topWidth().ifPresent(q -> parts.add(q + " wide at the top"));
        s.bottomWidth().ifPresent(q -> parts.add(q + " at the floor"));
        s.corner().ifPresent(q -> parts.add("corners " + q));
        s.opening().ifPresent(q -> parts.add("opening " + q));
        s.lip().ifPresent(q -> parts.add("lip " + q));
        s.shoulder().ifPresent(q -> parts.add("shoulder " + q));
        return String.join(", ", parts);
    }

    /** A resistance of copper brought to a temperature, in the unit it was written in. */
    static String resistanceAt(Quantity measured, double celsius, double wanted) {
        return Format.number(measured.in(measured.unit()) * Copper.resistanceFactor(celsius, wanted)) + " "
                + measured.unit();
    }

    /** Ohms with a unit that leaves one to three figures before the point. */
    static String ohms(double ohms) {
        return ohms(ohms, "ohm");
    }

    /** Ohms in a unit that leaves one to three figures before the point, under a name or sign of its own. */
    static String ohms(double ohms, String unit) {
        if (ohms >= 1 || ohms == 0) {
            return Format.number(ohms) + " " + unit;
        }
        return Format.number(ohms >= 1e-3 ? ohms * 1e3 : ohms * 1e6) + (ohms >= 1e-3 ? " m" : " µ") + unit;
    }
}
