package steadyturn.analysis.wrist;

import java.util.List;
import java.util.stream.Stream;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.StrapdownSamples;

/**
 * What the two units of a wrist did not show in a swing.
 *
 * @param unseen of the one and of the other
 * @param bridges over what they lost since address
 */
record WristGaps(List<Unseen> unseen, List<Bridge> bridges) {

  /** Turned by more than this against each other, two segments are somewhere else (our choice). */
  private static final double BEYOND_RAD = Math.toRadians(12);

  /** Gaps of two repaired streams behind an instant at address. */
  static WristGaps of(PeakRepair.Repaired forearm, PeakRepair.Repaired other, double addressS) {
    List<Unseen> unseen =
        Stream.of(forearm, other).map(PeakRepair.Repaired::stream).map(Unseen::of).toList();
    if (unseen.stream().allMatch(u -> u.inner().isEmpty())) {
      return new WristGaps(unseen, List.of());
    }
    List<Bridge> bridges =
        Stream.of(forearm, other)
            .map(PeakRepair.Repaired::stream)
            .flatMap(s -> StrapdownSamples.overLostRates(s).stream())
            .filter(b -> b.afterS() > addressS)
            .toList();
    return new WristGaps(unseen, bridges);
  }

  /** Whether one of them was not seen somewhere in a span. */
  boolean touch(double fromS, double toS) {
    return unseen.stream().anyMatch(u -> u.touches(fromS, toS));
  }

  /** Whether an angle at an instant cannot be told: it lies in a gap, or one before is too long. */
  boolean hide(double timeS) {
    return unseen.stream().anyMatch(u -> u.holds(timeS)) || isBeyond(timeS);
  }

  /** Whether a gap between address and an instant was too long for the angles behind it. */
  boolean isBeyond(double timeS) {
    double square = 0;
    for (Bridge bridge : bridges) {
      square += bridge.beforeS() < timeS ? bridge.rotationSdRad() * bridge.rotationSdRad() : 0;
    }
    return square > BEYOND_RAD * BEYOND_RAD;
  }
}
