package steadyturn.analysis.lab.pendulum;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/**
 * Solves the double pendulum from the top to b = 0, where arm and club are in line. With a the
 * arm's angle, b the cock, club angle a - b: Lagrange's equations A a'' + B cos b (a'' - b'') + B
 * sin b (a' - b')^2 = shoulder - wrist + weight, C (a'' - b'') + B cos b a'' - B sin b a'^2 = wrist
 * + weight. Stages: locked until the release angle; free; held by the stop where the wrist has
 * reached it, until the club pulls away from it. Integrator: Dormand and Prince 8(5,3) of Commons
 * Math.
 */
public final class DoublePendulum {

  private static final double LONGEST_S = 5;
  private static final double NODE_S = 0.001;
  private static final double TOLERANCE = 1e-12;

  // state: arm angle, arm rate, cock, cock rate, work done by the torques
  private static final int SIZE = 5;

  private final PendulumBody body;
  private final PendulumDrive drive;
  private final List<PendulumNode> nodes = new ArrayList<>();
  private double[] y = new double[SIZE];
  private double timeS;
  private double stopLossJ;

  private enum Stage {
    LOCKED,
    FREE,
    STOPPED
  }

  private DoublePendulum(PendulumBody body, PendulumDrive drive) {
    this.body = body;
    this.drive = drive;
  }

  /** Solves one swing. */
  public static PendulumSwing swing(PendulumBody body, PendulumDrive drive) {
    return new DoublePendulum(body, drive).solve();
  }

  private PendulumSwing solve() {
    y = new double[] {drive.startArmRad(), drive.startRateRadPerS(), drive.cockRad(), 0, 0};
    double startJ = body.energyJ(y[0], y[1], y[2], y[3]);
    if (drive.releaseArmRad() > drive.startArmRad()) {
      run(Stage.LOCKED, (t, s) -> s[0] - drive.releaseArmRad());
    }
    double releaseS = timeS;
    while (y[2] > 1e-12) {
      free();
    }
    double residualJ = body.energyJ(y[0], y[1], y[2], y[3]) + stopLossJ - startJ - y[4];
    return new PendulumSwing(body, drive, nodes, releaseS, residualJ, stopLossJ);
  }

  /** Free until in line or at the stop; then held by the stop as long as the club leans on it. */
  private void free() {
    run(
        Stage.FREE,
        (t, s) -> s[2],
        (t, s) -> s[3] > 0 || s[2] > drive.stopRad() ? s[2] - drive.stopRad() : -1);
    if (y[2] >= drive.stopRad() - 1e-9 && y[3] > 0) {
      hitStop();
      if (holdNm(y) > 0) {
        run(Stage.STOPPED, (t, s) -> holdNm(s));
      }
    }
  }

  /** Both go on at one rate; momentum about the hub is kept, energy is not. */
  private void hitStop() {
    double beforeJ = body.energyJ(y[0], y[1], y[2], y[3]);
    double cos = body.coupling() * Math.cos(y[2]);
    double momentum =
        (body.wholeArm() + cos) * y[1] + (body.clubInertiaKgM2() + cos) * (y[1] - y[3]);
    y[1] = momentum / body.locked(y[2]);
    y[2] = drive.stopRad();
    y[3] = 0;
    stopLossJ += beforeJ - body.energyJ(y[0], y[1], y[2], y[3]);
  }

  /** Torque of the stop on the club, N m; it can only push the club forward. */
  private double holdNm(double[] s) {
    double accel = lockedAccel(s, drive.freeShoulderNm());
    return (body.clubInertiaKgM2() + body.coupling() * Math.cos(s[2])) * accel
        - body.coupling() * Math.sin(s[2]) * s[1] * s[1]
        - body.clubWeight(s[0] - s[2])
        - drive.freeWristNm();
  }

  private double lockedAccel(double[] s, double shoulderNm) {
    double torque = shoulderNm + body.armWeight(s[0]) + body.clubWeight(s[0] - s[2]);
    return torque / body.locked(s[2]);
  }

