package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.stream.DoubleStream;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.AxleUse;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.stability.EntryStability;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/** Why does the rear of a car go when it is braked in a corner? */
public final class WhyTheRearGoes {

    private static final double SPEED = 25;
    private static final double LATERAL = 8;

    private WhyTheRearGoes() {}

    /** A demo car with more of its brake force on the rear wheels than is good for it. */
    static Car car() {
        return Demos.car("car", "light").value().withFrontBrakeShare(0.62);
    }

    static AxleUse rear(Car car, double deceleration) {
        return use(car, deceleration).rear();
    }

    private static GripUse use(Car car, double deceleration) {
        return GripLimits.of(car).use(Motion.steady(SPEED, deceleration, LATERAL));
    }

    /** Deceleration, m/s², from which on the inside rear wheel cannot carry its half of the rear brake: it locks. */
    static double insideLocks(Car car) {
        return DoubleStream.iterate(0, d -> d + 0.01)
                .filter(d -> {
                    GripUse use = use(car, d);
                    double inside = use.loads().rearLeft();
                    return use.rear().longitudinalForce() / 2 >= car.rearTyre().peakForceX(inside);
                })
                .findFirst()
                .orElseThrow();
    }

    /** A brake eased from turn-in on, and off well before the apex. */
    static Release eased(CornerStudy study) {
        return new Release(ReleaseShapes.PROGRESSIVE, 0, 0.7 * study.simulator().apex());
    }

    /** A brake held into the corner, and off just before the apex. */
    static Release held(CornerStudy study) {
        double apex = study.simulator().apex();
        return new Release(ReleaseShapes.HELD, 0.4 * apex, 0.9 * apex);
    }

    /** The entry with this release, from a brake point that suits a timely one. */
    static EntryResult entry(CornerStudy study, double brakePoint, Release release) {
        return study.simulator()
                .run(Braking.of(0.8 * study.lockLimit(), 0.25, release).from(brakePoint));
    }

    static CornerStudy study() {
        return CornerStudy.of(car(), Demos.corner("corner", "medium").value());
    }

    static double brakePoint(CornerStudy study) {
        Braking plan = Braking.of(0.8 * study.lockLimit(), 0.25, eased(study));
        return study.latest(plan).entry().plan().brakePoint();
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        Car car = car();
        double locks = insideLocks(car);
        say(
                "%s, with %.0f %% of its brake force in front, at %.0f m/s and %.0f m/s² sideways.",
                car.name(), 100 * car.frontBrakeShare(), SPEED, LATERAL);
        say("%nbraking m/s²  rear load N  rear brake N  rear can corner with N  cornering needs N");
        for (double d = 0; d <= 8; d += 2) {
            AxleUse rear = rear(car, d);
            say(
                    "%12.0f  %11.0f  %12.0f  %22.0f  %17.0f",
                    d,
                    rear.load(),
                    Math.max(0, rear.longitudinalForce()),
                    rear.lateralCapacity(),
                    rear.lateralDemand());
        }
        say(
                "%nEach m/s² of braking takes %.0f N off the rear wheels, and the rear brakes spend part of what is "
                        + "left. The front wheels gain load for what they spend; the rear wheels pay twice. What they need "
                        + "for cornering stays. At %.1f m/s² the inside rear wheel, with the least load and as much brake as "
                        + "the outside one, locks. From there on the outside wheel corners alone.",
                rear(car, 0).load() - rear(car, 1).load(), locks);

        CornerStudy study = study();
        double brakePoint = brakePoint(study);
        EntryResult timely = entry(study, brakePoint, eased(study));
        EntryResult held = entry(study, brakePoint, held(study));
        EntryStability calm = EntryStability.of(car, timely);
        EntryStability lost = EntryStability.of(car, held);
        say(
                "%nDriven into %s, braked %.1f m before turn-in:",
                study.simulator().corner().name(), -brakePoint);
        say("eased off in time: %s. %s", timely.outcome().words(), calm.verdict());
        say("held for too long: %s, %s. %s", held.outcome().words(), held.cause(), lost.verdict());
        say(
                "%nUnstable means that a small swing of the tail would grow by itself. Under hard braking it does so even on "
                        + "the straight; the driver's hands hold it as long as the rear wheels turn. A locked rear wheel has hardly "
                        + "any force to give sideways, and then nothing holds the tail.");

        XyChart chart = XyChart.of(
                        Axis.of("distance from turn-in", "m").between(-30, 80),
                        Axis.of("sideslip of the car", "°").between(-60, 20))
                .line("eased off in time", timely.profile().orElseThrow(), "s_m", "sideslip_deg", Style.FIRST)
                .line("held for too long", held.profile().orElseThrow(), "s_m", "sideslip_deg", Style.SECOND)
                .markX(0, "turn-in")
                .tall(240);
        double[] d = evenly(0, 8, 161);
        XyChart rear = XyChart.of(
                        Axis.of("deceleration", "m/s²"),
                        Axis.of("rear axle, sideways", "N").between(0, Double.NaN))
                .line("can give", d, each(d, one -> rear(car, one).lateralCapacity()), Style.FIRST)
                .line("must give", d, each(d, one -> rear(car, one).lateralDemand()), Style.SECOND)
                .markX(locks, "inside wheel locks")
                .tall(220);
        String caption =
                "Above: what the rear axle can give falls with each bit of braking, what it must give does not; where the "
                        + "inside rear wheel locks, the outside one is left alone. Below: held for too long, the brake stops a rear wheel, and the tail comes round.";
        Story.draw(args, Picture.of("Why the rear goes", caption, rear, chart));
    }
}
