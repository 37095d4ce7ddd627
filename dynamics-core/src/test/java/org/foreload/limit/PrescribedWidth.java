package org.foreload.limit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.foreload.collocation.OptimalControl;
import org.foreload.conventions.InvalidValueException;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;

/**
 * Half a turn of prescribed width, out of the equations of the limit: it starts on a line of that width, may go
 * wherever it likes, and ends in a lane as narrow as a hand, no slower than it came. {@link Limit} itself has no end
 * that must be reached at a speed.
 *
 * <p>The line is a spiral in, an arc and a spiral out. It should lie inside the quickest way, or not far outside it:
 * where a way comes near the line's centre of curvature, stations crowd on it, and an interval skips what lies between
 * its points.
 */
final class PrescribedWidth {

    private static final int INTERVALS = 120;
    private static final int LANE_INTERVALS = 3;
    private static final double START = 0.01;
    private static final double LANE = 4;
    private static final double LANE_HALF_WIDTH = 0.0005;
    private static final double ANYWHERE = 1.45;

    /** Share of the friction that the first guess uses. */
    private static final double GUESS_FRICTION = 0.9;

    /** Fall of the approach speed until the first guess can be driven. */
    private static final double SLOWER = 0.98;

    private static final int HALVINGS = 60;

    private final Car car;
    private final Hands hands;
    private final double width;
    private final double speed;
    private final Path line;
    private final double end;

    /**
     * @param width from lane to lane, m
     * @param speed from which it starts and to which it must come back, m/s
     * @param spirals share of the angle through which the line turns in its spirals
     */
    PrescribedWidth(Car car, Hands hands, double width, double speed, double spirals) {
        this.car = car;
        this.hands = hands;
        this.width = width;
        this.speed = speed;
        double low = 0;
        double high = width;
        for (int i = 0; i < HALVINGS; i++) {
            double radius = (low + high) / 2;
            Path tried = line(spirals, radius);
            if (tried.position(tried.end()).y() < width) {
                low = radius;
            } else {
                high = radius;
            }
        }
        this.line = line(spirals, high);
        this.end = line.end() - LANE;
    }

    /** A spiral turns by half of what an arc of its length does. */
    private Path line(double spirals, double radius) {
        List<Segment> segments = new ArrayList<>();
        double angle = Math.PI * spirals;
        if (spirals > 0) {
            segments.add(Segment.spiralIn(angle * radius, radius, Turn.LEFT));
        }
        if (spirals < 1) {
            segments.add(Segment.arcThroughAngle(Math.PI - angle, radius, Turn.LEFT));
        }
        if (spirals > 0) {
            segments.add(Segment.spiralOut(angle * radius, radius, Turn.LEFT));
        }
        return SegmentPath.of(START, segments, LANE, 2 * width);
    }

    /** Station at which the lane begins, m. */
    double end() {
        return end;
    }

    /** Direction in which the car travels, rad from that in which it started. */
    double direction(LimitPoint point) {
        return line.heading(point.station()) + point.headingError() + point.sideslip();
    }

    LimitResult solve() {
        double[] lengths = new double[1 + INTERVALS + LANE_INTERVALS];
        Arrays.fill(lengths, end / INTERVALS);
        lengths[0] = START;
        Arrays.fill(lengths, 1 + INTERVALS, lengths.length, LANE / LANE_INTERVALS);
        List<RoadEquations.Place> places = new ArrayList<>();
        double at = line.start();
        for (double length : lengths) {
            for (double node : OptimalControl.nodes()) {
                places.add(place(at + length * Math.min(node, 1 - 1e-9)));
            }
            at += length;
        }
        RoadEquations equations = new RoadEquations(car, hands, places);
        double[] scale = equations.scale();
        QuasiSteadyStart start = new QuasiSteadyStart(car, line, guess());
        double[] unknowns = new double[places.size() * Unknowns.ALL];
        for (int p = 0; p < places.size(); p++) {
            double[] x = start.at(places.get(p).station());
            for (int i = 0; i < Unknowns.ALL; i++) {
                unknowns[p * Unknowns.ALL + i] = x[i] / scale[i];
            }
        }
        double[] first = new double[Unknowns.ALL];
        first[Unknowns.VX] = speed / scale[Unknowns.VX];
        OptimalControl.Ending ending = OptimalControl.solve(
                equations, lengths, first, new boolean[Unknowns.STATES], unknowns, 1e-5, 300, (step, residual) -> {});
        return new ResultMaker(car, line, places, lengths, equations).result(ending);
    }

    private RoadEquations.Place place(double s) {
        boolean lane = s > end - 1e-6;
        return new RoadEquations.Place(
                s,
                line.curvature(s),
                0,
                0,
                lane ? -LANE_HALF_WIDTH : -2 * width,
                lane ? LANE_HALF_WIDTH : 2 * width,
                ANYWHERE,
                lane ? speed : 1,
                0,
                0,
                1);
    }

    /** The quasi-steady profile on the line, which comes no faster than the line can be driven. */
    private IdealProfile guess() {
        for (double approach = speed; approach > 1; approach *= SLOWER) {
            try {
                return IdealEntry.solve(
                        car,
                        new Corner("half turn", approach, line),
                        IdealOptions.DEFAULT.withFrictionScale(GUESS_FRICTION));
            } catch (InvalidValueException tooFast) {
                continue;
            }
        }
        throw new IllegalStateException("the line cannot be driven");
    }
}
