/**
 * The corner sheet: what an engineer hands to a driver about one car in one corner, as one HTML file that needs nothing
 * else. {@link org.foreload.examples.sheet.Sheet} computes it; {@link org.foreload.examples.sheet.SheetPage} writes it,
 * from a template, a style sheet and a script beside it; all text that comes from files is escaped.
 *
 * <p>Key idea: everything that the slider shows is in the page already, once for each release; the script only shows
 * one and hides the others. So the page also works without a script and on paper, and the same sheet has the same bytes
 * each time.
 */
package org.foreload.examples.sheet;
