package org.foreload.examples.recording;

import java.util.List;
import org.foreload.recording.Cleaning;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Run;

/**
 * One lap, cleaned and measured.
 *
 * @param number as the file counts
 * @param run the lap on its distance axis
 * @param corners in driving order
 */
public record MeasuredLap(long number, Run run, List<RecordedCorner> corners) {

    /** Copies the list. */
    public MeasuredLap {
        corners = List.copyOf(corners);
    }

    /**
     * Cleans and measures; a lap that does not show its course has no corner.
     *
     * @throws org.foreload.conventions.InvalidValueException if the lap cannot be used
     */
    public static MeasuredLap of(RecordedFile.Lap lap, Cleaning cleaning) {
        Run run = Run.ofSpeed(lap.recording(), cleaning);
        return new MeasuredLap(lap.number(), run, RecordedCorners.of(run));
    }
}
