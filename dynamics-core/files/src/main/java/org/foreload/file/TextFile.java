package org.foreload.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a whole text file, within bounds. */
final class TextFile {

    /** Largest file that is read, bytes; far beyond any car or corner, far below the memory. */
    static final int LARGEST = 16 * 1024 * 1024;

    private TextFile() {}

    /**
     * Reads UTF-8 text; a byte-order mark is dropped.
     *
     * @param path where
     * @param file the name that errors give
     * @throws InputException if there is no such readable, textual file of at most 16 MB
     */
    static String read(Path path, String file) {
        if (Files.isDirectory(path)) {
            throw new InputException(file, null, null, "must be a file, but is a directory");
        }
        if (!Files.exists(path)) {
            throw new InputException(file, null, null, "no such file");
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(path)) {
            bytes = in.readNBytes(LARGEST + 1);
        } catch (IOException e) {
            throw new InputException(file, null, null, "cannot be read");
        }
        if (bytes.length > LARGEST) {
            throw new InputException(file, null, null, "is larger than 16 MB");
        }
        return text(bytes, file);
    }

    private static String text(byte[] bytes, String file) {
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new InputException(file, null, null, "is not a text file in UTF-8");
        }
        if (text.indexOf('\0') >= 0) {
            throw new InputException(file, null, null, "is not a text file in UTF-8");
        }
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }
}
