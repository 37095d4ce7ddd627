package org.foreload.examples.recording;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.foreload.file.InputException;

/** Reads recorded runs: tables of text, and GPX. */
public final class RecordingFile {

    private RecordingFile() {}

    /**
     * Reads a file in memory that does not grow with it.
     *
     * @param path where
     * @param wish which column holds what
     * @param cut which part is wanted
     * @param need what the file cannot do without
     * @throws InputException if there is no such file, or nothing in it can be used, or a column that is needed cannot
     *     be: text, or one and the same number throughout
     */
    public static RecordedFile read(Path path, ColumnWish wish, Cut cut, Need need) {
        String file = path.toString();
        if (Files.isDirectory(path)) {
            throw new InputException(file, null, null, "must be a file, but is a directory");
        }
        if (!Files.exists(path)) {
            throw new InputException(file, null, null, "no such file");
        }
        try (InputStream in = Files.newInputStream(path)) {
            return read(in, file, wish, cut, need);
        } catch (IOException e) {
            throw new InputException(file, null, null, "cannot be read");
        }
    }

    /** The same from a stream. */
    static RecordedFile read(InputStream in, String file, ColumnWish wish, Cut cut, Need need) throws IOException {
        BufferedInputStream bytes = new BufferedInputStream(in);
        return GpxRecording.looksLike(bytes)
                ? GpxRecording.read(bytes, file, cut)
                : CsvRecording.read(bytes, file, wish, cut, need);
    }
}
