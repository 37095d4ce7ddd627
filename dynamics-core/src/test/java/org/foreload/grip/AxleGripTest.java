package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.load.SampleCars;
import org.foreload.tyre.Tyre;
import org.junit.jupiter.api.Test;

/** Two wheels that share an axle's load, by the friction ellipse of each. */
class AxleGripTest {

    private static final Tyre TYRE = SampleCars.tyre(1.2, 1.0, 0.1);

    /** The wheel that is left on the road carries the axle, and no more than the axle. */
    @Property
    void aLiftedWheelLeavesTheLoadToTheOther(@ForAll @DoubleRange(min = 2001, max = 9000) double transfer) {
        double alone = TYRE.peakForceY(4000);
        assertEquals(alone, AxleGrip.capacity(TYRE, 4000, transfer, 0), 1e-9);
        assertEquals(0.5, AxleGrip.utilisation(TYRE, 4000, -transfer, 0, 0.5 * alone), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, AxleGrip.utilisation(TYRE, 4000, transfer, 1, 0), "nothing to brake on");
    }

    /** Friction ellipse: with 60 % of the longitudinal peak in use, 80 % of the lateral one is left. */
    @Test
    void whatTheEllipseLeaves() {
        double braking = 2 * 0.6 * TYRE.peakForceX(2000);
        double left = 2 * 0.8 * TYRE.peakForceY(2000);
        assertEquals(left, AxleGrip.capacity(TYRE, 4000, 0, braking), 1e-9);
        assertEquals(1, AxleGrip.utilisation(TYRE, 4000, 0, braking, left), 1e-12);
        assertEquals(0, AxleGrip.capacity(TYRE, 4000, 0, braking / 0.6), 1e-9, "all is used");
        assertEquals(0, AxleGrip.utilisation(TYRE, 4000, 0, 0, 0), 0);
    }

    /** At the limit of unequal wheels, capacity and demand are equal: the sum of what both wheels have left. */
    @Property
    void atTheLimitTheCapacityIsTheDemand(
            @ForAll @DoubleRange(min = -1500, max = 1500) double transfer,
            @ForAll @DoubleRange(min = -1, max = 1) double share) {
        double braking = 2 * share * TYRE.peakForceX(2000 - Math.abs(transfer));
        double capacity = AxleGrip.capacity(TYRE, 4000, transfer, braking);
        assertEquals(1, AxleGrip.utilisation(TYRE, 4000, transfer, braking, capacity), 1e-9);
    }
}
