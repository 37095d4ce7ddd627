package org.foreload.entry;

import static org.foreload.entry.EntryState.BRAKE;
import static org.foreload.entry.EntryState.CAR;
import static org.foreload.entry.EntryState.DRIVE;
import static org.foreload.entry.EntryState.EASED;
import static org.foreload.entry.EntryState.EXCESS;
import static org.foreload.entry.EntryState.HEADING_ERROR;
import static org.foreload.entry.EntryState.OFFSET;
import static org.foreload.entry.EntryState.STEER;
import static org.foreload.entry.EntryState.TIME;
import static org.foreload.entry.EntryState.VX;
import static org.foreload.entry.EntryState.VY;
import static org.foreload.entry.EntryState.YAW_RATE;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Inputs;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.Angles;
import org.foreload.conventions.Bounds;
import org.foreload.conventions.Gravity;
import org.foreload.driver.BrakeFoot;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.DriverView;
import org.foreload.driver.Reaction;
import org.foreload.driver.Steering;
import org.foreload.driver.Throttle;
import org.foreload.integrate.Crossing;
import org.foreload.load.LoadTransfer;
import org.foreload.path.Path;

/**
 * The car, its driver and the line as one set of equations over station: every rate per second is divided by ds/dt. In
 * place of the slip that the tyres feel the state holds its lag behind the true one, see {@link SlipLag}. What switches
 * at a station (path kinks, brake and release points) switches here between pieces, never inside a step.
 */
final class EntryEquations {

    /** What the right foot does on a piece. */
    enum Foot {
        FLAT_OUT,
        BRAKING,
        COASTING,
        PICKING_UP,
        DRIVING
    }

    private final BicycleModel model;
    private final Path path;
    private final Steering steering;
    private final Throttle throttle;
    private final BrakeFoot brake;
    private final double steerRate;
    private final double perSteerReach;
    private final double perLeftLag;
    private final double perRightLag;
    private final Reaction reaction;
    private final BrakePlan plan;
    private final double mass;
    private final double perMass;
    private final int size;
    private final SlipLag lag;
    private final LoadTransfer transfer;
    private final DriverView view = new DriverView();
    private final Inputs inputs = new Inputs();
    private final Path.Place place = new Path.Place();
    private final double[] perSecond;

    private Foot foot = Foot.FLAT_OUT;
    private WheelLocks locks = WheelLocks.NONE;
    private double lockedSince = Double.NaN;
    private double pieceStart;
    private double pieceEnd;
    private double timeOfBrake = Double.POSITIVE_INFINITY;
    private long evaluations;

    EntryEquations(
            BicycleModel model,
            Path path,
            Steering steering,
            Throttle throttle,
            BrakeFoot brake,
            DriverSettings settings,
            BrakePlan plan) {
        this.model = model;
        this.path = path;
        this.steering = steering;
        this.throttle = throttle;
        this.brake = brake;
        this.steerRate = settings.hands().rate();
        this.perSteerReach = 1 / (settings.hands().lag() * steerRate);
        this.perLeftLag = 1 / settings.leftFoot().lag();
        this.perRightLag = 1 / settings.rightFoot().lag();
        this.reaction = settings.leftFoot().reaction();
        this.plan = plan;
        this.mass = model.car().chassis().mass();
        this.perMass = 1 / mass;
        this.size = brake.reacts() ? EntryState.REACTING_SIZE : EntryState.SIZE;
        this.perSecond = new double[size];
        this.lag = new SlipLag(model.car());
        this.transfer = LoadTransfer.of(model.car());
    }

    /** Number of states. */
    int size() {
        return size;
    }

    /** Enters the piece between two stations: nothing outside it is read. */
    void enterPiece(double start, double end) {
        pieceStart = start;
        pieceEnd = end;
    }

    /** Moves the feet; what the left one needs to remember is the time at which it came down. */
    void foot(Foot next, double time) {
        if (next == foot) {
            return;
        }
        if (next == Foot.BRAKING) {
            timeOfBrake = time;
        }
        foot = next;
    }

    WheelLocks locks() {
        return locks;
    }

    /** Stops wheels or lets them turn again; a reacting foot remembers since when the first of them has stood. */
    void locks(WheelLocks next, double time) {
        if (!next.any()) {
            lockedSince = Double.NaN;
        } else if (!locks.any()) {
            lockedSince = time;
        }
        locks = next;
    }

    /**
     * Period of the quickest swing of the pedal, s. The answer to a stopped wheel, whose onset must not be stepped
     * over, counts as a quarter of a swing.
     */
    double shortestPeriod() {
        double swing = plan.disturbance().shortestPeriod();
        return brake.reacts() && locks.any() ? Bounds.smaller(swing, 4 * reaction.delay()) : swing;
    }

    long evaluations() {
        return evaluations;
    }

    /** Fills in the loads and forces at a point, and nothing else. */
    void wheelsAt(double station, double[] x, WheelForces wheels) {
        evaluations++;
        path.at(inside(station), place);
        car(x, wheels);
    }

    /** Brake force over mass, m/s², that the wheels put on the road where forces were filled in last. */
    double brakeOnRoad(WheelForces wheels) {
        return model.brakeOnRoad(inputs, wheels) * perMass;
    }

    /** Most lateral force, N, that braking leaves the front wheels there. */
    double frontBesideBrake(WheelForces wheels) {
        return model.frontBesideBrake(inputs, wheels);
    }

