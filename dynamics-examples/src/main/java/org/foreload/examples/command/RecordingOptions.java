package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Supplier;
import org.foreload.examples.recording.ColumnWish;
import org.foreload.examples.recording.Cut;
import org.foreload.examples.recording.Need;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.RecordingFile;
import org.foreload.file.InputException;
import picocli.CommandLine.Option;

/** Which part of a recorded file, and which column holds what. */
final class RecordingOptions {

    @Option(
            names = "--columns",
            paramLabel = "<columns>",
            description =
                    "Which column holds what: speed=Speed:km/h,brake=P front:bar, or a JSON file "
                            + "{\"speed\": {\"column\": \"Speed\", \"unit\": \"km/h\"}}. A minus before a unit flips the sign; "
                            + "brake= takes no column. What is not named is guessed from names and units, and the guess is shown.")
    private String columns;

    @Option(names = "--from", paramLabel = "<m>", description = "First station of each lap, m.")
    private Double from;

    @Option(names = "--to", paramLabel = "<m>", description = "Last station of each lap, m.")
    private Double to;

    @Option(names = LAP, paramLabel = "<number>", description = "Only this lap, as the file counts them, or from 1.")
    private Long lap;

    /** The columns that the user names. */
    ColumnWish columns() {
        return columns == null ? ColumnWish.NONE : ColumnWish.of(columns);
    }

    /** The part that is wanted. */
    Cut cut() {
        return cut(lap);
    }

    private Cut cut(Long number) {
        if (from != null && to != null && !(from < to)) {
            throw new InputException(null, "--to", String.valueOf(to), "must be more than --from (" + from + ")");
        }
        return new Cut(optional(from), optional(to), number == null ? OptionalLong.empty() : OptionalLong.of(number));
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** Reads a file. */
    RecordedFile read(Path file) {
        return RecordingFile.read(file, columns(), cut(), Need.CORNERS);
    }

    /** Cuts a run made here as a file would be. */
    RecordedFile cut(RecordedFile made) {
        return made.cut(cut());
    }

    /** Reads a file to compare it, and perhaps to advise its driver. */
    RecordedFile readToCompare(Path file, boolean advise) {
        return RecordingFile.read(file, columns(), cut(), advise ? Need.ADVICE : Need.TIMES);
    }

    /** Reads another lap of a file to compare with. */
    RecordedFile readReference(Path file, Long number) {
        return named(() -> RecordingFile.read(file, columns(), cut(number), Need.TIMES));
    }

    /** Cuts another lap. */
    RecordedFile cut(RecordedFile made, Long number) {
        return named(() -> made.cut(cut(number)));
    }

    /** A lap that is not there is refused under the name of the option that asked for it. */
    private static RecordedFile named(Supplier<RecordedFile> reading) {
        try {
            return reading.get();
        } catch (InputException e) {
            throw LAP.equals(e.field()) ? new InputException(e.file(), REFERENCE_LAP, e.value(), e.getMessage()) : e;
        }
    }

    private static final String LAP = "--lap";

    /** The option for the reference's lap. */
    static final String REFERENCE_LAP = "--reference-lap";
}
