package org.foreload.strategy;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * Which releases a sweep tries: every shape with every peak, start and end that fit together.
 *
 * @param shapes shapes tried between start and end; {@code abrupt} needs no place here, the baseline is always tried
 * @param peaks peak decelerations as shares of what the brakes can do in a straight line before a wheel locks
 * @param starts starts of the release, as shares of the distance from turn-in to the apex, or to each of those of
 *     several bends that the car slows for; negative before turn-in
 * @param ends ends of the release, in the same shares
 * @param buildUpTime time in which the foot reaches the peak, s
 */
public record SweepPlan(
        List<ReleaseShape> shapes, List<Double> peaks, List<Double> starts, List<Double> ends, double buildUpTime) {

    /**
     * Checks and copies.
     *
     * @throws InvalidValueException if a number is not allowed, there is nothing to try, or a shape gives a share that
     *     is not finite: one such shape would end the whole sweep; it is named
     */
    public SweepPlan {
        shapes = List.copyOf(Objects.requireNonNull(shapes, "shapes"));
        peaks = List.copyOf(Objects.requireNonNull(peaks, "peaks"));
        starts = List.copyOf(Objects.requireNonNull(starts, "starts"));
        ends = List.copyOf(Objects.requireNonNull(ends, "ends"));
        if (shapes.isEmpty() || peaks.isEmpty() || starts.isEmpty() || ends.isEmpty()) {
            throw new InvalidValueException("sweep", "nothing to try", "at least one shape, peak, start and end");
        }
        shapes.forEach(ReleaseShapes::checked);
        peaks.forEach(peak -> Checks.within("peak_share", peak, 0.01, 2));
        starts.forEach(start -> Checks.finite("release_start_share", start));
        ends.forEach(end -> Checks.finite("release_end_share", end));
        Checks.notNegative("build_up_time", buildUpTime);
    }

    /**
     * Five shapes, three peaks, and starts and ends from before turn-in to past the apex: as many as show where each
     * shape is quick. Its best is looked for from there.
     */
    public static SweepPlan standard() {
        return withResolution(1);
    }

    /**
     * The same ranges, divided more finely.
     *
     * @param resolution 1 for the standard sweep; each step more adds as many values between its peaks, starts and ends
     */
    public static SweepPlan withResolution(int resolution) {
        Checks.within("resolution", resolution, 1, 100);
        return new SweepPlan(
                List.of(
                        ReleaseShapes.LINEAR,
                        ReleaseShapes.PROGRESSIVE,
                        ReleaseShapes.HELD,
                        ReleaseShapes.SMOOTH,
                        ReleaseShapes.TWO_STAGE),
                divided(resolution, 0.5, 0.75, 0.87),
                divided(resolution, -0.5, -0.1, 0.3),
                divided(resolution, 0.35, 0.7, 1.1),
                0.25);
    }

    /** The same releases for a foot that takes another time, s, to reach the peak. */
    public SweepPlan withBuildUpTime(double seconds) {
        return new SweepPlan(shapes, peaks, starts, ends, seconds);
    }

    private static List<Double> divided(int parts, double... coarse) {
        List<Double> fine = new ArrayList<>();
        for (int i = 0; i + 1 < coarse.length; i++) {
            for (int j = 0; j < parts; j++) {
                fine.add(coarse[i] + (coarse[i + 1] - coarse[i]) * j / parts);
            }
        }
        fine.add(coarse[coarse.length - 1]);
        return fine;
    }

    /**
     * The releases of the sweep.
     *
     * @param limit deceleration at which a wheel locks in a straight line, m/s²
     * @param apexes distances from turn-in to the apex of each bend that the car slows for, m
     */
    List<Braking> releases(double limit, List<Double> apexes) {
        List<Braking> plans = new ArrayList<>();
        for (double peak : peaks) {
            plans.add(StraightLine.braking(peak * limit, buildUpTime).rounded());
        }
        for (ReleaseShape shape : shapes) {
            for (double peak : peaks) {
                for (double apex : apexes) {
                    releases(shape, apex)
                            .map(release -> Braking.of(peak * limit, buildUpTime, release)
                                    .rounded())
                            .forEach(plans::add);
                }
            }
        }
        return plans;
    }

    private Stream<Release> releases(ReleaseShape shape, double apex) {
        return starts.stream()
                .flatMap(start -> ends.stream()
                        .filter(end -> end > start)
                        .map(end -> new Release(shape, start * apex, end * apex)));
    }
}
