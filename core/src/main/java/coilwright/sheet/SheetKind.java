package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.AcceptanceBasis;
import coilwright.job.Job;
import coilwright.job.NearWord;
import coilwright.rewind.Acceptance;
import coilwright.rewind.WindingWay;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The sheets that can be made of a job. */
public enum SheetKind {
    /** What was found. */
    AS_FOUND("as found", "what to measure and note before and while stripping"),
    /** Ticks for cleaning and inspection. */
    CHECKLIST("checklist", "cleaning and inspection, to tick off"),
    /** Ticks for the winding work. */
    ORDER("order of work", "the order of work: coils, leads and tests, step by step"),
    /** Run-out and what follows from it. */
    COMMUTATOR("commutator", "run-out, truing cut and undercut; empty to fill in where nothing is read"),
    /** Tests of the finished winding. */
    ACCEPTANCE("acceptance tests", "tests of the finished winding against their limits"),
    /** All of the job. */
    RECORD("job record", "the whole job: as found, diagnosis, what is to be wound, as rewound, acceptance");

    private final String title;
    private final String words;

    SheetKind(String title, String words) {
        this.title = title;
        this.words = words;
    }

    /** {@return the short word for it, as in {@code as-found}} */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@return its name for a person} */
    public String title() {
        return title;
    }

    /** {@return what it is for, in words} */
    public String words() {
        return words;
    }

    /**
     * {@return the sheet as a document that can be put into HTML as well; empty where it comes on pages only}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     */
    public Optional<Document> document(Job job, Palette palette) {
        return switch (this) {
            case AS_FOUND -> Optional.of(AsFoundSheet.of(job, palette));
            case RECORD -> Optional.of(JobRecord.of(job, palette));
            default -> Optional.empty();
        };
    }

    /**
     * {@return the sheet as pages}
     *
     * @param job what the armature is
     * @param way how the coils come into the slots; of use to the order of work only
     * @param palette colours, or black, white and grey
     * @throws coilwright.winding.ImpossibleWindingException when the winding cannot be built
     * @throws IllegalArgumentException when the winding is not wound this way, or what the job tells does not go
     *     together
     */
    public DrawingPages pages(Job job, WindingWay way, Palette palette) {
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

    /**
     * {@return the kind of a short word}
     *
     * @param word as files and commands have it
     * @throws IllegalArgumentException when there is none
     */
    public static SheetKind named(String word) {
        return Arrays.stream(values())
                .filter(k -> k.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no sheet \"" + word + "\": "
                        + NearWord.of(
                                        word,
                                        Arrays.stream(values())
                                                .map(SheetKind::word)
                                                .toList())
                                .map(near -> "did you mean " + near + "?")
                                .orElse("--kind list shows those there are")));
    }
}
