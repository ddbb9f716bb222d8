package coilwright.cli;

import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.NearWord;
import coilwright.sheet.AsFoundSheet;
import coilwright.sheet.Document;
import coilwright.sheet.JobRecord;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.BiFunction;

/** The sheets that can be made. */
enum SheetKind {
    AS_FOUND("what to measure and note before and while stripping", AsFoundSheet::of),
    RECORD("the whole job: as found, diagnosis, what is to be wound, as rewound, acceptance", JobRecord::of);

    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // a method reference holds nothing that can be changed
    private final BiFunction<Job, Palette, Document> maker;

    SheetKind(String words, BiFunction<Job, Palette, Document> maker) {
        this.words = words;
        this.maker = maker;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String words() {
        return words;
    }

    Document document(Job job, Palette palette) {
        return maker.apply(job, palette);
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
