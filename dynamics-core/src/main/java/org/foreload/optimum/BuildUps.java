package org.foreload.optimum;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.foreload.path.Path;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.StraightLine;

/**
 * How slowly the foot may come down. On a straight a quick foot is best. Where the line still bends at the brake point,
 * as one that crosses the road before a corner does, a brake that comes on at once meets tyres that are cornering: its
 * peak must stay low, and low it stays all the way to the corner. A foot that comes down while the line straightens
 * brakes harder in the end.
 */
final class BuildUps {

    /** Longer build-ups that are worth a try, s: each close enough to the next that the one between gains little. */
    private static final double[] LONGER = {0.5, 0.7, 0.95, 1.3};

    /** How long before and after the ideal brake point the line is looked at, s. */
    private static final double AROUND = 0.6;

    /** Places looked at on each side. */
    private static final int PLACES = 20;

    private BuildUps() {}

    /** Build-ups, s, longer than the quickest, that are worth a try; none where the line is straight. */
    static List<Double> slower(CornerStudy study, double quickest) {
        OptionalDouble point = study.bound().brakePoint();
        if (point.isEmpty() || !bendsAround(study, point.getAsDouble())) {
            return List.of();
        }
        return DoubleStream.of(LONGER).filter(time -> time > quickest).boxed().toList();
    }

    private static boolean bendsAround(CornerStudy study, double point) {
        Path path = study.simulator().corner().path();
        double speed = study.bound().topSpeed();
        for (int i = -PLACES; i <= PLACES; i++) {
            double station = Math.max(path.start(), point + AROUND * speed * i / PLACES);
            boolean beforeTheCorner = point >= 0 || station < 0;
            if (beforeTheCorner && Math.abs(path.curvature(station)) * speed * speed > StraightLine.STRAIGHT) {
                return true;
            }
        }
        return false;
    }
}
