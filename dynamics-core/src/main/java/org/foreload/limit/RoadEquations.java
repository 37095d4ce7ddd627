package org.foreload.limit;

import static org.foreload.limit.Unknowns.ALL;
import static org.foreload.limit.Unknowns.BRAKE;
import static org.foreload.limit.Unknowns.BRAKE_ASKED;
import static org.foreload.limit.Unknowns.BRAKE_ASKED_RATE;
import static org.foreload.limit.Unknowns.DRIVE;
import static org.foreload.limit.Unknowns.DRIVE_ASKED;
import static org.foreload.limit.Unknowns.FRONT_SLIP;
import static org.foreload.limit.Unknowns.HEADING_ERROR;
import static org.foreload.limit.Unknowns.OFFSET;
import static org.foreload.limit.Unknowns.PITCH;
import static org.foreload.limit.Unknowns.PITCH_RATE;
import static org.foreload.limit.Unknowns.REAR_SLIP;
import static org.foreload.limit.Unknowns.ROLL;
import static org.foreload.limit.Unknowns.ROLL_RATE;
import static org.foreload.limit.Unknowns.STATES;
import static org.foreload.limit.Unknowns.STEER;
import static org.foreload.limit.Unknowns.STEER_RATE;
import static org.foreload.limit.Unknowns.VX;
import static org.foreload.limit.Unknowns.VY;
import static org.foreload.limit.Unknowns.YAW_RATE;

import java.util.Arrays;
import java.util.List;
import org.foreload.collocation.PointValues;
import org.foreload.collocation.StageEquations;
import org.foreload.conventions.Gravity;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;

/**
 * Car, hands and feet on a road, per metre of the line: rates of the scaled states, the price of a metre, and the
 * bounds. One instance serves one thread: it keeps a tape.
 */
final class RoadEquations implements StageEquations {

    /**
     * A point at which the equations hold, and what bounds the unknowns there.
     *
     * @param station m
     * @param curvature of the line, 1/m
     * @param grade rad
     * @param banking rad
     * @param lowestOffset m, to the left
     * @param highestOffset m, to the left
     * @param headingBound bound of the heading error to both sides, rad
     * @param lowestSpeed m/s
     * @param steeringPrice price of turning the steering wheel at full rate, as a share of the time it takes
     * @param brakePrice price of asking for 5 m/s² of brake, likewise
     * @param counts how often the time of a metre is counted in its price
     */
    record Place(
            double station,
            double curvature,
            double grade,
            double banking,
            double lowestOffset,
            double highestOffset,
            double headingBound,
            double lowestSpeed,
            double steeringPrice,
            double brakePrice,
            double counts) {}

    /** Number of bounds that every point has. */
    private static final int BOUNDS = 24;

    /** Power, W, that no engine misses: it leaves the foot an inside on a car that has none. */
    private static final double IDLE_POWER = 10;

    /** The line's normals must not cross within the band: least of 1 − n·κ. */
    private static final double LEAST_STRETCH = 0.05;

    /**
     * Prices, as shares of the time spent: of lifting or pressing the brake pedal at its full rate, and of asking for a
     * metre per second squared more than the engine gives yet. They settle what time alone leaves open, and cost about
     * a millisecond.
     */
    private static final double PEDAL_PRICE = 1e-3;

    /**
     * Price of asking for brake and drive at once, as a share of the time for each (m/s²)²: more than it could ever be
     * worth, so that there is one foot for both.
     */
    private static final double BOTH_PRICE = 0.02;

    private final Car car;
    private final Hands hands;
    private final List<Place> points;
    private final SmoothBicycle bicycle;
    private final Tape tape = new Tape(ALL);
    private final boolean[] atOnce = new boolean[STATES];
    private final double[] scale;
    private final double[] lateralScale = new double[2];
    private final double[] rollingScale = new double[2];
    private final int[] rates = new int[STATES];
    private final int[] rooms;
    private int slowness;
    private int price;
    private final double[] sum = new double[ALL];
    private final double[] slownessSlope = new double[ALL];
    private final double[] half = new double[ALL * ALL];

