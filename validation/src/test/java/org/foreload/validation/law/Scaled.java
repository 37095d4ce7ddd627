package org.foreload.validation.law;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/**
 * The same world with lengths λ times as long and masses m times as large. Gravity stays, so times grow by √λ, speeds
 * by √λ, forces by m, and every angle, share and acceleration is as before (dimensional analysis).
 */
final class Scaled {

    private Scaled() {}

    static Car car(Car car, double length, double mass) {
        Chassis c = car.chassis();
        Suspension s = car.suspension();
        Aerodynamics a = car.aerodynamics();
        double time = Math.sqrt(length);
        // Force over speed squared: mass over length.
        double area = mass / length;
        return new Car(
                car.name(),
                new Chassis(
                        c.mass() * mass,
                        c.wheelbase() * length,
                        c.cgToFrontAxle() * length,
                        c.cgHeight() * length,
                        c.yawInertia() * mass * length * length,
                        c.frontTrack() * length,
                        c.rearTrack() * length),
                new Suspension(
                        s.frontRollStiffnessShare(),
                        s.frontRollCenterHeight() * length,
                        s.rearRollCenterHeight() * length,
                        new Response(s.pitch().frequency() / time, s.pitch().dampingRatio()),
                        new Response(s.roll().frequency() / time, s.roll().dampingRatio())),
                new Aerodynamics(
                        a.dragArea() * area,
                        a.frontDownforceArea() * area,
                        a.rearDownforceArea() * area,
                        a.airDensity(),
                        a.dragHeight() * length),
                car.frontBrakeShare(),
                new Driveline(
                        car.driveline().power() * mass * time, car.driveline().drivenAxle()),
                tyre(car.frontTyre(), length, mass),
                tyre(car.rearTyre(), length, mass));
    }

    private static Tyre tyre(Tyre tyre, double length, double mass) {
        FrictionTyre t = (FrictionTyre) tyre;
        return new FrictionTyre(
                t.curve(),
                t.frictionX(),
                t.frictionY(),
                t.loadSensitivity(),
                t.referenceLoad() * mass,
                t.relaxationLength() * length,
                t.corneringStiffnessPerLoad(),
                t.slipStiffnessPerLoad());
    }

    static Corner corner(Corner corner, double length) {
        SegmentPath path = (SegmentPath) corner.path();
        List<Segment> segments = path.segments().stream()
                .map(segment -> segment(segment, length))
                .toList();
        double bends = path.segments().stream().mapToDouble(Segment::length).sum();
        SegmentPath larger = SegmentPath.of(
                -path.start() * length, segments, (path.end() - bends) * length, path.widthLeft(0) * length);
        return new Corner(corner.name(), corner.approachSpeed() * Math.sqrt(length), larger);
    }

    private static Segment segment(Segment segment, double length) {
        if (segment instanceof Segment.Straight straight) {
            return new Segment.Straight(straight.length() * length);
        }
        if (segment instanceof Segment.Arc arc) {
            return new Segment.Arc(arc.length() * length, arc.radius() * length, arc.turn());
        }
        Segment.Spiral spiral = (Segment.Spiral) segment;
        return new Segment.Spiral(
                spiral.length() * length, spiral.startRadius() * length, spiral.endRadius() * length, spiral.turn());
    }

    static BrakePlan plan(BrakePlan plan, double length) {
        Release r = plan.release();
        return Braking.of(
                        plan.peakDeceleration(),
                        plan.buildUpTime() * Math.sqrt(length),
                        new Release(r.shape(), r.start() * length, r.end() * length))
                .from(plan.brakePoint() * length);
    }
}
