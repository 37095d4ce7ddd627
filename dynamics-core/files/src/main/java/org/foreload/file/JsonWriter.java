package org.foreload.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.core.util.Separators.Spacing;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;

/** JSON as these files are written: two spaces a level, LF. */
public final class JsonWriter {

    private static final ObjectWriter WRITER = new ObjectMapper().writer(printer());

    private JsonWriter() {}

    private static DefaultPrettyPrinter printer() {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        return new DefaultPrettyPrinter(Separators.createDefaultInstance().withObjectFieldValueSpacing(Spacing.AFTER))
                .withObjectIndenter(indenter)
                .withArrayIndenter(indenter);
    }

    /** The object as text with a newline at the end. */
    public static String write(ObjectNode object) {
        try {
            return WRITER.writeValueAsString(object) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
