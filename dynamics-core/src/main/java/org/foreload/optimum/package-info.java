/**
 * The best release of a car in a corner, and what the time left above the ideal bound is made of.
 *
 * <p><b>Key idea.</b> A release is only as good as its own brake point, and the latest one is seldom the quickest. So
 * the brake point is a variable like the others, counted from where a car of constant brake force would have to brake.
 * Time and each limit are for the most part smooth functions of the variables: surfaces fitted to the entries that have
 * been driven show where to drive next. The answer is driven again with full accuracy, and from its latest brake point
 * too. The shape is a monotone spline, which no family limits.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.optimum.BestRelease} searches and gives an
 * {@link org.foreload.optimum.Optimum}; {@link org.foreload.optimum.Remainder} splits what is left above the bound by
 * its causes, each switched off in turn and the release found again; {@link org.foreload.optimum.ShapeRanking} goes
 * down from the best of each shape of a sweep, so that shapes and not grids are compared;
 * {@link org.foreload.optimum.Neighbourhood} finds the best release of studies much like one that is known.
 *
 * <p><b>Valid when</b> some simple release makes the corner: the search starts from the best of these. <b>Neglects</b>
 * a second application of the brake, and that a driver may not repeat the optimum, which can lie on the edge of
 * sliding, where half a metre of brake point costs a tenth of a second: see the risk of a release. <b>Fails when</b>
 * only a narrow range of releases is quick and all searches pass it by. Where they end in different valleys,
 * {@link org.foreload.optimum.Optimum#spread()} is large; where it is small, another valley may still be quicker.
 */
package org.foreload.optimum;
