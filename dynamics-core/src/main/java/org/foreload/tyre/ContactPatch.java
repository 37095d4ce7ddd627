package org.foreload.tyre;

/**
 * What one evaluation of a {@link Tyre} found between one wheel and the road. A buffer that its owner reuses, so that a
 * simulation makes no objects: read it at once, do not keep it. Forces are against the slip, as everywhere in
 * {@link Tyre}.
 */
public final class ContactPatch {

    /** Room for what the wheels of an axle have in common. */
    final SlipCurve.Shares shares = new SlipCurve.Shares();

    private double longitudinal;
    private double lateral;
    private double limit;
    private double peakX;
    private double peakY;

    /**
     * Takes up forces.
     *
     * @param along force along the wheel, N
     * @param across force across the wheel, N, positive for positive lateral slip
     * @param most most that the wheel can carry along itself, N
     */
    public void forces(double along, double across, double most) {
        longitudinal = along;
        lateral = across;
        limit = most;
    }

    /**
     * Takes up the largest pure forces at the wheel's load.
     *
     * @param along along the wheel, N
     * @param across across the wheel, N
     */
    public void peaks(double along, double across) {
        peakX = along;
        peakY = across;
    }

    /** Multiplies all that it holds by a factor. */
    public void scale(double factor) {
        longitudinal *= factor;
        lateral *= factor;
        limit *= factor;
        peakX *= factor;
        peakY *= factor;
    }

    /** Force along the wheel, N. */
    public double longitudinal() {
        return longitudinal;
    }

    /** Force across the wheel, N, positive for positive lateral slip. */
    public double lateral() {
        return lateral;
    }

    /** Most longitudinal force, N, that the wheel could carry; of a stopped one, what it slides with. */
    public double limit() {
        return limit;
    }

    /** Largest pure longitudinal force at the wheel's load, N. */
    public double peakX() {
        return peakX;
    }

    /** Largest pure lateral force at the wheel's load, N. */
    public double peakY() {
        return peakY;
    }
}
