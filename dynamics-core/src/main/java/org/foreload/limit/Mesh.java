package org.foreload.limit;

import java.util.List;

/**
 * Intervals of a line and the points in them.
 *
 * @param collocation how the points lie in an interval
 * @param lengths of the intervals, m
 * @param points of all intervals, in order
 */
record Mesh(Collocation collocation, double[] lengths, List<MeshPoint> points) {

    int intervals() {
        return lengths.length;
    }

    int perInterval() {
        return collocation.points();
    }
}
