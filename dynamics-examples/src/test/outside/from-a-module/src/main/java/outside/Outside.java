package outside;

import java.nio.file.Path;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.ideal.IdealEntry;

/** Prints what asks Hipparchus, EJML and Jackson: the time of the ideal entry, and how quickly the car swings. */
class Outside {
    public static void main(String[] args) {
        var car = CarFile.read(Path.of(args[0])).value();
        var corner = CornerFile.read(Path.of(args[1])).value();
        System.out.println(IdealEntry.solve(car, corner).time());
        System.out.println(
                LinearHandling.of(Trim.find(car, 30, 4, 0).orElseThrow()).naturalFrequency());
    }
}
