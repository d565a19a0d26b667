package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A unit with known errors, handled on a table: rests and turns laid end to end. */
final class TableUnit {

  static final double RATE_HZ = 200;
  static final double G = 9.80665;

  final AxisMatrix accelErrors;
  final Vector3 accelBias;
  final AxisMatrix gyroErrors;
  final Vector3 gyroBias;
  private final Random random;
  private final double noise;
  private final List<double[]> samples = new ArrayList<>();
  private Quaternion qEarthUnit = Quaternion.IDENTITY;

  TableUnit(
      AxisMatrix accelErrors,
      Vector3 accelBias,
      AxisMatrix gyroErrors,
      Vector3 gyroBias,
      double noise,
      long seed) {
    this.accelErrors = accelErrors;
    this.accelBias = accelBias;
    this.gyroErrors = gyroErrors;
    this.gyroBias = gyroBias;
    this.noise = noise;
    random = new Random(seed);
  }

  /** A raw unit of the size in the trade: 0.5 % scale, 0.5 deg off square, 25 mg, 1 deg/s. */
  static TableUnit raw(double noise, long seed) {
    return new TableUnit(
        AxisMatrix.ofRows(
            new double[][] {{1.005, 0.004, -0.003}, {-0.006, 0.997, 0.002}, {0.003, 0.005, 1.004}}),
        new Vector3(0.25, -0.18, 0.11),
        AxisMatrix.ofRows(
            new double[][] {
              {0.994, 0.003, -0.002}, {0.004, 1.007, 0.005}, {-0.001, -0.006, 1.002}
            }),
        new Vector3(0.015, -0.02, 0.01),
        noise,
        seed);
  }

  TableUnit lie(double seconds) {
    return turn(Vector3.ZERO, seconds);
  }

  /** Lies on the face whose axis points up; {@code tilt} rad off about the unit's next axis. */
  TableUnit lieWithUp(Vector3 up, double tilt, double seconds) {
    turn(new Vector3(0.6, -0.5, 0.4), 0.5); // being picked up
    Vector3 other = new Vector3(up.z(), up.x(), up.y());
    Vector3 third = up.cross(other);
    Quaternion qUnitEarth = Quaternion.fromAxes(other, third, up);
    qEarthUnit = qUnitEarth.conjugate().times(Quaternion.fromRotationVector(other.times(tilt)));
    return lie(seconds);
  }

  /** Turns evenly by a rotation vector in unit axes. */
  TableUnit turn(Vector3 angleRad, double seconds) {
    int n = (int) Math.round(seconds * RATE_HZ);
    Vector3 rate = angleRad.times(1 / seconds);
    for (int i = 0; i < n; i++) {
      qEarthUnit =
          qEarthUnit.times(Quaternion.fromRotationVector(angleRad.times(1.0 / n))).normalized();
      Vector3 force = qEarthUnit.conjugate().rotate(new Vector3(0, 0, G));
      Vector3 a = accelErrors.times(force).plus(accelBias);
      Vector3 w = gyroErrors.times(rate).plus(gyroBias);
      double shake = angleRad.norm() > 0 ? 1 : 0; // a hand is never quiet
      samples.add(
          new double[] {
            a.x() + noisy(10 * noise + shake),
            a.y() + noisy(10 * noise + shake),
            a.z() + noisy(10 * noise + shake),
            w.x() + noisy(noise),
            w.y() + noisy(noise),
            w.z() + noisy(noise)
          });
    }
    return this;
  }

  private double noisy(double deviation) {
    return deviation * random.nextGaussian();
  }

  UnitStream stream() {
    int n = samples.size();
    double[] t = new double[n];
    double[][] c = new double[6][n];
    for (int i = 0; i < n; i++) {
      t[i] = i / RATE_HZ;
      for (int k = 0; k < 6; k++) {
        c[k][i] = samples.get(i)[k];
      }
    }
    UnitFacts facts =
        new UnitFacts(
            BodyPoint.PELVIS,
            "TEST-7",
            RATE_HZ,
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            false);
    return new UnitStream(
        facts, t, new double[][] {c[0], c[1], c[2]}, new double[][] {c[3], c[4], c[5]});
  }
}
