package steadyturn.analysis.marker;

import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.measure.Measure;

/**
 * How ours and theirs agree in one measure at one key position (Bland and Altman 1986, Lancet
 * 327:307-310): ours minus theirs.
 *
 * @param swings how many were compared
 * @param bias mean difference, in the measure's unit
 * @param biasHalf half-width of its 95 % interval, from the spread between swings alone
 * @param low limit of agreement: 95 % of differences lie above it and 2.5 % below
 * @param high the other limit
 * @param coveredPct how many of our 95 % intervals hold their value
 */
public record AgreementRow(
    Measure measure,
    String at,
    int swings,
    double bias,
    double biasHalf,
    double low,
    double high,
    double coveredPct) {

  /** The row of some differences. */
  static AgreementRow of(Measure measure, String at, double[] differences, int covered) {
    int n = differences.length;
    double bias = StatUtils.mean(differences);
    double sd = n < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(differences, bias));
    double t = n < 2 ? Double.NaN : new TDistribution(n - 1).inverseCumulativeProbability(0.975);
    return new AgreementRow(
        measure,
        at,
        n,
        bias,
        t * sd / Math.sqrt(n),
        bias - 1.96 * sd,
        bias + 1.96 * sd,
        100.0 * covered / n);
  }
}
