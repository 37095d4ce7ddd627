package org.foreload.path;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/** One piece of a line whose curvature runs linearly with distance: the elements that roads are drawn with. */
public sealed interface Segment permits Segment.Straight, Segment.Arc, Segment.Spiral {

    /** Length along the line, above zero, m. */
    double length();

    /** Curvature where the segment starts, 1/m, positive to the left. */
    double startCurvature();

    /** Curvature where the segment ends, 1/m, positive to the left. */
    double endCurvature();

    /** A straight of that length in m. */
    static Segment straight(double length) {
        return new Straight(length);
    }

    /** A circular arc by its length and radius in m. */
    static Segment arc(double length, double radius, Turn turn) {
        return new Arc(length, radius, turn);
    }

    /** A circular arc by the angle in rad through which it turns, and its radius in m. */
    static Segment arcThroughAngle(double angle, double radius, Turn turn) {
        return new Arc(Checks.positive("angle", angle) * Checks.positive(Arc.RADIUS, radius), radius, turn);
    }

    /** A spiral from a straight into an arc of that radius; length and radius in m. */
    static Segment spiralIn(double length, double endRadius, Turn turn) {
        return new Spiral(length, Double.POSITIVE_INFINITY, endRadius, turn);
    }

    /** A spiral from an arc of that radius out into a straight; length and radius in m. */
    static Segment spiralOut(double length, double startRadius, Turn turn) {
        return new Spiral(length, startRadius, Double.POSITIVE_INFINITY, turn);
    }

    /** A spiral between two arcs that turn the same way; length and radii in m. */
    static Segment spiralBetween(double length, double startRadius, double endRadius, Turn turn) {
        return new Spiral(length, startRadius, endRadius, turn);
    }

    /** Draws a circular arc step by step, each number by its name and unit. */
    static ArcRadius arc(Turn turn) {
        Objects.requireNonNull(turn, "turn");
        return radius -> {
            Checks.positive(Arc.RADIUS, radius);
            return new Extent() {
                @Override
                public Segment lengthM(double length) {
                    return new Arc(length, radius, turn);
                }

                @Override
                public Segment angleDeg(double angle) {
                    return new Arc(Math.toRadians(Checks.positive("angle_deg", angle)) * radius, radius, turn);
                }
            };
        };
    }

    /** Draws a spiral step by step, each number by its name and unit; it is straight at one end at most. */
    static SpiralStart spiral(Turn turn) {
        Objects.requireNonNull(turn, "turn");
        return start -> end -> {
            Spiral.radii(start, end);
            return new Extent() {
                @Override
                public Segment lengthM(double length) {
                    return new Spiral(length, start, end, turn);
                }

                @Override
                public Segment angleDeg(double angle) {
                    double curvature = 0.5 * (1 / start + 1 / end);
                    return new Spiral(
                            Math.toRadians(Checks.positive("angle_deg", angle)) / curvature, start, end, turn);
                }
            };
        };
    }

    /** Asks for the radius of an arc. */
    interface ArcRadius {

        /** Radius, m. */
        Extent radiusM(double radius);
    }

    /** Asks where a spiral begins. */
    interface SpiralStart {

        /** From an arc of this radius, m. */
        SpiralEnd fromRadiusM(double radius);

        /** From a straight. */
        default SpiralEnd fromStraight() {
            return fromRadiusM(Double.POSITIVE_INFINITY);
        }
    }

    /** Asks where a spiral ends. */
    interface SpiralEnd {

        /** Into an arc of this radius, m, that turns the same way. */
        Extent toRadiusM(double radius);

        /** Into a straight. */
        default Extent toStraight() {
            return toRadiusM(Double.POSITIVE_INFINITY);
        }
    }

    /** Asks how far the segment goes: the last step. */
    interface Extent {

        /** By its length along the line, m. */
        Segment lengthM(double length);

        /** By the angle through which it turns, °. */
        Segment angleDeg(double angle);
    }

    /**
     * A straight.
     *
     * @param length m
     */
    record Straight(double length) implements Segment {

        /** Checks the length; throws {@link InvalidValueException} with the field's name. */
        public Straight {
            Checks.positive("length_m", length);
        }

        @Override
        public double startCurvature() {
            return 0;
        }

        @Override
        public double endCurvature() {
            return 0;
        }
    }

    /**
     * A circular arc.
     *
     * @param length m
     * @param radius m
     * @param turn which way
     */
    record Arc(double length, double radius, Turn turn) implements Segment {

        private static final String RADIUS = "radius_m";

        /** Checks the numbers; throws {@link InvalidValueException} with the field's name. */
        public Arc {
            Checks.positive("length_m", length);
            Checks.positive(Arc.RADIUS, radius);
            Objects.requireNonNull(turn, "turn");
        }

        @Override
        public double startCurvature() {
            return turn.sign() / radius;
        }

        @Override
        public double endCurvature() {
            return turn.sign() / radius;
        }
    }

    /**
     * A clothoid: curvature runs linearly with distance between the two ends.
     *
     * @param length m
     * @param startRadius m; infinite for an end that is straight
     * @param endRadius m; infinite for an end that is straight; not both
     * @param turn which way
     */
    record Spiral(double length, double startRadius, double endRadius, Turn turn) implements Segment {

        /** Checks the numbers; throws {@link InvalidValueException} with the field's name. */
        public Spiral {
            Checks.positive("length_m", length);
            radii(startRadius, endRadius);
            Objects.requireNonNull(turn, "turn");
        }

        private static void radii(double start, double end) {
            radius("start_radius_m", start);
            radius("end_radius_m", end);
            if (Double.isInfinite(start) && Double.isInfinite(end)) {
                throw new InvalidValueException(
                        "end_radius_m", end, "a number above 0 at one end at least: else the spiral is a straight");
            }
        }

        private static void radius(String field, double value) {
            if (!(value > 0)) {
                throw new InvalidValueException(field, value, "a number above 0, or left out for a straight end");
            }
        }

        @Override
        public double startCurvature() {
            return turn.sign() / startRadius;
        }

        @Override
        public double endCurvature() {
            return turn.sign() / endRadius;
        }
    }
}
