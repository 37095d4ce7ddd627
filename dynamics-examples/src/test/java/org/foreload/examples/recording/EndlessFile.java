package org.foreload.examples.recording;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.LongFunction;

/** Files of any size, made as they are read, so that neither disk nor memory is needed. */
final class EndlessFile extends InputStream {

    /** Rows in a lap: two minutes at 100 Hz. */
    static final int LAP = 12_000;

    private static final int ROWS_AT_ONCE = 200;

    private final long size;
    private final LongFunction<String> next;
    private final String tail;
    private boolean ended;
    private byte[] part;
    private int at;
    private long made;
    private long count;

    private EndlessFile(long size, String head, LongFunction<String> next) {
        this(size, head, next, "");
    }

    private EndlessFile(long size, String head, LongFunction<String> next, String tail) {
        this.size = size;
        this.part = head.getBytes(StandardCharsets.UTF_8);
        this.next = next;
        this.tail = tail;
    }

    /**
     * A file.
     *
     * @param kind of it: laps, or one thing without end
     * @param size about as many bytes; what is open is closed only behind laps
     */
    static EndlessFile of(String kind, long size) {
        String header =
                "lap,time_s,speed_mps,brake,throttle,longitudinal_acceleration_mps2,lateral_acceleration_mps2\n";
        String gpx = "<gpx><trk>";
        return switch (kind) {
            case "laps" -> new EndlessFile(size, header, EndlessFile::rows);
            case "line" -> new EndlessFile(size, header, i -> "0123456789,".repeat(1000));
            case "quote" -> new EndlessFile(size, header + '"', i -> "0123456789,".repeat(1000));
            case "gpx laps" -> new EndlessFile(size, gpx + "<trkseg>", EndlessFile::points, "</trkseg></trk></gpx>");
            case "gpx cut off" -> new EndlessFile(size, gpx + "<trkseg>", EndlessFile::points);
            case "gpx one name" -> new EndlessFile(size, gpx + "<a", i -> "abcdefghij".repeat(1000));
            case "gpx one comment" -> new EndlessFile(size, gpx + "<!--", i -> "abcdefghij".repeat(1000));
            case "gpx one attribute" -> new EndlessFile(size, gpx + "<trkpt lat='", i -> "0123456789".repeat(1000));
            case "gpx one head" -> new EndlessFile(size, gpx + "<trkpt", i -> " a" + i + "='1'");
            case "gpx names" -> new EndlessFile(size, gpx, i -> "<a" + i + "/>");
            case "gpx depth" -> new EndlessFile(size, gpx, i -> "<a>".repeat(1000));
            case "gpx document type" -> new EndlessFile(size, "<!DOCTYPE gpx [", i -> "<!ENTITY a" + i + " 'b'>");
            case "gpx one text" -> new EndlessFile(size, gpx + "<trkseg><trkpt><time>", i -> "12:".repeat(1000));
            default -> throw new IllegalArgumentException(kind);
        };
    }

    private static String rows(long part) {
        StringBuilder rows = new StringBuilder();
        for (long row = part * ROWS_AT_ONCE; row < (part + 1) * ROWS_AT_ONCE; row++) {
            double time = row % LAP / 100.0;
            double speed = 40 + 10 * Math.sin(time / 7);
            rows.append(row / LAP + 1)
                    .append(',')
                    .append(time)
                    .append(',')
                    .append(speed)
                    .append(row % 2 == 0 ? ",0.125,55.5,-0.3062," : ",0.250,44.5,-0.6125,")
                    .append((float) (0.1 * speed))
                    .append('\n');
        }
        return rows.toString();
    }

    /** The same time and again in segments, as a device writes them: with heights and things of its own. */
    private static String points(long part) {
        StringBuilder points = new StringBuilder();
        for (long row = part * ROWS_AT_ONCE; row < (part + 1) * ROWS_AT_ONCE; row++) {
            long inLap = row % LAP;
            if (inLap == 0 && row > 0) {
                points.append("</trkseg><trkseg>\n");
            }
            points.append("<trkpt lat=\"")
                    .append((float) (48 + inLap * 4e-6))
                    .append("\" lon=\"9.5\"><ele>312.5</ele><time>2026-05-01T08:0")
                    .append(inLap / 6000)
                    .append(':')
                    .append(inLap / 1000 % 6)
                    .append(inLap / 100 % 10)
                    .append('.')
                    .append(inLap / 10 % 10)
                    .append(inLap % 10)
                    .append("Z</time><extensions><course>0.0</course></extensions></trkpt>\n");
        }
        return points.toString();
    }

    @Override
    public int read() {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] target, int offset, int length) {
        if (at == part.length) {
            if (ended) {
                return -1;
            }
            ended = made >= size;
            part = (ended ? tail + '\n' : next.apply(count++)).getBytes(StandardCharsets.UTF_8);
            at = 0;
        }
        int taken = Math.min(length, part.length - at);
        System.arraycopy(part, at, target, offset, taken);
        at += taken;
        made += taken;
        return taken;
    }
}
