package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The straight line (offset and skew) through pairs of times, weighing in what is known beforehand:
 * start times are right to some 30 ms and crystals to some 40 ppm (our assumptions). Pairs far off
 * the line lose their weight (Tukey's biweight). The spread is the larger of what a pair is worth
 * and what the residuals show.
 */
final class ClockLine {

  static final double OFFSET_SD_S = 0.03;
  static final double SKEW_SD_PPM = 40;

  private static final int ROUNDS = 12;

  /** Biweight's tuning constant for 95 % efficiency (Beaton and Tukey 1974; value from memory). */
  private static final double BIWEIGHT = 4.685;

  private ClockLine() {}

  /** Only what is known beforehand. */
  static ClockFit prior(double centreS) {
    return new ClockFit(0, 0, centreS, OFFSET_SD_S, SKEW_SD_PPM, 0);
  }

  /**
   * Fits the line.
   *
   * @param pairSdS what one pair is worth at best, s
   * @param floorSdS error that all pairs share, s: more pairs do not lessen it
   */
  static ClockFit fit(List<TimePair> pairs, double pairSdS, double floorSdS) {
    double[] weights = new double[pairs.size()];
    Arrays.fill(weights, 1);
    double scaleS = pairSdS;
    ClockFit line = solve(pairs, weights, scaleS, floorSdS);
    for (int round = 0; round < ROUNDS; round++) {
      scaleS = Math.max(pairSdS, spreadS(pairs, line));
      for (int k = 0; k < weights.length; k++) {
        double away = residualS(pairs.get(k), line) / (BIWEIGHT * scaleS);
        weights[k] = Math.abs(away) < 1 ? (1 - away * away) * (1 - away * away) : 0;
      }
      line = solve(pairs, weights, scaleS, floorSdS);
    }
    return line;
  }

  static double residualS(TimePair pair, ClockFit line) {
    return pair.laterS() - line.correctionS(pair.timeS());
  }

  /** Median absolute residual as a standard deviation; two pairs are spent on the line. */
  private static double spreadS(List<TimePair> pairs, ClockFit line) {
    List<Double> sizes = new ArrayList<>();
    for (TimePair pair : pairs) {
      sizes.add(Math.abs(residualS(pair, line)));
    }
    sizes.sort(null);
    int n = sizes.size();
    return n < 4 ? 0 : 1.4826 * sizes.get(n / 2) * Math.sqrt((double) n / (n - 2));
  }

  /** Least squares with the prior on offset (at the pairs' centre) and skew. */
  private static ClockFit solve(
      List<TimePair> pairs, double[] weights, double scaleS, double floorSdS) {
    double sumW = 0;
    double centreS = 0;
    for (int k = 0; k < weights.length; k++) {
      sumW += weights[k];
      centreS += weights[k] * pairs.get(k).timeS();
    }
    if (sumW == 0) {
      return prior(pairs.get(0).timeS());
    }
    centreS /= sumW;
    double perPair = 1 / (scaleS * scaleS);
    double offsetSdAtCentreS = Math.hypot(OFFSET_SD_S, SKEW_SD_PPM * 1e-6 * centreS);
    double offsetInfo = 1 / (offsetSdAtCentreS * offsetSdAtCentreS);
    double skewInfo = 1 / (SKEW_SD_PPM * 1e-6 * SKEW_SD_PPM * 1e-6);
    double offsetSum = 0;
    double skewSum = 0;
    for (int k = 0; k < weights.length; k++) {
      double away = pairs.get(k).timeS() - centreS;
      double w = weights[k] * perPair;
      offsetInfo += w;
      skewInfo += w * away * away;
      offsetSum += w * pairs.get(k).laterS();
      skewSum += w * away * pairs.get(k).laterS();
    }
    double skew = skewSum / skewInfo;
    return new ClockFit(
        offsetSum / offsetInfo - skew * centreS,
        skew * 1e6,
        centreS,
        Math.hypot(Math.sqrt(1 / offsetInfo), floorSdS),
        Math.sqrt(1 / skewInfo) * 1e6,
        (int) Math.round(sumW));
  }
}