    RoadEquations(Car car, Hands hands, List<Place> points) {
        this.points = List.copyOf(points);
        this.car = car;
        this.hands = hands;
        this.bicycle = new SmoothBicycle(car);
        this.scale = Unknowns.scales(car, hands);
        this.rooms =
                new int[BOUNDS + (car.antiLock() ? 0 : 4) + (hands.holdsSideslip() ? 2 : 0) + (bicycle.tips() ? 2 : 0)];
        boolean rigidPitch = car.suspension().pitch().rigid();
        boolean rigidRoll = car.suspension().roll().rigid();
        atOnce[PITCH] = rigidPitch;
        atOnce[PITCH_RATE] = rigidPitch;
        atOnce[ROLL] = rigidRoll;
        atOnce[ROLL_RATE] = rigidRoll;
        atOnce[FRONT_SLIP] = car.frontTyre().relaxationLength() == 0;
        atOnce[REAR_SLIP] = car.rearTyre().relaxationLength() == 0;
        atOnce[BRAKE] = hands.brakeLag() == 0;
        atOnce[DRIVE] = hands.throttleLag() == 0;
        double wheel = car.chassis().mass() * Gravity.G / 4;
        lateralScale[0] = 1 / (2 * car.frontTyre().peakForceY(wheel));
        lateralScale[1] = 1 / (2 * car.rearTyre().peakForceY(wheel));
        rollingScale[0] = 1 / car.frontTyre().peakForceX(wheel);
        rollingScale[1] = 1 / car.rearTyre().peakForceX(wheel);
    }

    /** Units in which the unknowns are counted. */
    double[] scale() {
        return scale.clone();
    }

    @Override
    public int states() {
        return STATES;
    }

    @Override
    public int controls() {
        return Unknowns.CONTROLS;
    }

    @Override
    public int bounds() {
        return rooms.length;
    }

    @Override
    public boolean atOnce(int state) {
        return atOnce[state];
    }

    /** Loads, forces and slips of the last evaluation, as nodes of {@link #tape()}. */
    SmoothBicycle bicycle() {
        return bicycle;
    }

    /** Record of the last evaluation. */
    Tape tape() {
        return tape;
    }

    @Override
    public void values(int point, double[] unknowns, PointValues into) {
        values(points.get(point), unknowns, point * ALL, into);
    }

    /** Values at any place. */
    void values(Place place, double[] unknowns, int at, PointValues into) {
        tape.restart(false);
        record(place, unknowns, at, into);
    }

    /** Time of a metre at the last evaluation, s/m. */
    double slowness() {
        return tape.value(slowness);
    }

    @Override
    public void derivatives(
            int point,
            double[] unknowns,
            double costWeight,
            double[] rateWeights,
            double[] roomWeights,
            PointValues into) {
        tape.restart(true);
        record(points.get(point), unknowns, point * ALL, into);
        double perMetre = tape.value(slowness);
        tape.gradient(slowness, 1, slownessSlope, 0);
        for (int i = 0; i < STATES; i++) {
            tape.gradient(rates[i], (atOnce[i] ? 1 : perMetre) / scale[i], into.rateSlope(), i * ALL);
            if (!atOnce[i]) {
                double rate = tape.value(rates[i]) / scale[i];
                for (int j = 0; j < ALL; j++) {
                    into.rateSlope()[i * ALL + j] += rate * slownessSlope[j];
                }
            }
        }
        tape.gradient(price, 1, into.costSlope(), 0);
        for (int i = 0; i < rooms.length; i++) {
            tape.gradient(rooms[i], 1, into.roomSlope(), i * ALL);
        }
        curvature(costWeight, rateWeights, roomWeights, perMetre, into.curvature());
    }

    /**
     * Most states change per second by r and per metre by r·w, with w the slowness; the sum of products is bent as
     * w·Σλr and Σλr·w are, and by the product of their slopes.
     */
    private void curvature(
            double costWeight, double[] rateWeights, double[] roomWeights, double perMetre, double[] curvature) {
        Arrays.fill(half, 0);
        Arrays.fill(sum, 0);
        double whole = 0;
        for (int i = 0; i < STATES; i++) {
            double weight = rateWeights[i] / scale[i];
            if (atOnce[i]) {
                tape.weigh(rates[i], weight);
            } else {
                tape.weigh(rates[i], weight * perMetre);
                tape.addGradient(rates[i], weight, sum, 0);
                whole += weight * tape.value(rates[i]);
            }
        }
        tape.weigh(slowness, whole);
        tape.weigh(price, costWeight);
        for (int i = 0; i < rooms.length; i++) {
            tape.weigh(rooms[i], roomWeights[i]);
        }
        tape.addCurvature(half);
        for (int i = 0; i < ALL; i++) {
            for (int j = 0; j <= i; j++) {
                double bend = half[i * ALL + j] + sum[i] * slownessSlope[j] + sum[j] * slownessSlope[i];
                curvature[i * ALL + j] = bend;
                curvature[j * ALL + i] = bend;
            }
        }
    }

