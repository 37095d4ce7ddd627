package org.foreload.line;

import java.util.Arrays;
import org.foreload.collocation.PointValues;
import org.foreload.collocation.StageEquations;

/**
 * The line whose greatest curvature is smallest, as a problem of optimal control over the road's station: states are
 * offset, direction and curvature of the line, and the greatest curvature, which is the same everywhere; the control is
 * the change of curvature. Where a weight is above one, curvature counts as so much more.
 */
final class RoundestLine implements StageEquations {

    /** A place on the road: its curvature, where the line may be, and how much curvature counts. */
    record Place(double curvature, double lowestOffset, double highestOffset, double weight) {}

    static final int OFFSET = 0;
    static final int DIRECTION = 1;
    static final int CURVATURE = 2;
    static final int GREATEST = 3;
    static final int CHANGE = 4;
    static final int ALL = 5;

    /** Units in which the unknowns are counted: m, rad, 1/m, 1/m, 1/m². */
    static final double[] SCALE = {1, 0.1, 0.01, 0.01, 0.001};

    private static final double MOST_DIRECTION = 1.4;

    /** The road's normals must not cross before the line: least of 1 − n·κ. */
    private static final double LEAST_STRETCH = 0.05;

    /**
     * Price of changing the curvature by 0.001 1/m in a metre, squared: the line bends in over some ten metres, as a
     * driver's hands need.
     */
    private static final double CHANGE_PRICE = 5e-3;

    /**
     * Price of a curvature of 0.01 1/m, squared: before and after the bend the line is no more bent than it must be.
     */
    private static final double BEND_PRICE = 1e-3;

    private final Place[] places;
    private final double length;

    /** @param length of the road, m */
    RoundestLine(Place[] places, double length) {
        this.places = places.clone();
        this.length = length;
    }

    @Override
    public int states() {
        return CHANGE;
    }

    @Override
    public int controls() {
        return 1;
    }

    @Override
    public int bounds() {
        return 7;
    }

    @Override
    public boolean atOnce(int state) {
        return false;
    }

    @Override
    public void values(int point, double[] unknowns, PointValues into) {
        Place place = places[point];
        int at = point * ALL;
        double n = unknowns[at + OFFSET] * SCALE[OFFSET];
        double chi = unknowns[at + DIRECTION] * SCALE[DIRECTION];
        double k = unknowns[at + CURVATURE] * SCALE[CURVATURE];
        double greatest = unknowns[at + GREATEST];
        double change = unknowns[at + CHANGE];
        double along = 1 - n * place.curvature();
        into.rate()[OFFSET] = Math.tan(chi) * along / SCALE[OFFSET];
        into.rate()[DIRECTION] = (k * along / Math.cos(chi) - place.curvature()) / SCALE[DIRECTION];
        into.rate()[CURVATURE] = change * SCALE[CHANGE] / SCALE[CURVATURE];
        into.rate()[GREATEST] = 0;
        double own = unknowns[at + CURVATURE];
        into.cost(greatest / length + CHANGE_PRICE * change * change + BEND_PRICE * own * own);
        double[] room = into.room();
        double weighed = place.weight() * unknowns[at + CURVATURE];
        room[0] = greatest - weighed;
        room[1] = greatest + weighed;
        room[2] = n - place.lowestOffset();
        room[3] = place.highestOffset() - n;
        room[4] = along - LEAST_STRETCH;
        room[5] = chi + MOST_DIRECTION;
        room[6] = MOST_DIRECTION - chi;
    }

    @Override
    public void derivatives(
            int point,
            double[] unknowns,
            double costWeight,
            double[] rateWeights,
            double[] roomWeights,
            PointValues into) {
        values(point, unknowns, into);
        Place place = places[point];
        int at = point * ALL;
        double n = unknowns[at + OFFSET] * SCALE[OFFSET];
        double chi = unknowns[at + DIRECTION] * SCALE[DIRECTION];
        double k = unknowns[at + CURVATURE] * SCALE[CURVATURE];
        double bend = place.curvature();
        double along = 1 - n * bend;
        double tan = Math.tan(chi);
        double inverse = 1 / Math.cos(chi);
        double[] slope = into.rateSlope();
        Arrays.fill(slope, 0);
        set(slope, OFFSET, OFFSET, -bend * tan);
        set(slope, OFFSET, DIRECTION, inverse * inverse * along);
        set(slope, DIRECTION, OFFSET, -bend * k * inverse);
        set(slope, DIRECTION, DIRECTION, k * along * tan * inverse);
        set(slope, DIRECTION, CURVATURE, along * inverse);
        set(slope, CURVATURE, CHANGE, 1);
        Arrays.fill(into.costSlope(), 0);
        into.costSlope()[GREATEST] = 1 / length;
        into.costSlope()[CURVATURE] = 2 * BEND_PRICE * unknowns[at + CURVATURE];
        into.costSlope()[CHANGE] = 2 * CHANGE_PRICE * unknowns[at + CHANGE];
        double[] room = into.roomSlope();
        Arrays.fill(room, 0);
        room[CURVATURE] = -place.weight();
        room[GREATEST] = 1;
        room[ALL + CURVATURE] = place.weight();
        room[ALL + GREATEST] = 1;
        room[2 * ALL + OFFSET] = SCALE[OFFSET];
        room[3 * ALL + OFFSET] = -SCALE[OFFSET];
        room[4 * ALL + OFFSET] = -bend * SCALE[OFFSET];
        room[5 * ALL + DIRECTION] = SCALE[DIRECTION];
        room[6 * ALL + DIRECTION] = -SCALE[DIRECTION];
        double[] curvature = into.curvature();
        Arrays.fill(curvature, 0);
        double byOffset = rateWeights[OFFSET] / SCALE[OFFSET];
        double byDirection = rateWeights[DIRECTION] / SCALE[DIRECTION];
        add(curvature, OFFSET, DIRECTION, -bend * (byOffset * inverse * inverse + byDirection * k * tan * inverse));
        add(curvature, OFFSET, CURVATURE, -bend * byDirection * inverse);
        add(curvature, DIRECTION, CURVATURE, byDirection * along * tan * inverse);
        add(
                curvature,
                DIRECTION,
                DIRECTION,
                along * (byOffset * 2 * tan * inverse * inverse + byDirection * k * inverse * (1 + 2 * tan * tan)));
        curvature[CURVATURE * ALL + CURVATURE] += costWeight * 2 * BEND_PRICE;
        curvature[CHANGE * ALL + CHANGE] += costWeight * 2 * CHANGE_PRICE;
    }

    private static void set(double[] slope, int row, int column, double value) {
        slope[row * ALL + column] = value * SCALE[column] / SCALE[row];
    }

    private static void add(double[] curvature, int i, int j, double value) {
        curvature[i * ALL + j] += value * SCALE[i] * SCALE[j];
        if (i != j) {
            curvature[j * ALL + i] += value * SCALE[i] * SCALE[j];
        }
    }
}
