/**
 * Says whether a unit's stream is good enough to measure with, in words a golf teacher understands.
 * In: {@link steadyturn.ingest.sample.UnitStream} and {@link steadyturn.ingest.sample.Recording}.
 * Out: {@link UnitReport} and {@link RecordingReport}: figures, findings, one {@link Verdict} a
 * unit, each finding with what to do about it. Start at {@link RecordingQuality} for a recording,
 * at {@link UnitQuality} for one unit. Repairs nothing and estimates no motion.
 */
@NullMarked
package steadyturn.ingest.quality;

import org.jspecify.annotations.NullMarked;
