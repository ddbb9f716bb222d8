package coilwright.cli;

import coilwright.fault.Diagnosis;
import coilwright.fault.Fault;
import coilwright.fault.NextProbe;
import coilwright.job.Job;
import coilwright.sheet.DiagnosisWords;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A diagnosis for a person at the bench: what, where, how sure, why, and what to do next. */
final class DiagnosisText {
    private static final int MOST_SHOWN = 5;
    private static final double LEAST_SHOWN = 0.01;

    private DiagnosisText() {}

    static String of(Job job, Diagnosis d, Optional<NextProbe> next) {
        StringBuilder out = new StringBuilder();
        out.append(job.title()).append('\n');
        TextTable.hanging(out, "  ", DiagnosisWords.verdict(d));
        Winding winding = d.armature().winding();
        List<Diagnosis.Explanation> shown = d.ranked().stream()
                .filter(e -> e.probability() >= LEAST_SHOWN)
                .limit(MOST_SHOWN)
                .toList();
        if (!shown.isEmpty() && d.verdict() != Diagnosis.Verdict.SOUND) {
            out.append("\nWhat explains the readings, likeliest first\n");
            int n = 0;
            for (Diagnosis.Explanation e : shown) {
                n++;
                explanation(out, n, e, winding);
            }
        }
        if (!d.suspects().isEmpty()) {
            out.append("\nReadings to take again\n");
            for (Diagnosis.Suspect s : d.suspects().stream().limit(MOST_SHOWN).toList()) {
                TextTable.hanging(
                        out,
                        "  ",
                        s.test().word() + " " + s.reading().pair() + " reads "
                                + number(s.reading().value()) + ", " + number(s.expected()) + " would fit: "
                                + s.advice());
            }
        }
        out.append("\nWhat to do next\n");
        if (next.isPresent()) {
            TextTable.hanging(out, "  ", next.get().instruction() + ".");
            if (next.get().outcomes().size() > 1) {
                for (NextProbe.Outcome o :
                        next.get().outcomes().stream().limit(MOST_SHOWN).toList()) {
                    TextTable.hanging(
                            out, "    ", DiagnosisWords.faults(o.faults()) + " would read " + number(o.value()));
                }
            }
        } else if (d.verdict() == Diagnosis.Verdict.SOUND) {
            TextTable.hanging(out, "  ", "Nothing more by these tests.");
        } else {
            TextTable.hanging(out, "  ", "One explanation is left. " + remedy(d));
        }
        if (!d.unseen().isEmpty()) {
            out.append('\n');
            TextTable.hanging(
                    out,
                    "  ",
                    "These tests cannot show: " + String.join(", ", d.unseen()) + ". A ground test and a polarity test"
                            + " make the picture whole.");
        }
        out.append('\n');
        TextTable.hanging(out, "  ", String.format(Locale.ROOT, "Readings scatter by about %.1f %%.", d.noise() * 100));
        return out.toString();
    }

    private static void explanation(StringBuilder out, int n, Diagnosis.Explanation e, Winding winding) {
        TextTable.hanging(
                out,
                "  ",
                n + ". " + DiagnosisWords.faults(e.faults()) + ", " + DiagnosisWords.percent(e.probability()));
        for (Fault f : e.faults()) {
            String where = where(f, winding);
            if (!where.isEmpty()) {
                TextTable.hanging(out, "     ", "where: " + where);
            }
        }
        if (!e.sameReadings().isEmpty()) {
            List<String> same = e.sameReadings().stream()
                    .limit(MOST_SHOWN)
                    .map(DiagnosisWords::faults)
                    .toList();
            int more = e.sameReadings().size() - same.size();
            TextTable.hanging(
                    out,
                    "     ",
                    "reads the same here: " + String.join("; ", same) + (more > 0 ? "; and " + more + " more" : ""));
        }
        for (Diagnosis.Because b : e.because()) {
            TextTable.hanging(
                    out,
                    "     ",
                    "because: " + b.test().word() + " " + b.reading().pair() + " reads "
                            + number(b.reading().value()) + "; sound would be " + number(b.sound()) + ", this explains "
                            + number(b.explained()));
        }
    }

    private static String where(Fault f, Winding winding) {
        List<String> out = new ArrayList<>();
        for (int n : f.coils()) {
            Coil c = winding.coil(n);
            StringBuilder s = new StringBuilder("coil " + n + " lies in slots "
                    + c.top().slot() + " (top) and " + c.bottom().slot() + " (bottom)");
            if (c.isLive()) {
                s.append(", leads on bars ")
                        .append(c.topBar().getAsInt())
                        .append(" and ")
                        .append(c.bottomBar().getAsInt());
            }
            s.append(String.format(
                    Locale.ROOT,
                    "; with slot 1 up its sides stand at %.0f° and %.0f°",
                    winding.armature().slotCentre(c.top().slot()),
                    winding.armature().slotCentre(c.bottom().slot())));
            out.add(s.toString());
        }
        for (int bar : f.bars()) {
            out.add(String.format(
                    Locale.ROOT,
                    "bar %d stands at %.0f° with slot 1 up",
                    bar,
                    winding.armature().barCentre(bar)));
        }
        return String.join("; ", out);
    }

    private static String remedy(Diagnosis d) {
        Fault first = d.ranked().get(0).faults().get(0);
        return switch (first.kind()) {
            case "open-coil", "high-resistance" ->
                "Look at the joints of its leads first, clean and solder or weld them again, and repeat the test.";
            case "bar-short", "shorted-coil" ->
                "Clean the mica between the bars and look for solder and burrs first, and repeat the test.";
            case "crossed-leads", "wrong-bar", "reversed-coil" ->
                "Lift the leads named, put them on their own bars, and repeat the test.";
            case "ground" ->
                "Look where the coil leaves the slot and at the insulation of the slot, and repeat the test.";
            default -> "A short within a coil needs a new coil or a rewind.";
        };
    }

    static String csv(Diagnosis d) {
        StringBuilder out = new StringBuilder("rank,probability,faults\n");
        int n = 0;
        for (Diagnosis.Explanation e : d.ranked()) {
            if (e.probability() < 1e-4) {
                break;
            }
            n++;
            out.append(String.format(
                    Locale.ROOT,
                    "%d,%.6f,\"%s\"\n",
                    n,
                    e.probability(),
                    DiagnosisWords.faults(e.faults()).replace("\"", "\"\"")));
        }
        return out.toString();
    }

    private static String number(double x) {
        if (Double.isInfinite(x)) {
            return "off the scale";
        }
        return x == 0 || Math.abs(x) < 1e-12 ? "0" : String.format(Locale.ROOT, "%.4g", x);
    }
}
