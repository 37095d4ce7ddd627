package org.foreload.vehicle;

import org.foreload.tyre.Tyre;

/**
 * Makes a {@link Car} step by step: each number by its name and its unit, none forgotten, none in another's place. A
 * step that is left out or taken out of turn does not compile. Each step may be kept and continued more than once.
 */
public final class CarBuilder {

    private CarBuilder() {}

    static Name start() {
        return name -> chassis -> suspension -> aerodynamics -> share -> driveline ->
                front -> rear -> new Car(name, chassis, suspension, aerodynamics, share, driveline, front, rear);
    }

    /** Asks for the name. */
    public interface Name {

        /** For reports. */
        Body named(String name);
    }

    /** Asks for the chassis. */
    public interface Body {

        /** Masses and lengths. */
        Springs chassis(Chassis chassis);
    }

    /** Asks for the suspension. */
    public interface Springs {

        /** How load moves between the wheels, and how fast. */
        Air suspension(Suspension suspension);
    }

    /** Asks for the aerodynamics. */
    public interface Air {

        /** Drag and downforce; {@link Aerodynamics#NONE} for none. */
        Brakes aerodynamics(Aerodynamics aerodynamics);
    }

    /** Asks for the brakes. */
    public interface Brakes {

        /** Front share of the whole brake force, 0 to 1. */
        Engine frontBrakeShare(double share);
    }

    /** Asks for the driveline. */
    public interface Engine {

        /** Engine power at the wheels, and which wheels it drives. */
        FrontTyres driveline(Driveline driveline);
    }

    /** Asks for the front tyres. */
    public interface FrontTyres {

        /** Each of the two. */
        RearTyres frontTyre(Tyre front);
    }

    /** Asks for the rear tyres. */
    public interface RearTyres {

        /** Each of the two; the last step. */
        Car rearTyre(Tyre rear);
    }
}
