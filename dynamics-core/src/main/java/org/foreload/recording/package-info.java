/**
 * Recorded runs on one distance axis: what a driver did, with uncertainties.
 *
 * <p><b>Key idea.</b> A logger writes columns over time, each with its noise, offset and rate. Cleaned and put on one
 * distance axis, a run can be read like a simulated one: curvature says where the corners are, the brake says where the
 * foot came down and how it came off. Edges are found by fitting the whole course and following it back, not by a
 * threshold, which is late by design. How sure a number is follows from the recording's own noise: the run is measured
 * again with that noise added once more, and the spread of the answers is the uncertainty.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.recording.Recording} holds the columns of one pass, recorded or
 * simulated; {@link org.foreload.recording.Run} is that, cleaned after {@link org.foreload.recording.Cleaning}, whose
 * filters have no delay; {@link org.foreload.recording.RecordedCorners} finds and measures the corners, each
 * {@link org.foreload.recording.Measure} an {@link org.foreload.recording.Estimate} with an interval. Reading files is
 * not here.
 *
 * <p><b>Valid when</b> noise is white from sample to sample, a foot moves slower than the filters (a tenth of a
 * second), and the road is level enough for the plan view to have its length. <b>Neglects</b> delays between the
 * channels of one logger but for that of speed behind the accelerations, noise that wanders more slowly than a sample
 * (but for the wander of positions, which is allowed for), and the lateral place of the car on the road. <b>Fails
 * when</b> a run has neither yaw rate, lateral acceleration nor position: then no corner is found, and
 * {@link org.foreload.recording.Run#of} says so.
 */
package org.foreload.recording;
