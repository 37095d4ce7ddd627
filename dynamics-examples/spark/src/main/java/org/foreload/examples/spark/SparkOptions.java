package org.foreload.examples.spark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.foreload.file.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Unmatched;

/** What the program is asked: its own options, and those of {@code foreload explore}. */
@Command(
        name = "spark-sweep",
        sortOptions = false,
        synopsisHeading = "Usage: ",
        customSynopsis = "spark-sweep [options] [options of 'foreload explore']",
        description = {
            "",
            "Shares a sweep out over Apache Spark and joins the parts: the answer is that of 'foreload explore', byte for byte. "
                    + "Without a cluster it runs on all cores of this machine. Files that the options name must be the same on "
                    + "all machines, under the same path.",
            ""
        },
        optionListHeading = "Options:%n",
        footer = {
            "",
            "Example:  spark-sweep --parts 8 --demo-car road --demo-corner hairpin --format json",
            "",
            "A model of cars on a closed course or in a simulator: it explores and explains, it does not",
            "instruct. Local rules, the car's maker and a qualified instructor come first."
        })
final class SparkOptions {

    /** Parts for each core: a core that is done early finds another, and few parts are begun. */
    private static final int EACH_CORE = 4;

    /** Options of 'explore' that have no meaning here, each with what to do instead. */
    private static final Map<String, String> REFUSED = Map.of(
            "--shard", "is what this program gives each part; say how many there are with --parts",
            "--checkpoint", "is of no use here: Spark computes a lost part anew; keep parts with --keep",
            "--picture", "is drawn by 'foreload join': keep the parts with --keep");

    @Option(
            names = "--parts",
            paramLabel = "<n>",
            description = "Parts of the sweep, one task each. Default: four for each core that Spark has.")
    private Integer parts;

    @Option(
            names = "--master",
            paramLabel = "<url>",
            description = "Spark's master. Default: what spark-submit says, or local[*], all cores of this machine.")
    private String master;

    @Option(
            names = "--keep",
            paramLabel = "<folder>",
            description = "Keep the parts in this new or empty folder, for 'foreload join'.")
    private Path keep;

    @Option(
            names = "--threads",
            paramLabel = "<n>",
            description = "Threads that join the parts. Default: one for each processor.")
    private String threads;

    @Option(names = "--format", paramLabel = "<format>", description = "table, json or csv, as in 'foreload explore'.")
    private String format;

    @Option(names = "--units", paramLabel = "<units>", description = "kmh, mph or si, as in 'foreload explore'.")
    private String units;

    @Option(names = "--quiet", description = "Show no progress.")
    private boolean quiet;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    @Unmatched
    private List<String> sweep = new ArrayList<>();

    private SparkOptions() {}

    /**
     * Reads what was typed.
     *
     * @throws InputException if an option is wrong that is not the sweep's own; those are refused by the parts
     */
    static SparkOptions of(String... args) {
        SparkOptions options = new SparkOptions();
        try {
            new CommandLine(options).setExpandAtFiles(false).parseArgs(args);
        } catch (ParameterException e) {
            throw new InputException(null, null, null, e.getMessage());
        }
        options.check();
        return options;
    }

    private void check() {
        for (String word : sweep) {
            String name = word.split("=", 2)[0];
            if (REFUSED.containsKey(name)) {
                throw new InputException(null, name, null, REFUSED.get(name));
            }
        }
        if (parts != null && !(parts >= 1 && parts <= PartOfSweep.MOST_PARTS)) {
            throw new InputException(null, "--parts", parts.toString(), "must be from 1 to " + PartOfSweep.MOST_PARTS);
        }
        if (keep != null && Files.exists(keep) && !empty(keep)) {
            throw new InputException(null, "--keep", keep.toString(), "must be a new or an empty folder");
        }
    }

    private static boolean empty(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        } catch (IOException e) {
            return false;
        }
    }

    boolean help() {
        return help;
    }

    static String usage() {
        return new CommandLine(new SparkOptions()).setUsageHelpWidth(100).getUsageMessage();
    }

    boolean quiet() {
        return quiet;
    }

    /** Spark's master; null for what Spark is set to. */
    String master() {
        return master;
    }

    /** Where to keep the parts; null for nowhere. */
    Path keep() {
        return keep;
    }

    /**
     * Number of parts.
     *
     * @param cores that Spark has
     */
    int parts(int cores) {
        return parts == null ? Math.min(PartOfSweep.MOST_PARTS, EACH_CORE * cores) : parts;
    }

    /**
     * Options of each part; those of the answer are among them, so that what is wrong there is seen at once. A format
     * that is right is not: a part is always lines of JSON.
     */
    List<String> ofEachPart() {
        List<String> words = new ArrayList<>(sweep);
        words.addAll(ofAnswer());
        int place = words.indexOf("--format");
        if (place >= 0 && List.of("table", "csv").contains(format)) {
            words.subList(place, place + 2).clear();
        }
        return words;
    }

    /** Options of the joined answer. */
    List<String> ofJoin() {
        List<String> words = new ArrayList<>(ofAnswer());
        if (threads != null) {
            words.addAll(List.of("--threads", threads));
        }
        if (quiet) {
            words.add("--quiet");
        }
        return words;
    }

    private List<String> ofAnswer() {
        List<String> words = new ArrayList<>();
        if (format != null) {
            words.addAll(List.of("--format", format));
        }
        if (units != null) {
            words.addAll(List.of("--units", units));
        }
        return words;
    }
}
