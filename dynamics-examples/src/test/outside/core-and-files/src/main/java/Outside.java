import java.nio.file.Path;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.load.LoadTransfer;

/** Prints the front axle load of the car in a file that brakes with 5 m/s², and the radius of the corner in another. */
class Outside {
    public static void main(String[] args) {
        var car = CarFile.read(Path.of(args[0])).value();
        var corner = CornerFile.read(Path.of(args[1])).value();
        System.out.println(LoadTransfer.wheelLoads(car, 20, 5, 0, 0, 0).frontAxle());
        System.out.println(1 / corner.path().curvature(40));
    }
}
