package org.foreload.recording;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What the holes of the recording leave of one corner. A measure of the brake that lies in one, or next to it, is lost;
 * a place of the course, or a speed, can lie anywhere in the hole, and its interval says so.
 */
final class Beside {

    /** Time in which a foot comes down at most, s; common practice, no source. */
    private static final double FOOT_DOWN = 0.3;

    /**
     * A line fitted over a bridge leads past its end: by this share of it at most. A straight rise that is taken for
     * half a cosine is followed back by a fifth.
     */
    private static final double LED_PAST = 0.25;

    private final Run run;
    private final Bend bend;
    private final Map<Measure, Estimate> measures;
    private final List<Recording.Hole> holes;
    private final double hardest;
    private final boolean released;

    /**
     * Takes out what is lost, and widens what is not.
     *
     * @param run of the corner
     * @param bend the corner
     * @param measures of it, changed
     * @param holes of the run
     * @param hardest combined acceleration that counts as the hardest the driver works the car, m/s²
     */
    Beside(Run run, Bend bend, Map<Measure, Estimate> measures, List<Recording.Hole> holes, double hardest) {
        this.run = run;
        this.bend = bend;
        this.measures = measures;
        this.holes = holes;
        this.hardest = hardest;
        this.released = holes.isEmpty() || !pedals();
        if (!holes.isEmpty()) {
            course();
            speeds();
        }
    }

    /**
     * Which rows lie farther than a window's half width from every gap between known values that is as long.
     *
     * @param values NaN where they are not known
     */
    static boolean[] gaps(double[] time, double[] values, double half) {
        boolean[] beside = new boolean[time.length];
        Arrays.fill(beside, true);
        int before = -1;
        for (int behind = 0; behind < time.length; behind++) {
            if (Double.isNaN(values[behind])) {
                beside[behind] = false;
                continue;
            }
            if (before >= 0 && time[behind] - time[before] > half) {
                for (int i = before; i >= 0 && time[before] - time[i] < half; i--) {
                    beside[i] = false;
                }
                for (int i = behind; i < time.length && time[i] - time[behind] < half; i++) {
                    beside[i] = false;
                }
            }
            before = behind;
        }
        return beside;
    }

    /** Whether the release lies beside all holes. */
    boolean released() {
        return released;
    }

    private double at(Measure measure) {
        return measures.get(measure).value();
    }

    private void lose(Measure... lost) {
        for (Measure measure : lost) {
            measures.put(measure, Estimate.NONE);
        }
    }

    private void widen(Measure measure, double low, double high) {
        measures.computeIfPresent(measure, (key, estimate) -> estimate.reaching(low, high));
    }

    /** Channels that show what this one does, or would do: itself with the axis, or what stands in for it. */
    private Set<Channel> shownBy(Channel channel) {
        Recording recording = run.recording();
        Set<Channel> shown = EnumSet.of(recording.axis());
        boolean turning = channel == Channel.LATERAL;
        boolean there = recording.has(channel);
        if (there) {
            shown.add(channel);
        } else if (turning && recording.has(Channel.YAW_RATE)) {
            shown.add(Channel.YAW_RATE);
        } else if (turning || !recording.has(Channel.SPEED)) {
            shown.addAll(EnumSet.of(Channel.X, Channel.Y));
        }
        // Curvature is made with speed, and braking of it where there is no pedal.
        if (turning || !there) {
            shown.add(Channel.SPEED);
        }
        return shown;
    }

    /** Holes in what a channel shows, in or next to a stretch; none where that is NaN. */
    private List<Recording.Hole> over(Channel channel, double from, double to) {
        Set<Channel> made = shownBy(channel);
        return holes.stream()
                .filter(hole -> !Collections.disjoint(made, hole.channels()))
                .filter(hole -> {
                    double past = run.cleaning().halfWidth() + LED_PAST * hole.lasts();
                    return run.stationAt(run.timeAt(hole.from()) - past) <= to
                            && run.stationAt(run.timeAt(hole.to()) + past) >= from;
                })
                .toList();
    }

