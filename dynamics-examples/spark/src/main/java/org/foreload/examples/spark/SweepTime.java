package org.foreload.examples.spark;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.foreload.examples.Main;
import org.foreload.file.InputException;

/**
 * How long a sweep takes in one process and over Spark on this machine: each in a process of its own, from its start to
 * its exit, with the same cores and the same answer.
 */
public final class SweepTime {

    /** Shapes of the sweep, those of {@code explore} by default. */
    private static final String SHAPES = "linear,progressive,held,smooth,two-stage";

    private static final int NUMBER_OF_SHAPES = 5;

    /** As many as {@code explore} takes. */
    private static final int MOST = 1_100_000;

    /** How often a process is asked for the processor time it has taken, ms. */
    private static final int LOOK = 20;

    private SweepTime() {}

    /**
     * Measures, and prints a row for each way.
     *
     * @param args number of releases; then, if not all, on how many cores
     */
    public static void main(String[] args) {
        try {
            measure(System.out, args);
        } catch (InputException e) {
            System.err.println(e.line());
            System.exit(2);
        } catch (IOException | UncheckedIOException e) {
            System.err.println("the sweep could not be run: " + e.getMessage());
            System.exit(1);
        }
    }

    /**
     * What a process took.
     *
     * @param wall from start to exit, s
     * @param processor time on all cores, s
     */
    record Taken(double wall, double processor) {}

    static void measure(PrintStream out, String... args) throws IOException {
        if (args.length < 1 || args.length > 2) {
            throw new InputException(null, null, null, "say how many releases, and on how many cores: 1000 2");
        }
        int releases = number("releases", args[0], 20, MOST);
        int all = Runtime.getRuntime().availableProcessors();
        int cores = args.length > 1 ? number("cores", args[1], 1, all) : all;
        Grid grid = Grid.of(releases);
        List<String> sweep = grid.options();
        Path folder = Files.createTempDirectory("foreload-time");
        Path one = folder.resolve("one.json");
        Path shared = folder.resolve("shared.json");
        String threads = Integer.toString(cores);
        Taken alone = run(one, Main.class, with(sweep, "explore", "--threads", threads));
        print(out, grid, "one process, threads: " + cores, alone);
        Taken spark =
                run(shared, SparkSweep.class, with(sweep, "--master", "local[" + cores + "]", "--threads", threads));
        print(out, grid, "Spark, local[" + cores + "]", spark);
        boolean same = Files.mismatch(one, shared) < 0;
        Files.delete(one);
        Files.delete(shared);
        Files.delete(folder);
        if (!same) {
            throw new IOException("the two answers differ");
        }
        out.println("the same answer, byte for byte");
    }

    private static void print(PrintStream out, Grid grid, String way, Taken taken) {
        out.printf(
                Locale.ROOT,
                "%d releases, %-24s %8.1f s, processor %8.1f s, %6.1f releases a second%n",
                grid.releases(),
                way,
                taken.wall(),
                taken.processor(),
                grid.releases() / taken.wall());
    }

    private static List<String> with(List<String> sweep, String... more) {
        List<String> words = new ArrayList<>(List.of(more));
        words.addAll(sweep);
        words.addAll(List.of("--format", "json"));
        return words;
    }

    private static int number(String what, String text, int low, int high) {
        try {
            int number = Integer.parseInt(text);
            if (number >= low && number <= high) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Said below, as of a number that is too small or too large.
        }
        throw new InputException(null, what, text, "must be a whole number from " + low + " to " + high);
    }

    /** Runs a program as a process of its own. */
    private static Taken run(Path answer, Class<?> program, List<String> words) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(
                List.of("--add-opens=java.base/java.nio=ALL-UNNAMED", "--add-opens=java.base/sun.nio.ch=ALL-UNNAMED"));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), program.getName()));
        command.addAll(words);
        long begun = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(answer.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        Duration processor = Duration.ZERO;
        try {
            do {
                processor = process.info().totalCpuDuration().orElse(processor);
            } while (!process.waitFor(LOOK, TimeUnit.MILLISECONDS));
        } catch (InterruptedException e) {
            process.destroy();
            Thread.currentThread().interrupt();
            throw new IOException("it was interrupted", e);
        }
        double wall = (System.nanoTime() - begun) * 1e-9;
        if (process.exitValue() != 0) {
            throw new IOException("status " + process.exitValue());
        }
        return new Taken(wall, processor.toNanos() * 1e-9);
    }

    /**
     * Releases on a regular grid over the ranges of the standard sweep, such that each end lies behind each start.
     *
     * @param peaks number of peaks
     * @param starts number of starts
     * @param ends number of ends
     */
    record Grid(int peaks, int starts, int ends) {

        /** Twice as many peaks as starts and ends; as near to a number of releases as that allows. */
        static Grid of(int releases) {
            int side = Math.max(1, (int) Math.round(Math.cbrt(releases / (2.0 * NUMBER_OF_SHAPES))));
            int peaks = (int) Math.max(1, Math.round(releases / (double) (NUMBER_OF_SHAPES * side * side)));
            return new Grid(peaks, side, side);
        }

        /** How many releases these are, straight-line braking from each peak included. */
        int releases() {
            return peaks + NUMBER_OF_SHAPES * peaks * starts * ends;
        }

        /** What asks {@code foreload explore} for them. */
        List<String> options() {
            return List.of(
                    "--shapes", SHAPES,
                    "--peaks", evenly(0.35, 0.87, peaks),
                    "--starts", evenly(-0.5, 0.25, starts),
                    "--ends", evenly(0.3, 1.4, ends));
        }

        private static String evenly(double from, double to, int count) {
            return IntStream.range(0, count)
                    .mapToObj(i -> String.format(Locale.ROOT, "%.4f", from + (to - from) * (i + 0.5) / count))
                    .collect(Collectors.joining(","));
        }
    }
}
