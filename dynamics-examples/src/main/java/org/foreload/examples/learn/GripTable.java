package org.foreload.examples.learn;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.foreload.vehicle.Car;

/**
 * Quantities of a car for a grid of settings, computed by the library, and what lies between them by cubic
 * interpolation (Lagrange, the four nearest nodes of each slider). The page's script does the same with the same
 * numbers.
 */
final class GripTable {

    /** Nodes of each slider: deceleration in m/s², brake share, height in m, surface. */
    static final double[][] NODES = {
        {0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, {0.5, 0.6, 0.7, 0.8, 0.9}, {0.3, 0.4, 0.5, 0.6, 0.7}, {0.5, 0.7, 0.9, 1.1, 1.3}
    };

    /** Digits that are kept of each number; the error is measured with them. */
    private static final MathContext DIGITS = new MathContext(6);

    /** Step of the coarse search for d*, m/s². */
    private static final double STEP = 0.05;

    /** d* costs as much as two hundred settings: it is measured at every tenth. */
    private static final int SPARSE = 10;

    private static final int COUNT = GripQuantities.NAMES.length;

    private final double[] numbers;

    private GripTable(double[] numbers) {
        this.numbers = numbers;
    }

    /** Computes the table of a car. */
    static GripTable of(Car car) {
        int cells = NODES[0].length * NODES[1].length * NODES[2].length * NODES[3].length;
        double[] numbers = new double[cells * COUNT];
        int at = 0;
        for (double surface : NODES[3]) {
            for (double height : NODES[2]) {
                for (double share : NODES[1]) {
                    for (double deceleration : NODES[0]) {
                        GripSetting setting = new GripSetting(deceleration, share, height, surface);
                        for (double value : GripQuantities.of(setting, car).values()) {
                            numbers[at++] = new BigDecimal(value).round(DIGITS).doubleValue();
                        }
                    }
                }
            }
        }
        return new GripTable(numbers);
    }

    /** The quantities of any setting inside the grid, interpolated. */
    GripQuantities at(GripSetting setting) {
        double[] where = {setting.deceleration(), setting.frontBrakeShare(), setting.cgHeight(), setting.surface()};
        int[] first = new int[4];
        double[][] weights = new double[4][];
        for (int i = 0; i < 4; i++) {
            first[i] = first(NODES[i], where[i]);
            weights[i] = weights(NODES[i], first[i], where[i]);
        }
        double[] values = new double[COUNT];
        for (int l = 0; l < 4; l++) {
            for (int k = 0; k < 4; k++) {
                for (int j = 0; j < 4; j++) {
                    for (int i = 0; i < 4; i++) {
                        double weight = weights[0][i] * weights[1][j] * weights[2][k] * weights[3][l];
                        int cell = first[3] + l;
                        cell = cell * NODES[2].length + first[2] + k;
                        cell = cell * NODES[1].length + first[1] + j;
                        cell = cell * NODES[0].length + first[0] + i;
                        for (int q = 0; q < COUNT; q++) {
                            values[q] += weight * numbers[cell * COUNT + q];
                        }
                    }
                }
            }
        }
        return new GripQuantities(values);
    }

    /** Index of the first of the four nodes around a place. */
    private static int first(double[] nodes, double at) {
        int below = 0;
        while (below < nodes.length - 2 && nodes[below + 1] <= at) {
            below++;
        }
        return Math.max(0, Math.min(nodes.length - 4, below - 1));
    }

    private static double[] weights(double[] nodes, int first, double at) {
        double[] weights = new double[4];
        for (int i = 0; i < 4; i++) {
            weights[i] = 1;
            for (int j = 0; j < 4; j++) {
                if (j != i) {
                    weights[i] *= (at - nodes[first + j]) / (nodes[first + i] - nodes[first + j]);
                }
            }
        }
        return weights;
    }

    /** d*, m/s²: where the front axle can give most sideways, within the slider. */
    double best(GripSetting setting) {
        return best(d -> at(setting.withDeceleration(d)).frontCapacity());
    }

    /** Place of the greatest value over the slider of deceleration: steps, then a parabola through the three best. */
    static double best(DoubleUnaryOperator capacity) {
        double end = NODES[0][NODES[0].length - 1];
        int steps = (int) Math.round(end / STEP);
        int best = 0;
        double[] values = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            values[i] = capacity.applyAsDouble(end * i / steps);
            if (values[i] > values[best]) {
                best = i;
            }
        }
        if (best == 0 || best == steps) {
            return end * best / steps;
        }
        double below = values[best] - values[best - 1];
        double above = values[best] - values[best + 1];
        return end * (best + (below - above) / (2 * (below + above))) / steps;
    }

    /**
     * How far the interpolation is off.
     *
     * @param settings how many were compared
     * @param load greatest error of a wheel load, N
     * @param capacity greatest error of an axle's capacity, N
     * @param use greatest error of the grip used where no wheel is locked, as a fraction
     * @param commonUse the same at 19 of 20 settings
     * @param best greatest error of d*, m/s²
     */
    record Error(int settings, double load, double capacity, double use, double commonUse, double best) {}

    /**
     * Measures the error at settings drawn evenly from the whole grid.
     *
     * @param car of the table
     * @param settings how many; d* is looked for at a tenth of them
     * @param seed of the draw
     */
    Error error(Car car, int settings, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double load = 0;
        double capacity = 0;
        double best = 0;
        List<Double> uses = new ArrayList<>();
        for (int i = 0; i < settings; i++) {
            GripSetting setting =
                    new GripSetting(between(random, 0), between(random, 1), between(random, 2), between(random, 3));
            GripQuantities exact = GripQuantities.of(setting, car);
            GripQuantities table = at(setting);
            for (int q = 0; q < 4; q++) {
                load = Math.max(load, Math.abs(exact.values()[q] - table.values()[q]));
            }
            capacity = Math.max(capacity, Math.abs(setting.frontCapacity(car) - table.frontCapacity()));
            capacity = Math.max(capacity, Math.abs(setting.rearCapacity(car) - table.rearCapacity()));
            if (!exact.locked()) {
                uses.add(Math.max(
                        Math.abs(exact.frontUse() - table.frontUse()), Math.abs(exact.rearUse() - table.rearUse())));
            }
            if (i % SPARSE == 0) {
                double exactly = best(d -> setting.withDeceleration(d).frontCapacity(car));
                best = Math.max(best, Math.abs(best(setting) - exactly));
            }
        }
        Collections.sort(uses);
        double use = uses.get(uses.size() - 1);
        return new Error(settings, load, capacity, use, uses.get(uses.size() * 19 / 20), best);
    }

    private static double between(SplittableRandom random, int slider) {
        double[] nodes = NODES[slider];
        return nodes[0] + (nodes[nodes.length - 1] - nodes[0]) * random.nextDouble();
    }

    /** The table as the page's script reads it. */
    ObjectNode json() {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        ArrayNode nodes = json.putArray("nodes");
        for (double[] slider : NODES) {
            ArrayNode one = nodes.addArray();
            for (double node : slider) {
                one.add(node);
            }
        }
        ArrayNode names = json.putArray("names");
        for (String name : GripQuantities.NAMES) {
            names.add(name);
        }
        ArrayNode all = json.putArray("numbers");
        for (double number : numbers) {
            all.add(new BigDecimal(number).round(DIGITS).stripTrailingZeros());
        }
        return json;
    }
}
