package org.foreload.examples.command;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.examples.sweep.Stop;
import org.foreload.file.Loaded;

/** Standard error, for what is not the answer; standard input; and whoever sits before them. */
public final class Console {

    private final OutputStream stream;
    private final PrintWriter err;
    private final BooleanSupplier terminal;
    private final Stop stop;
    private final InputStream in;
    private final Optional<FirstStage> stage;
    private final boolean quiet;

    /**
     * A console.
     *
     * @param err where warnings, progress and errors go, in UTF-8
     * @param terminal whether that is a terminal, on which a bar can be drawn over and over; asked only where it
     *     matters, since the answer takes native code
     * @param stop the wish to stop
     */
    public Console(OutputStream err, BooleanSupplier terminal, Stop stop) {
        this(err, terminal, stop, InputStream.nullInputStream(), Optional.empty(), false);
    }

    private Console(
            OutputStream err,
            BooleanSupplier terminal,
            Stop stop,
            InputStream in,
            Optional<FirstStage> stage,
            boolean quiet) {
        this.stream = Objects.requireNonNull(err);
        this.err = new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8));
        this.terminal = Objects.requireNonNull(terminal);
        this.stop = Objects.requireNonNull(stop);
        this.in = Objects.requireNonNull(in);
        this.stage = stage;
        this.quiet = quiet;
    }

    /** The same console, from which questions are read; without this there are none. */
    public Console reading(InputStream questions) {
        return new Console(stream, terminal, stop, questions, stage, quiet);
    }

    /** The same console of a process that runs one verb and no more, and may be set up for it. */
    public Console ofOneRun() {
        return new Console(stream, terminal, stop, in, Optional.of(new FirstStage()), quiet);
    }

    /** The same console, which shows no progress. */
    Console quietly() {
        return new Console(stream, terminal, stop, in, stage, true);
    }

    /** Sets the process up for a run of seconds, if it is there for this run alone. */
    void brief() {
        stage.ifPresent(FirstStage::begin);
    }

    /** Standard input. */
    InputStream in() {
        return in;
    }

    /** A console that is no terminal, and that nobody stops. */
    static Console plain(OutputStream err) {
        return new Console(err, () -> false, new Stop());
    }

    /** Prints the warnings of a file and its notes, one line each, and returns what was read. */
    <T> T warned(Loaded<T> loaded) {
        loaded.warnings().forEach(warning -> line(warning.line()));
        loaded.notes().forEach(this::line);
        return loaded.value();
    }

    /** Prints one line. */
    void line(String text) {
        err.println(text);
        err.flush();
    }

    /**
     * Progress of a sweep that stops when it is asked to.
     *
     * @param cases what is counted, in the plural
     */
    ShownProgress progress(String cases) {
        stop.listen();
        if (quiet) {
            return ShownProgress.silent(stop);
        }
        return terminal.getAsBoolean()
                ? ShownProgress.bar(stream, stop, cases)
                : ShownProgress.lines(this::line, stop, cases);
    }

    /** Says what is to be done when somebody stops a verb that answers as it goes. */
    void lastWords(Runnable words) {
        stop.lastWords(words);
    }

    PrintWriter writer() {
        return err;
    }
}