    /**
     * Specific lateral force, m/s², that the load of the inner wheels could still answer to; below zero the car tips.
     */
    private double untilTipping(WheelForces wheels) {
        return transfer.tipping(wheels.frontAxleLoad(), wheels.rearAxleLoad()) - Math.abs(wheels.rollAcceleration());
    }

    /** Specific lateral force over that at which the inner wheels leave the road. */
    double tippingUse(WheelForces wheels) {
        double lateral = Math.abs(wheels.rollAcceleration());
        return lateral == 0 ? 0 : lateral / transfer.tipping(wheels.frontAxleLoad(), wheels.rearAxleLoad());
    }

    /** How far from tipping the car is at a point; where that leaves no doubt, only its order. */
    double untilTipping(double station, double[] x, WheelForces wheels) {
        double lateral =
                Bounds.larger(Math.abs(x[CAR + BicycleState.ROLL_ACCELERATION]), Math.abs(x[VX] * x[YAW_RATE]));
        double square = x[VX] * x[VX];
        double surely = transfer.tipping(transfer.frontAxle(LIGHT, square), transfer.rearAxle(LIGHT, square)) - lateral;
        if (surely > 0) {
            return surely;
        }
        wheelsAt(station, x, wheels);
        return untilTipping(wheels);
    }

    /**
     * How far the car is from tipping.
     *
     * @param joint holds loads and forces at the last joint between steps
     * @param looked buffer for those between joints
     */
    Crossing tipping(WheelForces joint, WheelForces looked) {
        return new Crossing() {
            @Override
            public double value(double station, double[] x) {
                return untilTipping(station, x, looked);
            }

            @Override
            public double valueAtJoint(double station, double[] x) {
                return untilTipping(joint);
            }
        };
    }

    /** Specific force, m/s², with which nearly every road at least presses a car to it. */
    private static final double LIGHT = 0.9 * Gravity.G;

    /**
     * Fills in the rates per metre of the line, and the loads and forces.
     *
     * @param station m
     * @param x state, with lags
     * @param wheels receives loads and forces
     * @param rate receives the rates
     */
    void perMetre(double station, double[] x, WheelForces wheels, double[] rate) {
        evaluations++;
        double s = inside(station);
        path.at(s, place);
        double curvature = place.curvature();
        double vx = x[VX];
        double vy = x[VY];
        double sin = Angles.sin(x[HEADING_ERROR]);
        double cos = Angles.cos(x[HEADING_ERROR]);
        double progress = Bounds.larger((vx * cos - vy * sin) / (1 - x[OFFSET] * curvature), LEAST_PROGRESS);
        double speed = Math.sqrt(vx * vx + vy * vy);
        car(x, wheels);
        double deceleration = -(wheels.accelerationX() * vx + wheels.accelerationY() * vy) / Bounds.larger(speed, 1);

        view.where(s, x[OFFSET], x[HEADING_ERROR], x[STEER]);
        view.slope(inputs.slowing());
        view.motion(x, perSecond, CAR, deceleration);
        double wanted = steering.angle(view, wheels);
        perSecond[TIME] = 1;
        perSecond[OFFSET] = vx * sin + vy * cos;
        perSecond[HEADING_ERROR] = x[YAW_RATE] - curvature * progress;
        perSecond[STEER] = steerRate * Bounds.tanh((wanted - x[STEER]) * perSteerReach);
        perSecond[BRAKE] = (brakeDemand(s, x, speed, wheels) - x[BRAKE]) * perLeftLag;
        perSecond[DRIVE] = (driveDemand(speed, wheels) * perMass - x[DRIVE]) * perRightLag;
        if (brake.reacts()) {
            perSecond[EASED] = brake.easing(x[EASED], x[TIME] - lockedSince, wheels);
            perSecond[EXCESS] = brake.perceiving(x[EXCESS], s, speed);
        }
        lag.rates(x, CAR, wheels, perSecond[STEER], perSecond);
        double secondsPerMetre = 1 / progress;
        for (int i = 0; i < size; i++) {
            rate[i] = perSecond[i] * secondsPerMetre;
        }
    }

    private double inside(double station) {
        return Bounds.clamp(pieceStart, station, pieceEnd);
    }

    /** The car alone, at the place that has been taken up; leaves its rates per second. */
    private void car(double[] x, WheelForces wheels) {
        inputs.driver(x[STEER], Bounds.larger(mass * x[BRAKE], 0), mass * x[DRIVE]);
        inputs.locks(locks);
        inputs.road(place.grade(), place.banking());
        model.ratesFromLag(x, CAR, inputs, wheels, perSecond);
    }

    /**
     * Progress below which a car is as good as stopped, m/s; the stop event comes first, this only guards the division.
     */
    private static final double LEAST_PROGRESS = 0.1;

    /** What the left foot asks of the brake, m/s²: from brake on until the right foot picks up. */
    private double brakeDemand(double station, double[] x, double speed, WheelForces wheels) {
        if (foot == Foot.FLAT_OUT || foot == Foot.PICKING_UP || foot == Foot.DRIVING) {
            return 0;
        }
        double planned = foot == Foot.BRAKING ? plan.demand(station, x[TIME] - timeOfBrake) : 0;
        return brake.reacts()
                ? brake.demand(planned, speed, x[EASED], x[EXCESS], wheels)
                : brake.asTold(planned, speed);
    }

    private double driveDemand(double speed, WheelForces wheels) {
        return switch (foot) {
            case FLAT_OUT -> throttle.flatOut(speed, wheels);
            case BRAKING, COASTING -> throttle.closed();
            case PICKING_UP -> throttle.pickUp(view, wheels, steering);
            case DRIVING -> throttle.exit(view, wheels, steering);
        };
    }
}
