package org.foreload.limit;

import java.util.ArrayList;
import java.util.List;
import org.foreload.collocation.OptimalControl;
import org.foreload.collocation.PointValues;
import org.foreload.path.Path;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/** Turns the unknowns of a solution into the car along the line. */
final class ResultMaker {

    private static final int HALVINGS = 50;

    private final Car car;
    private final Path path;
    private final List<RoadEquations.Place> places;
    private final double[] lengths;
    private final RoadEquations equations;
    private final double[] scale;

    ResultMaker(Car car, Path path, List<RoadEquations.Place> places, double[] lengths, RoadEquations equations) {
        this.car = car;
        this.path = path;
        this.places = places;
        this.lengths = lengths;
        this.equations = equations;
        this.scale = equations.scale();
    }

    LimitResult result(OptimalControl.Ending ending) {
        double[] nodes = OptimalControl.nodes();
        double[] weights = OptimalControl.weights();
        int count = places.size();
        double[] unknowns = ending.unknowns();
        List<LimitPoint> rows = new ArrayList<>();
        double[] curvatures = new double[count + 1];
        double[] first = unknowns.clone();
        System.arraycopy(ending.start(), 0, first, 0, Unknowns.STATES);
        PointValues values = new PointValues(equations);
        equations.values(places.get(0), first, 0, values);
        double before = equations.slowness();
        rows.add(row(path.start(), 0, first, 0, curvatures, 0));
        double atStart = 0;
        double whole = 0;
        for (int p = 0; p < count; p++) {
            int i = p % nodes.length;
            double length = lengths[p / nodes.length];
            equations.values(places.get(p), unknowns, p * Unknowns.ALL, values);
            double slowness = equations.slowness();
            whole += length * weights[i] * slowness;
            boolean last = i == nodes.length - 1;
            double time = last ? whole : atStart + length * nodes[i] * (before + slowness) / 2;
            rows.add(row(places.get(p).station(), time, unknowns, p * Unknowns.ALL, curvatures, p + 1));
            if (last) {
                atStart = whole;
                before = slowness;
            }
        }
        return new LimitResult(rows, whole, ending.converged(), ending.residual(), ending.steps(), way(rows));
    }

    /** The way through the ends of the intervals: there a solution is an order better than between them. */
    private DrivenPath way(List<LimitPoint> rows) {
        List<LimitPoint> ends = new ArrayList<>();
        int each = OptimalControl.nodes().length;
        for (int i = 0; i < rows.size(); i += each) {
            ends.add(rows.get(i));
        }
        return new DrivenPath(
                path, ends, ends.stream().mapToDouble(LimitPoint::curvature).toArray());
    }

    private LimitPoint row(double station, double time, double[] unknowns, int at, double[] curvatures, int row) {
        double[] x = new double[Unknowns.ALL];
        for (int i = 0; i < x.length; i++) {
            x[i] = unknowns[at + i] * scale[i];
        }
        double vx = x[Unknowns.VX];
        double vy = x[Unknowns.VY];
        double speed = Math.hypot(vx, vy);
        Tape tape = equations.tape();
        SmoothBicycle bicycle = equations.bicycle();
        double ax = tape.value(bicycle.accelerationX);
        double ay = tape.value(bicycle.accelerationY);
        double[] loads = new double[4];
        for (int wheel = 0; wheel < 4; wheel++) {
            loads[wheel] = tape.value(bicycle.load[wheel]);
        }
        curvatures[row] = (ay * vx - ax * vy) / (speed * speed * speed);
        double heading = path.heading(station);
        Path.Point place = path.position(station);
        double offset = x[Unknowns.OFFSET];
        double[] along = new double[4];
        for (int wheel = 0; wheel < 4; wheel++) {
            along[wheel] = tape.value(bicycle.along[wheel]);
        }
        return new LimitPoint(
                station,
                time,
                speed,
                -(ax * vx + ay * vy) / speed,
                offset,
                x[Unknowns.HEADING_ERROR],
                Math.atan2(vy, vx),
                x[Unknowns.YAW_RATE],
                x[Unknowns.STEER],
                Math.max(0, x[Unknowns.BRAKE] - eased(x, along)),
                Math.max(0, x[Unknowns.BRAKE_ASKED]),
                Math.max(0, x[Unknowns.DRIVE]),
                Math.max(0, x[Unknowns.DRIVE_ASKED]),
                utilisation(car.frontTyre(), loads, along, 0, tape.value(bicycle.lateral[0])),
                utilisation(car.rearTyre(), loads, along, 2, tape.value(bicycle.lateral[1])),
                bicycle.tips() ? Math.abs(x[Unknowns.ROLL]) / tape.value(bicycle.tipping) : 0,
                loads[0] + loads[1],
                loads[2] + loads[3],
                curvatures[row],
                place.x() - offset * Math.sin(heading),
                place.y() + offset * Math.cos(heading));
    }

    /** Brake force over mass, m/s², that anti-lock brakes take from what the foot has asked for. */
    private double eased(double[] x, double[] along) {
        double asked = x[Unknowns.DRIVE] - x[Unknowns.BRAKE];
        double given =
                (along[0] + along[1] + along[2] + along[3]) / car.chassis().mass();
        return car.antiLock() ? Math.max(0, given - asked) : 0;
    }

    /** Smallest factor on the friction with which two wheels carry the force along each and one across both. */
    private static double utilisation(Tyre tyre, double[] loads, double[] along, int left, double across) {
        int right = left + 1;
        double low = Math.max(
                share(along[left], tyre.peakForceX(loads[left])), share(along[right], tyre.peakForceX(loads[right])));
        double high = Math.max(2, 2 * low);
        for (int i = 0; i < HALVINGS; i++) {
            double scale = (low + high) / 2;
            if (left(tyre, loads[left], along[left], scale) + left(tyre, loads[right], along[right], scale)
                    < Math.abs(across)) {
                low = scale;
            } else {
                high = scale;
            }
        }
        return high;
    }

    private static double share(double force, double peak) {
        return force == 0 ? 0 : Math.min(10, Math.abs(force) / peak);
    }

    private static double left(Tyre tyre, double load, double along, double scale) {
        double used = share(along, tyre.peakForceX(load));
        return tyre.peakForceY(load) * Math.sqrt(Math.max(0, scale * scale - used * used));
    }
}
