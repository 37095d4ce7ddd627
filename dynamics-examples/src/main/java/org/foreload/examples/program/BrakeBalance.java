package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.List;
import org.foreload.balance.Balance;
import org.foreload.balance.BalanceAxis;
import org.foreload.balance.BalanceRow;
import org.foreload.balance.BalanceStudy;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.BrakeDistribution;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/** What does brake balance do: to a stop in a straight line, and to the entry of a corner? */
public final class BrakeBalance {

    /** Friction of the straight-line numbers. */
    static final double FRICTION = 1.2;

    private BrakeBalance() {}

    /** Deceleration, m/s², at which the first axle locks in a straight line, without aerodynamics: closed form. */
    static double firstLock(BrakeDistribution brakes) {
        double rate = Math.min(brakes.frontLockRate(FRICTION), brakes.rearLockRate(FRICTION));
        return rate * org.foreload.conventions.Gravity.G;
    }

    /** Front share at which both axles lock together at this friction: all of it is used. */
    static double ideal(Car car) {
        return BrakeDistribution.of(car).idealFront(FRICTION) / FRICTION;
    }

    static Balance balance() {
        Car car = Demos.car("car", "light").value();
        CornerStudy study = CornerStudy.of(car, Demos.corner("corner", "medium").value());
        BalanceStudy balance = new BalanceStudy(
                new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.8), List.of(-0.1), List.of(0.6), 0.25));
        return balance.run(study, BalanceAxis.evenly(BalanceAxis.BRAKE_SHARE, 0.5, 0.9, 5), Sweep.quiet());
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        Car car = Demos.car("car", "light").value();
        say("%s. In a straight line, friction %.1f, without aerodynamics:", car.name(), FRICTION);
        say("%nfront share  first to lock  at m/s²");
        for (double share = 0.5; share < 0.95; share += 0.1) {
            BrakeDistribution brakes = BrakeDistribution.of(car.withFrontBrakeShare(share));
            boolean front = brakes.frontLockRate(FRICTION) <= brakes.rearLockRate(FRICTION);
            say("%11.2f  %13s  %7.2f", share, front ? "front" : "rear", firstLock(brakes));
        }
        say(
                "%nAt a front share of %.3f both axles lock together, at %.2f m/s². A little more in front costs a "
                        + "little braking and is the lesser evil: with its front wheels locked the car goes straight on, but "
                        + "it does not spin. A little less, and the rear locks first.",
                ideal(car), firstLock(BrakeDistribution.of(car.withFrontBrakeShare(ideal(car)))));

        Balance balance = balance();
        say(
                "%nInto %s, each with its own brake point:",
                Demos.corner("corner", "medium").value().name());
        say("%nfront share  first to lock  best entry s  fails %%  5 %% harder  10 m later");
        for (BalanceRow row : balance.rows()) {
            say(
                    "%11.2f  %13s  %12.2f  %7.0f  %10s  %s",
                    row.value(),
                    row.rearLocksFirst() ? "rear" : "front",
                    row.time(),
                    100 * row.failureShare(),
                    row.harder()
                            .map(Object::toString)
                            .orElse("-")
                            .toLowerCase(java.util.Locale.ROOT)
                            .replace('_', ' '),
                    row.later()
                            .map(Object::toString)
                            .orElse("-")
                            .toLowerCase(java.util.Locale.ROOT)
                            .replace('_', ' '));
        }
        say("%n%s", balance.reason());
        say(
                "So here the balance decides what goes wrong, and only then how quick the entry is: %.2f s between best and worst.",
                spread(balance));

        double[] shares = evenly(0.5, 0.9, 161);
        double[] values = balance.rows().stream().mapToDouble(BalanceRow::value).toArray();
        double[] times = balance.rows().stream().mapToDouble(BalanceRow::time).toArray();
        XyChart straight = XyChart.of(Axis.of("front brake share", "–"), Axis.of("hardest without a lock", "m/s²"))
                .line(
                        "",
                        shares,
                        each(shares, share -> firstLock(BrakeDistribution.of(car.withFrontBrakeShare(share)))),
                        Style.FIRST)
                .markX(ideal(car), "both lock together")
                .tall(240);
        XyChart corner = XyChart.of(Axis.of("front brake share", "–"), Axis.of("best entry", "s"))
                .line("", values, times, Style.FIRST.with(Style.Marker.DISC))
                .tall(240);
        String caption =
                "Above: in a straight line one balance is clearly the best. Below: the time of the best entry with each "
                        + "balance. More brake in front helps as long as it spares the rear wheels, and costs time once "
                        + "the front wheels have too much to do.";
        Story.draw(args, Picture.of("What brake balance does", caption, straight, corner));
    }

    /** Seconds between the quickest and the slowest balance. */
    static double spread(Balance balance) {
        var times = balance.rows().stream().mapToDouble(BalanceRow::time).summaryStatistics();
        return times.getMax() - times.getMin();
    }
}
