/**
 * Two runs over the same road, side by side: where one gains on the other.
 *
 * <p><b>Key idea.</b> Two drivers pass the same place at two distances on their own axes: sensors differ, and so do the
 * starts of the recordings. The bends of the road are where they are for both, so the axes are laid on each other bend
 * by bend, or by the shape of speed where the course is not known; then the gap is the difference of two times at one
 * place, and its rise from place to place says where the time is made. Everything here treats the two runs alike, so
 * exchanging them turns every sign and changes nothing else.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.comparison.Alignment} lays the axes on each other and says how well;
 * {@link org.foreload.comparison.Comparison} has the gap over distance and, for each
 * {@link org.foreload.comparison.CornerGap}, by phase, each with an interval.
 *
 * <p><b>Valid when</b> both drove the same road the same way round. <b>Neglects</b> the lateral place on the road: the
 * shorter way round a bend shows as time, as it should, and not as distance. <b>Fails when</b> the two have neither a
 * bend nor positions in common: {@link org.foreload.comparison.Alignment#of} says so.
 */
package org.foreload.comparison;
