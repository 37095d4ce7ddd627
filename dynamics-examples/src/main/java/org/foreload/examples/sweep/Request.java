package org.foreload.examples.sweep;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.braking.ReleaseShape;
import org.foreload.file.CarFile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * What a sweep was asked: enough to decide whether its results answer another request. Two requests with equal numbers
 * are equal, however their files are written.
 *
 * @param version of the program
 * @param car digest of all numbers of the car
 * @param corner digest of the line and of the approach speed
 * @param settings all options that change results, each a name or {@code name=value}; a release shape with its digest
 */
public record Request(String version, String car, String corner, List<String> settings) {

    /** Takes a copy of the list. */
    public Request {
        settings = List.copyOf(settings);
    }

    /** How the name of a shape begins that a file describes. */
    private static final String TABLE = "table:";

    /** Points of the line that are looked at: no change that matters to a car hides between them. */
    private static final int POINTS = 4001;

    /** Points of a release shape that are looked at. */
    private static final int SHAPE_POINTS = 201;

    /** The request of these; each of the {@code options} a name or {@code name=value}. */
    public static Request of(String version, Car car, Corner corner, List<ReleaseShape> shapes, List<String> options) {
        List<String> settings = new ArrayList<>(options);
        for (ReleaseShape shape : shapes) {
            settings.add(shape.name() + "=" + digest(points(shape)));
        }
        return new Request(version, digest(bytes(car)), digest(points(corner)), settings);
    }

    /** The settings in one line. */
    String line() {
        return String.join(" ", settings);
    }

    /**
     * What of the settings is not as in the {@link #line} of another request, in words.
     *
     * @param before that line
     */
    String changes(String before) {
        String spaced = " " + before + " ";
        List<String> changes = settings.stream()
                .filter(setting -> !spaced.contains(" " + setting + " "))
                .map(setting -> change(setting, spaced))
                .toList();
        return changes.isEmpty() ? "the release shapes are others, or in another order" : String.join("; ", changes);
    }

    private static String change(String setting, String before) {
        int equals = setting.lastIndexOf('=');
        String name = equals < 0 ? setting : setting.substring(0, equals);
        Matcher other =
                Pattern.compile(" " + Pattern.quote(name) + "=(\\[[^]]*]|\\S*)").matcher(before);
        if (!other.find()) {
            return name + " is new";
        }
        return name.startsWith(TABLE)
                ? "the file of " + name + " has changed"
                : name + " was " + other.group(1) + " and is " + setting.substring(equals + 1);
    }

    private static ByteBuffer bytes(Car car) {
        return ByteBuffer.wrap(CarFile.write(car).getBytes(StandardCharsets.UTF_8));
    }

    private static ByteBuffer points(Corner corner) {
        Path path = corner.path();
        ByteBuffer numbers = ByteBuffer.allocate((3 + 5 * POINTS) * Double.BYTES);
        numbers.putDouble(corner.approachSpeed()).putDouble(path.start()).putDouble(path.end());
        for (int i = 0; i < POINTS; i++) {
            double s = path.start() + (path.end() - path.start()) * i / (POINTS - 1);
            numbers.putDouble(path.curvature(s))
                    .putDouble(path.widthLeft(s))
                    .putDouble(path.widthRight(s))
                    .putDouble(path.banking(s))
                    .putDouble(path.grade(s));
        }
        return numbers.flip();
    }

    private static ByteBuffer points(ReleaseShape shape) {
        double[] kinks = shape.kinks();
        ByteBuffer numbers = ByteBuffer.allocate((SHAPE_POINTS + 2 * kinks.length) * Double.BYTES);
        for (int i = 0; i < SHAPE_POINTS; i++) {
            numbers.putDouble(shape.remaining((double) i / (SHAPE_POINTS - 1)));
        }
        for (double kink : kinks) {
            numbers.putDouble(kink).putDouble(shape.remaining(kink));
        }
        return numbers.flip();
    }

    private static String digest(ByteBuffer bytes) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(bytes);
            return HexFormat.of().formatHex(digest.digest(), 0, DIGEST_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Bytes of a digest that are kept: chance does not bring two together, and nobody has a reason to. */
    private static final int DIGEST_BYTES = 12;
}
