package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.TiltedPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;

/** Entries that end on the departure that all have in common, beside the same ones driven to the end. */
class DepartureTest {

    /** Speed aimed for where the throttle opens, m/s: about what each car has there. */
    private static final Map<Car, Double> OPENING =
            Map.of(SampleEntries.ROAD, 22.5, SampleEntries.LIGHT, 26.0, SampleEntries.WINGED, 33.0);

    private static final Map<Car, BrakePlan> PLANS = Map.of(
            SampleEntries.ROAD, plan(6, -130),
            SampleEntries.LIGHT, plan(8, -105),
            SampleEntries.WINGED, plan(11, -80));

    /** Fine enough that what is left between two ways to the end is what the departure leaves out. */
    private static final SimulationSettings FINE = new SimulationSettings(1e-10, 1);

    /** A bend of 60 m radius, entered at 45 m/s. */
    private static SegmentPath bend(double exit) {
        List<Segment> turn = List.of(
                Segment.spiralIn(30, 60, Turn.LEFT),
                Segment.arc(75, 60, Turn.LEFT),
                Segment.spiralOut(30, 60, Turn.LEFT));
        return SegmentPath.of(200, turn, exit, 4.5);
    }

    private static BrakePlan plan(double peak, double brakePoint) {
        return Braking.of(peak, 0.2, new Release(ReleaseShapes.LINEAR, -10, 25)).from(brakePoint);
    }

    private static EntrySimulator simulator(Car car, Path path, SimulationSettings settings) {
        double opening = OPENING.getOrDefault(car, 22.5);
        SpeedPlan exit = new SpeedPlan(new double[] {80, 285}, new double[] {opening, 1.4 * opening});
        return new EntrySimulator(car, new Corner("bend", 45, path), DriverSettings.practised(), exit, settings);
    }

    /** The same line, but nobody knows that it ends with a straight. */
    private static Path hidden(Path path) {
        return (Path) Proxy.newProxyInstance(
                Path.class.getClassLoader(),
                new Class<?>[] {Path.class},
                (proxy, method, values) ->
                        method.getName().equals("exitStraight") ? path.end() : method.invoke(path, values));
    }

    private static EntryResult whole(Car car, Path path, SimulationSettings settings) {
        return simulator(car, hidden(path), settings).probe(PLANS.get(car));
    }

    private static EntryResult shortened(Car car, Path path, SimulationSettings settings) {
        return simulator(car, path, settings).probe(PLANS.get(car));
    }

    /** On the flat, up, down and on a banked road: within five microseconds. */
    @Test
    void aSettledEntryEndsAsIfItHadDrivenOn() {
        for (Path path : List.of(
                bend(150),
                bend(220).withGrade(0.03),
                new TiltedPath(bend(150), -0.04, 0),
                bend(200).withBanking(0.03),
                bend(150).mirrored())) {
            for (Car car : PLANS.keySet()) {
                EntryResult whole = whole(car, path, FINE);
                EntryResult shortened = shortened(car, path, FINE);
                assertEquals(Outcome.MADE_IT, whole.outcome(), whole::cause);
                assertEquals(Outcome.MADE_IT, shortened.outcome());
                assertEquals(whole.time(), shortened.time(), 5e-6);
                assertEquals(whole.margins(), shortened.margins());
                assertEquals(whole.farthestOffset(), shortened.farthestOffset(), 0);
                assertEquals(whole.events().size(), shortened.events().size());
                assertEquals(
                        whole.event(EntryEvent.Kind.EXIT).orElseThrow().station(),
                        shortened.event(EntryEvent.Kind.EXIT).orElseThrow().station());
            }
        }
    }

    /** That spares evaluations, and more of them the longer the straight. */
    @Test
    void itSparesTheStraight() {
        for (Car car : PLANS.keySet()) {
            long near = shortened(car, bend(150), SimulationSettings.STANDARD).evaluations();
            long far = shortened(car, bend(300), SimulationSettings.STANDARD).evaluations();
            long driven = whole(car, bend(300), SimulationSettings.STANDARD).evaluations();
            assertEquals(near, far, 4, "the rest of the straight takes no steps");
            assertTrue(far < 0.9 * driven, far + " of " + driven);
        }
    }

    /** Who is not straight yet when the line ends drives it to the end, with the same steps. */
    @Test
    void whoHasNotSettledDrivesOn() {
        for (Car car : PLANS.keySet()) {
            EntryResult driven = whole(car, bend(12), SimulationSettings.STANDARD);
            assertEquals(Outcome.MADE_IT, driven.outcome(), driven::cause);
            assertEquals(driven, shortened(car, bend(12), SimulationSettings.STANDARD));
        }
    }

