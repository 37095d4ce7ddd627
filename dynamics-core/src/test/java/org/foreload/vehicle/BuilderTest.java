package org.foreload.vehicle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.StringWriter;
import java.net.URI;
import java.util.List;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Step by step comes out what the constructor makes; what is out of place does not compile. */
class BuilderTest {

    private static final Response PITCH = new Response(1.4, 0.35);

    private static final Response ROLL = new Response(1.6, 0.45);

    /** No two numbers alike, so that two which are swapped show. */
    private static Chassis chassis() {
        return Chassis.builder()
                .massKg(1150)
                .wheelbaseM(2.5)
                .cgToFrontAxleM(1.15)
                .cgHeightM(0.48)
                .yawInertiaKgM2(1600)
                .frontTrackM(1.47)
                .rearTrackM(1.49);
    }

    private static Suspension suspension() {
        return Suspension.builder()
                .frontRollStiffnessShare(0.58)
                .frontRollCenterHeightM(0.03)
                .rearRollCenterHeightM(0.08)
                .pitch(PITCH)
                .roll(ROLL);
    }

    private static Aerodynamics aerodynamics() {
        return Aerodynamics.builder()
                .dragAreaM2(0.62)
                .frontDownforceAreaM2(0.2)
                .rearDownforceAreaM2(0.3)
                .airDensityKgM3(1.2)
                .dragHeightM(0.5);
    }

    private static FrictionTyre tyre(double frictionY) {
        return FrictionTyre.builder()
                .curve(new SlipCurve.Brush())
                .peakFrictionX(1.1)
                .peakFrictionY(frictionY)
                .loadSensitivity(0.08)
                .referenceLoadN(2800)
                .relaxationLengthM(0.4)
                .corneringStiffnessPerRad(15)
                .slipStiffness(18);
    }

    @Test
    void aCarIsWhatItsConstructorsMake() {
        Car car = Car.builder()
                .named("my car")
                .chassis(chassis())
                .suspension(suspension())
                .aerodynamics(aerodynamics())
                .frontBrakeShare(0.74)
                .driveline(new Driveline(120_000, Driveline.DrivenAxle.REAR))
                .frontTyre(tyre(1.05))
                .rearTyre(tyre(1.15));
        assertEquals(
                new Car(
                        "my car",
                        new Chassis(1150, 2.5, 1.15, 0.48, 1600, 1.47, 1.49),
                        new Suspension(0.58, 0.03, 0.08, PITCH, ROLL),
                        new Aerodynamics(0.62, 0.2, 0.3, 1.2, 0.5),
                        0.74,
                        new Driveline(120_000, Driveline.DrivenAxle.REAR),
                        new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.05, 0.08, 2800, 0.4, 15, 18),
                        new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.15, 0.08, 2800, 0.4, 15, 18)),
                car);
    }

    /** Lengths of arcs and spirals by their angles: φR, and φ over the mean curvature. */
    @Test
    void aCornerIsWhatItsConstructorsMake() {
        Corner corner = Corner.draw("my corner")
                .approachSpeedMps(42)
                .approachLengthM(220)
                .halfWidthM(5)
                .exitLengthM(150)
                .segments(
                        Segment.spiral(Turn.LEFT).fromStraight().toRadiusM(45).lengthM(25),
                        Segment.arc(Turn.LEFT).radiusM(45).angleDeg(64),
                        Segment.spiral(Turn.LEFT).fromRadiusM(45).toRadiusM(90).angleDeg(20),
                        Segment.spiral(Turn.LEFT).fromRadiusM(90).toStraight().lengthM(30));
        SegmentPath path = SegmentPath.of(
                220,
                List.of(
                        Segment.spiralIn(25, 45, Turn.LEFT),
                        Segment.arc(Math.toRadians(64) * 45, 45, Turn.LEFT),
                        Segment.spiralBetween(Math.toRadians(20) * 60, 45, 90, Turn.LEFT),
                        Segment.spiralOut(30, 90, Turn.LEFT)),
                150,
                5);
        assertEquals("my corner", corner.name());
        assertEquals(42, corner.approachSpeed());
        assertEquals(path.start(), corner.path().start());
        assertEquals(path.end(), corner.path().end(), 1e-9);
        for (double s = path.start(); s <= path.end(); s += 5) {
            assertEquals(path.curvature(s), corner.path().curvature(s), 1e-9);
            assertEquals(5, corner.path().widthLeft(s));
        }
    }

    @Test
    void aNumberThatNoCarHasIsRefusedByItsName() {
        InvalidValueException refused = assertThrows(
                InvalidValueException.class,
                () -> Chassis.builder()
                        .massKg(1150)
                        .wheelbaseM(2.5)
                        .cgToFrontAxleM(2.6)
                        .cgHeightM(0.48)
                        .yawInertiaKgM2(1600)
                        .frontTrackM(1.48)
                        .rearTrackM(1.48));
        assertEquals("cg_to_front_axle_m", refused.field());
        refused = assertThrows(
                InvalidValueException.class,
                () -> Segment.arc(Turn.LEFT).radiusM(20).angleDeg(Double.NaN));
        assertEquals("angle_deg", refused.field());
    }

    /** The compiler's messages about one expression; empty if it takes it. */
    private static String messages(String expression, File directory) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        JavaFileObject source =
                new SimpleJavaFileObject(URI.create("string:///Outside.java"), JavaFileObject.Kind.SOURCE) {
                    @Override
                    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                        return "import org.foreload.vehicle.*; class Outside { Chassis chassis = " + expression + "; }";
                    }
                };
        StringWriter messages = new StringWriter();
        URI where = URI.create(Chassis.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toString());
        String classes = new File(where).getPath();
        compiler.getTask(
                        messages,
                        null,
                        null,
                        List.of("-proc:none", "-cp", classes, "-d", directory.toString()),
                        null,
                        List.of(source))
                .call();
        return messages.toString();
    }

    @Test
    void whatIsOutOfPlaceDoesNotCompile(@TempDir File directory) {
        String start = "Chassis.builder().massKg(1150).wheelbaseM(2.5).cgToFrontAxleM(1.15)";
        String end = ".yawInertiaKgM2(1600).frontTrackM(1.48).rearTrackM(1.48)";
        assertEquals("", messages(start + ".cgHeightM(0.48)" + end, directory));
        // A height in the place of a track, a number left out, and an end before all is given.
        assertTrue(messages(start + ".frontTrackM(0.48)" + end, directory).contains("cannot find symbol"));
        assertTrue(messages(start + end, directory).contains("cannot find symbol"));
        assertTrue(messages(start + ".cgHeightM(0.48)", directory).contains("incompatible types"));
    }
}
