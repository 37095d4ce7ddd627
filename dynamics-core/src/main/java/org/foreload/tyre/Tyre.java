package org.foreload.tyre;

/**
 * The force that one tyre can make from slip and wheel load. This is the whole interface: a model of your own needs
 * only the six methods without a body. What is left to the defaults is searched for on {@link #force}, to 1e-9 of slip:
 * some 10 to 40 calls for each wheel each time, so that an entry takes ten to twenty times as long as on
 * {@link FrictionTyre}. Where there is a closed form, override {@link #rollingForceLimit} and {@link #lateralForce}
 * first.
 *
 * <p><b>Signs and units.</b> Loads and forces in newtons, angles in radians. Slip is the slip velocity of the contact
 * patch over the travel speed: {@code longitudinalSlip} is positive when the wheel turns too slowly (braking; 1 is a
 * stopped wheel), {@code lateralSlip} is the tangent of the slip angle. Every force opposes its slip, so all methods
 * here return the force <em>against</em> the slip: positive slip, positive number. Whoever assembles the equations of
 * motion puts in the minus sign.
 *
 * <p><b>Laws</b> that each model obeys (the contract test runs them): force is odd in slip; zero slip, zero force; the
 * force never leaves the friction ellipse; small-slip slopes are the stiffnesses; no load, no force.
 */
public interface Tyre {

    /** Largest longitudinal force over load, at this load in newtons. Plain number. */
    double peakFrictionX(double load);

    /** Largest lateral force over load, at this load in newtons. Plain number. */
    double peakFrictionY(double load);

    /** Slope of lateral force over slip angle at zero slip, N/rad, at this load in newtons. */
    double corneringStiffness(double load);

    /** Slope of longitudinal force over slip at zero slip, N per unit slip, at this load in newtons. */
    double slipStiffness(double load);

    /** Distance, in metres, in which lateral slip builds up to 63 %. Zero for a tyre without lag. */
    double relaxationLength();

    /**
     * Combined-slip force.
     *
     * @param longitudinalSlip slip along the wheel, positive when braking
     * @param lateralSlip tangent of the slip angle
     * @param load wheel load in newtons; zero or below gives no force
     */
    TyreForce force(double longitudinalSlip, double lateralSlip, double load);

    /** Largest pure longitudinal force in newtons at this load in newtons. */
    default double peakForceX(double load) {
        return load <= 0 ? 0 : peakFrictionX(load) * load;
    }

    /** Largest pure lateral force in newtons at this load in newtons. */
    default double peakForceY(double load) {
        return load <= 0 ? 0 : peakFrictionY(load) * load;
    }

    /**
     * Most lateral force, in newtons, that the friction ellipse leaves a wheel beside a longitudinal force F: PY·√(1 −
     * (F/PX)²), zero where F is all that it has or more.
     *
     * @param longitudinalForce in newtons; its sign does not matter
     * @param load wheel load in newtons
     */
    default double peakForceYBeside(double longitudinalForce, double load) {
        double used = longitudinalForce == 0 ? 0 : longitudinalForce / peakForceX(load);
        return Math.abs(used) >= 1 ? 0 : peakForceY(load) * Math.sqrt(1 - used * used);
    }

    /**
     * Lateral force, in newtons, of a rolling wheel on which the brake or the engine imposes a longitudinal force.
     *
     * <p>The default searches the combined-slip force for the longitudinal slip that carries the imposed force. A wheel
     * asked for more than it has returns the lateral force at the slip where it has most; {@link #rollingForceLimit}
     * says whether that is so.
     *
     * @param lateralSlip tangent of the slip angle
     * @param longitudinalForce imposed force in newtons; its sign does not matter
     * @param load wheel load in newtons
     */
    default double lateralForce(double lateralSlip, double longitudinalForce, double load) {
        return ImposedForce.lateralForce(this, lateralSlip, Math.abs(longitudinalForce), load);
    }

    /**
     * Most longitudinal force, in newtons, that the wheel can carry at this lateral slip without locking.
     *
     * @param lateralSlip tangent of the slip angle
     * @param load wheel load in newtons
     */
    default double rollingForceLimit(double lateralSlip, double load) {
        return ImposedForce.rollingForceLimit(this, lateralSlip, load);
    }

