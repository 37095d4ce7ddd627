package org.foreload.examples.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.foreload.file.JsonWriter;

/** A report as one JSON object. */
final class JsonOutput {

    private JsonOutput() {}

    static String render(Report report) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        fill(object, report);
        return JsonWriter.write(object);
    }

    private static void fill(ObjectNode object, Report report) {
        report.values().forEach((name, value) -> {
            if (value instanceof Double number) {
                if (Double.isFinite(number)) {
                    object.put(name, number);
                } else {
                    object.putNull(name);
                }
            } else if (value instanceof Long count) {
                object.put(name, count);
            } else if (value instanceof Boolean flag) {
                object.put(name, flag);
            } else if (value instanceof String text) {
                object.put(name, text);
            } else if (value instanceof Report part) {
                fill(object.putObject(name), part);
            } else if (value instanceof Report.Rows list) {
                ArrayNode array = object.putArray(name);
                list.rows().forEach(row -> fill(array.addObject(), row));
            } else {
                object.putNull(name);
            }
        });
    }
}
