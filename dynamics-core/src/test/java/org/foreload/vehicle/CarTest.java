package org.foreload.vehicle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.InvalidValueException;
import org.foreload.load.SampleCars;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** A car holds what it is given, refuses what no car can be, and changes by copy. */
class CarTest {

    private static final Car CAR = SampleCars.ROAD_CAR;

    /** Force = ½ρv² × area: at 1.2 kg/m³ and 40 m/s, 960 Pa. */
    @Test
    void forcesOfTheAirAreHalfDensityTimesSpeedSquaredTimesArea() {
        Aerodynamics air = new Aerodynamics(0.7, 0.25, 0.5, 1.2, 0.4);
        assertEquals(672, air.drag(1600), 1e-9);
        assertEquals(240, air.frontDownforce(1600), 1e-9);
        assertEquals(480, air.rearDownforce(1600), 1e-9);
    }

    @Test
    void theCentreOfGravityDividesTheWheelbase() {
        assertEquals(1.5, new Chassis(1500, 2.7, 1.2, 0.5, 2000, 1.5, 1.5).cgToRearAxle(), 1e-12);
    }

    @Test
    void theFrontWheelsTakeAllHalfOrNothingOfTheDrive() {
        assertEquals(1, DrivenAxle.FRONT.frontShare());
        assertEquals(0.5, DrivenAxle.ALL.frontShare());
        assertEquals(0, DrivenAxle.REAR.frontShare());
    }

    @Test
    void aBodyOfInfiniteFrequencyIsRigid() {
        assertTrue(Response.RIGID.rigid());
        assertFalse(new Response(1.5, 0.4).rigid());
    }

    /** Coulomb: the peak force over the load is the friction, which is the road's and the tyre's together. */
    @Test
    void aRoadOfHalfTheFrictionHalvesThePeaksAndLeavesTheStiffnesses() {
        Car wet = CAR.withRoadFriction(0.5).withName("wet");
        assertEquals("wet", wet.name());
        assertEquals(CAR.chassis(), wet.chassis());
        for (double load : new double[] {500, 3000, 6000}) {
            assertEquals(
                    0.5 * CAR.frontTyre().peakFrictionX(load), wet.frontTyre().peakFrictionX(load), 1e-12);
            assertEquals(
                    0.5 * CAR.rearTyre().peakFrictionY(load), wet.rearTyre().peakFrictionY(load), 1e-12);
            assertEquals(CAR.rearTyre().corneringStiffness(load), wet.rearTyre().corneringStiffness(load), 1e-9);
        }
        assertThrows(InvalidValueException.class, () -> CAR.withRoadFriction(0));
    }

    @Test
    void aCopyDiffersInWhatItIsGivenAlone() {
        Chassis chassis = new Chassis(1000, 2.4, 1.1, 0.4, 1500, 1.4, 1.4);
        Suspension suspension = new Suspension(0.5, 0, 0, new Response(1.5, 0.4), Response.RIGID);
        Driveline driveline = new Driveline(50_000, DrivenAxle.FRONT);
        Tyre front = SampleCars.tyre(1, 1, 0);
        Tyre rear = SampleCars.tyre(0.9, 0.9, 0);
        Car changed = CAR.with(chassis)
                .with(suspension)
                .with(Aerodynamics.NONE)
                .withFrontBrakeShare(0.7)
                .with(driveline)
                .withTyres(front, rear);
        assertEquals(new Car(CAR.name(), chassis, suspension, Aerodynamics.NONE, 0.7, driveline, front, rear), changed);
        assertSame(CAR.chassis(), CAR.withFrontBrakeShare(0.7).chassis());
        assertSame(CAR.frontTyre(), CAR.with(chassis).frontTyre());
    }

    private static void refused(String field, Executable car) {
        assertEquals(field, assertThrows(InvalidValueException.class, car).field());
    }

    @Test
    void whatNoCarCanBeIsRefusedByItsName() {
        refused("frequency_hz", () -> new Response(0, 1));
        refused("frequency_hz", () -> new Response(Double.NaN, 1));
        refused("damping_ratio", () -> new Response(1, 0));
        refused("front_brake_share", () -> CAR.withFrontBrakeShare(1.01));
        refused("mass_kg", () -> new Chassis(0, 2.4, 1.1, 0.4, 1500, 1.4, 1.4));
        refused("wheelbase_m", () -> new Chassis(1000, Double.NaN, 1.1, 0.4, 1500, 1.4, 1.4));
        refused("cg_to_front_axle_m", () -> new Chassis(1000, 2.4, 2.4, 0.4, 1500, 1.4, 1.4));
        refused("cg_height_m", () -> new Chassis(1000, 2.4, 1.1, -0.1, 1500, 1.4, 1.4));
        refused("yaw_inertia_kg_m2", () -> new Chassis(1000, 2.4, 1.1, 0.4, -1, 1.4, 1.4));
        refused("front_track_m", () -> new Chassis(1000, 2.4, 1.1, 0.4, 1500, 0, 1.4));
        refused("rear_track_m", () -> new Chassis(1000, 2.4, 1.1, 0.4, 1500, 1.4, 0));
        refused("power_w", () -> new Driveline(-1, DrivenAxle.REAR));
        refused("drag_area_m2", () -> new Aerodynamics(-1, 0, 0, 1.2, 0));
        refused("air_density_kg_m3", () -> new Aerodynamics(1, 0, 0, -1.2, 0));
        refused("drag_height_m", () -> new Aerodynamics(1, 0, 0, 1.2, Double.POSITIVE_INFINITY));
        refused("front_downforce_area_m2", () -> new Aerodynamics(1, Double.NaN, 0, 1.2, 0));
        refused("rear_downforce_area_m2", () -> new Aerodynamics(1, 0, Double.NaN, 1.2, 0));
        refused("front_roll_stiffness_share", () -> new Suspension(1.2, 0, 0, Response.RIGID, Response.RIGID));
    }
}
