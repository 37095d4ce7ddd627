package org.foreload.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.regex.Pattern;

/** JSON text to tree. Mistakes in the text come out as one line with line and column. */
final class JsonText {

    /** Deepest nesting; the files need four levels. */
    private static final int DEEPEST = 32;

    // NaN and Infinity are let through here so that the field can be named when they are refused.
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .streamReadConstraints(
                    StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
            .build();

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonText() {}

    /**
     * Reads one JSON object.
     *
     * @throws InputException if the text is not one JSON object, or has a field twice
     */
    static ObjectNode read(String text, String file) {
        try (JsonParser parser = FACTORY.createParser(text)) {
            JsonNode node;
            try {
                node = parser.nextToken() == null ? null : tree(parser);
                if (node != null && parser.nextToken() != null) {
                    throw new InputException(file, where(parser.currentTokenLocation()), null, "text after the end");
                }
            } catch (JsonProcessingException e) {
                throw refusal(e, parser, file);
            } catch (NumberFormatException e) {
                // Exponents beyond what BigDecimal knows.
                throw new InputException(file, parser.currentName(), parser.getText(), "must be a finite number");
            }
            if (node == null) {
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

    /**
     * The tree from the current token on. A mapper would build the same, and take longer to start than most answers
     * take: it prepares for classes of any kind.
     */
    private static JsonNode tree(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> {
                ObjectNode object = NODES.objectNode();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    object.set(name, tree(parser));
                }
                yield object;
            }
            case START_ARRAY -> {
                ArrayNode array = NODES.arrayNode();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    array.add(tree(parser));
                }
                yield array;
            }
            case VALUE_STRING -> NODES.textNode(parser.getText());
            case VALUE_NUMBER_INT -> NODES.numberNode(parser.getBigIntegerValue());
            case VALUE_NUMBER_FLOAT ->
                parser.isNaN() ? NODES.numberNode(parser.getDoubleValue()) : NODES.numberNode(parser.getDecimalValue());
            case VALUE_TRUE, VALUE_FALSE -> NODES.booleanNode(parser.getBooleanValue());
            default -> NODES.nullNode();
        };
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
        return new InputException(file, place, null, "is not JSON: " + plain(message));
    }

    /** What the parser says, without the places and settings of its own. */
    private static String plain(String message) {
        int end = message.indexOf('\n');
        String first = end < 0 ? message : message.substring(0, end);
        first = BEGUN.matcher(first).replaceAll("that begins in line $1, column $2");
        return COMMENT.matcher(first).replaceAll("JSON has no comments");
    }

    private static final Pattern BEGUN = Pattern.compile("\\(start marker at .*line: (\\d+), column: (\\d+)\\]\\)");

    private static final Pattern COMMENT = Pattern.compile("maybe a \\(non-standard\\) comment\\?.*");

    private static String where(JsonLocation location) {
        return "line " + location.getLineNr() + ", column " + location.getColumnNr();
    }
}