    private void record(Place point, double[] x, int at, PointValues into) {
        int[] u = new int[ALL];
        for (int i = 0; i < ALL; i++) {
            u[i] = tape.input(i, x[at + i] * scale[i], scale[i]);
        }
        bicycle.evaluate(
                tape,
                u[VX],
                u[VY],
                u[YAW_RATE],
                u[PITCH],
                u[ROLL],
                u[FRONT_SLIP],
                u[REAR_SLIP],
                u[STEER],
                u[BRAKE],
                u[DRIVE],
                point.grade(),
                point.banking());
        int sin = tape.sin(u[HEADING_ERROR]);
        int cos = tape.cos(u[HEADING_ERROR]);
        int stretch = tape.shifted(tape.scaled(u[OFFSET], -point.curvature()), 1);
        int progress = tape.over(tape.minus(tape.times(u[VX], cos), tape.times(u[VY], sin)), stretch);
        slowness = tape.inverse(progress);
        double cosBank = Math.cos(point.banking());
        rates[OFFSET] = tape.plus(tape.times(u[VX], sin), tape.times(u[VY], cos));
        rates[HEADING_ERROR] = tape.minus(u[YAW_RATE], tape.scaled(progress, point.curvature()));
        rates[VX] = tape.plus(bicycle.accelerationX, tape.times(u[YAW_RATE], u[VY]));
        rates[VY] = tape.minus(bicycle.accelerationY, tape.scaled(tape.times(u[YAW_RATE], u[VX]), cosBank));
        rates[YAW_RATE] = bicycle.yawAcceleration;
        follow(car.suspension().pitch(), u, PITCH, bicycle.pitchTarget);
        follow(car.suspension().roll(), u, ROLL, bicycle.rollTarget);
        relax(u, FRONT_SLIP, bicycle.frontSlip, car.frontTyre().relaxationLength());
        relax(u, REAR_SLIP, bicycle.rearSlip, car.rearTyre().relaxationLength());
        rates[STEER] = u[STEER_RATE];
        rates[BRAKE] = lag(u[BRAKE_ASKED], u[BRAKE], hands.brakeLag());
        rates[DRIVE] = lag(u[DRIVE_ASKED], u[DRIVE], hands.throttleLag());
        rates[BRAKE_ASKED] = u[BRAKE_ASKED_RATE];
        bounds(point, u, stretch);
        price = price(point, u);

        into.cost(tape.value(price));
        for (int i = 0; i < STATES; i++) {
            into.rate()[i] = tape.value(rates[i]) / scale[i] * (atOnce[i] ? 1 : tape.value(slowness));
        }
        for (int i = 0; i < rooms.length; i++) {
            into.room()[i] = tape.value(rooms[i]);
        }
    }

    private void follow(Response response, int[] u, int state, int target) {
        int off = tape.minus(target, u[state]);
        if (response.rigid()) {
            rates[state] = off;
            rates[state + 1] = u[state + 1];
            return;
        }
        double omega = 2 * Math.PI * response.frequency();
        rates[state] = u[state + 1];
        rates[state + 1] = tape.minus(
                tape.scaled(off, omega * omega), tape.scaled(u[state + 1], 2 * response.dampingRatio() * omega));
    }

    private void relax(int[] u, int state, int slip, double length) {
        int off = tape.minus(slip, u[state]);
        rates[state] = length == 0 ? off : tape.scaled(tape.times(u[VX], off), 1 / length);
    }

    private int lag(int asked, int given, double seconds) {
        int off = tape.minus(asked, given);
        return seconds == 0 ? off : tape.scaled(off, 1 / seconds);
    }

