package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.Locale;
import java.util.stream.DoubleStream;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.AxleUse;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GripLimits;
import org.foreload.grip.Motion;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;

/** Why does a gentle brake add front grip, and where does it not? */
public final class GentleBrake {

    /** Speed of the car, m/s. */
    static final double SPEED = 20;

    /** A moderate lateral acceleration, m/s². */
    static final double LATERAL = 4;

    /** Step in which the best deceleration is looked for, m/s². */
    static final double STEP = 0.001;

    private GentleBrake() {}

    /** What the front tyres could give sideways, N, if the brake moved load and asked nothing of them. */
    static double byLoadAlone(Car car, double deceleration) {
        WheelLoads loads = LoadTransfer.wheelLoads(car, SPEED, deceleration, LATERAL, 0, 0);
        return car.frontTyre().peakForceY(loads.frontLeft()) + car.frontTyre().peakForceY(loads.frontRight());
    }

    /** What is left of it, N, by what the front brakes take: the front lateral capacity. */
    static double left(Car car, double deceleration) {
        return GripLimits.of(car)
                .use(Motion.steady(SPEED, deceleration, LATERAL))
                .front()
                .lateralCapacity();
    }

    /** d*: the deceleration, m/s², at which the front lateral capacity is largest. */
    static double bestDeceleration(Car car) {
        double[] tried = evenly(0, 8, (int) Math.round(8 / STEP) + 1);
        return DoubleStream.of(tried).reduce(0, (best, d) -> left(car, d) > left(car, best) ? d : best);
    }

    /** Largest lateral acceleration, m/s², that the front axle alone would stand in a steady corner. */
    static double front(Car car, double deceleration) {
        var chassis = car.chassis();
        double share = chassis.mass() * chassis.cgToRearAxle() / chassis.wheelbase();
        return BrakingGrip.of(car, SPEED).frontCapacity(deceleration) / share;
    }

    /** The same of the rear axle. */
    static double rear(Car car, double deceleration) {
        var chassis = car.chassis();
        double share = chassis.mass() * chassis.cgToFrontAxle() / chassis.wheelbase();
        return BrakingGrip.of(car, SPEED).rearCapacity(deceleration) / share;
    }

    /**
     * The front axle where the line tightens from straight to a radius of 60 m over 30 m, at the moderate cornering.
     */
    static AxleUse turnIn(Car car, double deceleration) {
        double curvature = LATERAL / (SPEED * SPEED);
        double tightening = 1 / (60.0 * 30);
        return GripLimits.of(car)
                .use(Motion.onLine(SPEED, deceleration, curvature, tightening, 0, 0))
                .front();
    }

    private static void steadyCorner(String name, Car car) {
        say("%n%s, m/s² sideways at the limit:", name);
        for (double d : new double[] {0, BrakingGrip.of(car, SPEED).bestDeceleration()}) {
            double whole = Math.min(front(car, d), rear(car, d));
            say(
                    "  braking %.2f: front alone %.2f, rear alone %.2f, so the car %.2f",
                    d, front(car, d), rear(car, d), whole);
        }
    }

    /**
     * Tells the story.
     *
     * @param args where to put the picture, an SVG file; may be left out
     */
    public static void main(String[] args) {
        Car car = Demos.car("car", "road").value();
        say("%s, at %.0f m/s and %.0f m/s² sideways: what can its front tyres give?", car.name(), SPEED, LATERAL);
        say("%nbraking m/s²  with its load, N  the brake takes, N  left for cornering, N");
        for (double d = 0; d <= 6; d++) {
            say(
                    "%12.0f  %16.0f  %18.0f  %21.0f",
                    d, byLoadAlone(car, d), byLoadAlone(car, d) - left(car, d), left(car, d));
        }
        double best = bestDeceleration(car);
        say(
                "%nBraking puts load on the front tyres: a loaded tyre grips more. But braking also uses that grip up, at first");
        say(
                "hardly (the friction ellipse is flat at its top), later steeply. So the front gains, then loses. It has most at");
        say("d* = %.2f m/s²: %.1f %% more than without the brake.", best, 100 * (left(car, best) / left(car, 0) - 1));

        say("%nNow the steady corner: one radius, at the limit, where each axle needs all it has.");
        steadyCorner("This car", car);
        steadyCorner("The same car on its front tyres all round", car.withTyres(car.frontTyre(), car.frontTyre()));
        say(
                "%nThe rear axle loses load and has to brake: it pays from the start. Where the front is by far the weaker axle, the");
        say(
                "car gains; where they are close, as in the second one, it loses. At turn-in the front has the harder task: it must");
        say("also start the turning, and the brake helps there, too.");
        for (double slowing : new double[] {0, best}) {
            say(
                    "  braking %.2f: the front needs %.0f N for cornering and can give %.0f N",
                    slowing,
                    turnIn(car, slowing).lateralDemand(),
                    turnIn(car, slowing).lateralCapacity());
        }

        double[] d = evenly(0, 5, 101);
        XyChart chart = XyChart.of(Axis.of("deceleration", "m/s²"), Axis.of("front lateral capacity", "N"))
                .line("with its load", d, each(d, one -> byLoadAlone(car, one)), Style.SECOND)
                .line("left for cornering", d, each(d, one -> left(car, one)), Style.FIRST)
                .markX(best, String.format(Locale.ROOT, "d* = %.2f m/s²", best));
        String caption =
                "Load makes the dashed line rise; the brake takes away what lies between the lines. What is left is "
                        + "largest at d*.";
        Picture.of("Why a gentle brake adds front grip", caption, chart).save(Story.picture(args, "gentle-brake.svg"));
    }
}
