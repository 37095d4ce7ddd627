package org.foreload.examples.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;

/**
 * What was read from a file.
 *
 * @param name of the file, as the user wrote it
 * @param laps in the order of the file; at least one
 * @param channels which column holds what
 * @param ignored columns that were found, but cannot be used
 * @param rows lines of numbers that were read, used or not
 * @param leftOut lines that could not be used
 * @param origin of the plane in which positions lie; null if they were metres already, or there are none
 */
public record RecordedFile(
        String name,
        List<Lap> laps,
        List<FoundChannel> channels,
        List<Ignored> ignored,
        long rows,
        List<Unused> leftOut,
        GlobePoint origin) {

    /** Copies the lists. */
    public RecordedFile {
        laps = List.copyOf(laps);
        channels = List.copyOf(channels);
        ignored = List.copyOf(ignored);
        leftOut = List.copyOf(leftOut);
    }

    /** The part of a file that is wanted, as reading it in part would give it. */
    public RecordedFile cut(Cut cut) {
        LapCut.check(name, laps, cut);
        return new RecordedFile(
                name,
                laps.stream()
                        .filter(lap -> cut.holdsLap(lap.number()))
                        .map(lap -> LapCut.of(lap, cut))
                        .toList(),
                channels,
                ignored,
                rows,
                leftOut,
                origin);
    }

    /**
     * The same with its positions in the plane of another point of the globe, so that two files lie in one; unchanged
     * where either has none on the globe.
     */
    public RecordedFile inPlaneOf(GlobePoint other) {
        if (origin == null || other == null || origin.equals(other)) {
            return this;
        }
        LocalPlane own = new LocalPlane(origin.latitude(), origin.longitude());
        LocalPlane plane = new LocalPlane(other.latitude(), other.longitude());
        List<Lap> moved = laps.stream()
                .map(lap -> new Lap(lap.number(), moved(lap.recording(), own, plane)))
                .toList();
        return new RecordedFile(name, moved, channels, ignored, rows, leftOut, other);
    }

    private static Recording moved(Recording recording, LocalPlane own, LocalPlane plane) {
        if (!recording.hasPosition()) {
            return recording;
        }
        double[] x = recording.column(Channel.X);
        double[] y = recording.column(Channel.Y);
        for (int i = 0; i < x.length; i++) {
            x[i] = plane.east(own.longitudeAt(x[i]));
            y[i] = plane.north(own.latitudeAt(y[i]));
        }
        return recording.withPosition(x, y);
    }

    /**
     * One lap.
     *
     * @param number as the file counts, or from 1
     * @param recording its rows
     */
    public record Lap(long number, Recording recording) {

        /** The same without some quantities. */
        Lap without(Set<Quantity> dropped) {
            Map<Channel, double[]> kept = new EnumMap<>(Channel.class);
            boolean globe = dropped.contains(Quantity.LATITUDE) || dropped.contains(Quantity.LONGITUDE);
            for (Quantity quantity : Quantity.values()) {
                boolean placed = globe && (quantity == Quantity.X || quantity == Quantity.Y);
                quantity.channel()
                        .filter(channel -> recording.has(channel) && !placed && !dropped.contains(quantity))
                        .ifPresent(channel -> kept.put(channel, recording.column(channel)));
            }
            return dropped.isEmpty() ? this : new Lap(number, Recording.of(kept).startingAt(recording.origin()));
        }
    }

    /**
     * A column that is used.
     *
     * @param name what it holds
     * @param column its header
     * @param unit in which it was read; empty for a plain number
     * @param guessed whether nobody said so
     * @param missing rows with nothing in it
     * @param unreadable rows with something in it that is no number, or none that can be
     */
    public record FoundChannel(
            String name, String column, String unit, boolean guessed, long missing, long unreadable) {}

    /**
     * A column that was found, and is not used.
     *
     * @param name what it was to hold
     * @param column its header
     * @param reason why
     */
    public record Ignored(String name, String column, String reason) {}

    /**
     * Lines that could not be used, or a cell in each that could not; the rest of such a line is used.
     *
     * @param firstLine counted from 1
     * @param lastLine counted from 1
     * @param column header of the cells' column; empty for whole lines
     * @param text what stands in the cells
     * @param reason why
     */
    public record Unused(long firstLine, long lastLine, String column, String text, String reason) {}

    /**
     * A point on the globe.
     *
     * @param latitude degrees
     * @param longitude degrees
     */
    public record GlobePoint(double latitude, double longitude) {}
}
