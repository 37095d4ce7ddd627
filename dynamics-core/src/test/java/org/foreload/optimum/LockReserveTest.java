package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.path.Corner;
import org.foreload.path.TiltedPath;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** The hardest braking that keeps a reserve. */
class LockReserveTest {

    /**
     * On a banked road the wheels of one side carry less, by more than two hundredths at two degrees (m·g·sin φ·h/t of
     * half the weight, for a CG a third of a track high), and the first of them to stop bounds the braking.
     */
    @Test
    void theHardestBrakingIsLessWhereTheRoadIsBanked() {
        CornerStudy level = SampleStudies.roadCar();
        Corner corner = level.simulator().corner();
        Corner banked = new Corner("banked", corner.approachSpeed(), new TiltedPath(corner.path(), 0, -BANKING));
        CornerStudy tilted = CornerStudy.of(level.simulator().car(), banked);
        double most = new LockReserve(level).hardest(0.25);
        double less = new LockReserve(tilted).hardest(0.25);
        assertTrue(less < 0.98 * most, less + " against " + most);
    }

    private static final double BANKING = Math.toRadians(2);
}
