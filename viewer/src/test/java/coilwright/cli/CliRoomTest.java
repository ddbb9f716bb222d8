package coilwright.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The command line asks the library and prints; it reaches for nothing behind it. */
class CliRoomTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("coilwright.cli");

    @Test
    void usesTheLibraryTheParserOfOptionsAndTheWriterOfJson() {
        classes()
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "coilwright..", "picocli..", "com.fasterxml.jackson.core..")
                .check(CLASSES);
    }

    @Test
    void opensNoWindowButByItsOneCommand() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.awt..", "javax.swing..")
                .check(CLASSES);
        noClasses()
                .that()
                .doNotHaveSimpleName("ViewCommand")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("coilwright.desktop..")
                .check(CLASSES);
    }

    /** Windings, pitches and circuits are worked out in the library; here there is at most a widest cell. */
    @Test
    void holdsNoFormula() {
        noClasses()
                .should()
                .callMethodWhere(
                        new com.tngtech.archunit.base.DescribedPredicate<>("is arithmetic beyond max and abs") {
                            @Override
                            public boolean test(com.tngtech.archunit.core.domain.JavaMethodCall call) {
                                String name = call.getTarget().getName();
                                return call.getTargetOwner().getFullName().equals("java.lang.Math")
                                        && !name.equals("max")
                                        && !name.equals("abs");
                            }
                        })
                .check(CLASSES);
    }
}
