package coilwright.cli;

import coilwright.winding.WindingSearch;
import coilwright.winding.WindingType;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which windings fit a core. */
@Command(
        name = "rules",
        header = "List the windings that fit a core, best first, and say why others do not.",
        description = "Without --bars, one to four coil sides per slot and layer are tried. Leaves with 1 where none "
                + "is possible.",
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright rules --slots 17 --poles 4",
            "  coilwright rules --slots 12 --poles 4 --bars 24 --type wave",
            "  coilwright rules --slots 24 --poles 4 --explain"
        })
final class RulesCommand implements Callable<Integer> {
    private final Console console;

    @Option(names = "--slots", paramLabel = "S", required = true, description = "Slots in the core.")
    private int slots;

    @Option(names = "--poles", paramLabel = "P", required = true, description = "Main poles, an even number.")
    private int poles;

    @Option(names = "--bars", paramLabel = "K", description = "Commutator bars.")
    private Optional<Integer> bars;

    @Option(names = "--type", paramLabel = "TYPE", description = "lap, wave or frog-leg; all unless given.")
    private Optional<String> type;

    @Option(names = "--plex", paramLabel = "M", description = "1 simplex, 2 duplex, 3 triplex, …; 1 to 3 unless given.")
    private Optional<Integer> plex;

    @Option(names = "--explain", description = "Show what the rules say of each winding.")
    private boolean explain;

    @Mixin
    private OutputOptions output;

    RulesCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        WindingSearch.Query query = Given.valid(() -> new WindingSearch.Query(
                slots, poles, Given.whole(bars), type.map(RulesCommand::type), Given.whole(plex)));
        WindingSearch.Result result = WindingSearch.find(query);
        String answer = switch (output.format()) {
            case TEXT -> RulesText.of(query, result, explain);
            case JSON -> RulesJson.of(result);
            case CSV -> RulesText.csv(result);
        };
        output.answer(console, answer);
        return result.possible().isEmpty() ? Exit.NO : Exit.DONE;
    }

    private static WindingType type(String word) {
        return Given.oneOf(
                "--type", word, List.of(WindingType.LAP, WindingType.WAVE, WindingType.FROG_LEG), WindingType::word);
    }
}
