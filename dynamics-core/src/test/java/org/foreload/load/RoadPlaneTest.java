package org.foreload.load;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Resolving along the axes of the road turns a vector and does not stretch it. */
class RoadPlaneTest {

    @Property
    void theResolvedForceIsAsLongAsTheForce(
            @ForAll @DoubleRange(min = -30, max = 30) double lateral,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double grade,
            @ForAll @DoubleRange(min = -0.6, max = 0.6) double banking) {
        double along = RoadPlane.slowing(grade);
        double across = RoadPlane.lateral(lateral, grade, banking);
        double down = RoadPlane.normal(lateral, grade, banking);
        assertEquals(
                lateral * lateral + 9.81 * 9.81,
                along * along + across * across + down * down,
                1e-9 * (100 + lateral * lateral));
    }

    /** A banked bend taken at v² = gR·tan φ needs no side force. */
    @Property
    void atTheSpeedOfItsBankingABendNeedsNoSideForce(@ForAll @DoubleRange(min = -0.6, max = 0.6) double banking) {
        assertEquals(0, RoadPlane.lateral(9.81 * Math.tan(banking), 0, banking), 1e-12);
    }

    @Test
    void wheelsAreCountedFrontToRearAndLeftToRight() {
        List<Wheel> wheels = Arrays.asList(Wheel.at(0), Wheel.at(1), Wheel.at(2), Wheel.at(3));
        assertEquals(List.of(Wheel.FRONT_LEFT, Wheel.FRONT_RIGHT, Wheel.REAR_LEFT, Wheel.REAR_RIGHT), wheels);
        assertEquals(
                List.of(true, true, false, false),
                wheels.stream().map(Wheel::front).toList());
    }
}
