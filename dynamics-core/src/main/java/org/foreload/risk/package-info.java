/**
 * How sure a release is for a driver who is not a machine, and what to practise next.
 *
 * <p><b>Key idea.</b> The quickest release for a machine stands at the edge of what the car can do, so a driver who
 * scatters falls off it half the time. Here each plan is driven many times with the driver's deviations, the same ones
 * for every plan, and what counts is how often it fails and how quick it is on average. The reckless best and the
 * sensible one are different releases.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.risk.Scatter} describes a driver, with invented ones to begin with;
 * {@link org.foreload.risk.RiskStudy} gives the {@link org.foreload.risk.Risk} of a plan;
 * {@link org.foreload.risk.SensibleRelease} weighs plans and gives a {@link org.foreload.risk.Choice};
 * {@link org.foreload.risk.PracticeSteps} plans the way from one release to another.
 *
 * <p><b>Valid when</b> deviations are independent and normal, and the driver makes good on the way no more than the
 * foot's {@link org.foreload.driver.Reaction} does. <b>Neglects</b> learning, tiredness, fear, and a corner's run-off.
 * <b>Fails when</b> the scatter is so large that few entries make the corner: then mean times rest on few.
 */
package org.foreload.risk;
