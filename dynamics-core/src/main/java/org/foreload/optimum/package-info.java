/**
 * The best release of a car in a corner, and what the time left above the ideal bound is made of.
 *
 * <p><b>Key idea.</b> Best is only what is best after each release brakes as late as it can. So the brake point is no
 * variable of the search: every release that is looked at gets its own, by a quick search near a guess, and the answer
 * is checked by the full one. The shape is a monotone spline, which no family limits.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.optimum.BestRelease} searches and gives an
 * {@link org.foreload.optimum.Optimum}; {@link org.foreload.optimum.Remainder} splits what is left above the bound by
 * its causes, each switched off in turn and the release searched for anew.
 *
 * <p><b>Valid when</b> some simple release makes the corner: the search starts from the best of these. <b>Neglects</b>
 * a second application of the brake, and that a driver may not repeat the optimum: see the risk of a release. <b>Fails
 * when</b> the optimum is a needle in a haystack; then restarts disagree, and the spread says so.
 */
package org.foreload.optimum;
