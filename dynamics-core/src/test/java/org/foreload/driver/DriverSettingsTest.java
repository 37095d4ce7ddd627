package org.foreload.driver;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A driver is hands and two feet, each changed by copy and each guarded. */
class DriverSettingsTest {

    /** Each change touches its own number alone: changed back, the driver is the first one again. */
    @Test
    void aDriverIsChangedByCopy() {
        DriverSettings driver = DriverSettings.practised();
        Hands hands = new Hands(0.1, 2, 3, 0.9, 0.5, 0.2, 0.9);
        DriverSettings other = driver.with(hands)
                .with(driver.rightFoot().withExitFriction(0.5))
                .with(driver.leftFoot().withLag(0.2).withSlowestBraking(0.7));
        assertEquals(hands, other.hands());
        assertEquals(0.5, other.rightFoot().exitFriction());
        assertEquals(0.2, other.leftFoot().lag());
        assertEquals(0.7, other.leftFoot().slowestBraking());
        assertEquals(
                driver,
                other.with(driver.hands())
                        .with(other.rightFoot()
                                .withExitFriction(driver.rightFoot().exitFriction()))
                        .with(other.leftFoot()
                                .withLag(driver.leftFoot().lag())
                                .withSlowestBraking(driver.leftFoot().slowestBraking())));
    }

    /** Neither an axle nor the exit is ever planned with the whole friction: a full axle cannot be steered. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.1, 1.01, Double.NaN})
    void theGripInUseStaysBelowTheWhole(double share) {
        assertThrows(InvalidValueException.class, () -> new Hands(0.06, 1.2, 4, 0.85, 0.7, 0.1, share));
        assertThrows(InvalidValueException.class, () -> new RightFoot(0.1, share, 0.9));
        assertThrows(InvalidValueException.class, () -> new RightFoot(0.1, 0.9, share));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.1, Double.NaN, Double.POSITIVE_INFINITY})
    void aLagIsAboveZero(double lag) {
        assertThrows(InvalidValueException.class, () -> new Hands(lag, 1.2, 4, 0.85, 0.7, 0.1, 0.9));
        assertThrows(InvalidValueException.class, () -> new RightFoot(lag, 0.9, 0.9));
        assertThrows(InvalidValueException.class, () -> new LeftFoot(lag, 0, Reaction.NONE));
    }
}
