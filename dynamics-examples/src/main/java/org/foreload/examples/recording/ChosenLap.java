package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.foreload.recording.Cleaning;
import org.foreload.study.Sweep;

/**
 * The quickest whole lap of a file, measured with intervals, and its others without.
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
        return of(files, 1, sweep);
    }

    /**
     * The quickest laps of some files, and no more.
     *
     * @param sweep on how many threads
     * @throws InputException if a lap cannot be used; it names file and lap
     */
    public static List<ChosenLap> quickest(List<RecordedFile> files, Sweep sweep) {
        return of(files, 0, sweep);
    }

    /** Of as many files as are whole, from the first, all laps. */
    private static List<ChosenLap> of(List<RecordedFile> files, int whole, Sweep sweep) {
        List<Integer> best = files.stream().map(ChosenLap::quickest).toList();
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            tasks.add(new Task(files.get(i), best.get(i), Cleaning.STANDARD));
        }
        for (int i = 0; i < whole; i++) {
            for (int lap = 0; lap < files.get(i).laps().size(); lap++) {
                if (lap != best.get(i)) {
                    tasks.add(new Task(files.get(i), lap, Cleaning.STANDARD.withoutResamples()));
                }
            }
        }
        List<MeasuredLap> measured = measured(tasks, sweep);
        List<ChosenLap> found = new ArrayList<>();
        Iterator<MeasuredLap> others = measured.listIterator(files.size());
        for (int i = 0; i < files.size(); i++) {
            MeasuredLap chosen = measured.get(i);
            List<MeasuredLap> all = new ArrayList<>();
            for (int lap = 0; i < whole && lap < files.get(i).laps().size(); lap++) {
                all.add(lap == best.get(i) ? chosen : others.next());
            }
            found.add(new ChosenLap(chosen, i < whole ? all : List.of(chosen)));
        }
        return found;
    }

    /** A lap to be measured. */
    private record Task(RecordedFile file, int index, Cleaning cleaning) {

        MeasuredLap measured() {
            RecordedFile.Lap lap = file.laps().get(index);
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
    private static int quickest(RecordedFile file) {
        List<LapPace> laps =
                file.laps().stream().map(lap -> LapPace.of(lap.recording())).toList();
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
