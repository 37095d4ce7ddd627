package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.foreload.recording.Cleaning;
import org.foreload.study.Sweep;

/**
 * The quickest whole lap of a file, measured with intervals, and all its laps without.
 *
 * @param lap the quickest
 * @param all laps in the order of the file; only the quickest where nothing else was asked for
 */
public record ChosenLap(MeasuredLap lap, List<MeasuredLap> all) {

    /** A lap shorter than this share of the longest is no whole lap: out of the pits, or cut off. */
    private static final double WHOLE = 0.98;

    /** Copies the list. */
    public ChosenLap {
        all = List.copyOf(all);
    }

    /**
     * The quickest laps of some files, and all laps of the first: how its driver scatters is read from those.
     *
     * @param sweep on how many threads
     * @throws InputException if a lap cannot be used; it names file and lap
     */
    public static List<ChosenLap> of(List<RecordedFile> files, Sweep sweep) {
        return of(files, files.subList(0, 1), sweep);
    }

    /**
     * The quickest laps of some files, and no more.
     *
     * @param sweep on how many threads
     * @throws InputException if a lap cannot be used; it names file and lap
     */
    public static List<ChosenLap> quickest(List<RecordedFile> files, Sweep sweep) {
        return of(files, List.of(), sweep);
    }

    private static List<ChosenLap> of(List<RecordedFile> files, List<RecordedFile> whole, Sweep sweep) {
        List<Task> tasks = new ArrayList<>();
        for (RecordedFile file : files) {
            List<LapPace> paces =
                    file.laps().stream().map(lap -> LapPace.of(lap.recording())).toList();
            tasks.add(new Task(file, file.laps().get(quickest(paces)), Cleaning.STANDARD));
        }
        for (RecordedFile file : whole) {
            for (RecordedFile.Lap lap : file.laps()) {
                tasks.add(new Task(file, lap, Cleaning.STANDARD.withoutResamples()));
            }
        }
        List<MeasuredLap> measured = measured(tasks, sweep);
        List<ChosenLap> found = new ArrayList<>();
        int from = files.size();
        for (int i = 0; i < files.size(); i++) {
            boolean all = whole.contains(files.get(i));
            int laps = all ? files.get(i).laps().size() : 0;
            MeasuredLap chosen = measured.get(i);
            found.add(new ChosenLap(chosen, all ? measured.subList(from, from + laps) : List.of(chosen)));
            from += laps;
        }
        return found;
    }

    /** A lap to be measured. */
    private record Task(RecordedFile file, RecordedFile.Lap lap, Cleaning cleaning) {

        MeasuredLap measured() {
            try {
                return MeasuredLap.of(lap, cleaning);
            } catch (InvalidValueException e) {
                throw InputException.of(file.name(), "lap " + lap.number() + ", " + e.field(), e);
            }
        }
    }

    private static List<MeasuredLap> measured(List<Task> tasks, Sweep sweep) {
        try {
            return sweep.run(tasks, Task::measured).stream()
                    .map(Optional::orElseThrow)
                    .toList();
        } catch (IllegalStateException e) {
            if (e.getCause() instanceof InputException wrong) {
                throw wrong;
            }
            throw e;
        }
    }

    /** Index of the lap of the least time among those that are nearly as long as the longest. */
    private static int quickest(List<LapPace> laps) {
        double longest = laps.stream().mapToDouble(LapPace::length).max().orElse(0);
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < laps.size(); i++) {
            if (laps.get(i).length() > WHOLE * longest && laps.get(i).time() < least) {
                least = laps.get(i).time();
                best = i;
            }
        }
        return best;
    }
}
