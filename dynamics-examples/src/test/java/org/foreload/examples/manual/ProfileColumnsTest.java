package org.foreload.examples.manual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.junit.jupiter.api.Test;

/** The manual's table of an entry's columns against the columns there are. */
class ProfileColumnsTest {

    private static final Pattern ROW = Pattern.compile("\\| `(\\w+)` \\| (\\S*) *\\| .*");

    /** Standard gravity to three places, as the library has it, m/s². */
    private static final double G = 9.81;

    private static final double MASS = 1150;

    /** A left turn, braked into. */
    private static Trace profile() {
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.05, 0.08, 2800, 0.4, 15, 18);
        Car car = new Car(
                "own",
                new Chassis(MASS, 2.5, 1.15, 0.48, 1600, 1.48, 1.48),
                new Suspension(0.58, 0.03, 0.08, Suspension.Response.RIGID, Suspension.Response.RIGID),
                new Aerodynamics(0.62, 0, 0, 1.2, 0),
                0.74,
                new Driveline(120e3, Driveline.DrivenAxle.REAR),
                tyre,
                tyre);
        List<Segment> bend = List.of(
                Segment.spiralIn(25, 45, Turn.LEFT),
                Segment.arc(25, 45, Turn.LEFT),
                Segment.spiralOut(25, 45, Turn.LEFT));
        CornerStudy study = CornerStudy.of(car, new Corner("own", 42, SegmentPath.of(220, bend, 150, 5)));
        Braking braking = Braking.of(0.7 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -5, 20));
        return study.latest(braking).entry().profile().orElseThrow();
    }

    @Test
    void theTableNamesEveryColumnAndItsUnit() throws IOException {
        List<String> told = new ArrayList<>();
        for (String line : Files.readAllLines(Page.ROOT.resolve("docs/theory/entry.md"))) {
            Matcher row = ROW.matcher(line);
            if (row.matches()) {
                told.add(row.group(1) + " in " + row.group(2));
            }
        }
        assertEquals(
                profile().columns().stream()
                        .map(column -> column.name() + " in " + column.unit())
                        .toList(),
                told);
    }

    /** Axes and slip angle of ISO 8855 (x forward, y left, z up): in a left turn the wheels slip to the right. */
    @Test
    void theSignsAreThoseOfTheTable() {
        Trace profile = profile();
        int turning = row(profile, 35);
        assertTrue(profile.column("steer_deg").at(turning) > 0);
        assertTrue(profile.column("yaw_rate_rad_per_s").at(turning) > 0);
        assertTrue(profile.column("lateral_acceleration_mps2").at(turning) > 0);
        assertTrue(profile.column("front_slip").at(turning) < 0);
        assertTrue(profile.column("rear_slip").at(turning) < 0);
        assertTrue(profile.column("front_right_load_n").at(turning)
                > profile.column("front_left_load_n").at(turning));
        int braking = row(profile, -20);
        assertTrue(profile.column("deceleration_mps2").at(braking) > 0);
        assertTrue(profile.column("brake_mps2").at(braking) > 0);
        assertEquals(
                MASS * G,
                profile.column("front_axle_load_n").at(braking)
                        + profile.column("rear_axle_load_n").at(braking),
                1,
                "no wings, flat road: the axles carry the weight");
    }

    private static int row(Trace profile, double station) {
        int row = 0;
        while (profile.column("s_m").at(row) < station) {
            row++;
        }
        return row;
    }
}
