package org.foreload.file;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Corner;
import org.foreload.path.MeasuredLine;
import org.foreload.path.MeasuredPath;

/**
 * A corner file whose line was measured: {@code centre_line_csv}. The straights {@code approach_length_m} and
 * {@code exit_length_m} are set before the first and after the last point; left out, the line is as long as it was
 * measured.
 */
final class MeasuredCorner {

    /**
     * Smoothing where none is asked for, m: what a good survey scatters; the core never smooths more than the scatter.
     */
    static final double DEFAULT_SMOOTHING = 0.1;

    private MeasuredCorner() {}

    static Corner read(JsonFields fields, String corner, Path directory) {
        if (fields.has("segments")) {
            throw fields.refuse("segments", "must not be given together with centre_line_csv");
        }
        for (String slope : List.of(CornerFile.GRADE, CornerFile.BANKING)) {
            if (fields.has(slope)) {
                throw fields.refuse(slope, "must be a column of the centre_line_csv");
            }
        }
        Path line = directory.resolve(fields.path("centre_line_csv"));
        try {
            return read(fields, line);
        } catch (InputException e) {
            throw line.toString().equals(e.file()) ? askedFor(e, corner) : e;
        }
    }

    /** The refusal of a line, which also names the corner that asked for it. */
    private static InputException askedFor(InputException refusal, String corner) {
        String by = " (centre_line_csv of " + corner + ")";
        return new InputException(refusal.file(), refusal.field(), refusal.value(), refusal.getMessage() + by);
    }

    private static Corner read(JsonFields fields, Path csv) {
        String name = fields.text("name");
        double approachSpeed = CornerFile.approachSpeed(fields);
        double approachLength = fields.has("approach_length_m") ? CornerFile.length(fields, "approach_length_m") : 0;
        double exitLength = fields.has("exit_length_m") ? CornerFile.length(fields, "exit_length_m") : 0;
        double smoothing = fields.number("smoothing_m", DEFAULT_SMOOTHING);
        CentreLineFile file = CentreLineFile.read(csv, csv.toString());
        MeasuredLine line = line(fields, file);
        MeasuredPath path = fit(fields, file, () -> MeasuredPath.fit(line, smoothing, approachLength, exitLength));
        return fields.build(() -> new Corner(name, approachSpeed, path));
    }

    /** Fits; a refusal names the file that is to blame: the points or the corner. */
    private static MeasuredPath fit(JsonFields fields, CentreLineFile file, Supplier<MeasuredPath> fit) {
        try {
            return fit.get();
        } catch (InvalidValueException e) {
            if (e.field().startsWith("x_m")) {
                throw file.refusal(e);
            }
            throw fields.refusal(e.field().equals("tolerance_m") ? "smoothing_m" : e.field(), e);
        }
    }

    private static MeasuredLine line(JsonFields fields, CentreLineFile file) {
        if (!file.hasWidths()) {
            double halfWidth = fields.number("half_width_m");
            if (!(halfWidth > 0)) {
                throw fields.refuse("half_width_m", "must be a number above 0");
            }
            return file.line(halfWidth);
        }
        if (fields.has("half_width_m")) {
            fields.number("half_width_m");
            fields.warn("half_width_m", "has no effect; the centre line brings its own widths");
        }
        return file.line(1);
    }
}
