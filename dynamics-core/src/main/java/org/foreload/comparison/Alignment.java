package org.foreload.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.foreload.conventions.InvalidValueException;
import org.foreload.conventions.Rising;
import org.foreload.recording.Bend;
import org.foreload.recording.Channel;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;

/**
 * The distance axes of two runs laid on each other. The common axis is the mean of the two at every place: a place at
 * {@code c} is at {@code c − d/2} on the first and at {@code c + d/2} on the second, where {@code d} runs in straight
 * lines from one common bend to the next.
 */
public final class Alignment {

    /** Stations at which curvature is compared, m, and how far to either side of a bend. */
    private static final double STEP = 1;

    private static final double MARGIN = 30;

    /** Largest shift from what the ends of the bends say that is looked at, m. */
    static final double SEARCH = 25;

    /** Shift, m, to which the search narrows down. */
    private static final double FINE = 1e-4;

    /** Angles of one bend in two runs agree within this share: courses differ, roads do not. */
    private static final double SAME_ANGLE = 0.35;

    private final double[] places;
    private final double[] shifts;
    private final Basis basis;
    private final double error;
    private final List<int[]> pairs;

    Alignment(double[] places, double[] shifts, Basis basis, double error, List<int[]> pairs) {
        this.error = error;
        this.places = places;
        this.shifts = shifts;
        this.basis = basis;
        this.pairs = pairs;
    }

    /** What the axes are laid on each other by. */
    public enum Basis {
        /** Positions of both runs. */
        POSITION(1.4, 10_000),
        /** Curvature of the bends that both have. */
        CURVATURE(0.6, 300),
        /** The shape of speed around the slow places that both have. */
        SPEED(3.5, 300);

        private final double error;
        private final double memory;

        Basis(double error, double memory) {
            this.error = error;
            this.memory = memory;
        }

        /**
         * Standard deviation of the shift at a place, m. By position it is the wander of two satellite receivers of a
         * metre each (common practice, no source); by curvature it is how far the courses of two drivers through one
         * bend lie apart, by speed how far apart two drivers of one road are at their slowest (measured on simulated
         * pairs).
         */
        public double error() {
            return error;
        }

        /** Distance, m, over which an error forgets itself: receivers wander over minutes, each bend errs alone. */
        double memory() {
            return memory;
        }
    }

