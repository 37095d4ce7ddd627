package org.foreload.stability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.bicycle.WheelLocks;
import org.foreload.handling.OperatingPoint;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is named as the cause, where the answer is known beforehand. */
class InstabilityCauseTest {

    private static final Car CAR = Scenes.light();
    private static final double SPEED = 25;

    private static OperatingPoint point(WheelLoads loads, double brake, double drive, double rearSlip) {
        return new OperatingPoint(CAR, SPEED, 0, 0, 0, brake, drive, loads, WheelLocks.NONE, -0.02, rearSlip);
    }

    /**
     * A car that neither brakes nor drives nor pitches corners alone, whatever the banking, and however far its rear
     * tyres slide: the loads without pitch are those that there are (balance of forces across the road).
     */
    @ParameterizedTest
    @CsvSource({"8, 0.05", "8, 0.15", "30, 0.05", "30, 0.15", "-8, 0.05", "-8, 0.15", "0, 0.1"})
    void bankingIsNoCause(double banking, double slip) {
        WheelLoads loads = LoadTransfer.wheelLoads(CAR, SPEED, 0, 9, 0, Math.toRadians(banking));
        OperatingPoint point = point(loads, 0, 0, -slip);
        WheelLoads level = InstabilityCause.level(point);
        assertEquals(loads.frontLeft(), level.frontLeft(), 1e-9 * loads.total());
        assertEquals(loads.frontRight(), level.frontRight(), 1e-9 * loads.total());
        assertEquals(loads.rearLeft(), level.rearLeft(), 1e-9 * loads.total());
        assertEquals(loads.rearRight(), level.rearRight(), 1e-9 * loads.total());
        String cause = InstabilityCause.of(point);
        assertTrue(cause.startsWith("cornering alone"), cause);
    }

    /** Only what pitch has moved goes back: m d h / L from the front axle to the rear one. */
    @ParameterizedTest
    @ValueSource(doubles = {-8, 0, 8})
    void levelTakesAwayThePitchAlone(double banking) {
        double deceleration = 5;
        WheelLoads loads = LoadTransfer.wheelLoads(CAR, SPEED, deceleration, 6, 0, Math.toRadians(banking));
        WheelLoads level = InstabilityCause.level(point(loads, 780 * deceleration, 0, -0.03));
        double moved = 780 * deceleration * 0.45 / 2.4;
        assertEquals(loads.total(), level.total(), 1e-9 * loads.total());
        assertEquals(loads.rearAxle() + moved, level.rearAxle(), 1e-9 * loads.total());
    }

    /** A pedal that nobody presses moves no load: a body that swings does. */
    @ParameterizedTest
    @ValueSource(doubles = {-1500, -800, 800, 1500})
    void noPedalIsBlamedThatIsNotPressed(double moved) {
        LoadTransfer transfer = LoadTransfer.of(CAR);
        double square = SPEED * SPEED;
        WheelLoads loads = LoadTransfer.assemble(
                transfer.frontAxle(9.81, square), transfer.rearAxle(9.81, square), moved, 800, 600);
        for (double slip : new double[] {-0.02, -0.06, -0.1, -0.2}) {
            String cause = InstabilityCause.of(point(loads, 0, 0, slip));
            assertFalse(cause.contains("braking") || cause.contains("driving"), cause);
        }
    }

    /** A hundredth below zero is zero in tenths, and zero has no sign. */
    @ParameterizedTest
    @CsvSource({"-0.01, 0.0", "0.04, 0.0", "-0.0, 0.0", "-0.06, -0.1", "3.25, 3.3", "-117.73, -117.7"})
    void tenthsHaveNoNegativeZero(double number, String words) {
        assertEquals(words, Tenths.of(number));
    }
}
