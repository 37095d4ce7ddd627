package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryEvent.Kind;
import org.junit.jupiter.api.Test;

/** What is named as the cause of an entry's end, on made-up events. */
class EntryCauseTest {

    private static EntryEvent event(Kind kind, double station, double time) {
        return new EntryEvent(kind, station, time);
    }

    private static String cause(Outcome outcome, double longestLock, EntryEvent... events) {
        return MadeUpEntry.of(outcome, longestLock, 17, EntryResult.Limit.FRONT_AXLE, List.of(events))
                .cause();
    }

    /** An axle is full when its first wheel is about to stop, so the use always passes its threshold first. */
    @Test
    void aLockComesBeforeTheSaturationThatGoesWithIt() {
        assertEquals(
                "rear wheel locks at 20.5 m, then the car spins at 60.0 m",
                cause(
                        Outcome.SPUN,
                        0.4,
                        event(Kind.REAR_SATURATES, 20, 5),
                        event(Kind.REAR_LOCKS, 20.5, 5.02),
                        event(Kind.SPIN, 60, 6)));
    }

    @Test
    void aSaturationOfItsOwnIsNamed() {
        assertEquals(
                "rear axle saturates at 20.0 m, then the car spins at 60.0 m",
                cause(
                        Outcome.SPUN,
                        0.4,
                        event(Kind.REAR_SATURATES, 20, 5),
                        event(Kind.REAR_LOCKS, 30, 5.5),
                        event(Kind.SPIN, 60, 6)));
        assertEquals(
                "rear axle saturates at 20.0 m, then the car leaves the track at 60.0 m",
                cause(
                        Outcome.RAN_WIDE,
                        0.4,
                        event(Kind.REAR_SATURATES, 20, 5),
                        event(Kind.FRONT_LOCKS, 20.5, 5.02),
                        event(Kind.TRACK_EDGE, 60, 6)));
    }

    /** Full of braking on the straight, an axle lacks nothing. */
    @Test
    void whatIsFullOnTheStraightIsNoCause() {
        assertEquals(
                "front axle saturates at 9.0 m, then the car leaves the track at 60.0 m",
                cause(
                        Outcome.RAN_WIDE,
                        0,
                        event(Kind.FRONT_SATURATES, -100, 2),
                        event(Kind.FRONT_SATURATES, 9, 5),
                        event(Kind.TRACK_EDGE, 60, 6)));
    }

    @Test
    void locksAreTold() {
        EntryEvent lock = event(Kind.FRONT_LOCKS, -100, 2);
        assertEquals("on its line to the exit", cause(Outcome.MADE_IT, 0, event(Kind.FRONT_SATURATES, 20, 5)));
        assertEquals(
                "front wheel locks 100.0 m before turn-in, turning again within 0.35 s, and on its line to the exit",
                cause(Outcome.MADE_IT, 0.35, lock));
        assertEquals(
                "front wheel locks 100.0 m before turn-in, wheels stopped for 2.80 s",
                cause(Outcome.LOCKED_UP, 2.8, lock));
        assertEquals(
                "front wheel locks 100.0 m before turn-in, then the car stops at 30.0 m",
                cause(Outcome.LOCKED_UP, 4, lock, event(Kind.STOPPED, 30, 9)));
    }

    /** More grip than the car can stand on is no lack of it. */
    @Test
    void aRollOverLacksNoGrip() {
        EntryEvent full = event(Kind.FRONT_SATURATES, 20, 2);
        assertEquals(
                "the inner wheels leave the road at 30.0 m",
                cause(Outcome.ROLLED_OVER, 0, full, event(Kind.ROLL_OVER, 30, 9)));
        assertEquals(
                "rear wheel locks at 20.0 m, then the inner wheels leave the road at 30.0 m",
                cause(Outcome.ROLLED_OVER, 0.1, event(Kind.REAR_LOCKS, 20, 8), event(Kind.ROLL_OVER, 30, 9)));
        assertEquals("rolled over", Outcome.ROLLED_OVER.words());
    }

    /** Who brakes to a stop has lost no grip: nothing went wrong first. */
    @Test
    void aStopIsAStop() {
        EntryEvent full = event(Kind.FRONT_SATURATES, -100, 2);
        assertEquals(
                "the car stops 20.0 m before turn-in", cause(Outcome.STOPPED, 0, full, event(Kind.STOPPED, -20, 9)));
        assertTrue(EntryCause.wentFirst(Outcome.STOPPED, List.of(full)).isEmpty());
        assertEquals(Optional.empty(), EntryCause.wentFirst(Outcome.MADE_IT, List.of(full)));
        assertEquals("stopped", Outcome.STOPPED.words());
    }
}
