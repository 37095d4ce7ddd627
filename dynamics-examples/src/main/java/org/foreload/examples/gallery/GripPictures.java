package org.foreload.examples.gallery;

import java.util.List;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.Axle;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GgDiagram;
import org.foreload.vehicle.Car;

/** What braking does to cornering grip. */
public final class GripPictures {

    private static final int POINTS = 101;

    private static final double KILO = 1e-3;

    private GripPictures() {}

    /**
     * Capacity of both axles against deceleration with d* marked, and the g-g diagram.
     *
     * @param car the car
     * @param speed m/s, above zero
     */
    public static Picture of(Car car, double speed) {
        BrakingGrip grip = BrakingGrip.of(car, speed);
        GgDiagram gg = GgDiagram.of(car, speed, POINTS);
        List<GgDiagram.Point> boundary = gg.boundary();
        double best = grip.bestDeceleration();
        double hardest = boundary.get(boundary.size() - 1).deceleration();
        double rear = 100 * (grip.rearCapacity(best) / grip.rearCapacity(0) - 1);
        String front = best > 0
                ? Say.of(
                        "Gentle braking adds front grip: %.2f kN without brake, %.2f kN (%+.1f %%) when slowing at d* = %.2f "
                                + "m/s²; there the rear axle has %.1f %% %s.",
                        KILO * grip.frontCapacity(0),
                        KILO * grip.frontCapacity(best),
                        100 * grip.bestFrontGain(),
                        best,
                        Math.abs(rear),
                        rear < 0 ? "less" : "more")
                : "Braking adds nothing to the front grip of this car at this speed.";
        String limiting = grip.limitingAxle(0)
                .map(axle -> axle == Axle.FRONT ? "its front axle" : "its rear axle")
                .orElse("rolling over");
        String whole = Say.of(
                " The car as a whole corners at %.2f m/s² without slowing, limited by %s, and brakes at most at %.2f "
                        + "m/s² in a straight line.",
                grip.lateralAcceleration(0), limiting, hardest);
        return new Picture(
                Say.of("Cornering grip while braking: %s at %.0f m/s", car.name(), speed),
                front + whole,
                List.of(List.of(capacity(grip, hardest), gg(boundary))));
    }

    /** Lateral capacity of both axles against deceleration, up to {@code hardest} in m/s². */
    public static XyChart capacity(BrakingGrip grip, double hardest) {
        double[] deceleration = new double[POINTS];
        double[] front = new double[POINTS];
        double[] rear = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            deceleration[i] = hardest * i / (POINTS - 1);
            front[i] = KILO * grip.frontCapacity(deceleration[i]);
            rear[i] = KILO * grip.rearCapacity(deceleration[i]);
        }
        double best = grip.bestDeceleration();
        XyChart chart = XyChart.of(
                        Axis.of("deceleration", "m/s²").between(0, hardest),
                        Axis.of("lateral force that the axle can give", "kN").between(0, Double.NaN))
                .heading("Each axle by itself")
                .line("front axle", deceleration, front, Style.FIRST)
                .line("rear axle", deceleration, rear, Style.SECOND)
                .tall(370);
        return best > 0
                ? chart.markX(best, Say.of("d* = %.2f", best))
                        .line(
                                "",
                                new double[] {best},
                                new double[] {KILO * grip.frontCapacity(best)},
                                Style.points(Ink.BLUE, Marker.DISC))
                : chart;
    }

    private static XyChart gg(List<GgDiagram.Point> boundary) {
        int n = boundary.size();
        double[] lateral = new double[2 * n + 1];
        double[] longitudinal = new double[2 * n + 1];
        for (int i = 0; i < n; i++) {
            GgDiagram.Point point = boundary.get(i);
            lateral[i] = point.lateral();
            longitudinal[i] = -point.deceleration();
            lateral[2 * n - 1 - i] = -point.lateral();
            longitudinal[2 * n - 1 - i] = -point.deceleration();
        }
        // At the driving end the engine gives out first: as much drive at any smaller lateral acceleration, no more.
        lateral[2 * n] = lateral[0];
        longitudinal[2 * n] = longitudinal[0];
        return XyChart.of(
                        Axis.of("lateral acceleration, left positive", "m/s²").toTheLeft(),
                        Axis.of("longitudinal acceleration, braking below", "m/s²"))
                .heading("The whole car")
                .line("limit of steady cornering", lateral, longitudinal, Style.FIRST)
                .markY(0, "")
                .tall(370)
                .equal();
    }
}
