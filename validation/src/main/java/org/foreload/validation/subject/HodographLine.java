package org.foreload.validation.subject;

import java.util.Arrays;
import org.foreload.path.Path;

/**
 * The line that a point takes whose velocity and acceleration are known as functions of time: a table by time, read by
 * station, behind a straight approach. For lines whose best way to drive is known in closed form.
 */
final class HodographLine implements Path {

    /** Rows of the table: the error of reading between them falls with the square and is below 1e-8 here. */
    private static final int ROWS = 20_000;

    /** Velocity and acceleration in the plane. */
    record Motion(double vx, double vy, double ax, double ay) {
        double speed() {
            return Math.hypot(vx, vy);
        }
    }

    /** Motion at a time. */
    interface Law {
        Motion at(double time);
    }

    private final double approach;
    private final double[] station = new double[ROWS + 1];
    private final double[] curvature = new double[ROWS + 1];
    private final double[] heading = new double[ROWS + 1];
    private final double[] x = new double[ROWS + 1];
    private final double[] y = new double[ROWS + 1];

    HodographLine(double approach, double duration, Law law) {
        this.approach = approach;
        x[0] = approach;
        for (int i = 0; i <= ROWS; i++) {
            Motion now = law.at(duration * i / ROWS);
            double speed = now.speed();
            curvature[i] = (now.vx() * now.ay() - now.vy() * now.ax()) / (speed * speed * speed);
            heading[i] = Math.atan2(now.vy(), now.vx());
            if (i > 0) {
                if (heading[i] < heading[i - 1] - Math.PI) {
                    heading[i] += 2 * Math.PI;
                }
                double step = duration / ROWS;
                Motion middle = law.at(duration * (i - 0.5) / ROWS);
                Motion before = law.at(duration * (i - 1) / ROWS);
                station[i] = station[i - 1] + step / 6 * (before.speed() + 4 * middle.speed() + speed);
                x[i] = x[i - 1] + step / 6 * (before.vx() + 4 * middle.vx() + now.vx());
                y[i] = y[i - 1] + step / 6 * (before.vy() + 4 * middle.vy() + now.vy());
            }
        }
    }

    private double read(double[] column, double s) {
        if (s >= station[ROWS]) {
            return column[ROWS];
        }
        int found = Arrays.binarySearch(station, s);
        int row = Math.max(0, found >= 0 ? found : -found - 2);
        double share = (s - station[row]) / (station[row + 1] - station[row]);
        return column[row] + share * (column[row + 1] - column[row]);
    }

    @Override
    public double start() {
        return -approach;
    }

    @Override
    public double end() {
        return station[ROWS];
    }

    @Override
    public double curvature(double s) {
        return s < 0 ? 0 : read(curvature, s);
    }

    @Override
    public double curvatureGradient(double s) {
        double reach = 1e-4 * station[ROWS];
        return s < 0 ? 0 : (read(curvature, s + reach) - read(curvature, Math.max(0, s - reach))) / (2 * reach);
    }

    @Override
    public double heading(double s) {
        return s < 0 ? 0 : read(heading, s);
    }

    @Override
    public Point position(double s) {
        return s < 0 ? new Point(approach + Math.max(s, -approach), 0) : new Point(read(x, s), read(y, s));
    }

    @Override
    public double grade(double s) {
        return 0;
    }

    @Override
    public double banking(double s) {
        return 0;
    }

    @Override
    public double widthLeft(double s) {
        return 10;
    }

    @Override
    public double widthRight(double s) {
        return 10;
    }

    @Override
    public double[] kinks() {
        return new double[] {0};
    }
}
