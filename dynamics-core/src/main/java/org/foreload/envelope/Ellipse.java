package org.foreload.envelope;

/**
 * Limits across and along, each a number that grows with the square of speed.
 *
 * @param reference speed at which the two limits are given, m/s
 * @param lateral limit across at that speed, m/s²
 * @param lateralGrowth its share that is owed to that speed: at rest it is less by this share
 * @param braking limit along at that speed, m/s²
 * @param brakingGrowth its share that is owed to that speed
 */
record Ellipse(double reference, double lateral, double lateralGrowth, double braking, double brakingGrowth) {

    /** Limit across at a speed, m/s². */
    double lateral(double speed) {
        return lateral * (1 + lateralGrowth * over(speed));
    }

    /** Limit along at a speed, m/s². */
    double braking(double speed) {
        return braking * (1 + brakingGrowth * over(speed));
    }

    private double over(double speed) {
        return (speed / reference) * (speed / reference) - 1;
    }

    /** How much of the limit two accelerations use at a speed, squared: one on the rim. */
    double usedSquare(double speed, double along, double across) {
        double over = over(speed);
        double x = along / (braking * (1 + brakingGrowth * over));
        double y = across / (lateral * (1 + lateralGrowth * over));
        return x * x + y * y;
    }

    /** Whether neither direction takes less than half of what the other does, as shares of their limits. */
    boolean mixed(double speed, double along, double across) {
        double x = along / braking(speed);
        double y = across / lateral(speed);
        return x > y / 2 && y > x / 2;
    }
}
