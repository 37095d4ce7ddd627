package org.foreload.examples.recording;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.foreload.advice.AdviceSettings;
import org.foreload.advice.Adviser;
import org.foreload.advice.CornerAdvice;
import org.foreload.advice.DriverScatter;
import org.foreload.advice.Habit;
import org.foreload.conventions.InvalidValueException;
import org.foreload.envelope.EnvelopeSettings;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GgDiagram;
import org.foreload.recording.RecordedCorner;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * What a driver could do otherwise, corner by corner.
 *
 * @param limits that all laps of the file show; empty where they are too short for that, or where nobody asked
 * @param corners advice for each corner of the lap, in driving order; as many as there are corners
 */
public record LapAdvice(Optional<FrictionEnvelope> limits, List<CornerAdvice> corners) {

    /** Why there is no advice where nobody asked for it. */
    public static final String NOT_ASKED = "it was not asked for";

    /** Copies the list. */
    public LapAdvice {
        corners = List.copyOf(corners);
    }

    /** No advice at all, and why. */
    public static LapAdvice none(ChosenLap chosen, String why) {
        return new LapAdvice(
                Optional.empty(),
                chosen.lap().corners().stream()
                        .map(corner -> new CornerAdvice(
                                corner.bend().number(),
                                DriverScatter.PRACTISED,
                                Optional.empty(),
                                List.of(),
                                Optional.of(why)))
                        .toList());
    }

    /**
     * Advice for the quickest lap of a file: limits and scatter are those of all its laps. Where these are too short to
     * show limits, those of the car count, if it is known.
     *
     * @param car the car, where it is known
     * @param sweep on how many threads
     */
    public static LapAdvice of(ChosenLap chosen, Optional<Car> car, Sweep sweep) {
        MeasuredLap lap = chosen.lap();
        Optional<FrictionEnvelope> shown;
        FrictionEnvelope limits;
        try {
            limits = FrictionEnvelope.of(
                    chosen.all().stream().map(MeasuredLap::run).toList(), EnvelopeSettings.STANDARD, sweep.threads());
            shown = Optional.of(limits);
        } catch (InvalidValueException e) {
            if (car.isEmpty()) {
                return none(chosen, tooShort(e));
            }
            limits = limits(car.get(), lap);
            shown = Optional.empty();
        }
        return of(chosen, limits, shown, car, sweep);
    }

    private static String tooShort(InvalidValueException moments) {
        return "the laps do not show the limits of the car: it is worked in " + moments.value()
                + " moments, where it takes " + moments.allowed() + "; with --car its friction is known";
    }

    private static LapAdvice of(
            ChosenLap chosen,
            FrictionEnvelope limits,
            Optional<FrictionEnvelope> shown,
            Optional<Car> car,
            Sweep sweep) {
        MeasuredLap lap = chosen.lap();
        Adviser adviser = new Adviser(lap.run(), lap.corners(), limits, car, AdviceSettings.STANDARD);
        List<Habit> habits = IntStream.range(0, lap.corners().size())
                .mapToObj(i -> habit(chosen, i, limits))
                .toList();
        return new LapAdvice(shown, adviser.all(habits, sweep));
    }

    /** Limits of a car whose friction is known, at the speeds of a lap: those of steady braking and cornering. */
    private static FrictionEnvelope limits(Car car, MeasuredLap lap) {
        double[] speeds = lap.run().resampled(1).column("speed_mps").values();
        double slow = Arrays.stream(speeds).min().orElseThrow();
        double fast = Arrays.stream(speeds).max().orElseThrow();
        return FrictionEnvelope.known(
                slow,
                Math.max(slow + 1, fast),
                v -> BrakingGrip.of(car, v).lateralAcceleration(0),
                v -> braking(car, v));
    }

    /** The hardest braking of its g-g diagram, m/s². */
    private static double braking(Car car, double speed) {
        List<GgDiagram.Point> rim = GgDiagram.of(car, speed, 2).boundary();
        return rim.get(rim.size() - 1).deceleration();
    }

    /**
     * What the driver does in a corner, over the laps that have the same corners. The wait is that of the lap for which
     * the advice is, or the median of all: who waits most often has nothing in hand even if not in this lap.
     */
    private static Habit habit(ChosenLap chosen, int corner, FrictionEnvelope limits) {
        int count = chosen.lap().corners().size();
        List<MeasuredLap> alike = chosen.all().stream()
                .filter(lap -> lap.corners().size() == count)
                .toList();
        List<RecordedCorner> laps =
                alike.stream().map(lap -> lap.corners().get(corner)).toList();
        double[] waits = alike.stream()
                .mapToDouble(lap -> Habit.waits(lap.run(), lap.corners().get(corner), limits))
                .sorted()
                .toArray();
        double median = waits.length == 0 ? 0 : waits[waits.length / 2];
        RecordedCorner did = chosen.lap().corners().get(corner);
        double waited = Habit.waits(chosen.lap().run(), did, limits);
        return new Habit(DriverScatter.of(did, laps), Math.max(median, waited));
    }
}
