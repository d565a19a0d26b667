package steadyturn.analysis.compare;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * The distribution of a difference of two means whose spreads are both only estimated: a T(f1) + b
 * T(f2) + c Z, with Student's T and a normal Z for the part whose spread is known.
 *
 * <p>This is the Behrens-Fisher distribution (Fisher 1935, The fiducial argument in statistical
 * inference, Annals of Eugenics 6:391-398; from memory), widened by c. Given the two chi-square
 * variables it is normal, so a tail is a mean of normal tails over their quantiles: Gauss-Legendre
 * in both, with the quantiles pressed towards zero, where the heavy tails come from.
 */
final class TwoSpreads {

  private static final int NODES = 16;
  private static final int PRESS = 4;
  private static final Map<Integer, double[][]> INVERSE_CHI2 = new ConcurrentHashMap<>();

  private static final double[][] ALONE = {{0}, {1}};

  private final double[] weight;
  private final double[] sd;
  private final double scale;

  /**
   * @param variance1 estimated variance of the first mean, with {@code freedom1}
   * @param variance2 of the second
   * @param known variance known without error
   */
  TwoSpreads(double variance1, int freedom1, double variance2, int freedom2, double known) {
    double[][] first = inverseChi2(freedom1);
    double[][] second = variance2 == 0 ? ALONE : inverseChi2(freedom2);
    int seconds = second[0].length;
    weight = new double[NODES * seconds];
    sd = new double[NODES * seconds];
    for (int i = 0; i < NODES; i++) {
      for (int j = 0; j < seconds; j++) {
        int k = i * seconds + j;
        weight[k] = first[1][i] * second[1][j];
        sd[k] = Math.sqrt(variance1 * first[0][i] + variance2 * second[0][j] + known);
      }
    }
    scale = Math.sqrt(variance1 + variance2 + known);
  }

  /** Probability of a value above x. */
  double upperTail(double x) {
    if (scale == 0) {
      return x < 0 ? 1 : x > 0 ? 0 : 0.5;
    }
    double sum = 0;
    for (int k = 0; k < sd.length; k++) {
      sum += weight[k] * normalTail(x / sd[k]);
    }
    return sum;
  }

  /** The value that is exceeded with this probability, under 0.5: Newton steps on the log tail. */
  double upperQuantile(double probability) {
    double x = scale * normalQuantile(probability);
    for (int step = 0; step < 30 && scale > 0; step++) {
      double tail = 0;
      double density = 0;
      for (int k = 0; k < sd.length; k++) {
        double z = x / sd[k];
        double bell = Math.exp(-z * z / 2);
        tail += weight[k] * normalTail(z, bell);
        density += weight[k] * bell / sd[k];
      }
      density /= Math.sqrt(2 * Math.PI);
      double move = Math.log(tail / probability) * tail / density;
      x += move;
      if (Math.abs(move) < 1e-6 * scale) {
        break;
      }
    }
    return x;
  }

  /** Where the search begins: Abramowitz and Stegun 26.2.22, error under 0.003 (from memory). */
  private static double normalQuantile(double probability) {
    double t = Math.sqrt(-2 * Math.log(probability));
    return t - (2.30753 + 0.27061 * t) / (1 + t * (0.99229 + 0.04481 * t));
  }

  /**
   * Tail of the standard normal: Abramowitz and Stegun 1964, Handbook of Mathematical Functions,
   * 7.1.26, error under 1e-7; coefficients from memory, checked against another implementation. A
   * library's error function is exact to the last digit and forty times slower.
   */
  static double normalTail(double z) {
    return normalTail(z, Math.exp(-z * z / 2));
  }

  /**
   * The same.
   *
   * @param bell exp(-z^2 / 2)
   */
  private static double normalTail(double z, double bell) {
    double x = Math.abs(z) / Math.sqrt(2);
    double t = 1 / (1 + 0.3275911 * x);
    double series =
        t
            * (0.254829592
                + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
    double tail = 0.5 * series * bell;
    return z < 0 ? 1 - tail : tail;
  }

  /** Nodes f / chi-square(f) and their weights; kept, not to be changed. */
  static double[][] inverseChi2(int freedom) {
    return INVERSE_CHI2.computeIfAbsent(freedom, TwoSpreads::nodes);
  }

  private static double[][] nodes(int freedom) {
    var chi2 = new ChiSquaredDistribution(freedom);
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES, 0, 1);
    double[][] out = new double[2][NODES];
    for (int i = 0; i < NODES; i++) {
      double u = rule.getPoint(i);
      out[0][i] = freedom / chi2.inverseCumulativeProbability(Math.pow(u, PRESS));
      out[1][i] = rule.getWeight(i) * PRESS * Math.pow(u, PRESS - 1);
    }
    return out;
  }
}
