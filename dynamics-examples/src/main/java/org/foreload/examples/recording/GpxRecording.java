package org.foreload.examples.recording;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import javax.xml.stream.XMLStreamConstants;
import org.foreload.file.DecimalText;
import org.foreload.file.InputException;

/**
 * Reads the track points of a GPX file (GPS Exchange Format 1.0 and 1.1, topografix.com: {@code trk}, {@code trkseg},
 * {@code trkpt} with {@code lat}, {@code lon} and {@code time}; {@code speed} in m/s where a writer adds it). Each
 * segment counts as a lap.
 */
final class GpxRecording {

    /** Longest text inside an element that is kept, characters: a time has thirty. */
    private static final int LONGEST_TEXT = 100;

    private final BoundedXml xml;
    private final LapCollector collector;
    private final ColumnCheck check;
    private final LeftOut leftOut;
    private final double[] values = new double[Quantity.values().length];
    private final StringBuilder text = new StringBuilder();
    private long segments;
    private long points;
    private boolean inPoint;
    private boolean timed;

    private GpxRecording(BoundedXml xml, LapCollector collector, ColumnCheck check, LeftOut leftOut) {
        this.xml = xml;
        this.collector = collector;
        this.check = check;
        this.leftOut = leftOut;
    }

    /** Whether the first bytes are those of an XML file with a {@code gpx} element. */
    static boolean looksLike(BufferedInputStream in) throws IOException {
        in.mark(LOOKED_AT + 1);
        byte[] bytes = in.readNBytes(LOOKED_AT);
        in.reset();
        // Zeros of 16-bit text and byte-order marks are passed over.
        StringBuilder plain = new StringBuilder();
        for (byte b : bytes) {
            if (b > 0) {
                plain.append((char) b);
            }
        }
        String start = plain.toString().stripLeading();
        return start.startsWith("<") && (start.contains("<gpx") || start.contains(":gpx"));
    }

    private static final int LOOKED_AT = 4096;

    static RecordedFile read(InputStream in, String file, Cut cut) {
        LeftOut leftOut = new LeftOut();
        Set<Quantity> known =
                Set.of(Quantity.TIME, Quantity.SPEED, Quantity.LATITUDE, Quantity.LONGITUDE, Quantity.LAP);
        LapCollector collector = new LapCollector(file, cut, known, leftOut, (line, value) -> {});
        ColumnCheck check = new ColumnCheck(file, leftOut);
        new GpxRecording(new BoundedXml(in, file), collector, check, leftOut).all();
        List<Columns.Column> columns = Stream.of(
                        column(Quantity.TIME, "time", "s"),
                        column(Quantity.LATITUDE, "lat", "deg"),
                        column(Quantity.LONGITUDE, "lon", "deg"),
                        column(Quantity.SPEED, "speed", "m/s"))
                .filter(column -> check.any(column.quantity()))
                .toList();
        // A speed that cannot be used is made from positions.
        Set<Quantity> needed = Set.of(Quantity.TIME, Quantity.LATITUDE, Quantity.LONGITUDE);
        return collector.result(check.verdict(columns, collector.read(), needed));
    }

    private static Columns.Column column(Quantity quantity, String header, String unit) {
        return new Columns.Column(quantity, 0, header, unit, 1, false);
    }

    /** All points, up to the end or to what is no XML: a device that loses its power leaves a file that just stops. */
    private void all() {
        OptionalInt piece = next();
        while (piece.isPresent()) {
            switch (piece.getAsInt()) {
                case XMLStreamConstants.START_ELEMENT -> start(xml.element());
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> characters();
                case XMLStreamConstants.END_ELEMENT -> end(xml.element());
                default -> {
                    // Comments, instructions and the like carry no points.
                }
            }
            piece = next();
        }
    }

    private OptionalInt next() {
        try {
            return xml.hasNext() ? OptionalInt.of(xml.next()) : OptionalInt.empty();
        } catch (InputException refused) {
            if (points == 0) {
                throw refused;
            }
            leftOut.add(xml.lineNumber(), "nothing from here on is read: " + refused.getMessage());
            return OptionalInt.empty();
        }
    }

    private void start(String name) {
        text.setLength(0);
        if (name.equals("trkseg")) {
            segments++;
        } else if (name.equals("trkpt")) {
            Arrays.fill(values, Double.NaN);
            inPoint = true;
            timed = false;
            set(Quantity.LATITUDE, "lat", xml.attribute("lat"));
            set(Quantity.LONGITUDE, "lon", xml.attribute("lon"));
            values[Quantity.LAP.ordinal()] = Math.max(1, segments);
        }
    }

    private void characters() {
        int room = LONGEST_TEXT - text.length();
        if (inPoint && room > 0) {
            xml.text(text, room);
        }
    }

    private void end(String name) {
        if (!inPoint) {
            return;
        }
        switch (name) {
            case "time" -> {
                // A device may put times of its own into extensions: the point's own comes first.
                if (!timed) {
                    set(Quantity.TIME, "time", text.toString());
                    timed = true;
                }
            }
            case "speed" -> set(Quantity.SPEED, "speed", text.toString());
            case "trkpt" -> {
                inPoint = false;
                long line = xml.lineNumber();
                if (Double.isNaN(values[Quantity.LATITUDE.ordinal()])
                        || Double.isNaN(values[Quantity.LONGITUDE.ordinal()])) {
                    leftOut.add(line, "no latitude or longitude");
                } else {
                    for (Quantity quantity : READ) {
                        if (!Double.isNaN(values[quantity.ordinal()])) {
                            check.value(quantity, values[quantity.ordinal()]);
                        }
                    }
                    collector.add(line, values);
                    points++;
                }
            }
            default -> {
                // Height, course and what devices add are not used.
            }
        }
    }

    private static final List<Quantity> READ =
            List.of(Quantity.TIME, Quantity.LATITUDE, Quantity.LONGITUDE, Quantity.SPEED);

    /** Reads a number or, for time, a date; what cannot be read is reported. */
    private void set(Quantity quantity, String tag, String written) {
        String bare = written == null ? "" : written.strip();
        double value = quantity == Quantity.TIME ? ClockText.parse(bare) : number(bare);
        boolean usable = ColumnCheck.possible(quantity, value);
        values[quantity.ordinal()] = usable ? value : Double.NaN;
        if (!usable && !ColumnCheck.nothing(bare)) {
            check.unreadable(xml.lineNumber(), quantity, tag, bare, !Double.isNaN(value));
        }
    }

    private static double number(String written) {
        return written.length() > LONGEST_TEXT ? Double.NaN : DecimalText.parse(written);
    }
}
