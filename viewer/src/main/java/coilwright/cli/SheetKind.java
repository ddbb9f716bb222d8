package coilwright.cli;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.AcceptanceBasis;
import coilwright.job.Job;
import coilwright.job.NearWord;
import coilwright.rewind.Acceptance;
import coilwright.rewind.WindingWay;
import coilwright.sheet.AcceptanceSheet;
import coilwright.sheet.AsFoundSheet;
import coilwright.sheet.ChecklistSheet;
import coilwright.sheet.CommutatorPages;
import coilwright.sheet.Document;
import coilwright.sheet.JobRecord;
import coilwright.sheet.WorkSheet;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The sheets that can be made. */
enum SheetKind {
    AS_FOUND("what to measure and note before and while stripping"),
    CHECKLIST("cleaning and inspection, to tick off"),
    ORDER("the order of work: coils, leads and tests, step by step (--way)"),
    COMMUTATOR("run-out, truing cut and undercut; empty to fill in where nothing is read"),
    ACCEPTANCE("tests of the finished winding against their limits"),
    RECORD("the whole job: as found, diagnosis, what is to be wound, as rewound, acceptance");

    private final String words;

    SheetKind(String words) {
        this.words = words;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String words() {
        return words;
    }

    /** The sheet as a document that can be put into HTML as well; empty where it comes on pages only. */
    Optional<Document> document(Job job, Palette palette) {
        return switch (this) {
            case AS_FOUND -> Optional.of(AsFoundSheet.of(job, palette));
            case RECORD -> Optional.of(JobRecord.of(job, palette));
            default -> Optional.empty();
        };
    }

    DrawingPages pages(Job job, WindingWay way, Palette palette) {
        return switch (this) {
            case AS_FOUND, RECORD -> document(job, palette).orElseThrow().pages();
            case CHECKLIST -> ChecklistSheet.of(job, palette);
            case ORDER -> WorkSheet.of(job, way, palette);
            case COMMUTATOR -> CommutatorPages.of(job, palette);
            case ACCEPTANCE ->
                AcceptanceSheet.of(
                        job.title(), Acceptance.of(AcceptanceBasis.of(job, AcceptanceBasis.Options.none())), palette);
        };
    }

    static SheetKind named(String word) {
        return Arrays.stream(values())
                .filter(k -> k.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new UsageException("there is no sheet \"" + word + "\": "
                        + NearWord.of(
                                        word,
                                        Arrays.stream(values())
                                                .map(SheetKind::word)
                                                .toList())
                                .map(near -> "did you mean " + near + "?")
                                .orElse("--kind list shows those there are")));
    }
}
