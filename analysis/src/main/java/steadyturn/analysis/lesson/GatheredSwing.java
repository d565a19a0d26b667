package steadyturn.analysis.lesson;

import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.swing.Swing;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * A swing with the samples it needs, cut out of its recording, so that the recording itself can be
 * let go.
 *
 * @param recording id of the recording it came from
 * @param windows each unit's samples from {@code swing.startS} to {@code swing.endS}
 * @param steps what the wear steps before it said
 * @param wristSyncSdS spread between the clocks of forearm and hand at impact, s
 */
record GatheredSwing(
    String recording,
    Swing swing,
    Map<BodyPoint, UnitStream> windows,
    PelvisSteps steps,
    double wristSyncSdS) {

  GatheredSwing {
    windows = Map.copyOf(windows);
  }

  Optional<UnitStream> window(BodyPoint point) {
    return Optional.ofNullable(windows.get(point));
  }
}
