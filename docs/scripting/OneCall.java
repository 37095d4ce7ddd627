import java.util.Locale;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** One question to the library, from a program that has foreload-core and nothing else of Foreload. */
public class OneCall {
    public static void main(String[] args) {
        Car car = Car.builder()
                .named("my car")
                .chassis(Chassis.builder()
                        .massKg(1150)
                        .wheelbaseM(2.5)
                        .cgToFrontAxleM(1.15)
                        .cgHeightM(0.48)
                        .yawInertiaKgM2(1600)
                        .frontTrackM(1.48)
                        .rearTrackM(1.48))
                .suspension(Suspension.builder()
                        .frontRollStiffnessShare(0.58)
                        .frontRollCenterHeightM(0.03)
                        .rearRollCenterHeightM(0.08)
                        .pitch(Suspension.Response.RIGID)
                        .roll(Suspension.Response.RIGID))
                .aerodynamics(Aerodynamics.builder()
                        .dragAreaM2(0.62)
                        .frontDownforceAreaM2(0)
                        .rearDownforceAreaM2(0)
                        .airDensityKgM3(1.2)
                        .dragHeightM(0))
                .frontBrakeShare(0.74)
                .driveline(new Driveline(120_000, Driveline.DrivenAxle.REAR))
                .frontTyre(tyre(1.05, 15))
                .rearTyre(tyre(1.1, 18));
        Corner corner = Corner.draw("my corner")
                .approachSpeedMps(42)
                .approachLengthM(220)
                .halfWidthM(5)
                .exitLengthM(150)
                .segments(
                        Segment.spiral(Turn.LEFT).fromStraight().toRadiusM(45).lengthM(25),
                        Segment.arc(Turn.LEFT).radiusM(45).angleDeg(64),
                        Segment.spiral(Turn.LEFT).fromRadiusM(45).toStraight().lengthM(25));

        CornerStudy study = CornerStudy.of(car, corner);
        double peak = 0.8 * study.lockLimit();
        double apex = study.simulator().apex();
        Release trailed = new Release(ReleaseShapes.PROGRESSIVE, 0, 0.7 * apex);
        Release straight = new Release(ReleaseShapes.ABRUPT, 0, 0);
        // Each release from its own latest brake point.
        var quick = study.latest(Braking.of(peak, 0.25, trailed));
        var plain = study.latest(Braking.of(peak, 0.25, straight));
        System.out.printf(
                Locale.ROOT,
                "brake %.1f m before turn-in: %.2f s quicker than straight-line braking%n",
                -quick.entry().plan().brakePoint(),
                plain.entry().time() - quick.entry().time());
    }

    private static FrictionTyre tyre(double frictionAcross, double corneringStiffness) {
        return FrictionTyre.builder()
                .curve(new SlipCurve.Brush())
                .peakFrictionX(1.1)
                .peakFrictionY(frictionAcross)
                .loadSensitivity(0.08)
                .referenceLoadN(2800)
                .relaxationLengthM(0.4)
                .corneringStiffnessPerRad(corneringStiffness)
                .slipStiffness(18);
    }
}
