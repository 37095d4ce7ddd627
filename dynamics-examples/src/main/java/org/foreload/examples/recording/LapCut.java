package org.foreload.examples.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;

/** Cuts laps that are in memory. */
final class LapCut {

    private LapCut() {}

    /** Refuses a lap that is not there. */
    static void check(String file, List<RecordedFile.Lap> laps, Cut cut) {
        if (laps.stream().noneMatch(lap -> cut.holdsLap(lap.number()))) {
            throw new InputException(
                    file,
                    "--lap",
                    String.valueOf(cut.lap().getAsLong()),
                    "no such lap; there are "
                            + String.join(
                                    ", ",
                                    laps.stream()
                                            .map(lap -> String.valueOf(lap.number()))
                                            .toList()));
        }
    }

    /** The rows of a lap whose stations are wanted. */
    static RecordedFile.Lap of(RecordedFile.Lap lap, Cut cut) {
        if (cut.from().isEmpty() && cut.to().isEmpty()) {
            return lap;
        }
        Recording whole = lap.recording();
        Run run = Run.ofSpeed(whole, Cleaning.STANDARD);
        double[] time = whole.has(Channel.TIME) ? whole.column(Channel.TIME) : whole.column(Channel.DISTANCE);
        double[] station = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            station[i] = whole.has(Channel.TIME) ? run.stationAt(time[i]) : time[i];
        }
        int first = 0;
        while (first < station.length && !cut.holds(station[first])) {
            first++;
        }
        int end = first;
        while (end < station.length && cut.holds(station[end])) {
            end++;
        }
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (whole.has(channel)) {
                columns.put(channel, java.util.Arrays.copyOfRange(whole.column(channel), first, end));
            }
        }
        try {
            Recording part = Recording.of(columns);
            return new RecordedFile.Lap(lap.number(), part.startingAt(station[first]));
        } catch (InvalidValueException e) {
            throw InputException.of(null, "--from, --to: " + e.field(), e);
        }
    }
}
