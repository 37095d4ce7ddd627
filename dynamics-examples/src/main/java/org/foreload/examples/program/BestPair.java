package org.foreload.examples.program;

import static org.foreload.examples.program.Story.say;

import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.gallery.LinePictures;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/** Wet or dry, wide or narrow, a long straight after or a short one: how do line and release move together? */
public final class BestPair {

    /** Share of the dry road's friction that a wet one leaves: common practice, no source. */
    static final double WET = 0.6;

    private static final String AS_IT_IS = "as it is";
    private static final double NARROW = 3.5;
    private static final double WIDE = 7;
    private static final double SHORT = 60;
    private static final double LONG = 600;

    /** Roads in the picture: those whose lines differ. */
    private static final int PICTURED = 4;

    private BestPair() {}

    /** A road under some condition, and the car on it. */
    record Case(String name, Car car, Corner corner) {}

    /**
     * What perfect hands and feet do.
     *
     * @param given near the middle of the road
     * @param best anywhere on the road
     */
    record Pair(Case of, LineRun given, LineRun best) {

        static Pair of(Case of) {
            Hands hands = Hands.practised(Limit.peakDeceleration(of.car(), of.corner()));
            LineStudy study =
                    new LineStudy(of.car(), of.corner(), hands, LimitOptions.STANDARD, (step, residual) -> {});
            return new Pair(of, study.given(), study.quickest());
        }

        boolean converged() {
            return given.converged() && best.converged();
        }

        /** The best run, named after its road. */
        LineRun named() {
            return new LineRun(
                    of.name(), best.line(), best.corner(), best.result(), best.roadStations(), best.turnIn());
        }
    }

    /** The medium demo corner with another width and another straight after it, for the light demo car. */
    static Case of(String name, double friction, double halfWidth, double exit) {
        Car car = Demos.car("car", "light").value();
        Corner corner = Demos.corner("corner", "medium").value();
        SegmentPath path = (SegmentPath) corner.path();
        return new Case(
                name,
                car.withTyres(rubbed(car.frontTyre(), friction), rubbed(car.rearTyre(), friction)),
                new Corner(
                        corner.name() + (name.equals(AS_IT_IS) ? "" : ", " + name),
                        corner.approachSpeed(),
                        SegmentPath.of(-path.start(), path.segments(), exit, halfWidth)));
    }

    private static Tyre rubbed(Tyre tyre, double friction) {
        return ((FrictionTyre) tyre).withFriction(friction);
    }

    private static SegmentPath road() {
        return (SegmentPath) Demos.corner("corner", "medium").value().path();
    }

    /** Length of the demo's straight after the corner, m. */
    private static double exit() {
        SegmentPath road = road();
        return road.end()
                - road.segments().stream().mapToDouble(Segment::length).sum();
    }

    static List<Case> cases() {
        double halfWidth = road().widthLeft(0);
        double exit = exit();
        return List.of(
                of(AS_IT_IS, 1, halfWidth, exit),
                of("wet", WET, halfWidth, exit),
                of("narrow", 1, NARROW, exit),
                of("wide", 1, WIDE, exit),
                of("short straight after", 1, halfWidth, SHORT),
                of("long straight after", 1, halfWidth, LONG));
    }

    /**
     * Prints the story. It takes about half a minute.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        List<Case> cases = cases();
        Case first = cases.get(0);
        say("%s", first.car().name());
        say("in %s, driven by perfect hands and feet.", first.corner().name());
        say(
                "Wet: %.1f of the friction. Narrow, wide: %.1f m and %.1f m to each side in place of %.1f m.",
                WET, NARROW, WIDE, first.corner().path().widthLeft(0));
        say("Straight after it: %.0f m and %.0f m in place of %.0f m.", SHORT, LONG, exit());
        say("Stations are metres along the road, 0 where it begins to bend.%n");
        say("                              line                    brake                        trail");
        say("road                  time s  worth s  turn-in  brake    off  pick-up  slowest m/s     at  share");
        List<Pair> pairs = new ArrayList<>();
        for (Case one : cases) {
            Pair pair = Pair.of(one);
            pairs.add(pair);
            row(pair);
        }
        if (!pairs.stream().allMatch(Pair::converged)) {
            say("* No optimum was found for one of the two runs: the row is the last attempt.");
        }
        say("%nLine worth: how much quicker than near the middle of the same road.");
        say("A model: it explores and explains. It is not an instruction for a road, and on a track the circuit's "
                + "rules come first.");
        Story.draw(
                args,
                LinePictures.roads(
                        first.car(),
                        first.corner().name(),
                        cases.get(PICTURED - 1).corner(),
                        pairs.stream().limit(PICTURED).map(Pair::named).toList()));
    }

    private static void row(Pair pair) {
        LineRun best = pair.best();
        say(
                "%-20s  %6.2f  %7.2f  %7.0f  %5.0f  %5.0f  %7.0f  %11.1f  %5.0f  %3.0f %%%s",
                pair.of().name(),
                best.time(),
                pair.given().time() - best.time(),
                best.turnIn(),
                best.brakePoint().orElse(Double.NaN),
                best.brakeOff().orElse(Double.NaN),
                best.pickUp().orElse(Double.NaN),
                best.slowest(),
                best.slowestAt(),
                100 * best.trailShare(),
                pair.converged() ? "" : " *");
    }
}
