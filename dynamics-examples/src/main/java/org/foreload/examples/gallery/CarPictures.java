package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.examples.answer.HandlingWords;
import org.foreload.examples.answer.Units;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.load.Wheel;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;

/** A car in a steady turn: where its load is, and how it handles. */
public final class CarPictures {

    private static final double KILO = 1e-3;

    /** Steps of a line. */
    private static final int STEPS = 60;

    /** Step of accelerations, m/s², from trim to trim, and where the search for an end is given up. */
    private static final double STEP = 0.1;

    private static final double FARTHEST = 60;

    /** Deceleration, m/s², up to which loads are drawn at least. */
    private static final double LOADS_TO = 10;

    private CarPictures() {}

    /** Load of each wheel in one motion, and how it moves with the deceleration. */
    public static Picture loads(Car car, double speed, double deceleration, double lateral) {
        GripUse use = GripLimits.of(car).use(Motion.steady(speed, deceleration, lateral));
        WheelLoads loads = use.loads();
        List<Bar> bars = new ArrayList<>();
        for (Wheel wheel : Wheel.values()) {
            double load = KILO * loads.of(wheel);
            bars.add(Bar.of(words(wheel), load, Say.of("%.2f kN", load), wheel.front() ? Ink.BLUE : Ink.VERMILION));
        }
        return Picture.of(
                "Where the load is: " + car.name(),
                Say.of(
                        "At %.0f m/s, slowing at %.1f m/s² and cornering at %.1f m/s² the front axle carries %.2f kN and uses "
                                + "%.0f %% of its grip, the rear %.2f kN and %.0f %%. Without slowing the front would carry "
                                + "%.2f kN.",
                        speed,
                        deceleration,
                        lateral,
                        KILO * loads.frontAxle(),
                        100 * use.front().utilisation(),
                        KILO * loads.rearAxle(),
                        100 * use.rear().utilisation(),
                        KILO * at(car, speed, 0, lateral).frontAxle()),
                new BarChart("Load on each wheel", Axis.of("load", "kN"), bars),
                over(car, speed, deceleration, lateral));
    }

    private static XyChart over(Car car, double speed, double deceleration, double lateral) {
        double from = Math.min(0, deceleration);
        double to = Math.max(LOADS_TO, deceleration);
        double[] x = new double[STEPS + 1];
        double[][] y = new double[Wheel.values().length][STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            x[i] = from + (to - from) * i / STEPS;
            WheelLoads loads = at(car, speed, x[i], lateral);
            for (Wheel wheel : Wheel.values()) {
                y[wheel.ordinal()][i] = KILO * loads.of(wheel);
            }
        }
        XyChart chart = XyChart.of(
                        Axis.of("deceleration", "m/s²"), Axis.of("load", "kN").between(0, Double.NaN))
                .heading(Say.of("The same turn, braked harder and harder (%.1f m/s² lateral)", lateral));
        for (Wheel wheel : Wheel.values()) {
            chart = chart.line(words(wheel), x, y[wheel.ordinal()], Marks.of(wheel));
        }
        return chart.markX(deceleration, "asked for");
    }

    private static WheelLoads at(Car car, double speed, double deceleration, double lateral) {
        return GripLimits.of(car)
                .use(Motion.steady(speed, deceleration, lateral))
                .loads();
    }

    private static String words(Wheel wheel) {
        return wheel.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }

    /**
     * Steer against lateral acceleration, with and without braking; and how quickly a disturbance decays against
     * deceleration.
     */
    public static Picture handling(Trim trim, Units units) {
        Car car = trim.car();
        double speed = trim.speed();
        double lateral = trim.lateralAcceleration();
        double deceleration = trim.deceleration();
        XyChart steer = steer(car, speed, lateral, deceleration);
        XyChart decay = decay(car, speed, lateral, deceleration);
        String leaving = leaves(steer) || leaves(decay) ? " A line leaves its chart where an axle gives out." : "";
        return new Picture(
                "How it handles: " + car.name() + Say.of(" at %.0f m/s", speed),
                "At " + units.speed(speed) + ", " + units.deceleration(lateral) + " lateral and "
                        + units.deceleration(deceleration) + " of slowing the car "
                        + HandlingWords.of(LinearHandling.of(trim), units) + "." + leaving,
                List.of(List.of(steer, decay)));
    }

