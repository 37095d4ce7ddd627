package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Many runs of anything, of squares here: what becomes of them when one fails, and when nobody waits any longer. */
class SweepTest {

    private static final List<Integer> CASES = IntStream.range(0, 40).boxed().toList();

    /** No test leaves its thread interrupted for the next one. */
    @AfterEach
    void forget() {
        Thread.interrupted();
    }

    private static List<Optional<Integer>> squares(int first) {
        return CASES.stream()
                .map(i -> i < first ? Optional.of(i * i) : Optional.<Integer>empty())
                .toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7})
    void resultsStandInTheOrderOfTheCases(int threads) {
        List<Integer> told = new ArrayList<>();
        Sweep.Progress progress = (done, total) -> {
            synchronized (told) {
                assertEquals(CASES.size(), total);
                told.add(done);
            }
        };
        Sweep sweep = new Sweep(threads, progress);
        assertEquals(threads, sweep.threads());
        assertEquals(squares(CASES.size()), sweep.run(CASES, i -> i * i));
        assertEquals(
                IntStream.rangeClosed(1, CASES.size()).boxed().toList(),
                told.stream().sorted().toList());
        assertEquals(List.of(), sweep.run(List.<Integer>of(), i -> i));
    }

    /** What was done when the sweep is stopped is kept; no further case is started. */
    @Test
    void aStopKeepsWhatWasDone() {
        AtomicInteger started = new AtomicInteger();
        List<Optional<Integer>> results = new Sweep(1, new StopAfter(3)).run(CASES, i -> {
            started.incrementAndGet();
            return i * i;
        });
        assertEquals(squares(3), results);
        assertEquals(3, started.get());
    }

    /** The same for an interrupt; and the case that is under way when it comes is finished. */
    @Test
    void anInterruptKeepsWhatWasDone() {
        Thread caller = Thread.currentThread();
        List<Optional<Integer>> results = new Sweep(1, Sweep.Progress.SILENT).run(CASES, i -> {
            if (i == 4) {
                caller.interrupt();
                // Goes on once the caller has taken the interrupt in, and waits again for what is under way.
                while (caller.isInterrupted() || caller.getState() != Thread.State.WAITING) {
                    Thread.onSpinWait();
                }
            }
            return i * i;
        });
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertEquals(squares(5), results);
    }

    /** Who is interrupted before the sweep begins gets an answer all the same. */
    @Test
    void whoIsInterruptedAlreadyGetsWhatWasDone() {
        Thread.currentThread().interrupt();
        List<Optional<Integer>> results = new Sweep(2, Sweep.Progress.SILENT).run(CASES, i -> {
            // A computation that waits for something is not interrupted for it.
            assertFalse(Thread.currentThread().isInterrupted());
            return i * i;
        });
        assertTrue(Thread.interrupted());
        assertEquals(CASES.size(), results.size());
        for (int i = 0; i < results.size(); i++) {
            int square = i * i;
            results.get(i).ifPresent(result -> assertEquals(square, result));
        }
    }

    /** What a computation throws comes through as it is: a wrong number keeps its name. The first in order counts. */
    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void whatACaseThrowsIsThrown(int threads) {
        RuntimeException first = new InvalidValueException("mass_kg", -1, "above 0");
        Sweep sweep = new Sweep(threads, Sweep.Progress.SILENT);
        assertSame(
                first,
                assertThrows(
                        InvalidValueException.class,
                        () -> sweep.run(CASES, i -> {
                            if (i > 20) {
                                throw new UnsupportedOperationException("a later one");
                            }
                            if (i == 20) {
                                throw first;
                            }
                            return i;
                        })));
    }

    /**
     * Who is told of a failure is told of nothing after it: the case that was under way is finished first, undisturbed,
     * and no other is started. Common practice, no source.
     */
    @Test
    void nothingRunsOnceAFailureIsThrown() {
        AtomicBoolean underWay = new AtomicBoolean();
        AtomicInteger finished = new AtomicInteger();
        AtomicInteger told = new AtomicInteger();
        Sweep sweep = new Sweep(2, (done, total) -> told.incrementAndGet());
        assertThrows(
                UnsupportedOperationException.class,
                () -> sweep.run(CASES, i -> {
                    if (i == 0) {
                        while (!underWay.get()) {
                            Thread.onSpinWait();
                        }
                        throw new UnsupportedOperationException("the first");
                    }
                    underWay.set(true);
                    LockSupport.parkNanos(50_000_000);
                    assertFalse(Thread.currentThread().isInterrupted());
                    finished.incrementAndGet();
                    return i;
                }));
        int then = told.get();
        assertEquals(finished.get(), then);
        assertTrue(then >= 1 && then < CASES.size() - 1, then + " cases were finished");
        LockSupport.parkNanos(200_000_000);
        assertEquals(then, told.get(), "told of a case after the failure");
    }

    @Test
    void anErrorIsTheCause() {
        Error error = new StackOverflowError();
        IllegalStateException thrown = assertThrows(
                IllegalStateException.class,
                () -> Sweep.quiet().run(CASES, i -> {
                    throw error;
                }));
        assertSame(error, thrown.getCause());
    }

    @Test
    void nothingIsNoResult() {
        NullPointerException thrown =
                assertThrows(NullPointerException.class, () -> Sweep.quiet().run(CASES, i -> null));
        assertEquals("a case of a sweep came to no result", thrown.getMessage());
    }

    @Test
    void aSweepNeedsAThreadAndSomebodyToTell() {
        assertThrows(InvalidValueException.class, () -> new Sweep(0, Sweep.Progress.SILENT));
        assertThrows(NullPointerException.class, () -> new Sweep(1, null));
    }
}
