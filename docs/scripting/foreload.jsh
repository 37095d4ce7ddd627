// Start-up file for jshell: what most questions need, imported, and four short names.
import org.foreload.braking.*;
import org.foreload.entry.*;
import org.foreload.examples.demo.Demos;
import org.foreload.file.*;
import org.foreload.grip.*;
import org.foreload.handling.*;
import org.foreload.ideal.*;
import org.foreload.load.*;
import org.foreload.path.Corner;
import org.foreload.stability.*;
import org.foreload.strategy.*;
import org.foreload.study.*;
import org.foreload.tyre.*;
import org.foreload.vehicle.*;
import java.nio.file.*;
import java.util.*;

/** A demo car (road, light, downforce) or the car in a file. */
Car car(String name) { return Demos.CARS.contains(name) ? Demos.car("car", name).value() : CarFile.read(Path.of(name)).value(); }

/** A demo corner (hairpin, medium, fast) or the corner in a file. */
Corner corner(String name) { return Demos.CORNERS.contains(name) ? Demos.corner("corner", name).value() : CornerFile.read(Path.of(name)).value(); }

/** A car in a corner, ready for questions. */
CornerStudy study(String car, String corner) { return CornerStudy.of(car(car), corner(corner)); }

/** Prints with decimal points, whatever the machine's language. */
void say(String format, Object... values) { System.out.printf(Locale.ROOT, format + "%n", values); }
