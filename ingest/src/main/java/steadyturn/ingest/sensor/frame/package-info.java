/**
 * Cuts bytes into frames and lines, and reads our own two protocols. In: bytes in pieces of any
 * size. Out: whole frames, told to a {@link FrameReader}, and samples. Start at {@link SyncFrames},
 * {@link LengthFrames}, {@link CobsFrames}, {@link SlipFrames} or {@link LineProtocol}, whichever
 * the unit speaks. Knows nothing of the units that are sold.
 */
@NullMarked
package steadyturn.ingest.sensor.frame;

import org.jspecify.annotations.NullMarked;
