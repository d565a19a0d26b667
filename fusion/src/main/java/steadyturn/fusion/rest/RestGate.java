package steadyturn.fusion.rest;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the rest that ends before an instant or begins after one, by sliding windows over one
 * unit's samples.
 */
public final class RestGate {

  private final RestSettings settings;

  public RestGate(RestSettings settings) {
    this.settings = settings;
  }

  /**
   * The last rest that ends between earliestS and untilS, walking backwards from untilS.
   *
   * @param biasRadPerS gyro bias in unit axes, rad/s, as known so far
   */
  public Optional<Rest> before(
      UnitStream unit, Vector3 biasRadPerS, double earliestS, double untilS) {
    double end = untilS;
    while (end - settings.minimumS() >= earliestS - 1e-9) {
      double start = end;
      while (end - start + settings.windowS() <= settings.longestS() + 1e-9
          && start - settings.windowS() >= earliestS - 1e-9
          && still(unit, biasRadPerS, start - settings.windowS(), start)) {
        start -= settings.windowS() / 3;
      }
      double from = start - settings.windowS() * 2 / 3;
      if (end - from >= settings.minimumS() && start < end) {
        return Optional.of(rest(unit, biasRadPerS, from, end));
      }
      end -= settings.windowS() / 3;
    }
    return Optional.empty();
  }

  /** The first rest that begins between fromS and latestS, walking forwards from fromS. */
  public Optional<Rest> after(UnitStream unit, Vector3 biasRadPerS, double fromS, double latestS) {
    double start = fromS;
    while (start + settings.minimumS() <= latestS + 1e-9) {
      double end = start;
      while (end - start + settings.windowS() <= settings.longestS() + 1e-9
          && end + settings.windowS() <= latestS + 1e-9
          && still(unit, biasRadPerS, end, end + settings.windowS())) {
        end += settings.windowS() / 3;
      }
      double to = end + settings.windowS() * 2 / 3;
      if (to - start >= settings.minimumS() && end > start) {
        return Optional.of(rest(unit, biasRadPerS, start, to));
      }
      start += settings.windowS() / 3;
    }
    return Optional.empty();
  }

  private boolean still(UnitStream unit, Vector3 bias, double fromS, double toS) {
    Spread spread = Spread.of(unit, bias, fromS, toS);
    return spread.isSeen(unit)
        && spread.rateRmsRadPerS() < settings.rateRmsRadPerS()
        && spread.accelSdMps2() < settings.accelSdMps2();
  }

  private static Rest rest(UnitStream unit, Vector3 bias, double fromS, double toS) {
    return new Rest(fromS, toS, Spread.of(unit, bias, fromS, toS).rateRmsRadPerS());
  }

  /** Mean rate over a stretch, unit axes, rad/s; lost values are left out. */
  public static Vector3 meanRateRadPerS(UnitStream unit, double fromS, double toS) {
    return new Vector3(
        mean(unit.gyroColumnRadPerS(0), unit, fromS, toS),
        mean(unit.gyroColumnRadPerS(1), unit, fromS, toS),
        mean(unit.gyroColumnRadPerS(2), unit, fromS, toS));
  }

  /** Mean specific force over a stretch, unit axes, m/s^2; lost values are left out. */
  public static Vector3 meanAccelMps2(UnitStream unit, double fromS, double toS) {
    return new Vector3(
        mean(unit.accelColumnMps2(0), unit, fromS, toS),
        mean(unit.accelColumnMps2(1), unit, fromS, toS),
        mean(unit.accelColumnMps2(2), unit, fromS, toS));
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

  private static double mean(double[] column, UnitStream unit, double fromS, double toS) {
    return Averages.mean(column, unit.indexAt(fromS), unit.indexAt(toS));
  }
}
