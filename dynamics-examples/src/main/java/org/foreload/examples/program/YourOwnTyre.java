package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.List;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.own.ExponentialTyre;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GripLimits;
import org.foreload.grip.Motion;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreLaws;
import org.foreload.vehicle.Car;

/** What does a tyre of your own change, and does it keep the laws that the library builds on? */
public final class YourOwnTyre {

    /** Wheel load at which forces are compared, N. */
    static final double LOAD = 2000;

    /** Speed at which d* is found, m/s. */
    static final double SPEED = 25;

    private YourOwnTyre() {}

    /** Stiffnesses are per newton of load, 1/rad and plain; the relaxation length in m. */
    static ExponentialTyre own() {
        return new ExponentialTyre(1.15, 18, 22, 0.3);
    }

    static Car car() {
        return Demos.car("car", "light").value();
    }

    static Car onOwnTyres() {
        return car().withTyres(own(), own());
    }

    private static BrakingGrip grip(Car car) {
        return BrakingGrip.of(car, SPEED);
    }

    /** Load, N, of the inside front wheel where the car corners as hard as it can and brakes by d*. */
    static double insideLoad(Car car) {
        double braking = grip(car).bestDeceleration();
        Motion motion = Motion.steady(SPEED, braking, grip(car).lateralAcceleration(braking));
        return GripLimits.of(car).use(motion).loads().frontLeft();
    }

    /** Force sideways, N, of a rolling wheel at a slip angle in degrees; positive for a positive angle. */
    static double sideways(Tyre tyre, double degrees) {
        return Math.abs(tyre.force(0, Math.tan(Math.toRadians(degrees)), LOAD).lateral());
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        List<String> broken = TyreLaws.broken(own(), 500, 2000, 6000);
        ExponentialTyre mine = own();
        say(
                "A tyre of my own, whose force nears its peak exponentially: friction %.2f in both directions, cornering "
                        + "stiffness %.0f per radian and slip stiffness %.0f, both per newton of load, relaxation length %.1f m.",
                mine.friction(),
                mine.corneringStiffnessPerLoad(),
                mine.slipStiffnessPerLoad(),
                mine.relaxationLength());
        say("Laws of tyres that it breaks: %s.", broken.isEmpty() ? "none" : String.join("; ", broken));
        Tyre theirs = car().frontTyre();
        say("%nslip angle °  my tyre N  the car's front tyre N, both at %.0f N of load", LOAD);
        for (double angle : new double[] {1, 2, 4, 8, 12}) {
            say("%12.0f  %9.0f  %22.0f", angle, sideways(own(), angle), sideways(theirs, angle));
        }
        double inside = insideLoad(car());
        Corner corner = Demos.corner("corner", "medium").value();
        say("%nThe fastest entry into %s, and what a gentle brake is worth:", corner.name());
        say("%-22s  entry s  slowest m/s  slowed while turning  d* m/s²  front grip gained", "");
        row("on its own tyres", car(), corner);
        row("on mine", onOwnTyres(), corner);
        say(
                "%nMy curve differs all the way, yet the entry takes nearly the same time, for it depends only on the peaks. "
                        + "At %.0f N they are %.2f for mine and %.2f for the front tyre of the car across, %.2f and %.2f along. "
                        + "d* is %.0f %% lower because of the inside front wheel, which brakes as hard as the outside one with "
                        + "only %.0f N on it: there the longitudinal peaks are %.2f and %.2f, since the friction of my tyre does "
                        + "not rise as load falls. How a tyre gets to its peak counts when an entry is simulated: OwnTyre, in the "
                        + "package own, drives one.",
                LOAD,
                mine.peakFrictionY(LOAD),
                theirs.peakFrictionY(LOAD),
                mine.peakFrictionX(LOAD),
                theirs.peakFrictionX(LOAD),
                100 * (1 - grip(onOwnTyres()).bestDeceleration() / grip(car()).bestDeceleration()),
                inside,
                mine.peakFrictionX(inside),
                theirs.peakFrictionX(inside));

        double[] angle = evenly(0, 12, 121);
        XyChart chart = XyChart.of(Axis.of("slip angle", "°"), Axis.of("lateral force", "N"))
                .line("my tyre", angle, each(angle, a -> sideways(own(), a)), Style.FIRST)
                .line("the car's front tyre", angle, each(angle, a -> sideways(theirs, a)), Style.SECOND);
        String caption = "My tyre approaches its peak and never falls off; the car's tyre rises more steeply, "
                + "peaks, and then loses a little.";
        Story.draw(args, Picture.of("Your own tyre", caption, chart));
    }

    private static void row(String name, Car car, Corner corner) {
        IdealProfile ideal = IdealEntry.solve(car, corner);
        BrakingGrip grip = grip(car);
        say(
                "%-22s  %7.2f  %11.1f  %18.0f %%  %7.2f  %15.1f %%",
                name,
                ideal.time(),
                ideal.minimumSpeed(),
                100 * ideal.trailShare(),
                grip.bestDeceleration(),
                100 * grip.bestFrontGain());
    }
}
