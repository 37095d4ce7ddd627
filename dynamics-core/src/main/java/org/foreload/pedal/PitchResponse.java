package org.foreload.pedal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
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

    /** Time after which what is left of a jab is below any rounding, in the same units: e^-40. */
    private static final double GONE = 40;

    /** Part of the front load that a swing must come to for its crossings to stand out of rounding, to a thousandth. */
    private static final double MEASURABLE = 1e-12;

    private final Car car;
    private final Response pitch;

    /** Load on the front axle, N, that a braking of the ripple's size moves. */
    private final double slow;

    private PitchResponse(Car car) {
        this.car = car;
        this.pitch = car.suspension().pitch();
        this.slow = car.chassis().mass()
                * MEAN
                * SIZE
                * car.chassis().cgHeight()
                / car.chassis().wheelbase();
    }

    /**
     * The response of a car.
     *
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia
     */
    public static PitchResponse of(Car car) {
        Objects.requireNonNull(car, "car");
        Checks.positive("yaw_inertia_kg_m2", car.chassis().yawInertia());
        return new PitchResponse(car);
    }

    /**
     * Resonance that the pitch data imply, f·√(1 − 2ζ²), Hz; NaN where a ripple is nowhere amplified, as in a car whose
     * CG lies in the road.
     */
    public double expectedResonance() {
        return impliedFrequency(1 - 2 * pitch.dampingRatio() * pitch.dampingRatio());
    }

    /**
     * Damped frequency that the pitch data imply, f·√(1 − ζ²), Hz; NaN for a body that does not ring, and for a CG in
     * the road.
     */
    public double expectedRing() {
        return impliedFrequency(1 - pitch.dampingRatio() * pitch.dampingRatio());
    }

    private double impliedFrequency(double square) {
        return pitch.rigid() || !(slow > 0) || !(square > 0) ? Double.NaN : pitch.frequency() * Math.sqrt(square);
    }

    /**
     * Ripple of the front axle load over the ripple that a slow foot would make, plain number: 1 for slow ripples,
     * above 1 where pitching amplifies them; NaN for a CG in the road, where braking moves no load.
     *
     * @param frequency Hz, above zero
     * @throws org.foreload.conventions.InvalidValueException if the frequency is not
     */
    public double gain(double frequency) {
        Checks.positive("frequency_hz", frequency);
        if (!(slow > 0)) {
            return Double.NaN;
        }
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
        return amplitude / slow;
    }

    /**
     * Frequency at which a ripple is amplified most, Hz, measured: the highest of the gains over a range, then
     * narrowed; NaN where no frequency in the range is amplified more than a slow one.
     *
     * @param low start of the range, Hz
     * @param high end of the range, Hz
     * @throws org.foreload.conventions.InvalidValueException unless 0 &lt; low &lt; high &lt; ∞
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
     * crossings of the load that it settles at. NaN for a body that does not ring measurably: one that is rigid, or has
     * its CG in the road, or is damped so well, ζ above about 0.95, that its second swing drowns in rounding.
     */
    public double ring() {
        if (Double.isNaN(expectedRing())) {
            return Double.NaN;
        }
        StraightLine line = new StraightLine(car, SPEED, time -> time > 0 ? MEAN * (1 - SIZE) : MEAN);
        double rest = line.frontLoad() - slow;
        double gone = GONE / (pitch.dampingRatio() * 2 * Math.PI * pitch.frequency());
        double first = swing(line, rest, gone).end();
        Swing swing = swing(line, rest, gone);
        // From one swing to the next as much is lost as from the drop to the first.
        boolean measurable = swing.most() * swing.most() >= MEASURABLE * rest * slow;
        return measurable ? 0.5 / (swing.end() - first) : Double.NaN;
    }

    /**
     * A swing to one side of the load at rest.
     *
     * @param end when the load comes back to that, s; NaN if it does not
     * @param most how far it went, N
     */
    private record Swing(double end, double most) {}

    /** Follows the load until it next crosses the one at rest, or until nothing is left of the jab. */
    private static Swing swing(StraightLine line, double rest, double gone) {
        double before = line.frontLoad() - rest;
        double most = Math.abs(before);
        while (line.time() < gone) {
            double from = line.time();
            line.advance();
            double after = line.frontLoad() - rest;
            if (before != 0 && before * after <= 0) {
                return new Swing(from + (line.time() - from) * before / (before - after), most);
            }
            before = after;
            most = Math.max(most, Math.abs(after));
        }
        return new Swing(Double.NaN, most);
    }
}
