package steadyturn.fusion.orientation;

import java.util.Random;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Random movement of a unit with exact truth: three angles (heading, pitch, roll) and three
 * components of a place are uniform B-splines of degree five with random knots, so rate and
 * acceleration follow in closed form; the unit may sit away from the point that the angles turn
 * about. Rests are stretches of equal knots. Shares no formula with the filters.
 */
final class LivelyMotion {

  static final double GRAVITY_MPS2 = 9.803;
  private static final int DEGREE = 5;

  /** A B-spline of one coordinate; times before its first knot count as that knot. */
  record Spline(double knotS, double[] knots) {

    /** Its derivative of this order (0 to 4) at an instant. */
    double at(double timeS, int order) {
      double u = Math.max(0, Math.min(timeS / knotS, knots.length - DEGREE - 1.000001));
      int first = (int) u;
      double[] c = new double[DEGREE + 1];
      System.arraycopy(knots, first, c, 0, DEGREE + 1);
      for (int d = 0; d < order; d++) {
        for (int i = 0; i < DEGREE - d; i++) {
          c[i] = (c[i + 1] - c[i]) / knotS;
        }
      }
      int degree = DEGREE - order;
      double x = u - first;
      for (int level = degree; level > 0; level--) {
        for (int i = 0; i < level; i++) {
          double w = (x + level - 1 - i) / level;
          c[i] = (1 - w) * c[i] + w * c[i + 1];
        }
      }
      return c[0];
    }

    Spline times(double factor) {
      double[] scaled = knots.clone();
      for (int i = 0; i < scaled.length; i++) {
        scaled[i] *= factor;
      }
      return new Spline(knotS, scaled);
    }
  }

  private final Spline[] angle;
  private final Spline[] place;
  private final Vector3 leverM;

  LivelyMotion(Spline[] angle, Spline[] place, Vector3 leverM) {
    this.angle = angle;
    this.place = place;
    this.leverM = leverM;
  }

  /** Three splines of equal knots, at rest where the mask says so (mask at {@code timeS}). */
  static Spline[] draw(Random random, double knotS, double lengthS, Rests rests) {
    Spline[] splines = new Spline[3];
    for (int axis = 0; axis < 3; axis++) {
      double[] knots = new double[(int) Math.ceil(lengthS / knotS) + DEGREE + 2];
      double size = 0.4 + random.nextDouble();
      for (int k = 0; k < knots.length; k++) {
        double middleS = (k - 0.5 * DEGREE + 0.5) * knotS;
        boolean still = rests.near(middleS, (0.5 * DEGREE + 0.5) * knotS);
        knots[k] = still ? (k == 0 ? 0 : knots[k - 1]) : size * random.nextGaussian();
      }
      splines[axis] = new Spline(knotS, knots);
    }
    return splines;
  }

  /** Rests of a movement: first, and now and then. */
  record Rests(double[] fromS, double[] toS) {
    boolean at(double timeS) {
      return near(timeS, 0);
    }

    boolean near(double timeS, double withinS) {
      for (int i = 0; i < fromS.length; i++) {
        if (timeS > fromS[i] - withinS && timeS < toS[i] + withinS) {
          return true;
        }
      }
      return false;
    }
  }

  Quaternion qEarthUnit(double t) {
    return Quaternion.aboutZ(angle[0].at(t, 0))
        .times(Quaternion.aboutY(angle[1].at(t, 0)))
        .times(Quaternion.aboutX(angle[2].at(t, 0)));
  }

  /** Rate about the unit's axes, rad/s: slopes of heading, pitch, roll along their axes. */
  Vector3 rateRadPerS(double t) {
    double pitch = angle[1].at(t, 0);
    double roll = angle[2].at(t, 0);
    double h = angle[0].at(t, 1);
    double p = angle[1].at(t, 1);
    double r = angle[2].at(t, 1);
    return new Vector3(
        r - h * Math.sin(pitch),
        p * Math.cos(roll) + h * Math.cos(pitch) * Math.sin(roll),
        -p * Math.sin(roll) + h * Math.cos(pitch) * Math.cos(roll));
  }

  /** Acceleration in unit axes without gravity, m/s^2. */
  Vector3 accelMps2(double t) {
    Vector3 earth = new Vector3(place[0].at(t, 2), place[1].at(t, 2), place[2].at(t, 2));
    Vector3 w = rateRadPerS(t);
    double h = 1e-4;
    Vector3 slope = rateRadPerS(t + h).minus(rateRadPerS(t - h)).times(0.5 / h);
    Vector3 lever = slope.cross(leverM).plus(w.cross(w.cross(leverM)));
    return qEarthUnit(t).conjugate().rotate(earth).plus(lever);
  }

  /** Specific force along the unit's axes, m/s^2. */
  Vector3 forceMps2(double t) {
    Vector3 up = new Vector3(0, 0, GRAVITY_MPS2);
    return accelMps2(t).plus(qEarthUnit(t).conjugate().rotate(up));
  }
}
