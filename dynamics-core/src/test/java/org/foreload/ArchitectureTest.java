package org.foreload;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The plan of the house: which package may use which. A package that is not listed here fails, so a new one begins with
 * a line in {@link #ROOMS} and a note in docs/decisions.
 */
class ArchitectureTest {

    private static final String ROOT = "org.foreload";

    /** Each package with what it may use, besides {@code conventions}, which all may use. */
    private static final Map<String, Set<String>> ROOMS = Map.ofEntries(
            room("conventions"),
            room("parameter"),
            room("integrate"),
            room("tyre"),
            room("vehicle", "tyre"),
            room("load", "vehicle"),
            room("grip", "vehicle", "tyre", "load"),
            room("path"),
            room("braking"),
            room("ideal", "grip", "path", "vehicle"),
            room("bicycle", "vehicle", "tyre", "load"),
            room("handling", "bicycle", "vehicle", "tyre", "load"),
            room("driver", "bicycle", "load", "path", "tyre", "vehicle"),
            room("trace"),
            room("collocation"),
            room("line", "limit", "collocation", "vehicle", "path"),
            room("limit", "collocation", "vehicle", "tyre", "load", "path", "ideal"),
            room("entry", "bicycle", "braking", "driver", "integrate", "load", "path", "trace", "vehicle"),
            room("study"),
            room("recording", "trace", "path", "braking"),
            room("comparison", "recording", "trace", "path"),
            room("envelope", "recording", "trace", "study"),
            room(
                    "advice",
                    "tyre",
                    "vehicle",
                    "path",
                    "braking",
                    "driver",
                    "trace",
                    "entry",
                    "study",
                    "strategy",
                    "risk",
                    "recording",
                    "envelope"),
            room("optimum", "tyre", "vehicle", "braking", "ideal", "path", "driver", "entry", "study", "strategy"),
            room("gap", "tyre", "vehicle", "braking", "entry", "trace", "driver", "limit", "path"),
            room(
                    "sensitivity",
                    "parameter",
                    "tyre",
                    "vehicle",
                    "path",
                    "braking",
                    "driver",
                    "entry",
                    "study",
                    "strategy",
                    "optimum"),
            room("risk", "braking", "driver", "entry", "path", "strategy", "study", "tyre", "vehicle"),
            room("lap", "entry", "optimum", "path", "strategy", "study", "trace"),
            room("strategy", "braking", "driver", "entry", "grip", "ideal", "path", "study", "vehicle"),
            room(
                    "stability",
                    "braking",
                    "tyre",
                    "vehicle",
                    "load",
                    "grip",
                    "path",
                    "bicycle",
                    "handling",
                    "driver",
                    "trace",
                    "entry"),
            room("pedal", "vehicle", "grip", "braking", "bicycle", "driver", "trace", "entry", "study"),
            room(
                    "balance",
                    "braking",
                    "driver",
                    "entry",
                    "grip",
                    "optimum",
                    "parameter",
                    "path",
                    "pedal",
                    "risk",
                    "stability",
                    "strategy",
                    "study",
                    "vehicle"));

    /** Packages that may use Hipparchus: those that integrate, search or fit. */
    private static final String[] HIPPARCHUS_ROOMS =
            packages("tyre", "grip", "entry", "ideal", "study", "path", "recording");

    /** Packages that may use EJML: those that do linear algebra. */
    private static final String[] EJML_ROOMS = packages("handling", "collocation");

    /**
     * The public classes that say of themselves that they are buffers: each evaluation of the equations fills them
     * anew.
     */
    private static final Set<String> WORKING_BUFFERS = Set.of(
            ROOT + ".path.Path$Place",
            ROOT + ".bicycle.WheelForces",
            ROOT + ".bicycle.Inputs",
            ROOT + ".driver.DriverView",
            ROOT + ".tyre.ContactPatch",
            ROOT + ".tyre.SlipCurve$Shares",
            ROOT + ".integrate.Integration",
            ROOT + ".integrate.Step");

    /** A reader keeps about this many types in mind; more is a second chapter. */
    private static final int LARGEST_PACKAGE = 15;

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(ROOT);

    static Stream<String> rooms() {
        return ROOMS.keySet().stream().sorted();
    }

    @Test
    void everyClassLivesInAListedPackage() {
        classes()
                .should()
                .resideInAnyPackage(packages(ROOMS.keySet().toArray(String[]::new)))
                .check(CLASSES);
    }

    /** All that is listed, and nothing else: an edge that nobody uses any more is no plan. */
    @ParameterizedTest
    @MethodSource("rooms")
    void aPackageUsesWhatTheListSays(String room) {
        Set<String> used = CLASSES.stream()
                .filter(one -> one.getPackageName().equals(ROOT + "." + room))
                .flatMap(one -> one.getDirectDependenciesFromSelf().stream())
                .map(dependency -> dependency.getTargetClass().getPackageName())
                .filter(name -> name.startsWith(ROOT + "."))
                .map(name -> name.substring(ROOT.length() + 1))
                .filter(name -> !name.equals(room) && !name.equals("conventions"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(ROOMS.get(room)), used);
    }

    @Test
    void packagesHaveNoCycle() {
        slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    /** The list itself must be a plan without a cycle, or two packages could one day come to use each other. */
    @Test
    void theListHasNoCycle() {
        Map<String, Set<String>> left = new TreeMap<>();
        ROOMS.forEach((room, uses) -> left.put(room, new TreeSet<>(uses)));
        while (left.values().stream().anyMatch(Set::isEmpty)) {
            Set<String> ground = left.entrySet().stream()
                    .filter(entry -> entry.getValue().isEmpty())
                    .map(Map.Entry::getKey)
                    .collect(Collectors.toSet());
            left.keySet().removeAll(ground);
            left.values().forEach(uses -> uses.removeAll(ground));
        }
        assertEquals(Map.of(), left, "packages that stand on each other, or on one that is not listed");
    }

    @Test
    void hipparchusStaysWhereNumbersAreSolved() {
        noClasses()
                .that(not(resideInAnyPackage(HIPPARCHUS_ROOMS)))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.hipparchus..")
                .check(CLASSES);
    }

    @Test
    void ejmlStaysInLinearHandling() {
        noClasses()
                .that(not(resideInAnyPackage(EJML_ROOMS)))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.ejml..")
                .check(CLASSES);
    }

    @Test
    void theCoreUsesNoOtherLibrary() {
        noClasses()
                .should()
                .dependOnClassesThat(not(resideInAnyPackage(
                        ROOT + "..", "java.lang..", "java.util..", "org.hipparchus..", "org.ejml..")))
                .check(CLASSES);
    }

    @Test
    void noNumericalLibraryShowsInASignature() {
        classes()
                .that()
                .arePublic()
                .should(new HideTypesOf("org.hipparchus..", "org.ejml.."))
                .check(CLASSES);
    }

    @Test
    void publicTypesAreClosedForExtension() {
        classes()
                .that()
                .arePublic()
                .and()
                .areNotInterfaces()
                .should(new ArchCondition<>("be records, enums or final classes") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        // An enum whose constants have bodies is not final in its class file.
                        boolean closed =
                                type.isEnum() || type.getModifiers().contains(JavaModifier.FINAL) || isSealed(type);
                        events.add(new SimpleConditionEvent(type, closed, type.getName() + " can be extended"));
                    }
                })
                .check(CLASSES);
    }

    @Test
    void nothingIsShared() {
        fields().that().areStatic().should().beFinal().check(CLASSES);
    }

    /** Working classes behind the scenes may keep state while they run; what a caller can hold may not. */
    @Test
    void whatACallerHoldsDoesNotChange() {
        fields().that()
                .areDeclaredInClassesThat(DescribedPredicate.describe(
                        "are public and no buffers",
                        type -> type.getModifiers().contains(JavaModifier.PUBLIC)
                                && !WORKING_BUFFERS.contains(type.getName())))
                .should()
                .beFinal()
                .check(CLASSES);
    }

    @Test
    void theCorePrintsNothing() {
        NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.check(CLASSES);
    }

    @Test
    void everyRandomDrawHasASeed() {
        noClasses()
                .should()
                .callMethod(Math.class, "random")
                .orShould()
                .callMethod(StrictMath.class, "random")
                .orShould()
                .callConstructor(java.util.Random.class)
                .orShould()
                .callConstructor(java.util.SplittableRandom.class)
                .orShould()
                .dependOnClassesThat()
                .belongToAnyOf(java.util.concurrent.ThreadLocalRandom.class)
                .check(CLASSES);
    }

    @Test
    void noPackageIsTooLargeToKnow() {
        Map<String, List<String>> types = CLASSES.stream()
                .filter(JavaClass::isTopLevelClass)
                .filter(type -> !type.getSimpleName().equals("package-info"))
                .collect(Collectors.groupingBy(
                        JavaClass::getPackageName,
                        TreeMap::new,
                        Collectors.mapping(JavaClass::getSimpleName, Collectors.toList())));
        assertTrue(types.size() > 1, "no classes were found");
        types.values().removeIf(names -> names.size() <= LARGEST_PACKAGE);
        assertEquals(Map.of(), types, "packages of more than " + LARGEST_PACKAGE + " types");
    }

    private static Map.Entry<String, Set<String>> room(String name, String... uses) {
        return Map.entry(name, Set.of(uses));
    }

    private static String[] packages(String... rooms) {
        return Stream.of(rooms).map(room -> ROOT + "." + room).toArray(String[]::new);
    }

    private static boolean isSealed(JavaClass type) {
        return type.reflect().isSealed();
    }

    /** No public or protected member of a public class names a type of the given packages, type arguments included. */
    private static final class HideTypesOf extends ArchCondition<JavaClass> {

        private final String[] hidden;

        HideTypesOf(String... hidden) {
            super("show no type of " + String.join(", ", hidden));
            this.hidden = hidden;
        }

        @Override
        public void check(JavaClass type, ConditionEvents events) {
            type.getSuperclass().ifPresent(parent -> report(type, type.getName(), List.of(parent), events));
            report(type, type.getName(), List.copyOf(type.getInterfaces()), events);
            for (JavaMember member : type.getMembers()) {
                if (member.getModifiers().contains(JavaModifier.PUBLIC)
                        || member.getModifiers().contains(JavaModifier.PROTECTED)) {
                    report(type, member.getFullName(), shown(member), events);
                }
            }
        }

        private static List<JavaType> shown(JavaMember member) {
            List<JavaType> types = new ArrayList<>();
            if (member instanceof JavaField field) {
                types.add(field.getType());
            } else if (member instanceof JavaCodeUnit code) {
                types.add(code.getReturnType());
                types.addAll(code.getParameterTypes());
                types.addAll(code.getExceptionTypes());
            }
            return types;
        }

        private void report(JavaClass type, String where, List<? extends JavaType> types, ConditionEvents events) {
            types.stream()
                    .flatMap(shown -> shown.getAllInvolvedRawTypes().stream())
                    .filter(resideInAnyPackage(hidden))
                    .forEach(shown ->
                            events.add(SimpleConditionEvent.violated(type, where + " shows " + shown.getName())));
        }
    }
}
