/**
 * What of the library has to give each checked value.
 *
 * <p><b>Key idea.</b> A check is data and knows its subject by name; a subject is a few lines that lead named inputs
 * into the library and one number out. It contains no physics of its own, or as little as a test bench must:
 * integration at a fixed step, searches, and lines whose best way to be driven is known.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.validation.subject.Subjects} lists them all;
 * {@link org.foreload.validation.subject.EntryBench} has whole cars and corners;
 * {@link org.foreload.validation.subject.Hodograph} is the law that bounds every entry.
 *
 * <p><b>Valid when</b> the inputs are those of the catalogue. <b>Neglects</b> guards against others. <b>Fails when</b>
 * an input is missing: it says which.
 */
package org.foreload.validation.subject;
