package org.foreload.handling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.conventions.Gravity;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Car;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Handling about a trim against the closed forms of the single-track model with linear tyres. */
class LinearHandlingTest {

    /** Six digits, as the closed forms are given. */
    private static final double SIX_DIGITS = 1e-6;

    private static LinearHandling straight(Car car, double speed) {
        return LinearHandling.of(Trim.find(car, speed, 0, 0).orElseThrow());
    }

    private static void assertRelative(double expected, double actual, double tolerance) {
        assertEquals(expected, actual, tolerance * Math.abs(expected));
    }

    /**
     * Parameters of R. Rajamani, Vehicle Dynamics and Control (from memory); the numbers are evaluations of the closed
     * forms in S. Brennan and A. Alleyne, Dimensionless analysis of tire characteristics.
     */
    @Test
    void aTextbookCarHasTheTextbookNumbers() {
        LinearHandling handling = straight(LinearCars.rajamani(), 30);
        assertRelative(1.7608209e-3, handling.understeerGradient(), SIX_DIGITS);
        assertEquals(39.0130, handling.characteristicSpeed().orElseThrow(), 5e-5);
        assertTrue(handling.criticalSpeed().isEmpty());
        assertRelative(7.034428, handling.yawRateGain(), SIX_DIGITS);
        assertRelative(-0.481083, handling.model().sideslipGain(), 2 * SIX_DIGITS);
        assertRelative(8.481647, handling.naturalFrequency(), SIX_DIGITS);
        assertRelative(0.805358, handling.dampingRatio(), SIX_DIGITS);
        Eigenvalue first = handling.eigenvalues().get(0);
        assertRelative(-6.83076, first.real(), SIX_DIGITS);
        assertRelative(5.02782, first.imaginary(), SIX_DIGITS);
        assertRelative(6.83076, handling.decayRate(), SIX_DIGITS);
    }

    /**
     * J. Y. Wong, Theory of Ground Vehicles, Example 5.1 (from memory): 20.105 kN, L = 2.8 m, CG at 0.465 L, 38.92 and
     * 38.25 kN/rad a tyre: K = 0.0159763 rad per g, characteristic speed 41.464 m/s.
     */
    @Test
    void wongsCarHasWongsGradient() {
        double mass = 20_105 / Gravity.G;
        Car car = LinearCars.of(mass, 3000, 0.465 * 2.8, 0.535 * 2.8, 2 * 38_920, 2 * 38_250);
        LinearHandling handling = straight(car, 20);
        assertEquals(0.0159763, handling.understeerGradient() * Gravity.G, 5e-8);
        assertEquals(41.464, handling.characteristicSpeed().orElseThrow(), 5e-4);
    }

    /**
     * Ackermann angle 57.3·L/R degrees: T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 6, example (from
     * memory), L = 100.6 in. It holds the sine, the angle and the tangent for equal: 1 % at the tightest radius.
     */
    @ParameterizedTest
    @CsvSource({"500, 0.96", "200, 2.4", "100, 4.8", "50, 9.6"})
    void aCreepingCarSteersTheAckermannAngle(double radiusFeet, double degrees) {
        double wheelbase = 100.6 * 0.0254;
        Car car = LinearCars.of(1500, 2500, wheelbase / 2, wheelbase / 2, 1e5, 1e5);
        double speed = 0.1;
        Trim trim =
                Trim.find(car, speed, 0, speed * speed / (radiusFeet * 0.3048)).orElseThrow();
        assertRelative(degrees, Math.toDegrees(trim.steer()), 0.01);
    }

    @Test
    void aNeutralCarHasNeitherSpeed() {
        LinearHandling handling = straight(LinearCars.of(1500, 2500, 1.2, 1.5, 120_000 * 1.5, 120_000 * 1.2), 30);
        assertEquals(0, handling.understeerGradient(), 1e-9);
        assertTrue(handling.characteristicSpeed().isEmpty());
        assertTrue(handling.criticalSpeed().isEmpty());
        assertEquals(1, handling.divergenceMargin(), SIX_DIGITS);
    }

