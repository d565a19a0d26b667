package steadyturn.fusion.attitude;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;

/**
 * Which way is up for an arm's unit, from what it felt before a swing. Turned into one frame, the
 * mean force between two moments is gravity and the change of speed from one to the other over the
 * time between, whatever the arm did meanwhile: so a standing arm needs half a second, one that
 * waggles into the swing a longer time, from and to moments at which it hardly moved.
 *
 * @param track the track in a frame with z up
 * @param pushRad what the speeds at both moments may tilt that by (1 SD)
 */
public record QuietLevel(GyroTrack track, double pushRad) {

  // the usual moments: the first tenth of a second of movement lies before the takeaway and would
  // tilt the level by 2 deg
  private static final double FROM_S = 0.75;
  private static final double TO_S = 0.15;
  // our choices: over less, the push of a standing arm does not cancel; over more, the gyroscope's
  // errors cost more than they save
  private static final double LEAST_S = 0.15;
  private static final double LONGEST_S = 2.6;
  private static final double LATEST_TO_S = 0.6;
  private static final double GRID_S = 0.05;
  private static final double LONGEST_STEP_S = 0.03;
  // other moments than the usual ones must be this much better (our choice)
  private static final double BETTER = 0.5;
  // a forearm's unit lies so far from a shoulder that itself hardly moves: our assumption
  private static final double ARM_M = 0.55;
  private static final double BESIDE_S = 0.02;

  /**
   * Levels a track before a takeaway; none where the force is lost there.
   *
   * @param raw of an arm's unit
   */
  public static Optional<QuietLevel> before(GyroTrack raw, double takeawayS) {
    double fromS = Math.max(raw.timeS(0), takeawayS - FROM_S);
    double toS = takeawayS - TO_S;
    if (seenS(raw, fromS, toS) < Math.min(LEAST_S, (toS - fromS) / 2)) {
      return Optional.empty();
    }
    double least = pushRad(raw, fromS, toS);
    double fromBest = fromS;
    double toBest = toS;
    double enough = BETTER * least;
    for (double to = toS; to > takeawayS - LATEST_TO_S; to -= GRID_S) {
      double first = Math.max(raw.timeS(0), to - LONGEST_S);
      for (double from = first; from < to - LEAST_S; from += GRID_S) {
        double push = pushRad(raw, from, to);
        boolean isBest = push < Math.min(least, enough);
        if (isBest && seenS(raw, from, to) > 0.9 * (to - from)) {
          least = push;
          fromBest = from;
          toBest = to;
        }
      }
    }
    int from = Math.min(raw.indexAt(fromBest), raw.size() - 2);
    int to = Math.max(from + 1, raw.indexAt(toBest));
    return Optional.of(new QuietLevel(raw.levelled(from, to), least));
  }

  /** How long the force was seen between two moments, s. */
  private static double seenS(GyroTrack raw, double fromS, double toS) {
    double seenS = 0;
    for (int i = raw.indexAt(fromS) + 1; i < raw.size() && raw.timeS(i) <= toS; i++) {
      double stepS = raw.timeS(i) - raw.timeS(i - 1);
      seenS += raw.hasForce(i) && stepS < LONGEST_STEP_S ? stepS : 0;
    }
    return seenS;
  }

  private static double pushRad(GyroTrack raw, double fromS, double toS) {
    return Math.hypot(speedMps(raw, fromS), speedMps(raw, toS))
        / Math.max(LEAST_S, toS - fromS)
        / StandardGravity.MPS2;
  }

  private static double speedMps(GyroTrack raw, double timeS) {
    int from = Math.min(raw.size() - 1, raw.indexAt(timeS - BESIDE_S));
    int to = Math.max(from + 1, Math.min(raw.size(), raw.indexAt(timeS + BESIDE_S)));
    Vector3 sum = Vector3.ZERO;
    for (int i = from; i < to; i++) {
      sum = sum.plus(raw.rateUnitRadPerS(i));
    }
    return ARM_M * sum.norm() / (to - from);
  }
}
