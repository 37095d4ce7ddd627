package org.foreload.examples.answer;

import java.util.Locale;
import org.foreload.balance.AdhesionUse;
import org.foreload.balance.Balance;
import org.foreload.examples.output.Numbers;
import org.foreload.vehicle.Car;

/** Sentences below a balance sweep. */
public final class BalanceWords {

    /** What one corner does not say. */
    public static final String ONE_FOR_ALL =
            "One setting serves every corner: ask for a slow and a fast one of yours, and "
                    + "change what you have only if they agree.";

    private BalanceWords() {}

    /** How good the times are, and what follows for the value that is recommended. */
    public static String accuracy(Balance balance) {
        String good = "Times are good to about " + Numbers.shortest(Balance.ACCURACY)
                + " s, as fine as the search behind each: nearer neighbours may change places.";
        return balance.recommended().isEmpty()
                ? good
                : good + " As quick as the recommended value, as far as it shows: " + balance.equallyQuick()
                        + " of the " + (balance.rows().size() - 1) + " others.";
    }

    /** What the decelerations in the rows are. */
    public static String decelerations(Car car, String approachSpeed) {
        return "Peak deceleration: what the foot asks of the brakes alone. "
                + (car.antiLock()
                        ? "With anti-lock brakes no wheel locks, and a foot that asks for more than the tyres give slows "
                                + "the car no more: most on road is the most that the brakes then give. Where one axle has "
                                + "most of the brakes, only a peak far beyond it brings the other axle to its limit."
                        : "Locks at: deceleration of the whole car, drag included, in a straight line at the approach "
                                + "speed of " + approachSpeed + ".");
    }

    /**
     * Which axle is first in a straight line with a brake share, and what the regulation says of it.
     *
     * @param car with that share
     */
    public static String order(Car car) {
        AdhesionUse use = AdhesionUse.of(car);
        String rate = String.format(Locale.ROOT, "%.2f g in a straight line, without aerodynamics", use.criticalRate());
        return car.antiLock()
                ? "With that share the rear axle needs more adhesion than the front one above " + rate
                        + ", so the anti-lock brakes hold it back first. Without them, by UN Regulation 13-H (from memory), "
                        + use.words() + "."
                : "With that share the rear locks first above " + rate + ". By UN Regulation 13-H (from memory) "
                        + use.words() + ".";
    }
}
