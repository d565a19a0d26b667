/**
 * How one unit turned over a few seconds, from its gyroscope alone, and the repair of rates that
 * hit the gyroscope's full scale. In: a stretch of {@link steadyturn.ingest.sample.UnitStream}.
 * Out: {@link GyroTrack}, {@link PeakRepair}. Start at {@link GyroTrack}. Good for one swing;
 * leaves long recordings to {@code fusion.filter} and places to {@code fusion.displace}.
 */
@NullMarked
package steadyturn.fusion.attitude;

import org.jspecify.annotations.NullMarked;
