package org.foreload.validation.subject;

import java.util.Map;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.trace.Trace;
import org.foreload.validation.reference.ReferenceBound;
import org.foreload.validation.reference.ReferenceCar;
import org.foreload.vehicle.Car;

/** Whole entries, ideal and simulated, against the second programs and against laws that bound them. */
final class EntrySubjects {

    private static final double STEP = 1e-3;

    private EntrySubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "ideal-trail-share",
                in -> ideal(in).trailShare(),
                "ideal-against-reference",
                Subject.once(EntrySubjects::idealAgainstReference),
                "entry-against-reference",
                Subject.once(EntrySubjects::entryAgainstReference),
                "entry-hodograph",
                EntrySubjects::hodograph,
                "entry-above-bound",
                EntrySubjects::aboveBound);
    }

    private static Car car(Inputs in) {
        return EntryBench.car(in.word("car"));
    }

    private static Corner corner(Inputs in) {
        return EntryBench.corner(in.word("corner"));
    }

    private static IdealProfile ideal(Inputs in) {
        return IdealEntry.solve(car(in), corner(in));
    }

    /**
     * Differences from the nonlinear program: of the time and of the lowest speed in percent, of the brake point in m.
     */
    private static Subject idealAgainstReference(Inputs in) {
        IdealProfile ours = ideal(in);
        ReferenceBound other = ReferenceBound.solve(car(in), corner(in), in.number("step_m", 1));
        return asked -> difference(ours, other, asked.word(Subject.GIVE));
    }

    private static double difference(IdealProfile ours, ReferenceBound other, String give) {
        return switch (give) {
            case "time" -> 100 * (ours.time() / other.time() - 1);
            case "minimum-speed" -> 100 * (ours.minimumSpeed() / other.minimumSpeed() - 1);
            case "brake-point" -> ours.brakePoint().orElseThrow() - other.brakePoint();
            case "speeds" -> {
                double worst = 0;
                for (int i = 0; i < other.size(); i++) {
                    worst = Math.max(worst, Math.abs(ours.speedAt(other.station(i)) / other.speed(i) - 1));
                }
                yield 100 * worst;
            }
            default -> throw new IllegalArgumentException("give what?");
        };
    }

    /** A simulated entry with a linear release, braking at the point given. */
    private static EntryResult entry(Inputs in, SimulationSettings settings) {
        Car car = car(in);
        Corner corner = corner(in);
        return simulator(car, corner, settings)
                .run(Braking.of(
                                in.number("peak_mps2"),
                                0.25,
                                new Release(
                                        ReleaseShapes.named(in.word("shape", "linear")),
                                        in.number("release_start_m"),
                                        in.number("release_end_m")))
                        .from(in.number("brake_point_m")));
    }

    /** A driver whose exit follows the ideal of a car with a little less friction. */
    static EntrySimulator simulator(Car car, Corner corner, SimulationSettings settings) {
        DriverSettings driver = DriverSettings.practised();
        IdealProfile careful = IdealEntry.solve(
                car,
                new Corner(corner.name(), corner.approachSpeed() * 0.95, corner.path()),
                org.foreload.ideal.IdealOptions.DEFAULT.withFrictionScale(
                        driver.rightFoot().exitFriction()));
        int opening = 0;
        for (int i = 0; i + 1 < careful.size(); i++) {
            opening = careful.station(i) >= 0 && careful.speed(i) <= careful.minimumSpeed() * 1.002 ? i : opening;
        }
        double[] stations = new double[careful.size() - opening];
        double[] speeds = new double[stations.length];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = careful.station(opening + i);
            speeds[i] = careful.speed(opening + i);
        }
        return new EntrySimulator(car, corner, driver, new SpeedPlan(stations, speeds), settings);
    }

    /**
     * Drives the second program with the hands and feet of a simulated entry, and gives the difference at the end: of
     * the speed in percent, of the place in m.
     */
    private static Subject entryAgainstReference(Inputs in) {
        EntryResult entry = entry(in, new SimulationSettings(1e-9, 0.02));
        if (!entry.made()) {
            throw new IllegalStateException("the entry is meant to make the corner, but " + entry.cause());
        }
        Trace trace = entry.profile().orElseThrow();
        double[] times = trace.column("time_s").values();
        Car car = car(in);
        double mass = car.chassis().mass();
        Recorded steer = new Recorded(times, trace.column("steer_deg").values());
        Recorded brake = new Recorded(times, trace.column("brake_mps2").values());
        Recorded drive = new Recorded(times, trace.column("drive_mps2").values());
        double staticFront =
                mass * 9.81 * car.chassis().cgToRearAxle() / car.chassis().wheelbase();
        double speed = trace.column("speed_mps").at(0);
        double lift = car.aerodynamics().frontDownforce(speed * speed);
        double shift = trace.column("front_axle_load_n").at(0) - staticFront - lift;
        ReferenceCar other = new ReferenceCar(
                car,
                new ReferenceCar.Pedals() {
                    @Override
                    public double steer(double time) {
                        return Math.toRadians(steer.at(time));
                    }

                    @Override
                    public double brake(double time) {
                        return mass * brake.at(time);
                    }

                    @Override
                    public double drive(double time) {
                        return mass * drive.at(time);
                    }
                },
                speed,
                shift);
        double until = in.number("until_m");
        Recorded at = new Recorded(trace.column("s_m").values(), times);
        double end = at.at(until);
        other.runUntil(end, STEP);
        double ourSpeed = new Recorded(times, trace.column("speed_mps").values()).at(end);
        double offset = new Recorded(times, trace.column("offset_m").values()).at(end);
        Path path = corner(in).path();
        Path.Point line = path.position(until);
        double x = line.x() - offset * Math.sin(path.heading(until));
        double y = line.y() + offset * Math.cos(path.heading(until));
        double faster = 100 * (other.speed() / ourSpeed - 1);
        double apart = Math.hypot(other.x() - x, other.y() - y);
        return asked -> asked.word(Subject.GIVE).equals("speed") ? faster : apart;
    }

    /** A recorded column, read straight between its rows; asked forward mostly, so it remembers where it was. */
    private static final class Recorded {
        private final double[] at;
        private final double[] values;
        private int row;

        Recorded(double[] at, double[] values) {
            this.at = at;
            this.values = values;
        }

        double at(double x) {
            while (row > 0 && at[row] > x) {
                row--;
            }
            while (row + 2 < at.length && at[row + 1] <= x) {
                row++;
            }
            double share = Math.max(0, Math.min(1, (x - at[row]) / (at[row + 1] - at[row])));
            return values[row] + share * (values[row + 1] - values[row]);
        }
    }

    /**
     * Largest share of the free optimum's pace that a simulated entry reaches between any two rows at least half a
     * second apart: change of the velocity vector over the time and the greatest acceleration of the tyres. At most 1,
     * whoever drives.
     */
    private static double hodograph(Inputs in) {
        EntryResult entry = entry(in, new SimulationSettings(1e-8, 0.5));
        return Hodograph.largestShare(entry, corner(in).path(), EntryBench.plainLimit());
    }

    /** Time of a simulated entry above the ideal bound, percent. */
    private static double aboveBound(Inputs in) {
        EntryResult entry = entry(in, SimulationSettings.STANDARD);
        if (!entry.made()) {
            throw new IllegalStateException("the entry is meant to make the corner, but " + entry.cause());
        }
        return 100 * (entry.time() / ideal(in).time() - 1);
    }
}
