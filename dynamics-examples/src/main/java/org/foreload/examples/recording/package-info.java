/**
 * Recorded runs as files: reading what loggers write, whatever its columns, units and separators, and making runs whose
 * truth is known.
 */
package org.foreload.examples.recording;
