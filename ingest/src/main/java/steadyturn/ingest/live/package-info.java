/**
 * From ports to a growing dataset. In: ports and their adapters. Out: a Motion-BIDS dataset that is
 * valid at every moment, and the state of each unit for people. Start at {@link LiveRecorder} for
 * what is written and at {@link LiveUnit} for what comes in. Judges no movement.
 */
@NullMarked
package steadyturn.ingest.live;

import org.jspecify.annotations.NullMarked;
