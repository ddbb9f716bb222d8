package coilwright.cli;

import coilwright.fault.BenchSighting;
import coilwright.fault.Identification;
import coilwright.job.Quantity;
import coilwright.job.Visible;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which winding it is. */
@Command(
        name = "identify",
        header = "List the windings that fit what can be seen without stripping, and what to look at next.",
        description = {"Count clockwise from the commutator end. Leaves with 1 where no winding fits."},
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright identify --slots 17 --bars 17 --poles 4 --lead 1,10",
            "  coilwright identify --slots 24 --bars 24 --throw 6 --continuity 1,2=no",
            "  coilwright identify --slots 17 --bars 17 --resistance \"1,2=0.14 ohm\" --resistance \"1,10=0.075 ohm\""
        })
final class IdentifyCommand implements Callable<Integer> {
    private static final Pattern LEAD = Pattern.compile("(?:(\\d{1,6})-(\\d{1,6}):)?(\\d{1,6}),(\\d{1,6})");
    private static final Pattern BARE = Pattern.compile("(?=.*[0-9])[0-9]{0,9}(\\.[0-9]{0,12})?");
    private static final Pattern PAIR = Pattern.compile("(\\d{1,6}),(\\d{1,6})=(.+)");

    private final Console console;

    @Option(names = "--slots", paramLabel = "S", required = true, description = "Slots in the core.")
    private int slots;

    @Option(names = "--bars", paramLabel = "K", required = true, description = "Commutator bars.")
    private int bars;

    @Option(names = "--poles", paramLabel = "P", description = "Main poles, where the frame is at hand.")
    private Optional<Integer> poles;

    @Option(
            names = "--throw",
            paramLabel = "T",
            description = "Slots that a coil spans at the back: 4 for a coil throw of 1-5.")
    private Optional<Integer> throwSlots;

    @Option(
            names = "--lead",
            arity = "1..*",
            paramLabel = "A,B",
            description =
                    "A coil traced: the lead of its top side on bar A, that of its bottom side on bar B. With its "
                            + "slots: TOP-BOTTOM:A,B.")
    private List<String> leads = List.of();

    @Option(
            names = "--continuity",
            arity = "1..*",
            paramLabel = "A,B=yes|no",
            description = "Whether bars A and B are joined, brushes off.")
    private List<String> continuity = List.of();

    @Option(
            names = "--resistance",
            arity = "1..*",
            paramLabel = "A,B=OHMS",
            description = "Resistance between bars A and B, as 0.14 ohm; or bare numbers, of which only the ratios "
                    + "count. Two or more.")
    private List<String> resistances = List.of();

    @Option(
            names = "--blade",
            paramLabel = "N",
            description = "Slots over which the growler's blade hums with two neighbouring bars joined by a wire.")
    private Optional<Integer> blade;

    @Mixin
    private OutputOptions output;

    IdentifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Identification.Known known = Given.valid(
                () -> new Identification.Known(slots, bars, Given.whole(poles), Given.whole(throwSlots), sightings()));
        Identification.Answer answer = Given.valid(() -> Identification.of(known));
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> IdentifyText.of(known, answer);
                    case JSON -> IdentifyJson.of(answer);
                    case CSV -> IdentifyText.csv(answer);
                });
        return answer.fits().isEmpty() ? Exit.NO : Exit.DONE;
    }

    private List<BenchSighting> sightings() {
        List<BenchSighting> out = new ArrayList<>();
        for (String text : leads) {
            Matcher m = match("--lead", LEAD, text, "A,B or TOP-BOTTOM:A,B, such as 1,10 or 1-5:1,10");
            out.add(new BenchSighting.TracedCoil(
                    group(m, 1),
                    group(m, 2),
                    group(m, 3).getAsInt(),
                    group(m, 4).getAsInt()));
        }
        for (String text : continuity) {
            Matcher m = match("--continuity", PAIR, text, "A,B=yes or A,B=no, such as 1,2=no");
            String word = m.group(3).strip();
            if (!word.equals("yes") && !word.equals("no")) {
                throw new UsageException("--continuity is \"" + Visible.cut(text) + "\", but must end in =yes or =no");
            }
            out.add(new BenchSighting.Continuity(
                    group(m, 1).getAsInt(), group(m, 2).getAsInt(), word.equals("yes")));
        }
        resistances(out);
        blade.ifPresent(n -> out.add(new BenchSighting.BladeSlots(n)));
        return out;
    }

    private void resistances(List<BenchSighting> out) {
        int bare = 0;
        for (String text : resistances) {
            Matcher m = match("--resistance", PAIR, text, "A,B=OHMS, such as \"1,2=0.14 ohm\"");
            String value = m.group(3).strip();
            double ohms;
            if (BARE.matcher(value).matches()) {
                ohms = Double.parseDouble(value);
                bare++;
            } else {
                try {
                    ohms = Quantity.parse(value, Quantity.Kind.RESISTANCE).in("ohm");
                } catch (IllegalArgumentException e) {
                    throw new UsageException("--resistance \"" + Visible.cut(text) + "\" " + e.getMessage());
                }
            }
            out.add(new BenchSighting.Resistance(
                    group(m, 1).getAsInt(), group(m, 2).getAsInt(), ohms));
        }
        if (bare > 0 && bare < resistances.size()) {
            throw new UsageException(
                    "--resistance is given with a unit once and bare once: give all with units, or all bare");
        }
    }

    private static Matcher match(String option, Pattern pattern, String text, String form) {
        Matcher m = pattern.matcher(text);
        if (!m.matches()) {
            throw new UsageException(option + " is \"" + Visible.cut(text) + "\", but must be " + form);
        }
        return m;
    }

    private static OptionalInt group(Matcher m, int n) {
        return m.group(n) == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(m.group(n)));
    }
}
