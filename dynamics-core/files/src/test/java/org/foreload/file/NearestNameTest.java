package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which names count as near. */
class NearestNameTest {

    private static final List<String> NAMES = List.of("mass_kg", "wheelbase_m", "front_track_m", "rear_track_m");

    @Test
    void slipsAreRecognised() {
        assertEquals(Optional.of("mass_kg"), NearestName.of("mas_kg", NAMES));
        assertEquals(Optional.of("mass_kg"), NearestName.of("Mass_Kg", NAMES));
        assertEquals(Optional.of("mass_kg"), NearestName.of("mass", NAMES));
        assertEquals(Optional.of("rear_track_m"), NearestName.of("rear_trakc_m", NAMES));
        assertEquals(Optional.of("y_m"), NearestName.of("y", List.of("x_m", "y_m")));
        assertEquals(Optional.of("wheelbase_m"), NearestName.of("wheel_base", NAMES));
    }

    @Test
    void strangersAreNot() {
        assertEquals(Optional.empty(), NearestName.of("colour", NAMES));
        assertEquals(Optional.empty(), NearestName.of("", NAMES));
    }
}
