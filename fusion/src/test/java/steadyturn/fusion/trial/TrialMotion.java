package steadyturn.fusion.trial;

import java.util.Arrays;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A rigid motion about and along all three axes at once whose truth is exact: rotation vector r(t)
 * and place p(t) are polynomials of time, so rate and specific force follow in closed form and
 * share nothing with an integrator. Body rate by Bortz 1971 (from memory; held against differences
 * of the attitude in TrialMotionTest): w = r' - (1 - cos a)/a^2 r x r' + (a - sin a)/a^3 r x (r x
 * r'), a = |r|.
 *
 * @param qGroundStart attitude where r is zero
 * @param turnRad components of the rotation vector, unit axes, by time in s
 * @param placeM components of the place, ground axes, by time in s
 */
public record TrialMotion(
    Quaternion qGroundStart, PolynomialFunction[] turnRad, PolynomialFunction[] placeM) {

  /** Gravity of the trial: not the standard one, so that nobody can rely on a constant. */
  public static final double GRAVITY_MPS2 = 9.79;

  /** Out from rest and back to rest over so many s, all axes at once, differing in shape. */
  public static TrialMotion thereAndBack(double lengthS, double turnRad, double wayM) {
    return new TrialMotion(
        Quaternion.fromRotationVector(new Vector3(0.5, -0.3, 0.8)),
        new PolynomialFunction[] {
          bump(lengthS, turnRad, -2.2 * turnRad),
          bump(lengthS, -0.4 * turnRad, 1.9 * turnRad),
          bump(lengthS, 0.8 * turnRad, 0.5 * turnRad)
        },
        new PolynomialFunction[] {
          bump(lengthS, wayM, wayM), bump(lengthS, -wayM, 2 * wayM), bump(lengthS, 0, 0.7 * wayM)
        });
  }

  /** (first + more u) 64 u^4 (1 - u)^4 4, u = t / length: three derivatives vanish at both ends. */
  private static PolynomialFunction bump(double lengthS, double first, double more) {
    PolynomialFunction u = new PolynomialFunction(new double[] {0, 1 / lengthS});
    PolynomialFunction v = new PolynomialFunction(new double[] {1, -1 / lengthS});
    PolynomialFunction uv = u.multiply(v);
    PolynomialFunction shape = uv.multiply(uv).multiply(uv).multiply(uv);
    PolynomialFunction size =
        new PolynomialFunction(new double[] {256 * first, 256 * more / lengthS});
    return shape.multiply(size);
  }

  public Quaternion qGroundUnit(double timeS) {
    return qGroundStart.times(Quaternion.fromRotationVector(at(turnRad, timeS)));
  }

  public Vector3 placeM(double timeS) {
    return at(placeM, timeS);
  }

  public Vector3 velocityMps(double timeS) {
    return at(slopes(placeM), timeS);
  }

  /** Rate about the unit's axes, rad/s. */
  public Vector3 rateUnitRadPerS(double timeS) {
    Vector3 r = at(turnRad, timeS);
    Vector3 slope = at(slopes(turnRad), timeS);
    double a = r.norm();
    double k1 = a < 1e-4 ? 0.5 : (1 - Math.cos(a)) / (a * a);
    double k2 = a < 1e-4 ? 1.0 / 6 : (a - Math.sin(a)) / (a * a * a);
    return slope.minus(r.cross(slope).times(k1)).plus(r.cross(r.cross(slope)).times(k2));
  }

  /** Specific force along the unit's axes, m/s^2. */
  public Vector3 forceUnitMps2(double timeS) {
    Vector3 pull = at(slopes(slopes(placeM)), timeS);
    return qGroundUnit(timeS).conjugate().rotate(pull.plus(new Vector3(0, 0, GRAVITY_MPS2)));
  }

  /** What a perfect unit shows from 0 to lengthS, both ends included. */
  public UnitStream stream(UnitFacts facts, double lengthS) {
    int n = (int) Math.round(lengthS * facts.nominalRateHz()) + 1;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / facts.nominalRateHz();
      Vector3 force = forceUnitMps2(time[i]);
      Vector3 rate = rateUnitRadPerS(time[i]);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = force.get(axis);
        gyro[axis][i] = rate.get(axis);
      }
    }
    return new UnitStream(facts, time, accel, gyro);
  }

  private static Vector3 at(PolynomialFunction[] of, double timeS) {
    return new Vector3(of[0].value(timeS), of[1].value(timeS), of[2].value(timeS));
  }

  private static PolynomialFunction[] slopes(PolynomialFunction[] of) {
    return Arrays.stream(of)
        .map(PolynomialFunction::polynomialDerivative)
        .toArray(PolynomialFunction[]::new);
  }
}
