package org.foreload.limit;

import java.util.Arrays;

/**
 * A record of one evaluation: every operation leaves its value, its gradient with respect to the inputs, and its own
 * partial derivatives up to the second order. From them the curvature of any weighted sum of results follows in one
 * sweep back: each operation adds its weight times its own second derivatives between the gradients of its operands
 * (forward gradients, reverse weights; A. Griewank, A. Walther, Evaluating Derivatives, ch. 3 and 8, from memory).
 * Exact but for rounding.
 *
 * <p>An operation returns the number of its result. Records are reused: {@link #restart} forgets all, so an evaluation
 * makes no garbage.
 */
final class Tape {

    private static final int FIRST_SIZE = 512;

    private static final int NONE = -1;

    private static final int MOST_INPUTS = 31;

    private final int inputs;
    private boolean derivatives;
    private int count;
    private double[] value = new double[FIRST_SIZE];
    private double[] gradient;
    private int[] left = new int[FIRST_SIZE];
    private int[] right = new int[FIRST_SIZE];

    /** Five partial derivatives of each operation: by left, by right, left twice, left and right, right twice. */
    private double[] partial = new double[5 * FIRST_SIZE];

    /** Inputs on which each result depends, a bit each: most depend on a few, and only these are gone through. */
    private int[] depends = new int[FIRST_SIZE];

    private boolean[] bent = new boolean[FIRST_SIZE];
    private double[] weight = new double[FIRST_SIZE];

    /** A tape for functions of so many inputs, 31 at most. */
    Tape(int inputs) {
        if (inputs > MOST_INPUTS) {
            throw new IllegalArgumentException(inputs + " inputs");
        }
        this.inputs = inputs;
        this.gradient = new double[FIRST_SIZE * inputs];
    }

    /** Forgets all operations. */
    void restart(boolean withDerivatives) {
        derivatives = withDerivatives;
        count = 0;
    }

    private int next(double result, int a, int b) {
        if (count == value.length) {
            int size = 2 * count;
            value = Arrays.copyOf(value, size);
            gradient = Arrays.copyOf(gradient, size * inputs);
            left = Arrays.copyOf(left, size);
            right = Arrays.copyOf(right, size);
            partial = Arrays.copyOf(partial, 5 * size);
            depends = Arrays.copyOf(depends, size);
            bent = Arrays.copyOf(bent, size);
            weight = Arrays.copyOf(weight, size);
        }
        value[count] = result;
        left[count] = a;
        right[count] = b;
        bent[count] = false;
        weight[count] = 0;
        return count++;
    }

    /** A number that depends on no input. */
    int constant(double number) {
        int node = next(number, NONE, NONE);
        depends[node] = 0;
        return node;
    }

    /** Input number {@code index}, of which a unit is {@code scale}: gradients are with respect to units. */
    int input(int index, double number, double scale) {
        int node = constant(number);
        if (derivatives) {
            depends[node] = 1 << index;
            gradient[node * inputs + index] = scale;
        }
        return node;
    }

    private int linear(double result, int a, double byA, int b, double byB) {
        int node = next(result, a, b);
        if (derivatives) {
            partial[5 * node] = byA;
            partial[5 * node + 1] = byB;
            int to = node * inputs;
            int fromA = a * inputs;
            int onA = depends[a];
            if (b == NONE) {
                depends[node] = onA;
                for (int on = onA; on != 0; on &= on - 1) {
                    int i = Integer.numberOfTrailingZeros(on);
                    gradient[to + i] = byA * gradient[fromA + i];
                }
                return node;
            }
            int fromB = b * inputs;
            int onB = depends[b];
            depends[node] = onA | onB;
            for (int on = onA & onB; on != 0; on &= on - 1) {
                int i = Integer.numberOfTrailingZeros(on);
                gradient[to + i] = byA * gradient[fromA + i] + byB * gradient[fromB + i];
            }
            for (int on = onA & ~onB; on != 0; on &= on - 1) {
                int i = Integer.numberOfTrailingZeros(on);
                gradient[to + i] = byA * gradient[fromA + i];
            }
            for (int on = onB & ~onA; on != 0; on &= on - 1) {
                int i = Integer.numberOfTrailingZeros(on);
                gradient[to + i] = byB * gradient[fromB + i];
            }
        }
        return node;
    }

    /** A function of two results, given by its value and its partial derivatives. */
    int function(int a, int b, double result, double byA, double byB, double byAa, double byAb, double byBb) {
        int node = linear(result, a, byA, b, byB);
        if (derivatives) {
            bent[node] = true;
            partial[5 * node + 2] = byAa;
            partial[5 * node + 3] = byAb;
            partial[5 * node + 4] = byBb;
        }
        return node;
    }

    /** A function of one result, given by its value and its derivatives. */
    int function(int a, double result, double slope, double curvature) {
        int node = linear(result, a, slope, NONE, 0);
        if (derivatives) {
            bent[node] = true;
            partial[5 * node + 2] = curvature;
        }
        return node;
    }

