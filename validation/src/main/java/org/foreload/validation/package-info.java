/**
 * Holds the library against the outside world.
 *
 * <p><b>Key idea.</b> Every check is a row of data: a value from outside, where it comes from and how surely, what of
 * the library has to give it, and how far it may be off, with the reason. Nothing is adjusted to pass; where a source
 * and the physics part ways, the row says so and the budget is as wide as that difference.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.validation.Catalogue} reads the {@link org.foreload.validation.Check}s,
 * {@link org.foreload.validation.Validation} runs them, {@link org.foreload.validation.ReportPage} and
 * {@link org.foreload.validation.ErrorChart} show what came out.
 *
 * <p><b>Valid when</b> the sources are right: those read are cited with section or page, those recalled say so.
 * <b>Neglects</b> what no source gives a number for: see the page's list of what is not checked. <b>Fails when</b> a
 * check cannot be computed: that is a failed check, not an exception.
 */
package org.foreload.validation;
