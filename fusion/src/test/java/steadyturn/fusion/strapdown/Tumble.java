package steadyturn.fusion.strapdown;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit that turns about all three axes and moves along them at once, each as a sum of two sines
 * of its own size, pace and phase, with its exact samples: rate and force by central differences of
 * 0.1 ms, good to about 1e-6. Attitude: turn about z, then y, then x.
 */
final class Tumble {

  static final double GRAVITY_MPS2 = 9.80665;
  private static final double H = 1e-4;

  private final double pace;
  private final double[] phase;
  private final double turnRad;
  private final double wayM;

  /**
   * Sets the motion.
   *
   * @param pace 1 for sines of about 1 Hz
   * @param turnRad size of the turns
   * @param wayM size of the ways
   * @param shift moves the phases, so that one motion is unlike the next
   */
  Tumble(double pace, double turnRad, double wayM, double shift) {
    this.pace = pace;
    this.turnRad = turnRad;
    this.wayM = wayM;
    this.phase = new double[] {0.3 + shift, 1.1 - 2 * shift, 2.3 + 0.7 * shift, 0.9, 1.7, 2.9};
  }

  private double wave(int i, double t) {
    double w = 2 * Math.PI * pace;
    double slow = Math.sin(w * (0.8 + 0.13 * i) * t + phase[i]) - Math.sin(phase[i]);
    return slow + 0.3 * Math.sin(w * (1.9 + 0.21 * i) * t + 2 * phase[i]);
  }

  Quaternion attitude(double t) {
    return Quaternion.aboutZ(turnRad * wave(0, t))
        .times(Quaternion.aboutY(turnRad * wave(1, t)))
        .times(Quaternion.aboutX(turnRad * wave(2, t)));
  }

  Vector3 positionM(double t) {
    return new Vector3(wayM * wave(3, t), wayM * wave(4, t), wayM * wave(5, t));
  }

  Vector3 velocityMps(double t) {
    return positionM(t + H).minus(positionM(t - H)).times(1 / (2 * H));
  }

  private Vector3 rate(double t) {
    return attitude(t - H).conjugate().times(attitude(t + H)).rotationVector().times(1 / (2 * H));
  }

  private Vector3 force(double t) {
    Vector3 pull =
        positionM(t + H).plus(positionM(t - H)).minus(positionM(t).times(2)).times(1 / (H * H));
    return attitude(t).conjugate().rotate(pull.plus(new Vector3(0, 0, GRAVITY_MPS2)));
  }

  /** Samples from startS to endS. */
  UnitStream samples(double rateHz, double startS, double endS) {
    int n = (int) Math.round((endS - startS) * rateHz) + 1;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = startS + i / rateHz;
      Vector3 rate = rate(time[i]);
      Vector3 force = force(time[i]);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = force.get(axis);
        gyro[axis][i] = rate.get(axis);
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), time, accel, gyro);
  }
}
