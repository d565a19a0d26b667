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
    double[] rms =
        IntStream.range(0, n)
            .mapToDouble(i -> rest.startS() + i * TRIM_S)
            .map(s -> rateRmsRadPerS(unit, biasRadPerS, s, s + TRIM_S))
            .toArray();
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
