package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Headers as loggers are set up to write them: common practice, no source. */
class GuessedColumnsTest {

    private static Map<Quantity, Columns.Column> found(String... headers) {
        return Columns.find("run.csv", List.of(headers), Collections.nCopies(headers.length, ""), ColumnWish.NONE);
    }

    private static void guessed(Quantity quantity, String header, double factor) {
        Columns.Column column = found("No", header).get(quantity);
        assertEquals(header, column == null ? null : column.header(), quantity.word());
        assertEquals(factor, column.factor(), 1e-9 * Math.abs(factor), header);
    }

    @Test
    void brakes() {
        for (String header : List.of(
                "P front bar",
                "P front [bar]",
                "P_Front_bar",
                "Front P (psi)",
                "pBrakeF [bar]",
                "P brake front",
                "Brake P F [bar]",
                "Brk Press F (bar)",
                "Front Brake Pressure (kPa)",
                "Brake line pressure front bar",
                "BrakePressFront",
                "Brake Pos %",
                "Brake travel [mm]",
                "Brake switch",
                "Brake on/off",
                "Bremsdruck vorn [bar]",
                "Pression frein avant (bar)",
                "Rear brake pressure [bar]")) {
            guessed(Quantity.BRAKE, header, 1);
        }
    }

    @Test
    void speedsAndAxes() {
        guessed(Quantity.SPEED, "V GPS km/h", 1 / 3.6);
        guessed(Quantity.SPEED, "Speed GPS [km/h]", 1 / 3.6);
        guessed(Quantity.SPEED, "Road speed (mph)", 1609.344 / 3600);
        guessed(Quantity.SPEED, "Fahrgeschwindigkeit [km/h]", 1 / 3.6);
        guessed(Quantity.TIME, "Session time [s]", 1);
        guessed(Quantity.TIME, "Time since start (ms)", 1e-3);
        guessed(Quantity.TIME, "Lap time s", 1);
        guessed(Quantity.TIME, "Clock", 1);
        guessed(Quantity.TIME, "Time of day", 1);
        guessed(Quantity.DISTANCE, "Distance in lap [m]", 1);
        guessed(Quantity.DISTANCE, "GPS Distance km", 1000);
        guessed(Quantity.LAP, "Lap #", 1);
        guessed(Quantity.LAP, "LapCount", 1);
    }

    @Test
    void motion() {
        double g = 9.80665;
        guessed(Quantity.LATERAL, "Lat [g]", g);
        guessed(Quantity.LATERAL, "G-Force Lat", g);
        guessed(Quantity.LATERAL, "Lat g", g);
        guessed(Quantity.LONGITUDINAL, "Long G", g);
        guessed(Quantity.LATERAL, "Lateral acc", 1);
        guessed(Quantity.LATERAL, "LatAcc_g", g);
        guessed(Quantity.LATERAL, "Lateral G (g)", g);
        guessed(Quantity.LATERAL, "Gy [g]", g);
        guessed(Quantity.LATERAL, "Cornering g", g);
        guessed(Quantity.LONGITUDINAL, "Long [g]", g);
        guessed(Quantity.LONGITUDINAL, "Inline acc [m/s2]", 1);
        guessed(Quantity.LONGITUDINAL, "G Force X (g)", g);
        guessed(Quantity.YAW_RATE, "Gyro Yaw [deg/s]", Math.PI / 180);
        guessed(Quantity.YAW_RATE, "Yaw (°/s)", Math.PI / 180);
        guessed(Quantity.YAW_RATE, "yaw_rate_dps", Math.PI / 180);
        guessed(Quantity.STEERING, "SWA [deg]", Math.PI / 180);
        guessed(Quantity.STEERING, "Steering Wheel Angle °", Math.PI / 180);
        guessed(Quantity.THROTTLE, "Accel pedal pos [%]", 1);
        guessed(Quantity.THROTTLE, "Throttle valve %", 1);
        guessed(Quantity.LATITUDE, "Latitude GPS", 1);
        guessed(Quantity.LONGITUDE, "GPS Long", 1);
    }

    /** What sounds alike and is something else. */
    @Test
    void othersAreLeftAlone() {
        Map<Quantity, Columns.Column> found = found(
                "Brake temp FL [C]",
                "Brake bias [%]",
                "Tyre P front [bar]",
                "P oil bar",
                "P front",
                "Speed limit",
                "Engine speed [rpm]",
                "Wheel speed FL [rpm]",
                "Throttle map",
                "Yaw [deg]",
                "Lap delta",
                "Steer torque [Nm]",
                "Damper pos FL [mm]");
        assertEquals(Map.of(), found);
    }

    /** Of two circuits the front one, in whatever order; of a degree and a share of gravity each what it is. */
    @Test
    void theBetterOfTwoIsTaken() {
        assertEquals(
                "P front bar",
                found("P rear bar", "P front bar").get(Quantity.BRAKE).header());
        assertEquals(
                "Brake Pressure Front [bar]",
                found("Brake Pressure Rear [bar]", "Brake Pressure Front [bar]")
                        .get(Quantity.BRAKE)
                        .header());
        assertEquals(
                "P rear [bar]", found("t", "P rear [bar]").get(Quantity.BRAKE).header());
        Map<Quantity, Columns.Column> both = found("Lat [g]", "Lat [deg]", "Long [g]", "Long [deg]");
        assertEquals("Lat [g]", both.get(Quantity.LATERAL).header());
        assertEquals("Lat [deg]", both.get(Quantity.LATITUDE).header());
        assertEquals("Long [g]", both.get(Quantity.LONGITUDINAL).header());
        assertEquals("Long [deg]", both.get(Quantity.LONGITUDE).header());
        assertEquals(
                "Time [s]", found("Lap time [s]", "Time [s]").get(Quantity.TIME).header());
        assertFalse(found("Lat", "Long").containsKey(Quantity.LATERAL));
    }
}
