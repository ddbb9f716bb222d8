package coilwright.desktop;

import coilwright.drawing.Element;
import coilwright.fault.Diagnosis;
import coilwright.sheet.DiagnosisWords;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

/** What the readings so far say, in words and as what is to be marked. */
final class BenchResult {
    private static final double LEAST_SHOWN = 0.01;
    private static final int MOST_SHOWN = 3;

    private BenchResult() {}

    /** The verdict, what explains the readings and what to read next. */
    static String words(Optional<BenchRun.Verdict> verdict) {
        if (verdict.isEmpty()) {
            return "Too few readings to tell anything yet.";
        }
        Diagnosis d = verdict.get().diagnosis();
        StringBuilder words = new StringBuilder(sureness(d));
        if (d.verdict() != Diagnosis.Verdict.SOUND) {
            d.ranked().stream()
                    .filter(e -> e.probability() >= LEAST_SHOWN)
                    .limit(MOST_SHOWN)
                    .forEach(e -> words.append("\n· ").append(words(e)));
        }
        verdict.get()
                .next()
                .ifPresent(n -> words.append("\nNext: ").append(n.instruction()).append('.'));
        return words.toString();
    }

    private static String sureness(Diagnosis d) {
        return switch (d.verdict()) {
            case SOUND -> "✓ Sound, as far as these readings show (" + Figures.percent(d.soundProbability()) + ").";
            case FAULTY -> "⚠ Faulty (" + Figures.percent(1 - d.soundProbability()) + ").";
            case UNCLEAR -> "? Not clear yet (sound with " + Figures.percent(d.soundProbability()) + ").";
        };
    }

    private static String words(Diagnosis.Explanation e) {
        String words = DiagnosisWords.faults(e.faults()) + ", " + Figures.percent(e.probability());
        if (e.sameReadings().isEmpty()) {
            return words;
        }
        return words + " (or " + DiagnosisWords.faults(e.sameReadings().get(0))
                + (e.sameReadings().size() > 1 ? ", and others that read the same)" : ", which reads the same)");
    }

    /** Coils and bars of the likeliest faults; none where the armature is sound. */
    static Set<Element> faulty(Optional<BenchRun.Verdict> verdict) {
        Set<Element> faulty = new LinkedHashSet<>();
        verdict.map(BenchRun.Verdict::diagnosis)
                .filter(d -> d.verdict() != Diagnosis.Verdict.SOUND)
                .ifPresent(d -> d.likeliest().forEach(f -> {
                    f.coils().forEach(n -> faulty.add(Element.coil(n)));
                    f.bars().forEach(n -> faulty.add(Element.bar(n)));
                }));
        return faulty;
    }
}
