package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.ingest.quality.gravity.GravityTurns;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/** Judges one unit's stream by itself. */
public final class UnitQuality {

  private static final QualityLimits LIMITS = QualityLimits.defaults();

  private UnitQuality() {}

  /** Judges it. Never throws for bad data: bad data is its subject. */
  public static UnitReport judge(UnitStream unit) {
    Seen seen = seen(unit);
    return seen.report.with(TurnCheck.ofScale(seen.scale, List.of(seen.scale)));
  }

  /** A unit's report by itself, and what the units are to be compared by. */
  record Seen(UnitReport report, TurnScale scale) {}

  static Seen seen(UnitStream unit) {
    Timing timing = TimingCheck.of(unit);
    Saturation saturation = SaturationCheck.of(unit, timing.rateHz());
    RestFacts rest = RestCheck.of(unit, timing.rateHz());
    List<Finding> findings = new ArrayList<>(StuckCheck.of(unit, timing.rateHz(), saturation));
    findings.addAll(ofTimeUnit(unit, timing));
    if (findings.isEmpty()) {
      findings.addAll(ofLength(unit, timing));
    }
    boolean isDead = findings.stream().anyMatch(f -> f.verdict() == Verdict.NOT_USABLE);
    TurnScale scale = TurnScale.UNKNOWN;
    if (!isDead) {
      findings.addAll(ofRate(unit, timing));
      isDead = timing.rateHz() < LIMITS.slowestRateHz(); // what else it shows comes of that
    }
    if (!isDead) {
      findings.addAll(ofLoss(timing));
      findings.addAll(ofWild(unit));
      findings.addAll(ofSaturation(unit, saturation, timing));
      findings.addAll(ofRest(unit, rest));
      GravityTurns turns = turns(unit, rest);
      List<Finding> ofTurns = TurnCheck.of(turns);
      scale = ofTurns.isEmpty() ? TurnScale.of(turns).of(unit.facts()) : scale;
      findings.addAll(ofTurns);
      findings.addAll(FilledCheck.of(unit, timing.rateHz()));
    }
    return new Seen(new UnitReport(unit.facts(), timing, saturation, rest, findings), scale);
  }

  static GravityTurns turns(UnitStream unit, RestFacts rest) {
    double g = rest.found() ? rest.accelNormMps2() : StandardGravity.MPS2;
    return GravityTurns.of(unit, g, rest.found() ? rest.gyroBiasRadPerS() : List.of(0.0, 0.0, 0.0));
  }

  /** A time column in another unit than it says misses the stated rate by a power of a thousand. */
  private static List<Finding> ofTimeUnit(UnitStream unit, Timing timing) {
    double statedHz = unit.facts().nominalRateHz();
    double thousands = Math.log(timing.rateHz() / statedHz) / Math.log(1000);
    boolean isOff = Math.rint(thousands) != 0 && Math.abs(thousands - Math.rint(thousands)) < 0.05;
    return isOff && Double.isFinite(thousands)
        ? List.of(
            Finding.of(Verdict.NOT_USABLE, QualityReason.TIME_UNIT, timing.rateHz(), statedHz))
        : List.of();
  }

  private static List<Finding> ofLength(UnitStream unit, Timing timing) {
    double lengthS = unit.lengthS();
    if (lengthS >= LIMITS.shortestS() && timing.samples() >= 50) {
      return List.of();
    }
    return List.of(Finding.of(Verdict.NOT_USABLE, QualityReason.SHORT, timing.samples(), lengthS));
  }

  private static List<Finding> ofRate(UnitStream unit, Timing timing) {
    double rateHz = timing.rateHz();
    double statedHz = unit.facts().nominalRateHz();
    List<Finding> findings = new ArrayList<>();
    if (rateHz > 0 && rateHz < LIMITS.slowRateHz()) {
      findings.add(
          Finding.of(
              rateHz < LIMITS.slowestRateHz() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              QualityReason.SLOW,
              rateHz));
    }
    if (rateHz > 0 && Math.abs(rateHz / statedHz - 1) > LIMITS.rateOffPct() / 100) {
      findings.add(Finding.of(Verdict.WIDER_INTERVALS, QualityReason.RATE, rateHz, statedHz));
    }
    return findings;
  }

