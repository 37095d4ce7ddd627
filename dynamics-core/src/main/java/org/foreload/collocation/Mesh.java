package org.foreload.collocation;

/**
 * Intervals of a line and the points in them.
 *
 * @param collocation how the points lie in an interval
 * @param lengths of the intervals, m
 */
record Mesh(Collocation collocation, double[] lengths) {

    int intervals() {
        return lengths.length;
    }

    int points() {
        return lengths.length * collocation.points();
    }

    int perInterval() {
        return collocation.points();
    }

    /** Weight of a point in an integral over the line, m. */
    double weight(int point) {
        int each = collocation.points();
        return lengths[point / each] * collocation.weight(point % each);
    }
}
