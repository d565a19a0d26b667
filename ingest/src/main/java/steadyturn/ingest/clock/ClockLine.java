package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;

/**
 * The straight line (offset and skew) through pairs of times, weighing in what is known beforehand:
 * start times differ by some 12 ms (30 ms happens) and crystals by some 40 ppm; both are our
 * assumptions. Pairs far off the line lose their weight (Tukey's biweight). The spread is the
 * larger of what the pairs are worth and what the residuals show.
 */
final class ClockLine {

  static final double OFFSET_SD_S = 0.012;
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
   * @param floorSdS error that all pairs share, s: more pairs do not lessen it
   * @param known what is known beforehand, of clocks that are laid side by side as well as that
   *     goes: no correction, and its spreads
   */
  static ClockFit fit(List<TimePair> pairs, double floorSdS, ClockFit known) {
    double[] information = information(pairs, 1);
    ClockFit line = solve(pairs, information, floorSdS, known);
    for (int round = 0; round < ROUNDS; round++) {
      double scale = Math.max(1, scale(pairs, line));
      information = information(pairs, scale);
      for (int k = 0; k < information.length; k++) {
        double spreads = residualS(pairs.get(k), line) / (scale * pairs.get(k).sdS());
        double away = spreads / BIWEIGHT;
        information[k] *= Math.abs(away) < 1 ? (1 - away * away) * (1 - away * away) : 0;
      }
      line = solve(pairs, information, floorSdS, known);
    }
    return line;
  }

  private static double[] information(List<TimePair> pairs, double scale) {
    return pairs.stream().mapToDouble(p -> 1 / (scale * p.sdS() * scale * p.sdS())).toArray();
  }

  static double residualS(TimePair pair, ClockFit line) {
    return pair.laterS() - line.correctionS(pair.timeS());
  }

  /** Median absolute residual in the pairs' own spreads; two pairs are spent on the line. */
  private static double scale(List<TimePair> pairs, ClockFit line) {
    List<Double> sizes = new ArrayList<>();
    for (TimePair pair : pairs) {
      sizes.add(Math.abs(residualS(pair, line)) / pair.sdS());
    }
    sizes.sort(null);
    int n = sizes.size();
    return n < 4 ? 0 : 1.4826 * sizes.get(n / 2) * Math.sqrt((double) n / (n - 2));
  }

  /** Least squares with the prior on offset (at the pairs' centre) and skew. */
  private static ClockFit solve(
      List<TimePair> pairs, double[] information, double floorSdS, ClockFit known) {
    double sum = 0;
    double centreS = 0;
    int counted = 0;
    for (int k = 0; k < information.length; k++) {
      sum += information[k];
      centreS += information[k] * pairs.get(k).timeS();
      counted += information[k] > 0 ? 1 : 0;
    }
    if (sum == 0) {
      return known;
    }
    centreS /= sum;
    double skewSd = known.skewSdPpm() * 1e-6;
    double offsetSdAtCentreS = known.sdAtS(centreS);
    double offsetInfo = 1 / (offsetSdAtCentreS * offsetSdAtCentreS);
    double skewInfo = 1 / (skewSd * skewSd);
    double offsetSum = 0;
    double skewSum = 0;
    for (int k = 0; k < information.length; k++) {
      double away = pairs.get(k).timeS() - centreS;
      offsetInfo += information[k];
      skewInfo += information[k] * away * away;
      offsetSum += information[k] * pairs.get(k).laterS();
      skewSum += information[k] * away * pairs.get(k).laterS();
    }
    double skew = skewSum / skewInfo;
    return new ClockFit(
        offsetSum / offsetInfo - skew * centreS,
        skew * 1e6,
        centreS,
        Math.hypot(Math.sqrt(1 / offsetInfo), floorSdS),
        Math.sqrt(1 / skewInfo) * 1e6,
        counted);
  }
}
