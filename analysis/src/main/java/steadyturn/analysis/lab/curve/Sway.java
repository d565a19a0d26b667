package steadyturn.analysis.lab.curve;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * Sway of a standing person: an inverted pendulum on springy ankles that are too weak to hold it,
 * caught by a delayed push that comes and goes (Asai et al. 2009, PLoS ONE 4:e6169; parameters from
 * memory: 60 kg, 1 m, stiffness 0.8 of the toppling moment, 4 N m s; push 0.25 of it and 10 N m s
 * after 0.2 s, off while it falls back; noise 0.2 N m). Its spectrum falls as that of standing
 * people does, most of the power below half a hertz. What is used of it is the course; its size is
 * set by the RMS rate wanted.
 */
public final class Sway {

  private static final double KNOT_S = 0.04;
  private static final double STEP_S = 0.005;
  private static final int DELAY = 40;
  private static final double WARM_UP_S = 20;
  private static final double INERTIA = 60;
  private static final double TOPPLING = 60 * 1 * 9.81;
  private static final double STIFFNESS = 0.8 * TOPPLING;
  private static final double DAMPING = 4;
  private static final double PUSH = 0.25 * TOPPLING;
  private static final double PUSH_DAMPING = 10;
  private static final double NOISE = 0.2;
  private static final double SWITCH_PER_S = -0.4;

  private Sway() {}

  /**
   * Draws one course of sway.
   *
   * @param fromS start; before it the value keeps still
   * @param toS end
   * @param rmsRate RMS of the rate wanted at each instant; changes should take a second or more
   * @param haste by how much faster than the standing person it goes
   */
  public static TimeFunction draw(
      RandomGenerator random, double fromS, double toS, DoubleUnaryOperator rmsRate, double haste) {
    double[] stand = standing(random, (int) Math.ceil((toS - fromS) / KNOT_S) + 4, KNOT_S * haste);
    double squares = 0;
    for (int i = 1; i < stand.length; i++) {
      squares += Math.pow((stand[i] - stand[i - 1]) / KNOT_S, 2);
    }
    double rms = Math.sqrt(squares / (stand.length - 1));
    for (int i = 0; i < stand.length; i++) {
      stand[i] *= rmsRate.applyAsDouble(fromS + i * KNOT_S) / rms;
    }
    return Nodes.spline(fromS, KNOT_S, stand);
  }

  /** The angle of a standing person, every so often, by steps of Euler and Maruyama. */
  public static double[] standing(RandomGenerator random, int n, double everyS) {
    double[] out = new double[n];
    double[] angles = new double[DELAY];
    double[] rates = new double[DELAY];
    double angle = 0;
    double rate = 0;
    double shove = NOISE * Math.sqrt(STEP_S);
    int taken = 0;
    for (int k = 0; taken < n; k++) {
      double before = angles[k % DELAY];
      double rateBefore = rates[k % DELAY];
      angles[k % DELAY] = angle;
      rates[k % DELAY] = rate;
      boolean on = before * (rateBefore - SWITCH_PER_S * before) > 0;
      double push = on ? PUSH * before + PUSH_DAMPING * rateBefore : 0;
      double moment = (TOPPLING - STIFFNESS) * angle - DAMPING * rate - push;
      rate += (moment * STEP_S + shove * random.nextGaussian()) / INERTIA;
      angle += rate * STEP_S;
      if (k * STEP_S >= WARM_UP_S + taken * everyS) {
        out[taken++] = angle;
      }
    }
    return out;
  }
}