    private static XyChart steer(Car car, double speed, double lateral, double deceleration) {
        XyChart chart = XyChart.of(Axis.of("lateral acceleration", "m/s²"), Axis.of("steer of the front wheels", "°"))
                .heading("Steer that the turn needs")
                .tall(350);
        chart = steerLine(chart, "without slowing", car, speed, lateral, 0, Style.FIRST);
        if (deceleration != 0) {
            chart = steerLine(
                    chart,
                    Say.of("slowing at %.1f m/s²", deceleration),
                    car,
                    speed,
                    lateral,
                    deceleration,
                    Style.SECOND);
        }
        double most = chart.series().stream()
                .flatMapToDouble(one -> Arrays.stream(one.xs()))
                .reduce(0, (a, b) -> Math.abs(b) > Math.abs(a) ? b : a);
        double neutral = Math.toDegrees(car.chassis().wheelbase() * most / (speed * speed));
        return upToTheLimit(chart, lateral, neutral)
                .line(
                        "neutral steer; above it: understeer",
                        new double[] {0, most},
                        new double[] {0, neutral},
                        Style.AIDE)
                .markX(lateral, "asked for");
    }

    /** From straight ahead to where an axle gives out. */
    private static XyChart steerLine(
            XyChart chart, String name, Car car, double speed, double lateral, double deceleration, Style style) {
        List<double[]> points = new ArrayList<>();
        double step = Math.copySign(STEP, lateral);
        for (int i = 0; i * STEP <= FARTHEST; i++) {
            Optional<Trim> trim = Trim.find(car, speed, deceleration, i * step);
            if (trim.isEmpty()) {
                break;
            }
            points.add(new double[] {i * step, Math.toDegrees(trim.get().steer())});
        }
        return points.isEmpty() ? chart : chart.line(name, column(points, 0), column(points, 1), style);
    }

    private static XyChart decay(Car car, double speed, double lateral, double deceleration) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i * STEP <= FARTHEST; i++) {
            Optional<Trim> trim = Trim.find(car, speed, STEP * i, lateral);
            if (trim.isEmpty()) {
                break;
            }
            points.add(new double[] {STEP * i, LinearHandling.of(trim.get()).decayRate()});
        }
        XyChart chart = XyChart.of(Axis.of("deceleration", "m/s²"), Axis.of("decay rate of a disturbance", "1/s"))
                .heading("The same turn, braked harder and harder")
                .markY(0, "below: unstable")
                .tall(350);
        return points.isEmpty()
                ? chart
                : upToTheLimit(chart.line("", column(points, 0), column(points, 1), Style.FIRST), deceleration, 0)
                        .markX(deceleration, "asked for");
    }

    /**
     * The chart with an upright axis for what its lines do up to {@value #NEAR_LIMIT} of where they end, or up to what
     * was asked for: beyond that an axle gives out, and a line that runs away would press all else flat.
     *
     * @param asked place along that must be seen
     * @param also a height that must be seen, beside zero
     */
    private static XyChart upToTheLimit(XyChart chart, double asked, double also) {
        double low = Math.min(0, also);
        double high = Math.max(0, also);
        for (XyChart.Series line : chart.series()) {
            double[] x = line.xs();
            double[] y = line.ys();
            double to = Math.max(NEAR_LIMIT * Math.abs(x[x.length - 1]), Math.abs(asked));
            for (int i = 0; i < x.length && Math.abs(x[i]) <= to; i++) {
                low = Math.min(low, y[i]);
                high = Math.max(high, y[i]);
            }
        }
        double free = FREE * (high - low);
        return chart.axes(chart.x(), chart.y().between(low - free, high + free));
    }

    /** Share of what a car can do up to which its lines set the axis. */
    private static final double NEAR_LIMIT = 0.95;

    /** Free space above and below, as a share of the axis. */
    private static final double FREE = 0.08;

    private static boolean leaves(XyChart chart) {
        return chart.series().stream()
                .flatMapToDouble(line -> Arrays.stream(line.ys()))
                .anyMatch(y -> y < chart.y().low() || y > chart.y().high());
    }

    private static double[] column(List<double[]> points, int index) {
        ToDoubleFunction<double[]> read = point -> point[index];
        return points.stream().mapToDouble(read).toArray();
    }
}
