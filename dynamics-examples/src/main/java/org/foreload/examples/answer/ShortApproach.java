package org.foreload.examples.answer;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.output.Numbers;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/** Says so where a corner is missed because its approach is too short to brake on, and how long it would have to be. */
public final class ShortApproach {

    /** Metres to which a sufficient approach is found. */
    private static final double FINENESS = 10;

    /** Most metres that an approach is prolonged by. */
    private static final double MOST = 1280;

    /** Share of the approach that the ideal bound brakes on, below which it is not looked at: there is room enough. */
    private static final double MUCH = 0.5;

    /** Firm braking, as a share of what locks a wheel, off after this share of the way to the apex; build-up in s. */
    private static final double PEAK_SHARE = 0.75;

    private static final double END_SHARE = 0.7;

    private static final double BUILD_UP = 0.25;

    private static final String SPEED = "approach_speed_mps";

    private ShortApproach() {}

    /**
     * Where no release that was tried makes the corner with its margin, but firm braking would from farther back.
     *
     * @return a sentence; empty where a longer approach is not needed, or does not help
     */
    static Optional<String> of(CornerStudy study) {
        return of(study, firm(study));
    }

    /** The same for one release that has no brake point. */
    static Optional<String> of(CornerStudy study, Braking braking) {
        Corner corner = study.simulator().corner();
        double length = -corner.path().start();
        OptionalDouble ideal = study.bound().brakePoint();
        if (ideal.isEmpty() || -ideal.getAsDouble() < MUCH * length) {
            return Optional.empty();
        }
        OptionalDouble enough = least(by -> makes(study, braking, longer(corner, by)));
        return enough.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "The approach, " + Numbers.rounded(length, 0) + " m (approach_length_m), is too short to brake "
                                + "on: from " + Numbers.shortest(corner.approachSpeed()) + " m/s it takes "
                                + metres(length + enough.getAsDouble()) + " m.");
    }

    private static boolean makes(CornerStudy study, Braking braking, Corner corner) {
        CornerStudy longer = CornerStudy.of(
                study.simulator().car(),
                corner,
                study.simulator().driver(),
                study.simulator().settings(),
                study.allowance());
        return longer.latest(braking).found();
    }

    /** Firm braking, carried into the bend. */
    static Braking firm(CornerStudy study) {
        return Braking.of(
                PEAK_SHARE * study.lockLimit(),
                BUILD_UP,
                new Release(ReleaseShapes.LINEAR, 0, END_SHARE * study.apexes().get(0)));
    }

    /**
     * A refusal of the speed at which a car comes, with the approach that would do in its place.
     *
     * @param refused any refusal; one that is not about that speed stays as it is
     */
    public static InvalidValueException explained(InvalidValueException refused, Car car, Corner corner) {
        if (!refused.field().equals(SPEED)) {
            return refused;
        }
        OptionalDouble enough = least(by -> slows(car, longer(corner, by)));
        if (enough.isEmpty()) {
            return refused;
        }
        double length = -corner.path().start();
        return new InvalidValueException(
                SPEED,
                corner.approachSpeed(),
                refused.allowed() + "; or the approach (approach_length_m), " + Numbers.rounded(length, 0)
                        + " m, at least " + metres(length + enough.getAsDouble()) + " m long");
    }

    private static boolean slows(Car car, Corner corner) {
        try {
            CornerStudy.of(car, corner);
            return true;
        } catch (InvalidValueException tooFast) {
            return false;
        }
    }

    private static Corner longer(Corner corner, double by) {
        return new Corner(corner.name(), corner.approachSpeed(), new LongerApproach(corner.path(), by));
    }

    /** Least number of tens of metres that will do, doubled and then halved; empty if not even the most does. */
    private static OptionalDouble least(DoublePredicate enough) {
        if (!enough.test(MOST)) {
            return OptionalDouble.empty();
        }
        double high = FINENESS;
        while (high < MOST && !enough.test(high)) {
            high *= 2;
        }
        double low = high == FINENESS ? 0 : high / 2;
        while (high - low > FINENESS) {
            double middle = FINENESS * Math.rint((low + high) / 2 / FINENESS);
            if (enough.test(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return OptionalDouble.of(high);
    }

    /** Whole metres, never fewer. */
    private static String metres(double length) {
        return Numbers.rounded(Math.ceil(length), 0);
    }
}
