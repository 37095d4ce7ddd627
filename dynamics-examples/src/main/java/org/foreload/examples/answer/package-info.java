/**
 * What an entry or a sweep comes to, for people and for programs.
 *
 * <p><b>The one thing to understand:</b> every sentence is made from the numbers of the run that it speaks of; nothing
 * is said of every car. Programs read the fields, people the headline, a few rows and the reasons.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.answer.EntryAnswer},
 * {@link org.foreload.examples.answer.ExploreAnswer}.
 *
 * <p><b>Valid when</b> the numbers come from one study. <b>Neglects</b> languages other than English. <b>Fails when</b>
 * never: where there is nothing to say, a dash or an empty field stands.
 */
package org.foreload.examples.answer;
