package org.foreload.parameter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

public class ParameterTest {

    /** A record with numbers that refuses some of them. */
    public record Wheel(String name, double radius, double width) {
        public Wheel {
            if (!(radius > 0)) {
                throw new IllegalStateException("radius " + radius);
            }
        }
    }

    private record Cart(Wheel left, Wheel right) {}

    private static final Wheel WHEEL = new Wheel("oak", 0.5, 0.1);

    private static final Parameter<Wheel> RADIUS = Parameter.component(Wheel.class, "radius", "radius_m", "m");

    @Test
    void aComponentIsReadAndReplacedAlone() {
        assertEquals(0.5, RADIUS.of(WHEEL));
        assertEquals(new Wheel("oak", 0.7, 0.1), RADIUS.with(WHEEL, 0.7));
        assertEquals(new Wheel("oak", 0.5, 0.1), WHEEL);
        assertEquals("radius_m", RADIUS.name());
        assertEquals("m", RADIUS.unit());
    }

    @Test
    void theRecordsOwnRefusalComesThrough() {
        IllegalStateException refused = assertThrows(IllegalStateException.class, () -> RADIUS.with(WHEEL, -1));
        assertEquals("radius -1.0", refused.getMessage());
    }

    @Test
    void aPartOfAWholeIsReplacedInItsPlace() {
        Parameter<Cart> right = RADIUS.within(Cart::right, (cart, wheel) -> new Cart(cart.left(), wheel));
        Cart cart = new Cart(WHEEL, new Wheel("elm", 0.6, 0.1));
        assertEquals(0.6, right.of(cart));
        assertEquals(new Cart(WHEEL, new Wheel("elm", 0.8, 0.1)), right.with(cart, 0.8));
        assertEquals("radius_m", right.name());
    }

    private record Hidden(double radius) {}

    /** Refused before it is used, not when its number is first read. */
    @Test
    void aHiddenRecordIsRefusedAtOnce() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> Parameter.component(Hidden.class, "radius", "radius_m", "m"));
        assertTrue(refused.getMessage().contains("Hidden is hidden"), refused.getMessage());
    }

    @Test
    void whatIsNoNumberOfTheRecordIsRefused() {
        for (String other : new String[] {"name", "depth"}) {
            IllegalArgumentException refused = assertThrows(
                    IllegalArgumentException.class, () -> Parameter.component(Wheel.class, other, other, ""));
            assertTrue(refused.getMessage().contains(other));
        }
    }
}
