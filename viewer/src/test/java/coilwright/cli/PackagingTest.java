package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The files that go into the packages; {@code PackageIT} tries the packages themselves. */
class PackagingTest {
    private static final Path HERE = Path.of("src/packaging");

    @Test
    void theMenuEntryOpensTheWindow() throws IOException {
        List<String> lines = Files.readAllLines(HERE.resolve("coilwright.desktop"));
        assertThat(lines.get(0)).isEqualTo("[Desktop Entry]");
        Map<String, String> entry = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] pair = line.split("=", 2);
            assertThat(entry.put(pair[0], pair[1])).as("given once: " + pair[0]).isNull();
        }
        assertThat(entry)
                .containsEntry("Type", "Application")
                .containsEntry("Terminal", "false")
                .containsEntry("Exec", "coilwright view %f")
                .containsEntry("StartupWMClass", Main.class.getName().replace('.', '-'))
                .containsKeys("Name", "Comment", "Icon", "Categories");
        assertThat(entry.get("Categories")).endsWith(";");
        assertThat(Commands.names()).contains("view");
        assertThat(Files.readString(HERE.resolve("package.xml")))
                .contains("apps/" + entry.get("Icon") + ".svg")
                .contains("usr/bin/" + entry.get("TryExec"));
    }

    @Test
    void theControlFileHasWhatDebianAsks() throws IOException {
        String control = Files.readString(HERE.resolve("deb/control"));
        for (String field : List.of(
                "Package", "Version", "Section", "Priority", "Architecture", "Maintainer", "Depends", "Description")) {
            assertThat(control).containsPattern("(?m)^" + field + ": \\S");
        }
        assertThat(control)
                .containsPattern("(?m)^Maintainer: [^<]+ <\\S+@\\S+\\.example\\.org>$")
                .endsWith("\n");
        assertThat(control.lines()).allMatch(l -> l.length() <= 80 && !l.isBlank());
    }
}
