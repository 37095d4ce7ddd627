package org.foreload.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;

/**
 * A corner drawn from segments, as its file says it.
 *
 * @param name for reports
 * @param approachSpeed speed at the start of the approach, m/s
 * @param approachLength straight before the segments, m
 * @param exitLength straight after the segments, m
 * @param halfWidth distance from the line to either edge of the track, m
 * @param segments in driving order
 * @param gradePercent rise over run of the whole line in per cent, positive uphill
 * @param bankingDegrees slope across the whole line in degrees, positive where the left edge is the lower one
 */
public record DrawnCorner(
        String name,
        double approachSpeed,
        double approachLength,
        double exitLength,
        double halfWidth,
        List<Segment> segments,
        double gradePercent,
        double bankingDegrees) {

    /** On a level road. */
    public DrawnCorner(
            String name,
            double approachSpeed,
            double approachLength,
            double exitLength,
            double halfWidth,
            List<Segment> segments) {
        this(name, approachSpeed, approachLength, exitLength, halfWidth, segments, 0, 0);
    }

    /** Takes a copy of the segments. */
    public DrawnCorner {
        Objects.requireNonNull(name);
        segments = List.copyOf(segments);
    }

    /** Angle, rad, through which the segments turn in all, positive to the left. */
    public double angle() {
        return segments.stream().mapToDouble(DrawnCorner::angle).sum();
    }

    /** Angles, rad, of the bends one after the other, each positive to the left; straights part none. */
    public List<Double> bends() {
        List<Double> bends = new ArrayList<>();
        for (Segment segment : segments) {
            double angle = angle(segment);
            int last = bends.size() - 1;
            if (last >= 0 && bends.get(last) * angle > 0) {
                bends.set(last, bends.get(last) + angle);
            } else if (angle != 0) {
                bends.add(angle);
            }
        }
        return bends;
    }

    private static double angle(Segment segment) {
        return 0.5 * (segment.startCurvature() + segment.endCurvature()) * segment.length();
    }

    /** Largest curvature to either side, 1/m. */
    double tightest() {
        return segments.stream()
                .mapToDouble(one -> Math.max(Math.abs(one.startCurvature()), Math.abs(one.endCurvature())))
                .max()
                .orElse(0);
    }

    /** Length of the segments, m. */
    double length() {
        return segments.stream().mapToDouble(Segment::length).sum();
    }

    /**
     * The corner that is driven.
     *
     * @throws org.foreload.conventions.InvalidValueException if a number is not allowed
     */
    public Corner corner() {
        return new Corner(
                name,
                approachSpeed,
                SegmentPath.of(approachLength, segments, exitLength, halfWidth)
                        .withGrade(Math.atan(gradePercent / 100))
                        .withBanking(Math.toRadians(bankingDegrees)));
    }
}
