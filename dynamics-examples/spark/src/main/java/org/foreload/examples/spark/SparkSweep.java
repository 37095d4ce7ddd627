package org.foreload.examples.spark;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskEnd;
import org.foreload.examples.command.Foreload;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.examples.sweep.Stop;
import org.foreload.file.InputException;

/**
 * A sweep over Apache Spark: {@code foreload explore}, shared out.
 *
 * <p>Spark maps the numbers of the parts to what {@code explore --shard I/N} prints; {@code foreload join} makes one
 * answer of it.
 */
public final class SparkSweep {

    private SparkSweep() {}

    /**
     * Runs the sweep and exits with the status that {@code foreload} would have.
     *
     * @param args as typed; {@code --help} explains them
     */
    public static void main(String[] args) {
        Locale.setDefault(Locale.ROOT);
        System.setProperty("java.awt.headless", "true");
        System.exit(run(args, new FileOutputStream(FileDescriptor.out), new FileOutputStream(FileDescriptor.err)));
    }

    /**
     * The same, without an exit.
     *
     * @param out where the answer goes
     * @param err where warnings, progress and errors go
     * @return the exit status
     */
    static int run(String[] args, OutputStream out, OutputStream err) {
        PrintWriter errors = new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true);
        try {
            SparkOptions options = SparkOptions.of(args);
            if (options.help()) {
                out.write(SparkOptions.usage().getBytes(StandardCharsets.UTF_8));
                return Foreload.DONE;
            }
            PartOfSweep.Answer empty = PartOfSweep.empty(options.ofEachPart());
            if (!empty.done()) {
                return failed(empty, errors);
            }
            long begun = System.nanoTime();
            List<PartOfSweep.Answer> parts = parts(options, errors);
            for (PartOfSweep.Answer part : parts) {
                if (!part.done()) {
                    return failed(part, errors);
                }
            }
            long found = System.nanoTime();
            int status = join(options, parts, out, err);
            if (!options.quiet()) {
                errors.printf(
                        Locale.ROOT,
                        "parts %.1f s, join %.1f s%n",
                        seconds(begun, found),
                        seconds(found, System.nanoTime()));
            }
            return status;
        } catch (InputException e) {
            errors.println(e.line());
            return Foreload.WRONG;
        } catch (Exception e) {
            // Spark's own exception is checked, and no method of its Java interface says so.
            errors.println("the computation failed: "
                    + e.toString().lines().findFirst().orElse(""));
            return Foreload.FAILED;
        }
    }

    private static int failed(PartOfSweep.Answer part, PrintWriter errors) {
        errors.print(part.said());
        errors.flush();
        return part.status();
    }

    private static double seconds(long from, long to) {
        return (to - from) * 1e-9;
    }

    /** Computes all parts, in their order. */
    private static List<PartOfSweep.Answer> parts(SparkOptions options, PrintWriter errors) {
        try (JavaSparkContext spark = new JavaSparkContext(settings(options))) {
            int of = options.parts(spark.defaultParallelism());
            List<Integer> numbers = IntStream.rangeClosed(1, of).boxed().toList();
            if (!options.quiet()) {
                spark.sc().addSparkListener(new Shown(errors, of));
            }
            return spark.parallelize(numbers, of)
                    .map(new PartOfSweep(options.ofEachPart(), of))
                    .collect();
        }
    }

    private static SparkConf settings(SparkOptions options) {
        SparkConf settings = new SparkConf().setIfMissing("spark.app.name", "foreload sweep");
        if (options.master() != null) {
            settings.setMaster(options.master());
        }
        settings.setIfMissing("spark.master", "local[*]");
        if (settings.get("spark.master").startsWith("local[")) {
            // Nobody else looks at it or joins in.
            settings.setIfMissing("spark.ui.enabled", "false");
            settings.setIfMissing("spark.driver.host", "localhost");
            settings.setIfMissing("spark.driver.bindAddress", "127.0.0.1");
        }
        return settings;
    }

    private static int join(SparkOptions options, List<PartOfSweep.Answer> parts, OutputStream out, OutputStream err)
            throws IOException {
        Path folder = options.keep() == null
                ? Files.createTempDirectory("foreload-parts")
                : Files.createDirectories(options.keep());
        try {
            List<String> words = new ArrayList<>(List.of("join"));
            for (int i = 0; i < parts.size(); i++) {
                Path file = folder.resolve("part-" + (i + 1) + ".jsonl");
                words.add(Files.writeString(file, parts.get(i).text()).toString());
            }
            words.addAll(options.ofJoin());
            return Foreload.run(words.toArray(String[]::new), out, err);
        } finally {
            if (options.keep() == null) {
                removed(folder);
            }
        }
    }

    private static void removed(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    /** Counts the parts that are done. */
    private static final class Shown extends SparkListener {

        private final AtomicInteger done = new AtomicInteger();
        private final ShownProgress progress;
        private final int of;

        Shown(PrintWriter errors, int of) {
            this.progress = ShownProgress.lines(errors::println, new Stop(), "parts");
            this.of = of;
        }

        @Override
        public void onTaskEnd(SparkListenerTaskEnd task) {
            if (task.taskInfo().successful()) {
                progress.update(done.incrementAndGet(), of);
            }
        }
    }
}
