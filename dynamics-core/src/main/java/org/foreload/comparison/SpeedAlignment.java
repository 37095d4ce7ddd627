package org.foreload.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Run;

/**
 * Lays two runs on each other by the shape of speed: behind each slow place that both have, the median distance between
 * the places at which they pass the same speeds on the way out. Where a driver brakes and is slowest is a matter of
 * manner; out of a corner two drivers of like cars gain speed in nearly the same places.
 */
final class SpeedAlignment {

    /** Stations at which speed is looked at, m. */
    private static final double STEP = 2;

    /** Fall and rise of speed, as a share of the higher one, that make a place a slow one. */
    private static final double DIP = 0.15;

    /** How far the same slow place may lie apart, m, and by which share its speed may differ. */
    private static final double APART = 150;

    private static final double SAME_SPEED = 0.4;

    private SpeedAlignment() {}

    /** A place where speed has a clear minimum. */
    private record Slow(double station, double speed) {}

    /** Two of them that are one place of the road. */
    private record Pair(Slow first, Slow second) {

        double shift() {
            return second.station - first.station;
        }

        double middle() {
            return (first.station + second.station) / 2;
        }
    }

    static Alignment of(Run first, Run second) {
        List<Pair> pairs = pairs(slow(first), slow(second));
        if (pairs.isEmpty()) {
            throw new InvalidValueException(
                    "slow_places",
                    "none in common",
                    "of one road, with a place in common where both are at their slowest");
        }
        double[] places = new double[pairs.size()];
        double[] shifts = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            places[i] = pairs.get(i).middle();
            shifts[i] = shift(first, second, pairs.get(i));
        }
        Alignment.Basis basis = Alignment.Basis.SPEED;
        return new Alignment(places, line(places, shifts), basis, basis.error(), List.of());
    }

    /** How much longer one distance axis may be than the other, a plain number, one standard deviation. */
    private static final double STRETCH = 0.007;

    /**
     * The best straight line through the shifts: each of them is wrong by metres, while the axes of two sensors drift
     * apart steadily and by little, so that the slope is drawn to zero by what is known of it beforehand.
     */
    private static double[] line(double[] places, double[] shifts) {
        int n = places.length;
        double mean = Arrays.stream(places).sum() / n;
        double level = Arrays.stream(shifts).sum() / n;
        double spread = 0;
        double rise = 0;
        for (int i = 0; i < n; i++) {
            spread += (places[i] - mean) * (places[i] - mean);
            rise += (places[i] - mean) * (shifts[i] - level);
        }
        double error = Alignment.Basis.SPEED.error();
        double slope = rise / (spread + error * error / (STRETCH * STRETCH));
        double[] line = new double[n];
        for (int i = 0; i < n; i++) {
            line[i] = level + slope * (places[i] - mean);
        }
        return line;
    }

    /** The slow places of a run: minima from which speed rises clearly to either side before it falls below them. */
    private static List<Slow> slow(Run run) {
        List<Slow> found = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        double at = Double.NaN;
        double most = 0;
        for (double s = run.first(); s <= run.last(); s += STEP) {
            double v = run.speedAt(s);
            if (v < least) {
                least = v;
                at = s;
            }
            boolean fell = least < (1 - DIP) * most;
            if (fell && v > least / (1 - DIP)) {
                found.add(new Slow(at, least));
                most = v;
                least = v;
                at = s;
            } else if (v > most) {
                most = v;
                least = v;
                at = s;
            }
        }
        return found;
    }

    /** Under the shift under which most agree. */
    private static List<Pair> pairs(List<Slow> a, List<Slow> b) {
        return a.stream()
                .flatMap(one -> b.stream().filter(other -> same(one, other)).map(other -> new Pair(one, other)))
                .map(pair -> pairs(a, b, pair.shift()))
                .max(Comparator.comparingInt((List<Pair> found) -> found.size())
                        .thenComparingDouble(found -> -mismatch(found)))
                .orElse(List.of());
    }

    private static List<Pair> pairs(List<Slow> a, List<Slow> b, double shift) {
        List<Pair> found = new ArrayList<>();
        int from = 0;
        for (Slow one : a) {
            for (int k = from; k < b.size(); k++) {
                Slow other = b.get(k);
                if (same(one, other) && Math.abs(one.station + shift - other.station) < APART) {
                    found.add(new Pair(one, other));
                    from = k + 1;
                    break;
                }
            }
        }
        return found;
    }

    private static boolean same(Slow one, Slow other) {
        return Math.abs(one.speed - other.speed) < SAME_SPEED * Math.max(one.speed, other.speed);
    }

    private static double mismatch(List<Pair> pairs) {
        double mean = pairs.stream().mapToDouble(Pair::shift).average().orElse(0);
        return pairs.stream()
                .mapToDouble(pair -> (pair.shift() - mean) * (pair.shift() - mean))
                .sum();
    }

    /** Levels of speed at which the two are compared, an odd number, so that their median is one of them. */
    private static final int LEVELS = 15;

    /** Levels begin this much above the higher of the two lowest speeds, a share of it, where both gain speed. */
    private static final double CLEAR = 0.08;

    /** Levels go this far up towards what both reach, a share: farther on, engines and exits count more than places. */
    private static final double NEAR = 0.5;

    private static double shift(Run first, Run second, Pair pair) {
        double[] low = {pair.first.station, pair.second.station};
        double from = (1 + CLEAR) * Math.max(pair.first.speed, pair.second.speed);
        double most = Math.min(reached(first, low[0]), reached(second, low[1]));
        if (!(most > from)) {
            return pair.shift();
        }
        double[] apart = new double[LEVELS];
        for (int i = 0; i < LEVELS; i++) {
            double level = from + NEAR * (most - from) * (i + 0.5) / LEVELS;
            apart[i] = passes(second, low[1], level) - passes(first, low[0], level);
        }
        Arrays.sort(apart);
        return apart[LEVELS / 2];
    }

    /** Share by which speed must fall again for a stretch of gaining speed to be over. */
    private static final double OVER = 0.03;

    /** Speed that a run reaches behind a slow place before it slows again, m/s. */
    private static double reached(Run run, double from) {
        double most = 0;
        for (double s = from; s <= run.last() && run.speedAt(s) > (1 - OVER) * most; s += STEP) {
            most = Math.max(most, run.speedAt(s));
        }
        return most;
    }

    /** Station at which a run first has a speed behind a place, m. */
    private static double passes(Run run, double from, double level) {
        double s = from;
        while (s + STEP < run.last() && run.speedAt(s + STEP) < level) {
            s += STEP;
        }
        double below = run.speedAt(s);
        double above = run.speedAt(s + STEP);
        return above > below ? s + STEP * Math.max(0, Math.min(1, (level - below) / (above - below))) : s;
    }
}
