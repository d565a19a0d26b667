package steadyturn.analysis.lesson;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.wear.pelvis.AimSight;

/**
 * The target line of every swing of a lesson. A player stands to it askew by a habit and a little
 * anew each time; the aim step shows the sum for the swings soon after it, and so the habit for
 * all. One linear estimate over the lesson; angles are small.
 */
final class TargetLine {

  /** What of the spread about square comes anew each swing (our assumption). */
  private static final double ANEW_PART = 0.5;

  /** Hips against a stick lie along it within this (our assumption). */
  private static final double STICK_SD_RAD = Math.toRadians(1);

  /** Sway at the two moments (our assumption). */
  private static final double SWAY_SD_RAD = Math.toRadians(0.5);

  private final double habitVariance;
  private final double anewVariance;
  private final double scaleSd;

  /**
   * Sets the spreads.
   *
   * @param squareSdRad how far hips are off square at address, all in all
   * @param gyroScaleSd spread of the gyro's scale, 1
   */
  TargetLine(double squareSdRad, double gyroScaleSd) {
    double anew = ANEW_PART * squareSdRad;
    this.anewVariance = anew * anew;
    this.habitVariance = squareSdRad * squareSdRad - anewVariance;
    this.scaleSd = gyroScaleSd;
  }

  /**
   * The aim of each swing.
   *
   * @param sights what the aim step says of each, in order
   * @param qUnitPelvis how the unit sits
   */
  List<Aim> of(List<Optional<AimSight>> sights, Quaternion qUnitPelvis) {
    List<Integer> seen =
        IntStream.range(0, sights.size()).filter(i -> sights.get(i).isPresent()).boxed().toList();
    if (seen.isEmpty()) {
      Aim square = new Aim(0, Math.sqrt(habitVariance + anewVariance), false);
      return sights.stream().map(s -> square).toList();
    }
    List<AimSight> seenSights = seen.stream().map(i -> sights.get(i).orElseThrow()).toList();
    DMatrixRMaj weights = inverseCovariance(seenSights);
    return IntStream.range(0, sights.size())
        .mapToObj(i -> aim(i, seen, seenSights, weights, qUnitPelvis))
        .toList();
  }

  /**
   * Of what the sights say: habit, swing, stick, and a bias and scale that all of them share. What
   * a scale error turns there it turns back again, so its part grows like a random walk in steps of
   * 1 rad (our assumption).
   */
  private DMatrixRMaj inverseCovariance(List<AimSight> sights) {
    int m = sights.size();
    DMatrixRMaj covariance = new DMatrixRMaj(m, m);
    for (int i = 0; i < m; i++) {
      for (int j = 0; j < m; j++) {
        AimSight a = sights.get(i);
        AimSight b = sights.get(j);
        double shared =
            habitVariance
                + STICK_SD_RAD * STICK_SD_RAD
                + a.biasSdRadPerS() * a.sinceS() * b.biasSdRadPerS() * b.sinceS()
                + scaleSd * scaleSd * Math.min(a.turnedRad(), b.turnedRad());
        double own = i == j ? anewVariance + SWAY_SD_RAD * SWAY_SD_RAD : 0;
        covariance.set(i, j, shared + own);
      }
    }
    CommonOps_DDRM.invert(covariance);
    return covariance;
  }

  private Aim aim(
      int swing,
      List<Integer> seen,
      List<AimSight> sights,
      DMatrixRMaj weights,
      Quaternion qUnitPelvis) {
    int m = sights.size();
    double mean = 0;
    double variance = habitVariance + anewVariance;
    for (int i = 0; i < m; i++) {
      double gain = 0;
      for (int j = 0; j < m; j++) {
        gain += weights.get(i, j) * inCommon(swing, seen.get(j));
      }
      mean += gain * sights.get(i).hipsTurnedRad(qUnitPelvis);
      variance -= gain * inCommon(swing, seen.get(i));
    }
    return new Aim(-mean, Math.sqrt(variance), true);
  }

  private double inCommon(int swing, int other) {
    return habitVariance + (swing == other ? anewVariance : 0);
  }

  /**
   * Where the target line of a swing lies.
   *
   * @param targetFromHipsRad turn of the target line against the hip line at address, about the
   *     vertical
   * @param sdRad its spread
   * @param byStep whether an aim step had a say; else the hips are taken as square
   */
  record Aim(double targetFromHipsRad, double sdRad, boolean byStep) {}
}
