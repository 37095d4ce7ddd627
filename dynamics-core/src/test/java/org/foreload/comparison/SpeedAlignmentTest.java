package org.foreload.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.junit.jupiter.api.Test;

/**
 * Runs that know nothing but time and speed, of drivers who brake as they please and leave two slow places of one road
 * on one curve of speed: v² = 20² + 2·4·(s − 300), which is how a car of 4 m/s² leaves a corner of 20 m/s at 300 m.
 */
class SpeedAlignmentTest {

    private static final Cleaning QUICK = Cleaning.STANDARD.withoutResamples();

    private static final double[] PLACES = {300, 900};

    private static final double LENGTH = 1300;

    private static final double ROUND_OFF = 1e-9;

    /** How a driver slows: lowest speed, how long it is held, deceleration. */
    private record Manner(double least, double held, double braking) {

        double speed(double s) {
            double v = 60;
            for (double place : PLACES) {
                double left = place + (least * least - 400) / 8;
                double square = s >= left
                        ? 400 + 8 * (s - place)
                        : s >= left - held ? least * least : least * least + 2 * braking * (left - held - s);
                v = Math.min(v, Math.sqrt(square));
            }
            return v;
        }

        /** Rows at 50 Hz, the first at a station, by a sensor whose scale is off. */
        Run run(double first, double scale) {
            List<double[]> rows = new ArrayList<>();
            double s = first;
            double t = 0;
            while (s < LENGTH) {
                rows.add(new double[] {t, scale * speed(s)});
                for (int k = 0; k < 20; k++) {
                    s += 0.001 * speed(s);
                }
                t += 0.02;
            }
            double[] time = rows.stream().mapToDouble(row -> row[0]).toArray();
            double[] speed = rows.stream().mapToDouble(row -> row[1]).toArray();
            return Run.ofSpeed(Recording.of(Map.of(Channel.TIME, time, Channel.SPEED, speed)), QUICK);
        }
    }

    @Provide
    Arbitrary<Manner> manners() {
        return Combinators.combine(
                        Arbitraries.doubles().between(20, 25),
                        Arbitraries.doubles().between(0, 60),
                        Arbitraries.doubles().between(6, 10))
                .as(Manner::new);
    }

    private static Alignment aligned(Run first, Run second) {
        return Alignment.of(first, List.of(), second, List.of());
    }

    /** A run that begins 40 m later, by a sensor that reads half a per cent too much, is where it truly is. */
    @Property(tries = 40)
    void placesAreThoseOfTheRoad(@ForAll("manners") Manner one, @ForAll("manners") Manner other) {
        Run first = one.run(0, 1);
        Run second = other.run(40, 1.005);
        Alignment alignment = aligned(first, second);
        assertEquals(Alignment.Basis.SPEED, alignment.basis());
        for (double place = 100; place < 1200; place += 100) {
            double road = alignment.first(place);
            double truth = 1.005 * (road - 40);
            assertEquals(truth, alignment.second(place), 1.645 * alignment.error());
        }
    }

    @Property(tries = 40)
    void aRunHasNoGapToItself(@ForAll("manners") Manner manner) {
        Run run = manner.run(0, 1);
        Comparison comparison = Comparison.of(run, List.of(), run, List.of());
        assertEquals(0, comparison.gap().value(), ROUND_OFF);
        assertEquals(List.of(), comparison.corners());
    }

    @Property(tries = 40)
    void exchangingTheTwoTurnsTheSign(@ForAll("manners") Manner one, @ForAll("manners") Manner other) {
        Run first = one.run(0, 1);
        Run second = other.run(20, 0.998);
        Comparison there = Comparison.of(first, List.of(), second, List.of());
        Comparison back = Comparison.of(second, List.of(), first, List.of());
        assertEquals(-there.gap().value(), back.gap().value(), ROUND_OFF);
        assertEquals(-there.gap().high(), back.gap().low(), ROUND_OFF);
    }

    @Test
    void runsWithoutASlowPlaceAreRefused() {
        double[] time = new double[500];
        double[] speed = new double[500];
        for (int i = 0; i < time.length; i++) {
            time[i] = 0.02 * i;
            speed[i] = 40;
        }
        Run run = Run.ofSpeed(Recording.of(Map.of(Channel.TIME, time, Channel.SPEED, speed)), QUICK);
        InvalidValueException e = assertThrows(InvalidValueException.class, () -> aligned(run, run));
        assertEquals("slow_places", e.field());
    }
}
