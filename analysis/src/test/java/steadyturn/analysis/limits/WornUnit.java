package steadyturn.analysis.limits;

import java.util.Arrays;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit in one made stroke: still from 0 to 1 s, back from 1 to 2 s, down from 2 to 2.3 s
 * (impact), on to 2.6 s, still to 4 s; it turns about the vertical alone at even rates, and in the
 * 0.1 s before impact a force pulls it along its own axes. At 200 Hz, without noise.
 */
final class WornUnit {

  static final double TAKEAWAY_S = 1;
  static final double TOP_S = 2;
  static final double IMPACT_S = 2.3;
  static final Stroke STROKE = new Stroke(TAKEAWAY_S, TOP_S, IMPACT_S);
  private static final double RATE_HZ = 200;

  private final BodyPoint point;
  private Vector3 up = Vector3.X;
  private double downDeg = 60;
  private Vector3 pull = Vector3.ZERO;
  private double fastDegPerS;

  private WornUnit(BodyPoint point) {
    this.point = point;
  }

  /** As a right-hander's pelvis unit: bent forward by 30 deg, turns 60 deg on the way down. */
  static WornUnit pelvis() {
    return new WornUnit(BodyPoint.PELVIS).up(0.866, 0, 0.5);
  }

  /** As a hanging arm's, the back of it looking a little up, pulled to the shoulder by 80 m/s^2. */
  static WornUnit arm(BodyPoint point) {
    return new WornUnit(point).up(-0.95, -0.2, 0.1).pull(-80, 0, 0).fast(800);
  }

  WornUnit up(double x, double y, double z) {
    up = new Vector3(x, y, z).unit();
    return this;
  }

  /** Turn on the way down about the vertical, seen from above against the clock. */
  WornUnit down(double deg) {
    downDeg = deg;
    return this;
  }

  WornUnit pull(double x, double y, double z) {
    pull = new Vector3(x, y, z);
    return this;
  }

  /** A rate about its z axis in the 0.1 s before impact on top, back and forth. */
  WornUnit fast(double degPerS) {
    fastDegPerS = degPerS;
    return this;
  }

  UnitStream stream() {
    int n = (int) (4 * RATE_HZ);
    double[] timeS = new double[n];
    Arrays.setAll(timeS, i -> i / RATE_HZ);
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    Vector3 now = up.times(9.80665);
    for (int i = 0; i < n; i++) {
      Vector3 rate = rate(timeS[i], now.unit(), i);
      Vector3 force = isBeforeImpact(timeS[i]) ? now.plus(pull) : now;
      double[] f = {force.x(), force.y(), force.z()};
      double[] w = {rate.x(), rate.y(), rate.z()};
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = f[axis];
        gyro[axis][i] = w[axis];
      }
      now = Quaternion.fromRotationVector(rate.times(-1 / RATE_HZ)).rotate(now);
    }
    return new UnitStream(UnitFacts.plain(point, RATE_HZ), timeS, accel, gyro);
  }

  private static boolean isBeforeImpact(double timeS) {
    return timeS > IMPACT_S - 0.1 && timeS < IMPACT_S;
  }

  private Vector3 rate(double timeS, Vector3 upNow, int i) {
    double degPerS =
        timeS < TAKEAWAY_S || timeS >= 2.6
            ? 0
            : timeS < TOP_S ? -downDeg : downDeg / (IMPACT_S - TOP_S);
    Vector3 about = upNow.times(Math.toRadians(degPerS));
    double fast = isBeforeImpact(timeS) ? (i % 2 == 0 ? 1 : -1) * Math.toRadians(fastDegPerS) : 0;
    return about.plus(Vector3.Z.times(fast));
  }
}
