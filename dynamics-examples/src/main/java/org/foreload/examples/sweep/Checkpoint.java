package org.foreload.examples.sweep;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.foreload.braking.Braking;
import org.foreload.file.InputException;
import org.foreload.strategy.SweepMemory;

/**
 * A sweep's results so far, in a file of JSON lines: the request first, then one line per finished release, appended
 * and handed to the system as soon as it is known. A last line without its end, as a killed program leaves it, is
 * dropped and computed anew; anything else that is not as written here is refused.
 */
public final class Checkpoint implements SweepMemory, AutoCloseable {

    /** Version of the file's form. */
    private static final int FORM = 2;

    /** Largest file that is read, bytes: a million releases. */
    private static final long LARGEST = 256L * 1024 * 1024;

    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path path;
    private final FileChannel channel;
    private final Map<FoundLine.Key, Found> known = new ConcurrentHashMap<>();
    private final int recalled;

    private Checkpoint(Path path, FileChannel channel, Request request) throws IOException {
        this.path = path;
        this.channel = channel;
        String head = line(head(request));
        byte[] bytes = bytes();
        int whole = bytes.length;
        while (whole > 0 && bytes[whole - 1] != '\n') {
            whole--;
        }
        if (whole == 0) {
            if (!head.startsWith(new String(bytes, StandardCharsets.UTF_8))) {
                throw refusal(null, null, "is not a checkpoint of a sweep");
            }
            channel.truncate(0);
            append(head);
        } else {
            // Without the last end of line; empty lines count, and are refused.
            String[] lines = new String(bytes, 0, whole - 1, StandardCharsets.UTF_8).split("\n", -1);
            compare(object(lines[0], 1), request);
            for (int i = 1; i < lines.length; i++) {
                read(object(lines[i], i + 1), i + 1);
            }
            channel.truncate(whole);
        }
        recalled = known.size();
    }

    /**
     * Opens a checkpoint, or begins one.
     *
     * @param path the file; made if it is not there
     * @param request what is asked now; must be what the file was begun with
     * @throws InputException if the file is another request's, is no checkpoint, is in use, or cannot be written
     */
    public static Checkpoint open(Path path, Request request) {
        FileChannel channel = null;
        boolean opened = false;
        try {
            channel = FileChannel.open(
                    path, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.READ);
            lock(channel, path);
            Checkpoint checkpoint = new Checkpoint(path, channel, request);
            opened = true;
            return checkpoint;
        } catch (IOException e) {
            throw new InputException(path.toString(), null, null, "cannot be used as a checkpoint: " + reason(e));
        } finally {
            if (!opened && channel != null) {
                closeQuietly(channel);
            }
        }
    }

    /** Number of releases that were in the file when it was opened. */
    public int recalled() {
        return recalled;
    }

    @Override
    public Optional<Found> recall(Braking release) {
        return Optional.ofNullable(known.get(FoundLine.Key.of(release)));
    }

    @Override
    public synchronized void keep(Braking release, Found found) {
        try {
            append(line(FoundLine.of(release, found).json()));
        } catch (IOException e) {
            throw new UncheckedIOException(path + ": the checkpoint cannot be written: " + reason(e), e);
        }
    }

    @Override
    public void close() {
        closeQuietly(channel);
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void lock(FileChannel channel, Path path) throws IOException {
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            lock = null;
        }
        if (lock == null) {
            throw new InputException(path.toString(), null, null, "is in use by another sweep");
        }
    }

    private byte[] bytes() throws IOException {
        if (channel.size() > LARGEST) {
            throw refusal(null, null, "is not a checkpoint of a sweep: larger than 256 MB");
        }
        ByteBuffer bytes = ByteBuffer.allocate((int) channel.size());
        while (bytes.hasRemaining() && channel.read(bytes, bytes.position()) >= 0) {
            // The channel may give less than it was asked for.
        }
        return bytes.array();
    }

    private void append(String text) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        long at = channel.size();
        while (bytes.hasRemaining()) {
            at += channel.write(bytes, at);
        }
    }

    private static ObjectNode head(Request request) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("foreload_checkpoint", FORM)
                .put("version", request.version())
                .put("car", request.car())
                .put("corner", request.corner())
                .put("settings", request.line());
    }

    private static String line(ObjectNode object) {
        try {
            return JSON.writeValueAsString(object) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    private ObjectNode object(String line, int number) {
        try {
            if (JSON.readTree(line) instanceof ObjectNode object) {
                return object;
            }
        } catch (JsonProcessingException e) {
            // Said below, as of a line that is JSON but no object.
        }
        throw refusal("line " + number, null, number == 1 ? "is not a checkpoint of a sweep" : "is damaged");
    }

    private void compare(ObjectNode found, Request request) {
        if (found.path("foreload_checkpoint").asInt() != FORM) {
            throw refusal(null, null, "is not a checkpoint of a sweep that this version can read");
        }
        same(found, "version", request.version(), "was begun by another version of the program");
        same(found, "car", request.car(), "was begun with another car");
        same(found, "corner", request.corner(), "was begun with another corner");
        String settings = found.path("settings").asText();
        if (!settings.equals(request.line())) {
            throw refusal("settings", null, "differ from those that it was begun with: " + request.changes(settings));
        }
    }

    private void same(ObjectNode found, String field, String now, String message) {
        String before = found.path(field).asText();
        if (!before.equals(now)) {
            throw refusal(field, before, message);
        }
    }

    private void read(ObjectNode line, int number) {
        FoundLine read = FoundLine.read(line, path.toString(), number);
        known.put(read.key(), read.found());
    }

    private InputException refusal(String field, String value, String message) {
        return new InputException(path.toString(), field, value, message);
    }

    /** Why a file cannot be opened or written: the system's own words, where they are any. */
    private static String reason(IOException e) {
        if (e instanceof NoSuchFileException missing) {
            Path folder = Path.of(missing.getFile()).toAbsolutePath().getParent();
            return "the folder " + folder + " does not exist";
        }
        if (e instanceof AccessDeniedException) {
            return "it may not be read and written";
        }
        if (e instanceof FileSystemException refused && refused.getReason() != null) {
            return refused.getReason();
        }
        return e.getMessage() == null || e.getMessage().isBlank() ? e.getClass().getSimpleName() : e.getMessage();
    }
}