    /**
     * Lays two runs on each other by the bends they have in common; by the shape of speed, and without any corner,
     * where either run does not know its course.
     *
     * @param first a run
     * @param firstCorners its corners
     * @param second another
     * @param secondCorners its corners
     * @throws InvalidValueException if they have no bend, or no slow place, in common
     */
    public static Alignment of(
            Run first, List<RecordedCorner> firstCorners, Run second, List<RecordedCorner> secondCorners) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(firstCorners, "firstCorners");
        Objects.requireNonNull(second, "second");
        Objects.requireNonNull(secondCorners, "secondCorners");
        if (!first.knowsCourse() || !second.knowsCourse()) {
            return SpeedAlignment.of(first, second);
        }
        List<Bend> a = firstCorners.stream().map(RecordedCorner::bend).toList();
        List<Bend> b = secondCorners.stream().map(RecordedCorner::bend).toList();
        List<int[]> pairs = pairs(a, b);
        if (pairs.isEmpty()) {
            throw new InvalidValueException(
                    "corners",
                    a.size() + " and " + b.size() + ", none in common",
                    "of one road, with a corner in common");
        }
        double[] places = new double[pairs.size()];
        double[] shifts = new double[pairs.size()];
        double noise = 0;
        for (int i = 0; i < places.length; i++) {
            Bend one = a.get(pairs.get(i)[0]);
            Bend other = b.get(pairs.get(i)[1]);
            double middle = (one.start() + one.end() + other.start() + other.end()) / 4;
            double half = (one.end() - one.start() + other.end() - other.start()) / 4;
            places[i] = middle;
            shifts[i] = shift(first, second, middle, half, (other.start() + other.end() - one.start() - one.end()) / 2);
            noise += variance(first, second, middle, half, shifts[i]) / places.length;
        }
        double error = Math.hypot(Basis.CURVATURE.error(), Math.sqrt(noise));
        Alignment bent = new Alignment(places, calmed(places, shifts, Basis.CURVATURE), Basis.CURVATURE, error, pairs);
        // Bends measured by accelerations or yaw rate are found to decimetres, which a satellite position is not.
        boolean placed = onlyPlaced(first) && onlyPlaced(second);
        return placed ? PositionAlignment.of(bent, first, second) : bent;
    }

    /**
     * A sensor's scale makes the axes drift apart in proportion to distance, so the shifts lie on a straight line but
     * for the error of each; they are drawn to their best line, the more so the better they lie on it.
     */
    static double[] calmed(double[] places, double[] shifts, Basis basis) {
        int n = places.length;
        if (n < 3) {
            return shifts;
        }
        double mean = Arrays.stream(places).sum() / n;
        double level = Arrays.stream(shifts).sum() / n;
        double spread = 0;
        double rise = 0;
        for (int i = 0; i < n; i++) {
            spread += (places[i] - mean) * (places[i] - mean);
            rise += (places[i] - mean) * shifts[i];
        }
        double slope = rise / spread;
        double square = 0;
        for (int i = 0; i < n; i++) {
            double left = shifts[i] - level - slope * (places[i] - mean);
            square += left * left / (n - 2);
        }
        double error = basis.error();
        double kept = square / (square + error * error);
        double[] calm = new double[n];
        for (int i = 0; i < n; i++) {
            double line = level + slope * (places[i] - mean);
            calm[i] = line + kept * (shifts[i] - line);
        }
        return calm;
    }

    private static boolean onlyPlaced(Run run) {
        return run.recording().hasPosition()
                && !run.recording().has(Channel.LATERAL)
                && !run.recording().has(Channel.YAW_RATE);
    }

    /**
     * Bends of each run from which the common ones are looked for: more than most roads have, and no endless search.
     */
    private static final int MOST_TRIED = 60;

    /** Bends that are the same: those of the shift under which most agree. */
    private static List<int[]> pairs(List<Bend> a, List<Bend> b) {
        return a.stream()
                .limit(MOST_TRIED)
                .flatMap(one -> b.stream()
                        .limit(MOST_TRIED)
                        .filter(other -> alike(one, other))
                        .map(other -> (other.start() + other.end() - one.start() - one.end()) / 2))
                .map(shift -> pairs(a, b, shift))
                .max(Comparator.comparingInt((List<int[]> found) -> found.size())
                        .thenComparingDouble(found -> -mismatch(a, b, found)))
                .orElse(List.of());
    }

    private static List<int[]> pairs(List<Bend> a, List<Bend> b, double shift) {
        List<int[]> found = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < a.size(); i++) {
            for (int k = from; k < b.size(); k++) {
                Bend one = a.get(i);
                Bend other = b.get(k);
                boolean meets = one.start() + shift < other.end() && other.start() < one.end() + shift;
                if (meets && alike(one, other)) {
                    found.add(new int[] {i, k});
                    from = k + 1;
                    break;
                }
            }
        }
        return found;
    }

    private static boolean alike(Bend one, Bend other) {
        double greater = Math.max(one.angle(), other.angle());
        return one.left() == other.left() && Math.abs(one.angle() - other.angle()) <= SAME_ANGLE * greater;
    }

    private static double mismatch(List<Bend> a, List<Bend> b, List<int[]> pairs) {
        double sum = 0;
        for (int[] pair : pairs) {
            sum += Math.abs(a.get(pair[0]).angle() - b.get(pair[1]).angle());
        }
        return sum;
    }

    /** The shift at which the curvatures of the two agree best around a bend, m. */
    private static double shift(Run first, Run second, double middle, double half, double guess) {
        double best = guess;
        double reach = SEARCH;
        double least = misfit(first, second, middle, half, guess);
        for (double step = reach / 8; step > FINE; step /= 4) {
            double centre = best;
            for (int k = 1; k <= 8; k++) {
                // Both ways at once, so that exchanging the runs looks at the same places.
                double up = misfit(first, second, middle, half, centre + k * step);
                double down = misfit(first, second, middle, half, centre - k * step);
                if (Math.min(up, down) < least) {
                    least = Math.min(up, down);
                    best = up == down ? centre : up < down ? centre + k * step : centre - k * step;
                }
            }
        }
        return best;
    }

    /**
     * Variance of a shift, m²: what is left between the courses of curvature, over the square of their slopes; the
     * filter makes neighbours err together, so that only one place in its width counts.
     */
    private static double variance(Run first, Run second, double middle, double half, double shift) {
        double left = 0;
        double slopes = 0;
        int steps = (int) Math.ceil((half + MARGIN) / STEP);
        for (int i = -steps; i <= steps; i++) {
            double a = middle + i * STEP - shift / 2;
            double b = middle + i * STEP + shift / 2;
            double difference = first.curvatureAt(a) - second.curvatureAt(b);
            double rise = (first.curvatureAt(a + SLOPE)
                            - first.curvatureAt(a - SLOPE)
                            + (second.curvatureAt(b + SLOPE) - second.curvatureAt(b - SLOPE)))
                    / (4 * SLOPE);
            left += difference * difference / (2 * steps + 1);
            slopes += rise * rise;
        }
        double width = Math.max(together(first, middle - shift / 2), together(second, middle + shift / 2));
        return slopes > 0 ? left * width / STEP / slopes : 0;
    }

    /** Half the distance over which a slope of curvature is taken, m: about that of the filters. */
    private static final double SLOPE = 8;

    /**
     * Distance, m, within which samples err together: the filter's width, or one sample where these are farther apart.
     */
    private static double together(Run run, double station) {
        return run.speedAt(station) * Math.max(2 * run.cleaning().halfWidth(), 1 / run.rate());
    }

    private static double misfit(Run first, Run second, double middle, double half, double shift) {
        double sum = 0;
        int count = 0;
        int steps = (int) Math.ceil((half + MARGIN) / STEP);
        for (int i = -steps; i <= steps; i++) {
            double a = middle + i * STEP - shift / 2;
            double b = middle + i * STEP + shift / 2;
            boolean inside = a >= first.first() && a <= first.last() && b >= second.first() && b <= second.last();
            if (inside) {
                double left = first.curvatureAt(a) - second.curvatureAt(b);
                sum += left * left;
                count++;
            }
        }
        return count > 0 ? sum / count : Double.POSITIVE_INFINITY;
    }

    /** Pairs of indices of corners that are the same in both runs. */
    List<int[]> pairs() {
        return pairs;
    }

    /** Standard deviation of the shift at a place, m. */
    public double error() {
        return error;
    }

    /** What the axes were laid on each other by. */
    public Basis basis() {
        return basis;
    }

    /** How much farther the second's axis counts at a place of the common one, m. */
    public double shiftAt(double place) {
        int n = places.length;
        if (n == 1) {
            return Double.isNaN(place) ? place : shifts[0];
        }
        if (place < places[0] || place > places[n - 1]) {
            // Beyond the outer bends the axes go on drifting apart as they do between those.
            double slope = (shifts[n - 1] - shifts[0]) / (places[n - 1] - places[0]);
            int end = place < places[0] ? 0 : n - 1;
            return shifts[end] + slope * (place - places[end]);
        }
        return Rising.straight(places, shifts, place);
    }

    /** Station on the first run of a place on the common axis, m. */
    public double first(double place) {
        return place - shiftAt(place) / 2;
    }

    /** Station on the second run, m. */
    public double second(double place) {
        return place + shiftAt(place) / 2;
    }

    /** Place on the common axis of a station of the first run, m. */
    public double placeOfFirst(double station) {
        return place(station, -0.5);
    }

    /** Place on the common axis of a station of the second run, m. */
    public double placeOfSecond(double station) {
        return place(station, 0.5);
    }

    /** Rounds in which a place is found; the shift changes by parts in a hundred, so each gains two digits. */
    private static final int ROUNDS = 20;

    private double place(double station, double share) {
        double place = station;
        for (int i = 0; i < ROUNDS; i++) {
            place = station - share * shiftAt(place);
        }
        return place;
    }
}
