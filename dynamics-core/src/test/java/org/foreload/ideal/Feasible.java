package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/** Profiles held to what car and road allow, by the readable model of grip. */
final class Feasible {

    private Feasible() {}

    /** Each step within power and grip, and the grip used as the profile says. */
    static void check(Car car, Corner corner, IdealProfile profile) {
        GripLimits limits = GripLimits.of(car);
        Path path = corner.path();
        for (int i = 0; i + 1 < profile.size(); i++) {
            double s = (profile.station(i) + profile.station(i + 1)) / 2;
            double length = profile.station(i + 1) - profile.station(i);
            double from = profile.speed(i) * profile.speed(i);
            double to = profile.speed(i + 1) * profile.speed(i + 1);
            double deceleration = profile.deceleration(i);
            assertEquals((from - to) / (2 * length), deceleration, 1e-6);
            GripUse use = use(limits, path, s, (from + to) / 2, deceleration);
            assertTrue(use.powerUtilisation() <= 1 + 1e-6);
            if (use.utilisation() <= 1 + 1e-6) {
                assertEquals(use.front().utilisation(), profile.frontUtilisation(i), 1e-6);
                assertEquals(use.rear().utilisation(), profile.rearUtilisation(i), 1e-6);
            } else {
                // A wheel that has as good as lifted carries next to no force: where the car just coasts, rounding of
                // its acceleration decides how much of that is used.
                double less = use(limits, path, s, (from + to) / 2, deceleration - 1e-9)
                        .utilisation();
                double more = use(limits, path, s, (from + to) / 2, deceleration + 1e-9)
                        .utilisation();
                assertTrue(Math.min(less, more) <= 1 + 1e-6);
                assertTrue(profile.frontUtilisation(i) <= 1 + 1e-6);
                assertTrue(profile.rearUtilisation(i) <= 1 + 1e-6);
            }
        }
    }

    private static GripUse use(GripLimits limits, Path path, double s, double speedSquared, double deceleration) {
        return limits.use(Motion.onLine(
                Math.sqrt(speedSquared),
                deceleration,
                path.curvature(s),
                path.curvatureGradient(s),
                path.grade(s),
                path.banking(s)));
    }
}
