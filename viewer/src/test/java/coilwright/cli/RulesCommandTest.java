package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class RulesCommandTest {
    @Test
    void jsonHoldsTheKeysScriptsRelyOn() throws IOException {
        Run run = Run.of("rules", "--slots", "24", "--poles", "4", "--bars", "24", "--format", "json");
        assertThat(run.code()).isZero();
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(TableCommandTest.keys(json)).containsExactly("possible", "refused");
        assertThat(json.get("possible"))
                .isNotEmpty()
                .allSatisfy(c -> assertThat(TableCommandTest.keys(c))
                        .contains(
                                "type",
                                "plex",
                                "direction",
                                "commutator",
                                "throw",
                                "bars",
                                "deadCoils",
                                "closures",
                                "parallelPaths",
                                "findings"));
        JsonNode best = json.at("/possible/0");
        assertThat(best.get("type").textValue()).isEqualTo("lap");
        assertThat(best.get("plex").intValue()).isEqualTo(1);
        assertThat(best.get("direction").textValue()).isEqualTo("progressive");
        assertThat(best.get("commutator").intValue()).isEqualTo(1);
        assertThat(best.get("throw").intValue()).isEqualTo(6);
        assertThat(best.get("parallelPaths").intValue()).isEqualTo(4);
        assertThat(json.get("refused"))
                .isNotEmpty()
                .allSatisfy(r -> assertThat(TableCommandTest.keys(r)).contains("type", "plex", "direction", "reason"));
        assertThat(json.get("refused")).anySatisfy(r -> {
            assertThat(r.get("type").textValue()).isEqualTo("wave");
            assertThat(r.get("plex").intValue()).isEqualTo(1);
            assertThat(r.get("reason").textValue()).startsWith("commutator pitch would be 24/2 ± 1/2, not whole");
        });
    }

    @Test
    void noneThatFitsLeavesWithOne() throws IOException {
        String[] args = {"rules", "--slots", "24", "--poles", "4", "--bars", "24", "--type", "wave", "--plex", "1"};
        Run text = Run.of(args);
        assertThat(text.code()).isEqualTo(1);
        assertThat(text.out()).contains("No winding fits.").contains("either way: commutator pitch would be 24/2");
        String[] json = Arrays.copyOf(args, args.length + 2);
        json[args.length] = "--format";
        json[args.length + 1] = "json";
        Run run = Run.of(json);
        assertThat(run.code()).isEqualTo(1);
        assertThat(new ObjectMapper().readTree(run.out()).get("possible")).isEmpty();
    }

    @Test
    void withoutBarsOneToFourSidesPerSlotAreTried() throws IOException {
        JsonNode json = new ObjectMapper()
                .readTree(Run.of("rules", "--slots", "12", "--poles", "4", "--type", "wave", "--format", "json")
                        .out());
        assertThat(json.get("possible")).anySatisfy(c -> {
            assertThat(c.get("bars").intValue()).isEqualTo(23);
            assertThat(c.get("deadCoils").intValue()).isEqualTo(1);
            assertThat(c.get("plex").intValue()).isEqualTo(1);
        });
    }

    @Test
    void csvAndTextListTheSameWindings() {
        String[] query = {"rules", "--slots", "17", "--poles", "4", "--bars", "17"};
        String csv = Run.of("rules", "--slots", "17", "--poles", "4", "--bars", "17", "--format", "csv")
                .out();
        assertThat(csv)
                .startsWith("type,plex,direction,commutator,throw,bars,deadCoils,closures,parallelPaths,warnings\n");
        String text = Run.of(query).out();
        long windings = text.lines()
                .dropWhile(l -> !l.contains("no.  winding"))
                .skip(1)
                .takeWhile(l -> !l.isEmpty())
                .count();
        assertThat(csv.lines().count() - 1).isEqualTo(windings).isGreaterThan(2);
        assertThat(Run.of("rules", "--slots", "17", "--poles", "4", "--bars", "17", "--explain")
                        .out())
                .contains("1. ")
                .contains("singly re-entrant");
    }

    @Test
    void badNumbersAreRefusedWithTheReason() {
        refused("poles is 3, but poles come in pairs", "rules", "--slots", "12", "--poles", "3");
        refused("slots is 1, but must be from 2 to 1000", "rules", "--slots", "1", "--poles", "2");
        refused("plex is 13, but must be from 1", "rules", "--slots", "12", "--poles", "2", "--plex", "13");
        refused(
                "--type is \"listed\", but must be one of lap, wave, frog-leg",
                "rules",
                "--slots",
                "12",
                "--poles",
                "2",
                "--type",
                "listed");
        refused("--slots", "rules", "--poles", "2");
        refused("is \"12.5\", but must be a whole number", "rules", "--slots", "12.5", "--poles", "2");
    }

    private static void refused(String reason, String... args) {
        Run run = Run.of(args);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).startsWith("coilwright: ").contains(reason);
    }
}
