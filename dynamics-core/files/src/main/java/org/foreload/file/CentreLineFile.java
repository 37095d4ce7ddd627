package org.foreload.file;

import java.nio.file.Path;
import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.MeasuredLine;

/**
 * A measured line as a CSV file of {@link NumberColumns}, one point a line, in driving order.
 *
 * <p>Columns, in any order: {@code x_m, y_m} in the plane, right-handed as seen from above (x east, y north, or any
 * frame turned from that); and if known {@code width_left_m, width_right_m} from the line to the edges,
 * {@code banking_deg} (positive where the left edge is the lower one: it helps a left turn), {@code grade_percent}
 * (positive uphill).
 */
final class CentreLineFile {

    static final List<String> COLUMNS =
            List.of("x_m", "y_m", "width_left_m", "width_right_m", CornerFile.BANKING, CornerFile.GRADE);

    private final String file;
    private final NumberColumns columns;

    private CentreLineFile(String file, NumberColumns columns) {
        this.file = file;
        this.columns = columns;
    }

    /**
     * Reads the columns of a line.
     *
     * @throws InputException if the file or a value in it cannot be used; the field names column and row
     */
    static CentreLineFile read(Path path, String file) {
        NumberColumns columns = NumberColumns.read(path, file, COLUMNS);
        columns.require("x_m", true);
        columns.require("y_m", true);
        columns.require("width_left_m", columns.has("width_right_m"));
        columns.require("width_right_m", columns.has("width_left_m"));
        columns.between(CornerFile.BANKING, -90, 90, "degrees");
        return new CentreLineFile(file, columns);
    }

    /** Whether the edges of the track are known. */
    boolean hasWidths() {
        return columns.has("width_left_m");
    }

    /**
     * The line.
     *
     * @param halfWidth distance to either edge where the file does not know it, m
     * @throws InputException if the points make no line
     */
    MeasuredLine line(double halfWidth) {
        try {
            MeasuredLine line = MeasuredLine.of(columns.column("x_m", 1), columns.column("y_m", 1), halfWidth);
            if (hasWidths()) {
                line = line.withWidths(columns.column("width_left_m", 1), columns.column("width_right_m", 1));
            }
            if (columns.has(CornerFile.BANKING)) {
                line = line.withBankingAngles(columns.column(CornerFile.BANKING, Math.PI / 180));
            }
            if (columns.has(CornerFile.GRADE)) {
                line = line.withGradeFractions(columns.column(CornerFile.GRADE, 0.01));
            }
            return line;
        } catch (InvalidValueException e) {
            throw refusal(e);
        }
    }

    /** A refusal of the points, which names this file. */
    InputException refusal(InvalidValueException e) {
        return InputException.of(file, e.field(), e);
    }
}
