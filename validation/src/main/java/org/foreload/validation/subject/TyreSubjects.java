package org.foreload.validation.subject;

import java.util.Map;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;

/** Force of one tyre. */
final class TyreSubjects {

    private TyreSubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "brush-share", TyreSubjects::brushShare,
                "sliding-angle", TyreSubjects::slidingAngle,
                "combined-share", TyreSubjects::combinedShare,
                "published-lateral-force", TyreSubjects::publishedLateralForce,
                "published-peak-slip", TyreSubjects::publishedPeakSlip,
                "transfer-loss", TyreSubjects::transferLoss,
                "load-exponent", TyreSubjects::loadExponent,
                "relaxation", TyreSubjects::relaxation,
                "ellipse-reach", TyreSubjects::ellipseReach);
    }

    private static FrictionTyre brush(double friction, double stiffness, double load) {
        return new FrictionTyre(
                new SlipCurve.Brush(), friction, friction, 0, load, 0, stiffness / load, stiffness / load);
    }

    /** Share of the peak lateral force at a share of the slip at which the whole patch slides. */
    private static double brushShare(Inputs in) {
        double load = in.number("load_n");
        Tyre tyre = brush(in.number("friction"), in.number("stiffness_n_per_rad"), load);
        double sliding = 3 * in.number("friction") * load / in.number("stiffness_n_per_rad");
        return tyre.force(0, in.number("share") * sliding, load).lateral() / (in.number("friction") * load);
    }

    /** Smallest slip angle, degrees, with the full force. */
    private static double slidingAngle(Inputs in) {
        double load = in.number("load_n");
        Tyre tyre = brush(in.number("friction"), in.number("stiffness_n_per_rad"), load);
        double full = in.number("friction") * load;
        double slip = Bench.lastTrue(tan -> tyre.force(0, tan, load).lateral() < full, 0, 1);
        return Math.toDegrees(Math.atan(slip));
    }

    /** Size of the force over the peak, at a share of the sliding slip in a direction 30 degrees off the wheel. */
    private static double combinedShare(Inputs in) {
        double load = in.number("load_n");
        Tyre tyre = brush(in.number("friction"), in.number("stiffness_n_per_rad"), load);
        double slip = in.number("share") * 3 * in.number("friction") * load / in.number("stiffness_n_per_rad");
        double angle = Math.PI / 6;
        var force = tyre.force(slip * Math.cos(angle), slip * Math.sin(angle), load);
        return Math.hypot(force.longitudinal(), force.lateral()) / (in.number("friction") * load);
    }

    /**
     * Lateral force, N, of the published coefficient set at a slip angle in degrees and a load in kN; its peak,
     * stiffness and curvature factor are put into the library's curve at that load.
     */
    private static double publishedLateralForce(Inputs in) {
        double kn = in.number("load_kn");
        double peak = -22.1 * kn * kn + 1011 * kn;
        double stiffnessPerDegree = 1078 * Math.sin(1.82 * Math.atan(0.208 * kn));
        double curvature = -0.354 * kn + 0.707;
        double load = 1000 * kn;
        Tyre tyre = new FrictionTyre(
                new SlipCurve.MagicFormula(1.30, curvature),
                peak / load,
                peak / load,
                0,
                load,
                0,
                Math.toDegrees(stiffnessPerDegree) / load,
                20);
        return tyre.force(0, Math.toRadians(in.number("slip_deg")), load).lateral();
    }

    /** Longitudinal slip, percent, of the largest brake force of the published coefficient set at a load in kN. */
    private static double publishedPeakSlip(Inputs in) {
        double kn = in.number("load_kn");
        double peak = -21.3 * kn * kn + 1144 * kn;
        double stiffnessPerPercent = (49.6 * kn * kn + 226 * kn) / Math.exp(0.069 * kn);
        double curvature = -0.006 * kn * kn + 0.056 * kn + 0.486;
        return new SlipCurve.MagicFormula(1.65, curvature).peakSlip() * peak / stiffnessPerPercent;
    }

    /** The published peak D = a₁F² + a₂F (kN) as a friction that falls with load. */
    private static Tyre falling(double a1, double a2, double referenceLoad) {
        double kn = referenceLoad / 1000;
        double friction = (a1 * kn + a2) / 1000;
        double sensitivity = -a1 * kn / (a1 * kn + a2);
        return new FrictionTyre(new SlipCurve.Brush(), friction, friction, sensitivity, referenceLoad, 0, 20, 20);
    }

    /** Peak lateral force, N, that an axle loses when load moves across it. */
    private static double transferLoss(Inputs in) {
        double load = in.number("wheel_load_n");
        double moved = in.number("transfer_n");
        Tyre tyre = falling(-22.1, 1011, load);
        return 2 * tyre.peakForceY(load) - tyre.peakForceY(load + moved) - tyre.peakForceY(load - moved);
    }

    /** Exponent n of peak force ~ load^n between two loads. */
    private static double loadExponent(Inputs in) {
        Tyre tyre = falling(-22.1, 1011, 4000);
        return Math.log(tyre.peakForceY(in.number("high_n")) / tyre.peakForceY(in.number("low_n")))
                / Math.log(in.number("high_n") / in.number("low_n"));
    }

    /** Share of its final value that the slip of a tyre has after rolling one relaxation length. */
    private static double relaxation(Inputs in) {
        var car = Bench.car(in);
        BicycleModel model = new BicycleModel(car);
        Controls controls = new Controls(-0.01, 0, 0, WheelLocks.NONE, 0, 0);
        WheelForces wheels = new WheelForces();
        double speed = in.number("speed_mps");
        int slip = BicycleState.FRONT_SLIP;
        Rk4 rk4 = new Rk4(BicycleState.SIZE, (time, x, rate) -> {
            model.rates(x, 0, controls, wheels, rate);
            for (int i = 0; i < rate.length; i++) {
                rate[i] = i == slip ? rate[i] : 0; // The car is held on its course, as on a test drum.
            }
        });
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = speed;
        double duration = in.number("relaxation_length_m") / speed;
        for (int i = 0; i < 100; i++) {
            rk4.step(0, duration / 100, state);
        }
        return state[slip] / Math.tan(0.01);
    }

    /** Farthest that the force reaches on the ellipse of both peaks, over all slips. */
    private static double ellipseReach(Inputs in) {
        Tyre tyre = new FrictionTyre(
                Bench.curve(in), in.number("friction_x"), in.number("friction_y"), 0.1, 4000, 0, 18, 22);
        double load = in.number("load_n");
        double farthest = 0;
        for (double x = -1; x <= 1; x += 0.01) {
            for (double y = -1; y <= 1; y += 0.01) {
                var force = tyre.force(x, y, load);
                farthest = Math.max(
                        farthest,
                        Math.hypot(
                                force.longitudinal() / tyre.peakForceX(load), force.lateral() / tyre.peakForceY(load)));
            }
        }
        return farthest;
    }
}
