package coilwright.sheet;

import coilwright.job.Job;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSet;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Words about a winding that several sheets share. */
final class WindingFacts {
    private WindingFacts() {}

    /**
     * What a winding is, for the head of a sheet: counts, kind, pitches, alignment, turns.
     *
     * @param equalizers whether rings are fitted
     */
    static Map<String, String> of(Job job, Winding winding, boolean equalizers) {
        Armature a = winding.armature();
        Map<String, String> out = new LinkedHashMap<>();
        out.put("Slots", Integer.toString(a.slots()));
        out.put("Bars", Integer.toString(a.bars()));
        out.put("Poles", Integer.toString(a.poles()));
        out.put("Winding", kind(winding));
        winding.pitches().ifPresent(p -> {
            out.put("Coil throw", p.coilThrow());
            out.put("Commutator pitch", (p.commutator() < 0 ? "−" : "+") + Math.abs(p.commutator()));
        });
        winding.parallelPaths().ifPresent(n -> out.put("Parallel paths", Integer.toString(n)));
        List<Coil> dead = winding.deadCoils();
        if (!dead.isEmpty()) {
            out.put(
                    "Dead coils",
                    String.join(
                            ", ",
                            dead.stream().map(c -> Integer.toString(c.number())).toList()));
        }
        out.put(
                "Slot 1",
                a.slotOneInLineWith() == SlotAlignment.BAR
                        ? "in line with bar 1"
                        : "in line with the mica before bar 1");
        job.turns().ifPresent(n -> out.put("Turns per coil", Integer.toString(n)));
        job.coilResistance().ifPresent(r -> out.put("Coil resistance", r.toString()));
        if (equalizers) {
            out.put("Equalizers", "fitted");
        }
        return out;
    }

    /** Kind of winding with plex and direction. */
    static String kind(Winding winding) {
        CoilSet set = winding.sets().get(0);
        String plex = winding.type() != WindingType.LISTED && set.plex().isPresent()
                ? WindingSpec.plexWord(set.plex().getAsInt()) + " "
                : "";
        return capital(plex
                + winding.type().word()
                + set.direction().map(d -> ", " + d.word()).orElse(""));
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