  private static List<Finding> ofLoss(Timing timing) {
    List<Finding> findings = new ArrayList<>();
    double scatteredPct = timing.scatteredLossPct(LIMITS.gapS());
    if (scatteredPct > LIMITS.lostWiderPct()) {
      findings.add(
          Finding.of(
              scatteredPct > LIMITS.lostTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              QualityReason.LOSS,
              scatteredPct));
    }
    if (timing.longestGapS() > LIMITS.gapS()) {
      long count = timing.gaps().stream().filter(g -> g.durationS() > LIMITS.gapS()).count();
      findings.add(
          Finding.of(Verdict.WIDER_INTERVALS, QualityReason.GAP, count, timing.longestGapS()));
    }
    return findings;
  }

  private static List<Finding> ofWild(UnitStream unit) {
    int wild = WildSamples.count(unit);
    return wild == 0
        ? List.of()
        : List.of(Finding.of(Verdict.WIDER_INTERVALS, QualityReason.WILD, wild));
  }

  private static List<Finding> ofSaturation(UnitStream unit, Saturation saturation, Timing timing) {
    List<Finding> findings = new ArrayList<>(ofCutBelow(unit, saturation));
    if (saturation.gyroSamples() > 0 && isFarBeyond(unit, saturation.gyroFullScaleRadPerS())) {
      findings.add(Finding.of(Verdict.NOT_USABLE, QualityReason.GYRO_IN_DEGREES));
    } else if (saturation.gyroSamples() > 0 && !has(findings, QualityReason.GYRO_NARROW)) {
      double pct = 100.0 * saturation.gyroSamples() / Math.max(1, timing.samples());
      findings.add(
          Finding.of(
              pct > LIMITS.saturatedTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              QualityReason.GYRO_CUT,
              saturation.gyroSamples(),
              Math.toDegrees(saturation.gyroFullScaleRadPerS())));
    }
    if (saturation.accelSamples() > 0 && !has(findings, QualityReason.ACCEL_NARROW)) {
      findings.add(ofAccelSaturation(saturation));
    }
    return findings;
  }

  private static boolean has(List<Finding> findings, QualityReason what) {
    return findings.stream().anyMatch(f -> f.what().code() == what);
  }

  /** No sensor shows more than its range: the values are in another unit of measure. */
  private static boolean isFarBeyond(UnitStream unit, double range) {
    return IntStream.range(0, unit.size()).anyMatch(i -> unit.gyroNormRadPerS(i) > 3 * range);
  }

  private static List<Finding> ofCutBelow(UnitStream unit, Saturation saturation) {
    List<Finding> findings = new ArrayList<>();
    double gyro = unit.facts().gyroFullScaleRadPerS();
    double accel = unit.facts().accelFullScaleMps2();
    if (gyro < LIMITS.narrowRadPerS()) {
      findings.add(Finding.of(Verdict.NOT_USABLE, QualityReason.GYRO_NARROW, Math.toDegrees(gyro)));
    }
    if (accel < LIMITS.narrowMps2()) {
      double rangeG = accel / StandardGravity.MPS2;
      findings.add(Finding.of(Verdict.NOT_USABLE, QualityReason.ACCEL_NARROW, rangeG));
    }
    if (Double.isFinite(gyro) && saturation.gyroFullScaleRadPerS() < gyro) {
      double seen = Math.toDegrees(saturation.gyroFullScaleRadPerS());
      findings.add(
          Finding.of(Verdict.NOT_USABLE, QualityReason.GYRO_CUT_BELOW, seen, Math.toDegrees(gyro)));
    }
    if (Double.isFinite(accel) && saturation.accelFullScaleMps2() < accel) {
      findings.add(
          Finding.of(
              Verdict.NOT_USABLE,
              QualityReason.ACCEL_CUT_BELOW,
              saturation.accelFullScaleMps2() / StandardGravity.MPS2,
              accel / StandardGravity.MPS2));
    }
    return findings;
  }

