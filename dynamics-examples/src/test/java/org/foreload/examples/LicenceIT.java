package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The executable jar says which libraries it carries, and carries their licences and notices with them. */
class LicenceIT {

    private static final Pattern LISTED =
            Pattern.compile("(?m)^ *\\((\\S+)\\) .*\\(([^:()]+):([^:]+):(\\S+) - \\S+\\)$");

    private static final Pattern LEGAL = Pattern.compile("META-INF/([^/]*LICENSE[^/]*|NOTICE[^/]*)");

    /** A library as META-INF/THIRD-PARTY.txt lists it, with the jar that the build took it from. */
    private record Library(String licence, String name, Path jar) {}

    private static JarFile program() throws IOException {
        return new JarFile(Path.of("target", "foreload.jar").toFile());
    }

    private static String text(JarFile jar, String name) {
        JarEntry entry = jar.getJarEntry(name);
        if (entry == null) {
            return "";
        }
        try (var in = jar.getInputStream(entry)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> names(JarFile jar) {
        return jar.stream().map(JarEntry::getName).toList();
    }

    private static List<Library> libraries(JarFile program) {
        List<Library> libraries = new ArrayList<>();
        for (MatchResult line : LISTED.matcher(text(program, "META-INF/THIRD-PARTY.txt"))
                .results()
                .toList()) {
            libraries.add(new Library(line.group(1), line.group(3), jar(line.group(3) + "-" + line.group(4) + ".jar")));
        }
        assertTrue(libraries.size() > 20, libraries::toString);
        return libraries;
    }

    private static Path jar(String name) {
        String path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Arrays.stream(path.split(File.pathSeparator))
                .map(Path::of)
                .filter(file -> file.endsWith(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not on the class path"));
    }

    @Test
    void everyClassComesFromForeloadOrFromAListedLibrary() throws IOException {
        try (JarFile program = program()) {
            Set<String> known = new HashSet<>();
            for (Library library : libraries(program)) {
                try (JarFile jar = new JarFile(library.jar().toFile())) {
                    known.addAll(names(jar));
                }
            }
            List<String> strange = names(program).stream()
                    .filter(name -> name.endsWith(".class") && !name.startsWith("org/foreload/"))
                    .filter(name -> !known.contains(name))
                    .toList();
            assertEquals(List.of(), strange);
        }
    }

    @Test
    void eachLibraryKeepsItsLicenceAndItsNotice() throws IOException {
        try (JarFile program = program()) {
            String notices = text(program, "META-INF/NOTICE");
            for (Library library : libraries(program)) {
                String folder = "META-INF/third-party/" + library.name() + "/";
                boolean carriesALicence = false;
                try (JarFile jar = new JarFile(library.jar().toFile())) {
                    for (String name : names(jar)) {
                        var legal = LEGAL.matcher(name);
                        if (!legal.matches()) {
                            continue;
                        }
                        carriesALicence |= legal.group(1).contains("LICENSE");
                        assertEquals(text(jar, name), text(program, folder + legal.group(1)), name);
                        if (legal.group(1).startsWith("NOTICE")) {
                            text(jar, name)
                                    .lines()
                                    .map(String::strip)
                                    .forEach(line -> assertTrue(notices.contains(line), library.name() + ": " + line));
                        }
                    }
                }
                // Of those that carry no text of their own, the Apache licence is Foreload's too; the others need a
                // copy.
                if (!carriesALicence && !library.licence().equals("Apache-2.0")) {
                    assertFalse(text(program, folder + "LICENSE.txt").isBlank(), library.name());
                }
            }
        }
    }

    @Test
    void foreloadsOwnLicenceIsApache() throws IOException {
        try (JarFile program = program()) {
            assertTrue(text(program, "META-INF/LICENSE.txt").contains("Apache License"));
            assertTrue(text(program, "META-INF/NOTICE").contains("Foreload\nCopyright"));
            // One text each, not one beside the other.
            assertFalse(names(program).contains("META-INF/LICENSE"));
            assertFalse(names(program).contains("META-INF/NOTICE.txt"));
        }
    }
}
