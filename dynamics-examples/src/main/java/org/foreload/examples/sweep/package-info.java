/**
 * What makes a long sweep bearable: progress, a stop that keeps what was done, and a file from which it goes on.
 *
 * <p><b>The one thing to understand:</b> a {@link org.foreload.examples.sweep.Checkpoint} keeps what the search for
 * each release came to, not the entry. The entry is driven again from it, so a sweep that was interrupted ends with the
 * same answer, to the last bit, as one that was not.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.sweep.Checkpoint} and the
 * {@link org.foreload.examples.sweep.Request} that it belongs to; {@link org.foreload.examples.sweep.ShownProgress};
 * {@link org.foreload.examples.sweep.Stop}.
 *
 * <p><b>Valid when</b> the same version of the program runs on the same kind of machine. <b>Neglects</b> that two
 * processors may differ in the last bit of a sine. <b>Fails when</b> two runs share one checkpoint: the second is
 * refused.
 */
package org.foreload.examples.sweep;