    /** A car that loses speed on a steep climb never has the state of one that gains it. */
    @Test
    void whoGainsNoSpeedDrivesOn() {
        Car weak = SampleEntries.ROAD.with(new Driveline(20e3, Driveline.DrivenAxle.FRONT));
        Path climb = bend(150).withGrade(0.15);
        EntrySimulator simulator = simulator(weak, climb, SimulationSettings.STANDARD);
        BrakePlan plan = plan(6, -60);
        EntryResult driven =
                simulator(weak, hidden(climb), SimulationSettings.STANDARD).probe(plan);
        assertEquals(Outcome.MADE_IT, driven.outcome(), driven::cause);
        assertEquals(climb.end(), driven.minimumSpeedAt(), 1);
        assertEquals(driven, simulator.probe(plan));
    }

    /** A run that keeps its profile shows the whole straight. */
    @Test
    void aRunShowsTheWholeStraight() {
        BrakePlan plan = PLANS.get(SampleEntries.LIGHT);
        EntryResult run = simulator(SampleEntries.LIGHT, bend(150), SimulationSettings.STANDARD)
                .run(plan);
        assertEquals(
                simulator(SampleEntries.LIGHT, hidden(bend(150)), SimulationSettings.STANDARD)
                        .run(plan)
                        .evaluations(),
                run.evaluations());
        assertEquals(485, run.profile().orElseThrow().column("s_m").values().length, 2);
    }

    private static final EntrySimulator ROAD = simulator(SampleEntries.ROAD, bend(150), SimulationSettings.STANDARD);

    private static final Path STRAIGHT = ROAD.corner().path();

    /** What the drive begins with, m/s: a share of what is aimed for where the straight begins. */
    private static final double FIRST = 0.6 * ROAD.exit().speed(STRAIGHT.exitStraight());

    /** A station from which the driver looks back on nothing but the straight. */
    private static final double ON_IT =
            STRAIGHT.exitStraight() + ROAD.driver().hands().curvatureWindow() * FIRST + 0.5;

    /** Straight ahead with a speed, drive and loads settled. */
    private static double[] settled(double speed) {
        BrakePlan plan = PLANS.get(SampleEntries.ROAD);
        return ROAD.settled(ROAD.equations(plan, ROAD.foot(Optional.empty())), STRAIGHT.end(), speed);
    }

    /** From its first speed on, as soon as all that the driver sees of the line is straight. */
    @Test
    void itBeginsWithItsFirstSpeedOnTheStraight() {
        Departure departure = Departure.drive(ROAD);
        assertTrue(departure.joins(ON_IT, settled(FIRST)));
        assertFalse(departure.joins(ON_IT - 1, settled(FIRST)));
        assertFalse(departure.joins(ON_IT, settled(FIRST - 0.01)));
        assertFalse(departure.joins(ON_IT, settled(2.5 * FIRST)), "beyond the last speed");
    }

    /** Each state by itself keeps from joining once it is off by more than a thousandth of its unit; time does not. */
    @Test
    void everyStateMustBeNear() {
        Departure departure = Departure.drive(ROAD);
        double[] scales = EntryState.scales(ROAD.car().chassis().mass());
        for (int i = 0; i < EntryState.SIZE; i++) {
            for (double side : new double[] {-1, 1}) {
                double[] state = settled(FIRST);
                if (i != EntryState.VX) {
                    state[i] += side * 0.9e-3 * scales[i];
                    assertTrue(departure.joins(ON_IT, state), "state " + i);
                    state[i] += side * 0.2e-3 * scales[i];
                    assertEquals(i == EntryState.TIME, departure.joins(ON_IT, state), "state " + i);
                }
            }
        }
    }

    /** Where the line ends nothing is left to drive; before, the way at speeds between the first and the last. */
    @Test
    void itTakesTheTimeOfTheWayThatIsLeft() {
        Departure departure = Departure.drive(ROAD);
        double[] state = settled(FIRST);
        state[EntryState.TIME] = 7;
        departure.leave(STRAIGHT.end(), state);
        assertEquals(FIRST, state[EntryState.VX], 1e-9);
        assertEquals(7, state[EntryState.TIME], 1e-9);
        departure.leave(STRAIGHT.end() - 20, state);
        double time = state[EntryState.TIME] - 7;
        double last = state[EntryState.VX];
        assertTrue(last > FIRST + 0.5, "from " + FIRST + " to " + last);
        // At a constant acceleration the time is that of the mean speed.
        assertEquals(20 / ((FIRST + last) / 2), time, 0.01 * time);
    }

    @Test
    void nobodyJoinsWhereNoStraightEndsTheLine() {
        EntrySimulator hidden = simulator(SampleEntries.ROAD, hidden(bend(150)), SimulationSettings.STANDARD);
        assertFalse(Departure.drive(hidden).joins(ON_IT, settled(FIRST)));
    }
}
