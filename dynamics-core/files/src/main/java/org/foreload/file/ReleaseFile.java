package org.foreload.file;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.foreload.braking.TabulatedRelease;
import org.foreload.conventions.InvalidValueException;

/**
 * Reads the shape of a release of one's own from a CSV file: as shares, or as it was logged.
 *
 * <ul>
 *   <li>{@code released}, the share of the release's length that has passed, strictly rising from 0 to 1, and
 *       {@code remaining}, the share of the peak that is still on, from 1 to 0, never rising.
 *   <li>{@code brake}, what the pedal's sensor gave, in any unit, and {@code s_m}, the distance, m. Or {@code time_s}
 *       and {@code speed_mps} in place of the distance, which is then the area below the speed.
 * </ul>
 *
 * <p>Of a log the release is taken from the last row at the peak to the first one after it with the brake off, each
 * within {@value #NOISE} of the peak, which is what a sensor may sway; where the pedal came back in between, the brake
 * is held at the least it had been.
 */
public final class ReleaseFile {

    private static final List<String> SHARES = List.of("released", "remaining");

    private static final List<String> LOGGED = List.of("s_m", "brake", "time_s", "speed_mps");

    private static final List<String> COLUMNS =
            Stream.concat(SHARES.stream(), LOGGED.stream()).toList();

    /** Share of the peak by which a logged pedal may sway and still counts as at its peak, or as off. */
    private static final double NOISE = 0.02;

    /** What the core says before the column's name. */
    private static final String PREFIX = "release_shape, ";

    private ReleaseFile() {}

    /**
     * Reads a shape.
     *
     * @param path the file
     * @param name for reports
     * @throws InputException if the file or a value in it cannot be used; the field names column and row
     */
    public static TabulatedRelease read(Path path, String name) {
        String file = path.toString();
        NumberColumns columns = NumberColumns.read(path, file, COLUMNS);
        boolean logged = LOGGED.stream().anyMatch(columns::has);
        (logged ? List.of("brake") : SHARES).forEach(column -> columns.require(column, true));
        return logged
                ? logged(columns, file, name)
                : shape(file, name, columns.column("released", 1), columns.column("remaining", 1));
    }

    private static TabulatedRelease shape(String file, String name, double[] released, double[] remaining) {
        try {
            return new TabulatedRelease(name, released, remaining);
        } catch (InvalidValueException e) {
            String field = e.field().startsWith(PREFIX) ? e.field().substring(PREFIX.length()) : null;
            throw InputException.of(file, field, e);
        }
    }

    private static TabulatedRelease logged(NumberColumns columns, String file, String name) {
        double[] brake = columns.column("brake", 1);
        double[] distance = distance(columns, file);
        int first = 0;
        for (int i = 0; i < brake.length; i++) {
            first = brake[i] > brake[first] ? i : first;
        }
        if (brake.length == 0 || !(brake[first] > 0)) {
            throw new InputException(file, "column brake", null, "must be above 0 in at least one row");
        }
        double peak = brake[first];
        for (int i = first; i < brake.length; i++) {
            first = brake[i] >= (1 - NOISE) * peak ? i : first;
        }
        int last = first;
        while (last < brake.length && brake[last] > NOISE * peak) {
            last++;
        }
        if (last == brake.length) {
            throw new InputException(
                    file,
                    "brake, row " + last,
                    Double.toString(brake[last - 1]),
                    "must come down to 0, or to 2 % of the peak of " + peak + ", after it");
        }
        double length = distance[last] - distance[first];
        double[] released = new double[last - first + 1];
        double[] remaining = new double[released.length];
        remaining[0] = 1;
        for (int i = 1; i < released.length; i++) {
            released[i] = (distance[first + i] - distance[first]) / length;
            remaining[i] = Math.min(remaining[i - 1], brake[first + i] / peak);
        }
        remaining[remaining.length - 1] = 0;
        return shape(file, name, released, remaining);
    }

    /** Distance of each row, m, strictly rising. */
    private static double[] distance(NumberColumns columns, String file) {
        boolean known = columns.has("s_m");
        if (!known) {
            if (!columns.has("time_s")) {
                throw new InputException(file, "column s_m", "missing", "or time_s and speed_mps must be given");
            }
            columns.require("speed_mps", true);
        }
        double[] along = columns.column(known ? "s_m" : "time_s", 1);
        for (int i = 1; i < along.length; i++) {
            if (!(along[i] > along[i - 1])) {
                throw new InputException(
                        file,
                        (known ? "s_m" : "time_s") + ", row " + (i + 1),
                        Double.toString(along[i]),
                        "must be above that of the row before, " + along[i - 1]);
            }
        }
        return known ? along : driven(along, columns.column("speed_mps", 1), file);
    }

    private static double[] driven(double[] time, double[] speed, String file) {
        double[] distance = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            if (!(speed[i] > 0)) {
                throw new InputException(
                        file, "speed_mps, row " + (i + 1), Double.toString(speed[i]), "must be above 0");
            }
            if (i > 0) {
                distance[i] = distance[i - 1] + (speed[i] + speed[i - 1]) / 2 * (time[i] - time[i - 1]);
            }
        }
        return distance;
    }
}
