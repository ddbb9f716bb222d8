package coilwright;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rooms of the library and what each may use. */
class RoomsTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("coilwright");

    /** Rooms of this library that each room may use, besides itself. */
    private static final Map<String, List<String>> ROOMS = new LinkedHashMap<>();

    /** Libraries that each room may use, besides the JDK. */
    private static final Map<String, List<String>> LIBRARIES = Map.of(
            "circuit", List.of("org.jgrapht.."),
            "network", List.of("org.ejml.."),
            "fault", List.of("org.ejml.."),
            "drawing", List.of("org.apache.batik..", "org.apache.fop..", "org.apache.xmlgraphics..", "org.w3c.dom.."),
            "job", List.of("org.yaml.snakeyaml..", "com.fasterxml.jackson.."),
            "rewind", List.of("javax.measure..", "tech.units.."),
            "sheet", List.of("org.w3c.dom.."));

    static {
        ROOMS.put("file", List.of());
        ROOMS.put("winding", List.of());
        ROOMS.put("circuit", List.of("winding"));
        ROOMS.put("network", List.of());
        ROOMS.put("bench", List.of("winding", "circuit", "network"));
        ROOMS.put("fault", List.of("circuit", "bench", "network", "winding"));
        ROOMS.put("rewind", List.of("winding"));
        ROOMS.put("commutator", List.of());
        ROOMS.put("drawing", List.of("file", "winding", "circuit", "bench", "rewind", "commutator"));
        ROOMS.put(
                "job",
                List.of("file", "winding", "circuit", "network", "bench", "fault", "rewind", "commutator", "drawing"));
        ROOMS.put("lesson", List.of("winding", "circuit", "bench", "fault", "rewind", "drawing"));
        ROOMS.put(
                "sheet",
                List.of(
                        "winding",
                        "circuit",
                        "network",
                        "bench",
                        "fault",
                        "rewind",
                        "commutator",
                        "drawing",
                        "job",
                        "lesson"));
    }

    static Stream<String> rooms() {
        return ROOMS.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomUsesOnlyWhatItMay(String room) {
        List<String> allowed = new ArrayList<>(List.of("java..", "javax.xml..", "coilwright." + room + ".."));
        ROOMS.get(room).forEach(r -> allowed.add("coilwright." + r + ".."));
        allowed.addAll(LIBRARIES.getOrDefault(room, List.of()));
        classes()
                .that()
                .resideInAPackage("coilwright." + room + "..")
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(allowed.toArray(String[]::new)))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @Test
    void everyClassLivesInARoom() {
        String[] all = rooms().map(r -> "coilwright." + r + "..").toArray(String[]::new);
        assertThat(CLASSES.stream().filter(not(resideInAnyPackage(all)))).isEmpty();
        assertThat(CLASSES.stream().filter(resideInAPackage("coilwright.winding..")))
                .hasSizeGreaterThan(20);
    }

    @Test
    void roomsMakeNoRing() {
        slices().matching("coilwright.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void noRoomKnowsAWindow() {
        noClasses()
                .should()
                .dependOnClassesThat(resideInAnyPackage("javax.swing..", "java.applet.."))
                .check(CLASSES);
    }

    /** Loading the toolkit takes longer than most jobs; only pictures and print may need it. */
    @Test
    void onlyExportNeedsTheToolkit() {
        noClasses()
                .that()
                .resideOutsideOfPackage("coilwright.drawing.export..")
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.awt..", "org.apache.batik..", "org.apache.fop.."))
                .check(CLASSES);
    }

    @Test
    void theUnitLibraryStaysInOneClass() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName("coilwright.rewind.Quantities")
                .should()
                .dependOnClassesThat(resideInAnyPackage("javax.measure..", "tech.units.."))
                .check(CLASSES);
    }
}
