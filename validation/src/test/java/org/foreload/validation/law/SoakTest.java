package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.DoubleAccumulator;
import java.util.stream.LongStream;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.validation.law.Possible.Case;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Many random entries, as runs and as probes: none without a class, none with a number that is none, none that hangs.
 * Each case is named by its seed; what was found is written to {@code target/soak.txt}.
 */
@Tag("soak")
class SoakTest {

    /** Right-hand sides beyond which an entry counts as hanging: a hundred times what an entry takes. */
    private static final long MOST_EVALUATIONS = 300_000;

    @Test
    void everyEntryIsClassified() throws IOException {
        long entries = Long.getLong("soak.entries", 1_000_000);
        long first = Long.getLong("soak.first", 1);
        Map<String, AtomicLong> counts = new ConcurrentSkipListMap<>();
        ConcurrentLinkedQueue<String> failures = new ConcurrentLinkedQueue<>();
        AtomicLong evaluations = new AtomicLong();
        AtomicLong most = new AtomicLong();
        DoubleAccumulator apart = new DoubleAccumulator(Math::max, 0);
        LongStream.range(first, first + entries).parallel().forEach(seed -> {
            try {
                String kind = drive(Possible.drawn(seed), evaluations, most, apart);
                counts.computeIfAbsent(kind, k -> new AtomicLong()).incrementAndGet();
            } catch (RuntimeException | AssertionError e) {
                failures.add("seed " + seed + ": " + e);
            }
        });
        Map<String, Object> report = new TreeMap<>(counts);
        report.put("entries", entries);
        report.put("failures", failures.size());
        report.put("right-hand sides per entry", evaluations.get() / Math.max(1, entries));
        report.put("most right-hand sides", most);
        report.put("most between run and probe, s", apart.get());
        StringBuilder text = new StringBuilder();
        report.forEach(
                (name, value) -> text.append(name).append(": ").append(value).append('\n'));
        failures.stream().limit(100).forEach(line -> text.append(line).append('\n'));
        Files.writeString(Path.of("target", "soak.txt"), text);
        assertEquals(List.of(), failures.stream().limit(5).toList());
    }

    private static String drive(Case one, AtomicLong evaluations, AtomicLong most, DoubleAccumulator apart) {
        var study = EntryLaws.study(one, SimulationSettings.STANDARD);
        if (study.isEmpty()) {
            return "comes too fast";
        }
        EntryResult entry = study.get().simulator().run(one.plan());
        evaluations.addAndGet(entry.evaluations());
        most.accumulateAndGet(entry.evaluations(), Math::max);
        if (entry.evaluations() > MOST_EVALUATIONS) {
            throw new AssertionError("hangs: " + entry.evaluations() + " right-hand sides");
        }
        EntryLaws.classified(entry);
        EntryResult probe = study.get().simulator().probe(one.plan());
        if (probe.made() && !Double.isFinite(probe.time())) {
            throw new AssertionError("a probe that made it without a time");
        }
        if (entry.made() && probe.made()) {
            apart.accumulate(Math.abs(entry.time() - probe.time()));
        }
        String words = entry.outcome().words();
        return probe.outcome() == entry.outcome()
                ? words
                : words + ", a probe: " + probe.outcome().words();
    }
}
