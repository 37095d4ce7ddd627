package org.foreload.balance;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.grip.BrakeDistribution;
import org.foreload.vehicle.Car;

/**
 * The regulation's picture of a brake balance: the adhesion that each axle needs over the braking rate, with the band
 * in which the curves must lie. Source: UN Regulation 13-H, Annex 5 (from memory): for adhesions k from 0.2 to 0.8 the
 * car must reach z ≥ 0.1 + 0.7·(k − 0.2), and from z = 0.15 to 0.8 the rear curve must not lie above the front one. On
 * the flat, without aerodynamics; a tool for comparison, not a proof of conformity.
 *
 * @param frontBrakeShare front share of the brake force
 * @param criticalRate braking rate, in g, at which the order of locking flips
 * @param rows the curves
 * @param frontFirst whether the rear curve stays below the front one wherever it must
 * @param efficient whether both curves stay inside the band
 */
public record AdhesionUse(
        double frontBrakeShare, double criticalRate, List<Row> rows, boolean frontFirst, boolean efficient) {

    private static final double STEP = 0.05;
    private static final double LAST = 1;
    private static final double ORDER_FROM = 0.15;
    private static final double ORDER_TO = 0.8;
    private static final double ADHESION_FROM = 0.2;
    private static final double ADHESION_TO = 0.8;

    /** Rounding that may not decide whether a curve that touches another lies above it. */
    private static final double TOUCH = 1e-9;

    /** Copies the rows. */
    public AdhesionUse {
        rows = List.copyOf(Objects.requireNonNull(rows, "rows"));
    }

    /**
     * One braking rate.
     *
     * @param rate z = d/g
     * @param front adhesion that the front axle needs
     * @param rear adhesion that the rear axle needs
     * @param ideal adhesion if both axles used the same: z
     * @param most most adhesion that the band allows at this rate, (z + 0.04)/0.7; NaN where it sets none
     */
    public record Row(double rate, double front, double rear, double ideal, double most) {}

    /** The picture of a car. */
    public static AdhesionUse of(Car car) {
        Objects.requireNonNull(car, "car");
        BrakeDistribution brakes = BrakeDistribution.of(car);
        List<Row> rows = new ArrayList<>();
        boolean frontFirst = true;
        boolean efficient = true;
        int count = (int) Math.round(LAST / STEP);
        for (int i = 1; i <= count; i++) {
            double rate = i * STEP;
            double front = brakes.frontAdhesion(rate);
            double rear = brakes.rearAdhesion(rate);
            double most = (rate + 0.04) / 0.7;
            boolean banded = most >= ADHESION_FROM && most <= ADHESION_TO;
            rows.add(new Row(rate, front, rear, rate, banded ? most : Double.NaN));
            boolean ordered = rate >= ORDER_FROM - TOUCH && rate <= ORDER_TO + TOUCH;
            frontFirst &= !ordered || rear <= front + TOUCH;
            efficient &= !banded || Math.max(front, rear) <= most + TOUCH;
        }
        return new AdhesionUse(car.frontBrakeShare(), brakes.criticalRate(), rows, frontFirst, efficient);
    }

    /** What the picture says, in words. */
    public String words() {
        String order =
                frontFirst ? "the front axle would lock first" : "the rear axle would lock first at some deceleration";
        return order + (efficient ? ", inside the band" : ", outside the band");
    }
}
