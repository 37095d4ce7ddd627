package org.foreload.limit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.foreload.collocation.OptimalControl;
import org.foreload.conventions.Gravity;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Car;

/**
 * Half a turn of prescribed width, out of the equations of the limit: it starts on a semicircle, may go wherever it
 * likes, and ends in a lane as narrow as a hand, no slower than it came. {@link Limit} itself has no end that must be
 * reached at a speed.
 */
final class PrescribedWidth {

    private static final int INTERVALS = 120;
    private static final int LANE_INTERVALS = 3;
    private static final double START = 0.01;
    private static final double LANE = 4;
    private static final double LANE_HALF_WIDTH = 0.0005;
    private static final double ANYWHERE = 1.45;

    private PrescribedWidth() {}

    /** From a speed back to that speed, m/s, over a width, m. */
    static LimitResult solve(Car car, Hands hands, double width, double speed) {
        double radius = width / 2;
        Path path =
                SegmentPath.of(START, List.of(Segment.arcThroughAngle(Math.PI, radius, Turn.LEFT)), LANE, 3 * radius);
        double[] lengths = new double[1 + INTERVALS + LANE_INTERVALS];
        Arrays.fill(lengths, Math.PI * radius / INTERVALS);
        lengths[0] = START;
        Arrays.fill(lengths, 1 + INTERVALS, lengths.length, LANE / LANE_INTERVALS);
        List<RoadEquations.Place> places = new ArrayList<>();
        double at = path.start();
        for (double length : lengths) {
            for (double node : OptimalControl.nodes()) {
                places.add(place(path, at + length * Math.min(node, 1 - 1e-9), radius, speed));
            }
            at += length;
        }
        RoadEquations equations = new RoadEquations(car, hands, places);
        double[] unknowns = new double[places.size() * Unknowns.ALL];
        for (int p = 0; p < places.size(); p++) {
            guess(car, places.get(p).curvature(), 0.7 * Math.min(speed, Math.sqrt(Gravity.G * radius)), unknowns, p);
        }
        double[] first = new double[Unknowns.ALL];
        first[Unknowns.VX] = speed;
        double[] scale = equations.scale();
        for (int i = 0; i < unknowns.length; i++) {
            unknowns[i] /= scale[i % Unknowns.ALL];
        }
        for (int i = 0; i < Unknowns.ALL; i++) {
            first[i] /= scale[i];
        }
        OptimalControl.Ending ending = OptimalControl.solve(
                equations, lengths, first, new boolean[Unknowns.STATES], unknowns, 1e-5, 300, (step, residual) -> {});
        return new ResultMaker(car, path, places, lengths, equations).result(ending);
    }

    private static RoadEquations.Place place(Path path, double s, double radius, double speed) {
        boolean lane = s > Math.PI * radius - 1e-6;
        return new RoadEquations.Place(
                s,
                path.curvature(s),
                0,
                0,
                lane ? -LANE_HALF_WIDTH : -3 * radius,
                lane ? LANE_HALF_WIDTH : 0.9 * radius,
                ANYWHERE,
                lane ? speed : 1,
                0,
                0);
    }

    /** Steady turning at a speed. */
    private static void guess(Car car, double curvature, double speed, double[] unknowns, int point) {
        int at = point * Unknowns.ALL;
        double lateral = speed * speed * curvature;
        FrictionTyre tyre = (FrictionTyre) car.frontTyre();
        double slip = -lateral / Gravity.G / tyre.corneringStiffnessPerLoad();
        unknowns[at + Unknowns.VX] = speed;
        unknowns[at + Unknowns.YAW_RATE] = speed * curvature;
        unknowns[at + Unknowns.ROLL] = lateral;
        unknowns[at + Unknowns.FRONT_SLIP] = slip;
        unknowns[at + Unknowns.REAR_SLIP] = slip;
        unknowns[at + Unknowns.STEER] = curvature * car.chassis().wheelbase() - slip;
        unknowns[at + Unknowns.VY] = slip * speed;
        unknowns[at + Unknowns.HEADING_ERROR] = -slip;
    }
}
