package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.lifecycle.BeforeProperty;
import org.foreload.braking.TabulatedRelease;
import org.foreload.lap.Circuit;
import org.foreload.path.Corner;
import org.foreload.path.Segment;

/** What is written as a file is read back, for the formats that the program reads and people write. */
class RoundTripTest {

    private Path directory;

    @BeforeProperty
    void makeDirectory() throws IOException {
        directory = Files.createTempDirectory("round-trip");
    }

    @AfterProperty
    void removeDirectory() throws IOException {
        try (var files = Files.list(directory)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(directory);
    }

    @Provide
    Arbitrary<List<DrawnCorner>> corners() {
        return SampleCars.corners()
                .filter(corner -> corner.segments().stream().anyMatch(RoundTripTest::bends))
                .list()
                .ofMinSize(1)
                .ofMaxSize(4);
    }

    private static boolean bends(Segment segment) {
        return segment.startCurvature() != 0 || segment.endCurvature() != 0;
    }

    /** A circuit's file is made of its corners' files. */
    @Property(edgeCases = EdgeCasesMode.NONE)
    void circuits(@ForAll("corners") List<DrawnCorner> corners) {
        String json = corners.stream().map(CornerFile::write).collect(Collectors.joining(","));
        Circuit circuit = CircuitFile.parse("{\"name\": \"c\", \"corners\": [" + json + "]}", "circuit.json", directory)
                .value();
        assertEquals(corners.size(), circuit.corners().size());
        for (int i = 0; i < corners.size(); i++) {
            Corner expected = corners.get(i).corner();
            Corner read = circuit.corners().get(i);
            assertEquals(expected.name(), read.name());
            assertEquals(expected.approachSpeed(), read.approachSpeed());
            for (int k = 0; k <= 8; k++) {
                double s = expected.path().start()
                        + (expected.path().end() - expected.path().start()) * k / 8;
                assertEquals(expected.path().curvature(s), read.path().curvature(s));
                assertEquals(expected.path().widthRight(s), read.path().widthRight(s));
            }
        }
    }

    /** Columns of numbers of any size, each in the words of {@code Double.toString}. */
    @Property(edgeCases = EdgeCasesMode.NONE)
    void measuredLines(@ForAll long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        int rows = 1 + random.nextInt(12);
        List<String> names = CentreLineFile.COLUMNS.subList(0, 2 + random.nextInt(CentreLineFile.COLUMNS.size() - 1));
        double[][] values = new double[names.size()][rows];
        for (double[] column : values) {
            for (int i = 0; i < rows; i++) {
                column[i] = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-12, 13));
            }
        }
        NumberColumns read = NumberColumns.read(write(names, values), "line.csv", CentreLineFile.COLUMNS);
        for (int i = 0; i < names.size(); i++) {
            assertArrayEquals(values[i], read.column(names.get(i), 1));
        }
    }

    @Provide
    Arbitrary<TabulatedRelease> releases() {
        return Arbitraries.longs().map(RoundTripTest::release);
    }

    private static TabulatedRelease release(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int inside = random.nextInt(8);
        double[] released =
                random.doubles(inside, 1e-6, 1 - 1e-6).distinct().sorted().toArray();
        double[] down = random.doubles(released.length).sorted().toArray();
        int rows = released.length + 2;
        double[] u = new double[rows];
        double[] remaining = new double[rows];
        u[rows - 1] = 1;
        remaining[0] = 1;
        for (int i = 0; i < released.length; i++) {
            u[i + 1] = released[i];
            remaining[i + 1] = down[released.length - 1 - i];
        }
        return new TabulatedRelease("own", u, remaining);
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void releaseTables(@ForAll("releases") TabulatedRelease release) throws IOException {
        double[] kinks = release.kinks();
        double[] rows = IntStream.range(0, kinks.length + 2)
                .mapToDouble(i -> i == 0 ? 0 : i > kinks.length ? 1 : kinks[i - 1])
                .toArray();
        double[] remaining = IntStream.range(0, rows.length)
                .mapToDouble(i -> release.remaining(rows[i]))
                .toArray();
        Path file = write(List.of("released", "remaining"), rows, remaining);
        TabulatedRelease read = ReleaseFile.read(file, "own");
        assertEquals(release, read);
    }

    private Path write(List<String> names, double[]... columns) throws IOException {
        StringBuilder text = new StringBuilder(String.join(",", names)).append('\n');
        for (int row = 0; row < columns[0].length; row++) {
            int at = row;
            text.append(IntStream.range(0, columns.length)
                            .mapToObj(i -> Double.toString(columns[i][at]))
                            .collect(Collectors.joining(",")))
                    .append('\n');
        }
        return Files.writeString(directory.resolve("columns.csv"), text);
    }
}
