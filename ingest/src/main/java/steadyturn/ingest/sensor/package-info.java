/**
 * From a unit's bytes to its samples. In: bytes as they come from a port, in pieces of any size,
 * with damage. Out: calls to a {@link SampleSink}: samples in SI units on the unit's own clock,
 * hellos, and every byte that was no sample. Start at {@link SensorAdapter}, which is all that a
 * new unit needs; {@code sensor.frame} cuts its bytes into frames or lines. {@link SensorAdapters}
 * finds the adapters, {@link CapturedBytes} reads a file of bytes. Units that are sold are in
 * {@code sensor.maker}. Knows nothing of ports.
 */
@NullMarked
package steadyturn.ingest.sensor;

import org.jspecify.annotations.NullMarked;