    private void bounds(Place point, int[] u, int stretch) {
        int next = 0;
        for (int axle = 0; axle < 2; axle++) {
            int peak = tape.scaled(bicycle.lateralPeak[axle], hands.axleShare() * lateralScale[axle]);
            int force = tape.scaled(bicycle.lateral[axle], lateralScale[axle]);
            next = both(next, peak, force);
            rooms[next++] = bicycle.beforePeak[axle];
        }
        for (int i = 0; i < bicycle.rolling.length; i += car.antiLock() ? 2 : 1) {
            rooms[next++] = tape.scaled(bicycle.rolling[i], rollingScale[i / 4]);
        }
        double power = car.driveline().power() + IDLE_POWER;
        int speed = tape.sqrt(tape.plus(tape.square(u[VX]), tape.square(u[VY])));
        int used = tape.scaled(tape.times(u[DRIVE_ASKED], speed), -car.chassis().mass() / power);
        rooms[next++] = tape.shifted(used, 1);
        next = between(next, u[OFFSET], point.lowestOffset(), point.highestOffset(), 1);
        next = between(next, u[STEER_RATE], -hands.steeringRate(), hands.steeringRate(), hands.steeringRate());
        next = between(next, u[BRAKE_ASKED_RATE], -hands.brakeOffRate(), hands.brakeOnRate(), hands.brakeOnRate());
        next = between(next, u[BRAKE_ASKED], 0, hands.peakDeceleration(), scale[BRAKE_ASKED]);
        rooms[next++] = tape.scaled(u[DRIVE_ASKED], 1 / scale[DRIVE_ASKED]);
        rooms[next++] = tape.shifted(stretch, -LEAST_STRETCH);
        rooms[next++] = tape.scaled(tape.shifted(u[VX], -point.lowestSpeed()), 1 / scale[VX]);
        next = between(next, u[HEADING_ERROR], -point.headingBound(), point.headingBound(), 1);
        if (hands.holdsSideslip()) {
            int most = tape.scaled(u[VX], Math.tan(hands.mostSideslip()) / scale[VY]);
            int across = tape.scaled(u[VY], 1 / scale[VY]);
            next = both(next, most, across);
        }
        if (bicycle.tips()) {
            both(next, tape.scaled(bicycle.tipping, 1 / scale[ROLL]), tape.scaled(u[ROLL], 1 / scale[ROLL]));
        }
    }

    /** Bounds to both sides: a node is no larger in size than another. */
    private int both(int next, int most, int node) {
        rooms[next] = tape.minus(most, node);
        rooms[next + 1] = tape.plus(most, node);
        return next + 2;
    }

    private int between(int next, int node, double low, double high, double unit) {
        rooms[next] = tape.scaled(tape.shifted(node, -low), 1 / unit);
        rooms[next + 1] = tape.scaled(tape.shifted(tape.scaled(node, -1), high), 1 / unit);
        return next + 2;
    }

    private int price(Place point, int[] u) {
        int hand = tape.square(tape.scaled(u[STEER_RATE], 1 / hands.steeringRate()));
        if (point.steeringPrice() > 1) {
            hand = tape.plus(hand, tape.square(tape.scaled(u[STEER], 1 / scale[STEER])));
        }
        int left = tape.square(tape.scaled(u[BRAKE_ASKED_RATE], 1 / hands.brakeOnRate()));
        int right = tape.square(tape.minus(u[DRIVE_ASKED], u[DRIVE]));
        if (point.brakePrice() > 0) {
            left = tape.plus(
                    left,
                    tape.scaled(
                            tape.square(tape.scaled(u[BRAKE_ASKED], 1 / scale[BRAKE_ASKED])),
                            point.brakePrice() / PEDAL_PRICE));
        }
        int both = tape.scaled(tape.times(u[BRAKE_ASKED], u[DRIVE_ASKED]), BOTH_PRICE);
        int extra = tape.plus(
                tape.plus(tape.scaled(hand, point.steeringPrice()), both),
                tape.plus(tape.scaled(left, PEDAL_PRICE), tape.scaled(right, PEDAL_PRICE)));
        return tape.times(slowness, tape.shifted(extra, point.counts()));
    }
}
