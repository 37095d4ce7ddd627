package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.recording.Bend;
import org.foreload.recording.RecordedCorners;

/** What was read of a file, in sentences: which columns were guessed, and what could not be used. */
final class ReadWords {

    /** Reasons that are named at most. */
    static final int MOST = 3;

    private ReadWords() {}

    /** For all files of an answer; what is alike in them is said once. */
    static List<String> sentences(List<RecordedFile> files) {
        List<String> sentences = new ArrayList<>();
        Map<String, String> guesses = new LinkedHashMap<>();
        for (RecordedFile file : files) {
            if (file.channels().stream().anyMatch(RecordedFile.FoundChannel::guessed)) {
                guesses.merge(guesses(file), file.name(), (one, other) -> one + " and " + other);
            }
        }
        guesses.forEach((guess, names) ->
                sentences.add(names + ", as guessed from names and units: " + guess + "; --columns says otherwise."));
        for (RecordedFile file : files) {
            file.ignored()
                    .forEach(one ->
                            sentences.add(file.name() + ", " + one.name() + ": " + one.reason() + "; it is not used."));
        }
        for (RecordedFile file : files) {
            if (!file.leftOut().isEmpty()) {
                String more = file.leftOut().size() > MOST ? "; and more, which recording lists" : "";
                sentences.add(file.name() + ", not used: "
                        + file.leftOut().stream()
                                .limit(MOST)
                                .map(ReadWords::lines)
                                .collect(Collectors.joining("; "))
                        + more + ".");
            }
        }
        return sentences;
    }

    /** What a lap does not show: its holes, and the corners that it begins or ends in. */
    static List<String> holes(RecordedFile file, MeasuredLap lap) {
        Stream<String> holes = lap.run().holes().stream()
                .limit(MOST)
                .map(hole -> String.format(
                        Locale.ROOT,
                        "%s, lap %d, has a hole of %.1f s from %.0f to %.0f m, %s: what lies in it, or next to it, is not given, "
                                + "or only to its length.",
                        file.name(),
                        lap.number(),
                        hole.lasts(),
                        hole.from(),
                        hole.to(),
                        RecordingAnswer.missing(hole)));
        return Stream.concat(holes, cut(file, lap).stream()).toList();
    }

    /** The corners that a lap begins or ends in. */
    static List<String> cut(RecordedFile file, MeasuredLap lap) {
        return RecordedCorners.cut(lap.run()).stream()
                .map(bend -> String.format(
                        Locale.ROOT,
                        "%s, lap %d, %s inside a corner, %.0f to %.0f m: it is neither measured nor counted.",
                        file.name(),
                        lap.number(),
                        atStart(lap, bend) ? "begins" : "ends",
                        bend.start(),
                        bend.end()))
                .toList();
    }

    /** Whether it is the start of a lap that cuts a corner; else it is the end. */
    static boolean atStart(MeasuredLap lap, Bend bend) {
        return bend.start() - lap.run().first() < lap.run().last() - bend.end();
    }

    private static String guesses(RecordedFile file) {
        return file.channels().stream()
                .filter(RecordedFile.FoundChannel::guessed)
                .map(ReadWords::column)
                .collect(Collectors.joining(", "));
    }

    /** {@code speed is Speed (km/h)}; with the unit behind it where the header does not say it. */
    private static String column(RecordedFile.FoundChannel channel) {
        boolean said = channel.unit().isEmpty() || channel.column().contains(channel.unit());
        return channel.name() + " is " + channel.column() + (said ? "" : " in " + channel.unit());
    }

    private static String lines(RecordedFile.Unused unused) {
        String lines = unused.firstLine() == unused.lastLine()
                ? "line " + unused.firstLine()
                : "lines " + unused.firstLine() + " to " + unused.lastLine();
        return lines + ", " + unused.reason()
                + (unused.text().isEmpty() ? "" : ", \"" + unused.text() + "\" in column " + unused.column());
    }
}
