package org.foreload.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.foreload.lap.Circuit;
import org.foreload.path.Corner;

/** A circuit as a JSON file: {@code name} and {@code corners}, a list of corners as in their own files. */
public final class CircuitFile {

    private static final List<String> NAMES = List.of("name", "corners");

    private CircuitFile() {}

    /**
     * Reads a circuit.
     *
     * @param path the file; centre lines are looked for beside it
     * @throws InputException if the file or a value in it cannot be used
     */
    public static Loaded<Circuit> read(Path path) {
        String file = path.toString();
        return parse(TextFile.read(path, file), file, path.toAbsolutePath().getParent());
    }

    /**
     * Reads a circuit from JSON text.
     *
     * @param text the JSON
     * @param file the name that errors and warnings give
     * @param directory where centre lines are looked for
     * @throws InputException if a value cannot be used
     */
    public static Loaded<Circuit> parse(String text, String file, Path directory) {
        List<Warning> warnings = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        JsonNode json = JsonText.read(text, file);
        JsonFields fields = JsonFields.of(file, json, NAMES, warnings);
        String name = fields.text("name");
        int count = fields.objects("corners", CornerFile.NAMES).size();
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Loaded<Corner> corner = CornerFile.parse(json.get("corners").get(i).toString(), place(file, i), directory);
            warnings.addAll(corner.warnings());
            notes.addAll(corner.notes());
            corners.add(corner.value());
        }
        return new Loaded<>(fields.build(() -> new Circuit(name, corners)), warnings, notes);
    }

    /** The name that errors give to one corner of a circuit, counted from 0. */
    public static String place(String file, int corner) {
        return file + ", corner " + (corner + 1);
    }
}