    /** Whether the release is lost. */
    private boolean pedals() {
        // A run that begins under braking shows no brake point, one that ends under it no release.
        double on = Math.min(reaches(Measure.BRAKE_ON), reaches(Measure.FIRST_EASE));
        double off = Math.min(reaches(Measure.RELEASE_END), run.last());
        if (!(on < off)) {
            return false;
        }
        double down = run.stationAt(run.timeAt(on) + FOOT_DOWN);
        boolean lost = !over(Channel.BRAKE, at(Measure.FIRST_EASE), off).isEmpty();
        over(Channel.THROTTLE, off, at(Measure.PICK_UP))
                .forEach(hole -> widen(Measure.PICK_UP, hole.from(), hole.to()));
        boolean seen = over(Channel.LONGITUDINAL, on, off).isEmpty();
        if (!seen) {
            widen(Measure.PEAK_DECELERATION, at(Measure.PEAK_DECELERATION), hardest);
        }
        if (!over(Channel.BRAKE, on, off).isEmpty()) {
            lose(Measure.REAPPLICATIONS, Measure.RIPPLE);
        }
        if (!over(Channel.BRAKE, on, down).isEmpty()) {
            lose(Measure.BRAKE_ON, Measure.TRAIL_SHARE);
        }
        if (lost) {
            lose(Measure.FIRST_EASE, Measure.RELEASE_END, Measure.SHAPE_ERROR, Measure.PICK_UP);
            lose(Measure.TRAIL_LENGTH, Measure.TRAIL_TIME);
        }
        if (lost && !seen && !measures.get(Measure.BRAKE_ON).known()) {
            lose(Measure.PEAK_DECELERATION);
        }
        return lost;
    }

    private void course() {
        double turnIn = at(Measure.TURN_IN);
        for (Recording.Hole hole : over(Channel.LATERAL, turnIn, Bend.steep(run, bend))) {
            widen(Measure.TURN_IN, hole.from(), hole.to());
            lose(Measure.TRAIL_LENGTH, Measure.TRAIL_TIME, Measure.TRAIL_SHARE);
        }
        for (Recording.Hole hole : over(Channel.LATERAL, turnIn, bend.end())) {
            widen(Measure.APEX, hole.from(), hole.to());
            lose(Measure.COMBINED_USE);
        }
        if (!over(Channel.LONGITUDINAL, turnIn, at(Measure.APEX)).isEmpty()) {
            lose(Measure.COMBINED_USE);
        }
    }

    /** In a hole the car may have been as slow as by braking its hardest for one half and gaining in the other. */
    private void speeds() {
        Estimate turnIn = measures.get(Measure.TURN_IN);
        double one = run.speedAt(turnIn.low());
        double other = run.speedAt(turnIn.high());
        if (!over(Channel.LATERAL, turnIn.value(), Bend.steep(run, bend)).isEmpty()) {
            widen(Measure.TURN_IN_SPEED, Math.min(one, other), Math.max(one, other));
        }
        for (Recording.Hole hole : over(Channel.SPEED, turnIn.low(), turnIn.high())) {
            double before = run.speedAt(hole.from());
            double behind = run.speedAt(hole.to());
            widen(Measure.TURN_IN_SPEED, Math.min(before, behind), Math.max(before, behind));
        }
        double first = Math.min(turnIn.value(), Math.min(at(Measure.SLOWEST), reaches(Measure.BRAKE_ON)));
        for (Recording.Hole hole : over(Channel.SPEED, first, bend.end())) {
            double slowest = (run.speedAt(hole.from()) + run.speedAt(hole.to()) - hardest * hole.lasts()) / 2;
            if (slowest < at(Measure.MINIMUM_SPEED)) {
                widen(Measure.MINIMUM_SPEED, Math.max(0, slowest), at(Measure.MINIMUM_SPEED));
                widen(Measure.SLOWEST, hole.from(), hole.to());
                lose(Measure.TRAIL_SHARE);
            }
        }
    }

    private double reaches(Measure measure) {
        return measures.get(measure).known() ? at(measure) : Double.POSITIVE_INFINITY;
    }
}
