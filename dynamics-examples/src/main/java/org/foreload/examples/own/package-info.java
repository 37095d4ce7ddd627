/**
 * How to bring a model of your own.
 *
 * <p>{@link org.foreload.examples.own.ExponentialTyre} is a tyre that the core does not know: one record with the six
 * methods that {@link org.foreload.tyre.Tyre} asks for. {@link org.foreload.examples.own.OwnTyre} holds it against the
 * laws of tyres and drives an entry on it.
 *
 * <p><b>Valid when</b> read as an example. <b>Neglects</b> every real tyre. <b>Fails when</b> speed matters: a model
 * that brings only the force is searched for what the core needs; override the other methods where you have a closed
 * form.
 */
package org.foreload.examples.own;