    /**
     * Force of a wheel that is locked: sliding friction against the slip velocity.
     *
     * <p>The default has as much of the friction ellipse as {@link #force} of a stopped wheel, and the direction of the
     * slip velocity: where stiffnesses or peaks differ along and across, combined slip has another.
     *
     * @param lateralSlip tangent of the slip angle
     * @param load wheel load in newtons
     */
    default TyreForce lockedForce(double lateralSlip, double load) {
        TyreForce force = force(1, lateralSlip, load);
        double peakX = peakForceX(load);
        double peakY = peakForceY(load);
        if (!(peakX > 0 && peakY > 0)) {
            return force;
        }
        double used = Math.hypot(force.longitudinal() / peakX, force.lateral() / peakY);
        double along = used / Math.hypot(1 / peakX, lateralSlip / peakY);
        return new TyreForce(along, along * lateralSlip);
    }

    /**
     * A rolling wheel of which the pedals ask a longitudinal force: it carries what is asked of it up to the
     * {@link #rollingForceLimit}, and across it has the {@link #lateralForce} that this leaves. All at once, and into a
     * buffer: the equations of motion ask for it at each wheel in each evaluation. A model whose parts share work may
     * share it here; the numbers are those of the single methods.
     *
     * @param lateralSlip tangent of the slip angle
     * @param asked longitudinal force in newtons, of either sign
     * @param load wheel load in newtons
     * @param patch receives peaks, limit and forces; the longitudinal force with the sign of {@code asked}
     */
    default void roll(double lateralSlip, double asked, double load, ContactPatch patch) {
        double most = rollingForceLimit(lateralSlip, load);
        double carried = Math.max(-most, Math.min(most, asked));
        patch.peaks(peakForceX(load), peakForceY(load));
        patch.forces(carried, lateralForce(lateralSlip, carried, load), most);
    }

    /**
     * The two wheels of an axle, which roll with one slip and are asked for the same: {@link #roll} for one after the
     * other. A model that shares work between them may do so here; the numbers are those of {@link #roll}.
     *
     * @param lateralSlip tangent of the slip angle
     * @param asked longitudinal force in newtons of each wheel, of either sign
     * @param leftLoad load of the left wheel in newtons
     * @param rightLoad load of the right wheel in newtons
     * @param left receives what the left wheel has
     * @param right receives what the right wheel has
     */
    default void rollAxle(
            double lateralSlip,
            double asked,
            double leftLoad,
            double rightLoad,
            ContactPatch left,
            ContactPatch right) {
        roll(lateralSlip, asked, leftLoad, left);
        roll(lateralSlip, asked, rightLoad, right);
    }

    /**
     * The same for a wheel that is locked: {@link #lockedForce} into a buffer.
     *
     * @param lateralSlip tangent of the slip angle
     * @param load wheel load in newtons
     * @param patch receives peaks and forces; the limit is the longitudinal force itself
     */
    default void slide(double lateralSlip, double load, ContactPatch patch) {
        TyreForce force = lockedForce(lateralSlip, load);
        patch.peaks(peakForceX(load), peakForceY(load));
        patch.forces(force.longitudinal(), force.lateral(), force.longitudinal());
    }

    /**
     * Lateral slip, tangent of the slip angle, at which the pure lateral force is the given fraction of its peak; on
     * the rising side of the curve.
     *
     * @param fraction from 0 to 1
     * @param load wheel load in newtons
     */
    default double lateralSlipFor(double fraction, double load) {
        return ImposedForce.lateralSlipFor(this, fraction, load);
    }

    /**
     * Lateral slip, tangent of the slip angle, at which a wheel has a lateral force beside a longitudinal one; on the
     * rising side of the curve. Slip and force of a wheel, each scaled by its stiffness and peak, have one direction,
     * and their lengths go with each other as without braking (source: the combined-slip rule of H. B. Pacejka, Tyre
     * and Vehicle Dynamics, ch. 3.2.3, from memory; turned round).
     *
     * @param share share of the lateral peak that the longitudinal force leaves, 0 to 1
     * @param fraction fraction of that share which the lateral force takes, 0 to 1
     * @param load wheel load in newtons
     */
    default double lateralSlipBeside(double share, double fraction, double load) {
        double lateral = share * fraction;
        double length = Math.sqrt(1 - share * share + lateral * lateral);
        return length > 0 ? lateralSlipFor(length, load) * lateral / length : 0;
    }

    /**
     * The same tyre on a road of other friction: peaks grow by the factor, stiffnesses stay.
     *
     * @param factor friction over that of this tyre, above 0
     * @throws org.foreload.conventions.InvalidValueException if the factor is not above 0
     */
    default Tyre withFriction(double factor) {
        return new SimilarTyre(this, factor);
    }
}
