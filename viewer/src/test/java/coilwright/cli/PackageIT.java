package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Tries what the profile {@code package} has made: the app image, and the Debian package where there is one. */
class PackageIT {
    private static final Path DIST = Path.of("target/dist").toAbsolutePath();
    private static final Path IMAGE = DIST.resolve("coilwright");
    private static final String SAMPLE =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    static List<String> commands() {
        return Commands.names();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theImageKnowsEveryCommand(String command) throws Exception {
        assertThat(image(command, "--help")).isEqualTo(Run.of(command, "--help"));
    }

    @Test
    void theImageAnswersAsTheJarDoes() throws Exception {
        assertThat(image("table", SAMPLE, "--explain")).isEqualTo(Run.of("table", SAMPLE, "--explain"));
        assertThat(image("probe", SAMPLE, "--test", "drop", "--format", "json"))
                .isEqualTo(Run.of("probe", SAMPLE, "--test", "drop", "--format", "json"));
        assertThat(image("table", "there-is-none.yaml").code()).isEqualTo(2);
        assertThat(image("--version").out()).matches("coilwright \\d\\S+\\R");
    }

    @Test
    void theImageDrawsAndPrints() throws Exception {
        for (String ending : List.of("svg", "png", "pdf")) {
            Path there = temp.resolve("there." + ending);
            Path here = temp.resolve("here." + ending);
            assertThat(image("draw", SAMPLE, "--view", "round", "--out", there.toString())
                            .code())
                    .isZero();
            assertThat(Run.of("draw", SAMPLE, "--view", "round", "--out", here.toString())
                            .code())
                    .isZero();
            assertThat(there).hasSameBinaryContentAs(here);
        }
        Path record = temp.resolve("record.pdf");
        assertThat(image("sheet", SAMPLE, "--kind", "record", "--out", record.toString())
                        .code())
                .isZero();
        assertThat(Files.size(record)).isGreaterThan(10_000);
    }

    /** By its path, by links to it and to its folder, by the search path, and read by a shell. */
    @Test
    void theImageIsFoundFromWhereverItIsCalled() throws Exception {
        String version = Run.of("--version").out();
        Path bin = IMAGE.toAbsolutePath().resolve("bin");
        Path links = Files.createDirectory(temp.resolve("with a blank"));
        Path chained = links.resolve("chained");
        Files.createSymbolicLink(links.resolve("direct"), bin.resolve("coilwright"));
        Files.createSymbolicLink(chained, Path.of("direct"));
        Files.createSymbolicLink(links.resolve("folder"), IMAGE.toAbsolutePath());
        for (String called : List.of(
                bin.resolve("coilwright").toString(),
                links.resolve("direct").toString(),
                chained.toString(),
                links.resolve("folder/bin/coilwright").toString())) {
            assertThat(run(called, "--version").out()).as(called).isEqualTo(version);
        }
        String path = bin + ":" + System.getenv("PATH");
        assertThat(run("env", "PATH=" + path, "coilwright", "--version").out()).isEqualTo(version);
        assertThat(run("/bin/sh", "-c", "cd \"$0\" && sh coilwright --version", bin.toString())
                        .out())
                .isEqualTo(version);
        assertThat(run(chained.toString(), "table", "there is no such job.yaml"))
                .isEqualTo(Run.of("table", "there is no such job.yaml"));
    }

    /** A module that is left out of the runtime shows itself only where it is reached, perhaps at a user's. */
    @Test
    void theImageHasEveryModuleThatTheJarAsksFor() throws Exception {
        var printed = new ByteArrayOutputStream();
        var out = new PrintStream(printed, true, StandardCharsets.UTF_8);
        ToolProvider jdeps = ToolProvider.findFirst("jdeps").orElseThrow();
        String jar = IMAGE.resolve("lib/app/coilwright.jar").toString();
        assertThat(jdeps.run(out, out, "--ignore-missing-deps", "--multi-release", "17", "--print-module-deps", jar))
                .isZero();
        String java = IMAGE.resolve("lib/runtime/bin/java").toString();
        List<String> there = run(java, "--list-modules")
                .out()
                .lines()
                .map(l -> l.replaceAll("@.*", ""))
                .toList();
        assertThat(there)
                .contains(printed.toString(StandardCharsets.UTF_8).strip().split(","));
    }

    @Test
    void theDebianPackageHoldsAllThatIsPromised() throws Exception {
        Path root = unpacked();
        String control = run("dpkg-deb", "--info", deb().orElseThrow().toString(), "control")
                .out();
        assertThat(control)
                .startsWith("Package: coilwright\n")
                .containsPattern("(?m)^Depends: .*libc6.*, libfontconfig1$")
                .containsPattern("(?m)^Installed-Size: \\d{5,}$")
                .doesNotContain("APPLICATION", "PACKAGE_")
                .doesNotContainPattern("@\\w+@");
        for (String file : List.of(
                "share/applications/coilwright.desktop",
                "share/icons/hicolor/scalable/apps/coilwright.svg",
                "share/icons/hicolor/48x48/apps/coilwright.png",
                "share/icons/hicolor/256x256/apps/coilwright.png",
                "share/doc/coilwright/changelog.gz",
                "share/doc/coilwright/examples/samples/jobs/orchard-pump-dynamo.yaml")) {
            assertThat(root.resolve("usr").resolve(file)).isNotEmptyFile();
        }
        assertThat(root.resolve("usr/share/doc/coilwright/copyright"))
                .content()
                .contains("Apache License", "GNU General Public", "org.jgrapht:jgrapht-core", "Eclipse Public License")
                .contains(
                        "original FontBox project",
                        "Mikko Tommila",
                        "Bitstream Vera",
                        "Kai-Uwe Behrmann",
                        "World Wide Web Consortium");
        try (var page = new GZIPInputStream(Files.newInputStream(root.resolve("usr/share/man/man1/coilwright.1.gz")))) {
            assertThat(new String(page.readAllBytes(), StandardCharsets.UTF_8))
                    .isEqualTo(Run.of("man").out());
        }
        String completion = Files.readString(root.resolve("usr/share/bash-completion/completions/coilwright"));
        assertThat(completion).doesNotStartWith("#!");
        assertThat(Run.of("completion").out()).endsWith(completion);
    }

    @Test
    void theCommandOfTheDebianPackageRuns() throws Exception {
        Path root = unpacked();
        String script = Files.readString(root.resolve("usr/bin/coilwright"));
        assertThat(script)
                .startsWith("#!/bin/sh\n")
                .contains("-XX:TieredStopAtLevel=1")
                .doesNotContain("@fast");
        Path here = Files.writeString(temp.resolve("coilwright.sh"), script.replace("=/usr/", "=" + root + "/usr/"));
        assertThat(run("/bin/sh", here.toString(), "table", SAMPLE)).isEqualTo(Run.of("table", SAMPLE));
        // Without a display the window says so; with the wrong path it would not come so far.
        Run view = run("env", "-u", "DISPLAY", "/bin/sh", here.toString(), "view", SAMPLE);
        assertThat(view.code()).isEqualTo(2);
        assertThat(view.err()).contains("no display");
    }

    @Test
    void theDebianPackageStandsUpToTheToolsThatCheckIt() throws Exception {
        Path root = unpacked();
        Path entry = root.resolve("usr/share/applications/coilwright.desktop");
        if (installed("desktop-file-validate")) {
            assertThat(run("desktop-file-validate", entry.toString())).isEqualTo(new Run(0, "", ""));
        }
        if (installed("man")) {
            Path page = root.resolve("usr/share/man/man1/coilwright.1.gz");
            assertThat(run("man", "--warnings", "-Tutf8", "-Z", "-l", page.toString())
                            .err())
                    .isEmpty();
        }
        if (installed("lintian")) {
            Run lintian = run(
                    "lintian", "--fail-on", "error,warning", deb().orElseThrow().toString());
            assertThat(lintian.code()).as(lintian.out()).isZero();
        }
    }

    private Path unpacked() throws Exception {
        Optional<Path> deb = deb();
        assumeTrue(deb.isPresent(), "no Debian package was made here");
        Path root = temp.resolve("root");
        assertThat(run("dpkg-deb", "-x", deb.get().toString(), root.toString()).code())
                .isZero();
        return root;
    }

    private static Optional<Path> deb() throws IOException {
        PathMatcher named = FileSystems.getDefault().getPathMatcher("glob:**/coilwright_*.deb");
        try (Stream<Path> files = Files.list(DIST)) {
            return files.filter(named::matches).findFirst();
        }
    }

    private static boolean installed(String program) {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":"))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    private Run image(String... args) throws Exception {
        List<String> command =
                new ArrayList<>(List.of(IMAGE.resolve("bin/coilwright").toString()));
        command.addAll(List.of(args));
        return run(command.toArray(String[]::new));
    }

    private Run run(String... command) throws Exception {
        Path out = temp.resolve("stdout");
        Path err = temp.resolve("stderr");
        int code = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start()
                .waitFor();
        return new Run(code, Files.readString(out), Files.readString(err));
    }
}
