/**
 * Named numbers inside immutable models: how they are read, and how they are replaced.
 *
 * <p><b>Key idea.</b> A sweep or a sensitivity needs to turn one number of a model and leave the rest. A
 * {@link org.foreload.parameter.Parameter} is the pair of functions that does it, reader and replacer, with a name and
 * a unit. The model stays as it is; the replacer returns a copy, which checks itself as any other.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.parameter.Parameter}, by hand or as the component of a record. Which
 * numbers a model has is said by the model's own package, and ranges and starting points belong to the study, not to
 * the parameter.
 *
 * <p><b>Valid when</b> reading a replaced number gives it back, and replacing it by what was read changes nothing.
 * <b>Neglects</b> that numbers may are related, such as track width and yaw inertia. <b>Fails when</b> the new value is
 * not allowed: the model's own exception says so.
 */
package org.foreload.parameter;
