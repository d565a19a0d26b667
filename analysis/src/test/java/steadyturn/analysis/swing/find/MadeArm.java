package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * An arm and hips that follow given courses, and what units on them would feel: a straight arm on a
 * hub, its angle in a plane that leans, the plane's own tilt, the forearm's roll, the wrist's cock,
 * the hips' turn. Angles in rad over time in s. The rates come from differences of the attitude,
 * the forces from second differences of the place, so that nothing is taken from the simulator of
 * the product. Truth is read off the bone itself: its azimuth about the normal of the plane.
 *
 * @param leanRad how far the plane's normal rises over the horizontal
 */
record MadeArm(
    Handedness handed,
    double leanRad,
    DoubleUnaryOperator inPlane,
    DoubleUnaryOperator tilt,
    DoubleUnaryOperator roll,
    DoubleUnaryOperator cock,
    DoubleUnaryOperator turn,
    DoubleUnaryOperator hubX,
    DoubleUnaryOperator blowG) {

  private static final double G = 9.80665;
  private static final double H = 0.0005;
  // a unit is strapped on to within some degrees about each axis
  private static final double ASKEW_RAD = Math.toRadians(4);
  private static final double FOREARM_M = 0.55;
  private static final double HAND_M = 0.68;

  private double side() {
    return handed.sign();
  }

  private Quaternion qForearm(double t) {
    double lean = leanRad + tilt.applyAsDouble(t);
    Vector3 normal = new Vector3(0, -Math.cos(lean), Math.sin(lean));
    Vector3 down = new Vector3(0, -Math.sin(lean), -Math.cos(lean));
    double angle = side() * inPlane.applyAsDouble(t);
    Vector3 bone = down.times(Math.cos(angle)).plus(normal.cross(down).times(Math.sin(angle)));
    return Quaternion.fromAxes(bone, normal.cross(bone), normal)
        .times(Quaternion.aboutX(-side() * (Math.PI / 2 + roll.applyAsDouble(t))));
  }

  private Quaternion attitude(BodyPoint point, double t) {
    return switch (point) {
      case LEAD_FOREARM -> qForearm(t);
      case LEAD_HAND -> qForearm(t).times(Quaternion.aboutZ(-side() * cock.applyAsDouble(t)));
      default ->
          Quaternion.aboutZ(side() * turn.applyAsDouble(t))
              .times(Quaternion.fromAxes(Vector3.Z, Vector3.Y.times(-1), Vector3.X));
    };
  }

  private Vector3 place(BodyPoint point, double t) {
    Vector3 hub = new Vector3(hubX.applyAsDouble(t), 0, 1.4);
    Vector3 bone = qForearm(t).rotate(Vector3.X);
    return switch (point) {
      case LEAD_FOREARM -> hub.plus(bone.times(FOREARM_M));
      case LEAD_HAND -> hub.plus(bone.times(HAND_M));
      default -> hub;
    };
  }

  /** Rate of the bone about the normal of the untilted plane, back negative, rad/s. */
  double azimuthRateRadPerS(double t) {
    return side() * (azimuth(t + H) - azimuth(t - H)) / (2 * H);
  }

  private double azimuth(double t) {
    Vector3 bone = qForearm(t).rotate(Vector3.X);
    double down = bone.dot(new Vector3(0, -Math.sin(leanRad), -Math.cos(leanRad)));
    return Math.atan2(bone.x(), down);
  }

  private UnitStream unit(BodyPoint point, double rateHz, double lengthS, Random random) {
    int n = (int) (lengthS * rateHz);
    double[] time = new double[n];
    double[][] gyro = new double[3][n];
    double[][] accel = new double[3][n];
    double share = point == BodyPoint.LEAD_HAND ? 1 : point == BodyPoint.LEAD_FOREARM ? 0.4 : 0.008;
    double[] bias = {0.02 * random.nextGaussian(), 0.02 * random.nextGaussian(), 0.015};
    Vector3 askew =
        new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    Quaternion mount = Quaternion.fromRotationVector(askew.times(ASKEW_RAD));
    double offset = random.nextDouble() / rateHz;
    for (int i = 0; i < n; i++) {
      double t = i / rateHz + offset;
      time[i] = t;
      Quaternion q = attitude(point, t).times(mount);
      Vector3 rate =
          mount
              .conjugate()
              .rotate(
                  attitude(point, t - H)
                      .conjugate()
                      .times(attitude(point, t + H))
                      .rotationVector());
      Vector3 twice =
          place(point, t + 2 * H).plus(place(point, t - 2 * H)).minus(place(point, t).times(2));
      Vector3 force = twice.times(1 / (4 * H * H)).plus(Vector3.Z.times(G));
      double blow = share * G * blowG.applyAsDouble(t);
      Vector3 felt =
          q.conjugate().rotate(force).plus(new Vector3(0.6 * blow, 0.75 * blow, -0.28 * blow));
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] =
            rate.get(axis) / (2 * H)
                + bias[axis]
                + 0.00012 * Math.sqrt(rateHz / 2) * random.nextGaussian();
        accel[axis][i] = felt.get(axis) + 0.0015 * Math.sqrt(rateHz / 2) * random.nextGaussian();
      }
    }
    return new UnitStream(UnitFacts.plain(point, rateHz), time, accel, gyro);
  }

  /** What the units show from 0 s on. */
  Recording recording(double lengthS, double rateHz, long seed, BodyPoint... points) {
    Random random = new Random(seed);
    List<UnitStream> units = new ArrayList<>();
    for (BodyPoint point : points) {
      units.add(unit(point, rateHz, lengthS, random));
    }
    return new Recording("made", Player.unmeasured("p", handed), units, List.<Mark>of());
  }
}
