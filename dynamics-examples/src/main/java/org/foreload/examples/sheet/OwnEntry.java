package org.foreload.examples.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.file.InputException;
import org.foreload.path.Path;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;

/**
 * A driver's own entry into the corner of a sheet: one corner of a recorded lap, laid on the corner's axis where the
 * two courses of curvature agree best.
 *
 * @param file name of the recording
 * @param chosen the quickest lap, and all laps
 * @param index of the corner in that lap
 * @param turnIn station of the run that lies on the corner's turn-in, m
 * @param unlike root mean square difference of the curvatures over that of the corner's own: zero on the same line
 */
public record OwnEntry(String file, ChosenLap chosen, int index, double turnIn, double unlike) {

    /** Largest difference at which a recorded corner may be taken for the sheet's unless the user says which it is. */
    static final double LIKE = 0.5;

    /**
     * How well the two axes lie on each other, m, nine times in ten; measured on simulated runs whose turn-in is known.
     */
    static final double AXIS_ERROR = 1;

    /** Farthest from the measured turn-in that is looked at, m, in which steps, and the finest of them. */
    private static final double REACH = 25;

    private static final double FINE = 0.01;

    /** Distance between the stations that are compared, m, and how far before and behind the bend. */
    private static final double STEP = 1;

    private static final double MARGIN = 30;

    /** Curvature, as a share of the greatest, that still counts as bent. */
    private static final double BENT = 0.02;

    /**
     * The recorded corner that is most like a corner.
     *
     * @param file name of the recording, for errors
     * @param chosen its laps
     * @param path the sheet's corner
     * @param wanted number of the corner in the lap, if the user says which
     * @throws InputException if there is no such corner, or none that is like it
     */
    public static OwnEntry of(String file, ChosenLap chosen, Path path, OptionalInt wanted) {
        List<RecordedCorner> corners = chosen.lap().corners();
        if (wanted.isPresent() && !(wanted.getAsInt() >= 1 && wanted.getAsInt() <= corners.size())) {
            throw new InputException(
                    file,
                    "--recorded-corner",
                    String.valueOf(wanted.getAsInt()),
                    "must be a corner of the lap: 1 to " + corners.size());
        }
        OwnEntry best = null;
        for (int i = 0; i < corners.size(); i++) {
            boolean asked = wanted.isEmpty() || wanted.getAsInt() == i + 1;
            if (asked && corners.get(i).braked()) {
                OwnEntry one = laid(file, chosen, i, path);
                best = best == null || one.unlike < best.unlike ? one : best;
            }
        }
        if (best == null) {
            throw new InputException(
                    file,
                    "--recorded-corner",
                    wanted.isPresent() ? String.valueOf(wanted.getAsInt()) : null,
                    "the brake is used in no corner that could be taken");
        }
        if (wanted.isEmpty() && !(best.unlike <= LIKE)) {
            throw new InputException(
                    file,
                    "--recorded-corner",
                    null,
                    "must be given, 1 to " + corners.size() + ": no recorded corner is like the sheet's");
        }
        return best;
    }

    private static OwnEntry laid(String file, ChosenLap chosen, int index, Path path) {
        MeasuredLap lap = chosen.lap();
        double measured = lap.corners().get(index).get(Measure.TURN_IN).value();
        double last = lastBent(path);
        double best = measured;
        double least = unlike(lap.run(), path, last, best);
        for (double step = REACH / 8; step > FINE; step /= 4) {
            double centre = best;
            for (int k = -8; k <= 8; k++) {
                double misfit = unlike(lap.run(), path, last, centre + k * step);
                if (misfit < least) {
                    least = misfit;
                    best = centre + k * step;
                }
            }
        }
        return new OwnEntry(file, chosen, index, best, least);
    }

    private static double lastBent(Path path) {
        double most = 0;
        for (double s = path.start(); s <= path.end(); s += STEP) {
            most = Math.max(most, Math.abs(path.curvature(s)));
        }
        double last = 0;
        for (double s = 0; s <= path.end(); s += STEP) {
            last = Math.abs(path.curvature(s)) > BENT * most ? s : last;
        }
        return last;
    }

    private static double unlike(Run run, Path path, double last, double turnIn) {
        double left = 0;
        double whole = 0;
        for (double s = Math.max(path.start(), -MARGIN); s <= Math.min(path.end(), last + MARGIN); s += STEP) {
            double own = path.curvature(s);
            double difference = run.curvatureAt(turnIn + s) - own;
            left += difference * difference;
            whole += own * own;
        }
        return Math.sqrt(left / whole);
    }

    /** What was measured in the corner. */
    public RecordedCorner corner() {
        return chosen.lap().corners().get(index);
    }

    /** The lap. */
    public MeasuredLap lap() {
        return chosen.lap();
    }

    /** The same corner in every lap that has as many. */
    List<RecordedCorner> everyLap() {
        List<RecordedCorner> same = new ArrayList<>();
        for (MeasuredLap one : chosen.all()) {
            if (one.corners().size() == chosen.lap().corners().size()) {
                same.add(one.corners().get(index));
            }
        }
        return same;
    }

    /** First station on the corner's axis that belongs to this corner alone, m. */
    public double first() {
        double before = index == 0
                ? lap().run().first()
                : lap().corners().get(index - 1).bend().end();
        return before - turnIn;
    }

    /** Last such station, m. */
    public double last() {
        boolean end = index + 1 == lap().corners().size();
        double after =
                end ? lap().run().last() : lap().corners().get(index + 1).bend().start();
        return after - turnIn;
    }
}
