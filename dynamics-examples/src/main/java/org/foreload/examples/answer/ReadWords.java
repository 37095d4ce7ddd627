package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.foreload.examples.recording.RecordedFile;

/** What was read of a file, in sentences: which columns were guessed, and what could not be used. */
final class ReadWords {

    /** Reasons that are named at most. */
    private static final int MOST = 3;

    private ReadWords() {}

    static List<String> sentences(RecordedFile file) {
        List<String> sentences = new ArrayList<>();
        if (file.channels().stream().anyMatch(RecordedFile.FoundChannel::guessed)) {
            sentences.add(file.name() + ", as guessed from names and units: "
                    + file.channels().stream()
                            .filter(RecordedFile.FoundChannel::guessed)
                            .map(ReadWords::column)
                            .collect(Collectors.joining(", "))
                    + "; --columns says otherwise.");
        }
        if (!file.leftOut().isEmpty()) {
            String more = file.leftOut().size() > MOST ? "; and more, which recording lists" : "";
            sentences.add(file.name() + ", not used: "
                    + file.leftOut().stream().limit(MOST).map(ReadWords::lines).collect(Collectors.joining("; "))
                    + more + ".");
        }
        return sentences;
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
        return lines + ", " + unused.reason();
    }
}
