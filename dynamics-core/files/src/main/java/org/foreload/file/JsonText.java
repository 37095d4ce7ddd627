package org.foreload.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;

/** JSON text to tree. Mistakes in the text come out as one line with line and column. */
final class JsonText {

    /** Deepest nesting; the files need four levels. */
    private static final int DEEPEST = 32;

    // NaN and Infinity are let through here so that the field can be named when they are refused.
    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .build())
                    .build())
            .build();

    private static final ObjectReader READER = MAPPER.reader().with(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);

    private JsonText() {}

    /**
     * Reads one JSON object.
     *
     * @throws InputException if the text is not one JSON object, or has a field twice
     */
    static ObjectNode read(String text, String file) {
        try (JsonParser parser = MAPPER.createParser(text)) {
            JsonNode node;
            try {
                node = READER.readTree(parser);
                if (node != null && !node.isMissingNode() && parser.nextToken() != null) {
                    throw new InputException(file, where(parser.currentTokenLocation()), null, "text after the end");
                }
            } catch (JsonProcessingException e) {
                throw refusal(e, parser, file);
            } catch (NumberFormatException e) {
                // Exponents beyond what BigDecimal knows.
                throw new InputException(file, parser.currentName(), parser.getText(), "must be a finite number");
            }
            if (node == null || node.isMissingNode()) {
                throw new InputException(file, null, null, "is empty; it must hold a JSON object");
            }
            if (!(node instanceof ObjectNode object)) {
                throw new InputException(file, null, node.toString(), "must be a JSON object: { … }");
            }
            return object;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputException refusal(JsonProcessingException e, JsonParser parser, String file)
            throws IOException {
        String message = e.getOriginalMessage();
        if (e instanceof StreamConstraintsException) {
            return new InputException(
                    file,
                    null,
                    null,
                    message.startsWith("Document nesting")
                            ? "is nested deeper than " + DEEPEST + " levels"
                            : "has a name, text or number that is too long");
        }
        String place = where(e.getLocation());
        if (message.startsWith("Duplicate")) {
            return new InputException(file, parser.currentName(), null, "is given twice (" + place + ")");
        }
        return new InputException(file, place, null, "is not JSON: " + firstSentence(message));
    }

    private static String firstSentence(String message) {
        int end = message.indexOf('\n');
        return end < 0 ? message : message.substring(0, end);
    }

    private static String where(JsonLocation location) {
        return "line " + location.getLineNr() + ", column " + location.getColumnNr();
    }
}
