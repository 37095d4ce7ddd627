package org.foreload.examples.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.file.InputException;
import org.foreload.file.NearestName;
import org.foreload.file.ReleaseFile;

/** Release shapes on the command line: a name, or {@code table:FILE}. */
final class Shapes {

    private static final String TABLE = "table:";

    private Shapes() {}

    /** The names of the ready shapes. */
    static List<String> names() {
        return ReleaseShapes.all().stream().map(ReleaseShape::name).toList();
    }

    /**
     * One shape.
     *
     * @throws InputException if there is no such shape, or its table cannot be used
     */
    static ReleaseShape shape(String option, String text) {
        if (text.startsWith(TABLE)) {
            return ReleaseFile.read(path(option, text), text);
        }
        List<String> names = names();
        if (!names.contains(text)) {
            String hint = NearestName.of(text, names)
                    .map(nearest -> "; did you mean " + nearest + "?")
                    .orElse("");
            throw new InputException(
                    null, option, text, "must be one of " + String.join(", ", names) + ", " + TABLE + "FILE" + hint);
        }
        return ReleaseShapes.named(text);
    }

    /** Several shapes, each once. */
    static List<ReleaseShape> shapes(String option, List<String> texts) {
        List<ReleaseShape> shapes = new ArrayList<>();
        for (String text : texts) {
            ReleaseShape shape = shape(option, text);
            if (shapes.stream().anyMatch(one -> one.name().equals(shape.name()))) {
                throw new InputException(null, option, text, "must be given only once");
            }
            shapes.add(shape);
        }
        return shapes;
    }

    private static Path path(String option, String text) {
        String name = text.substring(TABLE.length());
        try {
            if (!name.isBlank()) {
                return Path.of(name);
            }
        } catch (InvalidPathException e) {
            // Said below.
        }
        throw new InputException(null, option, text, "must name a file after " + TABLE);
    }
}
