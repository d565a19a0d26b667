/**
 * From a unit's bytes to its samples. In: bytes as they come from a port, in pieces of any size,
 * with damage. Out: calls to a {@link SampleSink}: samples in SI units on the unit's own clock,
 * hellos, and every byte that was no sample. Start at {@link SensorAdapter}, which is all that a
 * new unit needs, with {@link LineProtocol} or {@link CobsFrames} or {@link SyncFrames} below it;
 * {@link SensorAdapters} finds the adapters. Knows nothing of ports, files and body points.
 */
@NullMarked
package steadyturn.ingest.sensor;

import org.jspecify.annotations.NullMarked;
