package org.foreload.examples.fuzz;

import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.RecordingAnswer;
import org.foreload.examples.output.Format;
import org.foreload.examples.recording.ColumnWish;
import org.foreload.examples.recording.Cut;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.Need;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.RecordingFile;
import org.foreload.file.InputException;
import org.foreload.recording.Cleaning;

/** Any bytes are a recorded run that is measured, or a refusal. */
public final class RecordingFuzz {

    private static final Cleaning QUICK = new Cleaning(0.1, 0.005, 0.9, 2, 1);

    private RecordingFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        var path = Scratch.write("run.csv", data);
        try {
            RecordedFile read = RecordingFile.read(path, ColumnWish.NONE, Cut.NONE, Need.CORNERS);
            var laps =
                    read.laps().stream().map(lap -> MeasuredLap.of(lap, QUICK)).toList();
            if (Format.JSON.render(RecordingAnswer.of(read, laps)).isBlank()) {
                throw new IllegalStateException("no answer");
            }
        } catch (InputException refused) {
            OneLineCheck.of(refused);
        } catch (InvalidValueException refused) {
            OneLineCheck.of(InputException.of("run.csv", refused.field(), refused));
        }
    }
}
