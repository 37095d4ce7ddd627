package org.foreload.braking;

import org.foreload.conventions.Checks;

/**
 * The pedal between foot and caliper: what it measures, and how finely. Decelerations are brake force over mass.
 *
 * <p>Law: {@code deceleration(footForce(d), 0)} is {@code d} but for the resolution, and both rise with their argument.
 */
public sealed interface Pedal permits Pedal.ForceSensing, Pedal.TravelSensing {

    /** Name for reports. */
    String name();

    /** Foot force, N, that asks for a deceleration, m/s². */
    double footForce(double deceleration);

    /**
     * Deceleration that the brake is asked for, m/s².
     *
     * @param footForce N
     * @param slip how far the foot is off the place where that force would hold it, m: what a spring shows of a leg
     *     that is not steady in place
     */
    double deceleration(double footForce, double slip);

    /** Time constant between pedal and caliper, s. */
    double buildUpLag();

    /**
     * A pedal that measures force: a load cell, or a hydraulic line with little travel.
     *
     * @param forcePerDeceleration N per m/s²
     * @param resolution smallest step of force that it resolves, N; zero for none
     * @param buildUpLag s
     */
    record ForceSensing(double forcePerDeceleration, double resolution, double buildUpLag) implements Pedal {

        /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public ForceSensing {
            Checks.positive("force_per_deceleration", forcePerDeceleration);
            Checks.notNegative("force_resolution_n", resolution);
            Checks.positive("build_up_lag_s", buildUpLag);
        }

        @Override
        public String name() {
            return "force-sensing";
        }

        @Override
        public double footForce(double deceleration) {
            return forcePerDeceleration * deceleration;
        }

        @Override
        public double deceleration(double footForce, double slip) {
            return Math.max(0, Staircase.rounded(footForce, resolution)) / forcePerDeceleration;
        }
    }

    /**
     * A pedal that measures travel, against a spring that stiffens: F = c·x + e·x³.
     *
     * @param stiffness c, N/m, at the start of the travel
     * @param hardening e, N/m³, zero or above
     * @param decelerationPerTravel m/s² per m
     * @param resolution smallest step of travel that it resolves, m; zero for none
     * @param buildUpLag s
     */
    record TravelSensing(
            double stiffness, double hardening, double decelerationPerTravel, double resolution, double buildUpLag)
            implements Pedal {

        /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public TravelSensing {
            Checks.positive("pedal_stiffness_n_per_m", stiffness);
            Checks.notNegative("pedal_hardening_n_per_m3", hardening);
            Checks.positive("deceleration_per_travel", decelerationPerTravel);
            Checks.notNegative("travel_resolution_m", resolution);
            Checks.positive("build_up_lag_s", buildUpLag);
        }

        @Override
        public String name() {
            return "travel-sensing";
        }

        @Override
        public double footForce(double deceleration) {
            double travel = deceleration / decelerationPerTravel;
            return stiffness * travel + hardening * travel * travel * travel;
        }

        /** Travel under a force, m: the one real root of the cubic, by its hyperbolic form. */
        private double travel(double force) {
            double root = Math.sqrt(stiffness / (3 * hardening));
            if (Double.isInfinite(root)) {
                return force / stiffness;
            }
            double argument = 1.5 * Math.abs(force) / (stiffness * root);
            return Math.copySign(2 * root * Math.sinh(areaSine(argument) / 3), force);
        }

        /** Inverse of the hyperbolic sine, zero or above, without loss of digits where it is small. */
        private static double areaSine(double x) {
            return Math.log1p(x + x * x / (1 + Math.sqrt(x * x + 1)));
        }

        @Override
        public double deceleration(double footForce, double slip) {
            return Math.max(0, Staircase.rounded(travel(footForce) + slip, resolution)) * decelerationPerTravel;
        }
    }
}
