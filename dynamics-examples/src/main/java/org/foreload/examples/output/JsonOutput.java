package org.foreload.examples.output;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;
import java.util.List;

/** A report as one JSON object. */
final class JsonOutput {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private JsonOutput() {}

    static String render(Report report) {
        ObjectNode object = MAPPER.createObjectNode();
        fill(object, report);
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try {
            return MAPPER.writer(printer).writeValueAsString(object) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void fill(ObjectNode object, Report report) {
        report.values().forEach((name, value) -> {
            if (value instanceof Double number) {
                if (Double.isFinite(number)) {
                    object.put(name, number);
                } else {
                    object.putNull(name);
                }
            } else if (value instanceof Boolean flag) {
                object.put(name, flag);
            } else if (value instanceof String text) {
                object.put(name, text);
            } else if (value instanceof Report part) {
                fill(object.putObject(name), part);
            } else if (value instanceof List<?> rows) {
                ArrayNode array = object.putArray(name);
                rows.forEach(row -> fill(array.addObject(), (Report) row));
            } else {
                object.putNull(name);
            }
        });
    }
}
