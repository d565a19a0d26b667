package steadyturn.analysis.lab.body;

import steadyturn.analysis.lab.curve.Nodes;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.ingest.sample.BodyPoint;

/**
 * How a unit on a {@link SkinSpring} lags and rings against its segment over a whole lesson: the
 * equation of the spring, driven by what the segment feels, in steps of 2 ms by Runge and Kutta.
 */
public final class SkinResponse {

  private static final double STEP_S = 0.002;
  private static final int AXES = 6;

  private final SkinSpring spring;
  private final double omega;
  private final double stiffness;
  private double[] drive = new double[AXES];
  private double[] rest = new double[AXES];
  private double[] driveNext = new double[AXES];
  private double[] restNext = new double[AXES];

  private SkinResponse(SkinSpring spring) {
    this.spring = spring;
    this.omega = 2 * Math.PI * spring.hz();
    this.stiffness = Math.pow(omega, 2);
  }

  /**
   * Shifts along and turns about the segment's axes, as {@link MountedUnit} takes them.
   *
   * @param rigid the unit as it would sit on bone, its axes those of the segment
   */
  public static TimeFunction[] of(SkinSpring spring, MountedUnit rigid, double untilS) {
    double[][] nodes = new SkinResponse(spring).course(rigid, untilS);
    TimeFunction[] out = new TimeFunction[AXES];
    for (int i = 0; i < AXES; i++) {
      out[i] = Nodes.through(0, STEP_S, nodes[i]);
    }
    return out;
  }

  private double[][] course(MountedUnit rigid, double untilS) {
    int n = (int) Math.ceil(untilS / STEP_S) + 2;
    double[][] nodes = new double[AXES][3 * n];
    MovingFrame frame = new MovingFrame();
    MountedUnit.Placer placer = rigid.placer();
    double[] force = new double[3];
    double[] rate = new double[3];
    double[] rateBefore = new double[3];
    double[] standing = new double[3];
    Joint[] postures = postures(rigid.point());
    double[] place = new double[AXES];
    double[] speed = new double[AXES];
    for (int k = 0; k <= n; k++) {
      placer.place(k * STEP_S, frame);
      frame.specificForceMps2(UnitErrors.G_MPS2, force);
      frame.rateRadPerS(rate);
      if (k == 0) {
        System.arraycopy(force, 0, standing, 0, 3);
        System.arraycopy(rate, 0, rateBefore, 0, 3);
      }
      drive(force, standing, rate, rateBefore);
      pull(rigid, postures, k * STEP_S);
      for (int i = 0; i < AXES; i++) {
        if (k == 0) {
          place[i] = restNext[i];
        } else {
          int at = 3 * (k - 1);
          nodes[i][at] = place[i];
          nodes[i][at + 1] = speed[i];
          nodes[i][at + 2] = accel(i, place[i], speed[i], 0);
          step(i, place, speed);
        }
      }
      turnOver();
      System.arraycopy(rate, 0, rateBefore, 0, 3);
    }
    return nodes;
  }

  /** What comes next becomes what is now. */
  private void turnOver() {
    double[] driveBefore = drive;
    double[] restBefore = rest;
    drive = driveNext;
    rest = restNext;
    driveNext = driveBefore;
    restNext = restBefore;
  }

  /** Inertia holds the unit back against force and turning; a force across also tips it. */
  private void drive(double[] force, double[] standing, double[] rate, double[] rateBefore) {
    double fx = force[0] - standing[0];
    double fy = force[1] - standing[1];
    double fz = force[2] - standing[2];
    double[] tip = {-fy, fx, 0.5 * fz};
    for (int i = 0; i < 3; i++) {
      driveNext[i] = -(force[i] - standing[i]);
      driveNext[3 + i] =
          -(rate[i] - rateBefore[i]) / STEP_S + stiffness * spring.tiltPerForce() * tip[i];
    }
  }

  private void pull(MountedUnit rigid, Joint[] postures, double timeS) {
    for (int i = 0; i < AXES; i++) {
      restNext[i] = 0;
    }
    for (int p = 0; p < postures.length; p++) {
      double angle = rigid.body().joint(postures[p]).at(timeS);
      for (int i = 0; i < AXES; i++) {
        restNext[i] += spring.pull()[p][i] * angle;
      }
    }
  }

  private static Joint[] postures(BodyPoint point) {
    return switch (point) {
      case PELVIS -> new Joint[] {Joint.TURN, Joint.TILT};
      case THORAX -> new Joint[] {Joint.TRUNK_TURN, Joint.TRUNK_BEND};
      case LEAD_FOREARM -> new Joint[] {Joint.ROLL, Joint.COCK};
      case LEAD_HAND -> new Joint[] {Joint.FLEXION, Joint.COCK};
      case CLUB_SHAFT -> new Joint[0];
    };
  }

  /**
   * Acceleration at a part of the way from this node to the next: what drives the unit and where it
   * is pulled to go on evenly in between, or speed would not be what acceleration adds up to.
   */
  private double accel(int axis, double place, double speed, double part) {
    double away = place - rest[axis] - part * (restNext[axis] - rest[axis]);
    double push = drive[axis] + part * (driveNext[axis] - drive[axis]);
    double limit = axis < 3 ? spring.limitM() : spring.limitRad();
    double stiffer = 1 + away * away / (limit * limit);
    return push - 2 * spring.damping() * omega * speed - omega * omega * stiffer * away;
  }

  private void step(int i, double[] place, double[] speed) {
    double h = STEP_S;
    double x = place[i];
    double v = speed[i];
    double a1 = accel(i, x, v, 0);
    double v2 = v + h / 2 * a1;
    double a2 = accel(i, x + h / 2 * v, v2, 0.5);
    double v3 = v + h / 2 * a2;
    double a3 = accel(i, x + h / 2 * v2, v3, 0.5);
    double v4 = v + h * a3;
    double a4 = accel(i, x + h * v3, v4, 1);
    place[i] = x + h / 6 * (v + 2 * v2 + 2 * v3 + v4);
    speed[i] = v + h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
  }
}
