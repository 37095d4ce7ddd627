package org.foreload;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.vehicle.Car;

/** What a program that embeds the core can call, for tests that try all of it. */
final class PublicTypes {

    private static final String ROOT = "org.foreload";

    private static final String CLASS = ".class";

    private PublicTypes() {}

    /** All types that are public, as are those around them, in the order of their names. */
    static List<Class<?>> all() {
        Path folder = folderOf(Car.class);
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(file -> folder.relativize(file).toString())
                    .filter(file -> file.endsWith(CLASS) && !file.endsWith("package-info" + CLASS))
                    .map(PublicTypes::load)
                    .filter(PublicTypes::isOpen)
                    .sorted(Comparator.comparing((Class<?> type) -> type.getName()))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The folder that the compiler filled with the types beside this one, those of tests left out. */
    private static Path folderOf(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Class<?> load(String file) {
        String name = file.substring(0, file.length() - CLASS.length()).replace(File.separatorChar, '.');
        try {
            return Class.forName(name, false, PublicTypes.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
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
