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
        var tyre = new FrictionTyre(new SlipCurve.Brush(), 1, 1, 0, 2500, 0, 15, 18);
        Car car = new Car(
                "outside",
                new Chassis(1000, 2.5, 1.25, 0.5, 1500, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Suspension.Response.RIGID, Suspension.Response.RIGID),
                Aerodynamics.NONE,
                0.6,
                new Driveline(100_000, Driveline.DrivenAxle.REAR),
                tyre,
                tyre);
        System.out.println(LoadTransfer.wheelLoads(car, 20, 5, 0, 0, 0).frontAxle());
    }
}
