package coilwright.desktop;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The window asks the library and shows; it reaches for nothing behind it and works nothing out. */
class DesktopRoomTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("coilwright.desktop");

    /** Enough for pixels: largest, smallest, whole. */
    private static final Set<String> FOR_PIXELS = Set.of("max", "min", "abs", "ceil", "round");

    @Test
    void usesTheLibraryAndTheToolkit() {
        classes()
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "java..", "javax.swing..", "javax.accessibility..", "coilwright..", "com.formdev.flatlaf..")
                .check(CLASSES);
    }

    @Test
    void knowsNoCommandAndNoEngineRoom() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("coilwright.cli..", "coilwright.network..", "coilwright.drawing.export..")
                .check(CLASSES);
    }

    @Test
    void holdsNoFormula() {
        noClasses()
                .should()
                .callMethodWhere(new DescribedPredicate<>("is mathematics") {
                    @Override
                    public boolean test(JavaMethodCall call) {
                        return Set.of("java.lang.Math", "java.lang.StrictMath")
                                        .contains(call.getTargetOwner().getFullName())
                                && !FOR_PIXELS.contains(call.getTarget().getName());
                    }
                })
                .check(CLASSES);
    }
}
