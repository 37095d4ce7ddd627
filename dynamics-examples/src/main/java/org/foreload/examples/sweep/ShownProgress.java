package org.foreload.examples.sweep;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.foreload.study.Sweep;

/** Shows how far a sweep is, as a bar, as plain lines, or not at all; passes on the wish to stop. */
public final class ShownProgress implements Sweep.Progress, AutoCloseable {

    /** Width of the bar with all that stands beside it: fits in any terminal. */
    private static final int WIDTH = 79;

    /** Plain lines in a whole sweep. */
    private static final int LINES = 10;

    private final Stop stop;
    private final ProgressBar bar;
    private final Consumer<String> lines;
    private final String cases;
    private boolean staged;
    private int shown;
    private int most;
    private int last;

    private ShownProgress(Stop stop, ProgressBar bar, Consumer<String> lines, String cases) {
        this.cases = cases;
        this.stop = stop;
        this.bar = bar;
        this.lines = lines;
    }

    /**
     * A bar that is drawn over and over: for a terminal.
     *
     * @param cases what is counted, in the plural
     */
    public static ShownProgress bar(OutputStream terminal, Stop stop, String cases) {
        PrintStream out = new PrintStream(terminal, true, StandardCharsets.UTF_8);
        ProgressBar bar = new ProgressBarBuilder()
                .setTaskName(cases)
                .setStyle(ProgressBarStyle.ASCII)
                .setConsumer(new ConsoleProgressBarConsumer(out, WIDTH))
                .setUpdateIntervalMillis(200)
                .build();
        return new ShownProgress(stop, bar, null, cases);
    }

    /**
     * A line at each tenth: for a file.
     *
     * @param cases what is counted, in the plural
     */
    public static ShownProgress lines(Consumer<String> lines, Stop stop, String cases) {
        return new ShownProgress(stop, null, lines, cases);
    }

    /** Shows nothing. */
    public static ShownProgress silent(Stop stop) {
        return new ShownProgress(stop, null, null, "");
    }

    /**
     * Names the next stage of a computation that runs one sweep after another: in plain lines a stage is a line, and
     * its sweeps, which would each count anew, are none.
     */
    public synchronized void stage(String words) {
        staged = true;
        if (bar != null) {
            bar.setExtraMessage(words);
        }
        if (lines != null) {
            lines.accept(words);
        }
    }

    @Override
    public synchronized void update(int done, int total) {
        boolean again = most == last && done <= total / 2;
        if (total != last || again) { // The next part of the work.
            last = total;
            shown = 0;
            most = 0;
            if (bar != null) {
                bar.reset();
            }
        }
        most = Math.max(most, done);
        if (bar != null) {
            bar.maxHint(total);
            bar.stepTo(Math.max(done, bar.getCurrent()));
        }
        int tenth = (int) ((long) done * LINES / total);
        if (lines != null && !staged && tenth > shown) {
            shown = tenth;
            lines.accept(done + " of " + total + " " + cases);
        }
    }

    @Override
    public boolean stopped() {
        return stop.requested();
    }

    /** Leaves the bar as it is and goes on to the next line. */
    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }
}
