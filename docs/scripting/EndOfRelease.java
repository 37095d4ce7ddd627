import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.CornerStudy;

/** A question that no verb asks: how does the time depend on where a linear release ends? Prints CSV. */
public class EndOfRelease {
    public static void main(String[] args) {
        String car = args.length > 0 ? args[0] : "light";
        CornerStudy study = CornerStudy.of(
                Demos.car("car", car).value(), Demos.corner("corner", "medium").value());
        System.out.println("release_end_m,brake_point_m,time_s");
        for (double share : new double[] {0.2, 0.4, 0.6, 0.8}) {
            double end = share * study.simulator().apex();
            Release release = new Release(ReleaseShapes.LINEAR, 0, end);
            var found = study.latest(Braking.of(0.7 * study.lockLimit(), 0.25, release));
            if (found.found()) {
                System.out.printf(
                        Locale.ROOT,
                        "%.2f,%.2f,%.3f%n",
                        end,
                        found.entry().plan().brakePoint(),
                        found.entry().time());
            }
        }
    }
}
