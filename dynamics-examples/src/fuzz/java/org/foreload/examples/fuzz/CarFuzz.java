package org.foreload.examples.fuzz;

import java.nio.charset.StandardCharsets;
import org.foreload.file.CarFile;
import org.foreload.file.InputException;
import org.foreload.vehicle.Car;

/** Any bytes make a car or a refusal; a car comes back from what it writes. */
public final class CarFuzz {

    private CarFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        Car car;
        try {
            car = CarFile.parse(new String(data, StandardCharsets.UTF_8), "fuzz.json")
                    .value();
        } catch (InputException refused) {
            OneLineCheck.of(refused);
            return;
        }
        if (!CarFile.parse(CarFile.write(car), "again.json").value().equals(car)) {
            throw new IllegalStateException("another car came back: " + car);
        }
    }
}
