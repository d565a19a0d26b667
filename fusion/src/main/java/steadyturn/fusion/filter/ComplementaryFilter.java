package steadyturn.fusion.filter;

import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;

/**
 * The textbook filter: follows the rates, and lets the shown vertical drift towards the measured
 * specific force with a fixed time constant; what is left of the error is taken for gyroscope bias.
 * After Mahony, Hamel, Pflimlin 2008, "Nonlinear complementary filters on the special orthogonal
 * group", IEEE Trans Autom Control 53:1203-1218 (equations from memory), with both gains given as
 * time constants and the first seconds averaged. Simple, fast, and misled by lasting acceleration:
 * kept as the yardstick. Its sigma is a rule of thumb, not an estimate.
 */
public final class ComplementaryFilter implements OrientationFilter {

  /** Our choice: acceleration of usual movement, as a part of g, left after the time constant. */
  private static final double MOVEMENT_TILT_RAD = Math.toRadians(1.5);

  private static final double IN_G = 1 / StandardGravity.MPS2;

  private final ComplementarySettings settings;
  private final SampleGuard guard;
  private final MutableQuaternion qEarthUnit = new MutableQuaternion();
  private final double[] bias = new double[3];
  private boolean started;
  private double elapsedS;
  private double unseenVariance;

  public ComplementaryFilter(ComplementarySettings settings, SampleLimits limits) {
    this.settings = settings;
    guard = new SampleGuard(limits);
  }

  /** With the standard settings, for a unit that states no full scales. */
  public static ComplementaryFilter withDefaults() {
    return new ComplementaryFilter(ComplementarySettings.standard(), SampleLimits.unlimited());
  }

  @Override
  public void update(
      double gyroX,
      double gyroY,
      double gyroZ,
      double accelX,
      double accelY,
      double accelZ,
      double dtS) {
    double stepS = started ? dtS : 1e-9;
    if (!guard.take(gyroX, gyroY, gyroZ, accelX, accelY, accelZ, stepS)) {
      return;
    }
    double squared = accelX * accelX + accelY * accelY + accelZ * accelZ;
    boolean forceSeen = guard.accelSeen && squared > 0;
    if (!started) {
      start(forceSeen, accelX, accelY, accelZ);
      return;
    }
    elapsedS += stepS;
    unseenVariance += guard.angleVariance;
    qEarthUnit.turnRight(
        stepS * (guard.rateX - bias[0]),
        stepS * (guard.rateY - bias[1]),
        stepS * (guard.rateZ - bias[2]));
    if (forceSeen) {
      lean(accelX, accelY, accelZ, stepS);
    }
    qEarthUnit.normalize();
  }

  private void start(boolean forceSeen, double accelX, double accelY, double accelZ) {
    if (forceSeen) {
      qEarthUnit.setShortestToZ(accelX, accelY, accelZ);
      guard.forgetStep();
      started = true;
    }
  }

  /**
   * Turns towards the measured force, in unit axes: error = measured x shown, in parts of g. The
   * force is not brought to length 1 first: movement averages out in a sum of forces, not in a sum
   * of directions (on the open recordings of docs/accuracy-orientation.md that halves the error).
   */
  private void lean(double ax, double ay, double az, double stepS) {
    double upX = qEarthUnit.m20();
    double upY = qEarthUnit.m21();
    double upZ = qEarthUnit.m22();
    double errorX = (ay * upZ - az * upY) * IN_G;
    double errorY = (az * upX - ax * upZ) * IN_G;
    double errorZ = (ax * upY - ay * upX) * IN_G;
    // a mean over all that was seen, until the time constant is reached
    double part = stepS / (stepS + Math.min(settings.tiltTimeS(), elapsedS));
    qEarthUnit.turnRight(part * errorX, part * errorY, part * errorZ);
    unseenVariance *= (1 - part) * (1 - part);
    double learn = stepS / (settings.tiltTimeS() * settings.biasTimeS());
    bias[0] -= learn * errorX;
    bias[1] -= learn * errorY;
    bias[2] -= learn * errorZ;
  }

  @Override
  public void copyQEarthUnit(MutableQuaternion out) {
    out.set(qEarthUnit);
  }

  @Override
  public double inclinationSigmaRad() {
    return Math.sqrt(MOVEMENT_TILT_RAD * MOVEMENT_TILT_RAD + unseenVariance);
  }

  /** Grows by 0.5 deg/s, the bias of a raw unit about the vertical (rule of thumb). */
  @Override
  public double headingSigmaRad() {
    double drift = Math.toRadians(0.5) * elapsedS;
    return Math.sqrt(drift * drift + unseenVariance);
  }

  @Override
  public Vector3 gyroBiasRadPerS() {
    return new Vector3(bias[0], bias[1], bias[2]);
  }

  /** This filter does not look for rest. */
  @Override
  public boolean atRest() {
    return false;
  }
}
