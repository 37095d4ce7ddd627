package org.foreload;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a program that embeds the core can call, for tests that try all of it. */
final class PublicTypes {

    private static final String ROOT = "org.foreload";

    private PublicTypes() {}

    /** All types that are public, as are those around them, in the order of their names. */
    static List<Class<?>> all() {
        return new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages(ROOT).stream()
                        .<Class<?>>map(JavaClass::reflect)
                        .filter(PublicTypes::isOpen)
                        .sorted(Comparator.comparing((Class<?> type) -> type.getName()))
                        .toList();
    }

    private static boolean isOpen(Class<?> type) {
        return type == null || Modifier.isPublic(type.getModifiers()) && isOpen(type.getDeclaringClass());
    }

    /** Name of the package of a type, without the root. */
    static String room(Class<?> type) {
        return type.getPackageName().substring(ROOT.length() + 1);
    }

    /** Constructors and methods with a body that the type brings and its source shows, in the order of their names. */
    static List<Executable> members(Class<?> type) {
        return Stream.<Executable>concat(
                        Arrays.stream(type.getConstructors()),
                        Arrays.stream(type.getDeclaredMethods()).filter(PublicTypes::isWritten))
                .sorted(Comparator.comparing(Executable::toString))
                .toList();
    }

    private static boolean isWritten(Method method) {
        return Modifier.isPublic(method.getModifiers())
                && !Modifier.isAbstract(method.getModifiers())
                && !method.isSynthetic()
                && !method.getName().equals("equals")
                && !(method.getDeclaringClass().isEnum() && method.getName().equals("valueOf"));
    }

    /** Type, name and types of the arguments, as a list of exceptions writes them. */
    static String name(Executable member) {
        String type = member.getDeclaringClass().getName().substring(ROOT.length() + 1);
        String name = member instanceof Constructor ? "new" : member.getName();
        return type
                + Arrays.stream(member.getParameterTypes())
                        .map(Class::getSimpleName)
                        .collect(Collectors.joining(",", "." + name + "(", ")"));
    }
}
