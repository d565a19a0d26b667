package steadyturn.fusion.rest;

import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the rest that ends before an instant or begins after one, by sliding windows over one
 * unit's samples.
 */
public record RestGate(RestSettings settings) {

  // our choices: ends are judged by twentieths of a second, against twice what half of the rest
  // turns at most and what a person at rest turns anyway
  private static final double TRIM_S = 0.05;
  private static final double UNSETTLED = 2;

  // our choices: so many twentieths of a second are the quietest part of a rest; what turns more
  // than so many times as much is not of it
  private static final int CORE = 7;
  private static final double CORE_MOST = 3;
  private static final double STILL_RAD_PER_S = Math.toRadians(0.5);

  /**
   * The last rest that ends between earliestS and untilS, walking backwards from untilS.
   *
   * @param biasRadPerS gyro bias in unit axes, rad/s, as known so far
   */
  public Optional<Rest> before(
      UnitStream unit, Vector3 biasRadPerS, double earliestS, double untilS) {
    return walk(unit, biasRadPerS, untilS, earliestS, -1);
  }

  /** The first rest that begins between fromS and latestS, walking forwards from fromS. */
  public Optional<Rest> after(UnitStream unit, Vector3 biasRadPerS, double fromS, double latestS) {
    return walk(unit, biasRadPerS, fromS, latestS, 1);
  }

  /** Walks from one instant to another; sense is 1 with the time and -1 against it. */
  private Optional<Rest> walk(
      UnitStream unit, Vector3 bias, double beginS, double limitS, int sense) {
    double windowS = sense * settings.windowS();
    double edgeS = beginS;
    while (sense * (limitS - edgeS) >= settings.minimumS() - 1e-9) {
      double reachedS = edgeS;
      while (Math.abs(reachedS - edgeS + windowS) <= settings.longestS() + 1e-9
          && sense * (limitS - reachedS) >= settings.windowS() - 1e-9
          && still(unit, bias, reachedS, reachedS + windowS)) {
        reachedS += windowS / 3;
      }
      double endS = reachedS + windowS * 2 / 3;
      if (Math.abs(endS - edgeS) >= settings.minimumS() && reachedS != edgeS) {
        return Optional.of(new Rest(Math.min(edgeS, endS), Math.max(edgeS, endS)));
      }
      edgeS += windowS / 3;
    }
    return Optional.empty();
  }

  private boolean still(UnitStream unit, Vector3 bias, double oneS, double otherS) {
    Spread spread = Spread.of(unit, bias, Math.min(oneS, otherS), Math.max(oneS, otherS));
    return spread.isSeen(unit)
        && spread.rateRmsRadPerS() < settings.rateRmsRadPerS()
        && spread.accelSdMps2() < settings.accelSdMps2();
  }

  /**
   * A rest without what of its ends turns far more than its quiet half does: slowly coming to rest
   * and setting off are no rest. At most a third of it goes at either end.
   */
  public static Rest settled(UnitStream unit, Vector3 biasRadPerS, Rest rest) {
    int n = (int) Math.floor(rest.lengthS() / TRIM_S);
    double[] rms = rms(unit, biasRadPerS, rest, n);
    double most = UNSETTLED * Averages.median(rms) + STILL_RAD_PER_S;
    int first = 0;
    while (first < n / 3 && rms[first] > most) {
      first++;
    }
    int last = n;
    while (last > n - n / 3 && rms[last - 1] > most) {
      last--;
    }
    return new Rest(
        rest.startS() + first * TRIM_S, last == n ? rest.endS() : rest.startS() + last * TRIM_S);
  }

  /**
   * The quiet core of a rest: its quietest seven twentieths of a second and what turns no more than
   * three times as much around them without a break. A body that stops and sets off again turns
   * more and more. Of a core too short to tell a hold from a moment between two movements only the
   * quietest part is left.
   *
   * @param heldS so long a core is a hold, s
   */
  public static Rest core(UnitStream unit, Vector3 biasRadPerS, Rest rest, double heldS) {
    int n = (int) Math.floor(rest.lengthS() / TRIM_S);
    if (n <= CORE) {
      return rest;
    }
    double[] rms = rms(unit, biasRadPerS, rest, n);
    int quietest = quietest(rms);
    double most = CORE_MOST * norm(rms, quietest) / Math.sqrt(CORE) + STILL_RAD_PER_S;
    int from = quietest;
    while (from > 0 && rms[from - 1] <= most) {
      from--;
    }
    int to = quietest + CORE;
    while (to < n && rms[to] <= most) {
      to++;
    }
    boolean isHeld = (to - from) * TRIM_S >= heldS;
    int first = isHeld ? from : quietest;
    int last = isHeld ? to : quietest + CORE;
    return new Rest(
        rest.startS() + first * TRIM_S, last == n ? rest.endS() : rest.startS() + last * TRIM_S);
  }

  private static int quietest(double[] rms) {
    int best = 0;
    for (int i = 1; i + CORE <= rms.length; i++) {
      best = norm(rms, i) < norm(rms, best) ? i : best;
    }
    return best;
  }

  private static double norm(double[] rms, int from) {
    double sum = 0;
    for (int i = from; i < from + CORE; i++) {
      sum += rms[i] * rms[i];
    }
    return Math.sqrt(sum);
  }

  /** How much each twentieth of a second turns. */
  private static double[] rms(UnitStream unit, Vector3 biasRadPerS, Rest rest, int n) {
    return IntStream.range(0, n)
        .mapToDouble(i -> rest.startS() + i * TRIM_S)
        .map(s -> rateRmsRadPerS(unit, biasRadPerS, s, s + TRIM_S))
        .toArray();
  }

  /** Mean rate over a stretch, unit axes, rad/s; lost values are left out. */
  public static Vector3 meanRateRadPerS(UnitStream unit, double fromS, double toS) {
    return mean(unit::gyroColumnRadPerS, unit.indexAt(fromS), unit.indexAt(toS));
  }

  /** Mean specific force over a stretch, unit axes, m/s^2; lost values are left out. */
  public static Vector3 meanAccelMps2(UnitStream unit, double fromS, double toS) {
    return mean(unit::accelColumnMps2, unit.indexAt(fromS), unit.indexAt(toS));
  }

  /** Mean rate of a whole stretch, as {@link #meanRateRadPerS(UnitStream, double, double)}. */
  public static Vector3 meanRateRadPerS(UnitStream unit) {
    return mean(unit::gyroColumnRadPerS, 0, unit.size());
  }

  /** Mean force of a whole stretch, as {@link #meanAccelMps2(UnitStream, double, double)}. */
  public static Vector3 meanAccelMps2(UnitStream unit) {
    return mean(unit::accelColumnMps2, 0, unit.size());
  }

  /** RMS size of the rate about a bias over a stretch, rad/s; infinite where there is no sample. */
  public static double rateRmsRadPerS(
      UnitStream unit, Vector3 biasRadPerS, double fromS, double toS) {
    return Spread.of(unit, biasRadPerS, fromS, toS).rateRmsRadPerS();
  }

  /** Whether a stretch was seen well enough to say of it that it was still. */
  public static boolean isSeen(UnitStream unit, double fromS, double toS) {
    return Spread.of(unit, Vector3.ZERO, fromS, toS).isSeen(unit);
  }

  private static Vector3 mean(IntFunction<double[]> column, int from, int to) {
    return Vector3.each(axis -> Averages.mean(column.apply(axis), from, to));
  }
}
