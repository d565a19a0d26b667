package steadyturn.analysis.wrist;

import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.sample.BodyPoint;

/**
 * How well the clocks around the wrist are tied, 1 SD; 0 where a unit is missing.
 *
 * @param handSdS hand against forearm, s
 * @param shaftSdS club shaft against forearm, s
 * @param handShaftSdS club shaft against hand, s
 */
public record WristClocks(double handSdS, double shaftSdS, double handShaftSdS) {

  /** All ties equally good. */
  public static WristClocks within(double sdS) {
    return new WristClocks(sdS, sdS, sdS);
  }

  /** The ties of an aligned recording around an instant. */
  public static WristClocks of(AlignedRecording aligned, double timeS) {
    return new WristClocks(
        between(aligned, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, timeS),
        between(aligned, BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT, timeS),
        between(aligned, BodyPoint.LEAD_HAND, BodyPoint.CLUB_SHAFT, timeS));
  }

  private static double between(AlignedRecording aligned, BodyPoint a, BodyPoint b, double timeS) {
    boolean both =
        aligned.recording().unit(a).isPresent() && aligned.recording().unit(b).isPresent();
    return both ? aligned.sdBetweenS(a, b, timeS) : 0;
  }
}
