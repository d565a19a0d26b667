package steadyturn.fusion.strapdown;

import java.util.function.DoubleUnaryOperator;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit carried along x and turned about z by given functions of time, with its exact samples:
 * force and rate by central differences of 0.1 ms, good to about 1e-6.
 */
public final class Ride {

  public static final double GRAVITY_MPS2 = 9.80665;
  private static final double H = 1e-4;

  private final DoubleUnaryOperator placeM;
  private final DoubleUnaryOperator turnRad;
  private final Vector3 armM;

  /**
   * Turns about the vertical through a point that moves along x; the unit sits at {@code armM} from
   * it.
   */
  public Ride(DoubleUnaryOperator placeM, DoubleUnaryOperator turnRad, Vector3 armM) {
    this.placeM = placeM;
    this.turnRad = turnRad;
    this.armM = armM;
  }

  /** A smooth step from 0 to 1 between two instants (minimum jerk). */
  public static double step(double t, double fromS, double toS) {
    double u = Math.max(0, Math.min(1, (t - fromS) / (toS - fromS)));
    return u * u * u * (10 - 15 * u + 6 * u * u);
  }

  public Vector3 positionM(double t) {
    return new Vector3(placeM.applyAsDouble(t), 0, 0).plus(attitude(t).rotate(armM));
  }

  public Quaternion attitude(double t) {
    return Quaternion.aboutZ(turnRad.applyAsDouble(t));
  }

  /** Samples from 0 to endS, with errors a unit may have. */
  public UnitStream samples(
      double rateHz, double endS, Vector3 accelBiasMps2, Vector3 gyroBiasRadPerS) {
    int n = (int) Math.round(endS * rateHz) + 1;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      double t = i / rateHz;
      time[i] = t;
      Vector3 a =
          positionM(t + H).plus(positionM(t - H)).minus(positionM(t).times(2)).times(1 / (H * H));
      Vector3 f =
          attitude(t)
              .conjugate()
              .rotate(a.plus(new Vector3(0, 0, GRAVITY_MPS2)))
              .plus(accelBiasMps2);
      double rate = (turnRad.applyAsDouble(t + H) - turnRad.applyAsDouble(t - H)) / (2 * H);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = f.get(axis);
        gyro[axis][i] = (axis == 2 ? rate : 0) + gyroBiasRadPerS.get(axis);
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), time, accel, gyro);
  }
}
