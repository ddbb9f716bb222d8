package coilwright.winding;

import java.util.List;

/** A brush must reach every interleaved circuit: at least m bars for plex m. */
final class BrushWidth implements Rules.WindingRule {
    static final String ID = "brush-width";

    @Override
    public List<Finding> check(Winding winding) {
        if (winding.type() == WindingType.LISTED) {
            return List.of();
        }
        int m = winding.sets().get(0).plex().orElse(1);
        double angle = winding.armature().barAngle();
        String width = m == 1 ? "1 to 3 bars, commonly 1.5 to 2.5" : "at least " + m + " bars, better " + (m + 1);
        return List.of(Finding.note(
                ID,
                "a brush of " + Words.article(Words.plex(m)) + " winding covers " + width + " (one bar is "
                        + Words.number(angle) + "°)",
                m == 1 ? References.COMMON_PRACTICE : References.POLISH_LECTURE_NOTES));
    }
}
