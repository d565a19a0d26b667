package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/** Judges one unit's stream by itself. */
public final class UnitQuality {

  private UnitQuality() {}

  /** Judges with the default limits. */
  public static UnitReport judge(UnitStream unit) {
    return judge(unit, QualityLimits.defaults());
  }

  /** Judges with limits of the caller's. Never throws for bad data: bad data is its subject. */
  public static UnitReport judge(UnitStream unit, QualityLimits limits) {
    Timing timing = TimingCheck.of(unit);
    Saturation saturation = SaturationCheck.of(unit, timing.rateHz());
    RestFacts rest = RestCheck.of(unit, timing.rateHz());
    List<Finding> findings = new ArrayList<>(StuckCheck.of(unit, timing.rateHz(), saturation));
    findings.addAll(ofLength(unit, timing, limits));
    boolean isDead = findings.stream().anyMatch(f -> f.verdict() == Verdict.NOT_USABLE);
    if (!isDead) {
      findings.addAll(ofRate(unit, timing, limits));
      findings.addAll(ofLoss(timing, limits));
      findings.addAll(ofSaturation(saturation, timing, limits));
      findings.addAll(ofRest(rest, limits));
    }
    return new UnitReport(unit.facts(), timing, saturation, rest, findings);
  }

  private static List<Finding> ofLength(UnitStream unit, Timing timing, QualityLimits limits) {
    double lengthS = unit.size() < 2 ? 0 : unit.timeS(unit.size() - 1) - unit.timeS(0);
    if (lengthS >= limits.shortestS() && timing.samples() >= 50) {
      return List.of();
    }
    return List.of(
        new Finding(
            Check.LENGTH,
            Verdict.NOT_USABLE,
            Reason.of(QualityReason.SHORT, timing.samples(), lengthS)));
  }

  private static List<Finding> ofRate(UnitStream unit, Timing timing, QualityLimits limits) {
    double rateHz = timing.rateHz();
    double statedHz = unit.facts().nominalRateHz();
    List<Finding> findings = new ArrayList<>();
    if (rateHz > 0 && rateHz < limits.slowRateHz()) {
      findings.add(
          new Finding(
              Check.RATE,
              rateHz < limits.slowestRateHz() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Reason.of(QualityReason.SLOW, rateHz)));
    }
    if (rateHz > 0 && Math.abs(rateHz / statedHz - 1) > limits.rateOffPct() / 100) {
      findings.add(
          new Finding(
              Check.RATE,
              Verdict.WIDER_INTERVALS,
              Reason.of(QualityReason.RATE, rateHz, statedHz)));
    }
    return findings;
  }

  private static List<Finding> ofLoss(Timing timing, QualityLimits limits) {
    List<Finding> findings = new ArrayList<>();
    double scatteredPct = timing.scatteredLossPct(limits.gapS());
    if (scatteredPct > limits.lostWiderPct()) {
      findings.add(
          new Finding(
              Check.LOSS,
              scatteredPct > limits.lostTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Reason.of(QualityReason.LOSS, scatteredPct)));
    }
    if (timing.longestGapS() > limits.gapS()) {
      long count = timing.gaps().stream().filter(g -> g.durationS() > limits.gapS()).count();
      findings.add(
          new Finding(
              Check.GAP,
              Verdict.WIDER_INTERVALS,
              Reason.of(QualityReason.GAP, count, timing.longestGapS())));
    }
    return findings;
  }

  private static List<Finding> ofSaturation(
      Saturation saturation, Timing timing, QualityLimits limits) {
    List<Finding> findings = new ArrayList<>();
    if (saturation.gyroSamples() > 0) {
      double pct = 100.0 * saturation.gyroSamples() / Math.max(1, timing.samples());
      findings.add(
          new Finding(
              Check.SATURATION,
              pct > limits.saturatedTooManyPct() ? Verdict.NOT_USABLE : Verdict.WIDER_INTERVALS,
              Reason.of(
                  QualityReason.GYRO_CUT,
                  saturation.gyroSamples(),
                  Math.toDegrees(saturation.gyroFullScaleRadPerS()))));
    }
    if (saturation.accelSamples() > 0) {
      findings.add(ofAccelSaturation(saturation, limits));
    }
    return findings;
  }

  private static Finding ofAccelSaturation(Saturation saturation, QualityLimits limits) {
    boolean onlyShocks = saturation.longestAccelS() <= limits.shockS();
    int samples = saturation.accelSamples();
    double fullScaleG = saturation.accelFullScaleMps2() / StandardGravity.MPS2;
    return onlyShocks
        ? new Finding(
            Check.SATURATION, Verdict.FIT, Reason.of(QualityReason.SHOCK, samples, fullScaleG))
        : new Finding(
            Check.SATURATION,
            Verdict.WIDER_INTERVALS,
            Reason.of(QualityReason.ACCEL_CUT, samples, fullScaleG, saturation.longestAccelS()));
  }

  private static List<Finding> ofRest(RestFacts rest, QualityLimits limits) {
    if (!rest.found()) {
      return List.of(
          new Finding(Check.REST, Verdict.WIDER_INTERVALS, Reason.of(QualityReason.NO_REST)));
    }
    List<Finding> findings = new ArrayList<>();
    if (rest.gyroNoiseRadPerS() > limits.gyroNoiseRadPerS()
        || rest.accelNoiseMps2() > limits.accelNoiseMps2()) {
      findings.add(
          new Finding(
              Check.NOISE,
              Verdict.WIDER_INTERVALS,
              Reason.of(
                  QualityReason.NOISE,
                  Math.toDegrees(rest.gyroNoiseRadPerS()),
                  rest.accelNoiseMps2())));
    }
    if (rest.gyroBiasNormRadPerS() > limits.gyroBiasRadPerS()) {
      findings.add(
          new Finding(
              Check.GYRO_BIAS,
              Verdict.WIDER_INTERVALS,
              Reason.of(QualityReason.BIAS, Math.toDegrees(rest.gyroBiasNormRadPerS()))));
    }
    findings.addAll(ofGravity(rest, limits));
    return findings;
  }

  private static List<Finding> ofGravity(RestFacts rest, QualityLimits limits) {
    double offPct = 100 * (rest.accelNormMps2() / StandardGravity.MPS2 - 1);
    if (Math.abs(offPct) <= limits.gravityWiderPct()) {
      return List.of();
    }
    boolean isNear = Math.abs(offPct) <= limits.gravityTooFarPct();
    double norm = rest.accelNormMps2();
    return List.of(
        new Finding(
            Check.GRAVITY,
            isNear ? Verdict.WIDER_INTERVALS : Verdict.NOT_USABLE,
            Reason.of(isNear ? QualityReason.GRAVITY : guess(norm), norm)));
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
