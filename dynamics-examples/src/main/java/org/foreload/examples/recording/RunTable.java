package org.foreload.examples.recording;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;
import org.foreload.trace.Trace;

/** Recorded runs as text: a table with one row a sample, and GPX. */
public final class RunTable {

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setRecordSeparator('\n').get();

    private RunTable() {}

    /** Laps as CSV: the lap's number, then the channels under their names, all digits kept. */
    public static String csv(List<RecordedFile.Lap> laps) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
            Trace first = laps.get(0).recording().trace();
            printer.print("lap");
            printer.printRecord(first.columns().stream().map(Trace.Column::name));
            for (RecordedFile.Lap lap : laps) {
                Trace trace = lap.recording().trace();
                for (int i = 0; i < trace.rows(); i++) {
                    printer.print(lap.number());
                    for (Trace.Column column : trace.columns()) {
                        double value = column.at(i);
                        printer.print(Double.isNaN(value) ? "" : value);
                    }
                    printer.println();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /**
     * The positions of laps as GPX 1.1, one segment a lap, around a point on the globe.
     *
     * @throws IllegalArgumentException if a lap has no time or no positions
     */
    public static String gpx(List<RecordedFile.Lap> laps, RecordedFile.GlobePoint origin) {
        LocalPlane plane = new LocalPlane(origin.latitude(), origin.longitude());
        double east = plane.east(origin.longitude() + 1);
        double north = plane.north(origin.latitude() + 1);
        StringBuilder out = new StringBuilder();
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
                .append(
                        "<gpx version=\"1.1\" creator=\"foreload\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk>\n");
        double start = 0;
        for (RecordedFile.Lap lap : laps) {
            Recording recording = lap.recording();
            double[] time = recording.column(Channel.TIME);
            double[] x = recording.column(Channel.X);
            double[] y = recording.column(Channel.Y);
            out.append("<trkseg>\n");
            for (int i = 0; i < time.length; i++) {
                out.append(String.format(
                        java.util.Locale.ROOT,
                        "<trkpt lat=\"%.8f\" lon=\"%.8f\"><time>%s</time></trkpt>%n",
                        origin.latitude() + y[i] / north,
                        origin.longitude() + x[i] / east,
                        java.time.Instant.ofEpochMilli(EPOCH + Math.round(1000 * (start + time[i])))));
            }
            start += time[time.length - 1] + 1;
            out.append("</trkseg>\n");
        }
        return out.append("</trk>\n</gpx>\n").toString();
    }

    /** Any day will do: 1 January 2026. */
    private static final long EPOCH = 1_767_225_600_000L;
}
