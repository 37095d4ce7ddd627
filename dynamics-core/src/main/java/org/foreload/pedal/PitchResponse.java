package org.foreload.pedal;

import java.util.ArrayList;
import java.util.List;
import org.foreload.conventions.Checks;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;

/**
 * What the pitching of the body makes of a ripple on the brake, in a straight line, for small ripples: measured on the
 * equations of motion, as a shaker would measure it on the car.
 *
 * <p>Load follows braking as a second-order response of undamped frequency f and damping ratio ζ, so there are two
 * frequencies. A steady ripple is answered most at the resonance, f·√(1 − 2ζ²), if ζ is below 1/√2; after a jab, a dip
 * or a dropped brake the load rings at the damped frequency, f·√(1 − ζ²). Source: any text on vibration, such as J. P.
 * Den Hartog, Mechanical Vibrations, ch. 2 (from memory).
 */
public final class PitchResponse {

    /** Speed that is held meanwhile, m/s; without bearing on the result but for drag. */
    private static final double SPEED = 30;

    /** Mean brake force over mass, m/s². */
    private static final double MEAN = 2;

    /** Ripple as a part of the mean: small, so that the response is linear. */
    private static final double SIZE = 0.01;

    /** Time for which the start of a ripple is left to decay, in units of 1/(ζω): to e^-8. */
    private static final double SETTLING = 8;

    /** Periods over which an amplitude is measured. */
    private static final int PERIODS = 4;

    private final Car car;
    private final Response pitch;

    private PitchResponse(Car car) {
        this.car = car;
        this.pitch = car.suspension().pitch();
    }

    /**
     * The response of a car.
     *
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia
     */
    public static PitchResponse of(Car car) {
        Checks.positive("yaw_inertia_kg_m2", car.chassis().yawInertia());
        return new PitchResponse(car);
    }

    /** Resonance that the pitch data imply, f·√(1 − 2ζ²), Hz; NaN where a ripple is nowhere amplified. */
    public double expectedResonance() {
        double square = 1 - 2 * pitch.dampingRatio() * pitch.dampingRatio();
        return pitch.rigid() || !(square > 0) ? Double.NaN : pitch.frequency() * Math.sqrt(square);
    }

    /** Damped frequency that the pitch data imply, f·√(1 − ζ²), Hz; NaN for a body that does not ring. */
    public double expectedRing() {
        double square = 1 - pitch.dampingRatio() * pitch.dampingRatio();
        return pitch.rigid() || !(square > 0) ? Double.NaN : pitch.frequency() * Math.sqrt(square);
    }

    /**
     * Ripple of the front axle load over the ripple that a slow foot would make, plain number: 1 for slow ripples,
     * above 1 where pitching amplifies them.
     *
     * @param frequency Hz, above zero
     */
    public double gain(double frequency) {
        Checks.positive("frequency_hz", frequency);
        double omega = 2 * Math.PI * frequency;
        StraightLine line = new StraightLine(car, SPEED, time -> MEAN * (1 + SIZE * Math.sin(omega * time)));
        double settled = pitch.rigid() ? 0 : SETTLING / (pitch.dampingRatio() * 2 * Math.PI * pitch.frequency());
        double start = Math.ceil(settled * frequency) / frequency;
        double end = start + PERIODS / frequency;
        // Fourier sums with the steps as they fall; the rest of the last step is a thousandth of a period.
        double sine = 0;
        double cosine = 0;
        double sum = 0;
        double sines = 0;
        double cosines = 0;
        int count = 0;
        while (line.time() < end) {
            line.advance();
            if (line.time() >= start) {
                double load = line.frontLoad();
                double phase = omega * line.time();
                sine += load * Math.sin(phase);
                cosine += load * Math.cos(phase);
                sum += load;
                sines += Math.sin(phase);
                cosines += Math.cos(phase);
                count++;
            }
        }
        double mean = sum / count;
        double amplitude = 2.0 / count * Math.hypot(sine - mean * sines, cosine - mean * cosines);
        double slow = car.chassis().mass()
                * MEAN
                * SIZE
                * car.chassis().cgHeight()
                / car.chassis().wheelbase();
        return amplitude / slow;
    }

    /**
     * Frequency at which a ripple is amplified most, Hz, measured: the highest of the gains over a range, then
     * narrowed; NaN where no frequency in the range is amplified more than a slow one.
     *
     * @param low start of the range, Hz
     * @param high end of the range, Hz
     */
    public double resonance(double low, double high) {
        Checks.positive("lowest_frequency_hz", low);
        Checks.between("highest_frequency_hz", high, low, Double.POSITIVE_INFINITY);
        double ratio = Math.pow(high / low, 1.0 / SCAN);
        List<Double> gains = new ArrayList<>();
        for (int i = 0; i <= SCAN; i++) {
            gains.add(gain(low * Math.pow(ratio, i)));
        }
        int most = 0;
        for (int i = 0; i < gains.size(); i++) {
            most = gains.get(i) > gains.get(most) ? i : most;
        }
        if (most == 0 || gains.get(most) < 1 + AMPLIFIED) {
            return Double.NaN;
        }
        double from = low * Math.pow(ratio, most - 1);
        double to = low * Math.pow(ratio, most + 1);
        while (to - from > NARROW * from) {
            double a = from + (to - from) / 3;
            double b = to - (to - from) / 3;
            if (gain(a) < gain(b)) {
                from = a;
            } else {
                to = b;
            }
        }
        return (from + to) / 2;
    }

    /** Frequencies looked at before the highest is narrowed down. */
    private static final int SCAN = 20;

    /** Amplification below which rounding and the rest of a step could be all there is. */
    private static final double AMPLIFIED = 0.003;

    /** Relative width to which the resonance is narrowed: gains are flat there to a part in ten thousand. */
    private static final double NARROW = 0.01;

    /**
     * Frequency at which the front load rings after the brake is dropped at once, Hz, measured from the first two
     * crossings of the load that it settles at; NaN for a body that does not ring.
     */
    public double ring() {
        if (Double.isNaN(expectedRing())) {
            return Double.NaN;
        }
        StraightLine line = new StraightLine(car, SPEED, time -> time > 0 ? MEAN * (1 - SIZE) : MEAN);
        double rest = line.frontLoad()
                - MEAN
                        * SIZE
                        * car.chassis().mass()
                        * car.chassis().cgHeight()
                        / car.chassis().wheelbase();
        double first = crossing(line, rest);
        return 0.5 / (crossing(line, rest) - first);
    }

    private static double crossing(StraightLine line, double rest) {
        double before = line.frontLoad() - rest;
        while (true) {
            double from = line.time();
            line.advance();
            double after = line.frontLoad() - rest;
            if (before != 0 && before * after <= 0) {
                return from + (line.time() - from) * before / (before - after);
            }
            before = after;
        }
    }
}
