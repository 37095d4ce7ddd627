import org.foreload.load.LoadTransfer;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** Prints the front axle load of a car of 1000 kg, half of it on each axle, that brakes with 5 m/s². */
class Outside {
    public static void main(String[] args) {
        var tyre = FrictionTyre.builder()
                .curve(new SlipCurve.Brush())
                .peakFrictionX(1)
                .peakFrictionY(1)
                .loadSensitivity(0)
                .referenceLoadN(2500)
                .relaxationLengthM(0)
                .corneringStiffnessPerRad(15)
                .slipStiffness(18);
        Car car = Car.builder()
                .named("outside")
                .chassis(Chassis.builder()
                        .massKg(1000)
                        .wheelbaseM(2.5)
                        .cgToFrontAxleM(1.25)
                        .cgHeightM(0.5)
                        .yawInertiaKgM2(1500)
                        .frontTrackM(1.5)
                        .rearTrackM(1.5))
                .suspension(Suspension.builder()
                        .frontRollStiffnessShare(0.5)
                        .frontRollCenterHeightM(0)
                        .rearRollCenterHeightM(0)
                        .pitch(Suspension.Response.RIGID)
                        .roll(Suspension.Response.RIGID))
                .aerodynamics(Aerodynamics.NONE)
                .frontBrakeShare(0.6)
                .driveline(new Driveline(100_000, Driveline.DrivenAxle.REAR))
                .frontTyre(tyre)
                .rearTyre(tyre);
        System.out.println(LoadTransfer.wheelLoads(car, 20, 5, 0, 0, 0).frontAxle());
    }
}
