/**
 * Many runs of anything.
 *
 * <p><b>Key idea.</b> A study knows nothing of cars: it takes cases and a computation, and gives results in the order
 * of the cases, whatever the number of threads. A study that is stopped keeps what it has.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.study.Sweep} runs one computation for many cases, with
 * {@link org.foreload.study.Sweep.Progress} to watch and to stop it; {@link org.foreload.study.Search} looks for the
 * lowest cost in a box, {@link org.foreload.study.LinearStep} for one step down within limits, and
 * {@link org.foreload.study.Edge} for the largest value that still keeps something;
 * {@link org.foreload.study.ResponseSurface} puts smooth functions through known values;
 * {@link org.foreload.study.Rounds} counts several sweeps together; {@link org.foreload.study.LowDiscrepancy} draws
 * points that fill a cube evenly; {@link org.foreload.study.Proportion} says how sure a counted probability is, and
 * {@link org.foreload.study.Deviation} how sure a standard deviation of a sample.
 *
 * <p><b>Valid when</b> the computation shares nothing that changes between cases. <b>Neglects</b> that cases may differ
 * much in cost. <b>Fails when</b> a case throws: the sweep ends with what it threw.
 */
package org.foreload.study;
