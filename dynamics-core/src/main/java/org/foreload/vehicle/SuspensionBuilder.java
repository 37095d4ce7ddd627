package org.foreload.vehicle;

import org.foreload.vehicle.Suspension.Response;

/**
 * Makes a {@link Suspension} step by step: each number by its name and its unit, none forgotten, none in another's
 * place. A step that is left out or taken out of turn does not compile. Each step may be kept and continued more than
 * once.
 */
public final class SuspensionBuilder {

    private SuspensionBuilder() {}

    static FrontRollStiffness start() {
        return share -> front -> rear -> pitch -> roll -> new Suspension(share, front, rear, pitch, roll);
    }

    /** Asks for the roll stiffness. */
    public interface FrontRollStiffness {

        /** Front share of the roll stiffness, 0 to 1. */
        FrontRollCenter frontRollStiffnessShare(double share);
    }

    /** Asks for the front roll centre. */
    public interface FrontRollCenter {

        /** Height above the road, m. */
        RearRollCenter frontRollCenterHeightM(double front);
    }

    /** Asks for the rear roll centre. */
    public interface RearRollCenter {

        /** Height above the road, m. */
        Pitch rearRollCenterHeightM(double rear);
    }

    /** Asks for the response in pitch. */
    public interface Pitch {

        /** How the sprung mass follows braking; {@link Response#RIGID} for at once. */
        Roll pitch(Response pitch);
    }

    /** Asks for the response in roll. */
    public interface Roll {

        /** How the sprung mass follows cornering; the last step. */
        Suspension roll(Response roll);
    }
}
