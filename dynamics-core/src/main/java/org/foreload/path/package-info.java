/**
 * Where the line goes, by station.
 *
 * <p><b>Key idea.</b> To a car a line is its curvature over distance: heading is the integral of curvature, position
 * that of heading. So every line here is a chain of pieces whose curvature runs linearly with distance (straights,
 * arcs, clothoids). Station zero is turn-in, where the curvature first leaves zero; the approach has negative stations.
 * Curvature, heading and y are positive to the left.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.path.SegmentPath} draws a line from {@link org.foreload.path.Segment}s;
 * {@link org.foreload.path.MeasuredPath} fits one to the points of a {@link org.foreload.path.MeasuredLine};
 * {@link org.foreload.path.Path#mirrored()} exchanges left and right; {@link org.foreload.path.TiltedPath} tilts the
 * ground under a line; {@link org.foreload.path.Corner} is a line with a name and a speed of arrival. Reading files is
 * not here.
 *
 * <p><b>Valid when</b> the ground is flat or a mild slope: distance along the line and its plan view are taken for the
 * same length (at a grade of 10 % they differ by half a percent). <b>Neglects</b> crests and dips: grade has no
 * curvature of its own. <b>Fails when</b> half the track is wider than the radius on the inside of a turn: the inner
 * edge then has no place, and offsets from the line lose their meaning.
 */
package org.foreload.path;
