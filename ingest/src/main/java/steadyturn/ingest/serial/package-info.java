/**
 * Bytes from serial ports. In: the path of a port. Out: blocks of bytes with the host time of their
 * arrival, and word when a port goes and comes back. Start at {@link SerialPortSource}. Parses
 * nothing; {@code ingest.lab} is the other side, for trying everything without hardware.
 */
@NullMarked
package steadyturn.ingest.serial;

import org.jspecify.annotations.NullMarked;
