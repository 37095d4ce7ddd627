package org.foreload.examples.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.foreload.file.CarFile;
import org.foreload.file.CircuitFile;
import org.foreload.file.CornerFile;
import org.foreload.file.InputException;
import org.foreload.file.Loaded;
import org.foreload.file.NearestName;
import org.foreload.lap.Circuit;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** The embedded cars and corners by name. */
public final class Demos {

    /** A front-heavy road car, a light car with driven rear wheels, a car with downforce. */
    public static final List<String> CARS = List.of("road", "light", "downforce");

    /** A tight half turn after a long straight, a right-angle corner, a fast long one. */
    public static final List<String> CORNERS = List.of("hairpin", "medium", "fast");

    /** The car that is used when none is named. */
    public static final String DEFAULT_CAR = "light";

    /** The corner that is used when none is named. */
    public static final String DEFAULT_CORNER = "medium";

    /** The name that errors give to the embedded circuit, in place of a file. */
    public static final String CIRCUIT_SOURCE = "demo circuit";

    private Demos() {}

    /** The embedded circuit of twelve corners. */
    public static Loaded<Circuit> circuit() {
        return CircuitFile.parse(text("circuit"), CIRCUIT_SOURCE, Path.of(""));
    }

    /**
     * An embedded car.
     *
     * @param field the option that named it, for the error
     * @param name one of {@link #CARS}
     * @throws InputException if there is no such car
     */
    public static Loaded<Car> car(String field, String name) {
        known(field, name, CARS);
        return CarFile.parse(text("car-" + name), carSource(name));
    }

    /**
     * An embedded corner.
     *
     * @param field the option that named it, for the error
     * @param name one of {@link #CORNERS}
     * @throws InputException if there is no such corner
     */
    public static Loaded<Corner> corner(String field, String name) {
        known(field, name, CORNERS);
        return CornerFile.parse(text("corner-" + name), cornerSource(name), Path.of(""));
    }

    /** The name that errors give to an embedded car, in place of a file. */
    public static String carSource(String name) {
        return "demo car " + name;
    }

    /** The name that errors give to an embedded corner, in place of a file. */
    public static String cornerSource(String name) {
        return "demo corner " + name;
    }

    private static void known(String field, String name, List<String> known) {
        if (!known.contains(name)) {
            String hint = NearestName.of(name, known)
                    .map(nearest -> "; did you mean " + nearest + "?")
                    .orElse("");
            throw new InputException(null, field, name, "must be one of " + String.join(", ", known) + hint);
        }
    }

    private static String text(String resource) {
        try (InputStream in = Demos.class.getResourceAsStream(resource + ".json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
