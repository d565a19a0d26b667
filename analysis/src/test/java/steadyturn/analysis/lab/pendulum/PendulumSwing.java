package steadyturn.analysis.lab.pendulum;

import java.util.List;
import java.util.function.ToDoubleFunction;
import steadyturn.analysis.lab.curve.Hermite;

/**
 * A solved downswing, from the top to arm and club in line. "Impact" here is that model event, not
 * a place of the ball.
 *
 * @param nodes about one a millisecond; between them angles follow the quintic that fits value,
 *     rate and acceleration at both ends
 * @param releaseS when the wrist was set free
 * @param energyResidualJ energy that does not add up: the quality of the solution
 * @param stopLossJ energy lost at the stop of the wrist
 */
public record PendulumSwing(
    PendulumBody body,
    PendulumDrive drive,
    List<PendulumNode> nodes,
    double releaseS,
    double energyResidualJ,
    double stopLossJ) {

  private static final double FINE_S = 1e-5;

  public PendulumSwing {
    nodes = List.copyOf(nodes);
  }

  /** When arm and club are in line, s from the start. */
  public double impactS() {
    return last().timeS();
  }

  private PendulumNode last() {
    return nodes.get(nodes.size() - 1);
  }

  /** Speed of the club head at impact, m/s. */
  public double headSpeedMps() {
    PendulumNode n = last();
    return body.headSpeedMps(n.armRateRadPerS(), n.cockRad(), n.cockRateRadPerS());
  }

  /**
   * Rate that arm and club would share if the wrist came to its end at impact: what its momentum
   * about the hub gives, rad/s.
   */
  public double rateIfLockedRadPerS() {
    PendulumNode n = last();
    double b = body.coupling() * Math.cos(n.cockRad());
    double clubRate = n.armRateRadPerS() - n.cockRateRadPerS();
    double momentum =
        (body.wholeArm() + b) * n.armRateRadPerS() + (body.clubInertiaKgM2() + b) * clubRate;
    return momentum / body.locked(n.cockRad());
  }

  /** Time before impact at which a quantity last rose through a bound, s; NaN if it never did. */
  private double lastRiseS(ToDoubleFunction<PendulumNode> quantity, double bound) {
    for (int i = nodes.size() - 1; i > 0; i--) {
      if (quantity.applyAsDouble(nodes.get(i - 1)) < bound
          && quantity.applyAsDouble(nodes.get(i)) >= bound) {
        return rise(quantity, bound, nodes.get(i - 1).timeS(), nodes.get(i).timeS());
      }
    }
    return Double.NaN;
  }

  private double rise(
      ToDoubleFunction<PendulumNode> quantity, double bound, double fromS, double toS) {
    double low = fromS;
    double high = toS;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (quantity.applyAsDouble(at(middle)) < bound) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** When the cock had last fallen by an angle from its start, s from the start. */
  public double fallenByS(double angleRad) {
    return lastRiseS(n -> -n.cockRad(), -(drive.cockRad() - angleRad));
  }

  /** Cock when the arm comes level on the way down, rad. */
  public double cockAtArmLevelRad() {
    return at(lastRiseS(PendulumNode::armRad, -Math.PI / 2)).cockRad();
  }

  /** Cock when the shaft comes level on the way down, rad. */
  public double cockAtShaftLevelRad() {
    return at(lastRiseS(n -> n.armRad() - n.cockRad(), -Math.PI / 2)).cockRad();
  }

  /** Largest rate of uncocking, rad/s. */
  public double peakUncockRadPerS() {
    return -at(highestS(n -> -n.cockRateRadPerS())).cockRateRadPerS();
  }

  /** When the arm is fastest, s from the start. */
  public double peakArmS() {
    return highestS(PendulumNode::armRateRadPerS);
  }

  private double highestS(ToDoubleFunction<PendulumNode> quantity) {
    int best = 0;
    for (int i = 1; i < nodes.size(); i++) {
      if (quantity.applyAsDouble(nodes.get(i)) > quantity.applyAsDouble(nodes.get(best))) {
        best = i;
      }
    }
    double fromS = nodes.get(Math.max(0, best - 1)).timeS();
    double toS = nodes.get(Math.min(nodes.size() - 1, best + 1)).timeS();
    double bestS = nodes.get(best).timeS();
    double highest = quantity.applyAsDouble(nodes.get(best));
    for (double t = fromS; t < toS; t += FINE_S) {
      double value = quantity.applyAsDouble(at(t));
      if (value > highest) {
        highest = value;
        bestS = t;
      }
    }
    return bestS;
  }

  /** The pendulum at any instant between start and impact. */
  public PendulumNode at(double timeS) {
    int low = 0;
    int high = nodes.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (nodes.get(middle).timeS() <= timeS) {
        low = middle;
      } else {
        high = middle;
      }
    }
    PendulumNode a = nodes.get(low);
    PendulumNode b = nodes.get(high);
    double h = b.timeS() - a.timeS();
    if (h <= 0 || timeS <= a.timeS()) {
      return a;
    }
    double u = Math.min(1, (timeS - a.timeS()) / h);
    double[] arm =
        Hermite.at(
            u,
            h,
            new double[] {a.armRad(), a.armRateRadPerS(), a.armAccelRadPerS2()},
            new double[] {b.armRad(), b.armRateRadPerS(), b.armAccelRadPerS2()});
    double[] cock =
        Hermite.at(
            u,
            h,
            new double[] {a.cockRad(), a.cockRateRadPerS(), a.cockAccelRadPerS2()},
            new double[] {b.cockRad(), b.cockRateRadPerS(), b.cockAccelRadPerS2()});
    return new PendulumNode(timeS, arm[0], arm[1], arm[2], cock[0], cock[1], cock[2]);
  }
}
