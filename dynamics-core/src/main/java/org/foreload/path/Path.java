package org.foreload.path;

/**
 * The line that the car is meant to follow, by station {@code s}: distance along the line in metres, zero where the
 * curvature first leaves zero (turn-in), negative on the approach. Plan view in metres and radians; curvature and
 * heading are positive to the left (ISO 8855 axes: x forward, y left, z up).
 *
 * <p>Stations outside {@code [start, end]} are read as the nearest end.
 */
public interface Path {

    /** First station, zero or negative, m. */
    double start();

    /** Last station, m. */
    double end();

    /** Curvature in 1/m, positive to the left; where it jumps, the value just after. */
    double curvature(double s);

    /**
     * Change of curvature along the line in 1/m²; at a kink, the value just after it; jumps of curvature do not show.
     */
    double curvatureGradient(double s);

    /** Heading in rad, positive to the left, zero at the start of the line. */
    double heading(double s);

    /** Position in the plane, m; the line starts at the origin, heading along x. */
    Point position(double s);

    /** Slope along the line as an angle in rad, positive uphill. */
    double grade(double s);

    /**
     * Slope across the line as an angle in rad, positive where the left edge is the lower one: it helps a left turn.
     */
    double banking(double s);

    /** Distance from the line to the left edge of the track, m. */
    double widthLeft(double s);

    /** Distance from the line to the right edge of the track, m. */
    double widthRight(double s);

    /**
     * Station from which the line runs straight to its end, m, on one slope and with one banking; its end where it does
     * not, or where that is not known.
     */
    default double exitStraight() {
        return end();
    }

    /** Stations, rising and inside the line, where curvature or its gradient jumps; integrators step on them. */
    double[] kinks();

    /**
     * Takes up curvature, heading, grade and banking at a station, all at once: a simulator asks for them at a handful
     * of stations in each evaluation of its equations. The numbers are those of the single methods.
     */
    default void at(double s, Place place) {
        place.take(curvature(s), heading(s), grade(s), banking(s));
    }

    /**
     * The same path with left and right exchanged: curvature, heading, banking and y change sign, widths change sides.
     */
    default Path mirrored() {
        return new MirroredPath(this);
    }

    /** A point of the plane, m. */
    record Point(double x, double y) {}

    /** What a path is like at one station. A buffer that its owner fills anew for each station. */
    final class Place {

        private double curvature;
        private double heading;
        private double grade;
        private double banking;

        /** Takes up curvature, 1/m, and heading, grade and banking, rad, with the signs of the methods of a path. */
        public void take(double curvatureHere, double headingHere, double gradeHere, double bankingHere) {
            curvature = curvatureHere;
            heading = headingHere;
            grade = gradeHere;
            banking = bankingHere;
        }

        /** Curvature, 1/m, positive to the left. */
        public double curvature() {
            return curvature;
        }

        /** Heading, rad, positive to the left. */
        public double heading() {
            return heading;
        }

        /** Slope along the line, rad, positive uphill. */
        public double grade() {
            return grade;
        }

        /** Slope across the line, rad, positive where the left edge is the lower one. */
        public double banking() {
            return banking;
        }
    }
}