  private static Finding ofAccelSaturation(Saturation saturation) {
    boolean onlyShocks = saturation.longestAccelS() <= LIMITS.shockS();
    int samples = saturation.accelSamples();
    double fullScaleG = saturation.accelFullScaleMps2() / StandardGravity.MPS2;
    return onlyShocks
        ? Finding.of(Verdict.FIT, QualityReason.SHOCK, samples, fullScaleG)
        : Finding.of(
            Verdict.WIDER_INTERVALS,
            QualityReason.ACCEL_CUT,
            samples,
            fullScaleG,
            saturation.longestAccelS());
  }

  private static List<Finding> ofRest(UnitStream unit, RestFacts rest) {
    double usual = usualNormMps2(unit);
    if (!rest.found()
        && !(usual > 0.2 * StandardGravity.MPS2 && usual < 5 * StandardGravity.MPS2)) {
      return List.of(Finding.of(Verdict.NOT_USABLE, guess(usual), usual));
    }
    if (!rest.found()) {
      return List.of(Finding.of(Verdict.WIDER_INTERVALS, QualityReason.NO_REST));
    }
    List<Finding> findings = new ArrayList<>();
    if (rest.gyroNoiseRadPerS() > LIMITS.gyroNoiseRadPerS()
        || rest.accelNoiseMps2() > LIMITS.accelNoiseMps2()) {
      findings.add(
          Finding.of(
              Verdict.WIDER_INTERVALS,
              QualityReason.NOISE,
              Math.toDegrees(rest.gyroNoiseRadPerS()),
              rest.accelNoiseMps2()));
    }
    if (rest.gyroBiasNormRadPerS() > LIMITS.gyroBiasRadPerS()) {
      findings.add(
          Finding.of(
              Verdict.WIDER_INTERVALS,
              QualityReason.BIAS,
              Math.toDegrees(rest.gyroBiasNormRadPerS())));
    }
    findings.addAll(ofGravity(rest));
    return findings;
  }

  /** The middle size of some of the forces: gravity, nearly, in any unit of measure. */
  private static double usualNormMps2(UnitStream unit) {
    int every = 1 + unit.size() / 1000;
    return Averages.median(
        IntStream.range(0, unit.size() / every)
            .mapToDouble(i -> unit.accelNormMps2(i * every))
            .filter(norm -> !Double.isNaN(norm))
            .toArray());
  }

  private static List<Finding> ofGravity(RestFacts rest) {
    double offPct = 100 * (rest.accelNormMps2() / StandardGravity.MPS2 - 1);
    if (Math.abs(offPct) <= LIMITS.gravityWiderPct()) {
      return List.of();
    }
    boolean isNear = Math.abs(offPct) <= LIMITS.gravityTooFarPct();
    double norm = rest.accelNormMps2();
    return List.of(
        Finding.of(
            isNear ? Verdict.WIDER_INTERVALS : Verdict.NOT_USABLE,
            isNear ? QualityReason.GRAVITY : guess(norm),
            norm));
  }

  private static QualityReason guess(double normMps2) {
    if (Math.abs(normMps2 - 1) < 0.05) {
      return QualityReason.GRAVITY_IN_G;
    }
    if (normMps2 < 0.5) {
      return QualityReason.GRAVITY_TAKEN_OUT;
    }
    if (Math.abs(normMps2 / 1000 - 1) < 0.05 || Math.abs(normMps2 / 9806.65 - 1) < 0.05) {
      return QualityReason.GRAVITY_IN_THOUSANDTHS;
    }
    return QualityReason.GRAVITY_FAR;
  }
}
