package org.foreload.examples.command;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Locale;
import org.foreload.examples.output.WholeFile;
import org.foreload.file.JsonWriter;
import org.foreload.line.LinePoint;
import org.foreload.line.RoadLine;
import org.foreload.path.Corner;

/**
 * A line as a corner file with its points beside it. The points are a metre apart and have a micrometre: whoever drives
 * by them sees their second differences.
 */
final class LineFile {

    private static final double STEP = 1;

    private static final String CORNER = ".json";

    private final WholeFile corner;
    private final WholeFile points;
    private final String pointsName;

    private LineFile(WholeFile corner, WholeFile points, String pointsName) {
        this.corner = corner;
        this.points = points;
        this.pointsName = pointsName;
    }

    /**
     * A place for both files.
     *
     * @param option that named it
     * @param file of the corner
     * @throws org.foreload.file.InputException if nothing can be written there
     */
    static LineFile at(String option, Path file) {
        WholeFile corner = WholeFile.at(option, file, CORNER);
        String name = file.getFileName().toString();
        String beside = name.substring(0, name.length() - CORNER.length()) + ".csv";
        return new LineFile(corner, WholeFile.at(option, file.resolveSibling(beside), ".csv"), beside);
    }

    /** Writes both. */
    void write(Corner road, RoadLine line) {
        StringBuilder rows = new StringBuilder("x_m,y_m,width_left_m,width_right_m,banking_deg,grade_percent\n");
        for (LinePoint point : line.points(STEP)) {
            rows.append(String.format(
                    Locale.ROOT,
                    "%.6f,%.6f,%.4f,%.4f,%.4f,%.4f%n",
                    point.x(),
                    point.y(),
                    point.widthLeft(),
                    point.widthRight(),
                    Math.toDegrees(point.banking()),
                    100 * Math.tan(point.grade())));
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("name", road.name() + ", driven line");
        node.put("approach_speed_mps", road.approachSpeed());
        node.put("centre_line_csv", pointsName);
        points.write(rows.toString());
        corner.write(JsonWriter.write(node));
    }
}
