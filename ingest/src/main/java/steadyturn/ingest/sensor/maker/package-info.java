/**
 * Units that are sold, each read by the public description of what it sends, which its Javadoc
 * names. In: bytes of a port or a logger's file. Out: samples, by the contract of {@link
 * steadyturn.ingest.sensor.SensorAdapter}, where to start. What each frame's check is worth stands
 * in docs/units.md.
 */
@NullMarked
package steadyturn.ingest.sensor.maker;

import org.jspecify.annotations.NullMarked;
