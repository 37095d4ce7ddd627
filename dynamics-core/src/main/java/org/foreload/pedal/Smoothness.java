package org.foreload.pedal;

import java.util.Objects;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.PedalDisturbance;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.trace.Trace;
import org.foreload.trace.Trace.Column;

/**
 * What an unsteady pedal costs: the same plan driven calmly and disturbed. A driver whose foot reacts expects the
 * speeds of the calm entry.
 *
 * @param calm the entry as intended
 * @param disturbed the entry with the disturbance
 * @param frontLoadRipple half the swing of the front axle load about that of the calm entry, N, from the brake point to
 *     the end of the release
 * @param frontGripLost largest part of the front axle's cornering capacity that the calm entry had and the disturbed
 *     one had not at the same place, from turn-in to the end of the release; zero for a release that ends before
 * @param distanceOffLine largest distance between the two courses, m, along the whole entry
 * @param timeLost s; NaN unless both made the corner
 */
public record Smoothness(
        EntryResult calm,
        EntryResult disturbed,
        double frontLoadRipple,
        double frontGripLost,
        double distanceOffLine,
        double timeLost) {

    /** Refuses null. */
    public Smoothness {
        Objects.requireNonNull(calm, "calm");
        Objects.requireNonNull(disturbed, "disturbed");
    }

    /**
     * Drives both.
     *
     * @param simulator car, corner and driver
     * @param plan what is intended
     * @param disturbance what the foot makes of it
     */
    public static Smoothness of(EntrySimulator simulator, BrakePlan plan, PedalDisturbance disturbance) {
        Objects.requireNonNull(simulator, "simulator");
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(disturbance, "disturbance");
        return of(simulator, simulator.run(plan.with(PedalDisturbance.NONE)), disturbance);
    }

    /** Drives the disturbed entry against a calm one that was driven before, with profile, by the same simulator. */
    public static Smoothness of(EntrySimulator simulator, EntryResult calm, PedalDisturbance disturbance) {
        Objects.requireNonNull(simulator, "simulator");
        Objects.requireNonNull(calm, "calm");
        Objects.requireNonNull(disturbance, "disturbance");
        Trace before = calm.profile().orElseThrow(() -> new IllegalArgumentException("the calm run has no profile"));
        EntryResult disturbed = simulator.run(calm.plan().with(disturbance), EntrySimulator.expected(before));
        Trace after = disturbed.profile().orElseThrow();
        Sampled calmRun = new Sampled(before);
        Sampled shakenRun = new Sampled(after);
        double from = calm.plan().brakePoint();
        double to = calm.plan().release().end();
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        double lost = 0;
        double off = 0;
        Column stations = before.column("s_m");
        double last = after.column("s_m").at(after.rows() - 1);
        for (int i = 0; i < stations.size() && stations.at(i) <= last; i++) {
            double s = stations.at(i);
            off = Math.max(off, Math.abs(shakenRun.offset(s) - calmRun.offset(s)));
            if (s >= from && s <= to) {
                double change = shakenRun.frontLoad(s) - calmRun.frontLoad(s);
                highest = Math.max(highest, change);
                lowest = Math.min(lowest, change);
            }
            if (s >= Math.max(from, 0) && s <= to) {
                double had = calmRun.frontCapacity(s);
                lost = had > 0 ? Math.max(lost, 1 - shakenRun.frontCapacity(s) / had) : lost;
            }
        }
        double ripple = highest > lowest ? (highest - lowest) / 2 : 0;
        double late = calm.made() && disturbed.made() ? disturbed.time() - calm.time() : Double.NaN;
        return new Smoothness(calm, disturbed, ripple, lost, off, late);
    }

    /** Columns of a run read between its rows. */
    private static final class Sampled {

        private final Column station;
        private final Column offset;
        private final Column frontLeft;
        private final Column frontRight;
        private final Column beside;

        Sampled(Trace trace) {
            this.station = trace.column("s_m");
            this.offset = trace.column("offset_m");
            this.frontLeft = trace.column("front_left_load_n");
            this.frontRight = trace.column("front_right_load_n");
            this.beside = trace.column("front_beside_brake_n");
        }

        double offset(double s) {
            return at(offset, s);
        }

        double frontLoad(double s) {
            return at(frontLeft, s) + at(frontRight, s);
        }

        /** Most lateral force, N, that braking leaves the front wheels. */
        double frontCapacity(double s) {
            return at(beside, s);
        }

        private double at(Column column, double s) {
            return column.at(station, s);
        }
    }
}
