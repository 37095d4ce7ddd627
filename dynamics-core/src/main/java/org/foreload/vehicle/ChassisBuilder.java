package org.foreload.vehicle;

/**
 * Makes a {@link Chassis} step by step: each number by its name and its unit, none forgotten, none in another's place.
 * A step that is left out or taken out of turn does not compile. Each step may be kept and continued more than once.
 */
public final class ChassisBuilder {

    private ChassisBuilder() {}

    static Mass start() {
        return mass -> wheelbase -> cgToFrontAxle -> cgHeight -> yawInertia -> frontTrack ->
                rearTrack -> new Chassis(mass, wheelbase, cgToFrontAxle, cgHeight, yawInertia, frontTrack, rearTrack);
    }

    /** Asks for the mass. */
    public interface Mass {

        /** With the driver, kg. */
        Wheelbase massKg(double mass);
    }

    /** Asks for the wheelbase. */
    public interface Wheelbase {

        /** Between the axles, m. */
        CgToFrontAxle wheelbaseM(double wheelbase);
    }

    /** Asks for the place of the centre of gravity (CG) along the car. */
    public interface CgToFrontAxle {

        /** From the CG forward to the front axle, m; inside the wheelbase. */
        CgHeight cgToFrontAxleM(double cgToFrontAxle);
    }

    /** Asks for the height of the CG. */
    public interface CgHeight {

        /** Above the road, m; zero switches longitudinal load transfer off. */
        YawInertia cgHeightM(double cgHeight);
    }

    /** Asks for the moment of inertia. */
    public interface YawInertia {

        /** About the vertical axis through the CG, kg·m²; zero is legal in the quasi-steady models. */
        FrontTrack yawInertiaKgM2(double yawInertia);
    }

    /** Asks for the front track. */
    public interface FrontTrack {

        /** Between the front wheels, m. */
        RearTrack frontTrackM(double frontTrack);
    }

    /** Asks for the rear track. */
    public interface RearTrack {

        /** Between the rear wheels, m; the last step. */
        Chassis rearTrackM(double rearTrack);
    }
}
