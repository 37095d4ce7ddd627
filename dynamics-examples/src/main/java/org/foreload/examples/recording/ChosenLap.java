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
 * @param all laps in the order of the file; where only the quickest was asked for, without corners
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
        List<Task> every = new ArrayList<>();
        for (RecordedFile file : files) {
            for (RecordedFile.Lap lap : file.laps()) {
                every.add(new Task(file, lap, Cleaning.STANDARD.withoutResamples(), whole.contains(file)));
            }
        }
        List<MeasuredLap> measured = measured(every, sweep);
        List<List<MeasuredLap>> all = new ArrayList<>();
        List<Task> best = new ArrayList<>();
        int from = 0;
        for (RecordedFile file : files) {
            List<MeasuredLap> laps = measured.subList(from, from + file.laps().size());
            from += laps.size();
            all.add(laps);
            best.add(new Task(file, file.laps().get(quickest(laps)), Cleaning.STANDARD, true));
        }
        List<MeasuredLap> chosen = measured(best, sweep);
        List<ChosenLap> found = new ArrayList<>();
        for (int i = 0; i < chosen.size(); i++) {
            found.add(new ChosenLap(chosen.get(i), all.get(i)));
        }
        return found;
    }

    /** A lap to be measured. */
    private record Task(RecordedFile file, RecordedFile.Lap lap, Cleaning cleaning, boolean corners) {

        MeasuredLap measured() {
            try {
                return corners ? MeasuredLap.of(lap, cleaning) : MeasuredLap.cleaned(lap, cleaning);
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

    /** Index of the lap of the least time among those that are as long as the longest, but for a hundredth. */
    private static int quickest(List<MeasuredLap> laps) {
        double longest = laps.stream().mapToDouble(ChosenLap::length).max().orElse(0);
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < laps.size(); i++) {
            double time = time(laps.get(i));
            if (length(laps.get(i)) > WHOLE * longest && time < least) {
                least = time;
                best = i;
            }
        }
        return best;
    }

    private static double length(MeasuredLap lap) {
        return lap.run().last() - lap.run().first();
    }

    private static double time(MeasuredLap lap) {
        return lap.run().timeAt(lap.run().last()) - lap.run().timeAt(lap.run().first());
    }
}
