package org.foreload.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;

/**
 * Two runs over the same road. Gaps are times of the first less times of the second at the same place, from the start
 * of the road that both have driven: positive where the first is slower.
 */
public final class Comparison {

    private final Run first;
    private final Run second;
    private final Alignment alignment;
    private final double start;
    private final double end;
    private final double coverage;
    private final List<CornerGap> corners = new ArrayList<>();

    private Comparison(Run first, List<RecordedCorner> one, Run second, List<RecordedCorner> other) {
        this.first = first;
        this.second = second;
        this.alignment = Alignment.of(first, one, second, other);
        this.start = Math.max(alignment.placeOfFirst(first.first()), alignment.placeOfSecond(second.first()));
        this.end = Math.min(alignment.placeOfFirst(first.last()), alignment.placeOfSecond(second.last()));
        this.coverage = Math.min(first.cleaning().coverage(), second.cleaning().coverage());
        if (!(end > start)) {
            throw new InvalidValueException("runs", end - start, "over a road of which both have driven a part");
        }
        split(one, other);
    }

    /**
     * Compares.
     *
     * @param first a run
     * @param firstCorners its corners
     * @param second the reference
     * @param secondCorners its corners
     * @throws InvalidValueException if they have no corner in common, or more apart than in common on the road compared
     */
    public static Comparison of(
            Run first, List<RecordedCorner> firstCorners, Run second, List<RecordedCorner> secondCorners) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(firstCorners, "firstCorners");
        Objects.requireNonNull(second, "second");
        Objects.requireNonNull(secondCorners, "secondCorners");
        return new Comparison(first, firstCorners, second, secondCorners);
    }

    private void split(List<RecordedCorner> one, List<RecordedCorner> other) {
        List<int[]> pairs = alignment.pairs();
        long mine = one.stream()
                .filter(corner -> shared(alignment.placeOfFirst(middle(corner))))
                .count();
        long theirs = other.stream()
                .filter(corner -> shared(alignment.placeOfSecond(middle(corner))))
                .count();
        // On one road a kink may count as a corner for one of them; on two roads a bend may happen to be like another.
        if (!pairs.isEmpty() && mine + theirs - 2L * pairs.size() > pairs.size()) {
            throw new InvalidValueException(
                    "corners",
                    mine + " and " + theirs + " on the road compared, " + pairs.size() + " in common",
                    "of one road, with more corners in common than apart");
        }
        for (int[] pair : pairs) {
            RecordedCorner a = one.get(pair[0]);
            RecordedCorner b = other.get(pair[1]);
            double from = boundary(one, pair[0], other, pair[1]);
            double to = Math.max(from, boundary(one, pair[0] + 1, other, pair[1] + 1));
            double turnIn = within(from, mean(a, b, Measure.TURN_IN), to);
            double apex = within(turnIn, mean(a, b, Measure.APEX), to);
            corners.add(new CornerGap(
                    corners.size() + 1,
                    between(from, to),
                    between(from, turnIn),
                    between(turnIn, apex),
                    between(apex, to),
                    a,
                    b));
        }
    }

    private static double middle(RecordedCorner corner) {
        return (corner.bend().start() + corner.bend().end()) / 2;
    }

    private boolean shared(double place) {
        return place >= start && place <= end;
    }

    /**
     * Where two corners begin: halfway between the end of the bends before and the earlier of the two brake points. A
     * corner that only one of the runs has counts as well, so that its time is not charged to a neighbour.
     */
    private double boundary(List<RecordedCorner> one, int mine, List<RecordedCorner> other, int theirs) {
        double bent = start;
        if (mine > 0) {
            bent = Math.max(
                    bent, alignment.placeOfFirst(one.get(mine - 1).bend().end()));
        }
        if (theirs > 0) {
            bent = Math.max(
                    bent, alignment.placeOfSecond(other.get(theirs - 1).bend().end()));
        }
        double braked = end;
        if (mine < one.size()) {
            braked = Math.min(braked, alignment.placeOfFirst(begins(one.get(mine))));
        }
        if (theirs < other.size()) {
            braked = Math.min(braked, alignment.placeOfSecond(begins(other.get(theirs))));
        }
        if (bent == start || braked == end) {
            return bent == start ? start : end;
        }
        return within(start, (bent + braked) / 2, end);
    }

    private static double begins(RecordedCorner corner) {
        double turnIn = corner.get(Measure.TURN_IN).value();
        return corner.braked() ? Math.min(turnIn, corner.get(Measure.BRAKE_ON).value()) : turnIn;
    }

    private double mean(RecordedCorner a, RecordedCorner b, Measure measure) {
        return (alignment.placeOfFirst(a.get(measure).value())
                        + alignment.placeOfSecond(b.get(measure).value()))
                / 2;
    }

    private static double within(double low, double value, double high) {
        return Math.max(low, Math.min(high, value));
    }

    /**
     * What is gained or lost between two places, with an interval. An error of distance makes one of time in proportion
     * to the slowness there; at places close to each other, and driven in the same direction, the errors are nearly the
     * same, and only the difference of the slownesses counts.
     */
    private Estimate between(double from, double to) {
        double gap = gapAt(to) - gapAt(from);
        double a = slowness(from);
        double b = slowness(to);
        double alike = Math.exp(-Math.abs(to - from) / alignment.basis().memory()) * Math.cos(turned(from, to));
        double variance = a * a + b * b - 2 * alike * a * b;
        return Estimate.normal(gap, Math.hypot(CLOCK, alignment.error() * Math.sqrt(variance)), coverage);
    }

    /** What the clocks and the lines between samples add, s, one standard deviation; measured on simulated pairs. */
    private static final double CLOCK = 0.002;

    /** Mean of the two runs' times for a metre at a place, s/m. */
    private double slowness(double place) {
        return (1 / Math.max(1, first.speedAt(alignment.first(place)))
                        + 1 / Math.max(1, second.speedAt(alignment.second(place))))
                / 2;
    }

    /** Angle through which the course turns between two places, rad. */
    private double turned(double from, double to) {
        int steps = (int) Math.ceil(Math.abs(to - from) / TURNING_STEP);
        double angle = 0;
        for (int i = 0; i < steps; i++) {
            double place = from + (i + 0.5) * (to - from) / steps;
            angle += (first.curvatureAt(alignment.first(place)) + second.curvatureAt(alignment.second(place))) / 2;
        }
        return steps == 0 ? 0 : angle * (to - from) / steps;
    }

    private static final double TURNING_STEP = 5;

    /** Gap so far at a place of the common axis, s. */
    public double gapAt(double place) {
        double mine = first.timeAt(alignment.first(place)) - first.timeAt(alignment.first(start));
        double theirs = second.timeAt(alignment.second(place)) - second.timeAt(alignment.second(start));
        return mine - theirs;
    }

    /** The gap over the whole road that both have driven, s. */
    public Estimate gap() {
        return between(start, end);
    }

    /** First place of the common axis, m. */
    public double start() {
        return start;
    }

    /** Last place of the common axis, m. */
    public double end() {
        return end;
    }

    /** How the axes lie on each other. */
    public Alignment alignment() {
        return alignment;
    }

    /**
     * What is gained or lost where only one of the runs has a corner, s: the whole gap less those of the corners that
     * both have.
     */
    public double elsewhere() {
        return gap().value()
                - corners.stream().mapToDouble(corner -> corner.gap().value()).sum();
    }

    /** Each corner that both have; their gaps and {@link #elsewhere} sum to the whole. */
    public List<CornerGap> corners() {
        return List.copyOf(corners);
    }

    /**
     * The gap over distance: columns {@code s_m} (station of the second run), {@code gap_s}, and the speeds of both,
     * {@code first_mps} and {@code second_mps}.
     *
     * @param step between rows, m, above zero
     */
    public Trace curve(double step) {
        Checks.positive("step_m", step);
        Trace.Builder rows = new Trace.Builder()
                .column("s_m", "m")
                .column("gap_s", "s")
                .column("first_mps", "m/s")
                .column("second_mps", "m/s");
        int steps = (int) Math.ceil((end - start) / step);
        for (int i = 0; i <= steps; i++) {
            double place = i == steps ? end : start + i * step;
            rows.row(
                    alignment.second(place),
                    gapAt(place),
                    first.speedAt(alignment.first(place)),
                    second.speedAt(alignment.second(place)));
        }
        return rows.build();
    }
}
