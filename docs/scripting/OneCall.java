import java.util.List;
import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** One question to the library, from a program that has dynamics-core and nothing else of Foreload. */
public class OneCall {
    public static void main(String[] args) {
        // Friction along and across, loss of it with load, reference load, relaxation length, stiffnesses.
        var front = new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.05, 0.08, 2800, 0.4, 15, 18);
        var rear = new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.1, 0.08, 2800, 0.4, 18, 18);
        Car car = new Car(
                "my car",
                new Chassis(1150, 2.5, 1.15, 0.48, 1600, 1.48, 1.48),
                new Suspension(0.58, 0.03, 0.08, Suspension.Response.RIGID, Suspension.Response.RIGID),
                new Aerodynamics(0.62, 0, 0, 1.2, 0),
                0.74,
                new Driveline(120_000, Driveline.DrivenAxle.REAR),
                front,
                rear);
        List<Segment> bend = List.of(
                Segment.spiralIn(25, 45, Turn.LEFT),
                Segment.arcThroughAngle(Math.toRadians(64), 45, Turn.LEFT),
                Segment.spiralOut(25, 45, Turn.LEFT));
        Corner corner = new Corner("my corner", 42, SegmentPath.of(220, bend, 150, 5));

        CornerStudy study = CornerStudy.of(car, corner);
        double peak = 0.8 * study.lockLimit();
        double apex = study.simulator().apex();
        Release trailed = new Release(ReleaseShapes.PROGRESSIVE, 0, 0.7 * apex);
        Release straight = new Release(ReleaseShapes.ABRUPT, 0, 0);
        // Each release from its own latest brake point; the one given here does not matter.
        var quick = study.latest(new BrakePlan(0, peak, 0.25, trailed));
        var plain = study.latest(new BrakePlan(0, peak, 0.25, straight));
        System.out.printf(
                Locale.ROOT,
                "brake %.1f m before turn-in, and gain %.2f s on braking in a straight line%n",
                -quick.entry().plan().brakePoint(),
                plain.entry().time() - quick.entry().time());
    }
}
