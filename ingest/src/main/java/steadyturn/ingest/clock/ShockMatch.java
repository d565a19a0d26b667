package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.shock.Shock;

/**
 * Finds which shocks of two units are the same. Every pair of shocks near in time is a candidate;
 * the offset and skew that most candidates agree on win, with likely offsets and skews ahead of
 * unlikely ones. A shock is used once.
 */
final class ShockMatch {

  /**
   * An onset is found so well, both units together, s: in simulated lessons made for tuning two
   * thirds of 259 clear pairs of forearm and hand lay within 1.7 ms.
   */
  private static final double ONSET_SD_S = 0.001;

  /** A weak shock shows some time after it began, at each of the two units, s (our choice). */
  private static final double WEAK_IS_LATE_S = 0.0025;

  /** So many spreads of what is known beforehand are looked at. */
  private static final double SPREADS = 3;

  /** However unlikely a place is, clocks stated wrong are there (as a log likelihood). */
  private static final double MOST_UNLIKELY = 7;

  /** What one more agreeing pair outweighs, as a log likelihood. */
  private static final double PAIR_IS_WORTH = 4;

  private ShockMatch() {}

  /**
   * The pairs of the best agreement; empty when no shocks lie near each other, or when chance alone
   * would bring as many together.
   *
   * @param sampleSdS what coming in samples costs a pair, s
   * @param reachS partners lie so near each other, s
   * @param known spreads of offset and skew as they are known beforehand
   */
  static List<TimePair> of(
      List<Shock> unit, List<Shock> other, double sampleSdS, double reachS, ClockFit known) {
    double toleranceS = 0.001 + 3 * sampleSdS;
    List<TimePair> candidates = candidates(unit, other, sampleSdS, reachS);
    if (candidates.isEmpty()) {
      return List.of();
    }
    List<TimePair> pairs = best(candidates, toleranceS, known);
    double byChance = candidates.size() * 3 * toleranceS / (2 * reachS);
    return pairs.size() > byChance + 2 * Math.sqrt(byChance) ? pairs : List.of();
  }

  private static List<TimePair> best(List<TimePair> candidates, double toleranceS, ClockFit known) {
    double lengthS = candidates.get(candidates.size() - 1).timeS() - candidates.get(0).timeS();
    double centreS = candidates.get(0).timeS() + lengthS / 2;
    double stepPpm = Math.max(0.25, 1e6 * toleranceS / Math.max(10, lengthS));
    double bestScore = Double.NEGATIVE_INFINITY;
    double bestSkew = 0;
    double bestOffsetS = 0;
    int steps = (int) (SPREADS * known.skewSdPpm() / stepPpm);
    for (int k = -steps; k <= steps; k++) {
      double skew = k * stepPpm * 1e-6;
      double[] best = bestOffset(candidates, skew, centreS, toleranceS, known.sdS());
      double unlikely = k * stepPpm / known.skewSdPpm();
      double score = best[1] - 0.5 * unlikely * unlikely;
      if (score > bestScore) {
        bestScore = score;
        bestSkew = skew;
        bestOffsetS = best[0];
      }
    }
    return agreeing(candidates, bestSkew, bestOffsetS, centreS, toleranceS);
  }

  private static List<TimePair> candidates(
      List<Shock> unit, List<Shock> other, double sampleSdS, double reachS) {
    List<TimePair> found = new ArrayList<>();
    int first = 0;
    for (Shock shock : unit) {
      while (first < other.size() && other.get(first).timeS() < shock.timeS() - reachS) {
        first++;
      }
      for (int j = first; j < other.size(); j++) {
        double laterS = other.get(j).timeS() - shock.timeS();
        if (laterS > reachS) {
          break;
        }
        double weakS = WEAK_IS_LATE_S * Math.hypot(1 / shock.clarity(), 1 / other.get(j).clarity());
        found.add(
            new TimePair(
                shock.timeS(), laterS, Math.hypot(Math.hypot(sampleSdS, ONSET_SD_S), weakS)));
      }
    }
    return found;
  }

  /** Offset (at the centre) that most candidates share at this skew, and its score. */
  private static double[] bestOffset(
      List<TimePair> candidates, double skew, double centreS, double toleranceS, double knownSdS) {
    double[] offsets =
        candidates.stream().mapToDouble(p -> p.laterS() - skew * (p.timeS() - centreS)).toArray();
    Arrays.sort(offsets);
    double[] best = {0, Double.NEGATIVE_INFINITY};
    int from = 0;
    double sum = 0;
    for (int to = 0; to < offsets.length; to++) {
      sum += offsets[to];
      while (offsets[to] - offsets[from] > 2 * toleranceS) {
        sum -= offsets[from++];
      }
      int count = to - from + 1;
      double mean = sum / count;
      double away = mean / knownSdS;
      double score = PAIR_IS_WORTH * count - Math.min(MOST_UNLIKELY, 0.5 * away * away);
      if (score > best[1]) {
        best = new double[] {mean, score};
      }
    }
    return best;
  }

  private static List<TimePair> agreeing(
      List<TimePair> candidates, double skew, double offsetS, double centreS, double toleranceS) {
    List<TimePair> kept = new ArrayList<>();
    double lastAwayS = Double.POSITIVE_INFINITY;
    for (TimePair pair : candidates) {
      double awayS = Math.abs(pair.laterS() - skew * (pair.timeS() - centreS) - offsetS);
      if (awayS > 1.5 * toleranceS) {
        continue;
      }
      boolean isSameShock = !kept.isEmpty() && kept.get(kept.size() - 1).timeS() == pair.timeS();
      if (isSameShock && awayS >= lastAwayS) {
        continue;
      }
      if (isSameShock) {
        kept.remove(kept.size() - 1);
      }
      kept.add(pair);
      lastAwayS = awayS;
    }
    return kept;
  }
}
