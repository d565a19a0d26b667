package steadyturn.analysis.live;

import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.ingest.sample.UnitFacts;

/**
 * How far the pelvis is turned since it last stood still, at this moment, by a forward filter: for
 * a cue while a drill is done. It knows nothing of what comes, so it is an estimate; what counts is
 * found afterwards. For one thread that feeds and any that ask.
 */
public final class LiveTurn {

  /** Nearer to where it stood, a rest is the new start: hips come to rest some degrees apart. */
  private static final double NEAR_DEG = 7.5;

  private static final double REST_S = 0.4;

  /** After so long elsewhere the player starts from there, s. */
  private static final double ELSEWHERE_S = 4;

  /** Turned so far towards the target the player looks after the ball, however long, deg. */
  private static final double FROM_FINISH_DEG = 25;

  private static final double TO_FINISH_DEG = 150;
  private static final double FINISH_S = 20;

  /** Turned back farther than any top, the player had begun in a finish and now addresses, deg. */
  private static final double BACK_TO_ADDRESS_DEG = -65;

  private final OrientationFilter filter;
  private final int handSign;
  private final double askEveryS;
  private double lastS = Double.NaN;
  private double askedS = Double.NEGATIVE_INFINITY;
  private double stillSinceS = Double.NaN;
  private double headingDeg;
  private double startDeg = Double.NaN;
  private volatile double turnDeg = Double.NaN;
  private volatile double atS = Double.NaN;

  /**
   * Of one unit.
   *
   * @param handSign +1 for a right-handed player, -1 for a left-handed one
   * @param askEveryS so often the turn is taken from the filter, s
   */
  public LiveTurn(UnitFacts facts, int handSign, double askEveryS) {
    KalmanSettings settings =
        KalmanSettings.with(RestDetectorSettings.worn()).forRate(facts.nominalRateHz());
    filter = new ErrorStateKalmanFilter(settings, SampleLimits.of(facts));
    this.handSign = handSign;
    this.askEveryS = askEveryS;
  }

  /** Takes a sample; times are s on any axis. */
  public void sample(double timeS, double[] accelMps2, double[] gyroRadPerS) {
    filter.update(
        gyroRadPerS[0],
        gyroRadPerS[1],
        gyroRadPerS[2],
        accelMps2[0],
        accelMps2[1],
        accelMps2[2],
        Double.isNaN(lastS) ? 0 : Math.max(0, timeS - lastS));
    lastS = timeS;
    if (timeS - askedS >= askEveryS) {
      askedS = timeS;
      look(timeS);
    }
  }

  private void look(double timeS) {
    double deg = handSign * Math.toDegrees(filter.qEarthUnit().twistAboutZRad());
    headingDeg += Math.IEEEremainder(deg - headingDeg, 360);
    stillSinceS = !filter.atRest() ? Double.NaN : Double.isNaN(stillSinceS) ? timeS : stillSinceS;
    double stillS = timeS - stillSinceS; // NaN while it moves
    boolean isNear = Math.abs(headingDeg - startDeg) < NEAR_DEG;
    if (Double.isNaN(startDeg) || (isNear && stillS >= REST_S) || stillS >= elsewhereS()) {
      startDeg = headingDeg;
    }
    turnDeg = headingDeg - startDeg;
    atS = timeS;
  }

  private double elsewhereS() {
    double deg = headingDeg - startDeg;
    if (deg < BACK_TO_ADDRESS_DEG && deg > -TO_FINISH_DEG) {
      return REST_S;
    }
    return deg > FROM_FINISH_DEG && deg < TO_FINISH_DEG ? FINISH_S : ELSEWHERE_S;
  }

  /** Turn since the last rest, deg, towards the target positive; NaN before the first sample. */
  public double turnDeg() {
    return turnDeg;
  }

  /** The time of the sample that it is of, s. */
  public double atS() {
    return atS;
  }
}
