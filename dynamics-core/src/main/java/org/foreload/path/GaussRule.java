package org.foreload.path;

/** Gauss-Legendre rule with eight nodes on −1 to 1 (Abramowitz and Stegun, table 25.4, from memory). */
final class GaussRule {

    /** The nodes. */
    static final double[] NODES = {
        -0.96028985649753623,
        -0.79666647741362674,
        -0.52553240991632899,
        -0.18343464249564980,
        0.18343464249564980,
        0.52553240991632899,
        0.79666647741362674,
        0.96028985649753623
    };

    /** Their weights, which sum to 2. */
    static final double[] WEIGHTS = {
        0.10122853629037626, 0.22238103445337447, 0.31370664587788729, 0.36268378337836198,
        0.36268378337836198, 0.31370664587788729, 0.22238103445337447, 0.10122853629037626
    };

    private GaussRule() {}
}
