package org.foreload.ideal;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;

/** Corners for tests. */
final class SampleCorners {

    private SampleCorners() {}

    /** A left turn through an angle in degrees: straight, spiral, arc, spiral, straight; lengths and radius in m. */
    static Corner left(
            double speed, double approach, double radius, double degrees, double in, double out, double exit) {
        return corner(speed, approach, radius, degrees, in, out, exit, Turn.LEFT);
    }

    static Corner corner(
            double speed,
            double approach,
            double radius,
            double degrees,
            double in,
            double out,
            double exit,
            Turn turn) {
        List<Segment> segments = new ArrayList<>();
        if (in > 0) {
            segments.add(Segment.spiralIn(in, radius, turn));
        }
        segments.add(Segment.arc(Math.toRadians(degrees) * radius - (in + out) / 2, radius, turn));
        if (out > 0) {
            segments.add(Segment.spiralOut(out, radius, turn));
        }
        return new Corner("sample", speed, SegmentPath.of(approach, segments, exit, 5));
    }

    /** Random corners, from hairpins to fast sweeps, flat or sloping. */
    static Arbitrary<Corner> possible() {
        Arbitrary<Double> speed = number(15, 45);
        Arbitrary<Double> approach = number(30, 250);
        Arbitrary<Double> radius = number(12, 150);
        Arbitrary<Double> degrees = number(30, 180);
        Arbitrary<Double> in = number(0, 0.9);
        Arbitrary<Double> out = number(0, 0.9);
        Arbitrary<Double> slope = number(-0.05, 0.05);
        Arbitrary<Double> bank = number(-0.05, 0.1);
        return Combinators.combine(speed, approach, radius, degrees, in, out, slope, bank)
                .as((v, straight, r, angle, entry, exit, grade, banking) -> {
                    double turned = Math.toRadians(angle) * r;
                    Corner flat = left(v, straight, r, angle, entry * turned, exit * turned, 60);
                    SegmentPath path = (SegmentPath) flat.path();
                    return new Corner("possible", v, path.withGrade(grade).withBanking(banking));
                });
    }

    private static Arbitrary<Double> number(double low, double high) {
        return Arbitraries.doubles().between(low, high).ofScale(4);
    }
}
