/**
 * The learner's first page: one HTML file on which four sliders move the loads, the grip and the friction circle of a
 * car that brakes while it corners.
 *
 * <p><b>The one thing to understand:</b> the page computes no physics. The library fills a table for a grid of settings
 * ({@link org.foreload.examples.learn.GripTable}), the page interpolates in it, and says how far that is off, which was
 * measured when it was made.
 *
 * <p><b>Valid when</b> the car is in steady state on a flat road, on {@link org.foreload.tyre.FrictionTyre}.
 * <b>Neglects</b> all that takes time. <b>Fails when</b> a wheel is lifted or locked: there the quantities have
 * corners, and the error is larger than elsewhere.
 */
package org.foreload.examples.learn;