  private void derivatives(Stage stage, double[] s, double[] out) {
    out[0] = s[1];
    out[2] = s[3];
    if (stage != Stage.FREE) {
      double shoulder = stage == Stage.LOCKED ? drive.lockedShoulderNm() : drive.freeShoulderNm();
      out[1] = lockedAccel(s, shoulder);
      out[3] = 0;
      out[4] = shoulder * s[1];
      return;
    }
    double shoulder = drive.freeShoulderNm();
    double wrist = drive.freeWristNm();
    double clubRate = s[1] - s[3];
    double b = body.coupling() * Math.cos(s[2]);
    double sin = body.coupling() * Math.sin(s[2]);
    double arm = shoulder - wrist + body.armWeight(s[0]) - sin * clubRate * clubRate;
    double club = wrist + body.clubWeight(s[0] - s[2]) + sin * s[1] * s[1];
    double det = body.wholeArm() * body.clubInertiaKgM2() - b * b;
    double armAccel = (body.clubInertiaKgM2() * arm - b * club) / det;
    double clubAccel = (body.wholeArm() * club - b * arm) / det;
    out[1] = armAccel;
    out[3] = armAccel - clubAccel;
    out[4] = shoulder * s[1] - wrist * s[3];
  }

  /** A quantity whose passage through zero ends a stage. */
  private interface End {
    double g(double timeS, double[] state);
  }

  private void run(Stage stage, End... ends) {
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(1e-10, 0.01, TOLERANCE, TOLERANCE);
    for (End end : ends) {
      integrator.addEventHandler(new Stop(end), 1e-3, 1e-13, 200);
    }
    integrator.addStepHandler(new Recorder(stage));
    double[] out = new double[SIZE];
    double until =
        integrator.integrate(new Equations(stage), timeS, y.clone(), timeS + LONGEST_S, out);
    if (until >= timeS + LONGEST_S) {
      throw new IllegalArgumentException(
          "after " + LONGEST_S + " s the pendulum has not come through: " + drive);
    }
    timeS = until;
    y = out;
  }

  private final class Equations implements FirstOrderDifferentialEquations {
    private final Stage stage;

    Equations(Stage stage) {
      this.stage = stage;
    }

    @Override
    public int getDimension() {
      return SIZE;
    }

    @Override
    public void computeDerivatives(double t, double[] s, double[] out) {
      derivatives(stage, s, out);
    }
  }

  private static final class Stop implements EventHandler {
    private final End end;

    Stop(End end) {
      this.end = end;
    }

    @Override
    public void init(double t0, double[] y0, double t) {}

    @Override
    public double g(double t, double[] s) {
      return end.g(t, s);
    }

    @Override
    public Action eventOccurred(double t, double[] s, boolean increasing) {
      return Action.STOP;
    }

    @Override
    public void resetState(double t, double[] s) {}
  }

  /** Keeps a node every millisecond, and the first and last of each stage. */
  private final class Recorder implements StepHandler {
    private final Stage stage;
    private double nextS;

    Recorder(Stage stage) {
      this.stage = stage;
    }

    @Override
    public void init(double t0, double[] y0, double t) {
      keep(t0, y0);
      nextS = t0 + NODE_S;
    }

    @Override
    public void handleStep(StepInterpolator step, boolean isLast) {
      while (nextS < step.getCurrentTime() - 1e-6) {
        step.setInterpolatedTime(nextS);
        keep(nextS, step.getInterpolatedState());
        nextS += NODE_S;
      }
      if (isLast) {
        step.setInterpolatedTime(step.getCurrentTime());
        keep(step.getCurrentTime(), step.getInterpolatedState());
      }
    }

    private void keep(double t, double[] s) {
      double[] d = new double[SIZE];
      derivatives(stage, s, d);
      nodes.add(new PendulumNode(t, s[0], s[1], d[1], s[2], s[3], d[3]));
    }
  }
}
