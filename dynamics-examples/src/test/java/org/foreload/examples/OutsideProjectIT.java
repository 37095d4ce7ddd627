package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.conventions.Gravity;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.ideal.IdealEntry;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Projects of somebody else's, built by Maven against what the build has staged. Their local repository is empty, and
 * all else comes from what this build has fetched, so that they touch neither the network nor this machine's
 * repository.
 */
class OutsideProjectIT {

    /** m·g·b/L + m·d·h/L of the car in both projects: 1000 kg, b = L/2, L = 2.5 m, h = 0.5 m, d = 5 m/s². */
    private static final double FRONT_LOAD = 1000 * Gravity.G / 2 + 1000 * 5 * 0.5 / 2.5;

    private static final Set<String> OF_THE_CORE = Set.of(
            "foreload-core", "hipparchus-core", "hipparchus-ode", "hipparchus-optim", "ejml-core", "ejml-ddense");

    private static final Set<String> OF_THE_FILES = Set.of(
            "foreload-files", "jackson-annotations", "jackson-core", "jackson-databind", "jackson-dataformat-csv");

    private static final Path OUTSIDE = Path.of("src", "test", "outside");

    @TempDir
    private static Path directory;

    /** Copies of the projects, built in one run of Maven: what one fetches, the next finds. */
    @BeforeAll
    static void build() throws IOException, InterruptedException {
        copy();
        Files.writeString(directory.resolve("settings.xml"), """
                <settings>
                  <localRepository>%s</localRepository>
                  <mirrors>
                    <mirror>
                      <id>fetched</id>
                      <mirrorOf>*,!staged</mirrorOf>
                      <url>%s</url>
                    </mirror>
                  </mirrors>
                </settings>
                """.formatted(
                        directory.resolve("repository"),
                        Path.of(System.getProperty("maven.local")).toUri()));
        run(
                directory,
                System.getProperty("maven.program"),
                "-q",
                "-B",
                "-s",
                "settings.xml",
                "-Dforeload.version=" + System.getProperty("project.version"),
                "-Dstaging.url=" + Path.of(System.getProperty("staging.folder")).toUri(),
                "compile",
                "dependency:build-classpath",
                "-Dmdep.outputFile=class-path.txt");
    }

    /** Maven compiles a file for each project: without the second compiler it is done sooner. */
    private static final String SHORT_RUN = "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC";

    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();

    private static String run(Path where, String... command) throws IOException, InterruptedException {
        Path out = where.resolve("out.txt");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(where.toFile())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile());
        builder.environment().merge("MAVEN_OPTS", SHORT_RUN, (own, more) -> own + " " + more);
        int status = builder.start().waitFor();
        String text = Files.readString(out);
        assertEquals(0, status, text);
        return text;
    }

    private static void copy() throws IOException {
        try (Stream<Path> files = Files.walk(OUTSIDE)) {
            for (Path file : files.skip(1).toList()) {
                Files.copy(file, directory.resolve(OUTSIDE.relativize(file)));
            }
        }
    }

    /** What Maven puts on the class path of a project. */
    private static List<Path> libraries(Path project) throws IOException {
        return Arrays.stream(Files.readString(project.resolve("class-path.txt")).split(File.pathSeparator))
                .map(Path::of)
                .toList();
    }

    private static List<String> answer(Path project, List<Path> libraries, String... args)
            throws IOException, InterruptedException {
        String classPath = Stream.concat(Stream.of(project.resolve("target/classes")), libraries.stream())
                .map(Path::toString)
                .collect(Collectors.joining(File.pathSeparator));
        return run(
                        project,
                        Stream.concat(Stream.of(JAVA, "-cp", classPath, "Outside"), Stream.of(args))
                                .toArray(String[]::new))
                .lines()
                .toList();
    }

    /** The answer of a project that is a module, with all libraries on the module path. */
    private static List<String> answerOfAModule(Path project, List<Path> libraries, String... args)
            throws IOException, InterruptedException {
        String modulePath = Stream.concat(Stream.of(project.resolve("target/classes")), libraries.stream())
                .map(Path::toString)
                .collect(Collectors.joining(File.pathSeparator));
        return run(
                        project,
                        Stream.concat(
                                        Stream.of(JAVA, "-p", modulePath, "-m", "outside/outside.Outside"),
                                        Stream.of(args))
                                .toArray(String[]::new))
                .lines()
                .toList();
    }

    /** Names of the artifacts: in a repository a file lies in the folder of its version, in that of its artifact. */
    private static Set<String> artifacts(List<Path> libraries) {
        return libraries.stream()
                .map(file -> file.getParent().getParent().getFileName().toString())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void theCoreAloneBringsHipparchusAndEjml() throws IOException, InterruptedException {
        Path project = directory.resolve("core-alone");
        List<Path> libraries = libraries(project);
        assertEquals(OF_THE_CORE, artifacts(libraries));
        assertEquals(FRONT_LOAD, Double.parseDouble(answer(project, libraries).get(0)), 1e-9 * FRONT_LOAD);
    }

    @Test
    void theFileReadersBringJacksonBesides() throws IOException, InterruptedException {
        Path project = directory.resolve("core-and-files");
        List<Path> libraries = libraries(project);
        Set<String> both = new TreeSet<>(OF_THE_CORE);
        both.addAll(OF_THE_FILES);
        assertEquals(both, artifacts(libraries));
        List<String> answer = answer(project, libraries, "car.json", "corner.json");
        assertEquals(FRONT_LOAD, Double.parseDouble(answer.get(0)), 1e-9 * FRONT_LOAD);
        // The points lie on a circle of 80 m, rounded to 0.1 mm.
        assertEquals(80, Double.parseDouble(answer.get(1)), 0.5);
    }

    /** On the module path the same numbers come out as in this virtual machine, on its class path. */
    @Test
    void aModuleCanRequireThem() throws IOException, InterruptedException {
        Path project = directory.resolve("from-a-module");
        List<Path> libraries = libraries(project);
        Path car = OUTSIDE.resolve("core-and-files/car.json").toAbsolutePath();
        Path corner = OUTSIDE.resolve("from-a-module/corner.json").toAbsolutePath();
        Car read = CarFile.read(car).value();
        double time = IdealEntry.solve(read, CornerFile.read(corner).value()).time();
        double frequency =
                LinearHandling.of(Trim.find(read, 30, 4, 0).orElseThrow()).naturalFrequency();
        assertEquals(
                List.of(Double.toString(time), Double.toString(frequency)),
                answerOfAModule(project, libraries, car.toString(), corner.toString()));
    }

    @Test
    void sourcesAndJavadocAreStagedBesideEachJar() throws IOException {
        for (String artifact : List.of("foreload-core", "foreload-files")) {
            Path folder = Path.of(System.getProperty("staging.folder"), "org", "foreload", artifact)
                    .resolve(System.getProperty("project.version"));
            try (Stream<Path> files = Files.list(folder)) {
                List<String> names =
                        files.map(file -> file.getFileName().toString()).toList();
                for (String end : List.of("\\d\\.jar", "-sources\\.jar", "-javadoc\\.jar", "\\d\\.pom")) {
                    assertTrue(names.stream().anyMatch(name -> name.matches(".*" + end)), end + " in " + names);
                }
            }
        }
    }
}
