package org.foreload.pedal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.PedalDisturbance.Hesitation;
import org.foreload.braking.PedalDisturbance.Ripple;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.stability.Scenes;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** What a disturbed pedal does to an entry that is made with some metres in hand. */
class SmoothnessTest {

    private static final Car CAR = Scenes.light();
    private static final EntrySimulator SIMULATOR =
            CornerStudy.of(CAR, Scenes.medium()).simulator();
    private static final EntryResult CALM = SIMULATOR.run(
            Braking.of(7.5, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30)).from(-155));

    @Test
    void aCalmPedalCostsNothing() {
        Smoothness none = Smoothness.of(SIMULATOR, CALM, PedalDisturbance.NONE);
        assertEquals(0, none.frontLoadRipple());
        assertEquals(0, none.frontGripLost());
        assertEquals(0, none.distanceOffLine());
        assertEquals(0, none.timeLost());
    }

    /**
     * At frequencies far below the resonance the ripple is m·d·h/L times the ripple of the pedal; near it pitching
     * amplifies it, far above it swallows it (and the lag between foot and brake swallows some more).
     */
    @Test
    void aRippleIsWorstNearTheResonance() {
        double slow = ripple(0.6);
        double resonant = ripple(1.5);
        double quick = ripple(4);
        assertTrue(resonant > slow, resonant + " and " + slow);
        assertTrue(resonant > 2 * quick, resonant + " and " + quick);
        double quasiSteady = 0.05 * 780 * 7.5 * 0.45 / 2.4;
        // The lag of the brake, 0.04 s, takes a part in a hundred at this frequency; pitching adds some in ten.
        assertEquals(1.07, slow / quasiSteady, 0.15);
    }

    private static double ripple(double frequency) {
        return Smoothness.of(SIMULATOR, CALM, new Ripple(0.05, frequency)).frontLoadRipple();
    }

    /** A dip takes brake away: the car comes faster and leaves the calm course; a deeper dip more so. */
    @Test
    void aHesitationCarriesTheCarOffItsLine() {
        Smoothness small = Smoothness.of(SIMULATOR, CALM, new Hesitation(3.2, 1.2, 0.3));
        Smoothness large = Smoothness.of(SIMULATOR, CALM, new Hesitation(3.2, 1.2, 0.9));
        assertTrue(small.frontLoadRipple() > 0);
        assertTrue(large.frontLoadRipple() > 2 * small.frontLoadRipple());
        assertTrue(large.distanceOffLine() > small.distanceOffLine());
        assertTrue(large.disturbed().turnInSpeed() > CALM.turnInSpeed());
        assertTrue(large.frontGripLost() > 0);
    }

    /**
     * Anti-lock brakes give what the wheels hold, however much more the foot asks for: a dip that still asks for more
     * does not reach the road, even while the car turns in, and one that asks for less does.
     */
    @Test
    void withAntiLockOnlyWhatReachesTheRoadCounts() {
        CornerStudy study = CornerStudy.of(CAR.withAntiLock(true), Scenes.medium());
        EntrySimulator simulator = study.simulator();
        EntryResult calm = study.latest(Braking.of(24, 0.25, new Release(ReleaseShapes.ABRUPT, 12, 12)))
                .entry();
        double turnIn = time(calm, Kind.TURN_IN) - time(calm, Kind.BRAKE_ON);
        Smoothness unfelt = Smoothness.of(simulator, calm, new Hesitation(turnIn - 0.5, 0.7, 0.3));
        // The two profiles have their rows at other stations.
        assertEquals(0, unfelt.frontGripLost(), 1e-3);
        assertEquals(0, unfelt.frontLoadRipple(), 1e-3 * 780 * 9.81);
        Smoothness felt = Smoothness.of(simulator, calm, new Hesitation(turnIn - 0.5, 0.7, 0.9));
        assertTrue(felt.frontGripLost() > 0.005 && felt.frontGripLost() < 0.5, felt.frontGripLost() + "");
    }

    private static double time(EntryResult entry, Kind kind) {
        return entry.events().stream()
                .filter(event -> event.kind() == kind)
                .findFirst()
                .orElseThrow()
                .time();
    }

    /** An entry that is not made has no time to compare, even where the car rolls on to the exit. */
    @Test
    void anEntryThatIsNotMadeHasNoTimeLost() {
        Smoothness wild = Smoothness.of(SIMULATOR, CALM, new Ripple(1, 0.8));
        assertFalse(wild.disturbed().made(), wild.disturbed().cause());
        assertTrue(Double.isNaN(wild.timeLost()));
    }
}
