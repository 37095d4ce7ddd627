package org.foreload.examples.program;

import static org.foreload.examples.program.Story.say;

import java.util.List;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.gallery.LinePictures;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** The same corner, four lines: which line goes with a trailed brake, and which with braking before turn-in? */
public final class FourLines {

    private FourLines() {}

    /** The four lines, each driven by perfect hands that brake up to a station from its turn-in; infinite: freely. */
    static List<LineRun> runs(double brakeUntil) {
        Car car = Demos.car("car", "light").value();
        Corner corner = Demos.corner("corner", "medium").value();
        Hands hands = Hands.practised(Limit.peakDeceleration(car, corner)).withBrakeUntil(brakeUntil);
        LineStudy study = new LineStudy(car, corner, hands, LimitOptions.STANDARD, (step, residual) -> {});
        return List.of(study.constantRadius(), study.lateApex(), study.given(), study.quickest());
    }

    /**
     * Prints the story. It takes about half a minute.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        Car car = Demos.car("car", "light").value();
        Corner corner = Demos.corner("corner", "medium").value();
        say("%s in %s, driven by perfect hands and feet.", car.name(), corner.name());
        say("Stations are metres along the road, 0 where it begins to bend.");
        List<LineRun> trailed = runs(Double.POSITIVE_INFINITY);
        table("The brake trailed as far as it helps", trailed);
        List<LineRun> straight = runs(0);
        table("The brake off at the turn-in of each line", straight);
        LineRun given = trailed.get(2);
        LineRun quickest = trailed.get(3);
        say(
                "%nWith a trailed brake the quickest line takes %.2f s, %.2f s less than the middle of the road. It "
                        + "turns in %.0f m before the road bends, gently, and is slowest at %.0f m, a little past the middle of "
                        + "the bend.",
                quickest.time(), given.time() - quickest.time(), -quickest.turnIn(), quickest.slowestAt());
        say(
                "Straight-line braking asks for another line: it turns in %.0f m later. Each on its own best line, trailing is "
                        + "worth %.2f s; on the line of constant radius it seems to be worth %.2f s.",
                straight.get(3).turnIn() - quickest.turnIn(),
                straight.get(3).time() - quickest.time(),
                straight.get(0).time() - trailed.get(0).time());
        say("A model: it explores and explains. It is not an instruction for a road, and on a track the circuit's "
                + "rules come first.");
        Story.draw(args, LinePictures.of(car, corner, trailed));
    }

    private static void table(String title, List<LineRun> runs) {
        say("%n%s", title);
        say(
                "line             time s   turn-in m  brake point m  brake off m  slowest m/s     at m   pick-up m  trail share");
        for (LineRun run : runs) {
            say(
                    "%-15s  %6.2f  %10.0f  %13.0f  %11.0f  %11.1f  %7.0f  %10.0f  %9.0f %%%s",
                    run.name(),
                    run.time(),
                    run.turnIn(),
                    run.brakePoint().orElse(Double.NaN),
                    run.brakeOff().orElse(Double.NaN),
                    run.slowest(),
                    run.slowestAt(),
                    run.pickUp().orElse(Double.NaN),
                    100 * run.trailShare(),
                    run.converged() ? "" : "  (no optimum found)");
        }
    }
}
