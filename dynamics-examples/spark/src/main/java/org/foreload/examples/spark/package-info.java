/**
 * A sweep shared out over Apache Spark: an example for those who have a cluster already.
 *
 * <p><b>The one thing to understand:</b> each release is searched for by itself, so a part of a sweep needs nothing of
 * the others. Spark hands out numbers of parts, each executor answers with the lines that {@code foreload explore
 * --shard I/N} prints, and the driver joins them into the answer of one run, byte for byte.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.spark.SparkSweep} is the program,
 * {@link org.foreload.examples.spark.PartOfSweep} what an executor does, {@link org.foreload.examples.spark.SweepTime}
 * compares its time with that of one process.
 *
 * <p><b>Valid when</b> every executor has the same Foreload, and finds the files that the options name under the same
 * path. <b>Neglects</b> joining in parallel: the driver drives each release found once more. <b>Fails when</b> the
 * request is wrong: it is refused in one line before Spark starts.
 */
package org.foreload.examples.spark;