    /** Closed forms of section 1 of the single-track theory for random cars, understeering and oversteering alike. */
    @Property(edgeCases = EdgeCasesMode.NONE)
    void randomCarsFollowTheClosedForms(
            @ForAll @DoubleRange(min = 600, max = 2500) double mass,
            @ForAll @DoubleRange(min = 0.7, max = 1.4) double inertiaShare,
            @ForAll @DoubleRange(min = 0.9, max = 1.8) double a,
            @ForAll @DoubleRange(min = 0.9, max = 1.8) double b,
            @ForAll @DoubleRange(min = 4e4, max = 2.5e5) double front,
            @ForAll @DoubleRange(min = 4e4, max = 2.5e5) double rear,
            @ForAll @DoubleRange(min = 5, max = 70) double v) {
        double inertia = inertiaShare * mass * a * b;
        double wheelbase = a + b;
        double gradient = mass / wheelbase * (b / front - a / rear);
        double factor = 1 + gradient / wheelbase * v * v;
        LinearHandling handling = straight(LinearCars.of(mass, inertia, a, b, front, rear), v);
        // Six digits of the larger of its two parts, of which the gradient is the difference.
        assertEquals(gradient, handling.understeerGradient(), SIX_DIGITS * mass / wheelbase * b / front);
        double trace = -(front + rear) / (mass * v) - (a * a * front + b * b * rear) / (inertia * v);
        double product = wheelbase * wheelbase * front * rear / (mass * inertia * v * v) * factor;
        Complex root = new Complex(trace * trace / 4 - product).sqrt();
        Eigenvalue first = handling.eigenvalues().get(0);
        double scale = Math.abs(trace) + root.norm();
        assertEquals(trace / 2 + root.getReal(), first.real(), SIX_DIGITS * scale);
        assertEquals(root.getImaginary(), first.imaginary(), SIX_DIGITS * scale);
        assertEquals(first.real(), handling.model().growthRate(), SIX_DIGITS * scale);
        assertEquals(factor > 0, handling.stable());
        if (Math.abs(factor) > 1e-3) {
            assertRelative(v / wheelbase / factor, handling.yawRateGain(), SIX_DIGITS / Math.abs(factor));
            assertEquals(factor, handling.divergenceMargin(), SIX_DIGITS * (1 + Math.abs(factor)));
        }
        if (factor > 1e-3) {
            assertRelative(Math.sqrt(product), handling.naturalFrequency(), SIX_DIGITS / factor);
            double damping = (mass * (a * a * front + b * b * rear) + inertia * (front + rear))
                    / (2 * wheelbase * Math.sqrt(mass * inertia * front * rear * factor));
            assertRelative(damping, handling.dampingRatio(), SIX_DIGITS / factor);
        }
        if (gradient < -1e-5) {
            double critical = handling.criticalSpeed().orElseThrow();
            assertEquals(critical > v, handling.stable());
        }
    }

    /** The matrices are random, of the size of the lagged model; both libraries solve the same one. */
    @Property
    void twoLibrariesFindTheSameEigenvalues(@ForAll long seed) {
        var random = new java.util.SplittableRandom(seed);
        double[][] matrix = new double[6][6];
        for (double[] row : matrix) {
            Arrays.setAll(row, i -> random.nextDouble(-10, 10));
        }
        List<Eigenvalue> ours = Linear.eigenvalues(matrix);
        Complex[] others = new EigenDecompositionNonSymmetric(MatrixUtils.createRealMatrix(matrix)).getEigenvalues();
        List<Complex> sorted = Arrays.stream(others)
                .sorted(Comparator.comparingDouble(Complex::getReal)
                        .thenComparingDouble(Complex::getImaginary)
                        .reversed())
                .toList();
        for (int i = 0; i < 6; i++) {
            // The two of a pair may differ in the last digit of their real part, and so stand in either order.
            assertEquals(sorted.get(i).getReal(), ours.get(i).real(), 1e-7);
            assertEquals(
                    Math.abs(sorted.get(i).getImaginary()), Math.abs(ours.get(i).imaginary()), 1e-7);
        }
    }

