package org.foreload.strategy;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.TabulatedRelease;
import org.foreload.driver.DriverSettings;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension;

/**
 * What the time above the ideal bound is made of: the causes are switched off one after another, each time with a new
 * latest brake point, and each cause is charged with the time that its going saves. A negative part means that the
 * cause helped. The order matters a little; it is always the same: brake, lags, shape, exit; the driver is what is
 * left.
 *
 * @param boundTime time of the bound, s
 * @param entryTime time of the entry that is explained, s
 * @param parts the causes, in the order in which they were switched off; their times sum to the difference
 */
public record Remainder(double boundTime, double entryTime, List<Part> parts) {

    /** Copies the parts. */
    public Remainder {
        parts = List.copyOf(parts);
    }

    /**
     * One cause.
     *
     * @param cause in words
     * @param time s; NaN where the corner was not made without the cause, so that it could not be told apart
     */
    public record Part(String cause, double time) {}

    /** A time constant, s, too short to matter. */
    private static final double AT_ONCE = 0.005;

    /** Friction share of an exit driven to the limit. */
    private static final double WHOLE = 0.999;

    /** Points in the table of the ideal's own release. */
    private static final int TABLE = 24;

    /** Explains one entry of a study. */
    static Remainder of(CornerStudy study, BrakePlan plan, double entryTime) {
        Car car = study.simulator().car();
        Corner corner = study.simulator().corner();
        DriverSettings driver = study.simulator().driver();
        double bound = study.bound().time();
        List<Part> parts = new ArrayList<>();
        double last = entryTime;

        DriverSettings quickFoot = driver.withBrakeLag(AT_ONCE);
        BrakePlan sudden = new BrakePlan(plan.brakePoint(), plan.peakDeceleration(), AT_ONCE, plan.release());
        last = part(parts, "brake build-up and lag", last, study.with(car, quickFoot), sudden);

        Car rigid = withoutLags(car);
        last = part(parts, "tyre, pitch and roll lags", last, study.with(rigid, quickFoot), sudden);

        BrakePlan shaped = idealRelease(study.bound(), car, sudden);
        last = part(parts, "release shape", last, study.with(rigid, quickFoot), shaped);

        DriverSettings wholeExit = quickFoot.withExitFriction(WHOLE);
        last = part(parts, "margin kept on the exit", last, study.with(rigid, wholeExit), shaped);
        parts.add(new Part("driver, sideslip and cornering drag", last - bound));
        return new Remainder(bound, entryTime, parts);
    }

    private static double part(List<Part> parts, String cause, double before, CornerStudy study, BrakePlan plan) {
        var finding = study.latest(plan);
        if (!finding.found()) {
            parts.add(new Part(cause, Double.NaN));
            return before;
        }
        parts.add(new Part(cause, before - finding.entry().time()));
        return finding.entry().time();
    }

    private static Car withoutLags(Car car) {
        Suspension suspension = car.suspension();
        return car.with(new Suspension(
                        suspension.frontRollStiffnessShare(),
                        suspension.frontRollCenterHeight(),
                        suspension.rearRollCenterHeight(),
                        Suspension.Response.RIGID,
                        Suspension.Response.RIGID))
                .withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
    }

    private static Tyre withoutLag(Tyre tyre) {
        return tyre instanceof FrictionTyre friction ? friction.withRelaxationLength(0) : tyre;
    }

    /**
     * The release that the ideal entry itself uses, read off its brake force; the plan's own where it does not brake.
     */
    private static BrakePlan idealRelease(IdealProfile bound, Car car, BrakePlan plan) {
        if (bound.brakePoint().isEmpty() || bound.releaseEnd().isEmpty()) {
            return plan;
        }
        double end = bound.releaseEnd().getAsDouble();
        double mass = car.chassis().mass();
        double peak = 0;
        double start = Double.NaN;
        for (int i = 0; i < bound.size(); i++) {
            double s = bound.station(i);
            if (s < Math.min(0, end) && s >= bound.brakePoint().getAsDouble()) {
                peak = Math.max(peak, bound.brakeForce(i) / mass);
            }
        }
        if (!(peak > 0)) {
            return plan;
        }
        peak *= FULL;
        for (int i = 0; i < bound.size(); i++) {
            double s = bound.station(i);
            if (s >= bound.brakePoint().getAsDouble() && s <= end && bound.brakeForce(i) / mass >= peak) {
                start = s;
            }
        }
        if (Double.isNaN(start) || !(end > start)) {
            return plan;
        }
        double[] u = new double[TABLE + 1];
        double[] left = new double[TABLE + 1];
        for (int i = 0; i <= TABLE; i++) {
            u[i] = (double) i / TABLE;
            double force = brakeForceAt(bound, start + u[i] * (end - start)) / mass / peak;
            left[i] = i == 0 ? 1 : Math.max(0, Math.min(left[i - 1], force));
        }
        left[TABLE] = 0;
        Release release = new Release(new TabulatedRelease(u, left), start, end);
        return new BrakePlan(plan.brakePoint(), peak, plan.buildUpTime(), release);
    }

    private static double brakeForceAt(IdealProfile bound, double station) {
        int i = 0;
        while (i + 2 < bound.size() && bound.station(i + 1) <= station) {
            i++;
        }
        return bound.brakeForce(i);
    }

    /**
     * Share of the ideal's peak that counts as the peak: the ideal brakes with its wheels on the very edge of locking.
     */
    private static final double FULL = 0.97;
}
