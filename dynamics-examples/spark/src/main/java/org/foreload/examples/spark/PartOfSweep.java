package org.foreload.examples.spark;

import java.io.ByteArrayOutputStream;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.function.Function;
import org.foreload.examples.command.Foreload;

/**
 * What an executor does: one part of a sweep, on the one core that Spark gives a task.
 *
 * @param options options of {@code foreload explore}
 * @param of number of parts
 */
record PartOfSweep(List<String> options, int of) implements Function<Integer, PartOfSweep.Answer> {

    /** Copies, into a list that can be sent. */
    PartOfSweep {
        options = List.copyOf(options);
    }

    /** As many as 'foreload explore --shard' takes, and more than a sweep has releases. */
    static final int MOST_PARTS = 999_999;

    /** A part without releases: it costs nothing, and says whether the request is right. */
    static Answer empty(List<String> options) {
        return new PartOfSweep(options, MOST_PARTS).call(MOST_PARTS);
    }

    /**
     * What came of a part.
     *
     * @param status exit status of {@code foreload explore}
     * @param text the part, as lines of JSON
     * @param said warnings, and what was wrong
     */
    record Answer(int status, String text, String said) implements Serializable {

        boolean done() {
            return status == Foreload.DONE;
        }
    }

    @Override
    public Answer call(Integer number) {
        List<String> words = new ArrayList<>(List.of("explore"));
        words.addAll(options);
        words.addAll(List.of("--shard", number + "/" + of, "--threads", "1", "--quiet"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Foreload.run(words.toArray(String[]::new), out, err);
        return new Answer(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
