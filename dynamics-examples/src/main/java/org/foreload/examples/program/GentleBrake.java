package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.foreload.examples.command.Foreload;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.learn.GripPage;
import org.foreload.examples.output.WholeFile;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.AxleUse;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
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

    /** A little more brake, m/s², to see what it brings and what it takes. */
    static final double LITTLE = 0.1;

    /** Hardest braking in the picture, m/s². */
    private static final double MOST = 9;

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

    /** What load brings to the front tyres' cornering, N, from one deceleration to another. */
    static double brings(Car car, double from, double to) {
        return byLoadAlone(car, to) - byLoadAlone(car, from);
    }

    /** What the brake takes from it, N. */
    static double takes(Car car, double from, double to) {
        return brings(car, from, to) - (left(car, to) - left(car, from));
    }

    /** Which part of all that the front tyres could give lengthways the brake asks of them. */
    static double asked(Car car, double deceleration) {
        WheelLoads loads = LoadTransfer.wheelLoads(car, SPEED, deceleration, LATERAL, 0, 0);
        double could =
                car.frontTyre().peakForceX(loads.frontLeft()) + car.frontTyre().peakForceX(loads.frontRight());
        AxleUse front = GripLimits.of(car)
                .use(Motion.steady(SPEED, deceleration, LATERAL))
                .front();
        return front.longitudinalForce() / could;
    }

    /** d*: the deceleration, m/s², at which the front lateral capacity is largest. */
    static double bestDeceleration(Car car) {
        double[] tried = evenly(0, 8, (int) Math.round(8 / STEP) + 1);
        return DoubleStream.of(tried).reduce(0, (best, d) -> left(car, d) > left(car, best) ? d : best);
    }

    /** Deceleration, m/s², from which on the inside front wheel cannot carry its half of the front brake: it locks. */
    static OptionalDouble insideLocks(Car car) {
        return DoubleStream.of(evenly(0, MOST, 901))
                .filter(d -> {
                    GripUse use = GripLimits.of(car).use(Motion.steady(SPEED, d, LATERAL));
                    double inside = use.loads().frontLeft();
                    return use.front().longitudinalForce() / 2
                            >= car.frontTyre().peakForceX(inside);
                })
                .findFirst();
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
     * The front axle at the moderate cornering, where the curvature of the line grows by {@code tightening} 1/m for
     * each metre.
     */
    static AxleUse front(Car car, double deceleration, double tightening) {
        double curvature = LATERAL / (SPEED * SPEED);
        return GripLimits.of(car)
                .use(Motion.onLine(SPEED, deceleration, curvature, tightening, 0, 0))
                .front();
    }

    private static void keeps(Car car, double d) {
        say(
                "  at %.0f m/s² the brake asks %2.0f %% of the front tyres' grip, and they keep %.1f %% of it for cornering;",
                d, 100 * asked(car, d), 100 * left(car, d) / byLoadAlone(car, d));
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
     * Runs the program.
     *
     * @param args where to put the page with sliders (a file that ends with {@code .html}) and the picture
     *     ({@code .svg} or {@code .png}); none are written where none are named
     */
    public static void main(String[] args) {
        Car car = Demos.car("car", "road").value();
        say("%s, at %.0f m/s and %.0f m/s² sideways: what can its front tyres give?", car.name(), SPEED, LATERAL);
        say("%nbraking m/s²  load has brought, N  the brake has taken, N  left for cornering, N");
        for (double d = 0; d <= 6; d++) {
            say("%12.0f  %19.0f  %22.0f  %21.0f", d, brings(car, 0, d), takes(car, 0, d), left(car, d));
        }
        say("%nBraking presses the front tyres down, and a loaded tyre grips more. Each m/s² brings about the same:");
        say(
                "%.0f N the first, %.0f N the fourth. But braking also uses grip up:",
                brings(car, 0, 1), brings(car, 3, 4));
        keeps(car, 1);
        keeps(car, 4);
        say(
                "so the first m/s² takes only %.0f N, and the fourth takes %.0f N. Grip is an ellipse, flat at its top.",
                takes(car, 0, 1), takes(car, 3, 4));

        double best = bestDeceleration(car);
        say("%nd* is where the two are equal. At %.2f m/s², %.1f m/s² more brake", best, LITTLE);
        say("  brings %.0f N and takes %.0f N;", brings(car, best, best + LITTLE), takes(car, best, best + LITTLE));
        say(
                "1 m/s² below it brings %.0f N and takes %.0f N, 1 m/s² above it brings %.0f N and takes %.0f N.",
                brings(car, best - 1, best - 1 + LITTLE),
                takes(car, best - 1, best - 1 + LITTLE),
                brings(car, best + 1, best + 1 + LITTLE),
                takes(car, best + 1, best + 1 + LITTLE));
        say(
                "So at d* the front tyres have most for cornering: %.1f %% more than without the brake.",
                100 * (left(car, best) / left(car, 0) - 1));

        say("%nNow the steady corner: one radius, at the limit, where each axle needs all it has.");
        steadyCorner("This car", car);
        steadyCorner("The same car on its front tyres all round", car.withTyres(car.frontTyre(), car.frontTyre()));
        say(
                "%nAt the limit d* is %.2f m/s²: cornering has taken load off the inner front wheel, which brakes as hard as the",
                BrakingGrip.of(car, SPEED).bestDeceleration());
        say(
                "outer one. The rear axle loses load and has to brake: it pays from the start. Where the front is by far the");
        say("weaker axle, the car gains; where they are close, as in the second one, it loses.");

        say(
                "%nAt turn-in the front has the harder task, since it must also start the turning, and the brake helps there:");
        double tightening = 1 / (60.0 * 30); // From straight to a radius of 60 m over 30 m.
        for (double slowing : new double[] {0, best}) {
            AxleUse use = front(car, slowing, tightening);
            say(
                    "  braking %.2f: it needs %.0f N (%.0f N on a constant radius) and can give %.0f N: %.1f %% of it",
                    slowing,
                    use.lateralDemand(),
                    front(car, slowing, 0).lateralDemand(),
                    use.lateralCapacity(),
                    100 * use.lateralDemand() / use.lateralCapacity());
        }
        for (String file : args) {
            if (file.endsWith(".html")) {
                WholeFile.at(null, Path.of(file), ".html")
                        .write(GripPage.of(car, Foreload.version()).html());
            } else {
                picture(car, best).save(Path.of(file));
            }
        }
        if (args.length == 0) {
            say("%nName a file to see it: gentle-brake.html has sliders to move, gentle-brake.svg is a picture.");
        }
    }

    private static Picture picture(Car car, double best) {
        double[] d = evenly(0, MOST, 181);
        XyChart chart = XyChart.of(
                        Axis.of("deceleration", "m/s²"), Axis.of("front lateral capacity (does not start at 0)", "N"))
                .line("with its load", d, each(d, one -> byLoadAlone(car, one)), Style.SECOND)
                .line("left for cornering", d, each(d, one -> left(car, one)), Style.FIRST)
                .markX(best, String.format(Locale.ROOT, "d* = %.2f m/s²", best));
        OptionalDouble locks = insideLocks(car);
        if (locks.isPresent()) {
            chart = chart.markX(locks.getAsDouble(), "inside wheel locks");
        }
        String caption =
                "Load makes the dashed line rise; the brake takes away what lies between the lines. What is left is largest at "
                        + "d*, where the gap grows just as fast as the dashed line. Where the inside wheel locks, the line has a "
                        + "kink: from there on the outside wheel corners alone.";
        return Picture.of("Why a gentle brake adds front grip", caption, chart);
    }
}
