package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Cars so tall, short or grippy that their rear wheels leave the road under braking: with the CG h high and a behind
 * the front axle, from g·a/h on (source: the moments about the front wheels). How that ends is a value.
 */
class LiftedRearTest {

    private static Tyre tyre(double friction) {
        return new FrictionTyre(new SlipCurve.Brush(), friction, friction, 0.08, 2800, 0.4, 18, 18);
    }

    private static Car car(Chassis chassis, double frontBrakeShare, double friction, boolean antiLock) {
        return new Car(
                        "tall",
                        chassis,
                        new Suspension(0.58, 0.03, 0.08, Response.RIGID, Response.RIGID),
                        new Aerodynamics(0.62, 0, 0, 1.2, 0),
                        frontBrakeShare,
                        new Driveline(120e3, DrivenAxle.REAR),
                        tyre(friction),
                        tyre(friction))
                .withAntiLock(antiLock);
    }

    /** Name, car, peak deceleration, m/s². */
    static Stream<Object[]> cars() {
        Car grippy = car(new Chassis(1150, 2.0, 0.9, 0.8, 1200, 1.48, 1.48), 1, 1.6, false);
        Car tall = car(new Chassis(1150, 2.3, 1.0, 1.0, 1400, 1.48, 1.48), 0.85, 1.1, true);
        return Stream.of(
                new Object[] {"grippy", grippy, 11.5},
                new Object[] {"tall, anti-lock", tall, 11.0},
                new Object[] {"tall on soft springs, anti-lock", tall.with(soft(tall)), 11.0});
    }

    private static Suspension soft(Car car) {
        return car.suspension().withPitch(new Response(1.5, 0.3));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cars")
    void howItEndsIsAValue(String name, Car car, double peak) {
        assertTrue(peak > 9.81 * car.chassis().cgToFrontAxle() / car.chassis().cgHeight());
        EntrySimulator simulator = SampleRun.simulator(car);
        // On the brake into the turn, where the line asks for yaw while the rear is in the air.
        BrakePlan plan = Braking.of(peak, 0.25, new Release(ReleaseShapes.LINEAR, 15, 45))
                .from(-50);
        EntryResult entry = simulator.run(plan);
        var profile = entry.profile().orElseThrow();
        double[] rear = profile.column("rear_axle_load_n").values();
        double[] station = profile.column("s_m").values();
        boolean inTheTurn = false;
        for (int i = 0; i < rear.length; i++) {
            inTheTurn |= rear[i] == 0 && station[i] > 0;
        }
        assertTrue(Arrays.stream(rear).anyMatch(load -> load == 0), "the rear stays down");
        assertTrue(inTheTurn, "the rear is down in the turn");
        for (double steer : profile.column("steer_deg").values()) {
            assertTrue(Math.abs(steer) < 90, "steers " + steer);
        }
        assertEquals(entry.outcome(), simulator.probe(plan).outcome());
    }
}
