package org.foreload.path;

/**
 * Which piece of a line holds a station: the line is cut into cells of equal length, each of which knows the first
 * piece that reaches into it; from there it is a step or two, however many pieces there are. The simulator asks for a
 * handful of stations in each evaluation of its equations.
 */
final class StationIndex {

    /** Cells for each piece: pieces of about equal length then need no step half of the time. */
    private static final int CELLS_PER_PIECE = 2;

    /** Least number of cells: few pieces are often of very unequal length. */
    private static final int LEAST_CELLS = 128;

    private final double[] station;
    private final double start;
    private final double cellsPerMetre;
    private final int[] first;

    /** @param station two or more strictly rising stations that bound the pieces, m; kept, not copied */
    StationIndex(double[] station) {
        this.station = station;
        start = station[0];
        int pieces = station.length - 1;
        int cells = Math.max(LEAST_CELLS, CELLS_PER_PIECE * pieces);
        cellsPerMetre = cells / (station[pieces] - start);
        first = new int[cells + 1];
        int piece = 0;
        for (int i = 1; i < pieces; i++) {
            int cell = cell(station[i]);
            while (piece <= cell) {
                first[piece++] = i - 1;
            }
        }
        while (piece <= cells) {
            first[piece++] = pieces - 1;
        }
    }

    private int cell(double s) {
        return (int) ((s - start) * cellsPerMetre);
    }

    /** The piece that holds station {@code s}, which lies on the line; at a boundary, the later one. */
    int piece(double s) {
        int piece = first[cell(s)];
        while (piece + 2 < station.length && s >= station[piece + 1]) {
            piece++;
        }
        return piece;
    }
}