    int plus(int a, int b) {
        return linear(value[a] + value[b], a, 1, b, 1);
    }

    int shifted(int a, double number) {
        return linear(value[a] + number, a, 1, NONE, 0);
    }

    int minus(int a, int b) {
        return linear(value[a] - value[b], a, 1, b, -1);
    }

    int scaled(int a, double factor) {
        return linear(factor * value[a], a, factor, NONE, 0);
    }

    int times(int a, int b) {
        return function(a, b, value[a] * value[b], value[b], value[a], 0, 1, 0);
    }

    int over(int a, int b) {
        double inverse = 1 / value[b];
        double ratio = value[a] * inverse;
        return function(a, b, ratio, inverse, -ratio * inverse, 0, -inverse * inverse, 2 * ratio * inverse * inverse);
    }

    int inverse(int a) {
        double inverse = 1 / value[a];
        return function(a, inverse, -inverse * inverse, 2 * inverse * inverse * inverse);
    }

    int square(int a) {
        return function(a, value[a] * value[a], 2 * value[a], 2);
    }

    int sin(int a) {
        double sin = Math.sin(value[a]);
        return function(a, sin, Math.cos(value[a]), -sin);
    }

    int cos(int a) {
        double cos = Math.cos(value[a]);
        return function(a, cos, -Math.sin(value[a]), -cos);
    }

    int tan(int a) {
        double tan = Math.tan(value[a]);
        double slope = 1 + tan * tan;
        return function(a, tan, slope, 2 * tan * slope);
    }

    int sqrt(int a) {
        double root = Math.sqrt(value[a]);
        return function(a, root, 0.5 / root, -0.25 / (root * value[a]));
    }

    double value(int node) {
        return value[node];
    }

    /** Copies the gradient of a result, times a factor. */
    void gradient(int node, double factor, double[] into, int at) {
        Arrays.fill(into, at, at + inputs, 0);
        addGradient(node, factor, into, at);
    }

    /** Adds the gradient of a result, times a factor. */
    void addGradient(int node, double factor, double[] into, int at) {
        int from = node * inputs;
        for (int on = depends[node]; on != 0; on &= on - 1) {
            int i = Integer.numberOfTrailingZeros(on);
            into[at + i] += factor * gradient[from + i];
        }
    }

    /** Inputs on which a result depends, a bit each. */
    int depends(int node) {
        return depends[node];
    }

    /** Weighs a result in the sum whose curvature is wanted. */
    void weigh(int node, double factor) {
        weight[node] += factor;
    }

    /**
     * Adds the second derivatives of the weighted sum to the lower half of a square matrix, row by row, and clears the
     * weights.
     */
    void addCurvature(double[] matrix) {
        for (int node = count - 1; node >= 0; node--) {
            double w = weight[node];
            if (w == 0 || left[node] == NONE) {
                continue;
            }
            weight[node] = 0;
            int a = left[node];
            int b = right[node];
            weight[a] += w * partial[5 * node];
            if (b != NONE) {
                weight[b] += w * partial[5 * node + 1];
            }
            if (bent[node]) {
                if (b == NONE) {
                    bend(matrix, w * partial[5 * node + 2], a);
                } else {
                    bend(matrix, w, 5 * node, a, b);
                }
            }
        }
    }

    private void bend(double[] matrix, double aa, int a) {
        int at = a * inputs;
        for (int on = depends[a]; on != 0; on &= on - 1) {
            int i = Integer.numberOfTrailingZeros(on);
            double by = aa * gradient[at + i];
            int row = i * inputs;
            for (int with = depends[a] & ((2 << i) - 1); with != 0; with &= with - 1) {
                int j = Integer.numberOfTrailingZeros(with);
                matrix[row + j] += by * gradient[at + j];
            }
        }
    }

    private void bend(double[] matrix, double w, int partials, int a, int b) {
        double aa = w * partial[partials + 2];
        double ab = w * partial[partials + 3];
        double bb = w * partial[partials + 4];
        int atA = a * inputs;
        int atB = b * inputs;
        int onA = depends[a];
        int onB = depends[b];
        int both = onA | onB;
        for (int on = both; on != 0; on &= on - 1) {
            int i = Integer.numberOfTrailingZeros(on);
            double ga = (onA >> i & 1) == 0 ? 0 : gradient[atA + i];
            double gb = (onB >> i & 1) == 0 ? 0 : gradient[atB + i];
            double byA = aa * ga + ab * gb;
            double byB = ab * ga + bb * gb;
            int row = i * inputs;
            int before = (2 << i) - 1;
            for (int with = onA & before; with != 0; with &= with - 1) {
                int j = Integer.numberOfTrailingZeros(with);
                matrix[row + j] += byA * gradient[atA + j];
            }
            for (int with = onB & before; with != 0; with &= with - 1) {
                int j = Integer.numberOfTrailingZeros(with);
                matrix[row + j] += byB * gradient[atB + j];
            }
        }
    }
}
