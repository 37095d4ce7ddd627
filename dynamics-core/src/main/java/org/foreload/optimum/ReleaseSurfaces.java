package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.foreload.study.LinearStep;
import org.foreload.study.ResponseSurface;
import org.foreload.study.ResponseSurface.Points;

/**
 * What entries that have been driven say of those that have not: smooth functions of the point for time, for each
 * limit, for the verdict and for each slip.
 */
final class ReleaseSurfaces {

    /** Smoothing of the surfaces, in cubed units of the space: limits have kinks. */
    private static final double SMOOTHING = 1e-3;

    /** Steps in search of the lowest point of the surfaces, at most. */
    private static final int STEPS = 25;

    /** Steps within the region begin at half of it, and end at this share of it. */
    private static final double SMALLEST_STEP = 0.02;

    /** Seconds; a step on the surfaces that gains less has arrived. */
    private static final double ARRIVED = 1e-6;

    /** The brake point may move so many times as far as the others: its slopes are the surest. */
    private static final double BRAKE_POINT_ROOM = 3;

    private final ReleaseSpace space;
    private final List<ResponseSurface> surfaces;

    private ReleaseSurfaces(ReleaseSpace space, List<ResponseSurface> surfaces) {
        this.space = space;
        this.surfaces = surfaces;
    }

    /**
     * Fits.
     *
     * @param known entries, of one space
     * @param centre near which the surfaces are asked
     * @param most so many entries, the nearest, make a surface
     * @return empty if too few of them make the corner, or all lie in one plane
     */
    static Optional<ReleaseSurfaces> through(ReleaseSpace space, List<EntryAtPoint> known, double[] centre, int most) {
        List<EntryAtPoint> near = known.stream()
                .sorted(Comparator.comparingDouble(one -> squareDistance(one.x(), centre)))
                .limit(most)
                .toList();
        List<EntryAtPoint> made = near.stream().filter(EntryAtPoint::made).toList();
        List<EntryAtPoint> asked =
                near.stream().filter(one -> one.slips().length > 0).toList();
        Optional<Points> ofNear = points(near);
        Optional<Points> ofMade = made.size() == near.size() ? ofNear : points(made);
        if (ofNear.isEmpty() || ofMade.isEmpty()) {
            return Optional.empty();
        }
        List<ResponseSurface> surfaces = new ArrayList<>();
        surfaces.add(surface(ofMade.get(), made, EntryAtPoint::values));
        surfaces.add(surface(ofNear.get(), near, one -> new double[] {one.verdict()}));
        byWhoSays(asked)
                .forEach((some, numbers) -> points(some)
                        .ifPresent(all -> surfaces.add(surface(
                                all,
                                some,
                                one -> Arrays.stream(numbers)
                                        .mapToDouble(j -> one.slips()[j])
                                        .toArray()))));
        return Optional.of(new ReleaseSurfaces(space, List.copyOf(surfaces)));
    }

    /** The numbers of slips by the entries that say something of them: one surface serves all that share theirs. */
    private static Map<List<EntryAtPoint>, int[]> byWhoSays(List<EntryAtPoint> asked) {
        Map<List<EntryAtPoint>, int[]> numbers = new LinkedHashMap<>();
        int slips = asked.isEmpty() ? 0 : asked.get(0).slips().length;
        for (int j = 0; j < slips; j++) {
            int number = j;
            List<EntryAtPoint> some = asked.stream()
                    .filter(one -> !Double.isNaN(one.slips()[number]))
                    .toList();
            numbers.merge(
                    some,
                    new int[] {j},
                    (a, b) ->
                            IntStream.concat(Arrays.stream(a), Arrays.stream(b)).toArray());
        }
        return numbers;
    }

    private static Optional<Points> points(List<EntryAtPoint> entries) {
        return ResponseSurface.at(entries.stream().map(EntryAtPoint::x).toList(), SMOOTHING);
    }

    private static ResponseSurface surface(
            Points points, List<EntryAtPoint> entries, Function<EntryAtPoint, double[]> values) {
        return points.through(entries.stream().map(values).toList());
    }

    /** What time and limits of entries that make the corner come to at a point. */
    double[] values(double[] x) {
        return surfaces.get(0).at(x);
    }

    /** What time, s, comes to at a point. */
    double time(double[] x) {
        return values(x)[0];
    }

    /** Time, s, with a price on what comes nearer to a limit than it should. */
    double cost(double[] x, double aim) {
        double[] values = at(x);
        double cost = values[0];
        for (int i = 1; i < values.length; i++) {
            cost += EntryAtPoint.PRICE * Math.max(0, values[i] + aim);
        }
        return cost;
    }

    private double[] at(double[] x) {
        return surfaces.stream()
                .flatMapToDouble(surface -> Arrays.stream(surface.at(x)))
                .toArray();
    }

    /**
     * The point of least cost within a region.
     *
     * @param centre of the region, and where the search begins
     * @param region half its width, in units of the space
     * @param aim how far within each limit it should be
     */
    double[] lowest(double[] centre, double region, double aim) {
        double[] x = centre;
        double cost = cost(x, aim);
        double longest = region / 2;
        for (int i = 0; i < STEPS && longest > SMALLEST_STEP * region; i++) {
            double[] next = step(x, centre, region, longest, aim);
            double there = cost(next, aim);
            if (there < cost - ARRIVED) {
                x = next;
                cost = there;
            } else {
                longest /= 2;
            }
        }
        return x;
    }

    /** One step by a linear programme; the point itself if none keeps the limits, even as they are. */
    private double[] step(double[] x, double[] centre, double region, double longest, double aim) {
        int size = x.length;
        double[] values = at(x);
        double[] cost = new double[size];
        double[][] slopes = new double[values.length - 1][size];
        int first = 0;
        for (ResponseSurface surface : surfaces) {
            double[][] here = surface.slopesAt(x);
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < here[i].length; j++) {
                    if (first + j == 0) {
                        cost[i] = here[i][j];
                    } else {
                        slopes[first + j - 1][i] = here[i][j];
                    }
                }
            }
            first += surface.functions();
        }
        double[] limits = new double[slopes.length];
        double[] eased = new double[slopes.length];
        for (int j = 0; j < limits.length; j++) {
            limits[j] = values[j + 1] + aim;
            eased[j] = Math.min(0, limits[j]);
        }
        double[] least = new double[size];
        double[] most = new double[size];
        for (int i = 0; i < size; i++) {
            least[i] = Math.min(0, Math.max(lowest(i, centre, region) - x[i], -longest * room(i)));
            most[i] = Math.max(0, Math.min(highest(i, centre, region) - x[i], longest * room(i)));
        }
        double[] step = LinearStep.of(cost, limits, slopes, least, most)
                .or(() -> LinearStep.of(cost, eased, slopes, least, most))
                .orElseGet(() -> new double[size]);
        for (int i = 0; i < size; i++) {
            step[i] += x[i];
        }
        return step;
    }

    private double lowest(int variable, double[] centre, double region) {
        return Math.max(space.low()[variable], centre[variable] - region * room(variable));
    }

    private double highest(int variable, double[] centre, double region) {
        return Math.min(space.high()[variable], centre[variable] + region * room(variable));
    }

    /** How far a variable may go in a region of one. */
    static double room(int variable) {
        return variable == ReleaseSpace.SHIFT ? BRAKE_POINT_ROOM : 1;
    }

    /** Square of the distance of two points, in units of the space and in those of the brake point's room. */
    static double squareDistance(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            double along = (a[i] - b[i]) / room(i);
            sum += along * along;
        }
        return sum;
    }
}
