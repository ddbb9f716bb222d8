package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** What the jar contains is listed with its licence, and every licence text and notice is shipped. */
class ThirdPartyTest {
    private static final Path TEXTS = Path.of("src/main/resources/META-INF/third-party");

    /** Licences by library: the entry for one is its coordinates and version, and below them a line for each fact. */
    private static Map<String, String> listed() throws IOException {
        String list = read("/META-INF/third-party/list.txt");
        Matcher m = Pattern.compile(
                        "(?m)^(\\S+:\\S+) (\\S+)\\n  name     \\S.*\\n  licence  (\\S.*)\\n  home     http\\S+$")
                .matcher(list);
        Map<String, String> listed = new LinkedHashMap<>();
        while (m.find()) {
            String artifact = m.group(1).substring(m.group(1).indexOf(':') + 1);
            assertThat(listed.put(artifact + "-" + m.group(2) + ".jar", m.group(3)))
                    .isNull();
        }
        assertThat(list.lines().filter(l -> l.startsWith("  licence  "))).hasSize(listed.size() + 1);
        return listed;
    }

    @Test
    void everyLibraryAskedForIsListed() throws IOException {
        String poms = dependencies("pom.xml") + dependencies("../core/pom.xml");
        Matcher m = Pattern.compile(
                        "(?s)<dependency>\\s*<groupId>[^<]*</groupId>\\s*<artifactId>([^<]+)</artifactId>(.*?)</dependency>")
                .matcher(poms);
        String tests = Files.readString(Path.of("../pom.xml"));
        List<String> asked = new ArrayList<>();
        while (m.find()) {
            boolean test = m.group(2).contains("<scope>")
                    || Pattern.compile("<artifactId>" + m.group(1)
                                    + "</artifactId>\\s*<version>[^<]*</version>\\s*<scope>test")
                            .matcher(tests)
                            .find();
            if (!test && !m.group(1).startsWith("coilwright-")) {
                asked.add(m.group(1));
            }
        }
        assertThat(asked).hasSizeGreaterThan(8);
        assertThat(asked).allSatisfy(a -> assertThat(listed().keySet()).anyMatch(l -> l.startsWith(a + "-")));
    }

    private static String dependencies(String pom) throws IOException {
        String text = Files.readString(Path.of(pom));
        return text.substring(text.indexOf("<dependencies>"), text.indexOf("</dependencies>"));
    }

    @Test
    void everyLicenceHasItsText() throws IOException {
        assertThat(listed().values())
                .isNotEmpty()
                .allSatisfy(licence -> assertThat(licence.split(" or "))
                        .anySatisfy(l -> assertThat(TEXTS.resolve(l + ".txt")).isNotEmptyFile()));
        assertThat(read("/coilwright/drawing/fonts/LICENSE-DejaVu.txt")).contains("Bitstream Vera");
    }

    @Test
    void everyNoticeAndLicenceInALibraryIsShipped() throws IOException {
        var shipped = new StringBuilder();
        try (Stream<Path> texts = Files.list(TEXTS)) {
            for (Path text : texts.sorted().toList()) {
                shipped.append(flat(Files.readString(text)));
            }
        }
        int seen = 0;
        for (String jar : listed().keySet()) {
            try (ZipFile zip = new ZipFile(onTheClassPath(jar).toFile())) {
                for (ZipEntry entry :
                        zip.stream().filter(ThirdPartyTest::isLegal).toList()) {
                    byte[] bytes = zip.getInputStream(entry).readAllBytes();
                    boolean utf8 = !new String(bytes, StandardCharsets.UTF_8).contains("\ufffd");
                    String text = new String(bytes, utf8 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1);
                    assertThat(shipped.indexOf(flat(text.replace("encoding=\"iso-8859-1\"", "encoding=\"utf-8\""))))
                            .as(entry + " of " + jar + " stands in " + TEXTS)
                            .isNotNegative();
                    seen++;
                }
            }
        }
        assertThat(seen).isGreaterThan(50);
    }

    private static boolean isLegal(ZipEntry entry) {
        String name =
                entry.getName().substring(entry.getName().lastIndexOf('/') + 1).toUpperCase(Locale.ROOT);
        return !name.endsWith(".CLASS")
                && (name.contains("LICENSE")
                        || name.contains("LICENCE")
                        || name.contains("NOTICE")
                        || name.contains("COPYING"));
    }

    private static Path onTheClassPath(String jar) {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(Path::of)
                .filter(p -> p.getFileName().toString().equals(jar))
                .findFirst()
                .orElseThrow(() -> new AssertionError(jar + " is listed, but not used"));
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", "");
    }

    private static String read(String resource) throws IOException {
        try (InputStream in = ThirdPartyTest.class.getResourceAsStream(resource)) {
            assertThat(in).as(resource).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
