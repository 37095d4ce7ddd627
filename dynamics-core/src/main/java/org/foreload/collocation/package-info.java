/**
 * How a problem of optimal control becomes a system of equations, and how that is solved.
 *
 * <p><b>Key idea.</b> Write the unknown run as a polynomial on each of a few hundred intervals and ask for the
 * equations at a few points of each. What is left is a problem with thousands of unknowns in which each interval
 * touches only its neighbours: Newton's step is found by one walk from the last interval to the first and one back.
 * Bounds become slacks with a logarithm that keeps them above zero and whose weight goes to zero.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.collocation.StageEquations} is what a problem has to say at a point, with
 * first and second derivatives; {@link org.foreload.collocation.OptimalControl} solves it.
 *
 * <p><b>Valid when</b> the equations are twice differentiable near the answer, or nearly so. <b>Neglects</b> the error
 * of the mesh: solve on two. <b>Fails when</b> the guess is far from any run that keeps the bounds, or where a control
 * is without effect: then the ending says that it has not converged. An optimum is one among its neighbours, which need
 * not be the best of all.
 */
package org.foreload.collocation;
