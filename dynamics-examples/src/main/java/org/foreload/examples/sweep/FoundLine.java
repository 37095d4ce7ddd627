package org.foreload.examples.sweep;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.foreload.braking.Braking;
import org.foreload.file.InputException;
import org.foreload.strategy.SweepMemory.Found;

/** What was found for one release, as a line of JSON. */
record FoundLine(Key key, Found found) {

    /** What makes a release. */
    record Key(String shape, double peak, double start, double end, double buildUp) {

        static Key of(Braking braking) {
            var release = braking.release();
            return new Key(
                    release.shape().name(),
                    braking.peakDeceleration(),
                    release.start(),
                    release.end(),
                    braking.buildUpTime());
        }
    }

    static FoundLine of(Braking braking, Found found) {
        return new FoundLine(Key.of(braking), found);
    }

    ObjectNode json() {
        return JsonNodeFactory.instance
                .objectNode()
                .put("shape", key.shape())
                .put("peak_deceleration_mps2", key.peak())
                .put("start_m", key.start())
                .put("end_m", key.end())
                .put("build_up_time_s", key.buildUp())
                .put("brake_point_m", found.brakePoint())
                .put("found", found.found());
    }

    /**
     * Reads a line.
     *
     * @param file for refusals
     * @param number of the line, from 1
     * @throws InputException if it is not as {@link #json} writes it
     */
    static FoundLine read(ObjectNode line, String file, int number) {
        if (!line.path("found").isBoolean() || !line.path("shape").isTextual()) {
            throw new InputException(
                    file, "line " + number, null, "must have a shape and say whether a brake point was found");
        }
        Key key = new Key(
                line.path("shape").textValue(),
                finite(line, "peak_deceleration_mps2", file, number),
                finite(line, "start_m", file, number),
                finite(line, "end_m", file, number),
                finite(line, "build_up_time_s", file, number));
        boolean found = line.path("found").booleanValue();
        return new FoundLine(key, new Found(finite(line, "brake_point_m", file, number), found));
    }

    private static double finite(ObjectNode line, String field, String file, int number) {
        JsonNode value = line.path(field);
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            throw new InputException(file, "line " + number + ", " + field, null, "must be a finite number");
        }
        return value.doubleValue();
    }
}
