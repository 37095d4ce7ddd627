package org.foreload.examples.program;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.balance.Balance;
import org.foreload.balance.BalanceRow;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.PedalDisturbance.Ripple;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.demo.Demos;
import org.foreload.grip.AxleUse;
import org.foreload.grip.BrakeDistribution;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GgDiagram;
import org.foreload.ideal.IdealProfile;
import org.foreload.pedal.LockingRamp;
import org.foreload.pedal.Smoothness;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreLaws;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** What the programs compute, against closed forms and other parts of the library. */
class ProgramsTest {

    private static final double G = 9.81;

    /** A search in steps of {@link GentleBrake#STEP} is no closer than one of them. */
    private static final double STEP = 1.01 * GentleBrake.STEP;

    /** The car of the closed form: one friction, no air, tracks so wide that no load moves sideways. */
    private static Car closedForm() {
        Tyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1.25, 1.25, 0, 3000, 0, 15, 15);
        return new Car(
                "closed form",
                new Chassis(1000, 2.6, 1.22, 0.47, 1500, 1e9, 1e9),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.66,
                new Driveline(1e5, Driveline.DrivenAxle.REAR),
                tyre,
                tyre);
    }

    @Test
    void bestDecelerationIsThatOfTheClosedForm() {
        Car car = closedForm();
        double expected = BrakingGrip.bestDecelerationClosedForm(1.25, 2.6, 1.22, 0.47, 0.66);
        assertEquals(expected, GentleBrake.bestDeceleration(car), STEP);
        double gain = GentleBrake.left(car, expected) / GentleBrake.left(car, 0) - 1;
        assertEquals(0.0643, gain, 5e-5);
    }

    /** Load brings μ·m·h/L for each m/s²; the brake asks β·m·d of μ times the front load; below d* less is taken. */
    @Test
    void loadBringsMoreThanTheBrakeTakesUpToTheClosedForm() {
        Car car = closedForm();
        double best = BrakingGrip.bestDecelerationClosedForm(1.25, 2.6, 1.22, 0.47, 0.66);
        assertEquals(1.25 * 1000 * 0.47 / 2.6, GentleBrake.brings(car, 2, 3), 1e-6);
        double load = 1000 * (G * (2.6 - 1.22) + 3 * 0.47) / 2.6;
        assertEquals(0.66 * 1000 * 3 / (1.25 * load), GentleBrake.asked(car, 3), 1e-4);
        assertTrue(GentleBrake.takes(car, best - 0.2, best - 0.1) < GentleBrake.brings(car, best - 0.2, best - 0.1));
        assertTrue(GentleBrake.takes(car, best + 0.1, best + 0.2) > GentleBrake.brings(car, best + 0.1, best + 0.2));
    }

    /**
     * With all of the brake in front, the front axle locks where d = μ·(g·b/L + d·h/L): its load as in UN Regulation
     * 13-H, Annex 5.
     */
    @Test
    void theInsideWheelLocksWhereTheAxleOfTheClosedFormDoes() {
        Car car = closedForm().withFrontBrakeShare(1);
        double expected = 1.25 * G * (2.6 - 1.22) / 2.6 / (1 - 1.25 * 0.47 / 2.6);
        assertEquals(expected, GentleBrake.insideLocks(car).orElseThrow(), 0.01);
        assertEquals(OptionalDouble.empty(), GentleBrake.insideLocks(closedForm()));
    }

    /** Front capacity by hand: load of each front wheel, load-sensitive friction, and the ellipse. */
    @Test
    void whatIsLeftIsTheEllipseOfEachWheel() {
        Car car = Demos.car("car", "road").value();
        double slowing = 2;
        double square = GentleBrake.SPEED * GentleBrake.SPEED;
        double air = 0.5 * 1.2 * square;
        double front = 1480 * (G * 1.56 + slowing * 0.53) / 2.62 - air * 0.05;
        double arm = 0.53 - (0.05 * 1.56 + 0.11 * 1.06) / 2.62;
        double across = 1480 * GentleBrake.LATERAL * (0.62 * arm + 1.56 / 2.62 * 0.05) / 1.54;
        double brake = 0.82 * (1480 * slowing - air * 0.66) / 2;
        double left = 0;
        for (double load : new double[] {front / 2 - across, front / 2 + across}) {
            double loss = 1 - 0.1 * (load / 3600 - 1);
            left += 0.97 * loss * load * Math.sqrt(1 - Math.pow(brake / (1.02 * loss * load), 2));
        }
        assertEquals(left, GentleBrake.left(car, slowing), 1e-6 * left);
    }

    @Test
    void aCarWithOneNumberHasACircle() {
        double grip = FrictionCircle.FRICTION * G;
        for (GgDiagram.Point point : GgDiagram.of(FrictionCircle.car(), 20, 21).boundary()) {
            double share = Math.min(1, Math.abs(point.deceleration()) / grip);
            // Near the top the circle is steep: a rounding of 1e-9 in braking is 1e-4 in cornering.
            assertEquals(grip * FrictionCircle.left(share), point.lateral(), 1e-3);
        }
        assertEquals(Math.sqrt(3) / 2, FrictionCircle.left(0.5), 1e-12);
    }

    @Test
    void theSameBrakeLocksTheFrontOrSpinsTheCar() {
        TooMuch.Entries entries = TooMuch.entries();
        assertTrue(entries.right().made());
        assertEquals(entries.right().plan().brakePoint(), entries.held().plan().brakePoint());
        assertEquals(Outcome.LOCKED_UP, entries.held().outcome());
        assertEquals(EntryEvent.Kind.FRONT_LOCKS, firstToLock(entries.held()));
        assertEquals(Outcome.SPUN, entries.heldRearward().outcome());
        assertEquals(EntryEvent.Kind.REAR_LOCKS, firstToLock(entries.heldRearward()));
    }

    private static EntryEvent.Kind firstToLock(EntryResult entry) {
        return entry.events().stream()
                .map(EntryEvent::kind)
                .filter(kind -> kind == EntryEvent.Kind.FRONT_LOCKS || kind == EntryEvent.Kind.REAR_LOCKS)
                .findFirst()
                .orElseThrow();
    }

    /** Rule of the trade: about 20 % while turning in a hairpin, about 80 % in a fast long corner. */
    @Test
    void theHairpinTrailsLittleAndTheFastCornerMuch() {
        double hairpin = HairpinAndFastCorner.ideal("hairpin").trailShare();
        double fast = HairpinAndFastCorner.ideal("fast").trailShare();
        assertTrue(hairpin > 0.1 && hairpin < 0.3, "hairpin " + hairpin);
        assertTrue(fast > 0.7 && fast < 0.95, "fast " + fast);
        assertEquals(150, HairpinAndFastCorner.firstSpiral("fast"), 1e-9);
    }

    /** m·h/L of load per m/s² of braking leaves the rear axle; it needs m·a·(a/L) for cornering, braked or not. */
    @Test
    void theRearPaysTwice() {
        Car car = WhyTheRearGoes.car();
        AxleUse free = WhyTheRearGoes.rear(car, 2);
        AxleUse braked = WhyTheRearGoes.rear(car, 3);
        assertEquals(780 * 0.45 / 2.4, free.load() - braked.load(), 1e-6);
        assertEquals(0.38 * 780, braked.longitudinalForce() - free.longitudinalForce(), 1e-6);
        assertEquals(780 * 8 * 1.25 / 2.4, braked.lateralDemand(), 1e-6);
        assertTrue(braked.lateralCapacity() < free.lateralCapacity());
    }

    /**
     * The inside rear wheel locks where half of the rear brake, (1 − β)(m·d − D)/2, is what it can carry. Numbers of
     * car-light.json; load by statics, friction that falls with load as in docs/theory/tyre.md.
     */
    @Test
    void theInsideRearWheelLocksWhereItsLoadCarriesNoMoreBrake() {
        double d = WhyTheRearGoes.insideLocks(WhyTheRearGoes.car());
        double rollAxis = (0.03 * 1.15 + 0.07 * 1.25) / 2.4;
        double moved = 780 * 8 * (0.4 * (0.45 - rollAxis) + 0.07 * 1.25 / 2.4) / 1.44;
        double load = 780 * (9.81 * 1.25 - d * 0.45) / 2.4 / 2 - moved;
        double peak = 1.2 * (1 - 0.08 * (load / 1900 - 1)) * load;
        double drag = 0.5 * 1.2 * 0.6 * 25 * 25;
        // The program looks every 0.01 m/s²; over that, brake and peak come 3 N nearer.
        assertEquals(peak, 0.38 * (780 * d - drag) / 2, 3);
    }

    /** The ramp of brake force on the transient model locks the axle that the closed form names. */
    @Test
    void theFirstToLockIsThatOfTheClosedForm() {
        Car car = Demos.car("car", "light").value();
        for (double share : new double[] {0.5, 0.6, 0.8, 0.9}) {
            Car other = car.withFrontBrakeShare(share).with(Aerodynamics.NONE);
            LockingRamp ramp = LockingRamp.of(other, 30).orElseThrow();
            BrakeDistribution brakes = BrakeDistribution.of(other);
            boolean front = brakes.frontLockRate(BrakeBalance.FRICTION) < brakes.rearLockRate(BrakeBalance.FRICTION);
            assertEquals(front ? "FRONT" : "REAR", ramp.axle().name());
            // Friction that depends on load: 1.2 holds at one load only.
            assertEquals(ramp.deceleration(), BrakeBalance.firstLock(brakes), 0.05 * ramp.deceleration());
        }
    }

    private static Balance made;

    /** What the program computes of brake balance, once for all tests that read it. */
    static synchronized Balance balance() {
        if (made == null) {
            made = BrakeBalance.balance();
        }
        return made;
    }

    @Test
    void eachBalanceLocksAsTheClosedFormSays() {
        Balance balance = balance();
        double ideal = BrakeBalance.ideal(Demos.car("car", "light").value());
        for (BalanceRow row : balance.rows()) {
            // Load-sensitive friction and the air move the change by a hundredth or so.
            if (Math.abs(row.value() - ideal) > 0.02) {
                assertEquals(row.value() < ideal, row.rearLocksFirst(), "share " + row.value());
            }
            assertTrue(row.made());
        }
        assertTrue(BrakeBalance.spread(balance) > 0);
    }

    /** A swing beyond the reserve locks a wheel while it lasts; without a swing nothing is lost. */
    @Test
    void aSlowSwingLocksAWheelAndAQuickOneDoesNot() {
        var study = SmoothFoot.study();
        BrakePlan last = SmoothFoot.latest(study);
        BrakePlan plan = last.withBrakePoint(last.brakePoint() - SmoothFoot.EARLIER);
        EntryResult calm = study.simulator().run(plan);
        assertTrue(calm.made());
        Smoothness none = Smoothness.of(study.simulator(), calm, new Ripple(0, 1));
        assertEquals(0, none.frontGripLost(), 1e-3);
        EntryResult slow = study.simulator().probe(plan.with(new Ripple(SmoothFoot.SIZE, 0.5)));
        EntryResult quick = study.simulator().probe(plan.with(new Ripple(SmoothFoot.SIZE, 5)));
        assertEquals(Outcome.LOCKED_UP, slow.outcome());
        assertEquals(Outcome.MADE_IT, quick.outcome());
    }

    @Test
    void theLibraryDrivesTheParabolaInTheShortestTime() {
        IdealProfile library = PerfectRelease.library();
        // The line is drawn by spirals and entered a ten-thousandth slower: that is what is allowed.
        assertEquals(PerfectRelease.shortestTime(), library.time(), 1e-3);
        assertEquals(30 * Math.cos(Math.PI / 4), library.minimumSpeed(), 5e-3);
        assertEquals(0.5, library.timeAt(library.minimumSpeedAt()) / library.time(), 5e-3);
        for (double q = -0.8; q <= 0; q += 0.2) {
            assertEquals(PerfectRelease.GRIP, Math.hypot(PerfectRelease.braking(q), PerfectRelease.cornering(q)), 1e-9);
            double s = PerfectRelease.way(q) - PerfectRelease.way(-1);
            assertEquals(PerfectRelease.braking(q), library.decelerationAt(s), 0.05);
        }
        assertEquals(ReleaseShapes.HELD, PerfectRelease.nearest());
    }

    @Test
    void theOwnTyreIsExponentialAndKeepsTheLaws() {
        double slip = Math.tan(Math.toRadians(4));
        double expected = 1.15 * 2000 * (1 - Math.exp(-18 * slip / 1.15));
        assertEquals(expected, YourOwnTyre.sideways(YourOwnTyre.own(), 4), 1e-9);
        assertEquals(List.of(), TyreLaws.broken(YourOwnTyre.own(), 500, 2000, 6000));
        // Statics at the limit: half the front axle, less what rolls off the inside wheel (numbers of car-light.json).
        BrakingGrip grip = BrakingGrip.of(YourOwnTyre.car(), YourOwnTyre.SPEED);
        double braking = grip.bestDeceleration();
        double rollAxis = (0.03 * 1.15 + 0.07 * 1.25) / 2.4;
        double moved = 780 * grip.lateralAcceleration(braking) * (0.6 * (0.45 - rollAxis) + 0.03 * 1.15 / 2.4) / 1.42;
        assertEquals(
                780 * (9.81 * 1.15 + braking * 0.45) / 2.4 / 2 - moved,
                YourOwnTyre.insideLoad(YourOwnTyre.car()),
                1e-6);
    }

    /** An embedded sweep that is told to stop keeps what it has. */
    @Test
    void aSweepCanBeStopped() {
        AtomicInteger told = new AtomicInteger();
        Exploration answer = EmbedIt.explore(new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                told.incrementAndGet();
            }

            @Override
            public boolean stopped() {
                return told.get() >= 1;
            }
        });
        assertFalse(answer.complete());
        int releases = new ReleaseSweep(CornerStudy.of(EmbedIt.car(), EmbedIt.corner()), SweepPlan.standard())
                .releases()
                .size();
        assertEquals(
                releases - told.get(), answer.planned() - answer.candidates().size(), "those that were not begun");
        assertTrue(EmbedIt.json(answer).startsWith("{\"complete\": false, "), EmbedIt.json(answer));
    }

    /** Only the picture takes EmbedIt beyond the core. */
    @Test
    void embeddingNeedsTheCoreAlone() throws IOException {
        Path source = Path.of("src/main/java/org/foreload/examples/program/EmbedIt.java");
        List<String> beyond = Files.readAllLines(source).stream()
                .filter(line -> line.startsWith("import "))
                .filter(line -> line.contains("examples") || !line.contains("foreload"))
                .filter(line -> !line.startsWith("import java.") && !line.contains(".picture."))
                .toList();
        assertEquals(List.of(), beyond);
    }
}
