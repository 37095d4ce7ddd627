package org.foreload.path;

import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * A line drawn from segments: an approach straight, the segments, an exit straight. Width, grade and banking are the
 * same all along it.
 *
 * <p>Station zero is where the curvature first leaves zero, so straights that lead the list belong to the approach. If
 * nothing turns, it is the end of the approach straight.
 *
 * <p>Segments may meet with a jump of curvature (an arc set straight on a straight); no car can follow that without
 * leaving the line for a moment. {@link #curvatureJumps()} says where.
 */
public final class SegmentPath implements Path {

    /**
     * Pieces up to this length, m, are left out: at stations of kilometres their two ends are one number, and no car
     * turns within one.
     */
    private static final double SHORTEST = 1e-9;

    private final List<Segment> segments;
    private final ClothoidChain chain;
    private final double halfWidth;
    private final double grade;
    private final double banking;

    private SegmentPath(List<Segment> segments, ClothoidChain chain, double halfWidth, double grade, double banking) {
        this.segments = segments;
        this.chain = chain;
        this.halfWidth = halfWidth;
        this.grade = grade;
        this.banking = banking;
    }

    /**
     * A flat line.
     *
     * @param approachLength straight before the segments, 0 or more, m
     * @param segments the segments in driving order; may be empty; those of a nanometre or less are left out
     * @param exitLength straight after the segments, 0 or more, m
     * @param halfWidth distance from the line to either edge of the track, m
     * @throws InvalidValueException if a number is not allowed or the line has no length
     */
    public static SegmentPath of(double approachLength, List<Segment> segments, double exitLength, double halfWidth) {
        Objects.requireNonNull(segments, "segments");
        Checks.notNegative("approach_length_m", approachLength);
        Checks.notNegative("exit_length_m", exitLength);
        Checks.positive("half_width_m", halfWidth);
        List<Segment> copy = List.copyOf(segments);
        return new SegmentPath(copy, chain(approachLength, copy, exitLength), halfWidth, 0, 0);
    }

    private static ClothoidChain chain(double approachLength, List<Segment> segments, double exitLength) {
        int leading = 0;
        double approach = approachLength;
        while (leading < segments.size() && segments.get(leading) instanceof Segment.Straight straight) {
            approach += straight.length();
            leading++;
        }
        if (leading == segments.size()) {
            leading = 0;
            approach = approachLength;
        }
        List<Segment> turning = segments.subList(leading, segments.size()).stream()
                .filter(segment -> segment.length() > SHORTEST)
                .toList();
        int pieces = (approach > SHORTEST ? 1 : 0) + turning.size() + (exitLength > SHORTEST ? 1 : 0);
        if (pieces == 0) {
            throw new InvalidValueException(
                    "segments", "[]", "one segment or more, as approach and exit have no length");
        }
        double[] station = new double[pieces + 1];
        double[] start = new double[pieces];
        double[] end = new double[pieces];
        int piece = 0;
        if (approach > SHORTEST) {
            station[0] = -approach;
            piece = 1;
        }
        for (Segment segment : turning) {
            start[piece] = segment.startCurvature();
            end[piece] = segment.endCurvature();
            station[piece + 1] = station[piece] + segment.length();
            piece++;
        }
        if (exitLength > SHORTEST) {
            station[piece + 1] = station[piece] + exitLength;
        }
        return new ClothoidChain(station, start, end);
    }

    /**
     * The same line on a slope.
     *
     * @param angle slope along the line in rad, positive uphill
     * @throws InvalidValueException if it is not between −π/2 and π/2
     */
    public SegmentPath withGrade(double angle) {
        return new SegmentPath(segments, chain, halfWidth, slope("grade", angle), banking);
    }

    /**
     * The same line, banked.
     *
     * @param angle slope across the line in rad, positive where the left edge is the lower one
     * @throws InvalidValueException if it is not between −π/2 and π/2
     */
    public SegmentPath withBanking(double angle) {
        return new SegmentPath(segments, chain, halfWidth, grade, slope("banking", angle));
    }

    private static double slope(String field, double angle) {
        return Checks.between(field, angle, -Math.PI / 2, Math.PI / 2);
    }

    /** The segments as given, without the straights before and after. */
    public List<Segment> segments() {
        return segments;
    }

    /**
     * Stations, rising and inside the line, where the curvature itself jumps, m; empty for a line that can be driven.
     */
    public double[] curvatureJumps() {
        return chain.curvatureJumps();
    }

    @Override
    public double start() {
        return chain.start();
    }

    @Override
    public double end() {
        return chain.end();
    }

    @Override
    public double curvature(double s) {
        return chain.curvature(s);
    }

    @Override
    public double curvatureGradient(double s) {
        return chain.gradient(s);
    }

    @Override
    public double heading(double s) {
        return chain.heading(s);
    }

    @Override
    public Point position(double s) {
        return chain.position(s);
    }

    @Override
    public double grade(double s) {
        return everywhere(grade, s);
    }

    @Override
    public double banking(double s) {
        return everywhere(banking, s);
    }

    @Override
    public double widthLeft(double s) {
        return everywhere(halfWidth, s);
    }

    @Override
    public double widthRight(double s) {
        return everywhere(halfWidth, s);
    }

    /** A number that is the same at every station; what is no station has none. */
    private static double everywhere(double value, double s) {
        return Double.isNaN(s) ? s : value;
    }

    @Override
    public void at(double s, Place place) {
        chain.at(s, grade, banking, place);
    }

    @Override
    public double exitStraight() {
        return chain.lastStraight();
    }

    @Override
    public double[] kinks() {
        return chain.kinks();
    }

    /** Two lines of the same segments, straights, width and slopes are equal. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SegmentPath path && values().equals(path.values());
    }

    @Override
    public int hashCode() {
        return values().hashCode();
    }

    @Override
    public String toString() {
        return "SegmentPath[start=" + start() + ", end=" + end() + ", segments=" + segments + ", halfWidth=" + halfWidth
                + ", grade=" + grade + ", banking=" + banking + "]";
    }

    /** What makes the line: the straights before and after the segments show in its ends. */
    private List<Object> values() {
        return List.of(segments, start(), end(), halfWidth, grade, banking);
    }
}
