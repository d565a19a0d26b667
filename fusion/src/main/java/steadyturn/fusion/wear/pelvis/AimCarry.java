package steadyturn.fusion.wear.pelvis;

import java.util.Optional;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * Carries the heading of the aim step on by the gyro. What is carried loses itself within minutes,
 * so it reaches {@link #REACH_S} far and over no break of the stream.
 */
public record AimCarry(UnitStream stretch, OrientationTrack track, double aimedS, Gaps gaps) {

  /** Beyond this the gyro's bias has used the heading up, s. */
  public static final double REACH_S = 120;

  /** The filter has so long before the step to learn the bias, s. */
  private static final double BEFORE_S = 60;

  /**
   * What is left of the bias about the vertical while the unit is worn by a person who sways and
   * turns slowly; the rest on the table does no better, as the bias changes by 0.1 deg/s when a
   * unit is turned to another face (our assumption, as simulated units have it).
   */
  private static final double BIAS_SD_RAD_PER_S = Math.toRadians(0.05);

  private static final double LONGEST_GAP_S = 0.05;

  /**
   * Runs over what the unit saw around an aim step.
   *
   * @param pelvis the stream that holds the step
   * @param aimedS the middle of the step, s
   */
  public static AimCarry of(UnitStream pelvis, double aimedS) {
    UnitStream stretch = pelvis.between(aimedS - BEFORE_S, aimedS + REACH_S);
    OrientationTrack track = OrientationRun.withDefaults().run(stretch, OrientationMethod.OFFLINE);
    return new AimCarry(stretch, track, aimedS, Gaps.of(stretch, Gaps.Need.RATE));
  }

  /** What an address has in common with the step; none where it is too far or the stream broke. */
  public Optional<AimSight> at(double addressS) {
    int from = stretch.indexAt(aimedS);
    int to = stretch.indexAt(addressS);
    boolean isSeen = addressS > aimedS && to < stretch.size() && from < to;
    if (!isSeen || gaps.longestS(aimedS, addressS) > LONGEST_GAP_S) {
      return Optional.empty();
    }
    return Optional.of(
        new AimSight(
            track.qEarthUnitAt(aimedS),
            track.qEarthUnitAt(addressS),
            addressS - aimedS,
            BIAS_SD_RAD_PER_S,
            turnedRad(from, to)));
  }

  private double turnedRad(int from, int to) {
    double sum = 0;
    for (int k = from + 1; k < to; k++) {
      double turn = track.qEarthUnit(k).times(track.qEarthUnit(k - 1).conjugate()).twistAboutZRad();
      sum += Math.abs(turn);
    }
    return sum;
  }
}