    /** Every lag at a thousandth of its usual size: the lagged car moves as the one without. */
    @Test
    void lagsThatVanishLeaveTheTwoStates() {
        Car car = SampleCars.ROAD_CAR;
        var tyre = ((org.foreload.tyre.FrictionTyre) car.frontTyre()).withRelaxationLength(3e-4);
        Trim trim = Trim.find(car.withTyres(tyre, tyre), 30, 2, 3).orElseThrow();
        LinearHandling handling = LinearHandling.of(trim);
        assertEquals(4, handling.laggedEigenvalues().size());
        // A lag of 0.3 mm at 30 m/s is 0.01 ms against motions of tenths of a second.
        assertRelative(
                handling.eigenvalues().get(0).real(),
                handling.laggedEigenvalues().get(0).real(),
                1e-3);
    }

    /**
     * At the critical speed one motion of the car stands still: its determinant is 0 (H. B. Pacejka, Tyre and Vehicle
     * Dynamics, ch. 1, from memory). It must be that of the car with all its lags, in which loads follow: the product
     * of the eigenvalues changes its sign where critical speed and speed cross, and where the decay rate does.
     */
    @ParameterizedTest
    @CsvSource({"road, 4, 5", "road, 4, 6", "road, 3, 6", "sprung, 4, 6"})
    void speedsBeyondTheCriticalOneAreUnstable(String name, double lateral, double deceleration) {
        Car car = name.equals("road") ? SampleCars.ROAD_CAR : TrimTest.SPRUNG;
        double low = 15;
        double high = 60;
        assertTrue(lagged(car, low, lateral, deceleration) > 0, "stable when slow");
        assertTrue(lagged(car, high, lateral, deceleration) < 0, "unstable when fast");
        for (int i = 0; i < 40; i++) {
            double middle = (low + high) / 2;
            if (lagged(car, middle, lateral, deceleration) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double below = 0.999 * low;
        double beyond = 1.001 * low;
        LinearHandling slower =
                LinearHandling.of(Trim.find(car, below, deceleration, lateral).orElseThrow());
        LinearHandling faster =
                LinearHandling.of(Trim.find(car, beyond, deceleration, lateral).orElseThrow());
        assertTrue(slower.criticalSpeed().orElseThrow() > below);
        assertTrue(slower.divergenceMargin() > 0);
        assertTrue(slower.decayRate() > 0);
        assertTrue(faster.criticalSpeed().orElseThrow() < beyond);
        assertTrue(faster.divergenceMargin() < 0);
        assertTrue(faster.decayRate() < 0);
        // The gradient holds the deceleration and not the brake force, which moves the speed by less than a tenth.
        assertRelative(low, Math.sqrt(car.chassis().wheelbase() / -slower.understeerGradient()), 0.1);
    }

    /** Product of the eigenvalues of the car with its lags, an even number of them. */
    private static double lagged(Car car, double speed, double lateral, double deceleration) {
        return LinearHandling.of(Trim.find(car, speed, deceleration, lateral).orElseThrow())
                .laggedEigenvalues()
                .stream()
                .map(one -> new Complex(one.real(), one.imaginary()))
                .reduce(Complex.ONE, Complex::multiply)
                .getReal();
    }

    /** Braking unloads the rear axle and takes friction from both: the faster it slows, the less stable. */
    @Test
    void theHarderACarBrakesInATurnTheLessStableItIs() {
        double last = Double.POSITIVE_INFINITY;
        double lastRear = Double.POSITIVE_INFINITY;
        for (double deceleration = 0; deceleration < 6; deceleration++) {
            LinearHandling handling = LinearHandling.of(
                    Trim.find(SampleCars.ROAD_CAR, 30, deceleration, 4).orElseThrow());
            assertTrue(handling.decayRate() < last, "at " + deceleration);
            assertTrue(handling.model().rearStiffness() < lastRear, "at " + deceleration);
            last = handling.decayRate();
            lastRear = handling.model().rearStiffness();
        }
    }
}
