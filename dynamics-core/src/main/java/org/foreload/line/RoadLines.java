package org.foreload.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.collocation.OptimalControl;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Path;

/** Lines that know the road and nothing of the car but its width. */
public final class RoadLines {

    /**
     * How much more curvature counts after the middle of the bend on a line with a late apex: it bends more tightly
     * before than after, by this factor.
     */
    private static final double LATE = 1.4;

    /** Length of intervals in and near the bend, and far from it, m; and how near counts. */
    private static final double SHORT = 1.5;

    private static final double LONG = 8;
    private static final double NEAR = 60;

    /** Radius, m, that the search begins with. */
    private static final double FIRST_RADIUS = 50;

    private static final double TOLERANCE = 1e-5;
    private static final int MOST_STEPS = 200;
    private static final double BESIDE = 1e-9;

    private RoadLines() {}

    /**
     * The line whose greatest curvature is the smallest that the road allows: out, in and out, with one radius in
     * between. It starts where the road's own line starts.
     *
     * @param halfCar half of the car's width, m
     * @throws InvalidValueException if the road is narrower than the car, or no such line is found
     */
    public static RoadLine constantRadius(Path road, double halfCar) {
        Objects.requireNonNull(road, "road");
        return find(road, halfCar, 1);
    }

    /**
     * The same, but tighter before the middle of the bend and wider after it, so that it comes to the inside of the
     * road late and straightens early.
     *
     * @param halfCar half of the car's width, m
     * @throws InvalidValueException if the road is narrower than the car, or no such line is found
     */
    public static RoadLine lateApex(Path road, double halfCar) {
        Objects.requireNonNull(road, "road");
        return find(road, halfCar, LATE);
    }

    private static RoadLine find(Path road, double halfCar, double late) {
        Checks.notNegative("half_car_m", halfCar);
        double middle = middle(road);
        double[] ends = ends(road, middle);
        double[] lengths = new double[ends.length - 1];
        double[] nodes = OptimalControl.nodes();
        List<RoundestLine.Place> places = new ArrayList<>();
        for (int k = 0; k < lengths.length; k++) {
            lengths[k] = ends[k + 1] - ends[k];
            for (double node : nodes) {
                double s = Math.min(ends[k] + lengths[k] * node, ends[k + 1] - BESIDE);
                double left = road.widthLeft(s) - halfCar;
                double right = road.widthRight(s) - halfCar;
                if (!(left > 0 && right > 0)) {
                    throw new InvalidValueException(
                            "half_width_m", Math.min(road.widthLeft(s), road.widthRight(s)), "more than half a car");
                }
                places.add(new RoundestLine.Place(road.curvature(s), -right, left, s > middle ? late : 1));
            }
        }
        double[] start = new double[RoundestLine.CHANGE];
        start[RoundestLine.GREATEST] = 1 / (FIRST_RADIUS * RoundestLine.SCALE[RoundestLine.GREATEST]);
        boolean[] free = new boolean[RoundestLine.CHANGE];
        free[RoundestLine.GREATEST] = true;
        double[] guess = new double[places.size() * RoundestLine.ALL];
        for (int p = 0; p < places.size(); p++) {
            double bend = places.get(p).curvature();
            guess[p * RoundestLine.ALL + RoundestLine.CURVATURE] = bend / RoundestLine.SCALE[RoundestLine.CURVATURE];
            guess[p * RoundestLine.ALL + RoundestLine.GREATEST] = start[RoundestLine.GREATEST];
        }
        OptimalControl.Ending ending = OptimalControl.solve(
                new RoundestLine(places.toArray(RoundestLine.Place[]::new), road.end() - road.start()),
                lengths,
                start,
                free,
                guess,
                TOLERANCE,
                MOST_STEPS,
                (step, residual) -> {});
        if (!ending.converged()) {
            throw new InvalidValueException("half_width_m", road.widthLeft(0), "a road on which such a line is found");
        }
        return line(road, ends, nodes.length, ending.unknowns());
    }

    private static RoadLine line(Path road, double[] ends, int each, double[] unknowns) {
        double[] offset = new double[ends.length];
        double[] direction = new double[ends.length];
        double[] curvature = new double[ends.length];
        for (int k = 1; k < ends.length; k++) {
            int at = (k * each - 1) * RoundestLine.ALL;
            offset[k] = unknowns[at + RoundestLine.OFFSET] * RoundestLine.SCALE[RoundestLine.OFFSET];
            direction[k] = unknowns[at + RoundestLine.DIRECTION] * RoundestLine.SCALE[RoundestLine.DIRECTION];
            curvature[k] = unknowns[at + RoundestLine.CURVATURE] * RoundestLine.SCALE[RoundestLine.CURVATURE];
        }
        return new RoadLine(road, ends, offset, direction, curvature);
    }

    /** Station at which the road has turned by half of all that it turns. */
    private static double middle(Path road) {
        double whole = road.heading(road.end());
        double low = road.start();
        double high = road.end();
        while (high - low > SHORT / 2) {
            double s = (low + high) / 2;
            if (Math.abs(road.heading(s)) < Math.abs(whole) / 2) {
                low = s;
            } else {
                high = s;
            }
        }
        return (low + high) / 2;
    }

    /** Ends of intervals: kinks of the road among them. */
    private static double[] ends(Path road, double middle) {
        List<Double> marks = new ArrayList<>(List.of(road.start(), road.end(), 0.0, middle));
        double last = 0;
        for (double kink : road.kinks()) {
            marks.add(kink);
            last = Math.max(last, kink);
        }
        marks.add(Math.max(road.start(), -NEAR));
        marks.add(Math.min(road.end(), last + NEAR));
        double[] sorted =
                marks.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        List<Double> ends = new ArrayList<>(List.of(sorted[0]));
        for (double mark : sorted) {
            double from = ends.get(ends.size() - 1);
            if (mark - from < SHORT / 2) {
                continue;
            }
            double longest = mark <= -NEAR || from >= last + NEAR ? LONG : SHORT;
            int pieces = (int) Math.ceil((mark - from) / longest);
            for (int i = 1; i <= pieces; i++) {
                ends.add(from + (mark - from) * i / pieces);
            }
        }
        ends.set(ends.size() - 1, road.end());
        return ends.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
